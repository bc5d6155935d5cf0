/* Single notes and chords of a part. */
#ifndef SW_WRITE_PART_NOTES_H
#define SW_WRITE_PART_NOTES_H

#include "write/division.h"

/* Writes this part's notes of an item (a note, chord, repetition or rest) with its marks. */
void sw_print_item(sw_part_printer *printer, uint32_t music);
/* Writes the marks of an item that this part gets; with `spaced` as they stand in the source, white space
 * included. */
void sw_print_marks(sw_part_printer *printer, uint32_t music, bool spaced);

#endif
