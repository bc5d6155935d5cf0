/* The vocabulary of techniques out of its YAML. */
#include <string.h>

#include "players/technique_table.h"
#include "players/yaml_reader.h"

typedef struct reader {
    sw_yaml_reader yaml;
    sw_techniques *table;
    size_t first_change; /* where the next change goes: before those that another text gave */
} reader;

/* ---- values ------------------------------------------------------------------------------------------- */

/* A list of texts, or one text alone, one after another: fails, or gives each to `take`. */
static bool each_text(reader *r, const yaml_node_t *node, const char *what,
                      bool (*take)(reader *r, const yaml_node_t *node, sw_slice text, void *data), void *data)
{
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_list(&r->yaml, node, what, &items, &count)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        const yaml_node_t *item = sw_yaml_node(&r->yaml, items[i]);
        sw_slice text;
        if (!sw_yaml_text(&r->yaml, item, what, &text) || !take(r, item, text, data)) {
            return false;
        }
    }
    return true;
}

static bool fail_technique(reader *r, const yaml_node_t *node, sw_slice text)
{
    const char *ids[SW_NO_TECHNIQUE];
    for (size_t i = 0; i < r->table->count; i++) {
        ids[i] = r->table->items[i].id;
    }
    return sw_yaml_fail_word(&r->yaml, node, "technique", text, ids, r->table->count);
}

static bool read_technique(reader *r, const yaml_node_t *node, const char *what, uint8_t *technique)
{
    sw_slice text;
    if (!sw_yaml_text(&r->yaml, node, what, &text)) {
        return false;
    }
    *technique = SW_NO_TECHNIQUE;
    for (size_t i = 0; i < r->table->count; i++) {
        if (sw_slice_is(text, r->table->items[i].id)) {
            *technique = (uint8_t)i;
        }
    }
    return *technique != SW_NO_TECHNIQUE || fail_technique(r, node, text);
}

static bool add_family(sw_slice text, unsigned *families)
{
    for (sw_family family = SW_WOODWIND; family <= SW_VOICE; family++) {
        if (sw_slice_is(text, sw_family_name(family))) {
            *families |= 1u << family;
            return true;
        }
    }
    return false;
}

static bool take_family(reader *r, const yaml_node_t *node, sw_slice text, void *data)
{
    if (add_family(text, data)) {
        return true;
    }
    const char *names[SW_VOICE + 1];
    for (sw_family family = SW_WOODWIND; family <= SW_VOICE; family++) {
        names[family] = sw_family_name(family);
    }
    return sw_yaml_fail_word(&r->yaml, node, "family", text, names, SW_VOICE + 1);
}

/* ---- groups ------------------------------------------------------------------------------------------- */

static bool take_technique_name(reader *r, const yaml_node_t *node, sw_slice text, void *data)
{
    sw_technique_group *group = data;
    sw_techniques *table = r->table;
    for (size_t i = 0; i < table->count; i++) {
        if (sw_slice_is(text, table->items[i].id)) {
            return sw_yaml_fail(&r->yaml, node, "'%s' stands in a group already; take another name",
                                table->items[i].id);
        }
    }
    if (table->count == SW_NO_TECHNIQUE) {
        return sw_yaml_fail(&r->yaml, node, "more than %d techniques; remove some", SW_NO_TECHNIQUE);
    }
    uint8_t number = (uint8_t)(group - table->groups);
    bool plain = group->plain == SW_NO_TECHNIQUE;
    if (plain) {
        group->plain = (uint8_t)table->count;
    }
    table->items[table->count++] =
        (sw_technique){.id = sw_arena_copy(table->arena, text), .group = number, .plain = plain};
    return true;
}

static bool read_group(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"id", "must-end", "must-begin", "techniques"};
    const yaml_node_t *values[4];
    sw_slice id;
    if (!sw_yaml_fields(&r->yaml, node, "a group", keys, 4, values)) {
        return false;
    }
    if (values[0] == NULL || values[3] == NULL) {
        return sw_yaml_fail(&r->yaml, node, "a group needs an id and techniques");
    }
    if (r->table->group_count == SW_TECHNIQUE_GROUPS) {
        return sw_yaml_fail(&r->yaml, node, "more than %d groups; remove some", SW_TECHNIQUE_GROUPS);
    }
    if (!sw_yaml_text(&r->yaml, values[0], "id", &id)) {
        return false;
    }
    sw_technique_group *group = &r->table->groups[r->table->group_count++];
    *group = (sw_technique_group){.id = sw_arena_copy(r->table->arena, id), .plain = SW_NO_TECHNIQUE};
    return (values[1] == NULL || sw_yaml_flag(&r->yaml, values[1], "must-end", &group->must_end)) &&
           (values[2] == NULL || sw_yaml_flag(&r->yaml, values[2], "must-begin", &group->must_begin)) &&
           each_text(r, values[3], "techniques", take_technique_name, group);
}

static bool take_plucked(reader *r, const yaml_node_t *node, sw_slice text, void *data)
{
    (void)text, (void)data;
    uint8_t technique;
    if (!read_technique(r, node, "plucked", &technique)) {
        return false;
    }
    r->table->items[technique].plucked = true;
    return true;
}

/* ---- words -------------------------------------------------------------------------------------------- */

/* The alternatives of a list as one pattern, which has to end where a word does. */
typedef struct joined {
    sw_buffer text;
    const yaml_node_t *last;
} joined;

static bool take_pattern(reader *r, const yaml_node_t *node, sw_slice text, void *data)
{
    (void)r;
    joined *patterns = data;
    sw_buffer_format(&patterns->text, "%s(?:%.*s)", patterns->text.length == 0 ? "(?:" : "|",
                     (int)text.length, text.data);
    patterns->last = node;
    return true;
}

static bool read_patterns(reader *r, const yaml_node_t *node, const char *what, pcre2_code **code)
{
    joined patterns = {.last = node};
    bool good = each_text(r, node, what, take_pattern, &patterns);
    if (good && patterns.text.length == 0) {
        good = sw_yaml_fail(&r->yaml, node, "%s must hold at least one pattern", what);
    }
    if (good) {
        sw_buffer_string(&patterns.text, ")(?![^ ])");
        int error = 0;
        size_t at = 0;
        *code = pcre2_compile((PCRE2_SPTR)patterns.text.data, patterns.text.length,
                              PCRE2_ANCHORED | PCRE2_NO_AUTO_CAPTURE, &error, &at, NULL);
        if (*code == NULL) {
            PCRE2_UCHAR message[160];
            pcre2_get_error_message(error, message, sizeof message);
            good = sw_yaml_fail(&r->yaml, patterns.last, "%s: no pattern of PCRE2: %s", what,
                                (const char *)message);
        }
    }
    sw_buffer_free(&patterns.text);
    return good;
}

static bool take_said(reader *r, const yaml_node_t *node, sw_slice text, void *data)
{
    (void)text;
    sw_word_rule *rule = data;
    uint8_t technique;
    if (!read_technique(r, node, "says", &technique)) {
        return false;
    }
    for (size_t i = 0; i < rule->said; i++) {
        if (r->table->items[rule->says[i]].group == r->table->items[technique].group) {
            return sw_yaml_fail(&r->yaml, node, "two techniques of one group; keep one");
        }
    }
    rule->says[rule->said++] = technique;
    return true;
}

static bool read_word(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"says", "for", "names"};
    const yaml_node_t *values[3];
    if (!sw_yaml_fields(&r->yaml, node, "a word", keys, 3, values)) {
        return false;
    }
    if (values[0] == NULL || values[2] == NULL) {
        return sw_yaml_fail(&r->yaml, node, "a word needs says and names");
    }
    sw_techniques *table = r->table;
    table->words = sw_grow(table->words, table->word_count, &table->word_capacity, sizeof *table->words);
    sw_word_rule *rule = &table->words[table->word_count++];
    *rule = (sw_word_rule){0};
    return each_text(r, values[0], "says", take_said, rule) &&
           (values[1] == NULL || each_text(r, values[1], "for", take_family, &rule->families)) &&
           read_patterns(r, values[2], "names", &rule->code);
}

/* ---- marks and changes -------------------------------------------------------------------------------- */

static bool read_mark(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"mark", "says"};
    const yaml_node_t *values[2];
    sw_slice mark;
    sw_techniques *table = r->table;
    if (!sw_yaml_fields(&r->yaml, node, "a mark", keys, 2, values)) {
        return false;
    }
    if (values[0] == NULL || values[1] == NULL) {
        return sw_yaml_fail(&r->yaml, node, "a mark needs mark and says");
    }
    uint8_t technique;
    if (!sw_yaml_text(&r->yaml, values[0], "mark", &mark) ||
        !read_technique(r, values[1], "says", &technique)) {
        return false;
    }
    table->marks = sw_grow(table->marks, table->mark_count, &table->mark_capacity, sizeof *table->marks);
    table->marks[table->mark_count++] = (sw_mark_rule){sw_arena_copy(table->arena, mark), technique};
    return true;
}

static bool read_end(reader *r, const yaml_node_t *node, const char *what, uint8_t *technique)
{
    sw_slice text;
    if (!sw_yaml_text(&r->yaml, node, what, &text)) {
        return false;
    }
    *technique = SW_NO_TECHNIQUE;
    return sw_slice_is(text, "any") || read_technique(r, node, what, technique);
}

/* A family, or the id of an instrument. */
static bool take_player(reader *r, const yaml_node_t *node, sw_slice text, void *data)
{
    (void)node;
    sw_change_rule *rule = data;
    if (!add_family(text, &rule->families)) {
        rule->instruments[rule->instrument_count++] = sw_arena_copy(r->table->arena, text);
    }
    return true;
}

static bool read_change(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"from", "to", "for", "seconds", "source", "while-sounding"};
    const yaml_node_t *values[6];
    sw_techniques *table = r->table;
    sw_change_rule rule = {0};
    sw_slice source;
    if (!sw_yaml_fields(&r->yaml, node, "a change", keys, 6, values)) {
        return false;
    }
    if (values[0] == NULL || values[1] == NULL || values[3] == NULL) {
        return sw_yaml_fail(&r->yaml, node, "a change needs from, to and seconds");
    }
    if (!read_end(r, values[0], "from", &rule.from) || !read_end(r, values[1], "to", &rule.to) ||
        !sw_yaml_seconds(&r->yaml, values[3], "seconds", &rule.figures.seconds) ||
        (values[5] != NULL &&
         !sw_yaml_flag(&r->yaml, values[5], "while-sounding", &rule.figures.while_sounding))) {
        return false;
    }
    if (rule.from == SW_NO_TECHNIQUE && rule.to == SW_NO_TECHNIQUE) {
        return sw_yaml_fail(&r->yaml, node, "from any to any; name one of them");
    }
    rule.figures.source = sw_arena_format(table->arena, "%s:%zu", r->yaml.path, node->start_mark.line + 1);
    if (values[4] != NULL) {
        if (!sw_yaml_text(&r->yaml, values[4], "source", &source)) {
            return false;
        }
        rule.figures.source = sw_arena_copy(table->arena, source);
    }
    if (values[2] != NULL && values[2]->type == YAML_SEQUENCE_NODE) {
        size_t count = (size_t)(values[2]->data.sequence.items.top - values[2]->data.sequence.items.start);
        rule.instruments = sw_arena_alloc(table->arena, (count + 1) * sizeof *rule.instruments);
    }
    if (values[2] != NULL && !each_text(r, values[2], "for", take_player, &rule)) {
        return false;
    }
    table->changes =
        sw_grow(table->changes, table->change_count, &table->change_capacity, sizeof *table->changes);
    memmove(table->changes + r->first_change + 1, table->changes + r->first_change,
            (table->change_count - r->first_change) * sizeof *table->changes);
    table->changes[r->first_change++] = rule;
    table->change_count++;
    return true;
}

/* ---- the whole ---------------------------------------------------------------------------------------- */

static bool each_item(reader *r, const yaml_node_t *list, const char *what,
                      bool (*read)(reader *r, const yaml_node_t *node))
{
    const yaml_node_item_t *items;
    size_t count;
    if (list == NULL) {
        return true;
    }
    if (!sw_yaml_list(&r->yaml, list, what, &items, &count)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        if (!read(r, sw_yaml_node(&r->yaml, items[i]))) {
            return false;
        }
    }
    return true;
}

static bool read_half(reader *r, const yaml_node_t *node)
{
    pcre2_code_free(r->table->half);
    r->table->half = NULL;
    return read_patterns(r, node, "half", &r->table->half);
}

static bool read_file(reader *r, const yaml_node_t *root)
{
    static const char *const keys[] = {"groups", "plucked", "words", "half", "marks", "changes"};
    const yaml_node_t *values[6];
    return sw_yaml_fields(&r->yaml, root, "the file", keys, 6, values) &&
           each_item(r, values[0], "groups", read_group) &&
           (values[1] == NULL || each_text(r, values[1], "plucked", take_plucked, NULL)) &&
           each_item(r, values[2], "words", read_word) && (values[3] == NULL || read_half(r, values[3])) &&
           each_item(r, values[4], "marks", read_mark) && each_item(r, values[5], "changes", read_change);
}

bool sw_technique_table_read(sw_techniques *table, const char *path, sw_slice yaml, char **error)
{
    reader r = {.yaml = {.path = path, .error = error}, .table = table};
    const yaml_node_t *root = NULL;
    if (!sw_yaml_parse(&r.yaml, yaml, &root)) {
        return false;
    }
    bool good = root == NULL || read_file(&r, root);
    yaml_document_delete(&r.yaml.document);
    return good;
}
