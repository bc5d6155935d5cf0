/* The order in which a score keeps its events. */
#include <stdlib.h>

#include "score/player.h"

/* By time with its grace offset; among equals the order of the walk, which is that of the events before
 * sorting, decides. */
static int compare_times(const void *a, const void *b, void *context)
{
    const sw_score *score = context;
    const sw_event *x = &score->events[*(const uint32_t *)a];
    const sw_event *y = &score->events[*(const uint32_t *)b];
    int order = sw_rational_compare(x->onset, y->onset);
    if (order == 0 && (x->grace_num != 0 || y->grace_num != 0)) {
        order = sw_rational_compare((sw_rational){x->grace_num, x->grace_den},
                                    (sw_rational){y->grace_num, y->grace_den});
    }
    if (order != 0) {
        return order;
    }
    return *(const uint32_t *)a < *(const uint32_t *)b ? -1 : 1;
}

static int compare_voices(const void *a, const void *b, void *context)
{
    const sw_score *score = context;
    uint32_t x = *(const uint32_t *)a;
    uint32_t y = *(const uint32_t *)b;
    if (score->voices[x].staff != score->voices[y].staff) {
        return score->voices[x].staff < score->voices[y].staff ? -1 : 1;
    }
    return x < y ? -1 : x > y;
}

/* Where the events of each voice begin, when the voices stand staff by staff. */
static size_t *voice_places(sw_score *score)
{
    size_t *places = sw_alloc_zero(score->voice_count + 1, sizeof *places);
    uint32_t *voices = sw_alloc((score->voice_count + 1) * sizeof *voices);
    for (uint32_t v = 0; v < score->voice_count; v++) {
        voices[v] = v;
    }
    qsort_r(voices, score->voice_count, sizeof *voices, compare_voices, score);
    for (size_t i = 0; i < score->event_count; i++) {
        places[score->events[i].voice]++; /* so far, how many */
    }
    size_t place = 0;
    for (size_t v = 0; v < score->voice_count; v++) {
        size_t count = places[voices[v]];
        places[voices[v]] = place;
        place += count;
    }
    free(voices);
    return places;
}

static bool in_order(const sw_score *score)
{
    for (uint32_t i = 1; i < score->event_count; i++) {
        uint32_t before = i - 1;
        uint32_t x = score->events[before].voice;
        uint32_t y = score->events[i].voice;
        if (x == y ? compare_times(&before, &i, (void *)score) > 0
                   : compare_voices(&x, &y, (void *)score) > 0) {
            return false;
        }
    }
    return true;
}

static uint32_t *event_order(sw_score *score)
{
    uint32_t *order = sw_alloc(score->event_count * sizeof *order);
    size_t *places = voice_places(score);
    for (uint32_t i = 0; i < score->event_count; i++) {
        order[places[score->events[i].voice]++] = i;
    }
    free(places);
    for (size_t first = 0, end; first < score->event_count; first = end) {
        uint32_t voice = score->events[order[first]].voice;
        for (end = first + 1; end < score->event_count && score->events[order[end]].voice == voice; end++) {
        }
        sw_sort_with(order + first, end - first, sizeof *order, compare_times, score);
    }
    return order;
}

/* By staff, then by voice, then by time. */
void sw_sort_events(sw_score *score)
{
    if (in_order(score)) {
        return; /* the usual case: one staff after another, each in order of time */
    }
    uint32_t *order = event_order(score);
    sw_event *sorted = sw_alloc(score->event_count * sizeof *sorted);
    for (size_t i = 0; i < score->event_count; i++) {
        sorted[i] = score->events[order[i]];
    }
    if (score->syllable_count > 0) { /* they know their events by number */
        uint32_t *places = sw_alloc(score->event_count * sizeof *places);
        for (uint32_t i = 0; i < score->event_count; i++) {
            places[order[i]] = i;
        }
        for (size_t i = 0; i < score->syllable_count; i++) {
            uint32_t *event = &score->syllables[i].event;
            *event = *event == SW_NO_INDEX ? SW_NO_INDEX : places[*event];
        }
        free(places);
    }
    free(order);
    free(score->events);
    score->events = sorted;
    score->event_capacity = score->event_count;
}
