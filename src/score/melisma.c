#include <string.h>

#include "score/melisma.h"

bool sw_melisma_is_on(const sw_melisma *s, bool ties)
{
    int on = (s->manual ? SW_COUNTS_MANUAL : 0) | (s->slur_count > 0 || s->grace_slur ? SW_COUNTS_SLUR : 0) |
             (s->beam ? SW_COUNTS_BEAM : 0) | (ties && s->tie_count > 0 ? SW_COUNTS_TIE : 0);
    return (on & sw_melisma_counts(&s->rules)) != 0;
}

sw_melisma_turn sw_melisma_begin(sw_melisma *s, sw_moment when)
{
    size_t kept = 0;
    for (size_t i = 0; i < s->tie_count; i++) {
        if (sw_moment_compare(when, s->ties[i].end) <= 0 || sw_melisma_waiting_ties(&s->rules)) {
            s->ties[kept++] = s->ties[i];
        }
    }
    s->tie_count = kept;
    if ((s->open_beam[0] || s->open_beam[1]) && !sw_melisma_automatic_beams(&s->rules)) {
        s->beam = true;
    }
    return (sw_melisma_turn){.when = when};
}

void sw_melisma_set(sw_melisma *s, const sw_reading *reading, uint32_t music, sw_context_level level)
{
    const sw_music *m = &reading->music[music];
    sw_slice text = sw_music_slice(reading, music);
    if (m->kind == SW_MUSIC_SETTING) {
        if (sw_slice_starts(text, "\\melisma")) {
            s->manual = sw_slice_is(text, "\\melisma");
        } else {
            sw_melisma_rule_read(&s->rules.levels[level], reading, music);
        }
        return;
    }
    if (sw_slice_is(sw_set_property(reading, music), "melismaBusy")) {
        s->manual = sw_slice_is(sw_set_value(reading, music), "##t");
    } else {
        sw_melisma_rule_read(&s->rules.levels[level], reading, music);
    }
}

static void add_slur(uint32_t *names, size_t *count, uint32_t name)
{
    if (*count < SW_MAX_SLURS) {
        names[(*count)++] = name;
    }
}

/* A note takes the ties that wait for it; true when there is one. */
static bool take_ties(sw_melisma *s, const sw_event *note)
{
    size_t kept = 0;
    bool taken = false;
    for (size_t i = 0; i < s->tie_count; i++) {
        bool drum = note->kind == SW_EVENT_DRUM;
        bool same = s->ties[i].drum == drum && (drum || sw_pitch_compare(s->ties[i].pitch, note->pitch) == 0);
        taken = taken || same;
        if (!same) {
            s->ties[kept++] = s->ties[i];
        }
    }
    s->tie_count = kept;
    return taken;
}

static void end_slurs(sw_melisma *s, const sw_turn_marks *t)
{
    for (size_t e = 0; e < t->end_count; e++) {
        size_t kept = 0;
        for (size_t i = 0; i < s->slur_count; i++) {
            if (s->slurs[i] != t->slur_ends[e]) {
                s->slurs[kept++] = s->slurs[i];
            }
        }
        s->slur_count = kept;
    }
    for (size_t b = 0; b < t->start_count; b++) {
        bool open = false;
        for (size_t i = 0; i < s->slur_count; i++) {
            open = open || s->slurs[i] == t->slur_starts[b];
        }
        if (!open) {
            add_slur(s->slurs, &s->slur_count, t->slur_starts[b]);
        }
    }
}

static void end_beams(sw_melisma *s, const sw_turn_marks *t, bool grace)
{
    bool automatic = sw_melisma_automatic_beams(&s->rules);
    if (t->beam_start && !s->open_beam[grace]) {
        s->open_beam[grace] = true;
        s->beam = s->beam || !automatic;
    }
    if (t->beam_end && s->open_beam[grace]) {
        s->open_beam[grace] = false;
        s->beam = s->beam && automatic;
    }
}

bool sw_is_note(const sw_event *event)
{
    return event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM;
}

void sw_melisma_hear(sw_melisma *s, sw_melisma_turn *t, const sw_reading *reading, const sw_sung_marks *marks,
                     const sw_event *event)
{
    bool grace = !sw_rational_is_zero(t->when.grace);
    uint8_t kind = reading->music[event->chord].kind;
    t->marks.tie = false;
    sw_sung_marks_read(marks, event->chord, &t->marks);
    if (event->chord != event->music && kind != SW_MUSIC_REPEAT_CHORD && kind != SW_MUSIC_BARE) {
        sw_sung_marks_read(marks, event->music, &t->marks);
    }
    if (!sw_is_note(event)) {
        return;
    }
    t->slurred_grace = t->slurred_grace || (grace && sw_sung_marks_slurs_grace(marks, event));
    t->taken = take_ties(s, event) || t->taken;
    if ((t->marks.tie || t->all_tied) && t->tie_count < SW_MAX_TIES) {
        sw_moment over = sw_later(t->when, event->duration, grace);
        t->ties[t->tie_count++] = (sw_waiting_tie){event->pitch, event->kind == SW_EVENT_DRUM, over};
    }
}

void sw_melisma_end(sw_melisma *s, const sw_melisma_turn *t)
{
    bool grace = !sw_rational_is_zero(t->when.grace);
    if ((t->taken || t->tie_count > 0) && !sw_melisma_waiting_ties(&s->rules)) {
        s->tie_count = 0;
    }
    for (size_t i = 0; i < t->tie_count && s->tie_count < SW_MAX_TIES; i++) {
        s->ties[s->tie_count++] = t->ties[i];
    }
    end_slurs(s, &t->marks);
    s->grace_slur = t->slurred_grace || (grace && s->grace_slur);
    end_beams(s, &t->marks, grace);
}
