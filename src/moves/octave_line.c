#include "moves/octave_line.h"

#include <stdlib.h>

#include "stavewright/base.h"

/* ---- costs ---- */

static int beyond(int low, int high, int from, int to)
{
    int below = low < from ? from - low : 0;
    int above = high > to ? high - to : 0;
    return below + above;
}

int sw_octave_outside(const sw_octave_stroke *stroke, const sw_octave_range *range, int offset)
{
    return beyond(stroke->low + 12 * offset, stroke->high + 12 * offset, range->low, range->high);
}

int64_t sw_octave_place_cost(const sw_octave_stroke *stroke, const sw_octave_range *range, int offset)
{
    if (stroke->fixed) {
        return 0;
    }
    int outside = sw_octave_outside(stroke, range, offset);
    int strained =
        beyond(stroke->low + 12 * offset, stroke->high + 12 * offset, range->easy_low, range->easy_high);
    int64_t cost = (int64_t)abs(offset) * SW_OCTAVE_MOVED;
    if (outside > 0) {
        cost += SW_OCTAVE_OUTSIDE + (int64_t)outside * SW_OCTAVE_OUTSIDE_SEMITONE;
    }
    if (range->fold) {
        bool inside = sw_octave_outside(stroke, range, 0) == 0;
        return cost + (offset != 0 && inside ? SW_OCTAVE_MOVED_INSIDE : 0);
    }
    strained = strained > SW_OCTAVE_STRAINED_MOST ? SW_OCTAVE_STRAINED_MOST : strained;
    return cost + (int64_t)strained * SW_OCTAVE_STRAINED;
}

/* What the music at a joint says to a seam there. */
static int seam_cost(unsigned joint)
{
    static const struct {
        unsigned flag;
        int cost;
    } table[] = {
        {SW_JOINT_SLUR, SW_OCTAVE_IN_SLUR},
        {SW_JOINT_PHRASE, SW_OCTAVE_IN_PHRASE},
        {SW_JOINT_BEAT, SW_OCTAVE_IN_BEAT},
        {SW_JOINT_SCALE, SW_OCTAVE_IN_SCALE},
        {SW_JOINT_GLISSANDO, SW_OCTAVE_GLISSANDO},
        {SW_JOINT_REST, SW_OCTAVE_REST},
        {SW_JOINT_SHORT_REST, SW_OCTAVE_SHORT_REST},
        {SW_JOINT_PHRASE_START, SW_OCTAVE_PHRASE_START},
        {SW_JOINT_LONG, SW_OCTAVE_LONG},
        {SW_JOINT_REPEATED, SW_OCTAVE_REPEATED},
    };
    int cost = SW_OCTAVE_SEAM;
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        cost += (joint & table[i].flag) != 0 ? table[i].cost : 0;
    }
    return cost < SW_OCTAVE_SEAM_LEAST ? SW_OCTAVE_SEAM_LEAST : cost;
}

static int sign(int n)
{
    return (n > 0) - (n < 0);
}

/* What a seam does to the line: `old` and `new` are the interval in semitones. */
static int shape_cost(int old, int new)
{
    int turn = abs(sign(old) - sign(new));
    int cost = turn == 2 ? SW_OCTAVE_TURN : turn == 1 ? SW_OCTAVE_LEVEL : 0;
    int wide = abs(new) - 12;
    if (wide > 0) {
        wide = wide > SW_OCTAVE_LEAP_MOST ? SW_OCTAVE_LEAP_MOST : wide;
        cost += SW_OCTAVE_LEAP + wide * SW_OCTAVE_LEAP_SEMITONE;
    }
    return cost;
}

int64_t sw_octave_joint_cost(const sw_octave_stroke *before, const sw_octave_stroke *stroke, int from, int to)
{
    if (from == to) {
        return 0;
    }
    if ((stroke->joint & SW_JOINT_BOUND) != 0) {
        return -1;
    }
    int interval = stroke->line - before->line;
    int shape = shape_cost(interval, interval + 12 * (to - from));
    if ((stroke->joint & SW_JOINT_REST) != 0) {
        shape /= 4;
    } else if ((stroke->joint & SW_JOINT_SHORT_REST) != 0) {
        shape /= 2;
    }
    return seam_cost(stroke->joint) + shape;
}

/* ---- the optimum ---- */

/* What the rest of a line costs from a stroke at an offset on. */
typedef struct value {
    int64_t cost; /* -1: it can't be there */
    int64_t moved;
} value;

typedef struct values {
    value at[SW_OCTAVE_OFFSETS]; /* by offset + SW_OCTAVE_MOST */
} values;

static int compare(value a, value b)
{
    if (a.cost < 0 || b.cost < 0) {
        return (a.cost < 0) - (b.cost < 0);
    }
    int order = (a.cost > b.cost) - (a.cost < b.cost);
    return order != 0 ? order : (a.moved > b.moved) - (a.moved < b.moved);
}

/* The cost of `rest` with one more step before it. */
static value before(value rest, int64_t cost, int64_t moved)
{
    bool possible = rest.cost >= 0 && cost >= 0;
    return possible ? (value){rest.cost + cost, rest.moved + moved} : (value){-1, 0};
}

/* What the line costs from stroke i at one offset, when the next one is at another. */
static value through(const sw_octave_stroke *strokes, const values *best, size_t i, int from, int to)
{
    return before(best[i + 1].at[to + SW_OCTAVE_MOST],
                  sw_octave_joint_cost(&strokes[i], &strokes[i + 1], from, to), 0);
}

static void find_values(const sw_octave_stroke *strokes, size_t count, const sw_octave_range *range,
                        values *best)
{
    for (size_t i = count; i-- > 0;) {
        for (int from = -SW_OCTAVE_MOST; from <= SW_OCTAVE_MOST; from++) {
            value rest = {i + 1 < count ? -1 : 0, 0};
            for (int to = -SW_OCTAVE_MOST; i + 1 < count && to <= SW_OCTAVE_MOST; to++) {
                value v = through(strokes, best, i, from, to);
                rest = compare(v, rest) < 0 ? v : rest;
            }
            bool held = strokes[i].fixed && from != 0;
            best[i].at[from + SW_OCTAVE_MOST] =
                before(rest, held ? -1 : sw_octave_place_cost(&strokes[i], range, from), from != 0);
        }
    }
}

/* Offsets as a set: bit offset + SW_OCTAVE_MOST. */
static unsigned bit(int offset)
{
    return 1U << (offset + SW_OCTAVE_MOST);
}

/* Whether an optimum that stands at `from` may go on at `to`. */
static bool leads(const sw_octave_stroke *strokes, const sw_octave_range *range, const values *best, size_t i,
                  int from, int to)
{
    value all = before(through(strokes, best, i, from, to), sw_octave_place_cost(&strokes[i], range, from),
                       from != 0);
    return all.cost >= 0 && compare(all, best[i].at[from + SW_OCTAVE_MOST]) == 0;
}

/* The offsets to which optimal ways lead from a set, with a seam or without. */
static unsigned step(const sw_octave_stroke *strokes, const sw_octave_range *range, const values *best,
                     size_t i, unsigned set, bool seam)
{
    unsigned reached = 0;
    for (int from = -SW_OCTAVE_MOST; from <= SW_OCTAVE_MOST; from++) {
        for (int to = -SW_OCTAVE_MOST; (set & bit(from)) != 0 && to <= SW_OCTAVE_MOST; to++) {
            if ((from != to) == seam && leads(strokes, range, best, i, from, to)) {
                reached |= bit(to);
            }
        }
    }
    return reached;
}

/* The smallest offset of a set, of two the upper one. */
static int smallest(unsigned set)
{
    for (int size = 0; size <= SW_OCTAVE_MOST; size++) {
        if ((set & bit(size)) != 0) {
            return size;
        }
        if ((set & bit(-size)) != 0) {
            return -size;
        }
    }
    return 0;
}

/* Of the optimal ways the one that the header names: sets of offsets go forward, one way comes back. */
static void trace(const sw_octave_stroke *strokes, size_t count, const sw_octave_range *range,
                  const values *best, unsigned *sets, int8_t *offsets)
{
    for (size_t i = 1; i < count; i++) {
        unsigned seam = step(strokes, range, best, i - 1, sets[i - 1], true);
        sets[i] = seam != 0 ? seam : step(strokes, range, best, i - 1, sets[i - 1], false);
    }
    offsets[count - 1] = (int8_t)smallest(sets[count - 1]);
    for (size_t i = count - 1; i-- > 0;) {
        bool seam = step(strokes, range, best, i, sets[i], true) != 0;
        unsigned sources = 0;
        for (int from = -SW_OCTAVE_MOST; from <= SW_OCTAVE_MOST; from++) {
            bool kind = (from != offsets[i + 1]) == seam;
            if ((sets[i] & bit(from)) != 0 && kind && leads(strokes, range, best, i, from, offsets[i + 1])) {
                sources |= bit(from);
            }
        }
        offsets[i] = (int8_t)smallest(sources);
    }
}

int64_t sw_octave_solve(const sw_octave_stroke *strokes, size_t count, const sw_octave_range *range,
                        int8_t *offsets)
{
    if (count == 0) {
        return 0;
    }
    values *best = sw_alloc(count * sizeof *best);
    unsigned *sets = sw_alloc_zero(count, sizeof *sets);
    find_values(strokes, count, range, best);
    value least = {-1, 0};
    for (int o = 0; o < SW_OCTAVE_OFFSETS; o++) {
        least = compare(best[0].at[o], least) < 0 ? best[0].at[o] : least;
    }
    for (int o = 0; o < SW_OCTAVE_OFFSETS && least.cost >= 0; o++) {
        sets[0] |= compare(best[0].at[o], least) == 0 ? 1U << o : 0;
    }
    if (least.cost >= 0) {
        trace(strokes, count, range, best, sets, offsets);
    }
    free(best);
    free(sets);
    return least.cost;
}
