/* Dynamics as levels that can be compared, and what the language's dynamic marks say about them. */
#ifndef STAVEWRIGHT_DYNAMIC_H
#define STAVEWRIGHT_DYNAMIC_H

#include <stdbool.h>

#include "stavewright/base.h"

/* From nothing to the loudest, so that `<` means softer. */
typedef enum sw_dynamic {
    SW_NIENTE, /* n: out of or into silence */
    SW_PPPPP,
    SW_PPPP,
    SW_PPP,
    SW_PP,
    SW_P,
    SW_MP,
    SW_MF,
    SW_F,
    SW_FF,
    SW_FFF,
    SW_FFFF,
    SW_FFFFF,
    SW_NO_DYNAMIC /* not a level: nothing is known */
} sw_dynamic;

enum { SW_DYNAMICS = SW_NO_DYNAMIC }; /* how many levels there are */

/* As musicians write it: "pp", "n"; "" for SW_NO_DYNAMIC. A static string. */
const char *sw_dynamic_name(sw_dynamic level);
/* The level with exactly this name; false when there is none. */
bool sw_dynamic_from_name(sw_slice name, sw_dynamic *level);
/* All names in order, SW_DYNAMICS of them. */
const char *const *sw_dynamic_names(void);
/* The level `steps` further up (or down, when negative), held within PPPPP .. FFFFF; niente and
 * SW_NO_DYNAMIC stay what they are. */
sw_dynamic sw_dynamic_moved(sw_dynamic level, int steps);

/* What a dynamic mark sets. */
typedef struct sw_dynamic_mark {
    sw_dynamic attack; /* of the note that it hangs on; the nearest level: f for sfz and fp */
    sw_dynamic stays;  /* from then on; SW_NO_DYNAMIC for a mere accent: what was in force goes on */
} sw_dynamic_mark;

/* The meaning of one of the language's marks by its name without the backslash: the levels themselves, fp,
 * sfp, sf, sff, sfz, fz, rfz, sp, spp. False for any other name. */
bool sw_dynamic_mark_read(sw_slice name, sw_dynamic_mark *mark);

#endif
