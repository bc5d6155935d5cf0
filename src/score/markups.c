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

/* The text of a markup without its commands, a string without its quotes, a word as it is. */
uint32_t sw_read_plain_text(sw_reader *reader, uint32_t file, uint32_t node)
{
    const sw_syntax *syntax = reader->reading->files[file].syntax;
    sw_buffer text = {0};
    uint32_t end = syntax->nodes[node].next;
    for (uint32_t i = node; i < end; i++) {
        if (is_score(syntax, i, end)) {
            i = syntax->nodes[i + 1].next - 1; /* its music is no text */
            continue;
        }
        sw_slice part = sw_syntax_slice(syntax, i);
        uint32_t kind = syntax->nodes[i].kind;
        bool is_quoted = false;
        if (kind == SW_NODE_SCHEME || kind == SW_NODE_SCHEME_TEXT) {
            if (node != i) {
                continue; /* an argument of a markup command */
            }
            size_t skip = part.length > 1 && (part.data[1] == '\'' || part.data[1] == '@') ? 2 : 1;
            part = (sw_slice){part.data + skip, part.length - skip};
            while (part.length > 0 && (part.data[0] == '(' || part.data[0] == ' ')) {
                part = (sw_slice){part.data + 1, part.length - 1};
            }
            while (part.length > 0 && part.data[part.length - 1] == ')') {
                part.length--;
            }
        } else if (kind == SW_NODE_COMMAND) {
            const sw_value *value =
                part.length > 1 ? sw_lookup(reader, sw_names_find(reader->reading->names,
                                                                  (sw_slice){part.data + 1, part.length - 1}))
                                : NULL;
            const char *sign = sw_slice_is(part, "\\flat")    ? "-flat"
                               : sw_slice_is(part, "\\sharp") ? "-sharp"
                                                              : NULL;
            if (value != NULL && value->kind == SW_VALUE_TEXT) {
                part = sw_slice_of(sw_reading_name(reader->reading, value->text));
            } else if (sign != NULL && node != i) {
                sw_buffer_string(&text, sign);
                continue;
            } else {
                continue;
            }
        } else if (kind != SW_NODE_STRING && kind != SW_NODE_WORD && kind != SW_NODE_MARKUP_WORD &&
                   kind != SW_NODE_LYRIC_WORD && kind != SW_NODE_NUMBER) {
            continue;
        }
        if (part.length >= 2 && part.data[0] == '"') {
            part = (sw_slice){part.data + 1, part.length - 2};
            is_quoted = true;
        }
        if (text.length > 0 && part.length > 0) {
            sw_buffer_char(&text, ' ');
        }
        for (size_t c = 0; c < part.length; c++) {
            if (is_quoted && part.data[c] == '\\' && c + 1 < part.length) {
                c++;
            }
            sw_buffer_char(&text, part.data[c]);
        }
    }
    uint32_t name = sw_names_add(reader->reading->names, sw_buffer_slice(&text));
    sw_buffer_free(&text);
    return name;
}
