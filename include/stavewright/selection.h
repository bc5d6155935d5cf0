/* Choosing places of a score: staves by name, bars by number. */
#ifndef STAVEWRIGHT_SELECTION_H
#define STAVEWRIGHT_SELECTION_H

#include <stdbool.h>
#include <stdint.h>

#include "stavewright/score.h"

/* A stretch of bars, as a person writes it: 8-12, 8, 8:3-9:1 (bar:beat). */
typedef struct sw_bar_range {
    bool given; /* false: everything */
    int first_bar;
    sw_rational first_beat; /* from 1 */
    int last_bar;
    sw_rational last_beat; /* 0: the whole last bar; otherwise up to and including what begins on this beat */
} sw_bar_range;

/* Reads a range. False when the text is none. */
bool sw_bar_range_parse(const char *text, sw_bar_range *range);
/* The moments [*from, *to) that the range means in a score. False when the score has no such bar. */
bool sw_bar_range_moments(const sw_score *score, const sw_bar_range *range, sw_rational *from,
                          sw_rational *to);

/* The staff with a name: instrument name, short name, context id or variable, written exactly (blanks around
 * it and a backslash before it do not count), or in other case, or as a PCRE2 pattern between slashes
 * (/harp.*1/); failing that, the only staff of a group with the name. On success *score_index and *staff are
 * set (of the first score that has such a staff). False with *error (free() it) when there is none, with the
 * names that there are, or when a score has several. */
bool sw_staff_find(const sw_reading *reading, const char *name, uint32_t *score_index, uint32_t *staff,
                   char **error);
/* All staves of a score that a name means, in any case, or a pattern between slashes: found[i] is set for
 * staff i. None may be. False with *error for a wrong pattern. */
bool sw_staves_find(const sw_reading *reading, uint32_t score, const char *name, bool *found, char **error);

#endif
