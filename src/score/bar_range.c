#include <stdlib.h>

#include "stavewright/metre.h"
#include "stavewright/selection.h"

/* `12` or `12:3` or `12:5/2`; returns what is behind it, NULL when it is no place. */
static const char *parse_place(const char *text, int *bar, sw_rational *beat)
{
    char *end;
    long number = strtol(text, &end, 10);
    if (end == text || number < -100000 || number > 1000000) {
        return NULL;
    }
    *bar = (int)number;
    *beat = sw_rational_zero();
    if (*end == ':') {
        const char *start = end + 1;
        long num = strtol(start, &end, 10);
        long den = 1;
        if (end == start || num < 1 || num > 1000) {
            return NULL;
        }
        if (*end == '/') {
            start = end + 1;
            den = strtol(start, &end, 10);
            if (end == start || den < 1 || den > 1000) {
                return NULL;
            }
        }
        *beat = sw_rational_make(num, den);
    }
    return end;
}

bool sw_bar_range_parse(const char *text, sw_bar_range *range)
{
    *range = (sw_bar_range){.given = true};
    const char *rest = parse_place(text, &range->first_bar, &range->first_beat);
    if (rest == NULL) {
        return false;
    }
    range->last_bar = range->first_bar;
    range->last_beat = range->first_beat;
    if (*rest == '-') {
        rest = parse_place(rest + 1, &range->last_bar, &range->last_beat);
    }
    return rest != NULL && *rest == '\0' && range->last_bar >= range->first_bar;
}

/* The last of the bars with the same number that follow one another: see sw_bar. */
static uint32_t last_alike(const sw_score *score, uint32_t bar)
{
    while (bar + 1 < score->bar_count && score->bars[bar + 1].number == score->bars[bar].number) {
        bar++;
    }
    return bar;
}

/* The moment of a beat of a bar. Where the bar comes in several pieces, in the first that reaches so far. */
static sw_rational beat_moment(const sw_score *score, uint32_t bar, sw_rational beat)
{
    for (uint32_t last = last_alike(score, bar);; bar++) {
        const sw_bar *b = &score->bars[bar];
        sw_metre metre = {b->beats, b->beat_value};
        sw_rational position =
            sw_rational_mul(sw_rational_sub(beat, sw_rational_make(1, 1)), sw_metre_beat(metre));
        sw_rational behind = sw_rational_max(sw_rational_sub(position, b->first), sw_rational_zero());
        if (bar == last || sw_rational_compare(behind, b->length) < 0) {
            return sw_rational_add(b->start, behind);
        }
    }
}

bool sw_bar_range_moments(const sw_score *score, const sw_bar_range *range, sw_rational *from,
                          sw_rational *to)
{
    *from = sw_rational_zero();
    *to = score->length;
    if (!range->given) {
        return true;
    }
    uint32_t first = sw_score_bar_numbered(score, range->first_bar);
    uint32_t last = sw_score_bar_numbered(score, range->last_bar);
    if (first == SW_NO_INDEX || last == SW_NO_INDEX) {
        return false;
    }
    const sw_bar *end = &score->bars[last_alike(score, last)];
    *from =
        range->first_beat.num == 0 ? score->bars[first].start : beat_moment(score, first, range->first_beat);
    *to = sw_rational_add(end->start, end->length);
    if (range->last_beat.num != 0) { /* up to the next beat */
        sw_rational next = sw_rational_add(range->last_beat, sw_rational_make(1, 1));
        *to = sw_rational_min(*to, beat_moment(score, last, next));
    }
    return true;
}
