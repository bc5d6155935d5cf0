#include <string.h>

#include "app/commands.h"
#include "app/move_words.h"

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

int sw_command_cue(int count, char **arguments)
{
    static const char *const names[] = {"--name",    "--staff",     "--bars",       "--lines",
                                        "--include", "--file-name", "--why",        "--write",
                                        "--diff",    "--undo",      "--everywhere", "--copy"};
    sw_words words = {.command = "cue",
                      .options = names,
                      .option_count = sizeof names / sizeof names[0],
                      .flag_count = 6,
                      .items = arguments,
                      .count = count};
    sw_move_words m = {0};
    sw_cue_options options = {.undo = false};
    if (!sw_move_words_read(&m, &words, take, &options)) {
        return SW_EXIT_BAD;
    }
    if (m.places.staff == NULL && m.places.first_line == 0) {
        return sw_say_bad("cue", "--staff NAME or --lines A-B is needed: which notes become small; "
                                 "stavewright outline FILE lists the staves");
    }
    options.places = m.places;
    options.elsewhere = m.elsewhere;
    const char *path = sw_move_words_open(&m);
    if (path == NULL) {
        return SW_EXIT_BAD;
    }
    char *error = NULL;
    sw_move *move = sw_move_cue(path, &options, &m.reading, &error);
    return sw_move_words_show(&m, move, error);
}
