/* Changes of what hangs on notes and rests, and what becomes of marks whose note has gone. */
#include "write/draft.h"

bool sw_change_add_mark(sw_draft *draft, const sw_change *change)
{
    sw_draft_item *item = sw_draft_touch(draft, change->event);
    if (item == NULL) {
        return false;
    }
    sw_cell_mark mark = {.old = SW_NO_INDEX, .class = sw_mark_class_of(sw_slice_of(change->text))};
    mark.text = sw_slice_of(sw_arena_copy(draft->arena, sw_slice_of(change->text)));
    sw_cell *cell = sw_mark_is_at_end(mark.class, mark.text) ? sw_item_last(item) : sw_item_first(item);
    if (change->moment.den > 0) {
        sw_rational at = sw_draft_local(draft, item, change->event, change->moment);
        size_t number = sw_draft_cut(draft, item, at);
        if (number == item->cell_count) {
            return sw_draft_fail(draft, change->event, "the note is over when the mark should stand");
        }
        cell = &item->cells[number];
    }
    for (size_t i = 0; i < cell->mark_count; i++) {
        if (sw_slice_equal(cell->marks[i].text, mark.text)) {
            return true; /* it is there already */
        }
    }
    sw_cell_add_mark(draft, cell, mark);
    return true;
}

/* The cell that has a mark of the source, and its number there. */
static sw_cell *find_mark(sw_draft_item *item, uint32_t mark, size_t *which)
{
    for (size_t c = 0; c < item->cell_count; c++) {
        for (size_t i = 0; i < item->cells[c].mark_count; i++) {
            if (item->cells[c].marks[i].old == mark) {
                *which = i;
                return &item->cells[c];
            }
        }
    }
    return NULL;
}

/* Takes a mark off its note; false when it is not there. */
static bool take(sw_draft *draft, const sw_change *change, sw_cell_mark *taken)
{
    sw_draft_item *item = sw_draft_touch(draft, change->event);
    size_t which = 0;
    sw_cell *cell = item == NULL ? NULL : find_mark(item, change->mark, &which);
    if (cell == NULL) {
        return item != NULL && sw_draft_fail(draft, change->event, "the mark is not there");
    }
    *taken = cell->marks[which];
    sw_cell_remove_mark(cell, which);
    return true;
}

bool sw_change_remove_mark(sw_draft *draft, const sw_change *change)
{
    sw_cell_mark taken;
    if (change->kind != SW_CHANGE_REPLACE_MARK) {
        return take(draft, change, &taken);
    }
    sw_draft_item *item = sw_draft_touch(draft, change->event);
    size_t which = 0;
    sw_cell *cell = item == NULL ? NULL : find_mark(item, change->mark, &which);
    if (cell == NULL) {
        return item != NULL && sw_draft_fail(draft, change->event, "the mark is not there");
    }
    cell->marks[which].text = sw_slice_of(sw_arena_copy(draft->arena, sw_slice_of(change->text)));
    cell->marks[which].class = sw_mark_class_of(sw_slice_of(change->text));
    return true;
}

bool sw_change_move_mark(sw_draft *draft, const sw_change *change)
{
    sw_cell_mark taken;
    if (!take(draft, change, &taken)) {
        return false;
    }
    sw_draft_item *target = sw_draft_touch(draft, change->last);
    if (target == NULL) {
        return false;
    }
    taken.old = SW_NO_INDEX; /* it stands elsewhere now */
    sw_cell_add_mark(
        draft, sw_mark_is_at_end(taken.class, taken.text) ? sw_item_last(target) : sw_item_first(target),
        taken);
    return true;
}

/* ---- ties ---- */

static void drop_tie(sw_cell *cell)
{
    for (size_t i = cell->mark_count; i-- > 0;) {
        if (cell->marks[i].class == SW_MARK_TIE) {
            sw_cell_remove_mark(cell, i);
        }
    }
}

bool sw_draft_untie(sw_draft *draft, uint32_t event)
{
    sw_draft_item *item = sw_draft_touch(draft, event);
    if (item == NULL) {
        return false;
    }
    sw_cell *cell = sw_item_last(item);
    for (size_t n = 0; n < cell->note_count; n++) {
        cell->notes[n].tied = false;
    }
    drop_tie(cell);
    return true;
}

/* The heard pitches with which an item begins after the changes. */
static size_t first_pitches(const sw_draft *draft, uint32_t event, sw_pitch *pitches, size_t most)
{
    const sw_score *score = draft->score;
    size_t count = 0;
    sw_draft_item *item = sw_draft_item_of(draft, score->events[event].chord);
    if (item != NULL) {
        const sw_cell *cell = &item->cells[0];
        for (size_t n = 0; n < cell->note_count && count < most; n++) {
            pitches[count++] =
                sw_score_pitch(draft->reading, score, score->events[event].frame, cell->notes[n].pitch);
        }
        return count;
    }
    for (uint32_t e = event; e < sw_voice_chord_end(score, event) && count < most; e++) {
        if (score->events[e].kind == SW_EVENT_NOTE) {
            pitches[count++] = score->events[e].pitch;
        }
    }
    return count;
}

/* The tie behind one chord, when it led to a note before the changes and leads to none now. */
static void mend_tie(sw_draft *draft, uint32_t chord)
{
    const sw_score *score = draft->score;
    bool was_tied = false;
    for (uint32_t e = chord; e < sw_voice_chord_end(score, chord); e++) {
        was_tied = was_tied || sw_voice_is_tied(draft->reading, score, e);
    }
    if (!was_tied) {
        return;
    }
    enum { MOST = 64 };
    sw_pitch next[MOST];
    size_t count = first_pitches(draft, sw_voice_joined(score, chord), next, MOST);
    sw_draft_item *item = sw_draft_touch(draft, chord);
    if (item == NULL) {
        return;
    }
    sw_cell *cell = &item->cells[item->cell_count - 1];
    bool any = false;
    for (size_t n = 0; n < cell->note_count; n++) {
        sw_pitch heard =
            sw_score_pitch(draft->reading, score, score->events[chord].frame, cell->notes[n].pitch);
        bool same = false;
        for (size_t i = 0; i < count; i++) {
            same = same || sw_pitch_equal(next[i], heard);
        }
        cell->notes[n].tied = cell->notes[n].tied && same;
        any = any || same;
    }
    if (!any) {
        drop_tie(cell);
    }
}

void sw_draft_mend_ties(sw_draft *draft)
{
    size_t count = draft->item_count; /* what the mending touches needs no mending itself */
    for (size_t i = 0; i < count && draft->error == NULL; i++) {
        uint32_t event = draft->items[i]->event;
        mend_tie(draft, event);
        uint32_t before = sw_voice_joined_before(draft->score, event);
        if (before != SW_NO_INDEX) {
            mend_tie(draft, before);
        }
    }
}

/* ---- marks that have lost their note ---- */

static bool begins(sw_mark_class class)
{
    return class == SW_MARK_SLUR_START || class == SW_MARK_PHRASE_START || class == SW_MARK_BEAM_START;
}

static sw_mark_class partner(sw_mark_class class)
{
    switch (class) {
    case SW_MARK_SLUR_START:
        return SW_MARK_SLUR_END;
    case SW_MARK_SLUR_END:
        return SW_MARK_SLUR_START;
    case SW_MARK_PHRASE_START:
        return SW_MARK_PHRASE_END;
    case SW_MARK_PHRASE_END:
        return SW_MARK_PHRASE_START;
    case SW_MARK_BEAM_START:
        return SW_MARK_BEAM_END;
    default:
        return SW_MARK_BEAM_START;
    }
}

/* The nearest item with notes on one side of an event, the draft's state counting; SW_NO_INDEX if none. */
static uint32_t neighbour(const sw_draft *draft, uint32_t event, bool behind)
{
    for (uint32_t e = event; e != SW_NO_INDEX;) {
        e = behind ? sw_voice_next(draft->score, e) : sw_voice_previous(draft->score, e);
        if (e == SW_NO_INDEX) {
            break;
        }
        sw_draft_item *item = sw_draft_item_of(draft, draft->score->events[e].chord);
        bool notes = item == NULL ? sw_event_is_note(&draft->score->events[e])
                                  : sw_item_last(item)->kind == SW_CELL_NOTES;
        if (notes) {
            return e;
        }
    }
    return SW_NO_INDEX;
}

void sw_draft_rehome(sw_draft *draft, uint32_t first, uint32_t last, const sw_cell_mark *loose, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        sw_mark_class class = loose[i].class;
        uint32_t event = neighbour(draft, begins(class) ? last : first, begins(class));
        sw_draft_item *item = event == SW_NO_INDEX ? NULL : sw_draft_touch(draft, event);
        if (item == NULL) {
            continue; /* nobody left to carry it */
        }
        sw_cell *cell = begins(class) ? sw_item_first(item) : sw_item_last(item);
        size_t other = 0;
        while (other < cell->mark_count && cell->marks[other].class != partner(class)) {
            other++;
        }
        if (other < cell->mark_count) { /* it would begin and end at one note */
            sw_cell_remove_mark(cell, other);
            continue;
        }
        sw_cell_mark mark = loose[i];
        mark.old = SW_NO_INDEX;
        sw_cell_add_mark(draft, cell, mark);
    }
}
