#include "checks/strokes.h"

#include <stdlib.h>

#include "checks/say.h"

static bool is_struck(const sw_reading *reading, const sw_score *score, const sw_event *event)
{
    return sw_event_is_played(reading, score, event) ||
           (event->kind == SW_EVENT_DRUM && (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) == 0);
}

static bool is_tie(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_TIE;
}

static int compare_strokes(const void *a, const void *b)
{
    const sw_stroke *x = a;
    const sw_stroke *y = b;
    int order = sw_rational_compare(x->onset, y->onset);
    return order != 0 ? order : (x->event > y->event) - (x->event < y->event);
}

static bool is_same_chord(const sw_score *score, const sw_stroke *stroke, const sw_event *event)
{
    const sw_event *first = &score->events[stroke->event];
    return sw_rational_equal(first->onset, event->onset) && first->grace_num == event->grace_num &&
           first->grace_den == event->grace_den;
}

/* The chords and single notes of a voice. */
static void collect(const sw_reading *reading, const sw_score *score, const sw_voice_events *voice,
                    sw_strokes *list)
{
    size_t first = list->count;
    for (size_t i = voice->first; i < voice->end; i++) {
        const sw_event *event = &score->events[i];
        if (!is_struck(reading, score, event)) {
            continue;
        }
        sw_rational end = sw_event_end(event);
        if (list->count > first && is_same_chord(score, &list->items[list->count - 1], event)) {
            sw_stroke *last = &list->items[list->count - 1];
            last->end = sw_rational_compare(end, last->end) > 0 ? end : last->end;
            continue;
        }
        list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
        list->items[list->count++] = (sw_stroke){.event = (uint32_t)i,
                                                 .before = SW_NO_INDEX,
                                                 .voice = event->voice,
                                                 .onset = event->onset,
                                                 .end = end};
    }
}

/* Whether no stroke of another voice sounds when this one begins, or begins with it. `last_of`: the last one
 * of each voice so far. */
static bool is_alone(const sw_strokes *list, size_t number, const uint32_t *last_of, size_t voices)
{
    const sw_stroke *own = &list->items[number];
    for (size_t v = 0; v < voices; v++) {
        const sw_stroke *other = last_of[v] == SW_NO_INDEX ? NULL : &list->items[last_of[v]];
        if (v != own->voice && other != NULL && sw_rational_compare(other->end, own->onset) > 0) {
            return false;
        }
    }
    for (size_t i = number + 1; i < list->count && sw_rational_equal(list->items[i].onset, own->onset); i++) {
        if (list->items[i].voice != own->voice) {
            return false;
        }
    }
    return true;
}

/* The stroke that ends last of those before `number`. */
static uint32_t last_of_all(const sw_strokes *list, size_t number, const uint32_t *last_of, size_t voices)
{
    uint32_t latest = SW_NO_INDEX;
    for (size_t v = 0; v < voices; v++) {
        uint32_t own = last_of[v];
        if (own != SW_NO_INDEX &&
            sw_rational_compare(list->items[own].onset, list->items[number].onset) < 0 &&
            (latest == SW_NO_INDEX ||
             sw_rational_compare(list->items[own].end, list->items[latest].end) > 0)) {
            latest = own;
        }
    }
    return latest;
}

static void link_strokes(const sw_reading *reading, const sw_score *score, sw_strokes *list)
{
    uint32_t *last_of = sw_alloc((score->voice_count + 1) * sizeof *last_of);
    for (size_t v = 0; v < score->voice_count; v++) {
        last_of[v] = SW_NO_INDEX;
    }
    for (size_t i = 0; i < list->count; i++) {
        sw_stroke *stroke = &list->items[i];
        uint32_t own = last_of[stroke->voice];
        stroke->alone = is_alone(list, i, last_of, score->voice_count);
        bool all = own == SW_NO_INDEX || stroke->alone;
        stroke->before = all ? last_of_all(list, i, last_of, score->voice_count) : own;
        stroke->tied = own != SW_NO_INDEX && stroke->before == own &&
                       sw_event_has_mark(reading, &score->events[list->items[own].event], is_tie);
        last_of[stroke->voice] = (uint32_t)i;
    }
    free(last_of);
}

sw_strokes sw_strokes_of_staff(const sw_reading *reading, const sw_score *score, const sw_playing *playing,
                               uint32_t staff)
{
    sw_strokes list = {0};
    for (uint32_t voice = 0; voice < score->voice_count; voice++) {
        if (score->voices[voice].staff == staff) {
            collect(reading, score, &playing->voices[voice], &list);
        }
    }
    if (list.count > 0) {
        qsort(list.items, list.count, sizeof *list.items, compare_strokes);
    }
    link_strokes(reading, score, &list);
    return list;
}
