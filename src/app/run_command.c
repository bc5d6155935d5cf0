/* stavewright run: a recipe over the cues of a film, as one change. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/progress.h"
#include "app/recipe_run.h"
#include "stavewright/cues.h"

typedef struct arguments {
    sw_inputs inputs;
    const char *recipe;
    bool write;
    bool why;
    bool keep_going;
    bool quiet;
} arguments;

static void take_option(arguments *given, const sw_words *words)
{
    if (sw_words_is(words, "--write")) {
        given->write = true;
    } else if (sw_words_is(words, "--diff")) {
        given->write = false;
    } else if (sw_words_is(words, "--why")) {
        given->why = true;
    } else if (sw_words_is(words, "--keep-going")) {
        given->keep_going = true;
    } else if (sw_words_is(words, "--quiet")) {
        given->quiet = true;
    } else {
        sw_folders_add(&given->inputs.includes, &words->value, 1);
    }
}

static bool take_arguments(arguments *given, int count, char **items)
{
    sw_words words = {.command = "run", .items = items, .count = count};
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        bool first = word == SW_WORD_PATH && given->recipe == NULL;
        if (word == SW_WORD_BAD) {
            return false;
        }
        if (word == SW_WORD_OPTION) {
            take_option(given, &words);
        } else if (first) {
            given->recipe = words.value;
        } else if (word == SW_WORD_PATH) {
            sw_inputs_take(&given->inputs, words.value);
        }
    }
    if (given->recipe == NULL) {
        sw_say_bad("run", "no recipe is named");
        return false;
    }
    if (given->inputs.standard_input) {
        sw_say_bad("run", "it changes files and folders, not standard input");
        return false;
    }
    return sw_inputs_close(&given->inputs, NULL);
}

/* A line a step and cue. */
static void print_table(const sw_recipe_run *run, sw_buffer *text)
{
    int widest = (int)strlen("cue");
    for (size_t i = 0; i < run->row_count; i++) {
        int width = (int)strlen(run->rows[i].cue);
        widest = width > widest ? width : widest;
    }
    sw_buffer_format(text, "%-*s  step           uses  changes  left\n", widest, "cue");
    for (size_t i = 0; i < run->row_count; i++) {
        const sw_recipe_row *row = &run->rows[i];
        char uses[24] = "-";
        if (!row->everywhere) {
            snprintf(uses, sizeof uses, "%zu", row->uses);
        }
        sw_buffer_format(text, "%-*s  %zu %-9s  %5s  ", widest, row->cue, row->step, row->move, uses);
        if (row->refused) {
            sw_buffer_string(text, "refused\n");
        } else {
            sw_buffer_format(text, "%7zu  %4zu\n", row->places, row->left);
        }
    }
}

/* A step that is used nowhere: most likely a name is mistyped. Where a rule is asked there may be nothing to
 * do. */
static void tell_idle(const sw_recipe_run *run, sw_buffer *text)
{
    for (size_t step = 0; step < run->recipe->count; step++) {
        const sw_recipe_step *s = &run->recipe->steps[step];
        bool reached = false;
        bool used = s->where != NULL;
        for (size_t i = 0; i < run->row_count; i++) {
            const sw_recipe_row *row = &run->rows[i];
            bool own = row->step == step + 1;
            reached = reached || own;
            used = used || (own && (row->everywhere || row->uses > 0 || row->refused));
        }
        if (!reached) {
            sw_buffer_format(text, "note: step %zu, %s: no cue's path holds what stands under cues\n",
                             step + 1, s->move->name);
        } else if (!used) {
            sw_buffer_format(text, "note: step %zu, %s: no cue has such a staff\n", step + 1, s->move->name);
        }
    }
}

static bool say_error(char *error)
{
    sw_say_bad("run", "%s", error);
    free(error);
    return false;
}

/* Cooks all cues. False when it can't go on; it has been said then. */
static bool cook(arguments *given, sw_recipe_run *run)
{
    sw_paths mains = sw_inputs_mains(&given->inputs);
    sw_paths cues = {0};
    char *error = NULL;
    bool good = sw_cues_find(&mains, &run->reading, NULL, NULL, &cues, NULL, &error) || say_error(error);
    sw_progress *progress = sw_progress_begin("cues", cues.count, given->quiet);
    for (size_t i = 0; i < cues.count && good; i++) {
        const sw_film *film = sw_inputs_film(&given->inputs, cues.items[i]);
        good = film != NULL && (sw_recipe_run_cue(run, film, cues.items[i]) || given->keep_going);
        sw_progress_step(progress);
    }
    sw_progress_end(progress);
    sw_paths_free(&cues);
    sw_paths_free(&mains);
    return good;
}

static int write_files(const sw_patch *patch)
{
    char *error = NULL;
    if (!sw_patch_write(patch, &error)) {
        say_error(error);
        return SW_EXIT_BAD;
    }
    fprintf(stderr, "stavewright run: %zu file%s changed\n", patch->count, patch->count == 1 ? "" : "s");
    return SW_EXIT_CLEAN;
}

static int show(const arguments *given, const sw_recipe_run *run, bool good)
{
    sw_buffer text = {0};
    sw_buffer_append(&text, sw_buffer_slice(&run->told));
    if (given->why) {
        sw_buffer_append(&text, sw_buffer_slice(&run->why));
    }
    print_table(run, &text);
    if (good) {
        tell_idle(run, &text);
    }
    fputs(sw_buffer_text(&text), stderr);
    sw_buffer_clear(&text);
    int status = SW_EXIT_BAD;
    sw_patch patch = {0};
    char *error = NULL;
    if (!good) {
        sw_say_bad("run", "a step was refused, so nothing is changed; --keep-going does the other cues");
    } else if (!sw_changed_files_patch(&run->files, &patch, &error)) {
        say_error(error);
    } else if (given->write && patch.count > 0) {
        status = write_files(&patch);
    } else {
        sw_patch_diff(&patch, &text);
        fwrite(sw_buffer_text(&text), 1, text.length, stdout);
        status = patch.count > 0 ? SW_EXIT_FINDINGS : SW_EXIT_CLEAN;
    }
    sw_patch_free(&patch);
    sw_buffer_free(&text);
    return status == SW_EXIT_CLEAN && run->refused > 0 ? SW_EXIT_FINDINGS : status;
}

int sw_command_run(int count, char **items)
{
    arguments given = {.inputs = {.command = "run"}};
    sw_recipe recipe = {0};
    char *error = NULL;
    int status = SW_EXIT_BAD;
    if (take_arguments(&given, count, items) &&
        (sw_recipe_load(given.recipe, &recipe, &error) || say_error(error))) {
        sw_folders folders = sw_inputs_folders(&given.inputs, NULL);
        sw_recipe_run run = {.recipe = &recipe,
                             .reading = {.include_path = folders.items,
                                         .include_path_count = folders.count,
                                         .includes = sw_known_includes_new()},
                             .arena = sw_arena_new()};
        bool good = cook(&given, &run);
        status = show(&given, &run, good);
        sw_known_includes_free(run.reading.includes);
        sw_recipe_run_free(&run);
        free(folders.items);
    }
    sw_recipe_free(&recipe);
    sw_inputs_free(&given.inputs);
    return status;
}
