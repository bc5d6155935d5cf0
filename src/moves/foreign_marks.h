/* What a line says to its player that another instrument has no use for. Private to moves/. */
#ifndef SW_MOVES_FOREIGN_MARKS_H
#define SW_MOVES_FOREIGN_MARKS_H

#include "stavewright/players.h"
#include "stavewright/score.h"
#include "stavewright/techniques.h"

/* Whether a mark (MARK node) of a line stays behind when another instrument gets it: bow marks for winds,
 * words for strokes and strings, marks that mean something else in its family. */
bool sw_mark_is_foreign(const sw_reading *reading, uint32_t mark, const sw_techniques *techniques,
                        const sw_instrument *from_or_null, const sw_instrument *to);

#endif
