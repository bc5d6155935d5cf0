/* From a place in a source to the notes and rests that are heard there. Private to checks/. */
#ifndef SW_CHECKS_HEARD_H
#define SW_CHECKS_HEARD_H

#include "stavewright/score.h"

typedef struct sw_heard_item {
    uint32_t file; /* where it is written */
    uint32_t start;
    uint32_t score;
    uint32_t event;
} sw_heard_item;

typedef struct sw_heard {
    const sw_reading *reading;
    sw_heard_item *items; /* by place */
    size_t count;
} sw_heard;

/* All notes, drums and rests of the scores of a reading. Free with sw_heard_free. */
sw_heard sw_heard_of(const sw_reading *reading);
void sw_heard_free(sw_heard *heard);

/* What is heard where a finding stands: at this very place, or else the note before it or behind it on its
 * line, or the next one in the file. Returns the first of *count items that are written at one place; NULL
 * and 0 when nothing is. */
const sw_heard_item *sw_heard_near(const sw_heard *heard, uint32_t file, uint32_t start, size_t *count);
/* What is written at [start, end) of a file and heard: the first of *count items, by place. NULL and 0:
 * nothing.
 */
const sw_heard_item *sw_heard_within(const sw_heard *heard, uint32_t file, uint32_t start, uint32_t end,
                                     size_t *count);
/* Whether all notes that are written on lines [first, last] of a file are heard in some score. */
bool sw_heard_all(const sw_heard *heard, uint32_t file, uint32_t first_line, uint32_t last_line);

#endif
