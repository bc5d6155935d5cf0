/* What is heard, as rows that the proof of an edit compares: one a chord or rest. Where the draft speaks,
 * rows that sound as one are joined, however they are written. */
#include "write/edit_rows.h"

#include <stdlib.h>
#include <string.h>

/* ---- rows ---- */

static int compare_slices(const void *a, const void *b)
{
    return sw_slice_compare(*(const sw_slice *)a, *(const sw_slice *)b);
}

int sw_row_compare(const sw_row *x, const sw_row *y)
{
    int order = sw_rational_compare(x->onset, y->onset);
    order = order != 0 ? order : sw_rational_compare(x->grace, y->grace);
    order = order != 0 ? order : (int)x->kind - (int)y->kind;
    order = order != 0 ? order : sw_rational_compare(x->length, y->length);
    order = order != 0 ? order : (x->note_count > y->note_count) - (x->note_count < y->note_count);
    for (size_t n = 0; order == 0 && n < x->note_count; n++) {
        order = sw_pitch_compare(x->pitches[n], y->pitches[n]);
        order = order != 0 ? order : strcmp(x->drums[n], y->drums[n]);
    }
    order = order != 0 ? order : (x->mark_count > y->mark_count) - (x->mark_count < y->mark_count);
    for (size_t i = 0; order == 0 && i < x->mark_count; i++) {
        order = sw_slice_compare(x->marks[i], y->marks[i]);
    }
    return order;
}

static int compare_row_entries(const void *a, const void *b)
{
    return sw_row_compare(a, b);
}

sw_row *sw_rows_add(sw_rows *all, const sw_row *r)
{
    all->list = sw_grow(all->list, all->count, &all->capacity, sizeof *all->list);
    all->list[all->count] = *r;
    return &all->list[all->count++];
}

static void add_note(sw_row *r, sw_pitch pitch, const char *drum)
{
    size_t place = r->note_count++;
    while (place > 0 &&
           (sw_pitch_compare(r->pitches[place - 1], pitch) > 0 ||
            (sw_pitch_equal(r->pitches[place - 1], pitch) && strcmp(r->drums[place - 1], drum) > 0))) {
        r->pitches[place] = r->pitches[place - 1];
        r->drums[place] = r->drums[place - 1];
        place--;
    }
    r->pitches[place] = pitch;
    r->drums[place] = drum;
}

static void make_room(const sw_edit_proof *p, sw_row *r, size_t notes)
{
    r->pitches = sw_arena_alloc(p->arena, (notes + 1) * sizeof *r->pitches);
    r->drums = sw_arena_alloc(p->arena, (notes + 1) * sizeof *r->drums);
}

static void add_mark(const sw_edit_proof *p, sw_row *r, sw_slice text)
{
    sw_slice *marks = sw_arena_alloc(p->arena, (r->mark_count + 1) * sizeof *marks);
    if (r->mark_count > 0) {
        memcpy(marks, r->marks, r->mark_count * sizeof *marks);
    }
    marks[r->mark_count++] = text;
    r->marks = marks;
}

static void add_marks_of(const sw_edit_proof *p, const sw_reading *reading, uint32_t music, sw_row *r)
{
    for (uint32_t c = reading->music[music].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind == SW_MUSIC_MARK) {
            add_mark(p, r, sw_music_slice(reading, c));
        }
    }
}

static char kind_of(const sw_event *event)
{
    return sw_event_is_note(event) ? 'n' : event->kind == SW_EVENT_SKIP ? 's' : 'r';
}

static const char *drum_of(const sw_reading *reading, uint32_t music)
{
    return reading->music[music].kind == SW_MUSIC_DRUM ? sw_reading_name(reading, reading->music[music].name)
                                                       : "";
}

/* A chord or rest as it is read. */
sw_row sw_row_read(const sw_edit_proof *p, const sw_reading *reading, const sw_score *score, uint32_t first)
{
    const sw_event *event = &score->events[first];
    sw_row r = {.onset = event->onset,
                .grace = {event->grace_num, event->grace_den},
                .length = event->duration,
                .voice = event->voice,
                .kind = kind_of(event)};
    uint32_t end = sw_voice_chord_end(score, first);
    make_room(p, &r, end - first);
    add_marks_of(p, reading, event->chord, &r);
    for (uint32_t e = first; e < end; e++) {
        const sw_event *note = &score->events[e];
        if (!sw_event_is_note(note)) {
            continue;
        }
        add_note(&r, note->kind == SW_EVENT_NOTE ? note->pitch : (sw_pitch){0, 0, 0},
                 note->kind == SW_EVENT_DRUM ? drum_of(reading, note->music) : "");
        if (note->music != note->chord && reading->music[note->chord].kind == SW_MUSIC_CHORD) {
            add_marks_of(p, reading, note->music, &r);
        }
    }
    return r;
}

/* ---- what is declared ---- */

/* How far a copy of an item (a variable's music read in another \relative) is from the item itself. */
static sw_pitch copy_interval(const sw_edit_proof *p, uint32_t copy, uint32_t item)
{
    const sw_music *a = &p->draft->reading->music[item];
    const sw_music *b = &p->before->music[copy];
    if (a->kind == SW_MUSIC_CHORD && a->first != SW_NO_INDEX && b->first != SW_NO_INDEX) {
        a = &p->draft->reading->music[a->first];
        b = &p->before->music[b->first];
    }
    bool notes = a->kind == SW_MUSIC_NOTE && b->kind == SW_MUSIC_NOTE;
    return notes ? sw_pitch_interval(a->pitch, b->pitch) : (sw_pitch){0, 0, 0};
}

static void add_inner_marks(const sw_edit_proof *p, const sw_draft_item *item, const sw_cell_note *note,
                            sw_row *r)
{
    const sw_reading *reading = p->draft->reading;
    bool own = sw_cell_note_is_own(p->draft, item, note);
    for (uint32_t c = own ? reading->music[note->old].first : SW_NO_INDEX; c != SW_NO_INDEX;
         c = reading->music[c].next) {
        if (reading->music[c].kind == SW_MUSIC_MARK && sw_cell_note_keeps(reading, note, c)) {
            add_mark(p, r, sw_music_slice(reading, c));
        }
    }
    for (size_t i = 0; i < note->text_count; i++) {
        add_mark(p, r, note->texts[i]);
    }
    if (note->binds) {
        add_mark(p, r, sw_slice_of("~"));
    }
}

/* The rows of the grace notes before a cell, which is heard as the row `main`. */
static void add_graces(const sw_edit_proof *p, const sw_score *score, uint32_t frame, const sw_cell *cell,
                       const sw_row *main, sw_rows *all)
{
    for (size_t i = 0; i < cell->grace_count; i++) {
        const sw_grace *grace = &cell->graces[i];
        sw_row r = {.onset = main->onset,
                    .grace = grace->offset,
                    .length = grace->length,
                    .voice = main->voice,
                    .kind = 'n',
                    .touched = true};
        make_room(p, &r, grace->cell.note_count);
        for (size_t n = 0; n < grace->cell.note_count; n++) {
            add_note(&r, sw_score_pitch(p->before, score, frame, grace->cell.notes[n].pitch), "");
            for (size_t t = 0; t < grace->cell.notes[n].text_count; t++) {
                add_mark(p, &r, grace->cell.notes[n].texts[t]);
            }
        }
        for (size_t k = 0; k < grace->cell.mark_count; k++) {
            add_mark(p, &r, grace->cell.marks[k].text);
        }
        sw_rows_add(all, &r);
    }
}

/* The rows of a touched item at one place where it is heard. */
void sw_rows_add_cells(const sw_edit_proof *p, const sw_score *score, uint32_t first,
                       const sw_draft_item *item, sw_rows *all)
{
    const sw_event *event = &score->events[first];
    sw_rational scale = sw_rational_div(event->duration, item->length);
    sw_pitch away = copy_interval(p, event->chord, item->music);
    for (size_t c = 0; c < item->cell_count; c++) {
        const sw_cell *cell = &item->cells[c];
        sw_row r = {.grace = {event->grace_num, event->grace_den},
                    .length = sw_rational_mul(cell->length, scale),
                    .voice = event->voice,
                    .touched = true};
        sw_rational start = sw_rational_mul(cell->start, scale);
        bool grace = (event->flags & SW_EVENT_GRACE) != 0;
        r.onset = grace ? event->onset : sw_rational_add(event->onset, start);
        r.grace = grace ? sw_rational_add(r.grace, start) : r.grace;
        r.kind = cell->kind == SW_CELL_NOTES ? 'n' : cell->kind == SW_CELL_SKIP ? 's' : 'r';
        make_room(p, &r, cell->note_count);
        for (size_t n = 0; n < cell->note_count; n++) {
            const sw_cell_note *note = &cell->notes[n];
            bool drum = sw_cell_note_is_drum(p->draft->reading, note);
            sw_pitch heard =
                sw_score_pitch(p->before, score, event->frame, sw_pitch_transpose(note->pitch, away));
            add_note(&r, drum ? (sw_pitch){0, 0, 0} : heard,
                     drum ? drum_of(p->draft->reading, note->old) : "");
            add_inner_marks(p, item, note, &r);
        }
        for (size_t i = 0; i < cell->mark_count; i++) {
            if (!sw_mark_is_breath(cell->marks[i].text)) { /* a command: see prove_edit.c */
                add_mark(p, &r, cell->marks[i].text);
            }
        }
        if (cell->tied) {
            add_mark(p, &r, sw_slice_of("~"));
        }
        sw_rows_add(all, &r);
        add_graces(p, score, event->frame, cell, &r, all);
    }
}

/* The second voice that begins beside an item, at one place where it is heard. */
void sw_rows_add_voice(const sw_edit_proof *p, const sw_score *score, uint32_t first,
                       const sw_draft_voice *voice, sw_rows *all)
{
    const sw_event *event = &score->events[first];
    for (size_t i = 0; i < voice->cell_count; i++) {
        const sw_voice_cell *c = &voice->cells[i];
        sw_row r = {.onset = sw_rational_add(event->onset, sw_rational_sub(c->from, voice->from)),
                    .grace = {0, 1},
                    .length = sw_rational_sub(c->to, c->from),
                    .voice = SW_NO_INDEX,
                    .kind = c->cell.kind == SW_CELL_NOTES ? 'n' : 's',
                    .touched = true};
        make_room(p, &r, c->cell.note_count);
        for (size_t n = 0; n < c->cell.note_count; n++) {
            add_note(&r, sw_score_pitch(p->before, score, event->frame, c->cell.notes[n].pitch), "");
        }
        for (size_t k = 0; k < c->cell.mark_count; k++) {
            add_mark(p, &r, c->cell.marks[k].text);
        }
        sw_rows_add(all, &r);
    }
}

/* ---- joining what sounds as one ---- */

static bool is_tied(const sw_row *r)
{
    for (size_t i = 0; i < r->mark_count; i++) {
        if (sw_mark_class_of(r->marks[i]) == SW_MARK_TIE) {
            return true;
        }
    }
    return false;
}

static bool has_text(const sw_row *r, sw_slice text)
{
    for (size_t i = 0; i < r->mark_count; i++) {
        if (sw_slice_equal(r->marks[i], text)) {
            return true;
        }
    }
    return false;
}

static bool sound_as_one(const sw_row *a, const sw_row *b)
{
    if (!a->touched || !b->touched || a->voice != b->voice || a->kind != b->kind ||
        !sw_rational_equal(sw_rational_add(a->onset, a->length), b->onset) ||
        !sw_rational_is_zero(a->grace) || !sw_rational_is_zero(b->grace)) {
        return false;
    }
    if (a->kind != 'n') {
        return b->mark_count == 0;
    }
    bool same = a->note_count == b->note_count && is_tied(a);
    for (size_t n = 0; same && n < a->note_count; n++) {
        same = sw_pitch_equal(a->pitches[n], b->pitches[n]) && strcmp(a->drums[n], b->drums[n]) == 0;
    }
    for (size_t i = 0; same && i < b->mark_count; i++) {
        sw_mark_class class = sw_mark_class_of(b->marks[i]);
        same =
            sw_mark_is_at_end(class, b->marks[i]) || (class == SW_MARK_TREMOLO && has_text(a, b->marks[i]));
    }
    return same;
}

static void join(const sw_edit_proof *p, sw_row *a, const sw_row *b)
{
    sw_row joined = *a;
    joined.length = sw_rational_add(a->length, b->length);
    joined.mark_count = 0;
    for (size_t i = 0; i < a->mark_count; i++) {
        if (sw_mark_class_of(a->marks[i]) != SW_MARK_TIE) {
            add_mark(p, &joined, a->marks[i]);
        }
    }
    for (size_t i = 0; i < b->mark_count; i++) {
        bool again = sw_mark_class_of(b->marks[i]) == SW_MARK_TREMOLO && has_text(a, b->marks[i]);
        if (!again) {
            add_mark(p, &joined, b->marks[i]);
        }
    }
    *a = joined;
}

/* The row among the first `count` that goes on in another one. Not always the last: several lines can share a
 * voice (<< \notes \dynamics >>). */
static sw_row *find_before(sw_rows *all, size_t count, const sw_row *r)
{
    enum { FAR = 24 };
    for (size_t i = count; i-- > 0 && count - i <= FAR;) {
        if (sound_as_one(&all->list[i], r)) {
            return &all->list[i];
        }
    }
    return NULL;
}

/* Voice by voice, notes apart from rests and skips: so that what may be joined stands close together. */
static int compare_lines(const void *a, const void *b)
{
    const sw_row *x = a;
    const sw_row *y = b;
    if (x->voice != y->voice) {
        return x->voice < y->voice ? -1 : 1;
    }
    int order = (int)x->kind - (int)y->kind;
    order = order != 0 ? order : sw_rational_compare(x->onset, y->onset);
    order = order != 0 ? order : sw_rational_compare(x->grace, y->grace);
    return order != 0 ? order : sw_row_compare(x, y);
}

void sw_rows_join(const sw_edit_proof *p, sw_rows *all)
{
    size_t kept = 0;
    if (all->count > 1) {
        qsort(all->list, all->count, sizeof *all->list, compare_lines);
    }
    for (size_t i = 0; i < all->count; i++) {
        sw_row *before = all->list[i].touched ? find_before(all, kept, &all->list[i]) : NULL;
        if (before != NULL) {
            join(p, before, &all->list[i]);
        } else {
            all->list[kept++] = all->list[i];
        }
    }
    all->count = kept;
    for (size_t i = 0; i < all->count; i++) {
        if (all->list[i].mark_count > 1) {
            qsort(all->list[i].marks, all->list[i].mark_count, sizeof(sw_slice), compare_slices);
        }
    }
    if (all->count > 1) {
        qsort(all->list, all->count, sizeof *all->list, compare_row_entries);
    }
}
