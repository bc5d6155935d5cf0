/* stavewright changed: the musical difference of two versions. */
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/versions.h"
#include "stavewright/compare.h"

/* What has changed in one cue. */
typedef struct cue {
    const char *path;
    bool come;
    bool gone;
    bool several; /* scores in one of the versions */
    const sw_differences *list;
} cue;

typedef struct form {
    const char *name;
    void (*print)(const cue *c, void *state);
} form;

typedef struct arguments {
    const char *words[64]; /* revisions and paths, as they were given */
    size_t word_count;
    size_t revisions_end; /* how many of them stand before --; SIZE_MAX without it */
    sw_folders includes;
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
    for (size_t i = 0; c->list != NULL && i < c->list->count; i++) {
        const sw_difference *d = &c->list->items[i];
        printf("  ");
        if (d->whole && d->staff == NULL) {
            printf("score %u: ", d->score + 1);
        } else {
            if (c->several) {
                printf("score %u, ", d->score + 1);
            }
            printf("%s: ", d->staff == NULL ? "all" : d->staff);
        }
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
            sw_folders_add(&given->includes, &words.value, 1);
        } else if (given->word_count == sizeof given->words / sizeof given->words[0]) {
            sw_say_bad("changed", "too many paths; name their folder");
            return false;
        } else {
            if (words.only_paths && given->revisions_end == SIZE_MAX) {
                given->revisions_end = given->word_count;
            }
            given->words[given->word_count++] = words.value;
        }
    }
    return true;
}

/* ---- comparing ------------------------------------------------------------------------------------------
 */

static bool has_score(const sw_reading *reading)
{
    for (size_t i = 0; i < reading->score_count; i++) {
        if (!reading->scores[i].in_markup && reading->scores[i].staff_count > 0) {
            return true;
        }
    }
    return false;
}

static void tell(arguments *given, const char *path, const sw_reading *before, const sw_reading *after)
{
    sw_differences list = {0};
    cue c = {.path = path, .come = before == NULL && after != NULL, .gone = after == NULL && before != NULL};
    if (before != NULL && after != NULL) {
        c.several = before->score_count > 1 || after->score_count > 1;
        list = sw_compare(before, after);
        c.list = &list;
    }
    if (c.come || c.gone || list.count > 0) {
        given->found = true;
        given->form->print(&c, given);
    }
    sw_differences_free(&list);
}

/* Two files that were named: both must be scores. */
static bool are_scores(const sw_versions *versions, const char *name, const sw_reading *before,
                       const sw_reading *after)
{
    if (strcmp(name, ".") != 0 || (has_score(before) && has_score(after))) {
        return true;
    }
    sw_say_bad("changed", "%s holds no score; name two scores",
               (has_score(before) ? &versions->new : &versions->old)->root.items[0]);
    return false;
}

/* What is missing in a version, or can't be read, is not compared. */
static void tell_gaps(const sw_reading *reading, const char *which)
{
    for (size_t i = 0; reading != NULL && i < reading->findings.count; i++) {
        const sw_finding *f = &reading->findings.items[i];
        if (strcmp(f->rule, "include") == 0 || strcmp(f->rule, "syntax") == 0) {
            fprintf(stderr, "stavewright changed: in the %s version, %s:%u:%u: %s\n", which,
                    reading->files[f->file].text->path, (unsigned)f->line, (unsigned)f->column, f->message);
        }
    }
}

static bool compare_cue(arguments *given, sw_versions *versions, const char *name)
{
    sw_reading *before = NULL;
    sw_reading *after = NULL;
    bool good = sw_version_read(&versions->old, name, &before) &&
                sw_version_read(&versions->new, name, &after) && are_scores(versions, name, before, after);
    if (good) {
        char *path = sw_version_path(after == NULL ? &versions->old : &versions->new, name);
        tell(given, path, before, after);
        tell_gaps(before, "old");
        tell_gaps(after, "new");
        free(path);
    }
    sw_reading_free(before);
    sw_reading_free(after);
    return good;
}

int sw_command_changed(int count, char **items)
{
    arguments given = {.form = &forms[0], .revisions_end = SIZE_MAX, .array = json_array()};
    sw_versions versions = {0};
    bool good = take_arguments(&given, count, items) &&
                sw_versions_find(&versions, "changed", given.words, given.word_count, given.revisions_end,
                                 &given.includes);
    for (size_t i = 0; good && i < versions.cues.count; i++) {
        good = compare_cue(&given, &versions, versions.cues.items[i]);
    }
    if (good && given.form == &forms[2]) {
        char *text = json_dumps(given.array, JSON_INDENT(2));
        printf("%s\n", text);
        free(text);
    }
    json_decref(given.array);
    free(given.includes.items);
    sw_versions_free(&versions);
    return !good ? SW_EXIT_BAD : given.found ? SW_EXIT_FINDINGS : SW_EXIT_CLEAN;
}
