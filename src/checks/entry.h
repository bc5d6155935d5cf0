/* How the notes of a staff are meant: for which instrument, and whether the source says how they transpose.
 * Private to checks/. */
#ifndef SW_CHECKS_ENTRY_H
#define SW_CHECKS_ENTRY_H

#include "players/chair_notes.h"
#include "stavewright/check.h"

/* What \transposition says about an instrument whose own transposition is known. */
typedef enum sw_transposition_fit {
    SW_TRANSPOSITION_NONE,   /* there is none */
    SW_TRANSPOSITION_FITS,   /* ... or the instrument is not known */
    SW_TRANSPOSITION_OCTAVE, /* right but for the octave */
    SW_TRANSPOSITION_OTHER   /* of another key */
} sw_transposition_fit;

/* What holds on a staff from a moment on. */
typedef struct sw_entry {
    sw_rational onset;
    const sw_instrument *instrument; /* NULL: not known */
    sw_transposition_fit fit;
    sw_pitch transposition;       /* how a written middle C sounds, if \transposition is in force */
    uint32_t transposition_music; /* the node that says so, SW_NO_INDEX */
    bool octave_clef;             /* the clef itself says an octave: "treble_8", "bass^15" */
    bool bass_clef;
    bool harmonic_heads; /* the note heads are those of harmonics, by an override ... */
    bool only_here;      /* ... that \once limits to this onset */
    const sw_instrument
        *taken;      /* what the players have taken; `instrument` is that in the key of \transposition */
    uint32_t others; /* what holds for those who have taken something else: others[others ..] of the staff */
    uint32_t other_count;
} sw_entry;

typedef struct sw_entries {
    sw_entry *items; /* in order of time, the first at 0; at least one */
    size_t count;
    size_t capacity;
    sw_entry *others; /* see sw_entry */
    size_t other_count;
    size_t other_capacity;
    const sw_seating *seating;   /* who plays which event of the score, where there are others; ... */
    const sw_seat_range *ranges; /* ... NULL: nobody asks */
} sw_entries;

/* The entries of all staves of a score, by staff. Changes of instrument are those that say so by a new name
 * of the staff, and with a seating also those by a text ("muta in Piccolo"); what only some of the players
 * take stands under `others`. A name without a key ("Clarinets") means the instrument in the key that
 * \transposition says, if there is one. Free with sw_entries_free. */
sw_entries *sw_entries_of_score(const sw_instruments *instruments, const sw_reading *reading,
                                const sw_score *score, const sw_seating *seating_or_null);
/* The same with what the players of a film have in hand, for moves. */
sw_entries *sw_entries_of_film(const sw_film *film, const sw_reading *reading, const sw_score *score);
/* NULL is allowed. */
void sw_entries_free(sw_entries *entries, size_t staff_count);
/* The same for a score of the check's reading, for rules: found out once, owned by the check. */
const sw_entries *sw_check_entries(sw_check *check, const sw_score *score);

enum { SW_ENTRY_READINGS = 3 };
/* The written pitches that an entered pitch can mean for the instrument: several where the source does not
 * say whether it holds written or sounding pitches, none without an instrument. Returns how many. */
size_t sw_entry_written(const sw_entry *entry, sw_pitch pitch, sw_pitch written[SW_ENTRY_READINGS]);
/* Whether the note heads are those of harmonics for a note at a moment for which the entry holds. */
bool sw_entry_has_harmonic_heads(const sw_entry *entry, sw_rational onset);
/* What holds on the staff at a moment. */
const sw_entry *sw_entries_at(const sw_entries *entries, sw_rational onset);
/* The same for notes one after another: `before` is what held for the note before, NULL for the first one. */
const sw_entry *sw_entries_next(const sw_entries *entries, const sw_entry *before, sw_rational onset);
/* What holds for one note, an index of the score's events. `entry` is what holds on its staff then; where
 * those who play the note have another instrument than the staff's first ("2. muta in Piccolo"), it is
 * theirs. */
const sw_entry *sw_entry_of_note(const sw_entries *entries, const sw_entry *entry, uint32_t event);
/* Whether something is true of an instrument that anybody has on the staff at any time. */
bool sw_entries_any(const sw_entries *entries, bool (*is)(const sw_instrument *instrument));

#endif
