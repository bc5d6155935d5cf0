/* Wind players who play too long without a rest. */
#include <stdlib.h>

#include "checks/line.h"
#include "checks/rules.h"
#include "checks/say.h"

static const double REST = 1.0; /* seconds that count as one */

typedef struct scene {
    sw_check *check;
    const sw_score *score;
    const sw_limit *limit;
    uint32_t staff;
} scene;

static void report(const scene *s, const sw_line_note *first, const sw_line_note *last)
{
    const sw_event *event = &s->score->events[first->event];
    uint32_t bar = sw_score_bar_at(s->score, s->score->events[last->event].onset);
    char words[3][SW_SAY];
    char label[32];
    const sw_music *m = sw_event_written(s->check->reading, event);
    sw_findings_add(
        s->check->findings, SW_NOTE, "endurance", m->file, m->start, m->end,
        "%s, %s: plays %s up to bar %d without a rest of a second; %s of it are a lot, give a rest or share",
        sw_say_place(s->score, event->onset, words[0]),
        sw_staff_label(s->check->reading, s->score, s->staff, label),
        sw_say_seconds(last->end - first->begin, words[1]),
        bar == SW_NO_INDEX ? 1 : s->score->bars[bar].number,
        sw_say_seconds(s->limit->without_rest, words[2]));
}

static void report_lips(const scene *s, const sw_lips *lips, const sw_line_note *first,
                        const sw_line_note *last, double seconds)
{
    const sw_event *event = &s->score->events[first->event];
    uint32_t bar = sw_score_bar_at(s->score, s->score->events[last->event].onset);
    char words[5][SW_SAY];
    char label[32];
    const sw_music *m = sw_event_written(s->check->reading, event);
    sw_findings_add(
        s->check->findings, SW_NOTE, "endurance", m->file, m->start, m->end,
        "%s, %s: %s above written %s up to bar %d without a rest of %s; lips tire after about %s, "
        "bring some of it down",
        sw_say_place(s->score, event->onset, words[0]),
        sw_staff_label(s->check->reading, s->score, s->staff, label), sw_say_seconds(seconds, words[1]),
        sw_say_pitch(lips->above, words[2]), bar == SW_NO_INDEX ? 1 : s->score->bars[bar].number,
        sw_say_seconds(lips->rest, words[3]), sw_say_seconds(lips->seconds, words[4]));
}

/* Adds up the high notes up to each rest that is long enough. */
static void check_lips(const scene *s, const sw_lips *lips, const sw_line *line)
{
    const sw_line_note *first = NULL;
    const sw_line_note *last = NULL;
    double seconds = 0;
    for (size_t i = 0; i <= line->count; i++) {
        const sw_line_note *note = i == line->count ? NULL : &line->items[i];
        if (note == NULL || note->first || note->begin - line->items[i - 1].end >= lips->rest) {
            if (seconds > lips->seconds &&
                sw_tempo_is_told(s->check->reading, s->score, s->score->events[first->event].onset)) {
                report_lips(s, lips, first, last, seconds);
            }
            first = NULL;
            seconds = 0;
        }
        if (note != NULL && note->high) {
            first = first == NULL ? note : first;
            last = note;
            seconds += note->end - note->begin;
        }
    }
}

static void check_staff(const scene *s)
{
    sw_line line = sw_line_of_staff(s->check, s->score, s->staff);
    size_t first = 0;
    const sw_lips *lips = &sw_check_playing(s->check, (size_t)(s->score - s->check->reading->scores))
                               ->instruments[s->staff]
                               ->can.lips;
    if (lips->source != NULL) {
        check_lips(s, lips, &line);
    }
    for (size_t i = 1; i <= line.count; i++) {
        bool goes_on =
            i < line.count && !line.items[i].first && line.items[i].begin - line.items[i - 1].end < REST;
        if (!goes_on) {
            if (line.items[i - 1].end - line.items[first].begin > s->limit->without_rest &&
                sw_tempo_is_told(s->check->reading, s->score,
                                 s->score->events[line.items[first].event].onset)) {
                report(s, &line.items[first], &line.items[i - 1]);
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
            scene s = {check, score, sw_limits_of(check->limits, playing->instruments[staff]), staff};
            if (s.limit != NULL && s.limit->without_rest > 0) {
                check_staff(&s);
            }
        }
    }
}

const sw_rule sw_rule_endurance = {
    .name = "endurance",
    .summary = "a wind player plays on and on without a rest",
    .severity = SW_NOTE,
    .explain =
        "Lips, tongue and lungs tire. A line of a woodwind or brass player that goes on without a\n"
        "rest of at least a second for longer than the figure of the instrument is told, from its\n"
        "first note.\n\n"
        "The figures: 90 s for flute, clarinet, bassoon and saxophones, 60 s for oboe, horn, trumpet\n"
        "and trombone, 45 s for bass trombone and tuba (common practice, no source;\n"
        "src/players/limits.yaml). A soloist may be used to more; after a rest the next span counts\n"
        "anew. On brass high notes tire the lips: above written E5 on the horn, G5 on the trumpet, F4\n"
        "on the trombone they may add up to 30 s before a rest of 4 s (common practice, no source;\n"
        "stavewright explain trumpet).\n\n"
        "To mend: rest the player where the line is doubled, let two players take turns, or bring\n"
        "high notes down.\n",
    .run = run,
};
