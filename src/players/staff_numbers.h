/* Which players of their kind a staff name means: "Flutes 1, 2", "Horn III", "fluteTwo", "2 Oboen". */
#ifndef STAVEWRIGHT_PLAYERS_STAFF_NUMBERS_H
#define STAVEWRIGHT_PLAYERS_STAFF_NUMBERS_H

#include "stavewright/players.h"
#include "stavewright/score.h"

enum { SW_STAFF_NUMBERS = 16 };

/* The numbers in the order of the name, each once. */
typedef struct sw_staff_numbers {
    unsigned items[SW_STAFF_NUMBERS];
    size_t count;
} sw_staff_numbers;

/* Reads figures, roman numbers and words ("first", "secondo"), "1-4" as four numbers; a bare figure in front
 * of a name ("4 Horns") and "a 2" behind it say how many there are: 1, 2 ... No numbers: count 0. */
sw_staff_numbers sw_staff_numbers_of(const char *name);

/* Those of a staff: of the name that tells its instrument, or else of another one that tells an instrument
 * ("fluteTwo", but not an id "two", which may count the staves). Ids and variables count only for a staff
 * without a printed name. */
sw_staff_numbers sw_staff_numbers_of_staff(const sw_instruments *instruments, const sw_reading *reading,
                                           const sw_score *score, uint32_t staff);

#endif
