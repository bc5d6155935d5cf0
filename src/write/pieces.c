#include "write/pieces.h"

#include <stdlib.h>
#include <string.h>

#include "stavewright/metre.h"
#include "write/entry.h"

/* ---- what belongs together ---- */

static bool same_notes(const sw_cell *a, const sw_cell *b)
{
    bool same = a->note_count == b->note_count;
    for (size_t n = 0; n < a->note_count && same; n++) {
        same = sw_pitch_equal(a->notes[n].pitch, b->notes[n].pitch) && a->notes[n].old == b->notes[n].old;
    }
    return same;
}

static bool has_mark(const sw_cell *cell, sw_mark_class class)
{
    for (size_t i = 0; i < cell->mark_count; i++) {
        if (cell->marks[i].class == class) {
            return true;
        }
    }
    return false;
}

/* Whether a cell goes on in the next without anything to be seen between them. */
static bool is_one_stretch(const sw_cell *cell, const sw_cell *next)
{
    if (next->apart || next->grace_count > 0 || cell->in != next->in) {
        return false;
    }
    if (cell->kind != SW_CELL_NOTES) {
        bool rests = cell->kind != SW_CELL_SKIP && next->kind != SW_CELL_SKIP;
        return next->kind != SW_CELL_NOTES && (rests || cell->kind == next->kind) && next->mark_count == 0;
    }
    for (size_t i = 0; i < next->mark_count; i++) {
        bool tremolo = next->marks[i].class == SW_MARK_TREMOLO && has_mark(cell, SW_MARK_TREMOLO);
        if (!tremolo && !sw_mark_is_at_end(next->marks[i].class, next->marks[i].text)) {
            return false;
        }
    }
    return cell->tied && next->kind == SW_CELL_NOTES && same_notes(cell, next);
}

/* Whether cells stand in one tuplet that is written anew. */
static bool share_tuplet(const sw_cell *cell, const sw_cell *next)
{
    const sw_tuplet_bracket *a = cell->in == NULL ? NULL : cell->in->bracket;
    const sw_tuplet_bracket *b = next->in == NULL ? NULL : next->in->bracket;
    return a != NULL && b != NULL && sw_tuplet_outermost(a) == sw_tuplet_outermost(b);
}

static bool only_blanks_between(const sw_reading *reading, uint32_t item, uint32_t next, bool lines)
{
    const sw_text *text = reading->files[reading->music[item].file].text;
    sw_slice between = sw_text_slice(text, sw_node_end(reading, item), sw_run_begin(reading, next));
    return sw_slice_trim(between).length == 0 &&
           (lines || memchr(between.data, '\n', between.length) == NULL);
}

static sw_rational factor_of(const sw_reading *reading, uint32_t item)
{
    sw_duration d = sw_music_duration(&reading->music[item]);
    return sw_rational_make(d.factor_num, d.factor_den);
}

bool sw_slot_joins(const sw_draft *draft, sw_draft_item *item, sw_draft_item *next)
{
    const sw_reading *reading = draft->reading;
    uint32_t from = sw_draft_node(item);
    uint32_t to = sw_draft_node(next);
    const sw_music *a = &reading->music[from];
    const sw_music *b = &reading->music[to];
    uint32_t around = draft->parent[from];
    bool empty = item->cell_count == 0 || next->cell_count == 0; /* grace notes that go */
    const sw_cell *last = empty ? NULL : &item->cells[item->cell_count - 1];
    bool tuplet = !empty && share_tuplet(last, &next->cells[0]);
    if (from == to) {
        return true; /* one bracket that goes */
    }
    return around != SW_NO_INDEX && reading->music[around].kind == SW_MUSIC_SEQUENCE && a->next == to &&
           a->file == b->file && a->start < b->start &&
           (empty || sw_rational_equal(item->scale, next->scale)) &&
           sw_rational_equal(factor_of(reading, item->music), factor_of(reading, next->music)) &&
           sw_music_calls(reading, next->music).length == 0 &&
           only_blanks_between(reading, from, to, tuplet) &&
           (empty || tuplet || is_one_stretch(last, &next->cells[0]));
}

/* ---- values ---- */

enum { MOST_VALUES = 64 };

typedef struct stretch {
    sw_cell cell; /* notes, and the marks of all cells together */
    const sw_draft_item *item;
    sw_rational length; /* written, over all items */
    bool whole;
} stretch;

static void add_piece(sw_slot *slot, const sw_piece *piece)
{
    slot->pieces = sw_grow(slot->pieces, slot->piece_count, &slot->piece_capacity, sizeof *slot->pieces);
    slot->pieces[slot->piece_count++] = *piece;
}

static void add_values(sw_slot *slot, const stretch *s, const sw_cell *cell, char letter,
                       const sw_duration *values, size_t count, sw_rational factor)
{
    for (size_t i = 0; i < count; i++) {
        sw_piece piece = {.letter = letter, .value = values[i], .cell = cell, .item = s->item};
        piece.value.factor_num = (int32_t)(piece.value.factor_num * factor.num);
        piece.value.factor_den = (int32_t)(piece.value.factor_den * factor.den);
        add_piece(slot, &piece);
    }
}

static char letter_of(const sw_cell *cell)
{
    static const char letters[] = {
        [SW_CELL_NOTES] = 'n', [SW_CELL_REST] = 'r', [SW_CELL_FULL_REST] = 'R', [SW_CELL_SKIP] = 's'};
    return letters[cell->kind];
}

/* Whether an item stands in the metre: in no tuplet, and not among grace notes. */
static bool is_in_metre(const sw_draft *draft, const sw_draft_item *item)
{
    const sw_rational one = {1, 1};
    return sw_rational_equal(item->scale, one) &&
           (draft->score->events[item->event].flags & SW_EVENT_GRACE) == 0;
}

/* One stretch inside of one bar, in its metre. 0 when it can't be said. */
static size_t values_in_bar(const sw_cell *cell, const sw_bar *bar, sw_rational from, sw_rational length,
                            sw_duration values[MOST_VALUES])
{
    sw_metre metre = {bar->beats, bar->beat_value};
    sw_rational position = sw_rational_add(bar->first, sw_rational_sub(from, bar->start));
    if (!sw_rational_is_dyadic(length)) {
        return 0;
    }
    if (!sw_rational_is_dyadic(position) || position.num < 0) {
        return sw_metre_free(length, values, MOST_VALUES);
    }
    return cell->kind == SW_CELL_NOTES ? sw_metre_notes(metre, position, length, values, MOST_VALUES)
                                       : sw_metre_rests(metre, position, length, values, MOST_VALUES);
}

/* A stretch that follows the metre: bar by bar, whole bars of rest together. */
static bool divide_in_metre(const sw_draft *draft, sw_slot *slot, const stretch *s, const sw_cell *cell,
                            sw_rational from, sw_rational until)
{
    const sw_score *score = draft->score;
    const sw_rational one = {1, 1};
    for (uint32_t b = sw_score_bar_at(score, from); sw_rational_compare(from, until) < 0; b++) {
        if (b >= score->bar_count) {
            return false;
        }
        const sw_bar *bar = &score->bars[b];
        sw_rational bar_end = sw_rational_add(bar->start, bar->length);
        sw_rational end = sw_rational_min(until, bar_end);
        if (sw_rational_compare(end, from) <= 0) {
            end = until; /* behind the last bar */
        }
        bool full = cell->kind != SW_CELL_NOTES && sw_rational_equal(from, bar->start) &&
                    sw_rational_equal(end, bar_end) &&
                    (cell->kind == SW_CELL_FULL_REST || sw_rational_equal(bar->length, bar->metre));
        if (full) {
            int32_t count = 1;
            while (b + 1 < score->bar_count && sw_rational_equal(score->bars[b + 1].length, bar->length) &&
                   sw_rational_compare(sw_rational_add(end, bar->length), until) <= 0) {
                end = sw_rational_add(end, bar->length);
                count++;
                b++;
            }
            sw_duration value = sw_duration_of(bar->length);
            value.factor_num *= count; /* R1*4, R2.*2 */
            add_values(slot, s, cell, 'R', &value, 1, one);
            bar_end = end;
        } else {
            sw_duration values[MOST_VALUES];
            size_t count = values_in_bar(cell, bar, from, sw_rational_sub(end, from), values);
            if (count == 0 || count > MOST_VALUES) {
                return false;
            }
            add_values(slot, s, cell, cell->kind == SW_CELL_NOTES ? 'n' : 'r', values, count, one);
        }
        slot->pieces[slot->piece_count - 1].ends_bar = sw_rational_equal(end, bar_end);
        from = end;
    }
    return true;
}

/* A stretch in a tuplet, among grace notes or of stretched values (c4*2/3): the fewest values. */
static bool divide_freely(sw_slot *slot, const stretch *s, const sw_cell *cell, sw_rational factor)
{
    sw_duration values[MOST_VALUES];
    size_t count = sw_metre_free(sw_rational_div(s->length, factor), values, MOST_VALUES);
    if (count == 0 || count > MOST_VALUES) {
        return false;
    }
    add_values(slot, s, cell, cell->kind == SW_CELL_NOTES ? 'n' : 'r', values, count, factor);
    return true;
}

static bool say_unwritable(sw_draft *draft, const stretch *s)
{
    char text[SW_RATIONAL_TEXT];
    return sw_draft_fail(draft, s->item->event,
                         sw_rational_is_dyadic(s->length)
                             ? "no row of note values says %s whole notes here"
                             : "only a tuplet says %s whole notes, and none is written anew here",
                         sw_rational_print(s->length, text));
}

static bool divide_stretch(sw_draft *draft, sw_slot *slot, const stretch *s)
{
    const sw_event *event = &draft->score->events[s->item->event];
    sw_cell *cell = sw_arena_alloc(draft->arena, sizeof *cell);
    *cell = s->cell;
    size_t first = slot->piece_count;
    sw_rational factor = factor_of(draft->reading, s->item->music);
    const sw_rational one = {1, 1};
    bool done = true;
    if (s->whole) {
        sw_duration value = sw_music_duration(&draft->reading->music[s->item->music]);
        add_values(slot, s, cell, letter_of(cell), &value, 1, one);
    } else if (cell->in != NULL) {
        sw_rational end = sw_rational_add(sw_rational_add(event->onset, cell->start), s->length);
        uint32_t bar = sw_score_bar_at(draft->score, end);
        add_values(slot, s, cell, letter_of(cell), &cell->in->value, 1, one);
        slot->pieces[first].ends_bar =
            bar != SW_NO_INDEX && sw_rational_equal(draft->score->bars[bar].start, end);
    } else if (cell->kind == SW_CELL_SKIP) {
        sw_duration value = sw_duration_of(s->length);
        add_values(slot, s, cell, 's', &value, 1, one);
    } else {
        bool notes = sw_draft_old_kind(draft, s->item) == SW_CELL_NOTES; /* c4*2/3 is a note out of metre */
        sw_rational from = sw_rational_add(event->onset, cell->start);
        done = is_in_metre(draft, s->item) && (!notes || sw_rational_equal(factor, one)) &&
               divide_in_metre(draft, slot, s, cell, from, sw_rational_add(from, s->length));
        if (!done) {
            slot->piece_count = first;
            done = divide_freely(slot, s, cell, factor);
        }
    }
    if (!done) {
        return say_unwritable(draft, s);
    }
    slot->pieces[first].first = true;
    slot->pieces[first].whole = s->whole;
    slot->pieces[slot->piece_count - 1].last = true;
    slot->pieces[slot->piece_count - 1].tied = cell->tied;
    return true;
}

bool sw_slot_add_fresh(sw_draft *draft, sw_slot *slot, const sw_draft_item *item, const sw_cell *cell,
                       const sw_duration *value, sw_rational from, sw_rational until)
{
    stretch s = {.cell = *cell, .item = item, .length = sw_rational_sub(until, from)};
    size_t first = slot->piece_count;
    sw_cell *own = sw_arena_alloc(draft->arena, sizeof *own);
    *own = *cell;
    const sw_rational one = {1, 1};
    if (s.length.num <= 0) {
        return true;
    }
    if (value != NULL || cell->kind == SW_CELL_SKIP) {
        sw_duration whole = value != NULL ? *value : sw_duration_of(s.length);
        uint32_t bar = sw_score_bar_at(draft->score, until);
        add_values(slot, &s, own, letter_of(cell), &whole, 1, one);
        slot->pieces[slot->piece_count - 1].ends_bar =
            bar != SW_NO_INDEX && sw_rational_equal(draft->score->bars[bar].start, until);
    } else if (!divide_in_metre(draft, slot, &s, own, from, until)) {
        return false;
    }
    for (size_t i = first; i < slot->piece_count; i++) {
        slot->pieces[i].fresh = true;
    }
    slot->pieces[first].first = true;
    slot->pieces[slot->piece_count - 1].last = true;
    return true;
}

/* ---- slots ---- */

/* Adds the cell behind a stretch to it: its length, and what hangs on its end. */
static void append_cell(sw_draft *draft, stretch *s, const sw_cell *next)
{
    s->length = sw_rational_add(s->length, next->length);
    s->whole = false;
    s->cell.tied = next->tied;
    for (size_t i = 0; i < next->mark_count; i++) {
        bool again = next->marks[i].class == SW_MARK_TREMOLO && has_mark(&s->cell, SW_MARK_TREMOLO);
        if (!again) {
            sw_cell_add_mark(draft, &s->cell, next->marks[i]);
        }
    }
    for (size_t n = 0; n < next->note_count; n++) {
        s->cell.notes[n].tied = next->notes[n].tied;
        s->cell.notes[n].binds = next->notes[n].binds;
    }
}

/* The stretches of a slot, in order; their number. */
static size_t find_stretches(sw_draft *draft, const sw_slot *slot, stretch **all)
{
    size_t most = 0;
    for (size_t i = 0; i < slot->item_count; i++) {
        most += slot->items[i]->cell_count;
    }
    *all = sw_arena_alloc(draft->arena, (most + 1) * sizeof **all);
    size_t count = 0;
    for (size_t i = 0; i < slot->item_count; i++) {
        sw_draft_item *item = slot->items[i];
        for (size_t c = 0; c < item->cell_count; c++) {
            const sw_cell *cell = &item->cells[c];
            if (count > 0 && is_one_stretch(&(*all)[count - 1].cell, cell)) {
                append_cell(draft, &(*all)[count - 1], cell);
                continue;
            }
            stretch *s = &(*all)[count++];
            *s = (stretch){.cell = *cell, .item = item, .length = cell->length};
            sw_cell_set_notes(draft, &s->cell, cell->notes, cell->note_count);
            s->whole = item->cell_count == 1 && cell->kind == sw_draft_old_kind(draft, item) &&
                       cell->in == NULL && item->dissolves == SW_NO_INDEX;
        }
    }
    return count;
}

/* How many stretches from the first on make a tuplet of 3 in the time of 2 (or 5 of 4, 7 of 4): together they
 * have a length of plain values again. 0 when these are none. */
static size_t find_tuplet(const sw_draft *draft, const stretch *all, size_t count, int *actual, int *normal)
{
    const sw_rational one = {1, 1};
    const sw_draft_item *item = all[0].item;
    if (sw_rational_is_dyadic(all[0].length) || all[0].whole || all[0].cell.in != NULL ||
        !is_in_metre(draft, item) || !sw_rational_equal(factor_of(draft->reading, item->music), one)) {
        return 0;
    }
    int64_t odd = all[0].length.den;
    while (odd % 2 == 0) {
        odd /= 2;
    }
    *actual = (int)odd;
    *normal = odd == 3 ? 2 : 4;
    sw_rational total = sw_rational_zero();
    for (size_t i = 0; i < count && all[i].cell.in == NULL && (odd == 3 || odd == 5 || odd == 7); i++) {
        total = sw_rational_add(total, all[i].length);
        if (sw_rational_is_dyadic(total)) {
            return i + 1;
        }
    }
    return 0;
}

static bool divide_tuplet(sw_draft *draft, sw_slot *slot, const stretch *all, size_t count, int actual,
                          int normal)
{
    size_t first = slot->piece_count;
    sw_rational stretched = sw_rational_make(actual, normal);
    for (size_t i = 0; i < count; i++) {
        stretch s = all[i];
        size_t begin = slot->piece_count;
        s.length = sw_rational_mul(s.length, stretched);
        s.whole = false;
        sw_cell *cell = sw_arena_alloc(draft->arena, sizeof *cell);
        *cell = s.cell;
        const sw_rational one = {1, 1};
        if (!divide_freely(slot, &s, cell, one)) {
            return say_unwritable(draft, &all[i]);
        }
        slot->pieces[begin].first = true;
        slot->pieces[slot->piece_count - 1].last = true;
        slot->pieces[slot->piece_count - 1].tied = cell->tied;
    }
    slot->pieces[first].tuplet_actual = actual;
    slot->pieces[first].tuplet_normal = normal;
    slot->pieces[slot->piece_count - 1].tuplets_end = 1;
    return true;
}

/* ---- tuplets that are written again ---- */

const sw_tuplet_bracket *sw_tuplet_outermost(const sw_tuplet_bracket *bracket)
{
    while (bracket->around != NULL) {
        bracket = bracket->around;
    }
    return bracket;
}

/* The innermost bracket around a piece of a slot; NULL when there is none, or no such piece. */
static const sw_tuplet_bracket *bracket_of(const sw_slot *slot, size_t piece)
{
    const sw_tuplet_value *in = piece < slot->piece_count ? slot->pieces[piece].cell->in : NULL;
    return in == NULL ? NULL : in->bracket;
}

static bool is_within(const sw_tuplet_bracket *inner, const sw_tuplet_bracket *bracket)
{
    while (inner != NULL && inner != bracket) {
        inner = inner->around;
    }
    return inner != NULL;
}

/* The brackets begin where the piece before stands outside of them, and end where the one behind does. */
static void add_brackets(sw_draft *draft, sw_slot *slot)
{
    for (size_t i = 0; i < slot->piece_count; i++) {
        sw_piece *piece = &slot->pieces[i];
        for (const sw_tuplet_bracket *b = bracket_of(slot, i); b != NULL;
             b = b->around) { /* from the inside out */
            if (i == 0 || !is_within(bracket_of(slot, i - 1), b)) {
                piece->opens =
                    sw_slice_of(sw_arena_format(draft->arena, "%.*s{ %.*s", (int)b->head.length, b->head.data,
                                                (int)piece->opens.length, piece->opens.data));
            }
            piece->tuplets_end += !is_within(bracket_of(slot, i + 1), b);
        }
    }
}

bool sw_slot_divide(sw_draft *draft, sw_slot *slot)
{
    stretch *all;
    size_t count = find_stretches(draft, slot, &all);
    for (size_t i = 0; i < count;) {
        int actual;
        int normal;
        size_t tuplet = find_tuplet(draft, all + i, count - i, &actual, &normal);
        bool done = tuplet > 0 ? divide_tuplet(draft, slot, all + i, tuplet, actual, normal)
                               : divide_stretch(draft, slot, &all[i]);
        if (!done) {
            return false;
        }
        i += tuplet > 0 ? tuplet : 1;
    }
    add_brackets(draft, slot);
    return true;
}
