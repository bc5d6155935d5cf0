#include "players/hand_slices.h"

#include <stdlib.h>
#include <string.h>

/* A note's place in time, for sorting. */
typedef struct moment {
    sw_rational onset;
    int grace;
    uint32_t note;
} moment;

typedef struct note_list {
    uint32_t *items;
    size_t count;
} note_list;

typedef struct cutter {
    const sw_hand_note *notes;
    const sw_hand_limits *limits;
    sw_hand_slices *result;
    sw_rational *end;    /* of each head: where its last tied note ends */
    bool *bound;         /* of each head: a glissando leads on from it */
    uint32_t *key;       /* of each head: its key in the last slice in which it sounds */
    note_list before;    /* what sounds in the slice before, from low to high */
    note_list now;       /* the same for this slice */
    note_list line_from; /* scratch for the lines of one voice */
    note_list line_to;
} cutter;

static int compare_moments(const void *a, const void *b)
{
    const moment *x = a;
    const moment *y = b;
    int order = sw_rational_compare(x->onset, y->onset);
    if (order == 0) {
        order = (x->grace > y->grace) - (x->grace < y->grace);
    }
    return order != 0 ? order : (x->note > y->note) - (x->note < y->note);
}

static bool same_moment(const moment *a, const moment *b)
{
    return sw_rational_equal(a->onset, b->onset) && a->grace == b->grace;
}

static moment *sorted_moments(const sw_hand_note *notes, size_t count)
{
    moment *moments = sw_alloc(count * sizeof *moments);
    bool sorted = true;
    for (size_t i = 0; i < count; i++) {
        moments[i] = (moment){notes[i].onset, notes[i].grace, (uint32_t)i};
        sorted = sorted && (i == 0 || compare_moments(&moments[i - 1], &moments[i]) < 0);
    }
    if (!sorted) {
        qsort(moments, count, sizeof *moments, compare_moments);
    }
    return moments;
}

/* Finds the head of each note and the end of each head. Notes of equal pitch (nearly: of equal bucket) are
 * chained backwards in time, so that a tied note meets the nearest earlier one of its voice first. */
static void follow_ties(cutter *c, const moment *moments, size_t count)
{
    enum { BUCKETS = 256 };
    uint32_t latest[BUCKETS];
    memset(latest, 0xff, sizeof latest);
    uint32_t *earlier = sw_alloc(count * sizeof *earlier);
    for (size_t i = 0; i < count; i++) {
        uint32_t n = moments[i].note;
        const sw_hand_note *note = &c->notes[n];
        uint32_t bucket = (uint32_t)note->semitone % BUCKETS;
        uint32_t found = UINT32_MAX;
        for (uint32_t e = latest[bucket]; note->tied && e != UINT32_MAX; e = earlier[e]) {
            const sw_hand_note *other = &c->notes[e];
            if (other->semitone != note->semitone || sw_rational_compare(other->onset, note->onset) >= 0) {
                continue;
            }
            if (other->voice == note->voice) {
                found = e;
                break;
            }
            if (found == UINT32_MAX && sw_rational_equal(other->end, note->onset)) {
                found = e;
            }
        }
        uint32_t head = found == UINT32_MAX ? n : c->result->head[found];
        c->result->head[n] = head;
        c->end[n] = note->end;
        c->end[head] = sw_rational_max(c->end[head], note->end);
        c->bound[head] = c->bound[head] || note->bound;
        earlier[n] = latest[bucket];
        latest[bucket] = n;
    }
    free(earlier);
}

/* Order of height: by key on a keyboard, by string on the harp. 0: the same key or string. */
static int compare_heights(const cutter *c, uint32_t a, uint32_t b)
{
    const sw_hand_note *x = &c->notes[a];
    const sw_hand_note *y = &c->notes[b];
    int by_key = (x->semitone > y->semitone) - (x->semitone < y->semitone);
    if (!c->limits->by_string) {
        return by_key;
    }
    int by_string = (x->step > y->step) - (x->step < y->step);
    return by_string != 0 ? by_string : by_key;
}

static void insert_by_height(cutter *c, note_list *list, uint32_t note)
{
    size_t place = list->count;
    while (place > 0 && compare_heights(c, list->items[place - 1], note) > 0) {
        list->items[place] = list->items[place - 1];
        place--;
    }
    list->items[place] = note;
    list->count++;
}

static void keep_sounding(cutter *c, const sw_hand_slice *slice)
{
    for (size_t i = 0; i < c->before.count; i++) {
        uint32_t note = c->before.items[i];
        if (sw_rational_compare(c->end[note], slice->onset) > 0 &&
            c->notes[note].seconds + c->limits->hold_seconds > slice->seconds) {
            c->now.items[c->now.count++] = note;
        }
    }
}

static void add_keys(cutter *c, sw_hand_slice *slice)
{
    sw_hand_slices *r = c->result;
    uint32_t number = (uint32_t)r->count;
    size_t first_before = r->count == 0 ? 0 : r->slices[r->count - 1].first_key;
    slice->first_key = r->key_count;
    slice->first_note = r->note_total;
    for (size_t i = 0; i < c->now.count; i++) {
        uint32_t note = c->now.items[i];
        if (i == 0 || compare_heights(c, c->now.items[i - 1], note) != 0) {
            r->keys = sw_grow(r->keys, r->key_count, &r->key_capacity, sizeof *r->keys);
            int step = c->notes[note].step;
            int name = c->limits->by_string ? step : c->notes[note].semitone;
            r->keys[r->key_count++] = (sw_hand_key){.step = step, .number = name, .before = SW_NO_KEY};
            slice->key_count++;
        }
        sw_hand_key *key = &r->keys[r->key_count - 1];
        if (r->head_slice[note] == UINT32_MAX) {
            key->struck = true;
            key->rolled = key->rolled || c->notes[note].rolled;
            r->head_slice[note] = number;
            r->head_key[note] = slice->key_count - 1;
        } else {
            key->before = c->key[note];
            r->keys[first_before + key->before].goes_on = true;
        }
        c->key[note] = slice->key_count - 1;
        slice->several_voices =
            slice->several_voices || c->notes[note].voice != c->notes[c->now.items[0]].voice;
        r->notes = sw_grow(r->notes, r->note_total, &r->note_capacity, sizeof *r->notes);
        r->notes[r->note_total++] = note;
        slice->note_count++;
    }
}

/* A leap wider than a hand ends the line: whichever hand is near takes what follows. */
static void add_line(cutter *c, sw_hand_slice *slice, uint32_t from, uint32_t to)
{
    sw_hand_slices *r = c->result;
    int steps = abs(c->notes[to].step - c->notes[from].step);
    if (steps > c->limits->span && !c->bound[from]) {
        return;
    }
    bool single = c->line_from.count == 1 && c->line_to.count == 1;
    uint32_t group = c->notes[from].group;
    bool same = c->notes[to].group == group;
    bool grouped = group != 0 && c->notes[to].group != 0;
    r->lines = sw_grow(r->lines, r->line_count, &r->line_capacity, sizeof *r->lines);
    r->lines[r->line_count++] = (sw_hand_line){.from = c->key[from],
                                               .to = c->key[to],
                                               .steps = steps,
                                               .bound = c->bound[from],
                                               .single = single,
                                               .within = grouped && same,
                                               .apart = grouped && !same};
    slice->line_count++;
}

/* The lines of one voice: from its notes that end here to those that begin here, paired from the outside in;
 * the upper pair comes first, because the top note of a chord carries the line. */
static void add_lines_of_voice(cutter *c, sw_hand_slice *slice, uint32_t voice)
{
    note_list *from = &c->line_from;
    note_list *to = &c->line_to;
    from->count = 0;
    to->count = 0;
    for (size_t i = 0; i < c->before.count; i++) {
        uint32_t note = c->before.items[i];
        if (c->notes[note].voice == voice && sw_rational_equal(c->end[note], slice->onset)) {
            from->items[from->count++] = note;
        }
    }
    for (size_t i = 0; from->count > 0 && i < c->now.count; i++) {
        uint32_t note = c->now.items[i];
        if (c->notes[note].voice == voice && c->result->head_slice[note] == c->result->count) {
            to->items[to->count++] = note;
        }
    }
    size_t pairs = from->count < to->count ? from->count : to->count;
    size_t upper = (pairs + 1) / 2;
    for (size_t i = 0; i < upper; i++) {
        add_line(c, slice, from->items[from->count - 1 - i], to->items[to->count - 1 - i]);
    }
    for (size_t i = 0; i < pairs - upper; i++) {
        add_line(c, slice, from->items[i], to->items[i]);
    }
}

static void add_lines(cutter *c, sw_hand_slice *slice, const moment *moments, size_t count)
{
    slice->first_line = c->result->line_count;
    for (size_t i = 0; i < count; i++) {
        uint32_t voice = c->notes[moments[i].note].voice;
        bool done = false;
        for (size_t j = 0; j < i && !done; j++) {
            done = c->notes[moments[j].note].voice == voice;
        }
        if (!done) {
            add_lines_of_voice(c, slice, voice);
        }
    }
}

/* One slice from the heads that begin at one moment. */
static void cut(cutter *c, const moment *moments, size_t count)
{
    sw_hand_slices *r = c->result;
    sw_hand_slice slice = {.onset = moments[0].onset, .grace = moments[0].grace};
    slice.seconds = c->notes[moments[0].note].seconds;
    c->now.count = 0;
    keep_sounding(c, &slice);
    for (size_t i = 0; i < count; i++) {
        insert_by_height(c, &c->now, moments[i].note);
    }
    add_keys(c, &slice);
    add_lines(c, &slice, moments, count);
    r->slices = sw_grow(r->slices, r->count, &r->capacity, sizeof *r->slices);
    r->slices[r->count++] = slice;
    note_list swap = c->before;
    c->before = c->now;
    c->now = swap;
}

static uint32_t *filled(size_t count)
{
    uint32_t *items = sw_alloc(count * sizeof *items);
    memset(items, 0xff, count * sizeof *items);
    return items;
}

sw_hand_slices sw_hand_slices_make(const sw_hand_note *notes, size_t count, const sw_hand_limits *limits)
{
    sw_hand_slices result = {0};
    if (count == 0) {
        return result;
    }
    result.head = filled(count);
    result.head_slice = filled(count);
    result.head_key = filled(count);
    cutter c = {.notes = notes, .limits = limits, .result = &result};
    c.end = sw_alloc(count * sizeof *c.end);
    c.key = filled(count);
    c.bound = sw_alloc_zero(count, sizeof *c.bound);
    note_list *lists[] = {&c.before, &c.now, &c.line_from, &c.line_to};
    for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
        lists[i]->items = sw_alloc(count * sizeof(uint32_t));
    }
    moment *moments = sorted_moments(notes, count);
    follow_ties(&c, moments, count);
    size_t heads = 0; /* tied notes begin nothing, so they make no slice */
    for (size_t i = 0; i < count; i++) {
        if (result.head[moments[i].note] == moments[i].note) {
            moments[heads++] = moments[i];
        }
    }
    for (size_t i = 0, end; i < heads; i = end) {
        end = i + 1;
        while (end < heads && same_moment(&moments[i], &moments[end])) {
            end++;
        }
        cut(&c, moments + i, end - i);
    }
    free(moments);
    for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
        free(lists[i]->items);
    }
    free(c.key);
    free(c.end);
    free(c.bound);
    return result;
}

void sw_hand_slices_free(sw_hand_slices *slices)
{
    free(slices->slices);
    free(slices->keys);
    free(slices->lines);
    free(slices->notes);
    free(slices->head);
    free(slices->head_slice);
    free(slices->head_key);
    *slices = (sw_hand_slices){0};
}
