#include "checks/line.h"

#include <stdlib.h>

#include "checks/entry.h"
#include "checks/say.h"

/* How many slurs begin less those that end on a note or chord. */
static int slurs_of(const sw_reading *reading, const sw_event *event)
{
    int slurs = 0;
    for (uint32_t m = reading->music[event->chord].first; m != SW_NO_INDEX; m = reading->music[m].next) {
        if (reading->music[m].kind == SW_MUSIC_MARK) {
            sw_mark_class class = sw_music_mark_class(reading, m);
            slurs += (class == SW_MARK_SLUR_START) - (class == SW_MARK_SLUR_END);
        }
    }
    return slurs;
}

static bool has_breath(const sw_reading *reading, const sw_score *score, uint32_t staff, sw_rational from,
                       sw_rational to)
{
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        if (setting->staff == staff && sw_rational_compare(setting->onset, from) > 0 &&
            sw_rational_compare(setting->onset, to) <= 0 &&
            sw_slice_starts(sw_music_slice(reading, setting->music), "\\breathe")) {
            return true;
        }
    }
    return false;
}

static bool is_low_as(const sw_instrument *instrument, sw_pitch written)
{
    int bottom = sw_pitch_semitones(instrument->written_low);
    int top = sw_pitch_semitones(instrument->written_high);
    return instrument->has_compass && (sw_pitch_semitones(written) - bottom) * 5 < top - bottom;
}

static bool is_high_as(const sw_instrument *instrument, sw_pitch written)
{
    const sw_lips *lips = &instrument->can.lips;
    return lips->source != NULL && sw_pitch_quarter_tones(written) > sw_pitch_quarter_tones(lips->above);
}

/* Whether a note is so, however it is read. */
static bool is_surely(bool (*is)(const sw_instrument *instrument, sw_pitch written), const sw_entry *entry,
                      sw_pitch pitch)
{
    sw_pitch written[SW_ENTRY_READINGS];
    size_t count = sw_entry_written(entry, pitch, written);
    bool so = count > 0;
    for (size_t i = 0; i < count; i++) {
        so = so && is(entry->instrument, written[i]);
    }
    return so;
}

sw_line sw_line_of_staff(sw_check *check, const sw_score *score, uint32_t staff)
{
    sw_line line = {0};
    sw_strokes strokes = sw_strokes_of_staff(check->reading, score, staff);
    const sw_dynamics *dynamics = sw_check_dynamics(check, (size_t)(score - check->reading->scores));
    sw_entries entries = sw_entries_of_staff(check, score, staff);
    for (uint32_t voice = 0; voice < score->voice_count; voice++) {
        const sw_stroke *before = NULL;
        int slurs = 0;
        for (size_t i = 0; i < strokes.count && score->voices[voice].staff == staff; i++) {
            const sw_stroke *stroke = &strokes.items[i];
            const sw_event *event = &score->events[stroke->event];
            if (stroke->voice != voice || (event->flags & SW_EVENT_GRACE) != 0) {
                continue;
            }
            sw_line_note note = {
                .event = stroke->event,
                .voice = voice,
                .begin = sw_score_seconds(score, stroke->onset),
                .end = sw_score_seconds(score, stroke->end),
                .dynamic = sw_dynamics_at(dynamics, voice, stroke->onset).level,
                .low = is_surely(is_low_as, sw_entries_at(&entries, stroke->onset), event->pitch),
                .high = is_surely(is_high_as, sw_entries_at(&entries, stroke->onset), event->pitch),
                .first = before == NULL,
                .joined = before != NULL && (stroke->tied || slurs > 0)};
            note.breath_before =
                before != NULL && has_breath(check->reading, score, staff, before->onset, stroke->onset);
            slurs += slurs_of(check->reading, event);
            slurs = slurs < 0 ? 0 : slurs;
            line.items = sw_grow(line.items, line.count, &line.capacity, sizeof *line.items);
            line.items[line.count++] = note;
            before = stroke;
        }
    }
    free(strokes.items);
    sw_entries_free(&entries);
    return line;
}
