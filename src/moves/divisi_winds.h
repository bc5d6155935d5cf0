/* Who plays of several winds on a staff, where they don't divide a chord. Private to moves/. */
#ifndef SW_MOVES_DIVISI_WINDS_H
#define SW_MOVES_DIVISI_WINDS_H

#include "moves/divisi_plan.h"

/* The parts that play a chord of a passage which is only what is left of a tied chord, bit p for part p; 0
 * where all of them play. */
unsigned sw_divisi_holders(const sw_divisi_plan *plan, const sw_divisi_passage *passage, size_t chord);
/* "1.", "1. 2.": the players of some parts, when each part is one player; otherwise NULL. In the arena. */
const char *sw_divisi_say_holders(const sw_divisi_fit *fit, const sw_divisi_section *section, unsigned parts,
                                  sw_rational moment, sw_arena *arena);
/* The players whom a text of the staff has chosen at a moment, or, with `one`, the first of all; NULL where
 * all play. In the arena. */
const char *sw_divisi_say_chosen(const sw_divisi_fit *fit, sw_rational moment, bool one, sw_arena *arena);
/* The same as parts of a division: bit p for part p, counted from the lowest. All of them where all play, and
 * where the parts are not one player each. */
unsigned sw_divisi_chosen_parts(const sw_divisi_fit *fit, sw_rational moment, int parts);

/* "1.", "2." and so on, for the staves of the players when each player of the staff gets one: by part, from
 * the uppermost. False when somebody else than each player by himself has a part. */
bool sw_divisi_name_players(const sw_divisi_fit *fit, int parts, sw_arena *arena, const char **names);
/* Whether a text says nothing but which of the players plays: "1.", "a 2", but not "2. solo". */
bool sw_divisi_only_says_who(const sw_instruments *instruments, const sw_instrument *instrument,
                             const char *text);

#endif
