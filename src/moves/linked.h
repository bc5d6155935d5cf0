/* The main files that a change of one file concerns. Private to moves/. */
#ifndef SW_MOVES_LINKED_H
#define SW_MOVES_LINKED_H

#include "stavewright/main_files.h"
#include "stavewright/move.h"

/* Adds a reading to those of the move, which owns it from here on. */
void sw_move_add_main(sw_move *move, sw_reading *reading);
/* Whether a reading has the file of a text among its files. */
bool sw_reads_file(const sw_reading *reading, const sw_text *text);
/* Adds those of the paths that share a file with mains[0] and are not there yet, as below. */
void sw_move_add_sharing(sw_move *move, const sw_paths *paths, const sw_read_options *options);
/* Reads the other main files in the folder of `path` and below, and keeps those that share a file with
 * mains[0] through \include; in the rest of the film those that share a file with music. A variable of the
 * same name in a file of its own, or in a backup copy, is another variable. A file that can't be read is left
 * alone, with a line in the notes. False with *error (free() it) when a folder can't be read. */
bool sw_move_read_linked(sw_move *move, const char *path, const sw_read_options *options, char **error);
/* A move that has read the file and the main files that are linked to it. NULL with *error (free() it). */
sw_move *sw_move_open(const char *path, const sw_read_options *options, char **error);
/* The same for a change of this one file's text: without main files that share only what it includes. */
sw_move *sw_move_open_alone(const char *path, const sw_read_options *options, char **error);
/* The move when it is done; otherwise it is freed, and NULL. NULL is allowed. */
sw_move *sw_move_close(sw_move *move, bool done);

#endif
