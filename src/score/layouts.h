/* What \layout blocks say about contexts, for the reading of one score. Private to score/. */
#ifndef SW_SCORE_LAYOUTS_H
#define SW_SCORE_LAYOUTS_H

#include "score/player.h"

/* Is told each `property = value` of a block and, without value, each command. */
typedef void sw_layout_setting(void *data, sw_slice property, sw_slice value);

/* Goes through the \context { \TYPE ... } blocks of all \layout blocks that hold for the score. */
void sw_layouts_each(sw_player *p, const char *type, sw_layout_setting *set, void *data);
/* The number of the first bar: the currentBarNumber that they give to Score, or 1. */
int32_t sw_layout_first_number(sw_player *p);

#endif
