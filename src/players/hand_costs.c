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

/* ---- one slice ---- */

void sw_hand_tasks(const sw_hand_slices *slices, const sw_hand_slice *slice, uint32_t split,
                   const sw_hand_limits *limits, sw_hand_task tasks[2])
{
    const sw_hand_key *keys = slices->keys + slice->first_key;
    for (int hand = 0; hand < 2; hand++) {
        tasks[hand] = (sw_hand_task){.low = INT_MAX,
                                     .high = INT_MIN,
                                     .lowest_struck = INT_MAX,
                                     .sounding_low = INT_MAX,
                                     .sounding_high = INT_MIN};
    }
    for (uint32_t i = 0; i < slice->key_count; i++) {
        sw_hand_task *task = &tasks[i < split ? SW_LEFT_HAND : SW_RIGHT_HAND];
        int step = keys[i].step;
        task->sounding++;
        task->sounding_low = min(task->sounding_low, step);
        task->sounding_high = max(task->sounding_high, step);
        if (keys[i].struck) {
            task->struck++;
            task->lowest_struck = min(task->lowest_struck, step);
        }
        if (keys[i].struck || limits->holds == SW_HOLD_FIRM) {
            task->keys++;
            task->low = min(task->low, step);
            task->high = max(task->high, step);
        }
    }
}

int sw_hand_spread(const sw_hand_task *task)
{
    return task->keys == 0 ? 0 : task->high - task->low;
}

int sw_hand_excess(const sw_hand_task *task, const sw_hand_limits *limits)
{
    return max(0, task->keys - limits->fingers) + max(0, sw_hand_spread(task) - limits->span);
}

static int64_t register_cost(const sw_hand_key *key, sw_hand hand, const sw_hand_limits *limits)
{
    if (hand == SW_LEFT_HAND) {
        return SW_HANDS_LEFT_HIGH * max(0, key->step);
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
    int64_t cost = (int64_t)SW_HANDS_STRETCH * max(0, spread - limits->comfort);
    if (spread > OCTAVE && other->sounding == 0) {
        cost += SW_HANDS_IDLE;
    }
    cost += (int64_t)SW_HANDS_UNEVEN * max(0, task->keys - other->keys - 4);
    if (limits->holds == SW_HOLD_SOFT && task->struck > 0) {
        int ringing_spread = task->sounding_high - task->sounding_low;
        cost += (int64_t)SW_HANDS_RING_KEY * max(0, task->sounding - limits->fingers);
        cost += (int64_t)SW_HANDS_RING_STEP * max(0, ringing_spread - limits->span);
    }
    return cost;
}

int64_t sw_hand_slice_cost(const sw_hand_slices *slices, const sw_hand_slice *slice, uint32_t split,
                           const sw_hand_limits *limits, const sw_hand_task tasks[2])
{
    int64_t excess = (int64_t)sw_hand_excess(&tasks[0], limits) + sw_hand_excess(&tasks[1], limits);
    int64_t cost = excess == 0 ? 0 : SW_HANDS_IMPOSSIBLE + excess * SW_HANDS_EXCESS;
    cost += hand_cost(&tasks[0], &tasks[1], limits) + hand_cost(&tasks[1], &tasks[0], limits);
    const sw_hand_key *keys = slices->keys + slice->first_key;
    for (uint32_t i = 0; i < slice->key_count; i++) {
        if (keys[i].struck) {
            cost += register_cost(&keys[i], i < split ? SW_LEFT_HAND : SW_RIGHT_HAND, limits);
        }
    }
    return cost;
}

/* ---- lines ---- */

/* Repeated notes and steps, thirds and fourths, wider leaps. */
static int by_interval(int steps, int step, int skip, int leap)
{
    return steps <= 1 ? step : steps <= 3 ? skip : leap;
}

sw_hand_lines sw_hand_line_costs(const sw_hand_slices *slices, const sw_hand_slice *slice,
                                 uint32_t split_before, uint32_t split)
{
    sw_hand_lines result = {0};
    const sw_hand_line *lines = slices->lines + slice->first_line;
    for (uint32_t i = 0; i < slice->line_count; i++) {
        const sw_hand_line *line = &lines[i];
        sw_hand from = line->from < split_before ? SW_LEFT_HAND : SW_RIGHT_HAND;
        sw_hand to = line->to < split ? SW_LEFT_HAND : SW_RIGHT_HAND;
        if (from != to) {
            result.cost +=
                by_interval(line->steps, SW_HANDS_LINE_STEP, SW_HANDS_LINE_SKIP, SW_HANDS_LINE_LEAP);
            continue;
        }
        if (!line->single) {
            continue; /* chords and the basses under them are no running line: the hand may lift */
        }
        int shift = by_interval(line->steps, SW_HANDS_SHIFT_STEP, SW_HANDS_SHIFT_SKIP, SW_HANDS_SHIFT_LEAP);
        int *least = &result.shift[to]; /* of several lines the smoothest carries the hand over */
        *least = *least == 0 ? shift : min(*least, shift);
    }
    return result;
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
    double longest = travel_time(limits, max(0, compass - limits->span));
    return (sw_hand_way){slices, limits, fmax(longest, limits->settle_seconds)};
}

sw_hand_placement sw_hand_nowhere(void)
{
    return (sw_hand_placement){INT_MAX, INT_MIN, SW_LONG_AGO};
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
    if (!holds_on && placement->last == SW_LONG_AGO) {
        *placement = sw_hand_nowhere();
    }
}

sw_hand_travel sw_hand_move(const sw_hand_way *way, size_t number, const sw_hand_task *task, bool engaged,
                            int shift, sw_hand_placement *placement)
{
    sw_hand_travel travel = {0};
    if (task->struck == 0) {
        rest(way, number, task->sounding > 0, placement);
        return travel;
    }
    sw_hand_placement joined = {min(placement->low, task->low), max(placement->high, task->high),
                                (int32_t)number};
    travel.steps = max(0, joined.high - joined.low - way->limits->span);
    if (placement->low > placement->high) {
        travel.steps = 0;
    }
    if (travel.steps > 0 && placement->last != SW_LONG_AGO) {
        bool thumb_passes = engaged && shift == SW_HANDS_SHIFT_STEP;
        travel.needed = thumb_passes ? 0 : travel_time(way->limits, travel.steps);
        travel.available = seconds_since(way, number, placement->last);
        if (engaged && travel.available < way->limits->settle_seconds) {
            travel.cost = shift;
        }
        if (travel.available < travel.needed) {
            double missing = (travel.needed - travel.available) / travel.needed;
            travel.cost += llround(SW_HANDS_TOO_QUICK * missing);
        }
    }
    bool fresh = travel.steps > 0 || !engaged;
    *placement = fresh ? (sw_hand_placement){task->low, task->high, (int32_t)number} : joined;
    return travel;
}
