#include "base/memo.h"

#include <pthread.h>
#include <stdlib.h>
#include <string.h>

struct sw_memo {
    pthread_mutex_t lock;
    sw_names *texts;
    const void **answers; /* by number of the text */
    size_t capacity;
    sw_arena *arena;
};

sw_memo *sw_memo_new(void)
{
    sw_memo *memo = sw_alloc_zero(1, sizeof *memo);
    pthread_mutex_init(&memo->lock, NULL);
    memo->texts = sw_names_new();
    memo->arena = sw_arena_new();
    return memo;
}

void sw_memo_free(sw_memo *memo)
{
    if (memo == NULL) {
        return;
    }
    sw_arena_free(memo->arena);
    sw_names_free(memo->texts);
    free(memo->answers);
    pthread_mutex_destroy(&memo->lock);
    free(memo);
}

/* The place of a text's answer. The lock is held. */
static const void **place_of(sw_memo *memo, sw_slice text)
{
    size_t number = sw_names_add(memo->texts, text);
    size_t before = memo->capacity;
    if (number >= before) {
        memo->answers = sw_grow(memo->answers, number, &memo->capacity, sizeof *memo->answers);
        memset(memo->answers + before, 0, (memo->capacity - before) * sizeof *memo->answers);
    }
    return &memo->answers[number];
}

const void *sw_memo_find(sw_memo *memo, sw_slice text)
{
    pthread_mutex_lock(&memo->lock);
    const void *answer = *place_of(memo, text);
    pthread_mutex_unlock(&memo->lock);
    return answer;
}

void sw_memo_keep(sw_memo *memo, sw_slice text, const void *answer, size_t size)
{
    pthread_mutex_lock(&memo->lock);
    const void **place = place_of(memo, text);
    if (*place == NULL) {
        void *kept = sw_arena_alloc(memo->arena, size);
        memcpy(kept, answer, size);
        *place = kept;
    }
    pthread_mutex_unlock(&memo->lock);
}
