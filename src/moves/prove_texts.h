/* The proof for other words in texts, and for bar checks elsewhere. Private to moves/. */
#ifndef SW_MOVES_PROVE_TEXTS_H
#define SW_MOVES_PROVE_TEXTS_H

#include "stavewright/change.h"
#include "stavewright/film.h"

/* Reads each main file with the patch's texts, and compares with the reading before: in the sources only
 * words and strings that the patch edits may differ, and bar checks; all that is heard, all staves, bars and
 * commands must be as before, no bar check may have come off its bar line, and players must be told to play
 * everything on the same instrument and in the same way. False with *error (free() it). */
bool sw_prove_texts(const sw_film *film, sw_reading *const *mains, size_t main_count, const sw_patch *patch,
                    const sw_read_options *options, char **error);

#endif
