/* Who sounds beside a note, and how heavy they are together. Private to checks/. */
#ifndef SW_CHECKS_BALANCE_H
#define SW_CHECKS_BALANCE_H

#include "stavewright/check.h"

/* What sounds on each staff of a score. */
typedef struct sw_balance sw_balance;

/* Free with sw_balance_free. */
sw_balance *sw_balance_of(sw_check *check, size_t score);
void sw_balance_free(sw_balance *balance);

/* What sounds beside a note. */
typedef struct sw_beside {
    double weight; /* of all on other staves that play no softer, within an octave of it; a woodwind is 1 */
    uint32_t heaviest; /* the staff with the most of it, SW_NO_INDEX: none */
    bool doubled;      /* another staff has the same note, in whatever octave */
    bool in_unison;    /* ... in this one and no softer, on another instrument */
} sw_beside;

/* What sounds on other staves when a note of `staff` begins, that sounds as `sounding` at a dynamic, on
 * `own`.
 */
sw_beside sw_balance_beside(const sw_balance *balance, uint32_t staff, sw_rational onset, sw_pitch sounding,
                            sw_dynamic dynamic, const sw_instrument *own);

#endif
