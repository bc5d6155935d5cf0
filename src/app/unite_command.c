#include "app/commands.h"
#include "app/move_command.h"

static sw_move *make(const char *path, const sw_move_words *m, void *own, char **error)
{
    (void)own;
    sw_unite_options options = {.places = m->places, .elsewhere = m->elsewhere, .film = m->film};
    return sw_move_unite(path, &options, &m->reading, error);
}

const sw_move_command sw_command_row_unite = {.name = "unite", .make = make};

int sw_command_unite(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_unite, count, arguments);
}
