/* stavewright players: what each player has to play, over all cues. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/progress.h"
#include "stavewright/cues.h"
#include "stavewright/report.h"

typedef struct format {
    const char *name;
    void (*print)(const sw_players_table *table, sw_buffer *result);
} format;

static const format formats[] = {
    {"text", sw_report_players}, {"tsv", sw_report_players_rows}, {"json", sw_report_players_json}};
enum { FORMATS = sizeof formats / sizeof formats[0] };

typedef struct arguments {
    sw_inputs inputs;
    const format *format;
    bool quiet;
} arguments;

static int take_format(arguments *given, const char *name)
{
    const char *names[FORMATS];
    for (size_t i = 0; i < FORMATS; i++) {
        names[i] = formats[i].name;
        if (strcmp(name, names[i]) == 0) {
            given->format = &formats[i];
            return SW_EXIT_CLEAN;
        }
    }
    char text[SW_NEAREST_TEXT];
    return sw_say_bad("players", "there is no format \"%s\"; %s", name,
                      sw_say_nearest(name, names, FORMATS, "give text, tsv or json", text));
}

static int take_arguments(arguments *given, int count, char **items)
{
    sw_words words = {.command = "players", .items = items, .count = count};
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        if (word == SW_WORD_BAD) {
            return SW_EXIT_BAD;
        }
        if (word == SW_WORD_PATH) {
            sw_inputs_take(&given->inputs, words.value);
        }
        if (word == SW_WORD_OPTION && sw_words_is(&words, "--include")) {
            sw_folders_add(&given->inputs.includes, &words.value, 1);
        } else if (word == SW_WORD_OPTION && sw_words_is(&words, "--quiet")) {
            given->quiet = true;
        } else if (word == SW_WORD_OPTION && take_format(given, words.value) != SW_EXIT_CLEAN) {
            return SW_EXIT_BAD;
        }
    }
    if (given->inputs.standard_input) {
        return sw_say_bad("players", "it reads files and folders, not standard input");
    }
    return sw_inputs_close(&given->inputs, NULL) ? SW_EXIT_CLEAN : SW_EXIT_BAD;
}

/* Reads a main file; NULL when it can't be read: that has been said. */
static sw_reading *read_file(const char *path, const sw_read_options *options)
{
    char *error = NULL;
    sw_reading *reading = sw_read(path, options, &error);
    if (reading == NULL) {
        sw_say_bad("players", "%s", error);
        free(error);
    }
    return reading;
}

/* Adds the cues; what could not be read in them is said. */
static bool add_cues(const sw_paths *mains, const sw_read_options *options, sw_players_table *table,
                     bool quiet, size_t *left_out)
{
    sw_paths cues = {0};
    char *error = NULL;
    sw_progress *progress = sw_progress_begin("reading", mains->count, quiet);
    bool good = sw_cues_find(mains, options, sw_progress_tell, progress, &cues, left_out, &error);
    sw_progress_end(progress);
    if (!good) {
        sw_say_bad("players", "%s", error);
        free(error);
    }
    for (size_t i = 0; i < cues.count && good; i++) {
        sw_reading *reading = read_file(cues.items[i], options);
        sw_buffer text = {0};
        good = reading != NULL && sw_players_table_add(table, reading);
        if (good) {
            sw_report_findings(reading, &reading->findings, &text);
            fputs(sw_buffer_text(&text), stderr);
        }
        sw_buffer_free(&text);
        sw_reading_free(reading);
    }
    sw_paths_free(&cues);
    return good;
}

/* All files are taken for one film: that of the first one. */
static int print_all(arguments *given, const sw_film *film)
{
    sw_folders folders = sw_inputs_folders(&given->inputs, NULL);
    sw_read_options options = {.include_path = folders.items, .include_path_count = folders.count};
    sw_paths mains = sw_inputs_mains(&given->inputs);
    sw_players_table *table = sw_players_table_new(film);
    size_t left_out = 0;
    bool good = add_cues(&mains, &options, table, given->quiet, &left_out);
    sw_buffer text = {0};
    if (good) {
        given->format->print(table, &text);
        fputs(sw_buffer_text(&text), stdout);
        fflush(stdout);
    }
    if (good && left_out > 0) {
        fprintf(stderr, "%zu more file%s of the same cues (parts, sketches) not counted\n", left_out,
                left_out == 1 ? "" : "s");
    }
    sw_buffer_free(&text);
    sw_players_table_free(table);
    sw_paths_free(&mains);
    free(folders.items);
    return good ? SW_EXIT_CLEAN : SW_EXIT_BAD;
}

int sw_command_players(int count, char **items)
{
    arguments given = {.inputs = {.command = "players"}, .format = &formats[0]};
    int status = take_arguments(&given, count, items);
    if (status == SW_EXIT_CLEAN) {
        const sw_film *film =
            sw_inputs_film(&given.inputs, given.inputs.paths.count == 0 ? "." : given.inputs.paths.items[0]);
        status = film == NULL ? SW_EXIT_BAD : print_all(&given, film);
    }
    sw_inputs_free(&given.inputs);
    return status;
}
