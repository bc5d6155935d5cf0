#include <string.h>

#include "base/nearest.h"

enum { LONGEST = 64 }; /* no key or id is longer; a longer text resembles nothing */

static size_t least(size_t a, size_t b, size_t c)
{
    size_t ab = a < b ? a : b;
    return ab < c ? ab : c;
}

/* Edit distance, in which two letters that have changed places are one mistake ("playres"): a row of the
 * table at a time, with the two rows before it; `b` is at most LONGEST letters long. */
static size_t distance(sw_slice a, sw_slice b)
{
    size_t rows[3][LONGEST + 1];
    for (size_t j = 0; j <= b.length; j++) {
        rows[0][j] = j;
    }
    for (size_t i = 1; i <= a.length; i++) {
        size_t *row = rows[i % 3];
        const size_t *above = rows[(i + 2) % 3];
        const size_t *two_above = rows[(i + 1) % 3];
        row[0] = i;
        for (size_t j = 1; j <= b.length; j++) {
            size_t replaced = above[j - 1] + (a.data[i - 1] != b.data[j - 1] ? 1 : 0);
            row[j] = least(replaced, above[j] + 1, row[j - 1] + 1);
            bool swapped = i > 1 && j > 1 && a.data[i - 1] == b.data[j - 2] && a.data[i - 2] == b.data[j - 1];
            if (swapped && two_above[j - 2] + 1 < row[j]) {
                row[j] = two_above[j - 2] + 1;
            }
        }
    }
    return rows[a.length % 3][b.length];
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
