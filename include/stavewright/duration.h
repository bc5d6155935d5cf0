/* Written durations: note value, dots and factor. */
#ifndef STAVEWRIGHT_DURATION_H
#define STAVEWRIGHT_DURATION_H

#include <stdbool.h>
#include <stdint.h>

#include "stavewright/base.h"
#include "stavewright/rational.h"

/* log: 0 whole, 1 half, 2 quarter, ... ; -1 breve, -2 longa, -3 maxima. factor: what `*2/3` says, 1 if
 * nothing. */
typedef struct sw_duration {
    int8_t log;
    uint8_t dots;
    int32_t factor_num;
    int32_t factor_den;
} sw_duration;

/* A quarter note, the value that the language assumes before the first written one. */
sw_duration sw_duration_quarter(void);
/* The length in whole notes, factor included. */
sw_rational sw_duration_length(sw_duration d);
/* The length without the factor: what the note head and its dots say. */
sw_rational sw_duration_head(sw_duration d);
/* The single note value (at most `dots` dots, factor 1) of exactly this length; false when there is none. */
bool sw_duration_from_length(sw_rational length, int dots, sw_duration *duration);
/* The value of exactly this length: a single one with at most one dot, otherwise a stretched whole note,
 * 1*5/8. */
sw_duration sw_duration_of(sw_rational length);
bool sw_duration_equal(sw_duration a, sw_duration b);
/* Writes LilyPond's form: "4.", "\breve", "1*3/4". Returns `text`. */
enum { SW_DURATION_TEXT = 64 };
char *sw_duration_print(sw_duration d, char text[SW_DURATION_TEXT]);

#endif
