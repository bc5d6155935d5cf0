/* What is heard in some music while it is only listened to, in order of time: the ground on which
 * \partCombine, \autoChange and \addQuote decide.
 *
 * The compiler plays such music by itself, without a score around it, and writes down every event that
 * reaches the voice. Not only notes count: a dynamic, a key or a \stemUp in the middle of a note makes a
 * moment of its own, at which the parts are then compared. So the recording keeps those too, as events of
 * kind OTHER, where their effect is only that they are there. */
#ifndef SW_SCORE_RECORDING_H
#define SW_SCORE_RECORDING_H

#include "score/moment.h"
#include "score/reader.h"

typedef enum sw_heard_kind {
    SW_HEARD_NOTE,
    SW_HEARD_DRUM,
    SW_HEARD_REST,
    SW_HEARD_FULL_REST,
    SW_HEARD_SKIP,
    SW_HEARD_SPAN_START, /* span */
    SW_HEARD_SPAN_END,   /* span */
    SW_HEARD_TIE,
    SW_HEARD_DYNAMIC,
    SW_HEARD_FORCE,         /* music: a \partCombineApart and the like */
    SW_HEARD_TRANSPOSITION, /* pitch; makes no moment of its own */
    SW_HEARD_OTHER
} sw_heard_kind;

/* In the order of the compiler's names for them, which it sorts by. */
typedef enum sw_heard_span {
    SW_SPAN_BEAM,
    SW_SPAN_CRESCENDO,
    SW_SPAN_DECRESCENDO,
    SW_SPAN_SLUR,
    SW_SPAN_TIE /* phrasing slurs are counted as ties */
} sw_heard_span;

typedef struct sw_heard {
    sw_moment when;
    sw_rational length;
    sw_rational factor; /* the duration as the language compares it: value, dots, factor */
    int8_t log;
    uint8_t dots;
    uint8_t kind; /* sw_heard_kind */
    uint8_t span; /* sw_heard_span */
    sw_pitch pitch;
    uint32_t voice; /* 0: the voice that is listened to; otherwise a context made inside the music */
    uint32_t music; /* these as in sw_event */
    uint32_t chord;
    uint32_t frame;
    uint32_t flags;
} sw_heard;

/* A context that the music itself makes. */
typedef struct sw_recorded_context {
    uint32_t type;
    uint32_t id;
} sw_recorded_context;

typedef struct sw_recording {
    const sw_reader *reader;
    sw_heard *heard; /* sorted by sw_recording_end */
    size_t count;
    size_t capacity;
    sw_recorded_context *contexts; /* by number; 0 is the voice itself */
    size_t context_count;
    size_t context_capacity;
    sw_moment end;
} sw_recording;

/* An empty recording of a voice with this id (0: none). */
sw_recording *sw_recording_new(const sw_reader *reader, uint32_t id);
void sw_recording_free(sw_recording *recording);
/* The number of the context that a CONTEXT node leads to, from context number `here`. */
uint32_t sw_recording_enter(sw_recording *recording, uint32_t here, uint32_t music);
void sw_recording_add(sw_recording *recording, const sw_heard *heard);
/* Something happens at the moment and place of `at`. */
void sw_recording_touch(sw_recording *recording, const sw_heard *at);
/* The beginning or end of a span. */
void sw_recording_span(sw_recording *recording, const sw_heard *at, sw_heard_span span, bool start);
/* The marks among the children of a note, chord or rest. */
void sw_recording_marks(sw_recording *recording, const sw_heard *at, uint32_t music);
/* A node without length: whether the voice hears of it depends on the command. */
void sw_recording_setting(sw_recording *recording, const sw_heard *at, uint32_t music);
/* Puts what was heard in order of time; what came at the same time stays in the order of the music. */
void sw_recording_end(sw_recording *recording, sw_moment end);

#endif
