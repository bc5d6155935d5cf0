/* In which octave each note of a line stands: an exact optimum. Pure: heights and marks in, octaves out.
 *
 * THE MODEL
 * A line is a sequence of *strokes*: single notes, or chords, which move as a whole. Each gets an *offset* of
 * -3 to 3 octaves. Where two neighbours have different offsets there is a *seam*. Between them lies a
 * *joint*, of which is known what the music does there: a slur goes on, a rest stands there, and so on.
 *
 * WHAT COSTS
 *   - place: each note outside of the range, and each semitone by which it is; then, where the range says
 *     so, each semitone outside of its comfortable part; then moving at all.
 *   - seam: one is dear in a slur, a beat group or a scale run, and cheaper behind a rest or a long note, at
 *     the beginning of a phrase, and on a repeated note. What it does to the line comes on top: another
 *     direction than before, or a leap wider than an octave. Behind a rest both matter less (a quarter of it,
 * or half of it: these costs divide by four). Of a joint only what octaves can't change counts: rhythm,
 * marks, and intervals up to octaves. So what costs an octave to get in costs no more to go round in two
 * steps, and a line that has been moved to its optimum stays there when it is solved again.
 *
 * WHICH OF EQUALLY GOOD WAYS
 * The one with the fewest moved strokes; then the one whose first difference is that it has a seam where the
 * other has none (the earliest seam); then, from the last stroke back, the smaller offset, the upper one of
 * two. */
#ifndef SW_MOVES_OCTAVE_LINE_H
#define SW_MOVES_OCTAVE_LINE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum { SW_OCTAVE_MOST = 3, SW_OCTAVE_OFFSETS = 2 * SW_OCTAVE_MOST + 1 };

enum {                                 /* sw_octave_stroke.joint: what lies before a stroke */
       SW_JOINT_BOUND = 1 << 0,        /* a tie, a tremolo, a grace note at its main note: no seam */
       SW_JOINT_SLUR = 1 << 1,         /* a slur goes on */
       SW_JOINT_PHRASE = 1 << 2,       /* a phrasing slur goes on */
       SW_JOINT_BEAT = 1 << 3,         /* both are short notes of one beat, or of one written beam */
       SW_JOINT_SCALE = 1 << 4,        /* a step of a scale run */
       SW_JOINT_GLISSANDO = 1 << 5,    /* leads from one to the other */
       SW_JOINT_REST = 1 << 6,         /* silence of a quarter at least, or the line begins here */
       SW_JOINT_SHORT_REST = 1 << 7,   /* less */
       SW_JOINT_PHRASE_START = 1 << 8, /* a slur or phrase begins here, or a breath is taken before */
       SW_JOINT_LONG = 1 << 9,         /* the note before is long */
       SW_JOINT_REPEATED = 1 << 10     /* the same note again, whatever its octave */
};

/* Costs in points; 160 points are a seam where nothing speaks for or against it. All are common practice, no
 * source; they were weighed against each other on real scores. */
enum {
    SW_OCTAVE_OUTSIDE = 100000,       /* a stroke outside of the range: dearer than any two seams, so that
                                         what can be inside is; */
    SW_OCTAVE_OUTSIDE_SEMITONE = 100, /* and each semitone, so that the least bad place is taken */
    SW_OCTAVE_STRAINED = 1,           /* a semitone outside of the comfortable part, */
    SW_OCTAVE_STRAINED_MOST = 24,     /* up to so many */
    SW_OCTAVE_MOVED = 8,         /* a stroke moved by an octave: the composer's octave is worth a little */
    SW_OCTAVE_MOVED_INSIDE = 65, /* when folding, a stroke moved that was inside: some come along before a
                                    slur is broken, but not a whole line for one note */
    SW_OCTAVE_SEAM = 160,
    SW_OCTAVE_IN_SLUR = 240, /* the player feels it in bow or breath */
    SW_OCTAVE_IN_PHRASE = 100,
    SW_OCTAVE_IN_BEAT = 100,      /* one gesture of the hand; read as one */
    SW_OCTAVE_IN_SCALE = 200,     /* the most audible break there is */
    SW_OCTAVE_GLISSANDO = 400,    /* it would slide elsewhere */
    SW_OCTAVE_REST = -110,        /* nobody hears a seam behind silence */
    SW_OCTAVE_SHORT_REST = -50,   /* staccato and quick rests hold a figure together */
    SW_OCTAVE_PHRASE_START = -60, /* a new thought may begin in a new place */
    SW_OCTAVE_LONG = -50,         /* the ear has settled, and the player has time */
    SW_OCTAVE_REPEATED = -50,     /* an octave leap on one note sounds meant */
    SW_OCTAVE_SEAM_LEAST = 20,    /* whatever speaks for it: motives keep their shape across rests */
    SW_OCTAVE_TURN = 56,          /* the line goes down where it went up, or up where it went down; */
    SW_OCTAVE_LEVEL = 28,         /* it stands still where it moved, or moves where it stood still */
    SW_OCTAVE_LEAP = 80,          /* a leap wider than an octave, */
    SW_OCTAVE_LEAP_SEMITONE = 4,  /* each semitone beyond, */
    SW_OCTAVE_LEAP_MOST = 48      /* up to so many */
};

typedef struct sw_octave_stroke {
    int low;        /* semitones above middle C: its lowest note, */
    int high;       /* its highest, both compared with the range, */
    int line;       /* and the one by which the line goes on */
    unsigned joint; /* SW_JOINT_..., the first stroke's means nothing */
    bool fixed;     /* stays where it is: not chosen, but a neighbour of what is */
} sw_octave_stroke;

typedef struct sw_octave_range {
    int low; /* semitones above middle C */
    int high;
    int easy_low; /* the comfortable part; the same where there is none */
    int easy_high;
    bool fold; /* what is inside stays where that is smooth */
} sw_octave_range;

/* How many semitones of a stroke lie outside of the range when it is moved. */
int sw_octave_outside(const sw_octave_stroke *stroke, const sw_octave_range *range, int offset);
/* What a place costs. */
int64_t sw_octave_place_cost(const sw_octave_stroke *stroke, const sw_octave_range *range, int offset);
/* What it costs to go from a stroke at one offset to the next at another; -1: that can't be. */
int64_t sw_octave_joint_cost(const sw_octave_stroke *before, const sw_octave_stroke *stroke, int from,
                             int to);
/* Writes the best offsets of a line to offsets[0 .. count-1] and returns what they cost; -1 when fixed and
 * bound strokes contradict each other, which two fixed ones never do. Needs time in proportion to `count`. */
int64_t sw_octave_solve(const sw_octave_stroke *strokes, size_t count, const sw_octave_range *range,
                        int8_t *offsets);

#endif
