#include "checks/house_texts.h"

#include <stdlib.h>
#include <string.h>

/* One file that is gone through. */
typedef struct walk {
    const sw_syntax *syntax;
    sw_house_texts *texts;
    sw_buffer text; /* of the one that is made */
    uint32_t *places;
    size_t place_capacity;
} walk;

/* ---- plain text with its places --------------------------------------------------------------------------
 */

static void add_byte(walk *w, char byte, uint32_t place)
{
    w->places = sw_grow(w->places, w->text.length, &w->place_capacity, sizeof *w->places);
    w->places[w->text.length] = place;
    sw_buffer_char(&w->text, byte);
}

/* Bytes of the source; of a string those between the quotes, without the backslash before a quote. */
static void add_bytes(walk *w, uint32_t start, uint32_t end)
{
    const char *bytes = w->syntax->text->bytes;
    bool quoted = end - start >= 2 && bytes[start] == '"' && bytes[end - 1] == '"';
    for (uint32_t at = quoted ? start + 1 : start; at < (quoted ? end - 1 : end); at++) {
        at += quoted && bytes[at] == '\\' && at + 2 < end;
        add_byte(w, bytes[at], at);
    }
}

/* The words of a node, with a blank between; what stands inside of a \score of a markup is none. */
static void add_words(walk *w, uint32_t node)
{
    const sw_syntax *syntax = w->syntax;
    for (uint32_t i = node; i < syntax->nodes[node].next; i++) {
        uint32_t kind = syntax->nodes[i].kind;
        if (kind == SW_NODE_BLOCK) {
            i = syntax->nodes[i].next - 1;
        } else if (kind == SW_NODE_STRING || kind == SW_NODE_MARKUP_WORD) {
            if (w->text.length > 0) {
                add_byte(w, ' ', syntax->nodes[i].start);
            }
            add_bytes(w, syntax->nodes[i].start, syntax->nodes[i].end);
        }
    }
}

static void finish(walk *w, unsigned kind, uint32_t start, uint32_t end, const char *field)
{
    sw_house_texts *texts = w->texts;
    size_t length = w->text.length;
    uint32_t *places = sw_arena_alloc(texts->arena, (length + 1) * sizeof *places);
    if (length > 0) {
        memcpy(places, w->places, length * sizeof *places);
    }
    places[length] = length > 0 ? places[length - 1] + 1 : end;
    texts->items = sw_grow(texts->items, texts->count, &texts->capacity, sizeof *texts->items);
    texts->items[texts->count++] =
        (sw_house_text){.kind = kind,
                        .field = field,
                        .start = start,
                        .end = end,
                        .text = sw_arena_copy(texts->arena, sw_buffer_slice(&w->text)),
                        .places = places};
    sw_buffer_clear(&w->text);
}

static void add_node(walk *w, uint32_t node, unsigned kind, const char *field)
{
    add_words(w, node);
    finish(w, kind, w->syntax->nodes[node].start, w->syntax->nodes[node].end, field);
}

/* ^"dolce": the string is part of the node. */
static void add_post_event(walk *w, uint32_t node)
{
    sw_slice text = sw_syntax_slice(w->syntax, node);
    const char *quote = memchr(text.data, '"', text.length);
    if (quote != NULL) {
        uint32_t start = w->syntax->nodes[node].start + (uint32_t)(quote - text.data);
        add_bytes(w, start, w->syntax->nodes[node].end);
        finish(w, SW_HOUSE_TEXTS, start, w->syntax->nodes[node].end, NULL);
    }
}

/* ---- going through ---------------------------------------------------------------------------------------
 */

static bool is_kind(const walk *w, uint32_t node, uint32_t kind)
{
    return node < w->syntax->count && w->syntax->nodes[node].kind == kind;
}

static bool is_value(const walk *w, uint32_t node)
{
    return is_kind(w, node, SW_NODE_STRING) || is_kind(w, node, SW_NODE_MARKUP);
}

/* The value of `word = value`, when it is a text; 0: none. */
static uint32_t value_of(const walk *w, uint32_t word)
{
    bool equals = is_value(w, word + 2) && is_kind(w, word, SW_NODE_WORD) &&
                  is_kind(w, word + 1, SW_NODE_PUNCTUATION) &&
                  sw_slice_is(sw_syntax_slice(w->syntax, word + 1), "=");
    return equals ? word + 2 : 0;
}

/* Commands whose string is printed. */
static bool prints_string(sw_slice command)
{
    static const char *const names[] = {"\\mark",         "\\tempo", "\\textMark", "\\textEndMark",
                                        "\\sectionLabel", "\\jump",  "\\markup"};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (sw_slice_is(command, names[i])) {
            return true;
        }
    }
    return false;
}

static void read_header(walk *w, uint32_t block)
{
    for (uint32_t i = block + 1; i < w->syntax->nodes[block].next; i = w->syntax->nodes[i].next) {
        uint32_t value = value_of(w, i);
        if (value != 0) {
            const char *field = sw_arena_copy(w->texts->arena, sw_syntax_slice(w->syntax, i));
            add_node(w, value, SW_HOUSE_HEADER, field);
            i = value;
        }
    }
}

/* Takes the text that a node holds or begins; returns the last node that was taken. */
static uint32_t read_node(walk *w, uint32_t node, bool top)
{
    const sw_syntax *syntax = w->syntax;
    switch (syntax->nodes[node].kind) {
    case SW_NODE_COMMAND: {
        sw_slice text = sw_syntax_slice(syntax, node);
        if (is_kind(w, node + 1, SW_NODE_BLOCK) && sw_slice_is(text, "\\header")) {
            read_header(w, node + 1);
            return syntax->nodes[node + 1].next - 1;
        }
        if (is_kind(w, node + 1, SW_NODE_STRING) && prints_string(text)) {
            add_node(w, node + 1, SW_HOUSE_TEXTS, NULL);
            return node + 1;
        }
        return node;
    }
    case SW_NODE_WORD: {
        uint32_t value = value_of(w, node);
        if (value != 0 && sw_slice_ends(sw_syntax_slice(syntax, node), "nstrumentName")) {
            add_node(w, value, SW_HOUSE_STAFF_NAMES, NULL);
            return syntax->nodes[value].next - 1;
        }
        if (value != 0 && top && is_kind(w, value, SW_NODE_STRING)) {
            add_node(w, value, SW_HOUSE_TEXTS, NULL);
            return value;
        }
        return node;
    }
    case SW_NODE_MARKUP:
        add_node(w, node, SW_HOUSE_MARKUPS, NULL);
        return syntax->nodes[node].next - 1;
    case SW_NODE_POST_EVENT:
        add_post_event(w, node);
        return node;
    default:
        return node;
    }
}

static void read_file(walk *w)
{
    const sw_syntax *syntax = w->syntax;
    uint32_t outer = 1; /* the next node at the top of the file */
    for (uint32_t i = 1; i < syntax->count; i++) {
        i = read_node(w, i, i == outer);
        while (outer < syntax->count && outer <= i) {
            outer = syntax->nodes[outer].next;
        }
    }
}

sw_house_texts sw_house_texts_of(const sw_reading *reading, uint32_t file)
{
    sw_house_texts texts = {.arena = sw_arena_new()};
    walk w = {.syntax = reading->files[file].syntax, .texts = &texts};
    if (w.syntax != NULL) {
        read_file(&w);
    }
    sw_buffer_free(&w.text);
    free(w.places);
    return texts;
}

void sw_house_texts_free(sw_house_texts *texts)
{
    free(texts->items);
    sw_arena_free(texts->arena);
    *texts = (sw_house_texts){0};
}
