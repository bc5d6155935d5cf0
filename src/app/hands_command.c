#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/move_command.h"

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
    } else if (strcmp(option, "--mallets") == 0) {
        if (!parse_number(value, 2, 4, &options->mallets) || options->mallets == 3) {
            sw_say_bad("hands", "--mallets takes 2 or 4, not %s", value);
            return false;
        }
    } else if (strcmp(option, "--roll") == 0) {
        options->roll = true;
    } else if (strcmp(option, "--change-staff") == 0) {
        options->change_staff = true;
    } else if (strcmp(option, "--crossing") == 0) {
        options->crossing = true;
    } else if (strcmp(option, "--pedal") == 0) {
        options->pedal = true;
    } else {
        options->instrument = value;
    }
    return true;
}

static bool make_sense(const sw_move_words *m, const void *own)
{
    (void)own;
    if (m->places.staff == NULL) {
        sw_say_bad("hands",
                   "--staff NAME is needed: the staff to split; stavewright outline FILE lists the staves");
        return false;
    }
    return true;
}

static sw_move *make(const char *path, const sw_move_words *m, void *own, char **error)
{
    sw_hands_options *options = own;
    options->staff = m->places.staff;
    options->bars = m->places.bars;
    options->film = m->film;
    return sw_move_hands(path, options, &m->reading, error);
}

const sw_move_command sw_command_row_hands = {.name = "hands",

                                              .size = sizeof(sw_hands_options),
                                              .take = take,
                                              .make_sense = make_sense,
                                              .make = make};

int sw_command_hands(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_hands, count, arguments);
}
