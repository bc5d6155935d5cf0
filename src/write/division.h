/* Dividing a staff: the plan that says what each part gets, and the printer that writes one part's music.
 * Private to write/.
 *
 * A part is written by going through the music of the staff as it stands in the source and copying its text:
 * notes of the part stay as they are written (only octave marks and durations are mended where the dropped
 * notes would change their meaning), notes of other parts become rests, and everything else - comments, bar
 * checks, spacing, tuplets, repeats - is kept. So each part looks like the original, and nothing that this
 * program does not understand is lost. */
#ifndef SW_WRITE_DIVISION_H
#define SW_WRITE_DIVISION_H

#include "stavewright/change.h"

/* A mark that one part gets at an item where the source has none (the end of a slur whose last note another
 * part has). */
typedef struct sw_added_mark {
    uint32_t item; /* music: the note, chord or rest that carries it */
    uint32_t part;
    sw_slice text;
} sw_added_mark;

typedef struct sw_plan {
    const sw_division *division;
    const sw_reading *reading;
    /* By music node. In the plan for another main file, where only its own clefs and the names of the
     * variables count, the others are NULL. */
    uint32_t
        *first_event; /* first event of a note, chord or rest on this staff, SW_NO_INDEX when there is none */
    uint32_t *event_count;   /* how many notes it has there */
    uint8_t *parts;          /* bit k: part k has notes in or below this node */
    uint8_t *has_notes;      /* the staff has notes in or below this node */
    uint8_t *mark_parts;     /* MARK: bit k: part k gets it */
    bool connects_arpeggios; /* a rolled chord is shared by several parts */
    uint8_t *clef_stays;     /* CLEF: it stands outside of what is divided anew */
    uint8_t *left_out;       /* bit k: stands in a voice of << \\ >> that part k does without */
    uint32_t *voice_first;   /* by voice of the score: its first event, and the one behind its last */
    uint32_t *voice_end;
    sw_added_mark *added;
    size_t added_count;
    size_t added_capacity;
    uint32_t *names; /* names (of the division's reading) of the variables that are divided */
    size_t name_count;
    size_t name_capacity;
} sw_plan;

/* ---- plan ---- */

/* The plan for the division's own reading. */
sw_plan *sw_plan_new(const sw_division *division);
/* Whether a part writes a child of << >>: it plays there, or uses a variable that is divided; of several
 * voices without its notes it keeps the first. */
bool sw_plan_keeps(const sw_plan *plan, uint32_t part, uint32_t simultaneous, uint32_t child);
/* Whether a variable in or below a node is divided. */
bool sw_plan_uses_divided(const sw_plan *plan, uint32_t music);
/* The plan for another main file that uses the same variables. */
sw_plan *sw_plan_for_other(const sw_plan *plan, const sw_reading *reading);
void sw_plan_free(sw_plan *plan);
/* Whether a variable is divided. */
bool sw_plan_divides(const sw_plan *plan, const sw_reading *reading, uint32_t name);
/* Where a text mark stands. */
sw_text_home sw_plan_text_home(const sw_plan *plan, uint32_t mark);
/* Gives each mark of the staff to the part that owns it (in part_marks.c). */
void sw_plan_marks(sw_plan *plan);
/* Where the text of a node begins and ends, its articulations and the call around it included. */
uint32_t sw_node_begin(const sw_reading *reading, uint32_t music);
uint32_t sw_node_end(const sw_reading *reading, uint32_t music);

/* Whether a node is a note, chord, rest or skip: something with a written value. */
bool sw_is_item(const sw_music *music);

/* Whether another reading has a variable of a reading: the same assignment in the same file. The same name
 * elsewhere is another variable. */
bool sw_shares_variable(const sw_reading *reading, uint32_t name, const sw_reading *other);

/* Drops edits that are equal to an earlier one; the first `settled` of them stay as they are. */
void sw_edits_unite(sw_edits *edits, size_t settled);

/* ---- what is known ---- */

/* Whether no edit of a division moves a \language: what is read behind it would be read otherwise. False with
 * *error (free() it). */
bool sw_languages_stay(const sw_patch *patch, char **error);
/* False when a reading has an error (a missing include, a bracket), or when the patch replaces text with a
 * command whose meaning is not known: *error is then `file:line:column: sentence`. */
bool sw_sources_are_known(sw_reading *const *mains, size_t main_count, const sw_patch *patch, char **error);

/* ---- printer ---- */

enum { SW_STAFF_UNKNOWN = 0xff };

typedef struct sw_part_printer {
    const sw_plan *plan;
    uint32_t part;
    sw_buffer *out;
    bool relative; /* octave marks count from `last` */
    sw_pitch last;
    bool has_duration; /* `duration` is what a note without a value would inherit */
    sw_duration duration;
    uint32_t full_chord; /* the chord that q would repeat, when it was written with all its notes */
    bool among_graces;   /* rests are not shown */
    bool among_items;    /* the node to be written is one of a sequence: several items need no brackets */
    bool in_time;        /* rests may be joined: outside of tuplets, graces and tremolos */
    size_t next_clef;
    uint8_t *voice_staff; /* by voice of the score: the part on whose staff it stands, where the division
                             changes staves; SW_STAFF_UNKNOWN; NULL */
    size_t clef_of_staff[SW_MAX_PARTS]; /* then the next clef of each staff */
    char *error; /* the first thing that could not be written: file:line:column: sentence */
} sw_part_printer;

/* Writes one part of a node. */
void sw_print_part(sw_part_printer *printer, uint32_t music);
/* A node of the music that is printed. */
const sw_music *sw_part_music(const sw_part_printer *printer, uint32_t music);
/* Copies the bytes [from, to) of a file of the reading. */
void sw_part_copy(sw_part_printer *printer, uint32_t file, uint32_t from, uint32_t to);
/* Records the first thing that could not be written. */
void sw_part_fail(sw_part_printer *printer, uint32_t music, const char *what);

#endif
