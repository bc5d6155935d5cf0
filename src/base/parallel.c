#include "base/parallel.h"

#include <pthread.h>
#include <sched.h>
#include <stdatomic.h>
#include <stdbool.h>

enum {
    MOST_THREADS = 64,
    STACK = 16 << 20 /* bytes: scores nest deeply, and a thread's own default is the user's */
};

typedef struct pool {
    size_t count;
    void (*work)(void *context, size_t n);
    void *context;
    atomic_size_t next;
} pool;

/* Work that shares itself out once more has its threads already. */
static _Thread_local bool shared_out;

static void *run(void *data)
{
    pool *p = data;
    bool outer = shared_out;
    shared_out = true;
    for (size_t n = atomic_fetch_add(&p->next, 1); n < p->count; n = atomic_fetch_add(&p->next, 1)) {
        p->work(p->context, n);
    }
    shared_out = outer;
    return NULL;
}

static size_t processors(void)
{
    cpu_set_t allowed;
    return sched_getaffinity(0, sizeof allowed, &allowed) == 0 ? (size_t)CPU_COUNT(&allowed) : 1;
}

void sw_parallel(size_t count, void (*work)(void *context, size_t n), void *context)
{
    pool p = {.count = count, .work = work, .context = context};
    pthread_t threads[MOST_THREADS];
    size_t wanted = shared_out ? 1 : processors();
    wanted = wanted < count ? wanted : count;
    wanted = wanted < MOST_THREADS ? wanted : MOST_THREADS;
    size_t made = 0;
    pthread_attr_t attributes;
    if (wanted > 1 && pthread_attr_init(&attributes) == 0) {
        pthread_attr_setstacksize(&attributes, STACK);
        /* This thread works, too; where no other can be made it does everything. */
        while (made + 1 < wanted && pthread_create(&threads[made], &attributes, run, &p) == 0) {
            made++;
        }
        pthread_attr_destroy(&attributes);
    }
    run(&p);
    for (size_t i = 0; i < made; i++) {
        pthread_join(threads[i], NULL);
    }
}
