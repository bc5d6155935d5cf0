/* Paths in their plain form, and the sources below a folder. */
#include "stavewright/paths.h"

#include <dirent.h>
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

static bool same_file(const char *a, const char *b)
{
    struct stat x;
    struct stat y;
    return stat(a, &x) == 0 && stat(b, &y) == 0 && x.st_dev == y.st_dev && x.st_ino == y.st_ino;
}

/* Writes a path without "." and "//", and, with `up`, without "folder/..". */
static void plain_path(const char *path, bool up, sw_buffer *result)
{
    bool absolute = path[0] == '/';
    size_t root = absolute ? 1 : 0;
    if (absolute) {
        sw_buffer_char(result, '/');
    }
    for (const char *part = path; *part != '\0';) {
        size_t length = strcspn(part, "/");
        sw_slice name = {part, length};
        const char *next = part + length + (part[length] == '/');
        sw_slice before = sw_buffer_slice(result);
        const char *slash = before.length == 0 ? NULL : memrchr(before.data, '/', before.length);
        size_t last = slash == NULL ? 0 : (size_t)(slash - before.data) + 1;
        bool can_go_up =
            before.length > root && !sw_slice_is((sw_slice){before.data + last, before.length - last}, "..");
        if (up && sw_slice_is(name, "..") && can_go_up) {
            result->length = last > root ? last - 1 : root;
            result->data[result->length] = '\0';
        } else if (length > 0 && !sw_slice_is(name, ".")) {
            if (before.length > root) {
                sw_buffer_char(result, '/');
            }
            sw_buffer_append(result, name);
        }
        part = next;
    }
    if (result->length == 0) {
        sw_buffer_char(result, '.');
    }
}

void sw_path_key(const char *path, sw_buffer *key)
{
    struct stat status;
    struct {
        dev_t device;
        ino_t file;
    } on_disk;
    if (stat(path, &status) == 0) {
        memset(&on_disk, 0, sizeof on_disk);
        on_disk.device = status.st_dev;
        on_disk.file = status.st_ino;
        sw_buffer_append(key, (sw_slice){(const char *)&on_disk, sizeof on_disk});
    } else {
        plain_path(path, true, key);
    }
}

void sw_paths_add(sw_paths *paths, const char *path)
{
    sw_buffer plain = {0};
    plain_path(path, true, &plain);
    struct stat status;
    if (strstr(path, "..") != NULL && stat(path, &status) == 0 &&
        !same_file(path, sw_buffer_text(&plain))) { /* "link/.." is not the folder that holds the link */
        sw_buffer_clear(&plain);
        plain_path(path, false, &plain);
    }
    paths->items = sw_grow(paths->items, paths->count, &paths->capacity, sizeof *paths->items);
    paths->items[paths->count++] = plain.data;
}

void sw_paths_free(sw_paths *paths)
{
    for (size_t i = 0; i < paths->count; i++) {
        free(paths->items[i]);
    }
    free(paths->items);
    *paths = (sw_paths){0};
}

static char *unreadable(const char *path, const char *mend)
{
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s can't be read: %s%s", path, strerror(errno), mend);
    return text.data;
}

bool sw_path_is_source(const char *name)
{
    sw_slice slice = sw_slice_of(name);
    return sw_slice_ends(slice, ".ly") || sw_slice_ends(slice, ".ily");
}

static bool collect_folder(sw_paths *paths, const char *folder, char **error)
{
    struct dirent **entries = NULL;
    int count = scandir(folder, &entries, NULL, alphasort);
    if (count < 0) {
        *error = unreadable(folder, "");
        return false;
    }
    bool done = true;
    for (int i = 0; i < count; i++) {
        sw_buffer path = {0};
        struct stat status;
        sw_buffer_format(&path, "%s/%s", folder, entries[i]->d_name);
        bool visible = entries[i]->d_name[0] != '.';
        if (done && visible && lstat(sw_buffer_text(&path), &status) == 0) {
            if (S_ISDIR(status.st_mode)) {
                done = collect_folder(paths, sw_buffer_text(&path), error);
            } else if (sw_path_is_source(entries[i]->d_name)) {
                sw_paths_add(paths, sw_buffer_text(&path));
            }
        }
        sw_buffer_free(&path);
        free(entries[i]);
    }
    free(entries);
    return done;
}

bool sw_paths_collect(sw_paths *paths, const char *path, char **error)
{
    struct stat status;
    if (stat(path, &status) != 0) {
        *error = unreadable(path, errno == ENOENT ? "; look for a mistyped name" : "");
        return false;
    }
    if (S_ISDIR(status.st_mode)) {
        return collect_folder(paths, path, error);
    }
    sw_paths_add(paths, path);
    return true;
}
