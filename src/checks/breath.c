/* Spans of wind playing that are longer than a breath, with no place to take one.
 *
 * A place is a rest, a breath mark, or the end of a note that is neither tied nor slurred to the next and
 * long enough that a catch breath can be cut from it. Each note takes its part of the breath that the player
 * has at its loudness and register. */
#include <stdlib.h>

#include "checks/line.h"
#include "checks/rules.h"
#include "checks/say.h"

/* How long a breath lasts is no exact figure: less than this is no finding. */
static const double ENOUGH = 1.3;

/* A span without a place to breathe. */
typedef struct span {
    const sw_line_note *first;
    const sw_line_note *last;
    double used; /* breaths */
} span;

typedef struct scene {
    sw_check *check;
    const sw_score *score;
    const sw_limit *limit;
    uint32_t staff;
} scene;

static void report(const scene *s, const span *p)
{
    const sw_event *event = &s->score->events[p->first->event];
    const sw_event *last = &s->score->events[p->last->event];
    uint32_t bar = sw_score_bar_at(s->score, last->onset);
    char words[3][SW_SAY];
    char label[32];
    double seconds = p->last->end - p->first->begin;
    const sw_music *m = sw_event_written(s->check->reading, event);
    sw_findings_add(
        s->check->findings, p->used > 2 * ENOUGH ? SW_WARNING : SW_NOTE, "breath", m->file, m->start, m->end,
        "%s, %s: %s up to bar %d without a place to breathe, a breath lasts about %s here; write a breath "
        "mark or a rest, or share the line",
        sw_say_place(s->score, event->onset, words[0]),
        sw_staff_label(s->check->reading, s->score, s->staff, label), sw_say_seconds(seconds, words[1]),
        bar == SW_NO_INDEX ? 1 : s->score->bars[bar].number, sw_say_seconds(seconds / p->used, words[2]));
}

static bool is_place(const scene *s, const sw_line_note *before, const sw_line_note *note)
{
    double catch_seconds = sw_limits_breath(s->check->limits)->catch_seconds;
    return note->first || note->breath_before || note->begin - before->end >= catch_seconds ||
           (!note->joined && before->end - before->begin >= 2 * catch_seconds);
}

static void check_staff(const scene *s, const sw_playing *playing)
{
    sw_line line = sw_line_of_staff(s->check, s->score, playing, s->staff);
    span p = {0};
    for (size_t i = 0; i <= line.count; i++) {
        const sw_line_note *note = &line.items[i];
        if (i == line.count || i == 0 || is_place(s, note - 1, note)) {
            if (p.first != NULL && p.used > ENOUGH &&
                sw_tempo_is_told(s->check->reading, s->score, s->score->events[p.first->event].onset)) {
                report(s, &p);
            }
            if (i == line.count) {
                break;
            }
            p = (span){.first = note};
        }
        p.last = note;
        p.used += (note->end - note->begin) /
                  sw_limits_breath_seconds(s->check->limits, s->limit, note->loudness, note->low);
    }
    free(line.items);
}

static void run(sw_check *check)
{
    for (size_t i = 0; i < check->reading->score_count; i++) {
        const sw_score *score = &check->reading->scores[i];
        const sw_playing *playing = score->in_markup ? NULL : sw_check_playing(check, i);
        for (uint32_t staff = 0; playing != NULL && staff < score->staff_count; staff++) {
            scene s = {check, score, sw_limits_of(check->limits, playing->instruments[staff]), staff};
            if (s.limit != NULL && s.limit->breath > 0) {
                check_staff(&s, playing);
            }
        }
    }
}

const sw_rule sw_rule_breath = {
    .name = "breath",
    .summary = "a wind player or singer has no place to breathe for longer than a breath lasts",
    .severity = SW_WARNING,
    .explain =
        "Woodwind and brass players and singers need air. This rule follows each line and counts how much of "
        "a "
        "breath every note\n"
        "takes: the seconds at the tempo there, more when it is loud or low, less when it is soft. A "
        "new breath can be\n"
        "taken at a rest, at a breath mark (\\breathe), and behind a note that is not slurred or tied "
        "to the next one\n"
        "and lasts 0.6 s or more, from which 0.3 s can be cut. What goes on longer than a breath is "
        "reported, from its\n"
        "first note.\n\n"
        "The figures: at mf a breath lasts 10 s on the flute, 25 s on the oboe, 20 s on the clarinet, "
        "15 s on bassoon,\n"
        "horn and trumpet, 10 s on the trombone, 6 s on the tuba, 12 s for singers; half of it at ff, half "
        "more at pp, "
        "0.6 of it in the\n"
        "lowest fifth of the compass (common practice, no source; src/players/limits.yaml). What takes more "
        "than 1.3 breaths\n"
        "is a note, more than twice that a warning. Two players on a line can take turns: then it is no "
        "trouble. Where the\n"
        "score says no tempo, nothing is reported.\n\n"
        "To mend: write \\breathe or a rest where the phrase allows it, divide the slur, or share the "
        "line. The command breaths writes the marks.\n",
    .run = run,
};
