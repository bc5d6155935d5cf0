/* Which chairs a staff belongs to, by its names. Private to players/. */
#ifndef STAVEWRIGHT_PLAYERS_CHAIR_STAVES_H
#define STAVEWRIGHT_PLAYERS_CHAIR_STAVES_H

#include "players/chairs.h"
#include "players/staff_numbers.h"

/* Chairs in the order of the numbers, or of the film. */
typedef struct sw_chair_list {
    uint32_t *items; /* indices of the film's chairs */
    size_t count;
    size_t capacity;
} sw_chair_list;

/* The chairs of an instrument with numbers (count 0: any). `missing` gets the first number that no chair has.
 * Adds to the list, which may stay empty for SW_BOOKED, too: when several chairs could be meant. */
sw_booking sw_chairs_of_instrument(const sw_film *film, const sw_instrument *instrument,
                                   const sw_staff_numbers *numbers, sw_chair_list *list, unsigned *missing);
/* The chairs whose patterns match one of a staff's names. */
void sw_chairs_that_claim(const sw_film *film, const sw_reading *reading, const sw_score *score,
                          uint32_t staff, sw_chair_list *list);

#endif
