/* The commands of the language and the arguments they take. */
#ifndef SW_SYNTAX_COMMANDS_H
#define SW_SYNTAX_COMMANDS_H

#include <stddef.h>

#include "stavewright/base.h"

typedef enum sw_command_kind {
    SW_COMMAND_UNKNOWN,
    SW_COMMAND_SETTING,        /* music without notes and without length: \stemUp */
    SW_COMMAND_POST_EVENT,     /* belongs to the note before it: \f, \trill */
    SW_COMMAND_DURATION,       /* \breve */
    SW_COMMAND_VALUE,          /* a value that is no music: \major, \up */
    SW_COMMAND_MUSIC_FUNCTION, /* gives music */
    SW_COMMAND_EVENT_FUNCTION, /* gives what belongs to a note: \bendAfter */
    SW_COMMAND_VOID_FUNCTION,  /* gives nothing: \language */
    SW_COMMAND_VALUE_FUNCTION  /* gives another value: \stringTuning */
} sw_command_kind;

/* A signature is a letter an argument; a capital marks one that may be left out:
 *   m music, e post-event, r property path or music, t duration or music, p pitch, d duration, n number,
 *   f fraction, l list of numbers, s string, y symbol or property path, k markup, w context modification,
 *   x any other value (Scheme). */
typedef struct sw_command {
    const char *name;
    sw_command_kind kind;
    const char *signature;
} sw_command;

extern const sw_command sw_commands[];
extern const size_t sw_command_count;

/* What gregorian.ly defines, as far as it is heard or stands beside notes. */
extern const sw_command sw_gregorian_commands[];
extern const size_t sw_gregorian_command_count;

/* The table's row for a name (without the backslash), or NULL. */
const sw_command *sw_command_find(sw_slice name);

#endif
