#include "checks/silencers.h"

#include <stdlib.h>
#include <string.h>

#include "checks/rules.h"

/* ---- finding them ----------------------------------------------------------------------------------------
 */

/* The parts of a line before and behind a comment are blank. */
static bool stands_alone(const sw_text *text, uint32_t start, uint32_t end)
{
    uint32_t first = sw_text_line(text, start);
    uint32_t last = sw_text_line(text, end);
    sw_slice before = sw_text_slice(text, text->lines[first - 1], start);
    sw_slice line = sw_text_line_slice(text, last);
    uint32_t used = end - text->lines[last - 1];
    sw_slice behind = sw_slice_from(line, used < line.length ? used : line.length);
    return sw_slice_trim(before).length == 0 && sw_slice_trim(behind).length == 0;
}

/* The next line on which more than a comment stands; 0 when there is none. */
static uint32_t next_line(const sw_text *text, uint32_t line)
{
    for (line++; line <= text->line_count; line++) {
        sw_slice content = sw_slice_trim(sw_text_line_slice(text, line));
        if (content.length > 0 && content.data[0] != '%') {
            return line;
        }
    }
    return 0;
}

static void add(sw_silencers *list, const sw_reading *reading, uint32_t file, const sw_node *node,
                sw_findings *findings)
{
    const sw_text *text = reading->files[file].text;
    sw_silencer silencer = {.file = file, .start = node->start, .end = node->end};
    char *fault;
    if (!sw_silencer_read(sw_text_slice(text, node->start, node->end), &silencer, &fault)) {
        if (fault != NULL) {
            sw_findings_add(findings, SW_WARNING, "silencer", file, node->start, node->end, "%s", fault);
        }
        free(fault);
        return;
    }
    silencer.line = sw_text_line(text, node->start);
    if (stands_alone(text, node->start, node->end)) {
        silencer.line = next_line(text, sw_text_line(text, node->end - 1));
    }
    list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
    list->items[list->count++] = silencer;
}

sw_silencers sw_silencers_of(const sw_reading *reading, sw_findings *findings)
{
    sw_silencers list = {0};
    for (uint32_t file = 0; file < reading->file_count; file++) {
        const sw_syntax *syntax = reading->files[file].syntax;
        for (uint32_t i = 0; syntax != NULL && i < syntax->count; i++) {
            if (syntax->nodes[i].kind == SW_NODE_COMMENT) {
                add(&list, reading, file, &syntax->nodes[i], findings);
            }
        }
    }
    return list;
}

void sw_silencers_free(sw_silencers *silencers)
{
    for (size_t i = 0; i < silencers->count; i++) {
        free(silencers->items[i].rules);
    }
    free(silencers->items);
    *silencers = (sw_silencers){0};
}

/* ---- using them ------------------------------------------------------------------------------------------
 */

/* Whether what is heard at a finding lies in bars of a score. */
static bool in_bars(const sw_heard *heard, const sw_bar_range *bars, const sw_finding *finding)
{
    size_t count;
    const sw_heard_item *items = sw_heard_near(heard, finding->file, finding->start, &count);
    for (size_t i = 0; i < count; i++) {
        const sw_score *score = &heard->reading->scores[items[i].score];
        sw_rational onset = score->events[items[i].event].onset;
        uint32_t bar = sw_score_bar_at(score, onset);
        int number = bar == SW_NO_INDEX ? 1 : score->bars[bar].number;
        if (number < bars->first_bar || number > bars->last_bar) {
            continue;
        }
        sw_rational from;
        sw_rational to;
        if (sw_bar_range_moments(score, bars, &from, &to)) {
            if (sw_rational_compare(onset, from) >= 0 && sw_rational_compare(onset, to) < 0) {
                return true;
            }
        } else {
            return true; /* the score ends before the last bar named */
        }
    }
    return false;
}

static bool covers(const sw_silencer *silencer, const sw_heard *heard, const sw_finding *finding)
{
    switch (silencer->scope) {
    case SW_SILENCES_LINE:
        return finding->line == silencer->line;
    case SW_SILENCES_BARS:
        return in_bars(heard, &silencer->bars, finding);
    default:
        return true;
    }
}

bool sw_silencers_cover(sw_silencers *silencers, const sw_heard *heard, const sw_finding *finding)
{
    bool covered = false;
    size_t rule = 0;
    while (rule < sw_rules_count() && strcmp(sw_rules_get(rule)->name, finding->rule) != 0) {
        rule++;
    }
    for (size_t i = 0; i < silencers->count && rule < sw_rules_count(); i++) {
        sw_silencer *silencer = &silencers->items[i];
        if (silencer->file == finding->file && silencer->rules[rule] && covers(silencer, heard, finding)) {
            silencer->used = covered = true;
        }
    }
    return covered;
}

/* ---- the rule --------------------------------------------------------------------------------------------
 */

const sw_rule sw_rule_silencer = {
    .name = "silencer",
    .summary = "a comment that should silence a rule is wrong, or silences nothing",
    .severity = SW_WARNING,
    .explain =
        "Where a finding is no trouble, a comment in the source says so, with the reason:\n\n"
        "  c,4 d e f |  % stavewright: allow range (the player has a low C extension)\n"
        "  % stavewright: allow range, prep-time (as in the composer's demo)      the line below it\n"
        "  % stavewright: allow range in bars 12-20 (played by a guest)           these bars, in this file\n"
        "  % stavewright: allow bar-length in this file (a free cadenza)\n\n"
        "This rule tells of such comments whose rule does not exist, that give no reason or bars that can't "
        "be read, and\n"
        "of those that silence nothing any more: the next reader would think that the trouble is still "
        "there. A comment is\n"
        "called idle only when its rules were run, and all notes that it speaks of were in the scores that "
        "were read.\n\n"
        "To mend: correct the comment, or remove it.\n",
};
