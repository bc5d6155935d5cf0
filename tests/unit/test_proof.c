/* The proof: a division that is right passes, and each single thing that is lost, added or moved besides is
 * refused and named. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/change.h"

static const char *const source =
    "harp = { c,4\\f g,-. c''\\< e''\\! | c,2( g,) c''2^\"sul tasto\" g''2\\trill }\n"
    "flute = { c''4\\p d''-> e''( f'') | g''2.\\fermata r4 | }\n"
    "\\score {\n"
    "  <<\n"
    "    \\new Staff = \"harp\" \\harp\n"
    "    \\new Staff = \"flute\" \\flute\n"
    "  >>\n"
    "}\n";

/* The text with the first `from` replaced by `to`; the caller frees it. */
static char *altered(const char *text, const char *from, const char *to)
{
    const char *found = strstr(text, from);
    if (found == NULL) {
        fail_msg("\"%s\" does not stand in: %s", from, text);
    }
    sw_buffer result = {0};
    sw_buffer_append(&result, (sw_slice){text, (size_t)(found - text)});
    sw_buffer_string(&result, to);
    sw_buffer_string(&result, found + strlen(from));
    return result.data;
}

/* Divides the harp between C4 and above and below, alters the result, and has it proved. NULL: it passes;
 * otherwise the refusal. */
static char *prove(const char *from, const char *to)
{
    sw_text *text = sw_text_from_bytes("proof.ly", sw_slice_of(source));
    const sw_text *overlays[] = {text};
    sw_read_options options = {.overlays = overlays, .overlay_count = 1};
    char *error = NULL;
    sw_reading *reading = sw_read("proof.ly", &options, &error);
    assert_non_null(reading);
    assert_int_equal(reading->score_count, 1);
    const sw_score *score = &reading->scores[0];
    uint8_t *parts = sw_alloc_zero(score->event_count, 1);
    for (uint32_t i = 0; i < score->event_count; i++) {
        parts[i] = score->events[i].kind == SW_EVENT_NOTE && sw_pitch_staff_steps(score->events[i].pitch) < 0;
    }
    sw_division division = {.reading = reading,
                            .score = score,
                            .parts = 2,
                            .suffixes = {"Right", "Left"},
                            .group = "PianoStaff",
                            .event_part = parts,
                            .to = score->length};
    assert_string_equal(sw_reading_name(reading, score->staves[0].id), "harp");
    sw_patch divided = {0};
    sw_buffer notes = {0};
    assert_true(sw_divide(&division, &reading, 1, &divided, &notes, &error));
    assert_true(sw_patch_finish(&divided, &error));
    assert_int_equal(divided.count, 1);
    char *after = altered(divided.files[0].after->bytes, from, to);
    sw_patch patch = {0};
    sw_patch_add(&patch, text, 0, text->length, sw_slice_of(after));
    assert_true(sw_patch_finish(&patch, &error));
    sw_read_options none = {0};
    bool good = sw_prove_division(&division, &reading, 1, &patch, &none, &error);
    assert_int_equal(good, error == NULL);
    free(after);
    sw_patch_free(&patch);
    sw_patch_free(&divided);
    sw_buffer_free(&notes);
    free(parts);
    sw_reading_free(reading);
    sw_text_free(text);
    return error;
}

static void expect_refusal(const char *from, const char *to, const char *said)
{
    char *error = prove(from, to);
    if (error == NULL || strstr(error, said) == NULL) {
        fail_msg("%s -> %s: wanted \"%s\" in \"%s\"", from, to, said, error == NULL ? "(passed)" : error);
    }
    free(error);
}

static void test_right_division_passes(void **state)
{
    (void)state;
    assert_null(prove("harpRight", "harpRight"));
    assert_null(prove("flute = ", "% a remark\nflute = ")); /* what is not heard may change */
}

static void test_other_staff(void **state)
{
    (void)state;
    expect_refusal("d''->", "d''", "-> would be lost");
    expect_refusal("d''->", "d''-!", "would be");
    expect_refusal("c''4\\p d''", "c''4 d''\\p", "\\p would be");
    expect_refusal("e''( f'')", "e'' f''", "( would be lost");
    expect_refusal("g''2.\\fermata r4", "g''2.\\fermata s4", "would be lost");
    expect_refusal("g''2.\\fermata r4", "a''2.\\fermata r4", "would be");
    expect_refusal("\\new Staff = \"flute\"", "\\new Staff = \"oboe\"", "would be");
}

static void test_divided_staff(void **state)
{
    (void)state;
    expect_refusal("c,4\\f", "c,4", "\\f would be lost");
    expect_refusal("g,-.", "g,", ". would be lost");
    expect_refusal("c''4\\<", "c''4", "\\< would be lost");
    expect_refusal("c''4\\<", "c''4\\<\\accent", "\\accent would be new");
    expect_refusal("^\"sul tasto\"", "", "\"sul tasto\" would be lost");
    expect_refusal("\\trill", "", "\\trill would be lost");
    expect_refusal("c,2(", "d,2(", "would be");
    expect_refusal("\\new Staff = \"harpLeft\" \\harpLeft", "\\new Staff = \"harpLeft\" \\harpRight",
                   "would be");
}

static void test_errors(void **state)
{
    (void)state;
    expect_refusal("flute = {", "flute = { \\include \"not-there.ily\"", "the result would have an error");
    expect_refusal("\\score {", "\\score { { c4 } }\n\\score {", "the number of scores would change");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_right_division_passes),
        cmocka_unit_test(test_other_staff),
        cmocka_unit_test(test_divided_staff),
        cmocka_unit_test(test_errors),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
