/* The commands that only read: events and outline. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/progress.h"
#include "base/parallel.h"
#include "stavewright/report.h"

typedef struct arguments {
    sw_inputs inputs;
    bool lyrics;
    bool quiet;
} arguments;

static bool take_arguments(arguments *a, int count, char **items)
{
    sw_words words = {.command = a->inputs.command, .items = items, .count = count};
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        if (word == SW_WORD_BAD) {
            return false;
        }
        if (word == SW_WORD_PATH) {
            sw_inputs_take(&a->inputs, words.value);
        }
        if (word == SW_WORD_OPTION) {
            a->lyrics = a->lyrics || sw_words_is(&words, "--lyrics");
            a->quiet = a->quiet || sw_words_is(&words, "--quiet");
            if (sw_words_is(&words, "--include")) {
                sw_folders_add(&a->inputs.includes, &words.value, 1);
            }
        }
    }
    return sw_inputs_close(&a->inputs, NULL);
}

/* One score, and what is printed of it. Several are read at the same time. */
typedef struct job {
    const char *path;
    sw_folders folders;
    sw_buffer text;
    sw_buffer findings;
    int status;
    char *error; /* why it can't be read */
} job;

typedef struct jobs {
    job *items;
    size_t count;
    void (*print)(const sw_reading *, sw_buffer *);
    sw_progress *progress;
    sw_shelf *shelf;
} jobs;

static void run_job(void *context, size_t n)
{
    jobs *all = context;
    job *j = &all->items[n];
    sw_read_options options = {
        .include_path = j->folders.items, .include_path_count = j->folders.count, .shelf = all->shelf};
    sw_reading *reading = sw_read(j->path, &options, &j->error);
    if (reading != NULL) {
        all->print(reading, &j->text);
        sw_report_findings(reading, &reading->findings, &j->findings);
        j->status = reading->findings.count > 0 ? SW_EXIT_FINDINGS : SW_EXIT_CLEAN;
        sw_reading_free(reading);
    }
    sw_progress_step(all->progress);
}

static int show(const char *command, const job *j)
{
    if (j->error != NULL) {
        return sw_say_bad(command, "%s", j->error);
    }
    fwrite(sw_buffer_text(&j->text), 1, j->text.length, stdout);
    fputs(sw_buffer_text(&j->findings), stderr);
    return j->status;
}

static int report(arguments *a, const sw_paths *paths, void (*print)(const sw_reading *, sw_buffer *))
{
    jobs all = {.items = sw_alloc_zero(paths->count + 1, sizeof *all.items),
                .count = paths->count,
                .shelf = a->inputs.shelf,
                .print = print};
    for (size_t i = 0; i < all.count; i++) {
        all.items[i].path = paths->items[i];
        all.items[i].folders = sw_inputs_folders(&a->inputs, sw_inputs_film(&a->inputs, paths->items[i]));
    }
    all.progress = sw_progress_begin("reading", all.count, a->quiet);
    sw_parallel(all.count, run_job, &all);
    sw_progress_end(all.progress);
    int status = SW_EXIT_CLEAN;
    for (size_t i = 0; i < all.count; i++) {
        job *j = &all.items[i];
        if (all.count > 1) {
            printf("%s%s\n", i == 0 ? "" : "\n", j->path);
        }
        int one = show(a->inputs.command, j);
        status = one > status ? one : status;
        sw_buffer_free(&j->text);
        sw_buffer_free(&j->findings);
        free(j->error);
        free(j->folders.items);
    }
    free(all.items);
    return status;
}

/* The scores that are meant: free them with sw_paths_free. What another one includes is read as part of it.
 */
static sw_paths scores_of(arguments *a)
{
    sw_paths paths = {0};
    if (a->inputs.standard_input || a->inputs.paths.count == 1) {
        sw_paths_add(&paths, a->inputs.standard_input ? "-" : a->inputs.paths.items[0]);
    } else {
        a->inputs.shelf = sw_shelf_new();
        paths = sw_inputs_mains(&a->inputs);
    }
    return paths;
}

int sw_command_events(int count, char **items)
{
    arguments a = {.inputs = {.command = "events"}};
    int status = SW_EXIT_BAD;
    if (take_arguments(&a, count, items)) {
        sw_paths paths = scores_of(&a);
        /* The rows of several would not be told apart. */
        status = paths.count != 1
                     ? sw_say_bad("events", "one score at a time, and here are %zu; name one, such as %s",
                                  paths.count, paths.count == 0 ? "score.ly" : paths.items[0])
                     : report(&a, &paths, a.lyrics ? sw_report_lyrics : sw_report_events);
        sw_paths_free(&paths);
    }
    sw_inputs_free(&a.inputs);
    return status;
}

int sw_command_outline(int count, char **items)
{
    arguments a = {.inputs = {.command = "outline"}};
    int status = SW_EXIT_BAD;
    if (take_arguments(&a, count, items)) {
        sw_paths paths = scores_of(&a);
        status = report(&a, &paths, sw_report_outline);
        sw_paths_free(&paths);
    }
    sw_inputs_free(&a.inputs);
    return status;
}
