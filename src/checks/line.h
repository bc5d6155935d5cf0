/* A staff voice by voice, as one player breathes and tongues it: with seconds, dynamics and slurs. Private to
 * checks/ and moves/. */
#ifndef SW_CHECKS_LINE_H
#define SW_CHECKS_LINE_H

#include "stavewright/check.h"

typedef struct sw_line_note {
    uint32_t event; /* its first event */
    uint32_t voice;
    double begin; /* seconds */
    double end;
    sw_dynamic dynamic;              /* in force; SW_NO_DYNAMIC: nothing is said */
    const sw_instrument *instrument; /* in hand at that time, the line's where none is known */
    const sw_limit *limit;           /* of it; never NULL */
    bool low;                        /* in the lowest fifth of a wind instrument's written compass */
    bool high;                       /* above the note from which on the lips tire */
    bool first;                      /* of its voice */
    bool joined;                     /* tied or slurred to the note before */
    bool breath_before;              /* a breath mark stands between the note before and this one */
} sw_line_note;

/* The line of a wind player, and the figures that hold for it. */
typedef struct sw_line {
    const sw_score *score;
    uint32_t staff;
    const sw_instrument *instrument;
    const sw_limit *limit; /* of the instrument with which the staff begins; never NULL */
    sw_line_note *items;   /* voice by voice, each in order of time */
    size_t count;
    size_t capacity;
} sw_line;

/* Calls `each` for all lines of the reading that have notes, staff by staff. They are found out once, owned
 * by the check. */
void sw_check_lines(sw_check *check, void (*each)(sw_check *check, const sw_line *line));
/* That of one staff; NULL when no wind player or singer has notes there. Owned by the check. */
const sw_line *sw_check_line(sw_check *check, const sw_score *score, uint32_t staff);
/* Frees what was found out. */
void sw_check_lines_free(sw_check *check);

/* The number of the bar in which a note of the line begins. */
int sw_line_bar(const sw_line *line, const sw_line_note *note);
/* Whether the score says how fast it goes where a note begins. */
bool sw_line_tempo_is_told(const sw_check *check, const sw_line *line, const sw_line_note *note);
/* Adds a finding that begins at a note: "bar 3, beat 1, Oboe: " and the text. */
__attribute__((format(printf, 6, 7))) void sw_line_add(sw_check *check, const sw_line *line,
                                                       const sw_line_note *note, sw_severity severity,
                                                       const char *rule, const char *format, ...);

#endif
