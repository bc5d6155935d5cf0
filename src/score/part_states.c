#include <stdlib.h>
#include <string.h>

#include "score/part_states.h"

/* ---- states and splits ---- */

static void add_state(sw_part *p, sw_moment when, size_t first, size_t end)
{
    p->states = sw_grow(p->states, p->count, &p->capacity, sizeof *p->states);
    p->states[p->count++] = (sw_part_state){.when = when, .first = first, .end = end};
}

/* A part hears what reaches its own voice; contexts made inside the part go their own way. */
static void make_states(sw_part *p, sw_recording *own)
{
    size_t kept = 0;
    for (size_t i = 0; i < own->count; i++) {
        if (own->heard[i].voice == 0 && own->heard[i].kind != SW_HEARD_TRANSPOSITION) {
            own->heard[kept++] = own->heard[i];
        }
    }
    own->count = kept;
    p->recording = own;
    for (size_t i = 0; i < kept;) {
        size_t end = i + 1;
        while (end < kept && sw_moment_compare(own->heard[end].when, own->heard[i].when) == 0) {
            end++;
        }
        add_state(p, own->heard[i].when, i, end);
        i = end;
    }
    add_state(p, own->end, kept, kept);
}

static void make_splits(sw_parts *c)
{
    size_t next[2] = {0, 0};
    for (;;) {
        const sw_part_state *now[2];
        for (int i = 0; i < 2; i++) {
            now[i] = next[i] < c->parts[i].count ? &c->parts[i].states[next[i]] : NULL;
        }
        if (now[0] == NULL && now[1] == NULL) {
            return;
        }
        int order = now[0] == NULL ? 1 : now[1] == NULL ? -1 : sw_moment_compare(now[0]->when, now[1]->when);
        c->splits = sw_grow(c->splits, c->count, &c->capacity, sizeof *c->splits);
        sw_part_split *made = &c->splits[c->count];
        *made = (sw_part_split){.when = order <= 0 ? now[0]->when : now[1]->when, .synced = order == 0};
        for (int i = 0; i < 2; i++) {
            made->states[i] = now[i] == NULL ? SW_NOWHERE : next[i];
            if (now[i] != NULL) {
                c->parts[i].states[next[i]].split = c->count;
            }
        }
        next[0] += order <= 0;
        next[1] += order >= 0;
        c->count++;
    }
}

const sw_heard *sw_parts_begin(const sw_part *p, size_t s)
{
    return p->recording->count == 0 ? NULL : p->recording->heard + p->states[s].first;
}

const sw_heard *sw_parts_end(const sw_part *p, size_t s)
{
    return p->recording->count == 0 ? NULL : p->recording->heard + p->states[s].end;
}

size_t sw_parts_count(const sw_part *p, size_t s, sw_heard_kind kind)
{
    size_t count = 0;
    for (const sw_heard *h = s == SW_NOWHERE ? NULL : sw_parts_begin(p, s);
         h != NULL && h < sw_parts_end(p, s); h++) {
        count += h->kind == kind;
    }
    return count;
}

size_t sw_parts_notes(const sw_part *p, size_t s)
{
    return sw_parts_count(p, s, SW_HEARD_NOTE) + sw_parts_count(p, s, SW_HEARD_DRUM);
}

bool sw_parts_ended(const sw_part *p, size_t s)
{
    return s + 1 == p->count;
}

size_t sw_parts_before(size_t s)
{
    return s == SW_NOWHERE || s == 0 ? SW_NOWHERE : s - 1;
}

size_t sw_parts_current(const sw_parts *c, size_t split, int part_number)
{
    size_t s = c->splits[split].states[part_number];
    if (s == SW_NOWHERE ||
        sw_moment_compare(c->parts[part_number].states[s].when, c->splits[split].when) == 0) {
        return s;
    }
    return sw_parts_before(s);
}

/* ---- spans ---- */

enum { MAX_OPEN = 64 };

typedef struct open_list {
    sw_open_span items[MAX_OPEN];
    size_t count;
} open_list;

static void close_one(open_list *list, sw_heard_span span)
{
    for (size_t i = 0; i < list->count; i++) {
        if (list->items[i].span == span) {
            memmove(list->items + i, list->items + i + 1, (list->count - i - 1) * sizeof(sw_open_span));
            list->count--;
            return;
        }
    }
}

static void open_one(open_list *list, sw_heard_span span, size_t split_number)
{
    if (list->count < MAX_OPEN) {
        memmove(list->items + 1, list->items, list->count * sizeof(sw_open_span));
        list->items[0] = (sw_open_span){(uint8_t)span, split_number};
        list->count++;
    }
}

static int compare_spans(const void *a, const void *b)
{
    const sw_open_span *x = a;
    const sw_open_span *y = b;
    if (x->span != y->span) {
        return x->span < y->span ? -1 : 1;
    }
    return (x->split > y->split) - (x->split < y->split);
}

/* The order matters: dynamics end hairpins before new ones begin, and the notes of a moment end ties before
 * its own ties begin. */
static void update_spans(open_list *list, const sw_heard *begin, const sw_heard *end, size_t split_number)
{
    for (const sw_heard *h = begin; h < end; h++) {
        bool ends_hairpin =
            h->kind == SW_HEARD_SPAN_END && (h->span == SW_SPAN_CRESCENDO || h->span == SW_SPAN_DECRESCENDO);
        if (h->kind == SW_HEARD_DYNAMIC || ends_hairpin) {
            close_one(list, SW_SPAN_CRESCENDO);
            close_one(list, SW_SPAN_DECRESCENDO);
        }
    }
    for (const sw_heard *h = begin; h < end; h++) {
        if (h->kind == SW_HEARD_SPAN_START) {
            open_one(list, h->span, split_number);
        } else if (h->kind == SW_HEARD_SPAN_END) {
            close_one(list, h->span);
        }
    }
    for (const sw_heard *h = begin; h < end; h++) {
        if (h->kind == SW_HEARD_NOTE || h->kind == SW_HEARD_DRUM) {
            close_one(list, SW_SPAN_TIE);
        }
    }
    for (const sw_heard *h = begin; h < end; h++) {
        if (h->kind == SW_HEARD_TIE) {
            open_one(list, SW_SPAN_TIE, split_number);
        }
    }
    qsort(list->items, list->count, sizeof(sw_open_span), compare_spans);
}

static void find_spans(sw_part *p)
{
    open_list list = {.count = 0};
    for (size_t s = 0; s < p->count; s++) {
        update_spans(&list, sw_parts_begin(p, s), sw_parts_end(p, s), p->states[s].split);
        p->states[s].span_first = p->span_count;
        p->states[s].span_count = list.count;
        for (size_t i = 0; i < list.count; i++) {
            p->spans = sw_grow(p->spans, p->span_count, &p->span_capacity, sizeof *p->spans);
            p->spans[p->span_count++] = list.items[i];
        }
    }
}

size_t sw_parts_open(const sw_part *p, size_t s)
{
    return s == SW_NOWHERE ? 0 : p->states[s].span_count;
}

bool sw_parts_same_spans(const sw_part *a, size_t x, const sw_part *b, size_t y)
{
    size_t count = sw_parts_open(a, x);
    if (count != sw_parts_open(b, y)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        if (compare_spans(&a->spans[a->states[x].span_first + i], &b->spans[b->states[y].span_first + i]) !=
            0) {
            return false;
        }
    }
    return true;
}

sw_parts sw_parts_new(sw_recording *one, sw_recording *two)
{
    sw_parts parts = {0};
    make_states(&parts.parts[0], one);
    make_states(&parts.parts[1], two);
    make_splits(&parts);
    find_spans(&parts.parts[0]);
    find_spans(&parts.parts[1]);
    return parts;
}

void sw_parts_free(sw_parts *parts)
{
    for (int i = 0; i < 2; i++) {
        free(parts->parts[i].states);
        free(parts->parts[i].spans);
    }
    free(parts->splits);
}
