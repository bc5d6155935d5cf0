#include "stavewright/cues.h"

#include <stdlib.h>
#include <string.h>

#include "base/parallel.h"

/* What is kept of a main file when its reading is gone: many files are not held at once. */
typedef struct candidate {
    const char *path;
    size_t staves; /* of its largest score */
    size_t order;
    sw_paths music; /* real paths of the files that hold its music ... */
    bool *sounds; /* ... and of each, for each bar of all its scores, whether something of it sounds there */
    size_t bars;
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

/* Marks the bars of a score in which something that is written in a file sounds, be it a skip. */
static void mark_bars(const sw_reading *reading, const sw_score *score, uint32_t file, bool *sounds)
{
    for (size_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        if (reading->music[event->music].file != file) {
            continue;
        }
        sw_rational end = sw_rational_add(event->onset, event->duration);
        for (size_t b = sw_score_bar_at(score, event->onset);
             b < score->bar_count && sw_rational_compare(score->bars[b].start, end) < 0; b++) {
            sounds[b] = true;
        }
    }
}

static void list_music(const sw_reading *reading, candidate *c)
{
    bool *holds = sw_files_with_music(reading);
    for (size_t s = 0; s < reading->score_count; s++) {
        c->bars += reading->scores[s].bar_count;
    }
    c->sounds = sw_alloc_zero(c->bars * reading->file_count + 1, sizeof *c->sounds);
    for (uint32_t i = 0; i < reading->file_count; i++) {
        char *real = holds[i] ? realpath(reading->files[i].text->path, NULL) : NULL;
        bool *sounds = &c->sounds[c->music.count * c->bars];
        for (size_t s = 0; real != NULL && s < reading->score_count; s++) {
            mark_bars(reading, &reading->scores[s], i, sounds);
            sounds += reading->scores[s].bar_count;
        }
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

static bool holds_file(const candidate *c, const char *path)
{
    for (size_t i = 0; i < c->music.count; i++) {
        if (strcmp(c->music.items[i], path) == 0) {
            return true;
        }
    }
    return false;
}

/* Whether a smaller score is made of a larger one's music: in half of its bars at least something of the
 * files sounds that both have. Cues of their own may share a few bars, or words that are hung on skips. */
static bool is_made_of(const candidate *small, const candidate *large)
{
    bool *both = sw_alloc_zero(small->music.count + 1, sizeof *both);
    bool any = false;
    for (size_t i = 0; i < small->music.count; i++) {
        both[i] = holds_file(large, small->music.items[i]);
        any = any || both[i];
    }
    size_t shared = 0;
    for (size_t b = 0; b < small->bars && any; b++) {
        bool found = false;
        for (size_t i = 0; i < small->music.count && !found; i++) {
            found = both[i] && small->sounds[i * small->bars + b];
        }
        shared += found;
    }
    free(both);
    return shared > 0 && 2 * shared >= small->bars;
}

/* The largest first; each that is not made of one before it. */
static void choose(candidate *list, size_t count, sw_paths *cues, size_t *left_out)
{
    if (count > 0) {
        qsort(list, count, sizeof *list, by_size);
    }
    for (size_t i = 0; i < count && list[i].staves > 0; i++) {
        list[i].is_cue = true;
        for (size_t k = 0; k < i && list[i].is_cue; k++) {
            list[i].is_cue = !(list[k].is_cue && is_made_of(&list[i], &list[k]));
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
    sw_read_options shelved = options == NULL ? (sw_read_options){0} : *options;
    sw_shelf *own =
        shelved.shelf == NULL ? sw_shelf_new() : NULL; /* the parts of a cue include its families */
    shelved.shelf = own == NULL ? shelved.shelf : own;
    looking all = {sw_alloc_zero(mains->count + 1, sizeof *all.list), &shelved, read, context};
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
        free(all.list[i].sounds);
    }
    free(all.list);
    sw_shelf_free(own);
    return good;
}
