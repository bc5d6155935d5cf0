/* Sharing of a run, against all ways of sharing it. */
#include "moves/share_line.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

enum { STROKES = 7, PLAYERS = 3 };

static uint32_t state = 12345;

static int draw(int below)
{
    state = state * 1664525u + 1013904223u; /* Numerical Recipes, 2nd edition, 7.1 */
    return (int)((state >> 8) % (uint32_t)below);
}

/* The cost of one way; -1: it can't be. */
static int64_t cost_of(const sw_share_stroke *strokes, size_t count, const sw_share_player *players,
                       const uint8_t *who)
{
    int64_t cost = 0;
    int idle = 0;
    for (uint8_t p = 0; p < PLAYERS; p++) {
        bool plays = false;
        for (size_t i = 0; i < count; i++) {
            plays = plays || who[i] == p;
        }
        idle += !plays;
    }
    for (size_t i = 0; i < count; i++) {
        if (!sw_share_has(&players[who[i]], &strokes[i])) {
            return -1;
        }
        bool handed = i > 0 && who[i] != who[i - 1];
        if (handed && strokes[i].bound) {
            return -1;
        }
        cost += sw_share_cost(&players[who[i]], &strokes[i]) + (handed ? SW_SHARE_HANDOVER : 0);
    }
    return cost + idle * SW_SHARE_IDLE;
}

static void test_all_ways(void **unused)
{
    (void)unused;
    int possible = 0;
    for (int round = 0; round < 300; round++) {
        sw_share_stroke strokes[STROKES];
        sw_share_player players[PLAYERS];
        for (int i = 0; i < STROKES; i++) {
            int low = draw(60) - 20;
            strokes[i] = (sw_share_stroke){low, low + (draw(3) == 0 ? draw(9) : 0), i > 0 && draw(6) == 0};
        }
        for (int p = 0; p < PLAYERS; p++) {
            int low = draw(40) - 30;
            players[p] = (sw_share_player){low, low + 20 + draw(40)};
        }
        int64_t best = -1;
        int ways = 1;
        for (int i = 0; i < STROKES; i++) {
            ways *= PLAYERS;
        }
        for (int way = 0; way < ways; way++) {
            uint8_t who[STROKES];
            for (int i = 0, rest = way; i < STROKES; i++, rest /= PLAYERS) {
                who[i] = (uint8_t)(rest % PLAYERS);
            }
            int64_t cost = cost_of(strokes, STROKES, players, who);
            best = cost >= 0 && (best < 0 || cost < best) ? cost : best;
        }
        uint8_t found[STROKES] = {0};
        assert_int_equal(sw_share_solve(strokes, STROKES, players, PLAYERS, found), best);
        if (best >= 0) {
            assert_int_equal(cost_of(strokes, STROKES, players, found), best);
            possible++;
        }
    }
    assert_in_range(possible, 50, 299);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_all_ways)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
