/* A file on its way to its new bytes. */
#ifndef STAVEWRIGHT_SOURCE_TARGET_H
#define STAVEWRIGHT_SOURCE_TARGET_H

#include <sys/types.h>

#include "source/internal.h"

/* One file on its way. Every string is owned; a temporary name is NULL when there is no such file. */
typedef struct sw_target {
    const sw_write *write;
    char *path; /* the real one, behind symbolic links */
    unsigned mode;
    uid_t owner;
    gid_t group;
    char *fresh;   /* the new bytes */
    char *kept;    /* the original: a second name of the file, or a copy */
    bool replaced; /* path holds the new bytes */
} sw_target;

/* Finds the real path of each target, whose `write` is set. */
bool sw_targets_find(sw_target *targets, size_t count, char **error);
/* Sees that a target can be written, once no other change is at work in its folder. */
bool sw_target_inspect(sw_target *t, char **error);
/* Creates the two temporary files of a target under these names, which it owns from here on. */
bool sw_target_prepare(sw_target *t, char *fresh, char *kept, char **error);
/* Frees what the target owns. */
void sw_target_close(sw_target *t);
/* Sets *error to path, what went wrong, and the reason in errno; returns false. */
bool sw_target_fail(const sw_target *t, const char *what, char **error);

#endif
