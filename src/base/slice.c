#include <string.h>

#include "stavewright/base.h"

sw_slice sw_slice_of(const char *text)
{
    return (sw_slice){text, text == NULL ? 0 : strlen(text)};
}

bool sw_slice_equal(sw_slice a, sw_slice b)
{
    return a.length == b.length && (a.length == 0 || memcmp(a.data, b.data, a.length) == 0);
}

bool sw_slice_is(sw_slice a, const char *text)
{
    return sw_slice_equal(a, sw_slice_of(text));
}

bool sw_slice_starts(sw_slice a, const char *text)
{
    size_t length = strlen(text);
    return a.length >= length && (length == 0 || memcmp(a.data, text, length) == 0);
}

bool sw_slice_ends(sw_slice a, const char *text)
{
    size_t length = strlen(text);
    return a.length >= length && (length == 0 || memcmp(a.data + a.length - length, text, length) == 0);
}

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
