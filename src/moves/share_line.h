/* Which of several instruments plays which stroke of a run: an exact optimum. Pure: heights in, players out.
 *
 * Each stroke goes to an instrument that has it, best to the one in whose middle it lies: it costs its
 * distance from there, in semitones. Each hand-over costs SW_SHARE_HANDOVER, so that a turn of the line does
 * not go to and fro. What is bound to the stroke before (a tie) stays with its player. Of equally good ways
 * the first instrument of the list plays as long as it can. */
#ifndef SW_MOVES_SHARE_LINE_H
#define SW_MOVES_SHARE_LINE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum {
    SW_SHARE_MOST = 8,      /* instruments */
    SW_SHARE_HANDOVER = 24, /* semitones; common practice, no source: two octaves beside the middle are borne
                               before a single stroke is handed over */
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
