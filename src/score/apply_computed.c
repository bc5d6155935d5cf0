/* Functions that compute notes from notes. The result stands under a node UNCERTAIN with SW_MUSIC_NEW: its
 * notes are known, but they are not those of the text. */
#include <stdlib.h>
#include <string.h>

#include "score/apply.h"
#include "score/computed.h"

/* What the function works on: a copy of its own. */
static uint32_t own_argument(const sw_apply_call *c)
{
    uint32_t music = sw_apply_last(c);
    return music == SW_NO_INDEX ? music : sw_music_own(c->reader, music);
}

static sw_value computed(const sw_apply_call *c, uint32_t music)
{
    sw_apply_passed_on(c, music);
    uint32_t around = sw_music_wrap(c->reader, SW_MUSIC_UNCERTAIN, c->where, music, true);
    sw_music_at(c->reader, around)->flags |= SW_MUSIC_NEW;
    return sw_apply_music(c, around);
}

static sw_value uncertain(const sw_apply_call *c)
{
    sw_apply_unresolved(c, "its effect on the notes is not computed; they are read as they are written");
    return sw_apply_music(c, sw_apply_wrap(c, SW_MUSIC_UNCERTAIN, true));
}

/* A whole number among the arguments. */
static bool whole(const sw_value *value, int *number)
{
    bool fits = value->kind == SW_VALUE_NUMBER && value->rational.den == 1 && value->rational.num > -100 &&
                value->rational.num < 100;
    *number = fits ? (int)value->rational.num : 0;
    return fits;
}

/* ---- chords ---- */

static sw_value move_note(const sw_apply_call *c)
{
    int n;
    uint32_t music = own_argument(c);
    if (!whole(&c->arguments[0], &n) || music == SW_NO_INDEX) {
        return uncertain(c);
    }
    bool up = strcmp(c->command->name, "raiseNote") == 0;
    sw_move_chord_notes(c->reader, music, up ? n - 1 : -n, up);
    return computed(c, music);
}

static sw_value invert_chords(const sw_apply_call *c)
{
    int n;
    uint32_t music = own_argument(c);
    if (!whole(&c->arguments[0], &n) || music == SW_NO_INDEX) {
        return uncertain(c);
    }
    for (; n > 0; n--) {
        sw_move_chord_notes(c->reader, music, 0, true);
    }
    for (; n < 0; n++) {
        sw_move_chord_notes(c->reader, music, -1, false);
    }
    return computed(c, music);
}

/* ---- pitches ---- */

typedef struct mirror {
    sw_pitch around;
    sw_pitch to;
} mirror;

static sw_pitch mirrored(sw_pitch pitch, const void *data)
{
    const mirror *m = data;
    return sw_pitch_transpose(m->to, sw_pitch_interval(pitch, m->around));
}

static bool two_pitches(const sw_apply_call *c)
{
    return c->arguments[0].kind == SW_VALUE_PITCH && c->arguments[1].kind == SW_VALUE_PITCH;
}

static sw_value inversion(const sw_apply_call *c)
{
    uint32_t music = own_argument(c);
    if (!two_pitches(c) || music == SW_NO_INDEX) {
        return uncertain(c);
    }
    mirror m = {c->arguments[0].pitch, c->arguments[1].pitch};
    sw_change_pitches(c->reader, music, mirrored, &m);
    return computed(c, music);
}

static sw_value modal(const sw_apply_call *c)
{
    uint32_t music = own_argument(c);
    if (!two_pitches(c) || c->arguments[2].kind != SW_VALUE_MUSIC || c->arguments[2].music == SW_NO_INDEX ||
        music == SW_NO_INDEX) {
        return uncertain(c);
    }
    sw_scale scale = {0};
    sw_scale_read(c->reader, sw_music_own(c->reader, c->arguments[2].music), &scale);
    sw_modal m;
    bool inverted = strcmp(c->command->name, "modalInversion") == 0;
    if (sw_modal_make(&m, &scale, c->arguments[0].pitch, c->arguments[1].pitch, inverted)) {
        sw_change_pitches(c->reader, music, sw_modal_change, &m);
    } /* otherwise the compiler warns, and all notes stay where they are */
    free(scale.steps);
    return computed(c, music);
}

/* The partials of a string, as intervals above the open one (manual, 'Indicating harmonics and dampened
 * notes'), and the frets where they are touched, in tenths. */
static const struct partial {
    sw_pitch above;
    int frets[3];
} partials[] = {
    {{0, 0, 0}, {0, 0, 0}},    {{0, 1, 0}, {120, 0, 0}},   {{4, 1, 0}, {70, 190, 0}},
    {{0, 2, 0}, {50, 240, 0}}, {{2, 2, 0}, {40, 90, 160}}, {{4, 2, 0}, {30, 0, 0}},
    {{6, 2, -2}, {27, 0, 0}},  {{0, 3, 0}, {23, 0, 0}},    {{1, 3, 0}, {20, 0, 0}},
};

static sw_pitch raised(sw_pitch pitch, const void *data)
{
    const sw_pitch *by = data;
    return sw_pitch_transpose(pitch, *by);
}

enum { PARTIALS = sizeof partials / sizeof partials[0] };

/* What is written is the open string, what sounds the partial. The note keeps its own place. */
static sw_value sounding(const sw_apply_call *c, uint32_t music, size_t partial)
{
    sw_change_pitches(c->reader, music, raised, &partials[partial].above);
    uint32_t around = sw_music_wrap(c->reader, SW_MUSIC_UNCERTAIN, c->where, music, true);
    sw_music_at(c->reader, around)->flags |= SW_MUSIC_NEW;
    return sw_apply_music(c, around);
}

static bool is_number(const sw_value *value)
{
    return value->kind == SW_VALUE_NUMBER && value->rational.den > 0;
}

/* 1/3 of the string: the third partial. */
static sw_value harmonic_by_ratio(const sw_apply_call *c)
{
    uint32_t music = own_argument(c);
    const sw_value *ratio = &c->arguments[0];
    if (!is_number(ratio) || ratio->rational.den > PARTIALS || music == SW_NO_INDEX) {
        return uncertain(c);
    }
    return sounding(c, music, (size_t)ratio->rational.den - 1);
}

/* Where no partial is touched, the open string sounds. */
static size_t partial_at_fret(sw_rational fret)
{
    sw_rational tenths = sw_rational_mul(fret, sw_rational_make(10, 1));
    for (size_t i = PARTIALS; i-- > 1 && tenths.den == 1 && tenths.num != 0;) {
        for (size_t f = 0; f < sizeof partials[i].frets / sizeof partials[i].frets[0]; f++) {
            if (partials[i].frets[f] == tenths.num) {
                return i;
            }
        }
    }
    return 0;
}

static sw_value harmonic_by_fret(const sw_apply_call *c)
{
    uint32_t music = own_argument(c);
    if (!is_number(&c->arguments[0]) || music == SW_NO_INDEX) {
        return uncertain(c);
    }
    return sounding(c, music, partial_at_fret(c->arguments[0].rational));
}

/* ---- order and time ---- */

static sw_value retrograde(const sw_apply_call *c)
{
    uint32_t music = own_argument(c);
    if (music == SW_NO_INDEX) {
        return uncertain(c);
    }
    sw_retrograde(c->reader, music);
    return computed(c, music);
}

static sw_value shifted(const sw_apply_call *c, int shift, int dots)
{
    uint32_t music = own_argument(c);
    if (music == SW_NO_INDEX) {
        return uncertain(c);
    }
    sw_shift_durations(c->reader, music, shift, dots);
    return computed(c, music);
}

static sw_value shift_durations(const sw_apply_call *c)
{
    int shift;
    int dots;
    bool known = whole(&c->arguments[0], &shift) && whole(&c->arguments[1], &dots);
    return known ? shifted(c, shift, dots) : uncertain(c);
}

static sw_value augmentum(const sw_apply_call *c)
{
    return shifted(c, 0, 1);
}

static sw_value feather_durations(const sw_apply_call *c)
{
    sw_rational factor = c->arguments[0].rational;
    uint32_t music = own_argument(c);
    if (c->arguments[0].kind != SW_VALUE_NUMBER || factor.num <= 0 || factor.den <= 0 ||
        music == SW_NO_INDEX || !sw_feather_durations(c->reader, music, factor)) {
        return uncertain(c);
    }
    return computed(c, music);
}

const sw_apply_row sw_apply_computed[] = {
    {"applyMusic", uncertain},
    {"augmentum", augmentum},
    {"dropNote", move_note},
    {"featherDurations", feather_durations},
    {"harmonicByFret", harmonic_by_fret},
    {"harmonicByRatio", harmonic_by_ratio},
    {"inversion", inversion},
    {"invertChords", invert_chords},
    {"modalInversion", modal},
    {"modalTranspose", modal},
    {"musicMap", uncertain},
    {"raiseNote", move_note},
    {"reduceChords", uncertain},
    {"retrograde", retrograde},
    {"shiftDurations", shift_durations},
};

const size_t sw_apply_computed_count = sizeof sw_apply_computed / sizeof sw_apply_computed[0];
