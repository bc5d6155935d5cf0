/* What one entry of the instruments says itself of what it can do, before it is settled what it takes from
 * others. Private to players/. */
#ifndef STAVEWRIGHT_PLAYERS_GIVEN_ABILITIES_H
#define STAVEWRIGHT_PLAYERS_GIVEN_ABILITIES_H

#include "stavewright/abilities.h"

/* A group is given as a whole, or not at all. */
typedef struct sw_given_abilities {
    sw_abilities said;
    bool registers;
    bool lips;
    bool weight;
    bool trills;
    bool tremolo;
    bool techniques;
    bool tuning;
} sw_given_abilities;

#endif
