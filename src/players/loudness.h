/* How loud a dynamic mark is. */
#ifndef STAVEWRIGHT_PLAYERS_LOUDNESS_H
#define STAVEWRIGHT_PLAYERS_LOUDNESS_H

#include "stavewright/base.h"

/* Steps from mf = 0: p is -2, pp -3, ff 2. */
enum { SW_LOUDNESS_MF = 0, SW_LOUDNESS_NIENTE = -8, SW_NO_LOUDNESS = 99 };

/* The loudness that a mark ("\\p", "^\\sfz", "\\fp") leads to; SW_NO_LOUDNESS when it sets none (an accent of
 * force, \\sfz, holds for its note alone). */
int sw_loudness(sw_slice mark);

#endif
