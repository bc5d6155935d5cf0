/* Which of several instruments plays which stroke of a run: an exact optimum. Pure: heights in, players out.
 *
 * Each stroke goes to an instrument that has it, best to the one in whose middle it lies: it costs its
 * distance from there, in semitones. Each hand-over costs SW_SHARE_HANDOVER, so that a turn of the line does
 * not go to and fro. Each instrument that gets nothing costs SW_SHARE_IDLE: it was asked for. What is bound
 * to the stroke before (a tie) stays with its player. */
#ifndef SW_MOVES_SHARE_LINE_H
#define SW_MOVES_SHARE_LINE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum {
    SW_SHARE_MOST = 8,      /* instruments */
    SW_SHARE_HANDOVER = 12, /* semitones, as all costs; common practice, no source: an octave beside the
                               middle is borne before a single stroke is handed over */
    SW_SHARE_IDLE = 120     /* and ten such strokes before one of the instruments gets nothing */
};

typedef struct sw_share_stroke {
    int low; /* semitones above middle C, as it sounds */
    int high;
    bool bound;
} sw_share_stroke;

typedef struct sw_share_player {
    int low; /* the compass, as it sounds */
    int high;
} sw_share_player;

/* Whether a player has a stroke. */
bool sw_share_has(const sw_share_player *player, const sw_share_stroke *stroke);
/* What a stroke costs with a player that has it. */
int sw_share_cost(const sw_share_player *player, const sw_share_stroke *stroke);
/* Writes who plays each stroke to who[0 .. count-1] and returns what that costs; -1 when some stroke can be
 * played by nobody. */
int64_t sw_share_solve(const sw_share_stroke *strokes, size_t count, const sw_share_player *players,
                       size_t player_count, uint8_t *who);

#endif
