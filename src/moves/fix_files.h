/* Files that change in several passes, and what becomes of each byte. Private to moves/. */
#ifndef SW_MOVES_FIX_FILES_H
#define SW_MOVES_FIX_FILES_H

#include "stavewright/change.h"

typedef struct sw_fix_file {
    sw_text *before; /* as it is on disk */
    sw_text *now;    /* with the changes of all passes */
    uint32_t *from;  /* for each byte of `now`, that of `before`; SW_NO_INDEX for a new one */
} sw_fix_file;

typedef struct sw_fix_files {
    sw_fix_file *items;
    size_t count;
    size_t capacity;
    sw_text **old; /* texts that were in force in this pass; readings may still hold them */
    size_t old_count;
    size_t old_capacity;
} sw_fix_files;

/* The texts as they are now, for reading; free() the list. */
const sw_text **sw_fix_files_overlays(const sw_fix_files *files);
/* Adds the changes of a finished patch over the texts as they are now. False when a file on disk is another
 * one meanwhile: *error says so (free() it). */
bool sw_fix_files_keep(sw_fix_files *files, const sw_patch *patch, char **error);
/* Frees the texts of the pass before. */
void sw_fix_files_sweep(sw_fix_files *files);
/* All changes as one finished patch over the texts on disk, which stay owned here. False with *error. */
bool sw_fix_files_patch(const sw_fix_files *files, sw_patch *patch, char **error);
void sw_fix_files_free(sw_fix_files *files);

#endif
