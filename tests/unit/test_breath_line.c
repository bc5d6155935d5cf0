/* Breaths in a line: the optimum against all choices, and what a player would do. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "moves/breath_line.h"

enum { MOST = 12 };

static uint32_t state_of_dice;

static int pick(int count)
{
    state_of_dice = state_of_dice * 1664525U + 1013904223U;
    return (int)((state_of_dice >> 8) % (uint32_t)count);
}

/* What a set of breaths costs, by the words of the header; -1: one is taken where none can be. */
static int64_t cost_of(const sw_breath_note *notes, size_t count, const bool *taken)
{
    int64_t cost = 0;
    int64_t air = 0;
    for (size_t i = 0; i < count; i++) {
        if (i > 0 && (taken[i] || notes[i].free)) {
            if (!notes[i].free && notes[i].cost < 0) {
                return -1;
            }
            cost += sw_breath_stretch_cost(air) + (notes[i].free ? 0 : notes[i].cost);
            air = 0;
        }
        air += notes[i].air;
    }
    return cost + sw_breath_stretch_cost(air);
}

/* Fewest, then the first difference is a later breath. */
static bool is_preferred(const bool *a, const bool *b, size_t count)
{
    int more = 0;
    for (size_t i = 0; i < count; i++) {
        more += a[i] - b[i];
    }
    for (size_t i = 0; i < count && more == 0; i++) {
        if (a[i] != b[i]) {
            return b[i];
        }
    }
    return more < 0;
}

static int64_t best_of_all(const sw_breath_note *notes, size_t count, bool *best)
{
    int64_t least = -1;
    for (unsigned choice = 0; choice < 1U << (count - 1); choice++) {
        bool taken[MOST] = {false};
        bool sensible = true;
        for (size_t i = 1; i < count; i++) {
            taken[i] = (choice >> (i - 1) & 1U) != 0;
            sensible = sensible && !(taken[i] && notes[i].free);
        }
        int64_t cost = sensible ? cost_of(notes, count, taken) : -1;
        if (cost >= 0 && (least < 0 || cost < least || (cost == least && is_preferred(taken, best, count)))) {
            least = cost;
            memcpy(best, taken, sizeof taken);
        }
    }
    return least;
}

static void random_line(sw_breath_note *notes, size_t count)
{
    bool even = pick(2) == 0; /* many equal ways */
    for (size_t i = 0; i < count; i++) {
        notes[i].air = even ? 100 + 100 * pick(5) : 1 + pick(pick(6) == 0 ? 2000 : 500);
        notes[i].free = pick(8) == 0;
        unsigned flags = 0;
        for (int flag = 1; flag < 15; flag++) {
            flags |= pick(6) == 0 ? 1U << flag : 0;
        }
        flags |= pick(6) == 0 ? SW_BREATH_BOUND : 0;
        notes[i].cost = even && pick(3) > 0 ? 100 : sw_breath_place_cost(flags);
    }
}

static void test_the_optimum_is_the_optimum(void **state)
{
    (void)state;
    enum { LINES = 4000 };
    const char *seed = getenv("SW_SEED");
    state_of_dice = seed != NULL ? (uint32_t)strtoul(seed, NULL, 10) : 1;
    size_t with = 0;
    size_t over = 0;
    for (int l = 0; l < LINES; l++) {
        sw_breath_note notes[MOST] = {{0}};
        size_t count = (size_t)(1 + pick(l % 20 == 0 ? MOST : 9));
        random_line(notes, count);
        bool best[MOST] = {false};
        bool taken[MOST] = {false};
        int64_t least = best_of_all(notes, count, best);
        assert_int_equal(sw_breath_solve(notes, count, taken), least);
        assert_memory_equal(taken, best, count);
        size_t breaths = 0;
        for (size_t i = 0; i < count; i++) {
            breaths += taken[i];
        }
        with += breaths > 0;
        over += least >= SW_BREATH_OVER;
    }
    printf("# %d lines, of which %zu get breaths and %zu go on too long\n", LINES, with, over);
    assert_true(with > LINES / 4 && over > LINES / 20 && over < LINES);
}

/* Where the breaths have been marked, nothing is left to do. */
static void test_marked_lines_stay(void **state)
{
    (void)state;
    state_of_dice = 7;
    for (int l = 0; l < 2000; l++) {
        sw_breath_note notes[40] = {{0}};
        bool taken[40];
        random_line(notes, 40);
        sw_breath_solve(notes, 40, taken);
        for (size_t i = 0; i < 40; i++) {
            notes[i].free = notes[i].free || taken[i];
        }
        sw_breath_solve(notes, 40, taken);
        for (size_t i = 0; i < 40; i++) {
            assert_false(taken[i]);
        }
    }
}

static void test_what_a_player_would_do(void **state)
{
    (void)state;
    /* Twelve quarters, a fifth of a breath each: at the end of the slur, not in it. */
    sw_breath_note notes[12];
    for (size_t i = 0; i < 12; i++) {
        notes[i] = (sw_breath_note){.air = 150, .cost = sw_breath_place_cost(SW_BREATH_SLUR)};
    }
    notes[5].cost = sw_breath_place_cost(SW_BREATH_SLUR_END | SW_BREATH_BAR);
    bool taken[12];
    sw_breath_solve(notes, 8, taken);
    for (size_t i = 0; i < 8; i++) {
        assert_int_equal(taken[i], i == 5);
    }
    /* What fits in one breath gets none, however good the place. */
    sw_breath_solve(notes, 6, taken);
    assert_false(taken[5]);
    /* Never in a tie, and a rest serves. */
    notes[5].cost = -1;
    notes[5].free = true;
    sw_breath_solve(notes, 10, taken);
    for (size_t i = 0; i < 10; i++) {
        assert_false(taken[i]);
    }
    assert_int_equal(sw_breath_place_cost(SW_BREATH_BOUND | SW_BREATH_LONG), -1);
    assert_true(sw_breath_place_cost(~1U) < SW_BREATH_OVER);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_the_optimum_is_the_optimum),
                                       cmocka_unit_test(test_marked_lines_stay),
                                       cmocka_unit_test(test_what_a_player_would_do)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
