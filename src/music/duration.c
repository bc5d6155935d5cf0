#include <stdio.h>
#include <string.h>

#include "stavewright/duration.h"

sw_duration sw_duration_quarter(void)
{
    return (sw_duration){.log = 2, .dots = 0, .factor_num = 1, .factor_den = 1};
}

sw_rational sw_duration_head(sw_duration d)
{
    /* n dots: the value times (2^(n+1) - 1) / 2^n */
    if (d.log < -16 || d.log > 30 || d.dots > 24) {
        return (sw_rational){0, 0};
    }
    int64_t num = ((int64_t)1 << (d.dots + 1)) - 1;
    int64_t den = (int64_t)1 << d.dots;
    if (d.log < 0) {
        num <<= -d.log;
    } else {
        den <<= d.log;
    }
    return sw_rational_make(num, den);
}

sw_rational sw_duration_length(sw_duration d)
{
    sw_rational head = sw_duration_head(d);
    if (d.factor_num == 1 && d.factor_den == 1) {
        return head;
    }
    return sw_rational_mul(head, sw_rational_make(d.factor_num, d.factor_den));
}

bool sw_duration_from_length(sw_rational length, int dots, sw_duration *duration)
{
    for (int n = 0; n <= dots; n++) {
        for (int log = -3; log <= 10; log++) {
            sw_duration d = {(int8_t)log, (uint8_t)n, 1, 1};
            if (sw_rational_equal(sw_duration_head(d), length)) {
                *duration = d;
                return true;
            }
        }
    }
    return false;
}

sw_duration sw_duration_of(sw_rational length)
{
    sw_duration value;
    if (!sw_duration_from_length(length, 1, &value)) {
        value = (sw_duration){0, 0, (int32_t)length.num, (int32_t)length.den};
    }
    return value;
}

bool sw_duration_equal(sw_duration a, sw_duration b)
{
    return a.log == b.log && a.dots == b.dots && a.factor_num == b.factor_num && a.factor_den == b.factor_den;
}

char *sw_duration_print(sw_duration d, char text[SW_DURATION_TEXT])
{
    static const char *const long_values[] = {"\\maxima", "\\longa", "\\breve"};
    size_t length = 0;
    if (d.log < 0 && d.log >= -3) {
        length = (size_t)snprintf(text, SW_DURATION_TEXT, "%s", long_values[d.log + 3]);
    } else {
        length =
            (size_t)snprintf(text, SW_DURATION_TEXT, "%lld", 1LL << (d.log < 0 || d.log > 30 ? 0 : d.log));
    }
    for (int n = 0; n < d.dots && n < 24; n++) {
        text[length++] = '.';
    }
    text[length] = '\0';
    if (d.factor_den != 1) {
        snprintf(text + length, SW_DURATION_TEXT - length, "*%d/%d", d.factor_num, d.factor_den);
    } else if (d.factor_num != 1) {
        snprintf(text + length, SW_DURATION_TEXT - length, "*%d", d.factor_num);
    }
    return text;
}
