#define PCRE2_CODE_UNIT_WIDTH 8
#include <pcre2.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/memo.h"
#include "players/recogniser.h"
#include "players/staff_name.h"

typedef struct rule {
    int entry;
    int priority;
    const char *key;
    uint32_t patterns; /* number of the pattern text: the keys of an instrument share one text */
} rule;

struct sw_recogniser {
    rule *rules;
    size_t count;
    size_t capacity;
    sw_names *texts;
    pcre2_code **codes; /* one for each text, NULL until they are compiled */
    sw_memo *found;     /* by name: the entry, an int; a film has the same names in every cue */
};

/* The search wants the longest match at the beginning of a name, whatever the order of the alternatives. That
 * is what PCRE2's other matching function gives (pcre2_dfa_match); it works in a fixed space. */
enum { SPACE = 2048 };

static pcre2_code *compile(sw_slice pattern, int *error, size_t *at)
{
    uint32_t options = PCRE2_ANCHORED | PCRE2_CASELESS | PCRE2_NO_AUTO_CAPTURE | PCRE2_DOLLAR_ENDONLY;
    return pcre2_compile((PCRE2_SPTR)pattern.data, pattern.length, options, error, at, NULL);
}

sw_recogniser *sw_recogniser_new(void)
{
    sw_recogniser *recogniser = sw_alloc_zero(1, sizeof *recogniser);
    recogniser->texts = sw_names_new();
    recogniser->found = sw_memo_new();
    return recogniser;
}

static void free_codes(sw_recogniser *recogniser)
{
    for (uint32_t i = 0; recogniser->codes != NULL && i < sw_names_count(recogniser->texts); i++) {
        pcre2_code_free(recogniser->codes[i]);
    }
    free(recogniser->codes);
    recogniser->codes = NULL;
}

void sw_recogniser_free(sw_recogniser *recogniser)
{
    if (recogniser == NULL) {
        return;
    }
    free_codes(recogniser);
    sw_memo_free(recogniser->found);
    sw_names_free(recogniser->texts);
    free(recogniser->rules);
    free(recogniser);
}

void sw_recogniser_add(sw_recogniser *recogniser, int entry, const char *key, sw_slice patterns, int priority)
{
    recogniser->rules =
        sw_grow(recogniser->rules, recogniser->count, &recogniser->capacity, sizeof *recogniser->rules);
    recogniser->rules[recogniser->count++] =
        (rule){entry, priority, key, sw_names_add(recogniser->texts, patterns)};
}

void sw_recogniser_change_key(sw_recogniser *recogniser, int entry, const char *key)
{
    for (size_t i = 0; i < recogniser->count; i++) {
        if (recogniser->rules[i].entry == entry) {
            recogniser->rules[i].key = key;
        }
    }
}

/* The pattern of an entry, which has to end where a word ends. */
static pcre2_code *compile_to_word_end(sw_slice patterns)
{
    sw_buffer text = {0};
    sw_buffer_string(&text, "(?:");
    sw_buffer_append(&text, patterns);
    sw_buffer_string(&text, ")(?![^ ])");
    int error = 0;
    size_t at = 0;
    pcre2_code *code = compile(sw_buffer_slice(&text), &error, &at);
    sw_buffer_free(&text);
    return code;
}

void sw_recogniser_compile(sw_recogniser *recogniser)
{
    uint32_t count = sw_names_count(recogniser->texts);
    recogniser->codes = sw_alloc_zero(count, sizeof *recogniser->codes);
    for (uint32_t i = 1; i < count; i++) { /* 0 is the empty text */
        recogniser->codes[i] = compile_to_word_end(sw_slice_of(sw_names_text(recogniser->texts, i)));
    }
}

bool sw_recogniser_check(sw_slice pattern, char *message, size_t room)
{
    int error = 0;
    size_t at = 0;
    pcre2_code *code = compile(pattern, &error, &at);
    if (code == NULL) {
        PCRE2_UCHAR text[160];
        pcre2_get_error_message(error, text, sizeof text);
        snprintf(message, room, "%s, at character %zu", (const char *)text, at + 1);
        return false;
    }
    uint32_t references = 0;
    pcre2_pattern_info(code, PCRE2_INFO_BACKREFMAX, &references);
    pcre2_code_free(code);
    if (references > 0) {
        snprintf(message, room, "back references are not supported here");
        return false;
    }
    /* A pattern may be right by itself and yet swallow what follows it, as one with a comment does. */
    pcre2_code *in_context = compile_to_word_end(pattern);
    if (in_context == NULL) {
        snprintf(message, room, "it does not end by itself");
    }
    pcre2_code_free(in_context);
    return in_context != NULL;
}

/* ---- search ------------------------------------------------------------------------------------- */

/* How many characters from its beginning each pattern text matches, 0 for none. */
static void measure(const sw_recogniser *recogniser, const char *text, size_t *lengths)
{
    pcre2_match_data *match = pcre2_match_data_create(1, NULL);
    int space[SPACE];
    uint32_t count = sw_names_count(recogniser->texts);
    lengths[0] = 0;
    for (uint32_t i = 1; i < count; i++) {
        const pcre2_code *code = recogniser->codes[i];
        /* 0 means that there are shorter matches, too, for which there is no room. */
        int found = code == NULL ? -1
                                 : pcre2_dfa_match(code, (PCRE2_SPTR)text, strlen(text), 0, 0, match, NULL,
                                                   space, SPACE);
        lengths[i] = found >= 0 ? pcre2_get_ovector_pointer(match)[1] : 0;
    }
    pcre2_match_data_free(match);
}

static bool key_fits(const rule *r, sw_key_demand demand, const char *key)
{
    bool same = strcmp(r->key, key) == 0;
    return demand == SW_KEY_NONE || same || (demand == SW_KEY_STATED && r->key[0] == '\0');
}

/* The entry of the best rule among those whose patterns match just `length` characters. */
static int best_entry(const sw_recogniser *recogniser, sw_key_demand demand, const char *key,
                      const size_t *lengths, size_t length)
{
    const rule *best = NULL;
    for (size_t i = 0; i < recogniser->count; i++) {
        const rule *r = &recogniser->rules[i];
        if (lengths[r->patterns] == length && key_fits(r, demand, key) &&
            (best == NULL || r->priority > best->priority)) {
            best = r;
        }
    }
    return best == NULL ? SW_NO_ENTRY : best->entry;
}

/* The best entry for a letter that may be a key or may tell players apart: that of both readings. */
static int entry_of_both(const sw_recogniser *recogniser, const char *key, const size_t *lengths,
                         size_t length)
{
    int of_player = best_entry(recogniser, SW_KEY_NONE, "", lengths, length);
    int of_key = best_entry(recogniser, SW_KEY_STATED, key, lengths, length);
    return of_key == SW_NO_ENTRY || of_key == of_player ? of_player : SW_NO_ENTRY;
}

/* Only the longest matches count: one of the wrong key must not give way to a shorter one, "bass clarinet in
 * D" is no bass. With something in the name that may be a key, only a match of the whole name counts: "Db" is
 * the double bass, "Db Clarinet" is not. */
static int search(const sw_recogniser *recogniser, const sw_staff_name *name, size_t *lengths, bool whole)
{
    measure(recogniser, name->text, lengths);
    size_t longest = 0;
    for (uint32_t i = 0; i < sw_names_count(recogniser->texts); i++) {
        longest = lengths[i] > longest ? lengths[i] : longest;
    }
    bool enough = whole ? longest == strlen(name->text) : longest > 0;
    if (!enough) {
        return SW_NO_ENTRY;
    }
    return name->demand == SW_KEY_UNCLEAR ? entry_of_both(recogniser, name->key, lengths, longest)
                                          : best_entry(recogniser, name->demand, name->key, lengths, longest);
}

static int find(const sw_recogniser *recogniser, sw_slice staff_name)
{
    sw_staff_names names;
    sw_staff_name_plain(staff_name, &names);
    size_t *lengths = sw_alloc_zero(sw_names_count(recogniser->texts), sizeof *lengths);
    bool perhaps_key = names.bare.text[0] != '\0';
    int entry = SW_NO_ENTRY;
    if (names.stated.text[0] != '\0') {
        entry = search(recogniser, &names.stated, lengths, perhaps_key);
    }
    if (entry == SW_NO_ENTRY && perhaps_key) {
        entry = search(recogniser, &names.bare, lengths, false);
    }
    free(lengths);
    return entry;
}

int sw_recogniser_find(const sw_recogniser *recogniser, sw_slice staff_name)
{
    const int *known = sw_memo_find(recogniser->found, staff_name);
    if (known != NULL) {
        return *known;
    }
    int entry = find(recogniser, staff_name);
    sw_memo_keep(recogniser->found, staff_name, &entry, sizeof entry);
    return entry;
}
