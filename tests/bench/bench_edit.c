/* Measures a single edit, proof included, against the reading of the same source.
 * usage: bench_edit RUNS FILE...
 *
 * Prints a tab-separated row a file: path, bytes, seconds of the reading, seconds of an edit of one note in
 * the middle (planning, printing, reading the result, comparing); medians of RUNS runs, processor time. */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "stavewright/edit.h"

enum { MOST_RUNS = 99 };

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static int compare_seconds(const void *a, const void *b)
{
    double x = *(const double *)a;
    double y = *(const double *)b;
    return (x > y) - (x < y);
}

static double median(double *seconds, size_t runs)
{
    qsort(seconds, runs, sizeof *seconds, compare_seconds);
    return seconds[runs / 2];
}

static sw_reading *read_score(const char *path, double *seconds)
{
    char *error = NULL;
    double begin = now();
    sw_reading *reading = sw_read(path, NULL, &error);
    *seconds = now() - begin;
    if (reading == NULL) {
        fprintf(stderr, "%s\n", error);
        exit(2);
    }
    return reading;
}

/* The first score with a note, and a note in its middle. */
static const sw_score *find_note(const sw_reading *reading, uint32_t *event)
{
    for (size_t s = 0; s < reading->score_count; s++) {
        const sw_score *score = &reading->scores[s];
        for (uint32_t e = (uint32_t)score->event_count / 2; e < score->event_count; e++) {
            if (score->events[e].kind == SW_EVENT_NOTE) {
                *event = e;
                return score;
            }
        }
    }
    return NULL;
}

static double edit_note(sw_reading *reading, size_t run)
{
    sw_change change = {.kind = SW_CHANGE_PITCH};
    const sw_score *score = find_note(reading, &change.event);
    if (score == NULL) {
        return 0;
    }
    sw_pitch step = {(int8_t)(run % 5 + 1), 0, 0};
    change.pitch = sw_pitch_transpose(score->events[change.event].pitch, step);
    sw_reading *mains[] = {reading};
    sw_edit_request request = {.reading = reading,
                               .score = score,
                               .changes = &change,
                               .count = 1,
                               .elsewhere = SW_ELSEWHERE_FOLLOW,
                               .mains = mains,
                               .main_count = 1};
    sw_patch patch = {0};
    sw_buffer notes = {0};
    char *error = NULL;
    double begin = now();
    bool done = sw_edit_score(&request, &patch, &notes, &error);
    double seconds = now() - begin;
    if (!done) {
        fprintf(stderr, "%s\n", error);
        exit(2);
    }
    sw_patch_free(&patch);
    sw_buffer_free(&notes);
    return seconds;
}

int main(int argc, char **argv)
{
    size_t runs = argc > 1 ? strtoul(argv[1], NULL, 10) : 0;
    if (runs < 1 || runs > MOST_RUNS || argc < 3) {
        fputs("usage: bench_edit RUNS FILE...\n", stderr);
        return 2;
    }
    for (int i = 2; i < argc; i++) {
        double reading_seconds[MOST_RUNS];
        double edit_seconds[MOST_RUNS];
        size_t bytes = 0;
        for (size_t run = 0; run < runs; run++) {
            sw_reading *reading = read_score(argv[i], &reading_seconds[run]);
            edit_seconds[run] = edit_note(reading, run);
            bytes = 0;
            for (size_t f = 0; f < reading->file_count; f++) {
                bytes += reading->files[f].text->length;
            }
            sw_reading_free(reading);
        }
        printf("%s\t%zu\t%.6f\t%.6f\n", argv[i], bytes, median(reading_seconds, runs),
               median(edit_seconds, runs));
    }
    return 0;
}
