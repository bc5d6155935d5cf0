/* In which order players leave a chord: an exact optimum. Pure.
 *
 * Players with a smaller rank leave before those with a larger one. Among equals the order is free: the best
 * one keeps the harmony whole as long as it can. After each exit every note of the chord (by its name, in any
 * octave) that nobody holds any more costs one point. Of equally good orders the one in which the first
 * difference is a player further down the list. */
#ifndef SW_MOVES_STAGGER_ORDER_H
#define SW_MOVES_STAGGER_ORDER_H

#include <stddef.h>
#include <stdint.h>

enum { SW_STAGGER_MOST = 16 };

typedef struct sw_leaver {
    int rank;
    unsigned notes; /* what it holds: bit 0 is C, bit 11 is B */
} sw_leaver;

/* Writes the players in the order in which they leave to order[0 .. count-1] and returns what that costs.
 * `count` is at most SW_STAGGER_MOST. */
int sw_stagger_solve(const sw_leaver *leavers, size_t count, uint8_t *order);

#endif
