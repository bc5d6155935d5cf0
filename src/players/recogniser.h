/* Which entry the patterns select for a name. Knows patterns, keys and numbers of entries, no instruments. */
#ifndef STAVEWRIGHT_PLAYERS_RECOGNISER_H
#define STAVEWRIGHT_PLAYERS_RECOGNISER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "stavewright/base.h"

enum { SW_NO_ENTRY = -1 };

typedef struct sw_recogniser sw_recogniser;

sw_recogniser *sw_recogniser_new(void);
/* NULL is allowed. */
void sw_recogniser_free(sw_recogniser *recogniser);

/* Adds the patterns of an entry, joined with "|" already, and its key in plain form ("" for none; the caller
 * keeps it alive). Of equally good matches the one of the highest priority wins, then the one added first. */
void sw_recogniser_add(sw_recogniser *recogniser, int entry, const char *key, sw_slice patterns,
                       int priority);

/* Changes the key of all patterns of an entry. */
void sw_recogniser_change_key(sw_recogniser *recogniser, int entry, const char *key);

/* Compiles what was added; to be called after the last addition and before the first search. */
void sw_recogniser_compile(sw_recogniser *recogniser);

/* The number of the entry that a staff name selects, or SW_NO_ENTRY. */
int sw_recogniser_find(const sw_recogniser *recogniser, sw_slice staff_name);

/* True when a text is a pattern that can be added. Otherwise what is wrong goes into `message`. */
bool sw_recogniser_check(sw_slice pattern, char *message, size_t room);

#endif
