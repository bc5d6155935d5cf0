/* How a transformation that goes by words and figures begins: whose figures hold, which notes are meant, and
 * what is being played where. Private to moves/. */
#ifndef SW_MOVES_OPENING_H
#define SW_MOVES_OPENING_H

#include "moves/figures.h"
#include "moves/places.h"
#include "players/playing.h"

typedef struct sw_opening {
    sw_figures figures;
    const sw_techniques *techniques; /* of the figures' film */
    const sw_instruments *instruments;
    sw_chosen chosen;
    sw_seating *seating; /* of the score of the chosen notes */
    sw_seat_range *ranges;
    sw_seated_notes who; /* both of them */
    sw_playing *playing; /* how its notes are played */
} sw_opening;

/* False with *error (free() it) when nothing is chosen or the figures can't be read; then there is nothing to
 * free. Otherwise free with sw_opening_free. `film`: NULL: the defaults. */
bool sw_opening_find(const sw_move *move, const sw_film *film, const sw_places *places, sw_opening *opening,
                     char **error);
void sw_opening_free(sw_opening *opening);

#endif
