/* When a voice begins notes, and whether a melisma is on then: what lyrics go by. Private to score/. */
#ifndef SW_SCORE_SUNG_MOMENTS_H
#define SW_SCORE_SUNG_MOMENTS_H

#include "score/player.h"

/* A moment at which something happens in a voice. */
typedef struct sw_sung_moment {
    sw_moment when;
    bool sung;       /* notes begin; only then: */
    uint32_t event;  /* the first of them in the order of the walk */
    sw_rational end; /* of the longest */
    bool busy;       /* a melisma is on when the lyrics ask */
    bool stays;      /* one is on behind this moment ... */
    bool tied;       /* ... or at least until a tied note has ended */
    sw_moment tied_until;
} sw_sung_moment;

typedef struct sw_sung_moments {
    sw_sung_moment *items; /* in order of time */
    size_t count;
    size_t capacity;
} sw_sung_moments;

/* Some of a score's events, in the order of the walk. */
typedef struct sw_event_range {
    uint32_t from;
    uint32_t end;
} sw_event_range;

typedef struct sw_hearing sw_hearing;

/* `graces`: syllables are set to grace notes too, so that their slurs count. */
sw_hearing *sw_hearing_new(sw_player *p, bool graces);
void sw_hearing_free(sw_hearing *hearing);
/* The strokes of a context: of a voice, or of all voices of a staff; in both only those events that are
 * numbered [from, end) in the order of the walk. They live as long as the hearing. */
const sw_sung_moments *sw_hearing_strokes(sw_hearing *hearing, const sw_context *target,
                                          sw_event_range range);

#endif
