/* Who includes whom: found from the \include commands alone, without reading any music. Private to score/. */
#ifndef SW_SCORE_INCLUDE_LIST_H
#define SW_SCORE_INCLUDE_LIST_H

#include "base/memo.h"
#include "stavewright/main_files.h"

/* A file, and what it includes. */
typedef struct sw_includer {
    char *path;
    bool included;    /* by another file */
    bool touched;     /* it has changed, or a file that it includes has gone */
    uint32_t reached; /* by which main file last: its number + 1; 0: by none */
    char **names;     /* what its \include commands name */
    size_t name_count;
    size_t name_capacity;
    uint32_t *includes;
    size_t include_count;
    size_t include_capacity;
} sw_includer;

/* Files: first those that were given, then those that they include. */
typedef struct sw_include_list {
    sw_includer *items;
    size_t count;
    size_t capacity;
    sw_names *keys;    /* of each: what tells one file from all others; number 0 is no file's */
    sw_names *touched; /* their keys; NULL: all are */
    sw_memo *places;   /* by path: the place that an \include may mean */
} sw_include_list;

/* Finds what the files and those that they include include; *given is how many of the list they are. NULL for
 * `touched`: all are. */
sw_include_list sw_include_list_read(const sw_paths *files, const sw_read_options *options,
                                     const sw_paths *touched, uint32_t *given);
void sw_include_list_free(sw_include_list *list);

#endif
