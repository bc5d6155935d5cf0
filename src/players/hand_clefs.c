#include "players/hand_clefs.h"

#include <stdlib.h>

#include "stavewright/base.h"

/* A way to a clef: ties in cost go to fewer changes. */
typedef struct way {
    int64_t cost;
    int64_t changes;
} way;

static int bottom_of(sw_hand_clef clef)
{
    return clef == SW_TREBLE_CLEF ? 2 : -10; /* E4, G2: the lowest line, eight steps below the highest */
}

static int lines_below(sw_hand_clef clef, int lowest)
{
    int bottom = bottom_of(clef);
    return lowest < bottom ? (bottom - lowest) / 2 : 0;
}

static int lines_above(sw_hand_clef clef, int highest)
{
    int top = bottom_of(clef) + 8;
    return highest > top ? (highest - top) / 2 : 0;
}

int sw_clef_ledger_lines(sw_hand_clef clef, int lowest, int highest)
{
    return lines_below(clef, lowest) + lines_above(clef, highest);
}

int sw_clef_reading_cost(int ledger_lines)
{
    return ledger_lines <= 2 ? ledger_lines : ledger_lines + (ledger_lines - 1) * (ledger_lines - 2) / 2;
}

static int reading_cost(sw_hand_clef clef, const sw_clef_moment *moment)
{
    return sw_clef_reading_cost(lines_below(clef, moment->lowest)) +
           sw_clef_reading_cost(lines_above(clef, moment->highest));
}

static bool better(way a, way b)
{
    return a.cost < b.cost || (a.cost == b.cost && a.changes < b.changes);
}

/* Works from the end to the beginning: the table then says for each clef before a moment whether to change
 * now, and reading it forwards puts off a change among equals. */
int64_t sw_clefs_choose(const sw_clef_moment *moments, size_t count, sw_hand_clef usual, sw_hand_clef *clefs)
{
    if (count == 0) {
        return 0;
    }
    uint8_t *change = sw_alloc(count); /* bit c: with clef c before this moment, change here */
    way rest[2] = {{0, 0}, {0, 0}};    /* from this moment on, by its clef */
    for (size_t i = count; i-- > 0;) {
        const sw_clef_moment *m = &moments[i];
        for (int clef = 0; clef < 2; clef++) {
            rest[clef].cost += reading_cost((sw_hand_clef)clef, m);
        }
        change[i] = 0;
        if (i == 0) {
            break;
        }
        bool in_notes = moments[i - 1].bar == m->bar && !m->after_rest;
        int64_t price = in_notes ? SW_CLEF_CHANGE_IN_BAR : SW_CLEF_CHANGE_AT_REST;
        way before[2];
        for (int clef = 0; clef < 2; clef++) {
            way changed = {rest[1 - clef].cost + price, rest[1 - clef].changes + 1};
            bool changes = better(changed, rest[clef]);
            before[clef] = changes ? changed : rest[clef];
            change[i] = (uint8_t)(change[i] | changes << clef);
        }
        rest[0] = before[0];
        rest[1] = before[1];
    }
    int other = 1 - (int)usual;
    int clef = better(rest[other], rest[usual]) ? other : (int)usual;
    int64_t cost = rest[clef].cost;
    clefs[0] = (sw_hand_clef)clef;
    for (size_t i = 1; i < count; i++) {
        if (change[i] >> clef & 1) {
            clef = 1 - clef;
        }
        clefs[i] = (sw_hand_clef)clef;
    }
    free(change);
    return cost;
}
