#include <string.h>

#include "app/commands.h"
#include "app/move_command.h"

static bool take(const char *option, const char *value, void *data)
{
    sw_give_options *options = data;
    if (strcmp(option, "--over") == 0) {
        options->over = true;
    } else if (strcmp(option, "--to") == 0 || strcmp(option, "--share") == 0) {
        options->to = value;
        options->share = option[2] == 's';
    } else {
        options->places.staff = value; /* --from */
    }
    return true;
}

static bool make_sense_as(const char *command, const sw_give_options *options)
{
    if (options->places.staff == NULL || options->to == NULL) {
        sw_say_bad(command,
                   "--from NAME and --to NAME (or --share \"NAME, NAME\") are needed: the staff that has "
                   "the line and the one that gets it; stavewright outline FILE lists the staves");
        return false;
    }
    return true;
}

static bool give_makes_sense(const sw_move_words *m, const void *own)
{
    (void)m;
    return make_sense_as("give", own);
}

static bool double_makes_sense(const sw_move_words *m, const void *own)
{
    (void)m;
    return make_sense_as("double", own);
}

static sw_move *make_give(const char *path, const sw_move_words *m, void *own, char **error)
{
    sw_give_options *options = own;
    const char *from = options->places.staff;
    options->places = m->places;
    options->places.staff = from;
    options->elsewhere = m->elsewhere;
    options->film = m->film;
    return sw_move_give(path, options, &m->reading, error);
}

static sw_move *make_double(const char *path, const sw_move_words *m, void *own, char **error)
{
    sw_give_options *options = own;
    options->keep = true;
    return make_give(path, m, own, error);
}

const sw_move_command sw_command_row_give = {.name = "give",

                                             .size = sizeof(sw_give_options),
                                             .take = take,
                                             .make_sense = give_makes_sense,
                                             .make = make_give};
const sw_move_command sw_command_row_double = {.name = "double",

                                               .size = sizeof(sw_give_options),
                                               .take = take,
                                               .make_sense = double_makes_sense,
                                               .make = make_double};

int sw_command_give(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_give, count, arguments);
}

int sw_command_double(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_double, count, arguments);
}
