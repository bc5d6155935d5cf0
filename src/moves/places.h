/* Choosing what a transformation works on. Private to moves/. */
#ifndef SW_MOVES_PLACES_H
#define SW_MOVES_PLACES_H

#include "stavewright/move.h"

typedef struct sw_chosen {
    const sw_reading *reading; /* one of the move's mains */
    const sw_score *score;
    uint32_t *events; /* chosen notes, in the order of the score; free() */
    size_t count;
} sw_chosen;

/* Whether \partCombine joins what two parts have in common into one voice of a staff: another rhythm in one
 * of them takes both apart, and the other part's notes, silent so far, come to the fore. */
bool sw_staff_is_combined(const sw_reading *reading, const sw_score *score, uint32_t staff);
/* "the score has no bars 9 to 20; its last bar is 12", to be freed with free(). */
char *sw_places_say_no_bars(const sw_score *score, const sw_bar_range *bars);
/* Finds the notes that the places mean, in the first score that has some: of mains[0], or, where that has no
 * score of its own, of a file that includes it. False with *error (free() it). */
bool sw_places_choose(const sw_move *move, const sw_places *places, sw_chosen *chosen, char **error);
/* By event of the score: whether it is chosen. free() */
bool *sw_chosen_map(const sw_chosen *chosen);
/* What to edit, without changes: the score of the chosen notes, proved in all main files of the move. */
sw_edit_request sw_chosen_request(const sw_move *move, const sw_chosen *chosen, sw_elsewhere elsewhere,
                                  const sw_read_options *options);

#endif
