/* Fixes for findings: what the rules offer (check.h), made, proved and gathered.
 *
 * Fixes are made in passes. Each pass reads a main file with what the passes before have changed, runs the
 * rules, makes as many of the fixes together as prove out, and leaves the rest to the next pass: two fixes
 * that touch the same place are never merged. When a pass changes nothing, all that can be done is done. */
#ifndef STAVEWRIGHT_FIX_H
#define STAVEWRIGHT_FIX_H

#include "stavewright/change.h"
#include "stavewright/check.h"
#include "stavewright/main_files.h"

typedef struct sw_fixing sw_fixing;

/* `all`: not only the fixes that are safe, but also those that change what is played. `accepted`: what a
 * baseline has taken out of this result stays as it is (borrowed; NULL: nothing). */
sw_fixing *sw_fixing_new(bool all, const sw_check_result *accepted);
/* NULL is allowed. */
void sw_fixing_free(sw_fixing *fixing);

/* One pass over a main file. `mains`: the files that are checked; those that share a file with this one which
 * a fix may change take part in the proofs; the list stays as it is for all passes. *changed says whether
 * anything was fixed. A file that can't be read is told and left. False when a file is another one by now:
 * *error is then a sentence (free() it). */
bool sw_fixing_pass(sw_fixing *fixing, const char *path, const sw_check_options *options,
                    const sw_paths *mains, bool *changed, char **error);

/* How many fixes have been made. */
size_t sw_fixing_count(const sw_fixing *fixing);
/* A line for each that was made, and for each that could not be, with the reason. */
const sw_buffer *sw_fixing_told(const sw_fixing *fixing);
/* The changes of all passes as one patch (which must be empty) of the files as they are on disk; the fixing
 * must outlive it. False with *error (free() it). */
bool sw_fixing_patch(const sw_fixing *fixing, sw_patch *patch, char **error);

#endif
