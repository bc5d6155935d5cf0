#include <stdlib.h>
#include <string.h>

#include "stavewright/base.h"

/* Open addressing over a table of numbers + 1 (0 = free); the strings live in an arena. */
struct sw_names {
    sw_arena *arena;
    sw_slice *texts;
    size_t count;
    size_t capacity;
    uint32_t *slots;
    size_t slot_count; /* a power of two, at most half full */
};

static uint64_t hash(sw_slice text)
{
    uint64_t h = 14695981039346656037u; /* FNV-1a */
    for (size_t i = 0; i < text.length; i++) {
        h = (h ^ (unsigned char)text.data[i]) * 1099511628211u;
    }
    return h ^ h >> 29;
}

static size_t slot_of(const sw_names *names, sw_slice text)
{
    size_t mask = names->slot_count - 1;
    size_t slot = (size_t)hash(text) & mask;
    while (names->slots[slot] != 0 && !sw_slice_equal(names->texts[names->slots[slot] - 1], text)) {
        slot = (slot + 1) & mask;
    }
    return slot;
}

static void rehash(sw_names *names, size_t slot_count)
{
    free(names->slots);
    names->slot_count = slot_count;
    names->slots = sw_alloc_zero(slot_count, sizeof *names->slots);
    for (size_t i = 0; i < names->count; i++) {
        names->slots[slot_of(names, names->texts[i])] = (uint32_t)i + 1;
    }
}

sw_names *sw_names_new(void)
{
    sw_names *names = sw_alloc_zero(1, sizeof *names);
    names->arena = sw_arena_new();
    rehash(names, 64);
    sw_names_add(names, sw_slice_of(""));
    return names;
}

sw_names *sw_names_copy(const sw_names *names)
{
    sw_names *copy = sw_alloc(sizeof *copy);
    *copy = *names;
    copy->arena = sw_arena_new();
    copy->capacity = names->count;
    copy->texts = sw_alloc(names->count * sizeof *copy->texts);
    copy->slots = sw_alloc(names->slot_count * sizeof *copy->slots);
    memcpy(copy->slots, names->slots, names->slot_count * sizeof *copy->slots);
    for (size_t i = 0; i < names->count; i++) {
        copy->texts[i] = (sw_slice){sw_arena_copy(copy->arena, names->texts[i]), names->texts[i].length};
    }
    return copy;
}

void sw_names_free(sw_names *names)
{
    if (names == NULL) {
        return;
    }
    sw_arena_free(names->arena);
    free(names->texts);
    free(names->slots);
    free(names);
}

uint32_t sw_names_add(sw_names *names, sw_slice text)
{
    size_t slot = slot_of(names, text);
    if (names->slots[slot] != 0) {
        return names->slots[slot] - 1;
    }
    names->texts = sw_grow(names->texts, names->count, &names->capacity, sizeof *names->texts);
    names->texts[names->count] = (sw_slice){sw_arena_copy(names->arena, text), text.length};
    names->slots[slot] = (uint32_t)++names->count;
    uint32_t number = (uint32_t)names->count - 1;
    if (names->count * 2 > names->slot_count) {
        rehash(names, names->slot_count * 2);
    }
    return number;
}

uint32_t sw_names_find(const sw_names *names, sw_slice text)
{
    uint32_t number = names->slots[slot_of(names, text)];
    return number == 0 ? UINT32_MAX : number - 1;
}

const char *sw_names_text(const sw_names *names, uint32_t name)
{
    return name < names->count ? names->texts[name].data : "";
}

uint32_t sw_names_count(const sw_names *names)
{
    return (uint32_t)names->count;
}
