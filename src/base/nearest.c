#include <string.h>

#include "base/nearest.h"

enum { LONGEST = 64 }; /* no key or id is longer; a longer text resembles nothing */

static size_t least(size_t a, size_t b, size_t c)
{
    size_t ab = a < b ? a : b;
    return ab < c ? ab : c;
}

/* Edit distance with one row of the table at a time; `b` is at most LONGEST letters long. */
static size_t distance(sw_slice a, sw_slice b)
{
    size_t row[LONGEST + 1];
    for (size_t j = 0; j <= b.length; j++) {
        row[j] = j;
    }
    for (size_t i = 1; i <= a.length; i++) {
        size_t diagonal = row[0];
        row[0] = i;
        for (size_t j = 1; j <= b.length; j++) {
            size_t replaced = diagonal + (a.data[i - 1] != b.data[j - 1] ? 1 : 0);
            diagonal = row[j];
            row[j] = least(replaced, row[j] + 1, row[j - 1] + 1);
        }
    }
    return row[b.length];
}

const char *sw_nearest_word(sw_slice text, const char *const *words, size_t count)
{
    if (text.length == 0 || text.length > LONGEST) {
        return NULL;
    }
    size_t best = text.length / 3 > 2 ? text.length / 3 : 2;
    best = best < text.length ? best : text.length - 1; /* something has to be left of it */
    const char *nearest = NULL;
    for (size_t i = 0; i < count; i++) {
        size_t d = strlen(words[i]) <= LONGEST ? distance(text, sw_slice_of(words[i])) : LONGEST;
        if (d < best || (d == best && nearest == NULL)) {
            best = d;
            nearest = words[i];
        }
    }
    return nearest;
}
