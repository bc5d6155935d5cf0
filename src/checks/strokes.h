/* The notes of a staff one after another, as its players play them. Private to checks/ and moves/. */
#ifndef SW_CHECKS_STROKES_H
#define SW_CHECKS_STROKES_H

#include "stavewright/score.h"

/* A note or chord of one voice. */
typedef struct sw_stroke {
    uint32_t event;  /* its first event: index into the score's events */
    uint32_t before; /* the stroke before it by the same players: index into the list; SW_NO_INDEX: none */
    uint32_t voice;
    sw_rational onset;
    sw_rational end; /* of its longest note */
    bool tied;       /* goes on from the stroke before */
    bool alone;      /* no other voice of the staff sounds when it begins: all its players are in it */
} sw_stroke;

typedef struct sw_strokes {
    sw_stroke *items; /* in order of time */
    size_t count;
    size_t capacity;
} sw_strokes;

/* What the players of a staff play. The stroke before one is that of its own voice, as long as several voices
 * sound; where a voice is alone, all players of the staff are in it, and it is the last one of any voice.
 * Free `items` with free(). */
sw_strokes sw_strokes_of_staff(const sw_reading *reading, const sw_score *score, uint32_t staff);

#endif
