/* What `hands` works on, shared by its files. Private to moves/. */
#ifndef SW_MOVES_HANDS_PLAN_H
#define SW_MOVES_HANDS_PLAN_H

#include "players/hand_split.h"
#include "stavewright/move.h"

typedef struct sw_hands {
    sw_move *move;
    const sw_reading *reading;
    const sw_score *score;
    uint32_t staff;
    sw_hand_limits limits;
    bool mallets;    /* and no fingers */
    bool can_pedal;  /* a keyboard whose notes a pedal can hold */
    int compass_low; /* MIDI keys between which the instrument lies, as written */
    int compass_high;
    sw_rational from; /* what is split */
    sw_rational to;
    uint32_t *events; /* by note given to the split: the event */
    sw_hand_note *notes;
    size_t count;
    uint8_t *event_part; /* by event: 0 right, 1 left */
    bool *event_rolls;   /* by event: its chord has to be rolled, and is not marked so */
    uint8_t *text_homes; /* by music node: see sw_division */
    sw_part_clef *clefs;
    size_t clef_count;
    size_t clef_capacity;
} sw_hands;

/* Fills in what the hands can do, from the instrument and the options. False with *error. */
bool sw_hands_find_limits(sw_hands *h, const sw_hands_options *options, char **error);
/* Numbers the beams and beats that the notes stand in, as far as three notes or more of a voice do. */
void sw_hands_find_groups(sw_hands *h);
/* Finds the texts that belong between the hands or to the feet. False with *error. */
bool sw_hands_find_texts(sw_hands *h, const sw_film *film, char **error);
/* Adds a finding for what no hands can play. */
void sw_hands_report(sw_hands *h, const sw_hand_problem *problem);
/* Puts each chord on one staff, and tells where both hands have notes of it. */
void sw_hands_settle_chords(sw_hands *h);
/* What the ids of the staves begin with that the music goes to and fro. */
const char *sw_hands_change_id(const sw_hands *h);
/* Whether a mark rolls a chord. */
bool sw_hands_is_arpeggio(const sw_reading *reading, uint32_t mark);
/* Fills in the clefs of both hands from `event_part`, in order of time. */
void sw_hands_choose_clefs(sw_hands *h);

#endif
