#include "stavewright/metre.h"

bool sw_metre_is_compound(sw_metre metre)
{
    return metre.beats > 3 && metre.beats % 3 == 0 && metre.beat_value >= 8;
}

sw_rational sw_metre_beat(sw_metre metre)
{
    return sw_rational_make(sw_metre_is_compound(metre) ? 3 : 1, metre.beat_value);
}

static bool is_multiple(sw_rational a, sw_rational of)
{
    sw_rational quotient = sw_rational_div(a, of);
    return quotient.den == 1;
}

/* The longest value that may begin at `position` and is no longer than `length`; false when there is none
 * down to 1/128. */
static bool longest_value(sw_metre metre, sw_rational position, sw_rational length, sw_duration *value)
{
    bool compound = sw_metre_is_compound(metre);
    sw_rational beat = sw_metre_beat(metre);
    sw_rational bar = sw_rational_make(metre.beats, metre.beat_value);
    for (int log = -1; log <= 7; log++) {
        for (int dots = 1; dots >= 0; dots--) {
            sw_duration d = {(int8_t)log, (uint8_t)dots, 1, 1};
            sw_rational l = sw_duration_length(d);
            if (sw_rational_compare(l, length) > 0) {
                continue;
            }
            if (dots > 0 && !(compound && is_multiple(l, beat))) {
                continue; /* dotted rests only for whole compound beats */
            }
            if (compound && dots == 0 && sw_rational_compare(l, beat) > 0) {
                continue; /* 1/2 in 12/8 is no number of beats */
            }
            sw_rational within = position;
            if (compound && dots == 0) { /* inside a dotted beat: count from the beat */
                sw_rational beats = sw_rational_make(sw_rational_floor(sw_rational_div(position, beat)), 1);
                within = sw_rational_sub(position, sw_rational_mul(beats, beat));
                if (sw_rational_compare(sw_rational_add(within, l), beat) > 0) {
                    continue;
                }
            }
            if (!is_multiple(within, l)) {
                continue;
            }
            if (metre.beats == 3 && !compound && sw_rational_compare(l, beat) > 0 &&
                sw_rational_compare(l, bar) < 0 && sw_rational_compare(length, bar) < 0 &&
                position.num != 0) {
                continue;
            }
            *value = d;
            return true;
        }
    }
    return false;
}

size_t sw_metre_rests(sw_metre metre, sw_rational position, sw_rational length, sw_duration *values,
                      size_t most)
{
    size_t count = 0;
    while (length.num > 0) {
        sw_duration value;
        sw_rational taken = length;
        if (sw_rational_is_dyadic(length) && longest_value(metre, position, length, &value)) {
            taken = sw_duration_length(value);
        } else { /* a quarter, stretched or squeezed */
            sw_rational factor = sw_rational_mul(length, sw_rational_make(4, 1));
            if (!sw_rational_valid(factor) || factor.num > INT32_MAX || factor.den > INT32_MAX) {
                return count;
            }
            value = (sw_duration){2, 0, (int32_t)factor.num, (int32_t)factor.den};
        }
        if (count < most) {
            values[count] = value;
        }
        count++;
        position = sw_rational_add(position, taken);
        length = sw_rational_sub(length, taken);
    }
    return count;
}

/* ---- notes ---- */

/* The first place strictly inside a note where it must not go on unseen; false when there is none. In metres
 * of an even number of beats that is the middle of the bar, in compound ones each beat. */
static bool first_boundary(sw_metre metre, sw_rational position, sw_rational end, sw_rational *boundary)
{
    sw_rational bar = sw_rational_make(metre.beats, metre.beat_value);
    if (position.num == 0 || sw_rational_compare(end, bar) == 0) {
        return false; /* from or up to a bar line */
    }
    sw_rational step = sw_rational_div(bar, sw_rational_make(2, 1));
    if (sw_metre_is_compound(metre)) {
        step = sw_metre_beat(metre);
    } else if (metre.beats % 2 != 0 || metre.beats < 4) {
        return false;
    }
    sw_rational steps = sw_rational_make(sw_rational_floor(sw_rational_div(position, step)) + 1, 1);
    *boundary = sw_rational_mul(steps, step);
    bool whole_beats = sw_metre_is_compound(metre) && is_multiple(position, step) && is_multiple(end, step);
    return sw_rational_compare(*boundary, end) < 0 && !whole_beats;
}

/* Whether one note value may stand at a position. */
static bool may_stand(sw_metre metre, sw_rational position, sw_duration value)
{
    sw_rational length = sw_duration_length(value);
    if (sw_metre_is_compound(metre)) {
        sw_rational beat = sw_metre_beat(metre);
        return sw_rational_compare(length, beat) <= 0 ||
               (is_multiple(length, beat) && is_multiple(position, beat));
    }
    int8_t log = (int8_t)(value.log - (value.dots > 0)); /* a dotted value begins where twice its head may */
    return is_multiple(position, sw_duration_length((sw_duration){log, 0, 1, 1}));
}

/* The longest value that is no longer than a length and may stand at a position. */
static bool longest_note(sw_metre metre, sw_rational position, sw_rational length, sw_duration *value)
{
    for (int log = -1; log <= 10; log++) {
        for (int dots = 1; dots >= 0; dots--) {
            sw_duration d = {(int8_t)log, (uint8_t)dots, 1, 1};
            if (sw_rational_compare(sw_duration_length(d), length) <= 0 && may_stand(metre, position, d)) {
                *value = d;
                return true;
            }
        }
    }
    return false;
}

/* Whether one note value says all of a length: also off its own beat by half of itself (an eighth, a quarter,
 * an eighth), and before a beat that it ends with. */
static bool one_value(sw_metre metre, sw_rational position, sw_rational length, sw_duration *value)
{
    if (!sw_duration_from_length(length, 1, value)) {
        return false;
    }
    if (sw_metre_is_compound(metre)) {
        return may_stand(metre, position, *value);
    }
    sw_rational half = sw_duration_length((sw_duration){(int8_t)(value->log + 1), 0, 1, 1});
    return is_multiple(position, half) || is_multiple(sw_rational_add(position, length), half);
}

size_t sw_metre_notes(sw_metre metre, sw_rational position, sw_rational length, sw_duration *values,
                      size_t most)
{
    size_t count = 0;
    while (length.num > 0) {
        sw_rational part = length;
        sw_rational boundary;
        if (first_boundary(metre, position, sw_rational_add(position, length), &boundary)) {
            part = sw_rational_sub(boundary, position);
        }
        sw_duration value;
        if (!one_value(metre, position, part, &value) && !longest_note(metre, position, part, &value)) {
            return 0;
        }
        if (count < most) {
            values[count] = value;
        }
        count++;
        position = sw_rational_add(position, sw_duration_length(value));
        length = sw_rational_sub(length, sw_duration_length(value));
    }
    return count;
}

size_t sw_metre_free(sw_rational length, sw_duration *values, size_t most)
{
    size_t count = 0;
    while (length.num > 0) {
        sw_duration value;
        if (!sw_duration_from_length(length, 1, &value)) {
            int log = -1;
            while (log <= 10 &&
                   sw_rational_compare(sw_duration_length((sw_duration){(int8_t)log, 0, 1, 1}), length) > 0) {
                log++;
            }
            if (log > 10) {
                return 0;
            }
            value = (sw_duration){(int8_t)log, 0, 1, 1};
        }
        if (count < most) {
            values[count] = value;
        }
        count++;
        length = sw_rational_sub(length, sw_duration_length(value));
    }
    return count;
}
