/* Every source in reading/ must be read as the compiler hears it: its answer stands beside it,
 * NAME.truth.tsv, made with oracle.ily. Compared are the notes and drum notes: score, onset, grace offset,
 * duration, kind, pitch, file, line and column. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/report.h"
#include "stavewright/score.h"
#include "sources.h"

static const char folder[] = "tests/reference/reading";

/* Rows without the ids of staff and voice, sorted. */
typedef struct rows {
    char **items;
    size_t count;
    size_t capacity;
} rows;

static int compare(const void *a, const void *b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

static void add_row(rows *list, const char *line, size_t length)
{
    enum { KIND = 4, STAFF = 6, VOICE = 7, COLUMN = 10 };
    sw_buffer row = {0};
    size_t column = 0;
    bool wanted = false;
    for (const char *at = line; at < line + length && column <= COLUMN; column++) {
        const char *tab = memchr(at, '\t', (size_t)(line + length - at));
        sw_slice cell = {at, (size_t)((tab == NULL ? line + length : tab) - at)};
        if (column == KIND) {
            wanted = sw_slice_is(cell, "note") || sw_slice_is(cell, "drum");
        }
        if (column != STAFF && column != VOICE) {
            sw_buffer_string(&row, row.length > 0 ? " " : "");
            sw_buffer_append(&row, cell);
        }
        at = cell.data + cell.length + 1;
    }
    if (!wanted || column <= COLUMN) {
        sw_buffer_free(&row);
        return;
    }
    list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
    list->items[list->count++] = row.data;
}

static rows rows_of(sw_slice text)
{
    rows list = {0};
    for (const char *at = text.data; at < text.data + text.length;) {
        const char *newline = memchr(at, '\n', (size_t)(text.data + text.length - at));
        const char *end = newline == NULL ? text.data + text.length : newline;
        add_row(&list, at, (size_t)(end - at));
        at = end + 1;
    }
    if (list.count > 1) {
        qsort(list.items, list.count, sizeof *list.items, compare);
    }
    return list;
}

static void free_rows(rows *list)
{
    for (size_t i = 0; i < list->count; i++) {
        free(list->items[i]);
    }
    free(list->items);
}

/* Prints each row that stands on one side only; returns how many. */
static size_t differences(const rows *truth, const rows *ours)
{
    size_t count = 0;
    size_t t = 0;
    size_t o = 0;
    while (t < truth->count || o < ours->count) {
        int order = t == truth->count ? 1 : o == ours->count ? -1 : strcmp(truth->items[t], ours->items[o]);
        if (order != 0) {
            printf("%s %s\n",
                   order < 0 ? "missing:" : "too many:", order < 0 ? truth->items[t] : ours->items[o]);
            count++;
        }
        t += order <= 0;
        o += order >= 0;
    }
    return count;
}

static void test_one(void **state)
{
    const char *path = *state;
    char *error = NULL;
    sw_reading *reading = sw_read(path, NULL, &error);
    assert_non_null(reading);
    sw_buffer events = {0};
    sw_report_events(reading, &events);
    sw_reading_free(reading);

    sw_buffer truth_path = {0};
    sw_buffer_format(&truth_path, "%.*s.truth.tsv", (int)(strlen(path) - strlen(".ly")), path);
    sw_text *truth = sw_text_read(sw_buffer_text(&truth_path), &error);
    assert_non_null(truth);
    rows wanted = rows_of((sw_slice){truth->bytes, truth->length});
    rows got = rows_of(sw_buffer_slice(&events));
    size_t wrong = differences(&wanted, &got);
    assert_true(wanted.count > 0);
    free_rows(&wanted);
    free_rows(&got);
    sw_text_free(truth);
    sw_buffer_free(&truth_path);
    sw_buffer_free(&events);
    assert_int_equal(wrong, 0);
}

int main(void)
{
    return run_for_sources("reading", folder, test_one, NULL, 0);
}
