/* The search for the least total cost: dynamic programming over the slices.
 *
 * A *layer* holds the states that can be reached after a slice, in order of their sharing (split, crossed or
 * not). The next layer comes from every state with every sharing that leaves the hands of sounding notes as
 * they are: since held keys keep their order, one number says how they are shared. States that are alike are
 * merged to the cheapest. Per slice that is states times splits, times the choice of each hand to place its
 * fingers anew or not; the states of a layer are few, as a placement begins at one of the last few notes and
 * a lifted hand is remembered no longer than it needs to get away.
 *
 * Dropped early, without harm to the optimum: call states *kin* when they share the keys that sound on
 * alike. Kin can go on alike, slice by slice (with fingers placed anew wherever they could not
 * stay), and pay the same for impossible slices from then on; all that can differ are lines into the next
 * slice, the ways of the hands and their crossing, which a bound covers. A state that is dearer than its
 * cheapest kin by more than that bound can't win. In effect impossible splits die at once wherever there are
 * possible ones. */
#include "players/hand_split.h"

#include <limits.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "players/hand_costs.h"
#include "players/hand_problems.h"
#include "players/hand_states.h"

/* What the way back needs to know of a state. */
typedef struct trace {
    uint32_t parent;
    sw_hand_choice choice;
} trace;

typedef struct search {
    const sw_hand_slices *slices;
    const sw_hand_limits *limits;
    sw_hand_way way;
    sw_hand_layer now;
    sw_hand_layer next;
    trace *traces;
    size_t trace_count;
    size_t trace_capacity;
    size_t *first_trace; /* of each slice */
    int64_t *best_of_kin;
    size_t kin_capacity;
    bool exact;
} search;

/* ---- dropping states ---- */

/* A number for each way in which `all` keys can be shared, of which `below` lie below the split. Where all of
 * them lie on one side, crossed hands can't be told from others. */
static uint32_t sharing_number(uint32_t all, uint32_t below, bool crossed)
{
    if (!crossed) {
        return below;
    }
    return below == 0 || below == all ? all - below : all + below;
}

/* How the keys are shared that sound on into the next slice. */
static uint32_t kept_sharing(const search *s, const sw_hand_slice *slice, sw_hand_sharing sharing)
{
    uint32_t all = 0;
    uint32_t below = 0;
    for (uint32_t i = 0; i < slice->key_count; i++) {
        bool kept = s->slices->keys[slice->first_key + i].goes_on;
        all += kept;
        below += kept && i < sharing.split;
    }
    return sharing_number(all, below, sharing.crossed);
}

/* How those are shared that sound on from the slice before. */
static uint32_t held_sharing(const search *s, const sw_hand_slice *slice, sw_hand_sharing sharing)
{
    uint32_t all = 0;
    uint32_t below = 0;
    for (uint32_t i = 0; i < slice->key_count; i++) {
        bool held = s->slices->keys[slice->first_key + i].before != SW_NO_KEY;
        all += held;
        below += held && i < sharing.split;
    }
    return sharing_number(all, below, sharing.crossed);
}

/* More than two kin can differ by in all that follows slice `number` when they go on alike. */
static int64_t bound_after(const search *s, size_t number)
{
    if (number + 1 == s->slices->count) {
        return 0;
    }
    const sw_hand_slice *following = &s->slices->slices[number + 1];
    int64_t lines = 0;
    for (uint32_t i = 0; i < following->line_count; i++) {
        const sw_hand_line *line = &s->slices->lines[following->first_line + i];
        lines += (line->bound ? SW_HANDS_BOUND : SW_HANDS_LINE_STEP) + SW_HANDS_WITHIN_GROUP;
    }
    int64_t way_of_hand = SW_HANDS_SHIFT_SKIP + SW_HANDS_TOO_QUICK + SW_FULL_RUN * SW_HANDS_SHORT_RUN;
    int64_t each_slice = 2 * way_of_hand + SW_HANDS_UNDER;
    return lines + each_slice * (int64_t)(s->slices->count - 1 - number);
}

static void drop_hopeless(search *s, size_t number)
{
    size_t kinds = 2 * (size_t)s->slices->slices[number].key_count + 1;
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
        const sw_hand_state *candidate = &s->next.states[i];
        if (candidate->cost - s->best_of_kin[candidate->kept] <= bound) {
            s->next.states[remaining++] = *candidate;
        }
    }
    s->next.count = remaining;
}

/* ---- from slice to slice ---- */

/* The lowest step that goes right: where the split lies on the instrument. */
static int boundary(const search *s, const sw_hand_slice *slice, uint32_t split)
{
    const sw_hand_key *keys = s->slices->keys + slice->first_key;
    return split < slice->key_count ? keys[split].step : keys[slice->key_count - 1].step + 1;
}

/* One of the ways in which a hand can go on. */
typedef struct option {
    sw_hand_placement placement;
    int64_t cost;
    bool anew;
} option;

/* The ways of a hand from a placement, at most two. If fingers placed anew cost nothing, that is the only
 * one: fewer keys under the fingers leave every choice open for later. */
static int find_options(const search *s, const sw_hand_moment *moment, sw_hand hand,
                        const sw_hand_placement *placement, option options[2])
{
    option anew = {*placement, 0, moment->tasks[hand].struck > 0};
    anew.cost = sw_hand_move(&s->way, moment, hand, true, &anew.placement).cost;
    int count = 0;
    if (anew.cost > 0 && sw_hand_can_stay(&s->way, moment, hand, placement)) {
        option stay = {*placement, 0, false};
        stay.cost = sw_hand_move(&s->way, moment, hand, false, &stay.placement).cost;
        options[count++] = stay;
    }
    options[count++] = anew;
    return count;
}

static bool same_sharing(sw_hand_sharing a, sw_hand_sharing b)
{
    return a.split == b.split && a.crossed == b.crossed;
}

/* Continues a state of the layer in all ways that `moment` allows; `next` has what they have in common. */
static void continue_state(search *s, const sw_hand_state *from, const sw_hand_moment *moment,
                           sw_hand_state next)
{
    option left[2];
    option right[2];
    int left_count = find_options(s, moment, SW_LEFT_HAND, &from->hands[0], left);
    int right_count = find_options(s, moment, SW_RIGHT_HAND, &from->hands[1], right);
    next.right_place = from->right_place;
    for (int hand = 0; hand < 2; hand++) {
        next.cost += sw_hand_short_run_cost(moment, (sw_hand)hand, &from->hands[hand]);
    }
    int64_t cost =
        from->cost + next.cost +
        sw_hand_cross(&s->way, moment, next.choice.sharing.crossed, from->hands, &next.right_place);
    for (int l = 0; l < left_count; l++) {
        for (int r = 0; r < right_count; r++) {
            next.cost = cost + left[l].cost + right[r].cost;
            next.hands[SW_LEFT_HAND] = left[l].placement;
            next.hands[SW_RIGHT_HAND] = right[r].placement;
            next.choice.anew[SW_LEFT_HAND] = left[l].anew;
            next.choice.anew[SW_RIGHT_HAND] = right[r].anew;
            sw_hand_layer_offer(&s->next, &next);
        }
    }
}

/* Continues the states first .. end-1 of the layer, which have one sharing, with the sharing in `next`. */
static void continue_states(search *s, size_t first, size_t end, sw_hand_moment *moment, sw_hand_state next)
{
    const sw_hand_slice *slice = &s->slices->slices[moment->number];
    sw_hand_sharing before = s->now.states[first].choice.sharing;
    sw_hand_sharing now = next.choice.sharing;
    next.cost += sw_hand_come_from(&s->way, before, now, moment);
    next.move = abs(boundary(s, slice, now.split) - boundary(s, slice - 1, before.split));
    for (size_t i = first; i < end; i++) {
        next.parent = (uint32_t)i;
        continue_state(s, &s->now.states[i], moment, next);
    }
}

static void enter_sharing(search *s, size_t number, sw_hand_sharing sharing)
{
    const sw_hand_slice *slice = &s->slices->slices[number];
    sw_hand_moment moment = {.number = number};
    sw_hand_tasks(s->slices, slice, sharing, s->limits, moment.tasks);
    sw_hand_state next = {.choice.sharing = sharing, .kept = kept_sharing(s, slice, sharing)};
    next.cost = sw_hand_slice_cost(s->slices, slice, sharing, s->limits, moment.tasks);
    sw_hand_layer_begin_split(&s->next);
    if (number == 0) {
        sw_hand_state nowhere = {.hands = {sw_hand_nowhere(), sw_hand_nowhere()},
                                 .right_place = SW_NOT_CROSSED};
        continue_state(s, &nowhere, &moment, next);
        return;
    }
    uint32_t held = held_sharing(s, slice, sharing);
    for (size_t first = 0, end; first < s->now.count; first = end) {
        end = first + 1;
        while (end < s->now.count &&
               same_sharing(s->now.states[end].choice.sharing, s->now.states[first].choice.sharing)) {
            end++;
        }
        if (s->now.states[first].kept == held) {
            continue_states(s, first, end, &moment, next);
        }
    }
}

static void enter_slice(search *s, size_t number)
{
    const sw_hand_slice *slice = &s->slices->slices[number];
    sw_hand_layer_clear(&s->next);
    for (uint32_t split = 0; split <= slice->key_count; split++) {
        enter_sharing(s, number, (sw_hand_sharing){.split = split});
    }
    for (uint32_t split = 1; split < slice->key_count && s->limits->may_cross; split++) {
        enter_sharing(s, number, (sw_hand_sharing){.split = split, .crossed = true});
    }
    drop_hopeless(s, number);
    s->exact = sw_hand_layer_cap(&s->next, SW_HANDS_MAX_STATES) && s->exact;
    s->first_trace[number] = s->trace_count;
    for (size_t i = 0; i < s->next.count; i++) {
        s->traces = sw_grow(s->traces, s->trace_count, &s->trace_capacity, sizeof *s->traces);
        s->traces[s->trace_count++] = (trace){s->next.states[i].parent, s->next.states[i].choice};
    }
    sw_hand_layer swap = s->now;
    s->now = s->next;
    s->next = swap;
}

/* The choices of each slice on the cheapest way; its cost in *cost. Free the result. */
static sw_hand_choice *best_choices(search *s, int64_t *cost)
{
    for (size_t i = 0; i < s->slices->count; i++) {
        enter_slice(s, i);
    }
    sw_hand_choice *choices = sw_alloc((s->slices->count + 1) * sizeof *choices);
    size_t best = 0;
    for (size_t i = 1; i < s->now.count; i++) {
        if (sw_hand_state_is_better(&s->now.states[i], &s->now.states[best])) {
            best = i;
        }
    }
    *cost = s->now.count == 0 ? 0 : s->now.states[best].cost;
    for (size_t i = s->slices->count; i-- > 0;) {
        const trace *t = &s->traces[s->first_trace[i] + best];
        choices[i] = t->choice;
        best = t->parent;
    }
    return choices;
}

static const sw_hand *hands_of_notes(sw_arena *arena, const sw_hand_slices *slices, size_t count,
                                     const sw_hand_choice *choices)
{
    sw_hand *hands = sw_arena_alloc(arena, count * sizeof *hands);
    for (size_t i = 0; i < count; i++) {
        uint32_t head = slices->head[i];
        hands[i] = sw_hand_of_key(choices[slices->head_slice[head]].sharing, slices->head_key[head]);
    }
    return hands;
}

static const bool *rolls_of_notes(sw_arena *arena, const search *s, size_t count,
                                  const sw_hand_choice *choices)
{
    bool *rolls = sw_arena_alloc(arena, (count + 1) * sizeof *rolls);
    for (size_t i = 0; i < count; i++) {
        uint32_t number = s->slices->head_slice[i];
        rolls[i] = false;
        if (s->slices->head[i] == i) { /* tied notes are not struck */
            const sw_hand_slice *slice = &s->slices->slices[number];
            sw_hand_task tasks[2];
            sw_hand_tasks(s->slices, slice, choices[number].sharing, s->limits, tasks);
            rolls[i] = sw_hand_rolls(s->slices, slice, tasks);
        }
    }
    return rolls;
}

sw_hand_split sw_hands_split(sw_arena *arena, const sw_hand_note *notes, size_t count,
                             const sw_hand_limits *limits)
{
    sw_hand_slices slices = sw_hand_slices_make(notes, count, limits);
    search s = {.slices = &slices, .limits = limits, .way = sw_hand_way_of(&slices, limits), .exact = true};
    s.first_trace = sw_alloc((slices.count + 1) * sizeof *s.first_trace);
    sw_hand_split result = {0};
    sw_hand_choice *choices = best_choices(&s, &result.cost);
    result.exact = s.exact;
    result.hands = hands_of_notes(arena, &slices, count, choices);
    result.rolls = rolls_of_notes(arena, &s, count, choices);
    result.problems = sw_hand_problems(arena, notes, &s.way, choices, &result.problem_count);
    free(choices);
    sw_hand_layer_free(&s.now);
    sw_hand_layer_free(&s.next);
    free(s.traces);
    free(s.first_trace);
    free(s.best_of_kin);
    sw_hand_slices_free(&slices);
    return result;
}
