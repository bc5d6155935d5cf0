#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "stavewright/base.h"

static void *checked(void *memory, size_t size)
{
    if (memory == NULL && size != 0) {
        fprintf(stderr, "stavewright: out of memory (%zu bytes wanted)\n", size);
        abort();
    }
    return memory;
}

void *sw_alloc(size_t size)
{
    return checked(malloc(size), size);
}

void *sw_alloc_zero(size_t count, size_t size)
{
    return checked(calloc(count, size), count == 0 ? 0 : size); /* the product might overflow */
}

void *sw_realloc(void *memory, size_t size)
{
    return checked(realloc(memory, size), size);
}

void *sw_grow_more(void *items, size_t *capacity, size_t element_size)
{
    size_t larger = *capacity < 8 ? 8 : *capacity + *capacity / 2;
    if (larger > SIZE_MAX / element_size) {
        checked(NULL, SIZE_MAX);
    }
    *capacity = larger;
    return sw_realloc(items, larger * element_size);
}
