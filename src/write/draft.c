#include "write/draft.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* ---- life ---- */

/* What the tree itself does not say: the way up, and the way back. */

uint32_t *sw_parents_of(const sw_reading *reading)
{
    uint32_t *parent = sw_alloc((reading->music_count + 1) * sizeof *parent);
    memset(parent, 0xff, (reading->music_count + 1) * sizeof *parent);
    for (uint32_t m = 0; m < reading->music_count; m++) {
        for (uint32_t c = reading->music[m].first; c != SW_NO_INDEX; c = reading->music[c].next) {
            parent[c] = m;
        }
    }
    return parent;
}

bool sw_draft_is_gone(const sw_draft *draft, uint32_t music)
{
    return draft->gone != NULL && draft->gone[music] != 0;
}

static uint32_t *find_before(const sw_reading *reading)
{
    uint32_t *before = sw_alloc((reading->music_count + 1) * sizeof *before);
    memset(before, 0xff, (reading->music_count + 1) * sizeof *before);
    for (uint32_t m = 0; m < reading->music_count; m++) {
        uint32_t last = SW_NO_INDEX;
        for (uint32_t c = reading->music[m].first; c != SW_NO_INDEX; c = reading->music[c].next) {
            before[c] = last;
            last = c;
        }
        if (last != SW_NO_INDEX) {
            before[reading->music[m].first] = last;
        }
    }
    return before;
}

sw_draft *sw_draft_new(const sw_edit_request *request)
{
    sw_draft *draft = sw_alloc_zero(1, sizeof *draft);
    draft->request = request;
    draft->reading = request->reading;
    draft->score = request->score;
    draft->parent = sw_parents_of(request->reading);
    draft->before = find_before(request->reading);
    draft->number = sw_alloc_zero(request->reading->music_count + 1, sizeof *draft->number);
    draft->wanted = sw_alloc_zero(request->score->event_count + 1, sizeof *draft->wanted);
    draft->arena = sw_arena_new();
    return draft;
}

void sw_draft_free(sw_draft *draft)
{
    if (draft == NULL) {
        return;
    }
    for (size_t i = 0; i < draft->item_count; i++) {
        free(draft->items[i]->cells);
        free(draft->items[i]->through);
    }
    for (size_t i = 0; draft->found != NULL && i < draft->request->main_count; i++) {
        free(draft->found[i]);
    }
    free(draft->found);
    free(draft->items);
    free(draft->texts);
    free(draft->drops);
    free(draft->variables);
    free(draft->voices);
    free(draft->staves);
    for (size_t i = 0; i < draft->copy_count; i++) {
        free(draft->copies[i].uses);
    }
    free(draft->copies);
    for (size_t i = 0; draft->bars.affected != NULL && i < draft->request->main_count; i++) {
        free(draft->bars.affected[i]);
    }
    free(draft->bars.affected);
    free(draft->bars.own_lines);
    for (size_t i = 0; draft->companions != NULL && i < draft->request->main_count; i++) {
        sw_draft_free(draft->companions[i]);
    }
    free(draft->companions);
    free(draft->gone);
    free(draft->last_gone);
    free(draft->exits);
    free(draft->names);
    free(draft->parent);
    free(draft->before);
    free(draft->number);
    free(draft->wanted);
    sw_arena_free(draft->arena);
    free(draft->error);
    free(draft);
}

static bool fail(sw_draft *draft, uint32_t file, uint32_t offset, const char *format, va_list arguments)
{
    if (draft->error == NULL) {
        const sw_text *text = draft->reading->files[file].text;
        sw_place place = sw_text_place(text, offset);
        sw_buffer message = {0};
        sw_buffer_format(&message, "%s:%u:%u: ", text->path, place.line, place.column + 1);
        sw_buffer_vformat(&message, format, arguments);
        draft->error = message.data;
    }
    return false;
}

bool sw_draft_fail_at(sw_draft *draft, uint32_t music, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    const sw_music *m = &draft->reading->music[music];
    fail(draft, m->file, m->start, format, arguments);
    va_end(arguments);
    return false;
}

bool sw_draft_fail(sw_draft *draft, uint32_t event, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    const sw_music *m = &draft->reading->music[draft->score->events[event].chord];
    fail(draft, m->file, m->start, format, arguments);
    va_end(arguments);
    return false;
}

/* ---- touching ---- */

static sw_cell_kind cell_kind(const sw_event *event, const sw_music *music)
{
    switch ((sw_event_kind)event->kind) {
    case SW_EVENT_NOTE:
    case SW_EVENT_DRUM:
        return SW_CELL_NOTES;
    case SW_EVENT_FULL_REST:
        return SW_CELL_FULL_REST;
    case SW_EVENT_SKIP:
        return SW_CELL_SKIP;
    default:
        return music->kind == SW_MUSIC_SKIP ? SW_CELL_SKIP : SW_CELL_REST;
    }
}

sw_cell_kind sw_draft_old_kind(const sw_draft *draft, const sw_draft_item *item)
{
    return cell_kind(&draft->score->events[item->event], &draft->reading->music[item->music]);
}

bool sw_draft_has_old_notes(const sw_draft *draft, const sw_draft_item *item, const sw_cell *cell)
{
    const sw_score *score = draft->score;
    uint32_t end = sw_voice_chord_end(score, item->event);
    bool same = sw_event_is_note(&score->events[item->event]) && end - item->event == cell->note_count;
    for (size_t n = 0; same && n < cell->note_count; n++) {
        const sw_event *event = &score->events[item->event + n];
        sw_pitch written = sw_score_written_pitch(draft->reading, score, event->frame, event->pitch);
        same = cell->notes[n].old == event->music && sw_pitch_equal(cell->notes[n].pitch, written);
    }
    return same;
}

/* Why the text of an item does not stand for what is heard; NULL when it does. */
static const char *obstacle(const sw_draft *draft, const sw_event *event)
{
    const sw_music *m = &draft->reading->music[event->chord];
    if ((m->flags & SW_MUSIC_CHORD_MODE) != 0) {
        return "this is written as a chord name, which can't be edited note by note";
    }
    if ((event->flags & SW_EVENT_UNCERTAIN) != 0) {
        return "this stands inside a command whose effect is not known";
    }
    if (m->kind == SW_MUSIC_NOTE && m->name_length == 0) {
        return "this note is made by a function and has no text of its own";
    }
    for (uint32_t at = event->chord; at != SW_NO_INDEX; at = draft->parent[at]) {
        const sw_music *around = &draft->reading->music[at];
        if (around->kind == SW_MUSIC_UNCERTAIN) {
            return "this is the result of a function, not as the text has it";
        }
        if (around->file != m->file && around->kind != SW_MUSIC_REFERENCE) {
            break; /* a variable's own music may be used anywhere */
        }
    }
    return NULL;
}

/* The written notes of the chord that begins with an event. */
static void copy_notes(sw_draft *draft, uint32_t first, sw_cell *cell)
{
    const sw_score *score = draft->score;
    uint32_t end = sw_voice_chord_end(score, first);
    cell->notes = sw_arena_alloc(draft->arena, (end - first) * sizeof *cell->notes);
    for (uint32_t e = first; e < end; e++) {
        const sw_event *event = &score->events[e];
        sw_pitch written = sw_score_written_pitch(draft->reading, score, event->frame, event->pitch);
        cell->notes[cell->note_count++] =
            (sw_cell_note){.pitch = written, .old = event->music, .marked = true, .tied = true};
    }
}

static void copy_marks(sw_draft *draft, uint32_t item, sw_cell *cell)
{
    const sw_music *m = &draft->reading->music[item];
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = draft->reading->music[c].next) {
        const sw_music *mark = &draft->reading->music[c];
        if (mark->kind == SW_MUSIC_MARK && mark->start >= m->end) {
            sw_cell_mark own = {c, sw_music_slice(draft->reading, c), sw_music_mark_class(draft->reading, c)};
            sw_cell_add_mark(draft, cell, own);
        }
    }
}

sw_draft_item *sw_draft_item_of(const sw_draft *draft, uint32_t music)
{
    uint32_t number = draft->number[music];
    return number == 0 ? NULL : draft->items[number - 1];
}

uint32_t sw_draft_node(const sw_draft_item *item)
{
    return item->dissolves == SW_NO_INDEX ? item->music : item->dissolves;
}

sw_draft_item *sw_draft_touch(sw_draft *draft, uint32_t event)
{
    uint32_t first = sw_voice_chord(draft->score, event);
    const sw_event *e = &draft->score->events[first];
    sw_draft_item *item = sw_draft_item_of(draft, e->chord);
    draft->wanted[first] = 1;
    if (item != NULL || draft->error != NULL) {
        return draft->error != NULL ? NULL : item;
    }
    const char *why = obstacle(draft, e);
    if (why != NULL) {
        sw_draft_fail(draft, first, "%s", why);
        return NULL;
    }
    const sw_music *m = &draft->reading->music[e->chord];
    item = sw_arena_alloc(draft->arena, sizeof *item);
    item->music = e->chord;
    item->event = first;
    item->length = sw_duration_length(sw_music_duration(m));
    item->scale = sw_rational_div(e->duration, item->length);
    item->calls = true;
    item->through = NULL;
    item->through_count = item->through_capacity = 0;
    item->dissolves = SW_NO_INDEX;
    item->cells = sw_grow(NULL, 0, &item->cell_capacity, sizeof *item->cells);
    item->cells[0] = (sw_cell){.length = item->length, .kind = cell_kind(e, m)};
    item->cells[0].start = sw_rational_zero();
    item->cell_count = 1;
    if (item->cells[0].kind == SW_CELL_NOTES) {
        copy_notes(draft, first, &item->cells[0]);
    }
    copy_marks(draft, e->chord, &item->cells[0]);
    draft->items = sw_grow(draft->items, draft->item_count, &draft->item_capacity, sizeof *draft->items);
    draft->items[draft->item_count++] = item;
    draft->number[e->chord] = (uint32_t)draft->item_count;
    return item;
}

sw_rational sw_draft_local(const sw_draft *draft, const sw_draft_item *item, uint32_t event,
                           sw_rational moment)
{
    sw_rational heard = sw_rational_sub(moment, draft->score->events[event].onset);
    return sw_rational_div(heard, item->scale);
}

/* ---- cells ---- */

bool sw_mark_is_breath(sw_slice text)
{
    return sw_slice_is(text, "\\breathe");
}

bool sw_mark_is_at_end(sw_mark_class class, sw_slice text)
{
    switch (class) {
    case SW_MARK_TIE:
    case SW_MARK_SLUR_END:
    case SW_MARK_PHRASE_END:
    case SW_MARK_GLISSANDO:
        return true;
    default:
        return sw_slice_ends(text, "\\laissezVibrer") || sw_slice_ends(text, "fermata") ||
               sw_mark_is_breath(text);
    }
}

bool sw_mark_is_of_playing(sw_mark_class class)
{
    switch (class) {
    case SW_MARK_ARTICULATION:
    case SW_MARK_SLUR_START:
    case SW_MARK_SLUR_END:
    case SW_MARK_PHRASE_START:
    case SW_MARK_PHRASE_END:
    case SW_MARK_TREMOLO:
        return true;
    default:
        return false;
    }
}

void sw_cell_add_mark(sw_draft *draft, sw_cell *cell, sw_cell_mark mark)
{
    sw_cell_mark *marks = sw_arena_alloc(draft->arena, (cell->mark_count + 1) * sizeof *marks);
    if (cell->mark_count > 0) {
        memcpy(marks, cell->marks, cell->mark_count * sizeof *marks);
    }
    marks[cell->mark_count++] = mark;
    cell->marks = marks;
}

void sw_cell_remove_mark(sw_cell *cell, size_t which)
{
    cell->mark_count--;
    memmove(cell->marks + which, cell->marks + which + 1, (cell->mark_count - which) * sizeof *cell->marks);
}

bool sw_cell_note_is_drum(const sw_reading *reading, const sw_cell_note *note)
{
    return note->old != SW_NO_INDEX && reading->music[note->old].kind == SW_MUSIC_DRUM;
}

bool sw_cell_note_is_own(const sw_draft *draft, const sw_draft_item *item, const sw_cell_note *note)
{
    return note->old != SW_NO_INDEX && draft->parent[note->old] == item->music;
}

bool sw_cell_note_keeps(const sw_reading *reading, const sw_cell_note *note, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_TIE ? note->tied : note->marked;
}

void sw_cell_set_notes(sw_draft *draft, sw_cell *cell, const sw_cell_note *notes, size_t count)
{
    cell->notes = sw_arena_alloc(draft->arena, (count + 1) * sizeof *cell->notes);
    if (count > 0) {
        memcpy(cell->notes, notes, count * sizeof *notes);
    }
    cell->note_count = count;
}

void sw_cell_add_note(sw_draft *draft, sw_cell *cell, sw_cell_note note)
{
    sw_cell_note *notes = sw_arena_alloc(draft->arena, (cell->note_count + 1) * sizeof *notes);
    size_t place = cell->note_count;
    while (place > 0 && sw_pitch_compare(cell->notes[place - 1].pitch, note.pitch) > 0) {
        place--;
    }
    for (size_t i = 0; i < cell->note_count; i++) {
        notes[i < place ? i : i + 1] = cell->notes[i];
    }
    notes[place] = note;
    cell->notes = notes;
    cell->note_count++;
}

void sw_cell_remove_note(sw_cell *cell, size_t which)
{
    cell->note_count--;
    memmove(cell->notes + which, cell->notes + which + 1, (cell->note_count - which) * sizeof *cell->notes);
}

size_t sw_draft_cut(sw_draft *draft, sw_draft_item *item, sw_rational at)
{
    size_t c = 0;
    while (c + 1 < item->cell_count && sw_rational_compare(item->cells[c + 1].start, at) <= 0) {
        c++;
    }
    if (sw_rational_compare(item->cells[c].start, at) >= 0) {
        return c;
    }
    if (sw_rational_compare(sw_rational_add(item->cells[c].start, item->cells[c].length), at) <= 0) {
        return c + 1; /* the end of the item */
    }
    item->cells = sw_grow(item->cells, item->cell_count, &item->cell_capacity, sizeof *item->cells);
    memmove(item->cells + c + 1, item->cells + c, (item->cell_count - c) * sizeof *item->cells);
    item->cell_count++;
    sw_cell *first = &item->cells[c];
    sw_cell *second = &item->cells[c + 1];
    second->start = at;
    second->length = sw_rational_sub(sw_rational_add(first->start, first->length), at);
    first->length = sw_rational_sub(at, first->start);
    second->apart = false;
    second->graces = NULL;
    second->grace_count = 0;
    first->tied = first->kind == SW_CELL_NOTES;
    sw_cell_set_notes(draft, second, first->notes, first->note_count);
    for (size_t i = 0; i < first->note_count; i++) {
        first->notes[i].tied = first->notes[i].binds = false;
        second->notes[i].marked = false;
        second->notes[i].text_count = 0;
    }
    sw_cell whole = *first;
    first->marks = second->marks = NULL;
    first->mark_count = second->mark_count = 0;
    for (size_t i = 0; i < whole.mark_count; i++) {
        const sw_cell_mark *mark = &whole.marks[i];
        bool end = first->kind == SW_CELL_NOTES && sw_mark_is_at_end(mark->class, mark->text);
        sw_cell_add_mark(draft, end ? second : first, *mark);
        if (mark->class == SW_MARK_TREMOLO) { /* every written value shows it */
            sw_cell_add_mark(draft, second, *mark);
        }
    }
    return c + 1;
}

/* Makes a rest of a cell: what cannot hang on a rest (articulations, ties, fingerings ...) goes; slurs and
 * beams are left in `loose`, which has room for all marks of the cell. Returns how many. */
static size_t silence(sw_cell *cell, sw_cell_mark *loose)
{
    size_t loose_count = 0;
    size_t kept = 0;
    for (size_t i = 0; i < cell->mark_count; i++) {
        switch (cell->marks[i].class) {
        case SW_MARK_SLUR_START:
        case SW_MARK_SLUR_END:
        case SW_MARK_PHRASE_START:
        case SW_MARK_PHRASE_END:
        case SW_MARK_BEAM_START:
        case SW_MARK_BEAM_END:
            loose[loose_count++] = cell->marks[i];
            break;
        case SW_MARK_DYNAMIC: /* what belongs to a moment, not to a note */
        case SW_MARK_HAIRPIN_START:
        case SW_MARK_HAIRPIN_END:
        case SW_MARK_PEDAL:
        case SW_MARK_SPAN_START:
        case SW_MARK_SPAN_END:
        case SW_MARK_TEXT:
            cell->marks[kept++] = cell->marks[i];
            break;
        default:
            break;
        }
    }
    cell->mark_count = kept;
    cell->note_count = 0;
    cell->kind = SW_CELL_REST;
    cell->tied = false;
    return loose_count;
}

void sw_draft_silence(sw_draft *draft, uint32_t first, uint32_t last, sw_cell *cell)
{
    sw_cell_mark *loose = sw_arena_alloc(draft->arena, (cell->mark_count + 1) * sizeof *loose);
    size_t count = silence(cell, loose);
    sw_draft_rehome(draft, first, last, loose, count);
}
