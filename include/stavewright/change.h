/* Changes to a score, the text edits that say them, and the proof that nothing else has changed.
 *
 * A transformation does not touch text. It says which change it wants; this layer turns that into the
 * smallest edits in the style of the file, reads the result back, and compares: any difference that was not
 * declared refuses the change. */
#ifndef STAVEWRIGHT_CHANGE_H
#define STAVEWRIGHT_CHANGE_H

#include "stavewright/score.h"
#include "stavewright/source.h"

/* ---- edits over several files ---- */

/* The edits of one file. */
typedef struct sw_file_patch {
    const sw_text *text; /* the file as it was read; borrowed */
    sw_edits edits;
    size_t finished; /* how many of them sw_patch_finish has seen to */
    sw_text *after;  /* the file as it would be, once sw_patch_finish has made it */
} sw_file_patch;

/* One change over any number of files. */
typedef struct sw_patch {
    sw_file_patch *files;
    size_t count;
    size_t capacity;
} sw_patch;

/* Adds an edit; files are told apart by their real path, so that a file reached through two main files is
 * one. Of equal edits one is made. */
void sw_patch_add(sw_patch *patch, const sw_text *text, uint32_t start, uint32_t end, sw_slice replacement);
/* Unites equal edits, sorts all, and makes the changed texts; may be called again after more edits, which are
 * then made beside those that were there. False when two edits overlap: *error is then a sentence (free()
 * it). */
bool sw_patch_finish(sw_patch *patch, char **error);
/* Options for reading files as they would be after a finished patch, without a shelf. `options` may be NULL;
 * *overlays is to be freed with free() when the reading is done. */
sw_read_options sw_patch_options(const sw_patch *patch, const sw_read_options *options,
                                 const sw_text ***overlays);
/* Whether a main file may become what it is after a change. False: *error names the difference (free() it).
 */
typedef bool sw_compare_main(const void *what, const sw_reading *before, const sw_reading *after,
                             char **error);
/* The proof of a finished patch: reads main files as they would be and has each compared with what it was,
 * until one is refused. `options` may be NULL; `what` is handed on to `compare`. False with *error (free()
 * it) when a file could not be read any more, or may not become what it would be. */
bool sw_patch_prove(const sw_patch *patch, sw_reading *const *mains, size_t count,
                    const sw_read_options *options, sw_compare_main *compare, const void *what, char **error);
/* The unified diff of all files. */
void sw_patch_diff(const sw_patch *patch, sw_buffer *result);
/* Writes all files or none; see sw_write_all. */
bool sw_patch_write(const sw_patch *patch, char **error);
void sw_patch_free(sw_patch *patch);

/* ---- dividing a staff ---- */

enum { SW_MAX_PARTS = 8 };

/* A clef that one part gets at a moment. */
typedef struct sw_part_clef {
    sw_rational onset;
    uint32_t part;
    const char *clef; /* "treble", "bass", or one of the source's; as long as the reading */
} sw_part_clef;

/* Where a text stands that is written without ^ or _. */
typedef enum sw_text_home {
    SW_TEXT_AT_NOTES, /* above the uppermost part that plays there */
    SW_TEXT_BETWEEN,  /* between the staves of a brace: it concerns both hands */
    SW_TEXT_BELOW     /* below the lowest part: the feet */
} sw_text_home;

/* The change 'this staff becomes several staves in one group'. Part 0 is the uppermost. */
typedef struct sw_division {
    const sw_reading *reading;
    const sw_score *score;
    uint32_t staff;
    uint32_t parts;
    const char *suffixes[SW_MAX_PARTS]; /* added to the names of variables and staves: "Right", "Left" */
    const char *
        group; /* the context around the new staves: "PianoStaff"; NULL: they stay in the one that is there */
    bool braced;               /* they stand in one brace: dynamics belong between them */
    const uint8_t *event_part; /* by event of the score: the part that plays it (notes of the staff only) */
    const uint8_t
        *event_parts; /* by event, where several parts may play it: bit k: part k does; NULL: none may */
    bool apart;       /* different players read them: each staff gets clefs, dynamics, texts ... */
    const char *names[SW_MAX_PARTS]; /* instrumentName of each part's staff; NULL: none */
    const uint32_t *dropped; /* MARK nodes that no part needs any more, as they say which part plays */
    size_t dropped_count;
    const bool *event_rolls;    /* by event: its chord gets \arpeggio in all parts that play it; NULL: none */
    const uint8_t *text_homes;  /* by music node: the sw_text_home of a text; NULL: all stand at the notes */
    const uint8_t *change_part; /* by event: the music stays in one piece, in part 0 (`event_part` is 0 for
                                   all), and goes to the staff of this part by \change Staff; NULL: no */
    const char *change_id;      /* then what the ids of both staves begin with */
    sw_rational from; /* clefs of the source in [from, to) go; outside of it they stay in the upper part */
    sw_rational to;
    const sw_part_clef *clefs; /* in order of time */
    size_t clef_count;
} sw_division;

/* Whether a part plays an event. */
bool sw_division_gives(const sw_division *division, size_t event, uint32_t part);
/* Whether a MARK node of a reading is one that the division drops, told by its place in the source. */
bool sw_division_drops(const sw_division *division, const sw_reading *reading, uint32_t mark);
/* A note that is written once and heard several times (in a variable used twice, in an unfolded repeat) can
 * only have one share: all of its events on the staff get that of the first. `event_parts`: either kind. */
void sw_division_settle(const sw_reading *reading, const sw_score *score, uint32_t staff,
                        uint8_t *event_parts);
/* Adds the edits of a division to the patch: each variable that holds the staff's notes becomes one variable
 * a part, and each staff that uses them (in the main files given) becomes a group of staves. `mains` are
 * readings of all main files that include the variables' files, the division's own among them. Uses that are
 * no staff of their own are said in `notes`, a line each. False when the sources can't be divided: *error is
 * then `file:line:column: sentence` (free() it), and the patch must not be used. */
bool sw_divide(const sw_division *division, sw_reading *const *mains, size_t main_count, sw_patch *patch,
               sw_buffer *notes, char **error);

/* ---- proof ---- */

/* Reads each main file again with the patch's texts, and compares with the reading before: every note of
 * every score must be there with its onset, grace offset, duration and pitch; outside of the divided staff
 * also staff by staff with rests and marks; on the divided staff each note on the staff of its part, and
 * every mark (slurs, ties and beams aside) at its moment in one part at least. False when anything differs:
 * *error names the first difference (free() it). */
bool sw_prove_division(const sw_division *division, sw_reading *const *mains, size_t main_count,
                       const sw_patch *patch, const sw_read_options *options, char **error);

/* The same for a new layout: only white space, comments, and bar checks on bar lines may differ, and all that
 * is heard or set must be as before. */
bool sw_prove_layout(sw_reading *const *mains, size_t main_count, const sw_patch *patch,
                     const sw_read_options *options, char **error);

#endif
