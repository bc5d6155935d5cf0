/* The draft of an edit: the written items that it touches, each as the cells that it shall hold.
 *
 * Changes speak of what is heard, the text has written items (note, chord, rest, q ...). A draft stands
 * between them. An item that a change touches is copied into the draft as one cell; changes cut cells, fill
 * them, empty them, and move marks. The cells of an item always fill its length: an item is replaced by items
 * of the same length together, in the same frame (tuplet, transposition, repeat, variable). That is what
 * makes an edit right in every frame without knowing all of them.
 *
 * Pitches in cells are as written in the frame of the item (before \transpose), with the octave resolved;
 * time in cells is written time (before a tuplet's factor), counted from the beginning of the item.
 * Private to write/. */
#ifndef SW_WRITE_DRAFT_H
#define SW_WRITE_DRAFT_H

#include "stavewright/edit.h"

typedef enum sw_cell_kind {
    SW_CELL_NOTES, /* a note or a chord, drums too */
    SW_CELL_REST,
    SW_CELL_FULL_REST,
    SW_CELL_SKIP
} sw_cell_kind;

typedef struct sw_cell_note {
    sw_pitch pitch;
    uint32_t old;          /* the NOTE or DRUM node that it was; SW_NO_INDEX for a new one */
    bool marked;           /* what stands at it inside of its chord comes along: fingering, \harmonic ... */
    bool tied;             /* so does its tie, where that stands inside of the chord: <c~ e> */
    bool binds;            /* gets such a tie from the edit */
    const sw_slice *texts; /* marks that stand at it inside of its chord from now on */
    size_t text_count;
} sw_cell_note;

typedef struct sw_cell_mark {
    uint32_t old; /* the MARK node that it was; SW_NO_INDEX for a new one */
    sw_slice text;
    sw_mark_class class;
} sw_cell_mark;

/* A tuplet that is written anew around cells, as a run that is copied has it: see copy_tuplets.c. */
typedef struct sw_tuplet_bracket {
    const struct sw_tuplet_bracket *around; /* the tuplet that it stands in; NULL: none */
    uint32_t frame;                         /* of the tuplet that it copies */
    sw_slice head;                          /* "\\tuplet 3/2 ", what stands before its { */
} sw_tuplet_bracket;

/* One value in such a tuplet. All cells that it is made of point to the same one. */
typedef struct sw_tuplet_value {
    const sw_tuplet_bracket *bracket; /* the innermost around it */
    sw_duration value;                /* as it is written in there */
} sw_tuplet_value;

/* The outermost one around a bracket, or the bracket itself. */
const sw_tuplet_bracket *sw_tuplet_outermost(const sw_tuplet_bracket *bracket);

typedef struct sw_cell {
    sw_rational start; /* written time in the item */
    sw_rational length;
    sw_cell_kind kind;
    bool tied;                 /* goes on in the next cell of the voice, by a tie that the draft makes */
    bool apart;                /* stays a value of its own beside the one it is tied to */
    const sw_tuplet_value *in; /* the value in a tuplet that it shall be (a part of); NULL: none */
    sw_cell_note *notes;       /* ascending as written; in the draft's arena */
    size_t note_count;
    sw_cell_mark *marks; /* in the draft's arena */
    size_t mark_count;
    struct sw_grace *graces; /* written anew before it; in the draft's arena */
    size_t grace_count;
} sw_cell;

/* A grace note or chord that a copied run brings along. */
typedef struct sw_grace {
    sw_slice opens;     /* "\grace { " or "\acciaccatura " where its group begins; empty: it goes on */
    sw_slice closes;    /* " }" where its group ends; empty: it goes on, or has no braces */
    sw_rational offset; /* before the cell: negative */
    sw_rational length; /* as heard */
    sw_duration value;  /* as written */
    sw_cell cell;       /* its notes and marks */
} sw_grace;

typedef struct sw_draft_item {
    uint32_t music; /* NOTE, DRUM, CHORD, REPEAT_CHORD, BARE, REST, FULL_REST, SKIP */
    uint32_t event; /* its first event at the place where it was touched */
    sw_rational length;
    sw_rational scale; /* heard = written * scale */
    bool calls;        /* the calls in front of it stay: \tweak ... c4 */
    uint32_t *through; /* only places reached through one of these uses of variables change; none: all */
    size_t through_count;
    size_t through_capacity;
    uint32_t dissolves; /* SCALE or GRACE node around it that goes, see silent.c; SW_NO_INDEX: none */
    bool is_explicit;   /* q and bare durations: their notes are written out */
    sw_cell *cells;
    size_t cell_count; /* 0: grace notes that go */
    size_t cell_capacity;
} sw_draft_item;

/* Text that is put in at a place as it is: a command around a run. */
typedef struct sw_draft_text {
    const sw_text *file;
    uint32_t start; /* what stands up to `end` goes */
    uint32_t end;
    sw_slice text;
} sw_draft_text;

/* A run that moves into a variable of its own. */
typedef struct sw_draft_variable {
    uint32_t file;
    uint32_t place; /* where the assignment is put: before the assignment or score that holds the run */
    uint32_t from;  /* the run's text */
    uint32_t to;
    const char *name;
    uint32_t first_item;
    bool drums;
} sw_draft_variable;

/* A stretch of a second voice. */
typedef struct sw_voice_cell {
    sw_rational from; /* moments of the score */
    sw_rational to;
    bool has_value;
    sw_duration value; /* as which it is written; without one the metre divides it */
    uint32_t tuplet;   /* the node of the tuplet in which it is written; SW_NO_INDEX: none */
    sw_cell cell;
} sw_voice_cell;

/* A second voice beside a run. */
typedef struct sw_draft_voice {
    uint32_t first; /* nodes: the run */
    uint32_t last;
    sw_draft_item *item;  /* the first item of the run */
    sw_rational from;     /* moment of the score */
    sw_voice_cell *cells; /* one after the other, up to the end of the run; in the draft's arena */
    size_t cell_count;
    size_t cell_capacity;
} sw_draft_voice;

/* A staff below another one. */
typedef struct sw_draft_staff {
    uint32_t node;  /* the CONTEXT node of the other one */
    uint32_t staff; /* and its number in the score */
    uint32_t event; /* one of its events, for messages */
    const char *name;
} sw_draft_staff;

/* Bars that come in, or go. */
typedef struct sw_draft_bars {
    sw_rational moment; /* the bar line; den 0: no bars come in or go */
    sw_rational until;  /* what goes ends here; the same when bars come in */
    sw_rational bar;    /* the length of each bar that comes in */
    int32_t count;      /* how many do */
    uint32_t first;     /* how many bars of the score stand before them */
    uint32_t gone;      /* how many go */
    uint8_t **affected; /* by main file, by score: whether its lines are changed */
    size_t *own_lines;  /* by main file: 1 + the score there that has lines of its own, 0: none has */
} sw_draft_bars;

/* A variable that gets a copy, for some of its uses. */
typedef struct sw_draft_copy {
    const sw_variable *variable;
    const char *name;
    uint32_t *uses; /* REFERENCE nodes that shall name the copy */
    size_t use_count;
    size_t use_capacity;
    bool printed;
} sw_draft_copy;

/* What a note behind a node counts its octave from, where that is not the node's own last note. */
typedef struct sw_draft_exit {
    uint32_t node;
    sw_pitch pitch;
} sw_draft_exit;

/* How a pitch is called in an input language: looked up once. */
typedef struct sw_draft_name {
    uint32_t language;
    sw_pitch pitch; /* the octave does not count */
    sw_slice text;
} sw_draft_name;

typedef struct sw_draft {
    const sw_edit_request *request;
    const sw_reading *reading;
    const sw_score *score;
    uint32_t *parent; /* by music node: the node around it, SW_NO_INDEX at the top */
    uint32_t
        *before; /* by music node: the one before it in the same parent; the last of them for the first */
    uint32_t *number; /* by music node: 1 + its place in `items`, 0 when it is not touched */
    uint32_t **found; /* by main file of the request: see sw_draft_locate; NULL before */
    uint8_t *wanted;  /* by event: a change names it, as one of the places where its item is heard */
    sw_draft_item **items;
    size_t item_count;
    size_t item_capacity;
    sw_draft_text *texts;
    size_t text_count;
    size_t text_capacity;
    sw_draft_text *drops; /* those that take written music away */
    size_t drop_count;
    size_t drop_capacity;
    sw_draft_variable *variables;
    size_t variable_count;
    size_t variable_capacity;
    sw_draft_voice *voices;
    size_t voice_count;
    size_t voice_capacity;
    sw_draft_staff *staves;
    size_t staff_count;
    size_t staff_capacity;
    sw_draft_copy *copies;
    size_t copy_count;
    size_t copy_capacity;
    sw_draft_exit *exits;
    size_t exit_count;
    size_t exit_capacity;
    sw_draft_bars bars;
    uint8_t *gone;       /* by music node: its text goes; NULL: nothing does */
    uint32_t *last_gone; /* nodes: the last of each passage that goes */
    size_t last_gone_count;
    size_t last_gone_capacity;
    sw_draft_name *names;
    size_t name_count;
    size_t name_capacity;
    /* By main file: the draft of what only it has, where bars come in or go in it, too; otherwise NULL. Both
     * drafts have the edits of what they share. */
    struct sw_draft **companions;
    sw_arena *arena;
    char *error; /* the first thing that can't be done; the draft is void then */
} sw_draft;

/* By music node of a reading, for who frees it: the node around it, SW_NO_INDEX at the top. */
uint32_t *sw_parents_of(const sw_reading *reading);
sw_draft *sw_draft_new(const sw_edit_request *request);
void sw_draft_free(sw_draft *draft); /* NULL is allowed */
/* Records the first thing that can't be done, with the place of an event; returns false. */
bool sw_draft_fail(sw_draft *draft, uint32_t event, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
/* The same with the place of a music node. */
bool sw_draft_fail_at(sw_draft *draft, uint32_t music, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* The item of an event, touched from now on; NULL (and the draft's error) when it can't be edited. */
sw_draft_item *sw_draft_touch(sw_draft *draft, uint32_t event);
/* What an item was before the changes. */
sw_cell_kind sw_draft_old_kind(const sw_draft *draft, const sw_draft_item *item);
/* Whether the notes of a cell are those that the item had. */
bool sw_draft_has_old_notes(const sw_draft *draft, const sw_draft_item *item, const sw_cell *cell);
/* The item of a music node when it is touched, otherwise NULL. */
sw_draft_item *sw_draft_item_of(const sw_draft *draft, uint32_t music);
/* Whether the text of a music node goes with a bar. */
bool sw_draft_is_gone(const sw_draft *draft, uint32_t music);
/* Written time in an item of a moment of the score, seen from an event of the item. */
sw_rational sw_draft_local(const sw_draft *draft, const sw_draft_item *item, uint32_t event,
                           sw_rational moment);
/* The number of the cell that begins at a written time, made by cutting where there is none. Notes that are
 * cut go on by a tie; marks that belong to the end of a note go with its last cell. */
size_t sw_draft_cut(sw_draft *draft, sw_draft_item *item, sw_rational at);

/* Whether a note of a cell is a stroke of percussion. */
bool sw_cell_note_is_drum(const sw_reading *reading, const sw_cell_note *note);
/* Whether a note stands in the item's own text, not in that of a chord that q repeats, and is not new. */
bool sw_cell_note_is_own(const sw_draft *draft, const sw_draft_item *item, const sw_cell_note *note);
/* Whether a MARK node at a note inside of its chord comes along with the note of a cell. */
bool sw_cell_note_keeps(const sw_reading *reading, const sw_cell_note *note, uint32_t mark);
/* Sets the notes of a cell (copied). */
void sw_cell_set_notes(sw_draft *draft, sw_cell *cell, const sw_cell_note *notes, size_t count);
/* Adds a note in its place by height. */
void sw_cell_add_note(sw_draft *draft, sw_cell *cell, sw_cell_note note);
void sw_cell_remove_note(sw_cell *cell, size_t which);
/* Makes a rest of a cell of the sounding note from the chord at `first` to that at `last`. Its articulations,
 * ties, fingerings and the like go, slurs and beams find another note (sw_draft_rehome), what belongs to a
 * moment stays. */
void sw_draft_silence(sw_draft *draft, uint32_t first, uint32_t last, sw_cell *cell);
void sw_cell_add_mark(sw_draft *draft, sw_cell *cell, sw_cell_mark mark);
void sw_cell_remove_mark(sw_cell *cell, size_t which);
/* Whether a mark is \breathe: the draft keeps it with its note, but it is a command of its own behind it. */
bool sw_mark_is_breath(sw_slice text);
/* Whether a mark belongs to the end of its note: it goes with the last of several tied values. */
bool sw_mark_is_at_end(sw_mark_class class, sw_slice text);
/* Whether a mark says how a note is played, so that each voice needs it; dynamics and texts stand once. Ties
 * and beams are not among them. */
bool sw_mark_is_of_playing(sw_mark_class class);

/* ---- voices ---- */

/* The first event of the chord (or note, rest) that an event belongs to. */
uint32_t sw_voice_chord(const sw_score *score, uint32_t event);
/* The event behind the last of the chord that begins with `event`. */
uint32_t sw_voice_chord_end(const sw_score *score, uint32_t event);
/* The chord that follows in the voice, or the one before; SW_NO_INDEX when there is none. */
uint32_t sw_voice_next(const sw_score *score, uint32_t event);
uint32_t sw_voice_previous(const sw_score *score, uint32_t event);
/* The next chord when it begins where this one ends, without grace notes between; else SW_NO_INDEX. */
uint32_t sw_voice_joined(const sw_score *score, uint32_t event);
/* The chord before when it ends where this one begins; else SW_NO_INDEX. */
uint32_t sw_voice_joined_before(const sw_score *score, uint32_t event);
/* The note of a chord (SW_NO_INDEX: of none) that has a pitch, as an event; SW_NO_INDEX when there is none.
 */
uint32_t sw_voice_pitch(const sw_score *score, uint32_t chord, sw_pitch pitch);
/* Whether a note is tied to the next chord of its voice, which has the same pitch. */
bool sw_voice_is_tied(const sw_reading *reading, const sw_score *score, uint32_t event);
bool sw_event_is_note(const sw_event *event);
/* The rest or note of a voice that holds a moment; a skip beside it (\global) only when there is no other;
 * SW_NO_INDEX when there is none. */
uint32_t sw_voice_at(const sw_score *score, uint32_t voice, sw_rational moment);

/* Whether some music is two voices side by side, << { ... } \\ { ... } >> or with a \new Voice; their blocks.
 */
bool sw_voices_beside(const sw_reading *reading, uint32_t music, uint32_t blocks[2]);
/* What stands before the bracket of a tuplet, "\\tuplet 3/2 "; empty when it is made in another way. */
sw_slice sw_tuplet_head(const sw_reading *reading, uint32_t tuplet);

/* ---- changes: each adds itself to the draft, or fails ---- */

typedef bool sw_draft_change(sw_draft *draft, const sw_change *change);
sw_draft_change sw_change_pitch, sw_change_end, sw_change_split, sw_change_add_note, sw_change_remove_note,
    sw_change_silence, sw_change_fill;                                          /* change_notes.c */
sw_draft_change sw_change_add_mark, sw_change_remove_mark, sw_change_move_mark; /* change_marks.c */
sw_draft_change sw_change_wrap, sw_change_unwrap, sw_change_new_variable;       /* change_runs.c */
sw_draft_change sw_change_copy_run;                                             /* change_copies.c */
sw_draft_change sw_change_new_voice, sw_change_new_staff;                       /* change_voices.c */
sw_draft_change sw_change_unite;                                                /* change_unite.c */
sw_draft_change sw_change_insert_bars, sw_change_delete_bars;                   /* change_bars.c */

/* Writes notes into the rests of a voice from a moment in the rest `event` up to another; the notes are
 * as heard (`old` may name a node whose text they keep). The cells are tied to one another. */
bool sw_draft_fill(sw_draft *draft, uint32_t event, sw_rational from, sw_rational until,
                   const sw_cell_note *heard, size_t count);
/* Lays the tuplets of a voice in which the events from `first` to `last` stand over the plain rests of
 * another voice at the same time, whole and with their rests; where something else stands there, nothing is
 * laid. False (and the draft's error) when the rests can't be edited. */
bool sw_draft_lay_tuplets(sw_draft *draft, uint32_t first, uint32_t last, uint32_t voice);
/* What stands before the first of the grace notes of which a note or chord is one, "\grace { " or
 * "\acciaccatura "; empty when they are written in another way than as notes and chords behind such a
 * command: those can't be copied. `group` is their GRACE node then. */
sw_slice sw_grace_head(const sw_reading *reading, const uint32_t *parent, uint32_t item, uint32_t *group);
/* Puts a copy of a grace note with notes as heard before the cell of a voice at the same moment. NULL (and
 * the draft's error) when it can't be. */
sw_cell *sw_draft_add_grace(sw_draft *draft, uint32_t event, uint32_t voice, const sw_cell_note *heard,
                            size_t count);
/* The outermost tuplet on a way to an event, as a frame; SW_NO_INDEX when there is none. */
uint32_t sw_tuplet_outermost_frame(const sw_draft *draft, uint32_t frame);
/* After all changes: tuplets that have fallen silent lose their brackets, and silent grace notes go. */
void sw_draft_dissolve(sw_draft *draft);
/* What the text of an item is replaced with: the item, or what goes around it. */
uint32_t sw_draft_node(const sw_draft_item *item);
/* After all that touches items: puts them in the order of the text, and finds for each main file of the
 * request which music is written where one of them is. */
void sw_draft_locate(sw_draft *draft);
/* By music node of a main file (in the draft's own, copies count): 1 + the number of the touched item that is
 * written there, 0 if none. */
const uint32_t *sw_draft_found(const sw_draft *draft, const sw_reading *reading);
/* The chord of an event is tied to nothing behind it any more. False (and the draft's error) when it can't be
 * edited. */
bool sw_draft_untie(sw_draft *draft, uint32_t event);
/* After all changes: ties that lead to no note any more go. */
void sw_draft_mend_ties(sw_draft *draft);
/* The last cell of an item with notes, or its last cell; the first with notes, or its first. */
sw_cell *sw_item_last(sw_draft_item *item);
sw_cell *sw_item_first(sw_draft_item *item);
/* Marks of what has become silent find another note: a slur that begins there begins at the next note behind
 * `last`, one that ends there at the note before `first`; one that would begin and end at one note goes. */
void sw_draft_rehome(sw_draft *draft, uint32_t first, uint32_t last, const sw_cell_mark *loose, size_t count);

#endif
