#include "players/hand_costs.h"

#include <limits.h>
#include <math.h>
#include <stdlib.h>

static int max(int a, int b)
{
    return a > b ? a : b;
}

static int min(int a, int b)
{
    return a < b ? a : b;
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
                            .settle_seconds = 0.55,
                            .left_high = 5,
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
                            .settle_seconds = 0.55,
                            .left_high = 14,
                            .right_low = INT_MIN,
                            .right_lowest = INT_MIN};
}

sw_hand_limits sw_hand_limits_mallets(void)
{
    sw_hand_limits limits = sw_hand_limits_piano(); /* hands move over a keyboard alike */
    limits.fingers = 2;
    limits.span = 7;
    limits.comfort = 7;
    limits.in_turn = true;
    limits.holds = SW_HOLD_SOFT;
    return limits;
}

static const sw_hand_reach *reach_at(const sw_hand_limits *limits, int lowest)
{
    const sw_hand_reach *found = NULL;
    for (size_t i = 0; i < limits->reach_count && limits->reaches[i].from <= lowest; i++) {
        found = &limits->reaches[i];
    }
    return found;
}

int sw_hand_span_at(const sw_hand_limits *limits, int lowest)
{
    const sw_hand_reach *reach = reach_at(limits, lowest);
    return reach != NULL ? reach->span : limits->span;
}

int sw_hand_comfort_at(const sw_hand_limits *limits, int lowest)
{
    const sw_hand_reach *reach = reach_at(limits, lowest);
    return reach != NULL ? reach->comfort : limits->comfort;
}

/* ---- ranges and sets of keys ---- */

static bool is_empty(sw_hand_range range)
{
    return range.low > range.high;
}

static sw_hand_range joined_ranges(sw_hand_range a, sw_hand_range b)
{
    return (sw_hand_range){min(a.low, b.low), max(a.high, b.high)};
}

static sw_hand_keys joined_keys(sw_hand_keys a, sw_hand_keys b)
{
    if (a.bits == 0 || b.bits == 0) {
        return a.bits == 0 ? b : a;
    }
    sw_hand_keys lower = a.lowest <= b.lowest ? a : b;
    sw_hand_keys upper = a.lowest <= b.lowest ? b : a;
    int distance = upper.lowest - lower.lowest;
    lower.bits |= distance < 64 ? upper.bits << distance : 0;
    return lower;
}

static int count_of(sw_hand_keys keys)
{
    int count = 0;
    for (uint64_t rest = keys.bits; rest != 0; rest &= rest - 1) {
        count++;
    }
    return count;
}

/* ---- one slice ---- */

static int steps_too_wide(const sw_hand_task *task, const sw_hand_limits *limits)
{
    return max(0, sw_hand_spread(task) - sw_hand_span_at(limits, task->range.low));
}

/* Rolls what the hands strike where a hand is too wide, if that helps: a key that is held can't be rolled. */
static void roll_if_wide(sw_hand_task tasks[2], const sw_hand_limits *limits)
{
    bool helps = false;
    for (int hand = 0; hand < 2; hand++) {
        if (steps_too_wide(&tasks[hand], limits) > 0) {
            helps = true;
            if (tasks[hand].struck < tasks[hand].keys) {
                return;
            }
        }
    }
    for (int hand = 0; hand < 2 && helps; hand++) {
        tasks[hand].rolled = tasks[hand].struck;
    }
}

void sw_hand_tasks(const sw_hand_slices *slices, const sw_hand_slice *slice, sw_hand_sharing sharing,
                   const sw_hand_limits *limits, sw_hand_task tasks[2])
{
    const sw_hand_key *keys = slices->keys + slice->first_key;
    for (int hand = 0; hand < 2; hand++) {
        tasks[hand] = (sw_hand_task){
            .range = {INT_MAX, INT_MIN}, .lowest_struck = INT_MAX, .sounding_range = {INT_MAX, INT_MIN}};
    }
    for (uint32_t i = 0; i < slice->key_count; i++) {
        sw_hand_task *task = &tasks[sw_hand_of_key(sharing, i)];
        int step = keys[i].step;
        task->sounding++;
        task->sounding_range = joined_ranges(task->sounding_range, (sw_hand_range){step, step});
        if (keys[i].struck) {
            task->struck++;
            task->rolled += keys[i].rolled;
            task->lowest_struck = min(task->lowest_struck, step);
        }
        if (keys[i].struck || limits->holds == SW_HOLD_FIRM) {
            task->keys++;
            task->range = joined_ranges(task->range, (sw_hand_range){step, step});
            task->placed = joined_keys(task->placed, (sw_hand_keys){keys[i].number, 1});
        }
    }
    if (limits->may_roll) {
        roll_if_wide(tasks, limits);
    }
}

int sw_hand_spread(const sw_hand_task *task)
{
    return task->keys == task->rolled ? 0 : task->range.high - task->range.low;
}

bool sw_hand_rolls(const sw_hand_slices *slices, const sw_hand_slice *slice, const sw_hand_task tasks[2])
{
    int marked = 0;
    for (uint32_t i = 0; i < slice->key_count; i++) {
        marked += slices->keys[slice->first_key + i].rolled;
    }
    return tasks[0].rolled + tasks[1].rolled > marked;
}

int sw_hand_excess(const sw_hand_task *task, const sw_hand_limits *limits)
{
    return max(0, task->keys - limits->fingers) + steps_too_wide(task, limits);
}

static int64_t register_cost(const sw_hand_key *key, sw_hand hand, const sw_hand_limits *limits)
{
    if (hand == SW_LEFT_HAND) {
        return (int64_t)SW_HANDS_LEFT_HIGH * min(limits->left_high, max(0, key->step));
    }
    int64_t cost = SW_HANDS_RIGHT_DEEP * max(0, -key->step);
    if (key->step < limits->right_low) {
        cost += (int64_t)SW_HANDS_RIGHT_LOW * (limits->right_low - key->step);
    }
    return key->step < limits->right_lowest ? cost + SW_HANDS_RIGHT_LOWEST : cost;
}

static int64_t hand_cost(const sw_hand_task *task, const sw_hand_task *other, const sw_hand_limits *limits)
{
    enum { OCTAVE = 7 };
    int spread = sw_hand_spread(task);
    int64_t cost = (int64_t)SW_HANDS_STRETCH * max(0, spread - sw_hand_comfort_at(limits, task->range.low));
    if (task->keys > 0 && task->range.high - task->range.low > OCTAVE && other->sounding == 0) {
        cost += SW_HANDS_IDLE;
    }
    cost += (int64_t)SW_HANDS_UNEVEN * max(0, task->keys - other->keys - 4);
    if (limits->holds == SW_HOLD_SOFT && task->struck > 0) {
        int ringing_spread = task->sounding_range.high - task->sounding_range.low;
        cost += (int64_t)SW_HANDS_RING_KEY * max(0, task->sounding - limits->fingers);
        int span = sw_hand_span_at(limits, task->sounding_range.low);
        cost += (int64_t)SW_HANDS_RING_STEP * max(0, ringing_spread - span);
    }
    return cost;
}

int64_t sw_hand_slice_cost(const sw_hand_slices *slices, const sw_hand_slice *slice, sw_hand_sharing sharing,
                           const sw_hand_limits *limits, const sw_hand_task tasks[2])
{
    int64_t excess = (int64_t)sw_hand_excess(&tasks[0], limits) + sw_hand_excess(&tasks[1], limits);
    int64_t cost = excess == 0 ? 0 : SW_HANDS_IMPOSSIBLE + excess * SW_HANDS_EXCESS;
    cost += hand_cost(&tasks[0], &tasks[1], limits) + hand_cost(&tasks[1], &tasks[0], limits);
    cost += sw_hand_rolls(slices, slice, tasks) ? SW_HANDS_ROLL : 0;
    if (slice->several_voices && (sharing.split == 0 || sharing.split == slice->key_count)) {
        cost += SW_HANDS_TWO_VOICES;
    }
    const sw_hand_key *keys = slices->keys + slice->first_key;
    for (uint32_t i = 0; i < slice->key_count; i++) {
        if (keys[i].struck) {
            cost += register_cost(&keys[i], sw_hand_of_key(sharing, i), limits);
        }
    }
    return cost;
}

/* ---- lines ---- */

static int pass_cost(int steps)
{
    return steps <= 1 ? SW_HANDS_LINE_STEP : SW_HANDS_LINE_LEAP;
}

static int shift_cost(int steps)
{
    return steps <= 1 ? SW_HANDS_SHIFT_STEP : steps <= 4 ? SW_HANDS_SHIFT_SKIP : SW_HANDS_SHIFT_LEAP;
}

int64_t sw_hand_come_from(const sw_hand_way *way, sw_hand_sharing before, sw_hand_sharing now,
                          sw_hand_moment *moment)
{
    const sw_hand_slice *slice = &way->slices->slices[moment->number];
    const sw_hand_line *lines = way->slices->lines + slice->first_line;
    moment->engaged[SW_LEFT_HAND] = before.split > 0; /* crossed or not: then both hands have keys */
    moment->engaged[SW_RIGHT_HAND] = before.split < (slice - 1)->key_count;
    moment->shift[SW_LEFT_HAND] = moment->shift[SW_RIGHT_HAND] = 0;
    moment->takes_over[SW_LEFT_HAND] = moment->takes_over[SW_RIGHT_HAND] = false;
    moment->full_run[SW_LEFT_HAND] = moment->full_run[SW_RIGHT_HAND] = 0;
    moment->bound[SW_LEFT_HAND] = moment->bound[SW_RIGHT_HAND] = false;
    int64_t cost = 0;
    for (uint32_t i = 0; i < slice->line_count; i++) {
        const sw_hand_line *line = &lines[i];
        sw_hand from = sw_hand_of_key(before, line->from);
        sw_hand to = sw_hand_of_key(now, line->to);
        sw_hand other = to == SW_LEFT_HAND ? SW_RIGHT_HAND : SW_LEFT_HAND;
        if (from != to) {
            moment->takes_over[to] = moment->takes_over[to] || line->single;
            int full_run = !line->single ? 0 : line->apart ? SW_FULL_GROUP : SW_FULL_RUN;
            moment->full_run[from] = max(moment->full_run[from], full_run);
            cost += line->bound ? SW_HANDS_BOUND : pass_cost(line->steps);
            cost += line->within ? SW_HANDS_WITHIN_GROUP : 0;
            continue;
        }
        bool in_turn = way->limits->in_turn && line->single && moment->tasks[other].struck == 0;
        moment->bound[to] = moment->bound[to] || line->bound || in_turn;
        if (!line->single) {
            continue; /* chords and the basses under them are no running line: the hand may lift */
        }
        int shift = shift_cost(line->steps);
        int *least = &moment->shift[to]; /* of several lines the smoothest carries the hand over */
        *least = *least == 0 ? shift : min(*least, shift);
    }
    return cost;
}

/* ---- the way of a hand ---- */

static double travel_time(const sw_hand_limits *limits, int steps)
{
    return limits->travel_seconds + limits->seconds_per_step * steps;
}

sw_hand_way sw_hand_way_of(const sw_hand_slices *slices, const sw_hand_limits *limits)
{
    int low = INT_MAX;
    int high = INT_MIN;
    for (size_t i = 0; i < slices->key_count; i++) {
        low = min(low, slices->keys[i].step);
        high = max(high, slices->keys[i].step);
    }
    int compass = slices->key_count == 0 ? 0 : high - low;
    int narrowest = limits->span;
    for (size_t i = 0; i < limits->reach_count; i++) {
        narrowest = min(narrowest, limits->reaches[i].span);
    }
    double longest = travel_time(limits, max(1, compass - narrowest));
    return (sw_hand_way){slices, limits, fmax(longest, limits->settle_seconds)};
}

sw_hand_placement sw_hand_nowhere(void)
{
    const sw_hand_range nothing = {INT_MAX, INT_MIN};
    return (sw_hand_placement){.struck = nothing, .last = SW_LONG_AGO, .range = nothing};
}

/* Steps by which a range and the keys of a task together are too wide for a hand. */
static int steps_beyond(const sw_hand_way *way, sw_hand_range range, const sw_hand_task *task)
{
    sw_hand_range joined = joined_ranges(range, task->range);
    int span = sw_hand_span_at(way->limits, joined.low);
    return is_empty(range) ? 0 : max(0, joined.high - joined.low - span);
}

static double seconds_since(const sw_hand_way *way, size_t number, int32_t last)
{
    return fmax(0, way->slices->slices[number].seconds - way->slices->slices[last].seconds);
}

/* A hand that strikes nothing: it holds on, or it is lifted and its place fades with the time it would need.
 */
static void rest(const sw_hand_way *way, size_t number, bool holds_on, sw_hand_placement *placement)
{
    if (placement->last != SW_LONG_AGO && seconds_since(way, number, placement->last) >= way->longest) {
        placement->last = SW_LONG_AGO;
    }
    if (holds_on) {
        return;
    }
    sw_hand_placement lifted = sw_hand_nowhere();
    if (placement->last != SW_LONG_AGO) {
        lifted.struck = placement->struck;
        lifted.last = placement->last;
    }
    *placement = lifted;
}

bool sw_hand_can_stay(const sw_hand_way *way, const sw_hand_moment *moment, sw_hand hand,
                      const sw_hand_placement *placement)
{
    const sw_hand_task *task = &moment->tasks[hand];
    return moment->engaged[hand] && steps_beyond(way, placement->range, task) == 0 &&
           count_of(joined_keys(placement->keys, task->placed)) <= way->limits->fingers;
}

/* The part of the settling time that is missing. */
static double hurry(const sw_hand_way *way, double available)
{
    double settle = way->limits->settle_seconds;
    return available < settle ? (settle - available) / settle : 0;
}

/* The cost of placing the fingers anew in the midst of a line; `available` seconds after they last struck. */
static int64_t placing_cost(const sw_hand_way *way, const sw_hand_moment *moment, sw_hand hand,
                            const sw_hand_placement *placement, double available)
{
    if (moment->engaged[hand]) {
        return llround(moment->shift[hand] * hurry(way, available));
    }
    sw_hand_range range = moment->tasks[hand].range;
    bool same_place = range.low == placement->struck.low && range.high == placement->struck.high;
    return moment->takes_over[hand] && !same_place ? llround(SW_HANDS_HASTE * hurry(way, available)) : 0;
}

/* An engaged hand whose fingers are placed anew moves by a step at least: no finger is where it has to be. */
static sw_hand_travel move_anew(const sw_hand_way *way, const sw_hand_moment *moment, sw_hand hand,
                                const sw_hand_placement *placement)
{
    sw_hand_travel travel = {.steps = steps_beyond(way, placement->struck, &moment->tasks[hand])};
    if (moment->engaged[hand]) {
        travel.steps = max(1, travel.steps);
    }
    if (placement->last == SW_LONG_AGO) {
        return travel;
    }
    travel.available = seconds_since(way, moment->number, placement->last);
    if (moment->bound[hand]) {
        return travel;
    }
    travel.cost = placing_cost(way, moment, hand, placement, travel.available);
    bool thumb_passes = moment->engaged[hand] && moment->shift[hand] == SW_HANDS_SHIFT_STEP;
    if (travel.steps > 0 && !thumb_passes) {
        travel.needed = travel_time(way->limits, travel.steps);
    }
    if (travel.available < travel.needed) {
        travel.cost += llround(SW_HANDS_TOO_QUICK * ((travel.needed - travel.available) / travel.needed));
    }
    return travel;
}

sw_hand_travel sw_hand_move(const sw_hand_way *way, const sw_hand_moment *moment, sw_hand hand, bool anew,
                            sw_hand_placement *placement)
{
    const sw_hand_task *task = &moment->tasks[hand];
    sw_hand_travel travel = {0};
    if (task->struck == 0) {
        rest(way, moment->number, task->sounding > 0, placement);
        return travel;
    }
    int run = moment->takes_over[hand] ? 0 : placement->run; /* of a lifted hand: 0 */
    sw_hand_placement next = {.struck = task->range,
                              .run = min(SW_FULL_RUN, run + 1),
                              .last = (int32_t)moment->number,
                              .range = task->range,
                              .keys = task->placed};
    if (anew) {
        travel = move_anew(way, moment, hand, placement);
    } else {
        next.range = joined_ranges(placement->range, task->range);
        next.keys = joined_keys(placement->keys, task->placed);
    }
    *placement = next;
    return travel;
}

int64_t sw_hand_short_run_cost(const sw_hand_moment *moment, sw_hand hand, const sw_hand_placement *placement)
{
    return (int64_t)SW_HANDS_SHORT_RUN * max(0, moment->full_run[hand] - placement->run);
}

/* ---- hands that cross ---- */

static int twice_middle(sw_hand_range range)
{
    return range.low + range.high;
}

/* The left hand strikes and the right is in place: it comes over the right, or back. */
static int64_t strike_left(int distance, sw_hand_range other, int *right_place)
{
    bool crossed = *right_place != SW_NOT_CROSSED;
    *right_place = distance > 0 ? other.low : SW_NOT_CROSSED;
    if (distance <= 0 || crossed) {
        return 0;
    }
    return min(SW_HANDS_UNDER, SW_HANDS_OVER + SW_HANDS_OVER_LOW * max(0, -other.low));
}

/* The right hand strikes and the left is in place. Under a left hand that came over it may go on, or come
 * back to where it was. */
static int64_t strike_right(int distance, sw_hand_range own, bool engaged, int *right_place)
{
    bool free = *right_place != SW_NOT_CROSSED && (engaged || own.low >= *right_place);
    *right_place = distance < 0 ? own.low : SW_NOT_CROSSED;
    return distance < 0 && !free ? SW_HANDS_UNDER : 0;
}

/* Both hands have keys, and the left ones lie above the right ones. */
static int64_t lie_crossed(const sw_hand_moment *moment, const sw_hand_placement *right, int *right_place)
{
    bool begins = *right_place == SW_NOT_CROSSED;
    const sw_hand_task *task = &moment->tasks[SW_RIGHT_HAND];
    *right_place = task->struck > 0 ? task->range.low : right->struck.low;
    return SW_HANDS_CROSSED_ON + (begins ? SW_HANDS_CROSSED : 0);
}

int64_t sw_hand_cross(const sw_hand_way *way, const sw_hand_moment *moment, bool crossed,
                      const sw_hand_placement placements[2], int *right_place)
{
    if (crossed) {
        return lie_crossed(moment, &placements[SW_RIGHT_HAND], right_place);
    }
    sw_hand hand = moment->tasks[SW_LEFT_HAND].struck > 0 ? SW_LEFT_HAND : SW_RIGHT_HAND;
    sw_hand rest = hand == SW_LEFT_HAND ? SW_RIGHT_HAND : SW_LEFT_HAND;
    if (moment->tasks[rest].sounding > 0) {
        *right_place = SW_NOT_CROSSED;
        return 0;
    }
    const sw_hand_placement *other = &placements[rest];
    bool in_place = moment->engaged[rest] ||
                    (other->last != SW_LONG_AGO &&
                     seconds_since(way, moment->number, other->last) < way->limits->settle_seconds);
    sw_hand_range own = moment->tasks[hand].range;
    if (!in_place) {
        bool stays = moment->engaged[hand] && *right_place != SW_NOT_CROSSED && own.low >= *right_place &&
                     own.low - *right_place <= way->limits->span;
        *right_place = stays ? *right_place : SW_NOT_CROSSED;
        return 0;
    }
    int distance = twice_middle(own) - twice_middle(other->struck);
    return hand == SW_LEFT_HAND ? strike_left(distance, other->struck, right_place)
                                : strike_right(distance, own, moment->engaged[hand], right_place);
}
