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

/* The best player for the stroke before one that `player` plays, by the costs up to that stroke. */
static uint8_t best_before(const int64_t *costs, size_t player_count, bool bound, uint8_t player)
{
    uint8_t best = player;
    for (uint8_t p = 0; p < player_count && !bound; p++) {
        if (p != player && costs[p] != NEVER &&
            (costs[best] == NEVER ||
             costs[p] + SW_SHARE_HANDOVER < costs[best] + (best == player ? 0 : SW_SHARE_HANDOVER))) {
            best = p;
        }
    }
    return best;
}

int64_t sw_share_solve(const sw_share_stroke *strokes, size_t count, const sw_share_player *players,
                       size_t player_count, uint8_t *who)
{
    int64_t costs[SW_SHARE_MOST] = {0};
    uint8_t *before = sw_alloc_zero(count * SW_SHARE_MOST + 1, 1);
    for (size_t i = 0; i < count; i++) {
        int64_t next[SW_SHARE_MOST];
        for (uint8_t p = 0; p < player_count; p++) {
            uint8_t from = i == 0 ? p : best_before(costs, player_count, strokes[i].bound, p);
            bool possible = sw_share_has(&players[p], &strokes[i]) && costs[from] != NEVER;
            before[i * SW_SHARE_MOST + p] = from;
            next[p] = !possible ? NEVER
                                : costs[from] + (from == p ? 0 : SW_SHARE_HANDOVER) +
                                      sw_share_cost(&players[p], &strokes[i]);
        }
        for (size_t p = 0; p < player_count; p++) {
            costs[p] = next[p];
        }
    }
    uint8_t last = 0;
    for (uint8_t p = 1; p < player_count; p++) {
        if (costs[p] != NEVER && (costs[last] == NEVER || costs[p] < costs[last])) {
            last = p;
        }
    }
    int64_t cost = player_count == 0 ? NEVER : costs[last];
    for (size_t i = count; i > 0 && cost != NEVER; i--) {
        who[i - 1] = last;
        last = before[(i - 1) * SW_SHARE_MOST + last];
    }
    free(before);
    return cost;
}
