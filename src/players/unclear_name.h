/* Names that several instruments bear, told apart by the company that a staff keeps. Private to players/. */
#ifndef SW_PLAYERS_UNCLEAR_NAME_H
#define SW_PLAYERS_UNCLEAR_NAME_H

#include "stavewright/players.h"

/* Whether a name is one that only its neighbours explain: "Bass", "Altos", "Tr. 1". */
bool sw_name_is_unclear(const char *name);

/* The instrument that such a name means beside one of the family `beside` (NULL: beside nobody who is known);
 * NULL when that does not tell. */
const sw_instrument *sw_unclear_name_find(const sw_instruments *instruments, const char *name,
                                          const sw_family *beside);

#endif
