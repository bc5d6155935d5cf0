/* The two versions that are compared: where the files of each come from, and which cues it has. */
#ifndef SW_APP_VERSIONS_H
#define SW_APP_VERSIONS_H

#include "app/inputs.h"

/* One of them. */
typedef struct sw_version {
    sw_inputs inputs;
    const char *revision; /* files come from this revision; NULL: from the disk */
    sw_paths root; /* the file or folder that stands for the version, below which all paths are counted;
                      without one they count from the working folder */
    bool empty;    /* nothing that is named is there */
    sw_folders folders;
    sw_read_options options;
    sw_paths cues; /* below the root; "." for a root that is a file */
} sw_version;

typedef struct sw_versions {
    sw_version old;
    sw_version new;
    sw_paths cues; /* of both, each once, in the order of their names */
} sw_versions;

/* What the words of the command line name: two files or folders, or revisions and paths. Words before number
 * `revisions_end` (SIZE_MAX: nobody says) are revisions. Finds the cues of both versions. False when
 * something is wrong; it has been said then. Free in any case. */
bool sw_versions_find(sw_versions *versions, const char *command, const char *const *words, size_t count,
                      size_t revisions_end, const sw_folders *includes);
void sw_versions_free(sw_versions *versions);

/* Reads one of the cues; NULL in *reading when the version has no such file. False when it can't be read; it
 * has been said then. */
bool sw_version_read(sw_version *version, const char *cue, sw_reading **reading);
/* The path of one of the cues in a version; free() it. */
char *sw_version_path(const sw_version *version, const char *cue);

#endif
