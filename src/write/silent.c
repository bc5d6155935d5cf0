/* What has fallen silent, and needs less to be written.
 *
 * A tuplet in which nothing but rests is left needs no bracket: { r4 r r } becomes rests in the metre. The
 * items in it are touched, all of them, and measured in the time outside of the bracket from then on (scale
 * 1); each remembers the bracket (sw_draft_item.dissolves). So they join with the rests around them like
 * others, and are written over the text of the whole tuplet. Grace notes that are all silent go: they have no
 * cells any more.
 *
 * A bracket stays where the text in it says more than notes and rests: comments, commands, bar checks,
 * variables, marks on other rests than the first. */
#include <string.h>

#include "write/division.h"
#include "write/draft.h"

/* Whether an item is silent, or will be: `first` may have marks. */
static bool is_silent_item(const sw_draft *draft, uint32_t music, bool first)
{
    const sw_music *m = &draft->reading->music[music];
    const sw_draft_item *item = sw_draft_item_of(draft, music);
    sw_duration value = sw_music_duration(m);
    if (item == NULL) {
        return m->kind == SW_MUSIC_REST && m->first == SW_NO_INDEX && value.factor_num == value.factor_den;
    }
    bool silent = item->through_count == 0 && value.factor_num == value.factor_den;
    for (size_t c = 0; c < item->cell_count && silent; c++) {
        const sw_cell *cell = &item->cells[c];
        silent =
            cell->kind == SW_CELL_REST && cell->in == NULL && (cell->mark_count == 0 || (first && c == 0));
    }
    return silent;
}

/* Whether all items below a node are silent; counts them. */
static bool is_silent(const sw_draft *draft, uint32_t music, size_t *items)
{
    const sw_music *m = &draft->reading->music[music];
    if (sw_is_item(m)) {
        return is_silent_item(draft, music, (*items)++ == 0);
    }
    if (m->kind == SW_MUSIC_GRACE && m->first != SW_NO_INDEX) {
        size_t graces = 1; /* none has marks */
        return is_silent(draft, m->first, &graces);
    }
    bool silent = m->kind == SW_MUSIC_SEQUENCE ||
                  (m->kind == SW_MUSIC_SCALE && sw_tuplet_head(draft->reading, music).length > 0);
    for (uint32_t c = m->first; c != SW_NO_INDEX && silent; c = draft->reading->music[c].next) {
        silent = is_silent(draft, c, items);
    }
    return silent;
}

static bool can_dissolve(const sw_draft *draft, uint32_t node)
{
    size_t items = 0;
    sw_slice text = sw_music_slice(draft->reading, node);
    uint32_t around = draft->parent[node];
    return around != SW_NO_INDEX && draft->reading->music[around].kind == SW_MUSIC_SEQUENCE &&
           memchr(text.data, '%', text.length) == NULL && is_silent(draft, node, &items);
}

static void dissolve(sw_draft *draft, uint32_t event, uint32_t node)
{
    sw_draft_item *item = sw_draft_touch(draft, event);
    if (item == NULL || item->dissolves != SW_NO_INDEX) {
        return;
    }
    for (size_t c = 0; c < item->cell_count; c++) {
        item->cells[c].start = sw_rational_mul(item->cells[c].start, item->scale);
        item->cells[c].length = sw_rational_mul(item->cells[c].length, item->scale);
    }
    item->length = sw_rational_mul(item->length, item->scale);
    item->scale = sw_rational_make(1, 1);
    item->dissolves = node;
    bool grace = (draft->score->events[event].flags & SW_EVENT_GRACE) != 0;
    item->cell_count = grace ? 0 : item->cell_count;
}

/* The events of a voice that come from one use of a tuplet; its length as heard. */
static sw_rational find_events(const sw_draft *draft, uint32_t event, uint32_t frame, uint32_t *first,
                               uint32_t *end)
{
    const sw_score *score = draft->score;
    sw_rational length = sw_rational_zero();
    *first = event;
    while (*first > 0 && score->events[*first - 1].voice == score->events[event].voice &&
           sw_tuplet_outermost_frame(draft, score->events[*first - 1].frame) == frame) {
        (*first)--;
    }
    for (*end = *first;
         *end < score->event_count && score->events[*end].voice == score->events[event].voice &&
         sw_tuplet_outermost_frame(draft, score->events[*end].frame) == frame;
         *end = sw_voice_chord_end(score, *end)) {
        bool grace = (score->events[*end].flags & SW_EVENT_GRACE) != 0;
        length = grace ? length : sw_rational_add(length, score->events[*end].duration);
    }
    return length;
}

static void dissolve_tuplet(sw_draft *draft, uint32_t event, uint32_t frame)
{
    uint32_t first;
    uint32_t end;
    sw_rational length = find_events(draft, event, frame, &first, &end);
    for (uint32_t e = first; e < end && sw_rational_is_dyadic(length);
         e = sw_voice_chord_end(draft->score, e)) {
        dissolve(draft, e, draft->score->frames[frame].music);
    }
}

void sw_draft_dissolve(sw_draft *draft)
{
    const sw_score *score = draft->score;
    for (uint32_t e = 0; e < score->event_count && draft->error == NULL; e++) {
        const sw_event *event = &score->events[e];
        const sw_draft_item *item = draft->wanted[e] == 0 ? NULL : sw_draft_item_of(draft, event->chord);
        if (item == NULL || item->dissolves != SW_NO_INDEX ||
            sw_draft_old_kind(draft, item) != SW_CELL_NOTES) {
            continue;
        }
        uint32_t frame = sw_tuplet_outermost_frame(draft, event->frame);
        uint32_t group = SW_NO_INDEX;
        if (frame != SW_NO_INDEX && can_dissolve(draft, score->frames[frame].music)) {
            dissolve_tuplet(draft, e, frame);
        } else if (sw_grace_head(draft->reading, draft->parent, item->music, &group).length > 0 &&
                   can_dissolve(draft, group)) {
            dissolve(draft, e, group);
        }
    }
}
