/* Changes of whole bars: the lines of a score, and of the other scores that share their text. */
#include <stdlib.h>
#include <string.h>

#include "write/bars.h"
#include "write/division.h"

/* ---- what may come in where ---- */

/* The bar that begins at a moment; the number of bars at the end of the score. SW_NO_INDEX: no bar line. */
static uint32_t bar_line(const sw_score *score, sw_rational moment)
{
    for (uint32_t b = 0; b < score->bar_count; b++) {
        if (sw_rational_equal(score->bars[b].start, moment)) {
            return sw_rational_is_zero(score->bars[b].first) ? b : SW_NO_INDEX;
        }
    }
    const sw_bar *last = score->bar_count == 0 ? NULL : &score->bars[score->bar_count - 1];
    bool full = last != NULL && sw_rational_equal(sw_rational_add(last->first, last->length), last->metre) &&
                sw_rational_equal(sw_rational_add(last->start, last->length), moment);
    return full ? (uint32_t)score->bar_count : SW_NO_INDEX;
}

/* ---- all scores ---- */

static sw_bar_walk walk_of(sw_draft *draft, const sw_reading *reading, const sw_score *score)
{
    return (sw_bar_walk){.draft = draft,
                         .reading = reading,
                         .score = score,
                         .from = draft->bars.moment,
                         .to = draft->bars.until,
                         .bar = draft->bars.bar,
                         .count = draft->bars.count - (int32_t)draft->bars.gone};
}

/* What follows in the draft must know that a passage goes. */
static void mark_gone(sw_draft *draft, const sw_bar_gap *gap)
{
    for (uint32_t c = gap->first;; c = draft->reading->music[c].next) {
        draft->gone[c] = 1;
        if (c == gap->last) {
            break;
        }
    }
    draft->last_gone = sw_grow(draft->last_gone, draft->last_gone_count, &draft->last_gone_capacity,
                               sizeof *draft->last_gone);
    draft->last_gone[draft->last_gone_count++] = gap->last;
}

static void keep_edits(sw_draft *draft, const sw_bar_walk *walk)
{
    for (size_t i = 0; walk->reading == draft->reading && i < walk->gap_count; i++) {
        mark_gone(draft, &walk->gaps[i]);
    }
    for (size_t i = 0; i < walk->edit_count; i++) {
        const sw_bar_edit *edit = &walk->edits[i];
        draft->texts = sw_grow(draft->texts, draft->text_count, &draft->text_capacity, sizeof *draft->texts);
        draft->texts[draft->text_count++] = (sw_draft_text){edit->text, edit->start, edit->end, edit->put};
    }
}

/* How many of the edits that a score needs another one needs, too. */
static size_t shared_edits(const sw_bar_walk *walk, const sw_bar_edit *edits, size_t count)
{
    size_t shared = 0;
    for (size_t i = 0; i < walk->edit_count; i++) {
        size_t k = 0;
        while (k < count && !(walk->edits[i].start == edits[k].start && walk->edits[i].end == edits[k].end &&
                              sw_text_same_file(walk->edits[i].text, edits[k].text))) {
            k++;
        }
        shared += k < count;
    }
    return shared;
}

/* The other scores of a main file that play what has changed: their own lines change along. */
static bool change_others(sw_draft *draft, size_t main, const sw_bar_walk *own)
{
    const sw_reading *reading = draft->request->mains[main];
    uint32_t *parent = sw_parents_of(reading);
    sw_item_order order = sw_item_order_new(reading, parent);
    bool done = true;
    for (size_t s = 0; s < reading->score_count && done; s++) {
        const sw_score *score = &reading->scores[s];
        if (score == draft->score) {
            continue;
        }
        sw_bar_walk walk = walk_of(draft, reading, score);
        walk.parent = parent;
        walk.order = &order;
        bool found = bar_line(score, walk.from) != SW_NO_INDEX && bar_line(score, walk.to) != SW_NO_INDEX &&
                     sw_bar_walk_score(&walk);
        sw_bars_take_words(&walk);
        size_t shared = shared_edits(&walk, own->edits, own->edit_count);
        if (shared > 0 && shared < walk.edit_count && reading != draft->reading && found) {
            draft->bars.own_lines[main] = s + 1;
        } else if (shared > 0) {
            draft->bars.affected[main][s] = 1;
            keep_edits(draft, &walk);
            done = found;
            draft->error = found || draft->error != NULL ? draft->error : strdup(walk.error);
        }
        sw_bar_walk_free(&walk);
    }
    sw_item_order_free(&order);
    free(parent);
    return done;
}

/* The lines of the score itself, then the others. */
static bool change_all(sw_draft *draft)
{
    const sw_edit_request *request = draft->request;
    sw_item_order order = sw_item_order_new(draft->reading, draft->parent);
    sw_bar_walk walk = walk_of(draft, draft->reading, draft->score);
    walk.parent = draft->parent;
    walk.order = &order;
    bool done = sw_bar_walk_score(&walk);
    if (done) {
        sw_bars_take_words(&walk);
        keep_edits(draft, &walk);
    } else {
        draft->error = strdup(walk.error);
    }
    draft->bars.affected = sw_alloc_zero(request->main_count + 1, sizeof *draft->bars.affected);
    draft->bars.own_lines = sw_alloc_zero(request->main_count + 1, sizeof *draft->bars.own_lines);
    for (size_t m = 0; m < request->main_count; m++) {
        size_t count = request->mains[m]->score_count + 1;
        draft->bars.affected[m] = sw_alloc_zero(count, 1);
        if (request->mains[m] == draft->reading) {
            draft->bars.affected[m][draft->score - draft->reading->scores] = 1;
        }
    }
    for (size_t m = 0; m < request->main_count && done; m++) {
        done = change_others(draft, m, &walk);
    }
    sw_bar_walk_free(&walk);
    sw_item_order_free(&order);
    return done;
}

bool sw_change_insert_bars(sw_draft *draft, const sw_change *change)
{
    uint32_t bar = bar_line(draft->score, change->moment);
    if (draft->bars.moment.den != 0) {
        return sw_draft_fail(draft, change->event, "bars can come in or go at one place at a time");
    }
    if (bar == SW_NO_INDEX || bar == 0 || change->count < 1) {
        return sw_draft_fail(draft, change->event,
                             bar == 0 ? "bars before the first one can't be put in"
                                      : "there is no bar line where bars shall come in");
    }
    draft->bars.moment = draft->bars.until = change->moment;
    draft->bars.bar = draft->score->bars[bar - 1].metre;
    draft->bars.count = change->count;
    draft->bars.first = bar;
    return sw_bars_cut_torn(draft) && change_all(draft);
}

/* ---- bars that go ---- */

bool sw_change_delete_bars(sw_draft *draft, const sw_change *change)
{
    uint32_t from = bar_line(draft->score, change->moment);
    uint32_t to = bar_line(draft->score, change->until);
    if (draft->bars.moment.den != 0) {
        return sw_draft_fail(draft, change->event, "bars can come in or go at one place at a time");
    }
    if (from == SW_NO_INDEX || to == SW_NO_INDEX || from >= to) {
        return sw_draft_fail(draft, change->event, "what shall go does not begin and end at bar lines");
    }
    if (from == 0 && to == draft->score->bar_count) {
        return sw_draft_fail(draft, change->event, "no bar of the score would be left");
    }
    draft->bars.moment = change->moment;
    draft->bars.until = change->until;
    draft->bars.first = from;
    draft->bars.gone = to - from;
    draft->bars.bar = draft->score->bars[from].metre;
    draft->gone = sw_alloc_zero(draft->reading->music_count + 1, 1);
    return sw_bars_cut_torn(draft) && change_all(draft);
}
