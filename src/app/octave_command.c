#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/move_words.h"

static bool take(const char *option, const char *value, void *data)
{
    (void)option; /* --by is the only one */
    sw_octave_options *options = data;
    char *end;
    long by = strtol(value, &end, 10);
    if (end == value || *end != '\0' || by < -5 || by > 5 || by == 0) {
        sw_say_bad("octave", "--by takes octaves from -5 to 5 such as 1 or -1, not %s", value);
        return false;
    }
    options->by = (int)by;
    return true;
}

int sw_command_octave(int count, char **arguments)
{
    static const char *const names[] = {"--by",      "--staff",      "--bars", "--lines",
                                        "--include", "--file-name",  "--why",  "--write",
                                        "--diff",    "--everywhere", "--copy"};
    sw_words words = {.command = "octave",
                      .options = names,
                      .option_count = sizeof names / sizeof names[0],
                      .flag_count = 5,
                      .items = arguments,
                      .count = count};
    sw_move_words m = {0};
    sw_octave_options options = {0};
    if (!sw_move_words_read(&m, &words, take, &options)) {
        return SW_EXIT_BAD;
    }
    if (options.by == 0) {
        return sw_say_bad("octave", "--by N is needed: so many octaves up, or down with -N");
    }
    if (m.places.staff == NULL && m.places.first_line == 0) {
        return sw_say_bad("octave",
                          "--staff NAME or --lines A-B is needed: what to shift; stavewright outline "
                          "FILE lists the staves");
    }
    options.places = m.places;
    options.elsewhere = m.elsewhere;
    const char *path = sw_move_words_open(&m);
    if (path == NULL) {
        return SW_EXIT_BAD;
    }
    char *error = NULL;
    sw_move *move = sw_move_octave(path, &options, &m.reading, &error);
    return sw_move_words_show(&m, move, error);
}
