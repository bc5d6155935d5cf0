/* Changes from one way of playing to another that there is too little time for. Private to checks/ and
 * moves/. */
#ifndef SW_CHECKS_CHANGEOVERS_H
#define SW_CHECKS_CHANGEOVERS_H

#include "checks/strokes.h"
#include "players/chair_notes.h"
#include "stavewright/techniques.h"

typedef struct sw_changeover {
    uint32_t before; /* the last stroke in the old way: index into the strokes */
    uint32_t stroke; /* the first in the new way */
    uint8_t from;    /* technique numbers */
    uint8_t to;
    const sw_technique_change *change; /* what it wants */
    double given;                      /* the seconds that are left */
    bool waits; /* the hand is free only when the last note has ended: an earlier end gives time */
} sw_changeover;

typedef struct sw_changeovers {
    sw_strokes strokes; /* of the staff */
    sw_changeover *items;
    size_t count;
    size_t capacity;
} sw_changeovers;

/* Those of one staff whose instrument is known. Where a stroke needs several changes at once, the longest.
 * `who`: who plays which note on what; with ranges of NULL all play all on the instrument with which the
 * staff begins. From one instrument to another nothing is measured here, nor from one player to another. Free
 * with sw_changeovers_free. */
sw_changeovers sw_changeovers_of_staff(const sw_techniques *techniques, const sw_reading *reading,
                                       const sw_score *score, const sw_playing *playing, uint32_t staff,
                                       sw_seated_notes who);
void sw_changeovers_free(sw_changeovers *changeovers);

/* A value to take off the end of a note, and its name ("an eighth"). */
typedef struct sw_courtesy_value {
    sw_rational length;
    const char *name;
} sw_courtesy_value;

/* The smallest of eighth, quarter, half and whole that gives the time when the stroke before ends so much
 * earlier, and leaves at least half of that note (with what is tied to it). False when there is none. */
bool sw_changeover_value(const sw_score *score, const sw_strokes *strokes, const sw_changeover *changeover,
                         sw_courtesy_value *value);
/* The first stroke of those that are tied up to this one. */
uint32_t sw_stroke_begin(const sw_strokes *strokes, uint32_t stroke);

#endif
