/* Which instrument a note name of drum mode stands for. */
#ifndef STAVEWRIGHT_PLAYERS_PERCUSSION_NAMES_H
#define STAVEWRIGHT_PLAYERS_PERCUSSION_NAMES_H

#include "stavewright/players.h"

/* The instrument that is struck for a drum note by its full name ("lobongo": bongos). NULL for those that
 * need none of their own (hands clapped), that this program does not know, or that are no drum notes. */
const sw_instrument *sw_percussion_of_drum(const sw_instruments *instruments, const char *drum);

#endif
