/* Texts that are no LilyPond at all: a picture, a letter, a program's source. They would be read as music, as
 * any letter from a to g is a note.
 *
 * The measure: words and strings where the language has no place for them, against commands of the language,
 * notes and assignments. Among some 7000 real sources no score comes near the limits: for one command of the
 * language there are at most five such words; of prose there are fifty. */
#include <string.h>

#include "stavewright/syntax.h"
#include "syntax/commands.h"
#include "syntax/drum_names.h"
#include "syntax/foreign.h"
#include "syntax/note_names.h"

enum {
    FEW = 4,             /* stray words that say nothing yet: somebody is typing */
    STRAY_A_COMMAND = 8, /* stray words for one command of the language */
    CLEAR = 300, /* nodes after which it is clear what a text is, when it has at least as many commands as
                    stray words */
    FITTING_A_STRAY = 4, /* notes and assignments for one stray word */
    TEXT_A_CONTROL = 100 /* bytes of a text for one control character */
};

typedef struct tally {
    uint32_t commands; /* of the language */
    uint32_t fitting;  /* notes with a duration or octave, and assignments */
    uint32_t stray;
} tally;

/* ---- bytes ---- */

const char *sw_bytes_refusal(const sw_text *text)
{
    if (text->length > 0 && memchr(text->bytes, '\0', text->length) != NULL) {
        bool wide = text->length > 1 && ((text->bytes[0] == '\xff' && text->bytes[1] == '\xfe') ||
                                         (text->bytes[0] == '\xfe' && text->bytes[1] == '\xff'));
        return wide ? "it is coded in UTF-16, and the language wants UTF-8"
                    : "it holds bytes that no text has";
    }
    uint32_t controls = 0;
    for (uint32_t i = 0; i < text->length; i++) {
        unsigned char c = (unsigned char)text->bytes[i];
        if (c >= ' ') {
            continue;
        }
        bool white = (c >= '\t' && c <= '\r') || c == '\x1a';
        controls += !white;
    }
    return controls > text->length / TEXT_A_CONTROL + FEW ? "it holds bytes that no text has" : NULL;
}

/* ---- words ---- */

/* Commands that are no functions and stand in no table of them. */
static bool is_keyword(sw_slice name)
{
    static const char *const keywords[] = {
        "addlyrics", "book",       "bookpart", "change", "chordmode", "chords", "context",   "drummode",
        "drums",     "figuremode", "figures",  "header", "include",   "layout", "lyricmode", "lyrics",
        "lyricsto",  "markup",     "midi",     "new",    "override",  "paper",  "repeat",    "revert",
        "score",     "set",        "tempo",    "unset",  "version",   "with"};
    for (size_t i = 0; i < sizeof keywords / sizeof keywords[0]; i++) {
        if (keywords[i][0] == name.data[0] && sw_slice_is(name, keywords[i])) {
            return true;
        }
    }
    return false;
}

static bool is_of_the_language(sw_slice command)
{
    sw_slice name = {command.data + 1, command.length - 1};
    return command.length > 2 && command.data[0] == '\\' &&
           (is_keyword(name) || sw_command_find(name) != NULL);
}

static bool is_drum(sw_slice name)
{
    size_t i = 0;
    while (i < sw_drum_name_count && !sw_slice_is(name, sw_drum_names[i].name)) {
        i++;
    }
    return i < sw_drum_name_count;
}

/* True for a note or rest of any input language, or a drum, whatever stands behind its name. */
static bool is_note(sw_slice word, bool *exact)
{
    size_t length = 0;
    while (length < word.length && strchr("0123456789',!?*\\", word.data[length]) == NULL) {
        length++;
    }
    *exact = length < word.length;
    if (length == 1 && strchr("rsqR", word.data[0]) != NULL) {
        return true;
    }
    for (size_t l = 0; l < sw_language_count; l++) {
        for (size_t i = 0; i < sw_languages[l].count; i++) {
            const char *name = sw_languages[l].notes[i].name;
            if (name[0] == word.data[0] && sw_slice_is((sw_slice){word.data, length}, name)) {
                return true;
            }
        }
    }
    return is_drum((sw_slice){word.data, length});
}

/* The character before a node, or behind it, that is no white space; NUL: none. */
static char neighbour(const sw_text *text, const sw_node *node, bool behind)
{
    uint32_t at = behind ? node->end : node->start;
    while (behind ? at < text->length : at > 0) {
        char c = behind ? text->bytes[at++] : text->bytes[--at];
        if (strchr(" \t\r\n", c) == NULL) {
            return c;
        }
    }
    return '\0';
}

static bool holds_any_text(sw_node_kind kind)
{
    return kind == SW_NODE_SCHEME || kind == SW_NODE_LYRIC_BLOCK || kind == SW_NODE_LYRIC_SIMULTANEOUS ||
           kind == SW_NODE_MARKUP || kind == SW_NODE_MARKUP_BLOCK || kind == SW_NODE_CHORDNAME_BLOCK ||
           kind == SW_NODE_CHORDNAME_SIMULTANEOUS || kind == SW_NODE_FIGURE_BLOCK ||
           kind == SW_NODE_FIGURE_SIMULTANEOUS;
}

static void count_text(const sw_syntax *syntax, uint32_t index, sw_node_kind before, tally *t)
{
    const sw_node *node = &syntax->nodes[index];
    bool exact = false;
    if (neighbour(syntax->text, node, true) == '=') {
        t->fitting++;
    } else if (node->kind == SW_NODE_WORD && is_note(sw_syntax_slice(syntax, index), &exact)) {
        t->fitting += exact; /* a lone `a` is an English word, too */
    } else {
        char c = neighbour(syntax->text, node, false);
        bool argument =
            before == SW_NODE_COMMAND || before == SW_NODE_SCHEME || (c != '\0' && strchr("=.-^_", c));
        t->stray += !argument;
    }
}

static tally count(const sw_syntax *syntax)
{
    tally t = {0};
    sw_node_kind before = SW_NODE_FILE;
    for (uint32_t i = 1; i < syntax->count;) {
        sw_node_kind kind = (sw_node_kind)syntax->nodes[i].kind;
        if (kind == SW_NODE_COMMAND) {
            t.commands += is_of_the_language(sw_syntax_slice(syntax, i));
        } else if (kind == SW_NODE_WORD || kind == SW_NODE_STRING) {
            count_text(syntax, i, before, &t);
        }
        before = kind == SW_NODE_COMMENT ? before : kind;
        if (i >= CLEAR && t.stray <= t.commands) {
            break;
        }
        i = holds_any_text(kind) ? syntax->nodes[i].next : i + 1;
    }
    return t;
}

char *sw_syntax_refusal(const sw_syntax *syntax)
{
    /* Refused bytes have not been parsed: see sw_syntax_parse. */
    bool parsed = syntax->count != 2 || syntax->nodes[1].kind != SW_NODE_ERROR;
    const char *reason = parsed ? NULL : sw_bytes_refusal(syntax->text);
    if (reason == NULL) {
        tally t = count(syntax);
        bool foreign =
            t.stray >= FEW && t.stray > STRAY_A_COMMAND * t.commands && FITTING_A_STRAY * t.stray > t.fitting;
        reason = foreign ? "hardly a word in it belongs to the language" : NULL;
    }
    sw_buffer refusal = {0};
    if (reason != NULL) {
        sw_buffer_format(&refusal, "%s: this is no LilyPond source: %s; name a .ly or .ily file",
                         syntax->text->path, reason);
    }
    return refusal.data;
}
