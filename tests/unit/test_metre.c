/* Rests as a metre wants them, and bar ranges as a person writes them. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/metre.h"
#include "stavewright/selection.h"

static const char *print(const sw_duration *values, size_t count)
{
    static char text[512];
    text[0] = '\0';
    for (size_t i = 0; i < count; i++) {
        char one[SW_DURATION_TEXT];
        snprintf(text + strlen(text), sizeof text - strlen(text), "%s%s", i > 0 ? " " : "",
                 sw_duration_print(values[i], one));
    }
    return text;
}

/* The values of a rest as text: "4 8" */
static const char *rests(int beats, int value, sw_rational position, sw_rational length)
{
    sw_duration values[64];
    return print(values, sw_metre_rests((sw_metre){beats, value}, position, length, values, 64));
}

static const char *notes(int beats, int value, sw_rational position, sw_rational length)
{
    sw_duration values[64];
    return print(values, sw_metre_notes((sw_metre){beats, value}, position, length, values, 64));
}

static sw_rational r(int64_t num, int64_t den)
{
    return sw_rational_make(num, den);
}

/* Common practice, no source: each rest shows the beats; half rests only on the first or third beat of 4/4.
 */
static void test_simple_metres(void **state)
{
    (void)state;
    assert_string_equal(rests(4, 4, r(0, 1), r(1, 2)), "2");
    assert_string_equal(rests(4, 4, r(1, 4), r(1, 2)), "4 4");
    assert_string_equal(rests(4, 4, r(1, 2), r(1, 2)), "2");
    assert_string_equal(rests(4, 4, r(1, 8), r(7, 8)), "8 4 2");
    assert_string_equal(rests(4, 4, r(0, 1), r(5, 8)), "2 8");
    assert_string_equal(rests(3, 4, r(1, 4), r(1, 2)), "4 4");
    assert_string_equal(rests(3, 4, r(0, 1), r(1, 2)), "2");
    assert_string_equal(rests(2, 4, r(1, 16), r(3, 16)), "16 8");
    assert_string_equal(rests(5, 8, r(0, 1), r(1, 4)), "4");
}

/* Compound metres: dotted rests for whole beats only. */
static void test_compound_metres(void **state)
{
    (void)state;
    assert_string_equal(rests(6, 8, r(0, 1), r(3, 8)), "4.");
    assert_string_equal(rests(6, 8, r(3, 8), r(3, 8)), "4.");
    assert_string_equal(rests(6, 8, r(1, 8), r(1, 4)), "8 8");
    assert_string_equal(rests(12, 8, r(0, 1), r(3, 4)), "2.");
    assert_string_equal(rests(9, 8, r(1, 8), r(5, 8)), "8 8 4.");
}

/* Common practice, no source: the middle of 4/4 is shown unless the note begins or ends the bar; beats of
 * compound metres are shown; syncopation inside of a half is one value. */
static void test_notes(void **state)
{
    (void)state;
    assert_string_equal(notes(4, 4, r(0, 1), r(7, 8)), "2. 8");
    assert_string_equal(notes(4, 4, r(0, 1), r(5, 8)), "2 8");
    assert_string_equal(notes(4, 4, r(0, 1), r(3, 4)), "2.");
    assert_string_equal(notes(4, 4, r(1, 4), r(3, 4)), "2.");
    assert_string_equal(notes(4, 4, r(1, 4), r(1, 2)), "4 4");
    assert_string_equal(notes(4, 4, r(3, 8), r(1, 4)), "8 8");
    assert_string_equal(notes(4, 4, r(1, 8), r(1, 4)), "4");
    assert_string_equal(notes(4, 4, r(1, 8), r(3, 8)), "4.");
    assert_string_equal(notes(4, 4, r(1, 16), r(7, 16)), "16 4.");
    assert_string_equal(notes(4, 4, r(5, 8), r(3, 8)), "4.");
    assert_string_equal(notes(3, 4, r(1, 4), r(1, 2)), "2");
    assert_string_equal(notes(3, 4, r(0, 1), r(5, 8)), "2 8");
    assert_string_equal(notes(2, 4, r(1, 8), r(1, 4)), "4");
    assert_string_equal(notes(6, 8, r(0, 1), r(1, 2)), "4. 8");
    assert_string_equal(notes(6, 8, r(0, 1), r(5, 8)), "4. 4");
    assert_string_equal(notes(6, 8, r(1, 8), r(1, 2)), "4 4");
    assert_string_equal(notes(12, 8, r(3, 8), r(3, 4)), "2.");
    assert_string_equal(notes(9, 8, r(0, 1), r(9, 8)), "2. 4.");
    assert_string_equal(notes(5, 4, r(0, 1), r(5, 4)), "1 4");
}

/* Whatever the metre: the values add up, and none crosses a bar line. */
static void test_rests_add_up(void **state)
{
    (void)state;
    static const int metres[][2] = {{4, 4},  {3, 4}, {2, 4}, {6, 8}, {9, 8},
                                    {12, 8}, {5, 8}, {7, 8}, {2, 2}, {3, 2}};
    for (size_t m = 0; m < sizeof metres / sizeof metres[0]; m++) {
        int64_t units = (int64_t)metres[m][0] * 48 / metres[m][1];
        for (int64_t from = 0; from < units; from++) {
            for (int64_t to = from + 1; to <= units; to++) {
                sw_duration values[64];
                size_t count = sw_metre_rests((sw_metre){metres[m][0], metres[m][1]}, r(from, 48),
                                              r(to - from, 48), values, 64);
                sw_rational sum = sw_rational_zero();
                assert_true(count <= 64);
                for (size_t i = 0; i < count; i++) {
                    sum = sw_rational_add(sum, sw_duration_length(values[i]));
                }
                assert_true(sw_rational_equal(sum, r(to - from, 48)));
                if (((to - from) % 3 == 0) && from % 3 == 0) { /* what plain values can say */
                    count = sw_metre_notes((sw_metre){metres[m][0], metres[m][1]}, r(from, 48),
                                           r(to - from, 48), values, 64);
                    assert_in_range(count, 1, 64);
                    sum = sw_rational_zero();
                    for (size_t i = 0; i < count; i++) {
                        sum = sw_rational_add(sum, sw_duration_length(values[i]));
                    }
                    assert_true(sw_rational_equal(sum, r(to - from, 48)));
                }
            }
        }
    }
}

static void test_odd_lengths(void **state)
{
    (void)state;
    assert_string_equal(rests(4, 4, r(0, 1), r(1, 6)), "4*2/3");
}

static void test_bar_ranges(void **state)
{
    (void)state;
    sw_bar_range range;
    assert_true(sw_bar_range_parse("8-12", &range));
    assert_int_equal(range.first_bar, 8);
    assert_int_equal(range.last_bar, 12);
    assert_true(sw_bar_range_parse("8:3-9:1", &range));
    assert_true(sw_rational_equal(range.first_beat, r(3, 1)));
    assert_true(sw_rational_equal(range.last_beat, r(1, 1)));
    assert_true(sw_bar_range_parse("7", &range));
    assert_int_equal(range.last_bar, 7);
    assert_false(sw_bar_range_parse("", &range));
    assert_false(sw_bar_range_parse("x", &range));
    assert_false(sw_bar_range_parse("12-8", &range));
    assert_false(sw_bar_range_parse("3:0", &range));
    assert_false(sw_bar_range_parse("3-", &range));
    assert_false(sw_bar_range_parse("3-5 ", &range));
}

/* A pick-up of a quarter, bar 1, and bar 2 twice: as a first ending that is short, and as a second one. */
static void test_bar_range_moments(void **state)
{
    (void)state;
    sw_text *text = sw_text_from_bytes(
        "ending.ly",
        sw_slice_of("{ \\partial 4 c'4 \\repeat volta 2 { d'1 } \\alternative { { e'2. } { f'1 } } g'1 }"));
    const sw_text *overlay = text;
    sw_read_options options = {.overlays = &overlay, .overlay_count = 1};
    char *error = NULL;
    sw_reading *reading = sw_read("ending.ly", &options, &error);
    assert_non_null(reading);
    static const struct {
        const char *range;
        sw_rational from;
        sw_rational to;
    } rows[] = {
        {"0", {0, 1}, {1, 4}},       {"0:4-0:4", {0, 1}, {1, 4}}, {"1", {1, 4}, {5, 4}},
        {"2", {5, 4}, {3, 1}},       {"2:1-3", {5, 4}, {4, 1}},   {"2:4-3", {11, 4}, {4, 1}},
        {"1:3-2:2", {3, 4}, {7, 4}},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        sw_bar_range range;
        sw_rational from;
        sw_rational to;
        assert_true(sw_bar_range_parse(rows[i].range, &range));
        assert_true(sw_bar_range_moments(&reading->scores[0], &range, &from, &to));
        assert_true(sw_rational_equal(from, rows[i].from));
        assert_true(sw_rational_equal(to, rows[i].to));
    }
    sw_reading_free(reading);
    sw_text_free(text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_simple_metres),
        cmocka_unit_test(test_compound_metres),
        cmocka_unit_test(test_notes),
        cmocka_unit_test(test_rests_add_up),
        cmocka_unit_test(test_odd_lengths),
        cmocka_unit_test(test_bar_ranges),
        cmocka_unit_test(test_bar_range_moments),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
