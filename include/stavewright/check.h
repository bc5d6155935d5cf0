/* Checks: rules that look at a reading and say what can't be played, won't sound or does not add up. */
#ifndef STAVEWRIGHT_CHECK_H
#define STAVEWRIGHT_CHECK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "stavewright/base.h"
#include "stavewright/dynamics.h"
#include "stavewright/edit.h"
#include "stavewright/film.h"
#include "stavewright/finding.h"
#include "stavewright/limits.h"
#include "stavewright/players.h"
#include "stavewright/score.h"
#include "stavewright/techniques.h"

/* ---- fixes -----------------------------------------------------------------------------------------------
 */

typedef enum sw_fix_kind {
    SW_FIX_CHANGES, /* changes of a score, for sw_edit_score */
    SW_FIX_TEXT,    /* other words in a text, or a bar check elsewhere: no note is touched */
    SW_FIX_COURTESY /* the note before ends earlier: sw_move_courtesy knows how */
} sw_fix_kind;

/* Other bytes in the place of [start, end). */
typedef struct sw_fix_edit {
    uint32_t start;
    uint32_t end;
    const char *text;
} sw_fix_edit;

/* What would mend a finding. Nothing is proved yet: see fix.h. */
typedef struct sw_fix {
    sw_fix_kind kind;
    bool wanted;    /* its finding is neither silenced nor turned off */
    bool safe;      /* neither the sound nor the meaning changes */
    uint32_t score; /* CHANGES, COURTESY: which of the reading's */
    uint32_t file;  /* where it is mended: index into the reading's files, and bytes */
    uint32_t start;
    const sw_change *changes; /* CHANGES */
    const sw_fix_edit *edits; /* TEXT: in `file` */
    size_t count;             /* of changes or edits */
    const char *says;         /* what is done, one line */
} sw_fix;

/* The fixes that the rules offer for one reading; {0} is the empty list. */
typedef struct sw_fixes {
    sw_fix *items;
    size_t count;
    size_t capacity;
    sw_arena *arena;
} sw_fixes;

void sw_fixes_free(sw_fixes *fixes);

/* ---- rules -----------------------------------------------------------------------------------------------
 */

/* What a rule gets to see, and where its findings go (with sw_findings_add). */
typedef struct sw_check {
    const sw_film *film; /* who plays, and what is set for the rules; never NULL */
    const sw_reading *reading;
    const sw_instruments *instruments;
    const sw_techniques *techniques;
    const sw_limits *limits;
    sw_playing **playing;               /* how the notes of each score are played: see sw_check_playing */
    sw_dynamics **dynamics;             /* how loud they are: see sw_check_dynamics */
    struct sw_seating **seating;        /* who plays the staves of each score; private to the rules */
    struct sw_seat_range **seat_ranges; /* ... and each of its notes; private to the rules */
    bool chairs;                        /* whether the rule chairs runs, too */
    struct sw_wind_lines *lines;        /* what wind players play: see checks/line.h */
    struct sw_entries **entries;        /* how the notes of its staves are meant: see checks/entry.h */
    sw_findings *findings;
    sw_fixes *fixes;
} sw_check;

typedef struct sw_rule {
    const char *name;     /* as it stands behind a finding: "range" */
    const char *summary;  /* one line */
    sw_severity severity; /* the gravest that it gives */
    const char *explain;  /* several lines: what is looked for, why it matters to the player, the figure and
                           * its source, how to mend it */
    void (*run)(sw_check *check);  /* NULL: a rule of the reader itself, found while reading */
    const sw_rule_option *options; /* numbers that a film may set, ended by one without a name; NULL: none */
} sw_rule;

/* The rules, in the order in which they are listed and run. */
size_t sw_rules_count(void);
/* Number i of 0 .. count-1. */
const sw_rule *sw_rules_get(size_t i);
/* The rule with exactly this name, or NULL. */
const sw_rule *sw_rules_find(const char *name);
/* The name of a rule that a mistyped name may have meant, or NULL. */
const char *sw_rules_nearest(const char *name);

/* Reads a stavewright.yaml that may name these rules: see sw_film_load. */
sw_film *sw_check_film(const char *path_or_null, sw_slice yaml, char **error);
/* The number that holds for an option of a rule: that of the film, or else the rule's own. The rule must have
 * it in its `options`. */
double sw_check_option(const sw_check *check, const sw_rule *rule, const char *option);

typedef struct sw_check_options {
    sw_read_options read;
    const sw_film *film; /* never NULL */
    const bool *chosen; /* chosen[i] says whether rule i is wanted, those of the reader included; NULL: all */
    bool insist;        /* what is chosen is wanted even where the film turns it off */
} sw_check_options;

/* Runs the rules on a reading. The reader's own findings are in reading->findings; those of the rules are
 * added to `findings`, with their lines and columns, and what would mend them to `fixes`. */
void sw_check_reading(const sw_reading *reading, const sw_check_options *options, sw_findings *findings,
                      sw_fixes *fixes);
/* What a rule gets to see, without findings: for a transformation that asks what a rule asks. Both are
 * borrowed. Ended by sw_check_end. */
sw_check sw_check_begin(const sw_reading *reading, const sw_film *film);
void sw_check_end(sw_check *check);
/* How the notes of a score of the reading are played, for rules: found out once, owned by the check. */
const sw_playing *sw_check_playing(sw_check *check, size_t score);
/* How loud they are; the same. */
const sw_dynamics *sw_check_dynamics(sw_check *check, size_t score);

/* ---- whole folders --------------------------------------------------------------------------------------
 */

/* A file that was read, by whatever path. */
typedef struct sw_checked_file {
    const char *real_path; /* absolute, without links */
    const char *path;      /* as the user would write it: relative if he was, without "." and ".." inside */
} sw_checked_file;

/* A finding that outlives its reading. */
typedef struct sw_checked {
    const char *path;   /* see sw_checked_file */
    sw_finding finding; /* its `file` is an index into the result's files */
    size_t number;      /* in the order in which they were found */
    uint32_t end_line;  /* where the place ends, as in sw_finding: the column is that behind it */
    uint32_t end_column;
    const char *staff; /* the player's name, NULL where none is concerned */
    bool has_bar;
    int bar;              /* as printed */
    char fingerprint[17]; /* the same wherever lines and bars move to: see sw_fingerprint_finding */
} sw_checked;

/* What the checks of several main files have found; owns all it points to. {0} is the empty one. */
typedef struct sw_check_result {
    sw_checked *items; /* by path, line and column after sw_check_finish */
    size_t count;
    size_t capacity;
    size_t by_severity[3]; /* how many findings, after sw_check_finish */
    size_t fixable[3];     /* the same by sw_fixable */
    sw_checked_file *files;
    size_t file_count;
    size_t file_capacity;
    sw_names *real_paths; /* of the files: number - 1 is a file's index */
    size_t scores;
    size_t accepted;                   /* how many a baseline has taken out: they stand behind the others */
    struct sw_silencer_use *silencers; /* comments that silence a rule, and whether they did */
    size_t silencer_count;
    size_t silencer_capacity;
    sw_arena *arena;
} sw_check_result;

/* Reads a main file with all it includes, runs the rules and adds what they find, as grave as the film wants
 * it and without what comments in the sources silence (stavewright explain silencer). False when the file
 * cannot be read: *error is then a sentence with the path and the reason (free() it). */
bool sw_check_file(const char *path, const sw_check_options *options, sw_check_result *result, char **error);
/* Moves what `part` has found to the end of `result`, as if its files had been checked behind those of
 * `result`, and leaves `part` empty. So several files can be checked at the same time, each into a result of
 * its own: texts, films and rules are only read. */
void sw_check_join(sw_check_result *result, sw_check_result *part);
/* The same for a main file that has been read; `fixes` gets what would mend the findings, wanted where its
 * finding is kept. */
void sw_check_add(const sw_reading *reading, const sw_check_options *options, sw_check_result *result,
                  sw_fixes *fixes);
/* Adds what is to be said of comments that silence nothing, sorts, keeps one finding a place and rule (the
 * gravest, of equal ones the first found: check a full score before its parts), and counts. */
void sw_check_finish(sw_check_result *result);
void sw_check_result_free(sw_check_result *result);

/* ---- accepted findings ----------------------------------------------------------------------------------
 */

/* Findings that somebody has looked at and lets stand, in a file that is kept beside the film: a line for all
 * findings of one fingerprint in one file, with their number. */
typedef struct sw_baseline sw_baseline;

/* NULL when the file can't be read or is none: *error is then a sentence (free() it). */
sw_baseline *sw_baseline_read(const char *path, char **error);
void sw_baseline_free(sw_baseline *baseline);
/* Takes what is accepted out of a finished result, and counts it in result->accepted: of findings that are
 * alike the first ones. Returns how many accepted ones of the files and rules that were checked have not been
 * found; the list is used up. `chosen` as in sw_check_options. */
size_t sw_baseline_apply(sw_baseline *baseline, sw_check_result *result, const bool *chosen);
/* Makes the file hold all that is in a finished result, and of what it held before those files and rules that
 * were not checked. A file that is not there is made. False when it can't be written: *error as above. */
bool sw_baseline_write(const char *path, const sw_check_result *result, const bool *chosen, char **error);

#endif
