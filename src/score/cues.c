#include "stavewright/cues.h"

#include <stdlib.h>
#include <string.h>

#include "base/parallel.h"

/* What is kept of a main file when its reading is gone: many files are not held at once. */
typedef struct candidate {
    const char *path;
    size_t staves; /* of its largest score */
    size_t order;
    sw_paths music; /* real paths of the files that hold its music */
    bool is_cue;
    char *error; /* why it can't be read; NULL: it can */
} candidate;

static bool has_length(const sw_music *m)
{
    return m->kind == SW_MUSIC_NOTE || m->kind == SW_MUSIC_DRUM || m->kind == SW_MUSIC_REST ||
           m->kind == SW_MUSIC_FULL_REST || m->kind == SW_MUSIC_SKIP;
}

bool *sw_files_with_music(const sw_reading *reading)
{
    bool *holds = sw_alloc_zero(reading->file_count + 1, sizeof *holds);
    for (size_t i = 0; i < reading->music_count; i++) {
        holds[reading->music[i].file] = holds[reading->music[i].file] || has_length(&reading->music[i]);
    }
    return holds;
}

static void list_music(const sw_reading *reading, candidate *c)
{
    bool *holds = sw_files_with_music(reading);
    for (size_t i = 0; i < reading->file_count; i++) {
        char *real = holds[i] ? realpath(reading->files[i].text->path, NULL) : NULL;
        if (real != NULL) {
            sw_paths_add(&c->music, real);
        }
        free(real);
    }
    free(holds);
}

/* Files that are read at the same time. */
typedef struct looking {
    candidate *list;
    const sw_read_options *options;
    void (*read)(void *context);
    void *context;
} looking;

static void look_at(void *context, size_t n)
{
    const looking *all = context;
    candidate *c = &all->list[n];
    sw_reading *reading = sw_read(c->path, all->options, &c->error);
    for (size_t s = 0; reading != NULL && s < reading->score_count; s++) {
        size_t staves = reading->scores[s].in_markup ? 0 : reading->scores[s].staff_count;
        c->staves = staves > c->staves ? staves : c->staves;
    }
    if (reading != NULL) {
        list_music(reading, c);
    }
    sw_reading_free(reading);
    if (all->read != NULL) {
        all->read(all->context);
    }
}

static int by_size(const void *a, const void *b)
{
    const candidate *x = a;
    const candidate *y = b;
    if (x->staves != y->staves) {
        return x->staves > y->staves ? -1 : 1;
    }
    return (x->order > y->order) - (x->order < y->order);
}

static int by_name(const void *a, const void *b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

static bool share_music(const candidate *a, const candidate *b)
{
    for (size_t i = 0; i < a->music.count; i++) {
        for (size_t k = 0; k < b->music.count; k++) {
            if (strcmp(a->music.items[i], b->music.items[k]) == 0) {
                return true;
            }
        }
    }
    return false;
}

/* The largest first; each whose music no cue before it has. */
static void choose(candidate *list, size_t count, sw_paths *cues, size_t *left_out)
{
    if (count > 0) {
        qsort(list, count, sizeof *list, by_size);
    }
    for (size_t i = 0; i < count && list[i].staves > 0; i++) {
        list[i].is_cue = true;
        for (size_t k = 0; k < i && list[i].is_cue; k++) {
            list[i].is_cue = !(list[k].is_cue && share_music(&list[k], &list[i]));
        }
        if (list[i].is_cue) {
            sw_paths_add(cues, list[i].path);
        } else if (left_out != NULL) {
            ++*left_out;
        }
    }
    if (cues->count > 0) {
        qsort(cues->items, cues->count, sizeof *cues->items, by_name);
    }
}

/* The first mistake, when there is one. */
static bool all_are_read(candidate *list, size_t count, char **error)
{
    bool good = true;
    for (size_t i = 0; i < count; i++) {
        if (list[i].error != NULL && good) {
            *error = list[i].error;
            good = false;
        } else {
            free(list[i].error);
        }
    }
    return good;
}

bool sw_cues_find(const sw_paths *mains, const sw_read_options *options, void (*read)(void *context),
                  void *context, sw_paths *cues, size_t *left_out, char **error)
{
    looking all = {sw_alloc_zero(mains->count + 1, sizeof *all.list), options, read, context};
    if (left_out != NULL) {
        *left_out = 0;
    }
    for (size_t i = 0; i < mains->count; i++) {
        all.list[i] = (candidate){.path = mains->items[i], .order = i};
    }
    sw_parallel(mains->count, look_at, &all);
    bool good = all_are_read(all.list, mains->count, error);
    if (good) {
        choose(all.list, mains->count, cues, left_out);
    }
    for (size_t i = 0; i < mains->count; i++) {
        sw_paths_free(&all.list[i].music);
    }
    free(all.list);
    return good;
}
