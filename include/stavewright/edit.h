/* Changes as data: what a transformation, a fix or a recipe wants of a score.
 *
 * A change names what is heard (events of a score) and what shall be heard instead. sw_edit_score turns a
 * list of changes into the smallest text edits in the style of the file, reads the result back, and compares:
 * any difference that the changes did not declare refuses the edit, and the patch stays empty.
 *
 * Every change of notes keeps time: what a note loses becomes a rest, what it gains is taken from the rests
 * behind it. So bars keep their length, and each edit stays where its note is written. */
#ifndef STAVEWRIGHT_EDIT_H
#define STAVEWRIGHT_EDIT_H

#include "stavewright/change.h"

typedef enum sw_change_kind {
    /* notes; a note tied to the next is one note with it */
    SW_CHANGE_PITCH,       /* `event` sounds at `pitch`; another spelling of the same height is one too */
    SW_CHANGE_END,         /* the notes of `event`'s chord end at `moment`: the rest of their time is silent,
                              or the rests behind them are taken */
    SW_CHANGE_SPLIT,       /* they are struck again at `moment` */
    SW_CHANGE_TIE,         /* they are written as two tied notes, divided at `moment` */
    SW_CHANGE_ADD_NOTE,    /* the chord of `event` gets one more note, `pitch` */
    SW_CHANGE_REMOVE_NOTE, /* `event` goes out of its chord; a single note becomes a rest */
    SW_CHANGE_SILENCE,     /* the whole chord of `event` becomes a rest */
    SW_CHANGE_FILL,        /* the rests from `moment` (in the rest `event`) up to `until` become a note or
                              chord of `pitches` */
    /* what hangs on notes and rests */
    SW_CHANGE_ADD_MARK,     /* `text` at the chord of `event`; "\\breathe", which is a command, behind it;
                               with a `moment`: at what begins there within the chord's time */
    SW_CHANGE_REMOVE_MARK,  /* the MARK node `mark` of the chord of `event` */
    SW_CHANGE_REPLACE_MARK, /* the same becomes `text` */
    SW_CHANGE_MOVE_MARK,    /* the same goes to the chord of `last` */
    /* runs: everything of a voice from `event` up to `last`, both included */
    SW_CHANGE_WRAP,         /* is put behind the command `text` in braces, which must not change what is
                               heard: "\ottava ..." does, "\tag #'score" does not */
    SW_CHANGE_UNWRAP,       /* the node `mark` is such a run: "text { ... }"; the command and its braces go */
    SW_CHANGE_COPY_RUN,     /* is written into the rests of `voice` at the same time, higher by the interval
                               from middle C to `pitch`, without the marks `left`; its first note gets the
                               mark `text` unless that is NULL */
    SW_CHANGE_MOVE_RUN,     /* the same, and becomes rests here */
    SW_CHANGE_NEW_VOICE,    /* gets a second voice: skips, and from `moment` to `until` a chord of `pitches`.
                               Or, with `notes` of the run, skips and these notes as long as they are, with
                               their ties and what says how they are played, without the marks `left`; its
                               first note gets the mark `text` unless that is NULL; tuplets that are part of
                               the run as a whole are written in both voices */
    SW_CHANGE_UNITE,        /* the node `mark` is two voices side by side in one rhythm, `event` being the
                               first of its first voice: it gets the notes of the second one, which goes */
    SW_CHANGE_NEW_VARIABLE, /* moves into a variable called `text`, used in its place */
    SW_CHANGE_NEW_STAFF,    /* `event` is any of a staff: a staff called `text` is put below, with a copy of
                               nothing but its bars, clef and key */
    /* bars: all lines of the score, and of the other scores that share them */
    SW_CHANGE_INSERT_BARS, /* `count` empty bars come in at the bar line `moment`, as long as the bar before.
                              Commands at the bar line that stand behind its bar check stay with the music
                              that follows; comments that only number bars count on. A tie over the bar
                              line goes */
    SW_CHANGE_DELETE_BARS  /* the bars from the bar line `moment` up to the bar line `until` go, with all that
                              hangs on their notes, and the words sung on them. Slurs, beams and hairpins that
                              lose one end get another at the nearest note outside; a tie into the bars goes,
                              unless the note is held through all of them. Clefs, keys, times and the like in
                              them stay for what  follows */
} sw_change_kind;

typedef struct sw_change {
    sw_change_kind kind;
    uint32_t event; /* indices into the score's events */
    uint32_t last;
    uint32_t voice;     /* index into the score's voices */
    uint32_t mark;      /* index into the reading's music */
    sw_rational moment; /* whole notes since the beginning of the score */
    sw_rational until;
    sw_pitch pitch;          /* as the event's: after \transpose, before \transposition */
    const sw_pitch *pitches; /* ascending */
    size_t pitch_count;
    const uint32_t
        *left; /* MARK nodes, and notes or chords of grace notes; indices into the reading's music */
    size_t left_count;
    const uint32_t *notes; /* events */
    size_t note_count;
    const char *text;
    int32_t count; /* bars */
} sw_change;

/* What happens where a changed note is written once and heard in several places of the score (in a variable
 * used twice, in an unfolded repeat). Other scores that use it follow, which
 * `notes` says; cues and percent repeats do, too. */
typedef enum sw_elsewhere {
    SW_ELSEWHERE_REFUSE, /* the edit is refused, and says where else */
    SW_ELSEWHERE_FOLLOW, /* all places change; `notes` says where else */
    SW_ELSEWHERE_COPY    /* the place gets a copy of the variable of its own */
} sw_elsewhere;

typedef struct sw_edit_request {
    const sw_reading *reading; /* must be in `mains` */
    const sw_score *score;     /* of that reading */
    const sw_change *changes;
    size_t count;
    sw_elsewhere elsewhere;
    sw_reading *const *mains; /* readings of all main files that may use the changed texts */
    size_t main_count;
    const sw_read_options *options; /* with which they were read; may be NULL */
} sw_edit_request;

/* Makes the edits and proves them. True: `patch` (which must be empty) holds the change, perhaps nothing when
 * everything is so already, and `notes` has a line for each other place that changes along. False: *error is
 * a sentence, with file:line:column where there is a place (free() it), and the patch is empty. */
bool sw_edit_score(const sw_edit_request *request, sw_patch *patch, sw_buffer *notes, char **error);

#endif
