/* Changes of notes: pitch, end, division, chords, silence, new notes. */
#include <stdlib.h>
#include <string.h>

#include "write/draft.h"

enum { MOST_TIED = 256 }; /* values that one sounding note is written with */

/* ---- notes that are tied ---- */

/* All events of the sounding note that `event` is a part of. */
static size_t tied_notes(const sw_draft *draft, uint32_t event, uint32_t list[MOST_TIED])
{
    const sw_score *score = draft->score;
    sw_pitch pitch = score->events[event].pitch;
    uint32_t first = event;
    for (size_t steps = 0; steps < MOST_TIED; steps++) {
        uint32_t before = sw_voice_pitch(score, sw_voice_previous(score, first), pitch);
        if (before == SW_NO_INDEX || !sw_voice_is_tied(draft->reading, score, before)) {
            break;
        }
        first = before;
    }
    size_t count = 0;
    for (uint32_t e = first; e != SW_NO_INDEX && count < MOST_TIED;) {
        list[count++] = e;
        e = sw_voice_is_tied(draft->reading, score, e)
                ? sw_voice_pitch(score, sw_voice_joined(score, sw_voice_chord(score, e)), pitch)
                : SW_NO_INDEX;
    }
    return count;
}

typedef enum { TIED_NONE, TIED_SOME, TIED_ALL } tied_share;

/* How many notes of a chord go on in the next one, which must then be the same chord. */
static tied_share share_tied(const sw_draft *draft, uint32_t chord)
{
    uint32_t end = sw_voice_chord_end(draft->score, chord);
    uint32_t tied = 0;
    for (uint32_t e = chord; e < end; e++) {
        tied += sw_voice_is_tied(draft->reading, draft->score, e);
    }
    if (tied == 0) {
        return TIED_NONE;
    }
    uint32_t next = sw_voice_joined(draft->score, chord);
    return tied == end - chord && sw_voice_chord_end(draft->score, next) - next == tied ? TIED_ALL
                                                                                        : TIED_SOME;
}

/* The chords that sound as one with the chord at `event`, from it (or from the first) to the last. False when
 * only some of their notes are tied. */
static bool tied_chords(sw_draft *draft, uint32_t event, bool from_first, uint32_t list[MOST_TIED],
                        size_t *count)
{
    uint32_t chord = sw_voice_chord(draft->score, event);
    for (size_t steps = 0; from_first && steps < MOST_TIED; steps++) {
        uint32_t before = sw_voice_joined_before(draft->score, chord);
        if (before == SW_NO_INDEX || sw_voice_joined(draft->score, before) != chord ||
            share_tied(draft, before) != TIED_ALL) {
            break;
        }
        chord = before;
    }
    *count = 0;
    while (*count < MOST_TIED) {
        list[(*count)++] = chord;
        tied_share share = share_tied(draft, chord);
        if (share == TIED_SOME) {
            return sw_draft_fail(draft, chord,
                                 "only some notes of this chord are tied to the next; change those first");
        }
        if (share == TIED_NONE) {
            break;
        }
        chord = sw_voice_joined(draft->score, chord);
    }
    return true;
}

static bool is_in_time(sw_draft *draft, uint32_t event)
{
    const sw_event *e = &draft->score->events[event];
    if ((e->flags & SW_EVENT_GRACE) != 0) {
        return sw_draft_fail(draft, event, "a grace note takes no time of its own, so its length stays");
    }
    for (uint32_t at = e->chord; at != SW_NO_INDEX; at = draft->parent[at]) {
        const sw_music *m = &draft->reading->music[at];
        if (m->kind == SW_MUSIC_REPEAT && strcmp(sw_reading_name(draft->reading, m->name), "tremolo") == 0) {
            return sw_draft_fail(draft, event, "a note of a written-out tremolo can't change its length");
        }
    }
    return true;
}

static bool needs_note(sw_draft *draft, uint32_t event)
{
    return sw_event_is_note(&draft->score->events[event]) ||
           sw_draft_fail(draft, event, "there is no note here");
}

/* ---- pitch ---- */

bool sw_change_pitch(sw_draft *draft, const sw_change *change)
{
    const sw_score *score = draft->score;
    if (score->events[change->event].kind != SW_EVENT_NOTE) {
        return sw_draft_fail(draft, change->event, "what stands here has no pitch");
    }
    uint32_t tied[MOST_TIED];
    size_t count = tied_notes(draft, change->event, tied);
    for (size_t i = 0; i < count; i++) {
        const sw_event *event = &score->events[tied[i]];
        sw_draft_item *item = sw_draft_touch(draft, tied[i]);
        if (item == NULL) {
            return false;
        }
        sw_pitch written = sw_score_written_pitch(draft->reading, score, event->frame, change->pitch);
        for (size_t c = 0; c < item->cell_count; c++) {
            for (size_t n = 0; n < item->cells[c].note_count; n++) {
                if (item->cells[c].notes[n].old == event->music) {
                    item->cells[c].notes[n].pitch = written;
                }
            }
        }
    }
    return true;
}

/* ---- chords ---- */

bool sw_change_add_note(sw_draft *draft, const sw_change *change)
{
    uint32_t tied[MOST_TIED];
    size_t count = 0;
    if (!needs_note(draft, change->event) || !tied_chords(draft, change->event, true, tied, &count)) {
        return false;
    }
    if (draft->score->events[change->event].kind == SW_EVENT_DRUM) {
        return sw_draft_fail(draft, change->event, "a pitch can't be added to percussion");
    }
    for (size_t i = 0; i < count; i++) {
        sw_draft_item *item = sw_draft_touch(draft, tied[i]);
        if (item == NULL) {
            return false;
        }
        sw_cell_note note = {.old = SW_NO_INDEX};
        note.pitch = sw_score_written_pitch(draft->reading, draft->score, draft->score->events[tied[i]].frame,
                                            change->pitch);
        for (size_t c = 0; c < item->cell_count; c++) {
            sw_cell *cell = &item->cells[c];
            for (size_t n = 0; n < cell->note_count; n++) {
                if (sw_pitch_equal(cell->notes[n].pitch, note.pitch)) {
                    return true; /* it is there already */
                }
            }
            if (cell->kind == SW_CELL_NOTES) {
                sw_cell_add_note(draft, cell, note);
            }
        }
    }
    return true;
}

static void silence_item(sw_draft *draft, uint32_t event, sw_draft_item *item)
{
    for (size_t c = 0; c < item->cell_count; c++) {
        if (item->cells[c].kind == SW_CELL_NOTES) {
            sw_draft_silence(draft, event, event, &item->cells[c]);
        }
    }
    item->calls = false;
}

bool sw_change_silence(sw_draft *draft, const sw_change *change)
{
    uint32_t tied[MOST_TIED];
    size_t count = 0;
    if (!needs_note(draft, change->event) || !tied_chords(draft, change->event, true, tied, &count)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        sw_draft_item *item = sw_draft_touch(draft, tied[i]);
        if (item == NULL) {
            return false;
        }
        silence_item(draft, tied[i], item);
    }
    return draft->error == NULL;
}

bool sw_change_remove_note(sw_draft *draft, const sw_change *change)
{
    uint32_t tied[MOST_TIED];
    if (!needs_note(draft, change->event)) {
        return false;
    }
    size_t count = tied_notes(draft, change->event, tied);
    for (size_t i = 0; i < count; i++) {
        sw_draft_item *item = sw_draft_touch(draft, tied[i]);
        bool empty = item != NULL;
        for (size_t c = 0; item != NULL && c < item->cell_count; c++) {
            sw_cell *cell = &item->cells[c];
            for (size_t n = cell->note_count; n-- > 0;) {
                if (cell->notes[n].old == draft->score->events[tied[i]].music) {
                    sw_cell_remove_note(cell, n);
                }
            }
            empty = empty && cell->note_count == 0;
        }
        if (item == NULL) {
            return false;
        }
        if (empty) {
            silence_item(draft, tied[i], item);
        }
    }
    return draft->error == NULL;
}

/* ---- time ---- */

/* The item among tied ones that holds a moment, or begins with it. */
static size_t holder(const sw_draft *draft, const uint32_t *tied, size_t count, sw_rational moment)
{
    size_t i = 0;
    while (i + 1 < count && sw_rational_compare(draft->score->events[tied[i + 1]].onset, moment) <= 0) {
        i++;
    }
    return i;
}

sw_cell *sw_item_last(sw_draft_item *item)
{
    for (size_t c = item->cell_count; c-- > 0;) {
        if (item->cells[c].kind == SW_CELL_NOTES) {
            return &item->cells[c];
        }
    }
    return &item->cells[item->cell_count - 1];
}

sw_cell *sw_item_first(sw_draft_item *item)
{
    for (size_t c = 0; c < item->cell_count; c++) {
        if (item->cells[c].kind == SW_CELL_NOTES) {
            return &item->cells[c];
        }
    }
    return &item->cells[0];
}

/* Takes the marks that belong to the end of a note off a cell; ties are dropped. */
static size_t take_end_marks(sw_cell *cell, sw_cell_mark *taken)
{
    size_t count = 0;
    for (size_t i = 0; i < cell->mark_count;) {
        const sw_cell_mark mark = cell->marks[i];
        if (!sw_mark_is_at_end(mark.class, mark.text)) {
            i++;
            continue;
        }
        if (mark.class != SW_MARK_TIE) {
            taken[count++] = mark;
        }
        sw_cell_remove_mark(cell, i);
    }
    for (size_t n = 0; n < cell->note_count; n++) {
        cell->notes[n].tied = false;
    }
    return count;
}

static void give_marks(sw_draft *draft, sw_cell *cell, const sw_cell_mark *marks, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        sw_cell_add_mark(draft, cell, marks[i]);
    }
}

enum { MOST_MARKS = 64 };

/* The note ends before its written end. */
static bool shorten(sw_draft *draft, const uint32_t *tied, size_t count, sw_rational end)
{
    sw_cell_mark taken[MOST_MARKS];
    size_t taken_count = 0;
    sw_cell *last = NULL;
    for (size_t i = 0; i < count; i++) {
        sw_draft_item *item = sw_draft_touch(draft, tied[i]);
        if (item == NULL) {
            return false;
        }
        sw_rational onset = draft->score->events[tied[i]].onset;
        size_t silent = 0;
        if (sw_rational_compare(onset, end) < 0) {
            silent = sw_draft_cut(draft, item, sw_draft_local(draft, item, tied[i], end));
            last = &item->cells[silent - 1];
        } else {
            item->calls = false;
        }
        for (size_t c = silent; c < item->cell_count; c++) {
            sw_cell *cell = &item->cells[c];
            if (cell->mark_count + taken_count < MOST_MARKS) {
                taken_count += take_end_marks(cell, taken + taken_count);
            }
            sw_draft_silence(draft, tied[0], tied[count - 1], cell);
        }
    }
    if (last != NULL) {
        sw_cell_mark dropped[MOST_MARKS];
        last->tied = false;
        size_t own = last->mark_count < MOST_MARKS ? take_end_marks(last, dropped) : 0;
        give_marks(draft, last, dropped, own);
        give_marks(draft, last, taken, taken_count);
    }
    return true;
}

bool sw_draft_fill(sw_draft *draft, uint32_t event, sw_rational from, sw_rational until,
                   const sw_cell_note *heard, size_t count)
{
    const sw_score *score = draft->score;
    sw_cell *before = NULL;
    for (uint32_t e = sw_voice_chord(score, event); sw_rational_compare(from, until) < 0;
         e = sw_voice_joined(score, e)) {
        if (e == SW_NO_INDEX) {
            return sw_draft_fail(draft, event, "there is not enough room: the voice breaks off before");
        }
        const sw_event *rest = &score->events[e];
        sw_draft_item *item = is_in_time(draft, e) ? sw_draft_touch(draft, e) : NULL;
        if (item == NULL) {
            return false;
        }
        sw_rational end = sw_rational_min(until, sw_event_end(rest));
        size_t c = sw_draft_cut(draft, item, sw_draft_local(draft, item, e, from));
        size_t behind = sw_draft_cut(draft, item, sw_draft_local(draft, item, e, end));
        for (; c < behind; c++) {
            sw_cell *cell = &item->cells[c];
            if (cell->kind == SW_CELL_NOTES) {
                return sw_draft_fail(draft, e, "there is not enough room: another note stands here");
            }
            sw_cell_set_notes(draft, cell, heard, count);
            for (size_t n = 0; n < count; n++) {
                cell->notes[n].pitch =
                    sw_score_written_pitch(draft->reading, score, rest->frame, heard[n].pitch);
                cell->notes[n].marked = cell->notes[n].tied = false;
                cell->notes[n].text_count = before == NULL ? heard[n].text_count : 0;
            }
            cell->kind = SW_CELL_NOTES;
            cell->tied = true;
            before = cell;
        }
        from = end;
    }
    if (before != NULL) {
        before->tied = false;
    }
    return true;
}

/* The note goes on into the rests behind it. */
static bool lengthen(sw_draft *draft, uint32_t last, sw_rational end)
{
    const sw_score *score = draft->score;
    uint32_t next = sw_voice_joined(score, last);
    sw_draft_item *item = sw_draft_touch(draft, last);
    if (next == SW_NO_INDEX || item == NULL) {
        return item != NULL &&
               sw_draft_fail(draft, last, "nothing follows here that the note could last into");
    }
    sw_cell *cell = sw_item_last(item);
    sw_cell_note heard[MOST_MARKS];
    if (cell->note_count > MOST_MARKS || cell->mark_count >= MOST_MARKS) {
        return sw_draft_fail(draft, last, "this chord has too many notes");
    }
    for (size_t n = 0; n < cell->note_count; n++) {
        heard[n] = cell->notes[n];
        heard[n].pitch =
            sw_score_pitch(draft->reading, score, score->events[last].frame, cell->notes[n].pitch);
    }
    if (!sw_draft_fill(draft, next, score->events[next].onset, end, heard, cell->note_count)) {
        return false;
    }
    sw_cell_mark taken[MOST_MARKS];
    cell = sw_item_last(item);
    size_t count = take_end_marks(cell, taken);
    cell->tied = true;
    uint32_t holding = next;
    for (uint32_t e = next; e != SW_NO_INDEX && sw_rational_compare(score->events[e].onset, end) < 0;
         e = sw_voice_joined(score, e)) {
        holding = e;
    }
    sw_draft_item *final = sw_draft_touch(draft, holding);
    size_t behind = sw_draft_cut(draft, final, sw_draft_local(draft, final, holding, end));
    give_marks(draft, &final->cells[behind - 1], taken, count);
    return true;
}

bool sw_change_end(sw_draft *draft, const sw_change *change)
{
    uint32_t tied[MOST_TIED];
    size_t count = 0;
    if (!needs_note(draft, change->event) || !is_in_time(draft, change->event) ||
        !tied_chords(draft, change->event, false, tied, &count)) {
        return false;
    }
    const sw_event *first = &draft->score->events[tied[0]];
    sw_rational end = sw_event_end(&draft->score->events[tied[count - 1]]);
    if (sw_rational_compare(change->moment, first->onset) <= 0) {
        return sw_draft_fail(draft, change->event, "a note can't end before it begins");
    }
    int order = sw_rational_compare(change->moment, end);
    if (order < 0) {
        return shorten(draft, tied, count, change->moment);
    }
    return order == 0 || lengthen(draft, tied[count - 1], change->moment);
}

bool sw_change_split(sw_draft *draft, const sw_change *change)
{
    uint32_t tied[MOST_TIED];
    size_t count = 0;
    if (!needs_note(draft, change->event) || !is_in_time(draft, change->event) ||
        !tied_chords(draft, change->event, true, tied, &count)) {
        return false;
    }
    sw_rational end = sw_event_end(&draft->score->events[tied[count - 1]]);
    if (sw_rational_compare(change->moment, draft->score->events[tied[0]].onset) <= 0 ||
        sw_rational_compare(change->moment, end) >= 0) {
        return sw_draft_fail(draft, change->event, "the note doesn't sound at the moment of the division");
    }
    uint32_t event = tied[holder(draft, tied, count, change->moment)];
    sw_draft_item *item = sw_draft_touch(draft, event);
    if (item == NULL) {
        return false;
    }
    size_t second = sw_draft_cut(draft, item, sw_draft_local(draft, item, event, change->moment));
    if (second > 0) {
        item->cells[second - 1].tied = change->kind == SW_CHANGE_TIE;
        item->cells[second].apart = true;
        return true;
    }
    if (change->kind == SW_CHANGE_SPLIT) { /* the tie that was written goes */
        uint32_t before = sw_voice_previous(draft->score, event);
        sw_draft_item *first = sw_draft_touch(draft, before);
        sw_cell_mark taken[MOST_MARKS];
        if (first == NULL || sw_item_last(first)->mark_count >= MOST_MARKS) {
            return first != NULL;
        }
        size_t marks = take_end_marks(sw_item_last(first), taken);
        give_marks(draft, sw_item_last(first), taken, marks);
        sw_item_last(first)->tied = false;
    }
    return true;
}

bool sw_change_fill(sw_draft *draft, const sw_change *change)
{
    sw_cell_note *heard = sw_arena_alloc(draft->arena, (change->pitch_count + 1) * sizeof *heard);
    for (size_t i = 0; i < change->pitch_count; i++) {
        heard[i] = (sw_cell_note){.pitch = change->pitches[i], .old = SW_NO_INDEX};
    }
    if (change->pitch_count == 0 ||
        sw_rational_compare(change->moment, draft->score->events[change->event].onset) < 0 ||
        sw_rational_compare(change->moment, change->until) >= 0) {
        return sw_draft_fail(draft, change->event, "there is nothing to write here");
    }
    return sw_draft_fill(draft, change->event, change->moment, change->until, heard, change->pitch_count);
}
