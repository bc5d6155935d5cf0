/* stavewright check: the rules over files and folders. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "app/commands.h"
#include "app/films.h"
#include "app/input.h"
#include "app/words.h"
#include "stavewright/check.h"
#include "stavewright/git.h"
#include "stavewright/main_files.h"
#include "stavewright/report.h"

enum { MAX_FOLDERS = 64 };

typedef struct arguments {
    const char *folders[MAX_FOLDERS];
    size_t folder_count;
    const char *file_name; /* of what standard input holds */
    bool standard_input;
    bool *chosen;      /* one a rule */
    bool insist;       /* rules were named to be run */
    sw_paths named;    /* as they were given */
    sw_paths paths;    /* of the files */
    bool staged;       /* read what is staged */
    const char *since; /* only what has changed since this revision; NULL: with `staged`, the last commit */
    sw_git *git;       /* NULL without either */
    sw_paths changed;  /* what git says has changed */
} arguments;

/* Sets chosen[i] to `value` for each rule of a list "a,b". */
static int choose(arguments *given, const char *list, bool value)
{
    for (const char *name = list; *name != '\0';) {
        size_t length = strcspn(name, ",");
        char word[64] = {0};
        memcpy(word, name, length < sizeof word ? length : sizeof word - 1);
        size_t i = 0;
        while (i < sw_rules_count() && strcmp(sw_rules_get(i)->name, word) != 0) {
            i++;
        }
        if (i == sw_rules_count()) {
            const char *nearest = sw_rules_nearest(word);
            return nearest != NULL
                       ? sw_say_bad("check", "there is no rule \"%s\"; did you mean \"%s\"?", word, nearest)
                       : sw_say_bad("check", "there is no rule \"%s\"; stavewright explain lists them", word);
        }
        given->chosen[i] = value;
        name += length + (name[length] == ',');
    }
    return SW_EXIT_CLEAN;
}

enum { RULES, NOT_RULES, INCLUDE, FILE_NAME, SINCE, STAGED };
static const char *const options_taken[] = {"--rules",     "--not-rules", "--include",
                                            "--file-name", "--since",     "--staged"};

static int take_option(arguments *given, size_t option, const char *value)
{
    switch (option) {
    case RULES:
        memset(given->chosen, 0, sw_rules_count() * sizeof *given->chosen);
        given->insist = true;
        return choose(given, value, true);
    case NOT_RULES:
        return choose(given, value, false);
    case INCLUDE:
        if (given->folder_count == MAX_FOLDERS) {
            return sw_say_bad("check", "more folders to include from than are taken: %s", value);
        }
        given->folders[given->folder_count++] = value;
        return SW_EXIT_CLEAN;
    case SINCE:
        given->since = value;
        return SW_EXIT_CLEAN;
    case STAGED:
        given->staged = true;
        return SW_EXIT_CLEAN;
    default:
        given->file_name = value;
        return SW_EXIT_CLEAN;
    }
}

static bool by_git(const arguments *given)
{
    return given->staged || given->since != NULL;
}

static int collect(arguments *given, const char *path)
{
    char *error = NULL;
    if (!sw_paths_collect(&given->paths, path, &error)) {
        sw_say_bad("check", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    return SW_EXIT_CLEAN;
}

static int take_path(arguments *given, const char *path)
{
    if (strcmp(path, "-") == 0) {
        given->standard_input = true;
    } else {
        sw_paths_add(&given->named, path);
    }
    return SW_EXIT_CLEAN;
}

/* ---- what git has -------------------------------------------------------------------------------------- */

/* Whether a path is one of those that are named, or lies below one. */
static bool is_named(const arguments *given, const char *path)
{
    char *absolute = sw_path_absolute(path);
    bool found = given->named.count == 0;
    for (size_t i = 0; !found && i < given->named.count; i++) {
        char *folder = sw_path_absolute(given->named.items[i]);
        size_t length = folder == NULL ? 0 : strlen(folder);
        found = absolute != NULL && folder != NULL && strncmp(absolute, folder, length) == 0 &&
                (absolute[length] == '\0' || absolute[length] == '/');
        free(folder);
    }
    free(absolute);
    return found;
}

static void take_staged(void *context, const char *path)
{
    arguments *given = context;
    if (sw_path_is_source(path) && is_named(given, path)) {
        sw_paths_add(&given->paths, path);
    }
}

static void take_changed(void *context, const char *path)
{
    arguments *given = context;
    sw_paths_add(&given->changed, path);
}

/* Asks git what has changed, and in the index for the files to be read. */
static int ask_git(arguments *given)
{
    char *error = NULL;
    given->git = sw_git_open(&error);
    if (given->git == NULL ||
        !sw_git_each_changed(given->git, given->since, given->staged, take_changed, given, &error)) {
        sw_say_bad("check", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    if (given->staged) {
        sw_git_read_staged(given->git);
        sw_git_each_staged(given->git, take_staged, given);
    }
    return SW_EXIT_CLEAN;
}

/* Finds the files to be checked: those that are named; with git all, where none is. */
static int collect_paths(arguments *given)
{
    int status = by_git(given) ? ask_git(given) : SW_EXIT_CLEAN;
    if (status != SW_EXIT_CLEAN || given->staged) {
        return status;
    }
    for (size_t i = 0; status == SW_EXIT_CLEAN && i < given->named.count; i++) {
        status = collect(given, given->named.items[i]);
    }
    if (by_git(given) && given->named.count == 0) {
        status = collect(given, sw_git_top(given->git));
    }
    return status;
}

static int take_arguments(arguments *given, int count, char **items)
{
    sw_words words = {.command = "check",
                      .options = options_taken,
                      .option_count = sizeof options_taken / sizeof options_taken[0],
                      .flag_count = 1,
                      .items = items,
                      .count = count};
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        int status = word == SW_WORD_OPTION ? take_option(given, words.option, words.value)
                     : word == SW_WORD_PATH ? take_path(given, words.value)
                                            : SW_EXIT_BAD;
        if (status != SW_EXIT_CLEAN) {
            return status;
        }
    }
    if (given->named.count == 0 && !given->standard_input && !by_git(given)) {
        return sw_say_bad("check", "no file or folder is named");
    }
    if (given->standard_input && by_git(given)) {
        return sw_say_bad("check", "%s reads files that git knows, not standard input; leave out -",
                          given->staged ? "--staged" : "--since");
    }
    if (given->standard_input && given->named.count > 0) {
        return sw_say_bad("check", "- stands for the only text to check; name no other path beside it");
    }
    if (given->file_name != NULL && !given->standard_input) {
        return sw_say_bad("check", "--file-name %s names what standard input holds; give - as the path",
                          given->file_name);
    }
    int status = collect_paths(given);
    if (status != SW_EXIT_CLEAN) {
        return status;
    }
    if (given->paths.count == 0 && !given->standard_input && !by_git(given)) {
        return sw_say_bad("check", "there is no .ly or .ily file below what is named");
    }
    return SW_EXIT_CLEAN;
}

/* Checks a main file as its film wants it. `overlay` NULL: none. */
static int check_path(const arguments *given, const sw_film *film, const char *path, const sw_text *overlay,
                      sw_check_result *result)
{
    sw_folders folders = {0};
    sw_folders_add(&folders, given->folders, given->folder_count);
    sw_folders_add(&folders, sw_film_includes(film), sw_film_include_count(film));
    sw_check_options options = {.film = film, .chosen = given->chosen, .insist = given->insist};
    options.read.include_path = folders.items;
    options.read.include_path_count = folders.count;
    options.read.overlays = &overlay;
    options.read.overlay_count = overlay == NULL ? 0 : 1;
    char *error = NULL;
    bool good = sw_check_file(path, &options, result, &error);
    free(folders.items);
    if (!good) {
        sw_say_bad("check", "%s", error);
        free(error);
    }
    return good ? SW_EXIT_CLEAN : SW_EXIT_BAD;
}

static const sw_film *film_of(sw_films *films, const char *path)
{
    char *error = NULL;
    const sw_film *film = sw_films_of(films, path, &error);
    if (film == NULL) {
        sw_say_bad("check", "%s", error);
        free(error);
    }
    return film;
}

/* Standard input under the name of the file that an editor holds. */
static int check_standard_input(const arguments *given, sw_films *films, sw_check_result *result)
{
    sw_text *text = sw_read_input("check", given->file_name);
    if (text == NULL) {
        return SW_EXIT_BAD;
    }
    int status = check_path(given, film_of(films, text->path), text->path, text, result);
    sw_text_free(text);
    return status;
}

/* Reads the films of all files, so that a mistake in one is said before anything is checked, and takes what
 * was made from the sources out of the list. */
static int find_films(arguments *given, sw_films *films)
{
    size_t kept = 0;
    int status = SW_EXIT_CLEAN;
    if (given->standard_input) {
        return film_of(films, given->file_name == NULL ? "-" : given->file_name) == NULL ? SW_EXIT_BAD
                                                                                         : status;
    }
    for (size_t i = 0; i < given->paths.count; i++) {
        char *path = given->paths.items[i];
        const sw_film *film = status == SW_EXIT_CLEAN ? film_of(films, path) : NULL;
        status = film == NULL ? SW_EXIT_BAD : status;
        if (film != NULL && sw_film_is_output(film, path)) {
            free(path);
        } else {
            given->paths.items[kept++] = path;
        }
    }
    given->paths.count = kept;
    return status;
}

/* Which of the files are main files; includes are looked for in the folders of all films. */
static sw_paths find_mains(const arguments *given, const sw_films *films)
{
    sw_folders folders = {0};
    sw_folders_add(&folders, given->folders, given->folder_count);
    sw_folders_add_films(&folders, films);
    sw_read_options options = {.include_path = folders.items, .include_path_count = folders.count};
    sw_paths mains = sw_main_files_touched(&given->paths, &options, by_git(given) ? &given->changed : NULL);
    free(folders.items);
    return mains;
}

static int read_all(const arguments *given, sw_films *films, sw_check_result *result)
{
    if (given->standard_input) {
        return check_standard_input(given, films, result);
    }
    sw_paths mains = find_mains(given, films);
    int status = SW_EXIT_CLEAN;
    for (size_t i = 0; i < mains.count; i++) {
        int one = check_path(given, film_of(films, mains.items[i]), mains.items[i], NULL, result);
        status = one > status ? one : status;
    }
    sw_paths_free(&mains);
    return status;
}

static double milliseconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec * 1000.0 + (double)now.tv_nsec / 1e6;
}

static const char *plural(size_t count)
{
    return count == 1 ? "" : "s";
}

static void print_result(const sw_check_result *result, double began)
{
    sw_buffer text = {0};
    sw_report_checked(result, &text);
    fwrite(sw_buffer_text(&text), 1, text.length, stdout);
    fflush(stdout);
    sw_buffer_free(&text);
    const size_t *found = result->by_severity;
    fprintf(stderr, "%zu file%s, %zu score%s: %zu error%s, %zu warning%s, %zu note%s (%.0f ms)\n",
            result->file_count, plural(result->file_count), result->scores, plural(result->scores),
            found[SW_ERROR], plural(found[SW_ERROR]), found[SW_WARNING], plural(found[SW_WARNING]),
            found[SW_NOTE], plural(found[SW_NOTE]), milliseconds() - began);
}

static int check_all(const arguments *given, sw_films *films, double began)
{
    sw_check_result result = {0};
    int status = read_all(given, films, &result);
    sw_check_finish(&result);
    print_result(&result, began);
    if (status == SW_EXIT_CLEAN && result.by_severity[SW_ERROR] + result.by_severity[SW_WARNING] > 0) {
        status = SW_EXIT_FINDINGS;
    }
    sw_check_result_free(&result);
    return status;
}

int sw_command_check(int count, char **words)
{
    double began = milliseconds();
    arguments given = {0};
    given.chosen = sw_alloc(sw_rules_count() * sizeof *given.chosen);
    memset(given.chosen, true, sw_rules_count() * sizeof *given.chosen);
    int status = take_arguments(&given, count, words);
    if (status == SW_EXIT_CLEAN) {
        sw_films films = {0};
        status = find_films(&given, &films);
        if (status == SW_EXIT_CLEAN) {
            status = check_all(&given, &films, began);
        }
        sw_films_free(&films);
    }
    sw_git_free(given.git);
    sw_paths_free(&given.changed);
    sw_paths_free(&given.paths);
    sw_paths_free(&given.named);
    free(given.chosen);
    return status;
}
