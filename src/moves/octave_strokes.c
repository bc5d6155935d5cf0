#include "moves/octave_strokes.h"

#include <stdlib.h>
#include <string.h>

#include "write/draft.h"

/* What is collected while a voice is gone through. */
typedef struct walk {
    const sw_reading *reading;
    const sw_score *score;
    sw_lines *lines;
    size_t begin;    /* the voice's first stroke */
    sw_rational end; /* of all that has sounded so far */
    bool slur;       /* one is open */
    bool phrase;
    bool beam;
    bool skipped; /* something that is no stroke lies before */
} walk;

static const sw_event *event_of(const walk *w, size_t stroke)
{
    return &w->score->events[w->lines->strokes[stroke].event];
}

static unsigned classes_at(const sw_reading *reading, uint32_t music)
{
    unsigned classes = 0;
    for (uint32_t c = reading->music[music].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind == SW_MUSIC_MARK) {
            classes |= 1U << sw_music_mark_class(reading, c);
        }
    }
    return classes;
}

/* The classes of all marks of a stroke, as bits. */
static unsigned classes_of(const walk *w, size_t stroke)
{
    const sw_line_stroke *s = &w->lines->strokes[stroke];
    unsigned classes = classes_at(w->reading, w->score->events[s->event].chord);
    for (uint32_t e = s->event; e < s->end; e++) {
        classes |= classes_at(w->reading, w->score->events[e].music);
    }
    return classes;
}

static bool has(unsigned classes, sw_mark_class class)
{
    return (classes & 1U << class) != 0;
}

/* The frame of the written-out tremolo that an event stands in, or SW_NO_INDEX. */
static uint32_t tremolo_of(const walk *w, const sw_event *event)
{
    for (uint32_t f = event->frame; f != SW_NO_INDEX; f = w->score->frames[f].parent) {
        const sw_music *m = &w->reading->music[w->score->frames[f].music];
        if (m->kind == SW_MUSIC_REPEAT && strcmp(sw_reading_name(w->reading, m->name), "tremolo") == 0) {
            return f;
        }
    }
    return SW_NO_INDEX;
}

static bool is_tied(const walk *w, size_t stroke)
{
    const sw_line_stroke *s = &w->lines->strokes[stroke];
    for (uint32_t e = s->event; e < s->end; e++) {
        if (sw_voice_is_tied(w->reading, w->score, e)) {
            return true;
        }
    }
    return false;
}

/* A grace note that stands at the end of a note, not before one. */
static bool is_after_grace(const walk *w, const sw_event *event)
{
    return (event->flags & SW_EVENT_GRACE) != 0 && sw_rational_compare(event->onset, w->end) < 0;
}

static bool is_bound(const walk *w, size_t stroke)
{
    const sw_event *before = event_of(w, stroke - 1);
    const sw_event *event = event_of(w, stroke);
    uint32_t tremolo = tremolo_of(w, event);
    bool grace = (before->flags & SW_EVENT_GRACE) != 0 &&
                 sw_rational_compare(before->onset, event->onset) == 0; /* one of this note */
    return grace || is_after_grace(w, event) || is_tied(w, stroke - 1) ||
           (tremolo != SW_NO_INDEX && tremolo == tremolo_of(w, before));
}

static bool is_shorter(sw_rational length, int64_t num, int64_t den)
{
    return sw_rational_compare(length, sw_rational_make(num, den)) < 0;
}

/* Whether two short notes stand in one beat. */
static bool share_a_beat(const walk *w, const sw_event *a, const sw_event *b)
{
    if (!is_shorter(a->duration, 1, 4) || !is_shorter(b->duration, 1, 4) ||
        sw_score_bar_at(w->score, a->onset) != sw_score_bar_at(w->score, b->onset)) {
        return false;
    }
    sw_rational x = sw_score_beat(w->score, a->onset);
    sw_rational y = sw_score_beat(w->score, b->onset);
    return x.num / x.den == y.num / y.den;
}

static bool is_long(const sw_event *event, const sw_event *next)
{
    sw_rational twice = sw_rational_add(next->duration, next->duration);
    return !is_shorter(event->duration, 1, 2) ||
           (!is_shorter(event->duration, 1, 4) && sw_rational_compare(event->duration, twice) >= 0);
}

/* The note by which a line goes on: the highest of a chord. */
static sw_pitch line_pitch(const walk *w, size_t stroke)
{
    const sw_line_stroke *s = &w->lines->strokes[stroke];
    sw_pitch top = w->score->events[s->event].pitch;
    for (uint32_t e = s->event; e < s->end; e++) {
        top = sw_pitch_compare(w->score->events[e].pitch, top) > 0 ? w->score->events[e].pitch : top;
    }
    return top;
}

/* 1: a step up (or, an octave displaced, a seventh down), -1: a step down, 0: something else. */
static int step_between(const walk *w, size_t a, size_t b)
{
    int steps = sw_pitch_staff_steps(line_pitch(w, b)) - sw_pitch_staff_steps(line_pitch(w, a));
    int class = (steps % 7 + 7) % 7;
    return class == 1 ? 1 : class == 6 ? -1 : 0;
}

static unsigned joint_before(const walk *w, size_t stroke, unsigned classes)
{
    const sw_event *event = event_of(w, stroke);
    bool begins = has(classes, SW_MARK_SLUR_START) || has(classes, SW_MARK_PHRASE_START);
    unsigned joint = begins && !w->slur && !w->phrase ? SW_JOINT_PHRASE_START : 0;
    if (stroke == w->begin || w->skipped) {
        return joint | SW_JOINT_REST;
    }
    const sw_event *before = event_of(w, stroke - 1);
    sw_rational gap = sw_rational_sub(event->onset, w->end);
    bool silence = sw_rational_compare(gap, sw_rational_zero()) > 0;
    if (silence) {
        joint |= is_shorter(gap, 1, 4) ? SW_JOINT_SHORT_REST : SW_JOINT_REST;
    }
    joint |= is_bound(w, stroke) ? SW_JOINT_BOUND : 0;
    joint |= w->slur ? SW_JOINT_SLUR : 0;
    joint |= w->phrase ? SW_JOINT_PHRASE : 0;
    joint |= w->beam || (!silence && share_a_beat(w, before, event)) ? SW_JOINT_BEAT : 0;
    joint |= has(classes_of(w, stroke - 1), SW_MARK_GLISSANDO) ? SW_JOINT_GLISSANDO : 0;
    joint |= is_long(before, event) ? SW_JOINT_LONG : 0;
    int interval =
        sw_pitch_quarter_tones(line_pitch(w, stroke)) - sw_pitch_quarter_tones(line_pitch(w, stroke - 1));
    joint |= interval % 24 == 0 ? SW_JOINT_REPEATED : 0;
    return joint;
}

static bool stays_open(bool open, unsigned classes, sw_mark_class start, sw_mark_class end)
{
    return has(classes, start) || (open && !has(classes, end));
}

/* Adds the note or chord from `event` to `end`. */
static void add_stroke(walk *w, uint32_t event, uint32_t end)
{
    sw_lines *lines = w->lines;
    size_t number = lines->count;
    size_t capacity = lines->capacity;
    lines->strokes = sw_grow(lines->strokes, number, &capacity, sizeof *lines->strokes);
    lines->notes = sw_grow(lines->notes, number, &lines->capacity, sizeof *lines->notes);
    lines->strokes[number] = (sw_line_stroke){.event = event, .end = end, .first = SW_NO_INDEX};
    lines->notes[number] = (sw_octave_stroke){0};
    lines->count++;
    unsigned classes = classes_of(w, number);
    lines->notes[number].joint = joint_before(w, number, classes);
    w->slur = stays_open(w->slur, classes, SW_MARK_SLUR_START, SW_MARK_SLUR_END);
    w->phrase = stays_open(w->phrase, classes, SW_MARK_PHRASE_START, SW_MARK_PHRASE_END);
    w->beam = stays_open(w->beam, classes, SW_MARK_BEAM_START, SW_MARK_BEAM_END);
    w->skipped = false;
    if ((w->score->events[event].flags & SW_EVENT_GRACE) == 0) {
        w->end = sw_rational_max(w->end, sw_event_end(&w->score->events[event]));
    }
}

/* Steps in one direction, three at least, are a scale. */
static void mark_scales(const walk *w)
{
    sw_octave_stroke *notes = w->lines->notes;
    for (size_t i = w->begin + 1; i < w->lines->count;) {
        int direction = step_between(w, i - 1, i);
        size_t end = i;
        while (end < w->lines->count && direction != 0 && step_between(w, end - 1, end) == direction &&
               (notes[end].joint & (SW_JOINT_REST | SW_JOINT_SHORT_REST)) == 0) {
            end++;
        }
        for (size_t k = i; k < end && end - i >= 3; k++) {
            notes[k].joint |= SW_JOINT_SCALE;
        }
        i = end > i ? end : i + 1;
    }
}

static void mark_breaths(const walk *w, uint32_t voice)
{
    for (size_t i = 0; i < w->score->setting_count; i++) {
        const sw_setting *setting = &w->score->settings[i];
        if (setting->voice != voice ||
            !sw_slice_is(sw_music_slice(w->reading, setting->music), "\\breathe")) {
            continue;
        }
        for (size_t s = w->begin; s < w->lines->count; s++) {
            if (sw_rational_compare(event_of(w, s)->onset, setting->onset) >= 0) {
                w->lines->notes[s].joint |= SW_JOINT_PHRASE_START;
                break;
            }
        }
    }
}

/* The strokes of a voice: its events from `first` up to `end`. */
static void collect_voice(sw_lines *lines, const sw_chosen *chosen, uint32_t first, uint32_t end)
{
    walk w = {.reading = chosen->reading,
              .score = chosen->score,
              .lines = lines,
              .begin = lines->count,
              .end = chosen->score->events[first].onset};
    for (uint32_t e = first; e < end;) {
        uint32_t next = sw_voice_chord_end(chosen->score, e);
        const sw_event *event = &chosen->score->events[e];
        if ((event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) != 0) {
            w.skipped = true;
        } else if (event->kind == SW_EVENT_NOTE) {
            add_stroke(&w, e, next);
        }
        e = next;
    }
    mark_scales(&w);
    mark_breaths(&w, chosen->score->events[first].voice);
}

/* Whether any of these events is chosen; `at` goes along the chosen ones. */
static bool holds_chosen(const sw_chosen *chosen, size_t *at, uint32_t first, uint32_t end)
{
    while (*at < chosen->count && chosen->events[*at] < first) {
        ++*at;
    }
    return *at < chosen->count && chosen->events[*at] < end;
}

static void choose(sw_lines *lines, const sw_chosen *chosen)
{
    size_t at = 0;
    for (size_t i = 0; i < lines->count; i++) {
        lines->strokes[i].chosen = holds_chosen(chosen, &at, lines->strokes[i].event, lines->strokes[i].end);
    }
    for (size_t i = 1; i < lines->count; i++) { /* forward ... */
        bool bound = (lines->notes[i].joint & SW_JOINT_BOUND) != 0;
        lines->strokes[i].chosen |= bound && lines->strokes[i - 1].chosen;
    }
    for (size_t i = lines->count; i-- > 1;) { /* ... and back */
        bool bound = (lines->notes[i].joint & SW_JOINT_BOUND) != 0;
        lines->strokes[i - 1].chosen |= bound && lines->strokes[i].chosen;
    }
}

/* What is written once and heard again. */
static void find_repetitions(sw_lines *lines, const sw_chosen *chosen)
{
    uint32_t *heard = sw_alloc((chosen->reading->music_count + 1) * sizeof *heard);
    memset(heard, 0xff, (chosen->reading->music_count + 1) * sizeof *heard);
    for (uint32_t i = 0; i < lines->count; i++) {
        uint32_t *first = &heard[chosen->score->events[lines->strokes[i].event].chord];
        if (!lines->strokes[i].chosen) {
            continue;
        }
        lines->strokes[i].first = *first;
        *first = *first == SW_NO_INDEX ? i : *first;
    }
    free(heard);
}

sw_lines sw_lines_of(const sw_chosen *chosen)
{
    const sw_score *score = chosen->score;
    sw_lines lines = {0};
    size_t at = 0;
    for (uint32_t first = 0, end; first < score->event_count; first = end) {
        for (end = first + 1;
             end < score->event_count && score->events[end].voice == score->events[first].voice; end++) {
        }
        if (holds_chosen(chosen, &at, first, end)) {
            collect_voice(&lines, chosen, first, end);
        }
    }
    choose(&lines, chosen);
    find_repetitions(&lines, chosen);
    return lines;
}

void sw_lines_free(sw_lines *lines)
{
    free(lines->strokes);
    free(lines->notes);
    *lines = (sw_lines){0};
}
