/* The inside of the leaves `word`, `number` and `chord_end`: note name, octave marks, flags, octave check,
 * duration. */
#ifndef SW_SCORE_WORDS_H
#define SW_SCORE_WORDS_H

#include "stavewright/duration.h"
#include "stavewright/pitch.h"
#include "syntax/note_names.h"

enum { SW_MAX_DOTS = 20 }; /* of a note value */

typedef struct sw_word {
    sw_slice name;    /* letters, `-`, `_` and `.` */
    int octave_marks; /* ' counts 1, , counts -1 */
    bool has_marks;
    bool reminder;   /* ! */
    bool cautionary; /* ? */
    bool has_check;  /* = */
    int check_marks;
    bool has_value;       /* a note value stands there */
    bool has_factor;      /* *n or *n/m stands there */
    bool too_large;       /* its numbers are larger than a duration can hold, and are not taken */
    sw_duration duration; /* the value as written; factor 1/1 when none is */
} sw_word;

/* Takes a word apart. */
sw_word sw_word_decode(sw_slice text);
/* Reads a duration at the beginning of the text (`4.*2/3`, `\breve`, `*3`); returns the bytes it took, 0 when
 * there is none. */
size_t sw_word_duration(sw_slice text, sw_word *word);

/* The note names of one language, for fast look-up. */
typedef struct sw_note_table {
    const sw_note_name *slots[512];
} sw_note_table;

void sw_note_table_fill(sw_note_table *table, const sw_language *language);
/* The row for a name, or NULL when it is no note in this language. */
const sw_note_name *sw_note_table_find(const sw_note_table *table, sw_slice name);
/* The language of a name (`english`), or NULL. */
const sw_language *sw_language_find(sw_slice name);

#endif
