/* Marks that are made in Scheme hang on the note behind which they are used. That the compiler has them there
 * was asked once, of LilyPond 2.24. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/score.h"

/* How many marks hang on the n-th note of a source that defines \x as the event and uses it behind c4. */
static int marks_of(const char *event)
{
    sw_buffer source = {0};
    sw_buffer_format(&source,
                     "x = #(make-"
                     "music '%s 'text \"x\") { c4\\x d4 }",
                     event);
    sw_text *text = sw_text_from_bytes("/nowhere/marks.ly", sw_buffer_slice(&source));
    const sw_text *overlays[] = {text};
    sw_read_options options = {.overlays = overlays, .overlay_count = 1};
    char *error = NULL;
    sw_reading *reading = sw_read(text->path, &options, &error);
    assert_non_null(reading);
    assert_int_equal(reading->score_count, 1);
    assert_int_equal(reading->scores[0].event_count, 2);
    int marks = 0;
    const sw_music *note = &reading->music[reading->scores[0].events[0].music];
    for (uint32_t c = note->first; c != SW_NO_INDEX; c = reading->music[c].next) {
        marks += reading->music[c].kind == SW_MUSIC_MARK;
    }
    sw_reading_free(reading);
    sw_text_free(text);
    sw_buffer_free(&source);
    return marks;
}

static void test_events_are_marks(void **state)
{
    (void)state;
    assert_int_equal(marks_of("AbsoluteDynamicEvent"), 1);
    assert_int_equal(marks_of("ArticulationEvent"), 1);
    assert_int_equal(marks_of("CrescendoEvent"), 1);
    assert_int_equal(marks_of("DecrescendoEvent"), 1);
    assert_int_equal(marks_of("TextScriptEvent"), 1);
}

static void test_other_music_is_none(void **state)
{
    (void)state;
    assert_int_equal(marks_of("SequentialMusic"), 0);
}

/* The class of the mark on the first note of a source. */
static sw_mark_class class_in(const char *source)
{
    sw_text *text = sw_text_from_bytes("/nowhere/marks.ly", sw_slice_of(source));
    const sw_text *overlays[] = {text};
    sw_read_options options = {.overlays = overlays, .overlay_count = 1};
    char *error = NULL;
    sw_reading *reading = sw_read(text->path, &options, &error);
    assert_non_null(reading);
    assert_true(reading->score_count == 1 && reading->scores[0].event_count >= 1);
    uint32_t mark = reading->music[reading->scores[0].events[0].music].first;
    assert_int_not_equal(mark, SW_NO_INDEX);
    sw_mark_class class = sw_music_mark_class(reading, mark);
    sw_reading_free(reading);
    sw_text_free(text);
    return class;
}

/* The function of the language that makes any event is "make-" and this. */
#define EVENT "music"

static void test_classes(void **state)
{
    (void)state;
    assert_int_equal(
        class_in("grow = #(make-" EVENT " 'CrescendoEvent 'span-direction START) { c4\\grow d }"),
        SW_MARK_HAIRPIN_START);
    assert_int_equal(
        class_in("grown = #(make-" EVENT " 'CrescendoEvent 'span-direction STOP) { c4\\grown d }"),
        SW_MARK_HAIRPIN_END);
    assert_int_equal(
        class_in("fade = #(make-" EVENT " 'DecrescendoEvent 'span-direction START) { c4-\\fade d }"),
        SW_MARK_HAIRPIN_START);
    assert_int_equal(class_in("loud = #(make-dynamic-script \"loud\") { c4^\\loud d }"), SW_MARK_DYNAMIC);
    assert_int_equal(class_in("legato = #(make-" EVENT " 'SlurEvent 'span-direction START) { c4\\legato d }"),
                     SW_MARK_SLUR_START);
    assert_int_equal(class_in("louder = \\< { c4\\louder d }"), SW_MARK_HAIRPIN_START);
    assert_int_equal(class_in("a = \\fp b = \\a { c4_\\b d }"), SW_MARK_DYNAMIC);
    assert_int_equal(class_in("hit = \\accent { c4\\hit d }"), SW_MARK_ARTICULATION);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_classes),
        cmocka_unit_test(test_events_are_marks),
        cmocka_unit_test(test_other_music_is_none),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
