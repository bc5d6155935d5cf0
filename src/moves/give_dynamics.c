/* Dynamics at the edges of a passage: hairpins that reach over them, and the level with which it begins. */
#include <string.h>

#include "checks/say.h"
#include "moves/give_plan.h"

static bool is_hairpin_start(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_HAIRPIN_START;
}

static bool is_of_hairpin(const sw_reading *reading, uint32_t mark)
{
    sw_mark_class class = sw_music_mark_class(reading, mark);
    return class == SW_MARK_DYNAMIC || class == SW_MARK_HAIRPIN_START || class == SW_MARK_HAIRPIN_END;
}

bool sw_give_in_hairpin(const sw_give_plan *g, uint32_t voice, sw_rational moment)
{
    const sw_score *score = g->chosen.score;
    bool open = false;
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        if (event->voice == voice && sw_rational_compare(event->onset, moment) < 0 &&
            sw_event_has_mark(g->chosen.reading, event, is_of_hairpin)) {
            open = sw_event_has_mark(g->chosen.reading, event, is_hairpin_start);
        }
    }
    return open;
}

void sw_give_drop_dynamics(sw_give_plan *g, uint32_t event)
{
    const sw_reading *reading = g->chosen.reading;
    uint32_t chord = g->chosen.score->events[event].chord;
    for (uint32_t c = reading->music[chord].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind == SW_MUSIC_MARK && is_of_hairpin(reading, c)) {
            sw_give_add_change(g, (sw_change){.kind = SW_CHANGE_REMOVE_MARK, .event = event, .mark = c});
        }
    }
}

/* The dynamic in force at a moment in a voice, as it is written; empty when there is none, or when a hairpin
 * has led away from it. */
static sw_slice dynamic_before(const sw_give_plan *g, uint32_t voice, sw_rational moment)
{
    const sw_reading *reading = g->chosen.reading;
    const sw_score *score = g->chosen.score;
    sw_slice found = {NULL, 0};
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        if (event->voice != voice || sw_rational_compare(event->onset, moment) >= 0) {
            continue;
        }
        for (uint32_t m = reading->music[event->chord].first; m != SW_NO_INDEX; m = reading->music[m].next) {
            if (reading->music[m].kind == SW_MUSIC_MARK && is_of_hairpin(reading, m)) {
                bool level = sw_music_mark_class(reading, m) == SW_MARK_DYNAMIC;
                found = level ? sw_music_slice(reading, m) : (sw_slice){NULL, 0};
            }
        }
    }
    return found;
}

/* The first note of the line that takes time; grace notes alone are no line. */
static size_t first_main_note(const sw_give_plan *g)
{
    size_t i = 0;
    while (i + 1 < g->chosen.count && (sw_give_event(g, i)->flags & SW_EVENT_GRACE) != 0) {
        i++;
    }
    return i;
}

void sw_give_find_dynamic(sw_give_plan *g, sw_change *change)
{
    if (sw_event_has_mark(g->chosen.reading, sw_give_event(g, first_main_note(g)), is_of_hairpin)) {
        return;
    }
    sw_slice own = dynamic_before(g, sw_give_event(g, 0)->voice, g->begin);
    sw_slice there = dynamic_before(g, g->voice, g->begin);
    if (own.length > 0 && !sw_slice_equal(own, there)) {
        g->dynamic = strndup(own.data, own.length);
        change->text = g->dynamic;
    }
}
