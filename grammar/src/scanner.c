/* The two things that regular tokens cannot say: where a Scheme expression ends, and how many arguments a
 * markup command takes. */
#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "markup_commands.h"
#include "tree_sitter/parser.h"

/* The order is that of `externals` in grammar.js. */
enum token {
    SCHEME_WHOLE,
    SCHEME_START,
    SCHEME_MIDDLE,
    SCHEME_END,
    MARKUP_TOKENS, /* MARKUP_NONE ... MARKUP_MUSIC of markup_commands.h follow */
    NEVER = MARKUP_TOKENS + MARKUP_KINDS
};

/* Open parentheses around each #{ that is open now, innermost last. */
enum { MAX_LEVELS = TREE_SITTER_SERIALIZATION_BUFFER_SIZE / 2 };
typedef struct scanner {
    uint16_t depths[MAX_LEVELS];
    uint16_t levels;
} scanner;

void *tree_sitter_stavewright_external_scanner_create(void)
{
    return calloc(1, sizeof(scanner));
}

void tree_sitter_stavewright_external_scanner_destroy(void *payload)
{
    free(payload);
}

unsigned tree_sitter_stavewright_external_scanner_serialize(void *payload, char *buffer)
{
    scanner *s = payload;
    memcpy(buffer, s->depths, s->levels * sizeof s->depths[0]);
    return s->levels * (unsigned)sizeof s->depths[0];
}

void tree_sitter_stavewright_external_scanner_deserialize(void *payload, const char *buffer, unsigned length)
{
    scanner *s = payload;
    s->levels = (uint16_t)(length / sizeof s->depths[0]);
    if (length > 0) {
        memcpy(s->depths, buffer, s->levels * sizeof s->depths[0]);
    }
}

static bool is_space(int32_t c)
{
    return c == ' ' || (c >= '\t' && c <= '\r');
}

static void advance(TSLexer *lexer)
{
    lexer->advance(lexer, false);
}

static void skip_string(TSLexer *lexer)
{
    advance(lexer);
    while (!lexer->eof(lexer) && lexer->lookahead != '"') {
        if (lexer->lookahead == '\\') {
            advance(lexer);
        }
        advance(lexer);
    }
    advance(lexer);
}

/* From behind the first character of #| or #! up to behind its end. */
static void skip_block_comment(TSLexer *lexer, int32_t mark)
{
    advance(lexer);
    int32_t before = 0;
    while (!lexer->eof(lexer) && !(before == mark && lexer->lookahead == '#')) {
        before = lexer->lookahead;
        advance(lexer);
    }
    advance(lexer);
}

static bool ends_atom(int32_t c)
{
    return is_space(c) || c == '(' || c == ')' || c == '"' || c == ';' || c == '{' || c == '}' || c == '[' ||
           c == ']';
}

static void skip_atom(TSLexer *lexer)
{
    while (!lexer->eof(lexer) && !ends_atom(lexer->lookahead)) {
        if (lexer->lookahead == '|') { /* |symbol with any character| */
            advance(lexer);
            while (!lexer->eof(lexer) && lexer->lookahead != '|') {
                advance(lexer);
            }
        }
        advance(lexer);
    }
}

/* Goes on through one datum, with `depth` parentheses open. At its end the token is `whole`; at a #{ it is
 * `part`, and the depth is kept for the time when the LilyPond in between has ended. */
static bool scan_datum(scanner *s, TSLexer *lexer, uint32_t depth, enum token whole, enum token part)
{
    for (;;) {
        if (lexer->eof(lexer)) {
            return false;
        }
        int32_t c = lexer->lookahead;
        bool complete = false; /* a datum has just ended */
        if (is_space(c)) {
            advance(lexer);
        } else if (c == ';') {
            while (!lexer->eof(lexer) && lexer->lookahead != '\n') {
                advance(lexer);
            }
        } else if (c == '(' || c == '[') {
            advance(lexer);
            depth++;
        } else if (c == ')' || c == ']') {
            if (depth == 0) {
                return false;
            }
            advance(lexer);
            depth--;
            complete = true;
        } else if (c == '"') {
            skip_string(lexer);
            complete = true;
        } else if (c == '\'' || c == '`') {
            advance(lexer);
        } else if (c == ',') {
            advance(lexer);
            if (lexer->lookahead == '@') {
                advance(lexer);
            }
        } else if (c == '#') {
            advance(lexer);
            c = lexer->lookahead;
            if (c == '{') {
                advance(lexer);
                if (s->levels == MAX_LEVELS || depth > UINT16_MAX) {
                    return false;
                }
                s->depths[s->levels++] = (uint16_t)depth;
                lexer->result_symbol = part;
                return true;
            }
            if (c == '|' || c == '!') {
                skip_block_comment(lexer, c);
            } else if (c == ';') {
                advance(lexer); /* the next datum is commented out; it is balanced all the same */
            } else if (c == '\'' || c == '`' || c == ',' || c == '(') {
                /* syntax quoting or a vector: what follows is the datum */
            } else if (c == '\\') { /* a character: #\a #\( #\space */
                advance(lexer);
                advance(lexer);
                skip_atom(lexer);
                complete = true;
            } else if (c == 't' ||
                       c == 'f') { /* #t #f #true #false: a letter run, so that `##f\p` ends before the \p */
                while (c >= 'a' && c <= 'z') {
                    advance(lexer);
                    c = lexer->lookahead;
                }
                complete = true;
            } else {
                skip_atom(lexer);
                complete = true;
            }
        } else if (c == '{' || c == '}') {
            if (depth == 0) {
                return false;
            }
            advance(lexer); /* braces are ordinary characters inside parentheses */
        } else {
            skip_atom(lexer);
            complete = true;
        }
        if (complete && depth == 0) {
            lexer->result_symbol = whole;
            return true;
        }
    }
}

static bool is_letter(int32_t c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c >= 0x80;
}

static int compare_names(const void *key, const void *row)
{
    return strcmp(key, ((const struct markup_command *)row)->name);
}

static bool scan_markup_command(TSLexer *lexer)
{
    char name[64];
    size_t length = 0;
    advance(lexer);
    while (is_letter(lexer->lookahead) ||
           ((lexer->lookahead == '-' || lexer->lookahead == '_') && length > 0)) {
        if (length + 1 < sizeof name) {
            name[length++] = lexer->lookahead < 0x80 ? (char)lexer->lookahead : '?';
        }
        advance(lexer);
    }
    name[length] = '\0';
    if (length == 0 || strcmp(name, "markup") == 0 || strcmp(name, "markuplist") == 0) {
        return false; /* the grammar's own words */
    }
    if (strcmp(name, "etc") == 0) { /* stands for all arguments that are missing in a definition */
        lexer->result_symbol = (TSSymbol)(MARKUP_TOKENS + MARKUP_NONE);
        return true;
    }
    const struct markup_command *found =
        bsearch(name, markup_commands, markup_command_count, sizeof markup_commands[0], compare_names);
    lexer->result_symbol = (TSSymbol)(MARKUP_TOKENS + (found == NULL ? MARKUP_UNKNOWN : found->kind));
    return true;
}

bool tree_sitter_stavewright_external_scanner_scan(void *payload, TSLexer *lexer, const bool *valid)
{
    scanner *s = payload;
    if (valid[NEVER]) {
        return false; /* error recovery: every token is 'valid', and a guess would swallow too much */
    }
    if (valid[SCHEME_WHOLE]) {
        return scan_datum(s, lexer, 0, SCHEME_WHOLE, SCHEME_START);
    }
    if (valid[SCHEME_END] && s->levels > 0) {
        uint16_t depth = s->depths[--s->levels];
        if (depth == 0) { /* the embedded LilyPond was the whole datum */
            lexer->mark_end(lexer);
            lexer->result_symbol = SCHEME_END;
            return true;
        }
        return scan_datum(s, lexer, depth, SCHEME_END, SCHEME_MIDDLE);
    }
    if (valid[MARKUP_TOKENS + MARKUP_UNKNOWN]) {
        while (is_space(lexer->lookahead)) {
            lexer->advance(lexer, true);
        }
        return lexer->lookahead == '\\' && scan_markup_command(lexer);
    }
    return false;
}
