/* The brackets of a text, read without the grammar: for texts in which one is missing, where a parser can
 * only say that it got stuck. Private to syntax/. */
#ifndef SW_SYNTAX_BRACKETS_H
#define SW_SYNTAX_BRACKETS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "stavewright/source.h"

typedef enum sw_bracket_kind {
    SW_BRACE,        /* { } */
    SW_DOUBLE_ANGLE, /* << >> */
    SW_ANGLE,        /* < > */
    SW_PARENTHESIS,  /* ( ) of Scheme; those of slurs do not count */
    SW_HASH_BRACE,   /* #{ #} */
    /* No brackets, but they tell where blocks begin and end: */
    SW_NEW_TOP,   /* what only stands at the outer level begins a line here, `name =` */
    SW_MUSIC_ITEM /* a note or bar check: does not stand at the outer level (the first of a line) */
} sw_bracket_kind;

/* What a block is for, as far as it tells what may stand in it at the beginning of a line. */
typedef enum sw_block_use {
    SW_BLOCK_OF_MUSIC,
    SW_BLOCK_OF_SETTINGS, /* \header, \with ...: holds `name =` */
    SW_BLOCK_OF_SCORES    /* \book, \bookpart: holds \score */
} sw_block_use;

typedef struct sw_bracket {
    uint32_t start;  /* bytes of the text */
    uint32_t line;   /* number of its line */
    uint32_t indent; /* bytes of white space at the beginning of its line */
    uint8_t kind;
    bool opens;
    bool own_line; /* the first in its line */
    uint8_t use;   /* sw_block_use of a { ; for SW_NEW_TOP that of the blocks where it may stand */
} sw_bracket;

typedef struct sw_brackets {
    sw_bracket *items;
    size_t count;
    size_t capacity;
    uint32_t unfinished; /* where a string, block comment or Scheme expression begins that never ends, or
                            UINT32_MAX */
} sw_brackets;

/* All brackets outside of strings and comments, in their order. Free items with free(). */
sw_brackets sw_brackets_read(const sw_text *text);

#endif
