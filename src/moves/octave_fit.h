/* Octaves for a run so that it fits a range. Private to moves/. */
#ifndef SW_MOVES_OCTAVE_FIT_H
#define SW_MOVES_OCTAVE_FIT_H

#include "moves/places.h"

/* Writes the octaves by which each event of the score moves to by[0 .. event_count-1] (zeros for those that
 * stay), findings for what can't be brought inside to the move, and its reasons to the move's `why`. False
 * with *error (free() it) when the options name no range. */
bool sw_octave_fit(sw_move *move, const sw_chosen *chosen, const sw_octave_options *options, int8_t *by,
                   char **error);

#endif
