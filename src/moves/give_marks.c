/* What of a line the target does not play: marks of another instrument, grace notes that can't be copied, and
 * chords on an instrument that has one note at a time. */
#include <stdlib.h>

#include "checks/say.h"
#include "moves/foreign_marks.h"
#include "moves/give_plan.h"
#include "players/chairs.h"
#include "write/draft.h"

static void add_left(sw_give_plan *g, uint32_t music)
{
    g->left = sw_grow(g->left, g->left_count, &g->left_capacity, sizeof *g->left);
    g->left[g->left_count++] = music;
}

/* The mark of a class at a note or chord; SW_NO_INDEX: none. */
static uint32_t mark_of(const sw_reading *reading, uint32_t music, sw_mark_class class)
{
    uint32_t child = reading->music[music].first;
    while (child != SW_NO_INDEX &&
           (reading->music[child].kind != SW_MUSIC_MARK || sw_music_mark_class(reading, child) != class)) {
        child = reading->music[child].next;
    }
    return child;
}

void sw_give_leave_graces(sw_give_plan *g)
{
    const sw_reading *reading = g->chosen.reading;
    uint32_t *parents = sw_parents_of(reading);
    bool slurred = false;
    uint32_t last = SW_NO_INDEX;
    for (size_t i = 0; i < g->chosen.count && g->options->keep; i++) {
        const sw_event *event = sw_give_event(g, i);
        uint32_t group;
        bool grace = (event->flags & SW_EVENT_GRACE) != 0;
        bool left = grace && sw_grace_head(reading, parents, event->chord, &group).length == 0;
        if (event->chord == last || (grace && !left)) {
            continue;
        }
        last = event->chord;
        uint32_t slur_end = mark_of(reading, event->chord, SW_MARK_SLUR_END);
        if (slurred && slur_end != SW_NO_INDEX && !grace) {
            add_left(g, slur_end);
        }
        slurred = slurred && slur_end == SW_NO_INDEX;
        if (left) {
            char place[SW_SAY];
            slurred = slurred || mark_of(reading, event->chord, SW_MARK_SLUR_START) != SW_NO_INDEX;
            add_left(g, event->chord);
            sw_buffer_format(&g->move->notes, "note: %s: a grace note is left out: write it by hand\n",
                             sw_say_place(g->chosen.score, event->onset, place));
        }
    }
    free(parents);
}

static bool is_left(const sw_give_plan *g, uint32_t music)
{
    size_t i = 0;
    while (i < g->left_count && g->left[i] != music) {
        i++;
    }
    return i < g->left_count;
}

size_t sw_give_first_copied(const sw_give_plan *g)
{
    size_t i = 0;
    while (i + 1 < g->chosen.count && is_left(g, sw_give_event(g, i)->chord)) {
        i++;
    }
    return i;
}

/* Finds what the target does not play among the marks at a chord, or at one of its notes. */
static void find_left_at(sw_give_plan *g, const sw_event *event, uint32_t music)
{
    const sw_reading *reading = g->chosen.reading;
    const sw_instrument *to = g->to.instrument;
    for (uint32_t c = reading->music[music].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind != SW_MUSIC_MARK) {
            continue;
        }
        bool fingering = to != g->from.instrument && sw_music_mark_class(reading, c) == SW_MARK_FINGERING;
        if (fingering || sw_mark_is_foreign(reading, c, g->techniques, g->from.instrument, to)) {
            sw_slice written = sw_music_slice(reading, c);
            add_left(g, c);
            char place[SW_SAY];
            char text[32];
            sw_buffer_format(&g->move->why, "%s: %.*s is left out: %s has no use for it\n",
                             sw_say_place(g->chosen.score, event->onset, place), (int)written.length,
                             written.data, sw_give_label(g, g->target, text));
        }
    }
}

void sw_give_find_left(sw_give_plan *g)
{
    uint32_t last = SW_NO_INDEX;
    for (size_t i = 0; g->to.instrument != NULL && i < g->chosen.count; i++) {
        const sw_event *event = sw_give_event(g, i);
        if (event->chord != last) {
            find_left_at(g, event, event->chord);
        }
        last = event->chord;
        if (event->music != event->chord && g->chosen.reading->music[last].kind == SW_MUSIC_CHORD) {
            find_left_at(g, event, event->music);
        }
    }
}

/* Whether one player of a wind instrument reads a staff: the film says so, or its name has one number. */
static bool is_one_wind(const sw_give_plan *g, uint32_t staff, sw_rational moment)
{
    const sw_instrument *to = g->to.instrument;
    if (to == NULL || (to->family != SW_WOODWIND && to->family != SW_BRASS)) {
        return false;
    }
    sw_seating *seating = sw_seating_of(g->figures.film, g->chosen.reading, g->chosen.score);
    const sw_seats *seats = sw_seating_at(seating, staff, moment);
    int players = seating->staves[staff].players;
    bool one = seats != NULL && seats->all_count == 1 &&
               (players == 1 ||
                (players == 0 && seating->players[seating->seats[seats->all_first].player].number > 0));
    sw_seating_free(seating);
    return one;
}

void sw_give_tell_chords(sw_give_plan *g)
{
    for (size_t i = 1; i < g->chosen.count; i++) {
        if (sw_give_event(g, i)->chord == sw_give_event(g, i - 1)->chord &&
            sw_rational_equal(sw_give_event(g, i)->onset, sw_give_event(g, i - 1)->onset)) {
            if (is_one_wind(g, g->target, sw_give_event(g, i)->onset)) {
                char place[SW_SAY];
                char text[32];
                sw_buffer_format(&g->move->notes,
                                 "note: %s: the line has chords, and %s plays one note at a time\n",
                                 sw_say_place(g->chosen.score, sw_give_event(g, i)->onset, place),
                                 sw_give_label(g, g->target, text));
            }
            return;
        }
    }
}
