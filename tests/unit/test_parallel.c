/* Work on all processors: each piece is done once, also within work that is shared out already. */
#include <setjmp.h>
#include <stdarg.h>
#include <stdatomic.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/parallel.h"

enum { OUTER = 50, INNER = 40 };

static void count_one(void *context, size_t n)
{
    atomic_int *done = context;
    atomic_fetch_add(&done[n], 1);
}

static void each_piece_is_done_once(void **state)
{
    (void)state;
    for (size_t count = 0; count <= OUTER; count++) {
        atomic_int done[OUTER + 1] = {0};
        sw_parallel(count, count_one, done);
        for (size_t i = 0; i <= OUTER; i++) {
            assert_int_equal(atomic_load(&done[i]), i < count ? 1 : 0);
        }
    }
}

static atomic_int table[OUTER][INNER];

static void share_out_again(void *context, size_t n)
{
    (void)context;
    sw_parallel(INNER, count_one, table[n]);
}

static void work_can_be_shared_out_within_work(void **state)
{
    (void)state;
    for (int times = 1; times <= 3; times++) {
        sw_parallel(OUTER, share_out_again, NULL);
        for (size_t i = 0; i < OUTER; i++) {
            for (size_t k = 0; k < INNER; k++) {
                assert_int_equal(atomic_load(&table[i][k]), times);
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_piece_is_done_once),
        cmocka_unit_test(work_can_be_shared_out_within_work),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
