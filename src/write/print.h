/* Private to write/. */
#ifndef SW_WRITE_PRINT_H
#define SW_WRITE_PRINT_H

#include "write/draft.h"
#include "write/entry.h"

/* Adds the edits of a draft (whose items are located) to a patch. False (and the draft's error) when
 * something can't be written. */
bool sw_draft_print(sw_draft *draft, sw_patch *patch);
/* A change of the lyrics that brings a syllable back to its note. */
typedef struct sw_word_mend {
    const sw_text *text; /* NULL: none */
    uint32_t start;
    uint32_t end;
    const char *put;
} sw_word_mend;

/* Reads all main files again with the texts of a finished patch and compares. False with *error (free() it)
 * at the first difference that the draft does not declare; `mend` says how, when it is one that can be
 * mended. */
bool sw_draft_prove(const sw_draft *draft, const sw_patch *patch, sw_word_mend *mend, char **error);
/* q and bare durations behind a changed note that would repeat something else now are written out. */
void sw_draft_mend_repeats(sw_draft *draft);
/* Plans the copies that let an item (1 + its number) change at the wanted places only. False (and the draft's
 * error) when none do. */
bool sw_draft_plan_copy(sw_draft *draft, uint32_t number);
/* Puts the edits inside of copied variables into their copies. */
void sw_draft_print_copies(sw_draft *draft, const sw_item_order *order, sw_patch *patch);
/* Whether an event of a reading (the draft's or another main file's) that an item writes is one of those that
 * shall change. */
bool sw_draft_changes_at(const sw_draft *draft, const sw_draft_item *item, const sw_reading *reading,
                         const sw_score *score, uint32_t event);
/* What to do where a touched item is heard elsewhere, as the request says. False (and the draft's error) to
 * refuse. */
bool sw_draft_check_elsewhere(sw_draft *draft, sw_buffer *notes);

#endif
