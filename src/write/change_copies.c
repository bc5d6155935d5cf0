/* Runs that are copied, or move, into the rests of another voice. */
#include <string.h>

#include "write/run.h"

static const sw_music *at(const sw_draft *draft, uint32_t music)
{
    return &draft->reading->music[music];
}

/* The cells of a voice that a filled stretch begins and ends with. */
static void filled_cells(sw_draft *draft, uint32_t target, sw_rational from, sw_rational until,
                         sw_cell **first, sw_cell **last)
{
    for (uint32_t e = target;
         e != SW_NO_INDEX && sw_rational_compare(draft->score->events[e].onset, until) < 0;
         e = sw_voice_joined(draft->score, e)) {
        sw_draft_item *item = sw_draft_touch(draft, e);
        if (item == NULL) {
            return;
        }
        sw_rational begin = sw_draft_local(draft, item, e, from);
        sw_rational end = sw_draft_local(draft, item, e, until);
        for (size_t c = 0; c < item->cell_count; c++) {
            sw_cell *cell = &item->cells[c];
            *first = sw_rational_equal(cell->start, begin) ? cell : *first;
            *last = sw_rational_compare(cell->start, end) < 0 ? cell : *last;
        }
    }
}

/* Whether a note has a tie inside of its chord: <c~ e>. */
static bool has_own_tie(const sw_draft *draft, uint32_t chord, const sw_cell_note *note)
{
    bool own = note->tied && note->old != SW_NO_INDEX && draft->parent[note->old] == chord;
    uint32_t c = own ? at(draft, note->old)->first : SW_NO_INDEX;
    while (c != SW_NO_INDEX && sw_music_mark_class(draft->reading, c) != SW_MARK_TIE) {
        c = at(draft, c)->next;
    }
    return c != SW_NO_INDEX;
}

/* Ties of single notes of a chord, for its copy. */
static void copy_own_ties(sw_draft *draft, uint32_t chord, const sw_cell *source, sw_cell *copy)
{
    for (size_t n = 0; n < source->note_count; n++) {
        bool tied = has_own_tie(draft, chord, &source->notes[n]);
        if (tied && source->note_count == 1) {
            sw_cell_add_text(draft, copy, "~", SW_MARK_TIE);
        } else {
            copy->notes[n].binds = tied;
        }
    }
}

/* The marks at a note inside of its chord, for its copy; its tie goes another way (copy_own_ties). */
static void copy_inner_marks(sw_draft *draft, const sw_change *change, uint32_t chord, uint32_t old,
                             sw_cell_note *copy)
{
    bool inside = old != SW_NO_INDEX && draft->parent[old] == chord;
    for (uint32_t c = inside ? at(draft, old)->first : SW_NO_INDEX; c != SW_NO_INDEX;
         c = at(draft, c)->next) {
        if (at(draft, c)->kind != SW_MUSIC_MARK || sw_music_mark_class(draft->reading, c) == SW_MARK_TIE ||
            sw_run_leaves(change, c)) {
            continue;
        }
        sw_slice *texts = sw_arena_alloc(draft->arena, (copy->text_count + 1) * sizeof *texts);
        if (copy->text_count > 0) {
            memcpy(texts, copy->texts, copy->text_count * sizeof *texts);
        }
        texts[copy->text_count++] = sw_music_slice(draft->reading, c);
        copy->texts = texts;
    }
}

/* The notes of a chord as they shall be heard in the other voice. */
static const sw_cell_note *moved_notes(sw_draft *draft, const sw_change *change, uint32_t chord,
                                       uint32_t frame, const sw_cell *source)
{
    sw_cell_note *heard = sw_arena_alloc(draft->arena, (source->note_count + 1) * sizeof *heard);
    for (size_t n = 0; n < source->note_count; n++) {
        heard[n] = source->notes[n];
        heard[n].pitch = sw_score_pitch(draft->reading, draft->score, frame, source->notes[n].pitch);
        copy_inner_marks(draft, change, chord, source->notes[n].old, &heard[n]);
        heard[n].old = sw_cell_note_is_drum(draft->reading, &heard[n]) ? heard[n].old : SW_NO_INDEX;
        if (heard[n].old == SW_NO_INDEX) {
            heard[n].pitch = sw_pitch_transpose(heard[n].pitch, change->pitch);
        }
    }
    return heard;
}

/* The first chord of a run that takes time. */
static uint32_t first_main(const sw_score *score, const sw_change *change)
{
    uint32_t e = sw_voice_chord(score, change->event);
    uint32_t last = sw_voice_chord(score, change->last);
    while (e != last && (score->events[e].flags & SW_EVENT_GRACE) != 0) {
        e = sw_voice_next(score, e);
    }
    return e;
}

static bool copy_chord(sw_draft *draft, const sw_change *change, uint32_t event)
{
    const sw_score *score = draft->score;
    const sw_event *e = &score->events[event];
    bool grace = (e->flags & SW_EVENT_GRACE) != 0;
    uint32_t target = sw_voice_at(score, change->voice, e->onset);
    if (grace && sw_run_leaves(change, e->chord)) {
        return true;
    }
    sw_draft_item *item = sw_draft_touch(draft, event);
    if (item == NULL) {
        return false;
    }
    if (target == SW_NO_INDEX) {
        return sw_draft_fail(draft, event, "the other voice has nothing at this moment");
    }
    const sw_cell source = *sw_item_first(item);
    const sw_cell_note *heard = moved_notes(draft, change, e->chord, e->frame, &source);
    sw_cell *first = NULL;
    sw_cell *last = NULL;
    if (grace) {
        first = last = sw_draft_add_grace(draft, event, change->voice, heard, source.note_count);
    } else if (sw_draft_fill(draft, target, e->onset, sw_event_end(e), heard, source.note_count)) {
        filled_cells(draft, target, e->onset, sw_event_end(e), &first, &last);
    }
    if (first == NULL || last == NULL) {
        return false;
    }
    copy_own_ties(draft, e->chord, &source, last);
    for (size_t i = 0; i < source.mark_count; i++) {
        sw_cell_mark mark = source.marks[i];
        if (sw_run_copies_mark(draft, change, event, mark.class) && !sw_run_leaves(change, mark.old)) {
            mark.old = SW_NO_INDEX;
            sw_cell_add_mark(draft, sw_mark_is_at_end(mark.class, mark.text) ? last : first, mark);
        }
    }
    sw_run_close_edges(draft, change, event, first, last);
    if (change->text != NULL && event == first_main(score, change)) {
        sw_cell_add_text(draft, first, change->text, sw_mark_class_of(sw_slice_of(change->text)));
    }
    return true;
}

/* What is left of a chord that has moved away: a rest without marks. */
static bool leave(sw_draft *draft, const sw_change *change, uint32_t event)
{
    sw_draft_item *item = sw_draft_touch(draft, event);
    for (size_t c = 0; item != NULL && c < item->cell_count; c++) {
        sw_cell *cell = &item->cells[c];
        size_t kept = 0;
        for (size_t i = 0; i < cell->mark_count; i++) {
            sw_mark_class class = cell->marks[i].class;
            bool of_hairpin = class == SW_MARK_HAIRPIN_START || class == SW_MARK_HAIRPIN_END;
            if (!of_hairpin && !sw_run_keeps_mark(draft, change, event, class)) {
                cell->marks[kept++] = cell->marks[i];
            }
        }
        cell->mark_count = kept;
        sw_draft_silence(draft, event, event, cell);
    }
    if (item != NULL) {
        item->calls = false;
    }
    return item != NULL;
}

bool sw_change_copy_run(sw_draft *draft, const sw_change *change)
{
    const sw_score *score = draft->score;
    uint32_t first = sw_voice_chord(score, change->event);
    uint32_t last = sw_voice_chord(score, change->last);
    if (score->events[first].voice == change->voice) {
        return sw_draft_fail(draft, first, "the passage is in that voice already");
    }
    if (!sw_draft_lay_tuplets(draft, first, last, change->voice)) {
        return false;
    }
    for (int pass = 0; pass < 2; pass++) { /* all copies first: their marks are looked up in the source */
        for (uint32_t e = first; e != SW_NO_INDEX; e = e == last ? SW_NO_INDEX : sw_voice_next(score, e)) {
            bool note = sw_event_is_note(&score->events[e]);
            if (note && !(pass == 0 ? copy_chord(draft, change, e) : leave(draft, change, e))) {
                return false;
            }
        }
        if (change->kind == SW_CHANGE_COPY_RUN) {
            return true;
        }
    }
    if (sw_hairpin_leads_to(draft, first, SW_NO_INDEX)) { /* it ends where the rests begin */
        sw_cell_add_text(draft, &sw_draft_item_of(draft, score->events[first].chord)->cells[0], "\\!",
                         SW_MARK_HAIRPIN_END);
    }
    return sw_hairpin_drop_end(draft, first, last) &&
           sw_slur_cut(draft, first, last, SW_MARK_SLUR_START, "(", ")") &&
           sw_slur_cut(draft, first, last, SW_MARK_PHRASE_START, "\\(", "\\)");
}
