/* The films that the named files belong to, each read once. */
#ifndef SW_APP_FILMS_H
#define SW_APP_FILMS_H

#include "stavewright/film.h"

typedef struct sw_known_film {
    char *path; /* of its stavewright.yaml; NULL for the default film */
    sw_film *film;
} sw_known_film;

/* {0} is the empty list. */
typedef struct sw_films {
    sw_known_film *items;
    size_t count;
    size_t capacity;
    char *folder; /* of the file that was asked for last ... */
    size_t last;  /* ... and its film: those of one folder come one after another */
} sw_films;

/* The film that a file belongs to, owned by the list. NULL when its stavewright.yaml is wrong: *error is then
 * one line, to be freed. */
const sw_film *sw_films_of(sw_films *films, const char *file, char **error);
void sw_films_free(sw_films *films);

/* Folders to look for includes in; borrowed. Free `items` with free(). */
typedef struct sw_folders {
    const char **items;
    size_t count;
    size_t capacity;
} sw_folders;

void sw_folders_add(sw_folders *folders, const char *const *more, size_t count);
/* Those of all films of the list. */
void sw_folders_add_films(sw_folders *folders, const sw_films *films);

#endif
