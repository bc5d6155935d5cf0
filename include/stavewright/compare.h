/* The musical difference of two versions: what a copyist has to change in the parts. */
#ifndef STAVEWRIGHT_COMPARE_H
#define STAVEWRIGHT_COMPARE_H

#include "stavewright/score.h"

/* What is another in a bar; several may be. */
enum {
    SW_DIFFER_NOTES = 1 << 0, /* pitches */
    SW_DIFFER_RHYTHM = 1 << 1,
    SW_DIFFER_DYNAMICS = 1 << 2,
    SW_DIFFER_ARTICULATIONS = 1 << 3, /* also slurs, fingerings, ornaments */
    SW_DIFFER_TEXTS = 1 << 4,
    SW_DIFFER_LYRICS = 1 << 5,
    SW_DIFFER_KEY = 1 << 6,
    SW_DIFFER_METRE = 1 << 7,    /* of all staves: time signature, length of the bar */
    SW_DIFFER_TEMPO = 1 << 8,    /* the same */
    SW_DIFFER_MARKS = 1 << 9,    /* the same: rehearsal marks, segno and coda */
    SW_DIFFER_REPEATS = 1 << 10, /* the same: what is repeated, how often, with which endings */
    SW_DIFFER_NEW = 1 << 11,     /* the bars, the whole staff or the whole score have come in */
    SW_DIFFER_GONE = 1 << 12,    /* ... or are gone; score and bar numbers are those of the old version */
    SW_DIFFER_NAME = 1 << 13     /* of the whole staff: another instrument's name stands before it */
};
enum { SW_DIFFER_KINDS = 14 };
/* "notes", "rhythm" ... for the bit number `kind`. */
const char *sw_difference_name(int kind);

typedef struct sw_difference {
    uint32_t score;    /* from 0 */
    const char *staff; /* NULL: all staves */
    bool whole;        /* the whole staff, or the whole score: no bars */
    int32_t first_bar; /* numbers as the compiler counts */
    int32_t last_bar;
    unsigned what;
} sw_difference;

typedef struct sw_differences {
    sw_difference *items; /* score by score, staff by staff in the order of the new version, bar by bar */
    size_t count;
    size_t capacity;
    sw_arena *arena;
} sw_differences;

/* Compares what two readings say, score by score, which are matched in their order so that they
 * are most alike. Staves are known by context id, instrument name or
 * variable. Bars that have come in or go do not make all that follows another: bars are aligned so that the
 * least is different, exactly. What only looks otherwise (rests written otherwise, octave marks, voices,
 * beams, layout), is written in another note language, or through a variable, is no difference. Free with
 * sw_differences_free. */
sw_differences sw_compare(const sw_reading *before, const sw_reading *after);
void sw_differences_free(sw_differences *differences);

#endif
