/* The plan's notes, changes, parts and errors. */
#include <stdlib.h>

#include "moves/give_plan.h"

bool sw_give_fail(char **error, const char *format, const char *a, const char *b)
{
    sw_buffer text = {0};
    sw_buffer_format(&text, format, a, b);
    *error = text.data;
    return false;
}

const char *sw_give_label(const sw_give_plan *g, uint32_t staff, char text[32])
{
    return sw_staff_label(g->chosen.reading, g->chosen.score, staff, text);
}

const sw_event *sw_give_event(const sw_give_plan *g, size_t i)
{
    return &g->chosen.score->events[g->chosen.events[i]];
}

void sw_give_add_change(sw_give_plan *g, sw_change change)
{
    g->changes = sw_grow(g->changes, g->count, &g->capacity, sizeof *g->changes);
    g->changes[g->count++] = change;
}

sw_give_plan *sw_give_add_part(sw_give_plan *g, size_t first, size_t end)
{
    sw_give_plan *part = &g->parts[g->part_count++];
    *part = *g;
    part->left = NULL;
    part->left_count = 0;
    part->left_capacity = 0;
    part->parts = NULL;
    part->part_count = 0;
    part->chosen.events = g->chosen.events + first;
    part->chosen.count = end - first;
    return part;
}

void sw_give_take_changes(sw_give_plan *g, const sw_give_plan *part)
{
    g->changes = part->changes;
    g->count = part->count;
    g->capacity = part->capacity;
}

void sw_give_free_parts(sw_give_plan *g)
{
    for (size_t i = 0; i < g->part_count; i++) {
        sw_give_free_parts(&g->parts[i]);
        free(g->parts[i].left);
        free(g->parts[i].dynamic);
    }
    free(g->parts);
}

bool sw_give_has_tie(const sw_reading *reading, uint32_t music)
{
    for (uint32_t c = reading->music[music].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        bool mark = reading->music[c].kind == SW_MUSIC_MARK;
        if (mark ? sw_music_mark_class(reading, c) == SW_MARK_TIE : sw_give_has_tie(reading, c)) {
            return true;
        }
    }
    return false;
}
