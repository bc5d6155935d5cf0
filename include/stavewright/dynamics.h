/* How loud it is, note by note: dynamics through time.
 *
 * A mark holds from its note on. A hairpin (or \cresc, \dim, "cresc.", "dim.") leads to the next mark; where
 * it leads to none, one level up or down from the last mark. Marks hold for all voices of their staff, except
 * for a voice that has a mark of its own in the same bar; those of a Dynamics line hold for the staves of its
 * brace. Cues hold for nobody. */
#ifndef STAVEWRIGHT_DYNAMICS_H
#define STAVEWRIGHT_DYNAMICS_H

#include "stavewright/dynamic.h"
#include "stavewright/score.h"

typedef struct sw_dynamics sw_dynamics;

/* What is in force at a moment. */
typedef struct sw_dynamic_now {
    sw_dynamic level; /* the nearest one; SW_NO_DYNAMIC where nothing has been said yet */
    int direction;    /* 1: it grows, -1: it fades, 0: it stays */
    bool guessed;     /* no mark says this level: on the way, or behind a way that led to no mark */
    uint32_t mark;    /* the node that says so: a mark, or a hairpin; SW_NO_INDEX */
} sw_dynamic_now;

/* Goes through the marks of a score. Free with sw_dynamics_free. */
sw_dynamics *sw_dynamics_of(const sw_reading *reading, const sw_score *score);
/* NULL is allowed. */
void sw_dynamics_free(sw_dynamics *dynamics);
/* What holds for a note of a voice that begins at `onset`; an accent (sfz) holds for its own notes only. */
sw_dynamic_now sw_dynamics_at(const sw_dynamics *dynamics, uint32_t voice, sw_rational onset);

#endif
