/* Staff names and variable names in a plain form that patterns can match. */
#ifndef STAVEWRIGHT_PLAYERS_STAFF_NAME_H
#define STAVEWRIGHT_PLAYERS_STAFF_NAME_H

#include "players/staff_keys.h"

enum { SW_STAFF_NAME_TEXT = 256 };

/* What a key that was taken out of a name asks of the instrument. */
typedef enum sw_key_demand {
    SW_KEY_NONE,     /* no key was named */
    SW_KEY_STATED,   /* "in D": an instrument that comes in keys must be of this one */
    SW_KEY_PREFIXED, /* "D Clarinet": the instrument must come in keys and be of this one */
    SW_KEY_UNCLEAR   /* "clarinetA" is the first player or the clarinet in A: good only when both come to the
                        same */
} sw_key_demand;

/* A name in lower-case ASCII words with one blank between, without accents, numbers and words that say
 * nothing of the instrument; "/" stands where a bracket, a comma or an "and" stood. */
typedef struct sw_staff_name {
    char text[SW_STAFF_NAME_TEXT];
    char key[SW_STAFF_KEY_TEXT]; /* plain form, "" for none */
    sw_key_demand demand;
} sw_staff_name;

/* Both plain forms of a name. */
typedef struct sw_staff_names {
    sw_staff_name stated; /* without the key that "in" introduces */
    sw_staff_name bare; /* without what may be a key ("Clarinet Bb", "F Horn"); no text when there is none */
} sw_staff_names;

void sw_staff_name_plain(sw_slice name, sw_staff_names *names);

#endif
