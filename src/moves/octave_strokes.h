/* The lines of a score for octave_line.h: which strokes there are, and what lies between them. Private to
 * moves/. */
#ifndef SW_MOVES_OCTAVE_STROKES_H
#define SW_MOVES_OCTAVE_STROKES_H

#include "moves/octave_line.h"
#include "moves/places.h"

/* A note or chord of one voice. */
typedef struct sw_line_stroke {
    uint32_t event; /* index of its first event, and of the one behind its last */
    uint32_t end;
    bool chosen;    /* it may be moved */
    uint32_t first; /* the stroke that is written where this one is, and heard before it; else SW_NO_INDEX */
} sw_line_stroke;

typedef struct sw_lines {
    sw_line_stroke *strokes; /* voice by voice, in order of time */
    sw_octave_stroke *notes; /* the same for the solver; heights are 0 */
    size_t count;
    size_t capacity;
} sw_lines;

/* The voices that have chosen notes, with all their strokes. What is tied to a chosen note, or a grace note
 * of it, is chosen, too. What is heard again later is chosen like the first time. */
sw_lines sw_lines_of(const sw_chosen *chosen);
void sw_lines_free(sw_lines *lines);

#endif
