/* Whether a melisma is on in a voice, from moment to moment. Private to score/.
 *
 * The compiler's engravers of slurs, ties and beams say that a melisma is on when they come to the end of a
 * moment; the lyrics ask in the middle of it, when the notes have been heard. So what begins with a note
 * holds for the next one, and what ends with a note still holds for it. At each moment at which something
 * happens: sw_melisma_begin, sw_melisma_set, then the question, then sw_melisma_hear and sw_melisma_end. */
#ifndef SW_SCORE_MELISMA_H
#define SW_SCORE_MELISMA_H

#include "score/melisma_rules.h"
#include "score/sung_marks.h"

enum { SW_MAX_TIES = 32 };

/* A note that waits for the one it is tied to. */
typedef struct sw_waiting_tie {
    sw_pitch pitch;
    bool drum;
    sw_moment end;
} sw_waiting_tie;

/* How a voice stands between two moments. */
typedef struct sw_melisma {
    sw_melisma_rules rules;
    bool manual;
    uint32_t slurs[SW_MAX_SLURS]; /* names of the open ones */
    size_t slur_count;
    bool grace_slur;
    bool open_beam[2]; /* of main and of grace notes */
    bool beam;
    sw_waiting_tie ties[SW_MAX_TIES];
    size_t tie_count;
} sw_melisma;

/* What happens in it at a moment. */
typedef struct sw_melisma_turn {
    sw_moment when;
    sw_turn_marks marks;
    bool all_tied; /* by an empty chord */
    bool taken;    /* a tie has found its second note */
    bool slurred_grace;
    sw_waiting_tie ties[SW_MAX_TIES];
    size_t tie_count;
} sw_melisma_turn;

/* A moment begins. */
sw_melisma_turn sw_melisma_begin(sw_melisma *melisma, sw_moment when);
/* A SET or SETTING node for the context of a level: \set of one of the properties, \melisma, \autoBeamOff. */
void sw_melisma_set(sw_melisma *melisma, const sw_reading *reading, uint32_t music, sw_context_level level);
/* Whether one is on; without `ties`, whether one would be on without them. */
bool sw_melisma_is_on(const sw_melisma *melisma, bool ties);
/* An event of this moment. */
void sw_melisma_hear(sw_melisma *melisma, sw_melisma_turn *turn, const sw_reading *reading,
                     const sw_sung_marks *marks, const sw_event *event);
/* The moment ends. */
void sw_melisma_end(sw_melisma *melisma, const sw_melisma_turn *turn);
/* A note or drum, no rest. */
bool sw_is_note(const sw_event *event);

#endif
