#include "moves/changed_files.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const sw_text **sw_changed_files_overlays(const sw_changed_files *files)
{
    const sw_text **overlays = sw_alloc((files->count + 1) * sizeof *overlays);
    for (size_t i = 0; i < files->count; i++) {
        overlays[i] = files->items[i].now;
    }
    return overlays;
}

/* The file of a text; NULL with *error when it can't be read, or has changed since the text was read. */
static sw_changed_file *file_of(sw_changed_files *files, const sw_text *text, char **error)
{
    for (size_t i = 0; i < files->count; i++) {
        if (sw_text_same_file(files->items[i].before, text)) {
            return &files->items[i];
        }
    }
    sw_text *before = sw_text_read(text->path, error);
    if (before == NULL) {
        return NULL;
    }
    if (before->length != text->length || memcmp(before->bytes, text->bytes, text->length) != 0) {
        if (asprintf(error, "%s has changed while it was read; try again", text->path) < 0) {
            abort();
        }
        sw_text_free(before);
        return NULL;
    }
    files->items = sw_grow(files->items, files->count, &files->capacity, sizeof *files->items);
    sw_changed_file *file = &files->items[files->count++];
    file->before = before;
    file->now = sw_text_changed(before, (sw_slice){before->bytes, before->length});
    file->from = sw_alloc(((size_t)before->length + 1) * sizeof *file->from);
    for (uint32_t i = 0; i < before->length; i++) {
        file->from[i] = i;
    }
    return file;
}

/* Follows the bytes through the edits of a patch. */
static void follow(sw_changed_files *files, sw_changed_file *file, const sw_file_patch *patch)
{
    uint32_t *from = sw_alloc(((size_t)patch->after->length + 1) * sizeof *from);
    uint32_t at = 0;
    size_t count = 0;
    for (size_t i = 0; i <= patch->edits.count; i++) {
        const sw_edit *edit = i < patch->edits.count ? &patch->edits.items[i] : NULL;
        uint32_t end = edit == NULL ? file->now->length : edit->start;
        while (at < end) {
            from[count++] = file->from[at++];
        }
        for (size_t k = 0; edit != NULL && k < edit->length; k++) {
            from[count++] = UINT32_MAX;
        }
        at = edit == NULL ? at : edit->end;
    }
    files->old = sw_grow(files->old, files->old_count, &files->old_capacity, sizeof *files->old);
    files->old[files->old_count++] = (sw_former_file){(size_t)(file - files->items), file->now, file->from};
    file->from = from;
    file->now = sw_text_changed(file->before, (sw_slice){patch->after->bytes, patch->after->length});
}

bool sw_changed_files_keep(sw_changed_files *files, const sw_patch *patch, char **error)
{
    for (size_t i = 0; i < patch->count; i++) {
        if (file_of(files, patch->files[i].text, error) == NULL) {
            return false;
        }
    }
    for (size_t i = 0; i < patch->count; i++) {
        follow(files, file_of(files, patch->files[i].text, error), &patch->files[i]);
    }
    return true;
}

void sw_changed_files_sweep(sw_changed_files *files)
{
    for (size_t i = 0; i < files->old_count; i++) {
        sw_text_free(files->old[i].text);
        free(files->old[i].from);
    }
    files->old_count = 0;
}

void sw_changed_files_take_back(sw_changed_files *files)
{
    while (files->old_count > 0) {
        const sw_former_file *former = &files->old[--files->old_count];
        sw_changed_file *file = &files->items[former->file];
        sw_text_free(file->now);
        free(file->from);
        file->now = former->text;
        file->from = former->from;
    }
}

bool sw_changed_files_are_new(const sw_changed_files *files)
{
    return files->old_count > 0;
}

/* Where new bytes stand, or old ones are missing, there was a change. */
static void add_edits(const sw_changed_file *file, sw_patch *patch)
{
    uint32_t at = 0; /* in the old text */
    for (uint32_t i = 0; i <= file->now->length; i++) {
        uint32_t first = i;
        while (i < file->now->length && file->from[i] == UINT32_MAX) {
            i++;
        }
        uint32_t next = i < file->now->length ? file->from[i] : file->before->length;
        if (i > first || next != at) {
            sw_patch_add(patch, file->before, at, next, sw_text_slice(file->now, first, i));
        }
        at = next + 1;
    }
}

bool sw_changed_files_patch(const sw_changed_files *files, sw_patch *patch, char **error)
{
    for (size_t i = 0; i < files->count; i++) {
        add_edits(&files->items[i], patch);
    }
    return sw_patch_finish(patch, error);
}

void sw_changed_files_free(sw_changed_files *files)
{
    sw_changed_files_sweep(files);
    for (size_t i = 0; i < files->count; i++) {
        sw_text_free(files->items[i].before);
        sw_text_free(files->items[i].now);
        free(files->items[i].from);
    }
    free(files->items);
    free(files->old);
    *files = (sw_changed_files){0};
}
