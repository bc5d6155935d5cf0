/* Answers that are looked up once: by text, for several threads. */
#ifndef STAVEWRIGHT_BASE_MEMO_H
#define STAVEWRIGHT_BASE_MEMO_H

#include "stavewright/base.h"

typedef struct sw_memo sw_memo;

sw_memo *sw_memo_new(void);
void sw_memo_free(sw_memo *memo); /* NULL is allowed */
/* The answer that was kept for a text, NULL for none so far. It lives as long as the memo. */
const void *sw_memo_find(sw_memo *memo, sw_slice text);
/* Keeps an answer of `size` bytes (copied). Whoever keeps another one for the same text later has no effect.
 */
void sw_memo_keep(sw_memo *memo, sw_slice text, const void *answer, size_t size);

#endif
