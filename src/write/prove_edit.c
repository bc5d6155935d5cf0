/* The proof of an edit: what is heard before, with the draft's cells in place of the touched items, must be
 * what is heard when the result is read.
 *
 * Both sides become rows, one a chord or rest, staff by staff. Outside of the touched items rows must agree
 * in everything: onset, length, pitches, marks. Where the draft speaks, a stretch may be written as one value
 * or as several tied ones, a rest in any values: there, neighbours that sound as one are joined on both sides
 * first. Bars, staves, settings and errors must agree as well. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "write/print.h"

/* ---- rows ---- */

typedef struct row {
    sw_rational onset;
    sw_rational grace;
    sw_rational length;
    uint32_t voice; /* for joining only */
    char kind;      /* 'n', 'r', 's' */
    bool touched;   /* the draft speaks here */
    size_t note_count;
    sw_pitch *pitches; /* in order of height */
    const char **drums;
    size_t mark_count;
    sw_slice *marks; /* in order of bytes */
} row;

typedef struct rows {
    row *list;
    size_t count;
    size_t capacity;
} rows;

/* One main file before and after. */
typedef struct proof {
    const sw_draft *draft;
    const sw_reading *before;
    const sw_reading *after;
    uint32_t *item; /* by music node of `before`: 1 + the draft item that is written there, 0 if none */
    sw_arena *arena;
    sw_word_mend *mend;
    char **error;
} proof;

static int compare_slices(const void *a, const void *b)
{
    return sw_slice_compare(*(const sw_slice *)a, *(const sw_slice *)b);
}

static int compare_rows(const row *x, const row *y)
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
    return compare_rows(a, b);
}

static row *add_row(rows *all, const row *r)
{
    all->list = sw_grow(all->list, all->count, &all->capacity, sizeof *all->list);
    all->list[all->count] = *r;
    return &all->list[all->count++];
}

static void add_note(row *r, sw_pitch pitch, const char *drum)
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

static void make_room(const proof *p, row *r, size_t notes)
{
    r->pitches = sw_arena_alloc(p->arena, (notes + 1) * sizeof *r->pitches);
    r->drums = sw_arena_alloc(p->arena, (notes + 1) * sizeof *r->drums);
}

static void add_mark(const proof *p, row *r, sw_slice text)
{
    sw_slice *marks = sw_arena_alloc(p->arena, (r->mark_count + 1) * sizeof *marks);
    if (r->mark_count > 0) {
        memcpy(marks, r->marks, r->mark_count * sizeof *marks);
    }
    marks[r->mark_count++] = text;
    r->marks = marks;
}

static void add_marks_of(const proof *p, const sw_reading *reading, uint32_t music, row *r)
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
static row read_row(const proof *p, const sw_reading *reading, const sw_score *score, uint32_t first)
{
    const sw_event *event = &score->events[first];
    row r = {.onset = event->onset,
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
static sw_pitch copy_interval(const proof *p, uint32_t copy, uint32_t item)
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

static void add_inner_marks(const proof *p, const sw_draft_item *item, const sw_cell_note *note, row *r)
{
    const sw_reading *reading = p->draft->reading;
    if (note->old == SW_NO_INDEX || p->draft->parent[note->old] != item->music) {
        return;
    }
    for (uint32_t c = reading->music[note->old].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind == SW_MUSIC_MARK) {
            bool tie = sw_music_mark_class(reading, c) == SW_MARK_TIE;
            if (tie ? note->tied : note->marked) {
                add_mark(p, r, sw_music_slice(reading, c));
            }
        }
    }
}

/* The rows of a touched item at one place where it is heard. */
static void add_cells(const proof *p, const sw_score *score, uint32_t first, const sw_draft_item *item,
                      rows *all)
{
    const sw_event *event = &score->events[first];
    sw_rational scale = sw_rational_div(event->duration, item->length);
    sw_pitch away = copy_interval(p, event->chord, item->music);
    for (size_t c = 0; c < item->cell_count; c++) {
        const sw_cell *cell = &item->cells[c];
        row r = {.grace = {event->grace_num, event->grace_den},
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
            bool drum = note->old != SW_NO_INDEX && p->draft->reading->music[note->old].kind == SW_MUSIC_DRUM;
            sw_pitch heard =
                sw_score_pitch(p->before, score, event->frame, sw_pitch_transpose(note->pitch, away));
            add_note(&r, drum ? (sw_pitch){0, 0, 0} : heard,
                     drum ? drum_of(p->draft->reading, note->old) : "");
            add_inner_marks(p, item, note, &r);
        }
        for (size_t i = 0; i < cell->mark_count; i++) {
            add_mark(p, &r, cell->marks[i].text);
        }
        if (cell->tied) {
            add_mark(p, &r, sw_slice_of("~"));
        }
        add_row(all, &r);
    }
}

/* The second voice that begins beside an item, at one place where it is heard. */
static void add_voice(const proof *p, const sw_score *score, uint32_t first, const sw_draft_voice *voice,
                      rows *all)
{
    const sw_event *event = &score->events[first];
    const sw_rational moments[] = {voice->from, voice->moment, voice->until, voice->to};
    for (size_t i = 0; i < 3; i++) {
        row r = {.onset = sw_rational_add(event->onset, sw_rational_sub(moments[i], voice->from)),
                 .grace = {0, 1},
                 .length = sw_rational_sub(moments[i + 1], moments[i]),
                 .voice = SW_NO_INDEX,
                 .kind = i == 1 ? 'n' : 's',
                 .touched = true};
        make_room(p, &r, voice->cell.note_count);
        for (size_t n = 0; i == 1 && n < voice->cell.note_count; n++) {
            add_note(&r, sw_score_pitch(p->before, score, event->frame, voice->cell.notes[n].pitch), "");
        }
        if (r.length.num > 0) {
            add_row(all, &r);
        }
    }
}

/* ---- joining what sounds as one ---- */

static size_t count_ties(const row *r)
{
    size_t ties = 0;
    for (size_t i = 0; i < r->mark_count; i++) {
        ties += sw_mark_class_of(r->marks[i]) == SW_MARK_TIE;
    }
    return ties;
}

static bool has_text(const row *r, sw_slice text)
{
    for (size_t i = 0; i < r->mark_count; i++) {
        if (sw_slice_equal(r->marks[i], text)) {
            return true;
        }
    }
    return false;
}

static bool sound_as_one(const row *a, const row *b)
{
    if (!a->touched || !b->touched || a->voice != b->voice || a->kind != b->kind ||
        !sw_rational_equal(sw_rational_add(a->onset, a->length), b->onset) ||
        !sw_rational_is_zero(a->grace) || !sw_rational_is_zero(b->grace)) {
        return false;
    }
    if (a->kind != 'n') {
        return b->mark_count == 0;
    }
    bool same = a->note_count == b->note_count && count_ties(a) > 0;
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

static void join(const proof *p, row *a, const row *b)
{
    row joined = *a;
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
static row *find_before(rows *all, size_t count, const row *r)
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
    const row *x = a;
    const row *y = b;
    if (x->voice != y->voice) {
        return x->voice < y->voice ? -1 : 1;
    }
    int order = (int)x->kind - (int)y->kind;
    order = order != 0 ? order : sw_rational_compare(x->onset, y->onset);
    order = order != 0 ? order : sw_rational_compare(x->grace, y->grace);
    return order != 0 ? order : compare_rows(x, y);
}

static void settle(const proof *p, rows *all)
{
    size_t kept = 0;
    if (all->count > 1) {
        qsort(all->list, all->count, sizeof *all->list, compare_lines);
    }
    for (size_t i = 0; i < all->count; i++) {
        row *before = all->list[i].touched ? find_before(all, kept, &all->list[i]) : NULL;
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

/* ---- comparing ---- */

static void refuse(const proof *p, const sw_reading *reading, const sw_score *score, uint32_t staff,
                   const row *r, const char *what)
{
    char label[32];
    char length[SW_RATIONAL_TEXT];
    char beat[SW_RATIONAL_TEXT];
    uint32_t bar = sw_score_bar_at(score, r->onset);
    sw_buffer text = {0};
    sw_buffer_format(&text,
                     "the edit is refused: in %s, bar %d, beat %s, \"%s\": ", p->before->files[0].text->path,
                     bar == SW_NO_INDEX ? 0 : score->bars[bar].number,
                     sw_rational_print(sw_score_beat(score, r->onset), beat),
                     sw_staff_label(reading, score, staff, label));
    sw_buffer_string(&text, r->kind == 'n' ? "a note" : r->kind == 'r' ? "a rest" : "a skip");
    for (size_t n = 0; n < r->note_count; n++) {
        char pitch[SW_PITCH_TEXT];
        sw_buffer_format(&text, " %s",
                         r->drums[n][0] != '\0' ? r->drums[n] : sw_pitch_print(r->pitches[n], pitch));
    }
    sw_buffer_format(&text, " of %s", sw_rational_print(r->length, length));
    for (size_t i = 0; i < r->mark_count; i++) {
        sw_buffer_format(&text, " %.*s", (int)r->marks[i].length, r->marks[i].data);
    }
    sw_buffer_format(&text, " %s; nothing is written", what);
    *p->error = text.data;
}

/* The item of the draft that decides about an event; NULL when none does. */
static const sw_draft_item *item_at(const proof *p, const sw_score *score, uint32_t event)
{
    uint32_t number = p->item[score->events[event].chord];
    const sw_draft_item *item = number == 0 ? NULL : p->draft->items[number - 1];
    bool other = item != NULL && item->through != SW_NO_INDEX &&
                 !sw_draft_passes(p->draft, p->before, score, event, item->through);
    return other ? NULL : item;
}

/* The events of a staff: they stand together in the score. */
typedef struct range {
    uint32_t first;
    uint32_t end;
} range;

static range *staff_ranges(const proof *p, const sw_score *score)
{
    range *ranges = sw_arena_alloc(p->arena, (score->staff_count + 1) * sizeof *ranges);
    for (uint32_t i = 0; i < score->event_count; i++) {
        range *r = &ranges[score->voices[score->events[i].voice].staff];
        r->first = r->end == 0 ? i : r->first;
        r->end = i + 1;
    }
    return ranges;
}

static bool is_touched(const proof *p, const sw_score *score, range events)
{
    for (uint32_t e = events.first; e < events.end; e++) {
        if (item_at(p, score, e) != NULL) {
            return true;
        }
    }
    return false;
}

static void expect(const proof *p, const sw_score *score, range events, rows *all)
{
    for (uint32_t e = events.first; e < events.end; e = sw_voice_chord_end(score, e)) {
        const sw_draft_item *item = item_at(p, score, e);
        if (item == NULL) {
            row r = read_row(p, p->before, score, e);
            add_row(all, &r);
        } else {
            add_cells(p, score, e, item, all);
            for (size_t v = 0; v < p->draft->voice_count; v++) {
                if (p->draft->voices[v].item == item) {
                    add_voice(p, score, e, &p->draft->voices[v], all);
                }
            }
        }
    }
}

typedef struct span {
    sw_rational from;
    sw_rational to;
} span;

static int compare_spans(const void *a, const void *b)
{
    return sw_rational_compare(((const span *)a)->from, ((const span *)b)->from);
}

/* The stretches of a staff where the draft speaks, in order and joined. */
static size_t find_spans(const proof *p, const rows *expected, span **spans)
{
    size_t count = 0;
    *spans = sw_arena_alloc(p->arena, (expected->count + 1) * sizeof **spans);
    for (size_t i = 0; i < expected->count; i++) {
        const row *e = &expected->list[i];
        if (e->touched) {
            (*spans)[count++] = (span){e->onset, sw_rational_add(e->onset, e->length)};
        }
    }
    if (count > 1) {
        qsort(*spans, count, sizeof **spans, compare_spans);
    }
    size_t kept = 0;
    for (size_t i = 0; i < count; i++) {
        if (kept > 0 && sw_rational_compare((*spans)[i].from, (*spans)[kept - 1].to) <= 0) {
            (*spans)[kept - 1].to = sw_rational_max((*spans)[kept - 1].to, (*spans)[i].to);
        } else {
            (*spans)[kept++] = (*spans)[i];
        }
    }
    return kept;
}

/* On both sides all rows that begin in such a stretch may be joined, whichever voice they are in. */
static void mark_touched(rows *all, const span *spans, size_t count)
{
    for (size_t i = 0; i < all->count; i++) {
        row *r = &all->list[i];
        size_t low = 0;
        size_t high = count;
        while (low < high) { /* the last stretch that begins no later */
            size_t middle = low + (high - low) / 2;
            if (sw_rational_compare(spans[middle].from, r->onset) <= 0) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        r->touched = low > 0 && sw_rational_compare(r->onset, spans[low - 1].to) < 0;
    }
}

static bool compare_staff(const proof *p, const sw_score *before, const sw_score *after, uint32_t staff,
                          range old, range new)
{
    rows expected = {0};
    rows observed = {0};
    expect(p, before, old, &expected);
    for (uint32_t e = new.first; e < new.end; e = sw_voice_chord_end(after, e)) {
        row r = read_row(p, p->after, after, e);
        add_row(&observed, &r);
    }
    span *spans;
    size_t span_count = find_spans(p, &expected, &spans);
    mark_touched(&expected, spans, span_count);
    mark_touched(&observed, spans, span_count);
    settle(p, &expected);
    settle(p, &observed);
    size_t i = 0;
    while (i < expected.count && i < observed.count &&
           compare_rows(&expected.list[i], &observed.list[i]) == 0) {
        i++;
    }
    bool same = i == expected.count && i == observed.count;
    if (!same) {
        bool lost = i < expected.count &&
                    (i >= observed.count || compare_rows(&expected.list[i], &observed.list[i]) < 0);
        refuse(p, lost ? p->before : p->after, lost ? before : after, staff,
               lost ? &expected.list[i] : &observed.list[i],
               lost ? "is wanted, but would not be heard" : "would be heard, but nobody asked for it");
    }
    free(expected.list);
    free(observed.list);
    return same;
}

static bool same_marks(const proof *p, uint32_t old, uint32_t new)
{
    uint32_t a = p->before->music[old].first;
    uint32_t b = p->after->music[new].first;
    while (a != SW_NO_INDEX && b != SW_NO_INDEX) {
        bool mark = p->before->music[a].kind == SW_MUSIC_MARK;
        if (mark != (p->after->music[b].kind == SW_MUSIC_MARK) ||
            (mark && !sw_slice_equal(sw_music_slice(p->before, a), sw_music_slice(p->after, b)))) {
            return false;
        }
        a = p->before->music[a].next;
        b = p->after->music[b].next;
    }
    return a == b;
}

/* A staff that no change touches: event by event. */
static bool compare_untouched(const proof *p, const sw_score *before, const sw_score *after, uint32_t staff,
                              range old, range new)
{
    uint32_t count = old.end - old.first;
    bool same = count == new.end - new.first;
    for (uint32_t i = 0; i < count && same; i++) {
        const sw_event *a = &before->events[old.first + i];
        const sw_event *b = &after->events[new.first + i];
        same = a->kind == b->kind && sw_rational_equal(a->onset, b->onset) &&
               sw_rational_equal(a->duration, b->duration) && a->grace_num == b->grace_num &&
               a->grace_den == b->grace_den &&
               (a->kind != SW_EVENT_NOTE || sw_pitch_equal(a->pitch, b->pitch)) &&
               same_marks(p, a->chord, b->chord) &&
               (a->chord == a->music || same_marks(p, a->music, b->music));
    }
    return same || compare_staff(p, before, after, staff, old, new);
}

static bool say(const proof *p, const char *what)
{
    sw_buffer text = {0};
    sw_buffer_format(&text, "the edit is refused: in %s, %s; nothing is written",
                     p->before->files[0].text->path, what);
    *p->error = text.data;
    return false;
}

static bool compare_bars(const proof *p, const sw_score *before, const sw_score *after)
{
    bool same = before->bar_count == after->bar_count;
    for (size_t i = 0; i < before->bar_count && same; i++) {
        const sw_bar *a = &before->bars[i];
        const sw_bar *b = &after->bars[i];
        same = a->number == b->number && a->beats == b->beats && a->beat_value == b->beat_value &&
               sw_rational_equal(a->start, b->start) && sw_rational_equal(a->length, b->length);
    }
    return same || say(p, "the bars would not be the same");
}

static bool same_name(const proof *p, uint32_t old, uint32_t new)
{
    return strcmp(sw_reading_name(p->before, old), sw_reading_name(p->after, new)) == 0;
}

static bool is_declared_staff(const proof *p, const sw_score *after, uint32_t staff)
{
    for (size_t i = 0; i < p->draft->staff_count; i++) {
        if (strcmp(sw_reading_name(p->after, after->staves[staff].id), p->draft->staves[i].name) == 0) {
            return true;
        }
    }
    return false;
}

/* The staff of the result for each staff before; NULL when they are not the same, declared ones aside. */
static uint32_t *match_staves(const proof *p, const sw_score *before, const sw_score *after)
{
    uint32_t *match = sw_arena_alloc(p->arena, (before->staff_count + 1) * sizeof *match);
    uint32_t count = 0;
    bool same = true;
    for (uint32_t s = 0; s < after->staff_count && same; s++) {
        if (is_declared_staff(p, after, s)) {
            continue;
        }
        same = count < before->staff_count;
        const sw_staff *a = same ? &before->staves[count] : NULL;
        const sw_staff *b = &after->staves[s];
        same = same && same_name(p, a->type, b->type) && same_name(p, a->id, b->id) &&
               same_name(p, a->instrument, b->instrument);
        match[count++] = s;
    }
    return same && count == before->staff_count ? match : NULL;
}

/* A declared staff holds rests and nothing else, to the end. */
static bool is_silent(const proof *p, const sw_score *score, uint32_t staff, range events)
{
    sw_rational at = sw_rational_zero();
    for (uint32_t e = events.first; e < events.end; e++) {
        const sw_event *event = &score->events[e];
        if (event->kind != SW_EVENT_FULL_REST || !sw_rational_equal(event->onset, at)) {
            row r = read_row(p, p->after, score, e);
            refuse(p, p->after, score, staff, &r, "stands in the new staff, which should be silent");
            return false;
        }
        at = sw_event_end(event);
    }
    return sw_rational_equal(at, score->length) || say(p, "the new staff would not be as long as the others");
}

/* Whether a command of the result is one that a declared change brings along. */
static bool is_declared_setting(const proof *p, const sw_score *after, const sw_setting *setting)
{
    if (setting->staff != SW_NO_INDEX && is_declared_staff(p, after, setting->staff)) {
        return true;
    }
    sw_slice text = sw_music_slice(p->after, setting->music);
    return p->draft->voice_count > 0 && (sw_slice_is(text, "\\voiceOne") || sw_slice_is(text, "\\voiceTwo") ||
                                         sw_slice_is(text, "\\oneVoice"));
}

static bool same_setting(const proof *p, const sw_setting *a, const sw_setting *b, const uint32_t *match)
{
    sw_music_kind kind = (sw_music_kind)p->before->music[a->music].kind;
    uint32_t staff = a->staff == SW_NO_INDEX ? SW_NO_INDEX : match[a->staff];
    return sw_rational_equal(a->onset, b->onset) && staff == b->staff &&
           kind == (sw_music_kind)p->after->music[b->music].kind &&
           (kind == SW_MUSIC_ALTERNATIVES || /* their text holds the notes */
            sw_slice_equal(sw_music_slice(p->before, a->music), sw_music_slice(p->after, b->music)));
}

static bool compare_settings(const proof *p, const sw_score *before, const sw_score *after,
                             const uint32_t *match)
{
    size_t i = 0;
    for (size_t k = 0; k < after->setting_count; k++) {
        const sw_setting *b = &after->settings[k];
        if (i < before->setting_count && same_setting(p, &before->settings[i], b, match)) {
            i++;
        } else if (!is_declared_setting(p, after, b)) {
            i = SIZE_MAX;
            break;
        }
    }
    return i == before->setting_count || say(p, "commands between the notes would be lost, added or moved");
}

/* The next syllable that is set, from an index on: an underscore takes a note without being seen. */
static size_t next_word(const sw_score *score, size_t i)
{
    while (i < score->syllable_count && (score->syllables[i].flags & SW_SYLLABLE_EMPTY) != 0) {
        i++;
    }
    return i;
}

/* What would bring a syllable back to its note: an underscore before it where it comes too early; one less
 * where it comes too late and has one before it. */
static void mend_word(const proof *p, const sw_score *before, size_t i, bool early)
{
    const sw_syllable *syllable = &before->syllables[i];
    if (!early && (i == 0 || (before->syllables[i - 1].flags & SW_SYLLABLE_EMPTY) == 0 ||
                   before->syllables[i - 1].line != syllable->line)) {
        return;
    }
    const sw_music *m = &p->before->music[early ? syllable->music : before->syllables[i - 1].music];
    const sw_text *text = p->before->files[m->file].text;
    *p->mend = (sw_word_mend){text, m->start, early ? m->start : m->end, early ? "_ " : ""};
    while (!early && p->mend->end < text->length && text->bytes[p->mend->end] == ' ') {
        p->mend->end++;
    }
}

/* Syllables are sung on the notes that are there: where one comes or goes, all that follow would move. */
static bool compare_words(const proof *p, const sw_score *before, const sw_score *after)
{
    size_t i = next_word(before, 0);
    size_t k = next_word(after, 0);
    while (i < before->syllable_count && k < after->syllable_count &&
           sw_rational_equal(before->syllables[i].onset, after->syllables[k].onset) &&
           before->syllables[i].line == after->syllables[k].line &&
           same_name(p, p->before->music[before->syllables[i].music].name,
                     p->after->music[after->syllables[k].music].name)) {
        i = next_word(before, i + 1);
        k = next_word(after, k + 1);
    }
    if (i == before->syllable_count && k == after->syllable_count) {
        return true;
    }
    bool both = i < before->syllable_count && k < after->syllable_count &&
                before->syllables[i].line == after->syllables[k].line;
    int order = both ? sw_rational_compare(after->syllables[k].onset, before->syllables[i].onset) : 1;
    if (i < before->syllable_count && order != 0) { /* without a note at the end of its line it is late, too */
        mend_word(p, before, i, order < 0);
    }
    const sw_score *score = i < before->syllable_count ? before : after;
    const sw_reading *reading = i < before->syllable_count ? p->before : p->after;
    const sw_syllable *syllable = &score->syllables[i < before->syllable_count ? i : k];
    uint32_t bar = sw_score_bar_at(score, syllable->onset);
    const char *what = sw_arena_format(
        p->arena, "the words would be sung on other notes, from \"%s\" in bar %d on; mend the lyrics first",
        sw_reading_name(reading, reading->music[syllable->music].name),
        bar == SW_NO_INDEX ? 0 : score->bars[bar].number);
    return say(p, what);
}

static bool compare_score(const proof *p, const sw_score *before, const sw_score *after)
{
    const uint32_t *match = match_staves(p, before, after);
    if (match == NULL) {
        return say(p, "the staves would not be the same");
    }
    if (!compare_bars(p, before, after)) {
        return false;
    }
    range *old = staff_ranges(p, before);
    range *new = staff_ranges(p, after);
    for (uint32_t s = 0; s < before->staff_count; s++) {
        bool same = is_touched(p, before, old[s])
                        ? compare_staff(p, before, after, s, old[s], new[match[s]])
                        : compare_untouched(p, before, after, s, old[s], new[match[s]]);
        if (!same) {
            return false;
        }
    }
    for (uint32_t s = 0; s < after->staff_count; s++) {
        if (is_declared_staff(p, after, s) && !is_silent(p, after, s, new[s])) {
            return false;
        }
    }
    return compare_settings(p, before, after, match) && compare_words(p, before, after);
}

static size_t count_errors(const sw_reading *reading)
{
    size_t count = 0;
    for (size_t i = 0; i < reading->findings.count; i++) {
        count += reading->findings.items[i].severity == SW_ERROR;
    }
    return count;
}

static bool prove_main(const sw_draft *draft, const sw_reading *before, const sw_read_options *options,
                       sw_word_mend *mend, char **error)
{
    sw_reading *after = sw_read(before->files[0].text->path, options, error);
    if (after == NULL) {
        return false;
    }
    proof p = {draft, before, after, sw_draft_find_items(draft, before), sw_arena_new(), mend, error};
    bool same = true;
    if (count_errors(after) > count_errors(before)) {
        same = say(&p, "the result would have an error");
    } else if (after->score_count != before->score_count) {
        same = say(&p, "the number of scores would change");
    }
    for (size_t s = 0; s < before->score_count && same; s++) {
        same = compare_score(&p, &before->scores[s], &after->scores[s]);
    }
    free(p.item);
    sw_arena_free(p.arena);
    sw_reading_free(after);
    return same;
}

bool sw_draft_prove(const sw_draft *draft, const sw_patch *patch, sw_word_mend *mend, char **error)
{
    *mend = (sw_word_mend){0};
    const sw_edit_request *request = draft->request;
    size_t given = request->options == NULL ? 0 : request->options->overlay_count;
    const sw_text **overlays = sw_alloc((patch->count + given + 1) * sizeof *overlays);
    for (size_t i = 0; i < patch->count; i++) {
        overlays[i] = patch->files[i].after;
    }
    for (size_t i = 0; i < given; i++) {
        overlays[patch->count + i] = request->options->overlays[i];
    }
    sw_read_options with = request->options == NULL ? (sw_read_options){0} : *request->options;
    with.overlays = overlays;
    with.overlay_count = patch->count + given;
    bool proved = true;
    for (size_t i = 0; i < request->main_count && proved; i++) {
        proved = prove_main(draft, request->mains[i], &with, mend, error);
    }
    free(overlays);
    return proved;
}
