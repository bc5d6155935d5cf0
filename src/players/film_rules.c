/* The section "rules" of stavewright.yaml: a severity a rule, and numbers that a rule asks for. */
#include <math.h>
#include <stdlib.h>

#include "players/film_reader.h"

static const char *const wishes[] = {
    [SW_RULE_OFF] = "off", [SW_RULE_NOTE] = "note", [SW_RULE_WARNING] = "warning", [SW_RULE_ERROR] = "error"};

static bool read_wish(sw_film_reader *r, const yaml_node_t *node, sw_rule_wish *wish)
{
    sw_slice text;
    if (!sw_yaml_text(&r->yaml, node, "a severity", &text)) {
        return false;
    }
    for (sw_rule_wish w = SW_RULE_OFF; w <= SW_RULE_ERROR; w++) {
        if (sw_slice_is(text, wishes[w])) {
            *wish = w;
            return true;
        }
    }
    return sw_yaml_fail_word(&r->yaml, node, "severity", text, wishes + SW_RULE_OFF, SW_RULE_ERROR);
}

static bool read_option(sw_film_reader *r, const yaml_node_t *node, const sw_rule_option *option,
                        double *value)
{
    sw_slice text;
    if (!sw_yaml_text(&r->yaml, node, option->name, &text)) {
        return false;
    }
    const char *copy = sw_arena_copy(r->film->arena, text);
    char *end;
    *value = strtod(copy, &end);
    if (*end != '\0' || !isfinite(*value) || *value < option->low || *value > option->high) {
        return sw_yaml_fail(&r->yaml, node, "%s: '%s' is no number from %g to %g (%s)", option->name, copy,
                            option->low, option->high, option->says);
    }
    return true;
}

static size_t count_options(const sw_film_rule *rule)
{
    size_t count = 0;
    while (rule->options != NULL && rule->options[count].name != NULL) {
        count++;
    }
    return count;
}

/* A mapping: the severity, and the rule's own options. */
static bool read_options(sw_film_reader *r, const yaml_node_t *node, sw_film_rule_entry *entry)
{
    const sw_rule_option *options = entry->rule.options;
    size_t count = count_options(&entry->rule);
    const char **keys = sw_arena_alloc(r->film->arena, (count + 1) * sizeof *keys);
    const yaml_node_t **values = sw_arena_alloc(r->film->arena, (count + 1) * sizeof *values);
    keys[0] = "severity";
    for (size_t i = 0; i < count; i++) {
        keys[i + 1] = options[i].name;
    }
    if (!sw_yaml_fields(&r->yaml, node, entry->rule.name, keys, count + 1, values) ||
        (values[0] != NULL && !read_wish(r, values[0], &entry->wish))) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        entry->given[i] = values[i + 1] != NULL;
        if (entry->given[i] && !read_option(r, values[i + 1], &options[i], &entry->values[i])) {
            return false;
        }
    }
    return true;
}

bool sw_film_read_rules(sw_film_reader *r, const yaml_node_t *node)
{
    sw_arena *arena = r->film->arena;
    const char **names = sw_arena_alloc(arena, (r->rule_count + 1) * sizeof *names);
    const yaml_node_t **values = sw_arena_alloc(arena, (r->rule_count + 1) * sizeof *values);
    for (size_t i = 0; i < r->rule_count; i++) {
        names[i] = r->rules[i].name;
    }
    if (!sw_yaml_fields(&r->yaml, node, "rules", names, r->rule_count, values)) {
        return false;
    }
    r->film->rules = sw_arena_alloc(arena, (r->rule_count + 1) * sizeof *r->film->rules);
    for (size_t i = 0; i < r->rule_count; i++) {
        if (values[i] == NULL) {
            continue;
        }
        sw_film_rule_entry *entry = &r->film->rules[r->film->rule_count++];
        size_t options = count_options(&r->rules[i]);
        *entry = (sw_film_rule_entry){.rule = r->rules[i],
                                      .values = sw_arena_alloc(arena, (options + 1) * sizeof(double)),
                                      .given = sw_arena_alloc(arena, (options + 1) * sizeof(bool))};
        bool simple = values[i]->type == YAML_SCALAR_NODE;
        if (simple ? !read_wish(r, values[i], &entry->wish) : !read_options(r, values[i], entry)) {
            return false;
        }
    }
    return true;
}
