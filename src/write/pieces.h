/* Pieces: the cells of touched items, joined where they belong together and divided into note values.
 * Private to write/. */
#ifndef SW_WRITE_PIECES_H
#define SW_WRITE_PIECES_H

#include "write/draft.h"

/* One written note, chord or rest. */
typedef struct sw_piece {
    char letter; /* 'n': notes; 'r', 'R', 's' */
    sw_duration value;
    const sw_cell *cell;       /* its notes, and all marks of the stretch that it belongs to */
    const sw_draft_item *item; /* whose text it continues */
    bool first;                /* of its stretch: has the marks of the beginning */
    bool last;                 /* of its stretch: has those of the end; the others are tied to the next */
    bool whole;                /* stands for all of its item, unchanged in time */
    bool ends_bar;             /* a bar line follows it */
    bool fresh;                /* continues no text: `item` only says which language is in force */
    sw_slice opens;            /* "\tuplet 3/2 { ", of tuplets that are written again; empty: none */
    int tuplets_end;           /* so many that are made here, or written again, end behind it */
    int tuplet_actual;         /* one begins before it: so many ... */
    int tuplet_normal;         /* ... in the time of so many; 0: none */
    bool tied; /* the last piece of a stretch that goes on in the next item by a tie that is made */
} sw_piece;

/* A run of touched items that is written anew as one: they stand beside each other, and something crosses
 * from each to the next. */
typedef struct sw_slot {
    sw_draft_item **items; /* borrowed from the draft */
    size_t item_count;
    sw_piece *pieces; /* free() */
    size_t piece_count;
    size_t piece_capacity;
} sw_slot;

/* Whether what one item ends with goes on in the next, so that both are one slot. */
bool sw_slot_joins(const sw_draft *draft, sw_draft_item *item, sw_draft_item *next);
/* Fills the pieces of a slot whose items are set. False (and the draft's error) when a length can't be said
 * in note values. */
bool sw_slot_divide(sw_draft *draft, sw_slot *slot);
/* Adds fresh pieces that say a cell from one moment of the score to another: as the value, or, where it is
 * NULL, in the metre. False when that can't be said. */
bool sw_slot_add_fresh(sw_draft *draft, sw_slot *slot, const sw_draft_item *item, const sw_cell *cell,
                       const sw_duration *value, sw_rational from, sw_rational until);

#endif
