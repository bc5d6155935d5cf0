#include "moves/share_line.h"

#include <stdlib.h>

#include "stavewright/base.h"

enum { NEVER = -1 };

bool sw_share_has(const sw_share_player *player, const sw_share_stroke *stroke)
{
    return stroke->low >= player->low && stroke->high <= player->high;
}

int sw_share_cost(const sw_share_player *player, const sw_share_stroke *stroke)
{
    return abs(stroke->low + stroke->high - player->low - player->high) / 2;
}

/* Who plays a stroke, and who has played so far (a bit each, his own included). */
enum { STATES = SW_SHARE_MOST << SW_SHARE_MOST };

static size_t state_of(size_t player, size_t played)
{
    return played * SW_SHARE_MOST + player;
}

/* The best state before the one in which `player` plays: who played it, at what cost. */
static int64_t best_before(const int64_t *costs, size_t player_count, bool bound, size_t player,
                           size_t played, uint16_t *from)
{
    int64_t best = costs[state_of(player, played)];
    *from = (uint16_t)state_of(player, played);
    for (size_t p = 0; p < player_count && !bound; p++) {
        size_t others[2] = {played, played & ~((size_t)1 << player)}; /* he has played before, or not */
        for (int i = 0; i < 2 && p != player; i++) {
            int64_t cost = costs[state_of(p, others[i])];
            if (cost != NEVER && (best == NEVER || cost + SW_SHARE_HANDOVER < best)) {
                best = cost + SW_SHARE_HANDOVER;
                *from = (uint16_t)state_of(p, others[i]);
            }
        }
    }
    return best;
}

static void begin(const sw_share_stroke *stroke, const sw_share_player *players, size_t player_count,
                  int64_t *costs)
{
    for (size_t s = 0; s < STATES; s++) {
        costs[s] = NEVER;
    }
    for (size_t p = 0; p < player_count; p++) {
        if (sw_share_has(&players[p], stroke)) {
            costs[state_of(p, (size_t)1 << p)] = sw_share_cost(&players[p], stroke);
        }
    }
}

/* The cheapest state at the end; what idle players cost is added. */
static int64_t best_end(const int64_t *costs, size_t player_count, size_t *state)
{
    int64_t best = NEVER;
    for (size_t s = 0; s < STATES; s++) {
        int64_t cost = costs[s];
        for (size_t p = 0; p < player_count && cost != NEVER; p++) {
            bool idle = (s / SW_SHARE_MOST & (size_t)1 << p) == 0;
            cost += idle ? SW_SHARE_IDLE : 0;
        }
        if (cost != NEVER && (best == NEVER || cost < best)) {
            best = cost;
            *state = s;
        }
    }
    return best;
}

int64_t sw_share_solve(const sw_share_stroke *strokes, size_t count, const sw_share_player *players,
                       size_t player_count, uint8_t *who)
{
    if (count == 0) {
        return NEVER;
    }
    int64_t *costs = sw_alloc(STATES * sizeof *costs);
    int64_t *next = sw_alloc(STATES * sizeof *next);
    uint16_t *before = sw_alloc_zero(count * STATES, sizeof *before);
    begin(&strokes[0], players, player_count, costs);
    for (size_t i = 1; i < count; i++) {
        for (size_t s = 0; s < STATES; s++) {
            size_t player = s % SW_SHARE_MOST;
            size_t played = s / SW_SHARE_MOST;
            next[s] = NEVER;
            if (player < player_count && (played & (size_t)1 << player) != 0 &&
                played < (size_t)1 << player_count && sw_share_has(&players[player], &strokes[i])) {
                next[s] = best_before(costs, player_count, strokes[i].bound, player, played,
                                      &before[i * STATES + s]);
                next[s] += next[s] == NEVER ? 0 : sw_share_cost(&players[player], &strokes[i]);
            }
        }
        int64_t *swap = costs;
        costs = next;
        next = swap;
    }
    size_t state = 0;
    int64_t cost = best_end(costs, player_count, &state);
    for (size_t i = count; i > 0 && cost != NEVER; i--) {
        who[i - 1] = (uint8_t)(state % SW_SHARE_MOST);
        state = before[(i - 1) * STATES + state];
    }
    free(costs);
    free(next);
    free(before);
    return cost;
}
