#include <stdlib.h>

#include "base/nearest.h"
#include "players/abilities_yaml.h"
#include "players/instrument_table.h"
#include "players/staff_keys.h"
#include "players/yaml_reader.h"

typedef struct reader {
    sw_yaml_reader yaml;
    sw_instruments *table;
    bool overriding;
} reader;

/* What has been read of one entry. */
typedef struct draft {
    sw_instrument_entry *entry;
    const yaml_node_t *id;
    bool is_new;
    bool has_figures; /* gives a pitch or hands: needs a source */
    bool has_source;
    bool has_family;
    bool has_sounds;
    const yaml_node_t *names;
} draft;

static const char *const family_names[] = {"woodwind", "brass",   "percussion", "keyboard",
                                           "plucked",  "strings", "voice"};
enum { FAMILIES = sizeof family_names / sizeof family_names[0] };

const char *sw_family_name(sw_family family)
{
    return family_names[family];
}

bool sw_yaml_fail_instrument(sw_yaml_reader *r, const yaml_node_t *node, sw_slice word,
                             const sw_instruments *instruments)
{
    size_t count = sw_instruments_count(instruments);
    const char **ids = sw_alloc(count * sizeof *ids);
    for (size_t i = 0; i < count; i++) {
        ids[i] = sw_instruments_get(instruments, i)->id;
    }
    sw_buffer name = {0};
    sw_buffer_format(&name, "%.*s", (int)word.length, word.data);
    const sw_instrument *named = sw_instruments_find(instruments, sw_buffer_text(&name));
    const char *nearest = sw_nearest_word(word, ids, count);
    nearest = nearest == NULL && named != NULL ? named->id : nearest;
    sw_buffer_free(&name);
    free(ids);
    if (nearest != NULL) {
        return sw_yaml_fail(r, node, "unknown instrument '%.*s'; did you mean '%s'?", (int)word.length,
                            word.data, nearest);
    }
    return sw_yaml_fail(r, node,
                        "unknown instrument '%.*s'; write a plain name such as english-horn, or give its "
                        "figures under 'instruments'",
                        (int)word.length, word.data);
}

/* ---- the keys of an entry ----------------------------------------------------------------------- */

static int entry_number(const reader *r, const draft *d)
{
    return (int)(d->entry - r->table->entries);
}

typedef bool set_value(reader *r, draft *d, const yaml_node_t *value);

static bool set_id(reader *r, draft *d, const yaml_node_t *value)
{
    (void)r, (void)d, (void)value; /* read before all others */
    return true;
}

static bool set_family(reader *r, draft *d, const yaml_node_t *value)
{
    sw_slice text;
    if (!sw_yaml_text(&r->yaml, value, "family", &text)) {
        return false;
    }
    for (size_t i = 0; i < FAMILIES; i++) {
        if (sw_slice_is(text, family_names[i])) {
            d->entry->figures.family = (sw_family)i;
            d->has_family = true;
            return true;
        }
    }
    return sw_yaml_fail_word(&r->yaml, value, "family", text, family_names, FAMILIES);
}

static bool set_key(reader *r, draft *d, const yaml_node_t *value)
{
    sw_slice text;
    char key[SW_STAFF_KEY_TEXT];
    sw_staff_words words;
    if (!sw_yaml_text(&r->yaml, value, "key", &text)) {
        return false;
    }
    sw_staff_words_cut(text, &words);
    if (words.count == 0 || sw_staff_key_read(&words, 0, key) != words.count) {
        return sw_yaml_fail(&r->yaml, value, "key: '%.*s' is no key; write Bb, F#, C or C basso",
                            (int)text.length, text.data);
    }
    d->entry->figures.key = sw_arena_copy(r->table->arena, sw_slice_of(key));
    sw_recogniser_change_key(r->table->recogniser, entry_number(r, d), d->entry->figures.key);
    return true;
}

static bool set_sounds(reader *r, draft *d, const yaml_node_t *value)
{
    d->has_figures = d->has_sounds = true;
    return sw_yaml_pitch(&r->yaml, value, "sounds", &d->entry->figures.sounds);
}

static bool set_low(reader *r, draft *d, const yaml_node_t *value)
{
    d->has_figures = d->entry->given.low = true;
    return sw_yaml_pitch(&r->yaml, value, "low", &d->entry->figures.written_low);
}

static bool set_high(reader *r, draft *d, const yaml_node_t *value)
{
    d->has_figures = d->entry->given.high = true;
    return sw_yaml_pitch(&r->yaml, value, "high", &d->entry->figures.written_high);
}

static bool set_extreme_low(reader *r, draft *d, const yaml_node_t *value)
{
    d->has_figures = d->entry->given.extreme_low = true;
    return sw_yaml_pitch(&r->yaml, value, "extreme-low", &d->entry->figures.extreme_low);
}

static bool set_extreme_high(reader *r, draft *d, const yaml_node_t *value)
{
    d->has_figures = d->entry->given.extreme_high = true;
    return sw_yaml_pitch(&r->yaml, value, "extreme-high", &d->entry->figures.extreme_high);
}

static bool set_clefs(reader *r, draft *d, const yaml_node_t *value)
{
    if (value->type != YAML_SEQUENCE_NODE) {
        return sw_yaml_fail(&r->yaml, value, "clefs must be a list, as in [treble, bass]");
    }
    size_t count = (size_t)(value->data.sequence.items.top - value->data.sequence.items.start);
    const char **clefs = sw_arena_alloc(r->table->arena, (count + 1) * sizeof *clefs);
    for (size_t i = 0; i < count; i++) {
        sw_slice text;
        if (!sw_yaml_text(&r->yaml, sw_yaml_node(&r->yaml, value->data.sequence.items.start[i]), "a clef",
                          &text)) {
            return false;
        }
        clefs[i] = sw_arena_copy(r->table->arena, text);
    }
    d->entry->figures.clefs = clefs;
    d->entry->figures.clef_count = count;
    return true;
}

static bool set_source(reader *r, draft *d, const yaml_node_t *value)
{
    sw_slice text;
    d->has_source = true;
    if (!sw_yaml_text(&r->yaml, value, "source", &text)) {
        return false;
    }
    d->entry->figures.source = sw_arena_copy(r->table->arena, text);
    return true;
}

static bool set_names(reader *r, draft *d, const yaml_node_t *value)
{
    d->names = value;
    return value->type == YAML_SEQUENCE_NODE
               ? true
               : sw_yaml_fail(&r->yaml, value, "names must be a list of patterns");
}

static bool set_can(reader *r, draft *d, const yaml_node_t *value)
{
    return sw_abilities_read(&r->yaml, r->table->arena, value, &d->entry->own);
}

/* True when an entry takes its abilities, over whatever others, from entry `number`. */
static bool leads_to(const sw_instruments *table, int from, int number)
{
    while (from != SW_NO_ENTRY && from != number) {
        from = table->entries[from].like;
    }
    return from == number;
}

static bool set_like_entry(reader *r, draft *d, const yaml_node_t *value, const char *key, bool by_sound)
{
    sw_slice text;
    if (!sw_yaml_text(&r->yaml, value, key, &text)) {
        return false;
    }
    const sw_instruments *table = r->table;
    int number = entry_number(r, d);
    for (int i = 0; i < (int)table->count; i++) {
        if (sw_slice_is(text, table->entries[i].figures.id)) {
            if (leads_to(table, i, number)) {
                return sw_yaml_fail(&r->yaml, value, "%s: %s and %s would be like one another; remove one",
                                    key, table->entries[number].figures.id, table->entries[i].figures.id);
            }
            d->entry->like = i;
            d->entry->like_by_sound = by_sound;
            return true;
        }
    }
    const char **ids = sw_alloc((table->count + 1) * sizeof *ids);
    for (size_t i = 0; i < table->count; i++) {
        ids[i] = table->entries[i].figures.id;
    }
    const char *nearest = sw_nearest_word(text, ids, table->count);
    free(ids);
    return nearest != NULL ? sw_yaml_fail(&r->yaml, value, "%s: there is no '%.*s' above; did you mean '%s'?",
                                          key, (int)text.length, text.data, nearest)
                           : sw_yaml_fail(&r->yaml, value, "%s: there is no '%.*s' above; put it before this",
                                          key, (int)text.length, text.data);
}

static bool set_like(reader *r, draft *d, const yaml_node_t *value)
{
    return set_like_entry(r, d, value, "like", false);
}

static bool set_sounds_like(reader *r, draft *d, const yaml_node_t *value)
{
    return set_like_entry(r, d, value, "sounds-like", true);
}

static bool set_hands(reader *r, draft *d, const yaml_node_t *value);

static const char *const entry_keys[] = {"id",     "family",      "key",          "sounds",      "low",
                                         "high",   "extreme-low", "extreme-high", "clefs",       "hands",
                                         "source", "names",       "like",         "sounds-like", "can"};
static set_value *const entry_setters[] = {set_id,    set_family,      set_key,         set_sounds,
                                           set_low,   set_high,        set_extreme_low, set_extreme_high,
                                           set_clefs, set_hands,       set_source,      set_names,
                                           set_like,  set_sounds_like, set_can};
enum { ENTRY_KEYS = sizeof entry_keys / sizeof entry_keys[0] };

static bool set_fingers(reader *r, draft *d, const yaml_node_t *value)
{
    return sw_yaml_number(&r->yaml, value, "fingers", &d->entry->figures.fingers);
}

static bool set_span(reader *r, draft *d, const yaml_node_t *value)
{
    return sw_yaml_number(&r->yaml, value, "span", &d->entry->figures.span);
}

static bool set_extreme_span(reader *r, draft *d, const yaml_node_t *value)
{
    return sw_yaml_number(&r->yaml, value, "extreme-span", &d->entry->figures.extreme_span);
}

static bool read_hand_register(reader *r, const yaml_node_t *node, sw_hand_register *reg)
{
    static const char *const keys[] = {"from", "span", "extreme-span"};
    const yaml_node_t *values[3];
    if (!sw_yaml_fields(&r->yaml, node, "a register", keys, 3, values)) {
        return false;
    }
    if (values[0] == NULL || values[1] == NULL) {
        return sw_yaml_fail(&r->yaml, node, "a register needs from and span, as in {from: C5, span: 8}");
    }
    if (!sw_yaml_pitch(&r->yaml, values[0], "from", &reg->from) ||
        !sw_yaml_number(&r->yaml, values[1], "span", &reg->span)) {
        return false;
    }
    reg->extreme_span = reg->span;
    if (values[2] != NULL && !sw_yaml_number(&r->yaml, values[2], "extreme-span", &reg->extreme_span)) {
        return false;
    }
    return reg->extreme_span >= reg->span ||
           sw_yaml_fail(&r->yaml, values[2], "extreme-span %d is less than span %d; give at least as much",
                        reg->extreme_span, reg->span);
}

static bool set_by_register(reader *r, draft *d, const yaml_node_t *value)
{
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_list(&r->yaml, value, "by-register", &items, &count)) {
        return false;
    }
    sw_hand_register *list = sw_arena_alloc(r->table->arena, count * sizeof *list + 1);
    for (size_t i = 0; i < count; i++) {
        const yaml_node_t *item = sw_yaml_node(&r->yaml, items[i]);
        if (!read_hand_register(r, item, &list[i])) {
            return false;
        }
        if (i > 0 && (sw_pitch_staff_steps(list[i].from) <= sw_pitch_staff_steps(list[i - 1].from) ||
                      list[i].span < list[i - 1].span || list[i].extreme_span < list[i - 1].extreme_span)) {
            return sw_yaml_fail(
                &r->yaml, item,
                "list the registers from the bottom up, each above the last and not narrower");
        }
    }
    d->entry->figures.hand_registers = list;
    d->entry->figures.hand_register_count = count;
    return true;
}

static const char *const hand_keys[] = {"fingers", "span", "extreme-span", "by-register"};
static set_value *const hand_setters[] = {set_fingers, set_span, set_extreme_span, set_by_register};
enum { HAND_KEYS = sizeof hand_keys / sizeof hand_keys[0] };

/* Reads a mapping whose keys are all known and stand once. */
static bool read_mapping(reader *r, draft *d, const yaml_node_t *node, const char *const *keys,
                         set_value *const *setters, size_t count)
{
    bool seen[ENTRY_KEYS] = {false};
    for (const yaml_node_pair_t *pair = node->data.mapping.pairs.start; pair < node->data.mapping.pairs.top;
         pair++) {
        const yaml_node_t *key = sw_yaml_node(&r->yaml, pair->key);
        sw_slice text;
        if (!sw_yaml_text(&r->yaml, key, "a key", &text)) {
            return false;
        }
        size_t i = 0;
        while (i < count && !sw_slice_is(text, keys[i])) {
            i++;
        }
        if (i == count) {
            return sw_yaml_fail_word(&r->yaml, key, "key", text, keys, count);
        }
        if (seen[i]) {
            return sw_yaml_fail(&r->yaml, key, "'%s' stands twice here; remove one", keys[i]);
        }
        seen[i] = true;
        if (!setters[i](r, d, sw_yaml_node(&r->yaml, pair->value))) {
            return false;
        }
    }
    return true;
}

static bool set_hands(reader *r, draft *d, const yaml_node_t *value)
{
    sw_instrument *figures = &d->entry->figures;
    if (value->type != YAML_MAPPING_NODE) {
        return sw_yaml_fail(&r->yaml, value, "hands must be a mapping, as in {fingers: 5, span: 9}");
    }
    d->has_figures = true;
    figures->fingers = figures->span = figures->extreme_span = 0;
    figures->hand_register_count = 0;
    if (!read_mapping(r, d, value, hand_keys, hand_setters, HAND_KEYS)) {
        return false;
    }
    if (figures->fingers == 0 || figures->span == 0) {
        return sw_yaml_fail(&r->yaml, value, "hands need both fingers and span, as in {fingers: 5, span: 9}");
    }
    if (figures->extreme_span == 0) {
        figures->extreme_span = figures->span;
    }
    if (figures->extreme_span < figures->span) {
        return sw_yaml_fail(&r->yaml, value, "extreme-span %d is less than span %d; give at least as much",
                            figures->extreme_span, figures->span);
    }
    return true;
}

/* ---- names -------------------------------------------------------------------------------------- */

/* Adds a pattern to `joined`, or, one level deep, those of a list (an alias within a list is one). */
static bool join_names(reader *r, const yaml_node_t *list, bool nested, sw_buffer *joined)
{
    for (const yaml_node_item_t *item = list->data.sequence.items.start; item < list->data.sequence.items.top;
         item++) {
        const yaml_node_t *node = sw_yaml_node(&r->yaml, *item);
        if (node->type == YAML_SEQUENCE_NODE && !nested) {
            if (!join_names(r, node, true, joined)) {
                return false;
            }
            continue;
        }
        sw_slice text;
        char message[256];
        if (!sw_yaml_text(&r->yaml, node, "a name", &text)) {
            return false;
        }
        /* The build's tests have checked the patterns of the built-in text. */
        if (r->overriding && !sw_recogniser_check(text, message, sizeof message)) {
            return sw_yaml_fail(&r->yaml, node, "'%.*s' is no pattern of PCRE2: %s", (int)text.length,
                                text.data, message);
        }
        sw_buffer_format(joined, "%s(?:%.*s)", joined->length == 0 ? "" : "|", (int)text.length, text.data);
    }
    return true;
}

static bool add_names(reader *r, const draft *d)
{
    sw_buffer joined = {0};
    bool good = join_names(r, d->names, false, &joined);
    if (good && joined.length > 0) {
        sw_recogniser_add(r->table->recogniser, entry_number(r, d), d->entry->figures.key,
                          sw_buffer_slice(&joined), r->overriding ? 1 : 0);
    }
    sw_buffer_free(&joined);
    return good;
}

/* ---- entries ------------------------------------------------------------------------------------ */

static bool in_order(reader *r, const draft *d, const char *lower_name, sw_pitch lower,
                     const char *upper_name, sw_pitch upper)
{
    if (sw_pitch_quarter_tones(lower) <= sw_pitch_quarter_tones(upper)) {
        return true;
    }
    char lower_text[SW_PITCH_TEXT];
    char upper_text[SW_PITCH_TEXT];
    return sw_yaml_fail(&r->yaml, d->id, "%s: %s %s lies above %s %s; give both figures so that they fit",
                        d->entry->figures.id, lower_name, sw_pitch_print(lower, lower_text), upper_name,
                        sw_pitch_print(upper, upper_text));
}

/* Fills the extremes in and looks whether the four pitches fit together. */
static bool finish_compass(reader *r, const draft *d)
{
    const sw_given *given = &d->entry->given;
    sw_instrument *figures = &d->entry->figures;
    if (given->low != given->high) {
        return sw_yaml_fail(&r->yaml, d->id, "%s: a compass needs both low and high; %s is missing",
                            figures->id, given->low ? "high" : "low");
    }
    figures->has_compass = given->low;
    if (!given->low) {
        return !given->extreme_low && !given->extreme_high
                   ? true
                   : sw_yaml_fail(&r->yaml, d->id, "%s: an extreme needs low and high beside it",
                                  figures->id);
    }
    if (!given->extreme_low) {
        figures->extreme_low = figures->written_low;
    }
    if (!given->extreme_high) {
        figures->extreme_high = figures->written_high;
    }
    return in_order(r, d, "extreme-low", figures->extreme_low, "low", figures->written_low) &&
           in_order(r, d, "low", figures->written_low, "high", figures->written_high) &&
           in_order(r, d, "high", figures->written_high, "extreme-high", figures->extreme_high);
}

static bool finish_entry(reader *r, const draft *d)
{
    if (d->is_new && !(d->has_family && d->has_sounds)) {
        return sw_yaml_fail(&r->yaml, d->id, "%s is a new instrument and needs %s", d->entry->figures.id,
                            d->has_family ? "sounds (the sounding pitch of a written C4)" : "a family");
    }
    if (!d->has_source && (d->has_figures || d->is_new)) {
        d->entry->figures.source =
            sw_arena_format(r->table->arena, "%s:%zu", r->yaml.path, d->id->start_mark.line + 1);
    }
    return finish_compass(r, d) && (d->names == NULL || add_names(r, d));
}

static bool is_id(sw_slice text)
{
    for (size_t i = 0; i < text.length; i++) {
        char c = text.data[i];
        if (!((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-')) {
            return false;
        }
    }
    return true;
}

/* Finds the value of "id" and the entry that it names, which is made when there is none. */
static bool begin_entry(reader *r, const yaml_node_t *node, draft *d)
{
    for (const yaml_node_pair_t *pair = node->data.mapping.pairs.start; pair < node->data.mapping.pairs.top;
         pair++) {
        const yaml_node_t *key = sw_yaml_node(&r->yaml, pair->key);
        sw_slice text;
        if (!sw_yaml_text(&r->yaml, key, "a key", &text)) {
            return false;
        }
        if (sw_slice_is(text, "id")) {
            d->id = sw_yaml_node(&r->yaml, pair->value);
            break;
        }
    }
    if (d->id == NULL) {
        return sw_yaml_fail(&r->yaml, node, "an instrument needs an id, as in 'id: english-horn'");
    }
    sw_slice id;
    if (!sw_yaml_text(&r->yaml, d->id, "id", &id)) {
        return false;
    }
    if (!is_id(id)) {
        return sw_yaml_fail(&r->yaml, d->id, "id '%.*s' may hold only a-z, 0-9 and '-'", (int)id.length,
                            id.data);
    }
    sw_instruments *table = r->table;
    const char *own_id = sw_arena_copy(table->arena, id);
    int number = sw_instrument_table_find(table, own_id);
    int text = r->overriding ? 2 : 1;
    if (number == SW_NO_ENTRY) {
        d->is_new = true;
        number = (int)table->count;
        table->entries = sw_grow(table->entries, table->count, &table->capacity, sizeof *table->entries);
        table->entries[table->count++] =
            (sw_instrument_entry){.figures = {.id = own_id, .key = "", .source = ""}, .like = SW_NO_ENTRY};
    }
    d->entry = &table->entries[number];
    if (d->entry->text == text) {
        return sw_yaml_fail(&r->yaml, d->id, "'%s' stands twice in this file; put its figures into one entry",
                            own_id);
    }
    d->entry->text = text;
    return true;
}

static bool read_entry(reader *r, const yaml_node_t *node)
{
    draft d = {0};
    if (node->type != YAML_MAPPING_NODE) {
        return sw_yaml_fail(&r->yaml, node, "an instrument must be a mapping that begins with 'id:'");
    }
    return begin_entry(r, node, &d) && read_mapping(r, &d, node, entry_keys, entry_setters, ENTRY_KEYS) &&
           finish_entry(r, &d);
}

/* What holds for all of a family: "- id: brass" and "can: ...". */
static bool read_family(reader *r, const yaml_node_t *node)
{
    static const char *const keys[] = {"id", "can"};
    const yaml_node_t *values[2];
    sw_slice id;
    if (!sw_yaml_fields(&r->yaml, node, "a family", keys, 2, values)) {
        return false;
    }
    if (values[0] == NULL || values[1] == NULL) {
        return sw_yaml_fail(&r->yaml, node, "a family needs id and can, as in '- id: brass' and 'can: ...'");
    }
    if (!sw_yaml_text(&r->yaml, values[0], "id", &id)) {
        return false;
    }
    for (size_t i = 0; i < FAMILIES; i++) {
        if (sw_slice_is(id, family_names[i])) {
            return sw_abilities_read(&r->yaml, r->table->arena, values[1], &r->table->families[i]);
        }
    }
    return sw_yaml_fail_word(&r->yaml, values[0], "family", id, family_names, FAMILIES);
}

typedef bool read_item(reader *r, const yaml_node_t *node);

static bool read_list(reader *r, const yaml_node_t *list, const char *what, read_item *read)
{
    if (list == NULL) {
        return true;
    }
    if (list->type != YAML_SEQUENCE_NODE) {
        return sw_yaml_fail(&r->yaml, list, "'%s' must hold a list, each entry beginning with '- id:'", what);
    }
    for (const yaml_node_item_t *item = list->data.sequence.items.start; item < list->data.sequence.items.top;
         item++) {
        if (!read(r, sw_yaml_node(&r->yaml, *item))) {
            return false;
        }
    }
    return true;
}

/* The top: "instruments" and "families", each with a list. */
static bool read_file(reader *r, const yaml_node_t *root)
{
    static const char *const keys[] = {"instruments", "families"};
    const yaml_node_t *values[2];
    if (root->type != YAML_MAPPING_NODE || root->data.mapping.pairs.start == root->data.mapping.pairs.top) {
        return sw_yaml_fail(&r->yaml, root, "the file must begin with 'instruments:' and a list under it");
    }
    return sw_yaml_fields(&r->yaml, root, "the file", keys, 2, values) &&
           read_list(r, values[0], keys[0], read_entry) && read_list(r, values[1], keys[1], read_family);
}

bool sw_instrument_table_read(sw_instruments *table, const char *path, sw_slice yaml, bool overriding,
                              char **error)
{
    reader r = {.yaml = {.path = path, .error = error}, .table = table, .overriding = overriding};
    const yaml_node_t *root = NULL;
    if (!sw_yaml_parse(&r.yaml, yaml, &root)) {
        return false;
    }
    bool good = root == NULL || read_file(&r, root);
    yaml_document_delete(&r.yaml.document);
    return good;
}
