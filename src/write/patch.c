#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "write/division.h"

static sw_edits *edits_of(sw_patch *patch, const sw_text *text)
{
    for (size_t i = 0; i < patch->count; i++) {
        if (sw_text_same_file(patch->files[i].text, text)) {
            return &patch->files[i].edits;
        }
    }
    patch->files = sw_grow(patch->files, patch->count, &patch->capacity, sizeof *patch->files);
    patch->files[patch->count] = (sw_file_patch){.text = text};
    return &patch->files[patch->count++].edits;
}

void sw_patch_add(sw_patch *patch, const sw_text *text, uint32_t start, uint32_t end, sw_slice replacement)
{
    sw_edits_add(edits_of(patch, text), start, end, replacement);
}

static int compare_edits(const sw_edit *a, const sw_edit *b)
{
    if (a->start != b->start || a->end != b->end) {
        return a->start < b->start || (a->start == b->start && a->end < b->end) ? -1 : 1;
    }
    return sw_slice_compare((sw_slice){a->text, a->length}, (sw_slice){b->text, b->length});
}

/* Equal ones in the order in which they were added. */
static int compare_entries(const void *left, const void *right)
{
    sw_edit *const a = *(sw_edit *const *)left;
    sw_edit *const b = *(sw_edit *const *)right;
    int order = compare_edits(a, b);
    return order != 0 ? order : (a > b) - (a < b);
}

void sw_edits_unite(sw_edits *edits, size_t settled)
{
    if (edits->count < settled + 2) {
        return;
    }
    size_t count = edits->count - settled;
    sw_edit **sorted = sw_alloc(count * sizeof *sorted);
    for (size_t i = 0; i < count; i++) {
        sorted[i] = &edits->items[settled + i];
    }
    qsort(sorted, count, sizeof *sorted, compare_entries);
    for (size_t i = count; i-- > 1;) { /* from behind, so that each is compared with what it was */
        if (compare_edits(sorted[i - 1], sorted[i]) == 0) {
            free(sorted[i]->text);
            sorted[i]->text = NULL;
        }
    }
    free(sorted);
    size_t kept = settled;
    for (size_t i = settled; i < edits->count; i++) {
        if (edits->items[i].text != NULL) {
            edits->items[kept++] = edits->items[i];
        }
    }
    edits->count = kept;
}

bool sw_patch_finish(sw_patch *patch, char **error)
{
    for (size_t i = 0; i < patch->count; i++) {
        sw_file_patch *file = &patch->files[i];
        uint32_t where = 0;
        sw_edits_unite(&file->edits, file->finished);
        if (!sw_edits_finish(&file->edits, file->text, &where)) {
            sw_place place = sw_text_place(file->text, where);
            if (asprintf(error,
                         "%s:%u:%u: this would have to become two different things, because it is used in "
                         "several places, each behind other music; nothing is changed",
                         file->text->path, place.line, place.column + 1) < 0) {
                abort();
            }
            return false;
        }
        file->finished = file->edits.count;
        sw_buffer after = {0};
        sw_edits_apply(&file->edits, file->text, &after);
        sw_text_free(file->after);
        file->after = sw_text_changed(file->text, sw_buffer_slice(&after));
        sw_buffer_free(&after);
    }
    return true;
}

sw_read_options sw_patch_options(const sw_patch *patch, const sw_read_options *options,
                                 const sw_text ***overlays)
{
    size_t given = options == NULL ? 0 : options->overlay_count;
    *overlays = sw_alloc((patch->count + given + 1) * sizeof **overlays);
    for (size_t i = 0; i < patch->count; i++) { /* before what stood in for the files so far */
        (*overlays)[i] = patch->files[i].after;
    }
    for (size_t i = 0; i < given; i++) {
        (*overlays)[patch->count + i] = options->overlays[i];
    }
    sw_read_options with = options == NULL ? (sw_read_options){0} : *options;
    with.overlays = *overlays;
    with.overlay_count = patch->count + given;
    with.shelf = NULL; /* what is on it are the files before */
    return with;
}

bool sw_patch_prove(const sw_patch *patch, sw_reading *const *mains, size_t count,
                    const sw_read_options *options, sw_compare_main *compare, const void *what, char **error)
{
    const sw_text **overlays;
    sw_read_options with = sw_patch_options(patch, options, &overlays);
    with.shelf = count > 1 ? sw_shelf_new() : NULL;
    bool proved = true;
    for (size_t i = 0; i < count && proved; i++) {
        sw_reading *after = sw_read(mains[i]->files[0].text->path, &with, error);
        proved = after != NULL && compare(what, mains[i], after, error);
        sw_reading_free(after);
    }
    sw_shelf_free(with.shelf);
    free(overlays);
    return proved;
}

void sw_patch_diff(const sw_patch *patch, sw_buffer *result)
{
    const sw_text **texts = sw_alloc((patch->count + 1) * sizeof *texts);
    for (size_t i = 0; i < patch->count; i++) {
        texts[i] = patch->files[i].text;
    }
    char *folder = sw_diff_folder(texts, patch->count);
    char *here = sw_diff_folder(NULL, 0);
    sw_buffer diff = {0};
    sw_buffer empty = {0}; /* new files without a line come last: see sw_diff_print */
    for (size_t i = 0; i < patch->count; i++) {
        const sw_file_patch *file = &patch->files[i];
        bool without_lines = !file->text->exists && file->edits.count == 0;
        sw_diff_print(&file->edits, file->text, folder, without_lines ? &empty : &diff);
    }
    sw_buffer_append(&diff, sw_buffer_slice(&empty));
    sw_buffer_free(&empty);
    if (diff.length > 0 && folder != NULL && here != NULL && strcmp(folder, here) != 0) {
        /* patch and git skip what comes before the first file. */
        sw_buffer_format(result, "# to be applied in %s (patch -p1, git apply)\n", folder);
    }
    sw_buffer_append(result, sw_buffer_slice(&diff));
    sw_buffer_free(&diff);
    free(here);
    free(folder);
    free(texts);
}

bool sw_patch_write(const sw_patch *patch, char **error)
{
    sw_write *writes = sw_alloc_zero(patch->count + 1, sizeof *writes);
    for (size_t i = 0; i < patch->count; i++) {
        const sw_text *after = patch->files[i].after;
        writes[i] = (sw_write){patch->files[i].text, {after->bytes, after->length}};
    }
    bool done = sw_write_all(writes, patch->count, error);
    free(writes);
    return done;
}

void sw_patch_free(sw_patch *patch)
{
    for (size_t i = 0; i < patch->count; i++) {
        sw_edits_free(&patch->files[i].edits);
        sw_text_free(patch->files[i].after);
    }
    free(patch->files);
    *patch = (sw_patch){0};
}
