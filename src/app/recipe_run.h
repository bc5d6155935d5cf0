/* Cooking: the steps of a recipe over one cue after another, each on what the steps before have left. */
#ifndef SW_APP_RECIPE_RUN_H
#define SW_APP_RECIPE_RUN_H

#include "app/recipe.h"
#include "moves/changed_files.h"

/* What came of a step in a cue. */
typedef struct sw_recipe_row {
    const char *cue;
    size_t step; /* from 1 */
    const char *move;
    size_t places;   /* how many pieces of text have changed */
    size_t uses;     /* on how many staves and stretches of bars it was used */
    size_t left;     /* how many findings say what could not be done */
    bool refused;    /* ... or the step was refused, and the cue stays as it was */
    bool everywhere; /* the step names no staff */
} sw_recipe_row;

typedef struct sw_recipe_run {
    const sw_recipe *recipe;
    sw_read_options reading; /* where includes are looked for */
    sw_changed_files files;
    sw_shelf *shelf; /* what has been read of the cue since its last change; NULL: nothing */
    sw_arena *arena;
    sw_recipe_row *rows;
    size_t row_count;
    size_t row_capacity;
    sw_buffer told; /* lines: findings, refusals */
    sw_buffer why;  /* lines: choices and their reasons, other uses that changed along */
    size_t refused; /* cues */
} sw_recipe_run;

/* Runs the steps over the main file of a cue. False when a step was refused: the cue is then as it was before
 * the first step, and `told` says why. */
bool sw_recipe_run_cue(sw_recipe_run *run, const sw_film *film, const char *path);
void sw_recipe_run_free(sw_recipe_run *run);

#endif
