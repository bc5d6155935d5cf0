/* Sorting of what comes in a few runs that are in order already, as the notes of several voices do, one voice
 * after another: the runs are found and merged, two neighbours at a time (natural merge sort, Knuth, The Art
 * of Computer Programming, vol. 3, 5.2.4). */
#include <stdlib.h>
#include <string.h>

#include "stavewright/base.h"

typedef struct sorter {
    size_t size; /* of an element */
    int (*compare)(const void *a, const void *b, void *context);
    void *context;
} sorter;

/* Where the run that begins at `from` ends. */
static size_t run_end(const sorter *s, const char *items, size_t from, size_t count)
{
    size_t end = from + 1;
    while (end < count && s->compare(items + (end - 1) * s->size, items + end * s->size, s->context) <= 0) {
        end++;
    }
    return end;
}

static void copy(const sorter *s, const char *items, size_t from, char *to, size_t at)
{
    if (s->size == sizeof(uint32_t)) { /* numbers, which is usual */
        memcpy(to + at * sizeof(uint32_t), items + from * sizeof(uint32_t), sizeof(uint32_t));
    } else {
        memcpy(to + at * s->size, items + from * s->size, s->size);
    }
}

/* Merges [from, middle) and [middle, end) of `items` into the same place of `to`. */
static void merge(const sorter *s, const char *items, size_t from, size_t middle, size_t end, char *to)
{
    size_t left = from;
    size_t right = middle;
    size_t at = from;
    while (left < middle && right < end) {
        bool in_order = s->compare(items + left * s->size, items + right * s->size, s->context) <= 0;
        copy(s, items, in_order ? left++ : right++, to, at++);
    }
    memcpy(to + at * s->size, items + left * s->size, (middle - left) * s->size);
    at += middle - left;
    memcpy(to + at * s->size, items + right * s->size, (end - right) * s->size);
}

/* Merges the runs in pairs; returns how many runs there are then. ends[r] is where run r ends. */
static size_t merge_pairs(const sorter *s, const char *items, size_t *ends, size_t runs, char *to)
{
    size_t from = 0;
    for (size_t r = 0; r < runs; r += 2) {
        size_t end = ends[r + 1 < runs ? r + 1 : r];
        merge(s, items, from, ends[r], end, to);
        ends[r / 2] = end;
        from = end;
    }
    return (runs + 1) / 2;
}

void sw_sort_with(void *items, size_t count, size_t element_size,
                  int (*compare)(const void *a, const void *b, void *context), void *context)
{
    const sorter s = {element_size, compare, context};
    size_t end = count < 2 ? count : run_end(&s, items, 0, count);
    if (end == count) {
        return;
    }
    size_t *ends = NULL;
    size_t runs = 0;
    size_t capacity = 0;
    for (;;) {
        ends = sw_grow(ends, runs, &capacity, sizeof *ends);
        ends[runs++] = end;
        if (end == count) {
            break;
        }
        end = run_end(&s, items, end, count);
    }
    char *other = sw_alloc(count * element_size);
    char *from = items;
    for (char *to = other; runs > 1;) {
        runs = merge_pairs(&s, from, ends, runs, to);
        char *merged = to;
        to = from;
        from = merged;
    }
    if (from != items) {
        memcpy(items, from, count * element_size);
    }
    free(other);
    free(ends);
}

typedef struct plain {
    int (*compare)(const void *a, const void *b);
} plain;

static int compare_plain(const void *a, const void *b, void *context)
{
    return ((const plain *)context)->compare(a, b);
}

void sw_sort(void *items, size_t count, size_t element_size, int (*compare)(const void *a, const void *b))
{
    plain p = {compare};
    sw_sort_with(items, count, element_size, compare_plain, &p);
}
