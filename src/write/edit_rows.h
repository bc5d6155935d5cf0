/* What the proof of an edit compares. Private to write/. */
#ifndef SW_WRITE_EDIT_ROWS_H
#define SW_WRITE_EDIT_ROWS_H

#include "write/print.h"

typedef struct sw_row {
    sw_rational onset;
    sw_rational grace;
    sw_rational length;
    uint32_t voice; /* for joining only */
    char kind;      /* 'n', 'r', 's' */
    bool touched;   /* the draft speaks here */
    size_t note_count;
    sw_pitch *pitches; /* in order of height */
    const char **drums;
    size_t mark_count;
    sw_slice *marks; /* in order of bytes */
} sw_row;

typedef struct sw_rows {
    sw_row *list;
    size_t count;
    size_t capacity;
} sw_rows;

/* One main file before and after. */
typedef struct sw_edit_proof {
    const sw_draft *draft;
    const sw_reading *before;
    const sw_reading *after;
    const uint32_t *item; /* by music node of `before`: 1 + the draft item that is written there, 0 if none */
    sw_arena *arena;
    sw_word_mend *mend;
    char **error;
    const sw_draft_bars *bars; /* that come into the score that is compared; NULL: none */
} sw_edit_proof;

/* ---- rows ---- */

/* Order by time, kind, length, notes and marks; 0 when all agree. */
int sw_row_compare(const sw_row *x, const sw_row *y);
/* Adds a row (copied); the pointer is valid until the next one. */
sw_row *sw_rows_add(sw_rows *all, const sw_row *r);
/* The chord or rest that begins with an event, as it is read. */
sw_row sw_row_read(const sw_edit_proof *p, const sw_reading *reading, const sw_score *score, uint32_t first);
/* The rows of a touched item at one place where it is heard. */
void sw_rows_add_cells(const sw_edit_proof *p, const sw_score *score, uint32_t first,
                       const sw_draft_item *item, sw_rows *all);
/* The second voice that begins beside an item, at one place where it is heard. */
void sw_rows_add_voice(const sw_edit_proof *p, const sw_score *score, uint32_t first,
                       const sw_draft_voice *voice, sw_rows *all);
/* Joins touched rows that sound as one, and sorts all. */
void sw_rows_join(const sw_edit_proof *p, sw_rows *all);

/* ---- bars that come in or go ---- */

/* Whether something heard at a moment before goes with its bar. */
bool sw_prove_goes(const sw_edit_proof *p, sw_rational onset);
/* When something is heard that was heard at `onset` before; what goes: the bar line that is left of its bar.
 */
sw_rational sw_prove_moved(const sw_edit_proof *p, sw_rational onset);
/* Rows `before` move to where they are to be heard; those of the result lose what is silent in the new bars.
 * On both sides rests are cut at the bar line. */
void sw_rows_open(const sw_edit_proof *p, sw_rows *all, bool before);
/* Whether the bars are those that were there, and the new ones. */
bool sw_prove_bars(const sw_edit_proof *p, const sw_score *before, const sw_score *after);

/* ---- refusing ---- */

/* Sets the proof's error: "the edit is refused: in FILE, WHAT; nothing is written". Returns false. */
bool sw_prove_refuse(const sw_edit_proof *p, const char *what);
/* Whether a name of the reading before and one of the reading after are the same text. */
bool sw_prove_same_name(const sw_edit_proof *p, uint32_t old, uint32_t new);
/* Whether all syllables are sung at the moments where they were; if not, the proof's `mend` may say how to
 * bring the first one back. */
bool sw_prove_words(const sw_edit_proof *p, const sw_score *before, const sw_score *after);

#endif
