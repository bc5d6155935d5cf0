/* cut and insert: whole bars, in all staves and parts. */
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/move_command.h"

enum { MOST_BARS = 1000 };

static bool take_count(const char *option, const char *value, void *own)
{
    (void)option; /* --count */
    char *end = NULL;
    long count = strtol(value, &end, 10);
    if (end == value || *end != '\0' || count < 1 || count > MOST_BARS) {
        sw_say_bad("insert", "--count takes a number of bars from 1 to %d, not %s", MOST_BARS, value);
        return false;
    }
    ((sw_whole_bars_options *)own)->count = (int32_t)count;
    return true;
}

static bool whole_bars(const sw_move_words *m, const char *command, const char *missing)
{
    const sw_bar_range *bars = &m->places.bars;
    if (!bars->given) {
        sw_say_bad(command, "%s", missing);
    } else if (!sw_rational_is_zero(bars->last_beat) || !sw_rational_is_zero(bars->first_beat)) {
        sw_say_bad(command, "--bars takes whole bars here, such as 8-12");
    } else {
        return true;
    }
    return false;
}

static bool cut_makes_sense(const sw_move_words *m, const void *own)
{
    (void)own;
    return whole_bars(m, "cut", "--bars A-B is needed: which bars go");
}

static bool insert_makes_sense(const sw_move_words *m, const void *own)
{
    (void)own;
    if (whole_bars(m, "insert", "--bars N is needed: before which bar empty ones come in")) {
        if (m->places.bars.first_bar == m->places.bars.last_bar) {
            return true;
        }
        sw_say_bad("insert",
                   "--bars takes one bar here, before which the empty ones come in; --count says how many");
    }
    return false;
}

static sw_move *make_cut(const char *path, const sw_move_words *m, void *own, char **error)
{
    sw_whole_bars_options *options = own;
    options->bars = m->places.bars;
    options->count = 0;
    return sw_move_whole_bars(path, options, &m->reading, error);
}

static sw_move *make_insert(const char *path, const sw_move_words *m, void *own, char **error)
{
    sw_whole_bars_options *options = own;
    options->bars = m->places.bars;
    options->count = options->count == 0 ? 1 : options->count;
    return sw_move_whole_bars(path, options, &m->reading, error);
}

const sw_move_command sw_command_row_cut = {
    .name = "cut", .size = sizeof(sw_whole_bars_options), .make_sense = cut_makes_sense, .make = make_cut};

const sw_move_command sw_command_row_insert = {.name = "insert",
                                               .size = sizeof(sw_whole_bars_options),
                                               .take = take_count,
                                               .make_sense = insert_makes_sense,
                                               .make = make_insert};

int sw_command_cut(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_cut, count, arguments);
}

int sw_command_insert(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_insert, count, arguments);
}
