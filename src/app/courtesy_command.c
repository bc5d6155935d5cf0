#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/move_command.h"

/* What --only takes, and the group of techniques that it means. */
static const struct {
    const char *word;
    const char *group;
} kinds[] = {
    {"pizzicato", "stroke"}, {"mutes", "mute"}, {"hand", "hand"}, {"sticks", "sticks"}, {"snares", "snares"}};
enum { KINDS = sizeof kinds / sizeof kinds[0] };

/* What --value takes, as durations are written in a score. */
static const struct {
    const char *word;
    int numerator;
    int denominator;
    const char *name;
} values[] = {{"32", 1, 32, "a 32nd"},  {"16", 1, 16, "a 16th"},
              {"8", 1, 8, "an eighth"}, {"8.", 3, 16, "a dotted eighth"},
              {"4", 1, 4, "a quarter"}, {"4.", 3, 8, "a dotted quarter"},
              {"2", 1, 2, "a half"},    {"2.", 3, 4, "a dotted half"},
              {"1", 1, 1, "a whole"}};
enum { VALUES = sizeof values / sizeof values[0] };

static bool take_kind(const char *value, sw_courtesy_options *options)
{
    const char *words[KINDS];
    for (size_t i = 0; i < KINDS; i++) {
        words[i] = kinds[i].word;
        if (strcmp(value, kinds[i].word) == 0) {
            options->only = kinds[i].group;
            return true;
        }
    }
    char text[SW_NEAREST_TEXT];
    sw_say_bad(
        "courtesy", "--only %s: %s", value,
        sw_say_nearest(value, words, KINDS, "it takes pizzicato, mutes, hand, sticks or snares", text));
    return false;
}

static bool take_value(const char *value, sw_courtesy_options *options)
{
    for (size_t i = 0; i < VALUES; i++) {
        if (strcmp(value, values[i].word) == 0) {
            options->value = sw_rational_make(values[i].numerator, values[i].denominator);
            options->value_name = values[i].name;
            return true;
        }
    }
    sw_say_bad("courtesy",
               "--value takes a duration as a score writes it, 32, 16, 8, 8., 4, 4., 2, 2. or 1, not %s",
               value);
    return false;
}

static bool take(const char *option, const char *value, void *data)
{
    sw_courtesy_options *options = data;
    if (strcmp(option, "--only") == 0) {
        return take_kind(value, options);
    }
    if (strcmp(option, "--value") == 0) {
        return take_value(value, options);
    }
    options->melody = true;
    return true;
}

static sw_move *make(const char *path, const sw_move_words *m, void *own, char **error)
{
    sw_courtesy_options *options = own;
    if (options->value.den == 0) {
        options->value = sw_rational_zero();
    }
    options->places = m->places;
    options->elsewhere = m->elsewhere;
    options->film = m->film;
    return sw_move_courtesy(path, options, &m->reading, error);
}

const sw_move_command sw_command_row_courtesy = {.name = "courtesy",

                                                 .size = sizeof(sw_courtesy_options),
                                                 .take = take,
                                                 .make = make};

int sw_command_courtesy(int count, char **arguments)
{
    return sw_move_command_run(&sw_command_row_courtesy, count, arguments);
}
