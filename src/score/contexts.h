/* The contexts of a score while it is played: score, groups, staves, voices. Private to score/. */
#ifndef SW_SCORE_CONTEXTS_H
#define SW_SCORE_CONTEXTS_H

#include "score/moment.h"
#include "score/reader.h"

typedef enum sw_context_level {
    SW_LEVEL_SCORE,
    SW_LEVEL_GROUP,
    SW_LEVEL_STAFF,
    SW_LEVEL_VOICE
} sw_context_level;

struct sw_context;

/* From a moment on, what is written at a place goes to this voice. */
typedef struct sw_turn {
    sw_moment at;
    struct sw_context *to;
} sw_turn;

typedef struct sw_context {
    struct sw_context *parent;
    struct sw_context *children; /* newest first */
    struct sw_context *sibling;
    struct sw_context *implicit; /* the staff or voice that notes here have made without asking */
    sw_context_level level;
    uint32_t type;       /* names */
    uint32_t aliases[2]; /* types that it can stand for: a DrumStaff is a Staff too; 0: none */
    uint32_t id;
    uint32_t group; /* index into the score's groups of the closest group, SW_NO_INDEX */
    uint32_t staff; /* index into the score's staves; \change moves a voice to another */
    uint32_t voice; /* index into the score's voices once there is an event, SW_NO_INDEX */
    uint32_t frame;
    uint32_t early;       /* from 1: the newest setting that waits for its next note, see settings.c */
    bool named;           /* the staff has been looked at: see sw_contexts_name_staff */
    bool awaited;         /* a staff made by a \change before its own \new was reached */
    bool silent;          /* plays no notes: chord names, null voices */
    bool lyrics;          /* a line of lyrics */
    uint32_t line;        /* from 1: number of that line, 0 as long as it has no syllables */
    uint32_t with;        /* the WITH node that it began with, or SW_NO_INDEX */
    const sw_turn *turns; /* stands for other voices: see sw_contexts_route */
    size_t turn_count;
} sw_context;

/* A time from one \new or \context of a voice until its music ends. */
typedef struct sw_life {
    sw_context *context;
    sw_moment begin;
    sw_moment end;
} sw_life;

typedef struct sw_contexts sw_contexts;

sw_contexts *sw_contexts_new(sw_reader *reader, sw_score *score);
void sw_contexts_free(sw_contexts *contexts);
sw_context *sw_contexts_top(sw_contexts *contexts);
/* The context that a \new or \context node names, seen from `here`; *begins when it was not there before. */
sw_context *sw_contexts_enter(sw_contexts *contexts, sw_context *here, uint32_t music, uint32_t frame,
                              bool *begins);
/* The voice in which a note at `here` sounds; made when there is none yet. */
sw_context *sw_contexts_voice(sw_contexts *contexts, sw_context *here, bool drum);
/* The staff at or above `here`, made when there is none. */
sw_context *sw_contexts_staff(sw_contexts *contexts, sw_context *here, bool drum);
/* The context of this type and id below `parent`, made when there is none. */
sw_context *sw_contexts_named(sw_contexts *contexts, sw_context *parent, const char *type, const char *id);
/* The staff of this id that is nearest to `here`, made beside the staff at `here` when there is none. */
sw_context *sw_contexts_staff_called(sw_contexts *contexts, sw_context *here, const char *id);
/* A new voice on a staff. */
sw_context *sw_contexts_new_voice(sw_contexts *contexts, sw_context *staff);
/* A stand-in for voices between which the music changes by itself (\partCombine, \autoChange). Before its
 * first turn it stands for `first`. The turns must be in order of time; they are copied. */
sw_context *sw_contexts_route(sw_contexts *contexts, sw_context *first, const sw_turn *turns, size_t count);
/* The context that `here` stands for at a moment; most stand for themselves. */
sw_context *sw_contexts_at(sw_context *here, sw_moment when);
/* The voice's index in the score. */
uint32_t sw_contexts_voice_index(sw_contexts *contexts, sw_context *voice);
/* The context to which a voice of the score belongs. A context that went to another staff has several. */
sw_context *sw_contexts_owner(const sw_contexts *contexts, uint32_t voice);
/* True when the context has this type, or an \alias for it. */
bool sw_contexts_is(const sw_contexts *contexts, const sw_context *context, const char *type);
/* Notes that a voice has lived; nothing for other contexts. */
void sw_contexts_lived(sw_contexts *contexts, sw_context *context, sw_moment begin, sw_moment end);
/* All lives, in the order of the music. */
const sw_life *sw_contexts_lives(const sw_contexts *contexts, size_t *count);
/* The staff around `here`, SW_NO_INDEX outside of every staff. */
uint32_t sw_contexts_staff_index(const sw_contexts *contexts, const sw_context *here);
/* \change: moves the voice at `here` to another staff. */
void sw_contexts_change(sw_contexts *contexts, sw_context *here, uint32_t type, uint32_t id);
/* \set of a property: instrument names are kept. */
void sw_contexts_set(sw_contexts *contexts, sw_context *here, uint32_t path, uint32_t text);
/* Lets the first variable with notes, between the staff and the event that was reached through `frame`, name
 * the staff. */
void sw_contexts_name_staff(sw_contexts *contexts, sw_context *voice, uint32_t frame);

#endif
