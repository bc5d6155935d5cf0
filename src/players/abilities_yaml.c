#include "players/abilities_yaml.h"

typedef struct reader {
    sw_yaml_reader *yaml;
    sw_arena *arena;
    sw_given_abilities *given;
} reader;

/* ---- values ------------------------------------------------------------------------------------------- */

/* The source of a group, or where the group stands. */
static bool read_source(reader *r, const yaml_node_t *group, const yaml_node_t *value, const char **source)
{
    sw_slice text;
    if (value == NULL) {
        *source = sw_arena_format(r->arena, "%s:%zu", r->yaml->path, group->start_mark.line + 1);
        return true;
    }
    if (!sw_yaml_text(r->yaml, value, "source", &text)) {
        return false;
    }
    *source = sw_arena_copy(r->arena, text);
    return true;
}

static bool read_dynamic(reader *r, const yaml_node_t *node, const char *what, sw_dynamic *dynamic)
{
    sw_slice text;
    if (node == NULL) {
        return true;
    }
    return sw_yaml_text(r->yaml, node, what, &text) &&
           (sw_dynamic_from_name(text, dynamic) ||
            sw_yaml_fail_word(r->yaml, node, "dynamic", text, sw_dynamic_names(), SW_DYNAMICS));
}

static bool read_answer(reader *r, const yaml_node_t *node, const char *what, sw_answer *answer)
{
    bool flag = false;
    if (node != NULL && !sw_yaml_flag(r->yaml, node, what, &flag)) {
        return false;
    }
    *answer = node == NULL ? SW_NOT_SAID : flag ? SW_YES : SW_NO;
    return true;
}

/* All of some keys must stand in a group. */
static bool need(reader *r, const yaml_node_t *group, const char *what, const char *const *keys,
                 const yaml_node_t *const *values, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (values[i] == NULL) {
            return sw_yaml_fail(r->yaml, group, "%s need '%s'", what, keys[i]);
        }
    }
    return true;
}

/* ---- registers ---------------------------------------------------------------------------------------- */

static bool read_register(reader *r, const yaml_node_t *node, sw_register *reg)
{
    static const char *const keys[] = {"name",    "from",    "to",     "softest",
                                       "loudest", "covered", "niente", "source"};
    const yaml_node_t *values[8];
    sw_slice name;
    *reg = (sw_register){.softest = SW_NO_DYNAMIC, .loudest = SW_NO_DYNAMIC};
    if (!sw_yaml_fields(r->yaml, node, "a register", keys, 8, values) ||
        !need(r, node, "registers", keys, values, 3) || !sw_yaml_text(r->yaml, values[0], "name", &name) ||
        !sw_yaml_pitch(r->yaml, values[1], "from", &reg->low) ||
        !sw_yaml_pitch(r->yaml, values[2], "to", &reg->high) ||
        !read_dynamic(r, values[3], "softest", &reg->softest) ||
        !read_dynamic(r, values[4], "loudest", &reg->loudest) ||
        (values[5] != NULL && !sw_yaml_flag(r->yaml, values[5], "covered", &reg->covered)) ||
        !read_answer(r, values[6], "niente", &reg->niente) ||
        !read_source(r, node, values[7], &reg->source)) {
        return false;
    }
    reg->name = sw_arena_copy(r->arena, name);
    if (sw_pitch_quarter_tones(reg->low) > sw_pitch_quarter_tones(reg->high)) {
        return sw_yaml_fail(r->yaml, values[1], "the register %s goes down; exchange from and to", reg->name);
    }
    if (reg->softest != SW_NO_DYNAMIC && reg->loudest != SW_NO_DYNAMIC && reg->softest > reg->loudest) {
        return sw_yaml_fail(r->yaml, values[3], "the softest of the register %s is above its loudest",
                            reg->name);
    }
    return true;
}

static bool read_registers(reader *r, const yaml_node_t *node)
{
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_list(r->yaml, node, "registers", &items, &count)) {
        return false;
    }
    sw_register *list = sw_arena_alloc(r->arena, count * sizeof *list + 1);
    for (size_t i = 0; i < count; i++) {
        const yaml_node_t *item = sw_yaml_node(r->yaml, items[i]);
        if (!read_register(r, item, &list[i])) {
            return false;
        }
        if (i > 0 && sw_pitch_quarter_tones(list[i].low) <= sw_pitch_quarter_tones(list[i - 1].high)) {
            return sw_yaml_fail(r->yaml, item,
                                "the register %s begins inside of the one before; list them from the bottom "
                                "up, each above the last",
                                list[i].name);
        }
    }
    r->given->registers = true;
    r->given->said.registers = list;
    r->given->said.register_count = count;
    return true;
}

/* ---- the other groups --------------------------------------------------------------------------------- */

static bool read_lips(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"above", "seconds", "rest", "source"};
    const yaml_node_t *values[4];
    sw_lips *lips = &r->given->said.lips;
    r->given->lips = true;
    return sw_yaml_fields(r->yaml, node, "lips", keys, 4, values) && need(r, node, "lips", keys, values, 3) &&
           sw_yaml_pitch(r->yaml, values[0], "above", &lips->above) &&
           sw_yaml_seconds(r->yaml, values[1], "seconds", &lips->seconds) &&
           sw_yaml_seconds(r->yaml, values[2], "rest", &lips->rest) &&
           read_source(r, node, values[3], &lips->source);
}

static bool read_weight(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"soft", "loud", "source"};
    const yaml_node_t *values[3];
    sw_weight *weight = &r->given->said.weight;
    r->given->weight = true;
    return sw_yaml_fields(r->yaml, node, "weight", keys, 3, values) &&
           need(r, node, "weights", keys, values, 2) &&
           sw_yaml_decimal(r->yaml, values[0], "soft", &weight->soft) &&
           sw_yaml_decimal(r->yaml, values[1], "loud", &weight->loud) &&
           read_source(r, node, values[2], &weight->source);
}

/* "Bb3 B3" */
static bool read_pair(reader *r, const yaml_node_t *node, sw_trill_pair *pair)
{
    sw_slice text;
    if (!sw_yaml_text(r->yaml, node, "a trill", &text)) {
        return false;
    }
    size_t blank = 0;
    while (blank < text.length && text.data[blank] != ' ') {
        blank++;
    }
    if (blank == text.length || !sw_pitch_from_scientific((sw_slice){text.data, blank}, &pair->low) ||
        !sw_pitch_from_scientific(sw_slice_from(text, blank + 1), &pair->high)) {
        return sw_yaml_fail(r->yaml, node, "a trill is written as its two notes: Bb3 B3");
    }
    return sw_pitch_quarter_tones(pair->low) < sw_pitch_quarter_tones(pair->high)
               ? true
               : sw_yaml_fail(r->yaml, node, "a trill goes up from its first note; exchange the two");
}

static bool read_pairs(reader *r, const yaml_node_t *node, const char *what, bool impossible,
                       sw_trill_pair *pairs, size_t *count)
{
    const yaml_node_item_t *items;
    size_t more = 0;
    if (node != NULL && !sw_yaml_list(r->yaml, node, what, &items, &more)) {
        return false;
    }
    for (size_t i = 0; i < more; i++) {
        sw_trill_pair *pair = &pairs[*count];
        *pair = (sw_trill_pair){.impossible = impossible};
        if (!read_pair(r, sw_yaml_node(r->yaml, items[i]), pair)) {
            return false;
        }
        ++*count;
    }
    return true;
}

static size_t length_of(const yaml_node_t *list)
{
    return list == NULL || list->type != YAML_SEQUENCE_NODE
               ? 0
               : (size_t)(list->data.sequence.items.top - list->data.sequence.items.start);
}

static bool read_trills(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"impossible", "awkward", "whole-tones-from", "source"};
    const yaml_node_t *values[4];
    if (!sw_yaml_fields(r->yaml, node, "trills", keys, 4, values)) {
        return false;
    }
    sw_trills *trills = &r->given->said.trills;
    sw_trill_pair *pairs =
        sw_arena_alloc(r->arena, (length_of(values[0]) + length_of(values[1]) + 1) * sizeof *pairs);
    *trills = (sw_trills){.pairs = pairs, .whole_tones = values[2] != NULL};
    r->given->trills = true;
    return read_pairs(r, values[0], "impossible", true, pairs, &trills->count) &&
           read_pairs(r, values[1], "awkward", false, pairs, &trills->count) &&
           (values[2] == NULL || sw_yaml_pitch(r->yaml, values[2], "whole-tones-from", &trills->from)) &&
           read_source(r, node, values[3], &trills->source);
}

static bool read_tremolo(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"slurred", "source"};
    const yaml_node_t *values[2];
    sw_tremolo *tremolo = &r->given->said.tremolo;
    r->given->tremolo = true;
    return sw_yaml_fields(r->yaml, node, "tremolo", keys, 2, values) &&
           need(r, node, "tremolos", keys, values, 1) &&
           read_answer(r, values[0], "slurred", &tremolo->slurred) &&
           read_source(r, node, values[1], &tremolo->source);
}

static bool read_techniques(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"has", "source"};
    const yaml_node_t *values[2];
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_fields(r->yaml, node, "techniques", keys, 2, values) ||
        !need(r, node, "techniques", keys, values, 1) ||
        !sw_yaml_list(r->yaml, values[0], "has", &items, &count)) {
        return false;
    }
    const char **words = sw_arena_alloc(r->arena, (count + 1) * sizeof *words);
    for (size_t i = 0; i < count; i++) {
        sw_slice word;
        if (!sw_yaml_text(r->yaml, sw_yaml_node(r->yaml, items[i]), "a technique", &word)) {
            return false;
        }
        words[i] = sw_arena_copy(r->arena, word);
    }
    sw_technique_set *set = &r->given->said.techniques;
    set->words = words;
    set->count = count;
    r->given->techniques = true;
    return read_source(r, node, values[1], &set->source);
}

static bool read_tuning(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"strings", "source", "reach"};
    const yaml_node_t *values[3];
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_fields(r->yaml, node, "tuning", keys, 3, values) ||
        !need(r, node, "tunings", keys, values, 1) ||
        !sw_yaml_list(r->yaml, values[0], "strings", &items, &count)) {
        return false;
    }
    sw_pitch *strings = sw_arena_alloc(r->arena, (count + 1) * sizeof *strings);
    for (size_t i = 0; i < count; i++) {
        if (!sw_yaml_pitch(r->yaml, sw_yaml_node(r->yaml, items[i]), "strings", &strings[i])) {
            return false;
        }
    }
    sw_tuning *tuning = &r->given->said.tuning;
    tuning->strings = strings;
    tuning->count = count;
    tuning->reach = 0;
    r->given->tuning = true;
    if (values[2] != NULL && !sw_yaml_number(r->yaml, values[2], "reach", &tuning->reach)) {
        return false;
    }
    return read_source(r, node, values[1], &tuning->source);
}

/* ---- all groups --------------------------------------------------------------------------------------- */

typedef bool read_group(reader *r, const yaml_node_t *node);

bool sw_abilities_read(sw_yaml_reader *yaml, sw_arena *arena, const yaml_node_t *node,
                       sw_given_abilities *given)
{
    static const char *const keys[] = {"registers", "lips",       "weight", "trills",
                                       "tremolo",   "techniques", "tuning"};
    static read_group *const readers[] = {read_registers, read_lips,       read_weight, read_trills,
                                          read_tremolo,   read_techniques, read_tuning};
    enum { GROUPS = sizeof keys / sizeof keys[0] };
    const yaml_node_t *values[GROUPS];
    reader r = {yaml, arena, given};
    if (!sw_yaml_fields(yaml, node, "can", keys, GROUPS, values)) {
        return false;
    }
    for (size_t i = 0; i < GROUPS; i++) {
        if (values[i] != NULL && !readers[i](&r, values[i])) {
            return false;
        }
    }
    return true;
}
