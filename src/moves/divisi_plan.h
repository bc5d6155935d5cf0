/* Which chords of a staff its players divide, in passages. Private to moves/. */
#ifndef SW_MOVES_DIVISI_PLAN_H
#define SW_MOVES_DIVISI_PLAN_H

#include "checks/strokes.h"
#include "moves/divisi_fit.h"
#include "moves/places.h"

/* A note or chord of the staff; grace notes are none. */
typedef struct sw_divisi_chord {
    const sw_stroke *stroke;
    uint32_t notes[SW_DIVISI_MOST]; /* events, from the lowest up, of each height one */
    uint8_t count;                  /* of heights; more than SW_DIVISI_MOST are counted, but not listed */
    bool tied;                      /* some note goes on from the chord before */
    int players;                    /* who have it, as the caller sets it; 0: not known */
    bool chosen;
    bool left; /* chosen, but no division: another voice sounds, double stops are wanted, or too many notes */
} sw_divisi_chord;

/* What is divided in one way: the chords from `first` up to `last`. */
typedef struct sw_divisi_passage {
    size_t first;
    size_t last;
    sw_divisi_groups groups;
    sw_divisi_section section;
    uint8_t *notes; /* by chord, by part from the lowest up: which note; see sw_divisi_solve */
    int64_t cost;
} sw_divisi_passage;

typedef struct sw_divisi_plan {
    const sw_reading *reading;
    const sw_score *score;
    uint32_t staff;
    uint32_t *parent; /* by music node: the node around it */
    sw_strokes strokes;
    sw_divisi_chord *chords; /* one a stroke, in order of time */
    size_t count;
    sw_divisi_passage *passages;
    size_t passage_count;
    size_t passage_capacity;
} sw_divisi_plan;

typedef struct sw_divisi_wish {
    int parts;       /* 0: as many as the largest chord of a passage has notes */
    bool single_too; /* single notes are divided like chords */
    bool
        in_one_line; /* a passage is a run in one block of one voice: single notes between chords are in it */
} sw_divisi_wish;

/* Reads the strokes of a staff. `is_chosen`: by event. What a staff says of double stops the caller marks as
 * `left`, and who plays as `players`. */
void sw_divisi_read(sw_divisi_plan *plan, const sw_chosen *chosen, uint32_t staff, const bool *is_chosen);
/* Whether a chord has more notes, or would be in more parts, than players; no player has two notes. */
bool sw_divisi_lacks_players(const sw_divisi_wish *wish, const sw_divisi_chord *chord);
/* Whether less than a bar lies between the end of one chord and the beginning of another one. */
bool sw_divisi_is_near(const sw_divisi_plan *plan, size_t chord, size_t next);
/* Finds the passages, and who takes which note in them. */
void sw_divisi_find(sw_divisi_plan *plan, const sw_divisi_wish *wish, const sw_divisi_fit *fit);
void sw_divisi_plan_free(sw_divisi_plan *plan);
/* The tuplet around an event, as a music node; SW_NO_INDEX: there is none, or one that no second voice can
 * take along (`levels` is 2 then: a tuplet within a tuplet, or one that a function makes). */
uint32_t sw_divisi_tuplet(const sw_divisi_plan *plan, uint32_t event, uint32_t *levels);
/* Whether a passage begins and ends outside of tuplets, or with them. */
bool sw_divisi_is_whole(const sw_divisi_plan *plan, const sw_divisi_passage *passage);
/* The note of a part in a chord of a passage, as an event. */
uint32_t sw_divisi_note(const sw_divisi_plan *plan, const sw_divisi_passage *passage, size_t chord, int part);

#endif
