/* What a mark says about loudness. Private to players/ and checks/. */
#ifndef SW_PLAYERS_DYNAMIC_WORDS_H
#define SW_PLAYERS_DYNAMIC_WORDS_H

#include "stavewright/dynamic.h"
#include "stavewright/score.h"

typedef enum sw_dynamic_word_kind {
    SW_DYNAMIC_NOTHING,
    SW_DYNAMIC_END,   /* of a hairpin */
    SW_DYNAMIC_LEVEL, /* `mark` says it */
    SW_DYNAMIC_GROWS, /* from here on */
    SW_DYNAMIC_FADES
} sw_dynamic_word_kind;

typedef struct sw_dynamic_word {
    sw_dynamic_word_kind kind;
    sw_dynamic_mark mark;
} sw_dynamic_word;

/* Reads a MARK node: \p, \<, \!, \cresc, "sempre pp", "dim. al niente". */
sw_dynamic_word sw_dynamic_word_of(const sw_reading *reading, uint32_t mark);

#endif
