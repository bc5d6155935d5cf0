/* What the parts of the proof share. Private to write/. */
#ifndef SW_WRITE_PROOF_H
#define SW_WRITE_PROOF_H

#include "stavewright/change.h"

/* One main file before and after the change. */
typedef struct sw_proof {
    const sw_division *division;
    const sw_reading *before;
    const sw_reading *after;
    bool affected; /* the file uses what is divided */
    sw_arena *arena;
} sw_proof;

/* Where something is heard. */
typedef struct sw_proof_place {
    uint32_t score;
    sw_rational onset;
    sw_rational grace;
    const char *staff; /* see sw_proof_staff_key; "" where only the group of parts is known */
    uint32_t bar;
} sw_proof_place;

sw_proof_place sw_proof_place_of(const sw_score *score, uint32_t number, const sw_event *event,
                                 const char *staff);
/* Order of score, time and staff. */
int sw_proof_compare_places(const sw_proof_place *x, const sw_proof_place *y);

/* Whether a staff before the change is divided by it. */
bool sw_proof_is_divided(const sw_proof *proof, const sw_score *score, uint32_t staff);
/* Whether a staff of the result is one of the new ones. */
bool sw_proof_is_new(const sw_proof *proof, const sw_score *score, uint32_t staff);
/* What tells a staff apart in both readings: its id, or its name. */
const char *sw_proof_staff_key(const sw_proof *proof, const sw_reading *reading, const sw_score *score,
                               uint32_t staff);

/* Compares what hangs on notes and rests. On other staves all of it must be there as it was; on the divided
 * staff every mark must stand at its moment in one part at least, and none may be new, slurs, ties and beams
 * aside: these follow the notes of a part. False with *error (free() it) at the first difference. */
bool sw_prove_marks(const sw_proof *proof, char **error);

#endif
