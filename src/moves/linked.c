#include "moves/linked.h"

#include <stdlib.h>
#include <string.h>

#include "base/parallel.h"
#include "source/internal.h"
#include "stavewright/cues.h"
#include "stavewright/film.h"

void sw_move_add_main(sw_move *move, sw_reading *reading)
{
    move->mains = sw_realloc(move->mains, (move->main_count + 1) * sizeof *move->mains);
    move->mains[move->main_count++] = reading;
}

bool sw_reads_file(const sw_reading *reading, const sw_text *text)
{
    for (size_t i = 0; i < reading->file_count; i++) {
        if (sw_text_same_file(reading->files[i].text, text)) {
            return true;
        }
    }
    return false;
}

static bool share_a_file(const sw_reading *a, const sw_reading *b)
{
    bool shared = false;
    for (size_t i = 0; i < a->file_count && !shared; i++) {
        shared = sw_reads_file(b, a->files[i].text);
    }
    return shared;
}

static bool is_there(const sw_move *move, const char *path)
{
    for (size_t i = 0; i < move->main_count; i++) {
        if (sw_same_path(move->mains[i]->files[0].text->path, path)) {
            return true;
        }
    }
    return false;
}

/* Main files that are read at the same time. */
typedef struct readings {
    const sw_move *move;
    const sw_paths *paths;
    const sw_read_options *options;
    sw_reading **items; /* NULL where it is there already, shares nothing, or can't be read ... */
    char **errors;      /* ... and why not */
} readings;

static void read_main(void *context, size_t n)
{
    const readings *r = context;
    if (!is_there(r->move, r->paths->items[n])) {
        sw_reading *reading = sw_read(r->paths->items[n], r->options, &r->errors[n]);
        bool shares = reading != NULL && share_a_file(reading, r->move->mains[0]);
        r->items[n] = shares ? reading : NULL;
        sw_reading_free(shares ? NULL : reading);
    }
}

void sw_move_add_sharing(sw_move *move, const sw_paths *paths, const sw_read_options *options)
{
    readings r = {.move = move,
                  .paths = paths,
                  .options = options,
                  .items = sw_alloc_zero(paths->count + 1, sizeof *r.items),
                  .errors = sw_alloc_zero(paths->count + 1, sizeof *r.errors)};
    sw_parallel(paths->count, read_main, &r);
    for (size_t i = 0; i < paths->count; i++) {
        if (r.errors[i] != NULL) { /* it can't have been part of the score so far */
            sw_buffer_format(&move->notes, "note: %s; it is left as it is\n", r.errors[i]);
            free(r.errors[i]);
        } else if (r.items[i] != NULL) {
            sw_move_add_main(move, r.items[i]);
        }
    }
    free(r.items);
    free(r.errors);
}

/* Adds the main files below a folder that include one of the files of mains[0] with a flag. */
static bool add_below(sw_move *move, const char *folder, const bool *wanted, const sw_read_options *options,
                      char **error)
{
    sw_paths own = {0};
    for (size_t i = 0; i < move->mains[0]->file_count; i++) {
        if (wanted[i]) {
            sw_paths_add(&own, move->mains[0]->files[i].text->path);
        }
    }
    /* a whole film may lie below the folder: only what includes one of these files is read */
    sw_paths mains;
    bool good = sw_main_files_below(folder, options, &own, &mains, error);
    sw_move_add_sharing(move, &mains, options);
    sw_paths_free(&mains);
    sw_paths_free(&own);
    return good;
}

bool sw_move_read_linked(sw_move *move, const char *path, const sw_read_options *options, char **error)
{
    char *folder = sw_folder_of(path);
    bool *wanted = sw_alloc(move->mains[0]->file_count * sizeof *wanted);
    memset(wanted, true, move->mains[0]->file_count * sizeof *wanted);
    bool good = add_below(move, folder, wanted, options, error);
    free(wanted);
    free(folder);
    char *film = good ? sw_film_path(path) : NULL;
    if (film != NULL) { /* all cues share its words and settings: only music counts */
        folder = sw_folder_of(film);
        wanted = sw_files_with_music(move->mains[0]);
        wanted[0] = true; /* the file that was named */
        good = add_below(move, folder, wanted, options, error);
        free(wanted);
        free(folder);
    }
    free(film);
    return good;
}

/* The main files of the folder and of the film that include mains[0] itself. */
static bool read_including(sw_move *move, const char *path, const sw_read_options *options, char **error)
{
    bool *wanted = sw_alloc_zero(move->mains[0]->file_count, sizeof *wanted);
    wanted[0] = true;
    char *film = sw_film_path(path);
    char *folders[] = {sw_folder_of(path), film == NULL ? NULL : sw_folder_of(film)};
    bool good = true;
    for (size_t i = 0; i < sizeof folders / sizeof folders[0]; i++) {
        good = good && (folders[i] == NULL || add_below(move, folders[i], wanted, options, error));
        free(folders[i]);
    }
    free(film);
    free(wanted);
    return good;
}

/* The file, and what `read_others` adds. */
static sw_move *open_with(const char *path, const sw_read_options *options,
                          bool (*read_others)(sw_move *move, const char *path, const sw_read_options *options,
                                              char **error),
                          char **error)
{
    *error = NULL;
    sw_read_options shelved = options == NULL ? (sw_read_options){0} : *options;
    sw_move *move = sw_alloc_zero(1, sizeof *move);
    move->shelf = shelved.shelf == NULL ? sw_shelf_new() : NULL;
    shelved.shelf = move->shelf == NULL ? shelved.shelf : move->shelf;
    sw_reading *reading = sw_read(path, &shelved, error);
    if (reading != NULL) {
        sw_move_add_main(move, reading);
    }
    bool alone = strcmp(path, "-") == 0; /* standard input without a name: nobody includes it */
    return sw_move_close(move, reading != NULL && (alone || read_others(move, path, &shelved, error)));
}

sw_move *sw_move_open(const char *path, const sw_read_options *options, char **error)
{
    return open_with(path, options, sw_move_read_linked, error);
}

sw_move *sw_move_open_alone(const char *path, const sw_read_options *options, char **error)
{
    return open_with(path, options, read_including, error);
}

sw_move *sw_move_close(sw_move *move, bool done)
{
    if (!done) {
        sw_move_free(move);
    }
    return done ? move : NULL;
}
