/* A name as a score or a program writes it, cut into lower-case ASCII words. */
#ifndef STAVEWRIGHT_PLAYERS_STAFF_WORDS_H
#define STAVEWRIGHT_PLAYERS_STAFF_WORDS_H

#include <stdbool.h>
#include <stddef.h>

#include "stavewright/base.h"

enum { SW_STAFF_WORDS = 32, SW_STAFF_WORD_TEXT = 32 };

typedef struct sw_staff_word {
    char text[SW_STAFF_WORD_TEXT];
    bool glued;   /* follows the word before it without a gap ("clarinetBb", "Horn2") */
    bool capital; /* began with a capital */
} sw_staff_word;

typedef struct sw_staff_words {
    sw_staff_word items[SW_STAFF_WORDS];
    size_t count;
} sw_staff_words;

/* Cuts a UTF-8 name at blanks, punctuation, between letters and digits and before the capitals within a word
 * ("hornsIII" is two words). Accents go, sharp and flat signs become "sharp" and "flat", brackets, commas,
 * slashes and the like become the word "/". What is overlong is cut. */
void sw_staff_words_cut(sw_slice name, sw_staff_words *words);

/* Takes out `count` words beginning with number `first`. */
void sw_staff_words_remove(sw_staff_words *words, size_t first, size_t count);

bool sw_staff_word_is(const sw_staff_words *words, size_t i, const char *text);
/* True when word i exists and is one of the NULL-terminated list. */
bool sw_staff_word_among(const sw_staff_words *words, size_t i, const char *const *list);
/* True when a name has one of these words. */
bool sw_staff_name_says(const char *name, const char *const *list);

#endif
