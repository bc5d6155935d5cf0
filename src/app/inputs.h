/* What a command reads: files, folders, standard input, or, when nothing is named, the film around the
 * working folder. */
#ifndef SW_APP_INPUTS_H
#define SW_APP_INPUTS_H

#include "app/films.h"
#include "app/words.h"
#include "stavewright/git.h"
#include "stavewright/main_files.h"

/* {.command = ...} is the empty one. Free with sw_inputs_free. */
typedef struct sw_inputs {
    const char *command;
    bool standard_input; /* "-" was named */
    bool staged;         /* --staged: files are read from git's index */
    const char
        *since; /* --since: what has changed since this revision; NULL: with `staged` the last commit */
    const char *until; /* with `since`: up to this revision; NULL: up to now */
    const char
        *revision;    /* with `since`: files are read from this revision; NULL: from the disk or the index */
    sw_paths named;   /* files and folders, as they were given */
    sw_git *git;      /* after sw_inputs_close, with `staged` or `since` */
    sw_paths changed; /* the same: what git says has changed */
    sw_paths paths;   /* files; after sw_inputs_close without what was made from the sources */
    sw_folders includes; /* --include */
    sw_films films;      /* after sw_inputs_close: of all paths */
    sw_shelf *shelf; /* where sw_inputs_mains leaves what it has read, freed with the inputs; NULL: nowhere */
} sw_inputs;

/* Takes a path of the command line. */
void sw_inputs_take(sw_inputs *inputs, const char *path);
/* After the last path: finds the files, takes the film around the working folder when none was named (with
 * git all of the repository), and reads the films of all files, so that a mistake in one is said before
 * anything is done. `file_name`: what standard input holds, or NULL. False when something is wrong or there
 * is no source, which with git is no mistake; it has been said then. */
bool sw_inputs_close(sw_inputs *inputs, const char *file_name);
void sw_inputs_free(sw_inputs *inputs);

/* The film of a path, owned by the inputs. NULL when it is wrong; it has been said then. */
const sw_film *sw_inputs_film(sw_inputs *inputs, const char *path);
/* Where includes are looked for: --include, then what the film says (NULL: what all films say). Free `items`.
 */
sw_folders sw_inputs_folders(const sw_inputs *inputs, const sw_film *film);
/* Which of the files are main files; with git, those that what has changed touches. */
sw_paths sw_inputs_mains(const sw_inputs *inputs);

/* The folder of the film around the working folder, "." without one; free() it. */
char *sw_film_folder(void);
/* For commands that work on one score: the path itself, or the only main file below a folder; NULL is the
 * film around the working folder. Free it; NULL when there is no or more than one; it has been said then. */
char *sw_inputs_one(const char *command, const char *path);

#endif
