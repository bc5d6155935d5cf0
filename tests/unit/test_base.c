/* Arena, buffer, slices, interning, exact fractions. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/base.h"
#include "stavewright/rational.h"

/* ---- random numbers, the same on every machine ------------------------------------------------------ */

static uint64_t random_state;

static uint64_t next_random(void)
{
    uint64_t x = random_state += UINT64_C(0x9E3779B97F4A7C15); /* splitmix64 */
    x = (x ^ x >> 30) * UINT64_C(0xBF58476D1CE4E5B9);
    x = (x ^ x >> 27) * UINT64_C(0x94D049BB133111EB);
    return x ^ x >> 31;
}

static void seed_random(void)
{
    const char *given = getenv("TEST_SEED");
    random_state = given == NULL ? 20240607 : strtoull(given, NULL, 10);
    printf("TEST_SEED=%llu\n", (unsigned long long)random_state);
}

/* ---- memory ----------------------------------------------------------------------------------------- */

static void arena_gives_aligned_zeroed_memory(void **state)
{
    (void)state;
    sw_arena *arena = sw_arena_new();
    for (size_t size = 0; size < 400; size++) {
        unsigned char *memory = sw_arena_alloc(arena, size * 7);
        assert_int_equal((uintptr_t)memory % _Alignof(max_align_t), 0);
        for (size_t i = 0; i < size * 7; i++) {
            assert_int_equal(memory[i], 0);
        }
        memset(memory, 0xA5, size * 7);
    }
    unsigned char *large = sw_arena_alloc(arena, 1000000);
    memset(large, 1, 1000000);
    assert_true(sw_arena_size(arena) >= 1000000);
    sw_arena_free(arena);
    sw_arena_free(NULL);
}

static void arena_copies_strings(void **state)
{
    (void)state;
    sw_arena *arena = sw_arena_new();
    assert_string_equal(sw_arena_copy(arena, (sw_slice){"abcdef", 3}), "abc");
    assert_string_equal(sw_arena_copy(arena, (sw_slice){NULL, 0}), "");
    assert_string_equal(sw_arena_format(arena, "%d:%s", 12, "x"), "12:x");
    sw_arena_free(arena);
}

static void growth_keeps_elements(void **state)
{
    (void)state;
    int *items = NULL;
    size_t capacity = 0;
    for (int i = 0; i < 10000; i++) {
        items = sw_grow(items, (size_t)i, &capacity, sizeof *items);
        items[i] = i;
    }
    for (int i = 0; i < 10000; i++) {
        assert_int_equal(items[i], i);
    }
    free(items);
}

/* ---- slices and buffers ----------------------------------------------------------------------------- */

static void slices_compare(void **state)
{
    (void)state;
    sw_slice empty = sw_slice_of(NULL);
    assert_true(sw_slice_equal(empty, sw_slice_of("")));
    assert_true(sw_slice_is(sw_slice_of("cis"), "cis"));
    assert_false(sw_slice_is(sw_slice_of("ciss"), "cis"));
    assert_true(sw_slice_starts(sw_slice_of("cis"), "ci"));
    assert_true(sw_slice_starts(empty, ""));
    assert_false(sw_slice_starts(empty, "c"));
    assert_true(sw_slice_ends(sw_slice_of("cis"), "is"));
    assert_false(sw_slice_ends(sw_slice_of("is"), "cis"));
    assert_true(sw_slice_compare(sw_slice_of("c"), sw_slice_of("cis")) < 0);
    assert_true(sw_slice_compare(sw_slice_of("d"), sw_slice_of("cis")) > 0);
    assert_int_equal(sw_slice_compare(sw_slice_of("d"), sw_slice_of("d")), 0);
    assert_true(sw_slice_compare(sw_slice_of("\xC3"), sw_slice_of("z")) > 0);
    assert_true(sw_slice_compare(empty, sw_slice_of("z")) < 0);
}

static void buffer_is_always_terminated(void **state)
{
    (void)state;
    sw_buffer buffer = {0};
    assert_string_equal(sw_buffer_text(&buffer), "");
    assert_int_equal(sw_buffer_slice(&buffer).length, 0);
    sw_buffer_append(&buffer, (sw_slice){NULL, 0});
    assert_non_null(buffer.data);
    sw_buffer_string(&buffer, "c4");
    sw_buffer_char(&buffer, ' ');
    sw_buffer_format(&buffer, "%s%d", "d", 8);
    assert_string_equal(sw_buffer_text(&buffer), "c4 d8");
    sw_buffer_append(&buffer, (sw_slice){"\0x", 2});
    assert_int_equal(buffer.length, 7);
    assert_int_equal(buffer.data[7], 0);
    sw_buffer_clear(&buffer);
    assert_string_equal(sw_buffer_text(&buffer), "");
    for (int i = 0; i < 100000; i++) {
        sw_buffer_format(&buffer, "%d", i % 10);
    }
    assert_int_equal(buffer.length, 100000);
    assert_int_equal(strlen(sw_buffer_text(&buffer)), 100000);
    sw_buffer_free(&buffer);
    assert_string_equal(sw_buffer_text(&buffer), "");
}

/* ---- names ------------------------------------------------------------------------------------------ */

static void names_number_strings(void **state)
{
    (void)state;
    sw_names *names = sw_names_new();
    assert_int_equal(sw_names_add(names, sw_slice_of("")), 0);
    assert_int_equal(sw_names_add(names, sw_slice_of(NULL)), 0);
    uint32_t violin = sw_names_add(names, sw_slice_of("violin"));
    assert_int_equal(violin, 1);
    assert_int_equal(sw_names_add(names, (sw_slice){"violins", 6}), violin);
    assert_int_equal(sw_names_find(names, sw_slice_of("viola")), UINT32_MAX);
    assert_string_equal(sw_names_text(names, violin), "violin");
    assert_string_equal(sw_names_text(names, 99), "");
    sw_names_free(names);
    sw_names_free(NULL);
}

static void names_survive_growth(void **state)
{
    (void)state;
    sw_names *names = sw_names_new();
    char text[32];
    for (uint32_t i = 1; i <= 20000; i++) {
        snprintf(text, sizeof text, "name-%u", i);
        assert_int_equal(sw_names_add(names, sw_slice_of(text)), i);
    }
    assert_int_equal(sw_names_count(names), 20001);
    for (uint32_t i = 1; i <= 20000; i++) {
        snprintf(text, sizeof text, "name-%u", i);
        assert_int_equal(sw_names_find(names, sw_slice_of(text)), i);
        assert_string_equal(sw_names_text(names, i), text);
    }
    sw_names_free(names);
}

/* ---- exact fractions -------------------------------------------------------------------------------- */

__extension__ typedef __int128 wide;

static wide wide_gcd(wide a, wide b)
{
    a = a < 0 ? -a : a;
    b = b < 0 ? -b : b;
    while (b != 0) {
        wide rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

/* The fraction in lowest terms, or the mark when 64 bits cannot hold it: computed in 128 bits. */
static sw_rational expected(wide num, wide den)
{
    if (den == 0) {
        return (sw_rational){0, 0};
    }
    wide shared = wide_gcd(num, den) * (den < 0 ? -1 : 1);
    num /= shared;
    den /= shared;
    if (num > INT64_MAX || num < -INT64_MAX || den > INT64_MAX) {
        return (sw_rational){0, 0};
    }
    return (sw_rational){(int64_t)num, (int64_t)den};
}

static void assert_rational(sw_rational actual, sw_rational wanted)
{
    char a[SW_RATIONAL_TEXT];
    char b[SW_RATIONAL_TEXT];
    assert_string_equal(sw_rational_print(actual, a), sw_rational_print(wanted, b));
    assert_true(sw_rational_equal(actual, wanted));
}

/* ---- sorting ---- */

typedef struct numbered {
    int key;
    int number;
} numbered;

static int compare_keys(const void *a, const void *b)
{
    return ((const numbered *)a)->key - ((const numbered *)b)->key;
}

static int compare_by_table(const void *a, const void *b, void *context)
{
    const int *table = context;
    return table[*(const uint32_t *)a] - table[*(const uint32_t *)b];
}

/* What sorted order means does not depend on how it was reached: each key not below the one before, equal
 * ones in the order that they had, everybody still there. */
static void sorting_keeps_the_order_of_equals(void **state)
{
    (void)state;
    enum { MOST = 60 };
    uint32_t dice = 12345;
    for (int round = 0; round < 3000; round++) {
        numbered items[MOST];
        int table[MOST];
        uint32_t order[MOST];
        size_t count = (size_t)(round % MOST);
        int climb = round % 7; /* 0: any order; more: runs that get longer */
        for (size_t i = 0; i < count; i++) {
            dice = dice * 1664525u + 1013904223u;
            int jump = (int)(dice >> 16) % 9;
            bool falls = climb == 0 || (dice >> 8) % (unsigned)(3 * climb) == 0;
            items[i] = (numbered){i == 0 || falls ? jump : items[i - 1].key + jump / 4, (int)i};
            table[i] = items[i].key;
            order[i] = (uint32_t)i;
        }
        sw_sort(items, count, sizeof *items, compare_keys);
        sw_sort_with(order, count, sizeof *order, compare_by_table, table);
        bool seen[MOST] = {false};
        for (size_t i = 0; i < count; i++) {
            assert_int_equal(items[i].number, order[i]);
            assert_int_equal(items[i].key, table[order[i]]);
            assert_false(seen[order[i]]);
            seen[order[i]] = true;
            if (i > 0) {
                assert_true(items[i - 1].key < items[i].key ||
                            (items[i - 1].key == items[i].key && items[i - 1].number < items[i].number));
            }
        }
    }
    sw_sort(NULL, 0, sizeof(int), compare_keys);
}

static void rational_is_in_lowest_terms(void **state)
{
    (void)state;
    assert_rational(sw_rational_make(6, 8), (sw_rational){3, 4});
    assert_rational(sw_rational_make(6, -8), (sw_rational){-3, 4});
    assert_rational(sw_rational_make(0, -8), (sw_rational){0, 1});
    assert_rational(sw_rational_make(INT64_MAX, INT64_MAX), (sw_rational){1, 1});
    assert_false(sw_rational_valid(sw_rational_make(1, 0)));
    assert_true(sw_rational_is_zero(sw_rational_zero()));
    assert_false(sw_rational_is_zero(sw_rational_make(0, 0)));
}

static void rational_prints(void **state)
{
    (void)state;
    char text[SW_RATIONAL_TEXT];
    assert_string_equal(sw_rational_print(sw_rational_make(-1, 8), text), "-1/8");
    assert_string_equal(sw_rational_print(sw_rational_make(6, 2), text), "3");
    assert_string_equal(sw_rational_print(sw_rational_make(6, 0), text), "?");
    assert_string_equal(sw_rational_print((sw_rational){-INT64_MAX, INT64_MAX - 1}, text),
                        "-9223372036854775807/9223372036854775806");
}

static void rational_rounds_down(void **state)
{
    (void)state;
    assert_int_equal(sw_rational_floor(sw_rational_make(7, 4)), 1);
    assert_int_equal(sw_rational_floor(sw_rational_make(-7, 4)), -2);
    assert_int_equal(sw_rational_floor(sw_rational_make(-8, 4)), -2);
    assert_int_equal(sw_rational_floor(sw_rational_make(1, 0)), 0);
    assert_true(sw_rational_to_double(sw_rational_make(3, 4)) == 0.75);
}

static void rational_marks_what_does_not_fit(void **state)
{
    (void)state;
    sw_rational one = sw_rational_make(1, 1);
    sw_rational most = sw_rational_make(INT64_MAX, 1);
    sw_rational mark = sw_rational_add(most, one);
    assert_false(sw_rational_valid(mark));
    assert_false(sw_rational_valid(sw_rational_sub(sw_rational_make(-INT64_MAX, 1), one)));
    assert_false(sw_rational_valid(sw_rational_mul(most, most)));
    assert_false(sw_rational_valid(sw_rational_div(one, sw_rational_zero())));
    assert_false(sw_rational_valid(sw_rational_make(INT64_MIN, 1)));
    /* The mark goes through every operation, from either side. */
    sw_rational (*const operations[])(sw_rational, sw_rational) = {
        sw_rational_add, sw_rational_sub, sw_rational_mul, sw_rational_div, sw_rational_max, sw_rational_min,
    };
    for (size_t i = 0; i < sizeof operations / sizeof operations[0]; i++) {
        assert_false(sw_rational_valid(operations[i](mark, one)));
        assert_false(sw_rational_valid(operations[i](one, mark)));
        assert_false(sw_rational_valid(operations[i](mark, sw_rational_zero())));
        assert_false(sw_rational_valid(operations[i](mark, mark)));
    }
    assert_int_equal(sw_rational_compare(mark, most), 1);
    assert_int_equal(sw_rational_compare(most, mark), -1);
    assert_int_equal(sw_rational_compare(mark, mark), 0);
}

/* An intermediate value beyond 64 bits is no reason to give up a result that fits. */
static void rational_survives_large_intermediates(void **state)
{
    (void)state;
    int64_t large = INT64_C(3037000507); /* a prime above the root of 2^63 */
    sw_rational a = sw_rational_make(1, 2 * large);
    assert_rational(sw_rational_add(a, a), sw_rational_make(1, large));
    sw_rational b = sw_rational_make(large - 1, large);
    assert_rational(sw_rational_mul(b, sw_rational_make(large, large - 1)), sw_rational_make(1, 1));
    sw_rational c = sw_rational_make(INT64_MAX - 1, INT64_MAX);
    assert_rational(sw_rational_sub(c, c), sw_rational_zero());
    assert_rational(sw_rational_add(c, sw_rational_make(1, INT64_MAX)), sw_rational_make(1, 1));
    assert_rational(sw_rational_add(sw_rational_make(INT64_MAX, 6), sw_rational_make(-INT64_MAX, 10)),
                    sw_rational_make(INT64_MAX, 15));
}

/* Numbers of every size: small ones (as music has), and ones near the limits. */
static int64_t random_number(void)
{
    int bits = (int)(next_random() % 63) + 1;
    int64_t number = (int64_t)(next_random() >> (64 - bits));
    switch (next_random() % 4) {
    case 0:
        return (int64_t)(next_random() % 193) - 96;
    case 1:
        return INT64_MAX - (int64_t)(next_random() % 16);
    default:
        return next_random() % 2 == 0 ? number : -number;
    }
}

static sw_rational random_rational(void)
{
    int64_t den;
    do {
        den = random_number();
    } while (den == 0);
    return sw_rational_make(random_number(), den);
}

static void rational_agrees_with_128_bits(void **state)
{
    (void)state;
    seed_random();
    int fitting = 0;
    enum { ROUNDS = 300000 };
    for (int i = 0; i < ROUNDS; i++) {
        sw_rational a = random_rational();
        sw_rational b = random_rational();
        if (next_random() % 4 == 0) {
            b = sw_rational_make(random_number(), a.den); /* a common denominator */
        } else if (next_random() % 4 == 0) {              /* as note values are */
            a = sw_rational_make(random_number(), INT64_C(1) << (next_random() % 40));
            b = sw_rational_make(random_number(), INT64_C(1) << (next_random() % 40));
        }
        wide an = a.num;
        wide ad = a.den;
        wide bn = b.num;
        wide bd = b.den;
        assert_rational(a, expected(an, ad));
        /* Both products are below 2^126, so that the sums fit. */
        sw_rational sum = sw_rational_add(a, b);
        assert_rational(sum, expected(an * bd + bn * ad, ad * bd));
        assert_rational(sw_rational_sub(a, b), expected(an * bd - bn * ad, ad * bd));
        assert_rational(sw_rational_mul(a, b), expected(an * bn, ad * bd));
        assert_rational(sw_rational_div(a, b), expected(an * bd, ad * bn));
        wide left = an * bd;
        wide right = bn * ad;
        int order = left < right ? -1 : left > right;
        assert_int_equal(sw_rational_compare(a, b), order);
        assert_rational(sw_rational_max(a, b), order >= 0 ? a : b);
        assert_rational(sw_rational_min(a, b), order <= 0 ? a : b);
        wide floor = an / ad - (an % ad < 0 ? 1 : 0);
        assert_true(sw_rational_floor(a) == (int64_t)floor);
        if (sw_rational_valid(sum)) {
            fitting++;
            assert_rational(sw_rational_sub(sum, b), a);
        }
    }
    printf("%d pairs of fractions, the sum of %d fits 64 bits\n", ROUNDS, fitting);
    assert_true(fitting > ROUNDS / 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(arena_gives_aligned_zeroed_memory),
        cmocka_unit_test(arena_copies_strings),
        cmocka_unit_test(growth_keeps_elements),
        cmocka_unit_test(slices_compare),
        cmocka_unit_test(buffer_is_always_terminated),
        cmocka_unit_test(names_number_strings),
        cmocka_unit_test(names_survive_growth),
        cmocka_unit_test(sorting_keeps_the_order_of_equals),
        cmocka_unit_test(rational_is_in_lowest_terms),
        cmocka_unit_test(rational_prints),
        cmocka_unit_test(rational_rounds_down),
        cmocka_unit_test(rational_marks_what_does_not_fit),
        cmocka_unit_test(rational_survives_large_intermediates),
        cmocka_unit_test(rational_agrees_with_128_bits),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
