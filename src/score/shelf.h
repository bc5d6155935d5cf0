/* What a shelf (stavewright/score.h) has. Private to score/. */
#ifndef SW_SCORE_SHELF_H
#define SW_SCORE_SHELF_H

#include "stavewright/score.h"

/* The text of a file under this path, and its syntax, both to be freed before the shelf is. False with
 * *error, to be freed, when it can't be read. May be called by several threads. */
bool sw_shelf_take(sw_shelf *shelf, const char *path, sw_text **text, sw_syntax **syntax, char **error);

#endif
