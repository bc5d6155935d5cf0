/* What each player has to play, gathered cue by cue. Private to report/. */
#ifndef SW_REPORT_PLAYERS_TABLE_H
#define SW_REPORT_PLAYERS_TABLE_H

#include "stavewright/report.h"

/* The shortest time from one instrument to another. */
typedef struct sw_player_change {
    const sw_instrument *from;
    const sw_instrument *to;
    double seconds; /* less than nothing: both sound at once */
    size_t cue;     /* where */
    int bar;
} sw_player_change;

/* One row. */
typedef struct sw_player_row {
    const char *name;
    const sw_chair *chair;             /* NULL: known from the staves alone */
    const sw_instrument **instruments; /* those that are played */
    size_t instrument_count;
    size_t instrument_capacity;
    size_t *cues; /* those with notes */
    size_t cue_count;
    size_t cue_capacity;
    size_t bars; /* with notes */
    double seconds;
    bool has_pitch;
    sw_pitch lowest;
    sw_pitch highest;
    sw_player_change *changes;
    size_t change_count;
    size_t change_capacity;
    const char **things; /* mutes and percussion */
    size_t thing_count;
    size_t thing_capacity;
} sw_player_row;

struct sw_players_table {
    const sw_film *film;
    sw_arena *arena;
    sw_player_row *rows;
    size_t row_count;
    size_t row_capacity;
    const char **cues;
    size_t cue_count;
    size_t cue_capacity;
};

#endif
