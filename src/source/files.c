/* Where the bytes of a path come from, and paths as a person writes them. */
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "source/internal.h"

static sw_file_find *find_in_force;
static void *find_context;

void sw_files_use(sw_file_find *find, void *context)
{
    find_in_force = find;
    find_context = context;
}

sw_file_origin sw_file_look(const char *path, sw_buffer *bytes)
{
    return find_in_force == NULL ? SW_FILE_ON_DISK : find_in_force(find_context, path, bytes);
}

bool sw_file_exists(const char *path)
{
    sw_file_origin origin = sw_file_look(path, NULL);
    return origin == SW_FILE_ON_DISK ? access(path, F_OK) == 0 : origin == SW_FILE_GIVEN;
}

/* Takes the last part off; false when only the root is left. */
static bool go_up(char *folder)
{
    char *slash = strrchr(folder, '/');
    if (slash == NULL || slash[1] == '\0') {
        return false;
    }
    slash[slash == folder ? 1 : 0] = '\0';
    return true;
}

/* An absolute folder and what is to be added to it, part by part, the links that are there resolved. */
static char *join(char *folder, const char *rest)
{
    while (folder != NULL && *rest != '\0') {
        size_t length = strcspn(rest, "/");
        sw_slice part = {rest, length};
        if (sw_slice_is(part, "..")) {
            go_up(folder);
        } else if (length > 0 && !sw_slice_is(part, ".")) {
            char *longer =
                sw_source_format("%s%s%.*s", folder, folder[1] == '\0' ? "" : "/", (int)length, rest);
            char *real = realpath(longer, NULL); /* NULL: not on disk, so it is no link */
            free(folder);
            folder = real != NULL ? real : longer;
            if (real != NULL) {
                free(longer);
            }
        }
        rest += length + (rest[length] == '/');
    }
    return folder;
}

sw_slice sw_path_folder(const char *path)
{
    const char *slash = strrchr(path, '/');
    return (sw_slice){path, slash == NULL ? 0 : (size_t)(slash - path) + 1};
}

char *sw_path_absolute(const char *path)
{
    char *real = realpath(path, NULL); /* most paths are on disk */
    return real != NULL ? real : join(path[0] == '/' ? sw_source_format("/") : realpath(".", NULL), path);
}

char *sw_path_from_here(char *path)
{
    char *here = realpath(".", NULL);
    if (here == NULL) {
        return path;
    }
    size_t same = 0; /* bytes of the folders that both share, the slash behind them included */
    for (size_t i = 0; path[i] != '\0' && (here[i] == path[i] || (here[i] == '\0' && path[i] == '/')); i++) {
        if (path[i] == '/') {
            same = i + 1;
        }
        if (here[i] == '\0') {
            break;
        }
    }
    sw_buffer result = {0};
    for (const char *at = strlen(here) < same ? "" : here + same; *at != '\0'; at++) {
        if (at == here + same || *at == '/') {
            sw_buffer_string(&result, "../");
        }
    }
    sw_buffer_string(&result, path + same);
    free(here);
    free(path);
    return result.data;
}
