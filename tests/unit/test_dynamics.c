/* Dynamics through time: a source, and the levels of its notes voice by voice. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/dynamics.h"

static const struct {
    const char *source;
    const char *levels; /* of the notes, in order of voice and time; < grows, > fades, - nothing said */
} cases[] = {
    {"{ c'4 d'\\p e' f'\\ff g' }", "- p p ff ff"},
    {"{ c'4\\p\\< d' e' f' g'\\f }", "p< mp< mf< mf< f"},
    {"{ c'4\\<\\p d' e' f' g'\\f }", "p< mp< mf< mf< f"},
    {"{ c'4\\f\\> d' e' f'\\! g'\\p }", "f> mf> mp> p p"},
    /* without a goal one level */
    {"{ c'4\\p\\< d' e'\\! f' }", "p< mp< mp mp"},
    /* what comes long after the end is no goal */
    {"{ c'4\\p\\< d'\\! e' f' g' a' b'\\ff }", "p< mp mp mp mp mp ff"},
    /* the other way is no goal, either */
    {"{ c'4\\p\\< d' e' f'\\pp }", "p< p< mp< pp"},
    /* up and down again */
    {"{ c'4\\p\\< d' e'\\> f' g'\\p }", "p< mp< mp> mp> p"},
    /* several without a goal don't add up */
    {"{ c'4\\p\\> d'\\! e'\\> f'\\! g' a'\\> b'\\! c'' }", "p> pp pp pp pp pp pp pp"},
    {"{ c'4\\p\\cresc d' e' f'\\f }", "p< mp< mf< f"},
    {"{ c'4\\f^\"dim.\" d' e' f'\\p }", "f> mf> mp> p"},
    {"{ c'4\\p d'^\"poco a poco cresc.\" e' f' g'\\f }", "p p< mp< mf< f"},
    /* accents hold for their note alone */
    {"{ c'4\\p d'\\sfz e' f'\\fp g' }", "p f p f p"},
    {"{ c'4\\p d'\\sfp e' }", "p f p"},
    /* silence */
    {"{ c'4\\p\\> d' e' f'\\n }", "p> pp> pp> n"},
    {"{ c'4\\mf d'^\"dim. al niente\" e' }", "mf n n"},
    /* texts */
    {"{ c'4\\f d'^\"sempre p\" e'^\\markup { \\dynamic pp \\italic dolce } f' }", "f p pp pp"},
    {"{ c'4\\f d'^\"poco f\" e'^\"p. 12\" f'^\"a f b\" g'^\"div.\" }", "f f f f f"},
    /* a mark in one voice holds for the staff ... */
    {"\\new Staff << { c''4\\p d'' e'' f''\\f } \\\\ { c'4 d' e' f' } >>", "p p p f p p p f"},
    /* ... but not for a voice with its own in that bar */
    {"\\new Staff << { c''4\\p d'' e'' f'' } \\\\ { c'4\\f d' e' f' } >>", "p p p p f f f f"},
    /* voices of nothing but skips, and empty chords */
    {"<< { c''4 d'' e'' f'' } { s4\\p s4 s4\\f s4 } >>", "p p f f"},
    {"{ <>\\mf c''4 d'' <>\\pp e'' f'' }", "mf mf pp pp"},
    /* the line between the staves of a piano */
    {"\\new PianoStaff << \\new Staff { c''4 d'' } \\new Dynamics { s4\\p s4\\f } \\new Staff { c'4 d' } >>",
     "p f p f"},
    /* another staff's marks are not ours */
    {"<< \\new Staff { c''4\\p d'' } \\new Staff { c'4 d' } >>", "p p - -"},
    {"{ <c' e'>4\\p q q\\f }", "p p p p f f"},
};

static void say_levels(const sw_score *score, const sw_dynamics *dynamics, sw_buffer *text)
{
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (event->kind != SW_EVENT_NOTE) {
            continue;
        }
        sw_dynamic_now now = sw_dynamics_at(dynamics, event->voice, event->onset);
        sw_buffer_format(text, "%s%s%s", text->length == 0 ? "" : " ",
                         now.level == SW_NO_DYNAMIC ? "-" : sw_dynamic_name(now.level),
                         now.direction > 0   ? "<"
                         : now.direction < 0 ? ">"
                                             : "");
    }
}

static void test_levels(void **state)
{
    (void)state;
    size_t wrong = 0;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        char *error = NULL;
        sw_text *source = sw_text_from_bytes("/nowhere/dynamics.ly", sw_slice_of(cases[i].source));
        const sw_text *overlays[] = {source};
        sw_read_options options = {.overlays = overlays, .overlay_count = 1};
        sw_reading *reading = sw_read("/nowhere/dynamics.ly", &options, &error);
        assert_non_null(reading);
        assert_int_equal(reading->score_count, 1);
        sw_dynamics *dynamics = sw_dynamics_of(reading, &reading->scores[0]);
        sw_buffer text = {0};
        say_levels(&reading->scores[0], dynamics, &text);
        if (strcmp(sw_buffer_text(&text), cases[i].levels) != 0) {
            print_message("%s\n  gives %s\n  not   %s\n", cases[i].source, sw_buffer_text(&text),
                          cases[i].levels);
            wrong++;
        }
        sw_buffer_free(&text);
        sw_dynamics_free(dynamics);
        sw_reading_free(reading);
        sw_text_free(source);
    }
    assert_int_equal(wrong, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_levels)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
