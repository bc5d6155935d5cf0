/* Which files are scores of their own: those that no other includes. */
#include "stavewright/main_files.h"

#include <pthread.h>
#include <stdlib.h>
#include <string.h>

#include "score/include_list.h"

/* Marks all that a main file reads, itself included, with its number + 1; returns how many files that are.
 * *touched becomes true when one of them is. */
static size_t reach(sw_include_list *list, uint32_t from, uint32_t mark, bool *touched)
{
    sw_includer *file = &list->items[from];
    if (file->reached == mark) {
        return 0;
    }
    file->reached = mark;
    *touched = *touched || file->touched;
    size_t files = 1;
    for (size_t i = 0; i < file->include_count; i++) {
        files += reach(list, file->includes[i], mark, touched);
    }
    return files;
}

typedef struct main_file {
    uint32_t source;
    size_t files;
    bool touched;
} main_file;

static int compare_mains(const void *a, const void *b)
{
    const main_file *x = a;
    const main_file *y = b;
    if (x->files != y->files) {
        return x->files > y->files ? -1 : 1;
    }
    return x->source < y->source ? -1 : 1;
}

/* The main files among the first `given` of the list that reach one that is touched. */
static sw_paths choose_mains(sw_include_list *list, uint32_t given)
{
    main_file *mains = sw_alloc((given + 1) * sizeof *mains);
    size_t count = 0;
    for (size_t i = 0; i < list->count; i++) {
        list->items[i].reached = 0;
    }
    for (int pass = 0; pass < 2; pass++) { /* then rings, and what hangs on rings only */
        for (uint32_t i = 0; i < given; i++) {
            if (list->items[i].reached == 0 && (pass == 1 || !list->items[i].included)) {
                main_file *found = &mains[count++];
                *found = (main_file){.source = i};
                found->files = reach(list, i, i + 1, &found->touched);
            }
        }
    }
    qsort(mains, count, sizeof *mains, compare_mains);
    sw_paths result = {0};
    for (size_t i = 0; i < count; i++) {
        if (mains[i].touched) {
            sw_paths_add(&result, list->items[mains[i].source].path);
        }
    }
    free(mains);
    return result;
}

sw_paths sw_main_files(const sw_paths *files, const sw_read_options *options)
{
    return sw_main_files_touched(files, options, NULL);
}

sw_paths sw_main_files_touched(const sw_paths *files, const sw_read_options *options, const sw_paths *touched)
{
    uint32_t given;
    sw_include_list list = sw_include_list_read(files, options, touched, &given);
    sw_paths result = choose_mains(&list, given);
    sw_include_list_free(&list);
    return result;
}

/* ---- found out once ---- */

typedef struct known_folder {
    char *folder;          /* NULL: ... */
    const sw_paths *files; /* ... this list */
    sw_include_list list;
    uint32_t given;
} known_folder;

struct sw_known_includes {
    pthread_mutex_t lock;
    known_folder *items;
    size_t count;
    size_t capacity;
};

sw_known_includes *sw_known_includes_new(void)
{
    sw_known_includes *known = sw_alloc_zero(1, sizeof *known);
    pthread_mutex_init(&known->lock, NULL);
    return known;
}

void sw_known_includes_free(sw_known_includes *known)
{
    if (known == NULL) {
        return;
    }
    for (size_t i = 0; i < known->count; i++) {
        free(known->items[i].folder);
        sw_include_list_free(&known->items[i].list);
    }
    free(known->items);
    pthread_mutex_destroy(&known->lock);
    free(known);
}

static known_folder *add_known(sw_known_includes *known, const sw_paths *all, const sw_read_options *options)
{
    known->items = sw_grow(known->items, known->count, &known->capacity, sizeof *known->items);
    known_folder *added = &known->items[known->count++];
    sw_read_options heads = *options; /* few of the files will be read as a whole */
    heads.shelf = NULL;
    *added = (known_folder){.files = all};
    added->list = sw_include_list_read(all, &heads, NULL, &added->given);
    return added;
}

/* NULL when the folder can't be read. */
static known_folder *know(sw_known_includes *known, const char *folder, const sw_read_options *options,
                          char **error)
{
    for (size_t i = 0; i < known->count; i++) {
        if (known->items[i].folder != NULL && strcmp(known->items[i].folder, folder) == 0) {
            return &known->items[i];
        }
    }
    sw_paths all = {0};
    known_folder *found = NULL;
    if (sw_paths_collect(&all, folder, error)) {
        found = add_known(known, &all, options);
        found->folder = strdup(folder);
        found->files = NULL;
    }
    sw_paths_free(&all);
    return found;
}

static known_folder *know_list(sw_known_includes *known, const sw_paths *files,
                               const sw_read_options *options)
{
    for (size_t i = 0; i < known->count; i++) {
        if (known->items[i].files == files) {
            return &known->items[i];
        }
    }
    return add_known(known, files, options);
}

static sw_paths mains_that_include(known_folder *folder, const sw_paths *files)
{
    sw_include_list *list = &folder->list;
    for (size_t i = 0; i < list->count; i++) {
        list->items[i].touched = false;
    }
    for (size_t i = 0; i < files->count; i++) {
        sw_buffer key = {0};
        sw_path_key(files->items[i], &key);
        uint32_t number = sw_names_find(list->keys, sw_buffer_slice(&key));
        if (number != UINT32_MAX) {
            list->items[number - 1].touched = true;
        }
        sw_buffer_free(&key);
    }
    return choose_mains(list, folder->given);
}

bool sw_main_files_below(const char *folder, const sw_read_options *options, const sw_paths *files,
                         sw_paths *mains, char **error)
{
    sw_known_includes *own = options->includes == NULL ? sw_known_includes_new() : NULL;
    sw_known_includes *known = own == NULL ? options->includes : own;
    pthread_mutex_lock(&known->lock);
    known_folder *found = know(known, folder, options, error);
    *mains = found == NULL ? (sw_paths){0} : mains_that_include(found, files);
    pthread_mutex_unlock(&known->lock);
    sw_known_includes_free(own);
    return found != NULL;
}

sw_paths sw_main_files_among(const sw_paths *list, const sw_read_options *options, const sw_paths *files)
{
    sw_known_includes *own = options->includes == NULL ? sw_known_includes_new() : NULL;
    sw_known_includes *known = own == NULL ? options->includes : own;
    pthread_mutex_lock(&known->lock);
    sw_paths mains = mains_that_include(know_list(known, list, options), files);
    pthread_mutex_unlock(&known->lock);
    sw_known_includes_free(own);
    return mains;
}
