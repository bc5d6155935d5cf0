/* A staff voice by voice, as one player breathes and tongues it: with seconds, loudness and slurs. Private to
 * checks/ and moves/. */
#ifndef SW_CHECKS_LINE_H
#define SW_CHECKS_LINE_H

#include "checks/strokes.h"
#include "stavewright/check.h"

typedef struct sw_line_note {
    uint32_t event; /* its first event */
    uint32_t voice;
    double begin; /* seconds */
    double end;
    int loudness;       /* in force: see players/loudness.h */
    bool low;           /* in the lowest fifth of the instrument's written compass */
    bool first;         /* of its voice */
    bool joined;        /* tied or slurred to the note before */
    bool breath_before; /* a breath mark stands between the note before and this one */
} sw_line_note;

typedef struct sw_line {
    sw_line_note *items; /* voice by voice, each in order of time */
    size_t count;
    size_t capacity;
} sw_line;

/* The notes of a staff. Free `items` with free(). */
sw_line sw_line_of_staff(const sw_check *check, const sw_score *score, const sw_playing *playing,
                         uint32_t staff);

#endif
