/* The inside of sw_instruments, shared by the reader of the YAML and by the interface. */
#ifndef STAVEWRIGHT_PLAYERS_INSTRUMENT_TABLE_H
#define STAVEWRIGHT_PLAYERS_INSTRUMENT_TABLE_H

#include "players/given_abilities.h"
#include "players/recogniser.h"
#include "stavewright/players.h"

/* Which of the optional figures an entry has given so far. */
typedef struct sw_given {
    bool low;
    bool high;
    bool extreme_low;
    bool extreme_high;
} sw_given;

typedef struct sw_instrument_entry {
    sw_instrument figures;
    int text;       /* the text that spoke of it last: 1 built-in, 2 override */
    sw_given given; /* a missing extreme follows the section's figure, also when an override moves that */
    sw_given_abilities own; /* what it says itself of what it can do; figures.can is the settled whole */
    int like;               /* the entry from which it takes the rest, SW_NO_ENTRY */
    bool like_by_sound;     /* pitches that sound the same, not those that are written the same */
} sw_instrument_entry;

struct sw_instruments {
    sw_arena *arena; /* all strings */
    sw_instrument_entry *entries;
    size_t count;
    size_t capacity;
    sw_recogniser *recogniser;
    sw_given_abilities families[SW_VOICE + 1]; /* what holds where no entry says anything else */
};

/* Reads YAML text into the table; entries whose id is known are changed. `overriding`: missing sources become
 * the place in this text, names take precedence. On a mistake false and *error as sw_instruments_load says;
 * the table is then good only for freeing. */
bool sw_instrument_table_read(sw_instruments *table, const char *path, sw_slice yaml, bool overriding,
                              char **error);

/* The number of an id, or SW_NO_ENTRY. */
int sw_instrument_table_find(const sw_instruments *table, const char *id);

#endif
