/* stavewright check: the rules over files and folders. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "app/commands.h"
#include "app/input.h"
#include "app/inputs.h"
#include "app/progress.h"
#include "app/words.h"
#include "base/parallel.h"
#include "stavewright/check.h"
#include "stavewright/fix.h"
#include "stavewright/report.h"

typedef struct arguments {
    sw_inputs inputs;
    const char *file_name; /* of what standard input holds */
    bool *chosen;          /* one a rule */
    bool insist;           /* rules were named to be run */
    const sw_report_form *form;
    const char *baseline; /* file of accepted findings */
    bool baseline_write;
    bool fix;     /* --fix: what can be mended is ... */
    bool fix_all; /* ... --fix=all: also where it changes what is played ... */
    bool diff;    /* ... but only shown */
    bool quiet;
} arguments;

static const char *plural(size_t count)
{
    return count == 1 ? "" : "s";
}

/* ---- the command line ------------------------------------------------------------------------------------
 */

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
                       : sw_say_bad("check", "there is no rule \"%s\"; stavewright rules lists them", word);
        }
        given->chosen[i] = value;
        name += length + (name[length] == ',');
    }
    return SW_EXIT_CLEAN;
}

static int choose_form(arguments *given, const char *name)
{
    given->form = sw_report_form_find(name);
    if (given->form != NULL) {
        return SW_EXIT_CLEAN;
    }
    sw_buffer known = {0};
    for (size_t i = 0; i < sw_report_form_count(); i++) {
        sw_buffer_format(&known, "%s%s", i == 0 ? "" : ", ", sw_report_form_get(i)->name);
    }
    sw_say_bad("check", "--format %s: there are %s", name, sw_buffer_text(&known));
    sw_buffer_free(&known);
    return SW_EXIT_BAD;
}

static int choose_fixes(arguments *given, const char *which)
{
    given->fix = true;
    given->fix_all = which != NULL && strcmp(which, "all") == 0;
    return which == NULL || given->fix_all
               ? SW_EXIT_CLEAN
               : sw_say_bad("check", "--fix takes nothing, or =all, not =%s", which);
}

static int take_option(arguments *given, const sw_words *words)
{
    if (sw_words_is(words, "--rules")) {
        memset(given->chosen, 0, sw_rules_count() * sizeof *given->chosen);
        given->insist = true;
        return choose(given, words->value, true);
    }
    if (sw_words_is(words, "--not-rules")) {
        return choose(given, words->value, false);
    }
    if (sw_words_is(words, "--format")) {
        return choose_form(given, words->value);
    }
    if (sw_words_is(words, "--fix")) {
        return choose_fixes(given, words->value);
    }
    if (sw_words_is(words, "--include")) {
        sw_folders_add(&given->inputs.includes, &words->value, 1);
    } else if (sw_words_is(words, "--staged")) {
        given->inputs.staged = true;
    } else if (sw_words_is(words, "--since")) {
        given->inputs.since = words->value;
    } else if (sw_words_is(words, "--baseline")) {
        given->baseline = words->value;
    } else if (sw_words_is(words, "--baseline-write")) {
        given->baseline_write = true;
    } else if (sw_words_is(words, "--diff")) {
        given->diff = true;
    } else if (sw_words_is(words, "--quiet")) {
        given->quiet = true;
    } else {
        given->file_name = words->value;
    }
    return SW_EXIT_CLEAN;
}

static int take_arguments(arguments *given, int count, char **items)
{
    sw_words words = {.command = "check", .items = items, .count = count};
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        int status = word == SW_WORD_OPTION ? take_option(given, &words) : SW_EXIT_CLEAN;
        if (word == SW_WORD_BAD) {
            return SW_EXIT_BAD;
        }
        if (word == SW_WORD_PATH) {
            sw_inputs_take(&given->inputs, words.value);
        }
        if (status != SW_EXIT_CLEAN) {
            return status;
        }
    }
    if (memchr(given->chosen, true, sw_rules_count() * sizeof *given->chosen) == NULL) {
        return sw_say_bad("check", "no rule is left to look for; stavewright rules lists them");
    }
    if (given->file_name != NULL && !given->inputs.standard_input) {
        return sw_say_bad("check", "--file-name %s names what standard input holds; give - as the path",
                          given->file_name);
    }
    if (given->diff && !given->fix) {
        return sw_say_bad("check", "--diff shows what --fix would do; give --fix or --fix=all, too");
    }
    if (given->fix && given->inputs.standard_input) {
        return sw_say_bad("check", "--fix changes files, not standard input; name the file");
    }
    if (given->fix && given->inputs.staged) {
        return sw_say_bad(
            "check", "--fix changes files, and --staged reads what git has staged; leave one of them out");
    }
    if (given->fix && given->baseline_write) {
        return sw_say_bad("check", "--fix mends and --baseline-write accepts: one of them");
    }
    if (given->baseline_write && given->baseline == NULL) {
        return sw_say_bad("check", "--baseline-write needs the name of the file: --baseline FILE");
    }
    return sw_inputs_close(&given->inputs, given->file_name) ? SW_EXIT_CLEAN : SW_EXIT_BAD;
}

/* ---- checking --------------------------------------------------------------------------------------------
 */

/* How a main file is to be checked, as its film wants it. `folders` is filled, and to be freed. */
static sw_check_options options_for(arguments *given, const char *path, sw_folders *folders)
{
    const sw_film *film = sw_inputs_film(&given->inputs, path);
    *folders = sw_inputs_folders(&given->inputs, film);
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

/* One main file; several are checked at the same time. */
typedef struct job {
    const char *path;
    sw_check_options options;
    sw_folders folders;
    sw_check_result found;
    char *error; /* why it can't be read */
} job;

typedef struct jobs {
    job *items;
    sw_progress *progress;
} jobs;

static void run_job(void *context, size_t n)
{
    jobs *all = context;
    job *j = &all->items[n];
    sw_check_file(j->path, &j->options, &j->found, &j->error);
    sw_progress_step(all->progress);
}

/* Checks the main files as their films want it. `overlay` NULL: none. */
static int check_mains(arguments *given, const sw_paths *mains, const sw_text *overlay,
                       sw_check_result *result)
{
    jobs all = {.items = sw_alloc_zero(mains->count + 1, sizeof *all.items)};
    for (size_t i = 0; i < mains->count; i++) {
        job *j = &all.items[i];
        j->path = mains->items[i];
        j->options = options_for(given, j->path, &j->folders);
        j->options.read.overlays = &overlay;
        j->options.read.overlay_count = overlay == NULL ? 0 : 1;
        j->options.read.shelf = given->inputs.shelf;
    }
    all.progress = sw_progress_begin("checking", mains->count, given->quiet);
    sw_parallel(mains->count, run_job, &all);
    sw_progress_end(all.progress);
    int status = SW_EXIT_CLEAN;
    for (size_t i = 0; i < mains->count; i++) { /* in this order whichever was ready first */
        job *j = &all.items[i];
        sw_check_join(result, &j->found);
        status = j->error != NULL ? say_error(j->error) : status;
        free(j->folders.items);
    }
    free(all.items);
    return status;
}

/* Standard input under the name of the file that an editor holds. */
static int check_standard_input(arguments *given, sw_check_result *result)
{
    sw_text *text = sw_read_input("check", given->file_name);
    if (text == NULL) {
        return SW_EXIT_BAD;
    }
    int status = check_mains(given, &(sw_paths){.items = &text->path, .count = 1}, text, result);
    sw_text_free(text);
    return status;
}

static int read_all(arguments *given, sw_check_result *result)
{
    if (given->inputs.standard_input) {
        return check_standard_input(given, result);
    }
    given->inputs.shelf = given->inputs.paths.count > 1 ? sw_shelf_new() : NULL;
    sw_paths mains = sw_inputs_mains(&given->inputs);
    int status = check_mains(given, &mains, NULL, result);
    sw_paths_free(&mains);
    return status;
}

/* ---- fixes ----------------------------------------------------------------------------------------------
 */

enum { MOST_PASSES = 12 }; /* over one file: some kinds of fixes, and what was in the way of another */

/* Fixes a main file until nothing is left that can be fixed. *changed becomes true when something was. */
static int fix_path(arguments *given, const char *path, const sw_paths *mains, sw_known_includes *includes,
                    sw_fixing *fixing, bool *changed)
{
    sw_folders folders;
    sw_check_options options = options_for(given, path, &folders);
    options.read.includes = includes;
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
static int fix_mains(arguments *given, sw_fixing *fixing)
{
    sw_paths mains = sw_inputs_mains(&given->inputs);
    sw_known_includes *includes = sw_known_includes_new();
    int status = SW_EXIT_CLEAN;
    bool changed = true;
    for (int sweep = 0; changed && status == SW_EXIT_CLEAN && sweep < MOST_PASSES; sweep++) {
        changed = false;
        for (size_t i = 0; i < mains.count && status == SW_EXIT_CLEAN; i++) {
            status = fix_path(given, mains.items[i], &mains, includes, fixing, &changed);
        }
    }
    sw_known_includes_free(includes);
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

/* ---- accepted findings -----------------------------------------------------------------------------------
 */

static int write_baseline(const arguments *given, const sw_check_result *result)
{
    char *error = NULL;
    if (!sw_baseline_write(given->baseline, result, given->chosen, &error)) {
        return say_error(error);
    }
    if (!given->quiet) {
        fprintf(stderr, "%s: %zu finding%s accepted\n", given->baseline, result->count,
                result->count == 1 ? "" : "s");
    }
    return SW_EXIT_CLEAN;
}

/* What is accepted and no longer found is mended: that is told, and no reason to fail. */
static void say_gone(const arguments *given, size_t gone)
{
    if (gone > 0 && !given->quiet) {
        fprintf(stderr, "%s: %zu accepted finding%s no longer there; --baseline-write takes %s out\n",
                given->baseline, gone, gone == 1 ? " is" : "s are", gone == 1 ? "it" : "them");
    }
}

/* ---- fixing ----------------------------------------------------------------------------------------------
 */

/* What is accepted before anything is mended: it stays as it is. */
static int find_accepted(arguments *given, sw_check_result *result)
{
    char *error = NULL;
    sw_baseline *accepted = sw_baseline_read(given->baseline, &error);
    if (accepted == NULL) {
        return say_error(error);
    }
    int status = read_all(given, result);
    sw_check_finish(result);
    sw_baseline_apply(accepted, result, given->chosen);
    sw_baseline_free(accepted);
    return status;
}

static int fix_all(arguments *given)
{
    sw_check_result accepted = {0};
    int status = given->baseline == NULL ? SW_EXIT_CLEAN : find_accepted(given, &accepted);
    sw_fixing *fixing = sw_fixing_new(given->fix_all, &accepted);
    if (status == SW_EXIT_CLEAN) {
        status = fix_mains(given, fixing);
    }
    if (status == SW_EXIT_CLEAN) {
        status = finish_fixes(given, fixing);
    }
    if (status == SW_EXIT_CLEAN && given->diff && sw_fixing_count(fixing) > 0) {
        status = SW_EXIT_FINDINGS;
    }
    sw_fixing_free(fixing);
    sw_check_result_free(&accepted);
    return status;
}

/* ---- the result ------------------------------------------------------------------------------------------
 */

static double milliseconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec * 1000.0 + (double)now.tv_nsec / 1e6;
}

static void print_result(const arguments *given, const sw_check_result *result, bool complete)
{
    sw_buffer text = {0};
    if (strcmp(given->form->name, "text") == 0 && sw_wants_colours(STDOUT_FILENO)) {
        sw_report_coloured(result, &text);
    } else {
        given->form->print(result, complete, &text);
    }
    fwrite(sw_buffer_text(&text), 1, text.length, stdout);
    fflush(stdout);
    sw_buffer_free(&text);
}

static void print_summary(const sw_check_result *result, double began)
{
    const size_t *found = result->by_severity;
    fprintf(stderr, "%zu file%s, %zu score%s: %zu error%s, %zu warning%s, %zu note%s", result->file_count,
            plural(result->file_count), result->scores, plural(result->scores), found[SW_ERROR],
            plural(found[SW_ERROR]), found[SW_WARNING], plural(found[SW_WARNING]), found[SW_NOTE],
            plural(found[SW_NOTE]));
    if (result->accepted > 0) {
        fprintf(stderr, ", %zu accepted", result->accepted);
    }
    fprintf(stderr, " (%.0f ms)\n", milliseconds() - began);
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

static int check_all(arguments *given, sw_baseline *accepted, double began)
{
    sw_check_result result = {0};
    int status = read_all(given, &result);
    sw_check_finish(&result);
    if (given->baseline_write) {
        if (status == SW_EXIT_CLEAN) {
            status = write_baseline(given, &result);
        }
        sw_check_result_free(&result);
        return status;
    }
    size_t gone = accepted == NULL ? 0 : sw_baseline_apply(accepted, &result, given->chosen);
    print_result(given, &result, status == SW_EXIT_CLEAN);
    say_gone(given, gone);
    if (!given->quiet) {
        print_summary(&result, began);
    }
    if (status == SW_EXIT_CLEAN && result.by_severity[SW_ERROR] + result.by_severity[SW_WARNING] > 0) {
        status = SW_EXIT_FINDINGS;
    }
    sw_check_result_free(&result);
    return status;
}

/* The list of accepted findings is read first: a mistake in it is said before the work. */
static int open_and_check(arguments *given, double began)
{
    char *error = NULL;
    sw_baseline *accepted = NULL;
    if (given->baseline != NULL && !given->baseline_write) {
        accepted = sw_baseline_read(given->baseline, &error);
    }
    if (error != NULL) {
        return say_error(error);
    }
    int status = check_all(given, accepted, began);
    sw_baseline_free(accepted);
    return status;
}

int sw_command_check(int count, char **words)
{
    double began = milliseconds();
    arguments given = {.inputs = {.command = "check"}, .form = sw_report_form_get(0)};
    given.chosen = sw_alloc(sw_rules_count() * sizeof *given.chosen);
    memset(given.chosen, true, sw_rules_count() * sizeof *given.chosen);
    int status = take_arguments(&given, count, words);
    if (status == SW_EXIT_CLEAN && given.fix) {
        status = fix_all(&given);
    }
    if (status == SW_EXIT_CLEAN && !given.diff) {
        status = open_and_check(&given, began);
    }
    sw_inputs_free(&given.inputs);
    free(given.chosen);
    return status;
}
