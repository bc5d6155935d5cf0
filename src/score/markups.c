/* What of markups matters: their plain text, and the scores inside. */
#include "score/reader.h"

/* A command \score or \score-lines with its block. */
static bool is_score(const sw_syntax *syntax, uint32_t node, uint32_t end)
{
    if (syntax->nodes[node].kind != SW_NODE_COMMAND || node + 1 >= end ||
        syntax->nodes[node + 1].kind != SW_NODE_BLOCK) {
        return false;
    }
    sw_slice name = sw_syntax_slice(syntax, node);
    return sw_slice_is(name, "\\score") || sw_slice_is(name, "\\score-lines");
}

void sw_read_markup_scores(sw_reader *reader, uint32_t file, uint32_t node)
{
    const sw_syntax *syntax = reader->reading->files[file].syntax;
    uint32_t end = syntax->nodes[node].next;
    for (uint32_t i = node; i < end; i++) {
        if (!is_score(syntax, i, end) || reader->depth >= SW_MAX_DEPTH) {
            continue;
        }
        sw_mode outer = reader->mode;
        reader->mode = SW_MODE_NOTES;
        reader->depth++;
        sw_pending score = sw_read_score_block(reader, file, i + 1);
        reader->depth--;
        reader->mode = outer;
        score.start = syntax->nodes[i].start;
        score.heard = true;
        sw_pending_add(&reader->inner, &score);
        i = syntax->nodes[i + 1].next - 1;
    }
}

void sw_repeat_inner_scores(sw_reader *reader, uint32_t first, uint32_t count)
{
    for (uint32_t i = 0; i < count; i++) {
        sw_pending score = reader->inner.items[first + i];
        sw_pending_add(&reader->inner, &score);
    }
}

/* Scheme without its marker, quote and outer parentheses. */
static sw_slice bare_scheme(sw_slice text)
{
    text = sw_slice_from(text, text.length > 1 && (text.data[1] == '\'' || text.data[1] == '@') ? 2 : 1);
    while (text.length > 0 && (text.data[0] == '(' || text.data[0] == ' ')) {
        text = sw_slice_from(text, 1);
    }
    while (text.length > 0 && text.data[text.length - 1] == ')') {
        text.length--;
    }
    return text;
}

/* What a command adds to the text: a variable with a text its text; \flat and \sharp in a markup a sign. */
static sw_slice text_of_command(const sw_reader *reader, sw_slice command, bool in_markup)
{
    static const sw_slice nothing = {"", 0};
    if (command.length < 2) {
        return nothing;
    }
    const sw_value *value =
        sw_lookup(reader, sw_names_find(reader->reading->names, sw_slice_from(command, 1)));
    if (value != NULL && value->kind == SW_VALUE_TEXT) {
        return sw_slice_of(sw_reading_name(reader->reading, value->text));
    }
    return !in_markup                        ? nothing
           : sw_slice_is(command, "\\flat")  ? sw_slice_of("-flat")
           : sw_slice_is(command, "\\sharp") ? sw_slice_of("-sharp")
                                             : nothing;
}

/* The text of one node, quotes included; `whole`: it is all there is, not a part of a markup. */
static sw_slice text_of_node(const sw_reader *reader, const sw_syntax *syntax, uint32_t node, bool whole)
{
    static const sw_slice nothing = {"", 0};
    sw_slice text = sw_syntax_slice(syntax, node);
    switch ((sw_node_kind)syntax->nodes[node].kind) {
    case SW_NODE_SCHEME:
    case SW_NODE_SCHEME_TEXT:
        return whole ? bare_scheme(text) : nothing; /* otherwise an argument of a markup command */
    case SW_NODE_COMMAND:
        return text_of_command(reader, text, !whole);
    case SW_NODE_STRING:
    case SW_NODE_WORD:
    case SW_NODE_MARKUP_WORD:
    case SW_NODE_LYRIC_WORD:
    case SW_NODE_NUMBER:
        return text;
    default:
        return nothing;
    }
}

/* Adds a part, without the quotes and backslashes of a string. */
static void add_part(sw_buffer *text, sw_slice part)
{
    bool quoted = part.length >= 2 && part.data[0] == '"';
    if (quoted) {
        part = (sw_slice){part.data + 1, part.length - 2};
    }
    bool sign = sw_slice_is(part, "-flat") || sw_slice_is(part, "-sharp");
    if (text->length > 0 && part.length > 0 && !sign) {
        sw_buffer_char(text, ' ');
    }
    for (size_t c = 0; c < part.length; c++) {
        c += quoted && part.data[c] == '\\' && c + 1 < part.length;
        sw_buffer_char(text, part.data[c]);
    }
}

/* The text of a markup without its commands, a string without its quotes, a word as it is. */
uint32_t sw_read_plain_text(sw_reader *reader, uint32_t file, uint32_t node)
{
    const sw_syntax *syntax = reader->reading->files[file].syntax;
    sw_buffer text = {0};
    uint32_t end = syntax->nodes[node].next;
    for (uint32_t i = node; i < end; i++) {
        if (is_score(syntax, i, end)) {
            i = syntax->nodes[i + 1].next - 1; /* its music is no text */
        } else {
            add_part(&text, text_of_node(reader, syntax, i, i == node));
        }
    }
    uint32_t name = sw_names_add(reader->reading->names, sw_buffer_slice(&text));
    sw_buffer_free(&text);
    return name;
}
