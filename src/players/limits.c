#include "stavewright/limits.h"

#include <stdlib.h>
#include <string.h>

#include "players/yaml_reader.h"

/* The bytes of limits.yaml, in a file that the build makes. */
extern const unsigned char sw_limits_yaml[];
extern const size_t sw_limits_yaml_length;

/* Figures for one id. */
typedef struct row {
    const char *id;
    sw_limit limit;
} row;

struct sw_limits {
    sw_arena *arena;
    row *rows;
    size_t count;
    size_t capacity;
    sw_breath_factors factors;
};

typedef struct reader {
    sw_yaml_reader yaml;
    sw_limits *limits;
} reader;

static bool read_seconds(reader *r, const yaml_node_t *node, const char *what, double *value)
{
    return node == NULL || sw_yaml_seconds(&r->yaml, node, what, value);
}

static bool read_factors(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"soft", "loud", "low", "catch", "source"};
    const yaml_node_t *values[5];
    sw_breath_factors *f = &r->limits->factors;
    return sw_yaml_fields(&r->yaml, node, "breath-factors", keys, 5, values) &&
           read_seconds(r, values[0], "soft", &f->soft) && read_seconds(r, values[1], "loud", &f->loud) &&
           read_seconds(r, values[2], "low", &f->low) &&
           read_seconds(r, values[3], "catch", &f->catch_seconds);
}

static bool add_rows(reader *r, const yaml_node_t *ids, const sw_limit *limit)
{
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_list(&r->yaml, ids, "for", &items, &count)) {
        return false;
    }
    sw_limits *limits = r->limits;
    for (size_t i = 0; i < count; i++) {
        sw_slice id;
        if (!sw_yaml_text(&r->yaml, sw_yaml_node(&r->yaml, items[i]), "for", &id)) {
            return false;
        }
        limits->rows = sw_grow(limits->rows, limits->count, &limits->capacity, sizeof *limits->rows);
        limits->rows[limits->count++] = (row){sw_arena_copy(limits->arena, id), *limit};
    }
    return true;
}

static bool read_limit(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"for",   "breath",       "single", "double",
                                       "fades", "without-rest", "source", "rings"};
    const yaml_node_t *values[8];
    sw_slice source;
    sw_limit limit = {0};
    if (!sw_yaml_fields(&r->yaml, node, "a limit", keys, 8, values)) {
        return false;
    }
    if (values[0] == NULL || values[6] == NULL) {
        return sw_yaml_fail(&r->yaml, node, "a limit needs for and source");
    }
    limit.known_fade = values[4] != NULL;
    if (!sw_yaml_text(&r->yaml, values[6], "source", &source) ||
        !read_seconds(r, values[1], "breath", &limit.breath) ||
        !read_seconds(r, values[2], "single", &limit.single) ||
        !read_seconds(r, values[3], "double", &limit.double_tongue) ||
        (values[4] != NULL && !sw_yaml_flag(&r->yaml, values[4], "fades", &limit.fades)) ||
        (values[7] != NULL && !sw_yaml_flag(&r->yaml, values[7], "rings", &limit.rings)) ||
        !read_seconds(r, values[5], "without-rest", &limit.without_rest)) {
        return false;
    }
    limit.source = sw_arena_copy(r->limits->arena, source);
    return add_rows(r, values[0], &limit);
}

static bool read_file(reader *r, const yaml_node_t *root)
{
    static const char *const keys[] = {"breath-factors", "limits"};
    const yaml_node_t *values[2];
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_fields(&r->yaml, root, "the file", keys, 2, values) ||
        (values[0] != NULL && !read_factors(r, values[0])) || values[1] == NULL ||
        !sw_yaml_list(&r->yaml, values[1], "limits", &items, &count)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        if (!read_limit(r, sw_yaml_node(&r->yaml, items[i]))) {
            return false;
        }
    }
    return true;
}

sw_limits *sw_limits_load(char **error)
{
    sw_limits *limits = sw_alloc_zero(1, sizeof *limits);
    limits->arena = sw_arena_new();
    *error = NULL;
    reader r = {.yaml = {.path = "limits.yaml (built-in)", .error = error}, .limits = limits};
    const yaml_node_t *root = NULL;
    sw_slice text = {(const char *)sw_limits_yaml, sw_limits_yaml_length};
    bool good = sw_yaml_parse(&r.yaml, text, &root);
    if (good) {
        good = root != NULL && read_file(&r, root);
        yaml_document_delete(&r.yaml.document);
    }
    if (!good) {
        sw_limits_free(limits);
        return NULL;
    }
    return limits;
}

void sw_limits_free(sw_limits *limits)
{
    if (limits != NULL) {
        free(limits->rows);
        sw_arena_free(limits->arena);
        free(limits);
    }
}

const sw_limit *sw_limits_of(const sw_limits *limits, const sw_instrument *instrument)
{
    for (size_t i = 0; instrument != NULL && i < limits->count; i++) {
        const char *wanted = limits->rows[i].id;
        size_t length = strlen(wanted);
        if (strncmp(instrument->id, wanted, length) == 0 &&
            (instrument->id[length] == '\0' || strncmp(instrument->id + length, "-in-", 4) == 0)) {
            return &limits->rows[i].limit;
        }
    }
    return NULL;
}

const sw_breath_factors *sw_limits_breath(const sw_limits *limits)
{
    return &limits->factors;
}

double sw_limits_breath_seconds(const sw_limits *limits, const sw_limit *limit, sw_dynamic dynamic, bool low)
{
    enum { SOFT = SW_MF - SW_PP, LOUD = SW_FF - SW_MF };
    const sw_breath_factors *f = &limits->factors;
    int step = dynamic == SW_NO_DYNAMIC ? 0 : (int)dynamic - SW_MF;
    double factor = 1;
    if (step < 0) {
        factor = 1 + (f->soft - 1) * (step < -SOFT ? SOFT : -step) / SOFT;
    } else if (step > 0) {
        factor = 1 + (f->loud - 1) * (step > LOUD ? LOUD : step) / LOUD;
    }
    return limit->breath * factor * (low ? f->low : 1);
}
