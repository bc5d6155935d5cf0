#include "checks/line.h"

#include <stdlib.h>

#include "checks/say.h"
#include "players/loudness.h"

/* A dynamic mark on the staff. */
typedef struct dynamic {
    sw_rational onset;
    int loudness;
} dynamic;

typedef struct dynamics {
    dynamic *items;
    size_t count;
    size_t capacity;
} dynamics;

static void add_dynamics_of(const sw_reading *reading, uint32_t music, sw_rational onset, dynamics *list)
{
    for (uint32_t m = reading->music[music].first; m != SW_NO_INDEX; m = reading->music[m].next) {
        if (reading->music[m].kind != SW_MUSIC_MARK || sw_music_mark_class(reading, m) != SW_MARK_DYNAMIC) {
            continue;
        }
        int loudness = sw_loudness(sw_music_slice(reading, m));
        if (loudness != SW_NO_LOUDNESS) {
            list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
            list->items[list->count++] = (dynamic){onset, loudness};
        }
    }
}

static int compare_dynamics(const void *a, const void *b)
{
    return sw_rational_compare(((const dynamic *)a)->onset, ((const dynamic *)b)->onset);
}

/* Those of all voices of the staff, also of voices of skips and of empty chords. */
static dynamics find_dynamics(const sw_check *check, const sw_score *score, uint32_t staff)
{
    dynamics list = {0};
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        add_dynamics_of(check->reading, score->events[i].chord, score->events[i].onset, &list);
    }
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        if (setting->staff == staff && check->reading->music[setting->music].kind == SW_MUSIC_CHORD) {
            add_dynamics_of(check->reading, setting->music, setting->onset, &list);
        }
    }
    if (list.count > 1) {
        qsort(list.items, list.count, sizeof *list.items, compare_dynamics);
    }
    return list;
}

static int loudness_at(const dynamics *list, sw_rational onset)
{
    size_t low = 0;
    size_t high = list->count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (sw_rational_compare(list->items[middle].onset, onset) <= 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low == 0 ? SW_LOUDNESS_MF : list->items[low - 1].loudness;
}

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

/* The lowest fifth of the compass, as semitones from its bottom. */
static bool is_low(const sw_instrument *instrument, sw_pitch pitch)
{
    if (instrument == NULL || !instrument->has_compass) {
        return false;
    }
    int bottom = sw_pitch_semitones(instrument->written_low);
    int top = sw_pitch_semitones(instrument->written_high);
    int height = sw_pitch_semitones(sw_instrument_written(instrument, pitch));
    return (height - bottom) * 5 < top - bottom;
}

sw_line sw_line_of_staff(const sw_check *check, const sw_score *score, const sw_playing *playing,
                         uint32_t staff)
{
    sw_line line = {0};
    sw_strokes strokes = sw_strokes_of_staff(check->reading, score, staff);
    dynamics marks = find_dynamics(check, score, staff);
    for (uint32_t voice = 0; voice < score->voice_count; voice++) {
        const sw_stroke *before = NULL;
        int slurs = 0;
        for (size_t i = 0; i < strokes.count && score->voices[voice].staff == staff; i++) {
            const sw_stroke *stroke = &strokes.items[i];
            const sw_event *event = &score->events[stroke->event];
            if (stroke->voice != voice || (event->flags & SW_EVENT_GRACE) != 0) {
                continue;
            }
            sw_line_note note = {.event = stroke->event,
                                 .voice = voice,
                                 .begin = sw_score_seconds(score, stroke->onset),
                                 .end = sw_score_seconds(score, stroke->end),
                                 .loudness = loudness_at(&marks, stroke->onset),
                                 .low = is_low(playing->instruments[staff], event->pitch),
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
    free(marks.items);
    return line;
}
