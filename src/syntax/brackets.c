#include "syntax/brackets.h"

#include <stdlib.h>
#include <string.h>

/* What the characters mean. Only the modes that differ in their brackets are told apart. */
typedef enum mode {
    MUSIC,   /* all brackets count */
    FIGURES, /* > always closes: `->` is no accent */
    LYRICS,  /* a single < or > is a letter */
    MARKUP,  /* only braces */
    SCHEME
} mode;

typedef struct scanner {
    const char *bytes;
    uint32_t length;
    uint32_t at;
    uint32_t line; /* its number */
    uint32_t line_start;
    sw_brackets found;
    struct open_bracket {
        mode inside;
        uint32_t start;
    } * open; /* innermost last */
    size_t depth;
    size_t capacity;
    int next_mode;    /* of the next block, -1: that of the block around it */
    uint8_t next_use; /* of the next block */
    uint32_t
        early_string; /* the first string that ends in front of a letter in another line: there one begins */
} scanner;

static char at(const scanner *s, uint32_t ahead)
{
    return s->at + ahead < s->length ? s->bytes[s->at + ahead] : '\0';
}

static bool is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool is_blank(char c)
{
    return c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == '\f';
}

static mode mode_now(const scanner *s)
{
    return s->depth == 0 ? MUSIC : s->open[s->depth - 1].inside;
}

/* ---- brackets ---- */

static void add(scanner *s, sw_bracket_kind kind, bool opens, uint8_t use)
{
    uint32_t indent = 0;
    while (s->line_start + indent < s->at && is_blank(s->bytes[s->line_start + indent])) {
        indent++;
    }
    sw_brackets *list = &s->found;
    list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
    list->items[list->count++] = (sw_bracket){.start = s->at,
                                              .line = s->line,
                                              .indent = indent,
                                              .kind = (uint8_t)kind,
                                              .opens = opens,
                                              .own_line = s->line_start + indent == s->at,
                                              .use = use};
}

/* Of several on one line the first one tells enough. */
static void add_once_a_line(scanner *s, sw_bracket_kind kind)
{
    const sw_bracket *last = s->found.count == 0 ? NULL : &s->found.items[s->found.count - 1];
    if (last == NULL || last->kind != kind || last->start < s->line_start) {
        add(s, kind, false, SW_BLOCK_OF_MUSIC);
    }
}

static void open_bracket(scanner *s, sw_bracket_kind kind, mode inside, uint32_t width)
{
    add(s, kind, true, s->next_use);
    s->open = sw_grow(s->open, s->depth, &s->capacity, sizeof *s->open);
    s->open[s->depth++] = (struct open_bracket){inside, s->at};
    s->next_mode = -1;
    s->next_use = SW_BLOCK_OF_MUSIC;
    s->at += width;
}

static void open_block(scanner *s, sw_bracket_kind kind, uint32_t width)
{
    bool told = s->next_mode >= 0 && (s->next_mode != MARKUP || kind == SW_BRACE);
    open_bracket(s, kind, told ? (mode)s->next_mode : mode_now(s), width);
}

static void close_bracket(scanner *s, sw_bracket_kind kind, uint32_t width)
{
    add(s, kind, false, 0);
    s->depth -= s->depth > 0;
    s->at += width;
}

/* ---- what holds no brackets ---- */

static void skip_string(scanner *s)
{
    uint32_t start = s->at++;
    bool several_lines = false;
    while (s->at < s->length && s->bytes[s->at] != '"') {
        several_lines = several_lines || s->bytes[s->at] == '\n';
        s->at += s->bytes[s->at] == '\\' ? 2 : 1;
    }
    if (s->at >= s->length) {
        s->at = s->length;
        s->found.unfinished = s->early_string != UINT32_MAX ? s->early_string : start;
        return;
    }
    s->at++;
    if (several_lines && s->early_string == UINT32_MAX && is_letter(at(s, 0))) {
        s->early_string = start;
    }
}

static void skip_to(scanner *s, const char *end, uint32_t begin_width)
{
    uint32_t start = s->at;
    uint32_t width = (uint32_t)strlen(end);
    s->at += begin_width;
    while (s->at + width <= s->length && memcmp(s->bytes + s->at, end, width) != 0) {
        s->at++;
    }
    if (s->at + width > s->length) {
        s->found.unfinished = start;
        s->at = s->length;
    } else {
        s->at += width;
    }
}

static void skip_line(scanner *s)
{
    while (s->at < s->length && s->bytes[s->at] != '\n') {
        s->at++;
    }
}

/* ---- words ---- */

typedef struct word_meaning {
    const char *word;
    int mode; /* of the block behind it, -1: not told */
    sw_block_use use;
} word_meaning;

static const word_meaning meanings[] = {
    {"addlyrics", LYRICS, SW_BLOCK_OF_MUSIC},   {"book", -1, SW_BLOCK_OF_SCORES},
    {"bookpart", -1, SW_BLOCK_OF_SCORES},       {"chordmode", MUSIC, SW_BLOCK_OF_MUSIC},
    {"chords", MUSIC, SW_BLOCK_OF_MUSIC},       {"context", -1, SW_BLOCK_OF_SETTINGS},
    {"drummode", MUSIC, SW_BLOCK_OF_MUSIC},     {"drums", MUSIC, SW_BLOCK_OF_MUSIC},
    {"figuremode", FIGURES, SW_BLOCK_OF_MUSIC}, {"figures", FIGURES, SW_BLOCK_OF_MUSIC},
    {"header", MUSIC, SW_BLOCK_OF_SETTINGS},    {"layout", MUSIC, SW_BLOCK_OF_SETTINGS},
    {"lyricmode", LYRICS, SW_BLOCK_OF_MUSIC},   {"lyrics", LYRICS, SW_BLOCK_OF_MUSIC},
    {"lyricsto", LYRICS, SW_BLOCK_OF_MUSIC},    {"markup", MARKUP, SW_BLOCK_OF_MUSIC},
    {"markuplist", MARKUP, SW_BLOCK_OF_MUSIC},  {"midi", MUSIC, SW_BLOCK_OF_SETTINGS},
    {"notemode", MUSIC, SW_BLOCK_OF_MUSIC},     {"paper", MUSIC, SW_BLOCK_OF_SETTINGS},
    {"score", MUSIC, SW_BLOCK_OF_MUSIC},        {"with", MUSIC, SW_BLOCK_OF_SETTINGS},
};

static void read_command(scanner *s)
{
    uint32_t start = ++s->at;
    if (!is_letter(at(s, 0))) {
        s->at += s->at < s->length && s->bytes[s->at] != '"'; /* \< \> \( \\ ... */
        return;
    }
    while (is_letter(at(s, 0)) || (at(s, 0) == '-' && is_letter(at(s, 1)))) {
        s->at++;
    }
    sw_slice word = {s->bytes + start, s->at - start};
    bool line_begins = start - 1 == s->line_start;
    if (line_begins && (sw_slice_is(word, "score") || sw_slice_is(word, "version"))) {
        uint32_t end = s->at;
        s->at = start - 1;
        add(s, SW_NEW_TOP, false, SW_BLOCK_OF_SCORES);
        s->at = end;
    }
    for (size_t i = 0; i < sizeof meanings / sizeof meanings[0]; i++) {
        if (sw_slice_is(word, meanings[i].word)) {
            s->next_mode = meanings[i].mode;
            s->next_use = (uint8_t)meanings[i].use;
            return;
        }
    }
    if (s->next_mode != MARKUP) { /* `\markup \bold \column {`: still markup */
        s->next_mode = -1;
        s->next_use = SW_BLOCK_OF_MUSIC;
    }
}

static void read_word(scanner *s)
{
    uint32_t start = s->at;
    while (is_letter(at(s, 0)) || (at(s, 0) == '-' && is_letter(at(s, 1)))) {
        s->at++;
    }
    uint32_t behind = s->at;
    while (behind < s->length && (s->bytes[behind] == ' ' || s->bytes[behind] == '\t')) {
        behind++;
    }
    if (start == s->line_start && behind < s->length && s->bytes[behind] == '=' && mode_now(s) != MARKUP) {
        uint32_t end = s->at;
        s->at = start;
        add(s, SW_NEW_TOP, false, SW_BLOCK_OF_SETTINGS);
        s->at = end;
    }
    s->next_mode = s->next_mode == MARKUP ? -1 : s->next_mode; /* `\markup word` is finished */
}

/* # or $ in LilyPond: what begins behind it is Scheme. */
static void read_scheme(scanner *s)
{
    uint32_t begin = s->at++;
    while (s->at < s->length && strchr("'`,@#", s->bytes[s->at]) != NULL && at(s, 1) != '{' &&
           s->bytes[s->at] != '\0') {
        s->at++;
    }
    char c = at(s, 0);
    if (c == '(') {
        if (begin == s->line_start) {
            uint32_t here = s->at;
            s->at = begin;
            add(s, SW_NEW_TOP, false, SW_BLOCK_OF_MUSIC);
            s->at = here;
        }
        /* The mode that a command has announced is for the block behind this argument. */
        int announced = s->next_mode;
        uint8_t use = s->next_use;
        open_bracket(s, SW_PARENTHESIS, SCHEME, 1);
        s->next_mode = announced;
        s->next_use = use;
    } else if (c == '"') {
        skip_string(s);
    } else if (c == '#' && at(s, 1) == '{') {
        open_bracket(s, SW_HASH_BRACE, MUSIC, 2);
    } else {
        while (s->at < s->length && !is_blank(s->bytes[s->at]) &&
               strchr("{}()\"%", s->bytes[s->at]) == NULL) {
            s->at++;
        }
    }
}

/* ---- the modes ---- */

static void scan_in_scheme(scanner *s)
{
    char c = at(s, 0);
    char next = at(s, 1);
    if (c == '#' && next == '\\') { /* a character */
        s->at += 3;
        while (is_letter(at(s, 0))) {
            s->at++;
        }
    } else if (c == '#' && next == '{') {
        open_bracket(s, SW_HASH_BRACE, MUSIC, 2);
    } else if (c == '#' && next == '|') {
        skip_to(s, "|#", 2);
    } else if (c == '#' && next == '(' && s->at == s->line_start) { /* a new expression of the outer level */
        add(s, SW_NEW_TOP, false, SW_BLOCK_OF_MUSIC);
        s->at++;
    } else if (c == ';') {
        skip_line(s);
    } else if (c == '"') {
        skip_string(s);
    } else if (c == '(') {
        open_bracket(s, SW_PARENTHESIS, SCHEME, 1);
    } else if (c == ')') {
        close_bracket(s, SW_PARENTHESIS, 1);
    } else if (c == '\\' && s->at == s->line_start) {
        read_command(s);
    } else if (is_letter(c)) {
        read_word(s);
    } else {
        s->at++;
    }
}

/* < or > in LilyPond. */
static void scan_angle(scanner *s, mode now)
{
    char c = at(s, 0);
    bool twice = at(s, 1) == c;
    if (now == MARKUP || (!twice && now == LYRICS)) {
        s->at++;
    } else if (c == '<') {
        twice ? open_block(s, SW_DOUBLE_ANGLE, 2) : open_block(s, SW_ANGLE, 1);
    } else {
        close_bracket(s, twice ? SW_DOUBLE_ANGLE : SW_ANGLE, twice ? 2 : 1);
    }
}

static void scan_in_lilypond(scanner *s, mode now)
{
    char c = at(s, 0);
    if (c == '%') {
        if (at(s, 1) == '{') {
            skip_to(s, "%}", 2);
        } else {
            skip_line(s);
        }
    } else if (c == '"') {
        skip_string(s);
        s->next_mode = s->next_mode == MARKUP ? -1 : s->next_mode;
    } else if (c == '#' && at(s, 1) == '}') {
        close_bracket(s, SW_HASH_BRACE, 2);
    } else if (c == '#' || c == '$') {
        read_scheme(s);
    } else if (c == '\\') {
        read_command(s);
    } else if (c == '{') {
        open_block(s, SW_BRACE, 1);
    } else if (c == '}') {
        close_bracket(s, SW_BRACE, 1);
    } else if (c == '<' || c == '>') {
        scan_angle(s, now);
    } else if (is_letter(c)) {
        read_word(s);
    } else if (now == MUSIC && (c == '-' || c == '^' || c == '_') && strchr("+-!|>._^", at(s, 1)) != NULL) {
        s->at += 2; /* an articulation: `->` is an accent */
    } else if (c == '|' && now == MUSIC) {
        add_once_a_line(s, SW_MUSIC_ITEM);
        s->at++;
    } else {
        s->at++;
    }
}

/* Behind a parenthesis of Scheme that is not closed nothing is read as music any more. */
static void find_endless_scheme(scanner *s)
{
    size_t first = s->depth;
    while (first > 0 && s->open[first - 1].inside == SCHEME) {
        first--;
    }
    if (first < s->depth && s->found.unfinished == UINT32_MAX) {
        s->found.unfinished = s->open[first].start;
    }
}

sw_brackets sw_brackets_read(const sw_text *text)
{
    scanner s = {.bytes = text->bytes,
                 .length = text->length,
                 .found = {.unfinished = UINT32_MAX},
                 .line = 1,
                 .next_mode = -1,
                 .early_string = UINT32_MAX};
    while (s.at < s.length) {
        while (s.line < text->line_count && text->lines[s.line] <= s.at) {
            s.line_start = text->lines[s.line++];
        }
        mode now = mode_now(&s);
        if (now == SCHEME) {
            scan_in_scheme(&s);
        } else {
            scan_in_lilypond(&s, now);
        }
    }
    find_endless_scheme(&s);
    free(s.open);
    return s.found;
}
