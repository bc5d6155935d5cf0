/* Two parts on one staff: which of the voices "one", "two", "shared", "solo" each part's notes go to, and
 * when they go to none because the other part already says the same. */
#ifndef SW_SCORE_PART_COMBINE_H
#define SW_SCORE_PART_COMBINE_H

#include "score/recording.h"

typedef enum sw_part_voice {
    SW_PART_ONE,
    SW_PART_TWO,
    SW_PART_SHARED,
    SW_PART_SOLO,
    SW_PART_NULL, /* not heard */
    SW_PART_VOICES
} sw_part_voice;

/* From a moment on, counted from the beginning of the parts, a part's notes go to this voice. */
typedef struct sw_part_turn {
    sw_moment at;
    sw_part_voice voice;
} sw_part_turn;

typedef struct sw_part_turns {
    sw_part_turn *items;
    size_t count;
    size_t capacity;
} sw_part_turns;

/* Decides from the recordings of both parts. Two notes can share a voice when the first is at least `lowest`
 * and at most `highest` steps above the second (0 and 8 unless the source says otherwise). The caller frees
 * turns[0].items and turns[1].items; the recordings lose what other voices heard. */
void sw_part_combine(sw_recording *one, sw_recording *two, int lowest, int highest, sw_part_turns turns[2]);

#endif
