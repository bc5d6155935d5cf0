#include "app/commands.h"
#include "app/move_words.h"

/* All options are those that transformations share. */
static bool take(const char *option, const char *value, void *data)
{
    (void)option, (void)value, (void)data;
    return false;
}

int sw_command_ring(int count, char **arguments)
{
    static const char *const names[] = {"--staff", "--bars",  "--lines", "--include",    "--file-name",
                                        "--why",   "--write", "--diff",  "--everywhere", "--copy"};
    sw_words words = {.command = "ring",
                      .options = names,
                      .option_count = sizeof names / sizeof names[0],
                      .flag_count = 5,
                      .items = arguments,
                      .count = count};
    sw_move_words m = {0};
    if (!sw_move_words_read(&m, &words, take, NULL)) {
        return SW_EXIT_BAD;
    }
    sw_ring_options options = {.places = m.places, .elsewhere = m.elsewhere};
    const char *path = sw_move_words_open(&m);
    if (path == NULL) {
        return SW_EXIT_BAD;
    }
    options.film = m.film;
    char *error = NULL;
    sw_move *move = sw_move_ring(path, &options, &m.reading, &error);
    return sw_move_words_show(&m, move, error);
}
