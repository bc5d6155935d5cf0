#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/move_words.h"

static bool take_number(const char *option, const char *value, int least, int most, int *number)
{
    char *end;
    long n = strtol(value, &end, 10);
    bool good = end != value && *end == '\0' && n >= least && n <= most && n != 0;
    if (!good && least < 0) {
        sw_say_bad("octave", "%s takes octaves from %d to %d such as 1 or -1, not %s", option, least, most,
                   value);
    } else if (!good) {
        sw_say_bad("octave", "%s takes a number from %d to %d, not %s", option, least, most, value);
    }
    *number = good ? (int)n : 0;
    return good;
}

static bool take(const char *option, const char *value, void *data)
{
    sw_octave_options *options = data;
    if (strcmp(option, "--by") == 0) {
        return take_number(option, value, -5, 5, &options->by);
    }
    if (strcmp(option, "--ledgers") == 0) {
        return take_number(option, value, 1, 12, &options->ledgers);
    }
    if (strcmp(option, "--into") == 0) {
        options->into = value;
    } else if (strcmp(option, "--between") == 0) {
        options->between = value;
    } else if (strcmp(option, "--fold") == 0) {
        options->fold = true;
    } else { /* --ottava */
        options->ottava = strcmp(value, "add") == 0      ? SW_OTTAVA_ADD
                          : strcmp(value, "remove") == 0 ? SW_OTTAVA_REMOVE
                                                         : SW_OTTAVA_LEAVE;
        if (options->ottava == SW_OTTAVA_LEAVE) {
            sw_say_bad("octave", "--ottava takes add or remove, not %s", value);
            return false;
        }
    }
    return true;
}

/* Whether the options say one thing that can be done. */
static bool make_sense(const sw_octave_options *o)
{
    int ways = (o->by != 0) + (o->into != NULL) + (o->between != NULL) + (o->ottava != SW_OTTAVA_LEAVE);
    if (ways == 0) {
        sw_say_bad("octave", "what to do is needed: --by N (so many octaves up, or down with -N), --into "
                             "INSTRUMENT, --between \"LOW HIGH\", or --ottava add or remove");
    } else if (ways > 1) {
        sw_say_bad("octave", "one of --by, --into, --between and --ottava at a time");
    } else if (o->fold && o->into == NULL && o->between == NULL) {
        sw_say_bad("octave", "--fold needs a range: --into INSTRUMENT or --between \"LOW HIGH\"");
    } else if (o->ledgers != 0 && o->ottava != SW_OTTAVA_ADD) {
        sw_say_bad("octave", "--ledgers goes with --ottava add");
    } else if (o->places.staff == NULL && o->places.first_line == 0) {
        sw_say_bad("octave", "--staff NAME or --lines A-B is needed: what to shift; stavewright outline "
                             "FILE lists the staves");
    } else {
        return true;
    }
    return false;
}

int sw_command_octave(int count, char **arguments)
{
    static const char *const names[] = {"--by",      "--into",      "--between",    "--ottava",
                                        "--ledgers", "--staff",     "--bars",       "--lines",
                                        "--include", "--file-name", "--fold",       "--why",
                                        "--write",   "--diff",      "--everywhere", "--copy"};
    sw_words words = {.command = "octave",
                      .options = names,
                      .option_count = sizeof names / sizeof names[0],
                      .flag_count = 6,
                      .items = arguments,
                      .count = count};
    sw_move_words m = {0};
    sw_octave_options options = {0};
    if (!sw_move_words_read(&m, &words, take, &options)) {
        return SW_EXIT_BAD;
    }
    options.places = m.places;
    if (!make_sense(&options)) {
        return SW_EXIT_BAD;
    }
    options.elsewhere = m.elsewhere;
    const char *path = sw_move_words_open(&m);
    if (path == NULL) {
        return SW_EXIT_BAD;
    }
    options.film = m.film;
    char *error = NULL;
    sw_move *move = sw_move_octave(path, &options, &m.reading, &error);
    return sw_move_words_show(&m, move, error);
}
