#include <string.h>

#include "app/commands.h"
#include "app/move_words.h"

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

static int run(const char *command, bool keep, int count, char **arguments)
{
    static const char *const names[] = {"--from",    "--to",         "--share", "--bars",  "--lines",
                                        "--include", "--file-name",  "--why",   "--write", "--diff",
                                        "--over",    "--everywhere", "--copy"};
    sw_words words = {.command = command,
                      .options = names,
                      .option_count = sizeof names / sizeof names[0],
                      .flag_count = 6,
                      .items = arguments,
                      .count = count};
    sw_move_words m = {0};
    sw_give_options options = {.keep = keep};
    if (!sw_move_words_read(&m, &words, take, &options)) {
        return SW_EXIT_BAD;
    }
    if (options.places.staff == NULL || options.to == NULL) {
        return sw_say_bad(command, "--from NAME and --to NAME (or --share \"NAME, NAME\") are needed: the "
                                   "staff that has the line and the "
                                   "one that gets it; stavewright outline FILE lists the staves");
    }
    m.places.staff = options.places.staff;
    options.places = m.places;
    options.elsewhere = m.elsewhere;
    const char *path = sw_move_words_open(&m);
    if (path == NULL) {
        return SW_EXIT_BAD;
    }
    char *error = NULL;
    sw_move *move = sw_move_give(path, &options, &m.reading, &error);
    return sw_move_words_show(&m, move, error);
}

int sw_command_give(int count, char **arguments)
{
    return run("give", false, count, arguments);
}

int sw_command_double(int count, char **arguments)
{
    return run("double", true, count, arguments);
}
