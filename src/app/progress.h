/* A line on a terminal that tells how far long work has come. */
#ifndef SW_APP_PROGRESS_H
#define SW_APP_PROGRESS_H

#include <stdbool.h>
#include <stddef.h>

typedef struct sw_progress sw_progress;

/* "checking: 3 of 12 files", on standard error when that is a terminal, from half a second on. `quiet`:
 * never.
 */
sw_progress *sw_progress_begin(const char *what, size_t total, bool quiet);
/* One more is done; may be called from any thread. */
void sw_progress_step(sw_progress *progress);
/* The same, for those who know nothing of progress. */
void sw_progress_tell(void *progress);
/* Takes the line away and frees it. */
void sw_progress_end(sw_progress *progress);

/* Whether colours are wanted on a stream (1: standard output, 2: standard error): a terminal that can show
 * them, and NO_COLOR is not set (https://no-color.org). */
bool sw_wants_colours(int stream);

#endif
