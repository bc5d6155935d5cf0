/* What the functions of the language share that give music. Private to score/. */
#ifndef SW_SCORE_APPLY_H
#define SW_SCORE_APPLY_H

#include "score/reader.h"

typedef struct sw_apply_call {
    sw_reader *reader;
    const sw_command *command;
    sw_value *arguments;
    size_t count;
    const sw_value *where; /* the whole call: from the command to the end of its last argument */
} sw_apply_call;

typedef struct sw_apply_row {
    const char *name;
    sw_value (*apply)(const sw_apply_call *c);
} sw_apply_row;

/* The functions of apply_parts.c and apply_computed.c, sorted by name. */
extern const sw_apply_row sw_apply_parts[];
extern const size_t sw_apply_parts_count;
extern const sw_apply_row sw_apply_computed[];
extern const size_t sw_apply_computed_count;

/* Music, or nothing, in the place of the call. */
sw_value sw_apply_music(const sw_apply_call *c, uint32_t music);
sw_value sw_apply_nothing(const sw_apply_call *c);
/* A new node in the place of the call. */
sw_music *sw_apply_add(const sw_apply_call *c, sw_music_kind kind, uint32_t *music);
/* The same around the last argument that is music. */
uint32_t sw_apply_wrap(const sw_apply_call *c, sw_music_kind kind, bool is_free);
/* The last argument that is music, SW_NO_INDEX when there is none. */
uint32_t sw_apply_last(const sw_apply_call *c);
sw_pitch sw_apply_pitch(const sw_value *value, sw_pitch otherwise);
/* An argument that the function gives back: a single note, rest or setting gets the place of the call. */
sw_value sw_apply_passed_on(const sw_apply_call *c, uint32_t music);
/* Says that the function's effect is not computed, and why. */
void sw_apply_unresolved(const sw_apply_call *c, const char *why);

#endif
