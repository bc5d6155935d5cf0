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
        bool dyadic = (length.den & (length.den - 1)) == 0; /* otherwise no row of plain values says it */
        if (dyadic && longest_value(metre, position, length, &value)) {
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
