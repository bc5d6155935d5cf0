#include "app/inputs.h"

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "app/commands.h"
#include "source/internal.h"

/* Says a sentence and frees it. */
static bool fail(const char *command, char *sentence)
{
    sw_say_bad(command, "%s", sentence);
    free(sentence);
    return false;
}

char *sw_film_folder(void)
{
    char *file = sw_film_path("stavewright.yaml");
    char *folder = sw_folder_of(file == NULL ? "stavewright.yaml" : file);
    free(file);
    return folder;
}

void sw_inputs_take(sw_inputs *inputs, const char *path)
{
    if (strcmp(path, "-") == 0) {
        inputs->standard_input = true;
    } else {
        sw_paths_add(&inputs->named, path);
    }
}

const sw_film *sw_inputs_film(sw_inputs *inputs, const char *path)
{
    char *error = NULL;
    const sw_film *film = sw_films_of(&inputs->films, path, &error);
    if (film == NULL) {
        fail(inputs->command, error);
    }
    return film;
}

static bool find_films(sw_inputs *inputs)
{
    size_t kept = 0;
    bool good = true;
    for (size_t i = 0; i < inputs->paths.count; i++) {
        char *path = inputs->paths.items[i];
        const sw_film *film = good ? sw_inputs_film(inputs, path) : NULL;
        good = film != NULL;
        if (good && sw_film_is_output(film, path)) {
            free(path);
        } else {
            inputs->paths.items[kept++] = path;
        }
    }
    inputs->paths.count = kept;
    return good;
}

static bool collect(sw_inputs *inputs, const char *path)
{
    char *error = NULL;
    return sw_paths_collect(&inputs->paths, path, &error) || fail(inputs->command, error);
}

static bool collect_named(sw_inputs *inputs)
{
    bool good = true;
    for (size_t i = 0; good && i < inputs->named.count; i++) {
        good = collect(inputs, inputs->named.items[i]);
    }
    return good;
}

/* ---- what git has ---------------------------------------------------------------------------------------
 */

static bool by_git(const sw_inputs *inputs)
{
    return inputs->staged || inputs->since != NULL;
}

/* Whether a path is a named one, or lies below it. */
static bool is_below(const char *path, const char *named)
{
    char *absolute = sw_path_absolute(path);
    char *folder = sw_path_absolute(named);
    size_t length = folder == NULL ? 0 : strlen(folder);
    bool below = absolute != NULL && folder != NULL && strncmp(absolute, folder, length) == 0 &&
                 (absolute[length] == '\0' || absolute[length] == '/');
    free(folder);
    free(absolute);
    return below;
}

static bool is_named(const sw_inputs *inputs, const char *path)
{
    bool found = inputs->named.count == 0;
    for (size_t i = 0; !found && i < inputs->named.count; i++) {
        found = is_below(path, inputs->named.items[i]);
    }
    return found;
}

/* Each named path has to be something: on the disk, staged, or gone since. */
static bool know_named(const sw_inputs *inputs)
{
    const sw_paths *lists[] = {&inputs->paths, &inputs->changed};
    for (size_t i = 0; i < inputs->named.count; i++) {
        bool known = access(inputs->named.items[i], F_OK) == 0;
        for (size_t n = 0; n < 2; n++) {
            for (size_t k = 0; k < lists[n]->count && !known; k++) {
                known = is_below(lists[n]->items[k], inputs->named.items[i]);
            }
        }
        if (!known) {
            sw_say_bad(inputs->command, "%s is neither on the disk nor staged; look for a mistyped name",
                       inputs->named.items[i]);
            return false;
        }
    }
    return true;
}

static void take_source(void *context, const char *path)
{
    sw_inputs *inputs = context;
    if (sw_path_is_source(path) && is_named(inputs, path)) {
        sw_paths_add(&inputs->paths, path);
    }
}

static void take_changed(void *context, const char *path)
{
    sw_inputs *inputs = context;
    char *error = NULL;
    if (!sw_paths_collect(&inputs->changed, path, &error)) { /* a submodule: all that lies in it */
        free(error);
        sw_paths_add(&inputs->changed, path); /* it has gone */
    }
}

/* Asks git what has changed, and in the index for the files to be read. */
static bool ask_git(sw_inputs *inputs)
{
    char *error = NULL;
    inputs->git = sw_git_open(&error);
    bool good = inputs->git != NULL &&
                (inputs->until != NULL ? sw_git_each_between(inputs->git, inputs->since, inputs->until,
                                                             take_changed, inputs, &error)
                                       : sw_git_each_changed(inputs->git, inputs->since, inputs->staged,
                                                             take_changed, inputs, &error)) &&
                (inputs->revision == NULL || sw_git_read_revision(inputs->git, inputs->revision, &error));
    if (!good) {
        return fail(inputs->command, error);
    }
    if (inputs->revision != NULL) {
        sw_git_each_in_revision(inputs->git, take_source, inputs);
        return true;
    }
    if (inputs->staged) {
        sw_git_read_staged(inputs->git);
        sw_git_each_staged(inputs->git, take_source, inputs);
        return know_named(inputs);
    }
    return inputs->named.count == 0 ? collect(inputs, sw_git_top(inputs->git)) : collect_named(inputs);
}

/* ---- all ------------------------------------------------------------------------------------------------
 */

static bool collect_film(sw_inputs *inputs)
{
    char *folder = sw_film_folder();
    bool good = collect(inputs, folder);
    free(folder);
    return good;
}

bool sw_inputs_close(sw_inputs *inputs, const char *file_name)
{
    if (inputs->standard_input && by_git(inputs)) {
        sw_say_bad(inputs->command, "%s reads files that git knows, not standard input; leave out -",
                   inputs->staged ? "--staged" : "--since");
        return false;
    }
    if (inputs->standard_input) {
        if (inputs->named.count > 0) {
            sw_say_bad(inputs->command, "- stands for the only text to read; name no other path beside it");
            return false;
        }
        return sw_inputs_film(inputs, file_name == NULL ? "-" : file_name) != NULL;
    }
    bool good = by_git(inputs)             ? ask_git(inputs)
                : inputs->named.count == 0 ? collect_film(inputs)
                                           : collect_named(inputs);
    if (good && inputs->paths.count == 0 && !by_git(inputs)) {
        sw_say_bad(inputs->command, "there is no .ly or .ily file below what is named");
        return false;
    }
    return good && find_films(inputs);
}

void sw_inputs_free(sw_inputs *inputs)
{
    sw_films_free(&inputs->films);
    sw_shelf_free(inputs->shelf);
    sw_paths_free(&inputs->paths);
    sw_paths_free(&inputs->named);
    sw_paths_free(&inputs->changed);
    sw_git_free(inputs->git);
    free(inputs->includes.items);
    *inputs = (sw_inputs){0};
}

sw_folders sw_inputs_folders(const sw_inputs *inputs, const sw_film *film)
{
    sw_folders folders = {0};
    sw_folders_add(&folders, inputs->includes.items, inputs->includes.count);
    if (film == NULL) {
        sw_folders_add_films(&folders, &inputs->films);
    } else {
        sw_folders_add(&folders, sw_film_includes(film), sw_film_include_count(film));
    }
    return folders;
}

sw_paths sw_inputs_mains(const sw_inputs *inputs)
{
    sw_folders folders = sw_inputs_folders(inputs, NULL);
    sw_read_options options = {
        .include_path = folders.items, .include_path_count = folders.count, .shelf = inputs->shelf};
    sw_paths mains =
        sw_main_files_touched(&inputs->paths, &options, by_git(inputs) ? &inputs->changed : NULL);
    free(folders.items);
    return mains;
}

static bool is_folder(const char *path)
{
    struct stat status;
    return stat(path, &status) == 0 && S_ISDIR(status.st_mode);
}

char *sw_inputs_one(const char *command, const char *path)
{
    if (path != NULL && !is_folder(path)) {
        return strdup(path); /* reading it says what is wrong with it */
    }
    sw_inputs inputs = {.command = command};
    char *one = NULL;
    if (path != NULL) {
        sw_inputs_take(&inputs, path);
    }
    if (sw_inputs_close(&inputs, NULL)) {
        sw_paths mains = sw_inputs_mains(&inputs);
        if (mains.count == 1) {
            one = strdup(mains.items[0]);
        } else {
            sw_say_bad(command, "one score at a time, and here are %zu; name one, such as %s", mains.count,
                       mains.count == 0 ? "score.ly" : mains.items[0]);
        }
        sw_paths_free(&mains);
    }
    sw_inputs_free(&inputs);
    return one;
}
