/* What is wrong with a finished split: walks along it and names each slice that breaks a limit. Used by
 * hand_split.c only. */
#ifndef STAVEWRIGHT_PLAYERS_HAND_PROBLEMS_H
#define STAVEWRIGHT_PLAYERS_HAND_PROBLEMS_H

#include "players/hand_costs.h"

/* The problems of the music with these choices (one a slice), in order of time, in the arena; NULL for none.
 */
const sw_hand_problem *sw_hand_problems(sw_arena *arena, const sw_hand_note *notes, const sw_hand_way *way,
                                        const sw_hand_choice *choices, size_t *count);

#endif
