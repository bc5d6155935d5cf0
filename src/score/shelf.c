/* Files that several readings include: read and parsed once, by whichever reading comes first. */
#include <pthread.h>
#include <stdlib.h>
#include <string.h>

#include "base/memo.h"
#include "score/shelf.h"

typedef struct shelved {
    char *error;   /* why it can't be read, or is no source */
    sw_text *text; /* NULL: it is somebody else's */
    sw_syntax *syntax;
    bool ready; /* otherwise somebody is reading it */
    struct shelved *next;
} shelved;

/* A cue has a handful of families, and its parts are read one after another: so many are enough. */
enum { PRELUDES = 16 };

typedef struct kept {
    char *key;
    sw_prelude *prelude; /* NULL: none */
} kept;

struct sw_shelf {
    pthread_mutex_t lock;
    pthread_cond_t changed;
    sw_memo *files; /* by absolute path, or by the address of a text: a pointer to what is shelved */
    shelved *first;
    kept preludes[PRELUDES]; /* a ring */
    size_t oldest;
};

sw_shelf *sw_shelf_new(void)
{
    sw_shelf *shelf = sw_alloc_zero(1, sizeof *shelf);
    pthread_mutex_init(&shelf->lock, NULL);
    pthread_cond_init(&shelf->changed, NULL);
    shelf->files = sw_memo_new();
    return shelf;
}

void sw_shelf_free(sw_shelf *shelf)
{
    if (shelf == NULL) {
        return;
    }
    for (shelved *file = shelf->first; file != NULL;) {
        shelved *next = file->next;
        free(file->error);
        sw_syntax_free(file->syntax);
        sw_text_free(file->text);
        free(file);
        file = next;
    }
    for (size_t i = 0; i < PRELUDES; i++) {
        free(shelf->preludes[i].key);
        sw_prelude_release(shelf->preludes[i].prelude);
    }
    sw_memo_free(shelf->files);
    pthread_cond_destroy(&shelf->changed);
    pthread_mutex_destroy(&shelf->lock);
    free(shelf);
}

/* The place of a file, made when it is the first time; *first then. The lock is held. */
static shelved *place_of(sw_shelf *shelf, sw_slice key, bool *first)
{
    shelved *const *known = sw_memo_find(shelf->files, key);
    *first = known == NULL;
    if (!*first) {
        return *known;
    }
    shelved *file = sw_alloc_zero(1, sizeof *file);
    file->next = shelf->first;
    shelf->first = file;
    sw_memo_keep(shelf->files, key, &file, sizeof file);
    return file;
}

static void fill(shelved *file, const char *path, const sw_text *given)
{
    file->text = given == NULL ? sw_text_read(path, &file->error) : NULL;
    const sw_text *text = given == NULL ? file->text : given;
    file->syntax = text == NULL ? NULL : sw_syntax_parse(text);
    file->error = file->syntax == NULL ? file->error : sw_syntax_refusal(file->syntax);
}

/* What is on the shelf under a key, ready: the file with this path, or a text in memory. */
static const shelved *get(sw_shelf *shelf, sw_slice key, const char *path, const sw_text *given)
{
    bool first = false;
    pthread_mutex_lock(&shelf->lock);
    shelved *file = place_of(shelf, key, &first);
    if (first) {
        pthread_mutex_unlock(&shelf->lock); /* others can be read meanwhile */
        fill(file, path, given);
        pthread_mutex_lock(&shelf->lock);
        file->ready = true;
        pthread_cond_broadcast(&shelf->changed);
    }
    while (!file->ready) {
        pthread_cond_wait(&shelf->changed, &shelf->lock);
    }
    pthread_mutex_unlock(&shelf->lock);
    return file;
}

bool sw_shelf_take(sw_shelf *shelf, const char *path, sw_text **text, sw_syntax **syntax, char **error)
{
    char *absolute = sw_path_absolute(path);
    const shelved *file = get(shelf, sw_slice_of(absolute != NULL ? absolute : path), path, NULL);
    free(absolute);
    if (file->error != NULL) {
        *error = strdup(file->error);
        return false;
    }
    *text = sw_text_share(path, file->text);
    *syntax = sw_syntax_share(file->syntax, *text);
    return true;
}

sw_syntax *sw_shelf_parse(sw_shelf *shelf, sw_text *text, char **error)
{
    const shelved *file = get(shelf, (sw_slice){(const char *)&text, sizeof text}, NULL, text);
    if (file->error != NULL) {
        *error = strdup(file->error);
        return NULL;
    }
    return sw_syntax_share(file->syntax, text);
}

sw_prelude *sw_shelf_find_prelude(sw_shelf *shelf, sw_slice key)
{
    sw_prelude *found = NULL;
    pthread_mutex_lock(&shelf->lock);
    for (size_t i = 0; i < PRELUDES && found == NULL; i++) {
        const kept *k = &shelf->preludes[i];
        found = k->prelude != NULL && sw_slice_is(key, k->key) ? sw_prelude_hold(k->prelude) : NULL;
    }
    pthread_mutex_unlock(&shelf->lock);
    return found;
}

void sw_shelf_keep_prelude(sw_shelf *shelf, sw_slice key, sw_prelude *prelude)
{
    sw_buffer copy = {0};
    sw_buffer_append(&copy, key);
    pthread_mutex_lock(&shelf->lock);
    kept gone = shelf->preludes[shelf->oldest];
    shelf->preludes[shelf->oldest] = (kept){copy.data, prelude};
    shelf->oldest = (shelf->oldest + 1) % PRELUDES;
    pthread_mutex_unlock(&shelf->lock);
    free(gone.key);
    sw_prelude_release(gone.prelude);
}
