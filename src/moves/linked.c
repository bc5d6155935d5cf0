#include "moves/linked.h"

#include <stdlib.h>
#include <string.h>

void sw_move_add_main(sw_move *move, sw_reading *reading)
{
    move->mains = sw_realloc(move->mains, (move->main_count + 1) * sizeof *move->mains);
    move->mains[move->main_count++] = reading;
}

static bool share_a_file(const sw_reading *a, const sw_reading *b)
{
    for (size_t i = 0; i < a->file_count; i++) {
        for (size_t k = 0; k < b->file_count; k++) {
            if (sw_text_same_file(a->files[i].text, b->files[k].text)) {
                return true;
            }
        }
    }
    return false;
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

void sw_move_add_sharing(sw_move *move, const sw_paths *paths, const sw_read_options *options)
{
    for (size_t i = 0; i < paths->count; i++) {
        if (is_there(move, paths->items[i])) {
            continue;
        }
        char *unread = NULL;
        sw_reading *reading = sw_read(paths->items[i], options, &unread);
        if (reading == NULL) { /* it can't have been part of the score so far */
            sw_buffer_format(&move->notes, "note: %s; it is left as it is\n", unread);
            free(unread);
        } else if (share_a_file(reading, move->mains[0])) {
            sw_move_add_main(move, reading);
        } else {
            sw_reading_free(reading);
        }
    }
}

bool sw_move_read_linked(sw_move *move, const char *path, const sw_read_options *options, char **error)
{
    const char *slash = strrchr(path, '/');
    char *folder = slash == NULL ? strdup(".") : strndup(path, slash == path ? 1 : (size_t)(slash - path));
    sw_paths all = {0};
    bool good = sw_paths_collect(&all, folder, error);
    free(folder);
    sw_paths mains = good ? sw_main_files(&all, options) : (sw_paths){0};
    sw_paths_free(&all);
    sw_move_add_sharing(move, &mains, options);
    sw_paths_free(&mains);
    return good;
}

sw_move *sw_move_open(const char *path, const sw_read_options *options, char **error)
{
    *error = NULL;
    sw_reading *reading = sw_read(path, options, error);
    if (reading == NULL) {
        return NULL;
    }
    sw_move *move = sw_alloc_zero(1, sizeof *move);
    sw_move_add_main(move, reading);
    bool alone = strcmp(path, "-") == 0; /* standard input without a name: nobody includes it */
    if (!alone && !sw_move_read_linked(move, path, options, error)) {
        sw_move_free(move);
        return NULL;
    }
    return move;
}
