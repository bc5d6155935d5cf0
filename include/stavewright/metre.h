/* How a stretch of time is written in a metre. */
#ifndef STAVEWRIGHT_METRE_H
#define STAVEWRIGHT_METRE_H

#include <stdbool.h>
#include <stddef.h>

#include "stavewright/duration.h"
#include "stavewright/rational.h"

/* A time signature: 6/8 is {6, 8}. */
typedef struct sw_metre {
    int beats;
    int beat_value;
} sw_metre;

/* 6/8, 9/8, 12/8 and their like, whose beats are dotted. */
bool sw_metre_is_compound(sw_metre metre);
/* The length of a beat in whole notes, as musicians count: 1/4 in 4/4, 3/8 in 12/8. */
sw_rational sw_metre_beat(sw_metre metre);

/* Writes a rest of `length` whole notes that begins `position` whole notes behind the bar line as note
 * values: each begins on a multiple of itself, so that beats stay visible, none crosses the middle of a bar
 * in 4/4 unless it begins there or fills it, and dotted values stand only for whole beats of compound metres.
 * The stretch must lie inside one bar. Returns how many values it needs; at most `most` are stored. A length
 * that note values cannot say (a rest of a third) becomes one value with a factor. Common practice, no
 * source. */
size_t sw_metre_rests(sw_metre metre, sw_rational position, sw_rational length, sw_duration *values,
                      size_t most);

/* The same for a note, as values to be tied: one value where it can be said so that the middle of the bar
 * stays visible (a note crosses it only when it begins or ends at a bar line), and beats of compound metres
 * too; a value inside of its half begins on a multiple of half of itself. Otherwise it is divided there.
 * Dots: at most one. Common practice, no source. */
size_t sw_metre_notes(sw_metre metre, sw_rational position, sw_rational length, sw_duration *values,
                      size_t most);
/* The fewest values, longest first, that a length is said with where no metre counts (inside of tuplets and
 * grace notes). 0 when note values down to 1/1024 can't say it. */
size_t sw_metre_free(sw_rational length, sw_duration *values, size_t most);

#endif
