/* Functions that a source defines: what their parameters take, and what stands for an argument left out; and
 * the plain text of markups. What the compiler makes of optional parameters is in tests/reference/reading. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/score.h"

typedef struct source {
    sw_text *text;
    sw_reading *reading;
} source;

static source read_source(const char *bytes)
{
    source s = {.text = sw_text_from_bytes("/nowhere/functions.ly", sw_slice_of(bytes))};
    const sw_text *overlays[] = {s.text};
    sw_read_options options = {.overlays = overlays, .overlay_count = 1};
    char *error = NULL;
    s.reading = sw_read(s.text->path, &options, &error);
    assert_non_null(s.reading);
    assert_true(s.reading->score_count > 0);
    return s;
}

static void free_source(source *s)
{
    sw_reading_free(s->reading);
    sw_text_free(s->text);
}

/* The steps of the notes that are heard: "ce" */
static void assert_heard(const char *bytes, const char *steps)
{
    char heard[64] = "";
    source s = read_source(bytes);
    const sw_score *score = &s.reading->scores[0];
    for (size_t i = 0; i < score->event_count && i + 1 < sizeof heard; i++) {
        heard[i] = "cdefgab"[score->events[i].pitch.step];
        heard[i + 1] = '\0';
    }
    if (strcmp(heard, steps) != 0) {
        print_message("%s\n", bytes);
    }
    assert_string_equal(heard, steps);
    free_source(&s);
}

static const struct {
    const char *predicate;
    const char *argument;
} kinds[] = {
    {"ly:pitch?", "d'"},
    {"ly:duration?", "8."},
    {"number?", "3"},
    {"integer?", "-2"},
    {"number?", "#1.5"},
    {"fraction?", "3/4"},
    {"string?", "\"a b\""},
    {"markup?", "\\markup \\bold x"},
    {"markup?", "\"x\""},
    {"symbol?", "foo"},
    {"symbol-list?", "Staff.foo"},
    {"symbol-list-or-symbol?", "#'(a b)"},
    {"key-list?", "a.b"},
    {"number-list?", "3,2"},
    {"boolean?", "##t"},
    {"ly:dir?", "#UP"},
    {"ly:moment?", "#(ly:make-moment 1 4)"},
    {"ly:context-mod?", "\\with { }"},
    {"scheme?", "#'anything"},
    {"ly:music?", "{ }"},
};

/* The argument is taken, so that it is not heard, and the note behind it is the next argument. */
static void test_predicates_take_their_arguments(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
        for (int optional = 0; optional < 2; optional++) {
            char bytes[256];
            snprintf(bytes, sizeof bytes,
                     "fun = #(define-music-function (one two) (%s%s%s ly:music?) #{ $two g' #})\n"
                     "{ \\fun %s e'4 c' }",
                     optional ? "(" : "", kinds[i].predicate, optional ? ")" : "", kinds[i].argument);
            assert_heard(bytes, "egc");
        }
    }
}

static void test_arguments_can_be_left_out(void **state)
{
    (void)state;
    static const char *const predicates[] = {"ly:pitch?", "ly:duration?", "number?",      "fraction?",
                                             "string?",   "markup?",      "number-list?", "ly:context-mod?"};
    for (size_t i = 0; i < sizeof predicates / sizeof predicates[0]; i++) {
        char bytes[256];
        snprintf(bytes, sizeof bytes,
                 "fun = #(define-music-function (one two) ((%s) ly:music?) #{ $two g' #})\n"
                 "{ \\fun { e'4 } c' \\fun \\default e' c' }",
                 predicates[i]);
        assert_heard(bytes, "egcegc");
    }
}

static void test_a_parameter_can_be_given_back(void **state)
{
    (void)state;
    assert_heard("fun = #(define-music-function (one two) (ly:music? ly:music?) \"takes the second\" two)\n"
                 "{ \\fun c'4 d' e' }",
                 "de");
    assert_heard("fun = #(define-music-function (num one) (number? (ly:music? #{ f'4 #})) one)\n"
                 "{ \\fun 2 \\default e' }",
                 "fe");
}

/* Before version 2.20 two parameters stood in front that no argument belongs to. */
static void test_parser_and_location(void **state)
{
    (void)state;
    assert_heard("fun = #(define-music-function (parser location one) (ly:music?) #{ $one $one #})\n"
                 "{ \\fun c'4 d' }",
                 "ccd");
}

static void test_definers_that_define_nothing(void **state)
{
    (void)state;
    static const char *const values[] = {
        "#(begin ; (define-music-function (one) (ly:music?) #{ b'4 #})\n 5)",
        "#'(define-music-function (one) (ly:music?))",
        "#\"(define-music-function (one) (ly:music?))\"",
    };
    for (size_t i = 0; i < sizeof values / sizeof values[0]; i++) {
        char bytes[256];
        snprintf(bytes, sizeof bytes, "fun = %s\n{ \\fun c'4 d' }", values[i]);
        assert_heard(bytes, "cd");
    }
}

/* ---- plain text ---- */

static void assert_plain(const char *before, const char *markup, const char *plain)
{
    char bytes[512];
    snprintf(bytes, sizeof bytes, "%s\n\\new Staff \\with { instrumentName = %s } { c'4 }", before, markup);
    source s = read_source(bytes);
    assert_string_equal(sw_reading_name(s.reading, s.reading->scores[0].staves[0].instrument), plain);
    free_source(&s);
}

static void test_plain_text_of_markups(void **state)
{
    (void)state;
    assert_plain("", "\"Horn in F\"", "Horn in F");
    assert_plain("", "#\"Horn\"", "Horn");
    assert_plain("", "\"so \\\"called\\\" flute\"", "so \"called\" flute");
    assert_plain("", "\\markup { Horn \\italic in \\bold F }", "Horn in F");
    assert_plain("", "\\markup \\center-column { \"Horn\" \\line { in F } }", "Horn in F");
    assert_plain("", "\\markup \\fontsize #2 \\with-color #red Oboe", "Oboe");
    assert_plain("", "\\markup { Clarinet in B\\flat }", "Clarinet in B-flat");
    assert_plain("", "\\markup { F \\sharp }", "F-sharp");
    assert_plain("player = \"Viola\"", "\\player", "Viola");
    assert_plain("player = \"Viola\"", "\\markup { Solo \\player }", "Solo Viola");
    assert_plain("", "\\markup { Tuba \\score { { c''4 d'' } } }", "Tuba");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_predicates_take_their_arguments),
        cmocka_unit_test(test_arguments_can_be_left_out),
        cmocka_unit_test(test_a_parameter_can_be_given_back),
        cmocka_unit_test(test_parser_and_location),
        cmocka_unit_test(test_definers_that_define_nothing),
        cmocka_unit_test(test_plain_text_of_markups),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
