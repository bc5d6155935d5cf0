/* Transformations: each computes its plan on the score, says which changes it wants, and has them proved. */
#ifndef STAVEWRIGHT_MOVE_H
#define STAVEWRIGHT_MOVE_H

#include "stavewright/edit.h"
#include "stavewright/film.h"
#include "stavewright/selection.h"

/* What a transformation gives back. Owns everything in it. */
typedef struct sw_move {
    sw_reading **mains; /* the readings before the change; mains[0] is of the file that was named */
    size_t main_count;
    sw_shelf *shelf;      /* what they have read; NULL: it is on the shelf of the options */
    sw_patch patch;       /* proved; empty when there is nothing to change */
    sw_findings findings; /* what could not be done, at places of mains[0] */
    sw_buffer notes;      /* a line each: other uses that were changed along */
    sw_buffer why;        /* a line each: the choices and their reasons */
} sw_move;

void sw_move_free(sw_move *move);

/* Where a transformation works: what all that is given allows. */
typedef struct sw_places {
    const char *staff; /* as for sw_staff_find; NULL: every staff with notes on the lines */
    sw_bar_range bars;
    uint32_t first_line; /* lines of the file that was named, from 1; 0: no matter where it is written */
    uint32_t last_line;
} sw_places;

typedef struct sw_hands_options {
    const char *staff;      /* as for sw_staff_find */
    sw_bar_range bars;      /* outside of them the music stays with the right hand */
    const char *instrument; /* "harp", "piano", "marimba"; NULL: by the staff's name */
    int span;    /* widest interval of one hand, as an interval number (10 = a tenth); 0: the instrument's */
    int fingers; /* fingers of one hand; 0: the instrument's */
    int mallets; /* 2 or 4 in both hands together; 0: the instrument's */
    bool roll;   /* chords that are too wide get \arpeggio */
    bool change_staff; /* the music stays in one piece and goes from staff to staff by \change Staff */
    bool crossing;     /* the left hand may lie over the right at one moment, too */
    bool pedal;        /* keys need not be held: the pedal lets them ring; piano, celesta and the like only */
    const sw_film *film; /* whose instruments and times hold; NULL: the defaults */
} sw_hands_options;

/* Splits one staff's music into right and left hand, in all scores of the file's folder that use it. The
 * hands are those of players/hand_split.h, the clefs those of players/hand_clefs.h. NULL when it can't be
 * done: *error is a sentence, with file:line:column where there is a place (free() it). */
sw_move *sw_move_hands(const char *path, const sw_hands_options *options,
                       const sw_read_options *reading_options, char **error);

typedef enum sw_ottava { SW_OTTAVA_LEAVE, SW_OTTAVA_ADD, SW_OTTAVA_REMOVE } sw_ottava;

/* One of `by`, `into`, `between` and `ottava` is given. */
typedef struct sw_octave_options {
    sw_places places;    /* a staff or lines are needed */
    int by;              /* octaves up, or down when negative; 0: not given */
    const char *into;    /* an instrument: its compass in a section, as it sounds; NULL: not given */
    const char *between; /* two pitches as they are written, the lower one first: "c' g'''" in the source's
                            note language, or "C4 G6"; NULL: not given */
    bool fold;           /* with a range: what lies inside stays, where that is smooth */
    sw_ottava ottava;    /* brackets are written or taken out; no note changes */
    int ledgers;         /* what has more ledger lines gets a bracket; 0: SW_OTTAVA_LEDGERS */
    sw_elsewhere elsewhere;
    const sw_film *film; /* whose instruments and times hold; NULL: the defaults */
} sw_octave_options;

enum { SW_OTTAVA_LEDGERS = 4 }; /* common practice, no source */

/* Shifts notes by octaves: all by as many, or each line as a whole or in parts so that it fits a range, by
 * the least cost of moves/octave_line.h. What is tied to a chosen note moves along. What fits in no octave is
 * in the findings. Errors as for sw_move_hands. */
sw_move *sw_move_octave(const char *path, const sw_octave_options *options,
                        const sw_read_options *reading_options, char **error);

typedef struct sw_give_options {
    sw_places places; /* the staff is the one that has the line; needed */
    const char *to;   /* the staff that gets it, as for sw_staff_find; needed */
    bool keep;        /* it is doubled: the source plays on */
    bool share;       /* `to` is several of them, between commas: the run is handed from one to the next */
    bool over;        /* the target's own notes in the passage go */
    sw_elsewhere elsewhere;
    const sw_film *film; /* whose instruments hold; NULL: the defaults */
} sw_give_options;

/* Moves or copies a line into the rests of another staff, as that instrument is written, in the nearest
 * octave that it has. Notes of the target are a finding and nothing changes, unless they go. Errors as for
 * sw_move_hands. */
sw_move *sw_move_give(const char *path, const sw_give_options *options,
                      const sw_read_options *reading_options, char **error);

typedef struct sw_cue_options {
    sw_places places; /* a staff or lines are needed */
    const char *name; /* written over the first note; NULL: the staff's own */
    bool undo;        /* small notes become full ones again */
    sw_elsewhere elsewhere;
} sw_cue_options;

/* Makes a passage of one voice small, optional notes with a name over the first one, or full notes again, the
 * file then being what it was. Errors as for sw_move_hands. */
sw_move *sw_move_cue(const char *path, const sw_cue_options *options, const sw_read_options *reading_options,
                     char **error);

typedef struct sw_whole_bars_options {
    sw_bar_range bars; /* whole bars */
    int32_t count;     /* so many empty bars come in before the first of them; 0: they go */
} sw_whole_bars_options;

/* Takes bars out of all lines of a score and of the scores that share them, parts included, or puts empty
 * ones in: see SW_CHANGE_INSERT_BARS and SW_CHANGE_DELETE_BARS. Errors as for sw_move_hands. */
sw_move *sw_move_whole_bars(const char *path, const sw_whole_bars_options *options,
                            const sw_read_options *reading_options, char **error);

typedef struct sw_bars_options {
    uint32_t first_line; /* bars that end on these lines only; 0: all */
    uint32_t last_line;
} sw_bars_options;

/* Lays the music of one file out, one bar a line. Errors as for sw_move_hands. */
sw_move *sw_move_bars(const char *path, const sw_bars_options *options,
                      const sw_read_options *reading_options, char **error);

/* A note, by the place where it is written. */
typedef struct sw_written_note {
    const char *path;
    uint32_t start;
} sw_written_note;

typedef struct sw_courtesy_options {
    sw_places places;          /* of the change-overs: the note before or the note after */
    const char *only;          /* a group of techniques ("stroke", "mute", "sticks"); NULL: all */
    sw_rational value;         /* what to take off, in whole notes; 0: the smallest that gives the time */
    const char *value_name;    /* "an eighth" */
    bool melody;               /* notes that end the melody are shortened, too */
    const sw_written_note *at; /* only change-overs to these notes; NULL: to any */
    size_t at_count;
    sw_elsewhere elsewhere;
    const sw_film *film; /* whose instruments and times hold; NULL: the defaults */
} sw_courtesy_options;

/* Makes room before change-overs with too little time (the rule prep-time): the note before ends earlier, or
 * gets an up-bow. What can't be done is in the findings. Errors as for sw_move_hands. */
sw_move *sw_move_courtesy(const char *path, const sw_courtesy_options *options,
                          const sw_read_options *reading_options, char **error);

typedef struct sw_breaths_options {
    sw_places places; /* of the notes before the breaths */
    sw_rational rest; /* the note before ends so much earlier; 0: a breath mark is written */
    sw_elsewhere elsewhere;
    const sw_film *film; /* whose instruments and times hold; NULL: the defaults */
} sw_breaths_options;

/* Marks where winds and singers breathe, so that no breath has to last longer than it can: the least cost of
 * moves/breath_line.h. What has no place for a breath is in the findings. Errors as for sw_move_hands. */
sw_move *sw_move_breaths(const char *path, const sw_breaths_options *options,
                         const sw_read_options *reading_options, char **error);

typedef struct sw_ring_options {
    sw_places places;
    sw_elsewhere elsewhere;
    const sw_film *film; /* whose instruments and times hold; NULL: the defaults */
} sw_ring_options;

/* Lets notes ring that may (harp, mallets, piano, pizzicato): before rests they get a tie into nothing and a
 * value that shows it, or all of a staff one text. Errors as for sw_move_hands. */
sw_move *sw_move_ring(const char *path, const sw_ring_options *options,
                      const sw_read_options *reading_options, char **error);

typedef enum sw_divisi_way { SW_DIVISI_CHORDS, SW_DIVISI_VOICES, SW_DIVISI_STAVES } sw_divisi_way;

/* Who plays the single notes behind a chord that winds have divided. */
typedef enum sw_divisi_single {
    SW_DIVISI_AS_BEFORE, /* whom the staff named last ("1."), otherwise all ("a 2") */
    SW_DIVISI_ALL,
    SW_DIVISI_ONE /* the first */
} sw_divisi_single;

typedef struct sw_divisi_options {
    sw_places places;  /* a staff is needed */
    int parts;         /* 0: as many as the largest chord has notes */
    sw_divisi_way way; /* how it is written: chords with a text, two voices, or a staff a part */
    sw_divisi_single single;
    bool tremolo_half; /* instead, half of the players have all notes with tremolo, half without */
    sw_elsewhere elsewhere;
    const sw_film *film; /* whose players hold; NULL: the defaults */
} sw_divisi_options;

/* Divides the chords of a staff among its players, by the least cost of moves/divisi_line.h, and writes where
 * the division begins and ends. Errors as for sw_move_hands. */
sw_move *sw_move_divisi(const char *path, const sw_divisi_options *options,
                        const sw_read_options *reading_options, char **error);

typedef struct sw_unite_options {
    sw_places places;
    sw_elsewhere elsewhere;
    const sw_film *film; /* whose words hold; NULL: the defaults */
} sw_unite_options;

/* Makes one of two voices that are written side by side in one rhythm, marked alike; "div." and "unis." at
 * their edges go along. Errors as for sw_move_hands. */
sw_move *sw_move_unite(const char *path, const sw_unite_options *options,
                       const sw_read_options *reading_options, char **error);

typedef struct sw_stagger_options {
    sw_places places;  /* of the last notes */
    const char *order; /* instruments and families, "oboe,brass,strings": who leaves first; NULL: the usual
                          order */
    sw_elsewhere elsewhere;
    const sw_film *film; /* whose instruments hold; NULL: the defaults */
} sw_stagger_options;

/* Lets players who end together leave one after another. Errors as for sw_move_hands. */
sw_move *sw_move_stagger(const char *path, const sw_stagger_options *options,
                         const sw_read_options *reading_options, char **error);

#endif
