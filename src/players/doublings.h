/* The time that a player needs from one instrument to another. */
#ifndef STAVEWRIGHT_PLAYERS_DOUBLINGS_H
#define STAVEWRIGHT_PLAYERS_DOUBLINGS_H

#include "stavewright/players.h"

typedef struct sw_doubling {
    double seconds; /* from the end of the last note to the beginning of the first, without hurry */
    const char *source;
} sw_doubling;

/* What a player needs between two instruments, whichever comes first. 0 seconds for what is one instrument to
 * the player: the horn in all keys. */
sw_doubling sw_doubling_between(const sw_instrument *from, const sw_instrument *to);

#endif
