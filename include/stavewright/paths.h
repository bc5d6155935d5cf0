/* Paths of files as the user gives them: in their plain form, and all sources below a folder. */
#ifndef STAVEWRIGHT_PATHS_H
#define STAVEWRIGHT_PATHS_H

#include <stdbool.h>
#include <stddef.h>

#include "stavewright/base.h"

/* A list of paths; {0} is the empty one. */
typedef struct sw_paths {
    char **items;
    size_t count;
    size_t capacity;
} sw_paths;

/* Adds a path in its plain form: "a/./b//c" is "a/b/c", and "a/../b" is "b" where both name the same file. */
void sw_paths_add(sw_paths *paths, const char *path);
void sw_paths_free(sw_paths *paths);

/* Whether a file is a source by its name: .ly or .ily. */
bool sw_path_is_source(const char *path);

/* Adds a file, or all .ly and .ily files below a folder in order of their names, without hidden folders and
 * without following links to folders. False when the path or a folder below cannot be read: *error is then
 * a sentence with the path and the reason (free() it); files found so far stay in the list. */
bool sw_paths_collect(sw_paths *paths, const char *path, char **error);

/* Appends what tells a file from all others: where it is on disk, so that two paths to one file are one; its
 * path when it is not there (staged, but deleted). */
void sw_path_key(const char *path, sw_buffer *key);

#endif
