#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/move_words.h"

typedef struct bars_words {
    sw_move_words shared; /* without a path */
    sw_bars_options options;
    bool check;
    sw_inputs inputs;
} bars_words;

static bool parse(bars_words *b, sw_words *words)
{
    for (sw_word word = sw_words_next(words); word != SW_WORD_END; word = sw_words_next(words)) {
        bool shared = true;
        if (word == SW_WORD_BAD) {
            return false;
        }
        if (word == SW_WORD_PATH) {
            if (!sw_inputs_take(&b->inputs, words->value)) {
                return false;
            }
        } else if (sw_words_is(words, "--check")) {
            b->check = true;
        } else if (!sw_move_words_take(&b->shared, words->option, words->value, &shared)) {
            return false;
        }
    }
    if (b->check && b->shared.write) {
        sw_say_bad("bars", "--check changes nothing and --write does: one of them");
        return false;
    }
    if (!sw_inputs_close(&b->inputs, b->shared.file_name)) {
        return false;
    }
    bool lines = b->shared.places.first_line > 0;
    if (b->inputs.paths.count > 1 && (lines || b->shared.file_name != NULL)) {
        sw_say_bad("bars", "%s is for one file", lines ? "--lines" : "--file-name");
        return false;
    }
    return true;
}

/* --check: a line for a file that is not laid out. */
static int check(sw_move *move, const char *path, char *error)
{
    if (move == NULL) {
        sw_say_bad("bars", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    int status = move->patch.count > 0 ? SW_EXIT_FINDINGS : SW_EXIT_CLEAN;
    if (status == SW_EXIT_FINDINGS) {
        printf("%s\n", path);
    }
    sw_move_free(move);
    return status;
}

static int lay_out(const bars_words *b, const char *given)
{
    sw_move_words m = b->shared;
    m.path = given;
    if (!sw_move_words_check(&m)) {
        return SW_EXIT_BAD;
    }
    const char *path = sw_move_words_open(&m);
    if (path == NULL) {
        return SW_EXIT_BAD;
    }
    char *error = NULL;
    sw_move *move = sw_move_bars(path, &b->options, &m.reading, &error);
    if (!b->check) {
        return sw_move_words_show(&m, move, error);
    }
    int status = check(move, given, error);
    sw_text_free(m.input);
    free(m.one);
    return status;
}

int sw_command_bars(int count, char **arguments)
{
    bars_words b = {.shared = {.command = "bars"}, .inputs = {.command = "bars"}};
    sw_words words = {.command = "bars", .items = arguments, .count = count};
    int status = parse(&b, &words) ? SW_EXIT_CLEAN : SW_EXIT_BAD;
    b.options.first_line = b.shared.places.first_line;
    b.options.last_line = b.shared.places.last_line;
    b.shared.reading.include_path = b.shared.folders;
    if (b.inputs.standard_input && status != SW_EXIT_BAD) {
        status = lay_out(&b, "-");
    }
    for (size_t i = 0; i < b.inputs.paths.count && status != SW_EXIT_BAD; i++) {
        int one = lay_out(&b, b.inputs.paths.items[i]);
        status = one > status ? one : status;
    }
    sw_inputs_free(&b.inputs);
    return status;
}
