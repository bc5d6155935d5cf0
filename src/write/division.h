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
    /* By music node; NULL in the plan for another main file, where only the names of the variables count. */
    uint32_t
        *first_event; /* first event of a note, chord or rest on this staff, SW_NO_INDEX when there is none */
    uint32_t *event_count; /* how many notes it has there */
    uint8_t *parts;        /* bit k: part k has notes in or below this node */
    uint8_t *has_notes;    /* the staff has notes in or below this node */
    uint8_t *mark_parts;   /* MARK: bit k: part k gets it */
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
/* The plan for another main file that uses the same variables. */
sw_plan *sw_plan_for_other(const sw_plan *plan, const sw_reading *reading);
void sw_plan_free(sw_plan *plan);
/* Whether a variable is divided. */
bool sw_plan_divides(const sw_plan *plan, const sw_reading *reading, uint32_t name);
/* Gives each mark of the staff to the part that owns it (in part_marks.c). */
void sw_plan_marks(sw_plan *plan);
/* Where the text of a node begins and ends, its articulations and the call around it included. */
uint32_t sw_node_begin(const sw_reading *reading, uint32_t music);
uint32_t sw_node_end(const sw_reading *reading, uint32_t music);

/* Whether two texts are of one file, whatever their paths. */
bool sw_same_file(const sw_text *a, const sw_text *b);

/* ---- printer ---- */

typedef struct sw_part_printer {
    const sw_plan *plan;
    uint32_t part;
    sw_buffer *out;
    bool relative; /* octave marks count from `last` */
    sw_pitch last;
    bool has_duration; /* `duration` is what a note without a value would inherit */
    sw_duration duration;
    uint32_t full_chord; /* the chord that q would repeat, when it was written with all its notes */
    char rest_letter;    /* r, or s in a second voice and among grace notes */
    bool among_items;    /* the node to be written is one of a sequence: several items need no brackets */
    bool in_time;        /* rests may be joined: outside of tuplets, graces and tremolos */
    size_t next_clef;
    char *error; /* the first thing that could not be written: file:line:column: sentence */
} sw_part_printer;

/* Writes one part of a node. */
void sw_print_part(sw_part_printer *printer, uint32_t music);

#endif
