/* Whole bars that come in or go at a bar line, in all lines of a score. Private to write/.
 *
 * A score is many lines of music side by side: staves, voices, dynamics, skips that only carry tempos. Each
 * must become longer or shorter at the same moment, by text of its own. The walk goes through the music as it
 * is written, with a clock, and finds the place in each line (bar_walk.c); the text there follows the habits
 * of the line (bar_text.c). Scores of other main files that share a place go the same way. */
#ifndef SW_WRITE_BARS_H
#define SW_WRITE_BARS_H

#include "write/draft.h"
#include "write/entry.h"

/* An edit that a line needs. */
typedef struct sw_bar_edit {
    const sw_text *text;
    uint32_t start;
    uint32_t end;
    sw_slice put; /* in the draft's arena */
} sw_bar_edit;

/* A written item by which a place was found, to see whether it is heard elsewhere too. */
typedef struct sw_bar_anchor {
    uint32_t music;
    sw_rational end; /* where it ends here */
} sw_bar_anchor;

/* A passage of text that goes. */
typedef struct sw_bar_gap {
    uint32_t first; /* its music: children of one sequence */
    uint32_t last;
    uint32_t file;
    uint32_t from; /* the text of it */
    uint32_t to;
} sw_bar_gap;

/* What follows a place inherits another value than before. */
typedef struct sw_bar_value {
    uint32_t file;
    uint32_t offset;
    uint32_t item; /* the item that has changed its length; SW_NO_INDEX for one that has come in */
    sw_duration value;
} sw_bar_value;

/* What changes, and what was found for one score. */
typedef struct sw_bar_walk {
    sw_draft *draft;
    const sw_reading *reading;
    const sw_score *score;
    const uint32_t *parent; /* by music node, as in the draft */
    const sw_item_order *order;
    sw_rational from;     /* the bar line */
    sw_rational to;       /* the same, or the end of what goes */
    sw_rational bar;      /* bars that come in: the length of each ... */
    int32_t count;        /* ... and how many; how many go, negative */
    uint8_t *heard;       /* by music node: the score plays something in or below it */
    sw_rational *lengths; /* by music node; den 0: not known yet */
    sw_bar_edit *edits;
    size_t edit_count;
    size_t edit_capacity;
    sw_bar_anchor *anchors;
    size_t anchor_count;
    size_t anchor_capacity;
    sw_bar_gap *gaps;
    size_t gap_count;
    size_t gap_capacity;
    sw_bar_value *values;
    size_t value_count;
    size_t value_capacity;
    char *error; /* file:line:column: sentence; in the draft's arena */
} sw_bar_walk;

/* Finds the edits of one score. False (and `error`) when a line can't be made longer or shorter. */
bool sw_bar_walk_score(sw_bar_walk *walk);
/* Frees what the walk has found. */
void sw_bar_walk_free(sw_bar_walk *walk);
/* Records why it can't be done, at the place of a node; returns false. */
bool sw_bar_fail(sw_bar_walk *walk, uint32_t music, const char *what);
void sw_bar_edit_add(sw_bar_walk *walk, uint32_t file, uint32_t start, uint32_t end, sw_slice put);

/* Makes an item that stands for several bars of silence (R1*4, s2.*16) longer, or shorter. False when it is
 * none, or when that is no whole number of its bars. */
bool sw_bar_grow(sw_bar_walk *walk, uint32_t item, sw_rational more);
/* Writes the bars behind a child of a sequence that ends at the bar line. */
void sw_bar_put_behind(sw_bar_walk *walk, uint32_t sequence, uint32_t child);
/* Takes out the text of children of a sequence, from one to another. */
void sw_bar_take_out(sw_bar_walk *walk, uint32_t first, uint32_t last);
/* Whether a command only says how a bar line looks, or breaks the line there. */
bool sw_bar_line_command(sw_slice text);
/* At the edges of the draft's bars: ties, slurs, hairpins and the like of its score are closed where they are
 * cut. False (and the draft's error) when one can't be. */
bool sw_bars_cut_torn(sw_draft *draft);
/* The words that are sung in bars that go: edits of the walk. */
void sw_bars_take_words(sw_bar_walk *walk);
/* When all places are found: what inherits a value that has changed gets its own. */
void sw_bar_mend_values(sw_bar_walk *walk);

#endif
