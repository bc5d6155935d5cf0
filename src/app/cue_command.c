#include <string.h>

#include "app/commands.h"
#include "app/move_command.h"

static bool take(const char *option, const char *value, void *data)
{
    sw_cue_options *options = data;
    if (strcmp(option, "--undo") == 0) {
        options->undo = true;
    } else {
        options->name = value; /* --name */
    }
    return true;
}

static bool make_sense(const sw_move_words *m, const void *own)
{
    const sw_cue_options *options = own;
    if (!options->undo && m->places.staff == NULL && m->places.first_line == 0) {
        sw_say_bad("cue", "--staff NAME or --lines A-B is needed: which notes become small; "
                          "stavewright outline FILE lists the staves");
        return false;
    }
    return true;
}

static sw_move *make(const char *path, const sw_move_words *m, void *own, char **error)
{
    sw_cue_options *options = own;
    options->places = m->places;
    options->elsewhere = m->elsewhere;
    return sw_move_cue(path, options, &m->reading, error);
}

const sw_move_command sw_command_row_cue = {
    .name = "cue", .size = sizeof(sw_cue_options), .take = take, .make_sense = make_sense, .make = make};

int sw_command_cue(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_cue, count, arguments);
}
