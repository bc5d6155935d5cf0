/* The part combiner of the language.
 *
 * Data. Each part is a row of *states*: one for each moment at which the part's voice hears something, and a
 * last, empty one for the moment at which the part ends. A state knows the spans (beams, hairpins, slurs,
 * ties) that are open behind it, each with the moment it began at. Both rows are merged into a row of
 * *splits*, one for each moment of either part; a split points to each part's state at that moment or, if
 * the part has none there, to its next one. A split gets one *way* of combining.
 *
 * Algorithm. Five passes over the splits, in this order, because each refines what those before it have left:
 *   1. forced      what \partCombineApart and the like demand
 *   2. notes       moments where both parts begin notes are apart, or chords when the two notes have the same
 *                  value and lie within the range; moments without a decision of their own take the next one
 *   3. a2          chords of equal notes become unison; common rests are shared
 *   4. solo        stretches of `apart` in which one part has only rests become solo; one of two unequal
 *                  rests is chosen
 *   5. turns       a small state machine for each part turns the row of ways into changes of voice
 *
 * Nothing here plays anything: the player sends each part's notes where the turns say. The compiler also
 * inserts rests without a source position when a part falls silent; nobody wrote those, so they are not made.
 */
#include <ctype.h>
#include <stdlib.h>
#include <string.h>

#include "score/part_combine.h"

typedef enum way {
    WAY_NONE,
    WAY_APART,
    WAY_APART_SILENCE,
    WAY_CHORDS,
    WAY_SILENCE_ONE,
    WAY_SILENCE_TWO,
    WAY_SOLO_ONE,
    WAY_SOLO_TWO,
    WAY_UNISON,
    WAY_UNISILENCE,
    WAYS
} way;

#define NOWHERE SIZE_MAX

typedef struct open_span {
    uint8_t span; /* sw_heard_span */
    size_t split; /* where it began */
} open_span;

typedef struct state {
    sw_moment when;
    size_t first; /* what is heard: [first, end) of the part's recording */
    size_t end;
    size_t split;      /* the split at this moment */
    size_t span_first; /* spans open behind it: in the part's pool */
    size_t span_count;
} state;

typedef struct part {
    const sw_recording *recording;
    state *states;
    size_t count;
    size_t capacity;
    open_span *spans; /* pool */
    size_t span_count;
    size_t span_capacity;
} part;

typedef struct split {
    sw_moment when;
    size_t states[2]; /* the state now or the next one; NOWHERE behind the last */
    bool synced;      /* both parts have a state now */
    uint8_t way;
    uint8_t forced;
} split;

typedef struct combiner {
    part parts[2];
    split *splits;
    size_t count;
    size_t capacity;
    int lowest;
    int highest;
} combiner;

/* ---- states and splits ---- */

static void add_state(part *p, sw_moment when, size_t first, size_t end)
{
    p->states = sw_grow(p->states, p->count, &p->capacity, sizeof *p->states);
    p->states[p->count++] = (state){.when = when, .first = first, .end = end};
}

/* A part hears what reaches its own voice; contexts made inside the part go their own way. */
static void make_states(part *p, sw_recording *own)
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

static void make_splits(combiner *c)
{
    size_t next[2] = {0, 0};
    for (;;) {
        const state *now[2];
        for (int i = 0; i < 2; i++) {
            now[i] = next[i] < c->parts[i].count ? &c->parts[i].states[next[i]] : NULL;
        }
        if (now[0] == NULL && now[1] == NULL) {
            return;
        }
        int order = now[0] == NULL   ? 1
                    : now[1] == NULL ? -1
                                     : sw_moment_compare(now[0]->when, now[1]->when);
        c->splits = sw_grow(c->splits, c->count, &c->capacity, sizeof *c->splits);
        split *made = &c->splits[c->count];
        *made = (split){.when = order <= 0 ? now[0]->when : now[1]->when, .synced = order == 0};
        for (int i = 0; i < 2; i++) {
            made->states[i] = now[i] == NULL ? NOWHERE : next[i];
            if (now[i] != NULL) {
                c->parts[i].states[next[i]].split = c->count;
            }
        }
        next[0] += order <= 0;
        next[1] += order >= 0;
        c->count++;
    }
}

static const sw_heard *begin_of(const part *p, size_t s)
{
    return p->recording->heard + p->states[s].first;
}

static const sw_heard *end_of(const part *p, size_t s)
{
    return p->recording->heard + p->states[s].end;
}

static size_t count_of(const part *p, size_t s, sw_heard_kind kind)
{
    size_t count = 0;
    for (const sw_heard *h = s == NOWHERE ? NULL : begin_of(p, s); h != NULL && h < end_of(p, s); h++) {
        count += h->kind == kind;
    }
    return count;
}

static size_t notes_of(const part *p, size_t s)
{
    return count_of(p, s, SW_HEARD_NOTE) + count_of(p, s, SW_HEARD_DRUM);
}

static bool has_ended(const part *p, size_t s)
{
    return s + 1 == p->count;
}

static size_t before(size_t s)
{
    return s == NOWHERE || s == 0 ? NOWHERE : s - 1;
}

/* The part's state now, or the one before when it has none now. */
static size_t current(const combiner *c, size_t i, int part_number)
{
    size_t s = c->splits[i].states[part_number];
    if (s == NOWHERE ||
        sw_moment_compare(c->parts[part_number].states[s].when, c->splits[i].when) == 0) {
        return s;
    }
    return before(s);
}

/* ---- spans ---- */

enum { MAX_OPEN = 64 };

typedef struct open_list {
    open_span items[MAX_OPEN];
    size_t count;
} open_list;

static void close_one(open_list *list, sw_heard_span span)
{
    for (size_t i = 0; i < list->count; i++) {
        if (list->items[i].span == span) {
            memmove(list->items + i, list->items + i + 1, (list->count - i - 1) * sizeof(open_span));
            list->count--;
            return;
        }
    }
}

static void open_one(open_list *list, sw_heard_span span, size_t split_number)
{
    if (list->count < MAX_OPEN) {
        memmove(list->items + 1, list->items, list->count * sizeof(open_span));
        list->items[0] = (open_span){(uint8_t)span, split_number};
        list->count++;
    }
}

static int compare_spans(const void *a, const void *b)
{
    const open_span *x = a;
    const open_span *y = b;
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
        bool ends_hairpin = h->kind == SW_HEARD_SPAN_END &&
                            (h->span == SW_SPAN_CRESCENDO || h->span == SW_SPAN_DECRESCENDO);
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
    qsort(list->items, list->count, sizeof(open_span), compare_spans);
}

static void find_spans(part *p)
{
    open_list list = {.count = 0};
    for (size_t s = 0; s < p->count; s++) {
        update_spans(&list, begin_of(p, s), end_of(p, s), p->states[s].split);
        p->states[s].span_first = p->span_count;
        p->states[s].span_count = list.count;
        for (size_t i = 0; i < list.count; i++) {
            p->spans = sw_grow(p->spans, p->span_count, &p->span_capacity, sizeof *p->spans);
            p->spans[p->span_count++] = list.items[i];
        }
    }
}

static size_t open_count(const part *p, size_t s)
{
    return s == NOWHERE ? 0 : p->states[s].span_count;
}

static bool same_spans(const part *a, size_t x, const part *b, size_t y)
{
    size_t count = open_count(a, x);
    if (count != open_count(b, y)) {
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

/* ---- 1: forced ---- */

/* The way that `\partCombineApart`, `\partCombineForce #'chords` or `\once ...` asks for; *once is set for
 * the last. */
static way forced_way(const sw_reading *reading, uint32_t music, bool *once)
{
    static const struct row {
        const char *ending;
        way way;
    } rows[] = {
        {"Apart", WAY_APART},     {"Chords", WAY_CHORDS},    {"Unisono", WAY_UNISON}, {"SoloI", WAY_SOLO_ONE},
        {"SoloII", WAY_SOLO_TWO}, {"apart", WAY_APART},      {"chords", WAY_CHORDS},  {"unisono", WAY_UNISON},
        {"solo1", WAY_SOLO_ONE},  {"solo2", WAY_SOLO_TWO},
    };
    sw_slice text = sw_music_slice(reading, music);
    *once = sw_slice_starts(text, "\\once");
    size_t length = 0;
    while (length < text.length && isalnum((unsigned char)text.data[text.length - length - 1])) {
        length++;
    }
    sw_slice last = {text.data + text.length - length, length};
    if (sw_slice_starts(last, "partCombine")) {
        last = (sw_slice){last.data + strlen("partCombine"), last.length - strlen("partCombine")};
    }
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        if (sw_slice_is(last, rows[i].ending)) {
            return rows[i].way;
        }
    }
    return WAY_NONE; /* automatic */
}

static void find_forced(combiner *c)
{
    way permanent = WAY_NONE;
    for (size_t i = 0; i < c->count; i++) {
        way single = WAY_NONE;
        bool has_single = false;
        for (int n = 0; n < 2 && c->splits[i].synced; n++) {
            const part *p = &c->parts[n];
            size_t s = c->splits[i].states[n];
            for (const sw_heard *h = begin_of(p, s); h < end_of(p, s); h++) {
                if (h->kind == SW_HEARD_FORCE) {
                    bool once;
                    way asked = forced_way(p->recording->reader->reading, h->music, &once);
                    has_single = has_single || once;
                    *(once ? &single : &permanent) = asked;
                }
            }
        }
        c->splits[i].forced = (uint8_t)(has_single ? single : permanent);
    }
}

/* ---- 2: notes ---- */

/* Sets the way of a split and of those before it that have none yet. */
static void settle(combiner *c, size_t i, way chosen)
{
    for (size_t back = i + 1; back-- > 0 && c->splits[back].way == WAY_NONE;) {
        c->splits[back].way = (uint8_t)chosen;
    }
}

static void settle_like_spans(combiner *c, size_t i, int part_number, size_t s)
{
    const part *p = &c->parts[part_number];
    for (size_t k = 0; k < open_count(p, s); k++) {
        way earlier = c->splits[p->spans[p->states[s].span_first + k].split].way;
        if (earlier != WAY_NONE) {
            settle(c, i, earlier);
        }
    }
}

static int compare_values(const sw_heard *a, const sw_heard *b)
{
    return sw_rational_compare(a->length, b->length);
}

static bool same_value(const sw_heard *a, const sw_heard *b)
{
    return a->log == b->log && a->dots == b->dots && sw_rational_equal(a->factor, b->factor);
}

/* By octave, name, alteration, as the language orders pitches; then by value. */
static int compare_notes(const void *a, const void *b)
{
    const sw_heard *x = *(const sw_heard *const *)a;
    const sw_heard *y = *(const sw_heard *const *)b;
    int order = sw_pitch_staff_steps(x->pitch) - sw_pitch_staff_steps(y->pitch);
    order = order != 0 ? order : x->pitch.alter - y->pitch.alter;
    return order != 0 ? order : compare_values(x, y);
}

enum { MAX_CHORD = 64 };

/* The notes of a state, in order; returns how many. */
static size_t sorted_notes(const part *p, size_t s, const sw_heard *notes[MAX_CHORD])
{
    size_t count = 0;
    if (s == NOWHERE) {
        return 0;
    }
    for (const sw_heard *h = begin_of(p, s); h < end_of(p, s) && count < MAX_CHORD; h++) {
        if (h->kind == SW_HEARD_NOTE || h->kind == SW_HEARD_DRUM) {
            notes[count++] = h;
        }
    }
    if (count > 1) {
        qsort(notes, count, sizeof notes[0], compare_notes);
    }
    return count;
}

static bool same_notes(const combiner *c, size_t s1, size_t s2)
{
    const sw_heard *notes1[MAX_CHORD];
    const sw_heard *notes2[MAX_CHORD];
    size_t count = sorted_notes(&c->parts[0], s1, notes1);
    if (count != sorted_notes(&c->parts[1], s2, notes2)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        if (!sw_pitch_equal(notes1[i]->pitch, notes2[i]->pitch) || !same_value(notes1[i], notes2[i])) {
            return false;
        }
    }
    return true;
}

static void decide_notes(combiner *c, size_t i, size_t s1, size_t s2)
{
    const sw_heard *notes1[MAX_CHORD];
    const sw_heard *notes2[MAX_CHORD];
    size_t count1 = sorted_notes(&c->parts[0], s1, notes1);
    size_t count2 = sorted_notes(&c->parts[1], s2, notes2);
    if (count1 == 0 && count2 == 0) {
        return;
    }
    if (count1 == 0 || count2 == 0) {
        settle(c, i, WAY_APART);
        return;
    }
    if (count1 > 1 || count2 > 1) {
        settle(c, i, c->lowest <= 0 && same_notes(c, s1, s2) ? WAY_CHORDS : WAY_APART);
        return;
    }
    int distance = sw_pitch_staff_steps(notes1[0]->pitch) - sw_pitch_staff_steps(notes2[0]->pitch);
    if (!same_value(notes1[0], notes2[0]) || distance < c->lowest || distance > c->highest) {
        settle(c, i, WAY_APART);
        return;
    }
    settle_like_spans(c, i, 0, before(s1));
    settle_like_spans(c, i, 1, before(s2));
    if (open_count(&c->parts[0], s1) == 0 && open_count(&c->parts[1], s2) == 0) {
        settle(c, i, WAY_CHORDS);
    }
}

static void find_notes(combiner *c)
{
    for (size_t i = 0; i < c->count; i++) {
        size_t s1 = c->splits[i].states[0];
        size_t s2 = c->splits[i].states[1];
        if (s1 == NOWHERE || s2 == NOWHERE) {
            settle(c, i, WAY_APART);
            return; /* what is left belongs to one part alone */
        }
        if (c->splits[i].synced && same_spans(&c->parts[0], before(s1), &c->parts[1], before(s2)) &&
            same_spans(&c->parts[0], s1, &c->parts[1], s2)) {
            decide_notes(c, i, s1, s2);
        } else {
            settle(c, i, WAY_APART);
        }
    }
}

/* ---- 3: a2 ---- */

/* The rests of a state, or its skips when there are no rests: their number, and the first of them. */
static size_t silences(const part *p, size_t s, const sw_heard **first)
{
    *first = NULL;
    if (s == NOWHERE) {
        return 0;
    }
    bool rests = count_of(p, s, SW_HEARD_REST) + count_of(p, s, SW_HEARD_FULL_REST) > 0;
    size_t count = 0;
    for (const sw_heard *h = begin_of(p, s); h < end_of(p, s); h++) {
        if (rests ? h->kind == SW_HEARD_REST || h->kind == SW_HEARD_FULL_REST : h->kind == SW_HEARD_SKIP) {
            *first = count++ == 0 ? h : *first;
        }
    }
    return count;
}

static way common_silence(const combiner *c, size_t s1, size_t s2)
{
    const sw_heard *rest1;
    const sw_heard *rest2;
    if (silences(&c->parts[0], s1, &rest1) == 1 && silences(&c->parts[1], s2, &rest2) == 1 &&
        rest1->kind == rest2->kind && same_value(rest1, rest2)) {
        return WAY_UNISILENCE;
    }
    return WAY_APART_SILENCE;
}

static bool begins_now(const combiner *c, size_t i, int part_number, size_t s)
{
    return s != NOWHERE &&
           sw_moment_compare(c->parts[part_number].states[s].when, c->splits[i].when) == 0;
}

/* A full-bar rest that begins while the other part is in one (or has ended) is the one to show. */
static way rest_beside_rest(const combiner *c, size_t i, way otherwise)
{
    size_t s[2];
    bool full[2];
    for (int n = 0; n < 2; n++) {
        s[n] = c->splits[i].states[n];
        s[n] = begins_now(c, i, n, s[n]) ? s[n] : before(s[n]);
        if (s[n] != NOWHERE && notes_of(&c->parts[n], s[n]) > 0) {
            return otherwise;
        }
        full[n] = count_of(&c->parts[n], s[n], SW_HEARD_FULL_REST) > 0;
    }
    if (full[0] && begins_now(c, i, 0, s[0]) && (s[1] == NOWHERE || full[1])) {
        return WAY_SILENCE_ONE;
    }
    if (full[1] && begins_now(c, i, 1, s[1]) && (s[0] == NOWHERE || full[0])) {
        return WAY_SILENCE_TWO;
    }
    return otherwise;
}

static void find_a2(combiner *c)
{
    for (size_t i = 0; i < c->count; i++) {
        split *now = &c->splits[i];
        size_t s1 = now->states[0];
        size_t s2 = now->states[1];
        if (now->way == WAY_CHORDS && notes_of(&c->parts[0], s1) > 0 && same_notes(c, s1, s2)) {
            now->way = WAY_UNISON;
        } else if (!now->synced) {
            now->way = (uint8_t)rest_beside_rest(c, i, now->way);
        } else if (notes_of(&c->parts[0], s1) == 0 && notes_of(&c->parts[1], s2) == 0) {
            now->way = (uint8_t)common_silence(c, s1, s2);
        }
    }
}

/* ---- 4: solo ---- */

static size_t put_range(combiner *c, way chosen, size_t first, size_t last)
{
    for (size_t i = first; i <= last; i++) {
        c->splits[i].way = (uint8_t)chosen;
    }
    return last;
}

/* The longest solo from `start` on; it can end only where no span is open. Returns where to go on. */
static size_t try_solo(combiner *c, way solo, size_t start)
{
    int player = solo == WAY_SOLO_ONE ? 0 : 1;
    for (size_t i = start; i < c->count; i++) {
        size_t playing = current(c, i, player);
        size_t silent = current(c, i, 1 - player);
        if (c->splits[i].way != WAY_APART) {
            return i;
        }
        if (notes_of(&c->parts[1 - player], silent) > 0) {
            return start;
        }
        if (playing == NOWHERE) {
            return put_range(c, solo, start, i);
        }
        if (open_count(&c->parts[player], playing) == 0) {
            put_range(c, solo, start, i);
            start = i + 1;
        }
    }
    return start;
}

/* One of two rests that begin together and are not the same. */
static way choose_rest(const combiner *c, size_t s1, size_t s2)
{
    const sw_heard *rest1;
    const sw_heard *rest2;
    size_t count1 = silences(&c->parts[0], s1, &rest1);
    size_t count2 = silences(&c->parts[1], s2, &rest2);
    if (count1 != 1 || count2 != 1) {
        return WAY_APART_SILENCE;
    }
    bool full1 = rest1->kind == SW_HEARD_FULL_REST;
    bool full2 = rest2->kind == SW_HEARD_FULL_REST;
    if (rest1->kind == SW_HEARD_REST && full2) {
        return WAY_SILENCE_ONE;
    }
    if (full1 && rest2->kind == SW_HEARD_REST) {
        return WAY_SILENCE_TWO;
    }
    if (full1 && full2) {
        return compare_values(rest1, rest2) < 0 ? WAY_SILENCE_ONE : WAY_SILENCE_TWO;
    }
    return WAY_APART_SILENCE;
}

static void decide_silence(combiner *c, size_t i)
{
    size_t s1 = current(c, i, 0);
    size_t s2 = current(c, i, 1);
    way chosen = WAY_APART_SILENCE;
    if (s1 == NOWHERE || has_ended(&c->parts[0], s1)) {
        chosen = WAY_SILENCE_TWO;
    } else if (s2 == NOWHERE || has_ended(&c->parts[1], s2)) {
        chosen = WAY_SILENCE_ONE;
    } else if (c->splits[i].synced) {
        chosen = choose_rest(c, s1, s2);
    } else if (i > 0 &&
               (c->splits[i - 1].way == WAY_SILENCE_ONE || c->splits[i - 1].way == WAY_SILENCE_TWO)) {
        chosen = c->splits[i - 1].way;
    }
    c->splits[i].way = (uint8_t)chosen;
}

static size_t decide_apart(combiner *c, size_t i)
{
    size_t s1 = current(c, i, 0);
    size_t s2 = current(c, i, 1);
    size_t notes1 = notes_of(&c->parts[0], s1);
    size_t notes2 = notes_of(&c->parts[1], s2);
    if (notes1 == 0 && notes2 == 0) {
        decide_silence(c, i);
    } else if (notes2 == 0 && begins_now(c, i, 0, s1) && open_count(&c->parts[0], before(s1)) == 0) {
        return try_solo(c, WAY_SOLO_ONE, i);
    } else if (notes1 == 0 && begins_now(c, i, 1, s2) && open_count(&c->parts[1], before(s2)) == 0) {
        return try_solo(c, WAY_SOLO_TWO, i);
    }
    return i + 1;
}

static void find_solos(combiner *c)
{
    for (size_t i = 0; i < c->count;) {
        size_t next = i + 1;
        if (c->splits[i].way == WAY_APART) {
            size_t end = decide_apart(c, i);
            next = end > next ? end : next;
        } else if (c->splits[i].way == WAY_APART_SILENCE) {
            decide_silence(c, i);
        }
        i = next;
    }
}

/* ---- 5: turns ---- */

/* Where a part goes, and whether the shared voice is from then on fed by the second part: a part that was
 * the only one to be heard also plays the unisons that follow. */
typedef struct step {
    sw_part_voice voice;
    bool second_leads;
} step;

static bool next_step(int part_number, way now, bool second_leads, step *result)
{
    bool mine = second_leads == (part_number == 1); /* this part plays what is common */
    sw_part_voice common = mine ? SW_PART_SHARED : SW_PART_NULL;
    sw_part_voice own = part_number == 0 ? SW_PART_ONE : SW_PART_TWO;
    bool first = part_number == 0;
    switch (now) {
    case WAY_APART:
    case WAY_APART_SILENCE:
        *result = (step){own, second_leads};
        return true;
    case WAY_CHORDS:
        *result = (step){SW_PART_SHARED, second_leads};
        return true;
    case WAY_SILENCE_ONE:
        *result = (step){first ? SW_PART_SHARED : SW_PART_NULL, false};
        return true;
    case WAY_SILENCE_TWO:
        *result = (step){first ? SW_PART_NULL : SW_PART_SHARED, true};
        return true;
    case WAY_SOLO_ONE:
        *result = (step){first ? SW_PART_SOLO : SW_PART_NULL, false};
        return true;
    case WAY_SOLO_TWO:
        *result = (step){first ? SW_PART_NULL : SW_PART_SOLO, true};
        return true;
    case WAY_UNISON:
    case WAY_UNISILENCE:
        *result = (step){common, second_leads};
        return true;
    case WAY_NONE:
    case WAYS:
        break;
    }
    return false;
}

/* The compiler writes the changes down as the time from one to the next, beginning with the first moment that
 * was heard; played, they begin with the parts. So when both parts begin with something that no voice hears
 * (`\skip`), all changes come so much earlier. */
static void find_turns(const combiner *c, int part_number, sw_part_turns *turns)
{
    sw_part_voice last = SW_PART_VOICES;
    sw_rational silence = c->splits[0].when.main; /* there is always a split: the end */
    sw_moment told = sw_moment_zero();            /* of the last way, whether it meant a change or not */
    bool second_leads = false;
    for (size_t i = 0; i < c->count; i++) {
        const split *now = &c->splits[i];
        step taken;
        if (!next_step(part_number, now->forced != WAY_NONE ? now->forced : now->way, second_leads, &taken)) {
            continue;
        }
        second_leads = taken.second_leads;
        told = (sw_moment){sw_rational_sub(now->when.main, silence), now->when.grace};
        if (taken.voice != last) {
            turns->items = sw_grow(turns->items, turns->count, &turns->capacity, sizeof *turns->items);
            sw_moment at = {sw_rational_sub(now->when.main, silence), now->when.grace};
            turns->items[turns->count++] = (sw_part_turn){at, taken.voice};
            last = taken.voice;
        }
    }
    /* The compiler puts a change before grace notes by the time that follows it; behind the last there is
     * none. */
    if (turns->count > 0 && sw_moment_compare(turns->items[turns->count - 1].at, told) == 0) {
        turns->items[turns->count - 1].at.grace = sw_rational_zero();
    }
}

void sw_part_combine(sw_recording *one, sw_recording *two, int lowest, int highest, sw_part_turns turns[2])
{
    combiner c = {.lowest = lowest, .highest = highest};
    make_states(&c.parts[0], one);
    make_states(&c.parts[1], two);
    make_splits(&c);
    find_spans(&c.parts[0]);
    find_spans(&c.parts[1]);
    find_forced(&c);
    find_notes(&c);
    find_a2(&c);
    find_solos(&c);
    for (int i = 0; i < 2; i++) {
        turns[i] = (sw_part_turns){0};
        find_turns(&c, i, &turns[i]);
        free(c.parts[i].states);
        free(c.parts[i].spans);
    }
    free(c.splits);
}
