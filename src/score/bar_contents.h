/* What a score holds in each bar, as numbers, so that bars can be compared quickly. Private to score/. */
#ifndef SW_SCORE_BAR_CONTENTS_H
#define SW_SCORE_BAR_CONTENTS_H

#include "stavewright/score.h"

/* What a staff has in a bar, one number a kind; 0: nothing. */
enum {
    SW_PART_PITCHES,
    SW_PART_RHYTHM,
    SW_PART_DYNAMICS,
    SW_PART_MARKS,        /* articulations and the like, wherever in the bar ... */
    SW_PART_MARKS_PLACED, /* ... and with their places */
    SW_PART_TEXTS,
    SW_PART_LYRICS,
    SW_PART_KEY,
    SW_PARTS
};
typedef struct sw_content {
    uint64_t parts[SW_PARTS];
} sw_content;

/* What all staves have; tempo, marks and repeats in the order of sw_sign_kind. */
enum { SW_ALL_METRE, SW_ALL_TEMPO, SW_ALL_MARKS, SW_ALL_REPEATS, SW_ALL_PARTS };
typedef struct sw_content_of_all {
    uint64_t parts[SW_ALL_PARTS];
} sw_content_of_all;

typedef struct sw_bar_contents {
    const sw_reading *reading;
    const sw_score *score;
    sw_content *staves;     /* [staff * bars + bar] */
    sw_content_of_all *all; /* by bar */
} sw_bar_contents;

/* Borrows both. Free with sw_bar_contents_free. */
sw_bar_contents sw_bar_contents_of(const sw_reading *reading, const sw_score *score);
void sw_bar_contents_free(sw_bar_contents *contents);

#endif
