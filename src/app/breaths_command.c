#include <stdio.h>

#include "app/commands.h"
#include "app/move_words.h"

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

int sw_command_breaths(int count, char **arguments)
{
    sw_words words = {.command = "breaths", .items = arguments, .count = count};
    sw_move_words m = {0};
    sw_breaths_options options = {.rest = sw_rational_zero()};
    if (!sw_move_words_read(&m, &words, take, &options)) {
        return SW_EXIT_BAD;
    }
    options.places = m.places;
    options.elsewhere = m.elsewhere;
    const char *path = sw_move_words_open(&m);
    if (path == NULL) {
        return SW_EXIT_BAD;
    }
    char *error = NULL;
    sw_move *move = sw_move_breaths(path, &options, &m.reading, &error);
    return sw_move_words_show(&m, move, error);
}
