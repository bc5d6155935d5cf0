/* Comments that silence a rule: "% stavewright: allow range (the player has a low C)". Private to checks/. */
#ifndef SW_CHECKS_SILENCERS_H
#define SW_CHECKS_SILENCERS_H

#include "checks/heard.h"
#include "stavewright/check.h"
#include "stavewright/selection.h"

typedef enum sw_silencer_scope {
    SW_SILENCES_LINE, /* its own line, or, alone on a line, the next one with anything on it */
    SW_SILENCES_BARS, /* bars of what is written in this file */
    SW_SILENCES_FILE
} sw_silencer_scope;

typedef struct sw_silencer {
    uint32_t file;
    uint32_t start; /* bytes of the comment */
    uint32_t end;
    sw_silencer_scope scope;
    uint32_t line; /* SW_SILENCES_LINE: which */
    sw_bar_range bars;
    bool *rules; /* one a rule: whether it is allowed here */
    bool used;   /* has silenced something */
} sw_silencer;

typedef struct sw_silencers {
    sw_silencer *items;
    size_t count;
    size_t capacity;
} sw_silencers;

/* What a comment says. False when it is not for this program, or wrong: then *fault is one line (free() it),
 * otherwise NULL. On true the caller frees silencer->rules. */
bool sw_silencer_read(sw_slice comment, sw_silencer *silencer, char **fault);

/* The silencers of all files of a reading; wrong ones become findings of the rule "silencer". */
sw_silencers sw_silencers_of(const sw_reading *reading, sw_findings *findings);
void sw_silencers_free(sw_silencers *silencers);

/* Whether a finding of the reading is silenced; marks the silencers that do it as used. */
bool sw_silencers_cover(sw_silencers *silencers, const sw_heard *heard, const sw_finding *finding);

#endif
