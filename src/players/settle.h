/* Who takes which abilities from whom. Private to players/. */
#ifndef STAVEWRIGHT_PLAYERS_SETTLE_H
#define STAVEWRIGHT_PLAYERS_SETTLE_H

#include "players/instrument_table.h"

/* Fills figures.can of all entries: each group from the entry itself, else from the one that it is like, else
 * from its family. Done when all texts are read, so that a change of one entry holds for all that are like
 * it.
 */
void sw_abilities_settle(sw_instruments *table);

#endif
