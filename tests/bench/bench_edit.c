/* Measures edits, proof included, against the reading of the same source.
 * usage: bench_edit one|all|mixed RUNS FILE...
 *
 * one: a note in the middle changes. all: every note of the score changes. mixed: changes of many kinds,
 * one for every second chord or rest of the score, as a transformation of a whole cue makes them.
 * Prints a tab-separated row a file: path, bytes, seconds of the reading, seconds of the edit (planning,
 * printing, reading the result, comparing), number of changes; medians of RUNS runs, processor time. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "clock.h"
#include "stavewright/edit.h"

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

/* ---- what changes ---- */

typedef struct plan {
    const sw_score *score;
    sw_change *changes;
    size_t count;
    size_t run; /* another pitch in every run */
} plan;

static void add(plan *p, sw_change change)
{
    p->changes[p->count++] = change;
}

static sw_pitch moved(const plan *p, uint32_t event)
{
    const sw_pitch step = {(int8_t)(p->run % 5 + 1), 0, 0};
    return sw_pitch_transpose(p->score->events[event].pitch, step);
}

static void plan_one(plan *p)
{
    for (uint32_t e = (uint32_t)p->score->event_count / 2; e < p->score->event_count; e++) {
        if (p->score->events[e].kind == SW_EVENT_NOTE) {
            add(p, (sw_change){.kind = SW_CHANGE_PITCH, .event = e, .pitch = moved(p, e)});
            return;
        }
    }
}

static void plan_all(plan *p)
{
    for (uint32_t e = 0; e < p->score->event_count; e++) {
        if (p->score->events[e].kind == SW_EVENT_NOTE) {
            add(p, (sw_change){.kind = SW_CHANGE_PITCH, .event = e, .pitch = moved(p, e)});
        }
    }
}

/* A single note without ties, in time: all kinds of changes can be made of it. */
static bool is_plain(const sw_reading *reading, const sw_score *score, uint32_t e)
{
    const sw_event *event = &score->events[e];
    bool plain = event->kind == SW_EVENT_NOTE && event->chord == event->music &&
                 reading->music[event->music].kind == SW_MUSIC_NOTE &&
                 (event->flags & (SW_EVENT_GRACE | SW_EVENT_CUE)) == 0 &&
                 sw_rational_equal(event->duration,
                                   sw_duration_length(sw_music_duration(&reading->music[event->music])));
    for (uint32_t c = reading->music[event->music].first; plain && c != SW_NO_INDEX;
         c = reading->music[c].next) {
        plain = sw_music_mark_class(reading, c) != SW_MARK_TREMOLO;
    }
    bool tied = (e > 0 && score->events[e - 1].voice == event->voice &&
                 sw_pitch_equal(score->events[e - 1].pitch, event->pitch));
    return plain && !tied &&
           !(e + 1 < score->event_count && score->events[e + 1].voice == event->voice &&
             sw_pitch_equal(score->events[e + 1].pitch, event->pitch));
}

/* Pitches can't be written among strokes of percussion. */
static bool is_drums(const sw_reading *reading, const sw_score *score, uint32_t e)
{
    const sw_staff *staff = &score->staves[score->voices[score->events[e].voice].staff];
    return strcmp(sw_reading_name(reading, staff->type), "DrumStaff") == 0;
}

static void plan_mixed(plan *p, const sw_reading *reading)
{
    static const sw_change_kind kinds[] = {SW_CHANGE_PITCH, SW_CHANGE_ADD_MARK, SW_CHANGE_END,
                                           SW_CHANGE_SPLIT, SW_CHANGE_ADD_NOTE, SW_CHANGE_SILENCE,
                                           SW_CHANGE_TIE};
    static const sw_pitch fill = {4, 0, 0};
    size_t turn = 0;
    for (uint32_t e = 0; e < p->score->event_count; e += 2) {
        const sw_event *event = &p->score->events[e];
        sw_rational half =
            sw_rational_add(event->onset, sw_rational_mul(event->duration, sw_rational_make(1, 2)));
        if (is_plain(reading, p->score, e)) {
            sw_change change = {.kind = kinds[turn++ % (sizeof kinds / sizeof kinds[0])],
                                .event = e,
                                .pitch = moved(p, e),
                                .moment = half,
                                .text = "-."};
            add(p, change);
        } else if (event->kind == SW_EVENT_REST && !is_drums(reading, p->score, e)) {
            add(p, (sw_change){.kind = SW_CHANGE_FILL,
                               .event = e,
                               .moment = half,
                               .until = sw_event_end(event),
                               .pitches = &fill,
                               .pitch_count = 1});
        }
    }
}

static double edit(sw_reading *reading, const char *mode, size_t run, size_t *count)
{
    plan p = {.run = run};
    for (size_t s = 0; s < reading->score_count && p.score == NULL; s++) {
        p.score = reading->scores[s].event_count > 0 ? &reading->scores[s] : NULL;
    }
    if (p.score == NULL) {
        return 0;
    }
    p.changes = calloc(p.score->event_count + 1, sizeof *p.changes);
    if (strcmp(mode, "one") == 0) {
        plan_one(&p);
    } else if (strcmp(mode, "all") == 0) {
        plan_all(&p);
    } else {
        plan_mixed(&p, reading);
    }
    sw_reading *mains[] = {reading};
    sw_edit_request request = {.reading = reading,
                               .score = p.score,
                               .changes = p.changes,
                               .count = p.count,
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
    free(p.changes);
    *count = p.count;
    return seconds;
}

int main(int argc, char **argv)
{
    const char *mode = argc > 1 ? argv[1] : "";
    size_t runs = argc > 2 ? strtoul(argv[2], NULL, 10) : 0;
    bool known = strcmp(mode, "one") == 0 || strcmp(mode, "all") == 0 || strcmp(mode, "mixed") == 0;
    if (!known || runs < 1 || runs > MOST_RUNS || argc < 4) {
        fputs("usage: bench_edit one|all|mixed RUNS FILE...\n", stderr);
        return 2;
    }
    for (int i = 3; i < argc; i++) {
        double reading_seconds[MOST_RUNS];
        double edit_seconds[MOST_RUNS];
        size_t bytes = 0;
        size_t count = 0;
        for (size_t run = 0; run < runs; run++) {
            sw_reading *reading = read_score(argv[i], &reading_seconds[run]);
            edit_seconds[run] = edit(reading, mode, run, &count);
            bytes = 0;
            for (size_t f = 0; f < reading->file_count; f++) {
                bytes += reading->files[f].text->length;
            }
            sw_reading_free(reading);
        }
        printf("%s\t%zu\t%.6f\t%.6f\t%zu\n", argv[i], bytes, median(reading_seconds, runs),
               median(edit_seconds, runs), count);
    }
    return 0;
}
