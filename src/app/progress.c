#include "app/progress.h"

#include <pthread.h>
#include <stdatomic.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "stavewright/base.h"

enum { PAUSE = 500000000 /* nanoseconds from line to line */ };

struct sw_progress {
    const char *what;
    size_t total;
    atomic_size_t done;
    bool told; /* by a thread of its own, so that a single long file does not keep it silent */
    pthread_t teller;
    pthread_mutex_t guard;
    pthread_cond_t change;
    bool over;
};

static struct timespec later(void)
{
    struct timespec time;
    clock_gettime(CLOCK_REALTIME, &time);
    time.tv_nsec += PAUSE;
    time.tv_sec += time.tv_nsec / 1000000000;
    time.tv_nsec %= 1000000000;
    return time;
}

static void *tell(void *data)
{
    sw_progress *p = data;
    bool shown = false;
    pthread_mutex_lock(&p->guard);
    while (!p->over) {
        struct timespec until = later();
        pthread_cond_timedwait(&p->change, &p->guard, &until);
        if (!p->over) {
            fprintf(stderr, "\r%s: %zu of %zu files ", p->what, atomic_load(&p->done), p->total);
            shown = true;
        }
    }
    pthread_mutex_unlock(&p->guard);
    if (shown) {
        fputs("\r\033[K", stderr);
    }
    return NULL;
}

sw_progress *sw_progress_begin(const char *what, size_t total, bool quiet)
{
    sw_progress *p = sw_alloc_zero(1, sizeof *p);
    p->what = what;
    p->total = total;
    if (!quiet && isatty(STDERR_FILENO)) {
        pthread_mutex_init(&p->guard, NULL);
        pthread_cond_init(&p->change, NULL);
        p->told = pthread_create(&p->teller, NULL, tell, p) == 0;
    }
    return p;
}

void sw_progress_step(sw_progress *progress)
{
    atomic_fetch_add(&progress->done, 1);
}

void sw_progress_tell(void *progress)
{
    sw_progress_step(progress);
}

void sw_progress_end(sw_progress *p)
{
    if (p->told) {
        pthread_mutex_lock(&p->guard);
        p->over = true;
        pthread_cond_signal(&p->change);
        pthread_mutex_unlock(&p->guard);
        pthread_join(p->teller, NULL);
    }
    free(p);
}

bool sw_wants_colours(int stream)
{
    const char *refused = getenv("NO_COLOR");
    const char *terminal = getenv("TERM");
    return (refused == NULL || refused[0] == '\0') && terminal != NULL && strcmp(terminal, "dumb") != 0 &&
           isatty(stream);
}
