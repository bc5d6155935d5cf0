/* From a draft to text edits: each slot of touched items is written anew, keeping what it can of the old
 * text; then what follows is mended where it inherited something that has changed. */
#include <stdlib.h>
#include <string.h>

#include "write/printer.h"

static const sw_music *at(const sw_printer *p, uint32_t music)
{
    return &p->reading->music[music];
}

/* ---- notes ---- */

static int marks_for(sw_printer *p, sw_pitch pitch)
{
    int marks = p->relative ? sw_pitch_relative_marks(p->reference, pitch) : pitch.octave + 1;
    p->reference = pitch;
    return marks;
}

void sw_print_octave(sw_buffer *out, int marks)
{
    for (; marks > 0; marks--) {
        sw_buffer_char(out, '\'');
    }
    for (; marks < 0; marks++) {
        sw_buffer_char(out, ',');
    }
}

/* Name, octave marks, reminders and octave check of one note. */
static void put_note(sw_printer *p, const sw_draft_item *item, const sw_cell_note *note)
{
    const sw_music *old = note->old == SW_NO_INDEX ? NULL : at(p, note->old);
    sw_slice text = old == NULL ? (sw_slice){NULL, 0} : sw_music_slice(p->reading, note->old);
    if (sw_cell_note_is_drum(p->reading, note)) {
        sw_buffer_append(p->out, (sw_slice){text.data, old->name_length});
        return;
    }
    bool same_name =
        old != NULL && old->pitch.step == note->pitch.step && old->pitch.alter == note->pitch.alter;
    sw_slice name = same_name ? (sw_slice){text.data, old->name_length}
                              : sw_entry_note_name(p->draft, item->music, note->pitch);
    if (name.length == 0) {
        char pitch[SW_PITCH_TEXT];
        sw_draft_fail_at(p->draft, item->music, "the input language here has no name for %s",
                         sw_pitch_print(note->pitch, pitch));
    }
    sw_buffer_append(p->out, name);
    sw_print_octave(p->out, marks_for(p, note->pitch));
    size_t body = old == NULL ? 0 : sw_item_body_end(p->reading, note->old) - old->start;
    if (same_name && memchr(text.data, '!', body) != NULL) {
        sw_buffer_char(p->out, '!');
    }
    if (same_name && memchr(text.data, '?', body) != NULL) {
        sw_buffer_char(p->out, '?');
    }
    if (old != NULL && (old->flags & SW_MUSIC_CHECKED) != 0) {
        sw_buffer_char(p->out, '=');
        sw_print_octave(p->out, note->pitch.octave + 1);
    }
}

/* What stands at a note inside of its chord. */
static void put_inner_marks(sw_printer *p, const sw_draft_item *item, const sw_cell_note *note)
{
    bool own = sw_cell_note_is_own(p->draft, item, note);
    for (uint32_t c = own ? at(p, note->old)->first : SW_NO_INDEX; c != SW_NO_INDEX; c = at(p, c)->next) {
        if (at(p, c)->kind == SW_MUSIC_MARK && sw_cell_note_keeps(p->reading, note, c)) {
            sw_buffer_append(p->out, sw_music_slice(p->reading, c));
        }
    }
    for (size_t i = 0; i < note->text_count; i++) {
        sw_buffer_append(p->out, note->texts[i]);
    }
    if (note->binds) {
        sw_buffer_char(p->out, '~');
    }
}

/* The blanks of the source between two notes of a chord that follow each other there; otherwise one. */
static sw_slice between_notes(const sw_printer *p, const sw_draft_item *item, const sw_cell_note *a,
                              const sw_cell_note *b)
{
    const sw_slice blank = {" ", 1};
    if (!sw_cell_note_is_own(p->draft, item, a) || !sw_cell_note_is_own(p->draft, item, b)) {
        return blank;
    }
    uint32_t from = sw_node_end(p->reading, a->old);
    uint32_t to = sw_item_begin(p->reading, b->old);
    sw_slice text = sw_text_slice(p->reading->files[at(p, a->old)->file].text, from, to);
    return from < to && sw_slice_trim(text).length == 0 ? text : blank;
}

/* The first or last note of a chord as it is written; SW_NO_INDEX when the item is none. */
static uint32_t outer_note(const sw_printer *p, uint32_t item, bool last)
{
    uint32_t found = SW_NO_INDEX;
    uint32_t first = at(p, item)->kind == SW_MUSIC_CHORD ? at(p, item)->first : SW_NO_INDEX;
    for (uint32_t c = first; c != SW_NO_INDEX; c = at(p, c)->next) {
        if (at(p, c)->kind == SW_MUSIC_NOTE || at(p, c)->kind == SW_MUSIC_DRUM) {
            found = c;
            if (!last) {
                break;
            }
        }
    }
    return found;
}

/* The blanks between a bracket of a chord and its first or last note, when that note is still the one there.
 */
static void put_padding(sw_printer *p, const sw_draft_item *item, const sw_cell_note *note, bool last)
{
    if (note->old == SW_NO_INDEX || note->old != outer_note(p, item->music, last)) {
        return;
    }
    const sw_music *m = at(p, item->music);
    uint32_t from = last ? sw_node_end(p->reading, note->old) : m->start + 1;
    uint32_t to = last ? sw_item_body_end(p->reading, item->music) - 1 : sw_item_begin(p->reading, note->old);
    sw_slice text = sw_text_slice(p->reading->files[m->file].text, from, to);
    if (from < to && sw_slice_trim(text).length == 0) {
        sw_buffer_append(p->out, text);
    }
}

static void put_chord(sw_printer *p, const sw_draft_item *item, const sw_cell *cell)
{
    sw_buffer_char(p->out, '<');
    put_padding(p, item, &cell->notes[0], false);
    sw_pitch first = cell->notes[0].pitch;
    for (size_t n = 0; n < cell->note_count; n++) {
        if (n > 0) {
            sw_buffer_append(p->out, between_notes(p, item, &cell->notes[n - 1], &cell->notes[n]));
        }
        if (sw_cell_note_is_own(p->draft, item, &cell->notes[n]) && cell->notes[n].marked) {
            sw_buffer_append(p->out, sw_music_calls(p->reading, cell->notes[n].old));
        }
        put_note(p, item, &cell->notes[n]);
        put_inner_marks(p, item, &cell->notes[n]);
    }
    put_padding(p, item, &cell->notes[cell->note_count - 1], true);
    sw_buffer_char(p->out, '>');
    p->reference = first;
}

/* Whether all that stands at a note inside of its chord stays there. */
static bool keeps_inner_marks(const sw_printer *p, const sw_draft_item *item, const sw_cell_note *note)
{
    bool all = true;
    for (uint32_t c = sw_cell_note_is_own(p->draft, item, note) ? at(p, note->old)->first : SW_NO_INDEX;
         c != SW_NO_INDEX; c = at(p, c)->next) {
        all = all && (at(p, c)->kind != SW_MUSIC_MARK || sw_cell_note_keeps(p->reading, note, c));
    }
    return all;
}

/* Whether the body of an item can stay as it is written, the notes being the same; moves the reference. */
static bool keeps_body(sw_printer *p, const sw_piece *piece)
{
    const sw_draft_item *item = piece->item;
    const sw_music *m = at(p, item->music);
    if (!sw_draft_has_old_notes(p->draft, item, piece->cell) || item->is_explicit) {
        return false;
    }
    if (m->kind == SW_MUSIC_REPEAT_CHORD || m->kind == SW_MUSIC_BARE) {
        return true;
    }
    sw_pitch before = p->reference;
    bool same = true;
    for (size_t n = 0; n < piece->cell->note_count; n++) {
        const sw_cell_note *note = &piece->cell->notes[n];
        if (at(p, note->old)->kind == SW_MUSIC_NOTE) {
            same = marks_for(p, note->pitch) == at(p, note->old)->octave_marks && same;
        }
        same = same && keeps_inner_marks(p, item, note);
    }
    p->reference = same ? piece->cell->notes[0].pitch : before;
    return same;
}

/* The notes or the letter of a piece. Returns whether a single note has what stood at it inside of its chord
 * still to come, behind the value. */
static bool put_body(sw_printer *p, const sw_piece *piece)
{
    const sw_draft_item *item = piece->item;
    const sw_cell *cell = piece->cell;
    const sw_music *m = at(p, item->music);
    sw_slice old =
        sw_text_slice(p->reading->files[m->file].text, m->start, sw_item_body_end(p->reading, item->music));
    if (piece->letter != 'n') {
        sw_buffer_append(p->out, piece->whole && piece->first ? old : (sw_slice){&piece->letter, 1});
        return false;
    }
    bool repeat = (m->kind == SW_MUSIC_REPEAT_CHORD || m->kind == SW_MUSIC_BARE) && !item->is_explicit;
    bool begins = piece->first && sw_rational_is_zero(cell->start);
    if (!piece->fresh && (repeat || (begins && keeps_body(p, piece)))) {
        sw_buffer_append(p->out, old);
        return false;
    }
    sw_cell copy = *cell;
    copy.notes = sw_arena_alloc(p->draft->arena, (cell->note_count + 1) * sizeof *copy.notes);
    for (size_t n = 0; n < cell->note_count; n++) { /* fingerings at the first value, ties at the last */
        copy.notes[n] = cell->notes[n];
        copy.notes[n].marked = cell->notes[n].marked && piece->first;
        copy.notes[n].tied = cell->notes[n].tied && piece->last;
        copy.notes[n].binds = cell->notes[n].binds && piece->last;
        copy.notes[n].text_count = piece->first ? cell->notes[n].text_count : 0;
    }
    uint32_t outer = piece->fresh ? SW_NO_INDEX : outer_note(p, item->music, false);
    bool bracketed = outer != SW_NO_INDEX && outer == outer_note(p, item->music, true); /* <c-1>: stays so */
    if (cell->note_count == 1 && !(bracketed && piece->first)) {
        put_note(p, item, &copy.notes[0]);
        return !piece->fresh;
    }
    put_chord(p, item, &copy);
    return false;
}

/* ---- values ---- */

static void put_value(sw_printer *p, const sw_piece *piece)
{
    const sw_music *m = at(p, piece->item->music);
    bool begins = !piece->fresh && piece->first && sw_rational_is_zero(piece->cell->start);
    bool written = begins && (m->flags & SW_MUSIC_WRITTEN_VALUE) != 0;
    bool bare =
        !piece->fresh && m->kind == SW_MUSIC_BARE && piece->letter == 'n' && !piece->item->is_explicit;
    sw_slice text = sw_music_slice(p->reading, piece->item->music);
    if (begins && piece->whole && written && text.length > 0 && (text.data[0] != '\\' || bare)) {
        sw_duration old = sw_music_duration(m);
        uint32_t body = sw_item_body_end(p->reading, piece->item->music);
        sw_slice value = sw_text_slice(p->reading->files[m->file].text, body, m->end);
        bool factor_only = sw_slice_starts(sw_slice_trim(value), "*");
        if (!factor_only || sw_rational_equal(sw_duration_head(old), sw_duration_head(p->value))) {
            sw_buffer_append(p->out, value);
            p->value = old;
            return;
        }
    }
    if (piece->whole && piece->letter == 's' && text.length > 0 && text.data[0] == '\\') {
        return; /* \skip 4 holds its value, and nothing inherits it */
    }
    if (written || bare || !sw_duration_equal(p->value, piece->value) || (p->repeats_values && !begins)) {
        char value[SW_DURATION_TEXT];
        sw_buffer_string(p->out, sw_duration_print(piece->value, value));
    }
    p->value = piece->value;
}

/* ---- marks ---- */

/* What stands before a mark in the source, behind its item or the mark before it. */
static sw_slice before_mark(const sw_printer *p, uint32_t item, uint32_t mark)
{
    const sw_music *m = at(p, item);
    uint32_t from = m->end;
    for (uint32_t c = m->first; c != SW_NO_INDEX && c != mark; c = at(p, c)->next) {
        if (at(p, c)->kind == SW_MUSIC_MARK && at(p, c)->end > from && at(p, c)->end <= at(p, mark)->start) {
            from = at(p, c)->end;
        }
    }
    return sw_text_slice(p->reading->files[m->file].text, from, at(p, mark)->start);
}

static const sw_cell_mark *find_mark(const sw_cell *cell, uint32_t old)
{
    for (size_t i = 0; i < cell->mark_count; i++) {
        if (cell->marks[i].old == old) {
            return &cell->marks[i];
        }
    }
    return NULL;
}

static bool belongs(const sw_piece *piece, const sw_cell_mark *mark)
{
    if (mark->class == SW_MARK_TREMOLO) {
        return true;
    }
    bool end = piece->letter == 'n' && sw_mark_is_at_end(mark->class, mark->text);
    return end ? piece->last : piece->first;
}

/* Comments that stand among marks that have gone. */
static void keep_comments(sw_printer *p, const sw_piece *piece, uint32_t mark)
{
    sw_slice before = before_mark(p, piece->item->music, mark);
    if (piece->first && sw_rational_is_zero(piece->cell->start) &&
        memchr(before.data, '%', before.length) != NULL) {
        sw_buffer_append(p->out, before);
    }
}

/* Marks that are new at their item: the strokes of a tremolo, which stand right behind the value, or the
 * others. */
static void put_new_marks(sw_printer *p, const sw_piece *piece, bool strokes)
{
    for (size_t i = 0; i < piece->cell->mark_count; i++) {
        const sw_cell_mark *mark = &piece->cell->marks[i];
        bool own = mark->old != SW_NO_INDEX && p->draft->parent[mark->old] == piece->item->music;
        if (!own && belongs(piece, mark) && (mark->class == SW_MARK_TREMOLO) == strokes) {
            sw_buffer_string(p->out, sw_mark_is_breath(mark->text) ? " " : "");
            sw_buffer_append(p->out, mark->text);
        }
    }
}

static void put_marks(sw_printer *p, const sw_piece *piece, bool inner)
{
    put_new_marks(p, piece, true);
    if (piece->letter == 'n' && (!piece->last || piece->tied)) {
        sw_buffer_char(p->out, '~');
    }
    if (inner) { /* the note was one of a chord */
        sw_cell_note note = piece->cell->notes[0];
        note.marked = note.marked && piece->first;
        note.tied = note.tied && piece->last;
        note.text_count = piece->first ? note.text_count : 0;
        put_inner_marks(p, piece->item, &note);
    }
    const sw_music *m = at(p, piece->item->music);
    for (uint32_t c = piece->fresh ? SW_NO_INDEX : m->first; c != SW_NO_INDEX; c = at(p, c)->next) {
        if (at(p, c)->kind != SW_MUSIC_MARK || at(p, c)->start < m->end) {
            continue;
        }
        const sw_cell_mark *mark = find_mark(piece->cell, c);
        if (mark == NULL) {
            keep_comments(p, piece, c);
        } else if (belongs(piece, mark)) {
            sw_buffer_append(p->out, before_mark(p, piece->item->music, c));
            sw_buffer_append(p->out, mark->text);
        }
    }
    put_new_marks(p, piece, false);
}

/* ---- slots ---- */

/* Whether an item is the only argument of what stands around it, without brackets of its own: \repeat unfold
 * 8 c4, << c1 \\ e1 >>. */
static bool stands_alone(const sw_printer *p, uint32_t item)
{
    uint32_t around = p->draft->parent[item];
    if (around == SW_NO_INDEX || at(p, around)->kind == SW_MUSIC_SEQUENCE) {
        return around == SW_NO_INDEX;
    }
    const sw_text *text = p->reading->files[at(p, item)->file].text;
    uint32_t before = sw_item_begin(p->reading, item);
    uint32_t behind = sw_node_end(p->reading, item);
    while (before > 0 && strchr(" \t\r\n", text->bytes[before - 1]) != NULL) {
        before--;
    }
    while (behind < text->length && strchr(" \t\r\n", text->bytes[behind]) != NULL) {
        behind++;
    }
    bool brackets = before > 0 && text->bytes[before - 1] == '{' && text->bytes[behind] == '}';
    bool several = at(p, around)->first != item || at(p, item)->next != SW_NO_INDEX;
    switch ((sw_music_kind)at(p, around)->kind) {
    case SW_MUSIC_SIMULTANEOUS:
    case SW_MUSIC_REPEAT:
    case SW_MUSIC_ALTERNATIVES:
    case SW_MUSIC_AFTER_GRACE:
    case SW_MUSIC_PART_COMBINE:
        return !brackets;
    default:
        return !brackets && !several;
    }
}

/* The grace notes that come before a piece. */
static void put_graces(sw_printer *p, const sw_piece *piece)
{
    for (size_t i = 0; piece->first && i < piece->cell->grace_count; i++) {
        const sw_grace *grace = &piece->cell->graces[i];
        sw_piece note = {.letter = 'n',
                         .value = grace->value,
                         .cell = &grace->cell,
                         .item = piece->item,
                         .first = true,
                         .last = true,
                         .fresh = true};
        sw_buffer_append(p->out, grace->opens);
        put_body(p, &note);
        put_value(p, &note);
        put_marks(p, &note, grace->cell.note_count == 1);
        sw_buffer_append(p->out, grace->closes);
        sw_buffer_char(p->out, ' ');
    }
}

void sw_print_pieces(sw_printer *p, const sw_slot *slot)
{
    for (size_t i = 0; i < slot->piece_count; i++) {
        if (i > 0) {
            sw_buffer_char(p->out, ' ');
        }
        const sw_piece *piece = &slot->pieces[i];
        if (piece->tuplet_actual != 0) {
            sw_buffer_format(p->out, "\\tuplet %d/%d { ", piece->tuplet_actual, piece->tuplet_normal);
        }
        sw_buffer_append(p->out, piece->opens);
        put_graces(p, piece);
        bool inner = put_body(p, piece);
        put_value(p, piece);
        put_marks(p, piece, inner);
        for (int ends = 0; ends < piece->tuplets_end; ends++) {
            sw_buffer_string(p->out, " }");
        }
        bool checked = piece->ends_bar && p->bar_checks && i + 1 < slot->piece_count;
        sw_buffer_string(p->out, checked ? " |" : "");
    }
}

/* Whether something else than its one piece is written for a slot: a \breathe, or grace notes. */
static bool has_more(const sw_slot *slot)
{
    for (size_t i = 0; i < slot->piece_count; i++) {
        if (slot->pieces[i].cell->grace_count > 0) {
            return true;
        }
        for (size_t k = 0; k < slot->pieces[i].cell->mark_count; k++) {
            if (sw_mark_is_breath(slot->pieces[i].cell->marks[k].text)) {
                return true;
            }
        }
    }
    return false;
}

static void print_slot(sw_printer *p, const sw_slot *slot)
{
    const sw_draft_item *first = slot->items[0];
    bool brackets = (slot->piece_count > 1 || has_more(slot)) && stands_alone(p, first->music);
    sw_buffer_string(p->out, brackets ? "{ " : "");
    if (first->calls) {
        sw_buffer_append(p->out, sw_music_calls(p->reading, first->music));
    }
    sw_print_pieces(p, slot);
    sw_buffer_string(p->out, brackets ? " }" : "");
}

/* ---- all ---- */

/* The value that a slot inherits: that of the item before it, as it will be. */
static void find_value(sw_printer *p, const sw_item_order *order, const sw_draft_item *first,
                       const sw_draft_item *last_printed, sw_duration last_value)
{
    const sw_music *m = at(p, first->music);
    uint32_t before = sw_item_order_before(order, p->reading, m->file, m->start);
    if (before != SW_NO_INDEX && last_printed != NULL && last_printed->music == before) {
        p->value = last_value;
    } else if ((m->flags & SW_MUSIC_WRITTEN_VALUE) == 0) {
        p->value = sw_music_duration(m); /* what it inherits today */
    } else {
        p->value = before == SW_NO_INDEX ? sw_duration_quarter() : sw_music_duration(at(p, before));
    }
}

bool sw_draft_print(sw_draft *draft, sw_patch *patch)
{
    sw_item_order order = sw_item_order_new(draft->reading, draft->parent);
    for (size_t i = 0; i < draft->last_gone_count; i++) {
        sw_mend_octave(draft, draft->last_gone[i], patch);
    }
    sw_print_new(draft, &order, patch);
    sw_duration last_value = {0};
    const sw_draft_item *last = NULL;
    bool repeats_values = false;
    bool bar_checks = false;
    for (size_t i = 0; i < draft->item_count && draft->error == NULL;) {
        sw_slot slot = {.items = draft->items + i, .item_count = 1};
        while (
            i + slot.item_count < draft->item_count &&
            sw_slot_joins(draft, draft->items[i + slot.item_count - 1], draft->items[i + slot.item_count])) {
            slot.item_count++;
        }
        i += slot.item_count;
        const sw_draft_item *first = slot.items[0];
        const sw_draft_item *final = slot.items[slot.item_count - 1];
        uint32_t file = draft->reading->music[first->music].file;
        sw_buffer out = {0};
        sw_printer p = {.draft = draft, .reading = draft->reading, .out = &out};
        if (last == NULL || draft->reading->music[last->music].file != file) {
            repeats_values = sw_item_order_repeats_values(&order, draft->reading, file);
            bar_checks = sw_file_has_bar_checks(draft->reading, file);
        }
        p.repeats_values = repeats_values;
        p.bar_checks = bar_checks;
        p.relative = sw_entry_reference(draft, first->music, &p.reference);
        find_value(&p, &order, first, last, last_value);
        if (sw_slot_divide(draft, &slot)) {
            print_slot(&p, &slot);
            uint32_t end = sw_node_end(draft->reading, sw_draft_node(final));
            const sw_text *text = draft->reading->files[file].text;
            while (slot.piece_count == 0 && end < text->length && text->bytes[end] == ' ') {
                end++; /* nothing is left between the blanks on both sides */
            }
            sw_print_apart(patch, text, sw_run_begin(draft->reading, sw_draft_node(first)), end, &out);
            sw_mend_octave(draft, final->music, patch);
            sw_mend_value(&p, &order, file, end, patch);
            last = final;
            last_value = p.value;
        }
        free(slot.pieces);
        sw_buffer_free(&out);
    }
    sw_draft_print_copies(draft, &order, patch);
    sw_item_order_free(&order);
    return draft->error == NULL;
}
