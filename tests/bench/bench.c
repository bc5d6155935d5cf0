/* Measures the reading of sources: time against the bare parse, and memory; and all rules against reading.
 * usage: bench RUNS FILE...
 *
 * Prints a tab-separated row a file: path, bytes (includes counted), events, seconds of the bare parse,
 * seconds of the full reading (medians of RUNS runs), bytes of memory that the music and the scores hold,
 * peak bytes of the process in the bare parse and in the full reading, seconds of the reading with all rules
 * of check. Every run is a process of its own, so that none finds the memory of another. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "stavewright/check.h"
#include "stavewright/score.h"
#include "stavewright/syntax.h"

typedef struct measure {
    double seconds;
    double bytes;
    double events;
    double memory;
    double peak;
} measure;

/* Processor time, as in sw_syntax_bare_parse: other programs must not count. */
static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static sw_reading *read_score(const char *path)
{
    char *error = NULL;
    sw_reading *reading = sw_read(path, NULL, &error);
    if (reading == NULL) {
        fprintf(stderr, "%s\n", error);
        exit(2);
    }
    return reading;
}

static measure measure_reading(const char *path)
{
    measure m = {0};
    double begin = now();
    sw_reading *reading = read_score(path);
    m.seconds = now() - begin;
    m.memory = (double)sw_reading_memory(reading);
    for (size_t i = 0; i < reading->file_count; i++) {
        m.bytes += reading->files[i].text->length;
    }
    for (size_t i = 0; i < reading->score_count; i++) {
        m.events += (double)reading->scores[i].event_count;
    }
    sw_reading_free(reading);
    return m;
}

/* Reads a score and runs all rules on it; what a film sets is loaded beforehand. */
static measure measure_check(const char *path)
{
    measure m = {0};
    char *error = NULL;
    sw_film *film = sw_check_film(NULL, (sw_slice){0}, &error);
    if (film == NULL) {
        fprintf(stderr, "%s\n", error);
        exit(2);
    }
    sw_check_options options = {.film = film};
    sw_findings findings = {0};
    sw_fixes fixes = {0};
    double begin = now();
    sw_reading *reading = read_score(path);
    sw_check_reading(reading, &options, &findings, &fixes);
    m.seconds = now() - begin;
    sw_findings_free(&findings);
    sw_fixes_free(&fixes);
    sw_reading_free(reading);
    sw_film_free(film);
    return m;
}

/* Parses the files that a full reading needs; which these are is found out beforehand. */
static measure measure_parse(char *const *paths, size_t count)
{
    measure m = {0};
    for (size_t i = 0; i < count; i++) {
        char *error = NULL;
        sw_text *text = sw_text_read(paths[i], &error);
        if (text == NULL) {
            fprintf(stderr, "%s\n", error);
            exit(2);
        }
        m.seconds += sw_syntax_bare_parse(text);
        sw_text_free(text);
    }
    return m;
}

typedef enum work { PARSE, READING, CHECK } work;

/* In a child process. `files`: those that a score is read from. */
static measure measure_apart(work kind, const char *path, char *const *files, size_t count)
{
    int ends[2];
    if (pipe(ends) != 0) {
        perror("pipe");
        exit(2);
    }
    pid_t child = fork();
    if (child == 0) {
        measure m = kind == PARSE     ? measure_parse(files, count)
                    : kind == READING ? measure_reading(path)
                                      : measure_check(path);
        struct rusage usage;
        getrusage(RUSAGE_SELF, &usage);
        m.peak = (double)usage.ru_maxrss * 1024;
        _exit(write(ends[1], &m, sizeof m) == (ssize_t)sizeof m ? 0 : 2);
    }
    measure m = {0};
    close(ends[1]);
    bool got = child > 0 && read(ends[0], &m, sizeof m) == (ssize_t)sizeof m;
    close(ends[0]);
    int status = 0;
    waitpid(child, &status, 0);
    if (!got || status != 0) {
        fprintf(stderr, "%s: the measurement failed\n", path);
        exit(2);
    }
    return m;
}

static int compare_seconds(const void *a, const void *b)
{
    double x = ((const measure *)a)->seconds;
    double y = ((const measure *)b)->seconds;
    return (x > y) - (x < y);
}

static measure median(measure *all, size_t runs)
{
    qsort(all, runs, sizeof *all, compare_seconds);
    return all[runs / 2];
}

/* The paths of all files that a score is read from. In a child too, so that the measuring process stays
 * small: the child prints one path a line. */
static char **files_of(const char *path, size_t *count)
{
    int ends[2];
    if (pipe(ends) != 0) {
        perror("pipe");
        exit(2);
    }
    pid_t child = fork();
    if (child == 0) {
        FILE *out = fdopen(ends[1], "w");
        sw_reading *reading = read_score(path);
        for (size_t i = 0; i < reading->file_count; i++) {
            fprintf(out, "%s\n", reading->files[i].text->path);
        }
        _exit(fclose(out) == 0 ? 0 : 2);
    }
    close(ends[1]);
    FILE *in = fdopen(ends[0], "r");
    char **paths = NULL;
    size_t capacity = 0;
    char line[4096];
    *count = 0;
    while (fgets(line, sizeof line, in) != NULL) {
        line[strcspn(line, "\n")] = '\0';
        paths = sw_grow(paths, *count, &capacity, sizeof *paths);
        paths[*count] = sw_alloc(strlen(line) + 1);
        strcpy(paths[(*count)++], line);
    }
    fclose(in);
    waitpid(child, NULL, 0);
    return paths;
}

int main(int count, char **arguments)
{
    if (count < 3 || atoi(arguments[1]) < 1) {
        fputs("usage: bench RUNS FILE...\n", stderr);
        return 2;
    }
    size_t runs = (size_t)atoi(arguments[1]);
    for (int i = 2; i < count; i++) {
        const char *path = arguments[i];
        size_t file_count;
        char **files = files_of(path, &file_count);
        /* In turn, so that a machine that slows down does so for all. */
        measure *parses = sw_alloc_zero(runs, sizeof *parses);
        measure *readings = sw_alloc_zero(runs, sizeof *readings);
        measure *checks = sw_alloc_zero(runs, sizeof *checks);
        for (size_t run = 0; run < runs; run++) {
            parses[run] = measure_apart(PARSE, path, files, file_count);
            readings[run] = measure_apart(READING, path, files, file_count);
            checks[run] = measure_apart(CHECK, path, files, file_count);
        }
        measure parse = median(parses, runs);
        measure reading = median(readings, runs);
        measure check = median(checks, runs);
        free(parses);
        free(readings);
        free(checks);
        printf("%s\t%.0f\t%.0f\t%.6f\t%.6f\t%.0f\t%.0f\t%.0f\t%.6f\n", path, reading.bytes, reading.events,
               parse.seconds, reading.seconds, reading.memory, parse.peak, reading.peak, check.seconds);
        for (size_t f = 0; f < file_count; f++) {
            free(files[f]);
        }
        free(files);
    }
    return 0;
}
