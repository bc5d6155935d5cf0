/* The octaves of a line: the optimum against all choices, and what an orchestrator would do. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "moves/octave_line.h"

enum { MOST = 7 };

/* ---- all choices ---- */

typedef struct way {
    int64_t cost;
    int moved;
    unsigned seams; /* the first joint is the highest bit */
    int8_t offsets[MOST];
} way;

/* Smaller, then up. */
static int rank(int offset)
{
    return 2 * abs(offset) - (offset > 0);
}

static bool is_better(const way *a, const way *b, size_t count)
{
    if (a->cost != b->cost) {
        return a->cost < b->cost;
    }
    if (a->moved != b->moved) {
        return a->moved < b->moved;
    }
    if (a->seams != b->seams) {
        return a->seams > b->seams;
    }
    for (size_t i = count; i-- > 0;) {
        if (a->offsets[i] != b->offsets[i]) {
            return rank(a->offsets[i]) < rank(b->offsets[i]);
        }
    }
    return false;
}

static int64_t cost_of(const sw_octave_stroke *strokes, size_t count, const sw_octave_range *range,
                       const int8_t *offsets)
{
    int64_t cost = 0;
    for (size_t i = 0; i < count; i++) {
        int64_t joint =
            i == 0 ? 0 : sw_octave_joint_cost(&strokes[i - 1], &strokes[i], offsets[i - 1], offsets[i]);
        if (joint < 0 || (strokes[i].fixed && offsets[i] != 0)) {
            return -1;
        }
        cost += joint + sw_octave_place_cost(&strokes[i], range, offsets[i]);
    }
    return cost;
}

/* Tries all 7^count choices. */
static way best_of_all(const sw_octave_stroke *strokes, size_t count, const sw_octave_range *range)
{
    way best = {.cost = -1};
    size_t choices = 1;
    for (size_t i = 0; i < count; i++) {
        choices *= SW_OCTAVE_OFFSETS;
    }
    for (size_t choice = 0; choice < choices; choice++) {
        way w = {0};
        size_t left = choice;
        for (size_t i = 0; i < count; i++) {
            w.offsets[i] = (int8_t)((int)(left % SW_OCTAVE_OFFSETS) - SW_OCTAVE_MOST);
            left /= SW_OCTAVE_OFFSETS;
            w.moved += w.offsets[i] != 0;
            w.seams = 2 * w.seams + (i > 0 && w.offsets[i] != w.offsets[i - 1]);
        }
        w.cost = cost_of(strokes, count, range, w.offsets);
        if (w.cost >= 0 && (best.cost < 0 || is_better(&w, &best, count))) {
            best = w;
        }
    }
    return best;
}

/* ---- random lines ---- */

static uint32_t state_of_dice;

static int pick(int count)
{
    state_of_dice = state_of_dice * 1664525U + 1013904223U;
    return (int)((state_of_dice >> 8) % (uint32_t)count);
}

static void random_line(sw_octave_stroke *strokes, size_t count, sw_octave_range *range)
{
    int at = pick(48) - 24;
    bool quantised = pick(2) == 0; /* many equal heights, and so many equal costs */
    for (size_t i = 0; i < count; i++) {
        at += quantised ? 12 * (pick(3) - 1) : pick(25) - 12;
        strokes[i] = (sw_octave_stroke){.low = at, .high = at, .line = at};
        strokes[i].low -= pick(4) == 0 ? pick(20) : 0;
        for (int flag = 0; flag < 11; flag++) { /* of the eleven joints */
            strokes[i].joint |= pick(flag == 0 ? 10 : 4) == 0 ? 1U << flag : 0;
        }
        strokes[i].fixed = pick(8) == 0;
    }
    range->low = pick(36) - 24;
    range->high = range->low + 6 + pick(30);
    int third = (range->high - range->low) / 3;
    range->easy_low = range->low + pick(third + 1);
    range->easy_high = range->high - pick(third + 1);
    range->fold = pick(2) == 0;
}

static void test_the_optimum_is_the_optimum(void **state)
{
    (void)state;
    enum { LINES = 1500 };
    const char *seed = getenv("SW_SEED");
    state_of_dice = seed != NULL ? (uint32_t)strtoul(seed, NULL, 10) : 1;
    size_t moved = 0;
    size_t seams = 0;
    for (int l = 0; l < LINES; l++) {
        sw_octave_stroke strokes[MOST] = {{0}};
        sw_octave_range range;
        size_t count = (size_t)(l % 50 == 0 ? MOST : 1 + pick(5));
        random_line(strokes, count, &range);
        way best = best_of_all(strokes, count, &range);
        int8_t offsets[MOST] = {0};
        int64_t cost = sw_octave_solve(strokes, count, &range, offsets);
        assert_int_equal(cost, best.cost);
        if (cost < 0) {
            continue;
        }
        assert_int_equal(cost_of(strokes, count, &range, offsets), cost);
        assert_memory_equal(offsets, best.offsets, count);
        moved += best.moved > 0;
        seams += best.seams != 0;
    }
    printf("# %d lines, of which %zu move and %zu get seams\n", LINES, moved, seams);
    assert_true(moved > LINES / 4 && seams > LINES / 10);
}

/* What has been moved to its optimum stays there. */
static void test_the_optimum_is_kept(void **state)
{
    (void)state;
    state_of_dice = 7;
    int kept = 0;
    for (int l = 0; l < 6000; l++) {
        sw_octave_stroke strokes[40] = {{0}};
        sw_octave_range range;
        int8_t offsets[40];
        size_t count = (size_t)(1 + pick(40));
        random_line(strokes, count, &range);
        if (sw_octave_solve(strokes, count, &range, offsets) < 0) {
            continue;
        }
        int8_t again[40];
        bool near = true;
        for (size_t i = 0; i < count; i++) {
            strokes[i].low += 12 * offsets[i];
            strokes[i].high += 12 * offsets[i];
            strokes[i].line += 12 * offsets[i];
        }
        assert_true(sw_octave_solve(strokes, count, &range, again) >= 0);
        for (size_t i = 0; i < count; i++) { /* further than one solution reaches is another matter */
            near = near && abs(offsets[i] + again[i]) <= SW_OCTAVE_MOST;
        }
        for (size_t i = 0; near && i < count; i++) {
            assert_int_equal(again[i], 0);
        }
        kept += near;
    }
    assert_true(kept > 3000);
}

/* ---- lines as an orchestrator sees them ---- */

/* Heights in semitones above middle C, each with the flags of its joint. */
typedef struct note {
    int height;
    unsigned joint;
} note;

static void expect(const note *notes, size_t count, sw_octave_range range, const char *want)
{
    sw_octave_stroke strokes[32] = {{0}};
    int8_t offsets[32];
    char came[33] = "";
    for (size_t i = 0; i < count; i++) {
        strokes[i] =
            (sw_octave_stroke){notes[i].height, notes[i].height, notes[i].height, notes[i].joint, false};
    }
    assert_true(sw_octave_solve(strokes, count, &range, offsets) >= 0);
    for (size_t i = 0; i < count; i++) {
        came[i] = "cba.123"[offsets[i] + SW_OCTAVE_MOST];
    }
    came[count] = '\0';
    assert_string_equal(came, want);
}

#define EXPECT(notes, range, want) expect(notes, sizeof(notes) / sizeof(notes)[0], range, want)

static const sw_octave_range from_c4 = {0, 36, 0, 36, true};

/* A melody that lies well, before and behind what a test is about. */
#define WELL                                                                                                 \
    {9, 0}, {12, 0}, {11, 0}, {7, 0}, {9, 0}, {5, 0}, {7, 0}, {9, 0}, {12, 0},                               \
    {                                                                                                        \
        9, 0                                                                                                 \
    }

static void test_folding_breaks_at_the_rest(void **state)
{
    (void)state;
    const note line[] = {WELL,   {4, SW_JOINT_REST}, {2, 0}, {-1, 0}, {-3, 0}, {-5, 0},
                         {0, 0}, {4, SW_JOINT_REST}, WELL};
    EXPECT(line, from_c4, "..........111111...........");
}

static void test_folding_keeps_a_slur_whole(void **state)
{
    (void)state;
    unsigned s = SW_JOINT_SLUR | SW_JOINT_PHRASE;
    const note line[] = {WELL,   {5, SW_JOINT_PHRASE_START}, {2, s}, {-1, s}, {2, s},
                         {5, s}, {7, SW_JOINT_PHRASE_START}, WELL};
    EXPECT(line, from_c4, "..........11111...........");
}

static void test_folding_moves_one_note_of_a_long_line(void **state)
{
    (void)state;
    note line[31] = {{0}};
    for (size_t i = 0; i < 31; i++) {
        line[i].height = 5 + (int)(i % 3);
    }
    line[15].height = -2;
    EXPECT(line, from_c4, "...............1...............");
}

static void test_a_scale_run_goes_as_one(void **state)
{
    (void)state;
    unsigned run = SW_JOINT_SCALE | SW_JOINT_BEAT;
    const note line[] = {WELL, {4, 0}, {2, run}, {0, run}, {-1, run}, {-3, run}, {-5, run}, {7, 0}, WELL};
    EXPECT(line, from_c4, "..........111111...........");
}

static void test_a_repeated_note_takes_the_seam(void **state)
{
    (void)state;
    const note line[] = {WELL, {2, 0}, {2, SW_JOINT_REPEATED}, {-1, 0}, {5, 0}, {5, SW_JOINT_REPEATED}, WELL};
    EXPECT(line, from_c4, "...........111...........");
}

static void test_a_line_too_low_moves_as_a_whole(void **state)
{
    (void)state;
    sw_octave_range violin = {-5, 40, 2, 30, false};
    const note line[] = {{-12, 0}, {-8, 0}, {-5, 0}, {0, 0}, {-5, 0}, {-8, 0}};
    EXPECT(line, violin, "111111");
}

static void test_what_fits_stays(void **state)
{
    (void)state;
    sw_octave_range given = {0, 24, 0, 24, false};
    const note line[] = {{0, 0}, {24, 0}, {12, SW_JOINT_REST}, {2, 0}};
    EXPECT(line, given, "....");
}

static void test_no_octave_fits(void **state)
{
    (void)state;
    sw_octave_range narrow = {0, 4, 0, 4, false};
    const note line[] = {{6, 0}};
    EXPECT(line, narrow, "."); /* two semitones above; an octave lower it would be six below */
}

static void test_what_is_bound_moves_together(void **state)
{
    (void)state;
    const note line[] = {WELL, {9, SW_JOINT_REST}, {-1, SW_JOINT_BOUND}, {9, SW_JOINT_REST}, WELL};
    EXPECT(line, from_c4, "..........11...........");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_the_optimum_is_the_optimum),
        cmocka_unit_test(test_the_optimum_is_kept),
        cmocka_unit_test(test_folding_breaks_at_the_rest),
        cmocka_unit_test(test_folding_keeps_a_slur_whole),
        cmocka_unit_test(test_folding_moves_one_note_of_a_long_line),
        cmocka_unit_test(test_a_scale_run_goes_as_one),
        cmocka_unit_test(test_a_repeated_note_takes_the_seam),
        cmocka_unit_test(test_a_line_too_low_moves_as_a_whole),
        cmocka_unit_test(test_what_fits_stays),
        cmocka_unit_test(test_no_octave_fits),
        cmocka_unit_test(test_what_is_bound_moves_together),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
