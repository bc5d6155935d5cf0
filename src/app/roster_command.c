/* stavewright roster: a first list of who plays, from the scores. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/inputs.h"
#include "stavewright/film.h"
#include "stavewright/report.h"

typedef struct arguments {
    const char *folder; /* where the file goes, with --write: the folder named, or that of the file */
    bool write;
    sw_inputs inputs;
} arguments;

static int take_arguments(arguments *given, int count, char **items)
{
    sw_words words = {.command = "roster", .items = items, .count = count};
    bool init = false;
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        if (word == SW_WORD_BAD) {
            return SW_EXIT_BAD;
        }
        if (word == SW_WORD_OPTION && sw_words_is(&words, "--to")) {
            given->folder = words.value;
        } else if (word == SW_WORD_OPTION) {
            given->write = true;
        } else if (!init && strcmp(words.value, "init") != 0) {
            return sw_say_bad("roster", "\"%s\" is nothing that it does; write: stavewright roster init %s",
                              words.value, words.value);
        } else if (!init) {
            init = true;
        } else {
            sw_inputs_take(&given->inputs, words.value);
        }
    }
    if (!init) {
        return sw_say_bad("roster", "say what to do: stavewright roster init [PATH...]");
    }
    if (given->inputs.standard_input) {
        return sw_say_bad("roster", "it reads files and folders, not standard input");
    }
    return sw_inputs_close(&given->inputs, NULL) ? SW_EXIT_CLEAN : SW_EXIT_BAD;
}

/* Reads a main file; what could not be read in it is said on standard error. NULL when it can't be read. */
static sw_reading *read(const char *path, const sw_folders *folders)
{
    sw_read_options options = {.include_path = folders->items, .include_path_count = folders->count};
    char *error = NULL;
    sw_reading *reading = sw_read(path, &options, &error);
    if (reading == NULL) {
        sw_say_bad("roster", "%s", error);
        free(error);
        return NULL;
    }
    sw_buffer text = {0};
    if (sw_findings_errors(&reading->findings) > 0) {
        sw_report_findings(reading, &reading->findings, &text);
        fputs(sw_buffer_text(&text), stderr);
    }
    sw_buffer_free(&text);
    return reading;
}

/* The scores below the paths; 0 when there are none or one of them can't be read: that has been said. */
static size_t gather(const arguments *given, const sw_folders *folders, sw_roster_draft *draft)
{
    sw_paths mains = sw_inputs_mains(&given->inputs);
    size_t scores = 0;
    bool good = true;
    for (size_t i = 0; i < mains.count; i++) {
        sw_reading *reading = read(mains.items[i], folders);
        good = good && reading != NULL;
        if (reading != NULL) {
            scores += reading->score_count;
            sw_roster_draft_add(draft, reading);
            sw_reading_free(reading);
        }
    }
    sw_paths_free(&mains);
    if (good && scores == 0) {
        sw_say_bad("roster", "there is no score below what is named");
    }
    return good ? scores : 0;
}

/* Creates the file, never over another one. */
static int write_file(const char *folder, sw_slice bytes)
{
    sw_buffer path = {0};
    sw_buffer_format(&path, "%s/stavewright.yaml", folder);
    sw_text *nothing = sw_text_new(sw_buffer_text(&path));
    sw_write file = {.before = nothing, .after = bytes};
    char *error = NULL;
    int status = SW_EXIT_CLEAN;
    if (!sw_write_all(&file, 1, &error)) {
        status = sw_say_bad("roster", "%s", error);
        free(error);
    } else {
        fprintf(stderr, "%s: written\n", sw_buffer_text(&path));
    }
    sw_text_free(nothing);
    sw_buffer_free(&path);
    return status;
}

static int init(arguments *given)
{
    if (given->inputs.paths.count == 0) {
        return sw_say_bad("roster", "there is no score below what is named");
    }
    /* A film that has no chairs yet may have instruments and folders. */
    const sw_film *film = sw_inputs_film(&given->inputs, given->inputs.paths.items[0]);
    sw_folders folders = sw_inputs_folders(&given->inputs, NULL);
    sw_roster_draft *draft = sw_roster_draft_new(film);
    int status = SW_EXIT_BAD;
    if (gather(given, &folders, draft) > 0) {
        sw_buffer text = {0};
        sw_roster_draft_print(draft, &text);
        status = SW_EXIT_CLEAN;
        if (given->write) {
            status = write_file(given->folder == NULL ? "." : given->folder, sw_buffer_slice(&text));
        } else {
            fputs(sw_buffer_text(&text), stdout);
        }
        sw_buffer_free(&text);
    }
    sw_roster_draft_free(draft);
    free(folders.items);
    return status;
}

int sw_command_roster(int count, char **items)
{
    arguments given = {.inputs = {.command = "roster"}};
    int status = take_arguments(&given, count, items);
    if (status == SW_EXIT_CLEAN) {
        status = init(&given);
    }
    sw_inputs_free(&given.inputs);
    return status;
}
