/* Processor time, and the middle one of several measurements. */
#ifndef SW_BENCH_CLOCK_H
#define SW_BENCH_CLOCK_H

#include <stdlib.h>
#include <time.h>

enum { MOST_RUNS = 99 };

/* Seconds of processor time that this process has used. */
static inline double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static inline int compare_seconds(const void *a, const void *b)
{
    double x = *(const double *)a;
    double y = *(const double *)b;
    return (x > y) - (x < y);
}

/* Sorts the measurements. */
static inline double median(double *seconds, size_t runs)
{
    qsort(seconds, runs, sizeof *seconds, compare_seconds);
    return seconds[runs / 2];
}

#endif
