#include "moves/breath_line.h"

#include <stdlib.h>

#include "stavewright/base.h"

int sw_breath_place_cost(unsigned flags)
{
    static const struct {
        unsigned flag;
        int cost;
    } table[] = {
        {SW_BREATH_SLUR, SW_BREATH_IN_SLUR},         {SW_BREATH_PHRASE, SW_BREATH_IN_PHRASE},
        {SW_BREATH_BEAT, SW_BREATH_IN_BEAT},         {SW_BREATH_LEADING, SW_BREATH_AT_LEADING},
        {SW_BREATH_SHORT, SW_BREATH_AFTER_SHORT},    {SW_BREATH_WORD, SW_BREATH_IN_WORD},
        {SW_BREATH_OFF_BEAT, SW_BREATH_BESIDE_BEAT}, {SW_BREATH_TOGETHER, SW_BREATH_WITH_OTHERS},
        {SW_BREATH_SLUR_END, SW_BREATH_AT_SLUR_END}, {SW_BREATH_PHRASE_END, SW_BREATH_AT_PHRASE_END},
        {SW_BREATH_BAR, SW_BREATH_AT_BAR},           {SW_BREATH_LEAP, SW_BREATH_AT_LEAP},
        {SW_BREATH_LONG, SW_BREATH_AFTER_LONG},      {SW_BREATH_SHORT_REST, SW_BREATH_AT_REST},
    };
    if ((flags & SW_BREATH_BOUND) != 0) {
        return -1;
    }
    int cost = SW_BREATH_TAKEN;
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        cost += (flags & table[i].flag) != 0 ? table[i].cost : 0;
    }
    return cost < SW_BREATH_LEAST ? SW_BREATH_LEAST : cost > SW_BREATH_MOST ? SW_BREATH_MOST : cost;
}

int64_t sw_breath_stretch_cost(int64_t air)
{
    int64_t over = air > SW_BREATH_FULL ? air - SW_BREATH_FULL : 0;
    int64_t within = air - over;
    return over * SW_BREATH_OVER + within * within / 25000; /* up to 40: dividing what fits saves less than
                                                               the cheapest breath costs */
}

/* What a line costs from a note on, with a breath taken before it. */
typedef struct value {
    int64_t cost;
    size_t breaths;
    size_t next; /* where the next breath is taken, or comes by itself; the count of notes: nowhere */
} value;

static bool is_better(value a, value b)
{
    return a.cost != b.cost ? a.cost < b.cost : a.breaths < b.breaths;
}

/* The best way on from note i. What is longer than a breath and has a place in it is never the best: dividing
 * it saves at least one thousandth, which costs more than any place. So the search ends there. */
static value find_value(const sw_breath_note *notes, size_t count, const value *best, size_t i)
{
    value found = {.next = SIZE_MAX};
    int64_t air = 0;
    for (size_t j = i + 1; j <= count; j++) {
        air += notes[j - 1].air;
        if (air > SW_BREATH_FULL && found.next != SIZE_MAX) {
            break;
        }
        bool end = j == count || notes[j].free;
        if (!end && notes[j].cost < 0) {
            continue;
        }
        value v = {.cost = sw_breath_stretch_cost(air), .next = j};
        if (j < count) {
            v.cost += best[j].cost + (end ? 0 : notes[j].cost);
            v.breaths = best[j].breaths + (end ? 0 : 1);
        }
        if (found.next == SIZE_MAX || !is_better(found, v)) { /* of equal ones the later */
            found = v;
        }
        if (end) {
            break;
        }
    }
    return found;
}

int64_t sw_breath_solve(const sw_breath_note *notes, size_t count, bool *taken)
{
    if (count == 0) {
        return 0;
    }
    value *best = sw_alloc(count * sizeof *best);
    for (size_t i = count; i-- > 0;) {
        taken[i] = false;
        best[i] = find_value(notes, count, best, i);
    }
    for (size_t i = best[0].next; i < count; i = best[i].next) {
        taken[i] = !notes[i].free;
    }
    int64_t cost = best[0].cost;
    free(best);
    return cost;
}
