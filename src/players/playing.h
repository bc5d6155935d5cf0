/* Techniques through time where it is known who plays which note. */
#ifndef STAVEWRIGHT_PLAYERS_PLAYING_H
#define STAVEWRIGHT_PLAYERS_PLAYING_H

#include "players/chair_notes.h"
#include "stavewright/techniques.h"

/* Like sw_playing_of; where winds share a staff, a word that names one of them ("2. con sord.") holds for the
 * notes of that player. */
sw_playing *sw_playing_of_players(const sw_techniques *techniques, const sw_instruments *instruments,
                                  const sw_reading *reading, const sw_score *score, sw_seated_notes who);

#endif
