/* Patterns of PCRE2 over UTF-8 texts, compiled once. */
#ifndef STAVEWRIGHT_BASE_PATTERN_H
#define STAVEWRIGHT_BASE_PATTERN_H

#include "stavewright/base.h"

typedef struct sw_pattern sw_pattern;

enum { SW_PATTERN_MESSAGE = 192 };

/* Compiles a pattern. NULL when it is none: `message` then says what is wrong and where. */
sw_pattern *sw_pattern_new(sw_slice text, char message[SW_PATTERN_MESSAGE]);
/* NULL is allowed. */
void sw_pattern_free(sw_pattern *pattern);
/* The first match from byte `start` on: [*from, *to). Both may be NULL. False when there is none, also for
 * texts that are no UTF-8 and for patterns that take far too long on a text. */
bool sw_pattern_find(const sw_pattern *pattern, sw_slice text, size_t start, size_t *from, size_t *to);

#endif
