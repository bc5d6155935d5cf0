/* stavewright.yaml, section by section. */
#include <stdlib.h>
#include <string.h>

#include "players/film_reader.h"
#include "players/limits_reader.h"

enum { FILM, CHAIRS, RULES, HOUSE, INSTRUMENTS, LIMITS, FACTORS, PATHS, SECTIONS };
static const char *const section_names[] = {
    [FILM] = "film",
    [CHAIRS] = "chairs",
    [RULES] = "rules",
    [HOUSE] = "house",
    [INSTRUMENTS] = "instruments",
    [LIMITS] = "limits",
    [FACTORS] = "breath-factors",
    [PATHS] = "paths",
};

bool sw_film_read_text(sw_film_reader *r, const yaml_node_t *node, const char *what, const char **text)
{
    sw_slice slice;
    if (!sw_yaml_text(&r->yaml, node, what, &slice)) {
        return false;
    }
    *text = sw_arena_copy(r->film->arena, slice);
    return true;
}

bool sw_film_read_pattern(sw_film_reader *r, const yaml_node_t *node, const char *what, sw_pattern **pattern,
                          const char **text)
{
    sw_slice slice;
    char message[SW_PATTERN_MESSAGE];
    if (!sw_yaml_text(&r->yaml, node, what, &slice)) {
        return false;
    }
    *pattern = sw_pattern_new(slice, message);
    if (*pattern == NULL) {
        return sw_yaml_fail(&r->yaml, node, "%s: '%.*s' is no pattern of PCRE2: %s", what, (int)slice.length,
                            slice.data, message);
    }
    if (text != NULL) {
        *text = sw_arena_copy(r->film->arena, slice);
    }
    return true;
}

/* ---- paths -----------------------------------------------------------------------------------------------
 */

/* A folder that counts from that of the film. */
static const char *from_film(const sw_film *film, sw_slice path)
{
    const char *slash = strrchr(film->path, '/');
    if (slash == NULL || path.data[0] == '/') {
        return sw_arena_copy(film->arena, path);
    }
    return sw_arena_format(film->arena, "%.*s%.*s", (int)(slash - film->path) + 1, film->path,
                           (int)path.length, path.data);
}

static bool read_folders(sw_film_reader *r, const yaml_node_t *node, const char *what, const char ***folders,
                         size_t *count)
{
    const yaml_node_item_t *items;
    if (node == NULL) {
        return true;
    }
    if (!sw_yaml_list(&r->yaml, node, what, &items, count)) {
        return false;
    }
    *folders = sw_arena_alloc(r->film->arena, (*count + 1) * sizeof **folders);
    for (size_t i = 0; i < *count; i++) {
        sw_slice text;
        if (!sw_yaml_text(&r->yaml, sw_yaml_node(&r->yaml, items[i]), "a folder", &text)) {
            return false;
        }
        (*folders)[i] = from_film(r->film, text);
    }
    return true;
}

bool sw_film_read_paths(sw_film_reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"include", "output"};
    const yaml_node_t *values[2];
    sw_film *film = r->film;
    if (!sw_yaml_fields(&r->yaml, node, "paths", keys, 2, values) ||
        !read_folders(r, values[0], "include", &film->includes, &film->include_count) ||
        !read_folders(r, values[1], "output", &film->outputs, &film->output_count)) {
        return false;
    }
    for (size_t i = 0; i < film->output_count; i++) {
        char *real = realpath(film->outputs[i], NULL);
        if (real != NULL) { /* otherwise nothing has been made yet */
            film->outputs[i] = sw_arena_copy(film->arena, sw_slice_of(real));
        }
        free(real);
    }
    return true;
}

/* ---- instruments -----------------------------------------------------------------------------------------
 */

/* The byte of a place that the parser gives in lines and characters. */
static size_t byte_of(sw_slice yaml, yaml_mark_t mark)
{
    size_t at = 0;
    for (size_t line = 0; line < mark.line && at < yaml.length; at++) {
        line += yaml.data[at] == '\n';
    }
    for (size_t column = 0; column < mark.column && at < yaml.length; column++) {
        do {
            at++;
        } while (at < yaml.length && ((unsigned char)yaml.data[at] & 0xC0u) == 0x80);
    }
    return at;
}

/* The text with blanks for everything but one entry of its top mapping: a text of that entry alone, in which
 * each line and column is still what it was. */
static char *only_this(sw_slice yaml, const yaml_node_t *key, const yaml_node_t *value)
{
    size_t from = byte_of(yaml, key->start_mark);
    size_t to = byte_of(yaml, value->end_mark);
    char *copy = sw_alloc(yaml.length + 1);
    memcpy(copy, yaml.data, yaml.length);
    copy[yaml.length] = '\0';
    for (size_t i = 0; i < yaml.length; i++) {
        if ((i < from || i >= to) && copy[i] != '\n') {
            copy[i] = ' ';
        }
    }
    return copy;
}

/* Loads the instruments with those under the key "instruments", if there are any. */
static bool load_instruments(sw_film_reader *r, const yaml_node_t *root, sw_slice yaml)
{
    const yaml_node_t *key = NULL;
    const yaml_node_t *value = NULL;
    for (const yaml_node_pair_t *pair = root == NULL ? NULL : root->data.mapping.pairs.start;
         pair != NULL && pair < root->data.mapping.pairs.top; pair++) {
        sw_slice text;
        const yaml_node_t *one = sw_yaml_node(&r->yaml, pair->key);
        if (!sw_yaml_text(&r->yaml, one, "a key", &text)) {
            return false;
        }
        if (sw_slice_is(text, "instruments")) {
            key = one;
            value = sw_yaml_node(&r->yaml, pair->value);
        }
    }
    char *own = key == NULL ? NULL : only_this(yaml, key, value);
    r->film->instruments =
        sw_instruments_load(own == NULL ? NULL : r->film->path,
                            own == NULL ? (sw_slice){0} : (sw_slice){own, yaml.length}, r->yaml.error);
    free(own);
    return r->film->instruments != NULL;
}

/* ---- limits ----------------------------------------------------------------------------------------------
 */

static bool read_limits(sw_film_reader *r, const yaml_node_t *node)
{
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_list(&r->yaml, node, section_names[LIMITS], &items, &count)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        if (!sw_limits_read_row(r->film->limits, &r->yaml, sw_yaml_node(&r->yaml, items[i]),
                                r->film->instruments)) {
            return false;
        }
    }
    return true;
}

/* ---- the file --------------------------------------------------------------------------------------------
 */

static bool read_sections(sw_film_reader *r, const yaml_node_t *root, sw_slice yaml)
{
    const yaml_node_t *values[SECTIONS];
    return sw_yaml_fields(&r->yaml, root, "the file", section_names, SECTIONS, values) &&
           load_instruments(r, root, yaml) &&
           (values[FILM] == NULL || sw_film_read_text(r, values[FILM], "film", &r->film->name)) &&
           (values[FACTORS] == NULL || sw_limits_read_factors(r->film->limits, &r->yaml, values[FACTORS])) &&
           (values[LIMITS] == NULL || read_limits(r, values[LIMITS])) &&
           (values[CHAIRS] == NULL || sw_film_read_chairs(r, values[CHAIRS])) &&
           (values[RULES] == NULL || sw_film_read_rules(r, values[RULES])) &&
           (values[HOUSE] == NULL || sw_film_read_house(r, values[HOUSE])) &&
           (values[PATHS] == NULL || sw_film_read_paths(r, values[PATHS]));
}

static bool read_file(sw_film_reader *r, sw_slice yaml)
{
    const yaml_node_t *root = NULL;
    if (r->film->path == NULL) {
        return load_instruments(r, NULL, yaml);
    }
    if (!sw_yaml_parse(&r->yaml, yaml, &root)) {
        return false;
    }
    /* An empty file: all defaults. */
    bool good = root == NULL ? load_instruments(r, NULL, yaml) : read_sections(r, root, yaml);
    yaml_document_delete(&r->yaml.document);
    return good;
}

sw_film *sw_film_load(const char *path_or_null, sw_slice yaml, const sw_film_rule *rules, size_t rule_count,
                      char **error)
{
    sw_film *film = sw_alloc_zero(1, sizeof *film);
    film->arena = sw_arena_new();
    film->name = "";
    film->path = path_or_null == NULL ? NULL : sw_arena_copy(film->arena, sw_slice_of(path_or_null));
    *error = NULL;
    film->techniques = sw_techniques_load(NULL, (sw_slice){0}, error);
    film->limits = film->techniques == NULL ? NULL : sw_limits_load(error);
    sw_film_reader r = {
        .yaml = {.path = film->path, .error = error}, .film = film, .rules = rules, .rule_count = rule_count};
    if (film->limits == NULL || !read_file(&r, yaml)) {
        sw_film_free(film);
        return NULL;
    }
    return film;
}
