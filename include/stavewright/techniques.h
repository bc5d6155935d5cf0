/* How it is to be played: techniques, the words that set them, and the seconds from one to another.
 *
 * The vocabulary is data (src/players/techniques.yaml says in its head how it looks). Techniques stand in
 * groups (the stroke: arco, pizzicato ...; the mute: open, muted, cup-mute ...), of which one is in force at
 * a time; the first of a group is the plain one, with which every staff begins. */
#ifndef STAVEWRIGHT_TECHNIQUES_H
#define STAVEWRIGHT_TECHNIQUES_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "stavewright/base.h"
#include "stavewright/players.h"
#include "stavewright/score.h"

enum {
    SW_TECHNIQUE_GROUPS = 16, /* at most */
    SW_NO_TECHNIQUE = 255
};

typedef struct sw_technique {
    const char *id; /* plain English: "sul-ponticello" */
    uint8_t group;
    bool plain;   /* the first of its group */
    bool plucked; /* the stroke is over at once: the hand is free as soon as the note has begun */
} sw_technique;

typedef struct sw_technique_group {
    const char *id;
    uint8_t plain;   /* its plain technique */
    bool must_end;   /* what leaves the plain way has to be taken back by a word sooner or later */
    bool must_begin; /* the plain word answers another one, and is strange without it */
} sw_technique_group;

/* All techniques and words; owns what it hands out. */
typedef struct sw_techniques sw_techniques;

/* Loads the built-in vocabulary and, when the path is not NULL, an overriding text of the same shape: its
 * words and its changes are tried before the built-in ones, and it may add groups. NULL on a mistake: *error
 * is then one line, "PATH:LINE:COLUMN: what is wrong; what mends it", to be freed by the caller. */
sw_techniques *sw_techniques_load(const char *override_path_or_null, sw_slice override_bytes, char **error);
/* NULL is allowed. */
void sw_techniques_free(sw_techniques *techniques);

size_t sw_techniques_group_count(const sw_techniques *techniques);
const sw_technique_group *sw_techniques_group(const sw_techniques *techniques, size_t group);
size_t sw_techniques_count(const sw_techniques *techniques);
/* Number i of 0 .. count-1. */
const sw_technique *sw_techniques_get(const sw_techniques *techniques, size_t i);
/* The number of a technique by its id, SW_NO_TECHNIQUE when there is none. */
uint8_t sw_techniques_find(const sw_techniques *techniques, const char *id);

/* One thing that a text says. */
typedef struct sw_technique_said {
    uint8_t technique;
    bool half; /* for half of the players */
} sw_technique_said;

/* What a text says to the players of a family, in the order of the text; at most `room` things are put into
 * `said`, and their number is returned. `family` NULL: an unknown instrument, for which only words that mean
 * the same everywhere count. *in_brackets becomes true when all of it stands in brackets, as a reminder does.
 */
size_t sw_techniques_read(const sw_techniques *techniques, const sw_family *family, sw_slice text,
                          sw_technique_said *said, size_t room, bool *in_brackets);
/* What a mark sets for its own note ("\\stopped", "-+"), SW_NO_TECHNIQUE for none. */
uint8_t sw_techniques_of_mark(const sw_techniques *techniques, sw_slice mark);

/* What a player needs from one technique of a group to another. */
typedef struct sw_technique_change {
    double seconds;      /* without hurry, from the end of the last note to the beginning of the first */
    bool while_sounding; /* the hand may move during the last note: the seconds count from its beginning */
    const char *source;
} sw_technique_change;

/* The time that an instrument's player needs; NULL: none. Lives as long as `techniques`. */
const sw_technique_change *sw_techniques_change(const sw_techniques *techniques,
                                                const sw_instrument *instrument, uint8_t from, uint8_t to);

/* ---- through time ---------------------------------------------------------------------------------------
 */

/* What is in force for a note, a technique a group. */
typedef struct sw_technique_state {
    uint8_t now[SW_TECHNIQUE_GROUPS];
    uint8_t half[SW_TECHNIQUE_GROUPS]; /* what the other half of the players does; equals `now` mostly */
} sw_technique_state;

/* A word in the score that sets a technique. */
typedef struct sw_technique_word {
    sw_rational onset;
    uint32_t staff;
    uint32_t voice;   /* SW_NO_INDEX: it holds for the whole staff */
    uint32_t mark;    /* the MARK node */
    unsigned players; /* bits: for which players of the staff it holds, by place; 0: for all */
    uint8_t technique;
    bool half;
    bool reminder;  /* in brackets */
    uint8_t before; /* what was in force, where it was something else for some of the players */
} sw_technique_word;

/* Where another ending of a repeat begins than the first: what sounds there follows the body of the repeat,
 * not what is written before it. */
typedef struct sw_other_ending {
    uint32_t staff;
    sw_rational onset;
} sw_other_ending;

/* How the notes of one score are played. */
typedef struct sw_playing {
    const sw_technique_state *states;
    const uint32_t *state_of;       /* for each event of the score: index into `states` */
    const sw_technique_word *words; /* staff by staff, in order of time */
    size_t word_count;
    const sw_instrument *const *instruments; /* for each staff, NULL: not known */
    const uint8_t *players;                  /* for each staff: how many are told apart, at least 1 */
    const sw_other_ending *endings;          /* staff by staff, in order of time */
    size_t ending_count;
    sw_arena *arena;
} sw_playing;

/* Goes through a score's texts and marks. A word holds for all voices of its staff, but for its own voice
 * only where several voices sound and the instruments are winds, or where another voice says something else
 * of the same group at the same moment; texts in voices of nothing but skips hold for the staff. The words of
 * cues count for nobody. Free with sw_playing_free. */
sw_playing *sw_playing_of(const sw_techniques *techniques, const sw_instruments *instruments,
                          const sw_reading *reading, const sw_score *score);
void sw_playing_free(sw_playing *playing);
/* Whether more than one state occurs on a staff. */
bool sw_playing_changes(const sw_playing *playing, const sw_score *score, uint32_t staff);
/* What is in force for an event, in one group. */
uint8_t sw_playing_now(const sw_playing *playing, size_t event, uint8_t group);

#endif
