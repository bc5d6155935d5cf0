/* The key in force, and the notes that it gives. Private to checks/. */
#ifndef SW_CHECKS_KEY_H
#define SW_CHECKS_KEY_H

#include "stavewright/check.h"

/* The next step above (1) or below (-1) an entered pitch, as the key in force on its staff has it: without a
 * key as C major has it. Accidentals of the bar and of the trill itself are not asked. */
sw_pitch sw_key_neighbour(const sw_check *check, const sw_score *score, uint32_t staff, sw_rational onset,
                          sw_pitch pitch, int steps);

#endif
