#include "moves/opening.h"

#include <stdlib.h>

bool sw_opening_find(const sw_move *move, const sw_film *film, const sw_places *places, sw_opening *opening,
                     char **error)
{
    *opening = (sw_opening){0};
    if (!sw_figures_find(&opening->figures, film, error) ||
        !sw_places_choose(move, places, &opening->chosen, error)) {
        sw_opening_free(opening);
        return false;
    }
    opening->techniques = sw_film_techniques(opening->figures.film);
    opening->instruments = sw_film_instruments(opening->figures.film);
    opening->playing = sw_playing_of(opening->techniques, opening->instruments, opening->chosen.reading,
                                     opening->chosen.score);
    return true;
}

void sw_opening_free(sw_opening *opening)
{
    sw_playing_free(opening->playing);
    free(opening->chosen.events);
    sw_figures_free(&opening->figures);
    *opening = (sw_opening){0};
}
