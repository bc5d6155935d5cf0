#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/input.h"
#include "app/inputs.h"
#include "app/move_words.h"
#include "app/progress.h"
#include "base/parallel.h"

typedef struct bars_words {
    sw_move_words shared; /* without a path */
    sw_bars_options options;
    bool check;
    bool quiet;
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
            sw_inputs_take(&b->inputs, words->value);
        } else if (sw_words_is(words, "--check")) {
            b->check = true;
        } else if (sw_words_is(words, "--quiet")) {
            b->quiet = true;
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

/* --check: a line for a file that is not laid out. Frees `error`. */
static int say_state(const char *path, bool changes, char *error)
{
    if (error != NULL) {
        sw_say_bad("bars", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    if (changes) {
        printf("%s\n", path);
    }
    return changes ? SW_EXIT_FINDINGS : SW_EXIT_CLEAN;
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
    int status = say_state(given, move != NULL && move->patch.count > 0, error);
    sw_move_free(move);
    sw_text_free(m.input);
    free(m.one);
    sw_films_free(&m.films);
    return status;
}

/* Files that are only looked at: several at the same time. */
typedef struct looks {
    const bars_words *words;
    bool *changes; /* one a file: it is not laid out */
    char **errors; /* one a file: why it can't be, or NULL */
    sw_progress *progress;
} looks;

static void look(void *context, size_t n)
{
    const looks *all = context;
    const bars_words *b = all->words;
    sw_move *move = sw_move_bars(b->inputs.paths.items[n], &b->options, &b->shared.reading, &all->errors[n]);
    all->changes[n] = move != NULL && move->patch.count > 0;
    sw_move_free(move); /* at once: it holds whole scores */
    sw_progress_step(all->progress);
}

static int check_all(const bars_words *b)
{
    const sw_paths *paths = &b->inputs.paths;
    sw_move_words m = b->shared;
    m.path = paths->count == 0 ? NULL : paths->items[0];
    if (!sw_move_words_check(&m)) {
        return SW_EXIT_BAD;
    }
    looks all = {.words = b,
                 .changes = sw_alloc_zero(paths->count + 1, sizeof *all.changes),
                 .errors = sw_alloc_zero(paths->count + 1, sizeof *all.errors),
                 .progress = sw_progress_begin("reading", paths->count, b->quiet)};
    sw_parallel(paths->count, look, &all);
    sw_progress_end(all.progress);
    int status = SW_EXIT_CLEAN;
    for (size_t i = 0; i < paths->count; i++) {
        int one = say_state(paths->items[i], all.changes[i], all.errors[i]);
        status = one > status ? one : status;
    }
    free(all.changes);
    free(all.errors);
    return status;
}

int sw_command_bars(int count, char **arguments)
{
    bars_words b = {.shared = {.command = "bars"}, .inputs = {.command = "bars"}};
    sw_words words = {.command = "bars", .items = arguments, .count = count};
    int status = SW_EXIT_CLEAN;
    if (!parse(&b, &words)) {
        sw_give_back_input(count, arguments);
        status = SW_EXIT_BAD;
    }
    b.options.first_line = b.shared.places.first_line;
    b.options.last_line = b.shared.places.last_line;
    b.shared.reading.include_path = b.shared.folders;
    b.shared.reading.includes = sw_known_includes_new();
    bool stays = !b.shared.write && !b.inputs.standard_input; /* what has been read is right for all files */
    b.shared.reading.shelf = stays ? sw_shelf_new() : NULL;
    if (b.inputs.standard_input && status != SW_EXIT_BAD) {
        status = lay_out(&b, "-");
    }
    if (b.check && !b.inputs.standard_input && status != SW_EXIT_BAD) {
        status = check_all(&b);
    }
    for (size_t i = 0; !b.check && i < b.inputs.paths.count && status != SW_EXIT_BAD; i++) {
        int one = lay_out(&b, b.inputs.paths.items[i]);
        status = one > status ? one : status;
    }
    sw_shelf_free(b.shared.reading.shelf);
    sw_known_includes_free(b.shared.reading.includes);
    sw_inputs_free(&b.inputs);
    return status;
}
