#include "moves/stagger_order.h"

#include <limits.h>
#include <stdbool.h>
#include <stdlib.h>

#include "stavewright/base.h"

/* The notes that those hold who have not left. */
static unsigned held(const sw_leaver *leavers, size_t count, unsigned gone)
{
    unsigned notes = 0;
    for (size_t i = 0; i < count; i++) {
        notes |= (gone & 1U << i) == 0 ? leavers[i].notes : 0;
    }
    return notes;
}

static int size_of(unsigned set)
{
    int size = 0;
    for (; set != 0; set &= set - 1) {
        size++;
    }
    return size;
}

/* Whether a player may leave next: nobody of a smaller rank is left. */
static bool may_leave(const sw_leaver *leavers, size_t count, unsigned gone, size_t player)
{
    if ((gone & 1U << player) != 0) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        if ((gone & 1U << i) == 0 && leavers[i].rank < leavers[player].rank) {
            return false;
        }
    }
    return true;
}

int sw_stagger_solve(const sw_leaver *leavers, size_t count, uint8_t *order)
{
    unsigned all = (1U << count) - 1;
    unsigned notes = held(leavers, count, 0);
    int *cost = sw_alloc((all + 1) * sizeof *cost); /* by those who have left: what is still to come */
    uint8_t *next = sw_alloc(all + 1);
    cost[all] = 0;
    for (unsigned gone = all; gone-- > 0;) {
        cost[gone] = INT_MAX;
        for (size_t i = 0; i < count; i++) {
            if (!may_leave(leavers, count, gone, i)) {
                continue;
            }
            unsigned then = gone | 1U << i;
            int missing = size_of(notes & ~held(leavers, count, then));
            if (cost[then] != INT_MAX && cost[then] + missing <= cost[gone]) {
                cost[gone] = cost[then] + missing;
                next[gone] = (uint8_t)i;
            }
        }
    }
    unsigned gone = 0;
    for (size_t k = 0; k < count; k++) {
        order[k] = next[gone];
        gone |= 1U << next[gone];
    }
    int total = cost[0];
    free(cost);
    free(next);
    return total;
}
