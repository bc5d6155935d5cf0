/* Files that change in several steps, each read as the ones before have left it, and what becomes of each
 * byte. Private to moves/ and app/. */
#ifndef SW_MOVES_CHANGED_FILES_H
#define SW_MOVES_CHANGED_FILES_H

#include "stavewright/change.h"

typedef struct sw_changed_file {
    sw_text *before; /* as it is on disk */
    sw_text *now;    /* with the changes of all passes */
    uint32_t *from;  /* for each byte of `now`, that of `before`; SW_NO_INDEX for a new one */
} sw_changed_file;

/* How a file was before a change. */
typedef struct sw_former_file {
    size_t file;   /* index into the files */
    sw_text *text; /* readings may still hold it */
    uint32_t *from;
} sw_former_file;

typedef struct sw_changed_files {
    sw_changed_file *items;
    size_t count;
    size_t capacity;
    sw_former_file *old; /* since the last sweep, in order of time */
    size_t old_count;
    size_t old_capacity;
} sw_changed_files;

/* The texts as they are now, for reading; free() the list. */
const sw_text **sw_changed_files_overlays(const sw_changed_files *files);
/* Adds the changes of a finished patch over the texts as they are now. False when a file on disk is another
 * one meanwhile: *error says so (free() it). */
bool sw_changed_files_keep(sw_changed_files *files, const sw_patch *patch, char **error);
/* What was changed since the last sweep stays: frees the texts that were in force before. */
void sw_changed_files_sweep(sw_changed_files *files);
/* Takes back what was changed since the last sweep. */
void sw_changed_files_take_back(sw_changed_files *files);
/* Whether something was changed since the last sweep. */
bool sw_changed_files_are_new(const sw_changed_files *files);
/* All changes as one finished patch over the texts on disk, which stay owned here. False with *error. */
bool sw_changed_files_patch(const sw_changed_files *files, sw_patch *patch, char **error);
void sw_changed_files_free(sw_changed_files *files);

#endif
