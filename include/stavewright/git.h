/* A film's folder in git: what is staged, and what has changed. */
#ifndef STAVEWRIGHT_GIT_H
#define STAVEWRIGHT_GIT_H

#include <stdbool.h>

typedef struct sw_git sw_git;

/* Opens the repository that holds the working folder, as git would find it (GIT_DIR and GIT_INDEX_FILE, which
 * git sets for hooks, hold). NULL when there is none, or one without files beside it: *error is then a
 * sentence, to be freed with free(). */
sw_git *sw_git_open(char **error);
/* NULL is allowed. Reading goes back to the disk when it was from this repository's index. */
void sw_git_free(sw_git *git);

/* Takes a path as a person in the working folder would write it. */
typedef void sw_git_take(void *context, const char *path);

/* From now on sw_text_read and sw_file_exists see the files of the working tree as they are staged. What is
 * not staged is not there. Files outside of the working tree, those that git ignores and those of submodules
 * are read from the disk. The index is the one that sw_git_open has found: a later git add is not seen. */
void sw_git_read_staged(sw_git *git);

/* The same for a revision ("HEAD~3", a branch, a tag ...; NULL: the last commit). Files of submodules are
 * read as the commit has them that the revision names; those of a submodule that is not cloned, and what git
 * ignores, from the disk. False when there is none: *error is then a sentence, to be freed with free(). */
bool sw_git_read_revision(sw_git *git, const char *revision, char **error);
/* Every file of the revision that is read, in order of the paths; no links. */
void sw_git_each_in_revision(sw_git *git, sw_git_take *take, void *context);
/* Whether there is such a revision. */
bool sw_git_knows(sw_git *git, const char *revision);
/* Whether a revision (NULL: the last commit) has a file or folder of this path. */
bool sw_git_holds(sw_git *git, const char *revision, const char *path);
/* From now on files are read from the disk again. */
void sw_git_read_disk(sw_git *git);

/* Every staged file, in order of the paths from the top of the working tree. */
void sw_git_each_staged(sw_git *git, sw_git_take *take, void *context);

/* Every file that has changed since a revision ("HEAD~3", a branch, a tag ...; NULL: the last commit, or
 * nothing before the first one): staged changes when `staged`, otherwise all in the working tree, new files
 * too. Deleted files are among them; of a renamed one both paths are; of a submodule its folder is. False
 * when that can't be found out: *error is then a sentence, to be freed with free(). */
bool sw_git_each_changed(sw_git *git, const char *since, bool staged, sw_git_take *take, void *context,
                         char **error);

/* The same for all files that differ between two revisions. */
bool sw_git_each_between(sw_git *git, const char *old, const char *new, sw_git_take *take, void *context,
                         char **error);

/* The working tree, as a person in the working folder would write it; owned by `git`. */
const char *sw_git_top(const sw_git *git);
/* The folder where git looks for hooks, core.hooksPath included; absolute, owned by `git`. */
const char *sw_git_hooks(const sw_git *git);

#endif
