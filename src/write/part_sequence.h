/* Sequences of items, and rests in them. Private to write/. */
#ifndef SW_WRITE_PART_SEQUENCE_H
#define SW_WRITE_PART_SEQUENCE_H

#include "write/division.h"

/* Writes the items from `first` on, whose text lies in [from, to). */
void sw_print_sequence(sw_part_printer *printer, uint32_t first, uint32_t file, uint32_t from, uint32_t to);
/* Writes a silent item where rests can't be joined: it keeps its own value. */
void sw_put_single_rest(sw_part_printer *printer, uint32_t music);

/* Writes \change Staff before the note of an event that stands on another staff than those of its voice
 * before it, where the division changes staves. */
void sw_put_change(sw_part_printer *printer, const sw_event *event);

#endif
