/* Which files are scores of their own: found from the \include commands alone, without reading any music. */
#include "stavewright/main_files.h"

#include <dirent.h>
#include <errno.h>
#include <pthread.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "base/memo.h"
#include "base/parallel.h"
#include "score/shelf.h"

/* ---- paths --------------------------------------------------------------------------------------------- */

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

/* ---- folders ------------------------------------------------------------------------------------------- */

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

/* ---- who includes whom --------------------------------------------------------------------------------- */

typedef struct source {
    char *path;
    bool included;    /* by another file */
    bool touched;     /* it has changed, or a file that it includes has gone */
    uint32_t reached; /* by which main file last: its number + 1; 0: by none */
    char **names;     /* what its \include commands name */
    size_t name_count;
    size_t name_capacity;
    uint32_t *includes;
    size_t include_count;
    size_t include_capacity;
} source;

typedef struct sources {
    source *items;
    size_t count;
    size_t capacity;
    sw_names *keys;    /* of each: what tells one file from all others; number 0 is no file's */
    sw_names *touched; /* their keys; NULL: all are */
    sw_memo *places;   /* by path: the place that an \include may mean */
} sources;

/* What there is at a path. The parts of a cue include the same families: each path is asked for once. */
typedef struct place {
    bool there;
    bool lost;       /* not there, but it was */
    uint32_t source; /* its place in the list */
} place;

/* What tells a file from all others: where it is on disk, so that two paths to one file are one; its path
 * when it is not there (staged, but deleted). */
static void key_of(const char *path, sw_buffer *key)
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

static uint32_t add_key(sw_names *keys, const char *path)
{
    sw_buffer key = {0};
    key_of(path, &key);
    uint32_t number = sw_names_add(keys, sw_buffer_slice(&key));
    sw_buffer_free(&key);
    return number;
}

static bool is_touched(const sources *list, const char *path)
{
    if (list->touched == NULL) {
        return true;
    }
    sw_buffer key = {0};
    key_of(path, &key);
    bool touched = sw_names_find(list->touched, sw_buffer_slice(&key)) != UINT32_MAX;
    sw_buffer_free(&key);
    return touched;
}

/* The place of a file in the list; added when it is not there yet. */
static uint32_t source_of(sources *list, const char *path)
{
    uint32_t number = add_key(list->keys, path) - 1;
    if (number == list->count) {
        list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
        list->items[list->count++] = (source){.path = strdup(path), .touched = is_touched(list, path)};
    }
    return number;
}

/* A regular file, wherever files come from. */
static bool is_file(const char *path)
{
    struct stat status;
    return sw_file_exists(path) && (stat(path, &status) != 0 || S_ISREG(status.st_mode));
}

static place look(sources *list, const char *path)
{
    const place *known = sw_memo_find(list->places, sw_slice_of(path));
    if (known != NULL) {
        return *known;
    }
    place p = {.there = is_file(path)};
    if (p.there) {
        sw_paths plain = {0};
        sw_paths_add(&plain, path);
        p.source = source_of(list, plain.items[0]);
        sw_paths_free(&plain);
    } else {
        p.lost = is_touched(list, path);
    }
    sw_memo_keep(list->places, sw_slice_of(path), &p, sizeof p);
    return p;
}

/* Where an included file is: beside the including one, or along the include path. When it is nowhere, it may
 * be lost from any of these places. */
static place locate(sources *list, const char *from, sw_slice name, const sw_read_options *options)
{
    size_t folders = options == NULL ? 0 : options->include_path_count;
    place p = {0};
    sw_buffer path = {0};
    for (size_t i = 0; i <= folders && !p.there; i++) {
        sw_buffer_clear(&path);
        if (name.length > 0 && name.data[0] == '/') {
            i = folders;
        } else if (i == 0) {
            sw_buffer_append(&path, sw_path_folder(from));
        } else {
            sw_buffer_format(&path, "%s/", options->include_path[i - 1]);
        }
        sw_buffer_append(&path, name);
        bool lost = p.lost;
        p = look(list, sw_buffer_text(&path));
        p.lost = p.lost || lost;
    }
    sw_buffer_free(&path);
    return p;
}

static void add_include(sources *list, uint32_t from, sw_slice name, const sw_read_options *options)
{
    place p = locate(list, list->items[from].path, name, options);
    source *s = &list->items[from];
    s->touched = s->touched || p.lost;
    if (p.there) {
        s->includes = sw_grow(s->includes, s->include_count, &s->include_capacity, sizeof *s->includes);
        s->includes[s->include_count++] = p.source;
        list->items[p.source].included = list->items[p.source].included || p.source != from;
    }
}

/* The text up to the line of its last \include, as far as names of files can stand; empty when there is none.
 */
static sw_slice up_to_last_include(const sw_text *text)
{
    static const char include[] = "\\include";
    sw_slice all = {text->bytes, text->length};
    size_t end = 0;
    const char *found;
    while ((found = memmem(all.data + end, all.length - end, include, sizeof include - 1)) != NULL) {
        end = (size_t)(found - all.data) + sizeof include - 1;
    }
    const char *close = end == 0 ? NULL : memchr(all.data + end, '"', all.length - end);
    close = close == NULL ? NULL : memchr(close, '\n', (size_t)(all.data + all.length - close));
    return (sw_slice){all.data, end == 0 ? 0 : close == NULL ? all.length : (size_t)(close - all.data)};
}

/* Finds the names that follow \include. */
static void take_names(source *s, const sw_syntax *syntax)
{
    for (uint32_t i = 0; i + 1 < syntax->count; i++) {
        if (syntax->nodes[i].kind != SW_NODE_COMMAND ||
            !sw_slice_is(sw_syntax_slice(syntax, i), "\\include")) {
            continue;
        }
        uint32_t name = i + 1;
        while (name < syntax->count && syntax->nodes[name].kind == SW_NODE_COMMENT) {
            name++;
        }
        sw_slice quoted = name < syntax->count ? sw_syntax_slice(syntax, name) : (sw_slice){0};
        if (quoted.length > 2 && syntax->nodes[name].kind == SW_NODE_STRING) {
            s->names = sw_grow(s->names, s->name_count, &s->name_capacity, sizeof *s->names);
            s->names[s->name_count++] = strndup(quoted.data + 1, quoted.length - 2);
        }
    }
}

/* Finds them in a text, unless it is a part of a file that can't stand alone; false then. */
static bool find_names(source *s, const sw_text *text, bool part)
{
    sw_syntax *syntax = sw_syntax_parse(text);
    bool good = !part || syntax->errors == 0;
    if (good) {
        take_names(s, syntax);
    }
    sw_syntax_free(syntax);
    return good;
}

/* The same of a file that will be read as a whole, too. */
static void take_names_on_shelf(source *s, sw_shelf *shelf)
{
    char *error = NULL;
    sw_text *text;
    sw_syntax *syntax;
    if (sw_shelf_take(shelf, s->path, &text, &syntax, &error)) {
        take_names(s, syntax);
        sw_syntax_free(syntax);
        sw_text_free(text);
    }
    free(error); /* reading it as a main file says the same, to the user */
}

/* Reads the names that a file includes; only this file's own entry is touched. */
static void read_names(source *s)
{
    char *error = NULL;
    sw_text *text = sw_text_read(s->path, &error);
    if (text == NULL) {
        free(error); /* as above */
        return;
    }
    sw_slice head = up_to_last_include(text); /* most files hold none, and need not be parsed for it */
    if (head.length > 0 && head.length < text->length) {
        sw_text *part = sw_text_from_bytes(s->path, head);
        if (find_names(s, part, true)) {
            head.length = 0;
        }
        sw_text_free(part);
    }
    if (head.length > 0) {
        find_names(s, text, false);
    }
    sw_text_free(text);
}

/* Files of the list from number `first` on: several are read at the same time. */
typedef struct wave {
    sources *list;
    size_t first;
    sw_shelf *shelf; /* NULL: none, or few of the files will be read */
} wave;

static void read_one(void *context, size_t n)
{
    const wave *w = context;
    source *s = &w->list->items[w->first + n];
    if (w->shelf != NULL) {
        take_names_on_shelf(s, w->shelf);
    } else {
        read_names(s);
    }
}

/* Finds what all files of the list include. It grows: files that are not given may include given ones, so
 * what has come in is read next. */
static void find_includes(sources *list, const sw_read_options *options)
{
    sw_shelf *shelf = options == NULL || list->touched != NULL ? NULL : options->shelf;
    for (size_t first = 0, end; first < list->count; first = end) {
        end = list->count;
        sw_parallel(end - first, read_one, &(wave){list, first, shelf});
        for (size_t i = first; i < end; i++) {
            for (size_t k = 0; k < list->items[i].name_count; k++) {
                add_include(list, (uint32_t)i, sw_slice_of(list->items[i].names[k]), options);
            }
        }
    }
}

/* Marks all that a main file reads, itself included, with its number + 1; returns how many files that are. */
static size_t reach(sources *list, uint32_t from, uint32_t mark)
{
    if (list->items[from].reached == mark) {
        return 0;
    }
    list->items[from].reached = mark;
    size_t files = 1;
    for (size_t i = 0; i < list->items[from].include_count; i++) {
        files += reach(list, list->items[from].includes[i], mark);
    }
    return files;
}

/* Whether one of those that bear a mark is touched. */
static bool reaches_touched(const sources *list, uint32_t mark)
{
    for (size_t i = 0; i < list->count; i++) {
        if (list->items[i].reached == mark && list->items[i].touched) {
            return true;
        }
    }
    return false;
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

/* Finds what the files and those that they include include; *given is how many of the list they are. */
static sources read_sources(const sw_paths *files, const sw_read_options *options, const sw_paths *touched,
                            uint32_t *given)
{
    sources list = {
        .keys = sw_names_new(), .touched = touched == NULL ? NULL : sw_names_new(), .places = sw_memo_new()};
    for (size_t i = 0; touched != NULL && i < touched->count; i++) {
        add_key(list.touched, touched->items[i]);
    }
    for (size_t i = 0; i < files->count; i++) {
        source_of(&list, files->items[i]);
    }
    *given = (uint32_t)list.count;
    find_includes(&list, options);
    return list;
}

static void free_sources(sources *list)
{
    for (size_t i = 0; i < list->count; i++) {
        free(list->items[i].path);
        free(list->items[i].includes);
        for (size_t k = 0; k < list->items[i].name_count; k++) {
            free(list->items[i].names[k]);
        }
        free(list->items[i].names);
    }
    free(list->items);
    sw_names_free(list->keys);
    sw_names_free(list->touched);
    sw_memo_free(list->places);
}

/* The main files among the first `given` of the list that reach one that is touched. */
static sw_paths choose_mains(sources *list, uint32_t given)
{
    main_file *mains = sw_alloc((given + 1) * sizeof *mains);
    size_t count = 0;
    for (size_t i = 0; i < list->count; i++) {
        list->items[i].reached = 0;
    }
    for (int pass = 0; pass < 2; pass++) { /* then rings, and what hangs on rings only */
        for (uint32_t i = 0; i < given; i++) {
            if (list->items[i].reached == 0 && (pass == 1 || !list->items[i].included)) {
                size_t reached = reach(list, i, i + 1);
                mains[count++] = (main_file){i, reached, reaches_touched(list, i + 1)};
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
    sources list = read_sources(files, options, touched, &given);
    sw_paths result = choose_mains(&list, given);
    free_sources(&list);
    return result;
}

/* ---- found out once --------------------------------------------------------------------------------------
 */

typedef struct known_folder {
    char *folder;
    sources list;
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
        free_sources(&known->items[i].list);
    }
    free(known->items);
    pthread_mutex_destroy(&known->lock);
    free(known);
}

/* NULL when the folder can't be read. */
static known_folder *know(sw_known_includes *known, const char *folder, const sw_read_options *options,
                          char **error)
{
    for (size_t i = 0; i < known->count; i++) {
        if (strcmp(known->items[i].folder, folder) == 0) {
            return &known->items[i];
        }
    }
    sw_paths all = {0};
    known_folder *found = NULL;
    if (sw_paths_collect(&all, folder, error)) {
        known->items = sw_grow(known->items, known->count, &known->capacity, sizeof *known->items);
        found = &known->items[known->count++];
        found->folder = strdup(folder);
        sw_read_options heads = *options; /* few of the files will be read as a whole */
        heads.shelf = NULL;
        found->list = read_sources(&all, &heads, NULL, &found->given);
    }
    sw_paths_free(&all);
    return found;
}

static sw_paths mains_that_include(known_folder *folder, const sw_paths *files)
{
    sources *list = &folder->list;
    for (size_t i = 0; i < list->count; i++) {
        list->items[i].touched = false;
    }
    for (size_t i = 0; i < files->count; i++) {
        sw_buffer key = {0};
        key_of(files->items[i], &key);
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
