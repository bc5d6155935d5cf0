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

/* Where brackets can stand in the music, as it is written. */
typedef struct sw_ottava_places {
    uint32_t *unit; /* by event: beside which music a bracket can begin or end (a note, a tremolo, a note with
                       what follows it as graces) */
    uint32_t *home; /* by event: the music in which a bracket must end that begins there */
    uint32_t *line; /* by event: the music from its voice, or variable, on */
    uint32_t *setting_line; /* the same by setting */
} sw_ottava_places;

/* The brackets that the chosen notes need (ottava_plan.c). */
sw_brackets sw_ottava_plan(sw_move *move, const sw_chosen *chosen, const sw_ottava_places *places,
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
