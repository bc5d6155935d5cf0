/* Where the endings of repeats begin that are not written out. Private to players/. */
#ifndef SW_PLAYERS_ENDINGS_H
#define SW_PLAYERS_ENDINGS_H

#include "stavewright/score.h"

/* Their settings, staff by staff, in order of time. Where several lines of a staff are written with the same
 * endings, those of the first one count. */
typedef struct sw_endings {
    const sw_setting **items;
    size_t count;
    size_t capacity;
} sw_endings;

/* free() items. */
sw_endings sw_endings_of_score(const sw_reading *reading, const sw_score *score);
/* Whether two settings begin endings of one use of a repeat on one staff. */
bool sw_endings_of_one_repeat(const sw_setting *a, const sw_setting *b);

#endif
