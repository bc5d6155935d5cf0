/* Music made from other music by moving whole nodes: \pushToTag, \appendToTag, \parallelMusic; and the
 * naming of voices by \voices. */
#ifndef SW_SCORE_REARRANGE_H
#define SW_SCORE_REARRANGE_H

#include "score/reader.h"

/* Puts a copy of `more` in front of (or behind) the items of everything in `music` that has this tag. */
void sw_insert_at_tag(sw_reader *reader, uint32_t music, uint32_t tag, uint32_t more, bool front);

/* Deals the items of `music` out to `count` parts, a new part behind each bar check, the first again behind
 * the last. False when there is no bar check. The parts are new nodes; `music` is used up. */
bool sw_deal_bars(sw_reader *reader, uint32_t music, size_t count, uint32_t *parts);

/* Gives the voices that \\ has made, in `music` and below, the ids of a space-separated list. */
void sw_name_voices(sw_reader *reader, uint32_t music, uint32_t list);

#endif
