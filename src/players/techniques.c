#include <stdlib.h>
#include <string.h>

#include "players/staff_words.h"
#include "players/technique_table.h"

/* The bytes of techniques.yaml, in a file that the build makes. */
extern const unsigned char sw_techniques_yaml[];
extern const size_t sw_techniques_yaml_length;

sw_techniques *sw_techniques_load(const char *override_path_or_null, sw_slice override_bytes, char **error)
{
    sw_techniques *table = sw_alloc_zero(1, sizeof *table);
    table->arena = sw_arena_new();
    table->read = sw_memo_new();
    *error = NULL;
    sw_slice built_in = {(const char *)sw_techniques_yaml, sw_techniques_yaml_length};
    bool good = sw_technique_table_read(table, "techniques.yaml (built-in)", built_in, error);
    if (good && override_path_or_null != NULL) {
        good = sw_technique_table_read(table, override_path_or_null, override_bytes, error);
    }
    if (!good) {
        sw_techniques_free(table);
        return NULL;
    }
    return table;
}

void sw_techniques_free(sw_techniques *table)
{
    if (table == NULL) {
        return;
    }
    for (size_t i = 0; i < table->word_count; i++) {
        pcre2_code_free(table->words[i].code);
    }
    pcre2_code_free(table->half);
    free(table->words);
    free(table->changes);
    free(table->marks);
    sw_memo_free(table->read);
    sw_arena_free(table->arena);
    free(table);
}

size_t sw_techniques_group_count(const sw_techniques *techniques)
{
    return techniques->group_count;
}

const sw_technique_group *sw_techniques_group(const sw_techniques *techniques, size_t group)
{
    return &techniques->groups[group];
}

size_t sw_techniques_count(const sw_techniques *techniques)
{
    return techniques->count;
}

const sw_technique *sw_techniques_get(const sw_techniques *techniques, size_t i)
{
    return &techniques->items[i];
}

uint8_t sw_techniques_find(const sw_techniques *techniques, const char *id)
{
    for (size_t i = 0; i < techniques->count; i++) {
        if (strcmp(techniques->items[i].id, id) == 0) {
            return (uint8_t)i;
        }
    }
    return SW_NO_TECHNIQUE;
}

/* ---- texts -------------------------------------------------------------------------------------------- */

typedef struct search {
    const sw_techniques *table;
    unsigned families; /* those whose words count, as bits */
    const char *text;  /* in plain form */
    size_t length;
    pcre2_match_data *match;
} search;

/* How many characters from `at` on a pattern matches, the longest way; 0: none. */
static size_t matched(const search *s, const pcre2_code *code, size_t at)
{
    enum { SPACE = 1024 };
    int space[SPACE];
    int found = pcre2_dfa_match(code, (PCRE2_SPTR)s->text, s->length, at, 0, s->match, NULL, space, SPACE);
    return found >= 0 ? pcre2_get_ovector_pointer(s->match)[1] - at : 0;
}

/* The words that match most from `at` on, NULL for none. */
static const sw_word_rule *longest(const search *s, size_t at, size_t *length)
{
    const sw_word_rule *best = NULL;
    *length = 0;
    for (size_t i = s->table->word_count; i-- > 0;) {
        const sw_word_rule *rule = &s->table->words[i];
        if (rule->families != SW_ALL_FAMILIES && (rule->families & s->families) == 0) {
            continue;
        }
        size_t own = matched(s, rule->code, at);
        bool closer = own == *length && best != NULL && best->families == SW_ALL_FAMILIES &&
                      rule->families != SW_ALL_FAMILIES;
        if (own > *length || (own > 0 && closer)) {
            best = rule;
            *length = own;
        }
    }
    return best;
}

/* Lower case, no accents, one blank between words. */
static void plain_text(sw_slice text, sw_buffer *plain)
{
    sw_staff_words words;
    sw_staff_words_cut(text, &words);
    for (size_t i = 0; i < words.count; i++) {
        sw_buffer_format(plain, "%s%s", i == 0 ? "" : " ", words.items[i].text);
    }
}

static bool stands_in_brackets(sw_slice text)
{
    text = sw_slice_trim(text);
    return text.length > 2 && strchr("([", text.data[0]) != NULL &&
           strchr(")]", text.data[text.length - 1]) != NULL;
}

static size_t word_end(const search *s, size_t at)
{
    while (at < s->length && s->text[at] != ' ') {
        at++;
    }
    return at + (at < s->length);
}

/* The beginning of the next word that is more than a comma. */
static size_t next_word(const search *s, size_t at)
{
    while (at < s->length && (s->text[at] == ' ' || s->text[at] == '/')) {
        at++;
    }
    return at;
}

static size_t read_text(const sw_techniques *techniques, const sw_family *family, sw_slice text,
                        sw_technique_said *said, size_t room, bool *in_brackets)
{
    sw_buffer plain = {0};
    plain_text(text, &plain);
    search s = {.table = techniques,
                .families = 1u << (family == NULL ? SW_STRINGS : *family),
                .text = sw_buffer_text(&plain),
                .length = plain.length,
                .match = pcre2_match_data_create(1, NULL)};
    *in_brackets = stands_in_brackets(text);
    size_t count = 0;
    bool half = false;
    for (size_t at = 0; at < s.length;) {
        size_t length = 0;
        size_t half_length = techniques->half == NULL ? 0 : matched(&s, techniques->half, at);
        size_t behind = next_word(&s, at + half_length);
        if (half_length > 0 && longest(&s, behind, &length) != NULL) {
            half = true;
            at = behind;
        }
        const sw_word_rule *rule = longest(&s, at, &length);
        for (size_t i = 0; rule != NULL && i < rule->said && count < room; i++) {
            said[count++] = (sw_technique_said){rule->says[i], half};
        }
        at = rule == NULL ? word_end(&s, at) : next_word(&s, at + length);
    }
    pcre2_match_data_free(s.match);
    sw_buffer_free(&plain);
    return count;
}

/* What a text was found to say. No text says more. */
enum { MOST_SAID = 16 };

typedef struct known_text {
    sw_technique_said said[MOST_SAID];
    size_t count;
    bool in_brackets;
} known_text;

size_t sw_techniques_read(const sw_techniques *techniques, const sw_family *family, sw_slice text,
                          sw_technique_said *said, size_t room, bool *in_brackets)
{
    sw_buffer key = {0};
    sw_buffer_format(&key, "%d ", family == NULL ? -1 : (int)*family);
    sw_buffer_append(&key, text);
    const known_text *known = sw_memo_find(techniques->read, sw_buffer_slice(&key));
    known_text own = {0};
    if (known == NULL) {
        own.count = read_text(techniques, family, text, own.said, MOST_SAID, &own.in_brackets);
        sw_memo_keep(techniques->read, sw_buffer_slice(&key), &own, sizeof own);
        known = &own;
    }
    sw_buffer_free(&key);
    *in_brackets = known->in_brackets;
    size_t count = known->count < room ? known->count : room;
    if (count > 0) {
        memcpy(said, known->said, count * sizeof *said);
    }
    return count;
}

static sw_slice without_direction(sw_slice mark)
{
    return mark.length > 1 && strchr("-^_", mark.data[0]) != NULL ? sw_slice_from(mark, 1) : mark;
}

uint8_t sw_techniques_of_mark(const sw_techniques *techniques, sw_slice mark)
{
    sw_slice bare = without_direction(mark);
    for (size_t i = 0; i < techniques->mark_count; i++) {
        if (sw_slice_equal(bare, without_direction(sw_slice_of(techniques->marks[i].mark)))) {
            return techniques->marks[i].technique;
        }
    }
    return SW_NO_TECHNIQUE;
}

/* ---- changes ------------------------------------------------------------------------------------------ */

static bool is_for(const sw_change_rule *rule, const sw_instrument *instrument)
{
    if (rule->families == SW_ALL_FAMILIES && rule->instrument_count == 0) {
        return true;
    }
    if (instrument == NULL) {
        return false;
    }
    for (size_t i = 0; i < rule->instrument_count; i++) {
        if (sw_instrument_is(instrument, rule->instruments[i])) {
            return true;
        }
    }
    return (rule->families & 1u << instrument->family) != 0;
}

const sw_technique_change *sw_techniques_change(const sw_techniques *techniques,
                                                const sw_instrument *instrument, uint8_t from, uint8_t to)
{
    uint8_t group = techniques->items[from].group;
    if (from == to || group != techniques->items[to].group) {
        return NULL;
    }
    for (size_t i = 0; i < techniques->change_count; i++) {
        const sw_change_rule *rule = &techniques->changes[i];
        uint8_t known = rule->from == SW_NO_TECHNIQUE ? rule->to : rule->from;
        if ((rule->from == SW_NO_TECHNIQUE || rule->from == from) &&
            (rule->to == SW_NO_TECHNIQUE || rule->to == to) && techniques->items[known].group == group &&
            is_for(rule, instrument)) {
            return &rule->figures;
        }
    }
    return NULL;
}
