/* Tongued notes that come faster than the tongue of the instrument. */
#include <stdlib.h>

#include "checks/line.h"
#include "checks/rules.h"
#include "checks/say.h"

enum { FEW = 5 }; /* fewer notes in a row are a flourish */

typedef struct scene {
    sw_check *check;
    const sw_score *score;
    const sw_limit *limit;
    uint32_t staff;
    double fastest; /* notes a second */
} scene;

/* A run of tongued notes of equal speed: from first to last. */
static void report(const scene *s, const sw_line_note *first, const sw_line_note *last, size_t count)
{
    const sw_event *event = &s->score->events[first->event];
    double rate = (double)(count - 1) / (last->begin - first->begin);
    char words[2][SW_SAY];
    char label[32];
    const sw_music *m = sw_event_written(s->check->reading, event);
    sw_findings_add(
        s->check->findings, rate > 1.25 * s->fastest ? SW_WARNING : SW_NOTE, "tongue", m->file, m->start,
        m->end, "%s, %s: %zu tongued notes at %.1f a second, %s tonguing gives about %.1f; slur some of them",
        sw_say_place(s->score, event->onset, words[0]),
        sw_staff_label(s->check->reading, s->score, s->staff, label), count, rate,
        s->limit->double_tongue > 0 ? "double" : "single", s->fastest);
}

static void check_staff(const scene *s)
{
    sw_line line = sw_line_of_staff(s->check, s->score, s->staff);
    size_t first = 0;
    for (size_t i = 1; i <= line.count; i++) {
        const sw_line_note *note = &line.items[i];
        bool fast = i < line.count && !note->first && !note->joined &&
                    note->begin - line.items[i - 1].begin < 1 / (1.05 * s->fastest);
        if (!fast) {
            if (i - first >= FEW && sw_tempo_is_told(s->check->reading, s->score,
                                                     s->score->events[line.items[first].event].onset)) {
                report(s, &line.items[first], &line.items[i - 1], i - first);
            }
            first = i;
        }
    }
    free(line.items);
}

static void run(sw_check *check)
{
    for (size_t i = 0; i < check->reading->score_count; i++) {
        const sw_score *score = &check->reading->scores[i];
        const sw_playing *playing = score->in_markup ? NULL : sw_check_playing(check, i);
        for (uint32_t staff = 0; playing != NULL && staff < score->staff_count; staff++) {
            scene s = {check, score, sw_limits_of(check->limits, playing->instruments[staff]), staff, 0};
            if (s.limit != NULL && s.limit->single > 0) {
                s.fastest = s.limit->double_tongue > 0 ? s.limit->double_tongue : s.limit->single;
                check_staff(&s);
            }
        }
    }
}

const sw_rule sw_rule_tongue = {
    .name = "tongue",
    .summary = "tongued notes faster than the instrument's tonguing",
    .severity = SW_WARNING,
    .explain =
        "Five or more notes in a row that are not slurred, each of which the tongue has to start, are\n"
        "compared with what the instrument gives: double tonguing where that is usual (flutes and\n"
        "brass), otherwise single tonguing. Above it the notes blur; from a quarter above it on the\n"
        "rule warns.\n\n"
        "The figures, in notes a second: flute 8 single and 11.2 double, oboe and bassoon 7.5,\n"
        "clarinet 8, horn 7.2 and 9.6, trumpet 8.4 and 10.7, trombone 7.5 and 9.2, tuba 6.7 and 8.8\n"
        "(common practice, no source; src/players/limits.yaml). That the flute is the woodwind that\n"
        "double-tongues: Rimsky-Korsakov, Principles of Orchestration. Some players are faster, on\n"
        "some instruments much: ask.\n\n"
        "To mend: slur two of each group, share the notes between two players, or give them to\n"
        "another instrument.\n",
    .run = run,
};
