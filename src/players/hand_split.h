/* Which hand plays which note: an exact optimum for two hands on harp or keyboard.
 *
 * WHAT IT WORKS ON
 * Notes with their time and height, nothing else: no text, no syntax, no staff. Time is real time: what a
 * hand can do between two notes depends on the seconds between them. Heights are counted in staff steps (0 =
 * middle C, an octave is 7), because a hand measures strings or white keys, not semitones. On bars, which get
 * narrower upwards, the span depends on where the hand's lowest key lies.
 *
 * THE MODEL
 * A *slice* is a moment at which some note begins; it holds all notes that begin or still sound there. Notes
 * of a slice on one key (one string) are one *key*: they need one finger and stay in one hand. Hands do not
 * cross: of the keys of a slice, in order of height, the lowest k are played by the left hand and the others
 * by the right. k is the *split* of the slice. A note keeps its hand as long as it sounds; notes that
 * continue a tie are part of the note they continue, so they cannot change hands.
 *
 * With `may_cross` the left hand may lie over the right at one moment, too: then the lowest k keys are the
 * right hand's and the others the left hand's. Hands that lie within each other are not thought of.
 *
 * A hand has a *placement*: fingers on strings (harp) or keys, at most as many as it has, all within its
 * span. What it strikes next joins the placement if it lies there already or a finger is left for it within
 * the span; a repeated string is free. Otherwise the fingers are placed anew. They may be at any time, and
 * the split chooses the best: a player shifts where it is easy, not where the fingers run out. A hand that
 * neither plays nor holds anything in a slice is lifted, and its next notes begin a new placement. How far a
 * hand moves is measured from the keys that it struck last: the steps by which these and the next ones exceed
 * its span.
 *
 * A *line* leads from a note to the next one of its voice, if that follows without a rest and no leap wider
 * than the span. Between two chords of a voice lines pair their notes from the outside in; surplus inner
 * notes have none.
 *
 * WHAT CAN'T BE (each such slice costs SW_HANDS_IMPOSSIBLE and is reported; the least bad split is taken)
 *   - more keys in a hand than it has fingers,
 *   - a hand spread wider than its span. A hand whose keys are all struck at this moment and *rolled* (one
 *     after the other) moves while it plays: it has no span. With `may_roll` any chord may be rolled, at a
 *     cost that is paid only where it makes the difference.
 * If notes hold their finger (SW_HOLD_FIRM, keyboards) sounding notes count fully. On the harp (SW_HOLD_SOFT)
 * a string rings by itself: only the notes plucked together need fingers and span, and ringing ones make a
 * smaller, soft cost. The ringing notes still do not cross and keep their hand, which keeps the staves
 * readable.
 *
 * WHAT COSTS (the figures are the enum below)
 * Several costs are *by hurry*: times the part of settle_seconds by which a hand has less since it last
 * struck something. A hand with time to settle pays none of them.
 *   - bound: a glissando or a tremolo goes from one hand to the other; only where the fingers leave no other
 * way. Within one hand it is free, however far it goes: the hand moves along.
 *   - line: a line changes hands; dear for steps, cheap for anything wider, free after a rest. One pass is
 *     counted once, however many notes follow, so that an arpeggio goes hand over hand in full placements.
 *   - group: it changes hands within a group (a beam, a beat); so runs pass in whole groups.
 *   - shift, by hurry: fingers are placed anew in the midst of a line of single notes that the hand plays
 *     on. By step this is the thumb passing under (a finger crossing over), which is cheap. On thirds to
 *     fifths it breaks an arpeggio and costs more than handing the line over. On a wide leap the hand jumps
 *     anyhow.
 *   - haste, by hurry: a hand takes a line over on other keys than it struck last.
 *   - short run: a hand gives away a line of single notes of which it has played less than four, or than
 *     three where a group ends.
 *   - crossing: the middle of what the left hand strikes lies above the middle of what the right hand struck
 *     last (or the other way about), in succession, while the other hand is still in place: it had keys until
 *     now, or struck some within settle_seconds. The left hand over the right is customary in arpeggios, the
 *     more so the higher; the right hand under the left is not. Under a left hand that came over it the right
 *     hand may go on, or come back to where it was. At one moment (`may_cross`) beginning it costs, and each
 *     slice a little.
 *   - time: the hand has less time for its way than it needs. A thumb that passes under needs none. With
 *     `in_turn` (mallets) the hands strike a single line in turn as long as the other one has nothing else to
 *     strike, on whichever staff it stands: it hurries no hand.
 *   - stretch: wider than comfortable.
 *   - balance: one hand full while the other is nearly empty; one hand spread beyond an octave, or with two
 *     voices of the source, while the other is idle.
 *   - register: left above and right below middle C, weakly; the harp's right hand has a lower end as well.
 *
 * WHY IT IS EXACT
 * The cost of a slice depends on its split, on the split of the slice before (lines, kept hands), on the two
 * placements and on how the hands lie crossed. Because the hands do not cross at one moment, a split settles
 * the hand of every sounding note, so nothing else has to be remembered of the past: two ways to the same
 * split with the same placements and crossing have the same future, and only the cheaper one can be part of
 * an optimum. That is dynamic programming over states (split, left placement, right placement, crossing). Of
 * a placement the keys themselves have to be remembered: which of them is repeated later decides whether a
 * finger is left, so number and range would not do. But a lifted hand has no fingers placed, and a place that
 * lies so long back that the hand could have gone anywhere meanwhile is forgotten; both merge states without
 * changing any cost. See hand_split.c for what is dropped early and why that is safe.
 *
 * Ties between equally good ways go to the split nearest to the one before, then to the lower one. */
#ifndef STAVEWRIGHT_PLAYERS_HAND_SPLIT_H
#define STAVEWRIGHT_PLAYERS_HAND_SPLIT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "stavewright/base.h"
#include "stavewright/rational.h"

typedef enum sw_hand { SW_LEFT_HAND, SW_RIGHT_HAND } sw_hand;

/* Costs in points; 100 points are a scale that changes hands from one step to the next. All figures are
 * common practice, no source, except where one is named; they were weighed against each other on the harp
 * parts of the demo film in corpus/. */
enum {
    SW_HANDS_IMPOSSIBLE = 1000000000, /* a slice that a limit forbids: never chosen for any soft gain */
    SW_HANDS_EXCESS = 1000000,        /* in such a slice: each key and each step beyond a limit */
    SW_HANDS_LINE_STEP = 100,         /* a line changes hands on a repeated note or a step */
    SW_HANDS_LINE_LEAP = 20,          /* on a wider interval */
    SW_HANDS_WITHIN_GROUP = 20,       /* in addition, not at the beginning of a beam or beat */
    SW_HANDS_BOUND = 100000,          /* a glissando or tremolo is in one hand and in the other */
    SW_HANDS_ROLL = 5000,             /* a chord is rolled that is not marked so */
    SW_HANDS_SHIFT_STEP = 40,     /* by hurry: fingers placed anew on a repeated note or a step of a line */
    SW_HANDS_SHIFT_SKIP = 250,    /* on a third, fourth or fifth */
    SW_HANDS_SHIFT_LEAP = 80,     /* on a wider interval */
    SW_HANDS_HASTE = 200,         /* by hurry: fingers placed anew to take a line over */
    SW_HANDS_SHORT_RUN = 15,      /* a line given away: each note short of four */
    SW_HANDS_OVER = 10,           /* the left hand crosses over the right, */
    SW_HANDS_OVER_LOW = 3,        /* and each step that the right hand lies below middle C then; */
    SW_HANDS_UNDER = 150,         /* the right under the left, and at most that for the left over it */
    SW_HANDS_CROSSED = 100,       /* with may_cross: the left hand lies over the right at one moment, */
    SW_HANDS_CROSSED_ON = 5,      /* and each slice in which it does */
    SW_HANDS_TOO_QUICK = 300,     /* times the part of the needed seconds that is missing (0..1) */
    SW_HANDS_STRETCH = 20,        /* each step beyond the comfortable span */
    SW_HANDS_UNEVEN = 15,         /* each key by which one hand has more than four more than the other */
    SW_HANDS_IDLE = 30,           /* one hand spans more than an octave, the other has no key */
    SW_HANDS_TWO_VOICES = 40,     /* two voices sound in one hand, and the other has no key */
    SW_HANDS_LEFT_HIGH = 2,       /* a struck key of the left hand, each step above middle C */
    SW_HANDS_RIGHT_DEEP = 3,      /* of the right hand, each step below: it seldom goes there */
    SW_HANDS_RIGHT_LOW = 10,      /* a struck key, each step below the right hand's good range */
    SW_HANDS_RIGHT_LOWEST = 2000, /* a struck key below the right hand's end */
    SW_HANDS_RING_KEY = 30,       /* soft holds: each ringing key beyond the fingers of a hand that plays */
    SW_HANDS_RING_STEP = 3        /* soft holds: each step of ringing keys beyond the span of such a hand */
};

typedef enum sw_hold {
    SW_HOLD_FIRM, /* a sounding note keeps its finger (keys) */
    SW_HOLD_SOFT  /* a sounding note rings by itself (strings of a harp) */
} sw_hold;

/* Another span from some height on. */
typedef struct sw_hand_reach {
    int from;    /* step of the hand's lowest key, at least */
    int span;    /* as in sw_hand_limits, and not less than below */
    int comfort; /* not above span */
} sw_hand_reach;

enum { SW_HANDS_REACHES = 6 };

typedef struct sw_hand_limits {
    int fingers; /* keys that a hand can take at once, and that a placement holds */
    int span;    /* widest spread of a hand in steps: an octave is 7, a tenth 9 */
    int comfort; /* widest comfortable spread; not above span */
    sw_hand_reach
        reaches[SW_HANDS_REACHES]; /* upwards; below the first of them the two figures before hold */
    size_t reach_count;
    bool may_roll;       /* chords may be rolled where they are too wide */
    bool may_cross;      /* the left hand may lie over the right at one moment */
    bool in_turn;        /* a single line is struck by both hands in turn */
    bool by_string;      /* true: C sharp and D flat are two strings; false: they are one key */
    sw_hold holds;       /* what a note that still sounds means for its hand */
    double hold_seconds; /* a note occupies its hand at most so long; INFINITY: until its end. A shorter time
                          * frees the hands to cross over strings that ring, but a line whose note has been
                          * let go is no longer followed. */
    double travel_seconds;   /* what any move of a hand takes */
    double seconds_per_step; /* what each step of the move adds */
    double settle_seconds;   /* with so much time since its last note a hand is free to begin anew anywhere */
    int left_high;           /* steps above middle C that count against the left hand, at most */
    int right_low;           /* lowest step of the right hand's good range; INT_MIN: none */
    int right_lowest;        /* lowest step that the right hand reaches; INT_MIN: none */
} sw_hand_limits;

/* Harp: the left hand reaches everything (Freund & Cutler), so height counts little; 4 fingers
 * (Rimsky-Korsakov; Bligh, "Writing for the Pedal Harp"), a tenth is easy and is taken as the limit (Freund &
 * Cutler, "Extreme Orchestration"), right hand not far below C3 (Goss, "100 Orchestration Tips") and not
 * below G2 (Freund & Cutler); soft holds. Travel and settling: common practice, no source. */
sw_hand_limits sw_hand_limits_harp(void);
/* Piano and celesta: 5 fingers; a ninth is comfortable, a tenth the limit (derived from the spans in Boyle,
 * Boyle & Booker's study of 473 pianists: 8.5 inches for a tenth, which 76 % of men and 13 % of women have);
 * firm holds. Travel and settling: common practice, no source. */
sw_hand_limits sw_hand_limits_piano(void);
/* Marimba, vibraphone, xylophone: two mallets a hand (Solomon, "How to Write for Percussion"); strokes ring
 * by themselves: soft holds. An octave; what is wider depends on the register and the instrument, see
 * instruments.yaml. Travel and settling: common practice, no source. */
sw_hand_limits sw_hand_limits_mallets(void);
/* The widest spread of a hand whose lowest key is at this step, and the widest comfortable one. */
int sw_hand_span_at(const sw_hand_limits *limits, int lowest);
int sw_hand_comfort_at(const sw_hand_limits *limits, int lowest);

typedef struct sw_hand_note {
    uint32_t id;       /* the caller's, only handed back in problems */
    sw_rational onset; /* whole notes from the beginning */
    sw_rational end;   /* a note with end <= onset (a grace note) sounds in its own slice only */
    double seconds;    /* onset in real time, not decreasing with the onset */
    int semitone;      /* MIDI key number */
    int step;          /* steps of the staff above middle C */
    uint32_t voice;    /* notes of one line have the same number */
    uint32_t group;    /* 0, or the beam or beat that it stands in, a number of its own for each */
    bool rolled;       /* in a rolled chord */
    int grace;         /* 0, or for grace notes before the note at this onset their order: -n .. -1 */
    bool bound;        /* a glissando leads from it to the next note of its voice, all in one hand */
    bool tied; /* continues an earlier note of this pitch (of the same voice, or else one that ends here);
                * if there is none, the note counts as struck */
} sw_hand_note;

typedef enum sw_hand_reason {
    SW_HANDS_MANY,          /* more keys than both hands have fingers */
    SW_HANDS_WIDE,          /* no split brings both hands within their span */
    SW_HANDS_MANY_AND_WIDE, /* both */
    SW_HANDS_MANY_OR_WIDE,  /* each split breaks either the fingers or the span */
    SW_HANDS_HELD,          /* playable alone, but not with the hands that hold earlier notes */
    SW_HANDS_QUICK,         /* `hand` has less time for its way than it needs */
    SW_HANDS_LOW            /* right hand below its lowest step */
} sw_hand_reason;

typedef struct sw_hand_problem {
    sw_hand_reason reason;
    sw_rational onset;
    int grace;
    sw_hand hand;        /* QUICK, LOW: the hand concerned; else the one that exceeds its limits more */
    int keys[2];         /* by hand: keys that need a finger, as split */
    int steps[2];        /* by hand: their spread in steps (for LOW of the right hand see lowest) */
    int least_steps;     /* the spread of the wider hand in the split where that is least, fingers aside */
    int lowest;          /* step of the lowest struck key of `hand`, INT_MAX if it strikes none */
    int travel_steps;    /* QUICK: how far the hand moves, at least one step */
    double needed;       /* QUICK: seconds it needs for that */
    double available;    /* QUICK: seconds it has */
    const uint32_t *ids; /* the notes of the slice, from low to high */
    size_t id_count;
} sw_hand_problem;

typedef struct sw_hand_split {
    const sw_hand *hands; /* one for each note, in the order given */
    const bool
        *rolls;   /* for each note: it is struck in a chord that has to be rolled, and is not marked so */
    int64_t cost; /* total in points, least possible if `exact` */
    bool exact;   /* false: a slice had more states than are kept (SW_HANDS_MAX_STATES), so a better
                   * way may exist; does not happen in playable music */
    const sw_hand_problem *problems; /* in order of time */
    size_t problem_count;
} sw_hand_split;

enum { SW_HANDS_MAX_STATES = 2048 };

/* Gives each note a hand at the least total cost. `notes` may come in any order; equal moments keep theirs.
 * All that the result points to lives in `arena`. No errors: an impossible slice is a problem in the result.
 */
sw_hand_split sw_hands_split(sw_arena *arena, const sw_hand_note *notes, size_t count,
                             const sw_hand_limits *limits);

#endif
