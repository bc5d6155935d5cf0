/* stavewright roster: a first list of who plays, from the scores. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/films.h"
#include "app/words.h"
#include "stavewright/film.h"
#include "stavewright/main_files.h"
#include "stavewright/report.h"

typedef struct arguments {
    const char *folder; /* where the file goes, with --write: the folder named, or that of the file */
    bool write;
    sw_paths paths;
} arguments;

enum { TO, WRITE };
static const char *const options_taken[] = {[TO] = "--to", [WRITE] = "--write"};

static int take_path(arguments *given, const char *path)
{
    char *error = NULL;
    if (!sw_paths_collect(&given->paths, path, &error)) {
        sw_say_bad("roster", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    return SW_EXIT_CLEAN;
}

static int take_arguments(arguments *given, int count, char **items)
{
    sw_words words = {.command = "roster",
                      .options = options_taken,
                      .option_count = 2,
                      .flag_count = 1,
                      .items = items,
                      .count = count};
    size_t named = 0;
    bool init = false;
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        if (word == SW_WORD_BAD) {
            return SW_EXIT_BAD;
        }
        if (word == SW_WORD_OPTION && words.option == TO) {
            given->folder = words.value;
        } else if (word == SW_WORD_OPTION) {
            given->write = true;
        } else if (!init && strcmp(words.value, "init") != 0) {
            return sw_say_bad("roster", "\"%s\" is nothing that it does; write: stavewright roster init %s",
                              words.value, words.value);
        } else if (!init) {
            init = true;
        } else if (named++, take_path(given, words.value) != SW_EXIT_CLEAN) {
            return SW_EXIT_BAD;
        }
    }
    if (!init) {
        return sw_say_bad("roster", "say what to do: stavewright roster init [PATH...]");
    }
    if (named == 0 && take_path(given, ".") != SW_EXIT_CLEAN) {
        return SW_EXIT_BAD;
    }
    return given->paths.count > 0 ? SW_EXIT_CLEAN
                                  : sw_say_bad("roster", "there is no .ly or .ily file below what is named");
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
    sw_read_options options = {.include_path = folders->items, .include_path_count = folders->count};
    sw_paths mains = sw_main_files(&given->paths, &options);
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

static int init(const arguments *given)
{
    char *error = NULL;
    sw_films films = {0}; /* one that has no chairs yet may have instruments and folders */
    const sw_film *film = sw_films_of(&films, given->paths.items[0], &error);
    if (film == NULL) {
        sw_say_bad("roster", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    sw_folders folders = {0};
    sw_folders_add_films(&folders, &films);
    sw_roster_draft *draft = sw_roster_draft_new(sw_film_instruments(film));
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
    sw_films_free(&films);
    return status;
}

int sw_command_roster(int count, char **items)
{
    arguments given = {0};
    int status = take_arguments(&given, count, items);
    if (status == SW_EXIT_CLEAN) {
        status = init(&given);
    }
    sw_paths_free(&given.paths);
    return status;
}
