/* Pitches, intervals and durations. The check-values come from the language's manual, the Notation Reference
 * (the section stands beside each), or were asked of the compiler. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/duration.h"
#include "stavewright/pitch.h"
#include "pitches.h"

/* ---- names ------------------------------------------------------------------------------------------ */

static void scientific_names_are_read(void **state)
{
    (void)state;
    static const struct {
        const char *name;
        sw_pitch pitch;
    } cases[] = {
        {"C4", {0, 0, 0}},    {"B3", {6, -1, 0}},   {"Bb1", {6, -3, -2}}, {"F#6", {3, 2, 2}},
        {"Cb1", {0, -3, -2}}, {"Fx4", {3, 0, 4}},   {"Ebb5", {2, 1, -4}}, {"A0", {5, -4, 0}},
        {"C-1", {0, -5, 0}},  {"G##3", {4, -1, 4}},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        assert_true(sw_pitch_equal(pitch(cases[i].name), cases[i].pitch));
    }
}

static void other_texts_are_refused(void **state)
{
    (void)state;
    static const char *const cases[] = {"",     "C",    "4",   "H4",  "c4",   "C44", "C#",
                                        "Cb#4", "C#b4", "C4 ", " C4", "C--1", "Cs4", "Cbbbb4"};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        sw_pitch p;
        if (sw_pitch_from_scientific(sw_slice_of(cases[i]), &p)) {
            fail_msg("'%s' was taken for a pitch", cases[i]);
        }
    }
}

static void names_survive_reading_and_printing(void **state)
{
    (void)state;
    for (int8_t octave = -4; octave <= 5; octave++) {
        for (int8_t step = 0; step < 7; step++) {
            for (int8_t alter = -6; alter <= 6; alter = (int8_t)(alter + 2)) {
                sw_pitch p = {step, octave, alter};
                char text[SW_PITCH_TEXT];
                assert_true(sw_pitch_equal(pitch(sw_pitch_print(p, text)), p));
            }
        }
    }
}

static void quarter_tones_are_printed(void **state)
{
    (void)state;
    static const char *const names[] = {"Gbbbb4", "Gbbb-4", "Gbbb4", "Gbb-4", "Gbb4", "Gb-4",
                                        "Gb4",    "G-4",    "G4",    "G+4",   "G#4",  "G#+4",
                                        "Gx4",    "Gx+4",   "Gx#4",  "Gx#+4", "Gxx4"};
    for (int alter = -8; alter <= 8; alter++) {
        assert_pitch((sw_pitch){4, 0, (int8_t)alter}, names[alter + 8]);
    }
    assert_pitch((sw_pitch){4, 0, 9}, "G?4");
}

/* ---- height
 * ------------------------------------------------------------------------------------------------ */

static void heights_are_counted_from_middle_c(void **state)
{
    (void)state;
    assert_int_equal(sw_pitch_midi(pitch("C4")), 60);
    assert_int_equal(sw_pitch_midi(pitch("A0")), 21); /* the piano's 88 keys: 21 to 108 */
    assert_int_equal(sw_pitch_midi(pitch("C8")), 108);
    assert_int_equal(sw_pitch_midi(pitch("B#3")), 60);
    assert_int_equal(sw_pitch_midi(pitch("Cb4")), 59);
    assert_int_equal(sw_pitch_midi(pitch("Fx4")), 67);
    assert_int_equal(sw_pitch_semitones((sw_pitch){0, 0, 1}), 0);  /* quarter tones: towards the natural */
    assert_int_equal(sw_pitch_semitones((sw_pitch){0, 0, -1}), 0); /* from both sides */
    assert_int_equal(sw_pitch_semitones((sw_pitch){0, 0, 3}), 1);
    assert_int_equal(sw_pitch_quarter_tones((sw_pitch){0, -1, 1}), -23);
    assert_int_equal(sw_pitch_staff_steps(pitch("Bx3")), -1);
    assert_true(sw_pitch_compare(pitch("B#3"), pitch("C4")) < 0); /* equal height: the lower name first */
    assert_true(sw_pitch_compare(pitch("Cb4"), pitch("B#3")) < 0);
    assert_int_equal(sw_pitch_compare(pitch("Cb4"), pitch("Cb4")), 0);
}

/* ---- transposition
 * ------------------------------------------------------------------------------------------ */

/* What an instrument sounds when C4 is written, and thus when C5 is written. Transpositions as listed in the
 * woodwind overview of orchestrationresources.com and in 'Ranges of Orchestral Instruments' of
 * orchestralibrary.com; the pitches follow from them. */
static void transposing_instruments_sound_as_tabled(void **state)
{
    (void)state;
    static const struct {
        const char *instrument;
        const char *written_c4;
        const char *written_c5;
        int semitones;
    } cases[] = {
        {"piccolo", "C5", "C6", 12},
        {"alto flute", "G3", "G4", -5},
        {"English horn", "F3", "F4", -7},
        {"clarinet in E flat", "Eb4", "Eb5", 3},
        {"clarinet in B flat", "Bb3", "Bb4", -2},
        {"clarinet in A", "A3", "A4", -3},
        {"basset horn", "F3", "F4", -7},
        {"bass clarinet", "Bb2", "Bb3", -14},
        {"contrabassoon", "C3", "C4", -12},
        {"alto saxophone", "Eb3", "Eb4", -9},
        {"tenor saxophone", "Bb2", "Bb3", -14},
        {"baritone saxophone", "Eb2", "Eb3", -21},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        sw_pitch interval = pitch(cases[i].written_c4);
        assert_pitch(sw_pitch_transpose(pitch("C5"), interval), cases[i].written_c5);
        assert_int_equal(sw_pitch_semitones(interval), cases[i].semitones);
    }
}

static sw_pitch moved(const char *p, const char *from, const char *to)
{
    return sw_pitch_transpose(pitch(p), sw_pitch_interval(pitch(from), pitch(to)));
}

static void transpose_command_agrees_with_the_manual(void **state)
{
    (void)state;
    /* NR 'Transpose': \transpose d e of a piece in D */
    assert_pitch(moved("D4", "D3", "E3"), "E4");
    assert_pitch(moved("F#4", "D3", "E3"), "G#4");
    assert_pitch(moved("A4", "D3", "E3"), "B4");
    /* NR 'Transpose': \transpose a c' from concert pitch to the part of the A clarinet */
    assert_pitch(moved("A3", "A3", "C4"), "C4");
    assert_pitch(moved("C#4", "A3", "C4"), "E4");
    /* NR 'Transpose': \transpose c bes, from the trumpet's part in B flat to concert pitch */
    assert_pitch(moved("E4", "C3", "Bb2"), "D4");
    /* NR 'Transpose': \transpose f c' from concert pitch to the horn in F */
    assert_pitch(moved("F3", "F3", "C4"), "C4");
    /* NR 'Transpose': c to cis and c to des, one sound and two spellings */
    assert_pitch(moved("C4", "C3", "C#3"), "C#4");
    assert_pitch(moved("C4", "C3", "Db3"), "Db4");
    assert_pitch(moved("E4", "C3", "C#3"), "E#4");
    assert_pitch(moved("E4", "C3", "Db3"), "F4");
    /* As the compiler's ly:pitch-transpose answers: the spelling follows the interval, to triple sharps too.
     */
    assert_pitch(moved("Bx3", "C3", "C#3"), "Bx#3");
}

static void intervals_and_transposition_are_inverse(void **state)
{
    (void)state;
    int count = 0;
    for (int8_t a = 0; a < 7 * 5; a++) {
        for (int8_t b = 0; b < 7 * 5; b++) {
            for (int octave = -4; octave <= 4; octave++) {
                sw_pitch from = {(int8_t)(a % 7), 0, (int8_t)(a / 7 * 2 - 4)};
                sw_pitch to = {(int8_t)(b % 7), (int8_t)octave, (int8_t)(b / 7 * 2 - 4)};
                sw_pitch interval = sw_pitch_interval(from, to);
                assert_true(sw_pitch_equal(sw_pitch_transpose(from, interval), to));
                assert_int_equal(sw_pitch_quarter_tones(interval),
                                 sw_pitch_quarter_tones(to) - sw_pitch_quarter_tones(from));
                count++;
            }
        }
    }
    assert_int_equal(count, 35 * 35 * 9);
}

/* ---- relative octaves
 * ----------------------------------------------------------------------------------------- */

typedef struct relative_note {
    const char *name; /* the octave of the name does not count */
    int marks;
    const char *result;
} relative_note;

static void assert_relative(const char *start, const relative_note *notes, size_t count)
{
    sw_pitch reference = pitch(start);
    for (size_t i = 0; i < count; i++) {
        sw_pitch p = sw_pitch_relative(reference, pitch(notes[i].name), notes[i].marks);
        assert_pitch(p, notes[i].result);
        assert_int_equal(sw_pitch_relative_marks(reference, p), notes[i].marks);
        reference = p;
    }
}

static void relative_octaves_agree_with_the_manual(void **state)
{
    (void)state;
    /* All from NR 'Relative octave entry'; no start pitch means f. */
    static const relative_note fourths[] = {{"C4", 0, "C3"}, {"F4", 0, "F3"}, {"B4", 0, "B3"},
                                            {"E4", 0, "E4"}, {"A4", 0, "A4"}, {"D4", 0, "D5"},
                                            {"G4", 0, "G5"}, {"C4", 0, "C6"}};
    assert_relative("F3", fourths, 8);
    static const relative_note scale[] = {{"C4", 0, "C3"}, {"D4", 0, "D3"}, {"E4", 0, "E3"}, {"F4", 0, "F3"},
                                          {"G4", 0, "G3"}, {"A4", 0, "A3"}, {"B4", 0, "B3"}, {"C4", 0, "C4"},
                                          {"D4", 0, "D4"}, {"E4", 0, "E4"}, {"F4", 0, "F4"}, {"G4", 0, "G4"}};
    assert_relative("F3", scale, 12);
    static const relative_note leaps[] = {{"C4", 2, "C5"},  {"G4", 0, "G4"}, {"C4", 0, "C5"},
                                          {"F4", -1, "F4"}, {"C4", 1, "C5"}, {"A4", -1, "A3"},
                                          {"E4", 2, "E5"},  {"C4", 0, "C5"}};
    assert_relative("F3", leaps, 8);
    /* Alterations do not count: the distance is one of names. */
    static const relative_note altered[] = {{"C4", 2, "C5"},   {"F#4", 0, "F#5"},  {"C4", 0, "C5"},
                                            {"Gb4", 0, "Gb4"}, {"B4", 0, "B4"},    {"Ex4", 0, "Ex5"},
                                            {"B4", 0, "B4"},   {"Fbb4", 0, "Fbb4"}};
    assert_relative("F3", altered, 8);
    /* \relative { gis''' } = \relative c''' { gis' } = \relative gis''' { gis } */
    static const relative_note third[] = {{"G#4", 3, "G#6"}};
    assert_relative("F3", third, 1);
    static const relative_note first[] = {{"G#4", 1, "G#6"}};
    assert_relative("C6", first, 1);
    static const relative_note same[] = {{"G#4", 0, "G#6"}};
    assert_relative("G#6", same, 1);
}

static void relative_marks_lead_back(void **state)
{
    (void)state;
    for (int a = 0; a < 7 * 9; a++) {
        for (int b = 0; b < 7 * 9; b++) {
            sw_pitch reference = {(int8_t)(a % 7), (int8_t)(a / 7 - 4), 0};
            sw_pitch p = {(int8_t)(b % 7), (int8_t)(b / 7 - 4), -2};
            int marks = sw_pitch_relative_marks(reference, p);
            assert_true(sw_pitch_equal(sw_pitch_relative(reference, p, marks), p));
            int steps =
                sw_pitch_staff_steps(sw_pitch_relative(reference, p, 0)) - sw_pitch_staff_steps(reference);
            assert_in_range(steps + 3, 0, 6); /* within a fourth */
        }
    }
}

/* ---- durations
 * ------------------------------------------------------------------------------------------------ */

static void durations_last_as_long_as_in_the_manual(void **state)
{
    (void)state;
    static const struct {
        sw_duration duration;
        const char *text;
        int64_t num;
        int64_t den;
    } cases[] = {
        {{2, 0, 1, 1}, "4", 1, 4},            /* NR 'Durations' */
        {{2, 1, 1, 1}, "4.", 3, 8},           /* NR 'Durations': dotted */
        {{2, 2, 1, 1}, "4..", 7, 16},         /* NR 'Durations': doubly dotted */
        {{-1, 0, 1, 1}, "\\breve", 2, 1},     /* NR 'Durations' */
        {{-2, 0, 1, 1}, "\\longa", 4, 1},     /* NR 'Durations' */
        {{-3, 0, 1, 1}, "\\maxima", 8, 1},    /* NR 'Durations' */
        {{-2, 1, 1, 1}, "\\longa.", 6, 1},    /* the compiler's ly:duration-length */
        {{10, 3, 1, 1}, "1024...", 15, 8192}, /* the compiler's ly:duration-length */
        {{2, 2, 3, 4}, "4..*3/4", 21, 64},    /* the compiler's ly:duration-length */
        {{2, 0, 2, 3}, "4*2/3", 1, 6},        /* NR 'Scaling durations' */
        {{0, 0, 4, 1}, "1*4", 4, 1},          /* NR 'Full measure rests': four bars of rest */
        {{0, 0, 13, 8}, "1*13/8", 13, 8},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        char text[SW_DURATION_TEXT];
        assert_string_equal(sw_duration_print(cases[i].duration, text), cases[i].text);
        assert_true(sw_rational_equal(sw_duration_length(cases[i].duration),
                                      sw_rational_make(cases[i].num, cases[i].den)));
    }
    assert_true(sw_duration_equal(sw_duration_quarter(), cases[0].duration));
    assert_false(sw_duration_equal(sw_duration_quarter(), cases[1].duration));
}

static void single_values_are_found(void **state)
{
    (void)state;
    sw_duration d;
    int count = 0;
    for (int8_t log = -3; log <= 10; log++) {
        for (uint8_t dots = 0; dots <= 3; dots++) {
            sw_duration written = {log, dots, 1, 1};
            assert_true(sw_duration_from_length(sw_duration_length(written), 3, &d));
            assert_true(sw_duration_equal(d, written));
            if (dots > 0) {
                assert_false(sw_duration_from_length(sw_duration_length(written), dots - 1, &d));
            }
            count++;
        }
    }
    assert_int_equal(count, 56);
    /* NR 'Tremolo repeats': 7 slices make a doubly dotted note, 9 make none. */
    assert_true(sw_duration_from_length(sw_rational_make(7, 16), 2, &d));
    assert_false(sw_duration_from_length(sw_rational_make(9, 16), 4, &d));
    assert_false(sw_duration_from_length(sw_rational_make(5, 8), 4, &d));
    assert_false(sw_duration_from_length(sw_rational_make(1, 12), 4, &d));
    assert_false(sw_duration_from_length(sw_rational_zero(), 4, &d));
    assert_false(sw_duration_from_length(sw_rational_make(-1, 4), 4, &d));
    assert_false(sw_duration_from_length(sw_rational_make(1, 0), 4, &d));
}

static void extreme_durations_are_printed_whole(void **state)
{
    (void)state;
    char text[SW_DURATION_TEXT];
    sw_duration d = {30, 24, INT32_MAX, INT32_MAX - 1};
    assert_string_equal(sw_duration_print(d, text),
                        "1073741824........................*2147483647/2147483646");
    assert_true(sw_rational_valid(sw_duration_head(d)));
    assert_false(sw_rational_valid(sw_duration_head((sw_duration){31, 0, 1, 1})));
    assert_false(sw_rational_valid(sw_duration_length((sw_duration){2, 0, 1, 0})));
    sw_duration_print((sw_duration){127, 255, INT32_MIN, INT32_MIN}, text); /* stays within its bytes */
    sw_duration_print((sw_duration){-128, 255, INT32_MIN, INT32_MIN}, text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(scientific_names_are_read),
        cmocka_unit_test(other_texts_are_refused),
        cmocka_unit_test(names_survive_reading_and_printing),
        cmocka_unit_test(quarter_tones_are_printed),
        cmocka_unit_test(heights_are_counted_from_middle_c),
        cmocka_unit_test(transposing_instruments_sound_as_tabled),
        cmocka_unit_test(transpose_command_agrees_with_the_manual),
        cmocka_unit_test(intervals_and_transposition_are_inverse),
        cmocka_unit_test(relative_octaves_agree_with_the_manual),
        cmocka_unit_test(relative_marks_lead_back),
        cmocka_unit_test(durations_last_as_long_as_in_the_manual),
        cmocka_unit_test(single_values_are_found),
        cmocka_unit_test(extreme_durations_are_printed_whole),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
