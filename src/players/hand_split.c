/* The search for the least total cost: dynamic programming over the slices.
 *
 * A *layer* holds the states that can be reached after a slice, in order of their split. The next layer comes
 * from every state with every split that leaves the hands of sounding notes as they are: since held keys keep
 * their order, it is enough that as many of them lie below the one split as below the other. States that are
 * alike in split and placements are merged to the cheaper one. Per slice that is states times splits; the
 * states of a layer are few, as a placement reaches no further back than a hand stays in its place or needs
 * to get away from it.
 *
 * Dropped early, without harm to the optimum: call states *kin* when as many of the keys that sound on lie
 * left of their splits. Kin can go on alike, slice by slice, and pay the same for impossible slices from then
 * on; all that can differ are lines into the next slice and the ways of the hands, which a bound covers. A
 * state that is dearer than its cheapest kin by more than that bound can't win. In effect impossible splits
 * die at once wherever there are possible ones. */
#include "players/hand_split.h"

#include <limits.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "players/hand_costs.h"
#include "players/hand_problems.h"

typedef struct state {
    int64_t cost;
    sw_hand_placement hands[2];
    uint32_t split;
    uint32_t kept;   /* keys left of the split that sound on into the next slice */
    uint32_t parent; /* in the layer before */
    int move;        /* how far the split lies from that of the parent, in steps: decides ties */
} state;

typedef struct layer {
    state *states;
    size_t count;
    size_t capacity;
} layer;

/* What the way back needs to know of a state. */
typedef struct trace {
    uint32_t parent;
    uint32_t split;
} trace;

typedef struct search {
    const sw_hand_slices *slices;
    const sw_hand_limits *limits;
    sw_hand_way way;
    layer now;
    layer next;
    trace *traces;
    size_t trace_count;
    size_t trace_capacity;
    size_t *first_trace; /* of each slice */
    uint32_t *table;     /* hash table of the states of one split in `next`: state + 1, or 0 */
    size_t table_size;   /* a power of two */
    size_t table_capacity;
    int64_t *best_of_kin;
    size_t kin_capacity;
    int64_t *scratch;
    size_t scratch_capacity;
    bool exact;
} search;

/* ---- merging states ---- */

static size_t hash_of(const sw_hand_placement hands[2])
{
    uint64_t h = 0;
    for (int i = 0; i < 2; i++) {
        h = (h ^ (uint32_t)hands[i].low) * 0x9E3779B97F4A7C15U;
        h = (h ^ (uint32_t)hands[i].high) * 0x9E3779B97F4A7C15U;
        h = (h ^ (uint32_t)hands[i].last) * 0x9E3779B97F4A7C15U;
    }
    return (size_t)(h ^ (h >> 32));
}

static bool same_placement(const sw_hand_placement *a, const sw_hand_placement *b)
{
    return a->low == b->low && a->high == b->high && a->last == b->last;
}

static uint32_t *slot_of(search *s, const sw_hand_placement hands[2])
{
    size_t i = hash_of(hands) & (s->table_size - 1);
    while (s->table[i] != 0) {
        const state *other = &s->next.states[s->table[i] - 1];
        if (same_placement(&other->hands[0], &hands[0]) && same_placement(&other->hands[1], &hands[1])) {
            break;
        }
        i = (i + 1) & (s->table_size - 1);
    }
    return &s->table[i];
}

/* Empties the table for a split that at most `states` states can reach. */
static void clear_table(search *s, size_t states)
{
    size_t wanted = 16;
    while (wanted < 2 * states) {
        wanted *= 2;
    }
    if (wanted > s->table_capacity) {
        s->table = sw_realloc(s->table, wanted * sizeof *s->table);
        s->table_capacity = wanted;
    }
    s->table_size = wanted;
    memset(s->table, 0, s->table_size * sizeof *s->table);
}

/* Of equal costs the one with the shorter move stays, else the earlier one. */
static void offer(search *s, const state *candidate)
{
    uint32_t *slot = slot_of(s, candidate->hands);
    if (*slot == 0) {
        s->next.states = sw_grow(s->next.states, s->next.count, &s->next.capacity, sizeof *s->next.states);
        s->next.states[s->next.count++] = *candidate;
        *slot = (uint32_t)s->next.count;
        return;
    }
    state *known = &s->next.states[*slot - 1];
    if (candidate->cost < known->cost || (candidate->cost == known->cost && candidate->move < known->move)) {
        *known = *candidate;
    }
}

/* ---- dropping states ---- */

/* Keys below the split that sound on into the next slice. */
static uint32_t kept_below(const search *s, const sw_hand_slice *slice, uint32_t split)
{
    uint32_t kept = 0;
    for (uint32_t i = 0; i < split; i++) {
        kept += s->slices->keys[slice->first_key + i].goes_on;
    }
    return kept;
}

/* Keys below the split that sound on from the slice before. */
static uint32_t held_below(const search *s, const sw_hand_slice *slice, uint32_t split)
{
    uint32_t held = 0;
    for (uint32_t i = 0; i < split; i++) {
        held += s->slices->keys[slice->first_key + i].before != SW_NO_KEY;
    }
    return held;
}

/* More than two kin can differ by in all that follows slice `number` when they go on alike. */
static int64_t bound_after(const search *s, size_t number)
{
    if (number + 1 == s->slices->count) {
        return 0;
    }
    int64_t lines = (int64_t)SW_HANDS_LINE_STEP * s->slices->slices[number + 1].line_count;
    int64_t way_of_hand = SW_HANDS_SHIFT_LEAP + SW_HANDS_TOO_QUICK;
    return lines + 2 * way_of_hand * (int64_t)(s->slices->count - 1 - number);
}

static void drop_hopeless(search *s, size_t number)
{
    size_t kinds = (size_t)s->slices->slices[number].key_count + 1;
    if (s->kin_capacity < kinds) {
        s->kin_capacity = kinds;
        s->best_of_kin = sw_realloc(s->best_of_kin, kinds * sizeof *s->best_of_kin);
    }
    for (size_t i = 0; i < kinds; i++) {
        s->best_of_kin[i] = INT64_MAX;
    }
    for (size_t i = 0; i < s->next.count; i++) {
        int64_t *best = &s->best_of_kin[s->next.states[i].kept];
        *best = s->next.states[i].cost < *best ? s->next.states[i].cost : *best;
    }
    int64_t bound = bound_after(s, number);
    size_t remaining = 0;
    for (size_t i = 0; i < s->next.count; i++) {
        const state *candidate = &s->next.states[i];
        if (candidate->cost - s->best_of_kin[candidate->kept] <= bound) {
            s->next.states[remaining++] = *candidate;
        }
    }
    s->next.count = remaining;
}

static int compare_costs(const void *a, const void *b)
{
    int64_t x = *(const int64_t *)a;
    int64_t y = *(const int64_t *)b;
    return (x > y) - (x < y);
}

/* The guard against music that no one plays: keeps the cheapest states only, and says so. */
static void cap(search *s)
{
    if (s->next.count <= SW_HANDS_MAX_STATES) {
        return;
    }
    s->exact = false;
    if (s->scratch_capacity < s->next.count) {
        s->scratch_capacity = s->next.capacity;
        s->scratch = sw_realloc(s->scratch, s->scratch_capacity * sizeof *s->scratch);
    }
    for (size_t i = 0; i < s->next.count; i++) {
        s->scratch[i] = s->next.states[i].cost;
    }
    qsort(s->scratch, s->next.count, sizeof *s->scratch, compare_costs);
    int64_t dearest = s->scratch[SW_HANDS_MAX_STATES - 1];
    size_t kept = 0;
    for (size_t i = 0; i < s->next.count && kept < SW_HANDS_MAX_STATES; i++) {
        if (s->next.states[i].cost <= dearest) {
            s->next.states[kept++] = s->next.states[i];
        }
    }
    s->next.count = kept;
}

/* ---- from slice to slice ---- */

/* The lowest step that goes right: where the split lies on the instrument. */
static int boundary(const search *s, const sw_hand_slice *slice, uint32_t split)
{
    const sw_hand_key *keys = s->slices->keys + slice->first_key;
    return split < slice->key_count ? keys[split].step : keys[slice->key_count - 1].step + 1;
}

/* Continues the states first .. end-1 of the layer, which have one split, with another split in slice
 * `number`. */
static void continue_states(search *s, size_t number, size_t first, size_t end, uint32_t split,
                            int64_t slice_cost, const sw_hand_task tasks[2])
{
    const sw_hand_slice *before = &s->slices->slices[number - 1];
    const sw_hand_slice *slice = &s->slices->slices[number];
    uint32_t split_before = s->now.states[first].split;
    sw_hand_lines lines = sw_hand_line_costs(s->slices, slice, split_before, split);
    uint32_t kept = kept_below(s, slice, split);
    int move = abs(boundary(s, slice, split) - boundary(s, before, split_before));
    bool engaged[2] = {split_before > 0, split_before < before->key_count};
    for (size_t i = first; i < end; i++) {
        state candidate = s->now.states[i];
        candidate.split = split;
        candidate.kept = kept;
        candidate.parent = (uint32_t)i;
        candidate.move = move;
        candidate.cost += slice_cost + lines.cost;
        for (int hand = 0; hand < 2; hand++) {
            candidate.cost += sw_hand_move(&s->way, number, &tasks[hand], engaged[hand], lines.shift[hand],
                                           &candidate.hands[hand])
                                  .cost;
        }
        offer(s, &candidate);
    }
}

static void begin_states(search *s, uint32_t split, int64_t slice_cost, const sw_hand_task tasks[2])
{
    state candidate = {.cost = slice_cost, .split = split, .hands = {sw_hand_nowhere(), sw_hand_nowhere()}};
    candidate.kept = kept_below(s, &s->slices->slices[0], split);
    for (int hand = 0; hand < 2; hand++) {
        sw_hand_move(&s->way, 0, &tasks[hand], false, 0, &candidate.hands[hand]);
    }
    offer(s, &candidate);
}

static void enter_slice(search *s, size_t number)
{
    const sw_hand_slice *slice = &s->slices->slices[number];
    s->next.count = 0;
    for (uint32_t split = 0; split <= slice->key_count; split++) {
        sw_hand_task tasks[2];
        sw_hand_tasks(s->slices, slice, split, s->limits, tasks);
        int64_t cost = sw_hand_slice_cost(s->slices, slice, split, s->limits, tasks);
        clear_table(s, s->now.count);
        if (number == 0) {
            begin_states(s, split, cost, tasks);
            continue;
        }
        uint32_t held = held_below(s, slice, split);
        for (size_t first = 0, end; first < s->now.count; first = end) {
            end = first + 1;
            while (end < s->now.count && s->now.states[end].split == s->now.states[first].split) {
                end++;
            }
            if (s->now.states[first].kept == held) {
                continue_states(s, number, first, end, split, cost, tasks);
            }
        }
    }
    drop_hopeless(s, number);
    cap(s);
    s->first_trace[number] = s->trace_count;
    for (size_t i = 0; i < s->next.count; i++) {
        s->traces = sw_grow(s->traces, s->trace_count, &s->trace_capacity, sizeof *s->traces);
        s->traces[s->trace_count++] = (trace){s->next.states[i].parent, s->next.states[i].split};
    }
    layer swap = s->now;
    s->now = s->next;
    s->next = swap;
}

/* The split of each slice on the cheapest way; its cost in *cost. Free the result. */
static uint32_t *best_splits(search *s, int64_t *cost)
{
    for (size_t i = 0; i < s->slices->count; i++) {
        enter_slice(s, i);
    }
    uint32_t *splits = sw_alloc((s->slices->count + 1) * sizeof *splits);
    size_t best = 0;
    for (size_t i = 1; i < s->now.count; i++) {
        if (s->now.states[i].cost < s->now.states[best].cost) {
            best = i;
        }
    }
    *cost = s->now.count == 0 ? 0 : s->now.states[best].cost;
    for (size_t i = s->slices->count; i-- > 0;) {
        const trace *t = &s->traces[s->first_trace[i] + best];
        splits[i] = t->split;
        best = t->parent;
    }
    return splits;
}

static const sw_hand *hands_of_notes(sw_arena *arena, const sw_hand_slices *slices, size_t count,
                                     const uint32_t *splits)
{
    sw_hand *hands = sw_arena_alloc(arena, count * sizeof *hands);
    for (size_t i = 0; i < count; i++) {
        uint32_t head = slices->head[i];
        hands[i] = slices->head_key[head] < splits[slices->head_slice[head]] ? SW_LEFT_HAND : SW_RIGHT_HAND;
    }
    return hands;
}

sw_hand_split sw_hands_split(sw_arena *arena, const sw_hand_note *notes, size_t count,
                             const sw_hand_limits *limits)
{
    sw_hand_slices slices = sw_hand_slices_make(notes, count, limits);
    search s = {.slices = &slices, .limits = limits, .way = sw_hand_way_of(&slices, limits), .exact = true};
    s.first_trace = sw_alloc((slices.count + 1) * sizeof *s.first_trace);
    sw_hand_split result = {0};
    uint32_t *splits = best_splits(&s, &result.cost);
    result.exact = s.exact;
    result.hands = hands_of_notes(arena, &slices, count, splits);
    result.problems = sw_hand_problems(arena, notes, &s.way, splits, &result.problem_count);
    free(splits);
    free(s.now.states);
    free(s.next.states);
    free(s.traces);
    free(s.first_trace);
    free(s.table);
    free(s.best_of_kin);
    free(s.scratch);
    sw_hand_slices_free(&slices);
    return result;
}

/* ---- the instruments ---- */

sw_hand_limits sw_hand_limits_harp(void)
{
    enum { C3 = -7, G2 = -10 };
    return (sw_hand_limits){.fingers = 4,
                            .span = 9,
                            .comfort = 9,
                            .by_string = true,
                            .holds = SW_HOLD_SOFT,
                            .hold_seconds = INFINITY,
                            .travel_seconds = 0.08,
                            .seconds_per_step = 0.012,
                            .settle_seconds = 0.35,
                            .right_low = C3,
                            .right_lowest = G2};
}

sw_hand_limits sw_hand_limits_piano(void)
{
    return (sw_hand_limits){.fingers = 5,
                            .span = 9,
                            .comfort = 8,
                            .by_string = false,
                            .holds = SW_HOLD_FIRM,
                            .hold_seconds = INFINITY,
                            .travel_seconds = 0.08,
                            .seconds_per_step = 0.012,
                            .settle_seconds = 0.35,
                            .right_low = INT_MIN,
                            .right_lowest = INT_MIN};
}
