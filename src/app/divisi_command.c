#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/move_command.h"

static bool take_way(const char *value, sw_divisi_way *way)
{
    if (strcmp(value, "chords") == 0) {
        *way = SW_DIVISI_CHORDS;
    } else if (strcmp(value, "voices") == 0) {
        *way = SW_DIVISI_VOICES;
    } else if (strcmp(value, "staves") == 0) {
        *way = SW_DIVISI_STAVES;
    } else {
        sw_say_bad("divisi", "--way takes chords, voices or staves, not %s", value);
        return false;
    }
    return true;
}

static bool take_single(const char *value, sw_divisi_single *single)
{
    if (strcmp(value, "all") != 0 && strcmp(value, "one") != 0) {
        sw_say_bad("divisi", "--single takes all or one, not %s", value);
        return false;
    }
    *single = value[0] == 'a' ? SW_DIVISI_ALL : SW_DIVISI_ONE;
    return true;
}

static bool take(const char *option, const char *value, void *data)
{
    sw_divisi_options *options = data;
    if (strcmp(option, "--way") == 0) {
        return take_way(value, &options->way);
    }
    if (strcmp(option, "--single") == 0) {
        return take_single(value, &options->single);
    }
    if (strcmp(option, "--tremolo-half") == 0) {
        options->tremolo_half = true;
        return true;
    }
    char *end; /* --parts */
    long parts = strtol(value, &end, 10);
    if (end == value || *end != '\0' || parts < 2 || parts > 6) {
        sw_say_bad("divisi", "--parts takes a number from 2 to 6, not %s", value);
        return false;
    }
    options->parts = (int)parts;
    return true;
}

static bool make_sense(const sw_move_words *m, const void *own)
{
    const sw_divisi_options *options = own;
    if (options->tremolo_half && options->parts > 0) {
        sw_say_bad("divisi", "--tremolo-half has two halves: --parts does not go with it");
        return false;
    }
    if (m->places.staff == NULL) {
        sw_say_bad("divisi",
                   "--staff NAME is needed: whose chords; stavewright outline FILE lists the staves");
        return false;
    }
    return true;
}

static sw_move *make(const char *path, const sw_move_words *m, void *own, char **error)
{
    sw_divisi_options *options = own;
    options->places = m->places;
    options->elsewhere = m->elsewhere;
    options->film = m->film;
    return sw_move_divisi(path, options, &m->reading, error);
}

const sw_move_command sw_command_row_divisi = {.name = "divisi",
                                               .size = sizeof(sw_divisi_options),
                                               .take = take,
                                               .make_sense = make_sense,
                                               .make = make};

int sw_command_divisi(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_divisi, count, arguments);
}
