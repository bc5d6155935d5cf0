/* The cost model of hand_split.h as functions: what a split of a slice costs, what its lines cost, what a
 * hand's way costs. They know nothing of the search. Used by hand_split.c and hand_problems.c only. */
#ifndef STAVEWRIGHT_PLAYERS_HAND_COSTS_H
#define STAVEWRIGHT_PLAYERS_HAND_COSTS_H

#include "players/hand_slices.h"

/* What one hand has to do in a slice. `keys`, `low` and `high` count the keys that need a finger: all of them
 * with firm holds, the struck ones with soft holds. low > high: none. */
typedef struct sw_hand_task {
    int keys;
    int low; /* in steps; with a strange spelling (B sharp below C flat) low and high are still the extremes
              */
    int high;
    int struck;
    int lowest_struck; /* INT_MAX: none */
    int sounding;      /* all keys, ringing ones too */
    int sounding_low;
    int sounding_high;
} sw_hand_task;

/* The tasks of both hands when the lowest `split` keys are the left hand's. */
void sw_hand_tasks(const sw_hand_slices *slices, const sw_hand_slice *slice, uint32_t split,
                   const sw_hand_limits *limits, sw_hand_task tasks[2]);
/* The spread in steps, 0 for none or one key. */
int sw_hand_spread(const sw_hand_task *task);
/* Keys beyond the fingers plus steps beyond the span; 0: playable. */
int sw_hand_excess(const sw_hand_task *task, const sw_hand_limits *limits);
/* All costs that the slice has by itself. */
int64_t sw_hand_slice_cost(const sw_hand_slices *slices, const sw_hand_slice *slice, uint32_t split,
                           const sw_hand_limits *limits, const sw_hand_task tasks[2]);

/* What the lines into a slice cost, and what a shift of each hand would cost (0: the hand plays no line of
 * single notes on).
 */
typedef struct sw_hand_lines {
    int64_t cost;
    int shift[2];
} sw_hand_lines;
sw_hand_lines sw_hand_line_costs(const sw_hand_slices *slices, const sw_hand_slice *slice,
                                 uint32_t split_before, uint32_t split);

/* Where a hand rests. */
typedef struct sw_hand_placement {
    int low; /* in steps; low > high: nowhere, the hand is free to begin anywhere */
    int high;
    int32_t last; /* the slice in which it last struck something, or SW_LONG_AGO */
} sw_hand_placement;

enum { SW_LONG_AGO = -1 };

/* What every way of a hand depends on. `longest` is the number of seconds in which a hand gets from anywhere
 * to anywhere in this music, and settles there; after that it does not matter any more when it last struck
 * something. */
typedef struct sw_hand_way {
    const sw_hand_slices *slices;
    const sw_hand_limits *limits;
    double longest;
} sw_hand_way;

sw_hand_way sw_hand_way_of(const sw_hand_slices *slices, const sw_hand_limits *limits);

typedef struct sw_hand_travel {
    int64_t cost;
    int steps;     /* beyond reach; 0: no move */
    double needed; /* seconds; below `available` unless the hand is late */
    double available;
} sw_hand_travel;

/* A free hand. */
sw_hand_placement sw_hand_nowhere(void);
/* Moves a hand from its placement after slice number-1 to the one after slice `number`, where it has `task`.
 * `engaged`: it had keys (struck, held or ringing) in the slice before; `shift`: see sw_hand_lines. */
sw_hand_travel sw_hand_move(const sw_hand_way *way, size_t number, const sw_hand_task *task, bool engaged,
                            int shift, sw_hand_placement *placement);

#endif
