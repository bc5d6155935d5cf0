/* What the proof of an edit must refuse: each case is a right edit with something else changed beside it. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "write/print.h"

static const char source[] =
    "\\score { <<\n"
    "  \\new Staff = \"oboe\" { \\clef treble c'4-. d' e'\\p f' | r2 g'4( a') }\n"
    "  \\new Staff = \"horn\" { \\time 4/4 c'2 <e g>2 | \\tuplet 3/2 { c'4 d' e' } f'2 }\n"
    ">> }\n";

/* The first note becomes D. */
static const sw_change pitch = {.kind = SW_CHANGE_PITCH, .event = 0, .pitch = {1, 0, 0}};
/* Two bars come in before the second. */
static const sw_change bars = {.kind = SW_CHANGE_INSERT_BARS, .moment = {1, 1}, .count = 2};

/* Makes a change, and beside that the first `old` behind `behind` into `new`. Returns the proof's error, NULL
 * when it lets it pass; free() it. */
static char *prove_with(const sw_change *change, const char *behind, const char *old, const char *new)
{
    sw_text *text = sw_text_from_bytes("/dev/null/proof.ly", sw_slice_of(source));
    const sw_text *overlays[] = {text};
    sw_read_options options = {.overlays = overlays, .overlay_count = 1};
    char *error = NULL;
    sw_reading *reading = sw_read("/dev/null/proof.ly", &options, &error);
    assert_non_null(reading);
    sw_reading *mains[] = {reading};
    sw_edit_request request = {.reading = reading,
                               .score = &reading->scores[0],
                               .changes = change,
                               .count = 1,
                               .mains = mains,
                               .main_count = 1,
                               .options = &options};
    sw_draft *draft = sw_draft_new(&request);
    assert_true(change->kind == SW_CHANGE_PITCH ? sw_change_pitch(draft, change)
                                                : sw_change_insert_bars(draft, change));
    sw_draft_locate(draft);
    sw_patch patch = {0};
    assert_true(sw_draft_print(draft, &patch));
    if (old != NULL) {
        const char *from = strstr(source, behind);
        assert_non_null(from);
        from = strstr(from + strlen(behind), old);
        assert_non_null(from);
        uint32_t start = (uint32_t)(from - source);
        sw_patch_add(&patch, text, start, start + (uint32_t)strlen(old), sw_slice_of(new));
    }
    assert_true(sw_patch_finish(&patch, &error));
    sw_word_mend mend;
    bool passes = sw_draft_prove(draft, &patch, &mend, &error);
    assert_int_equal(passes, error == NULL);
    sw_patch_free(&patch);
    sw_draft_free(draft);
    sw_reading_free(reading);
    sw_text_free(text);
    return error;
}

static void refuses_beside(const sw_change *change, const char *behind, const char *old, const char *new,
                           const char *why)
{
    char *error = prove_with(change, behind, old, new);
    if (error == NULL) {
        fail_msg("\"%s\" instead of \"%s\" is let through", new, old);
    } else if (strstr(error, why) == NULL) {
        fail_msg("\"%s\" instead of \"%s\": %s", new, old, error);
    }
    free(error);
}

static void refuses(const char *behind, const char *old, const char *new, const char *why)
{
    refuses_beside(&pitch, behind, old, new, why);
}

static void test_right_edit_passes(void **state)
{
    (void)state;
    assert_null(prove_with(&pitch, NULL, NULL, NULL));
    assert_null(prove_with(&pitch, "oboe", " | r2", "   |\n   r2")); /* white space is nobody's music */
}

static void test_notes(void **state)
{
    (void)state;
    refuses("oboe", "d'", "e'",
            "bar 1, beat 2, \"oboe\": a note D4 of 1/4 is wanted, but would not be heard");
    refuses("horn", "e g", "e", "a note E3 of 1/2 would be heard");
    refuses("horn", "f'2", "f'4 g'", "a note F4 of 1/4 would be heard"); /* on another staff */
    refuses("oboe", "r2", "s2", "a rest of 1/2 is wanted");
    refuses("oboe", "r2", "r4 r4",
            "a rest of 1/4 would be heard"); /* outside of the edit rests stay as they are */
    refuses("oboe", "g'4", "g'8. r16", "bar 2, beat 3, \"oboe\": a note G4 of");
    refuses("horn", "3/2", "3/1", "a note C4 of 1/12 would be heard");
}

static void test_marks(void **state)
{
    (void)state;
    refuses("oboe", "\\p", "", "bar 1, beat 3, \"oboe\": a note E4 of 1/4");
    refuses("oboe", "f'", "f'->", "bar 1, beat 4, \"oboe\": a note F4 of 1/4");
    refuses("oboe", "g'4(", "g'4", "bar 2, beat 3, \"oboe\": a note G4 of 1/4");
}

static void test_everything_else(void **state)
{
    (void)state;
    refuses("oboe", "\\clef treble", "\\clef alto", "commands between the notes");
    refuses("oboe", "\\clef treble", "", "commands between the notes");
    refuses("oboe", "d'", "| d'", "commands between the notes"); /* a bar check where no bar ends */
    refuses("", "\"horn\"", "\"tuba\"", "the staves would not be the same");
    refuses("horn", "4/4", "3/4", "the bars would not be the same");
    refuses("", "\\score {", "\\score { c'1 } \\score {", "the number of scores would change");
    refuses("horn", "f'2 }", "f'2", "the result would have an error");
    refuses("horn", "f'2 }", "f'2 \\unheardOf }", "or something that is not known");
}

/* Where bars come in, all else is the same, only later. */
static void test_bars(void **state)
{
    (void)state;
    assert_null(prove_with(&bars, NULL, NULL, NULL));
    refuses_beside(&bars, "oboe", "f' ", "f'8 f' ",
                   "bar 1, beat 4, \"oboe\": a note F4 of 1/8 would be heard");
    refuses_beside(&bars, "oboe", "g'4", "a'4", "\"oboe\": a note G4 of 1/4 ( is wanted");
    refuses_beside(&bars, "oboe", "g'4", "R1 g'4", "would not be the same");
    refuses_beside(&bars, "horn", "f'2", "R1", "the bars would not be the same");
    refuses_beside(&bars, "horn", "\\tuplet", "c'1 \\tuplet", "the bars would not be the same");
    refuses_beside(&bars, "horn", "f'2", "f'2 \\clef alto", "commands between the notes");
    refuses_beside(&bars, "oboe", "\\clef treble", "", "commands between the notes");
    refuses_beside(&bars, "horn", "4/4", "3/4", "the bars would not be the same");
    refuses_beside(&bars, "oboe", "r2", "f'2", "a note F4 of 1/2 would be heard, but nobody asked for it");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_right_edit_passes), cmocka_unit_test(test_notes), cmocka_unit_test(test_marks),
        cmocka_unit_test(test_everything_else),   cmocka_unit_test(test_bars),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
