/* The part combiner of the language.
 *
 * Data (part_states.h). Each part is a row of *states*: one for each moment at which the part's voice hears
 * something, and a last, empty one for the moment at which the part ends. A state knows the spans (beams,
 * hairpins, slurs, ties) that are open behind it, each with the moment it began at. Both rows are merged into
 * a row of *splits*, one for each moment of either part; a split points to each part's state at that moment
 * or, if the part has none there, to its next one. A split gets one *way* of combining.
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
#include "score/part_states.h"

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

/* ---- 1: forced ---- */

/* The way that `\partCombineApart`, `\partCombineForce #'chords` or `\once ...` asks for; *once is set for
 * the last. */
static way forced_way(const sw_reading *reading, uint32_t music, bool *once)
{
    static const struct row {
        const char *ending;
        way way;
    } rows[] = {
        {"Apart", WAY_APART},     {"Chords", WAY_CHORDS},  {"Unisono", WAY_UNISON}, {"SoloI", WAY_SOLO_ONE},
        {"SoloII", WAY_SOLO_TWO}, {"apart", WAY_APART},    {"chords", WAY_CHORDS},  {"unisono", WAY_UNISON},
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

static void find_forced(sw_parts *c)
{
    way permanent = WAY_NONE;
    for (size_t i = 0; i < c->count; i++) {
        way single = WAY_NONE;
        bool has_single = false;
        for (int n = 0; n < 2 && c->splits[i].synced; n++) {
            const sw_part *p = &c->parts[n];
            size_t s = c->splits[i].states[n];
            for (const sw_heard *h = sw_parts_begin(p, s); h < sw_parts_end(p, s); h++) {
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
static void settle(sw_parts *c, size_t i, way chosen)
{
    for (size_t back = i + 1; back-- > 0 && c->splits[back].way == WAY_NONE;) {
        c->splits[back].way = (uint8_t)chosen;
    }
}

static void settle_like_spans(sw_parts *c, size_t i, int part_number, size_t s)
{
    const sw_part *p = &c->parts[part_number];
    for (size_t k = 0; k < sw_parts_open(p, s); k++) {
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
static size_t sorted_notes(const sw_part *p, size_t s, const sw_heard *notes[MAX_CHORD])
{
    size_t count = 0;
    if (s == SW_NOWHERE) {
        return 0;
    }
    for (const sw_heard *h = sw_parts_begin(p, s); h < sw_parts_end(p, s) && count < MAX_CHORD; h++) {
        if (h->kind == SW_HEARD_NOTE || h->kind == SW_HEARD_DRUM) {
            notes[count++] = h;
        }
    }
    if (count > 1) {
        qsort(notes, count, sizeof notes[0], compare_notes);
    }
    return count;
}

static bool same_notes(const sw_parts *c, size_t s1, size_t s2)
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

/* Steps from the second part's note up to the first's that let them share a voice. */
typedef struct range {
    int lowest;
    int highest;
} range;

static void decide_notes(sw_parts *c, size_t i, size_t s1, size_t s2, range allowed)
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
        settle(c, i, allowed.lowest <= 0 && same_notes(c, s1, s2) ? WAY_CHORDS : WAY_APART);
        return;
    }
    int distance = sw_pitch_staff_steps(notes1[0]->pitch) - sw_pitch_staff_steps(notes2[0]->pitch);
    if (!same_value(notes1[0], notes2[0]) || distance < allowed.lowest || distance > allowed.highest) {
        settle(c, i, WAY_APART);
        return;
    }
    settle_like_spans(c, i, 0, sw_parts_before(s1));
    settle_like_spans(c, i, 1, sw_parts_before(s2));
    if (sw_parts_open(&c->parts[0], s1) == 0 && sw_parts_open(&c->parts[1], s2) == 0) {
        settle(c, i, WAY_CHORDS);
    }
}

static void find_notes(sw_parts *c, range allowed)
{
    for (size_t i = 0; i < c->count; i++) {
        size_t s1 = c->splits[i].states[0];
        size_t s2 = c->splits[i].states[1];
        if (s1 == SW_NOWHERE || s2 == SW_NOWHERE) {
            settle(c, i, WAY_APART);
            return; /* what is left belongs to one part alone */
        }
        if (c->splits[i].synced &&
            sw_parts_same_spans(&c->parts[0], sw_parts_before(s1), &c->parts[1], sw_parts_before(s2)) &&
            sw_parts_same_spans(&c->parts[0], s1, &c->parts[1], s2)) {
            decide_notes(c, i, s1, s2, allowed);
        } else {
            settle(c, i, WAY_APART);
        }
    }
}

/* ---- 3: a2 ---- */

/* The rests of a state, or its skips when there are no rests: their number, and the first of them. */
static size_t silences(const sw_part *p, size_t s, const sw_heard **first)
{
    *first = NULL;
    if (s == SW_NOWHERE) {
        return 0;
    }
    bool rests = sw_parts_count(p, s, SW_HEARD_REST) + sw_parts_count(p, s, SW_HEARD_FULL_REST) > 0;
    size_t count = 0;
    for (const sw_heard *h = sw_parts_begin(p, s); h < sw_parts_end(p, s); h++) {
        if (rests ? h->kind == SW_HEARD_REST || h->kind == SW_HEARD_FULL_REST : h->kind == SW_HEARD_SKIP) {
            *first = count++ == 0 ? h : *first;
        }
    }
    return count;
}

static way common_silence(const sw_parts *c, size_t s1, size_t s2)
{
    const sw_heard *rest1;
    const sw_heard *rest2;
    if (silences(&c->parts[0], s1, &rest1) == 1 && silences(&c->parts[1], s2, &rest2) == 1 &&
        rest1->kind == rest2->kind && same_value(rest1, rest2)) {
        return WAY_UNISILENCE;
    }
    return WAY_APART_SILENCE;
}

static bool begins_now(const sw_parts *c, size_t i, int part_number, size_t s)
{
    return s != SW_NOWHERE && sw_moment_compare(c->parts[part_number].states[s].when, c->splits[i].when) == 0;
}

/* A full-bar rest that begins while the other part is in one (or has ended) is the one to show. */
static way rest_beside_rest(const sw_parts *c, size_t i, way otherwise)
{
    size_t s[2];
    bool full[2];
    for (int n = 0; n < 2; n++) {
        s[n] = c->splits[i].states[n];
        s[n] = begins_now(c, i, n, s[n]) ? s[n] : sw_parts_before(s[n]);
        if (s[n] != SW_NOWHERE && sw_parts_notes(&c->parts[n], s[n]) > 0) {
            return otherwise;
        }
        full[n] = sw_parts_count(&c->parts[n], s[n], SW_HEARD_FULL_REST) > 0;
    }
    if (full[0] && begins_now(c, i, 0, s[0]) && (s[1] == SW_NOWHERE || full[1])) {
        return WAY_SILENCE_ONE;
    }
    if (full[1] && begins_now(c, i, 1, s[1]) && (s[0] == SW_NOWHERE || full[0])) {
        return WAY_SILENCE_TWO;
    }
    return otherwise;
}

static void find_a2(sw_parts *c)
{
    for (size_t i = 0; i < c->count; i++) {
        sw_part_split *now = &c->splits[i];
        size_t s1 = now->states[0];
        size_t s2 = now->states[1];
        if (now->way == WAY_CHORDS && sw_parts_notes(&c->parts[0], s1) > 0 && same_notes(c, s1, s2)) {
            now->way = WAY_UNISON;
        } else if (!now->synced) {
            now->way = (uint8_t)rest_beside_rest(c, i, now->way);
        } else if (sw_parts_notes(&c->parts[0], s1) == 0 && sw_parts_notes(&c->parts[1], s2) == 0) {
            now->way = (uint8_t)common_silence(c, s1, s2);
        }
    }
}

/* ---- 4: solo ---- */

static size_t put_range(sw_parts *c, way chosen, size_t first, size_t last)
{
    for (size_t i = first; i <= last; i++) {
        c->splits[i].way = (uint8_t)chosen;
    }
    return last;
}

/* The longest solo from `start` on; it can end only where no span is open. Returns where to go on. */
static size_t try_solo(sw_parts *c, way solo, size_t start)
{
    int player = solo == WAY_SOLO_ONE ? 0 : 1;
    for (size_t i = start; i < c->count; i++) {
        size_t playing = sw_parts_current(c, i, player);
        size_t silent = sw_parts_current(c, i, 1 - player);
        if (c->splits[i].way != WAY_APART) {
            return i;
        }
        if (sw_parts_notes(&c->parts[1 - player], silent) > 0) {
            return start;
        }
        if (playing == SW_NOWHERE) {
            return put_range(c, solo, start, i);
        }
        if (sw_parts_open(&c->parts[player], playing) == 0) {
            put_range(c, solo, start, i);
            start = i + 1;
        }
    }
    return start;
}

/* One of two rests that begin together and are not the same. */
static way choose_rest(const sw_parts *c, size_t s1, size_t s2)
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

static void decide_silence(sw_parts *c, size_t i)
{
    size_t s1 = sw_parts_current(c, i, 0);
    size_t s2 = sw_parts_current(c, i, 1);
    way chosen = WAY_APART_SILENCE;
    if (s1 == SW_NOWHERE || sw_parts_ended(&c->parts[0], s1)) {
        chosen = WAY_SILENCE_TWO;
    } else if (s2 == SW_NOWHERE || sw_parts_ended(&c->parts[1], s2)) {
        chosen = WAY_SILENCE_ONE;
    } else if (c->splits[i].synced) {
        chosen = choose_rest(c, s1, s2);
    } else if (i > 0 &&
               (c->splits[i - 1].way == WAY_SILENCE_ONE || c->splits[i - 1].way == WAY_SILENCE_TWO)) {
        chosen = c->splits[i - 1].way;
    }
    c->splits[i].way = (uint8_t)chosen;
}

static size_t decide_apart(sw_parts *c, size_t i)
{
    size_t s1 = sw_parts_current(c, i, 0);
    size_t s2 = sw_parts_current(c, i, 1);
    size_t notes1 = sw_parts_notes(&c->parts[0], s1);
    size_t notes2 = sw_parts_notes(&c->parts[1], s2);
    if (notes1 == 0 && notes2 == 0) {
        decide_silence(c, i);
    } else if (notes2 == 0 && begins_now(c, i, 0, s1) &&
               sw_parts_open(&c->parts[0], sw_parts_before(s1)) == 0) {
        return try_solo(c, WAY_SOLO_ONE, i);
    } else if (notes1 == 0 && begins_now(c, i, 1, s2) &&
               sw_parts_open(&c->parts[1], sw_parts_before(s2)) == 0) {
        return try_solo(c, WAY_SOLO_TWO, i);
    }
    return i + 1;
}

static void find_solos(sw_parts *c)
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
static void find_turns(const sw_parts *c, int part_number, sw_part_turns *turns)
{
    sw_part_voice last = SW_PART_VOICES;
    sw_rational silence = c->splits[0].when.main; /* there is always a split: the end */
    sw_moment told = sw_moment_zero();            /* of the last way, whether it meant a change or not */
    bool second_leads = false;
    for (size_t i = 0; i < c->count; i++) {
        const sw_part_split *now = &c->splits[i];
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
    sw_parts parts = sw_parts_new(one, two);
    find_forced(&parts);
    find_notes(&parts, (range){lowest, highest});
    find_a2(&parts);
    find_solos(&parts);
    for (int i = 0; i < 2; i++) {
        turns[i] = (sw_part_turns){0};
        find_turns(&parts, i, &turns[i]);
    }
    sw_parts_free(&parts);
}
