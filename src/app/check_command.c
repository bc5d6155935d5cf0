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
#include "stavewright/fix.h"
#include "stavewright/main_files.h"
#include "stavewright/report.h"

enum { MAX_FOLDERS = 64 };

typedef struct arguments {
    const char *folders[MAX_FOLDERS];
    size_t folder_count;
    const char *file_name; /* of what standard input holds */
    bool standard_input;
    bool *chosen; /* one a rule */
    bool insist;  /* rules were named to be run */
    bool fix;     /* --fix: what can be mended is ... */
    bool fix_all; /* ... --fix=all: also where it changes what is played ... */
    bool diff;    /* ... but only shown */
    sw_paths paths;
} arguments;

static const char *plural(size_t count)
{
    return count == 1 ? "" : "s";
}

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

enum { RULES, NOT_RULES, INCLUDE, FILE_NAME, DIFF, FIX, OPTIONS };
static const char *const options_taken[OPTIONS] = {
    [RULES] = "--rules",         [NOT_RULES] = "--not-rules", [INCLUDE] = "--include",
    [FILE_NAME] = "--file-name", [DIFF] = "--diff",           [FIX] = "--fix"};

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
    case DIFF:
        given->diff = true;
        return SW_EXIT_CLEAN;
    case FIX:
        given->fix = true;
        given->fix_all = value != NULL && strcmp(value, "all") == 0;
        return value == NULL || given->fix_all
                   ? SW_EXIT_CLEAN
                   : sw_say_bad("check", "--fix takes nothing, or =all, not =%s", value);
    default:
        given->file_name = value;
        return SW_EXIT_CLEAN;
    }
}

static int take_path(arguments *given, const char *path)
{
    if (strcmp(path, "-") == 0) {
        given->standard_input = true;
        return SW_EXIT_CLEAN;
    }
    char *error = NULL;
    if (!sw_paths_collect(&given->paths, path, &error)) {
        sw_say_bad("check", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    return SW_EXIT_CLEAN;
}

static int take_arguments(arguments *given, int count, char **items)
{
    sw_words words = {.command = "check",
                      .options = options_taken,
                      .option_count = OPTIONS,
                      .flag_count = OPTIONS - DIFF,
                      .loose_count = OPTIONS - FIX,
                      .items = items,
                      .count = count};
    bool named = false;
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        int status = word == SW_WORD_OPTION ? take_option(given, words.option, words.value)
                     : word == SW_WORD_PATH ? take_path(given, words.value)
                                            : SW_EXIT_BAD;
        if (status != SW_EXIT_CLEAN) {
            return status;
        }
        named = named || word == SW_WORD_PATH;
    }
    if (!named) {
        return sw_say_bad("check", "no file or folder is named");
    }
    if (given->standard_input && given->paths.count > 0) {
        return sw_say_bad("check", "- stands for the only text to check; name no other path beside it");
    }
    if (given->file_name != NULL && !given->standard_input) {
        return sw_say_bad("check", "--file-name %s names what standard input holds; give - as the path",
                          given->file_name);
    }
    if (given->diff && !given->fix) {
        return sw_say_bad("check", "--diff shows what --fix would do; give --fix or --fix=all, too");
    }
    if (given->fix && given->standard_input) {
        return sw_say_bad("check", "--fix changes files, not standard input; name the file");
    }
    if (given->paths.count == 0 && !given->standard_input) {
        return sw_say_bad("check", "there is no .ly or .ily file below what is named");
    }
    return SW_EXIT_CLEAN;
}

/* How a main file is to be checked, as its film wants it. `folders` is filled, and to be freed. */
static sw_check_options options_for(const arguments *given, const sw_film *film, sw_folders *folders)
{
    sw_folders_add(folders, given->folders, given->folder_count);
    sw_folders_add(folders, sw_film_includes(film), sw_film_include_count(film));
    sw_check_options options = {.film = film, .chosen = given->chosen, .insist = given->insist};
    options.read.include_path = folders->items;
    options.read.include_path_count = folders->count;
    return options;
}

static int say_error(char *error)
{
    sw_say_bad("check", "%s", error);
    free(error);
    return SW_EXIT_BAD;
}

/* Checks a main file. `overlay` NULL: none. */
static int check_path(const arguments *given, const sw_film *film, const char *path, const sw_text *overlay,
                      sw_check_result *result)
{
    sw_folders folders = {0};
    sw_check_options options = options_for(given, film, &folders);
    options.read.overlays = &overlay;
    options.read.overlay_count = overlay == NULL ? 0 : 1;
    char *error = NULL;
    bool good = sw_check_file(path, &options, result, &error);
    free(folders.items);
    return good ? SW_EXIT_CLEAN : say_error(error);
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
    sw_paths mains = sw_main_files(&given->paths, &options);
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

/* ---- fixes ----------------------------------------------------------------------------------------------
 */

enum { MOST_PASSES = 12 }; /* over one file: some kinds of fixes, and what was in the way of another */

/* Fixes a main file until nothing is left that can be fixed. *changed becomes true when something was. */
static int fix_path(const arguments *given, sw_films *films, const char *path, const sw_paths *mains,
                    sw_fixing *fixing, bool *changed)
{
    sw_folders folders = {0};
    sw_check_options options = options_for(given, film_of(films, path), &folders);
    int status = SW_EXIT_CLEAN;
    bool again = true;
    for (int i = 0; status == SW_EXIT_CLEAN && again; i++) {
        char *error = NULL;
        if (i == MOST_PASSES) {
            status = sw_say_bad("check",
                                "%s: after %d times each fix still makes room for another one; are there "
                                "house rules that undo each other? Nothing is written",
                                path, MOST_PASSES);
        } else if (!sw_fixing_pass(fixing, path, &options, mains, &again, &error)) {
            status = say_error(error);
        }
        *changed = *changed || again;
    }
    free(folders.items);
    return status;
}

/* Fixes all main files; what one leaves behind may be in another. */
static int fix_mains(const arguments *given, sw_films *films, sw_fixing *fixing)
{
    sw_paths mains = find_mains(given, films);
    int status = SW_EXIT_CLEAN;
    bool changed = true;
    for (int sweep = 0; changed && status == SW_EXIT_CLEAN && sweep < MOST_PASSES; sweep++) {
        changed = false;
        for (size_t i = 0; i < mains.count && status == SW_EXIT_CLEAN; i++) {
            status = fix_path(given, films, mains.items[i], &mains, fixing, &changed);
        }
    }
    sw_paths_free(&mains);
    return status;
}

static void print_diff(const sw_patch *patch)
{
    sw_buffer text = {0};
    sw_patch_diff(patch, &text);
    fwrite(sw_buffer_text(&text), 1, text.length, stdout);
    fflush(stdout);
    sw_buffer_free(&text);
}

/* Shows or writes what has been fixed. */
static int finish_fixes(const arguments *given, const sw_fixing *fixing)
{
    sw_patch patch = {0};
    char *error = NULL;
    bool good = sw_fixing_patch(fixing, &patch, &error);
    if (good && given->diff) {
        print_diff(&patch);
    } else if (good) {
        good = sw_patch_write(&patch, &error);
    }
    size_t count = sw_fixing_count(fixing);
    if (good) {
        fputs(sw_buffer_text(sw_fixing_told(fixing)), stderr);
        fprintf(stderr, "%zu fix%s in %zu file%s%s\n", count, count == 1 ? "" : "es", patch.count,
                plural(patch.count), given->diff ? ", not written" : "");
    }
    sw_patch_free(&patch);
    return good ? SW_EXIT_CLEAN : say_error(error);
}

static int fix_all(const arguments *given, sw_films *films)
{
    sw_fixing *fixing = sw_fixing_new(given->fix_all);
    int status = fix_mains(given, films, fixing);
    if (status == SW_EXIT_CLEAN) {
        status = finish_fixes(given, fixing);
    }
    if (status == SW_EXIT_CLEAN && given->diff && sw_fixing_count(fixing) > 0) {
        status = SW_EXIT_FINDINGS;
    }
    sw_fixing_free(fixing);
    return status;
}

/* ---- findings -------------------------------------------------------------------------------------------
 */

static double milliseconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec * 1000.0 + (double)now.tv_nsec / 1e6;
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
    size_t safe = result->fixable[SW_FIX_SAFE];
    size_t played = result->fixable[SW_FIX_PLAYED];
    if (safe > 0) {
        fprintf(stderr, "%zu of them can be mended with --fix\n", safe);
    }
    if (played > 0) {
        fprintf(stderr, "%zu %swith --fix=all, which changes what is played\n", played,
                safe > 0 ? "more " : "of them can be mended ");
    }
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
        if (status == SW_EXIT_CLEAN && given.fix) {
            status = fix_all(&given, &films);
        }
        if (status == SW_EXIT_CLEAN && !given.diff) {
            status = check_all(&given, &films, began);
        }
        sw_films_free(&films);
    }
    sw_paths_free(&given.paths);
    free(given.chosen);
    return status;
}
