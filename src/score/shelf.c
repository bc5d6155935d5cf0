/* Files that several readings include: read and parsed once, by whichever reading comes first. */
#include <pthread.h>
#include <stdlib.h>
#include <string.h>

#include "score/shelf.h"

typedef struct shelved {
    char *error; /* why it can't be read */
    sw_text *text;
    sw_syntax *syntax;
    bool ready; /* otherwise somebody is reading it */
} shelved;

struct sw_shelf {
    pthread_mutex_t lock;
    pthread_cond_t changed;
    sw_names *paths; /* absolute ones */
    shelved **files; /* by number of the path; NULL: nobody has asked for it */
    size_t capacity;
};

sw_shelf *sw_shelf_new(void)
{
    sw_shelf *shelf = sw_alloc_zero(1, sizeof *shelf);
    pthread_mutex_init(&shelf->lock, NULL);
    pthread_cond_init(&shelf->changed, NULL);
    shelf->paths = sw_names_new();
    return shelf;
}

void sw_shelf_free(sw_shelf *shelf)
{
    if (shelf == NULL) {
        return;
    }
    for (size_t i = 0; i < shelf->capacity; i++) {
        if (shelf->files[i] != NULL) {
            free(shelf->files[i]->error);
            sw_syntax_free(shelf->files[i]->syntax);
            sw_text_free(shelf->files[i]->text);
            free(shelf->files[i]);
        }
    }
    free(shelf->files);
    sw_names_free(shelf->paths);
    pthread_cond_destroy(&shelf->changed);
    pthread_mutex_destroy(&shelf->lock);
    free(shelf);
}

/* The place of a file, made when it is the first time; *first then. The lock is held. */
static shelved *place_of(sw_shelf *shelf, const char *key, bool *first)
{
    size_t number = sw_names_add(shelf->paths, sw_slice_of(key));
    size_t before = shelf->capacity;
    if (number >= before) {
        shelf->files = sw_grow(shelf->files, number, &shelf->capacity, sizeof *shelf->files);
        memset(shelf->files + before, 0, (shelf->capacity - before) * sizeof *shelf->files);
    }
    *first = shelf->files[number] == NULL;
    if (*first) {
        shelf->files[number] = sw_alloc_zero(1, sizeof *shelf->files[number]);
    }
    return shelf->files[number];
}

/* The file as it is on the shelf, ready. */
static const shelved *get(sw_shelf *shelf, const char *path)
{
    char *absolute = sw_path_absolute(path);
    bool first = false;
    pthread_mutex_lock(&shelf->lock);
    shelved *file = place_of(shelf, absolute != NULL ? absolute : path, &first);
    if (first) {
        pthread_mutex_unlock(&shelf->lock); /* others can be read meanwhile */
        file->text = sw_text_read(path, &file->error);
        file->syntax = file->text == NULL ? NULL : sw_syntax_parse(file->text);
        pthread_mutex_lock(&shelf->lock);
        file->ready = true;
        pthread_cond_broadcast(&shelf->changed);
    }
    while (!file->ready) {
        pthread_cond_wait(&shelf->changed, &shelf->lock);
    }
    pthread_mutex_unlock(&shelf->lock);
    free(absolute);
    return file;
}

bool sw_shelf_take(sw_shelf *shelf, const char *path, sw_text **text, sw_syntax **syntax, char **error)
{
    const shelved *file = get(shelf, path);
    if (file->text == NULL) {
        *error = strdup(file->error);
        return false;
    }
    *text = sw_text_share(path, file->text);
    *syntax = sw_syntax_share(file->syntax, *text);
    return true;
}
