/* \ottava brackets in and out; no note changes. Private to moves/. */
#ifndef SW_MOVES_OTTAVA_H
#define SW_MOVES_OTTAVA_H

#include "moves/places.h"

/* Writes brackets over what has more ledger lines than the options say, or takes out those that hold a chosen
 * note, and proves that nothing else changes. What can't get a bracket is in the move's notes. False with
 * *error (free() it).
 *
 * A bracket belongs to the staff, so all notes of the staff at the time must be readable under it: at most
 * one ledger line on the other side. It goes on over lower notes that are, until the next high one, within a
 * whole note. Two octaves where one is not enough. Below the staff brackets stand only under a bass clef;
 * elsewhere another clef is the usual help (common practice, no source). */
bool sw_move_ottava(sw_move *move, const sw_chosen *chosen, const sw_octave_options *options,
                    const sw_read_options *reading_options, char **error);

/* One bracket, as it was planned. */
typedef struct sw_bracket {
    uint32_t staff;
    sw_rational from;
    sw_rational to;
    int octaves;    /* 1 is 8va, -2 is 15mb */
    uint32_t first; /* events: its first and last note */
    uint32_t last;
} sw_bracket;

typedef struct sw_brackets {
    sw_bracket *items;
    size_t count;
    size_t capacity;
} sw_brackets;

/* The brackets that the chosen notes need (ottava_plan.c). By event of the score, `unit`: the music beside
 * which a bracket can begin or end (a note, a tremolo, a note with what follows it as graces), and `home`:
 * the music in which a bracket must end that begins there. */
sw_brackets sw_ottava_plan(sw_move *move, const sw_chosen *chosen, const uint32_t *unit, const uint32_t *home,
                           int ledgers);
/* Whether a setting is an \ottava. */
bool sw_is_ottava(const sw_reading *reading, const sw_setting *setting);
/* Its number: 0 ends a bracket. */
int sw_ottava_number(const sw_reading *reading, const sw_setting *setting);
/* Reads the result and compares: all but \ottava must be as before; in the score of `chosen` each bracket
 * must be there (`add`), or none of them (ottava_proof.c). */
bool sw_ottava_prove(const sw_move *move, const sw_chosen *chosen, const sw_brackets *brackets, bool add,
                     const sw_read_options *options, char **error);

#endif
