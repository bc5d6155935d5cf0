/* What counts as a melisma in a voice, as contexts inherit it from each other. Private to score/. */
#ifndef SW_SCORE_MELISMA_RULES_H
#define SW_SCORE_MELISMA_RULES_H

#include "score/player.h"

enum { /* melismaBusyProperties */
       SW_COUNTS_MANUAL = 1 << 0,
       SW_COUNTS_SLUR = 1 << 1,
       SW_COUNTS_TIE = 1 << 2,
       SW_COUNTS_BEAM = 1 << 3,
       SW_COUNTS_ALL = 15
};

/* What one context sets by itself; -1: nothing. */
typedef struct sw_melisma_rule {
    int8_t counts;
    int8_t automatic_beams;
    int8_t waiting_ties;
} sw_melisma_rule;

/* By sw_context_level. */
typedef struct sw_melisma_rules {
    sw_melisma_rule levels[SW_LEVEL_VOICE + 1];
} sw_melisma_rules;

bool sw_melisma_automatic_beams(const sw_melisma_rules *rules);
bool sw_melisma_waiting_ties(const sw_melisma_rules *rules);
int sw_melisma_counts(const sw_melisma_rules *rules);
/* Sets a property by the text of its value, "" takes it back; true when it is one of these. */
bool sw_melisma_rule_set(sw_melisma_rule *rule, sw_slice property, sw_slice value);
/* \autoBeamOff and \autoBeamOn; true when the command is one of these. */
bool sw_melisma_rule_command(sw_melisma_rule *rule, sw_slice command);
/* The same by a SET or SETTING node, when it is about these. */
void sw_melisma_rule_read(sw_melisma_rule *rule, const sw_reading *reading, uint32_t music);
/* The property of a SET node, without the contexts in front of it. */
sw_slice sw_set_property(const sw_reading *reading, uint32_t music);
/* Its value as it is written, "" when the property is unset. */
sw_slice sw_set_value(const sw_reading *reading, uint32_t music);
/* What holds for a voice at the beginning: from the \layout blocks of its score, then from the \with blocks
 * of the contexts around it. */
sw_melisma_rules sw_melisma_rules_of(sw_player *p, const sw_context *voice);
/* The value of ignoreMelismata that the \layout blocks give to Lyrics. */
bool sw_layout_ignores_melismata(sw_player *p);
/* The number of the first bar: the currentBarNumber that the \layout blocks give to Score, or 1. */
int32_t sw_layout_first_number(sw_player *p);

#endif
