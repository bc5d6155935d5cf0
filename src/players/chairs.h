/* Who plays which staff through time, and on what instrument. */
#ifndef STAVEWRIGHT_PLAYERS_CHAIRS_H
#define STAVEWRIGHT_PLAYERS_CHAIRS_H

#include "stavewright/film.h"

/* A chair of the film, or, without a roster, a player whom the staff's name speaks of. */
typedef struct sw_player {
    const sw_chair *chair; /* NULL: none of the film */
    const char *name;
    unsigned number; /* "Flute 2": 2; 0: none */
} sw_player;

/* A player with an instrument. */
typedef struct sw_seat {
    uint32_t player;                 /* index into the seating's players */
    const sw_instrument *instrument; /* NULL: not known */
} sw_seat;

/* Who plays a staff from a moment on. */
typedef struct sw_seats {
    sw_rational from;
    size_t first; /* seats [first, first + count) of the seating: those who play where one voice sounds */
    size_t count;
    size_t all_first; /* all of the staff's players: they play where several voices sound */
    size_t all_count;
    bool some;     /* a text says that not all of them play */
    uint32_t said; /* the MARK or SET node that says so; SW_NO_INDEX at the beginning */
} sw_seats;

typedef enum sw_booking {
    SW_BOOKED,        /* or nobody can tell */
    SW_NOT_BOOKED,    /* no chair plays the instrument */
    SW_NUMBER_MISSING /* chairs play it, but not with (one of) the staff's numbers */
} sw_booking;

/* A staff in time. */
typedef struct sw_seated_staff {
    const sw_instrument *instrument; /* with which it begins; NULL: not known */
    sw_booking booking;
    unsigned missing_number; /* SW_NUMBER_MISSING: the first of them */
    size_t first; /* spans [first, first + count) of the seating; none: nobody is known to play it */
    size_t count;
    int players; /* how many its chairs have together; 0: not known */
    bool prerecorded;
} sw_seated_staff;

typedef struct sw_seating {
    sw_player *players;
    size_t player_count;
    sw_seat *seats;
    size_t seat_count;
    sw_seats *spans; /* staff by staff, in order of time */
    size_t span_count;
    sw_seated_staff *staves;
    sw_arena *arena;
    size_t player_capacity;
    size_t seat_capacity;
    size_t span_capacity;
} sw_seating;

/* The seating of a score. A staff belongs to the chairs whose patterns match one of its names, otherwise to
 * those of its instrument with its numbers ("Horns 1, 2"; without numbers: all), otherwise to the chair that
 * doubles it. "muta in Piccolo", "to Picc." and a new name of the staff change the instrument, "1.", "a 2"
 * who plays. Free with sw_seating_free. */
sw_seating *sw_seating_of(const sw_film *film, const sw_reading *reading, const sw_score *score);
/* NULL is allowed. */
void sw_seating_free(sw_seating *seating);

/* Who plays a staff at a moment; NULL: nobody is known. */
const sw_seats *sw_seating_at(const sw_seating *seating, uint32_t staff, sw_rational onset);
/* Whether players take both for the same: the horns of all keys, but not the clarinets in B flat and E flat.
 */
bool sw_instruments_alike(const sw_instrument *a, const sw_instrument *b);
/* Whether a chair is booked for an instrument. */
bool sw_chair_plays(const sw_chair *chair, const sw_instrument *instrument);

/* ---- what texts say --------------------------------------------------------------------------------------
 */

typedef enum sw_chair_text_kind {
    SW_CHAIR_TEXT_NONE,
    SW_CHAIR_TEXT_CHANGE, /* "muta in Piccolo", "2. take alto flute" */
    SW_CHAIR_TEXT_ONLY,   /* "1.", "2. solo" */
    SW_CHAIR_TEXT_ALL     /* "a 2", "tutti" */
} sw_chair_text_kind;

typedef struct sw_chair_text {
    sw_chair_text_kind kind;
    unsigned numbers[8]; /* CHANGE, ONLY: of which players; none: of all */
    size_t number_count;
    const sw_instrument *instrument; /* CHANGE */
} sw_chair_text;

/* What a text over a staff of an instrument (NULL: not known) says about its players. */
sw_chair_text sw_chair_text_read(const sw_instruments *instruments, const sw_instrument *present,
                                 const char *text);

#endif
