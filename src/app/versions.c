#include "app/versions.h"

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "stavewright/cues.h"

static bool fail(const char *command, char *sentence)
{
    sw_say_bad(command, "%s", sentence);
    free(sentence);
    return false;
}

static bool on_disk(const char *path)
{
    return access(path, F_OK) == 0;
}

static bool is_folder(const char *path)
{
    struct stat status;
    return stat(path, &status) == 0 && S_ISDIR(status.st_mode);
}

/* ---- paths below a root ---------------------------------------------------------------------------------
 */

/* What is left of a path behind its root. */
static const char *below_root(const sw_version *version, const char *path)
{
    const char *root = version->root.count == 0 ? "." : version->root.items[0];
    size_t length = strcmp(root, ".") == 0 ? 0 : strlen(root);
    const char *rest = path + length;
    return length > 0 && rest[0] == '/' ? rest + 1 : rest;
}

char *sw_version_path(const sw_version *version, const char *cue)
{
    sw_buffer path = {0};
    if (version->root.count > 0) {
        sw_buffer_format(&path, "%s/", version->root.items[0]);
    }
    sw_buffer_string(&path, cue);
    sw_paths plain = {0};
    sw_paths_add(&plain, sw_buffer_text(&path));
    sw_buffer_free(&path);
    char *result = plain.items[0];
    free(plain.items);
    return result;
}

/* ---- where files come from ------------------------------------------------------------------------------
 */

/* Files are read from this version from here on. */
static bool use(sw_version *version)
{
    char *error = NULL;
    if (version->revision == NULL) {
        sw_files_use(NULL, NULL);
        return true;
    }
    return sw_git_read_revision(version->inputs.git, version->revision, &error) ||
           fail(version->inputs.command, error);
}

bool sw_version_read(sw_version *version, const char *cue, sw_reading **reading)
{
    *reading = NULL;
    if (!use(version)) {
        return false;
    }
    char *error = NULL;
    char *path = sw_version_path(version, cue);
    if (sw_file_exists(path)) {
        *reading = sw_read(path, &version->options, &error);
    }
    free(path);
    return error == NULL || fail(version->inputs.command, error);
}

/* ---- cues -----------------------------------------------------------------------------------------------
 */

static bool find_cues(sw_version *version)
{
    if (version->empty) {
        return true;
    }
    sw_files_use(NULL, NULL); /* until the inputs ask for something else */
    if (!sw_inputs_close(&version->inputs, NULL)) {
        if (version->revision != NULL &&
            version->inputs.paths.count > 0) { /* its stavewright.yaml is wrong */
            sw_say_bad(version->inputs.command, "so it stands in the revision \"%s\"", version->revision);
        }
        return false;
    }
    version->folders = sw_inputs_folders(&version->inputs, NULL);
    version->options = (sw_read_options){.include_path = version->folders.items,
                                         .include_path_count = version->folders.count};
    if (version->root.count > 0 && !is_folder(version->root.items[0])) {
        sw_paths_add(&version->cues, "."); /* whoever names a file means that one */
        return true;
    }
    sw_paths mains = sw_inputs_mains(&version->inputs);
    sw_paths cues = {0};
    char *error = NULL;
    bool good = sw_cues_find(&mains, &version->options, NULL, NULL, &cues, NULL, &error) ||
                fail(version->inputs.command, error);
    for (size_t i = 0; i < cues.count; i++) {
        sw_paths_add(&version->cues, below_root(version, cues.items[i]));
    }
    sw_paths_free(&cues);
    sw_paths_free(&mains);
    return good;
}

static int by_name(const void *a, const void *b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

static void add_missing(sw_paths *all, const sw_paths *some)
{
    for (size_t i = 0; i < some->count; i++) {
        bool known = false;
        for (size_t k = 0; k < all->count && !known; k++) {
            known = strcmp(all->items[k], some->items[i]) == 0;
        }
        if (!known) {
            sw_paths_add(all, some->items[i]);
        }
    }
}

/* The first named file that has changed; NULL: none. */
static const char *changed_file(const sw_inputs *inputs)
{
    for (size_t i = 0; i < inputs->named.count; i++) {
        for (size_t k = 0; k < inputs->changed.count; k++) {
            if (strcmp(inputs->named.items[i], inputs->changed.items[k]) == 0) {
                return inputs->named.items[i];
            }
        }
    }
    return NULL;
}

static bool find_all_cues(sw_versions *versions)
{
    if (!find_cues(&versions->old) || !find_cues(&versions->new)) {
        return false;
    }
    const char *part = changed_file(&versions->old.inputs);
    if (versions->old.cues.count + versions->new.cues.count == 0 && part != NULL) {
        sw_say_bad(versions->new.inputs.command,
                   "%s holds no score of its own; name the score that includes it, or its folder", part);
        return false;
    }
    add_missing(&versions->cues, &versions->new.cues);
    add_missing(&versions->cues, &versions->old.cues);
    if (versions->cues.count > 1) {
        qsort(versions->cues.items, versions->cues.count, sizeof *versions->cues.items, by_name);
    }
    return true;
}

/* ---- what the words mean --------------------------------------------------------------------------------
 */

static bool take_roots(sw_versions *versions, const char *old, const char *new)
{
    if (is_folder(old) != is_folder(new)) {
        sw_say_bad(versions->new.inputs.command,
                   "of \"%s\" and \"%s\" one is a file and the other a folder; name two files or two folders",
                   old, new);
        return false;
    }
    sw_inputs_take(&versions->old.inputs, old);
    sw_inputs_take(&versions->new.inputs, new);
    sw_paths_add(&versions->old.root, old);
    sw_paths_add(&versions->new.root, new);
    return true;
}

/* Whether a word is a path in one of the versions, so that what has gone can be named. */
static bool is_path(const sw_versions *versions, sw_git *git, const char *word)
{
    return on_disk(word) || sw_git_holds(git, versions->old.revision, word) ||
           (versions->new.revision != NULL &&sw_git_holds(git, versions->new.revision, word));
}

/* Revisions stand in front; what there is on disk is a path. */
static bool take_words(sw_versions *versions, sw_git *git, const char *const *words, size_t count,
                       size_t revisions_end)
{
    const char *revisions[2] = {"HEAD", NULL};
    size_t n = 0;
    while (
        n < count && n < 2 &&
        (revisions_end == SIZE_MAX ? !on_disk(words[n]) && sw_git_knows(git, words[n]) : n < revisions_end)) {
        revisions[n] = words[n];
        n++;
    }
    versions->old.revision = versions->old.inputs.revision = revisions[0];
    versions->new.revision = versions->new.inputs.revision = revisions[1];
    sw_inputs *both[] = {&versions->old.inputs, &versions->new.inputs};
    for (size_t i = 0; i < 2; i++) {
        both[i]->since = revisions[0];
        both[i]->until = revisions[1];
    }
    bool named = n < count;
    for (; n < count; n++) {
        const char *dots = strstr(words[n], "..");
        if (!is_path(versions, git, words[n]) && dots != NULL && dots != words[n] && dots[2] != '\0') {
            sw_say_bad(versions->new.inputs.command,
                       "two revisions are two words: \"%.*s %s\" in the place of \"%s\"",
                       (int)(dots - words[n]), words[n], dots + 2 + (dots[2] == '.'), words[n]);
            return false;
        }
        if (!is_path(versions, git, words[n])) {
            sw_say_bad(versions->new.inputs.command,
                       "\"%s\" is neither a file or folder nor a revision that git knows", words[n]);
            return false;
        }
        sw_inputs_take(&versions->old.inputs, words[n]);
        if (revisions[1] != NULL || on_disk(words[n])) {
            sw_inputs_take(&versions->new.inputs, words[n]);
        }
    }
    versions->new.empty = named && versions->new.inputs.named.count == 0;
    return true;
}

static bool take_revisions(sw_versions *versions, const char *const *words, size_t count,
                           size_t revisions_end)
{
    char *error = NULL;
    sw_git *git = sw_git_open(&error);
    for (size_t i = 0; git == NULL && i < count; i++) {
        if (!on_disk(words[i])) { /* the likelier mistake */
            free(error);
            sw_say_bad(
                versions->new.inputs.command,
                "there is no file or folder \"%s\", and no git repository here whose revision it could be",
                words[i]);
            return false;
        }
    }
    bool good = git == NULL ? fail(versions->new.inputs.command, error)
                            : take_words(versions, git, words, count, revisions_end);
    sw_git_free(git);
    return good;
}

bool sw_versions_find(sw_versions *versions, const char *command, const char *const *words, size_t count,
                      size_t revisions_end, const sw_folders *includes)
{
    *versions =
        (sw_versions){.old = {.inputs = {.command = command}}, .new = {.inputs = {.command = command}}};
    sw_folders_add(&versions->old.inputs.includes, includes->items, includes->count);
    sw_folders_add(&versions->new.inputs.includes, includes->items, includes->count);
    bool roots = count == 2 && revisions_end == SIZE_MAX && on_disk(words[0]) && on_disk(words[1]);
    return (roots ? take_roots(versions, words[0], words[1])
                  : take_revisions(versions, words, count, revisions_end)) &&
           find_all_cues(versions);
}

static void free_version(sw_version *version)
{
    sw_paths_free(&version->cues);
    sw_paths_free(&version->root);
    free(version->folders.items);
    sw_inputs_free(&version->inputs);
}

void sw_versions_free(sw_versions *versions)
{
    free_version(&versions->old);
    free_version(&versions->new);
    sw_paths_free(&versions->cues);
}
