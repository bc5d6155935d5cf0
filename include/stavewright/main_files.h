/* Which files of a project are scores of their own, and which are parts of others. */
#ifndef STAVEWRIGHT_MAIN_FILES_H
#define STAVEWRIGHT_MAIN_FILES_H

#include <stdbool.h>

#include "stavewright/paths.h"
#include "stavewright/score.h"

/* Of the files given, those to be read on their own: each that no other of them includes. Of files that
 * include one another in a ring the first one is taken. Each file counts once, whatever the path. Those that
 * include the most files come first (full scores before parts), else the order is the one given. A file that
 * cannot be read is kept: whoever reads it will say why. All files are on the shelf of the options
 * afterwards, for readings with the same overlays. */
sw_paths sw_main_files(const sw_paths *files, const sw_read_options *options);

/* Of these main files those that read, by themselves or through what they include, a file of `touched`, or
 * that include one of them that is no longer there. NULL: all. Few files may be touched, so nothing goes on
 * the shelf then. */
sw_paths sw_main_files_touched(const sw_paths *files, const sw_read_options *options,
                               const sw_paths *touched);

/* Who includes whom below folders, found out once for a command that asks often; any thread may ask. What is
 * written to the files meanwhile must not change their \include commands. */
sw_known_includes *sw_known_includes_new(void);
/* NULL is allowed. */
void sw_known_includes_free(sw_known_includes *known);
/* Of the main files below a folder those that read one of these files, which are there. Kept in
 * options->includes, when that is given. False when the folder can't be read: *error is then a sentence
 * (free() it). */
bool sw_main_files_below(const char *folder, const sw_read_options *options, const sw_paths *files,
                         sw_paths *mains, char **error);
/* The same of a list of files. Who includes whom among them is kept by the list's address: it lives, and
 * stays as it is, as long as options->includes is used. */
sw_paths sw_main_files_among(const sw_paths *list, const sw_read_options *options, const sw_paths *files);

#endif
