/* Which clef a hand's staff has where: treble or bass, with the fewest ledger lines and changes.
 *
 * The cost of a way through the music is what its ledger lines cost to read, plus a price for each change of
 * clef: lower at the beginning of a bar or after a rest than in the midst of notes. Two ledger lines cost
 * two, each further one costs more than the one before (1 2 4 7 11 16 ...): beyond two a player counts. A
 * change before the first note of a bar stands at the beginning of the bar, whatever rest comes first. The
 * clef at the beginning of the staff is free. The least total is found exactly: two clefs are two states,
 * each moment leads from two states to two, so the work is linear.
 *
 * Prices (common practice, no source): a change at the bar or after a rest is worth 8, one between notes 12.
 */
#ifndef STAVEWRIGHT_PLAYERS_HAND_CLEFS_H
#define STAVEWRIGHT_PLAYERS_HAND_CLEFS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "stavewright/rational.h"

typedef enum sw_hand_clef { SW_TREBLE_CLEF, SW_BASS_CLEF } sw_hand_clef;

enum {
    SW_CLEF_CHANGE_AT_REST = 8, /* at the bar, too */
    SW_CLEF_CHANGE_IN_BAR = 12
};

/* A moment at which the hand's staff shows notes. */
typedef struct sw_clef_moment {
    sw_rational position; /* whole notes; only for the caller to find the place again */
    uint32_t bar;         /* not decreasing */
    int lowest;           /* of the notes, in steps above middle C */
    int highest;
    bool after_rest; /* the hand has a rest before it */
} sw_clef_moment;

/* Ledger lines that notes from `lowest` to `highest` need: those below the staff for the lowest plus those
 * above it for the highest note. A note in the space next to the staff needs none. */
int sw_clef_ledger_lines(sw_hand_clef clef, int lowest, int highest);
/* What so many ledger lines cost to read. */
int sw_clef_reading_cost(int ledger_lines);

/* Writes the clef of each moment (in order of time) to clefs[0 .. count-1] and returns the total
 * cost. A clef that differs from the one before it is a change: at the beginning of the bar if the
 * moment is the first of its bar, otherwise at its position. Ties: as few changes as possible, as late as
 * possible; the first clef is `usual` if that costs no more. */
int64_t sw_clefs_choose(const sw_clef_moment *moments, size_t count, sw_hand_clef usual, sw_hand_clef *clefs);

#endif
