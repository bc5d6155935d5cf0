/* A transformation as a subcommand: which words it takes, and what it does with them. The command line and
 * the steps of a recipe go through the same row. */
#ifndef SW_APP_MOVE_COMMAND_H
#define SW_APP_MOVE_COMMAND_H

#include "app/move_words.h"

typedef struct sw_move_command {
    const char *name; /* its options are those that the table of options.c gives it */
    size_t size;      /* of what its own options are read into, which begins as zeroes; 0: none */
    /* An option of its own. False when the value is wrong; it has been said then. NULL: it has none. */
    bool (*take)(const char *option, const char *value, void *own);
    /* Whether the words make sense together; otherwise it has been said. NULL: always. */
    bool (*make_sense)(const sw_move_words *m, const void *own);
    sw_move *(*make)(const char *path, const sw_move_words *m, void *own, char **error);
} sw_move_command;

/* Reads the words of a use into `m` and into new memory for the command's own options, to be freed. NULL when
 * something is wrong; it has been said then. */
void *sw_move_command_read(const sw_move_command *command, sw_move_words *m, int count, char **arguments);
/* The whole subcommand. Returns the exit status. */
int sw_move_command_run(const sw_move_command *command, int count, char **arguments);
/* The row of a transformation that a recipe can name; NULL: there is none. */
const sw_move_command *sw_move_command_find(sw_slice name);
/* Their names, for messages; *count of them. */
const char *const *sw_move_command_names(size_t *count);

extern const sw_move_command sw_command_row_breaths, sw_command_row_courtesy, sw_command_row_cue,
    sw_command_row_cut, sw_command_row_divisi, sw_command_row_double, sw_command_row_give,
    sw_command_row_hands, sw_command_row_insert, sw_command_row_octave, sw_command_row_ring,
    sw_command_row_stagger, sw_command_row_unite;

#endif
