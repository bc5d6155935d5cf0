/* The states of the search for the best hands, slice by slice: kept once each, the cheapest way to each. Used
 * by hand_split.c only; what a state is and why it is enough is told in hand_split.h. */
#ifndef STAVEWRIGHT_PLAYERS_HAND_STATES_H
#define STAVEWRIGHT_PLAYERS_HAND_STATES_H

#include "players/hand_costs.h"

typedef struct sw_hand_state {
    int64_t cost;
    sw_hand_placement hands[2];
    int right_place; /* see sw_hand_cross */
    sw_hand_choice choice;
    uint32_t kept;   /* how the keys that sound on into the next slice are shared: one number for each way */
    uint32_t parent; /* in the layer before */
    int move;        /* how far the split lies from that of the parent, in steps: decides ties */
} sw_hand_state;

/* Whether a state is cheaper than another, or as cheap after a shorter move. */
bool sw_hand_state_is_better(const sw_hand_state *state, const sw_hand_state *other);

/* The states that can be reached after a slice, in order of their sharing. */
typedef struct sw_hand_layer {
    sw_hand_state *states;
    size_t count;
    size_t capacity;
    size_t first_of_split; /* where the states of the split in work begin */
    uint32_t *table;       /* hash table of these: state + 1, or 0 */
    size_t table_size;     /* a power of two */
    size_t table_capacity;
} sw_hand_layer;

void sw_hand_layer_clear(sw_hand_layer *layer);
/* All states that are offered from here on have one sharing, which no state before has. */
void sw_hand_layer_begin_split(sw_hand_layer *layer);
/* Adds a state unless its like is there already and it is no better than that. */
void sw_hand_layer_offer(sw_hand_layer *layer, const sw_hand_state *state);
/* The guard against music that no one plays: keeps the cheapest `most` states; false if that drops any. */
bool sw_hand_layer_cap(sw_hand_layer *layer, size_t most);
void sw_hand_layer_free(sw_hand_layer *layer);

#endif
