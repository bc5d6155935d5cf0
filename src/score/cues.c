#include "stavewright/cues.h"

#include <stdlib.h>
#include <string.h>

/* What is kept of a main file when its reading is gone: many files are not held at once. */
typedef struct candidate {
    const char *path;
    size_t staves; /* of its largest score */
    size_t order;
    sw_paths music; /* real paths of the files that hold its music */
    bool is_cue;
} candidate;

static bool has_length(const sw_music *m)
{
    return m->kind == SW_MUSIC_NOTE || m->kind == SW_MUSIC_DRUM || m->kind == SW_MUSIC_REST ||
           m->kind == SW_MUSIC_FULL_REST || m->kind == SW_MUSIC_SKIP;
}

static void list_music(const sw_reading *reading, candidate *c)
{
    bool *holds = sw_alloc_zero(reading->file_count + 1, sizeof *holds);
    for (size_t i = 0; i < reading->music_count; i++) {
        holds[reading->music[i].file] = holds[reading->music[i].file] || has_length(&reading->music[i]);
    }
    for (size_t i = 0; i < reading->file_count; i++) {
        char *real = holds[i] ? realpath(reading->files[i].text->path, NULL) : NULL;
        if (real != NULL) {
            sw_paths_add(&c->music, real);
        }
        free(real);
    }
    free(holds);
}

static bool look_at(const char *path, const sw_read_options *options, candidate *c, char **error)
{
    sw_reading *reading = sw_read(path, options, error);
    if (reading == NULL) {
        return false;
    }
    for (size_t s = 0; s < reading->score_count; s++) {
        size_t staves = reading->scores[s].in_markup ? 0 : reading->scores[s].staff_count;
        c->staves = staves > c->staves ? staves : c->staves;
    }
    list_music(reading, c);
    sw_reading_free(reading);
    return true;
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

bool sw_cues_find(const sw_paths *mains, const sw_read_options *options, sw_paths *cues, size_t *left_out,
                  char **error)
{
    candidate *list = sw_alloc_zero(mains->count + 1, sizeof *list);
    bool good = true;
    if (left_out != NULL) {
        *left_out = 0;
    }
    for (size_t i = 0; i < mains->count && good; i++) {
        list[i] = (candidate){.path = mains->items[i], .order = i};
        good = look_at(mains->items[i], options, &list[i], error);
    }
    if (good) {
        choose(list, mains->count, cues, left_out);
    }
    for (size_t i = 0; i < mains->count; i++) {
        sw_paths_free(&list[i].music);
    }
    free(list);
    return good;
}
