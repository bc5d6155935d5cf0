/* Note names of the input languages. */
#ifndef SW_SYNTAX_NOTE_NAMES_H
#define SW_SYNTAX_NOTE_NAMES_H

#include <stddef.h>
#include <stdint.h>

typedef struct sw_note_name {
    const char *name;
    int8_t step;  /* 0..6 = C..B */
    int8_t alter; /* quarter tones */
} sw_note_name;

typedef struct sw_language {
    const char *name; /* as \language and the language includes spell it */
    const sw_note_name *notes;
    size_t count;
} sw_language;

extern const sw_language sw_languages[]; /* the first is the default */
extern const size_t sw_language_count;

#endif
