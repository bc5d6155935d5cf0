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
    return first->voice == event->voice && sw_rational_equal(first->onset, event->onset) &&
           first->grace_num == event->grace_num && first->grace_den == event->grace_den;
}

/* The chords and single notes of a staff, voice by voice. */
static void collect(const sw_reading *reading, const sw_score *score, uint32_t staff, sw_strokes *list)
{
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *event = &score->events[i];
        if (!is_struck(reading, score, event)) {
            continue;
        }
        sw_rational end = sw_event_end(event);
        if (list->count > 0 && is_same_chord(score, &list->items[list->count - 1], event)) {
            sw_stroke *last = &list->items[list->count - 1];
            last->end = sw_rational_max(end, last->end);
            continue;
        }
        list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
        list->items[list->count++] = (sw_stroke){
            .event = i, .before = SW_NO_INDEX, .voice = event->voice, .onset = event->onset, .end = end};
    }
}

/* The last strokes of the staff's voices so far. */
typedef struct last_strokes {
    uint32_t *items; /* indices into the list, one a voice that has played */
    size_t count;
} last_strokes;

/* The place of a voice's last stroke; a new one, without a stroke, for a voice that begins. */
static uint32_t *last_of_voice(const sw_strokes *list, last_strokes *last, uint32_t voice)
{
    size_t i = 0;
    while (i < last->count && list->items[last->items[i]].voice != voice) {
        i++;
    }
    if (i == last->count) {
        last->items[last->count++] = SW_NO_INDEX;
    }
    return &last->items[i];
}

/* Whether no stroke of another voice sounds when this one begins, or begins with it. */
static bool is_alone(const sw_strokes *list, size_t number, const last_strokes *last)
{
    const sw_stroke *own = &list->items[number];
    for (size_t v = 0; v < last->count; v++) {
        const sw_stroke *other = last->items[v] == SW_NO_INDEX ? own : &list->items[last->items[v]];
        if (other->voice != own->voice && sw_rational_compare(other->end, own->onset) > 0) {
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
static uint32_t last_of_all(const sw_strokes *list, size_t number, const last_strokes *last)
{
    uint32_t latest = SW_NO_INDEX;
    for (size_t v = 0; v < last->count; v++) {
        uint32_t own = last->items[v];
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
    last_strokes last = {.items = sw_alloc((score->voice_count + 1) * sizeof *last.items)};
    for (size_t i = 0; i < list->count; i++) {
        sw_stroke *stroke = &list->items[i];
        uint32_t *own = last_of_voice(list, &last, stroke->voice);
        stroke->alone = is_alone(list, i, &last);
        bool all = *own == SW_NO_INDEX || stroke->alone;
        stroke->before = all ? last_of_all(list, i, &last) : *own;
        stroke->tied = *own != SW_NO_INDEX && stroke->before == *own &&
                       sw_event_has_mark(reading, &score->events[list->items[*own].event], is_tie);
        *own = (uint32_t)i;
    }
    free(last.items);
}

sw_strokes sw_strokes_of_staff(const sw_reading *reading, const sw_score *score, uint32_t staff)
{
    sw_strokes list = {0};
    collect(reading, score, staff, &list);
    sw_sort(list.items, list.count, sizeof *list.items, compare_strokes);
    link_strokes(reading, score, &list);
    return list;
}
