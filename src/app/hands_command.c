#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/move_words.h"

static bool parse_number(const char *text, int least, int most, int *number)
{
    char *end;
    long value = strtol(text, &end, 10);
    *number = (int)value;
    return end != text && *end == '\0' && value >= least && value <= most;
}

static bool take(const char *option, const char *value, void *data)
{
    sw_hands_options *options = data;
    if (strcmp(option, "--span") == 0) {
        if (!parse_number(value, 5, 15, &options->span)) {
            sw_say_bad("hands",
                       "--span takes an interval number from 5 to 15 (8 = octave, 10 = tenth), not %s",
                       value);
            return false;
        }
    } else if (strcmp(option, "--fingers") == 0) {
        if (!parse_number(value, 1, 5, &options->fingers)) {
            sw_say_bad("hands", "--fingers takes a number from 1 to 5, not %s", value);
            return false;
        }
    } else {
        options->instrument = value;
    }
    return true;
}

int sw_command_hands(int count, char **arguments)
{
    static const char *const names[] = {"--instrument", "--span",      "--fingers", "--staff", "--bars",
                                        "--include",    "--file-name", "--why",     "--write", "--diff"};
    sw_words words = {.command = "hands",
                      .options = names,
                      .option_count = sizeof names / sizeof names[0],
                      .flag_count = 3,
                      .items = arguments,
                      .count = count};
    sw_move_words m = {0};
    sw_hands_options options = {0};
    if (!sw_move_words_read(&m, &words, take, &options)) {
        return SW_EXIT_BAD;
    }
    options.staff = m.places.staff;
    options.bars = m.places.bars;
    if (options.staff == NULL) {
        return sw_say_bad(
            "hands", "--staff NAME is needed: the staff to split; stavewright outline FILE lists the staves");
    }
    const char *path = sw_move_words_open(&m);
    if (path == NULL) {
        return SW_EXIT_BAD;
    }
    options.film = m.film;
    char *error = NULL;
    sw_move *move = sw_move_hands(path, &options, &m.reading, &error);
    return sw_move_words_show(&m, move, error);
}
