/* Runs, everything of a voice from one event up to another, as changes name them. Private to write/. */
#ifndef SW_WRITE_RUN_H
#define SW_WRITE_RUN_H

#include "write/draft.h"

/* The first or last item in or below a node, in the order of the text; SW_NO_INDEX when there is none. */
uint32_t sw_run_item(const sw_draft *draft, uint32_t music, bool last);
/* The children of one sequence that a change's run consists of. False (and the draft's error) when it begins
 * or ends in the middle of a block. */
bool sw_run_find(sw_draft *draft, const sw_change *change, uint32_t *first, uint32_t *last);

/* ---- marks where a run is cut out of its voice (run_marks.c) ---- */

/* Whether a mark of a chord in the run belongs to the run alone: a slur, beam or span that has its other end
 * inside of it, too, a tie that leads to its next chord, any other mark. */
bool sw_run_keeps_mark(const sw_draft *draft, const sw_change *change, uint32_t event, sw_mark_class class);
/* Whether a copy of the run gets a mark. Slurs and hairpins are cut at the edges, other spans need both their
 * ends. */
bool sw_run_copies_mark(const sw_draft *draft, const sw_change *change, uint32_t event, sw_mark_class class);
/* Whether the change says that a MARK node (or a grace note's item) stays behind. */
bool sw_run_leaves(const sw_change *change, uint32_t mark);
/* What was cut off begins at the first note of the copy, or ends at its last: `begin` and `end` are the cells
 * that the copy of `event` begins and ends with. */
void sw_run_close_edges(sw_draft *draft, const sw_change *change, uint32_t event, sw_cell *begin,
                        sw_cell *end);
/* Adds a new mark to a cell. */
void sw_cell_add_text(sw_draft *draft, sw_cell *cell, const char *text, sw_mark_class class);

/* Whether a hairpin that began before leads up to an event, looking back as far as `first` only
 * (SW_NO_INDEX: to the beginning of the voice). */
bool sw_hairpin_leads_to(const sw_draft *draft, uint32_t event, uint32_t first);
/* The run goes away: a hairpin that began in it, or led through it, ends nowhere behind it. False (and the
 * draft's error) when its end can't be edited. */
bool sw_hairpin_drop_end(sw_draft *draft, uint32_t first, uint32_t last);
/* The run goes away: a slur (or phrase) that led through it becomes one before it and one behind it. False
 * (and the draft's error) when a note beside it can't be edited. */
bool sw_slur_cut(sw_draft *draft, uint32_t first, uint32_t last, sw_mark_class start, const char *begin,
                 const char *end);

#endif
