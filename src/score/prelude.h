/* The files with which a main file begins: the parts of a cue include the same ones in the same order, and
 * what the reader knows behind them is the same for all of them. Private to score/. */
#ifndef SW_SCORE_PRELUDE_H
#define SW_SCORE_PRELUDE_H

#include "score/reader.h"

typedef struct sw_prelude sw_prelude;

/* Reads the \version and the \includes that stand at the beginning of a main file; the cursor is moved behind
 * them. With a shelf, what other main files of the same folder have made of the same includes is taken over;
 * the reading is the same either way. */
void sw_read_prelude(sw_reader *reader, sw_cursor *cursor);

/* Adds a user; gives back the same. NULL is allowed. */
sw_prelude *sw_prelude_hold(sw_prelude *prelude);
/* Takes a user off a prelude, and frees it with the last one. NULL is allowed. */
void sw_prelude_release(sw_prelude *prelude);

#endif
