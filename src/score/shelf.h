/* What a shelf (stavewright/score.h) has. Private to score/. */
#ifndef SW_SCORE_SHELF_H
#define SW_SCORE_SHELF_H

#include "score/prelude.h"
#include "stavewright/score.h"

/* The text of a file under this path, and its syntax, both to be freed before the shelf is. False with
 * *error, to be freed, when it can't be read. May be called by several threads. */
bool sw_shelf_take(sw_shelf *shelf, const char *path, sw_text **text, sw_syntax **syntax, char **error);
/* The same for a text in memory, which stays the caller's and outlives the shelf: its syntax. NULL with
 * *error.
 */
sw_syntax *sw_shelf_parse(sw_shelf *shelf, sw_text *text, char **error);

/* What was kept under a key, to be released by the caller; NULL: nothing (now). */
sw_prelude *sw_shelf_find_prelude(sw_shelf *shelf, sw_slice key);
/* Keeps a prelude, which is taken, for a while: the shelf holds a few, and lets the oldest go. */
void sw_shelf_keep_prelude(sw_shelf *shelf, sw_slice key, sw_prelude *prelude);

#endif
