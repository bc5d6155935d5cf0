/* The \with blocks of contexts. Private to score/. */
#ifndef SW_SCORE_WITH_BLOCKS_H
#define SW_SCORE_WITH_BLOCKS_H

#include "score/reader.h"

/* Reads what stands behind one \with, at the cursor, as a WITH node of a context that is not known yet: the
 * value of a variable. `file` and `start` are the place of the \with; *end is moved behind it. */
uint32_t sw_read_with_block(sw_reader *reader, sw_cursor *cursor, uint32_t file, uint32_t start,
                            uint32_t *end);
/* Reads all `\with { ... }` at the cursor as the one WITH node of a context of this type and id; SW_NO_INDEX
 * when there is none. */
uint32_t sw_read_with_blocks(sw_reader *reader, sw_cursor *cursor, uint32_t type, uint32_t id);
/* Gives a CONTEXT or ADD_LYRICS node its WITH node or SW_NO_INDEX. */
void sw_set_with(sw_reader *reader, uint32_t music, uint32_t with);

#endif
