/* Which instrument a staff of a score is for. */
#ifndef STAVEWRIGHT_PLAYERS_STAFF_INSTRUMENT_H
#define STAVEWRIGHT_PLAYERS_STAFF_INSTRUMENT_H

#include "stavewright/players.h"
#include "stavewright/score.h"

/* The instrument that a staff begins with, by the first of its names that means one: instrument name, short
 * name, those of the brace around it (a PianoStaff "Harp"), context id, variable, the groups further out.
 * Voices are known by names and ids only: a variable \soprano is as often the upper line of a keyboard piece,
 * and what stands on the staves of a PianoStaff is played. NULL when no name tells. The result lives as long
 * as `instruments`. */
const sw_instrument *sw_staff_instrument(const sw_instruments *instruments, const sw_reading *reading,
                                         const sw_score *score, uint32_t staff);
/* The name that told it, "" when none did. Lives as long as the reading. */
const char *sw_staff_instrument_name(const sw_instruments *instruments, const sw_reading *reading,
                                     const sw_score *score, uint32_t staff);
/* Whether a staff is for a soloist, by the name that tells its instrument or by those that are printed:
 * "Violino principale", "Solo Cello". */
bool sw_staff_is_soloist(const sw_instruments *instruments, const sw_reading *reading, const sw_score *score,
                         uint32_t staff);
/* The brace that joins the staves of one player: index into score->groups of the PianoStaff or GrandStaff
 * that is the closest group around the staff, otherwise SW_NO_INDEX. */
uint32_t sw_staff_brace(const sw_reading *reading, const sw_score *score, uint32_t staff);

#endif
