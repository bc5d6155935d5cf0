/* Tuplets that come along when a run is copied into plain rests.
 *
 * A copy fills cells of the target's rests (change_copies.c). Where the run has a tuplet, its bracket is laid
 * over those cells first: each value of the tuplet, rests too, becomes a cell (or several, when the rests of
 * the target divide it) that points to one sw_tuplet_value: the value as it is written in the source, and the
 * bracket it stands in, which points to the one around it. Then the notes come into these cells as into any
 * others. When the draft is printed, pieces.c makes one piece of all cells with the same sw_tuplet_value,
 * says its value instead of asking the metre, and sees from the brackets of neighbouring pieces where { and }
 * stand. So the proof needs to know nothing: cells are heard as long as they are.
 *
 * What is laid is everything of the outermost tuplet in one bar, also what stands outside of the run: that is
 * rests for the target. A tuplet that goes on over a bar line has a bracket in each bar, as the rests of the
 * target may have their own bar checks there. Nothing is laid, and the copy is written as it was without,
 * over rests that stand in a tuplet themselves, over notes, and where the source says a tuplet in another way
 * than with a bracket and values in it. */
#include <string.h>

#include "write/draft.h"

enum { MOST_VALUES = 256, MOST_BRACKETS = 128 };

/* One value of a tuplet in the source. */
typedef struct value {
    uint32_t event; /* chord, rest or skip */
    const sw_tuplet_bracket *bracket;
} value;

typedef struct tuplet {
    uint32_t frame; /* the outermost SCALE */
    const sw_bar *bar;
    value values[MOST_VALUES];
    size_t value_count;
    sw_tuplet_bracket *brackets[MOST_BRACKETS];
    size_t bracket_count;
} tuplet;

static const sw_music *node_of(const sw_draft *draft, uint32_t frame)
{
    return &draft->reading->music[draft->score->frames[frame].music];
}

/* The tuplet from which a frame on the way to an event leads on, or the frame itself; SW_NO_INDEX: none. */
static uint32_t tuplet_above(const sw_draft *draft, uint32_t frame)
{
    while (frame != SW_NO_INDEX && node_of(draft, frame)->kind != SW_MUSIC_SCALE) {
        frame = draft->score->frames[frame].parent;
    }
    return frame;
}

uint32_t sw_tuplet_outermost_frame(const sw_draft *draft, uint32_t frame)
{
    uint32_t outermost = SW_NO_INDEX;
    for (uint32_t f = tuplet_above(draft, frame); f != SW_NO_INDEX;
         f = tuplet_above(draft, draft->score->frames[f].parent)) {
        outermost = f;
    }
    return outermost;
}

/* The bracket that copies the tuplet of a frame, with those around it; NULL when there are too many, or it is
 * written in another way. */
static const sw_tuplet_bracket *find_bracket(sw_draft *draft, tuplet *t, uint32_t frame)
{
    for (size_t i = 0; i < t->bracket_count; i++) {
        if (t->brackets[i]->frame == frame) {
            return t->brackets[i];
        }
    }
    sw_slice head = sw_tuplet_head(draft->reading, draft->score->frames[frame].music);
    uint32_t outer = tuplet_above(draft, draft->score->frames[frame].parent);
    const sw_tuplet_bracket *around = outer == SW_NO_INDEX ? NULL : find_bracket(draft, t, outer);
    if (head.length == 0 || (outer != SW_NO_INDEX && around == NULL) || t->bracket_count == MOST_BRACKETS) {
        return NULL;
    }
    sw_tuplet_bracket *bracket = sw_arena_alloc(draft->arena, sizeof *bracket);
    *bracket = (sw_tuplet_bracket){around, frame, head};
    t->brackets[t->bracket_count++] = bracket;
    return bracket;
}

/* Adds an event of the source. False when its value and its brackets do not say how long it is heard: it
 * stands in a tremolo, for example. */
static bool add_value(sw_draft *draft, tuplet *t, uint32_t e)
{
    const sw_event *event = &draft->score->events[e];
    uint32_t frame = tuplet_above(draft, event->frame);
    const sw_tuplet_bracket *bracket = find_bracket(draft, t, frame);
    sw_rational length = sw_duration_length(sw_music_duration(&draft->reading->music[event->chord]));
    for (; frame != SW_NO_INDEX; frame = tuplet_above(draft, draft->score->frames[frame].parent)) {
        length =
            sw_rational_mul(length, sw_rational_make(node_of(draft, frame)->num, node_of(draft, frame)->den));
    }
    sw_rational begin = t->value_count == 0
                            ? event->onset
                            : sw_event_end(&draft->score->events[t->values[t->value_count - 1].event]);
    if (bracket == NULL || t->value_count == MOST_VALUES || !sw_rational_equal(length, event->duration) ||
        !sw_rational_equal(begin, event->onset)) {
        return false;
    }
    t->values[t->value_count++] = (value){e, bracket};
    return true;
}

/* Finds all values of the tuplet around an event in the event's bar. */
static bool find_values(sw_draft *draft, tuplet *t, uint32_t e)
{
    const sw_score *score = draft->score;
    uint32_t first = e;
    for (uint32_t before = e; before != SW_NO_INDEX; before = sw_voice_previous(score, before)) {
        if (sw_rational_compare(score->events[before].onset, t->bar->start) < 0) {
            break;
        }
        first = before;
    }
    sw_rational bar_end = sw_rational_add(t->bar->start, t->bar->length);
    for (e = first; e != SW_NO_INDEX && sw_rational_compare(score->events[e].onset, bar_end) < 0;
         e = sw_voice_next(score, e)) {
        const sw_event *event = &score->events[e];
        bool inside = (event->flags & SW_EVENT_GRACE) == 0 && event->duration.num > 0 &&
                      sw_tuplet_outermost_frame(draft, event->frame) == t->frame;
        if (inside && (!add_value(draft, t, e) || sw_rational_compare(sw_event_end(event), bar_end) > 0)) {
            return false;
        }
    }
    return t->value_count > 0;
}

/* Whether the target has nothing but rests in its own metre there, over which no tuplet is laid yet. */
static bool is_free(sw_draft *draft, uint32_t voice, sw_rational from, sw_rational until)
{
    const sw_score *score = draft->score;
    const sw_rational one = {1, 1};
    for (uint32_t e = sw_voice_at(score, voice, from); sw_rational_compare(from, until) < 0;
         e = sw_voice_joined(score, e)) {
        sw_draft_item *item = e == SW_NO_INDEX ? NULL : sw_draft_touch(draft, e);
        if (item == NULL || !sw_rational_equal(item->scale, one)) {
            return false;
        }
        sw_rational begin = sw_draft_local(draft, item, e, from);
        sw_rational end = sw_draft_local(draft, item, e, until);
        for (size_t c = 0; c < item->cell_count; c++) {
            const sw_cell *cell = &item->cells[c];
            bool meets = sw_rational_compare(cell->start, end) < 0 &&
                         sw_rational_compare(sw_rational_add(cell->start, cell->length), begin) > 0;
            if (meets && (cell->kind == SW_CELL_NOTES || cell->in != NULL)) {
                return false;
            }
        }
        from = sw_event_end(&score->events[e]);
    }
    return true;
}

static void lay_value(sw_draft *draft, const value *v, uint32_t voice)
{
    const sw_score *score = draft->score;
    const sw_event *source = &score->events[v->event];
    sw_tuplet_value *in = sw_arena_alloc(draft->arena, sizeof *in);
    *in = (sw_tuplet_value){v->bracket, sw_music_duration(&draft->reading->music[source->chord])};
    sw_rational from = source->onset;
    sw_rational until = sw_event_end(source);
    for (uint32_t e = sw_voice_at(score, voice, from); sw_rational_compare(from, until) < 0;
         e = sw_voice_joined(score, e)) {
        sw_draft_item *item = sw_draft_touch(draft, e);
        sw_rational end = sw_rational_min(until, sw_event_end(&score->events[e]));
        size_t c = sw_draft_cut(draft, item, sw_draft_local(draft, item, e, from));
        size_t behind = sw_draft_cut(draft, item, sw_draft_local(draft, item, e, end));
        for (; c < behind; c++) {
            item->cells[c].in = in;
            item->cells[c].kind =
                item->cells[c].kind == SW_CELL_FULL_REST ? SW_CELL_REST : item->cells[c].kind;
        }
        from = end;
    }
}

bool sw_draft_lay_tuplets(sw_draft *draft, uint32_t first, uint32_t last, uint32_t voice)
{
    const sw_score *score = draft->score;
    uint32_t frame = SW_NO_INDEX; /* the tuplet that was looked at last */
    uint32_t bar = SW_NO_INDEX;
    for (uint32_t e = first; e != SW_NO_INDEX; e = e == last ? SW_NO_INDEX : sw_voice_next(score, e)) {
        const sw_event *event = &score->events[e];
        uint32_t own_frame = sw_tuplet_outermost_frame(draft, event->frame);
        uint32_t own_bar = sw_score_bar_at(score, event->onset);
        if ((event->flags & SW_EVENT_GRACE) != 0 || own_frame == SW_NO_INDEX || own_bar == SW_NO_INDEX ||
            (own_frame == frame && own_bar == bar)) {
            continue;
        }
        frame = own_frame;
        bar = own_bar;
        tuplet t = {.frame = frame, .bar = &score->bars[bar]};
        if (!find_values(draft, &t, e)) {
            continue;
        }
        sw_rational from = score->events[t.values[0].event].onset;
        sw_rational until = sw_event_end(&score->events[t.values[t.value_count - 1].event]);
        bool laid = is_free(draft, voice, from, until);
        for (size_t i = 0; laid && i < t.value_count; i++) {
            lay_value(draft, &t.values[i], voice);
        }
    }
    return draft->error == NULL;
}
