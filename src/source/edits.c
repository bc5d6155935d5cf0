#include <stdlib.h>
#include <string.h>

#include "source/internal.h"

void sw_edits_add(sw_edits *edits, uint32_t start, uint32_t end, sw_slice text)
{
    char *copy = sw_alloc(text.length + 1);
    if (text.length > 0) {
        memcpy(copy, text.data, text.length);
    }
    copy[text.length] = '\0';
    edits->items = sw_grow(edits->items, edits->count, &edits->capacity, sizeof *edits->items);
    edits->items[edits->count++] = (sw_edit){start, end, copy, text.length};
}

/* Orders pointers into one array: by position, an insertion before a replacement, then as they were added. */
static int by_position(const void *left, const void *right)
{
    const sw_edit *a = *(const sw_edit *const *)left;
    const sw_edit *b = *(const sw_edit *const *)right;
    if (a->start != b->start) {
        return a->start < b->start ? -1 : 1;
    }
    if ((a->end > a->start) != (b->end > b->start)) {
        return a->end > a->start ? 1 : -1;
    }
    return a < b ? -1 : a > b;
}

/* True when a text may be cut before its byte `at`: not within a character, not within a \r\n. */
static bool can_cut(sw_slice text, size_t at)
{
    if (at == 0 || at >= text.length) {
        return true;
    }
    return !sw_is_continuation(text.data[at]) && !(text.data[at] == '\n' && text.data[at - 1] == '\r');
}

/* Takes the bytes that both ends of the old and the new text have in common off the edit. */
static void shrink(sw_edit *edit, const sw_text *text)
{
    sw_slice before = sw_text_slice(text, edit->start, edit->end);
    sw_slice after = {edit->text, edit->length};
    size_t most = before.length < after.length ? before.length : after.length;
    size_t head = 0;
    while (head < most && before.data[head] == after.data[head]) {
        head++;
    }
    while (!can_cut(before, head) || !can_cut(after, head)) {
        head--;
    }
    size_t tail = 0;
    while (tail < most - head &&
           before.data[before.length - 1 - tail] == after.data[after.length - 1 - tail]) {
        tail++;
    }
    while (tail > 0 && (!can_cut(before, before.length - tail) || !can_cut(after, after.length - tail))) {
        tail--;
    }
    edit->start += (uint32_t)head;
    edit->end -= (uint32_t)tail;
    edit->length -= head + tail;
    memmove(edit->text, edit->text + head, edit->length);
    edit->text[edit->length] = '\0';
}

/* False when sorted edits overlap or leave the text. */
static bool fit(const sw_edit *const *sorted, size_t count, const sw_text *text, uint32_t *where)
{
    uint32_t free_from = 0;
    for (size_t i = 0; i < count; i++) {
        *where = sorted[i]->start;
        if (sorted[i]->start < free_from || sorted[i]->end < sorted[i]->start ||
            sorted[i]->end > text->length) {
            return false;
        }
        free_from = sorted[i]->end;
    }
    return true;
}

bool sw_edits_finish(sw_edits *edits, const sw_text *text, uint32_t *where)
{
    if (edits->count == 0) {
        return true;
    }
    const sw_edit **sorted = sw_alloc(edits->count * sizeof *sorted);
    for (size_t i = 0; i < edits->count; i++) {
        sorted[i] = &edits->items[i];
    }
    qsort(sorted, edits->count, sizeof *sorted, by_position);
    bool good = fit(sorted, edits->count, text, where);
    if (good) {
        sw_edit *kept = sw_alloc(edits->count * sizeof *kept);
        size_t count = 0;
        for (size_t i = 0; i < edits->count; i++) {
            sw_edit edit = *sorted[i];
            shrink(&edit, text);
            if (edit.end > edit.start || edit.length > 0) {
                kept[count++] = edit;
            } else {
                free(edit.text);
            }
        }
        free(edits->items);
        *edits = (sw_edits){kept, count, edits->count};
    }
    free(sorted);
    return good;
}

void sw_edits_apply(const sw_edits *edits, const sw_text *text, sw_buffer *result)
{
    uint32_t done = 0;
    for (size_t i = 0; i < edits->count; i++) {
        const sw_edit *edit = &edits->items[i];
        sw_buffer_append(result, sw_text_slice(text, done, edit->start));
        sw_buffer_append(result, (sw_slice){edit->text, edit->length});
        done = edit->end;
    }
    sw_buffer_append(result, sw_text_slice(text, done, text->length));
}

void sw_edits_free(sw_edits *edits)
{
    for (size_t i = 0; i < edits->count; i++) {
        free(edits->items[i].text);
    }
    free(edits->items);
    *edits = (sw_edits){0};
}
