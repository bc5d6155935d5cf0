/* The user's own rules: patterns over texts, names of staves and files, and headers. */
#include <stdlib.h>
#include <string.h>

#include "checks/house_texts.h"
#include "checks/rules.h"

enum { SHOWN = 40 }; /* bytes of a text that a message shows */

/* What a text is called in messages, cut at the end of a character. */
static int shown(const char *text)
{
    int length = (int)strnlen(text, SHOWN);
    while (length == SHOWN && ((unsigned char)text[length] & 0xC0u) == 0x80) {
        length++;
    }
    return length;
}

static void report(sw_check *check, const sw_house_rule *rule, uint32_t file, uint32_t start, uint32_t end,
                   sw_slice text)
{
    sw_buffer message = {0};
    char copy[2 * SHOWN] = {0};
    memcpy(copy, text.data, text.length < sizeof copy ? text.length : sizeof copy - 1);
    sw_buffer_format(&message, "\"%.*s\": %s", shown(copy), copy, rule->message);
    if (rule->replacement != NULL) {
        sw_buffer_format(&message, "; write \"%s\"", rule->replacement);
    }
    sw_findings_add(check->findings, rule->severity, "house", file, start, end, "%s",
                    sw_buffer_text(&message));
    sw_buffer_free(&message);
}

/* The node without nodes inside that holds a byte of a file; 0: none. */
static uint32_t leaf_at(const sw_syntax *syntax, uint32_t byte)
{
    uint32_t found = 0;
    for (uint32_t i = 1; i < syntax->count && syntax->nodes[i].start <= byte; i++) {
        if (syntax->nodes[i].next == i + 1 && byte < syntax->nodes[i].end) {
            found = i;
        }
    }
    return found;
}

/* Whether the rule would find fault with its own replacement. */
static bool is_still_found(sw_check *check, const sw_house_rule *rule, const sw_house_text *text, size_t from,
                           size_t to)
{
    sw_buffer after = {0};
    sw_buffer_append(&after, (sw_slice){text->text, from});
    sw_buffer_string(&after, rule->replacement);
    sw_buffer_string(&after, text->text + to);
    size_t end = from + strlen(rule->replacement);
    size_t a = 0;
    size_t b = 0;
    bool found = false;
    for (size_t at = 0; !found &&
                                sw_house_rule_find(check->film, rule, sw_buffer_slice(&after), at, &a, &b) &&
                                a<end; at = b> a
                            ? b
                            : b + 1) {
        found = b > from;
    }
    sw_buffer_free(&after);
    return found;
}

/* A word of a markup that needs no quotes. */
static bool is_plain_word(const char *text)
{
    return *text != '\0' && strpbrk(text, " \t\n{}\"\\#%$") == NULL;
}

static void add_quoted(sw_buffer *text, const char *words)
{
    for (; *words != '\0'; words++) {
        if (*words == '"' || *words == '\\') {
            sw_buffer_char(text, '\\');
        }
        sw_buffer_char(text, *words);
    }
}

/* Offers the replacement, where the match lies within one word or string of the source. */
static void offer(sw_check *check, const sw_house_rule *rule, uint32_t file, const sw_house_text *text,
                  size_t from, size_t to)
{
    bool whole = to > from && rule->replacement != NULL;
    for (size_t i = from + 1; i < to && whole; i++) {
        whole = text->places[i] == text->places[i - 1] + 1;
    }
    if (!whole || is_still_found(check, rule, text, from, to)) {
        return;
    }
    const sw_syntax *syntax = check->reading->files[file].syntax;
    uint32_t leaf = leaf_at(syntax, text->places[from]);
    const sw_node *node = &syntax->nodes[leaf];
    sw_fix_edit edit = {text->places[from], text->places[to - 1] + 1, NULL};
    if (leaf == 0 || edit.end > node->end) {
        return;
    }
    sw_buffer bytes = {0};
    if (node->kind != SW_NODE_MARKUP_WORD) {
        add_quoted(&bytes, rule->replacement);
    } else if (is_plain_word(rule->replacement)) {
        sw_buffer_string(&bytes, rule->replacement);
    } else { /* the word gets quotes around it */
        sw_slice word = sw_syntax_slice(syntax, leaf);
        size_t before = edit.start - node->start;
        sw_buffer_char(&bytes, '"');
        sw_buffer_append(&bytes, (sw_slice){word.data, before});
        add_quoted(&bytes, rule->replacement);
        size_t behind = edit.end - node->start;
        sw_buffer_append(&bytes, (sw_slice){word.data + behind, word.length - behind});
        sw_buffer_char(&bytes, '"');
        edit.start = node->start;
        edit.end = node->end;
    }
    edit.text = sw_buffer_text(&bytes);
    sw_buffer says = {0};
    sw_buffer_format(&says, "\"%.*s\" becomes \"%s\"", (int)(to - from), text->text + from,
                     rule->replacement);
    sw_fix_by_text(check, &edit, 1, sw_buffer_text(&says));
    sw_buffer_free(&says);
    sw_buffer_free(&bytes);
}

static void look_at(sw_check *check, const sw_house_rule *rule, uint32_t file, const sw_house_text *text)
{
    sw_slice whole = sw_slice_of(text->text);
    size_t from;
    size_t to = 0;
    bool found = sw_house_rule_find(check->film, rule, whole, 0, &from, &to);
    if (rule->required && !found) {
        report(check, rule, file, text->start, text->end, whole);
    }
    while (found && !rule->required) {
        uint32_t end = to > from ? text->places[to - 1] + 1 : text->places[to];
        report(check, rule, file, text->places[from], end, (sw_slice){text->text + from, to - from});
        offer(check, rule, file, text, from, to);
        found = to > from && sw_house_rule_find(check->film, rule, whole, to, &from, &to);
    }
}

static bool is_meant(const sw_house_rule *rule, const sw_house_text *text)
{
    bool field = rule->field == NULL || text->field == NULL || strcmp(rule->field, text->field) == 0;
    return (rule->where & text->kind) != 0 && field;
}

/* Returns whether the file has the header field that the rule speaks of. */
static bool check_file(sw_check *check, const sw_house_rule *rule, uint32_t file, const sw_house_texts *texts)
{
    bool has_field = false;
    for (size_t i = 0; i < texts->count; i++) {
        const sw_house_text *text = &texts->items[i];
        if (is_meant(rule, text)) {
            has_field = has_field || text->kind == SW_HOUSE_HEADER;
            look_at(check, rule, file, text);
        }
    }
    if ((rule->where & SW_HOUSE_FILE_NAMES) != 0) {
        const char *path = check->reading->files[file].text->path;
        const char *slash = strrchr(path, '/');
        const char *name = slash == NULL ? path : slash + 1;
        if (sw_house_rule_find(check->film, rule, sw_slice_of(name), 0, NULL, NULL) != rule->required) {
            report(check, rule, file, 0, 0, sw_slice_of(name));
        }
    }
    return has_field;
}

static void run(sw_check *check)
{
    const sw_reading *reading = check->reading;
    size_t count = sw_film_house_count(check->film);
    if (count == 0) {
        return;
    }
    bool *has_field = sw_alloc_zero(count, sizeof *has_field);
    for (uint32_t file = 0; file < reading->file_count; file++) {
        sw_house_texts texts = sw_house_texts_of(reading, file);
        for (size_t i = 0; i < count; i++) {
            has_field[i] = check_file(check, sw_film_house(check->film, i), file, &texts) || has_field[i];
        }
        sw_house_texts_free(&texts);
    }
    for (size_t i = 0; i < count && reading->score_count > 0; i++) {
        const sw_house_rule *rule = sw_film_house(check->film, i);
        if (rule->required && rule->field != NULL && !has_field[i]) {
            sw_findings_add(check->findings, rule->severity, "house", 0, 0, 0,
                            "no header has the field %s: %s", rule->field, rule->message);
        }
    }
    free(has_field);
}

const sw_rule sw_rule_house = {
    .name = "house",
    .summary = "what the house style of this film forbids or asks for",
    .severity = SW_ERROR,
    .explain =
        "Each office has its own ways: pizz. and never pizzicato, a cue number in front of each title, staff "
        "names without\nabbreviations. The film's stavewright.yaml says them as patterns (PCRE2), each with "
        "the sentence to show:\n\n"
        "  house:\n"
        "    - in: [texts, markups]          # or staff-names, file-names, header (with field: title)\n"
        "      forbidden: '\\bpizzicato\\b'    # or required: what each of them must have\n"
        "      message: the house writes pizz.\n"
        "      replacement: pizz.            # what check --fix writes instead\n"
        "      severity: note                # or warning (when nothing is said), or error\n\n"
        "A text of several words in a markup is read with one blank between them. \"required\" with a header "
        "field asks for\nthe field, too. Without such rules this one says nothing.\n\n"
        "To mend: write what the message says, or change the rule in stavewright.yaml.\n",
    .run = run,
};
