/* The order in which a score keeps its events. */
#include <stdlib.h>

#include "score/player.h"

/* By staff, then by voice, then by time with its grace offset; among equals the order of the walk, which is
 * that of the events before sorting, decides. */
static int compare_events(const void *a, const void *b, void *context)
{
    const sw_score *score = context;
    const sw_event *x = &score->events[*(const uint32_t *)a];
    const sw_event *y = &score->events[*(const uint32_t *)b];
    if (x->voice != y->voice) {
        uint32_t staff_x = score->voices[x->voice].staff;
        uint32_t staff_y = score->voices[y->voice].staff;
        if (staff_x != staff_y) {
            return staff_x < staff_y ? -1 : 1;
        }
        return x->voice < y->voice ? -1 : 1;
    }
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

static bool in_order(sw_score *score)
{
    for (uint32_t i = 1; i < score->event_count; i++) {
        uint32_t before = i - 1;
        if (compare_events(&before, &i, score) > 0) {
            return false;
        }
    }
    return true;
}

void sw_sort_events(sw_score *score)
{
    if (in_order(score)) {
        return; /* the usual case: one staff after another, each in order of time */
    }
    uint32_t *order = sw_alloc(score->event_count * sizeof *order);
    for (uint32_t i = 0; i < score->event_count; i++) {
        order[i] = i;
    }
    qsort_r(order, score->event_count, sizeof *order, compare_events, score);
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
