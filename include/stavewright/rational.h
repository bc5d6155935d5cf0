/* Exact fractions: musical time in whole notes. */
#ifndef STAVEWRIGHT_RATIONAL_H
#define STAVEWRIGHT_RATIONAL_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* A fraction in lowest terms with den > 0. den == 0 marks a value that 64 bits cannot hold (or a division by
 * zero): every result computed from such a value is marked too, so one test at the end is enough. */
typedef struct sw_rational {
    int64_t num;
    int64_t den;
} sw_rational;

/* num/den in lowest terms; marked as invalid when den is 0. */
sw_rational sw_rational_make(int64_t num, int64_t den);
sw_rational sw_rational_zero(void);
bool sw_rational_valid(sw_rational a);
bool sw_rational_is_zero(sw_rational a);
/* Whether halving whole numbers leads to it: such times are said in plain note values. */
bool sw_rational_is_dyadic(sw_rational a);
sw_rational sw_rational_add(sw_rational a, sw_rational b);
sw_rational sw_rational_sub(sw_rational a, sw_rational b);
sw_rational sw_rational_mul(sw_rational a, sw_rational b);
sw_rational sw_rational_div(sw_rational a, sw_rational b);
/* What sw_rational_compare does with values of different denominators. */
int sw_rational_compare_scaled(sw_rational a, sw_rational b);
/* -1, 0 or 1, exact for all valid values; an invalid value is greater than every valid one. */
static inline int sw_rational_compare(sw_rational a, sw_rational b)
{
    return a.den == b.den ? (a.num > b.num) - (a.num < b.num) : sw_rational_compare_scaled(a, b);
}
static inline bool sw_rational_equal(sw_rational a, sw_rational b)
{
    return a.num == b.num && a.den == b.den;
}
sw_rational sw_rational_max(sw_rational a, sw_rational b);
sw_rational sw_rational_min(sw_rational a, sw_rational b);
/* The largest whole number not above a (0 for an invalid value). */
int64_t sw_rational_floor(sw_rational a);
double sw_rational_to_double(sw_rational a);
/* Writes "3", "-1/8" or "?" (invalid), NUL-terminated; needs at most SW_RATIONAL_TEXT bytes. Returns `text`.
 */
enum { SW_RATIONAL_TEXT = 44 };
char *sw_rational_print(sw_rational a, char text[SW_RATIONAL_TEXT]);

#endif
