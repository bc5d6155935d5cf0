#include "app/films.h"

#include <stdlib.h>
#include <string.h>

#include "stavewright/check.h"

static sw_film *load(const char *path, char **error)
{
    if (path == NULL) {
        return sw_check_film(NULL, (sw_slice){0}, error);
    }
    sw_text *text = sw_text_read(path, error);
    sw_film *film = text == NULL ? NULL : sw_check_film(path, (sw_slice){text->bytes, text->length}, error);
    sw_text_free(text);
    return film;
}

/* The number of the film with this stavewright.yaml (NULL: with none); how many there are: it is not known
 * yet. */
static size_t find(const sw_films *films, const char *path)
{
    size_t i = 0;
    for (; i < films->count; i++) {
        const char *known = films->items[i].path;
        if (path == NULL || known == NULL ? path == known : strcmp(path, known) == 0) {
            break;
        }
    }
    return i;
}

static const sw_film *look_up(sw_films *films, const char *file, char **error)
{
    char *path = sw_film_path(file);
    films->last = find(films, path);
    if (films->last < films->count) {
        free(path);
        return films->items[films->last].film;
    }
    sw_film *film = load(path, error);
    if (film == NULL) {
        free(path);
        return NULL;
    }
    films->items = sw_grow(films->items, films->count, &films->capacity, sizeof *films->items);
    films->items[films->count++] = (sw_known_film){path, film};
    return film;
}

const sw_film *sw_films_of(sw_films *films, const char *file, char **error)
{
    sw_slice folder = sw_path_folder(file);
    if (films->folder != NULL && sw_slice_is(folder, films->folder)) {
        return films->items[films->last].film;
    }
    const sw_film *film = look_up(films, file, error);
    free(films->folder);
    films->folder = film == NULL ? NULL : strndup(folder.data, folder.length);
    return film;
}

void sw_films_free(sw_films *films)
{
    for (size_t i = 0; i < films->count; i++) {
        sw_film_free(films->items[i].film);
        free(films->items[i].path);
    }
    free(films->items);
    free(films->folder);
    *films = (sw_films){0};
}

void sw_folders_add(sw_folders *folders, const char *const *more, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        folders->items = sw_grow(folders->items, folders->count, &folders->capacity, sizeof *folders->items);
        folders->items[folders->count++] = more[i];
    }
}

void sw_folders_add_films(sw_folders *folders, const sw_films *films)
{
    for (size_t i = 0; i < films->count; i++) {
        const sw_film *film = films->items[i].film;
        sw_folders_add(folders, sw_film_includes(film), sw_film_include_count(film));
    }
}
