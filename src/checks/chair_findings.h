/* The parts of the rule "chairs". Private to checks/. */
#ifndef SW_CHECKS_CHAIR_FINDINGS_H
#define SW_CHECKS_CHAIR_FINDINGS_H

#include "checks/rules.h"
#include "players/chair_notes.h"

/* A score with its players. */
typedef struct sw_chair_scene {
    sw_check *check;
    const sw_score *score;
    const sw_seating *seating;
    const sw_seat_range *ranges; /* who plays each event */
    uint32_t number;             /* of the score in the reading */
    const char *rule;            /* whose findings they are */
} sw_chair_scene;

/* Staves and changes to instruments that nobody is booked for. */
void sw_find_unbooked(const sw_chair_scene *scene);
/* Two instruments of one player at once, or with too little time between. */
void sw_find_change_overs(const sw_chair_scene *scene);
/* More notes at once on a staff than its players can play. */
void sw_find_too_many_notes(const sw_chair_scene *scene);
/* Chords of bowed strings that no player can strike, where they are not divided. */
void sw_find_impossible_stops(const sw_chair_scene *scene);
/* Mutes and percussion that a player does not have. */
void sw_find_missing_things(const sw_chair_scene *scene);

/* Adds a finding of the scene's rule at an event: "bar 3, beat 1, LABEL: MESSAGE". */
void sw_chair_finding(const sw_chair_scene *scene, sw_severity severity, uint32_t event, const char *label,
                      const char *format, ...) __attribute__((format(printf, 5, 6)));

#endif
