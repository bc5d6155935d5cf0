#include <inttypes.h>
#include <stdio.h>

#include "stavewright/rational.h"

static const sw_rational invalid = {0, 0};

__extension__ typedef __int128 wide; /* holds every product of two 64-bit numbers, and sums of two such */

static int64_t gcd(int64_t a, int64_t b)
{
    uint64_t x = a < 0 ? 0 - (uint64_t)a : (uint64_t)a;
    uint64_t y = b < 0 ? 0 - (uint64_t)b : (uint64_t)b;
    if (y != 0 && (y & (y - 1)) == 0) { /* the usual case needs no division: y is a power of two */
        uint64_t twos = x & (0 - x);
        return x == 0 || twos > y ? (int64_t)y : (int64_t)twos;
    }
    while (y != 0) {
        uint64_t rest = x % y;
        x = y;
        y = rest;
    }
    return x > INT64_MAX ? 1 : (int64_t)x;
}

sw_rational sw_rational_make(int64_t num, int64_t den)
{
    if (den == 0 || num == INT64_MIN || den == INT64_MIN) {
        return invalid;
    }
    int64_t divisor = gcd(num, den);
    if (divisor == 1 && den > 0) {
        return (sw_rational){num, den};
    }
    if (den < 0) {
        divisor = -divisor;
    }
    return (sw_rational){num / divisor, den / divisor};
}

sw_rational sw_rational_zero(void)
{
    return (sw_rational){0, 1};
}

bool sw_rational_valid(sw_rational a)
{
    return a.den != 0;
}

bool sw_rational_is_zero(sw_rational a)
{
    return a.num == 0 && a.den != 0;
}

bool sw_rational_is_dyadic(sw_rational a)
{
    return (a.den & (a.den - 1)) == 0;
}

/* A fraction in lowest terms, if 64 bits can hold it. */
static sw_rational narrow(wide num, wide den)
{
    if (num > INT64_MAX || num < -INT64_MAX || den > INT64_MAX) {
        return invalid;
    }
    return (sw_rational){(int64_t)num, (int64_t)den};
}

/* Whether products with another such one, and the sum of two products, stay within 64 bits: as good as
 * always, and much faster than what holds everything. */
static bool is_short(sw_rational a)
{
    return a.num < INT32_MAX && a.num > -INT32_MAX && a.den < INT32_MAX;
}

/* The sum of two short fractions of halved whole numbers, which note values are but for tuplets. */
static sw_rational add_dyadic(sw_rational a, sw_rational b, int64_t sign)
{
    int64_t den = a.den > b.den ? a.den : b.den;
    int64_t num = a.num * (den >> __builtin_ctzll((uint64_t)a.den)) +
                  sign * b.num * (den >> __builtin_ctzll((uint64_t)b.den));
    uint64_t twos = num == 0 ? (uint64_t)den : (uint64_t)num & (0 - (uint64_t)num);
    int shared = __builtin_ctzll(twos < (uint64_t)den ? twos : (uint64_t)den);
    return (sw_rational){num / ((int64_t)1 << shared), den >> shared};
}

static sw_rational add_scaled(sw_rational a, sw_rational b, int64_t sign)
{
    if (a.den == 0 || b.den == 0) {
        return invalid;
    }
    int64_t sum;
    if (a.den == b.den && !__builtin_add_overflow(a.num, sign * b.num, &sum) && sum != INT64_MIN) {
        return sw_rational_make(sum, a.den); /* the usual case: no common denominator to find */
    }
    if (is_short(a) && is_short(b) && sw_rational_is_dyadic(a) && sw_rational_is_dyadic(b)) {
        return add_dyadic(a, b, sign);
    }
    int64_t common = gcd(a.den, b.den);
    wide num = (wide)a.num * (b.den / common) + (wide)(sign * b.num) * (a.den / common);
    wide den = (wide)a.den * (b.den / common);
    /* What numerator and denominator still share divides `common`, so that it can be cancelled before the
     * result has to fit: intermediate values are no reason to give up. */
    int64_t shared = gcd((int64_t)(num % common), common);
    return narrow(num / shared, den / shared);
}

sw_rational sw_rational_add(sw_rational a, sw_rational b)
{
    return add_scaled(a, b, 1);
}

sw_rational sw_rational_sub(sw_rational a, sw_rational b)
{
    return add_scaled(a, b, -1);
}

sw_rational sw_rational_mul(sw_rational a, sw_rational b)
{
    if (a.den == 0 || b.den == 0) {
        return invalid;
    }
    /* Cross-cancel first, so that only results that do not fit overflow. */
    int64_t first = gcd(a.num, b.den);
    int64_t second = gcd(b.num, a.den);
    return narrow((wide)(a.num / first) * (b.num / second), (wide)(a.den / second) * (b.den / first));
}

sw_rational sw_rational_div(sw_rational a, sw_rational b)
{
    return sw_rational_mul(a, sw_rational_make(b.den, b.num));
}

int sw_rational_compare_scaled(sw_rational a, sw_rational b)
{
    if (a.den == 0 || b.den == 0) {
        return (a.den == 0) - (b.den == 0);
    }
    wide left = (wide)a.num * b.den;
    wide right = (wide)b.num * a.den;
    return (left > right) - (left < right);
}

sw_rational sw_rational_max(sw_rational a, sw_rational b)
{
    return sw_rational_compare(a, b) >= 0 ? a : b;
}

sw_rational sw_rational_min(sw_rational a, sw_rational b)
{
    if (a.den == 0 || b.den == 0) {
        return invalid;
    }
    return sw_rational_compare(a, b) <= 0 ? a : b;
}

int64_t sw_rational_floor(sw_rational a)
{
    if (a.den == 0) {
        return 0;
    }
    int64_t quotient = a.num / a.den;
    return a.num % a.den < 0 ? quotient - 1 : quotient;
}

double sw_rational_to_double(sw_rational a)
{
    return a.den == 0 ? 0.0 : (double)a.num / (double)a.den;
}

char *sw_rational_print(sw_rational a, char text[SW_RATIONAL_TEXT])
{
    if (a.den == 0) {
        snprintf(text, SW_RATIONAL_TEXT, "?");
    } else if (a.den == 1) {
        snprintf(text, SW_RATIONAL_TEXT, "%" PRId64, a.num);
    } else {
        snprintf(text, SW_RATIONAL_TEXT, "%" PRId64 "/%" PRId64, a.num, a.den);
    }
    return text;
}
