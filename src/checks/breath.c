/* Spans of wind playing that are longer than a breath, with no place to take one.
 *
 * A place is a rest, a breath mark, or the end of a note that is neither tied nor slurred to the next and
 * long enough that a catch breath fits into its second half and the short rest that may follow. Each note
 * takes its part of the breath that the player has at its loudness and register. */
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

static void report(sw_check *check, const sw_line *line, const span *p)
{
    char words[2][SW_SAY];
    double seconds = p->last->end - p->first->begin;
    sw_line_add(check, line, p->first, p->used > 2 * ENOUGH ? SW_WARNING : SW_NOTE, "breath",
                "%s up to bar %d without a place to breathe, a breath lasts about %s here; write a breath "
                "mark or a rest, or share the line",
                sw_say_seconds(seconds, words[0]), sw_line_bar(line, p->last),
                sw_say_seconds(seconds / p->used, words[1]));
}

static bool is_place(double catch_seconds, const sw_line_note *before, const sw_line_note *note)
{
    double rest = note->begin - before->end;
    double cut = note->joined ? 0 : (before->end - before->begin) / 2;
    return note->first || note->breath_before || rest + cut >= catch_seconds;
}

static void check_line(sw_check *check, const sw_line *line)
{
    double catch_seconds = sw_limits_breath(check->limits)->catch_seconds;
    span p = {0};
    for (size_t i = 0; i <= line->count; i++) {
        const sw_line_note *note = &line->items[i];
        if (i == line->count || i == 0 || is_place(catch_seconds, note - 1, note)) {
            if (p.used > ENOUGH && sw_line_tempo_is_told(check, line, p.first)) {
                report(check, line, &p);
            }
            if (i == line->count) {
                break;
            }
            p = (span){.first = note};
        }
        p.last = note;
        p.used += (note->end - note->begin) /
                  sw_limits_breath_seconds(check->limits, note->limit, note->dynamic, note->low);
    }
}

static void run(sw_check *check)
{
    sw_check_lines(check, check_line);
}

const sw_rule sw_rule_breath = {
    .name = "breath",
    .summary = "a wind player or singer has no place to breathe for longer than a breath lasts",
    .severity = SW_WARNING,
    .explain =
        "Woodwind and brass players and singers need air. This rule follows each line and counts how much of "
        "a\n"
        "breath every note takes: the seconds at the tempo there, more when it is loud or low, less\n"
        "when it is soft. A new breath can be taken at a rest, at a breath mark (\\breathe), and\n"
        "behind a note that is not slurred or tied to the next one and lasts 0.6 s or more, from\n"
        "which 0.3 s can be cut (less where a short rest helps). What goes on longer than a breath is "
        "reported, from its first note.\n\n"
        "The figures: at mf a breath lasts 10 s on the flute, 25 s on the oboe, 20 s on the clarinet,\n"
        "15 s on bassoon, horn and trumpet, 10 s on the trombone, 6 s on the tuba, 12 s for singers; half of "
        "it at ff,\n"
        "half more at pp, 0.6 of it in the lowest fifth of the compass of winds (common practice, no "
        "source;\n"
        "src/players/limits.yaml). What takes more than 1.3 breaths is a note, more than twice that a\n"
        "warning. Two players on a line can take turns: then it is no trouble. Where the score says\n"
        "no tempo, nothing is reported.\n\n"
        "To mend: write \\breathe or a rest where the phrase allows it, divide the slur, or share the\n"
        "line. The command breaths writes the marks. To set: limits: [{for: [flute], breath: 14}] in\n"
        "stavewright.yaml, and breath-factors for soft, loud, low and catch.\n",
    .run = run,
};
