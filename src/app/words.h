/* The words behind a subcommand, told apart alike for all: options with their values, and paths. */
#ifndef SW_APP_WORDS_H
#define SW_APP_WORDS_H

#include <stdbool.h>
#include <stddef.h>

typedef enum sw_word { SW_WORD_END, SW_WORD_OPTION, SW_WORD_PATH, SW_WORD_BAD } sw_word;

typedef struct sw_words {
    const char *command;
    const char *const *options; /* their names; each takes a value, behind it or behind `=` */
    size_t option_count;
    size_t flag_count;  /* so many of the last ones take no value ... */
    size_t loose_count; /* ... but these, the last of all, take one behind `=` */
    char **items;
    int count;
    int next;
    bool only_paths;   /* behind -- */
    size_t option;     /* after SW_WORD_OPTION: its index */
    const char *value; /* after SW_WORD_OPTION its value or NULL, after SW_WORD_PATH the path */
} sw_words;

/* The next of the words. After SW_WORD_BAD what is wrong has been said on standard error. */
sw_word sw_words_next(sw_words *words);

/* Says on standard error what is wrong with the use or the input of a subcommand; returns SW_EXIT_BAD. */
int sw_say_bad(const char *command, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* "did you mean "NEAREST"?", or `otherwise` when nothing is near enough. Valid until the next call. */
const char *sw_say_nearest(const char *word, const char *const *known, size_t count, const char *otherwise);

#endif
