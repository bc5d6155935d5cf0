/* The options of all subcommands: one table, from which the command line is read and help texts, completions
 * and the manual page are made. */
#ifndef SW_APP_OPTIONS_H
#define SW_APP_OPTIONS_H

#include <stdbool.h>
#include <stddef.h>

#include "stavewright/base.h"

typedef struct sw_option {
    const char *name;  /* "--staff" */
    const char *value; /* the word for its value: FILE and FOLDER are paths, RULES names of rules; "[=X]" may
                        * be left out; NULL: none */
    const char *choices;  /* the values that there are, with blanks between; NULL: any */
    const char *commands; /* those that take it with this meaning, with blanks between */
    const char *help;     /* lines */
} sw_option;

/* The options of a command, in the order of its help: the next one behind `before` (NULL: the first); NULL at
 * the end. */
const sw_option *sw_option_next(const char *command, const sw_option *before);
/* The option of a command with exactly this name, or NULL. */
const sw_option *sw_option_find(const char *command, sw_slice name);
/* Whether it can stand without a value; what follows is none then. */
bool sw_option_is_flag(const sw_option *option);
/* Appends them as a help text shows them, each line indented by two. */
void sw_options_print(const char *command, sw_buffer *result);

#endif
