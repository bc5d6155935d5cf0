#include "app/inputs.h"

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

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

bool sw_inputs_take(sw_inputs *inputs, const char *path)
{
    char *error = NULL;
    inputs->named = true;
    if (strcmp(path, "-") == 0) {
        inputs->standard_input = true;
    } else if (!sw_paths_collect(&inputs->paths, path, &error)) {
        return fail(inputs->command, error);
    }
    return true;
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

bool sw_inputs_close(sw_inputs *inputs, const char *file_name)
{
    if (inputs->standard_input) {
        if (inputs->paths.count > 0) {
            sw_say_bad(inputs->command, "- stands for the only text to read; name no other path beside it");
            return false;
        }
        return sw_inputs_film(inputs, file_name == NULL ? "-" : file_name) != NULL;
    }
    if (!inputs->named) {
        char *folder = sw_film_folder();
        bool good = sw_inputs_take(inputs, folder);
        free(folder);
        if (!good) {
            return false;
        }
    }
    if (inputs->paths.count == 0) {
        sw_say_bad(inputs->command, "there is no .ly or .ily file below what is named");
        return false;
    }
    return find_films(inputs);
}

void sw_inputs_free(sw_inputs *inputs)
{
    sw_films_free(&inputs->films);
    sw_paths_free(&inputs->paths);
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
    sw_read_options options = {.include_path = folders.items, .include_path_count = folders.count};
    sw_paths mains = sw_main_files(&inputs->paths, &options);
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
    if ((path == NULL || sw_inputs_take(&inputs, path)) && sw_inputs_close(&inputs, NULL)) {
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
