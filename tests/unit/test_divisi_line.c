/* The parts of a divided section: the optimum against all choices, and what players expect. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "moves/divisi_line.h"

enum { SLICES = 3, PARTS = 4, CASES = 2000 };

static unsigned draw(unsigned below)
{
    return (unsigned)rand() % below;
}

static sw_divisi_slice random_slice(int parts)
{
    sw_divisi_slice slice = {.count = (uint8_t)(1 + draw((unsigned)parts)), .apart = draw(4) == 0};
    int height = 50 + (int)draw(20);
    for (int n = 0; n < slice.count; n++) {
        slice.heights[n] = height;
        height += 1 + (int)draw(9);
    }
    slice.tied = (uint8_t)draw(1u << slice.count);
    return slice;
}

/* Whether no parts cross and no note is left out. */
static bool is_allowed(const sw_divisi_slice *slice, int parts, const uint8_t *notes)
{
    bool taken[PARTS] = {0};
    for (int p = 0; p < parts; p++) {
        if (p > 0 && slice->heights[notes[p]] < slice->heights[notes[p - 1]]) {
            return false;
        }
        taken[notes[p]] = true;
    }
    for (int n = 0; n < slice->count; n++) {
        if (!taken[n]) {
            return false;
        }
    }
    return true;
}

/* The cost of a whole way; -1 when it is not allowed. */
static int64_t cost_of(const sw_divisi_slice *slices, size_t count, int parts, const uint8_t *notes)
{
    int64_t cost = 0;
    for (size_t i = 0; i < count; i++) {
        const uint8_t *own = notes + i * (size_t)parts;
        if (!is_allowed(&slices[i], parts, own)) {
            return -1;
        }
        cost += sw_divisi_place_cost(&slices[i], parts, own);
        cost += i == 0 ? 0 : sw_divisi_joint_cost(&slices[i - 1], &slices[i], parts, own - parts, own);
    }
    return cost;
}

/* The least cost over all notes for all parts in all slices, one digit after another. */
static int64_t try_all(const sw_divisi_slice *slices, size_t count, int parts)
{
    uint8_t notes[SLICES * PARTS] = {0};
    size_t digits = count * (size_t)parts;
    int64_t best = -1;
    for (size_t d = 0; d < digits;) {
        int64_t cost = cost_of(slices, count, parts, notes);
        best = cost >= 0 && (best < 0 || cost < best) ? cost : best;
        for (d = 0; d < digits && ++notes[d] == slices[d / (size_t)parts].count; d++) {
            notes[d] = 0;
        }
    }
    return best;
}

static void test_optimum(void **state)
{
    (void)state;
    srand(20);
    for (int i = 0; i < CASES; i++) {
        int parts = 1 + (int)draw(i % 50 == 0 ? PARTS : PARTS - 1); /* four parts are slow to try */
        size_t count = 1 + draw(parts == PARTS ? 2 : SLICES);
        sw_divisi_slice slices[SLICES];
        for (size_t s = 0; s < count; s++) {
            slices[s] = random_slice(parts);
        }
        uint8_t notes[SLICES * PARTS];
        int64_t cost = sw_divisi_solve(slices, count, parts, notes);
        assert_int_equal(cost, try_all(slices, count, parts));
        assert_int_equal(cost, cost_of(slices, count, parts, notes));
    }
}

static void test_expected(void **state)
{
    (void)state;
    uint8_t notes[3 * 4];
    /* Three parts, two notes: the pair stays where moving would be more. */
    const sw_divisi_slice pair[] = {{.heights = {60, 64, 67}, .count = 3}, {.heights = {60, 66}, .count = 2}};
    sw_divisi_solve(pair, 2, 3, notes);
    assert_memory_equal(notes, ((uint8_t[]){0, 1, 2, 0, 1, 1}), 6);
    /* Four parts, three notes: an outer note is doubled. */
    const sw_divisi_slice three = {.heights = {60, 64, 67}, .count = 3};
    sw_divisi_solve(&three, 1, 4, notes);
    assert_int_not_equal(notes[1] + notes[2], 2);
    /* Four parts, two notes: two each. */
    const sw_divisi_slice two = {.heights = {60, 64}, .count = 2};
    sw_divisi_solve(&two, 1, 4, notes);
    assert_memory_equal(notes, ((uint8_t[]){0, 0, 1, 1}), 4);
    /* Who holds a tied note keeps it, whoever doubles. */
    const sw_divisi_slice tied[] = {{.heights = {60, 72}, .count = 2},
                                    {.heights = {60, 62, 72}, .count = 3, .tied = 4}};
    sw_divisi_solve(tied, 2, 3, notes);
    assert_int_equal(notes[5], 2);
    assert_int_equal(sw_divisi_solve(&three, 1, 2, notes), -1);
}

static void test_players(void **state)
{
    (void)state;
    /* from the lowest part up; what is left over goes to the outer parts, from the top */
    static const int wanted[][5] = {{14, 7, 7}, {7, 3, 4}, {14, 5, 4, 5}, {13, 4, 4, 5}, {6, 2, 1, 1, 2}};
    for (size_t i = 0; i < sizeof wanted / sizeof wanted[0]; i++) {
        int parts = i < 2 ? 2 : i < 4 ? 3 : 4;
        for (int part = 0; part < parts; part++) {
            assert_int_equal(sw_divisi_players(wanted[i][0], parts, part), wanted[i][1 + part]);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_optimum), cmocka_unit_test(test_expected),
                                       cmocka_unit_test(test_players)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
