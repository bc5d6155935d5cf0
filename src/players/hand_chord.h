/* Whether two hands can strike some keys at once.
 *
 * The keys go in order of height: the lowest k to the left hand, the others to the right. To try every k is
 * enough: where hands that cross could do it, hands that do not cross can do it as well. (Let the hand with
 * the lowest key keep the lowest ones: neither hand gets wider, and the numbers can be levelled.) */
#ifndef STAVEWRIGHT_PLAYERS_HAND_CHORD_H
#define STAVEWRIGHT_PLAYERS_HAND_CHORD_H

#include <stdbool.h>
#include <stddef.h>

typedef struct sw_chord_key {
    int step;     /* of the staff above middle C */
    int semitone; /* MIDI key number */
    bool rolled;  /* in an arpeggiated chord: the hand that plays it moves while it plays */
} sw_chord_key;

/* The best way to share a chord between the hands. */
typedef struct sw_chord_split {
    size_t split;   /* keys of the left hand: the lowest ones */
    int excess;     /* keys that no finger is left for, in both hands together */
    int wider_hand; /* 0: left, 1: right */
    int spread;     /* of that hand in steps (an octave is 7), 0 if its chord is rolled */
} sw_chord_split;

/* The way with the least excess, and of those the one whose wider hand spreads least. `keys` stand in order
 * of height, each once; `fingers` are those of one hand. The chord is playable when the excess is 0 and the
 * spread is within what a hand can take. */
sw_chord_split sw_chord_share(const sw_chord_key *keys, size_t count, int fingers);

#endif
