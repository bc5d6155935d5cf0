#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "stavewright/base.h"

enum { BLOCK_SIZE = 16384 };

typedef struct block {
    struct block *next;
    size_t used;
    size_t size;
    max_align_t bytes[];
} block;

struct sw_arena {
    block *blocks;
    size_t total;
};

sw_arena *sw_arena_new(void)
{
    return sw_alloc_zero(1, sizeof(sw_arena));
}

void sw_arena_free(sw_arena *arena)
{
    if (arena == NULL) {
        return;
    }
    for (block *b = arena->blocks; b != NULL;) {
        block *next = b->next;
        free(b);
        b = next;
    }
    free(arena);
}

void *sw_arena_alloc(sw_arena *arena, size_t size)
{
    size_t rounded = (size + sizeof(max_align_t) - 1) / sizeof(max_align_t) * sizeof(max_align_t);
    block *b = arena->blocks;
    if (b == NULL || b->size - b->used < rounded) {
        size_t room = rounded > BLOCK_SIZE ? rounded : BLOCK_SIZE;
        b = sw_alloc(sizeof(block) + room);
        b->used = 0;
        b->size = room;
        b->next = arena->blocks;
        arena->blocks = b;
        arena->total += sizeof(block) + room;
    }
    void *memory = (char *)b->bytes + b->used;
    b->used += rounded;
    memset(memory, 0, size);
    return memory;
}

char *sw_arena_copy(sw_arena *arena, sw_slice text)
{
    char *copy = sw_arena_alloc(arena, text.length + 1);
    if (text.length > 0) {
        memcpy(copy, text.data, text.length);
    }
    return copy;
}

char *sw_arena_format(sw_arena *arena, const char *format, ...)
{
    sw_buffer buffer = {0};
    va_list arguments;
    va_start(arguments, format);
    sw_buffer_vformat(&buffer, format, arguments);
    va_end(arguments);
    char *copy = sw_arena_copy(arena, sw_buffer_slice(&buffer));
    sw_buffer_free(&buffer);
    return copy;
}

size_t sw_arena_size(const sw_arena *arena)
{
    return arena->total;
}
