/* Music that Scheme builds out of music. Private to score/. */
#ifndef SW_SCORE_BUILT_H
#define SW_SCORE_BUILT_H

#include "score/reader.h"

/* Builds what an expression that stands in a Scheme node makes by listing and copying music, such as
 * (make-sequential-music (list music #{ c'4 #})), in the place `where`. `spliced`: the expression is the list
 * itself. True when all of it is understood; *value is the music then. */
bool sw_build_music(sw_reader *reader, sw_slice expression, uint32_t file, uint32_t node, bool spliced,
                    const sw_value *where, sw_value *value);
/* Whether an expression calls something that makes music. */
bool sw_makes_music(sw_slice expression);

#endif
