/* What `give`, `double` and `share` work on, shared by their files. Private to moves/.
 *
 * Functions that return bool with an `error` are false with a message in *error, which the caller frees;
 * nothing is changed then. */
#ifndef SW_MOVES_GIVE_PLAN_H
#define SW_MOVES_GIVE_PLAN_H

#include "checks/entry.h"
#include "moves/figures.h"
#include "moves/places.h"
#include "stavewright/move.h"

typedef struct sw_give_plan {
    sw_move *move;
    const sw_give_options *options;
    sw_chosen chosen;
    sw_figures figures;
    const sw_techniques *techniques; /* of the figures */
    uint32_t source;                 /* staves */
    uint32_t target;
    sw_entry from; /* how the two are entered, at the beginning of the passage */
    sw_entry to;
    sw_rational begin; /* of the passage, in whole notes from the score's beginning */
    sw_rational end;
    uint32_t voice; /* of the target, with the rests */
    sw_pitch interval;
    uint32_t *left; /* marks that the target does not play, and grace notes; owned */
    size_t left_count;
    size_t left_capacity;
    sw_change *changes; /* owned by the line; its parts only lengthen it */
    size_t count;
    size_t capacity;
    int octaves;                /* by which the line goes, or more if that does not fit */
    char *dynamic;              /* that the target's first note gets; owned */
    struct sw_give_plan *parts; /* of a run that is shared: each with its own target; of any other line:
                                   stretches in which one interval leads from staff to staff; owned */
    size_t part_count;
} sw_give_plan;

/* ---- give_plan.c: the plan itself ---- */

/* Sets *error to a message of two texts, either of which may be empty; owned by the caller. Always false. */
bool sw_give_fail(char **error, const char *format, const char *a, const char *b);
/* What a staff is called, for messages; written to `text` where it has no name. */
const char *sw_give_label(const sw_give_plan *g, uint32_t staff, char text[32]);
/* The i-th chosen note. */
const sw_event *sw_give_event(const sw_give_plan *g, size_t i);
/* Whether a note or chord, or a note in it, is tied to the next one. */
bool sw_give_has_tie(const sw_reading *reading, uint32_t music);
/* Appends a change; what it points to stays the caller's. */
void sw_give_add_change(sw_give_plan *g, sw_change change);
/* Adds a part with the chosen notes [first, end). It begins with the changes of the line, and what it adds
 * goes back with sw_give_take_changes. Owned by `g`, whose `parts` has room for it. */
sw_give_plan *sw_give_add_part(sw_give_plan *g, size_t first, size_t end);
/* Takes the changes from the part that was added last. */
void sw_give_take_changes(sw_give_plan *g, const sw_give_plan *part);
/* Frees the parts and what is theirs. */
void sw_give_free_parts(sw_give_plan *g);

/* ---- give_staves.c: the two staves ---- */

/* Finds source, target (the staff called `to`), beginning and end of the passage. An error where the notes
 * are not of one voice with pitches, or the target has them already. */
bool sw_give_find_staves(sw_give_plan *g, const char *to, char **error);
/* An error when a note that is given away is held over the beginning or the end of the passage: half of it
 * can't go. */
bool sw_give_is_whole(const sw_give_plan *g, char **error);
/* Silences the notes of the target in the passage with --over; without it the first of them is a finding. An
 * error where they reach beyond the passage. */
bool sw_give_clear_target(sw_give_plan *g, char **error);
/* Finds the voice of the target that is there at the beginning; skips are of voices that hold only marks. */
bool sw_give_find_voice(sw_give_plan *g, char **error);
/* Lets the source fall silent. An error where a hairpin leads over the edge of the passage. */
bool sw_give_silence_source(sw_give_plan *g, char **error);

/* ---- give_dynamics.c: dynamics at the edges ---- */

/* Whether a hairpin of a voice is open at a moment: the last thing said before it there. */
bool sw_give_in_hairpin(const sw_give_plan *g, uint32_t voice, sw_rational moment);
/* Takes the dynamics from a note that falls silent: the line brings its own. */
void sw_give_drop_dynamics(sw_give_plan *g, uint32_t event);
/* Sets the text of the run to what the first note of the copy says about loudness when the line does not say
 * it there; owned by `g`. */
void sw_give_find_dynamic(sw_give_plan *g, sw_change *change);

/* ---- give_pitch.c: how the staves are entered ---- */

/* How a middle C of a staff sounds that is entered so. What has to be assumed for it is noted once. */
sw_pitch sw_give_sounds(sw_give_plan *g, const sw_entry *entry, uint32_t staff);
/* Finds the interval from the source's written notes to the target's, with the octaves that bring the line
 * into its compass. An error where no octave does. */
bool sw_give_find_interval(sw_give_plan *g, char **error);
/* Finds how both staves are entered, from the entries of all staves; an error where that changes within the
 * passage, so that no one interval leads from staff to staff. */
bool sw_give_take_entries(sw_give_plan *g, const sw_entries *entries, char **error);
/* The same, where the caller has no entries. */
bool sw_give_find_entries(sw_give_plan *g, char **error);
/* Where, behind a moment, one of the staves is first written in another key; otherwise the passage's end. */
sw_rational sw_give_end_of_key(sw_give_plan *g, const sw_entries *entries, sw_rational moment);

/* ---- give_marks.c: what the target does not play ---- */

/* A doubling does without grace notes that can't be copied, and without the slurs that lead from them to
 * their main notes; they are noted. A line that moves would lose them, so there the edit refuses. */
void sw_give_leave_graces(sw_give_plan *g);
/* Finds marks that the target has no use for, and tells of them. Fingerings are of the instrument that they
 * were written for. */
void sw_give_find_left(sw_give_plan *g);
/* Tells of the first chord that the target's only player can't blow. */
void sw_give_tell_chords(sw_give_plan *g);
/* The first chosen note that is copied: what is left is known. */
size_t sw_give_first_copied(const sw_give_plan *g);

/* ---- give_copy.c, give_share.c: the whole line ---- */

/* Plans the copy of the chosen notes for the staff called `to`, also where a player changes the instrument.
 * `kind`: SW_CHANGE_COPY_RUN or SW_CHANGE_MOVE_RUN. */
bool sw_give_plan_copy(sw_give_plan *g, const char *to, sw_change_kind kind, char **error);
/* Plans a run that is shared among the staves that the options name. */
bool sw_give_plan_shared(sw_give_plan *g, char **error);

#endif
