/* Chords of grace notes among those that a section divides. Private to moves/. */
#ifndef SW_MOVES_DIVISI_GRACES_H
#define SW_MOVES_DIVISI_GRACES_H

#include "moves/divisi_plan.h"

/* The next chord of grace notes of the staff from an event on that stands in a passage; SW_NO_INDEX: none. */
uint32_t sw_divisi_next_grace(const sw_divisi_plan *plan, const sw_divisi_passage *passage, uint32_t event);
/* Gives those chords of a passage that have no more notes than there are parts to the parts, as evenly as may
 * be, from the lowest up. `event_parts`: by event, bit 0 is the uppermost part. */
void sw_divisi_share_graces(const sw_divisi_plan *plan, const sw_divisi_passage *passage, int parts,
                            uint8_t *event_parts);

#endif
