/* A recipe: transformations one after another over the cues of a film, as a YAML file says them.
 *
 *   steps:
 *     - do: courtesy            # the name of a transformation
 *       only: pizzicato         # its options, without the dashes
 *       where: prep-time        # only bars and staves in which this rule reports something
 *     - do: octave
 *       cues: [1m1, /^2m/]      # main files whose path holds this; a pattern stands between slashes
 *       staff: /flute/          # each staff that is called so
 *       instrument: piccolo     # or each staff of an instrument: an id, or a pattern for ids
 *       bars: 8-12
 *       into: oboe
 *       fold: true
 */
#ifndef SW_APP_RECIPE_H
#define SW_APP_RECIPE_H

#include "app/move_command.h"
#include "base/pattern.h"
#include "stavewright/check.h"

/* A word, or a pattern. */
typedef struct sw_wanted {
    const char *word;
    sw_pattern *pattern; /* NULL: the word itself */
} sw_wanted;

typedef struct sw_recipe_step {
    const sw_move_command *move;
    char **words; /* its own options, as on the command line */
    size_t word_count;
    sw_wanted *cues; /* none: all */
    size_t cue_count;
    const char *staff;     /* as for sw_staves_find; NULL: not asked for */
    sw_wanted instrument;  /* `word` NULL: the same */
    const sw_rule *where;  /* NULL: the same */
    sw_bar_range bars;     /* `given` false: the same */
    const char *bars_word; /* as it was written */
} sw_recipe_step;

typedef struct sw_recipe {
    sw_arena *arena;
    sw_recipe_step *steps;
    size_t count;
} sw_recipe;

/* Reads a recipe. False when it is wrong: *error is a sentence with path, line and column (free() it). */
bool sw_recipe_load(const char *path, sw_recipe *recipe, char **error);
void sw_recipe_free(sw_recipe *recipe);
/* Whether a text is, or for a pattern holds, what is wanted. `part`: the word may stand anywhere in it. */
bool sw_wanted_is(const sw_wanted *wanted, const char *text, bool part);

#endif
