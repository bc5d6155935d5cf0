#include <string.h>

#include "score/melisma_rules.h"

bool sw_melisma_rule_set(sw_melisma_rule *rule, sw_slice property, sw_slice value)
{
    int8_t on = value.length == 0 ? -1 : sw_slice_is(value, "##t") || sw_slice_is(value, "#t");
    if (sw_slice_is(property, "autoBeaming")) {
        rule->automatic_beams = on;
    } else if (sw_slice_is(property, "tieWaitForNote")) {
        rule->waiting_ties = on;
    } else if (sw_slice_is(property, "melismaBusyProperties")) {
        static const char *const names[] = {"melismaBusy", "slurMelismaBusy", "tieMelismaBusy",
                                            "beamMelismaBusy"};
        int counts = 0;
        for (size_t at = 0; at < value.length;) {
            size_t length = 0;
            while (at + length < value.length && strchr("'()# \t\n", value.data[at + length]) == NULL) {
                length++;
            }
            sw_slice word = {value.data + at, length};
            for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
                counts |= sw_slice_is(word, names[i]) ? 1 << i : 0;
            }
            at += length + 1;
        }
        rule->counts = value.length == 0 ? -1 : (int8_t)counts;
    } else {
        return false;
    }
    return true;
}

bool sw_melisma_rule_command(sw_melisma_rule *rule, sw_slice command)
{
    bool on = sw_slice_is(command, "\\autoBeamOn");
    if (!on && !sw_slice_is(command, "\\autoBeamOff")) {
        return false;
    }
    rule->automatic_beams = on;
    return true;
}

bool sw_melisma_automatic_beams(const sw_melisma_rules *rules)
{
    for (int level = SW_LEVEL_VOICE; level >= SW_LEVEL_SCORE; level--) {
        if (rules->levels[level].automatic_beams >= 0) {
            return rules->levels[level].automatic_beams == 1;
        }
    }
    return true;
}

bool sw_melisma_waiting_ties(const sw_melisma_rules *rules)
{
    for (int level = SW_LEVEL_VOICE; level >= SW_LEVEL_SCORE; level--) {
        if (rules->levels[level].waiting_ties >= 0) {
            return rules->levels[level].waiting_ties == 1;
        }
    }
    return false;
}

int sw_melisma_counts(const sw_melisma_rules *rules)
{
    for (int level = SW_LEVEL_VOICE; level >= SW_LEVEL_SCORE; level--) {
        if (rules->levels[level].counts >= 0) {
            return rules->levels[level].counts;
        }
    }
    return SW_COUNTS_ALL;
}

/* ---- settings ---- */

sw_slice sw_set_property(const sw_reading *reading, uint32_t music)
{
    const char *path = sw_reading_name(reading, reading->music[music].name);
    const char *dot = strrchr(path, '.');
    return sw_slice_of(dot == NULL ? path : dot + 1);
}

sw_slice sw_set_value(const sw_reading *reading, uint32_t music)
{
    sw_slice text = sw_music_slice(reading, music);
    const char *equals = memchr(text.data, '=', text.length);
    sw_slice value = {"", 0};
    if (equals != NULL && !sw_slice_starts(text, "\\unset")) {
        value = (sw_slice){equals + 1, (size_t)(text.data + text.length - equals - 1)};
        while (value.length > 0 && strchr(" \t\r\n", value.data[0]) != NULL) {
            value = (sw_slice){value.data + 1, value.length - 1};
        }
    }
    return value;
}

void sw_melisma_rule_read(sw_melisma_rule *rule, const sw_reading *reading, uint32_t music)
{
    if (reading->music[music].kind == SW_MUSIC_SETTING) {
        sw_melisma_rule_command(rule, sw_music_slice(reading, music));
    } else {
        sw_melisma_rule_set(rule, sw_set_property(reading, music), sw_set_value(reading, music));
    }
}

/* ---- blocks of settings ---- */

/* Calls `set` for each `property = value` and, without value, for each command of a block. */
typedef void block_setting(void *data, sw_slice property, sw_slice value);

static void go_through_block(sw_reader *reader, uint32_t file, uint32_t block, block_setting *set, void *data)
{
    sw_cursor cursor = sw_cursor_inside(reader, file, block);
    while (sw_cursor_more(&cursor)) {
        sw_slice word = sw_cursor_text(&cursor);
        sw_node_kind kind = sw_cursor_kind(&cursor);
        sw_cursor_next(&cursor);
        if (kind == SW_NODE_COMMAND) {
            set(data, word, (sw_slice){"", 0});
        } else if (kind == SW_NODE_WORD && sw_cursor_is_mark(&cursor, '=')) {
            sw_cursor_next(&cursor);
            if (sw_cursor_more(&cursor)) {
                set(data, word, sw_cursor_text(&cursor));
                sw_cursor_next(&cursor);
            }
        }
    }
}

static void set_rule(void *data, sw_slice property, sw_slice value)
{
    if (property.length > 0 && property.data[0] == '\\') {
        sw_melisma_rule_command(data, property);
    } else {
        sw_melisma_rule_set(data, property, value);
    }
}

static void set_ignoring(void *data, sw_slice property, sw_slice value)
{
    if (sw_slice_is(property, "ignoreMelismata")) {
        *(bool *)data = sw_slice_is(value, "##t");
    }
}

/* The block that stands directly behind a node; SW_NO_INDEX when there is none. */
static uint32_t block_behind(const sw_syntax *syntax, uint32_t node, uint32_t end)
{
    uint32_t next = syntax->nodes[node].next;
    return next < end && syntax->nodes[next].kind == SW_NODE_BLOCK ? next : SW_NO_INDEX;
}

/* The \context { \TYPE ... } blocks of a \layout block. */
static void go_through_layout(sw_reader *reader, uint32_t file, uint32_t layout, sw_slice type,
                              block_setting *set, void *data)
{
    const sw_syntax *syntax = reader->reading->files[file].syntax;
    uint32_t end = syntax->nodes[layout].next;
    for (uint32_t i = layout + 1; i < end; i = syntax->nodes[i].next) {
        uint32_t block =
            sw_slice_is(sw_syntax_slice(syntax, i), "\\context") ? block_behind(syntax, i, end) : SW_NO_INDEX;
        if (block == SW_NO_INDEX) {
            continue;
        }
        for (uint32_t c = block + 1; c < syntax->nodes[block].next; c = syntax->nodes[c].next) {
            sw_slice text = sw_syntax_slice(syntax, c);
            if (text.length == type.length + 1 && text.data[0] == '\\' && sw_slice_ends(text, type.data)) {
                go_through_block(reader, file, block, set, data);
                break;
            }
        }
    }
}

/* Finds the \layout blocks outside of scores, and those in this one, which takes over only those that stand
 * before it then. Blocks of music are passed over. */
static void find_layouts(sw_player *p)
{
    const sw_reading *reading = p->reader->reading;
    for (uint32_t file = 0; file < reading->file_count; file++) {
        const sw_syntax *syntax = reading->files[file].syntax;
        uint32_t end = syntax->nodes[0].next;
        bool own = false;
        for (uint32_t i = 1; i < end;) {
            uint32_t block = block_behind(syntax, i, end);
            uint32_t next = syntax->nodes[i].next;
            if (block != SW_NO_INDEX) {
                sw_slice text = sw_syntax_slice(syntax, i);
                bool here = file == p->score->file && syntax->nodes[i].start == p->score->start;
                if (sw_slice_is(text, "\\layout")) {
                    bool inside = file == p->score->file && syntax->nodes[i].start >= p->score->start &&
                                  syntax->nodes[i].start < p->score->end;
                    if (inside || !own) {
                        p->layouts =
                            sw_grow(p->layouts, p->layout_count, &p->layout_capacity, sizeof *p->layouts);
                        p->layouts[p->layout_count++] = (sw_layout_block){file, block};
                    }
                    own = own || inside;
                    next = syntax->nodes[block].next;
                } else if (sw_slice_starts(text, "\\book") || (sw_slice_is(text, "\\score") && here)) {
                    next = block + 1;
                } else {
                    next = syntax->nodes[block].next;
                }
            }
            i = next;
        }
    }
}

static void go_through_layouts(sw_player *p, const char *type, block_setting *set, void *data)
{
    if (!p->layouts_found) {
        p->layouts_found = true;
        find_layouts(p);
    }
    for (size_t i = 0; i < p->layout_count; i++) {
        go_through_layout(p->reader, p->layouts[i].file, p->layouts[i].node, sw_slice_of(type), set, data);
    }
}

/* The voices of old notation are defined with beams by hand. */
static bool has_beams_by_hand(const char *type)
{
    static const char *const types[] = {"GregorianTranscriptionVoice", "KievanVoice", "MensuralVoice",
                                        "PetrucciVoice", "VaticanaVoice"};
    for (size_t i = 0; i < sizeof types / sizeof types[0]; i++) {
        if (strcmp(type, types[i]) == 0) {
            return true;
        }
    }
    return false;
}

sw_melisma_rules sw_melisma_rules_of(sw_player *p, const sw_context *voice)
{
    sw_melisma_rules rules;
    for (int level = SW_LEVEL_SCORE; level <= SW_LEVEL_VOICE; level++) {
        rules.levels[level] = (sw_melisma_rule){-1, -1, -1};
    }
    for (const sw_context *c = voice; c != NULL; c = c->parent) {
        sw_melisma_rule *rule = &rules.levels[c->level];
        sw_melisma_rule outer = *rule; /* of groups the innermost holds */
        const char *type = sw_reading_name(p->reader->reading, c->type);
        rule->automatic_beams = has_beams_by_hand(type) ? 0 : rule->automatic_beams;
        go_through_layouts(p, type, set_rule, rule);
        const sw_reading *reading = p->reader->reading;
        for (uint32_t s = c->with == SW_NO_INDEX ? SW_NO_INDEX : reading->music[c->with].first;
             s != SW_NO_INDEX; s = reading->music[s].next) {
            sw_melisma_rule_read(rule, reading, s);
        }
        rule->counts = outer.counts >= 0 ? outer.counts : rule->counts;
        rule->automatic_beams = outer.automatic_beams >= 0 ? outer.automatic_beams : rule->automatic_beams;
        rule->waiting_ties = outer.waiting_ties >= 0 ? outer.waiting_ties : rule->waiting_ties;
    }
    return rules;
}

bool sw_layout_ignores_melismata(sw_player *p)
{
    bool ignores = false;
    go_through_layouts(p, "Lyrics", set_ignoring, &ignores);
    return ignores;
}

static void set_first_number(void *data, sw_slice property, sw_slice value)
{
    if (!sw_slice_is(property, "currentBarNumber")) {
        return;
    }
    int32_t number = 0;
    size_t digits = 0;
    for (size_t i = 0; i < value.length && number < 10000000; i++) {
        if (value.data[i] >= '0' && value.data[i] <= '9') {
            number = number * 10 + (value.data[i] - '0');
            digits++;
        } else if (value.data[i] != '#') {
            return;
        }
    }
    if (digits > 0) {
        *(int32_t *)data = number;
    }
}

int32_t sw_layout_first_number(sw_player *p)
{
    static const char property[] = "currentBarNumber";
    sw_reader *reader = p->reader;
    const sw_reading *reading = reader->reading;
    for (; reader->searched_files < reading->file_count; reader->searched_files++) { /* few files have any */
        const sw_text *text = reading->files[reader->searched_files].text;
        reader->says_bar_number = reader->says_bar_number ||
                                  memmem(text->bytes, text->length, property, sizeof property - 1) != NULL;
    }
    int32_t number = 1;
    if (reader->says_bar_number) {
        go_through_layouts(p, "Score", set_first_number, &number);
    }
    return number;
}
