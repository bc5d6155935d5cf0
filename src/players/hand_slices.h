/* The slices of a set of notes: what sounds at each moment at which a note begins, as keys in order of
 * height, and the lines that lead from one slice to the next. Used by hand_split.c only; the terms are
 * explained in hand_split.h. */
#ifndef STAVEWRIGHT_PLAYERS_HAND_SLICES_H
#define STAVEWRIGHT_PLAYERS_HAND_SLICES_H

#include "players/hand_split.h"

enum { SW_NO_KEY = UINT32_MAX };

/* One key (string) of a slice; all notes on it share a hand. */
typedef struct sw_hand_key {
    int step;
    int number;      /* tells strings or keys apart: the step on a harp, the semitone on a keyboard */
    bool struck;     /* a note begins on it */
    bool rolled;     /* in a rolled chord */
    bool goes_on;    /* a note on it still sounds in the next slice */
    uint32_t before; /* its place among the keys of the slice before if a note sounds on from there, or
                        SW_NO_KEY */
} sw_hand_key;

/* A line from a key of the slice before to a struck key of this slice. */
typedef struct sw_hand_line {
    uint32_t from;
    uint32_t to;
    int steps;   /* width of the interval, never negative */
    bool bound;  /* a glissando */
    bool single; /* from a single note of its voice to a single note */
    bool within; /* one group (beam, beat) */
    bool apart;  /* from one group to another */
} sw_hand_line;

typedef struct sw_hand_slice {
    sw_rational onset;
    int grace;
    double seconds;
    uint32_t key_count;
    size_t first_key; /* in `keys`; likewise for the others */
    uint32_t line_count;
    size_t first_line;
    uint32_t note_count;
    size_t first_note;
    bool several_voices; /* the sounding notes are of more than one voice */
} sw_hand_slice;

typedef struct sw_hand_slices {
    sw_hand_slice *slices;
    size_t count;
    size_t capacity;
    sw_hand_key *keys; /* of each slice from low to high */
    size_t key_count;
    size_t key_capacity;
    sw_hand_line *lines;
    size_t line_count;
    size_t line_capacity;
    uint32_t *notes; /* indices of the notes that sound in a slice, from low to high */
    size_t note_total;
    size_t note_capacity;
    uint32_t *head;       /* for each note: the note whose tie it continues, or itself */
    uint32_t *head_slice; /* for each head: the slice where it is struck, and its key there */
    uint32_t *head_key;
} sw_hand_slices;

/* Cuts the notes into slices. Free with sw_hand_slices_free. */
sw_hand_slices sw_hand_slices_make(const sw_hand_note *notes, size_t count, const sw_hand_limits *limits);
void sw_hand_slices_free(sw_hand_slices *slices);

#endif
