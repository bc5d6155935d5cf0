/* How the notes of a staff are meant: for which instrument, and whether the source says how they transpose.
 * Private to checks/. */
#ifndef SW_CHECKS_ENTRY_H
#define SW_CHECKS_ENTRY_H

#include "players/chairs.h"
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
} sw_entry;

typedef struct sw_entries {
    sw_entry *items; /* in order of time, the first at 0; at least one */
    size_t count;
    size_t capacity;
} sw_entries;

/* The entries of all staves of a score, by staff. Changes of instrument are those that say so by a new name
 * of the staff, and with a seating also those by a text for all of its players ("muta in Piccolo"). A name
 * without a key ("Clarinets") means the instrument in the key that \transposition says,
 * if there is one. Free with sw_entries_free. */
sw_entries *sw_entries_of_score(const sw_instruments *instruments, const sw_reading *reading,
                                const sw_score *score, const sw_seating *seating_or_null);
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
/* What holds at a moment. */
const sw_entry *sw_entries_at(const sw_entries *entries, sw_rational onset);
/* The same for notes one after another: `before` is what held for the note before, NULL for the first one. */
const sw_entry *sw_entries_next(const sw_entries *entries, const sw_entry *before, sw_rational onset);

#endif
