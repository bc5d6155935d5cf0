#include <stdio.h>

#include "app/commands.h"
#include "app/move_command.h"

static bool take(const char *option, const char *value, void *data)
{
    sw_breaths_options *options = data;
    int parts = 0;
    int end = 0;
    (void)option; /* --rest */
    bool good = sscanf(value, "1/%d%n", &parts, &end) == 1 && value[end] == '\0' &&
                (parts == 4 || parts == 8 || parts == 16 || parts == 32);
    if (!good) {
        sw_say_bad("breaths", "--rest takes 1/4, 1/8, 1/16 or 1/32, not %s", value);
        return false;
    }
    options->rest = sw_rational_make(1, parts);
    return true;
}

static sw_move *make(const char *path, const sw_move_words *m, void *own, char **error)
{
    sw_breaths_options *options = own;
    if (options->rest.den == 0) {
        options->rest = sw_rational_zero();
    }
    options->places = m->places;
    options->elsewhere = m->elsewhere;
    options->film = m->film;
    return sw_move_breaths(path, options, &m->reading, error);
}

const sw_move_command sw_command_row_breaths = {.name = "breaths",

                                                .size = sizeof(sw_breaths_options),
                                                .take = take,
                                                .make = make};

int sw_command_breaths(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_breaths, count, arguments);
}
