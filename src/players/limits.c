#include "stavewright/limits.h"

#include <stdlib.h>
#include <string.h>

#include "players/limits_reader.h"

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
    size_t own_count; /* rows of the film, which stand before the built-in ones */
    sw_breath_factors factors;
};

/* ---- reading --------------------------------------------------------------------------------------------
 */

/* A decimal where one is given; `read` names its kind in messages. */
static bool read_given(sw_yaml_reader *yaml, const yaml_node_t *node, const char *what, double *value,
                       bool (*read)(sw_yaml_reader *, const yaml_node_t *, const char *, double *))
{
    return node == NULL || read(yaml, node, what, value);
}

static bool read_factor(sw_yaml_reader *yaml, const yaml_node_t *node, const char *what, double *value)
{
    return read_given(yaml, node, what, value, sw_yaml_decimal) &&
           (node == NULL || *value > 0 || sw_yaml_fail(yaml, node, "%s must be more than 0", what));
}

bool sw_limits_read_factors(sw_limits *limits, sw_yaml_reader *yaml, const yaml_node_t *node)
{
    static const char *const keys[] = {"soft", "loud", "low", "catch", "source"};
    const yaml_node_t *values[5];
    sw_breath_factors *f = &limits->factors;
    return sw_yaml_fields(yaml, node, "breath-factors", keys, 5, values) &&
           read_factor(yaml, values[0], "soft", &f->soft) && read_factor(yaml, values[1], "loud", &f->loud) &&
           read_factor(yaml, values[2], "low", &f->low) &&
           read_given(yaml, values[3], "catch", &f->catch_seconds, sw_yaml_seconds);
}

enum { FOR, BREATH, SINGLE, DOUBLE, FADES, WITHOUT_REST, RINGS, SOURCE, KEYS };
static const char *const limit_keys[] = {
    [FOR] = "for",       [BREATH] = "breath", [SINGLE] = "single",
    [DOUBLE] = "double", [FADES] = "fades",   [WITHOUT_REST] = "without-rest",
    [RINGS] = "rings",   [SOURCE] = "source",
};

/* The figures that a row gives, over those that are there. */
static bool read_figures(sw_arena *arena, sw_yaml_reader *yaml, const yaml_node_t *const values[KEYS],
                         sw_limit *limit)
{
    sw_slice source;
    limit->known_fade = limit->known_fade || values[FADES] != NULL;
    if (!read_given(yaml, values[BREATH], "breath", &limit->breath, sw_yaml_seconds) ||
        !read_given(yaml, values[SINGLE], "single", &limit->single, sw_yaml_decimal) ||
        !read_given(yaml, values[DOUBLE], "double", &limit->double_tongue, sw_yaml_decimal) ||
        !read_given(yaml, values[WITHOUT_REST], "without-rest", &limit->without_rest, sw_yaml_seconds) ||
        (values[FADES] != NULL && !sw_yaml_flag(yaml, values[FADES], "fades", &limit->fades)) ||
        (values[RINGS] != NULL && !sw_yaml_flag(yaml, values[RINGS], "rings", &limit->rings)) ||
        (values[SOURCE] != NULL && !sw_yaml_text(yaml, values[SOURCE], "source", &source))) {
        return false;
    }
    if (values[SOURCE] != NULL) {
        limit->source = sw_arena_copy(arena, source);
    }
    return true;
}

/* Puts a row behind those of its kind. */
static void add_row(sw_limits *limits, bool own, row new_row)
{
    limits->rows = sw_grow(limits->rows, limits->count, &limits->capacity, sizeof *limits->rows);
    size_t at = own ? limits->own_count++ : limits->count;
    memmove(&limits->rows[at + 1], &limits->rows[at], (limits->count - at) * sizeof *limits->rows);
    limits->rows[at] = new_row;
    limits->count++;
}

bool sw_limits_read_row(sw_limits *limits, sw_yaml_reader *yaml, const yaml_node_t *node,
                        const sw_instruments *own)
{
    const yaml_node_t *values[KEYS];
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_fields(yaml, node, "a limit", limit_keys, KEYS, values)) {
        return false;
    }
    if (values[FOR] == NULL || (own == NULL && values[SOURCE] == NULL)) {
        return sw_yaml_fail(yaml, node, "a limit needs '%s'", limit_keys[values[FOR] == NULL ? FOR : SOURCE]);
    }
    if (!sw_yaml_list(yaml, values[FOR], "for", &items, &count)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        const yaml_node_t *item = sw_yaml_node(yaml, items[i]);
        sw_slice text;
        if (!sw_yaml_text(yaml, item, "an instrument", &text)) {
            return false;
        }
        const char *id = sw_arena_copy(limits->arena, text);
        const sw_instrument *instrument = own == NULL ? NULL : sw_instruments_by_id(own, id);
        if (own != NULL && instrument == NULL) {
            return sw_yaml_fail_instrument(yaml, item, text, own);
        }
        const sw_limit *before = sw_limits_of(limits, instrument);
        sw_limit limit = before == NULL ? (sw_limit){0} : *before;
        limit.source = own == NULL
                           ? NULL
                           : sw_arena_format(limits->arena, "%s:%zu", yaml->path, node->start_mark.line + 1);
        if (!read_figures(limits->arena, yaml, values, &limit)) {
            return false;
        }
        add_row(limits, own != NULL, (row){id, limit});
    }
    return true;
}

static bool read_file(sw_limits *limits, sw_yaml_reader *yaml, const yaml_node_t *root)
{
    static const char *const keys[] = {"breath-factors", "limits"};
    const yaml_node_t *values[2];
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_fields(yaml, root, "the file", keys, 2, values) ||
        (values[0] != NULL && !sw_limits_read_factors(limits, yaml, values[0])) || values[1] == NULL ||
        !sw_yaml_list(yaml, values[1], "limits", &items, &count)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        if (!sw_limits_read_row(limits, yaml, sw_yaml_node(yaml, items[i]), NULL)) {
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
    sw_yaml_reader yaml = {.path = "limits.yaml (built-in)", .error = error};
    const yaml_node_t *root = NULL;
    sw_slice text = {(const char *)sw_limits_yaml, sw_limits_yaml_length};
    bool good = sw_yaml_parse(&yaml, text, &root);
    if (good) {
        good = root != NULL && read_file(limits, &yaml, root);
        yaml_document_delete(&yaml.document);
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

/* ---- asking ---------------------------------------------------------------------------------------------
 */

const sw_limit *sw_limits_of(const sw_limits *limits, const sw_instrument *instrument)
{
    for (size_t i = 0; instrument != NULL && i < limits->count; i++) {
        if (sw_instrument_is(instrument, limits->rows[i].id)) {
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
