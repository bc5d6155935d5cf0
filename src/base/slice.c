#include <string.h>

#include "stavewright/base.h"

int sw_slice_compare(sw_slice a, sw_slice b)
{
    size_t shorter = a.length < b.length ? a.length : b.length;
    int order = shorter == 0 ? 0 : memcmp(a.data, b.data, shorter);
    if (order != 0) {
        return order;
    }
    return a.length < b.length ? -1 : a.length > b.length;
}

sw_slice sw_slice_from(sw_slice a, size_t start)
{
    return start < a.length ? (sw_slice){a.data + start, a.length - start} : (sw_slice){a.data, 0};
}

static bool is_white(char c)
{
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

sw_slice sw_slice_trim(sw_slice a)
{
    while (a.length > 0 && is_white(a.data[0])) {
        a = (sw_slice){a.data + 1, a.length - 1};
    }
    while (a.length > 0 && is_white(a.data[a.length - 1])) {
        a.length--;
    }
    return a;
}
