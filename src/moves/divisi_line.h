/* Who of a divided section takes which note: a pure function on small structs.
 *
 * Parts are numbered from the lowest up and never cross: in each chord part p + 1 has the same note as part p
 * or a higher one, and each note has at least one part. Of all such ways the cheapest is chosen, over the
 * whole passage. The costs are common practice, no source:
 *   - a part moves by semitones; half of them behind a rest, where there is time
 *   - a part that leaves a note which is tied to this chord breaks the tie
 *   - a note with several parts while another has few: the square of its players, so that they spread evenly
 *   - an inner note that is doubled where an outer one could have been
 *   - a part whose players don't have a note in the compass of a section: by the semitones that it lies
 * beyond
 *   - on strings, a part that shifts: the semitones from one position to the other, half of them behind a
 *     rest; and a little for each part high up the string, so that the lower of two outer notes is doubled.
 * Private to moves/. */
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
    SW_DIVISI_INNER = 6,
    SW_DIVISI_RANGE = 100, /* a semitone beyond the compass */
    SW_DIVISI_SHIFT = 2,   /* a semitone along the string; half of it behind a rest */
    SW_DIVISI_HIGH = 1     /* a semitone above the first position */
};

/* Who is divided: parts from the lowest up. */
typedef struct sw_divisi_section {
    int parts;
    int sizes[SW_DIVISI_MOST];  /* players of each, at least one */
    int groups[SW_DIVISI_MOST]; /* the group of each */
} sw_divisi_section;

typedef struct sw_divisi_slice {
    int heights[SW_DIVISI_MOST]; /* semitones, ascending */
    uint8_t count;               /* of notes, from 1 to the number of parts */
    uint8_t tied;                /* bit n: note n is tied from the chord before */
    bool apart;                  /* a rest stands before it */
    /* by part and note: how the note lies for the part's players, in semitones, 0 to 255 */
    uint8_t beyond[SW_DIVISI_MOST][SW_DIVISI_MOST];   /* outside of their compass */
    uint8_t position[SW_DIVISI_MOST][SW_DIVISI_MOST]; /* of the hand on the string, above the first one */
} sw_divisi_slice;

/* What one chord costs by itself, `notes` being the note of each part. */
int64_t sw_divisi_place_cost(const sw_divisi_slice *slice, const sw_divisi_section *section,
                             const uint8_t *notes);
/* What the way from one chord to the next costs. */
int64_t sw_divisi_joint_cost(const sw_divisi_slice *a, const sw_divisi_slice *b,
                             const sw_divisi_section *section, const uint8_t *notes_a,
                             const uint8_t *notes_b);
/* The cheapest way: notes[slice * parts + part]. Its cost, or -1 when a chord has more notes than there are
 * parts. */
int64_t sw_divisi_solve(const sw_divisi_slice *slices, size_t count, const sw_divisi_section *section,
                        uint8_t *notes);

/* How many of a section's players play a part, numbered from the lowest up: the same everywhere, and one more
 * in the outer parts first, from the top, where the number does not divide. */
int sw_divisi_players(int players, int parts, int part);
/* How groups of players (cellos and basses on one staff; mostly there is one), given from the top, become so
 * many parts: nobody shares a part with another group, the parts are as equal as that allows, and each group
 * is divided as above. Where there are fewer parts than groups, all are one group; where the players are too
 * few or their number is not known (0), each part counts as one player. */
sw_divisi_section sw_divisi_section_of(const int *groups, int count, int parts);

#endif
