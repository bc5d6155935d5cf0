/* The repository: opened as git finds it, its index as a source of files, and what has changed. */
#include "stavewright/git.h"

#include <git2.h>
#include <limits.h>
#include <pthread.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "base/memo.h"
#include "source/internal.h"

/* The submodule whose files were asked for last, at the commit that the revision names. */
typedef struct submodule {
    git_oid commit;
    git_repository *repository;
    git_tree *tree; /* NULL: none is open */
} submodule;

struct sw_git {
    git_repository *repository;
    git_index *index;
    char *top;      /* the working tree: absolute, without links, without a slash at its end */
    char *here;     /* the same as a person would write it */
    char *hooks;    /* see sw_git_hooks */
    git_tree *tree; /* of the revision that is read; NULL: the index is */
    submodule submodule;
    sw_memo *folders; /* by name: the absolute path; a film asks for the same few a thousand times */
    bool reading;
};

/* ---- opening ------------------------------------------------------------------------------------------- */

static bool fail(char **error, const char *what)
{
    const git_error *last = git_error_last();
    return sw_source_fail(error, "%s: %s", what, last == NULL ? "no reason is given" : last->message);
}

/* core.hooksPath counts from the top of the working tree; without it all working trees share one folder. */
static char *hooks_of(const sw_git *git)
{
    git_buf set = {0};
    git_config *config = NULL;
    char *hooks = NULL;
    if (git_repository_config(&config, git->repository) == 0 &&
        git_config_get_path(&set, config, "core.hooksPath") == 0) {
        hooks = set.ptr[0] == '/' ? sw_source_format("%s", set.ptr)
                                  : sw_source_format("%s/%s", git->top, set.ptr);
    } else {
        hooks = sw_source_format("%shooks", git_repository_commondir(git->repository));
    }
    git_buf_dispose(&set);
    git_config_free(config);
    return hooks;
}

static bool open_repository(sw_git *git, char **error)
{
    if (git_repository_open_ext(&git->repository, NULL, GIT_REPOSITORY_OPEN_FROM_ENV, NULL) != 0) {
        return fail(error, "no git repository can be opened here");
    }
    const char *folder = git_repository_workdir(git->repository);
    git->top = folder == NULL ? NULL : realpath(folder, NULL);
    if (git->top == NULL) {
        return sw_source_fail(error,
                              "the git repository has no working tree; go to one of its working trees");
    }
    if (git_repository_index(&git->index, git->repository) != 0) {
        return fail(error, "the index of the git repository can't be read");
    }
    char *below = sw_path_from_here(sw_source_format("%s/.", git->top)); /* "." or "../." */
    size_t length = strlen(below);
    below[length > 2 ? length - 2 : length] = '\0';
    git->here = below;
    git->hooks = hooks_of(git);
    return true;
}

sw_git *sw_git_open(char **error)
{
    sw_git *git = sw_alloc_zero(1, sizeof *git);
    git->folders = sw_memo_new();
    git_libgit2_init();
    /* As git itself does, objects are taken as they are: to look for damaged ones is git fsck's work. */
    git_libgit2_opts(GIT_OPT_ENABLE_STRICT_HASH_VERIFICATION, 0);
    if (!open_repository(git, error)) {
        sw_git_free(git);
        return NULL;
    }
    return git;
}

static void close_submodule(submodule *s)
{
    git_tree_free(s->tree);
    git_repository_free(s->repository);
    *s = (submodule){0};
}

void sw_git_free(sw_git *git)
{
    if (git == NULL) {
        return;
    }
    if (git->reading) {
        sw_files_use(NULL, NULL);
    }
    git_index_free(git->index);
    git_repository_free(git->repository);
    free(git->top);
    free(git->here);
    free(git->hooks);
    git_tree_free(git->tree);
    close_submodule(&git->submodule);
    sw_memo_free(git->folders);
    free(git);
    git_libgit2_shutdown();
}

const char *sw_git_top(const sw_git *git)
{
    return git->here;
}

const char *sw_git_hooks(const sw_git *git)
{
    return git->hooks;
}

/* ---- the index as a source of files ---------------------------------------------------------------------
 */

/* As sw_path_absolute gives it. */
static char *absolute_path(const sw_git *git, const char *path)
{
    const char *slash = strrchr(path, '/');
    struct stat status;
    bool plain = slash != NULL && slash != path && strcmp(slash, "/..") != 0 && strcmp(slash, "/.") != 0 &&
                 !(lstat(path, &status) == 0 && S_ISLNK(status.st_mode));
    if (!plain) {
        return sw_path_absolute(path);
    }
    sw_slice folder = {path, (size_t)(slash - path)};
    const char *known = sw_memo_find(git->folders, folder);
    if (known == NULL) {
        char *name = sw_source_format("%.*s", (int)folder.length, folder.data);
        char *found = sw_path_absolute(name);
        free(name);
        if (found == NULL) {
            return NULL;
        }
        sw_memo_keep(git->folders, folder, found, strlen(found) + 1);
        free(found);
        known = sw_memo_find(git->folders, folder);
    }
    return sw_source_format("%s%s", known[1] == '\0' ? "" : known, slash);
}

/* The path within the working tree, to be freed; NULL for one outside of it. */
static char *inside_path(const sw_git *git, const char *path)
{
    char *absolute = absolute_path(git, path);
    size_t top = strlen(git->top);
    char *inside = NULL;
    if (absolute != NULL && strncmp(absolute, git->top, top) == 0 && absolute[top] == '/') {
        inside = strdup(absolute + top + 1);
    }
    free(absolute);
    return inside;
}

/* Whether a path lies in a submodule: the index holds the submodule itself, not its files. */
static bool in_submodule(const sw_git *git, const char *inside)
{
    char *folder = sw_source_format("%s", inside);
    bool found = false;
    for (char *slash; !found && (slash = strrchr(folder, '/')) != NULL;) {
        *slash = '\0';
        const git_index_entry *entry = git_index_get_bypath(git->index, folder, 0);
        found = entry != NULL && entry->mode == GIT_FILEMODE_COMMIT;
    }
    free(folder);
    return found;
}

static bool is_ignored(const sw_git *git, const char *inside)
{
    int ignored = 0;
    return git_ignore_path_is_ignored(&ignored, git->repository, inside) == 0 && ignored != 0;
}

/* The entry of a file while a merge has left it in conflict: what the branch in work has. */
static const git_index_entry *entry_of(const sw_git *git, const char *inside)
{
    const git_index_entry *entry = git_index_get_bypath(git->index, inside, 0);
    return entry != NULL ? entry : git_index_get_bypath(git->index, inside, 2);
}

/* Several files may be read at the same time, and the library sorts an index while it looks into it. */
static pthread_mutex_t looking = PTHREAD_MUTEX_INITIALIZER;

static bool append_blob(git_repository *repository, const git_oid *id, sw_buffer *bytes)
{
    git_blob *blob = NULL;
    bool found = git_blob_lookup(&blob, repository, id) == 0 && git_blob_rawsize(blob) <= SW_TEXT_LIMIT;
    if (found) {
        sw_buffer_append(bytes, (sw_slice){git_blob_rawcontent(blob), (size_t)git_blob_rawsize(blob)});
    }
    git_blob_free(blob);
    return found;
}

/* Whether a file is in a tree; its bytes are added then (bytes NULL: not). */
static bool find_in_tree(git_repository *repository, const git_tree *tree, const char *inside,
                         sw_buffer *bytes)
{
    git_tree_entry *entry = NULL;
    bool found =
        git_tree_entry_bypath(&entry, tree, inside) == 0 && git_tree_entry_type(entry) == GIT_OBJECT_BLOB;
    found = found && (bytes == NULL || append_blob(repository, git_tree_entry_id(entry), bytes));
    git_tree_entry_free(entry);
    return found;
}

static bool open_submodule(sw_git *git, const char *folder, const git_oid *commit)
{
    submodule *s = &git->submodule;
    if (s->tree != NULL && git_oid_equal(&s->commit, commit)) {
        return true;
    }
    close_submodule(s);
    char *path = sw_source_format("%s/%s", git->top, folder);
    git_commit *found = NULL;
    bool good = git_repository_open(&s->repository, path) == 0 &&
                git_commit_lookup(&found, s->repository, commit) == 0 &&
                git_commit_tree(&s->tree, found) == 0;
    git_oid_cpy(&s->commit, commit);
    git_commit_free(found);
    free(path);
    if (!good) {
        close_submodule(s);
    }
    return good;
}

/* A file of a submodule, at the commit that the revision names; one that is not cloned so far has only what
 * lies on the disk. */
static sw_file_origin find_in_submodule(sw_git *git, const char *inside, sw_buffer *bytes)
{
    char *folder = sw_source_format("%s", inside);
    sw_file_origin origin = SW_FILE_MISSING;
    for (char *slash; origin == SW_FILE_MISSING && (slash = strrchr(folder, '/')) != NULL;) {
        *slash = '\0';
        git_tree_entry *entry = NULL;
        if (git_tree_entry_bypath(&entry, git->tree, folder) == 0) {
            if (git_tree_entry_type(entry) == GIT_OBJECT_COMMIT) {
                const char *rest = inside + (slash - folder) + 1;
                bool opened = open_submodule(git, folder, git_tree_entry_id(entry));
                bool found =
                    opened && find_in_tree(git->submodule.repository, git->submodule.tree, rest, bytes);
                origin = !opened ? SW_FILE_ON_DISK : found ? SW_FILE_GIVEN : SW_FILE_MISSING;
            }
            git_tree_entry_free(entry);
            break; /* what lies above is a plain folder */
        }
    }
    free(folder);
    return origin;
}

static sw_file_origin find_in_revision(void *context, const char *path, sw_buffer *bytes)
{
    sw_git *git = context;
    char *inside = inside_path(git, path);
    sw_file_origin origin = SW_FILE_ON_DISK;
    if (inside != NULL) {
        pthread_mutex_lock(&looking);
        origin = find_in_tree(git->repository, git->tree, inside, bytes)
                     ? SW_FILE_GIVEN
                     : find_in_submodule(git, inside, bytes);
        if (origin == SW_FILE_MISSING && is_ignored(git, inside)) {
            origin = SW_FILE_ON_DISK; /* git has it in no revision */
        }
        pthread_mutex_unlock(&looking);
    }
    free(inside);
    return origin;
}

/* Where the index says that a path in the working tree is; *id is its blob when it is in there. */
static sw_file_origin look_up(const sw_git *git, const char *inside, git_oid *id)
{
    sw_file_origin origin = SW_FILE_MISSING;
    pthread_mutex_lock(&looking);
    const git_index_entry *entry = entry_of(git, inside);
    if (entry == NULL && (in_submodule(git, inside) || is_ignored(git, inside))) {
        origin = SW_FILE_ON_DISK;
    } else if (entry != NULL && entry->mode != GIT_FILEMODE_COMMIT) {
        origin = SW_FILE_GIVEN;
        git_oid_cpy(id, &entry->id);
    }
    pthread_mutex_unlock(&looking);
    return origin;
}

static sw_file_origin find_staged(void *context, const char *path, sw_buffer *bytes)
{
    const sw_git *git = context;
    char *inside = inside_path(git, path);
    git_oid id;
    sw_file_origin origin = inside == NULL ? SW_FILE_ON_DISK : look_up(git, inside, &id);
    if (origin == SW_FILE_GIVEN && bytes != NULL && !append_blob(git->repository, &id, bytes)) {
        origin = SW_FILE_MISSING;
    }
    free(inside);
    return origin;
}

void sw_git_read_staged(sw_git *git)
{
    git->reading = true;
    sw_files_use(find_staged, git);
}

/* ---- lists of files -------------------------------------------------------------------------------------
 */

static void give(const sw_git *git, const char *inside, sw_git_take *take, void *context)
{
    char *path = sw_path_from_here(sw_source_format("%s/%s", git->top, inside));
    take(context, path);
    free(path);
}

void sw_git_each_staged(sw_git *git, sw_git_take *take, void *context)
{
    for (size_t i = 0; i < git_index_entrycount(git->index); i++) {
        const git_index_entry *entry = git_index_get_byindex(git->index, i);
        int stage = git_index_entry_stage(entry);
        if (stage == 0 || stage == 2) {
            give(git, entry->path, take, context);
        }
    }
}

/* The files of a revision; NULL in *tree for those before the first commit. */
static bool find_tree(const sw_git *git, const char *since, git_tree **tree, char **error)
{
    git_object *object = NULL;
    git_object *peeled = NULL;
    *tree = NULL;
    if (since == NULL && git_repository_head_unborn(git->repository) == 1) {
        return true;
    }
    bool found = git_revparse_single(&object, git->repository, since == NULL ? "HEAD" : since) == 0 &&
                 git_object_peel(&peeled, object, GIT_OBJECT_TREE) == 0;
    git_object_free(object);
    *tree = (git_tree *)peeled;
    if (!found) {
        char *what = sw_source_format("the revision \"%s\" is not found", since == NULL ? "HEAD" : since);
        if (git_repository_head_unborn(git->repository) == 1) {
            sw_source_fail(error, "%s: there is no commit yet", what);
        } else {
            fail(error, what);
        }
        free(what);
    }
    return found;
}

/* Gives the paths of a comparison, which it frees. */
static bool give_changed(const sw_git *git, int status, git_diff *diff, sw_git_take *take, void *context,
                         char **error)
{
    bool good = status == 0 || fail(error, "git can't compare the files");
    for (size_t i = 0; good && i < git_diff_num_deltas(diff); i++) {
        const git_diff_delta *delta = git_diff_get_delta(diff, i);
        /* one path on both sides: renamed files are not looked for, so they come and go */
        give(git, delta->new_file.path != NULL ? delta->new_file.path : delta->old_file.path, take, context);
    }
    git_diff_free(diff);
    return good;
}

bool sw_git_each_changed(sw_git *git, const char *since, bool staged, sw_git_take *take, void *context,
                         char **error)
{
    git_tree *tree = NULL;
    git_diff *diff = NULL;
    git_diff_options options;
    git_diff_options_init(&options, GIT_DIFF_OPTIONS_VERSION);
    options.flags = GIT_DIFF_INCLUDE_UNTRACKED | GIT_DIFF_RECURSE_UNTRACKED_DIRS;
    if (!find_tree(git, since, &tree, error)) {
        return false;
    }
    int status = staged ? git_diff_tree_to_index(&diff, git->repository, tree, git->index, &options)
                        : git_diff_tree_to_workdir(&diff, git->repository, tree, &options);
    bool good = give_changed(git, status, diff, take, context, error);
    git_tree_free(tree);
    return good;
}

bool sw_git_each_between(sw_git *git, const char *old, const char *new, sw_git_take *take, void *context,
                         char **error)
{
    git_tree *before = NULL;
    git_tree *after = NULL;
    git_diff *diff = NULL;
    bool good = find_tree(git, old, &before, error) && find_tree(git, new, &after, error);
    if (good) {
        int status = git_diff_tree_to_tree(&diff, git->repository, before, after, NULL);
        good = give_changed(git, status, diff, take, context, error);
    }
    git_tree_free(before);
    git_tree_free(after);
    return good;
}

/* ---- a revision as a source of files --------------------------------------------------------------------
 */

bool sw_git_knows(sw_git *git, const char *revision)
{
    git_tree *tree = NULL;
    char *error = NULL;
    bool known = find_tree(git, revision, &tree, &error);
    free(error);
    git_tree_free(tree);
    return known;
}

bool sw_git_holds(sw_git *git, const char *revision, const char *path)
{
    git_tree *tree = NULL;
    git_tree_entry *entry = NULL;
    char *error = NULL;
    char *inside = inside_path(git, path);
    bool holds = inside != NULL && find_tree(git, revision, &tree, &error) && tree != NULL &&
                 git_tree_entry_bypath(&entry, tree, inside) == 0;
    git_tree_entry_free(entry);
    git_tree_free(tree);
    free(inside);
    free(error);
    return holds;
}

typedef struct listing {
    const sw_git *git;
    sw_git_take *take;
    void *context;
} listing;

static int give_entry(const char *folder, const git_tree_entry *entry, void *context)
{
    const listing *l = context;
    if (git_tree_entry_type(entry) == GIT_OBJECT_BLOB &&
        git_tree_entry_filemode(entry) != GIT_FILEMODE_LINK) {
        char *inside = sw_source_format("%s%s", folder, git_tree_entry_name(entry));
        give(l->git, inside, l->take, l->context);
        free(inside);
    }
    return 0;
}

void sw_git_each_in_revision(sw_git *git, sw_git_take *take, void *context)
{
    listing l = {git, take, context};
    git_tree_walk(git->tree, GIT_TREEWALK_PRE, give_entry, &l);
}

bool sw_git_read_revision(sw_git *git, const char *revision, char **error)
{
    git_tree *tree = NULL;
    if (!find_tree(git, revision, &tree, error)) {
        return false;
    }
    git_tree_free(git->tree);
    git->tree = tree;
    git->reading = true;
    if (tree == NULL) {
        return sw_source_fail(error, "there is no commit yet to compare with");
    }
    sw_files_use(find_in_revision, git);
    return true;
}

void sw_git_read_disk(sw_git *git)
{
    git->reading = false;
    sw_files_use(NULL, NULL);
}
