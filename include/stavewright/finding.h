/* Findings: what the program has to say about a place in a source. */
#ifndef STAVEWRIGHT_FINDING_H
#define STAVEWRIGHT_FINDING_H

#include <stddef.h>
#include <stdint.h>

#include "stavewright/base.h"

typedef enum sw_severity {
    SW_NOTE,    /* good to know */
    SW_WARNING, /* probably wrong, or awkward to play */
    SW_ERROR    /* wrong, or can't be played */
} sw_severity;

/* What can be done about a finding without anybody's help. */
typedef enum sw_fixable {
    SW_NOT_FIXABLE,
    SW_FIX_SAFE,  /* a fix that leaves sound and meaning as they are */
    SW_FIX_PLAYED /* one that changes what is played */
} sw_fixable;

typedef struct sw_finding {
    sw_severity severity;
    const char *rule; /* name of the rule in the rules table, a static string */
    uint32_t file;    /* index into the reading's files */
    uint32_t start;   /* bytes of that file */
    uint32_t end;
    uint32_t line;   /* from 1 */
    uint32_t column; /* from 1, in characters */
    char *message;   /* what, why, and what would mend it; one line */
    sw_fixable fixable;
    uint32_t fix; /* its number among the fixes of the check, when there is one: see sw_fixes in check.h */
} sw_finding;

/* A growable list of findings; the messages live in its arena. */
typedef struct sw_findings {
    sw_finding *items;
    size_t count;
    size_t capacity;
    sw_arena *arena; /* made by the first finding */
} sw_findings;

/* Adds a finding with a formatted message. */
void sw_findings_add(sw_findings *findings, sw_severity severity, const char *rule, uint32_t file,
                     uint32_t start, uint32_t end, const char *format, ...)
    __attribute__((format(printf, 7, 8)));
/* How many of them are errors. */
size_t sw_findings_errors(const sw_findings *findings);
/* Whether a reading after a change has more errors, or more that it does not know (warnings), than before. */
bool sw_findings_worse(const sw_findings *before, const sw_findings *after);
void sw_findings_free(sw_findings *findings);

#endif
