/* The subcommands: each reads its own options and returns the exit status (0 clean, 1 findings or changes
 * pending, 2 bad use or input). */
#ifndef SW_APP_COMMANDS_H
#define SW_APP_COMMANDS_H

#include <stddef.h>

enum { SW_EXIT_CLEAN = 0, SW_EXIT_FINDINGS = 1, SW_EXIT_BAD = 2 };

typedef struct sw_subcommand {
    const char *name;
    const char *arguments; /* for the usage line */
    const char *summary;   /* one line */
    const char
        *help; /* what it does; behind an empty line, "example: " and a line that works on the demo film */
    int (*run)(int count, char **arguments); /* without the subcommand's own name */
} sw_subcommand;

/* The table of subcommands, in the order of their names. */
size_t sw_subcommand_count(void);
const sw_subcommand *sw_subcommand_get(size_t i);
/* The length of that part of its help which stands before the options; the rest is the example. */
size_t sw_subcommand_text(const sw_subcommand *command);

int sw_command_syntax(int count, char **arguments);
int sw_command_events(int count, char **arguments);
int sw_command_outline(int count, char **arguments);
int sw_command_hands(int count, char **arguments);
int sw_command_courtesy(int count, char **arguments);
int sw_command_octave(int count, char **arguments);
int sw_command_divisi(int count, char **arguments);
int sw_command_cue(int count, char **arguments);
int sw_command_cut(int count, char **arguments);
int sw_command_insert(int count, char **arguments);
int sw_command_give(int count, char **arguments);
int sw_command_double(int count, char **arguments);
int sw_command_bars(int count, char **arguments);
int sw_command_unite(int count, char **arguments);
int sw_command_ring(int count, char **arguments);
int sw_command_breaths(int count, char **arguments);
int sw_command_stagger(int count, char **arguments);
int sw_command_changed(int count, char **arguments);
int sw_command_music(int count, char **arguments);
int sw_command_check(int count, char **arguments);
int sw_command_players(int count, char **arguments);
int sw_command_run(int count, char **arguments);
int sw_command_hook(int count, char **arguments);
int sw_command_roster(int count, char **arguments);
int sw_command_explain(int count, char **arguments);
int sw_command_rules(int count, char **arguments);
int sw_command_completion(int count, char **arguments);
int sw_command_manual(int count, char **arguments);

#endif
