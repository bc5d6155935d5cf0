/* The subcommands: each reads its own options and returns the exit status (0 clean, 1 findings or changes
 * pending, 2 bad use or input). */
#ifndef SW_APP_COMMANDS_H
#define SW_APP_COMMANDS_H

enum { SW_EXIT_CLEAN = 0, SW_EXIT_FINDINGS = 1, SW_EXIT_BAD = 2 };

typedef struct sw_subcommand {
    const char *name;
    const char *arguments;                   /* for the usage line */
    const char *summary;                     /* one line */
    const char *help;                        /* options and an example */
    int (*run)(int count, char **arguments); /* without the subcommand's own name */
} sw_subcommand;

int sw_command_syntax(int count, char **arguments);
int sw_command_events(int count, char **arguments);
int sw_command_outline(int count, char **arguments);
int sw_command_hands(int count, char **arguments);
int sw_command_courtesy(int count, char **arguments);
int sw_command_octave(int count, char **arguments);
int sw_command_bars(int count, char **arguments);
int sw_command_ring(int count, char **arguments);
int sw_command_check(int count, char **arguments);
int sw_command_hook(int count, char **arguments);
int sw_command_roster(int count, char **arguments);
int sw_command_explain(int count, char **arguments);

#endif
