/* Which files name which in their \include commands. */
#include "score/include_list.h"

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "base/memo.h"
#include "base/parallel.h"
#include "score/shelf.h"

/* What there is at a path. The parts of a cue include the same families: each path is asked for once. */
typedef struct place {
    bool there;
    bool lost;       /* not there, but it was */
    uint32_t source; /* its place in the list */
} place;

static uint32_t add_key(sw_names *keys, const char *path)
{
    sw_buffer key = {0};
    sw_path_key(path, &key);
    uint32_t number = sw_names_add(keys, sw_buffer_slice(&key));
    sw_buffer_free(&key);
    return number;
}

static bool is_touched(const sw_include_list *list, const char *path)
{
    if (list->touched == NULL) {
        return true;
    }
    sw_buffer key = {0};
    sw_path_key(path, &key);
    bool touched = sw_names_find(list->touched, sw_buffer_slice(&key)) != UINT32_MAX;
    sw_buffer_free(&key);
    return touched;
}

/* The place of a file in the list; added when it is not there yet. */
static uint32_t place_in_list(sw_include_list *list, const char *path)
{
    uint32_t number = add_key(list->keys, path) - 1;
    if (number == list->count) {
        list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
        list->items[list->count++] = (sw_includer){.path = strdup(path), .touched = is_touched(list, path)};
    }
    return number;
}

/* A regular file, wherever files come from. */
static bool is_file(const char *path)
{
    struct stat status;
    return sw_file_exists(path) && (stat(path, &status) != 0 || S_ISREG(status.st_mode));
}

static place look(sw_include_list *list, const char *path)
{
    const place *known = sw_memo_find(list->places, sw_slice_of(path));
    if (known != NULL) {
        return *known;
    }
    place p = {.there = is_file(path)};
    if (p.there) {
        sw_paths plain = {0};
        sw_paths_add(&plain, path);
        p.source = place_in_list(list, plain.items[0]);
        sw_paths_free(&plain);
    } else {
        p.lost = is_touched(list, path);
    }
    sw_memo_keep(list->places, sw_slice_of(path), &p, sizeof p);
    return p;
}

/* Where an included file is: beside the including one, or along the include path. When it is nowhere, it may
 * be lost from any of these places. */
static place locate(sw_include_list *list, const char *from, sw_slice name, const sw_read_options *options)
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

static void add_include(sw_include_list *list, uint32_t from, sw_slice name, const sw_read_options *options)
{
    place p = locate(list, list->items[from].path, name, options);
    sw_includer *s = &list->items[from];
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
static void take_names(sw_includer *s, const sw_syntax *syntax)
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
static bool find_names(sw_includer *s, const sw_text *text, bool part)
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
static void take_names_on_shelf(sw_includer *s, sw_shelf *shelf)
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
static void read_names(sw_includer *s)
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
    sw_include_list *list;
    size_t first;
    sw_shelf *shelf; /* NULL: none, or few of the files will be read */
} wave;

static void read_one(void *context, size_t n)
{
    const wave *w = context;
    sw_includer *s = &w->list->items[w->first + n];
    if (w->shelf != NULL) {
        take_names_on_shelf(s, w->shelf);
    } else {
        read_names(s);
    }
}

/* Finds what all files of the list include. It grows: files that are not given may include given ones, so
 * what has come in is read next. */
static void find_includes(sw_include_list *list, const sw_read_options *options)
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

sw_include_list sw_include_list_read(const sw_paths *files, const sw_read_options *options,
                                     const sw_paths *touched, uint32_t *given)
{
    sw_include_list list = {
        .keys = sw_names_new(), .touched = touched == NULL ? NULL : sw_names_new(), .places = sw_memo_new()};
    for (size_t i = 0; touched != NULL && i < touched->count; i++) {
        add_key(list.touched, touched->items[i]);
    }
    for (size_t i = 0; i < files->count; i++) {
        place_in_list(&list, files->items[i]);
    }
    *given = (uint32_t)list.count;
    find_includes(&list, options);
    return list;
}

void sw_include_list_free(sw_include_list *list)
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
