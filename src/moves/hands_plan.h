/* What `hands` works on, shared by its files. Private to moves/. */
#ifndef SW_MOVES_HANDS_PLAN_H
#define SW_MOVES_HANDS_PLAN_H

#include "players/hand_split.h"
#include "stavewright/move.h"

enum { SW_RIGHT_PART = 1, SW_LEFT_PART = 2 }; /* the parts of the division, as bits */

typedef struct sw_hands {
    sw_move *move;
    const sw_reading *reading;
    const sw_score *score;
    uint32_t staff;
    sw_hand_limits limits;
    sw_rational from; /* what is split */
    sw_rational to;
    uint32_t *events; /* by note given to the split: the event */
    sw_hand_note *notes;
    size_t count;
    uint8_t *event_parts; /* by event: SW_RIGHT_PART or SW_LEFT_PART */
    sw_part_clef *clefs;
    size_t clef_count;
    size_t clef_capacity;
} sw_hands;

/* Fills in the clefs of both hands from `event_parts`, in order of time. */
void sw_hands_choose_clefs(sw_hands *h);

#endif
