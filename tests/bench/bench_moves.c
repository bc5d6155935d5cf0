/* Measures transformations of a bar range, the proof included, against the reading of the same cue.
 * usage: bench_moves RUNS BARS FILE      BARS as in 40-60
 *
 * FILE has the staves of the demo film. Prints a tab-separated row a transformation: its name, seconds of the
 * reading, seconds of the transformation (reading, planning, printing, reading the result, comparing), bytes
 * that change; medians of RUNS runs, processor time. One that changes nothing is an error: it measures
 * nothing. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "clock.h"
#include "stavewright/check.h"
#include "stavewright/move.h"

static const sw_film *film;
static sw_bar_range bars;

/* ---- the transformations --------------------------------------------------------------------------------
 */

static sw_move *courtesy(const char *path, char **error)
{
    const sw_courtesy_options options = {.places.bars = bars, .value = sw_rational_zero(), .film = film};
    return sw_move_courtesy(path, &options, NULL, error);
}

static sw_move *breaths(const char *path, char **error)
{
    const sw_breaths_options options = {.places.bars = bars, .rest = sw_rational_zero(), .film = film};
    return sw_move_breaths(path, &options, NULL, error);
}

static sw_move *ring(const char *path, char **error)
{
    const sw_ring_options options = {.places.bars = bars, .film = film};
    return sw_move_ring(path, &options, NULL, error);
}

static sw_move *stagger(const char *path, char **error)
{
    const sw_stagger_options options = {.places.bars = bars, .film = film};
    return sw_move_stagger(path, &options, NULL, error);
}

static sw_move *octave(const char *path, char **error)
{
    const sw_octave_options options = {
        .places = {.staff = "cello", .bars = bars}, .into = "violin", .fold = true, .film = film};
    return sw_move_octave(path, &options, NULL, error);
}

static sw_move *give(const char *path, char **error)
{
    const sw_give_options options = {
        .places = {.staff = "flute1", .bars = bars}, .to = "oboe2", .over = true, .film = film};
    return sw_move_give(path, &options, NULL, error);
}

static sw_move *duplicate(const char *path, char **error)
{
    const sw_give_options options = {
        .places = {.staff = "cello", .bars = bars}, .to = "viola", .over = true, .keep = true, .film = film};
    return sw_move_give(path, &options, NULL, error);
}

static sw_move *divisi(const char *path, char **error)
{
    const sw_divisi_options options = {.places = {.staff = "viola", .bars = bars}, .film = film};
    return sw_move_divisi(path, &options, NULL, error);
}

static sw_move *hands(const char *path, char **error)
{
    const sw_hands_options options = {.staff = "harp1", .bars = bars, .film = film};
    return sw_move_hands(path, &options, NULL, error);
}

/* ---- measuring ------------------------------------------------------------------------------------------
 */

static double reading_seconds(const char *path)
{
    char *error = NULL;
    double begin = now();
    sw_reading *reading = sw_read(path, NULL, &error);
    double seconds = now() - begin;
    if (reading == NULL) {
        fprintf(stderr, "%s\n", error);
        exit(2);
    }
    sw_reading_free(reading);
    return seconds;
}

static double move_seconds(const char *name, sw_move *(*make)(const char *path, char **error),
                           const char *path, size_t *bytes)
{
    char *error = NULL;
    double begin = now();
    sw_move *move = make(path, &error);
    double seconds = now() - begin;
    if (move == NULL || move->patch.count == 0) {
        fprintf(stderr, "%s: %s\n", name, move == NULL ? error : "nothing changes");
        exit(2);
    }
    *bytes = 0;
    for (size_t i = 0; i < move->patch.count; i++) {
        for (size_t k = 0; k < move->patch.files[i].edits.count; k++) {
            *bytes += move->patch.files[i].edits.items[k].length;
        }
    }
    sw_move_free(move);
    return seconds;
}

int main(int count, char **words)
{
    static const struct {
        const char *name;
        sw_move *(*make)(const char *path, char **error);
    } moves[] = {{"courtesy", courtesy}, {"breaths", breaths}, {"ring", ring},
                 {"stagger", stagger},   {"octave", octave},   {"give", give},
                 {"double", duplicate},  {"divisi", divisi},   {"hands", hands}};
    size_t runs = count == 4 ? strtoull(words[1], NULL, 10) : 0;
    if (runs < 1 || runs > MOST_RUNS || !sw_bar_range_parse(words[2], &bars)) {
        fprintf(stderr, "usage: bench_moves RUNS BARS FILE\n");
        return 2;
    }
    char *error = NULL;
    sw_film *defaults = sw_check_film(NULL, (sw_slice){0}, &error);
    film = defaults;
    for (size_t m = 0; m < sizeof moves / sizeof moves[0]; m++) {
        double reading[MOST_RUNS];
        double move[MOST_RUNS];
        size_t bytes = 0;
        for (size_t r = 0; r < runs; r++) {
            reading[r] = reading_seconds(words[3]);
            move[r] = move_seconds(moves[m].name, moves[m].make, words[3], &bytes);
        }
        printf("%s\t%.6f\t%.6f\t%zu\n", moves[m].name, median(reading, runs), median(move, runs), bytes);
    }
    sw_film_free(defaults);
    return 0;
}
