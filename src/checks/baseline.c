/* Accepted findings. The file is plain text that git can merge: behind its first line a line an entry,
 * sorted, with tabs between fingerprint, number, rule, path (from the file's own folder) and, for people,
 * what was said. */
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "source/internal.h"
#include "stavewright/check.h"

#define FIRST_LINE "stavewright baseline 1"

typedef struct entry {
    const char *path; /* from the folder of the baseline */
    const char *rule;
    const char *fingerprint;
    const char *message;
    size_t count;
    size_t number; /* in the order in which they were added */
    bool checked;  /* its file and its rule were checked */
} entry;

struct sw_baseline {
    char *folder; /* of its file, absolute */
    entry *entries;
    size_t count;
    size_t capacity;
    sw_arena *arena;
};

static sw_baseline *baseline_new(const char *path, char **error)
{
    char *folder = sw_folder_of(path);
    char *real = realpath(folder, NULL);
    if (real == NULL) {
        sw_source_fail(error, "%s: its folder cannot be opened: %s", path, strerror(errno));
        free(folder);
        return NULL;
    }
    free(folder);
    sw_baseline *baseline = sw_alloc(sizeof *baseline);
    *baseline = (sw_baseline){.folder = real, .arena = sw_arena_new()};
    return baseline;
}

void sw_baseline_free(sw_baseline *baseline)
{
    if (baseline != NULL) {
        free(baseline->folder);
        free(baseline->entries);
        sw_arena_free(baseline->arena);
        free(baseline);
    }
}

static void add(sw_baseline *baseline, entry new)
{
    baseline->entries =
        sw_grow(baseline->entries, baseline->count, &baseline->capacity, sizeof *baseline->entries);
    new.number = baseline->count;
    baseline->entries[baseline->count++] = new;
}

/* ---- reading ---- */

static bool read_line(sw_baseline *baseline, sw_slice line)
{
    enum { FINGERPRINT, COUNT, RULE, PATH, MESSAGE, FIELDS };
    char *rest = sw_arena_copy(baseline->arena, line);
    const char *fields[FIELDS];
    for (size_t i = 0; i < FIELDS; i++) {
        fields[i] = rest == NULL ? NULL : strsep(&rest, i == MESSAGE ? "" : "\t");
    }
    if (fields[MESSAGE] == NULL || strlen(fields[FINGERPRINT]) != 16) {
        return false;
    }
    char *end;
    unsigned long count = strtoul(fields[COUNT], &end, 10);
    if (fields[COUNT][0] < '1' || fields[COUNT][0] > '9' || *end != '\0') {
        return false;
    }
    add(baseline, (entry){.path = fields[PATH],
                          .rule = fields[RULE],
                          .fingerprint = fields[FINGERPRINT],
                          .message = fields[MESSAGE],
                          .count = count});
    return true;
}

static bool read_text(sw_baseline *baseline, const sw_text *text, char **error)
{
    if (!sw_slice_is(sw_text_line_slice(text, 1), FIRST_LINE)) {
        return sw_source_fail(error,
                              "%s:1: this is no list of accepted findings: its first line is not \"%s\"",
                              text->path, FIRST_LINE);
    }
    for (uint32_t line = 2; line <= text->line_count; line++) {
        sw_slice slice = sw_text_line_slice(text, line);
        if (slice.length > 0 && !read_line(baseline, slice)) {
            return sw_source_fail(
                error,
                "%s:%u: this is no accepted finding (fingerprint, number, rule, path and what was "
                "said, with tabs between); remove the line, or write the file anew with "
                "--baseline-write",
                text->path, line);
        }
    }
    return true;
}

static sw_baseline *read_from(const sw_text *text, char **error)
{
    sw_baseline *baseline = baseline_new(text->path, error);
    if (baseline != NULL && text->exists && !read_text(baseline, text, error)) {
        sw_baseline_free(baseline);
        return NULL;
    }
    return baseline;
}

sw_baseline *sw_baseline_read(const char *path, char **error)
{
    sw_text *text = sw_text_read(path, error);
    sw_baseline *baseline = text == NULL ? NULL : read_from(text, error);
    sw_text_free(text);
    return baseline;
}

/* ---- comparing ---- */

static int compare_entries(const void *a, const void *b)
{
    const entry *x = a;
    const entry *y = b;
    int order = strcmp(x->path, y->path);
    order = order != 0 ? order : strcmp(x->rule, y->rule);
    return order != 0 ? order : strcmp(x->fingerprint, y->fingerprint);
}

static int compare_for_sort(const void *a, const void *b)
{
    const entry *x = a;
    const entry *y = b;
    int order = compare_entries(a, b);
    return order != 0 ? order : (x->number > y->number) - (x->number < y->number);
}

/* Sorts, and makes one entry of those that are alike (two branches may have added the same). */
static void sort(sw_baseline *baseline)
{
    if (baseline->count == 0) {
        return;
    }
    qsort(baseline->entries, baseline->count, sizeof *baseline->entries, compare_for_sort);
    size_t kept = 1;
    for (size_t i = 1; i < baseline->count; i++) {
        entry *last = &baseline->entries[kept - 1];
        if (compare_entries(last, &baseline->entries[i]) == 0) {
            last->count += baseline->entries[i].count;
        } else {
            baseline->entries[kept++] = baseline->entries[i];
        }
    }
    baseline->count = kept;
}

static bool rule_is_chosen(const bool *chosen, const char *rule)
{
    for (size_t i = 0; i < sw_rules_count(); i++) {
        if (strcmp(sw_rules_get(i)->name, rule) == 0) {
            return chosen == NULL || chosen[i];
        }
    }
    return true; /* a rule that is no more finds nothing */
}

/* The paths of the result's files as seen from the baseline's folder. */
static const char **paths_of(sw_baseline *baseline, const sw_check_result *result)
{
    const char **paths = sw_alloc((result->file_count + 1) * sizeof *paths);
    for (size_t i = 0; i < result->file_count; i++) {
        sw_buffer way = {0};
        sw_source_way(baseline->folder, result->files[i].real_path, &way);
        paths[i] = sw_arena_copy(baseline->arena, sw_buffer_slice(&way));
        sw_buffer_free(&way);
    }
    return paths;
}

static void mark_checked(sw_baseline *baseline, const char *const *paths, size_t path_count,
                         const bool *chosen)
{
    for (size_t i = 0; i < baseline->count; i++) {
        entry *e = &baseline->entries[i];
        for (size_t p = 0; p < path_count && !e->checked; p++) {
            e->checked = strcmp(e->path, paths[p]) == 0 && rule_is_chosen(chosen, e->rule);
        }
    }
}

/* Takes one of the accepted ones that are like a finding. */
static bool accept(entry *entries, size_t count, const char *path, const sw_checked *item)
{
    entry wanted = {.path = path, .rule = item->finding.rule, .fingerprint = item->fingerprint};
    entry *found = count == 0 ? NULL : bsearch(&wanted, entries, count, sizeof *entries, compare_entries);
    if (found == NULL || found->count == 0) {
        return false;
    }
    found->count--;
    return true;
}

size_t sw_baseline_apply(sw_baseline *baseline, sw_check_result *result, const bool *chosen)
{
    const char **paths = paths_of(baseline, result);
    sort(baseline);
    mark_checked(baseline, paths, result->file_count, chosen);
    size_t kept = 0;
    sw_checked *taken = sw_alloc((result->count + 1) * sizeof *taken);
    for (size_t i = 0; i < result->count; i++) {
        const sw_checked *item = &result->items[i];
        if (accept(baseline->entries, baseline->count, paths[item->finding.file], item)) {
            result->by_severity[item->finding.severity]--;
            result->fixable[item->finding.fixable]--;
            taken[result->accepted++] = *item;
        } else {
            result->items[kept++] = *item;
        }
    }
    result->count = kept;
    if (result->accepted > 0) {
        memcpy(&result->items[kept], taken, result->accepted * sizeof *taken);
    }
    free(taken);
    size_t gone = 0;
    for (size_t i = 0; i < baseline->count; i++) {
        gone += baseline->entries[i].checked ? baseline->entries[i].count : 0;
    }
    free(paths);
    return gone;
}

/* ---- writing ---- */

static bool print(const sw_baseline *baseline, sw_buffer *text, char **error)
{
    sw_buffer_string(text, FIRST_LINE "\n");
    for (size_t i = 0; i < baseline->count; i++) {
        const entry *e = &baseline->entries[i];
        if (strpbrk(e->path, "\t\n") != NULL) {
            return sw_source_fail(error, "%s: a path with a tab or a line end can't be listed; rename it",
                                  e->path);
        }
        sw_buffer_format(text, "%s\t%zu\t%s\t%s\t%s\n", e->fingerprint, e->count, e->rule, e->path,
                         e->message);
    }
    return true;
}

/* The findings of the result in the place of the entries of what was checked. */
static void replace(sw_baseline *baseline, const sw_check_result *result, const bool *chosen)
{
    const char **paths = paths_of(baseline, result);
    mark_checked(baseline, paths, result->file_count, chosen);
    size_t kept = 0;
    for (size_t i = 0; i < baseline->count; i++) {
        if (!baseline->entries[i].checked) {
            baseline->entries[kept++] = baseline->entries[i];
        }
    }
    baseline->count = kept;
    for (size_t i = 0; i < result->count; i++) {
        const sw_checked *item = &result->items[i];
        add(baseline, (entry){.path = paths[item->finding.file],
                              .rule = item->finding.rule,
                              .fingerprint = item->fingerprint,
                              .message = item->finding.message,
                              .count = 1});
    }
    sort(baseline);
    free(paths);
}

bool sw_baseline_write(const char *path, const sw_check_result *result, const bool *chosen, char **error)
{
    sw_text *before = access(path, F_OK) == 0 ? sw_text_read(path, error) : sw_text_new(path);
    sw_baseline *baseline = before == NULL ? NULL : read_from(before, error);
    bool good = baseline != NULL;
    if (good) {
        replace(baseline, result, chosen);
        sw_buffer text = {0};
        sw_write file = {.before = before};
        good = print(baseline, &text, error);
        file.after = sw_buffer_slice(&text);
        good = good && sw_write_all(&file, 1, error);
        sw_buffer_free(&text);
    }
    sw_baseline_free(baseline);
    sw_text_free(before);
    return good;
}
