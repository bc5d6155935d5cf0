#include "app/commands.h"
#include "app/move_words.h"

static bool take(const char *option, const char *value, void *data)
{
    sw_stagger_options *options = data;
    (void)option; /* --order */
    options->order = value;
    return true;
}

int sw_command_stagger(int count, char **arguments)
{
    static const char *const names[] = {"--order",   "--staff",      "--bars", "--lines",
                                        "--include", "--file-name",  "--why",  "--write",
                                        "--diff",    "--everywhere", "--copy"};
    sw_words words = {.command = "stagger",
                      .options = names,
                      .option_count = sizeof names / sizeof names[0],
                      .flag_count = 5,
                      .items = arguments,
                      .count = count};
    sw_move_words m = {0};
    sw_stagger_options options = {.order = NULL};
    if (!sw_move_words_read(&m, &words, take, &options)) {
        return SW_EXIT_BAD;
    }
    if (!m.places.bars.given && m.places.first_line == 0) {
        sw_say_bad("stagger", "which chord is meant? --bars A-B holds the players' last notes");
        return SW_EXIT_BAD;
    }
    options.places = m.places;
    options.elsewhere = m.elsewhere;
    const char *path = sw_move_words_open(&m);
    if (path == NULL) {
        return SW_EXIT_BAD;
    }
    char *error = NULL;
    sw_move *move = sw_move_stagger(path, &options, &m.reading, &error);
    return sw_move_words_show(&m, move, error);
}
