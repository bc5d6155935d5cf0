#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/move_command.h"

static bool take_number(const char *option, const char *value, int least, int most, int *number)
{
    char *end;
    long n = strtol(value, &end, 10);
    bool good = end != value && *end == '\0' && n >= least && n <= most && n != 0;
    if (!good && least < 0) {
        sw_say_bad("octave", "%s takes octaves from %d to %d such as 1 or -1, not %s", option, least, most,
                   value);
    } else if (!good) {
        sw_say_bad("octave", "%s takes a number from %d to %d, not %s", option, least, most, value);
    }
    *number = good ? (int)n : 0;
    return good;
}

static bool take(const char *option, const char *value, void *data)
{
    sw_octave_options *options = data;
    if (strcmp(option, "--by") == 0) {
        return take_number(option, value, -5, 5, &options->by);
    }
    if (strcmp(option, "--ledgers") == 0) {
        return take_number(option, value, 1, 12, &options->ledgers);
    }
    if (strcmp(option, "--into") == 0) {
        options->into = value;
    } else if (strcmp(option, "--between") == 0) {
        options->between = value;
    } else if (strcmp(option, "--fold") == 0) {
        options->fold = true;
    } else { /* --ottava */
        options->ottava = strcmp(value, "add") == 0      ? SW_OTTAVA_ADD
                          : strcmp(value, "remove") == 0 ? SW_OTTAVA_REMOVE
                                                         : SW_OTTAVA_LEAVE;
        if (options->ottava == SW_OTTAVA_LEAVE) {
            sw_say_bad("octave", "--ottava takes add or remove, not %s", value);
            return false;
        }
    }
    return true;
}

/* Whether the options say one thing that can be done. */
static bool make_sense(const sw_move_words *m, const void *own)
{
    const sw_octave_options *o = own;
    int ways = (o->by != 0) + (o->into != NULL) + (o->between != NULL) + (o->ottava != SW_OTTAVA_LEAVE);
    if (ways == 0) {
        sw_say_bad("octave", "what to do is needed: --by N (so many octaves up, or down with -N), --into "
                             "INSTRUMENT, --between \"LOW HIGH\", or --ottava add or remove");
    } else if (ways > 1) {
        sw_say_bad("octave", "one of --by, --into, --between and --ottava at a time");
    } else if (o->fold && o->into == NULL && o->between == NULL) {
        sw_say_bad("octave", "--fold needs a range: --into INSTRUMENT or --between \"LOW HIGH\"");
    } else if (o->ledgers != 0 && o->ottava != SW_OTTAVA_ADD) {
        sw_say_bad("octave", "--ledgers goes with --ottava add");
    } else if (m->places.staff == NULL && m->places.first_line == 0) {
        sw_say_bad("octave", "--staff NAME or --lines A-B is needed: what to shift; stavewright outline "
                             "FILE lists the staves");
    } else {
        return true;
    }
    return false;
}

static sw_move *make(const char *path, const sw_move_words *m, void *own, char **error)
{
    sw_octave_options *options = own;
    options->places = m->places;
    options->elsewhere = m->elsewhere;
    options->film = m->film;
    return sw_move_octave(path, options, &m->reading, error);
}

const sw_move_command sw_command_row_octave = {.name = "octave",

                                               .size = sizeof(sw_octave_options),
                                               .take = take,
                                               .make_sense = make_sense,
                                               .make = make};

int sw_command_octave(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_octave, count, arguments);
}
