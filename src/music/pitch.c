#include <stdio.h>
#include <stdlib.h>

#include "stavewright/pitch.h"

static const int8_t step_quarters[7] = {0, 4, 8, 10, 14, 18, 22};
static const char step_letters[] = "CDEFGAB";

/* Far beyond what sounds, and far enough from where the numbers of a pitch end. */
enum { FARTHEST_OCTAVE = 100, FARTHEST_ALTERATION = 100 };

static int8_t within(int number, int farthest)
{
    return (int8_t)(number > farthest ? farthest : number < -farthest ? -farthest : number);
}

int8_t sw_pitch_octave(int octave)
{
    return within(octave, FARTHEST_OCTAVE);
}

int8_t sw_pitch_alteration(int quarter_tones)
{
    return within(quarter_tones, FARTHEST_ALTERATION);
}

int sw_pitch_quarter_tones(sw_pitch p)
{
    return p.octave * 24 + step_quarters[p.step] + p.alter;
}

int sw_pitch_semitones(sw_pitch p)
{
    return p.octave * 12 + step_quarters[p.step] / 2 + p.alter / 2;
}

int sw_pitch_midi(sw_pitch p)
{
    return 60 + sw_pitch_semitones(p);
}

int sw_pitch_staff_steps(sw_pitch p)
{
    return p.octave * 7 + p.step;
}

bool sw_pitch_equal(sw_pitch a, sw_pitch b)
{
    return a.step == b.step && a.octave == b.octave && a.alter == b.alter;
}

int sw_pitch_compare(sw_pitch a, sw_pitch b)
{
    int height = sw_pitch_quarter_tones(a) - sw_pitch_quarter_tones(b);
    return height != 0 ? height : sw_pitch_staff_steps(a) - sw_pitch_staff_steps(b);
}

/* The pitch `steps` staff steps from middle C that sounds `quarters` quarter tones above it. */
static sw_pitch from_steps(int steps, int quarters)
{
    int octave = steps >= 0 ? steps / 7 : -((6 - steps) / 7);
    sw_pitch p = {(int8_t)(steps - octave * 7), sw_pitch_octave(octave), 0};
    p.alter = sw_pitch_alteration(quarters - (octave * 24 + step_quarters[p.step]));
    return p;
}

sw_pitch sw_pitch_transpose(sw_pitch p, sw_pitch by)
{
    if (by.step == 0 && by.octave == 0 && by.alter == 0) {
        return p;
    }
    int quarters = sw_pitch_quarter_tones(p) + sw_pitch_quarter_tones(by);
    int steps = sw_pitch_staff_steps(p) + sw_pitch_staff_steps(by);
    return from_steps(steps, quarters);
}

sw_pitch sw_pitch_interval(sw_pitch from, sw_pitch to)
{
    return from_steps(sw_pitch_staff_steps(to) - sw_pitch_staff_steps(from),
                      sw_pitch_quarter_tones(to) - sw_pitch_quarter_tones(from));
}

sw_pitch sw_pitch_relative(sw_pitch reference, sw_pitch p, int octaves)
{
    int up = p.step - reference.step;
    int nearest = reference.octave + (up > 3 ? -1 : up < -3 ? 1 : 0);
    p.octave = sw_pitch_octave(nearest + octaves);
    return p;
}

int sw_pitch_relative_marks(sw_pitch reference, sw_pitch p)
{
    return p.octave - sw_pitch_relative(reference, p, 0).octave;
}

bool sw_pitch_from_scientific(sw_slice text, sw_pitch *pitch)
{
    if (text.length < 2) {
        return false;
    }
    sw_pitch p = {-1, 0, 0};
    for (int8_t step = 0; step < 7; step++) {
        if (text.data[0] == step_letters[step]) {
            p.step = step;
        }
    }
    if (p.step < 0) {
        return false;
    }
    size_t i = 1;
    bool sharp = false;
    bool flat = false;
    for (; i < text.length && i < 4; i++) {
        if (text.data[i] == '#' || text.data[i] == 'x') {
            p.alter = (int8_t)(p.alter + (text.data[i] == 'x' ? 4 : 2));
            sharp = true;
        } else if (text.data[i] == 'b') {
            p.alter = (int8_t)(p.alter - 2);
            flat = true;
        } else {
            break;
        }
    }
    if (sharp && flat) {
        return false;
    }
    bool negative = i < text.length && text.data[i] == '-';
    i += negative ? 1 : 0;
    if (i + 1 != text.length || text.data[i] < '0' || text.data[i] > '9') {
        return false;
    }
    int octave = text.data[i] - '0';
    p.octave = (int8_t)((negative ? -octave : octave) - 4);
    *pitch = p;
    return true;
}

char *sw_pitch_print(sw_pitch p, char text[SW_PITCH_TEXT])
{
    char alteration[8] = "?"; /* beyond quadruple: no spelling that anybody writes */
    if (p.alter >= -8 && p.alter <= 8) {
        size_t length = 0;
        int rest = p.alter;
        for (; rest <= -2; rest += 2) {
            alteration[length++] = 'b';
        }
        for (; rest >= 4; rest -= 4) {
            alteration[length++] = 'x';
        }
        for (; rest >= 2; rest -= 2) {
            alteration[length++] = '#';
        }
        if (rest != 0) {
            alteration[length++] = rest > 0 ? '+' : '-';
        }
        alteration[length] = '\0';
    }
    snprintf(text, SW_PITCH_TEXT, "%c%s%d", step_letters[p.step], alteration, p.octave + 4);
    return text;
}
