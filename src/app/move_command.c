#include "app/move_command.h"

#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/input.h"

/* Those that a recipe can name, in the order of the alphabet. */
static const sw_move_command *const rows[] = {
    &sw_command_row_breaths, &sw_command_row_courtesy, &sw_command_row_cue,  &sw_command_row_cut,
    &sw_command_row_divisi,  &sw_command_row_double,   &sw_command_row_give, &sw_command_row_hands,
    &sw_command_row_insert,  &sw_command_row_octave,   &sw_command_row_ring, &sw_command_row_stagger,
    &sw_command_row_unite,
};
enum { ROWS = sizeof rows / sizeof rows[0] };

const sw_move_command *sw_move_command_find(sw_slice name)
{
    for (size_t i = 0; i < ROWS; i++) {
        if (sw_slice_is(name, rows[i]->name)) {
            return rows[i];
        }
    }
    return NULL;
}

const char *const *sw_move_command_names(size_t *count)
{
    static const char *names[ROWS];
    for (size_t i = 0; i < ROWS; i++) {
        names[i] = rows[i]->name;
    }
    *count = ROWS;
    return names;
}

static bool take_nothing(const char *option, const char *value, void *own)
{
    (void)option, (void)value, (void)own;
    return false; /* never reached: there is no option of its own */
}

void *sw_move_command_read(const sw_move_command *command, sw_move_words *m, int count, char **arguments)
{
    sw_words words = {.command = command->name, .items = arguments, .count = count};
    void *own = sw_alloc_zero(1, command->size + 1);
    bool good = sw_move_words_read(m, &words, command->take == NULL ? take_nothing : command->take, own) &&
                (command->make_sense == NULL || command->make_sense(m, own));
    if (!good) {
        free(own);
        return NULL;
    }
    return own;
}

int sw_move_command_run(const sw_move_command *command, int count, char **arguments)
{
    sw_move_words m = {0};
    void *own = sw_move_command_read(command, &m, count, arguments);
    if (own == NULL) {
        sw_give_back_input(count, arguments);
        return SW_EXIT_BAD;
    }
    const char *path = sw_move_words_open(&m);
    if (path == NULL) {
        free(own);
        return SW_EXIT_BAD;
    }
    char *error = NULL;
    sw_move *move = command->make(path, &m, own, &error);
    free(own);
    return sw_move_words_show(&m, move, error);
}
