/* stavewright players: what each player has to play, over all cues. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/films.h"
#include "app/words.h"
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
    sw_folders folders; /* --include */
    const format *format;
    sw_paths paths;
} arguments;

enum { FORMAT, INCLUDE };
static const char *const options_taken[] = {[FORMAT] = "--format", [INCLUDE] = "--include"};

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
    return sw_say_bad("players", "there is no format \"%s\"; %s", name,
                      sw_say_nearest(name, names, FORMATS, "give text, tsv or json"));
}

static int take_path(arguments *given, const char *path)
{
    char *error = NULL;
    if (!sw_paths_collect(&given->paths, path, &error)) {
        sw_say_bad("players", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    return SW_EXIT_CLEAN;
}

static int take_arguments(arguments *given, int count, char **items)
{
    sw_words words = {.command = "players",
                      .options = options_taken,
                      .option_count = sizeof options_taken / sizeof options_taken[0],
                      .items = items,
                      .count = count};
    bool named = false;
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        int status = SW_EXIT_CLEAN;
        if (word == SW_WORD_BAD) {
            return SW_EXIT_BAD;
        }
        if (word == SW_WORD_PATH) {
            named = true;
            status = take_path(given, words.value);
        } else if (words.option == FORMAT) {
            status = take_format(given, words.value);
        } else {
            sw_folders_add(&given->folders, &words.value, 1);
        }
        if (status != SW_EXIT_CLEAN) {
            return status;
        }
    }
    if (!named) {
        return sw_say_bad("players", "no file or folder is named");
    }
    return given->paths.count > 0 ? SW_EXIT_CLEAN
                                  : sw_say_bad("players", "there is no .ly or .ily file below what is named");
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

static bool is_output(const void *film, const char *path)
{
    return sw_film_is_output(film, path);
}

/* Adds the cues; what could not be read in them is said. */
static bool add_cues(const sw_paths *mains, const sw_read_options *options, sw_players_table *table,
                     const sw_film *film, size_t *left_out)
{
    sw_paths cues = {0};
    char *error = NULL;
    bool good = sw_cues_find(mains, options, is_output, film, &cues, left_out, &error);
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
static int print_all(arguments *given, const sw_films *films, const sw_film *film)
{
    sw_folders_add_films(&given->folders, films);
    sw_read_options options = {.include_path = given->folders.items,
                               .include_path_count = given->folders.count};
    sw_paths mains = sw_main_files(&given->paths, &options);
    sw_players_table *table = sw_players_table_new(film);
    size_t left_out = 0;
    bool good = add_cues(&mains, &options, table, film, &left_out);
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
    return good ? SW_EXIT_CLEAN : SW_EXIT_BAD;
}

int sw_command_players(int count, char **items)
{
    arguments given = {.format = &formats[0]};
    int status = take_arguments(&given, count, items);
    if (status == SW_EXIT_CLEAN) {
        sw_films films = {0};
        char *error = NULL;
        const sw_film *film = sw_films_of(&films, given.paths.items[0], &error);
        if (film == NULL) {
            status = sw_say_bad("players", "%s", error);
            free(error);
        } else {
            status = print_all(&given, &films, film);
        }
        sw_films_free(&films);
    }
    free(given.folders.items);
    sw_paths_free(&given.paths);
    return status;
}
