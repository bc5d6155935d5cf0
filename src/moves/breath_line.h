/* Where a wind player or singer breathes in a line: an exact optimum. Pure: air and costs in, places out.
 *
 * THE MODEL
 * Each note takes its part of a breath, in thousandths of the breath that the player has there. Before each
 * note lies a *place*: a breath can be taken there at a cost, or can't, or comes by itself (a rest, a breath
 * mark). With each breath the lungs are full again.
 *
 * WHAT COSTS
 *   - a place: what the music there says for or against it (sw_breath_place_cost);
 *   - what is played on one breath: a little for its length, so that breaths are spread evenly; very much for
 *     each thousandth beyond the breath, so that only what has no place goes on too long.
 * All costs are sums over places and stretches between them. So a line in which the best places have been
 * marked wants no other ones when it is solved again.
 *
 * WHICH OF EQUALLY GOOD WAYS
 * The one with the fewest breaths; then the one whose first difference is a later breath. */
#ifndef SW_MOVES_BREATH_LINE_H
#define SW_MOVES_BREATH_LINE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum { SW_BREATH_FULL = 1000 }; /* thousandths */

enum {                              /* what speaks for or against a place */
       SW_BREATH_BOUND = 1 << 0,    /* a tie, a tremolo, a grace note at its main note: none can be taken */
       SW_BREATH_SLUR = 1 << 1,     /* a slur goes on */
       SW_BREATH_PHRASE = 1 << 2,   /* a phrasing slur goes on */
       SW_BREATH_BEAT = 1 << 3,     /* both are short notes of one beat, or of one written beam */
       SW_BREATH_LEADING = 1 << 4,  /* to or from a leading tone */
       SW_BREATH_SHORT = 1 << 5,    /* the note before is too short to take the time from */
       SW_BREATH_WORD = 1 << 6,     /* within a word that is sung */
       SW_BREATH_OFF_BEAT = 1 << 7, /* on no beat */
       SW_BREATH_TOGETHER = 1 << 8, /* another player of the same line breathes there */
       SW_BREATH_SLUR_END = 1 << 9, /* a slur ends with the note before */
       SW_BREATH_PHRASE_END = 1 << 10, /* a phrasing slur does, or a comma or stop of the text */
       SW_BREATH_BAR = 1 << 11,        /* on the bar line */
       SW_BREATH_LEAP = 1 << 12,       /* a fourth or more to the next note */
       SW_BREATH_LONG = 1 << 13,       /* the note before is long */
       SW_BREATH_SHORT_REST = 1 << 14  /* a rest too short to breathe by itself */
};

/* Costs in points; 100 points are a breath where nothing speaks for or against it. All are common practice,
 * no source. */
enum {
    SW_BREATH_TAKEN = 100,
    SW_BREATH_IN_SLUR = 150,
    SW_BREATH_IN_PHRASE = 80,
    SW_BREATH_IN_BEAT = 120,
    SW_BREATH_AT_LEADING = 90,
    SW_BREATH_AFTER_SHORT = 120,
    SW_BREATH_IN_WORD = 200,
    SW_BREATH_BESIDE_BEAT = 40,
    SW_BREATH_WITH_OTHERS = 130,
    SW_BREATH_AT_SLUR_END = -30,
    SW_BREATH_AT_PHRASE_END = -60,
    SW_BREATH_AT_BAR = -20,
    SW_BREATH_AT_LEAP = -20,
    SW_BREATH_AFTER_LONG = -40,
    SW_BREATH_AT_REST = -60,
    SW_BREATH_LEAST = 40, /* whatever speaks for it: no breath without need */
    SW_BREATH_MOST = 900, /* less than one thousandth too much */
    SW_BREATH_OVER = 1000 /* each thousandth beyond the breath */
};

typedef struct sw_breath_note {
    int air;   /* thousandths of a breath, at least 1 */
    int cost;  /* of a breath before it; -1: none can be taken; the first note's means nothing */
    bool free; /* a breath comes by itself before it */
} sw_breath_note;

/* What a breath costs where SW_BREATH_... flags hold; -1: none can be taken. */
int sw_breath_place_cost(unsigned flags);
/* What it costs to play so many thousandths on one breath. */
int64_t sw_breath_stretch_cost(int64_t air);
/* Writes where breaths are to be taken to taken[0 .. count-1], free ones excluded, and returns what that
 * costs. */
int64_t sw_breath_solve(const sw_breath_note *notes, size_t count, bool *taken);

#endif
