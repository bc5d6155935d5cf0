/* The words behind a subcommand, told apart alike for all: options with their values, and paths. */
#ifndef SW_APP_WORDS_H
#define SW_APP_WORDS_H

#include <stdbool.h>
#include <stddef.h>

#include "app/options.h"

typedef enum sw_word { SW_WORD_END, SW_WORD_OPTION, SW_WORD_PATH, SW_WORD_BAD } sw_word;

typedef struct sw_words {
    const char *command; /* its options are those that the table of options.c gives it */
    char **items;
    int count;
    int next;
    bool only_paths;    /* behind -- */
    const char *option; /* after SW_WORD_OPTION: its name */
    const char *value;  /* after SW_WORD_OPTION its value or NULL, after SW_WORD_PATH the path */
} sw_words;

/* The next of the words. After SW_WORD_BAD what is wrong has been said on standard error. */
sw_word sw_words_next(sw_words *words);
/* Whether the option that was found has this name. */
bool sw_words_is(const sw_words *words, const char *option);

/* Says on standard error what is wrong with the use or the input of a subcommand; returns SW_EXIT_BAD. */
int sw_say_bad(const char *command, const char *format, ...) __attribute__((format(printf, 2, 3)));

enum { SW_NEAREST_TEXT = 128 };
/* "did you mean "NEAREST"?", or `otherwise` when nothing is near enough; `text` is filled in the first case.
 */
const char *sw_say_nearest(const char *word, const char *const *known, size_t count, const char *otherwise,
                           char text[SW_NEAREST_TEXT]);

#endif
