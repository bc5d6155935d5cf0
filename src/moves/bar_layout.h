/* The layout of one bar a line, whose rules stand at the top of bars.c. Private to moves/. */
#ifndef SW_MOVES_BAR_LAYOUT_H
#define SW_MOVES_BAR_LAYOUT_H

#include "moves/linked.h"

/* What is known of the item that begins at a byte of the file. */
typedef struct sw_bar_moment {
    bool heard;
    bool grace;
    bool uncertain;
    bool begins;    /* a bar, in every use */
    bool ends;      /* on a bar line, in every use */
    bool numbered;  /* the numbers are the same in every use */
    int32_t number; /* of the bar in which it begins */
    int32_t before; /* of the bar before that one */
    int32_t last;   /* of the bar in which it ends */
} sw_bar_moment;

typedef struct sw_bar_layout {
    sw_move *move;
    const sw_reading *reading; /* the first main file that plays the text */
    uint32_t file;             /* the number of the text's file there */
    const sw_text *text;
    const sw_syntax *syntax;
    const sw_bars_options *options;
    sw_bar_moment *moments; /* one a byte */
    bool *left_alone;       /* one a music node */
    bool unknown;           /* the last sequence holds what could not be read */
} sw_bar_layout;

/* Fills `moments` from all main files (bar_moments.c). */
void sw_bar_layout_hear(sw_bar_layout *l);

/* ---- the text (bar_ends.c) ---- */

/* The end of an item with all that hangs on it. */
uint32_t sw_bar_whole_end(const sw_bar_layout *l, uint32_t music);
/* The first syntax node that begins at or behind an offset. */
uint32_t sw_bar_node_from(const sw_bar_layout *l, uint32_t offset);
bool sw_bar_has_line_end(const sw_bar_layout *l, uint32_t from, uint32_t to);
/* Ends a line as the file does. */
void sw_bar_add_line_end(const sw_bar_layout *l, sw_buffer *text);
/* The blanks before the line on which something begins. */
sw_slice sw_bar_indentation(const sw_bar_layout *l, uint32_t at);
/* Puts other text there, where it differs. */
void sw_bar_replace(sw_bar_layout *l, uint32_t start, uint32_t end, const sw_buffer *by);
/* Appends "12" or "12-15"; nothing where there is no number to give. */
void sw_bar_add_number(sw_buffer *text, bool numbered, int32_t first, int32_t last);

/* What stands between the last item of a bar and the next item. */
typedef struct sw_bar_gap {
    uint32_t start;  /* behind the item and what stays with it on its line */
    uint32_t check;  /* the bar check; UINT32_MAX: none */
    uint32_t behind; /* the end of the check, or `start` */
    bool adjacent;   /* nothing but white space stands before the check */
} sw_bar_gap;

/* Looks for the bar check behind an item. False when something stands there that is not understood. */
bool sw_bar_look_between(const sw_bar_layout *l, uint32_t from, uint32_t limit, sw_bar_gap *g);
/* Writes what must stand at the end of a bar: the check, the number, the end of the line (where more follows
 * up to `limit`). */
void sw_bar_end(sw_bar_layout *l, const sw_music *sequence, const sw_bar_gap *g, uint32_t limit,
                const sw_buffer *number);
/* The opening brace of a sequence that was written in one line gets the line for itself. */
void sw_bar_open_brace(sw_bar_layout *l, const sw_music *sequence);

#endif
