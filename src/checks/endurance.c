/* Wind players who play too long without a rest. */
#include "checks/line.h"
#include "checks/rules.h"
#include "checks/say.h"

static const double REST = 1.0; /* seconds that count as one */

static bool is_rest(const sw_line *line, size_t i, double seconds)
{
    return i == line->count || line->items[i].first ||
           line->items[i].begin - line->items[i - 1].end >= seconds;
}

/* Adds up the high notes up to each rest that is long enough, or up to another instrument. */
static void check_lips(sw_check *check, const sw_line *line)
{
    const sw_line_note *first = NULL;
    const sw_line_note *last = NULL;
    double seconds = 0;
    for (size_t i = 0; i <= line->count; i++) {
        const sw_line_note *note = i == line->count ? NULL : &line->items[i];
        const sw_lips *lips = first == NULL ? NULL : &first->instrument->can.lips;
        if (lips != NULL && (is_rest(line, i, lips->rest) || note->instrument != first->instrument)) {
            if (seconds > lips->seconds && sw_line_tempo_is_told(check, line, first)) {
                char words[4][SW_SAY];
                sw_line_add(check, line, first, SW_NOTE, "endurance",
                            "%s above written %s up to bar %d without a rest of %s; lips tire after about "
                            "%s, bring some of it down",
                            sw_say_seconds(seconds, words[0]), sw_say_pitch(lips->above, words[1]),
                            sw_line_bar(line, last), sw_say_seconds(lips->rest, words[2]),
                            sw_say_seconds(lips->seconds, words[3]));
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

/* A span from rest to rest is measured by the instrument with which it begins: who changes rests. */
static void check_rests(sw_check *check, const sw_line *line)
{
    const sw_line_note *first = line->items;
    for (size_t i = 1; i <= line->count; i++) {
        if (!is_rest(line, i, REST)) {
            continue;
        }
        const sw_line_note *last = &line->items[i - 1];
        double most = first->limit->without_rest;
        double seconds = last->end - first->begin;
        if (most > 0 && seconds > most && sw_line_tempo_is_told(check, line, first)) {
            char words[2][SW_SAY];
            sw_line_add(check, line, first, SW_NOTE, "endurance",
                        "plays %s up to bar %d without a rest of a second; %s of it are a lot, give a rest "
                        "or share",
                        sw_say_seconds(seconds, words[0]), sw_line_bar(line, last),
                        sw_say_seconds(most, words[1]));
        }
        first = last + 1;
    }
}

static void check_line(sw_check *check, const sw_line *line)
{
    check_lips(check, line);
    check_rests(check, line);
}

static void run(sw_check *check)
{
    sw_check_lines(check, check_line);
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
        "high notes down. To set: limits: [{for: [tuba], without-rest: 60}] in stavewright.yaml.\n",
    .run = run,
};
