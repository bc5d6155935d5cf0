/* Names of the notes in drum mode. */
#ifndef SW_SYNTAX_DRUM_NAMES_H
#define SW_SYNTAX_DRUM_NAMES_H

#include <stddef.h>

typedef struct sw_drum_name {
    const char *name;
    const char *instrument;
} sw_drum_name;

extern const sw_drum_name sw_drum_names[];
extern const size_t sw_drum_name_count;

#endif
