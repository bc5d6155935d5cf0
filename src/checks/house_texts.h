/* The texts of a source that house rules look at. Private to checks/. */
#ifndef SW_CHECKS_HOUSE_TEXTS_H
#define SW_CHECKS_HOUSE_TEXTS_H

#include "stavewright/film.h"
#include "stavewright/score.h"

/* One of them, as a reader of the page sees it. */
typedef struct sw_house_text {
    unsigned kind;     /* SW_HOUSE_TEXTS, _MARKUPS, _STAFF_NAMES or _HEADER */
    const char *field; /* of a header; NULL otherwise */
    uint32_t start;    /* bytes of the source that hold it */
    uint32_t end;
    const char *text;
    const uint32_t *places; /* for each byte of `text`, and its end, the byte of the source */
} sw_house_text;

typedef struct sw_house_texts {
    sw_house_text *items;
    size_t count;
    size_t capacity;
    sw_arena *arena;
} sw_house_texts;

/* Those of one file of a reading, in the order of the text. Free with sw_house_texts_free. */
sw_house_texts sw_house_texts_of(const sw_reading *reading, uint32_t file);
void sw_house_texts_free(sw_house_texts *texts);

#endif
