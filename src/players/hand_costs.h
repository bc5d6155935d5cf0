/* The cost model of hand_split.h as functions: what a split of a slice costs, what its lines cost, what a
 * hand's way costs. They know nothing of the search. Used by hand_split.c and hand_problems.c only. */
#ifndef STAVEWRIGHT_PLAYERS_HAND_COSTS_H
#define STAVEWRIGHT_PLAYERS_HAND_COSTS_H

#include <limits.h>

#include "players/hand_slices.h"

/* A range of steps; low > high: empty. */
typedef struct sw_hand_range {
    int low;
    int high;
} sw_hand_range;

/* Strings or keys under the fingers of a hand, by their numbers (see sw_hand_key): bit i stands for lowest +
 * i. Numbers 64 or more above the lowest are left out, as no hand reaches so far. */
typedef struct sw_hand_keys {
    int lowest; /* 0 if there are none */
    uint64_t bits;
} sw_hand_keys;

/* How the keys of a slice are shared: those below the split belong to one hand, the others to the other. */
typedef struct sw_hand_sharing {
    uint32_t split; /* how many lie below it */
    bool crossed;   /* they are the right hand's; then there are keys on either side */
} sw_hand_sharing;

static inline sw_hand sw_hand_of_key(sw_hand_sharing sharing, uint32_t key)
{
    return (key < sharing.split) != sharing.crossed ? SW_LEFT_HAND : SW_RIGHT_HAND;
}

/* What one hand has to do in a slice. `keys`, `range` and `placed` tell of the keys that need a finger: all
 * of them with firm holds, the struck ones with soft holds. */
typedef struct sw_hand_task {
    int keys;
    sw_hand_range range; /* with a strange spelling (B sharp below C flat) still from the least step to the
                            greatest */
    sw_hand_keys placed;
    int struck;
    int rolled;        /* of these, in a rolled chord */
    int lowest_struck; /* INT_MAX: none */
    int sounding;      /* all keys, ringing ones too */
    sw_hand_range sounding_range;
} sw_hand_task;

/* The tasks of both hands. Where the chord has to be rolled to be played, and may be (`may_roll`), its keys
 * are rolled in the tasks. */
void sw_hand_tasks(const sw_hand_slices *slices, const sw_hand_slice *slice, sw_hand_sharing sharing,
                   const sw_hand_limits *limits, sw_hand_task tasks[2]);
/* The spread in steps, 0 for none or one key, and for a hand that rolls all it has. */
int sw_hand_spread(const sw_hand_task *task);
/* Keys beyond the fingers plus steps beyond the span; 0: playable. */
int sw_hand_excess(const sw_hand_task *task, const sw_hand_limits *limits);
/* Whether the tasks of a slice roll what is not marked so. */
bool sw_hand_rolls(const sw_hand_slices *slices, const sw_hand_slice *slice, const sw_hand_task tasks[2]);
/* All costs that the slice has by itself. */
int64_t sw_hand_slice_cost(const sw_hand_slices *slices, const sw_hand_slice *slice, sw_hand_sharing sharing,
                           const sw_hand_limits *limits, const sw_hand_task tasks[2]);

/* Where a hand is. */
typedef struct sw_hand_placement {
    sw_hand_range struck; /* the keys that needed a finger when it last struck something; empty: it is free to
                           * begin anywhere */
    int run;              /* strokes since it came in or took a line over, counted to SW_FULL_RUN */
    int32_t last;         /* the slice in which it last struck something, or SW_LONG_AGO */
    sw_hand_range range;  /* of the keys under its fingers; empty if it is lifted */
    sw_hand_keys keys;
} sw_hand_placement;

enum { SW_LONG_AGO = -1, SW_FULL_RUN = 4, SW_FULL_GROUP = 3 };

/* What is decided in a slice: the sharing, and by hand whether its fingers are placed anew. */
typedef struct sw_hand_choice {
    sw_hand_sharing sharing;
    bool anew[2];
} sw_hand_choice;

/* What every way of a hand depends on. `longest` is the number of seconds in which a hand gets from anywhere
 * to anywhere in this music, and settles there; after that it does not matter any more when it last struck
 * something. */
typedef struct sw_hand_way {
    const sw_hand_slices *slices;
    const sw_hand_limits *limits;
    double longest;
} sw_hand_way;

sw_hand_way sw_hand_way_of(const sw_hand_slices *slices, const sw_hand_limits *limits);

/* What both hands do in a slice, and how they come from the slice before. */
typedef struct sw_hand_moment {
    size_t number; /* of the slice */
    sw_hand_task tasks[2];
    bool engaged[2];    /* had keys (struck, held or ringing) in the slice before */
    bool takes_over[2]; /* a line of single notes comes to it from the other hand */
    int full_run[2];    /* it gives one away, of which it should have played so many notes; 0: it does not */
    bool bound[2];      /* it comes along a glissando, or with a line that both hands strike in turn */
    int shift[2];       /* cost of leaving its placement now; 0: it plays no line of single notes on */
} sw_hand_moment;

/* Sets what a moment with its tasks takes from the sharing of the slice before and its own; returns what the
 * lines cost that change hands. Not for the first slice. */
int64_t sw_hand_come_from(const sw_hand_way *way, sw_hand_sharing before, sw_hand_sharing now,
                          sw_hand_moment *moment);

typedef struct sw_hand_travel {
    int64_t cost;
    int steps;     /* how far the hand moves; 0: not at all */
    double needed; /* seconds; below `available` unless the hand is late */
    double available;
} sw_hand_travel;

/* A free hand. */
sw_hand_placement sw_hand_nowhere(void);
/* Whether a hand can strike what it has to with the fingers that are already placed and those that are left.
 */
bool sw_hand_can_stay(const sw_hand_way *way, const sw_hand_moment *moment, sw_hand hand,
                      const sw_hand_placement *placement);
/* Takes a hand from its placement before the slice to the one after. `anew` matters only if it strikes
 * something, and has to be true if it can't stay. */
sw_hand_travel sw_hand_move(const sw_hand_way *way, const sw_hand_moment *moment, sw_hand hand, bool anew,
                            sw_hand_placement *placement);
/* What it costs that a hand gives a line away soon, when its placement before the slice is this. */
int64_t sw_hand_short_run_cost(const sw_hand_moment *moment, sw_hand hand,
                               const sw_hand_placement *placement);

enum { SW_NOT_CROSSED = INT_MAX };

/* What it costs if a hand crosses the other, whose placements before the slice are given; `crossed`: it does
 * at this moment. `right_place` is carried from slice to slice: SW_NOT_CROSSED, or while the left hand lies
 * above the right the lowest step that the right hand struck last. */
int64_t sw_hand_cross(const sw_hand_way *way, const sw_hand_moment *moment, bool crossed,
                      const sw_hand_placement placements[2], int *right_place);

#endif
