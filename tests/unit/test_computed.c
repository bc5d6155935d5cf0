/* What functions of the language compute from notes, against the worked examples of LilyPond's Notation
 * Reference 2.24: section 1.1.2 (inversion, retrograde, modal transformations) and 2.7.1 (chord inversions).
 * The results are counted by hand from the manual's definitions, in scale degrees and intervals. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/score.h"

static sw_buffer heard_text;

static int forget(void **state)
{
    (void)state;
    sw_buffer_free(&heard_text);
    return 0;
}

/* The notes that a source makes in its first score: "C4 Eb4"; with their lengths: "C4:1/4". */
static const char *heard_as(const char *source, bool lengths)
{
    sw_text *text = sw_text_from_bytes("/nowhere/computed.ly", sw_slice_of(source));
    const sw_text *overlays[] = {text};
    sw_read_options options = {.overlays = overlays, .overlay_count = 1};
    char *error = NULL;
    sw_reading *reading = sw_read(text->path, &options, &error);
    assert_non_null(reading);
    assert_true(reading->score_count > 0);
    sw_buffer_free(&heard_text);
    const sw_score *score = &reading->scores[0];
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *e = &score->events[i];
        char pitch[SW_PITCH_TEXT];
        sw_buffer_format(&heard_text, "%s%s", i > 0 ? " " : "",
                         e->kind == SW_EVENT_NOTE ? sw_pitch_print(e->pitch, pitch) : "r");
        if (lengths) {
            sw_buffer_format(&heard_text, ":%d/%d", (int)e->duration.num, (int)e->duration.den);
        }
    }
    sw_reading_free(reading);
    sw_text_free(text);
    return sw_buffer_text(&heard_text);
}

static const char *heard(const char *source)
{
    return heard_as(source, false);
}

#define OCTATONIC "scale = \\relative { ees' f fis gis a b c d }\n"
#define MOTIF "motif = \\relative { c'8. ees16 fis8. a16 b8. gis16 f8. d16 }\n"

/* 1.1.2 'Inversion' */
static void test_inversion(void **state)
{
    (void)state;
    assert_string_equal(heard("music = \\relative { c' d e f } \\inversion d' d' \\music"), "E4 D4 C4 B3");
    assert_string_equal(heard("music = \\relative { c' d e f } \\inversion d' ees' \\music"),
                        "F4 Eb4 Db4 C4");
}

/* 1.1.2 'Retrograde' */
static void test_retrograde(void **state)
{
    (void)state;
    assert_string_equal(heard_as(MOTIF "\\retrograde \\motif", true),
                        "D4:1/16 F4:3/16 G#4:1/16 B4:3/16 A4:1/16 F#4:3/16 Eb4:1/16 C4:3/16");
}

/* Settings stay in front of what they stood in front of, a repeated chord is written out, and notes behind
 * the music keep the value that was written last. */
static void test_retrograde_of_more_than_notes(void **state)
{
    (void)state;
    assert_string_equal(heard_as("\\retrograde { c'4 <d' f'>8 q r2 e' }", true),
                        "E4:1/2 r:1/2 D4:1/8 F4:1/8 D4:1/8 F4:1/8 C4:1/4");
    assert_string_equal(heard("\\retrograde { c'4 \\tuplet 3/2 { d'8 e' f' } g'4 }"), "G4 F4 E4 D4 C4");
    assert_string_equal(heard("{ \\retrograde { } c'4 }"), "C4");
}

static void test_settings_stay_before_their_notes(void **state)
{
    (void)state;
    const char *source = "\\retrograde { c'4 \\stemUp \\stemDown d' e' \\stemNeutral }";
    sw_text *text = sw_text_from_bytes("/nowhere/settings.ly", sw_slice_of(source));
    const sw_text *overlays[] = {text};
    sw_read_options options = {.overlays = overlays, .overlay_count = 1};
    char *error = NULL;
    sw_reading *reading = sw_read(text->path, &options, &error);
    assert_non_null(reading);
    const sw_score *score = &reading->scores[0];
    assert_int_equal(score->setting_count, 3);
    static const char *const names[] = {"\\stemNeutral", "\\stemUp", "\\stemDown"};
    static const int quarters[] = {0, 1, 1};
    for (size_t i = 0; i < 3; i++) {
        assert_true(sw_slice_is(sw_music_slice(reading, score->settings[i].music), names[i]));
        assert_true(sw_rational_equal(score->settings[i].onset, sw_rational_make(quarters[i], 4)));
    }
    sw_reading_free(reading);
    sw_text_free(text);
}

/* 1.1.2 'Modal transposition' */
static void test_modal_transposition(void **state)
{
    (void)state;
    static const char source[] = "scale = \\relative { c' d e f g a b }\n"
                                 "motif = \\relative { c'8 d e f g a b c }\n";
    char text[256];
    snprintf(text, sizeof text, "%s\\modalTranspose c f \\scale \\motif", source);
    assert_string_equal(heard(text), "F4 G4 A4 B4 C5 D5 E5 F5");
    snprintf(text, sizeof text, "%s\\modalTranspose c b, \\scale \\motif", source);
    assert_string_equal(heard(text), "B3 C4 D4 E4 F4 G4 A4 B4");
    assert_string_equal(heard("scale = \\relative { ges aes bes des ees }\n"
                              "motif = \\relative { ees'8 des ges,4 <ges' bes,> <ges bes,> }\n"
                              "\\modalTranspose ges ees' \\scale \\motif"),
                        "Db5 Bb4 Eb4 Eb5 Ab4 Eb5 Ab4");
    assert_string_equal(heard("scale = \\relative { c' cis d dis e f fis g gis a ais b }\n"
                              "motif = \\relative { c'8 d e f g a b c }\n"
                              "\\modalTranspose c f \\scale \\motif"),
                        "F4 G4 A4 A#4 C5 D5 E5 F5");
}

/* 'Any note that does not lie within the given scale will be left untransformed.' */
static void test_notes_outside_of_the_scale_stay(void **state)
{
    (void)state;
    assert_string_equal(heard("\\modalTranspose c' d' { c' d' e' } { c'4 fis' d' }"), "D4 F#4 E4");
    assert_string_equal(heard("\\modalTranspose cis' d' { c' d' e' } { c'4 d' }"), "C4 D4");
}

/* 1.1.2 'Modal inversion': around a note, around a pivot between two notes, and together with retrograde */
static void test_modal_inversion(void **state)
{
    (void)state;
    assert_string_equal(heard(OCTATONIC MOTIF "\\modalInversion fis' fis' \\scale \\motif"),
                        "C5 A4 F#4 Eb4 D4 F4 G#4 B4");
    assert_string_equal(heard("scale = \\relative { c' g' }\n"
                              "motive = \\relative { c' c g' c, }\n"
                              "\\modalInversion c' g' \\scale \\motive"),
                        "G4 G4 C4 G4");
    assert_string_equal(heard(OCTATONIC MOTIF "\\retrograde \\modalInversion c' c' \\scale \\motif"),
                        "B3 G#3 F3 D3 Eb3 F#3 A3 C4");
}

/* 2.7.1 'Chord inversions and specific voicings': notes stand in the order in which they are written. */
static void test_chord_inversions(void **state)
{
    (void)state;
    assert_string_equal(heard("\\dropNote 2 { <c' e' g' b'>2 <d' f' a' c''> }"), "C4 E4 G3 B4 D4 F4 A3 C5");
    assert_string_equal(heard("\\invertChords 1 <d' fis' a' cis''>1"), "D5 F#4 A4 C#5");
    assert_string_equal(heard("\\invertChords -1 <d' fis' a' cis''>1"), "D4 F#4 A4 C#4");
    assert_string_equal(heard("\\invertChords 3 <c' e' g'>1"), "C5 E5 G5");
    assert_string_equal(heard("\\raiseNote 5 <c' e'>1"), "C4 E4");
}

static void test_note_values(void **state)
{
    (void)state;
    assert_string_equal(heard_as("\\shiftDurations #1 #1 { c'4 d'2 r8 }", true), "C4:3/16 D4:3/8 r:3/32");
    assert_string_equal(heard_as("\\shiftDurations #-1 #-1 { c'4. d'4 }", true), "C4:1/2 D4:1/2");
    /* each twice as long as the one before, 1 + 2 + 4 + 8 = 15, together a half note */
    assert_string_equal(heard_as("\\featherDurations 2/1 { c'8 d' e' f' }", true),
                        "C4:1/30 D4:1/15 E4:2/15 F4:4/15");
}

/* The sources' own music stays as it was: what is computed is a copy. */
static void test_the_variable_stays_as_it_is(void **state)
{
    (void)state;
    assert_string_equal(
        heard("music = { c'4 d' } { \\retrograde \\music \\inversion c' c' \\music \\music }"),
        "D4 C4 C4 Bb3 C4 D4");
}

/* Variables that are used in variables, deeper than anything is read: said, and no crash. */
static void test_too_deep_is_said(void **state)
{
    (void)state;
    sw_buffer source = {0};
    sw_buffer_string(&source, "vx = { c'4 }\n");
    char name[16] = "vx";
    for (int i = 0; i < 20000; i++) {
        char next[16];
        snprintf(next, sizeof next, "v%c%c%c%c", 'a' + i / 8000, 'a' + i / 400 % 20, 'a' + i / 20 % 20,
                 'a' + i % 20);
        sw_buffer_format(&source, "%s = { \\%s }\n", next, name);
        memcpy(name, next, sizeof name);
    }
    sw_buffer_format(&source, "{ \\shiftDurations #1 #0 \\retrograde \\%s }", name);
    sw_text *text = sw_text_from_bytes("/nowhere/deep.ly", sw_buffer_slice(&source));
    const sw_text *overlays[] = {text};
    sw_read_options options = {.overlays = overlays, .overlay_count = 1};
    char *error = NULL;
    sw_reading *reading = sw_read(text->path, &options, &error);
    assert_non_null(reading);
    bool said = false;
    for (size_t i = 0; i < reading->findings.count; i++) {
        said = said || strstr(reading->findings.items[i].message, "too deep inside of one another") != NULL;
    }
    assert_true(said);
    sw_reading_free(reading);
    sw_text_free(text);
    sw_buffer_free(&source);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_inversion),
        cmocka_unit_test(test_retrograde),
        cmocka_unit_test(test_retrograde_of_more_than_notes),
        cmocka_unit_test(test_settings_stay_before_their_notes),
        cmocka_unit_test(test_modal_transposition),
        cmocka_unit_test(test_notes_outside_of_the_scale_stay),
        cmocka_unit_test(test_modal_inversion),
        cmocka_unit_test(test_chord_inversions),
        cmocka_unit_test(test_note_values),
        cmocka_unit_test(test_the_variable_stays_as_it_is),
        cmocka_unit_test(test_too_deep_is_said),
    };
    return cmocka_run_group_tests(tests, NULL, forget);
}
