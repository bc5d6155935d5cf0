#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/move_words.h"

typedef struct bars_words {
    sw_move_words shared; /* without a path */
    sw_bars_options options;
    bool check;
    const char **paths;
    size_t path_count;
} bars_words;

static bool parse(bars_words *b, sw_words *words)
{
    for (sw_word word = sw_words_next(words); word != SW_WORD_END; word = sw_words_next(words)) {
        bool shared = true;
        if (word == SW_WORD_BAD) {
            return false;
        }
        if (word == SW_WORD_PATH) {
            b->paths[b->path_count++] = words->value;
        } else if (strcmp(words->options[words->option], "--check") == 0) {
            b->check = true;
        } else if (!sw_move_words_take(&b->shared, words->options[words->option], words->value, &shared)) {
            return false;
        }
    }
    if (b->path_count == 0) {
        sw_say_bad("bars", "no file is named");
        return false;
    }
    if (b->check && b->shared.write) {
        sw_say_bad("bars", "--check changes nothing and --write does: one of them");
        return false;
    }
    bool lines = b->shared.places.first_line > 0;
    if (b->path_count > 1 && (lines || b->shared.file_name != NULL)) {
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
    sw_films_free(&m.films);
    return status;
}

int sw_command_bars(int count, char **arguments)
{
    static const char *const names[] = {"--lines", "--include", "--file-name",
                                        "--check", "--write",   "--diff"};
    bars_words b = {.shared = {.command = "bars"}};
    sw_words words = {.command = "bars",
                      .options = names,
                      .option_count = sizeof names / sizeof names[0],
                      .flag_count = 3,
                      .items = arguments,
                      .count = count};
    b.paths = sw_alloc_zero((size_t)count + 1, sizeof *b.paths);
    int status = parse(&b, &words) ? SW_EXIT_CLEAN : SW_EXIT_BAD;
    b.options.first_line = b.shared.places.first_line;
    b.options.last_line = b.shared.places.last_line;
    b.shared.reading.include_path = b.shared.folders;
    for (size_t i = 0; i < b.path_count && status != SW_EXIT_BAD; i++) {
        int one = lay_out(&b, b.paths[i]);
        status = one > status ? one : status;
    }
    free(b.paths);
    return status;
}
