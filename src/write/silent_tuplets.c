/* A tuplet in which nothing but rests is left needs no bracket: { r4 r r } becomes rests in the metre.
 *
 * The items in it are touched, all of them, and measured in the time outside of the bracket from then on
 * (scale 1); each remembers the bracket (sw_draft_item.dissolves). So they join with the rests around them
 * like others, and are written over the text of the whole tuplet.
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
    bool silent = item->through == SW_NO_INDEX && value.factor_num == value.factor_den;
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
    bool silent = m->kind == SW_MUSIC_SEQUENCE ||
                  (m->kind == SW_MUSIC_SCALE && sw_tuplet_head(draft->reading, music).length > 0);
    for (uint32_t c = m->first; c != SW_NO_INDEX && silent; c = draft->reading->music[c].next) {
        silent = is_silent(draft, c, items);
    }
    return silent;
}

static bool can_dissolve(const sw_draft *draft, uint32_t tuplet)
{
    size_t items = 0;
    sw_slice text = sw_music_slice(draft->reading, tuplet);
    uint32_t around = draft->parent[tuplet];
    return around != SW_NO_INDEX && draft->reading->music[around].kind == SW_MUSIC_SEQUENCE &&
           memchr(text.data, '%', text.length) == NULL && is_silent(draft, tuplet, &items) && items > 0;
}

static void dissolve(sw_draft *draft, uint32_t event, uint32_t tuplet)
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
    item->dissolves = tuplet;
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
        length = sw_rational_add(length, score->events[*end].duration);
    }
    return length;
}

void sw_draft_dissolve_tuplets(sw_draft *draft)
{
    const sw_score *score = draft->score;
    uint32_t end = 0;
    for (uint32_t e = 0; e < score->event_count && draft->error == NULL; e++) {
        const sw_draft_item *item =
            draft->wanted[e] == 0 ? NULL : sw_draft_item_of(draft, score->events[e].chord);
        uint32_t frame =
            item == NULL ? SW_NO_INDEX : sw_tuplet_outermost_frame(draft, score->events[e].frame);
        if (e < end || frame == SW_NO_INDEX || sw_draft_old_kind(draft, item) != SW_CELL_NOTES ||
            !can_dissolve(draft, score->frames[frame].music)) {
            continue;
        }
        uint32_t first;
        sw_rational length = find_events(draft, e, frame, &first, &end);
        if (sw_rational_is_dyadic(length)) {
            for (uint32_t i = first; i < end; i = sw_voice_chord_end(score, i)) {
                dissolve(draft, i, score->frames[frame].music);
            }
        }
    }
}
