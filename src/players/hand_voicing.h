/* How a chord that no hands can take is voiced so that they can, with the least change: notes go to another
 * octave, and doublings (of a note that stays in another octave) are left out. */
#ifndef STAVEWRIGHT_PLAYERS_HAND_VOICING_H
#define STAVEWRIGHT_PLAYERS_HAND_VOICING_H

#include "players/hand_split.h"

typedef struct sw_voiced_note {
    int step; /* of the staff above middle C */
    int semitone;
    bool fixed; /* sounds already: it stays */
    /* the result: */
    int octaves; /* it goes up, or down when negative: -2 .. 2 */
    bool left_out;
} sw_voiced_note;

/* What counts as change. Common practice, no source. */
enum {
    SW_VOICING_OCTAVE = 12, /* each octave that a note moves */
    SW_VOICING_LEFT_OUT = 13,
    SW_VOICING_OUTER = 7, /* in addition where the lowest or the highest note of the chord changes */
    SW_VOICING_MOST = 72  /* with more changes it is another chord */
};

enum { SW_VOICING_NOTES = 14 };

/* Fills in the result of each note, at the least total change, so that both hands are within their limits and
 * all notes between the MIDI keys `low` and `high`; no two notes come to stand on one key. Returns the
 * change, or -1 when there is none within SW_VOICING_MOST, or more than SW_VOICING_NOTES notes. Where several
 * ways cost the same, the lower notes change least. `notes` stand in order of height, each key once. */
int sw_hand_voicing(sw_voiced_note *notes, size_t count, const sw_hand_limits *limits, int low, int high);

/* How many of the notes, in their result, are the left hand's: the lowest ones; -1: the hands can't take
 * them. */
int sw_hand_voicing_split(const sw_voiced_note *notes, size_t count, const sw_hand_limits *limits);

#endif
