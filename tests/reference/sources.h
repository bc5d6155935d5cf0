/* A group of tests made of the sources in a folder. Include it behind cmocka.h. */
#ifndef SW_TESTS_SOURCES_H
#define SW_TESTS_SOURCES_H

#include <glob.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "stavewright/base.h"
#include "stavewright/rational.h"

/* Reads "3/4" or "2". */
static inline bool read_fraction(const char *text, sw_rational *fraction)
{
    char *end;
    long long num = strtoll(text, &end, 10);
    long long den = *end == '/' ? strtoll(end + 1, &end, 10) : 1;
    *fraction = sw_rational_make(num, den);
    return *end == '\0' && end > text && den > 0;
}

/* Splits a line at its tabs and keeps the first `count` cells. False when there are fewer. */
static inline bool split_row(char *line, char **cells, size_t count)
{
    size_t found = 0;
    for (char *cell; found < count && (cell = strsep(&line, "\t")) != NULL;) {
        cells[found++] = cell;
    }
    return found == count;
}

/* The path of the stored answer beside a source: NAME.ly -> NAME.ENDING. Returns `answer`. */
static inline const char *answer_of(const char *path, const char *ending, char answer[256])
{
    snprintf(answer, 256, "%.*s.%s", (int)(strlen(path) - strlen(".ly")), path, ending);
    return answer;
}

/* Runs `test_one` with the path of each .ly file of the folder as its state, then the other tests; returns
 * how many fail. */
static inline int run_for_sources(const char *group, const char *folder, CMUnitTestFunction test_one,
                                  const struct CMUnitTest *others, size_t other_count)
{
    char pattern[256];
    glob_t found;
    snprintf(pattern, sizeof pattern, "%s/*.ly", folder);
    if (glob(pattern, 0, NULL, &found) != 0) {
        printf("no sources in %s: run this from the root of the repository\n", folder);
        return 1;
    }
    struct CMUnitTest *tests = sw_alloc_zero(found.gl_pathc + other_count, sizeof *tests);
    for (size_t i = 0; i < found.gl_pathc; i++) {
        tests[i] = (struct CMUnitTest){
            .name = found.gl_pathv[i], .test_func = test_one, .initial_state = found.gl_pathv[i]};
    }
    for (size_t i = 0; i < other_count; i++) {
        tests[found.gl_pathc + i] = others[i];
    }
    int failed = _cmocka_run_group_tests(group, tests, found.gl_pathc + other_count, NULL, NULL);
    free(tests);
    globfree(&found);
    return failed;
}

#endif
