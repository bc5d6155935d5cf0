#include "score/moment.h"

sw_moment sw_moment_zero(void)
{
    return (sw_moment){sw_rational_zero(), sw_rational_zero()};
}

int sw_moment_compare(sw_moment a, sw_moment b)
{
    int order = sw_rational_compare(a.main, b.main);
    return order != 0 ? order : sw_rational_compare(a.grace, b.grace);
}
