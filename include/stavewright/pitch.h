/* Spelled pitches and the arithmetic of intervals. */
#ifndef STAVEWRIGHT_PITCH_H
#define STAVEWRIGHT_PITCH_H

#include <stdbool.h>
#include <stdint.h>

#include "stavewright/base.h"

/* A spelled pitch, and by its distance from middle C also an interval (as the language itself does).
 * step: 0..6 = c..b; octave: 0 begins at middle C (c' in LilyPond, C4 in scientific notation);
 * alter: quarter tones, -2 flat, 2 sharp. */
typedef struct sw_pitch {
    int8_t step;
    int8_t octave;
    int8_t alter;
} sw_pitch;

/* An octave, or alteration, that a pitch can hold: pitches more than a hundred octaves away, which nothing
 * plays, are held there. */
int8_t sw_pitch_octave(int octave);
int8_t sw_pitch_alteration(int quarter_tones);
/* Semitones above middle C; quarter tones are rounded towards the natural. */
int sw_pitch_semitones(sw_pitch p);
/* Quarter tones above middle C, exact. */
int sw_pitch_quarter_tones(sw_pitch p);
/* MIDI key number: middle C is 60. */
int sw_pitch_midi(sw_pitch p);
/* Steps of the staff above middle C, whatever the alteration. */
int sw_pitch_staff_steps(sw_pitch p);
bool sw_pitch_equal(sw_pitch a, sw_pitch b);
/* Order by height, then by spelling. */
int sw_pitch_compare(sw_pitch a, sw_pitch b);
/* p moved by the interval from middle C to `by`. The spelling follows the interval even where that needs a
 * triple sharp or flat, as the compiler's does. */
sw_pitch sw_pitch_transpose(sw_pitch p, sw_pitch by);
/* The interval that leads from `from` to `to`, to be used with sw_pitch_transpose. */
sw_pitch sw_pitch_interval(sw_pitch from, sw_pitch to);
/* The pitch with p's name and alteration that lies within a fourth of `reference` (counted in steps, whatever
 * the alterations), moved by `octaves`: the rule of \relative. */
sw_pitch sw_pitch_relative(sw_pitch reference, sw_pitch p, int octaves);
/* The octave marks that \relative needs to reach p from `reference` (0 = none, 1 = ', -1 = ,). */
int sw_pitch_relative_marks(sw_pitch reference, sw_pitch p);
/* Reads scientific notation: letter, accidentals (# x b, or s/f words are not known), octave: "C4", "Bb1",
 * "F#6", "Cb1". False when the text is not such a pitch. */
bool sw_pitch_from_scientific(sw_slice text, sw_pitch *pitch);
/* Writes scientific notation ("Bb3"); quarter tones as "+" (quarter sharp) and "-" (quarter flat). Returns
 * `text`. */
enum { SW_PITCH_TEXT = 16 };
char *sw_pitch_print(sw_pitch p, char text[SW_PITCH_TEXT]);

#endif
