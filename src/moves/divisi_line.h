/* Who of a divided section takes which note: a pure function on small structs.
 *
 * Parts are numbered from the lowest up and never cross: in each chord part p + 1 has the same note as part p
 * or a higher one, and each note has at least one part. Of all such ways the cheapest is chosen, over the
 * whole passage. The costs are common practice, no source:
 *   - a part moves by semitones; half of them behind a rest, where there is time
 *   - a part that leaves a note which is tied to this chord breaks the tie
 *   - a note with several parts while another has few: the square of its parts, so that they spread evenly
 *   - an inner note that is doubled where an outer one could have been. Private to moves/. */
#ifndef SW_MOVES_DIVISI_LINE_H
#define SW_MOVES_DIVISI_LINE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum {
    SW_DIVISI_MOST = 6, /* parts, and notes of a chord */
    SW_DIVISI_STEP = 2, /* a semitone; half of it behind a rest */
    SW_DIVISI_TIE = 400,
    SW_DIVISI_EVEN = 40,
    SW_DIVISI_INNER = 6
};

typedef struct sw_divisi_slice {
    int heights[SW_DIVISI_MOST]; /* semitones, ascending */
    uint8_t count;               /* of notes, from 1 to the number of parts */
    uint8_t tied;                /* bit n: note n is tied from the chord before */
    bool apart;                  /* a rest stands before it */
} sw_divisi_slice;

/* What one chord costs by itself, `notes` being the note of each part. */
int64_t sw_divisi_place_cost(const sw_divisi_slice *slice, int parts, const uint8_t *notes);
/* What the way from one chord to the next costs. */
int64_t sw_divisi_joint_cost(const sw_divisi_slice *a, const sw_divisi_slice *b, int parts,
                             const uint8_t *notes_a, const uint8_t *notes_b);
/* The cheapest way: notes[slice * parts + part]. Its cost, or -1 when a chord has more notes than there are
 * parts. */
int64_t sw_divisi_solve(const sw_divisi_slice *slices, size_t count, int parts, uint8_t *notes);

/* How many of a section's players play a part, numbered from the lowest up: the same everywhere, and one more
 * in the outer parts first, from the top, where the number does not divide. */
int sw_divisi_players(int players, int parts, int part);

#endif
