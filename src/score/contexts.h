/* The contexts of a score while it is played: score, groups, staves, voices. Private to score/. */
#ifndef SW_SCORE_CONTEXTS_H
#define SW_SCORE_CONTEXTS_H

#include "score/reader.h"

typedef enum sw_context_level {
    SW_LEVEL_SCORE,
    SW_LEVEL_GROUP,
    SW_LEVEL_STAFF,
    SW_LEVEL_VOICE
} sw_context_level;

typedef struct sw_context {
    struct sw_context *parent;
    struct sw_context *children; /* newest first */
    struct sw_context *sibling;
    struct sw_context *implicit; /* the staff or voice that notes here have made without asking */
    sw_context_level level;
    uint32_t type; /* names */
    uint32_t id;
    uint32_t group; /* index into the score's groups of the closest group, SW_NO_INDEX */
    uint32_t staff; /* index into the score's staves; \change moves a voice to another */
    uint32_t voice; /* index into the score's voices once there is an event, SW_NO_INDEX */
    uint32_t frame;
    bool named;  /* the staff has been looked at: see sw_contexts_name_staff */
    bool silent; /* plays no notes: chord names, null voices */
} sw_context;

typedef struct sw_contexts sw_contexts;

sw_contexts *sw_contexts_new(sw_reader *reader, sw_score *score);
void sw_contexts_free(sw_contexts *contexts);
sw_context *sw_contexts_top(sw_contexts *contexts);
/* The context that a \new or \context node names, seen from `here`. */
sw_context *sw_contexts_enter(sw_contexts *contexts, sw_context *here, uint32_t music, uint32_t frame);
/* The voice in which a note at `here` sounds; made when there is none yet. */
sw_context *sw_contexts_voice(sw_contexts *contexts, sw_context *here, bool drum);
/* The voice's index in the score. */
uint32_t sw_contexts_voice_index(sw_contexts *contexts, sw_context *voice);
/* The staff around `here`, SW_NO_INDEX outside of every staff. */
uint32_t sw_contexts_staff_index(const sw_contexts *contexts, const sw_context *here);
/* \change: moves the voice at `here` to another staff. */
void sw_contexts_change(sw_contexts *contexts, sw_context *here, uint32_t type, uint32_t id);
/* \set of a property: instrument names are kept. */
void sw_contexts_set(sw_contexts *contexts, sw_context *here, uint32_t path, uint32_t text);
/* The settings of a \with block (a syntax node). */
void sw_contexts_apply_with(sw_contexts *contexts, sw_context *context, uint32_t file, uint32_t block);
/* Lets the first variable with notes, between the staff and the event that was reached through `frame`, name
 * the staff. */
void sw_contexts_name_staff(sw_contexts *contexts, sw_context *voice, uint32_t frame);

#endif
