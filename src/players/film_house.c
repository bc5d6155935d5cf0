/* The section "house" of stavewright.yaml: the user's own patterns. */
#include "players/film_reader.h"

enum { IN, FIELD, FORBIDDEN, REQUIRED, MESSAGE, REPLACEMENT, SEVERITY, KEYS };
static const char *const house_keys[] = {
    [IN] = "in",
    [FIELD] = "field",
    [FORBIDDEN] = "forbidden",
    [REQUIRED] = "required",
    [MESSAGE] = "message",
    [REPLACEMENT] = "replacement",
    [SEVERITY] = "severity",
};

/* In the order of the bits SW_HOUSE_... */
static const char *const places[] = {"texts", "markups", "staff-names", "file-names", "header"};
enum { PLACES = sizeof places / sizeof places[0] };

static bool read_place(sw_film_reader *r, const yaml_node_t *node, unsigned *where)
{
    sw_slice text;
    if (!sw_yaml_text(&r->yaml, node, "in", &text)) {
        return false;
    }
    for (size_t i = 0; i < PLACES; i++) {
        if (sw_slice_is(text, places[i])) {
            *where |= 1u << i;
            return true;
        }
    }
    return sw_yaml_fail_word(&r->yaml, node, "place", text, places, PLACES);
}

/* One place, or a list of them. */
static bool read_places(sw_film_reader *r, const yaml_node_t *node, unsigned *where)
{
    const yaml_node_item_t *items;
    size_t count;
    if (node->type != YAML_SEQUENCE_NODE) {
        return read_place(r, node, where);
    }
    if (!sw_yaml_list(&r->yaml, node, "in", &items, &count)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        if (!read_place(r, sw_yaml_node(&r->yaml, items[i]), where)) {
            return false;
        }
    }
    return count > 0 ? true : sw_yaml_fail(&r->yaml, node, "'in' names no place; use texts, for instance");
}

static bool read_severity(sw_film_reader *r, const yaml_node_t *node, sw_severity *severity)
{
    static const char *const words[] = {[SW_NOTE] = "note", [SW_WARNING] = "warning", [SW_ERROR] = "error"};
    sw_slice text;
    if (!sw_yaml_text(&r->yaml, node, "severity", &text)) {
        return false;
    }
    for (sw_severity s = SW_NOTE; s <= SW_ERROR; s++) {
        if (sw_slice_is(text, words[s])) {
            *severity = s;
            return true;
        }
    }
    return sw_yaml_fail_word(&r->yaml, node, "severity", text, words, 3);
}

/* What goes with what. */
static bool fits(sw_film_reader *r, const yaml_node_t *node, const yaml_node_t *const *values,
                 const sw_house_rule *rule)
{
    if ((values[FORBIDDEN] == NULL) == (values[REQUIRED] == NULL)) {
        return sw_yaml_fail(&r->yaml, node, "a house rule needs either 'forbidden' or 'required', a pattern");
    }
    if (values[MESSAGE] == NULL) {
        return sw_yaml_fail(&r->yaml, node, "a house rule needs a 'message' that says what is wanted");
    }
    if (values[FIELD] != NULL && (rule->where & SW_HOUSE_HEADER) == 0) {
        return sw_yaml_fail(&r->yaml, values[FIELD], "'field' needs 'in: header'; remove one");
    }
    if (values[REPLACEMENT] != NULL && values[REQUIRED] != NULL) {
        return sw_yaml_fail(&r->yaml, values[REPLACEMENT],
                            "'replacement' is for what 'forbidden' finds; remove it");
    }
    return true;
}

static bool read_rule(sw_film_reader *r, const yaml_node_t *node)
{
    const yaml_node_t *values[KEYS];
    sw_film *film = r->film;
    sw_house_rule *rule = &film->house[film->house_count];
    *rule = (sw_house_rule){.severity = SW_WARNING, .number = (uint32_t)film->house_count};
    if (!sw_yaml_fields(&r->yaml, node, "a house rule", house_keys, KEYS, values) ||
        (values[IN] != NULL && !read_places(r, values[IN], &rule->where))) {
        return false;
    }
    if (values[IN] == NULL) {
        rule->where = SW_HOUSE_TEXTS | SW_HOUSE_MARKUPS;
    }
    if (!fits(r, node, values, rule)) {
        return false;
    }
    rule->required = values[REQUIRED] != NULL;
    const yaml_node_t *pattern = rule->required ? values[REQUIRED] : values[FORBIDDEN];
    if (!sw_film_read_text(r, values[MESSAGE], "message", &rule->message) ||
        (values[FIELD] != NULL && !sw_film_read_text(r, values[FIELD], "field", &rule->field)) ||
        (values[REPLACEMENT] != NULL &&
         !sw_film_read_text(r, values[REPLACEMENT], "replacement", &rule->replacement)) ||
        (values[SEVERITY] != NULL && !read_severity(r, values[SEVERITY], &rule->severity)) ||
        !sw_film_read_pattern(r, pattern, rule->required ? "required" : "forbidden",
                              &film->house_patterns[film->house_count], &rule->pattern)) {
        return false;
    }
    film->house_count++;
    return true;
}

bool sw_film_read_house(sw_film_reader *r, const yaml_node_t *node)
{
    const yaml_node_item_t *items;
    size_t count;
    sw_film *film = r->film;
    if (!sw_yaml_list(&r->yaml, node, "house", &items, &count)) {
        return false;
    }
    film->house = sw_arena_alloc(film->arena, (count + 1) * sizeof *film->house);
    film->house_patterns = sw_arena_alloc(film->arena, (count + 1) * sizeof(sw_pattern *));
    for (size_t i = 0; i < count; i++) {
        if (!read_rule(r, sw_yaml_node(&r->yaml, items[i]))) {
            return false;
        }
    }
    return true;
}
