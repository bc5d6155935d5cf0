/* A file on its way to its new bytes. */
#ifndef STAVEWRIGHT_SOURCE_TARGET_H
#define STAVEWRIGHT_SOURCE_TARGET_H

#include <sys/types.h>

#include "source/internal.h"

/* One file on its way. Every string is owned; the two temporary names are NULL when no such file exists. */
typedef struct sw_target {
    const sw_write *write;
    char *path;   /* the real one, behind symbolic links */
    char *folder; /* that holds it */
    unsigned mode;
    uid_t owner;
    gid_t group;
    char *fresh;   /* the new bytes */
    char *kept;    /* the original: a second name of the file, or a copy */
    bool replaced; /* path holds the new bytes */
} sw_target;

/* Finds the real path of each target (whose `write` is set) and sees that all can be written. */
bool sw_targets_find(sw_target *targets, size_t count, char **error);
/* Creates the two temporary files of a target. */
bool sw_target_prepare(sw_target *t, char **error);
/* Removes the temporary files that are left and frees what the target owns. */
void sw_target_close(sw_target *t);
/* Sets *error to path, what went wrong, and the reason in errno; returns false. */
bool sw_target_fail(const sw_target *t, const char *what, char **error);

#endif
