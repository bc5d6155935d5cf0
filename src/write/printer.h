/* What the files that write text share. Private to write/. */
#ifndef SW_WRITE_PRINTER_H
#define SW_WRITE_PRINTER_H

#include "write/pieces.h"
#include "write/print.h"

/* The state with which notes are written one after another. */
typedef struct sw_printer {
    sw_draft *draft;
    const sw_reading *reading;
    sw_buffer *out;
    bool relative;
    sw_pitch reference;
    sw_duration value;   /* what the next item inherits */
    bool repeats_values; /* the file's habits */
    bool bar_checks;
} sw_printer;

/* Writes pieces, a blank between them. */
void sw_print_pieces(sw_printer *p, const sw_slot *slot);
/* Octave marks: ' for each above 0, a comma for each below. */
void sw_print_octave(sw_buffer *out, int marks);

/* Adds an edit, with a blank where the text would run into a word beside it: <c e><d f> becomes r r. */
void sw_print_apart(sw_patch *patch, const sw_text *text, uint32_t start, uint32_t end, sw_buffer *out);
/* Mends the octave marks of the next note behind some music, when it counts from another pitch now. */
void sw_mend_octave(sw_draft *draft, uint32_t music, sw_patch *patch);
/* Writes out the value of the next item behind a place, when it would inherit another one than its own now:
 * p->value. */
void sw_mend_value(const sw_printer *p, const sw_item_order *order, uint32_t file, uint32_t offset,
                   sw_patch *patch);
/* Writes what stood nowhere before: variables, voices, staves, commands around passages. */
void sw_print_new(sw_draft *draft, const sw_item_order *order, sw_patch *patch);

#endif
