/* What an instrument can do, in words. Private to app/. */
#ifndef SW_APP_EXPLAIN_ABILITIES_H
#define SW_APP_EXPLAIN_ABILITIES_H

#include "stavewright/players.h"

/* Prints every group that is said, with its source. */
void sw_print_abilities(const sw_instrument *instrument);

#endif
