/* Building blocks that know no music: arena, growable arrays, slices of bytes, text buffer, string interning.
 *
 * Memory: running out of memory ends the program with a message (a batch tool cannot do better), so no
 * function here returns NULL for lack of memory. */
#ifndef STAVEWRIGHT_BASE_H
#define STAVEWRIGHT_BASE_H

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

/* ---- slices of bytes: never own, never NUL-terminated ------------------------------------------------ */

typedef struct sw_slice {
    const char *data;
    size_t length;
} sw_slice;

/* These five are inline, so that the length of a string that the source says is known to the compiler: every
 * word of a score is compared with some of them. */

/* A slice over a NUL-terminated string (NULL gives the empty slice). */
static inline sw_slice sw_slice_of(const char *text)
{
    return (sw_slice){text, text == NULL ? 0 : strlen(text)};
}

/* True when both hold the same bytes. */
static inline bool sw_slice_equal(sw_slice a, sw_slice b)
{
    return a.length == b.length && (a.length == 0 || memcmp(a.data, b.data, a.length) == 0);
}

/* True when the slice holds exactly the bytes of a NUL-terminated string. */
static inline bool sw_slice_is(sw_slice a, const char *text)
{
    return sw_slice_equal(a, sw_slice_of(text));
}

/* True when the slice begins (ends) with the bytes of a NUL-terminated string. */
static inline bool sw_slice_starts(sw_slice a, const char *text)
{
    size_t length = strlen(text);
    return a.length >= length && (length == 0 || memcmp(a.data, text, length) == 0);
}

static inline bool sw_slice_ends(sw_slice a, const char *text)
{
    size_t length = strlen(text);
    return a.length >= length && (length == 0 || memcmp(a.data + a.length - length, text, length) == 0);
}

/* Order of bytes, shorter first when one is the beginning of the other: <0, 0, >0. */
int sw_slice_compare(sw_slice a, sw_slice b);
/* The slice from byte `start` on; empty behind its end. */
sw_slice sw_slice_from(sw_slice a, size_t start);
/* The slice without white space at both ends. */
sw_slice sw_slice_trim(sw_slice a);

/* ---- arena: many small allocations, freed together ---- */

typedef struct sw_arena sw_arena;

sw_arena *sw_arena_new(void);
/* Frees the arena and all that came from it; NULL is allowed. */
void sw_arena_free(sw_arena *arena);
/* Zeroed memory, aligned for any type, valid until the arena is freed. */
void *sw_arena_alloc(sw_arena *arena, size_t size);
/* A NUL-terminated copy in the arena. */
char *sw_arena_copy(sw_arena *arena, sw_slice text);
/* A formatted NUL-terminated string in the arena. */
char *sw_arena_format(sw_arena *arena, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* Bytes taken from the system so far. */
size_t sw_arena_size(const sw_arena *arena);

/* ---- checked memory and growable arrays ---- */

/* malloc, calloc and realloc that never return NULL. Free with free(). */
void *sw_alloc(size_t size);
void *sw_alloc_zero(size_t count, size_t size);
void *sw_realloc(void *memory, size_t size);

/* What sw_grow does when there is no room. */
void *sw_grow_more(void *items, size_t *capacity, size_t element_size);
/* Room for one more element: returns `items`, moved to a larger block when `count` has reached `*capacity`.
 * Use: list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items). */
static inline void *sw_grow(void *items, size_t count, size_t *capacity, size_t element_size)
{
    return count < *capacity ? items : sw_grow_more(items, capacity, element_size);
}
/* Sorts what mostly stands in order already, or in a few runs that do: then little more is done than to look
 * at it. What is equal stays in its order. `items` may be NULL when there are none. */
void sw_sort(void *items, size_t count, size_t element_size, int (*compare)(const void *a, const void *b));
/* The same; `context` is handed to `compare`. */
void sw_sort_with(void *items, size_t count, size_t element_size,
                  int (*compare)(const void *a, const void *b, void *context), void *context);

/* ---- text buffer: growable, always NUL-terminated, may hold NULs --------------------------------------- */

typedef struct sw_buffer {
    char *data; /* never NULL after the first append; `length` bytes and a NUL behind them */
    size_t length;
    size_t capacity;
} sw_buffer;

void sw_buffer_append(sw_buffer *buffer, sw_slice text);
void sw_buffer_string(sw_buffer *buffer, const char *text);
void sw_buffer_char(sw_buffer *buffer, char c);
void sw_buffer_format(sw_buffer *buffer, const char *format, ...) __attribute__((format(printf, 2, 3)));
void sw_buffer_vformat(sw_buffer *buffer, const char *format, va_list arguments);
sw_slice sw_buffer_slice(const sw_buffer *buffer);
/* The bytes, NUL-terminated, never NULL; valid until the buffer changes. */
const char *sw_buffer_text(const sw_buffer *buffer);
void sw_buffer_clear(sw_buffer *buffer);
/* Frees the memory and leaves an empty buffer. */
void sw_buffer_free(sw_buffer *buffer);

/* ---- interning: equal strings get equal small numbers ---- */

typedef struct sw_names sw_names;

sw_names *sw_names_new(void);
/* The same strings under the same numbers. */
sw_names *sw_names_copy(const sw_names *names);
void sw_names_free(sw_names *names);
/* The number of a string: 0 for the empty one, the same number for the same bytes each time. */
uint32_t sw_names_add(sw_names *names, sw_slice text);
/* The number of a string when it is known, otherwise UINT32_MAX. */
uint32_t sw_names_find(const sw_names *names, sw_slice text);
/* The string of a number, NUL-terminated, owned by the table. */
const char *sw_names_text(const sw_names *names, uint32_t name);
/* How many numbers are given out: valid numbers are 0 .. count-1. */
uint32_t sw_names_count(const sw_names *names);

#endif
