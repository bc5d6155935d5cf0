/* What is said in a score besides notes, however it is written: two ways to say the same have one meaning. */
#ifndef STAVEWRIGHT_MEANING_H
#define STAVEWRIGHT_MEANING_H

#include "stavewright/score.h"

/* Appends what a MARK node says, through variables, without its direction and its looks, a short form as the
 * long one: "\\staccato", "\\mf", "(", of a text its plain words. */
void sw_mark_meaning(const sw_reading *reading, uint32_t mark, sw_buffer *text);
/* Appends what a TEMPO node says: `"Allegro" 4 = 120`. */
void sw_tempo_meaning(const sw_reading *reading, uint32_t tempo, sw_buffer *text);
/* The alteration of each step, c to b, that a KEY setting gives, in quarter tones. */
void sw_key_signature(const sw_reading *reading, const sw_setting *key, int8_t alter[7]);

/* A key that a staff did not have before. */
typedef struct sw_key_change {
    uint32_t staff;
    uint32_t bar; /* index into the score's bars */
    sw_rational onset;
    int8_t alter[7];
} sw_key_change;

typedef struct sw_key_changes {
    sw_key_change *items; /* in order of time; free() them */
    size_t count;
    size_t capacity;
} sw_key_changes;

/* The changes of key of all staves; before the first one a staff has no accidentals. */
sw_key_changes sw_key_changes_of(const sw_reading *reading, const sw_score *score);

/* ---- what is said to all staves ---- */

typedef enum sw_sign_kind {
    SW_SIGN_TEMPO,
    SW_SIGN_MARK,  /* rehearsal marks and texts between staves: "C", "segno", "D.S. al Coda" */
    SW_SIGN_REPEAT /* "repeat 2 times", "alternative", "end of repeat", "bar line :|." */
} sw_sign_kind;

typedef struct sw_sign {
    uint32_t bar;      /* index into the score's bars; the end of a repeat belongs to the bar that it ends */
    sw_rational place; /* in the bar */
    uint8_t kind;      /* sw_sign_kind */
    const char *text;
} sw_sign;

typedef struct sw_signs {
    sw_sign *items; /* in order of time, then of kind and text */
    size_t count;
    size_t capacity;
    sw_arena *arena;
} sw_signs;

/* Each once, in however many staves it stands. Marks that count by themselves (\mark \default) are given the
 * letter that they come to. Free with sw_signs_free. */
sw_signs sw_signs_of(const sw_reading *reading, const sw_score *score);
void sw_signs_free(sw_signs *signs);

#endif
