#include <pthread.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <tree_sitter/api.h>

#include "stavewright/syntax.h"
#include "syntax/foreign.h"

const TSLanguage *tree_sitter_stavewright(void);

static const char *const kind_names[SW_NODE_KINDS] = {
    [SW_NODE_OTHER] = "other",
    [SW_NODE_ERROR] = "ERROR",
    [SW_NODE_MISSING] = "MISSING",
    [SW_NODE_FILE] = "file",
    [SW_NODE_WORD] = "word",
    [SW_NODE_NUMBER] = "number",
    [SW_NODE_STRING] = "string",
    [SW_NODE_COMMAND] = "command",
    [SW_NODE_POST_EVENT] = "post_event",
    [SW_NODE_BAR_CHECK] = "bar_check",
    [SW_NODE_VOICE_SEPARATOR] = "voice_separator",
    [SW_NODE_PUNCTUATION] = "punctuation",
    [SW_NODE_SCHEME] = "scheme",
    [SW_NODE_EMBEDDED] = "embedded",
    [SW_NODE_SCHEME_TEXT] = "scheme_text",
    [SW_NODE_BLOCK] = "block",
    [SW_NODE_SIMULTANEOUS] = "simultaneous",
    [SW_NODE_CHORD] = "chord",
    [SW_NODE_CHORD_END] = "chord_end",
    [SW_NODE_LYRIC_BLOCK] = "lyric_block",
    [SW_NODE_LYRIC_SIMULTANEOUS] = "lyric_simultaneous",
    [SW_NODE_LYRIC_WORD] = "lyric_word",
    [SW_NODE_CHORDNAME_BLOCK] = "chordname_block",
    [SW_NODE_CHORDNAME_SIMULTANEOUS] = "chordname_simultaneous",
    [SW_NODE_CHORD_MODIFIER] = "chord_modifier",
    [SW_NODE_FIGURE_BLOCK] = "figure_block",
    [SW_NODE_FIGURE_SIMULTANEOUS] = "figure_simultaneous",
    [SW_NODE_FIGURES] = "figures",
    [SW_NODE_MARKUP] = "markup",
    [SW_NODE_MARKUP_BLOCK] = "markup_block",
    [SW_NODE_MARKUP_WORD] = "markup_word",
    [SW_NODE_COMMENT] = "comment",
};

/* The grammar's symbols by our kinds; filled by the first parse of all threads, and constant from then on. */
static uint8_t symbol_kinds[256];
static pthread_once_t symbol_kinds_filled = PTHREAD_ONCE_INIT;

static void fill_symbol_kinds(void)
{
    const TSLanguage *language = tree_sitter_stavewright();
    uint32_t count = ts_language_symbol_count(language);
    memset(symbol_kinds, SW_NODE_OTHER, sizeof symbol_kinds);
    for (uint32_t s = 0; s < count && s < 256; s++) {
        const char *name = ts_language_symbol_name(language, (TSSymbol)s);
        bool named = ts_language_symbol_type(language, (TSSymbol)s) == TSSymbolTypeRegular;
        if (!named && strcmp(name, "|") == 0) {
            continue;
        }
        for (uint8_t kind = SW_NODE_FILE; named && kind < SW_NODE_KINDS; kind++) {
            if (strcmp(name, kind_names[kind]) == 0) {
                symbol_kinds[s] = kind;
            }
        }
    }
}

static TSTree *parse(TSParser *parser, const sw_text *text)
{
    if (!ts_parser_set_language(parser, tree_sitter_stavewright())) {
        abort(); /* the grammar was generated for another version of the library: a mistake of the build */
    }
    return ts_parser_parse_string(parser, NULL, text->bytes, text->length);
}

static sw_node *add(sw_syntax *syntax, size_t *capacity, TSNode node, sw_node_kind kind)
{
    syntax->nodes = sw_grow(syntax->nodes, syntax->count, capacity, sizeof *syntax->nodes);
    sw_node *added = &syntax->nodes[syntax->count++];
    *added = (sw_node){ts_node_start_byte(node), ts_node_end_byte(node), 0, kind};
    if (kind == SW_NODE_ERROR || kind == SW_NODE_MISSING) {
        if (syntax->errors++ == 0) {
            syntax->first_error = syntax->count - 1;
        }
    }
    return added;
}

static void flatten(sw_syntax *syntax, TSNode root)
{
    pthread_once(&symbol_kinds_filled, fill_symbol_kinds);
    size_t capacity = syntax->text->length / 3 + 16; /* real scores have a node for 3.7 bytes */
    syntax->nodes = sw_alloc(capacity * sizeof *syntax->nodes);
    TSTreeCursor cursor = ts_tree_cursor_new(root);
    /* The open nodes, innermost last; a node that is not copied leaves its number out. */
    uint32_t *open = NULL;
    size_t open_capacity = 0;
    size_t depth = 0;
    bool more = true;
    while (more) {
        TSNode node = ts_tree_cursor_current_node(&cursor);
        TSSymbol symbol = ts_node_symbol(node);
        sw_node_kind kind = symbol == (TSSymbol)-1 ? SW_NODE_ERROR
                            : symbol < 256         ? (sw_node_kind)symbol_kinds[symbol]
                                                   : SW_NODE_OTHER;
        syntax->tree_nodes++;
        if (kind == SW_NODE_OTHER || ts_node_end_byte(node) == ts_node_start_byte(node)) {
            if (ts_node_is_missing(node)) {
                kind = SW_NODE_MISSING;
            } else if (kind != SW_NODE_FILE && kind != SW_NODE_SCHEME_TEXT) {
                kind = SW_NODE_OTHER;
            }
        }
        uint32_t index = UINT32_MAX;
        if (kind != SW_NODE_OTHER) {
            index = syntax->count;
            add(syntax, &capacity, node, kind);
        }
        if (ts_node_child_count(node) > 0 && ts_tree_cursor_goto_first_child(&cursor)) {
            open = sw_grow(open, depth, &open_capacity, sizeof *open);
            open[depth++] = index;
            continue;
        }
        if (index != UINT32_MAX) {
            syntax->nodes[index].next = syntax->count;
        }
        while (!ts_tree_cursor_goto_next_sibling(&cursor)) {
            if (!ts_tree_cursor_goto_parent(&cursor)) {
                more = false;
                break;
            }
            index = open[--depth];
            if (index != UINT32_MAX) {
                syntax->nodes[index].next = syntax->count;
            }
        }
    }
    free(open);
    ts_tree_cursor_delete(&cursor);
    syntax->nodes = sw_realloc(syntax->nodes, syntax->count * sizeof *syntax->nodes);
    /* The file node covers all bytes, white space at both ends included; an error can take the root's place.
     */
    syntax->nodes[0].start = 0;
    syntax->nodes[0].end = syntax->text->length;
    syntax->nodes[0].kind = SW_NODE_FILE;
}

/* The parser library (0.20) loses track of its memory when more than 65,535 brackets are open at the end of a
 * text. Real scores have some twenty. */
enum { MOST_OPEN_BRACKETS = 60000 };

static bool is_too_deep(const sw_text *text)
{
    uint32_t open = 0;
    for (uint32_t i = 0; i < text->length && text->length > MOST_OPEN_BRACKETS; i++) {
        char c = text->bytes[i];
        if (c == '{' || (c == '<' && (i == 0 || text->bytes[i - 1] != '\\'))) {
            if (++open > MOST_OPEN_BRACKETS) {
                return true;
            }
        } else if ((c == '}' || c == '>') && open > 0) {
            open--;
        }
    }
    return false;
}

/* One error from beginning to end. */
static void give_up(sw_syntax *syntax)
{
    syntax->nodes = sw_alloc(2 * sizeof *syntax->nodes);
    syntax->nodes[0] = (sw_node){0, syntax->text->length, 2, SW_NODE_FILE};
    syntax->nodes[1] = (sw_node){0, syntax->text->length, 2, SW_NODE_ERROR};
    syntax->count = 2;
    syntax->tree_nodes = 2;
    syntax->errors = 1;
    syntax->first_error = 1;
}

sw_syntax *sw_syntax_parse(const sw_text *text)
{
    sw_syntax *syntax = sw_alloc_zero(1, sizeof *syntax);
    syntax->text = text;
    if (is_too_deep(text) || sw_bytes_refusal(text) != NULL) { /* the parser takes minutes for a picture */
        give_up(syntax);
        return syntax;
    }
    TSParser *parser = ts_parser_new();
    TSTree *tree = parse(parser, text);
    flatten(syntax, ts_tree_root_node(tree));
    ts_tree_delete(tree);
    ts_parser_delete(parser);
    return syntax;
}

sw_syntax *sw_syntax_parse_inside(const sw_text *text, sw_node_kind block)
{
    const char *opening = block == SW_NODE_LYRIC_BLOCK       ? "\\lyricmode{"
                          : block == SW_NODE_CHORDNAME_BLOCK ? "\\chordmode{"
                          : block == SW_NODE_FIGURE_BLOCK    ? "\\figuremode{"
                                                             : NULL;
    if (opening == NULL || sw_bytes_refusal(text) != NULL) {
        return sw_syntax_parse(text);
    }
    sw_buffer whole = {0};
    sw_buffer_string(&whole, opening);
    sw_buffer_append(&whole, (sw_slice){text->bytes, text->length});
    sw_buffer_string(&whole, "\n}");
    sw_text wrapped = *text;
    wrapped.bytes = whole.data;
    wrapped.length = (uint32_t)whole.length;
    sw_syntax *syntax = sw_syntax_parse(&wrapped);
    sw_node *nodes = syntax->nodes;
    enum { AROUND = 2 }; /* the command and the block stand before what is inside */
    bool closed = syntax->count > AROUND && nodes[AROUND].kind == block &&
                  nodes[AROUND].next == syntax->count && nodes[AROUND].end == wrapped.length;
    sw_buffer_free(&whole);
    if (!closed) { /* the text has brackets without a partner */
        sw_syntax_free(syntax);
        return sw_syntax_parse(text);
    }
    uint32_t shift = (uint32_t)strlen(opening);
    for (uint32_t i = AROUND + 1; i < syntax->count; i++) {
        const sw_node *n = &nodes[i];
        nodes[i - AROUND] = (sw_node){n->start - shift, n->end - shift, n->next - AROUND, n->kind};
    }
    syntax->count -= AROUND;
    syntax->first_error -= syntax->errors > 0 ? AROUND : 0;
    syntax->text = text;
    nodes[0].end = text->length;
    nodes[0].next = syntax->count;
    return syntax;
}

sw_syntax *sw_syntax_share(const sw_syntax *other, const sw_text *text)
{
    sw_syntax *syntax = sw_alloc(sizeof *syntax);
    *syntax = *other;
    syntax->text = text;
    syntax->shared = true;
    return syntax;
}

void sw_syntax_free(sw_syntax *syntax)
{
    if (syntax == NULL) {
        return;
    }
    if (!syntax->shared) {
        free(syntax->nodes);
    }
    free(syntax);
}

sw_slice sw_syntax_slice(const sw_syntax *syntax, uint32_t node)
{
    const sw_node *n = &syntax->nodes[node];
    return (sw_slice){syntax->text->bytes + n->start, n->end - n->start};
}

const char *sw_node_kind_name(sw_node_kind kind)
{
    return kind < SW_NODE_KINDS ? kind_names[kind] : "";
}

double sw_syntax_bare_parse(const sw_text *text)
{
    if (is_too_deep(text)) {
        return 0;
    }
    struct timespec begin;
    struct timespec end;
    TSParser *parser = ts_parser_new();
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &begin); /* processor time: other programs must not count */
    TSTree *tree = parse(parser, text);
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &end);
    ts_tree_delete(tree);
    ts_parser_delete(parser);
    return (double)(end.tv_sec - begin.tv_sec) + 1e-9 * (double)(end.tv_nsec - begin.tv_nsec);
}
