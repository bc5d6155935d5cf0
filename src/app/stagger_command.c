#include "app/commands.h"
#include "app/move_command.h"

static bool take(const char *option, const char *value, void *data)
{
    sw_stagger_options *options = data;
    (void)option; /* --order */
    options->order = value;
    return true;
}

static bool make_sense(const sw_move_words *m, const void *own)
{
    (void)own;
    if (!m->places.bars.given && m->places.first_line == 0) {
        sw_say_bad("stagger", "which chord is meant? --bars A-B holds the players' last notes");
        return false;
    }
    return true;
}

static sw_move *make(const char *path, const sw_move_words *m, void *own, char **error)
{
    sw_stagger_options *options = own;
    options->places = m->places;
    options->elsewhere = m->elsewhere;
    options->film = m->film;
    return sw_move_stagger(path, options, &m->reading, error);
}

const sw_move_command sw_command_row_stagger = {.name = "stagger",
                                                .size = sizeof(sw_stagger_options),
                                                .take = take,
                                                .make_sense = make_sense,
                                                .make = make};

int sw_command_stagger(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_stagger, count, arguments);
}
