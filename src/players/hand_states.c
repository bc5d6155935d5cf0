#include "players/hand_states.h"

#include <stdlib.h>
#include <string.h>

/* ---- which states are alike ---- */

static uint64_t stirred(uint64_t hash, int a, int b)
{
    return (hash ^ ((uint64_t)(uint32_t)a << 32 | (uint32_t)b)) * 0x9E3779B97F4A7C15U;
}

static size_t hash_of(const sw_hand_state *state)
{
    uint64_t h = stirred((uint32_t)state->right_place, state->hands[0].run, state->hands[1].run);
    for (int i = 0; i < 2; i++) {
        const sw_hand_placement *hand = &state->hands[i];
        h = stirred(h, hand->struck.low, hand->struck.high);
        h = stirred(h ^ h >> 32, hand->last, hand->keys.lowest);
        h = stirred(h ^ hand->keys.bits, hand->range.low, hand->range.high);
    }
    return (size_t)(h ^ (h >> 32));
}

static bool same_range(sw_hand_range a, sw_hand_range b)
{
    return a.low == b.low && a.high == b.high;
}

static bool same_placement(const sw_hand_placement *a, const sw_hand_placement *b)
{
    return a->last == b->last && a->run == b->run && same_range(a->struck, b->struck) &&
           same_range(a->range, b->range) && a->keys.lowest == b->keys.lowest && a->keys.bits == b->keys.bits;
}

/* Alike but for their splits, which are the same in one table. */
static bool are_alike(const sw_hand_state *a, const sw_hand_state *b)
{
    return a->right_place == b->right_place && same_placement(&a->hands[0], &b->hands[0]) &&
           same_placement(&a->hands[1], &b->hands[1]);
}

bool sw_hand_state_is_better(const sw_hand_state *state, const sw_hand_state *other)
{
    return state->cost < other->cost || (state->cost == other->cost && state->move < other->move);
}

/* ---- the table ---- */

static uint32_t *slot_of(sw_hand_layer *layer, const sw_hand_state *state)
{
    size_t i = hash_of(state) & (layer->table_size - 1);
    while (layer->table[i] != 0 && !are_alike(&layer->states[layer->table[i] - 1], state)) {
        i = (i + 1) & (layer->table_size - 1);
    }
    return &layer->table[i];
}

static void clear_table(sw_hand_layer *layer, size_t size)
{
    if (size > layer->table_capacity) {
        layer->table = sw_realloc(layer->table, size * sizeof *layer->table);
        layer->table_capacity = size;
    }
    layer->table_size = size;
    memset(layer->table, 0, size * sizeof *layer->table);
}

static void grow_table(sw_hand_layer *layer)
{
    clear_table(layer, 2 * layer->table_size);
    for (size_t i = layer->first_of_split; i < layer->count; i++) {
        *slot_of(layer, &layer->states[i]) = (uint32_t)i + 1;
    }
}

/* ---- the layer ---- */

void sw_hand_layer_clear(sw_hand_layer *layer)
{
    layer->count = 0;
}

void sw_hand_layer_begin_split(sw_hand_layer *layer)
{
    layer->first_of_split = layer->count;
    clear_table(layer, 16);
}

void sw_hand_layer_offer(sw_hand_layer *layer, const sw_hand_state *state)
{
    uint32_t *slot = slot_of(layer, state);
    if (*slot != 0) {
        sw_hand_state *known = &layer->states[*slot - 1];
        if (sw_hand_state_is_better(state, known)) {
            *known = *state;
        }
        return;
    }
    layer->states = sw_grow(layer->states, layer->count, &layer->capacity, sizeof *layer->states);
    layer->states[layer->count++] = *state;
    *slot = (uint32_t)layer->count;
    if (2 * (layer->count - layer->first_of_split) > layer->table_size) {
        grow_table(layer);
    }
}

static int compare_costs(const void *a, const void *b)
{
    int64_t x = *(const int64_t *)a;
    int64_t y = *(const int64_t *)b;
    return (x > y) - (x < y);
}

bool sw_hand_layer_cap(sw_hand_layer *layer, size_t most)
{
    if (layer->count <= most) {
        return true;
    }
    int64_t *costs = sw_alloc(layer->count * sizeof *costs);
    for (size_t i = 0; i < layer->count; i++) {
        costs[i] = layer->states[i].cost;
    }
    qsort(costs, layer->count, sizeof *costs, compare_costs);
    int64_t dearest = costs[most - 1];
    free(costs);
    size_t kept = 0;
    for (size_t i = 0; i < layer->count && kept < most; i++) {
        if (layer->states[i].cost <= dearest) {
            layer->states[kept++] = layer->states[i];
        }
    }
    layer->count = kept;
    return false;
}

void sw_hand_layer_free(sw_hand_layer *layer)
{
    free(layer->states);
    free(layer->table);
    *layer = (sw_hand_layer){0};
}
