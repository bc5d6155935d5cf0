/* A staff voice by voice, as one player breathes and tongues it: with seconds, dynamics and slurs. Private to
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
    sw_dynamic dynamic; /* in force; SW_NO_DYNAMIC: nothing is said */
    bool low;           /* in the lowest fifth of the instrument's written compass */
    bool high;          /* above the note from which on the lips tire */
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
sw_line sw_line_of_staff(sw_check *check, const sw_score *score, uint32_t staff);

#endif
