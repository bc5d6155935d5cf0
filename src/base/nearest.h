/* What a mistyped word may have meant. */
#ifndef STAVEWRIGHT_BASE_NEAREST_H
#define STAVEWRIGHT_BASE_NEAREST_H

#include <stddef.h>

#include "stavewright/base.h"

/* The one of `words` that takes the fewest changed, missing, superfluous or swapped letters to become
 * `text`; NULL when none comes near enough to be worth a suggestion (more than a third of the letters differ,
 * two at least, and never all). */
const char *sw_nearest_word(sw_slice text, const char *const *words, size_t count);

#endif
