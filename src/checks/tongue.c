/* Tongued notes that come faster than the tongue of the instrument. */
#include "checks/line.h"
#include "checks/rules.h"

enum { FEW = 5 }; /* fewer notes in a row are a flourish */

/* What the tongue gives on an instrument, notes a second. 0: no figure. */
static double fastest_of(const sw_limit *limit)
{
    return limit->double_tongue > 0 ? limit->double_tongue : limit->single;
}

/* `count` tongued notes of about equal speed, on one instrument. */
static void report(sw_check *check, const sw_line *line, const sw_line_note *first, size_t count)
{
    double fastest = fastest_of(first->limit);
    double rate = (double)(count - 1) / (first[count - 1].begin - first->begin);
    sw_line_add(check, line, first, rate > 1.25 * fastest ? SW_WARNING : SW_NOTE, "tongue",
                "%zu tongued notes at %.1f a second, %s tonguing gives about %.1f; slur some of them", count,
                rate, first->limit->double_tongue > 0 ? "double" : "single", fastest);
}

static void check_line(sw_check *check, const sw_line *line)
{
    size_t first = 0;
    for (size_t i = 1; i <= line->count; i++) {
        const sw_line_note *note = &line->items[i];
        double fastest = i < line->count ? fastest_of(note->limit) : 0;
        bool fast = fastest > 0 && !note->first && !note->joined && note->limit == note[-1].limit &&
                    note->begin - note[-1].begin < 1 / (1.05 * fastest);
        if (!fast) {
            if (i - first >= FEW && sw_line_tempo_is_told(check, line, &line->items[first])) {
                report(check, line, &line->items[first], i - first);
            }
            first = i;
        }
    }
}

static void run(sw_check *check)
{
    sw_check_lines(check, check_line);
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
        "another instrument. To set: limits: [{for: [horn], single: 8, double: 10}] in stavewright.yaml.\n",
    .run = run,
};
