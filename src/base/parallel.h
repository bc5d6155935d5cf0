/* Work on all processors. */
#ifndef STAVEWRIGHT_BASE_PARALLEL_H
#define STAVEWRIGHT_BASE_PARALLEL_H

#include <stddef.h>

/* Calls work(context, n) for each n below `count`, once each, in any order and on as many threads as there
 * are processors for this program; comes back when all is done. What the calls share they must only read, or
 * guard. With one processor, for one piece of work, and within
 * work that is shared out already, no thread is made. */
void sw_parallel(size_t count, void (*work)(void *context, size_t n), void *context);

#endif
