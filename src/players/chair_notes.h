/* Which of a staff's players play a note. */
#ifndef STAVEWRIGHT_PLAYERS_CHAIR_NOTES_H
#define STAVEWRIGHT_PLAYERS_CHAIR_NOTES_H

#include "players/chairs.h"

/* Those of a note: seats [first, end) of the seating; none for what is not played, or by nobody known. */
typedef struct sw_seat_range {
    uint32_t first;
    uint32_t end;
    uint32_t notes; /* how many different notes sound on the staff when it begins, itself among them */
    bool all;       /* several voices sound, so all of the staff's players play, whatever a text says */
} sw_seat_range;

/* Who plays which event of a score. */
typedef struct sw_seated_notes {
    const sw_seating *seating;
    const sw_seat_range *ranges; /* by event; NULL: nobody knows */
} sw_seated_notes;

/* Whether a player plays in both of two events, as far as is known. */
bool sw_seats_meet(sw_seated_notes who, uint32_t one, uint32_t other);

/* For each event of the score. A note that sounds alone on its staff is for all who play there; of several
 * the first voice and the higher note are for the first player; a voice that rests beside it is somebody's,
 * too. free() the result. */
sw_seat_range *sw_seating_of_notes(const sw_seating *seating, const sw_reading *reading,
                                   const sw_score *score);

/* The notes and drums of a staff that its players play, in order of time: indices of events. free() items. */
typedef struct sw_note_list {
    uint32_t *items;
    size_t count;
} sw_note_list;

sw_note_list sw_notes_of_staff(const sw_reading *reading, const sw_score *score, uint32_t staff);

/* A note of one player, with the instrument for it. */
typedef struct sw_own_note {
    sw_rational onset;
    sw_rational end;
    uint32_t event;
    const sw_instrument *instrument; /* NULL: not known */
} sw_own_note;

/* The notes of a player on all staves, in order of time; `notes` has room for all events of the score, and
 * `ranges` are those of sw_seating_of_notes. Returns how many. */
size_t sw_notes_of_player(const sw_seating *seating, const sw_score *score, const sw_seat_range *ranges,
                          uint32_t player, sw_own_note *notes);

/* A note or drum that this staff's players play themselves: no cue, not hidden, of known pitch. */
bool sw_note_is_played(const sw_reading *reading, const sw_score *score, const sw_event *event);

#endif
