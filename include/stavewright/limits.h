/* Breath, tongue and fading: src/players/limits.yaml says in its head how the figures are meant. */
#ifndef STAVEWRIGHT_LIMITS_H
#define STAVEWRIGHT_LIMITS_H

#include "stavewright/players.h"

/* What a player of one instrument can do. 0: no figure. */
typedef struct sw_limit {
    double breath; /* seconds, mf, middle of the compass */
    double single; /* tongued notes a second */
    double double_tongue;
    double without_rest; /* seconds */
    bool known_fade;     /* `fades` is told */
    bool fades;          /* to nothing */
    bool rings;          /* a note goes on sounding until it is damped */
    const char *source;
} sw_limit;

typedef struct sw_breath_factors {
    double soft; /* of the breath at pp */
    double loud; /* at ff */
    double low;  /* in the lowest fifth of the compass */
    double catch_seconds;
} sw_breath_factors;

typedef struct sw_limits sw_limits;

/* Loads the figures; NULL on a mistake in the text, with *error as for sw_instruments_load. */
sw_limits *sw_limits_load(char **error);
void sw_limits_free(sw_limits *limits);
/* The figures of an instrument; NULL: none. */
const sw_limit *sw_limits_of(const sw_limits *limits, const sw_instrument *instrument);
const sw_breath_factors *sw_limits_breath(const sw_limits *limits);
/* Seconds that a breath lasts at a dynamic (SW_NO_DYNAMIC: mf), in the low register or not. 0: no figure. */
double sw_limits_breath_seconds(const sw_limits *limits, const sw_limit *limit, sw_dynamic dynamic, bool low);

#endif
