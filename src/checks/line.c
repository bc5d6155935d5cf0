#include "checks/line.h"

#include <stdarg.h>
#include <stdlib.h>

#include "checks/entry.h"
#include "checks/say.h"
#include "checks/strokes.h"

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

typedef struct breath {
    uint32_t staff;
    sw_rational onset;
} breath;

/* Where \breathe stands, in order of time. */
typedef struct breath_list {
    breath *items;
    size_t count;
    size_t capacity;
} breath_list;

static breath_list breaths_of_score(const sw_reading *reading, const sw_score *score)
{
    breath_list list = {0};
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        if (sw_slice_starts(sw_music_slice(reading, setting->music), "\\breathe")) {
            list.items = sw_grow(list.items, list.count, &list.capacity, sizeof *list.items);
            list.items[list.count++] = (breath){setting->staff, setting->onset};
        }
    }
    return list;
}

/* Whether one stands on a staff behind `from`, not later than `to`. `*next` is the first one of the staff
 * behind the `from` of the call before: calls go on in time. */
static bool has_breath(const breath_list *list, uint32_t staff, sw_rational from, sw_rational to,
                       size_t *next)
{
    while (*next < list->count &&
           (list->items[*next].staff != staff || sw_rational_compare(list->items[*next].onset, from) <= 0)) {
        ++*next;
    }
    return *next < list->count && sw_rational_compare(list->items[*next].onset, to) <= 0;
}

/* Low notes take more air on winds; not in a voice. */
static bool is_low_as(const sw_instrument *instrument, sw_pitch written)
{
    int bottom = sw_pitch_semitones(instrument->written_low);
    int top = sw_pitch_semitones(instrument->written_high);
    return instrument->has_compass && instrument->family != SW_VOICE &&
           (sw_pitch_semitones(written) - bottom) * 5 < top - bottom;
}

static bool is_high_as(const sw_instrument *instrument, sw_pitch written)
{
    const sw_lips *lips = &instrument->can.lips;
    return lips->source != NULL && sw_pitch_quarter_tones(written) > sw_pitch_quarter_tones(lips->above);
}

/* Whether a note is so in all of its readings. */
static bool is_surely(bool (*is)(const sw_instrument *instrument, sw_pitch written),
                      const sw_instrument *instrument, const sw_pitch *readings, size_t count)
{
    bool so = count > 0;
    for (size_t i = 0; i < count; i++) {
        so = so && is(instrument, readings[i]);
    }
    return so;
}

/* ---- one staff ---------------------------------------------------------------------------------------- */

typedef struct scene {
    const sw_check *check;
    const sw_score *score;
    const sw_dynamics *dynamics;
    sw_strokes strokes; /* of the staff */
    const sw_entries *entries;
    const breath_list *breaths;
} scene;

static void add_voice(const scene *s, uint32_t voice, sw_line *line)
{
    const sw_stroke *before = NULL;
    const sw_entry *on_staff = NULL;
    int slurs = 0;
    size_t next = 0;
    for (size_t i = 0; i < s->strokes.count; i++) {
        const sw_stroke *stroke = &s->strokes.items[i];
        const sw_event *event = &s->score->events[stroke->event];
        if (stroke->voice != voice || (event->flags & SW_EVENT_GRACE) != 0) {
            continue;
        }
        on_staff = sw_entries_next(s->entries, on_staff, stroke->onset);
        const sw_entry *entry = sw_entry_of_note(s->entries, on_staff, stroke->event);
        const sw_limit *limit =
            entry->instrument == line->instrument ? NULL : sw_limits_of(s->check->limits, entry->instrument);
        sw_pitch readings[SW_ENTRY_READINGS];
        size_t count = sw_entry_written(entry, event->pitch, readings);
        line->items = sw_grow(line->items, line->count, &line->capacity, sizeof *line->items);
        line->items[line->count++] = (sw_line_note){
            .event = stroke->event,
            .voice = voice,
            .begin = sw_score_seconds(s->score, stroke->onset),
            .end = sw_score_seconds(s->score, stroke->end),
            .dynamic = sw_dynamics_at(s->dynamics, voice, stroke->onset).level,
            .instrument = entry->instrument == NULL ? line->instrument : entry->instrument,
            .limit = limit == NULL || limit->breath <= 0 ? line->limit : limit,
            .low = is_surely(is_low_as, entry->instrument, readings, count),
            .high = is_surely(is_high_as, entry->instrument, readings, count),
            .first = before == NULL,
            .joined = before != NULL && (stroke->tied || slurs > 0),
            .breath_before =
                before != NULL && has_breath(s->breaths, line->staff, before->onset, stroke->onset, &next)};
        slurs += slurs_of(s->check->reading, event);
        slurs = slurs < 0 ? 0 : slurs;
        before = stroke;
    }
}

static void fill(sw_check *check, size_t number, const breath_list *breaths, sw_line *line)
{
    const sw_score *score = line->score;
    scene s = {.check = check,
               .score = score,
               .dynamics = sw_check_dynamics(check, number),
               .strokes = sw_strokes_of_staff(check->reading, score, line->staff),
               .entries = &sw_check_entries(check, score)[line->staff],
               .breaths = breaths};
    for (uint32_t voice = 0; voice < score->voice_count; voice++) {
        if (score->voices[voice].staff == line->staff) {
            add_voice(&s, voice, line);
        }
    }
    free(s.strokes.items);
}

/* ---- all lines ---------------------------------------------------------------------------------------- */

struct sw_wind_lines {
    sw_line *items;
    size_t count;
    size_t capacity;
};

static struct sw_wind_lines *find(sw_check *check)
{
    struct sw_wind_lines *lines = sw_alloc_zero(1, sizeof *lines);
    for (size_t i = 0; i < check->reading->score_count; i++) {
        const sw_score *score = &check->reading->scores[i];
        const sw_playing *playing = score->in_markup ? NULL : sw_check_playing(check, i);
        breath_list breaths = breaths_of_score(check->reading, score);
        for (uint32_t staff = 0; playing != NULL && staff < score->staff_count; staff++) {
            const sw_instrument *instrument = playing->instruments[staff];
            sw_line line = {score, staff, instrument, sw_limits_of(check->limits, instrument), NULL, 0, 0};
            if (line.limit == NULL || line.limit->breath <= 0) {
                continue;
            }
            fill(check, i, &breaths, &line);
            if (line.count > 0) {
                lines->items = sw_grow(lines->items, lines->count, &lines->capacity, sizeof *lines->items);
                lines->items[lines->count++] = line;
            }
        }
        free(breaths.items);
    }
    return lines;
}

static const struct sw_wind_lines *lines_of(sw_check *check)
{
    if (check->lines == NULL) {
        check->lines = find(check);
    }
    return check->lines;
}

void sw_check_lines(sw_check *check, void (*each)(sw_check *check, const sw_line *line))
{
    const struct sw_wind_lines *lines = lines_of(check);
    for (size_t i = 0; i < lines->count; i++) {
        each(check, &lines->items[i]);
    }
}

const sw_line *sw_check_line(sw_check *check, const sw_score *score, uint32_t staff)
{
    const struct sw_wind_lines *lines = lines_of(check);
    for (size_t i = 0; i < lines->count; i++) {
        if (lines->items[i].score == score && lines->items[i].staff == staff) {
            return &lines->items[i];
        }
    }
    return NULL;
}

void sw_check_lines_free(sw_check *check)
{
    for (size_t i = 0; check->lines != NULL && i < check->lines->count; i++) {
        free(check->lines->items[i].items);
    }
    if (check->lines != NULL) {
        free(check->lines->items);
        free(check->lines);
    }
}

/* ---- what rules say of them --------------------------------------------------------------------------- */

int sw_line_bar(const sw_line *line, const sw_line_note *note)
{
    uint32_t bar = sw_score_bar_at(line->score, line->score->events[note->event].onset);
    return bar == SW_NO_INDEX ? 1 : line->score->bars[bar].number;
}

bool sw_line_tempo_is_told(const sw_check *check, const sw_line *line, const sw_line_note *note)
{
    return sw_tempo_is_told(check->reading, line->score, line->score->events[note->event].onset);
}

void sw_line_add(sw_check *check, const sw_line *line, const sw_line_note *note, sw_severity severity,
                 const char *rule, const char *format, ...)
{
    const sw_event *event = &line->score->events[note->event];
    const sw_music *m = sw_event_written(check->reading, event);
    char place[SW_SAY];
    char label[32];
    sw_buffer text = {0};
    va_list arguments;
    va_start(arguments, format);
    sw_buffer_format(&text, "%s, %s: ", sw_say_place(line->score, event->onset, place),
                     sw_staff_label(check->reading, line->score, line->staff, label));
    sw_buffer_vformat(&text, format, arguments);
    va_end(arguments);
    sw_findings_add(check->findings, severity, rule, m->file, m->start, m->end, "%s", sw_buffer_text(&text));
    sw_buffer_free(&text);
}
