/* The order in which players leave a chord: the optimum against all orders. */
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "moves/stagger_order.h"

enum { MOST = 6 };

static uint32_t state_of_dice = 1;

static int pick(int count)
{
    state_of_dice = state_of_dice * 1664525U + 1013904223U;
    return (int)((state_of_dice >> 8) % (uint32_t)count);
}

/* -1: somebody leaves before one of a smaller rank. */
static int cost_of(const sw_leaver *leavers, size_t count, const uint8_t *order)
{
    unsigned whole = 0;
    for (size_t i = 0; i < count; i++) {
        whole |= leavers[i].notes;
    }
    int cost = 0;
    for (size_t k = 0; k < count; k++) {
        unsigned left = 0;
        for (size_t i = k + 1; i < count; i++) {
            left |= leavers[order[i]].notes;
            if (leavers[order[i]].rank < leavers[order[k]].rank) {
                return -1;
            }
        }
        for (int note = 0; note < 12; note++) {
            cost += ((whole & ~left) >> note & 1U) != 0;
        }
    }
    return cost;
}

static void try_all(const sw_leaver *leavers, size_t count, uint8_t *order, size_t k, uint8_t *best,
                    int *least)
{
    if (k == count) {
        int cost = cost_of(leavers, count, order);
        bool better = cost >= 0 && (*least < 0 || cost < *least);
        bool first = cost >= 0 && cost == *least && memcmp(order, best, count) > 0;
        if (better || first) {
            *least = cost;
            memcpy(best, order, count);
        }
        return;
    }
    for (size_t i = k; i < count; i++) {
        uint8_t player = order[i];
        order[i] = order[k];
        order[k] = player;
        try_all(leavers, count, order, k + 1, best, least);
        order[k] = order[i];
        order[i] = player;
    }
}

static void test_the_optimum_is_the_optimum(void **state)
{
    (void)state;
    enum { CHORDS = 2000 };
    size_t reordered = 0;
    for (int c = 0; c < CHORDS; c++) {
        sw_leaver leavers[MOST];
        size_t count = (size_t)(1 + pick(MOST));
        uint8_t order[MOST];
        uint8_t best[MOST];
        uint8_t solved[MOST];
        for (size_t i = 0; i < count; i++) {
            leavers[i] = (sw_leaver){pick(3), 1U << pick(4) | (pick(5) == 0 ? 1U << pick(4) : 0)};
            order[i] = (uint8_t)i;
        }
        int least = -1;
        try_all(leavers, count, order, 0, best, &least);
        assert_int_equal(sw_stagger_solve(leavers, count, solved), least);
        assert_memory_equal(solved, best, count);
        reordered += memcmp(solved, order, count) != 0;
    }
    printf("# %d chords, %zu in another order than listed\n", CHORDS, reordered);
    assert_true(reordered > CHORDS / 4);
}

/* A doubled third goes first, so that the chord stays whole until the last three. */
static void test_doublings_leave_first(void **state)
{
    (void)state;
    const sw_leaver leavers[] = {{0, 1U << 0}, {0, 1U << 4}, {0, 1U << 7}, {0, 1U << 4}};
    uint8_t order[4];
    assert_int_equal(sw_stagger_solve(leavers, 4, order), 0 + 1 + 2 + 3);
    assert_true(order[0] == 3 || order[0] == 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_the_optimum_is_the_optimum),
                                       cmocka_unit_test(test_doublings_leave_first)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
