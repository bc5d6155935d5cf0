/* Too little time to change from one way of playing to another.
 *
 * The hand is free when the last note in the old way has ended; after a plucked one as soon as it has begun,
 * for the stroke is over then. Time is real time: the tempo map turns positions into seconds. */
#include <stdlib.h>

#include "checks/rules.h"
#include "checks/say.h"
#include "checks/strokes.h"

/* One staff of the score that is looked at. */
typedef struct scene {
    sw_check *check;
    const sw_score *score;
    const sw_playing *playing;
    const sw_instrument *instrument;
    sw_strokes strokes;
    uint32_t staff;
} scene;

/* What a player has to do between two strokes. */
typedef struct changeover {
    uint8_t from;
    uint8_t to;
    const sw_technique_change *change;
    double given; /* seconds */
} changeover;

static const sw_technique_state *state_of(const scene *s, const sw_stroke *stroke)
{
    return &s->playing->states[s->playing->state_of[stroke->event]];
}

static bool is_plucked(const scene *s, const sw_stroke *stroke)
{
    const sw_technique_state *state = state_of(s, stroke);
    for (size_t g = 0; g < sw_techniques_group_count(s->check->techniques); g++) {
        if (sw_techniques_get(s->check->techniques, state->now[g])->plucked) {
            return true;
        }
    }
    return false;
}

static double seconds_between(const scene *s, const sw_stroke *before, const sw_stroke *stroke,
                              const sw_technique_change *change)
{
    sw_rational free_at = change->while_sounding || is_plucked(s, before) ? before->onset : before->end;
    double given = sw_score_seconds(s->score, stroke->onset) - sw_score_seconds(s->score, free_at);
    return given > 0 ? given : 0;
}

/* The longest change between two strokes that there is no time for. */
static bool find_changeover(const scene *s, const sw_stroke *before, const sw_stroke *stroke,
                            changeover *found)
{
    const sw_technique_state *old = state_of(s, before);
    const sw_technique_state *new = state_of(s, stroke);
    *found = (changeover){.change = NULL};
    for (size_t g = 0; old != new &&g < sw_techniques_group_count(s->check->techniques); g++) {
        bool main_part = old->now[g] != new->now[g];
        uint8_t from = main_part ? old->now[g] : old->half[g];
        uint8_t to = main_part ? new->now[g] : new->half[g];
        const sw_technique_change *change =
            sw_techniques_change(s->check->techniques, s->instrument, from, to);
        double given = change == NULL ? 0 : seconds_between(s, before, stroke, change);
        if (change != NULL && given + 0.01 < change->seconds &&
            (found->change == NULL || found->change->seconds < change->seconds)) {
            *found = (changeover){from, to, change, given};
        }
    }
    return found->change != NULL;
}

/* The smallest value to take off the note before, which keeps at least half of it. */
static const char *value_to_take(const scene *s, const sw_stroke *before, const sw_stroke *stroke,
                                 double needed)
{
    static const struct {
        int numerator, denominator;
        const char *name;
    } values[] = {{1, 16, "a 16th"},       {1, 8, "an eighth"},        {3, 16, "a dotted eighth"},
                  {1, 4, "a quarter"},     {3, 8, "a dotted quarter"}, {1, 2, "a half"},
                  {3, 4, "a dotted half"}, {1, 1, "a whole"}};
    sw_rational length = sw_rational_sub(before->end, before->onset);
    for (size_t i = 0; i < sizeof values / sizeof values[0]; i++) {
        sw_rational value = sw_rational_make(values[i].numerator, values[i].denominator);
        sw_rational twice = sw_rational_add(value, value);
        if (sw_rational_compare(twice, length) > 0) {
            return NULL;
        }
        double at = sw_score_seconds(s->score, sw_rational_sub(before->end, value));
        if (sw_score_seconds(s->score, stroke->onset) - at + 0.01 >= needed) {
            return values[i].name;
        }
    }
    return NULL;
}

static void report(const scene *s, const sw_stroke *before, const sw_stroke *stroke, const changeover *c)
{
    char words[3][SW_SAY];
    char label[32];
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s, %s: %s to %s, %s for it (wants %s)",
                     sw_say_place(s->score, stroke->onset, words[0]),
                     sw_staff_label(s->check->reading, s->score, s->staff, label),
                     sw_techniques_get(s->check->techniques, c->from)->id,
                     sw_techniques_get(s->check->techniques, c->to)->id, sw_say_seconds(c->given, words[1]),
                     sw_say_seconds(c->change->seconds, words[2]));
    const char *value = c->change->while_sounding || is_plucked(s, before)
                            ? NULL
                            : value_to_take(s, before, stroke, c->change->seconds);
    if (value != NULL) {
        sw_buffer_format(&text, "; take %s off the note before", value);
    } else {
        sw_buffer_string(&text, s->instrument->family == SW_STRINGS
                                    ? "; write a rest before it, or let one half change earlier"
                                    : "; write a rest before it, or give one of both to another player");
    }
    const sw_event *event = &s->score->events[stroke->event];
    const sw_music *m = sw_event_written(s->check->reading, event);
    bool hardly = c->given < 0.6 * c->change->seconds;
    sw_findings_add(s->check->findings, hardly ? SW_WARNING : SW_NOTE, "prep-time", m->file, m->start, m->end,
                    "%s", sw_buffer_text(&text));
    sw_buffer_free(&text);
}

static void check_staff(scene *s)
{
    s->strokes = sw_strokes_of_staff(s->check, s->score, s->playing, s->staff);
    for (size_t i = 0; i < s->strokes.count; i++) {
        const sw_stroke *stroke = &s->strokes.items[i];
        changeover found;
        if (stroke->before != SW_NO_INDEX && !stroke->tied &&
            find_changeover(s, &s->strokes.items[stroke->before], stroke, &found)) {
            report(s, &s->strokes.items[stroke->before], stroke, &found);
        }
    }
    free(s->strokes.items);
}

static void run(sw_check *check)
{
    for (size_t i = 0; i < check->reading->score_count; i++) {
        const sw_score *score = &check->reading->scores[i];
        const sw_playing *playing = score->in_markup ? NULL : sw_check_playing(check, i);
        for (uint32_t staff = 0; playing != NULL && staff < score->staff_count; staff++) {
            scene s = {check, score, playing, playing->instruments[staff], {0}, staff};
            if (s.instrument != NULL && sw_playing_changes(playing, score, staff)) {
                check_staff(&s);
            }
        }
    }
}

const sw_rule sw_rule_prep_time = {
    .name = "prep-time",
    .summary = "too little time to change between bow and fingers, mute and open, sticks and hands",
    .severity = SW_WARNING,
    .explain = "Between the last note in one way of playing and the first one in another, hands have "
               "something to do: lay\n"
               "the bow aside, put the mute on, take other sticks. This rule follows the texts of each staff "
               "(pizz., arco,\n"
               "con sord., senza sord., +, soft sticks ... in English, Italian, German and French) and "
               "compares the seconds\n"
               "that are left, at the tempo there, with those that the change wants. After a plucked note "
               "the hand is free\n"
               "at once; after any other when the note has ended.\n\n"
               "The figures: arco to pizzicato 0.5 s, back 1 s (common practice, no source); strings' mutes "
               "on 4.8 s (two\n"
               "bars of 4/4 at crotchet = 100, Berlioz, Treatise on Instrumentation), off 3 s; brass mutes "
               "in 4 s, out 3 s,\n"
               "tuba and horn 5 s in (common practice, no source); sticks 2.5 s. They are defaults for "
               "professionals\n"
               "without hurry: less than 60 percent of them is a warning, more a note. Ask the players.\n\n"
               "To mend: take a value off the note before (the message says which, if half of the note can "
               "stay), write a\n"
               "rest, let one half of a section change earlier than the other, or give one of both to "
               "another player.\n",
    .run = run,
};
