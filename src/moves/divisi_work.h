/* What `divisi` works on, shared by its files. Private to moves/.
 *
 * Chords are indices into the plan's. Texts that are made stand in the arena. Nothing here fails, except
 * where a function has an `error`: it is false then, with a message in *error, which the caller frees. */
#ifndef SW_MOVES_DIVISI_WORK_H
#define SW_MOVES_DIVISI_WORK_H

#include "moves/choices.h"
#include "moves/divisi_plan.h"
#include "players/playing.h"

typedef struct sw_divisi_work {
    sw_move *move;
    const sw_divisi_options *options;
    sw_divisi_plan plan;
    const sw_instruments *instruments;
    const sw_instrument *instrument;
    sw_divisi_fit fit;
    int players; /* of the staff; 0: not known */
    bool words;  /* its players say "div." */
    const sw_playing *playing;
    const sw_techniques *techniques;
    uint8_t divided; /* the technique */
    sw_choices choices;
    sw_arena *arena;
    uint32_t *tremolos; /* strokes that only one half gets: MARK nodes, in the arena */
    size_t tremolo_count;
    const uint32_t *dropped; /* texts that staves of single players do without: MARK nodes, in the arena */
    size_t dropped_count;
    int open;            /* in how many parts the last passage has left the staff; 0: together */
    int divided_players; /* of that passage */
    sw_rational since;   /* where it has said so; den 0: nowhere */
} sw_divisi_work;

/* ---- divisi_work.c: at a chord ---- */

/* When a chord begins, in whole notes from the score's beginning. */
sw_rational sw_divisi_onset(const sw_divisi_work *w, size_t chord);
/* Tells of a chord that stays as it is, or of what is to be done by hand there. */
void sw_divisi_tell(const sw_divisi_work *w, size_t chord, const char *text);
/* Adds a mark, as it is written ("^\"div.\"", ":32"), to the choice that was begun last. */
void sw_divisi_add_text(sw_divisi_work *w, size_t chord, const char *text);

/* ---- divisi_said.c: what the source says ---- */

/* Whether a word (NULL: none) says that the players divide. */
bool sw_divisi_says_divided(const sw_divisi_work *w, const sw_technique_word *word);
/* The last word about division on the staff that stands behind a moment (den 0: at any time) and not behind
 * another one; NULL: there is none. "tutti ord." beside "non div." takes nothing back of it. */
const sw_technique_word *sw_divisi_word_between(const sw_divisi_work *w, sw_rational behind,
                                                sw_rational until);
/* Whether a text at a chord says who of the players plays, and stays on the staves. */
bool sw_divisi_says_who(const sw_divisi_work *w, size_t chord);
/* Sets what the words of the staff say of each chord: double stops are left, and how many play. */
void sw_divisi_read_words(sw_divisi_work *w);

/* ---- divisi_words.c: the words of a division ---- */

/* The text with which a passage begins. False where the staff has one itself: its end is no matter then. */
bool sw_divisi_say_division(sw_divisi_work *w, const sw_divisi_passage *passage);
/* Winds say who is left where not all of them hold on, and that all play again behind it. */
void sw_divisi_say_who_holds(sw_divisi_work *w, const sw_divisi_passage *passage);
/* The text behind a passage: at the next note that is not divided. Single notes of a section between two
 * passages, for less than a bar, have none: it stays divided. */
void sw_divisi_say_end(sw_divisi_work *w, const sw_divisi_passage *passage);

/* ---- divisi_voices.c: two voices ---- */

/* Whether a passage stands in a written-out tremolo, or has a tuplet within a tuplet: no second voice is
 * written there. */
bool sw_divisi_is_too_deep(const sw_divisi_plan *plan, const sw_divisi_passage *passage);
/* Whether no tie leads from one voice into another, or out of both. */
bool sw_divisi_ties_hold(const sw_divisi_work *w, const sw_divisi_passage *passage);
/* The lower voice gets the notes of the lower parts, and the chords lose what only the lower parts have. */
void sw_divisi_write_voices(sw_divisi_work *w, const sw_divisi_passage *passage);
/* Tells of grace notes in a passage: a second voice has none. */
void sw_divisi_tell_graces(const sw_divisi_work *w, const sw_divisi_passage *passage);

/* ---- divisi_tremolo.c: half tremolo, half plain ---- */

/* Writes two voices: the upper one gets strokes on all its notes, the lower one none. */
void sw_divisi_write_halves(sw_divisi_work *w, const sw_divisi_passage *passage);
/* Leaves, and tells of, notes on which so many strokes can't be written, plucked and trilled ones. */
void sw_divisi_leave_short_notes(sw_divisi_work *w);

/* ---- divisi_why.c: what is told ---- */

/* Begins the choice of a passage, with what each part has to play. */
void sw_divisi_begin_choice(sw_divisi_work *w, const sw_divisi_passage *passage);
/* A line for each chord that was chosen and is left as it is, for want of parts or players. */
void sw_divisi_tell_left(sw_divisi_work *w, const sw_divisi_wish *wish);

/* ---- divisi_singles.c: single notes ---- */

/* Takes single notes of winds from those who don't play them; strings and voices all play. `event_parts`: by
 * event, bit 0 is the uppermost part. */
void sw_divisi_share_singles(const sw_divisi_work *w, int parts, uint8_t *event_parts);
/* Leaves what one of the winds plays alone: it is no second voice. */
void sw_divisi_leave_single_players(sw_divisi_work *w);

/* ---- divisi_staves.c: a staff a part ---- */

/* Finds the passages and writes a staff for each part, into the move's patch, and proves it; everybody plays
 * what is not divided. An error where that can't be written. */
bool sw_divisi_write_staves(sw_divisi_work *w, const sw_read_options *options, char **error);

#endif
