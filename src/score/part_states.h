/* Two parts side by side: what each says at every moment of either. The data of the part combiner; see
 * part_combine.c. */
#ifndef SW_SCORE_PART_STATES_H
#define SW_SCORE_PART_STATES_H

#include "score/recording.h"

#define SW_NOWHERE SIZE_MAX

/* A beam, hairpin, slur or tie that has begun and not ended. */
typedef struct sw_open_span {
    uint8_t span; /* sw_heard_span */
    size_t split; /* where it began */
} sw_open_span;

/* What a part says at a moment. */
typedef struct sw_part_state {
    sw_moment when;
    size_t first; /* what is heard: [first, end) of the part's recording */
    size_t end;
    size_t split;      /* the split at this moment */
    size_t span_first; /* spans open behind it: in the part's pool */
    size_t span_count;
} sw_part_state;

typedef struct sw_part {
    const sw_recording *recording;
    sw_part_state *states;
    size_t count;
    size_t capacity;
    sw_open_span *spans; /* pool */
    size_t span_count;
    size_t span_capacity;
} sw_part;

/* A moment of either part. */
typedef struct sw_part_split {
    sw_moment when;
    size_t states[2]; /* the state now or the next one; SW_NOWHERE behind the last */
    bool synced;      /* both parts have a state now */
    uint8_t way;      /* how the parts are combined from here on, and ... */
    uint8_t forced;   /* ... how the source demands it: a `way` of part_combine.c, 0 for none yet */
} sw_part_split;

typedef struct sw_parts {
    sw_part parts[2];
    sw_part_split *splits;
    size_t count;
    size_t capacity;
} sw_parts;

/* Makes states, splits and spans from two recordings, which lose what other voices heard. */
sw_parts sw_parts_new(sw_recording *one, sw_recording *two);
void sw_parts_free(sw_parts *parts);

/* In what follows a state is its number in the part, SW_NOWHERE when there is none. */

/* What is heard at a state: from begin up to end. */
const sw_heard *sw_parts_begin(const sw_part *p, size_t s);
const sw_heard *sw_parts_end(const sw_part *p, size_t s);
size_t sw_parts_count(const sw_part *p, size_t s, sw_heard_kind kind);
/* Its notes and drum notes. */
size_t sw_parts_notes(const sw_part *p, size_t s);
/* True for the last state, at which the part has ended. */
bool sw_parts_ended(const sw_part *p, size_t s);
size_t sw_parts_before(size_t s);
/* The part's state at a split, or the one before when it has none there. */
size_t sw_parts_current(const sw_parts *c, size_t split, int part_number);
/* How many spans are open behind a state, and whether the same are behind two. */
size_t sw_parts_open(const sw_part *p, size_t s);
bool sw_parts_same_spans(const sw_part *a, size_t x, const sw_part *b, size_t y);

#endif
