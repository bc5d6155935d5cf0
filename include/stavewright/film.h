/* The film: who plays it, and what is asked of its scores.
 *
 * It is read from the file stavewright.yaml at the top of the film's folder (README.md shows one). Without
 * such a file everything has its default; a film is never NULL. */
#ifndef STAVEWRIGHT_FILM_H
#define STAVEWRIGHT_FILM_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "stavewright/base.h"
#include "stavewright/finding.h"
#include "stavewright/limits.h"
#include "stavewright/players.h"
#include "stavewright/score.h"
#include "stavewright/techniques.h"

/* ---- rules and their options -----------------------------------------------------------------------------
 */

/* A number that a rule lets the user choose. */
typedef struct sw_rule_option {
    const char *name;
    double standard; /* when the film says nothing */
    double low;      /* what may be given */
    double high;
    const char *says; /* one line: what it means */
} sw_rule_option;

/* What a film may say about a rule. */
typedef struct sw_film_rule {
    const char *name;
    const sw_rule_option *options; /* ended by one without a name; NULL: none */
} sw_film_rule;

typedef enum sw_rule_wish {
    SW_RULE_AS_IT_IS, /* nothing is said */
    SW_RULE_OFF,
    SW_RULE_NOTE, /* all of its findings are notes ... */
    SW_RULE_WARNING,
    SW_RULE_ERROR
} sw_rule_wish;

/* ---- chairs ----------------------------------------------------------------------------------------------
 */

/* A player, or a section that plays from one staff. */
typedef struct sw_chair {
    const char *name;
    unsigned number;                   /* the only one in its name, 0: none, or several */
    const sw_instrument *own;          /* that its name means when it plays it, else the first */
    const sw_instrument *const *plays; /* its own first, then what it doubles; at least one */
    size_t play_count;
    int players; /* how many sit there */
    bool mutes_given;
    const uint8_t *mutes; /* technique numbers at hand, when restricted */
    size_t mute_count;
    bool percussion_given;
    const sw_instrument *const *percussion; /* what the player has, when restricted */
    size_t percussion_count;
    bool prerecorded; /* shown to the conductor, not checked */
    uint32_t line;    /* where it stands in the file */
} sw_chair;

/* ---- house rules -----------------------------------------------------------------------------------------
 */

enum { /* what a house rule looks at; several may be joined */
       SW_HOUSE_TEXTS = 1 << 0,
       SW_HOUSE_MARKUPS = 1 << 1,
       SW_HOUSE_STAFF_NAMES = 1 << 2,
       SW_HOUSE_FILE_NAMES = 1 << 3,
       SW_HOUSE_HEADER = 1 << 4
};

typedef struct sw_house_rule {
    unsigned where;    /* SW_HOUSE_... */
    const char *field; /* SW_HOUSE_HEADER: which field; NULL: any */
    const char *pattern;
    bool required; /* it must be there; otherwise it must not */
    const char *message;
    const char *replacement; /* NULL: none is given */
    sw_severity severity;
    uint32_t number; /* for sw_house_rule_find */
} sw_house_rule;

/* ---- the film --------------------------------------------------------------------------------------------
 */

typedef struct sw_film sw_film;

/* The path of the stavewright.yaml that holds for a file: the nearest one in its folder or in one above. The
 * file itself need not exist. NULL when there is none; free() it. It is relative to the
 * working folder. */
char *sw_film_path(const char *file);

/* Reads the text of a stavewright.yaml; `path` names it in messages, and its folder is what paths in it count
 * from. Path NULL: the default film. `rules`: those that may be named. NULL on a mistake: *error is then one
 * line, "PATH:LINE:COLUMN: what is wrong; what mends it", to be freed by the caller. Free the film with
 * sw_film_free. */
sw_film *sw_film_load(const char *path_or_null, sw_slice yaml, const sw_film_rule *rules, size_t rule_count,
                      char **error);
/* NULL is allowed. */
void sw_film_free(sw_film *film);

/* The path of its file; NULL for the default film. */
const char *sw_film_file(const sw_film *film);
/* Its name, "" when none is given. */
const char *sw_film_name(const sw_film *film);
/* The instruments, with what the film says otherwise; owned by the film, as are the techniques
 * and the limits of players. */
const sw_instruments *sw_film_instruments(const sw_film *film);
const sw_techniques *sw_film_techniques(const sw_film *film);
const sw_limits *sw_film_limits(const sw_film *film);

/* Whether there is a list of chairs at all, and the chairs, in the order of the file. */
bool sw_film_has_roster(const sw_film *film);
size_t sw_film_chair_count(const sw_film *film);
const sw_chair *sw_film_chair(const sw_film *film, size_t i);
/* Whether the patterns under `staves` of chair i match a name of a staff. False for a chair without any. */
bool sw_film_chair_claims(const sw_film *film, size_t i, const char *staff_name);

/* What is said about a rule. */
sw_rule_wish sw_film_wish(const sw_film *film, const char *rule);
/* The value of a rule's option; `standard` when the film gives none. */
double sw_film_option(const sw_film *film, const char *rule, const char *option, double standard);

size_t sw_film_house_count(const sw_film *film);
const sw_house_rule *sw_film_house(const sw_film *film, size_t i);
/* The first match of a house rule's pattern in a text from byte `start` on: [*from, *to). */
bool sw_house_rule_find(const sw_film *film, const sw_house_rule *rule, sw_slice text, size_t start,
                        size_t *from, size_t *to);

/* Folders to look for included files in, as the program can open them. */
size_t sw_film_include_count(const sw_film *film);
const char *const *sw_film_includes(const sw_film *film);
/* Whether a file lies in a folder that the film names for what is made from the sources: it is no source. */
bool sw_film_is_output(const sw_film *film, const char *file);

/* ---- a first roster --------------------------------------------------------------------------------------
 */

/* What the staves of scores say about the chairs, gathered to write a first stavewright.yaml. */
typedef struct sw_roster_draft sw_roster_draft;

/* `film` is borrowed: its instruments, and its chairs where it has some. */
sw_roster_draft *sw_roster_draft_new(const sw_film *film);
void sw_roster_draft_free(sw_roster_draft *draft);
/* Adds the staves of a reading's scores. Names are kept; the reading may be freed afterwards. */
void sw_roster_draft_add(sw_roster_draft *draft, const sw_reading *reading);
/* Appends the file: every recognised staff as a chair, the rest as remarks. */
void sw_roster_draft_print(sw_roster_draft *draft, sw_buffer *result);

#endif
