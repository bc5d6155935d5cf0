/* The cues of a film: one full score each, whatever parts and sketches are made of its music besides. */
#ifndef STAVEWRIGHT_CUES_H
#define STAVEWRIGHT_CUES_H

#include "stavewright/main_files.h"

/* The main files that have scores of their own, in the order of their names. Of several that share files with
 * music, which sounds in half of their bars or more, the one with the most staves is taken: the others are
 * its parts or sketches. *left_out (may be NULL) is how many of those there are. Files are read at the same
 * time; `read` (may be NULL) is called with `context` behind each, from any thread. False when a file can't
 * be read: *error is a sentence (free() it). The caller frees the list with sw_paths_free. */
bool sw_cues_find(const sw_paths *mains, const sw_read_options *options, void (*read)(void *context),
                  void *context, sw_paths *cues, size_t *left_out, char **error);

/* A flag for each file of a reading: whether notes, rests or skips are written there. To be freed with
 * free(). */
bool *sw_files_with_music(const sw_reading *reading);

#endif
