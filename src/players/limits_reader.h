/* Rows of limits.yaml, and those that a film gives instead. Private to players/. */
#ifndef STAVEWRIGHT_PLAYERS_LIMITS_READER_H
#define STAVEWRIGHT_PLAYERS_LIMITS_READER_H

#include "players/yaml_reader.h"
#include "stavewright/limits.h"

/* Both: false, and the error set, on a mistake. */

/* "breath-factors": those that are given, over those that are there. */
bool sw_limits_read_factors(sw_limits *limits, sw_yaml_reader *yaml, const yaml_node_t *node);
/* A row of "limits". With `own`, the instruments of a film, it counts before those read without, what it does
 * not say is what was said before, and the source may be missing (then it is the place in the film's file).
 */
bool sw_limits_read_row(sw_limits *limits, sw_yaml_reader *yaml, const yaml_node_t *node,
                        const sw_instruments *own);

#endif
