/* stavewright changed: the musical difference of two versions. */
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "app/commands.h"
#include "app/inputs.h"
#include "stavewright/compare.h"
#include "stavewright/cues.h"

/* What has changed in one cue. */
typedef struct cue {
    const char *path;
    bool come;
    bool gone;
    const sw_differences *list;
} cue;

typedef struct form {
    const char *name;
    void (*print)(const cue *c, void *state);
} form;

typedef struct arguments {
    sw_inputs inputs;
    const char *words[64]; /* revisions and paths, as they were given */
    size_t word_count;
    const char *revisions[2];
    size_t revision_count;
    const form *form;
    bool found;    /* some difference */
    json_t *array; /* for json */
} arguments;

/* ---- how it is told -------------------------------------------------------------------------------------
 */

static void print_kinds(unsigned what, const char *between)
{
    const char *gap = "";
    for (int kind = 0; kind < SW_DIFFER_KINDS; kind++) {
        if ((what & (1u << kind)) != 0) {
            printf("%s%s", gap, sw_difference_name(kind));
            gap = between;
        }
    }
}

static void print_text(const cue *c, void *state)
{
    (void)state;
    printf("%s%s\n", c->path, c->come ? ": a new cue" : c->gone ? ": the cue is gone" : "");
    bool several = false;
    for (size_t i = 0; c->list != NULL && i < c->list->count; i++) {
        several = several || c->list->items[i].score != c->list->items[0].score;
    }
    for (size_t i = 0; c->list != NULL && i < c->list->count; i++) {
        const sw_difference *d = &c->list->items[i];
        printf("  ");
        if (several) {
            printf("score %u, ", d->score + 1);
        }
        printf("%s: ", d->staff == NULL ? "all" : d->staff);
        if (!d->whole) {
            if (d->first_bar == d->last_bar) {
                printf("bar %d ", d->first_bar);
            } else {
                printf("bars %d-%d ", d->first_bar, d->last_bar);
            }
        }
        print_kinds(d->what, ", ");
        printf("\n");
    }
}

static void print_rows(const cue *c, void *state)
{
    (void)state;
    if (c->come || c->gone) {
        printf("%s\t\t\t\t\t%s\n", c->path, c->come ? "new" : "gone");
    }
    for (size_t i = 0; c->list != NULL && i < c->list->count; i++) {
        const sw_difference *d = &c->list->items[i];
        printf("%s\t%u\t%s\t", c->path, d->score + 1, d->staff == NULL ? "" : d->staff);
        if (d->whole) {
            printf("\t\t");
        } else {
            printf("%d\t%d\t", d->first_bar, d->last_bar);
        }
        print_kinds(d->what, " ");
        printf("\n");
    }
}

static void collect_json(const cue *c, void *state)
{
    arguments *given = state;
    json_t *changes = json_array();
    for (size_t i = 0; c->list != NULL && i < c->list->count; i++) {
        const sw_difference *d = &c->list->items[i];
        json_t *change = json_object();
        json_t *kinds = json_array();
        json_object_set_new(change, "score", json_integer((json_int_t)d->score + 1));
        json_object_set_new(change, "staff", d->staff == NULL ? json_null() : json_string(d->staff));
        if (!d->whole) {
            json_object_set_new(change, "first_bar", json_integer(d->first_bar));
            json_object_set_new(change, "last_bar", json_integer(d->last_bar));
        }
        for (int kind = 0; kind < SW_DIFFER_KINDS; kind++) {
            if ((d->what & (1u << kind)) != 0) {
                json_array_append_new(kinds, json_string(sw_difference_name(kind)));
            }
        }
        json_object_set_new(change, "what", kinds);
        json_array_append_new(changes, change);
    }
    json_t *row = json_object();
    json_object_set_new(row, "cue", json_string(c->path));
    json_object_set_new(row, "state", json_string(c->come ? "new" : c->gone ? "gone" : "changed"));
    json_object_set_new(row, "changes", changes);
    json_array_append_new(given->array, row);
}

static const form forms[] = {{"text", print_text}, {"tsv", print_rows}, {"json", collect_json}};
enum { FORMS = sizeof forms / sizeof forms[0] };

/* ---- the command line -----------------------------------------------------------------------------------
 */

static bool take_form(arguments *given, const char *name)
{
    for (size_t i = 0; i < FORMS; i++) {
        if (strcmp(name, forms[i].name) == 0) {
            given->form = &forms[i];
            return true;
        }
    }
    sw_say_bad("changed", "there is no format \"%s\"; give text, tsv or json", name);
    return false;
}

static bool take_arguments(arguments *given, int count, char **items)
{
    sw_words words = {.command = "changed", .items = items, .count = count};
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        if (word == SW_WORD_BAD) {
            return false;
        }
        if (word == SW_WORD_OPTION && sw_words_is(&words, "--format")) {
            if (!take_form(given, words.value)) {
                return false;
            }
        } else if (word == SW_WORD_OPTION) {
            sw_folders_add(&given->inputs.includes, &words.value, 1);
        } else if (given->word_count == sizeof given->words / sizeof given->words[0]) {
            sw_say_bad("changed", "too many paths; name their folder");
            return false;
        } else {
            given->words[given->word_count++] = words.value;
        }
    }
    return true;
}

/* ---- comparing ------------------------------------------------------------------------------------------
 */

/* Reads a version; NULL when it is not there. */
static sw_reading *read_version(const char *path, const sw_read_options *options)
{
    char *error = NULL;
    sw_reading *reading = sw_file_exists(path) ? sw_read(path, options, &error) : NULL;
    if (error != NULL) {
        sw_say_bad("changed", "%s", error);
        free(error);
    }
    return reading;
}

static void tell(arguments *given, const char *path, const sw_reading *before, const sw_reading *after)
{
    sw_differences list = {0};
    cue c = {.path = path, .come = before == NULL && after != NULL, .gone = after == NULL && before != NULL};
    if (before != NULL && after != NULL) {
        list = sw_compare(before, after);
        c.list = &list;
    }
    if (c.come || c.gone || list.count > 0) {
        given->found = true;
        given->form->print(&c, given);
    }
    sw_differences_free(&list);
}

/* The cues as they are now, and how they are read. */
typedef struct cues_now {
    sw_folders folders;
    sw_read_options options;
    sw_paths paths;
} cues_now;

/* Finds the files that were taken, and their cues. False when that can't be done; it has been said then.
 * Either way free_cues. */
static bool find_cues(arguments *given, cues_now *now)
{
    *now = (cues_now){.paths = {0}};
    if (!sw_inputs_close(&given->inputs, NULL)) {
        return false;
    }
    now->folders = sw_inputs_folders(&given->inputs, NULL);
    now->options =
        (sw_read_options){.include_path = now->folders.items, .include_path_count = now->folders.count};
    sw_paths mains = sw_inputs_mains(&given->inputs);
    char *error = NULL;
    bool good = sw_cues_find(&mains, &now->options, NULL, NULL, &now->paths, NULL, &error);
    if (!good) {
        sw_say_bad("changed", "%s", error);
        free(error);
    }
    sw_paths_free(&mains);
    return good;
}

static void free_cues(cues_now *now)
{
    sw_paths_free(&now->paths);
    free(now->folders.items);
}

/* The cues now, each against a file of the same name elsewhere. */
static bool compare_paths(arguments *given, const char *old, const char *new)
{
    sw_inputs_take(&given->inputs, new);
    cues_now now;
    bool good = find_cues(given, &now);
    sw_paths plain = {0};
    sw_paths_add(&plain, new);
    size_t length = strlen(plain.items[0]);
    for (size_t i = 0; i < now.paths.count; i++) {
        sw_buffer path = {0};
        sw_buffer_format(&path, "%s%s", old, now.paths.items[i] + length);
        sw_reading *before = read_version(sw_buffer_text(&path), &now.options);
        sw_reading *after = read_version(now.paths.items[i], &now.options);
        tell(given, now.paths.items[i], before, after);
        sw_reading_free(before);
        sw_reading_free(after);
        sw_buffer_free(&path);
    }
    sw_paths_free(&plain);
    free_cues(&now);
    return good;
}

/* Reads from here on from revision number `n` that was given; from the disk when there is none. */
static bool use_revision(arguments *given, sw_git *git, size_t n)
{
    char *error = NULL;
    if (n >= given->revision_count && n > 0) {
        sw_git_read_disk(git);
        return true;
    }
    if (!sw_git_read_revision(git, given->revisions[n], &error)) {
        sw_say_bad("changed", "%s", error);
        free(error);
        return false;
    }
    return true;
}

static bool compare_revisions(arguments *given)
{
    /* With one revision, what git says has changed since is enough; two are compared in all files. */
    given->inputs.since = given->revision_count == 2   ? NULL
                          : given->revision_count == 1 ? given->revisions[0]
                                                       : "HEAD";
    char *error = NULL;
    sw_git *git = sw_git_open(&error);
    if (git == NULL) {
        sw_say_bad("changed", "%s", error);
        free(error);
        return false;
    }
    cues_now now;
    bool good = find_cues(given, &now);
    for (size_t i = 0; i < now.paths.count && good; i++) {
        sw_reading *before = NULL;
        sw_reading *after = NULL;
        good = use_revision(given, git, 0);
        if (good) {
            before = read_version(now.paths.items[i], &now.options);
            good = use_revision(given, git, 1);
        }
        if (good) {
            after = read_version(now.paths.items[i], &now.options);
            tell(given, now.paths.items[i], before, after);
        }
        sw_reading_free(before);
        sw_reading_free(after);
    }
    sw_git_read_disk(git);
    free_cues(&now);
    sw_git_free(git);
    return good;
}

/* Words in front that are no paths are revisions. */
static void divide_words(arguments *given)
{
    size_t n = 0;
    while (n < given->word_count && n < 2 && access(given->words[n], F_OK) != 0) {
        given->revisions[given->revision_count++] = given->words[n++];
    }
    for (; n < given->word_count; n++) {
        sw_inputs_take(&given->inputs, given->words[n]);
    }
}

int sw_command_changed(int count, char **items)
{
    arguments given = {.inputs = {.command = "changed"}, .form = &forms[0]};
    bool good = take_arguments(&given, count, items);
    given.array = json_array();
    bool paths = good && given.word_count == 2 && access(given.words[0], F_OK) == 0 &&
                 access(given.words[1], F_OK) == 0;
    if (paths) {
        good = compare_paths(&given, given.words[0], given.words[1]);
    } else if (good) {
        divide_words(&given);
        good = compare_revisions(&given);
    }
    if (good && given.form == &forms[2]) {
        char *text = json_dumps(given.array, JSON_INDENT(2));
        printf("%s\n", text);
        free(text);
    }
    json_decref(given.array);
    sw_inputs_free(&given.inputs);
    return !good ? SW_EXIT_BAD : given.found ? SW_EXIT_FINDINGS : SW_EXIT_CLEAN;
}
