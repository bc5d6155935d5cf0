/* How a place of the text takes notes: what octave marks count from, and which value an item inherits.
 * Private to write/. */
#ifndef SW_WRITE_ENTRY_H
#define SW_WRITE_ENTRY_H

#include "write/division.h"
#include "write/draft.h"

/* Where the text of an item begins, calls before it included. It ends at sw_node_end. */
uint32_t sw_item_begin(const sw_reading *reading, uint32_t item);
/* The same for any music with which a run begins. */
uint32_t sw_run_begin(const sw_reading *reading, uint32_t music);
/* Where its duration stands or would stand. */
uint32_t sw_item_body_end(const sw_reading *reading, uint32_t item);

/* Whether octave marks at an item count from the note before (\relative); *reference is that note's pitch
 * then, as it will be after the draft. */
bool sw_entry_reference(const sw_draft *draft, uint32_t item, sw_pitch *reference);
/* The same for a place behind some music. */
bool sw_entry_exit(const sw_draft *draft, uint32_t music, sw_pitch *reference);
/* The next note behind an item, in the order in which \relative goes, whose octave marks count from what
 * stands before it, or the \octaveCheck that comes before that note; SW_NO_INDEX when there is none, or when
 * a touched item comes first, which is printed itself and then asks for what follows it. */
uint32_t sw_entry_next_note(const sw_draft *draft, uint32_t item);

/* What a pitch is called at an item: see sw_reading_note_name. */
sw_slice sw_entry_note_name(sw_draft *draft, uint32_t item, sw_pitch pitch);

/* The items of the reading that have or inherit a value, in the order of the text, each place once. */
typedef struct sw_item_order {
    uint32_t *items;
    size_t count;
    size_t capacity;
} sw_item_order;

/* `parent` says for each music node what is around it. */
sw_item_order sw_item_order_new(const sw_reading *reading, const uint32_t *parent);
void sw_item_order_free(sw_item_order *order);
/* The item before or behind a place in its file; SW_NO_INDEX when there is none. */
uint32_t sw_item_order_before(const sw_item_order *order, const sw_reading *reading, uint32_t file,
                              uint32_t offset);
uint32_t sw_item_order_behind(const sw_item_order *order, const sw_reading *reading, uint32_t file,
                              uint32_t offset);
/* Whether the file's habit is to write a value also where it is the same as before. */
bool sw_item_order_repeats_values(const sw_item_order *order, const sw_reading *reading, uint32_t file);

/* Whether the music in a file has bar checks. */
bool sw_file_has_bar_checks(const sw_reading *reading, uint32_t file);

#endif
