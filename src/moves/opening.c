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
    const sw_reading *reading = opening->chosen.reading;
    const sw_score *score = opening->chosen.score;
    opening->seating = sw_seating_of(opening->figures.film, reading, score);
    opening->ranges = sw_seating_of_notes(opening->seating, reading, score);
    opening->who = (sw_seated_notes){opening->seating, opening->ranges};
    opening->playing =
        sw_playing_of_players(opening->techniques, opening->instruments, reading, score, opening->who);
    return true;
}

void sw_opening_free(sw_opening *opening)
{
    sw_playing_free(opening->playing);
    free(opening->ranges);
    sw_seating_free(opening->seating);
    free(opening->chosen.events);
    sw_figures_free(&opening->figures);
    *opening = (sw_opening){0};
}
