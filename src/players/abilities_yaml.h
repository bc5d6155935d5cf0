/* Reads "can", what an instrument can do. Private to players/. */
#ifndef STAVEWRIGHT_PLAYERS_ABILITIES_YAML_H
#define STAVEWRIGHT_PLAYERS_ABILITIES_YAML_H

#include "players/given_abilities.h"
#include "players/yaml_reader.h"

/* Reads the groups under `node` into `given`; those that are not there stay as they are. A group without a
 * source gets its place in the text. Strings and lists go into the arena. False, and the error set, on a
 * mistake. */
bool sw_abilities_read(sw_yaml_reader *r, sw_arena *arena, const yaml_node_t *node,
                       sw_given_abilities *given);

#endif
