#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "score/reader.h"
#include "score/with_blocks.h"

/* ---- cursors ---- */

sw_cursor sw_cursor_inside(const sw_reader *reader, uint32_t file, uint32_t node)
{
    const sw_syntax *syntax = reader->reading->files[file].syntax;
    return (sw_cursor){syntax, file, node + 1, syntax->nodes[node].next, NULL};
}

bool sw_cursor_more(sw_cursor *cursor)
{
    for (;;) {
        if (cursor->at >= cursor->end) {
            if (cursor->abbreviated == NULL) {
                return false;
            }
            *cursor = cursor->abbreviated->rest;
            continue;
        }
        uint32_t kind = cursor->syntax->nodes[cursor->at].kind;
        if (kind == SW_NODE_ERROR) {
            cursor->at++; /* what stands inside an error is read as if it stood beside it */
        } else if (kind == SW_NODE_COMMENT || kind == SW_NODE_MISSING) {
            cursor->at = cursor->syntax->nodes[cursor->at].next;
        } else {
            return true;
        }
    }
}

sw_node_kind sw_cursor_kind(const sw_cursor *cursor)
{
    return (sw_node_kind)cursor->syntax->nodes[cursor->at].kind;
}

const sw_node *sw_cursor_node(const sw_cursor *cursor)
{
    return &cursor->syntax->nodes[cursor->at];
}

sw_slice sw_cursor_text(const sw_cursor *cursor)
{
    return sw_syntax_slice(cursor->syntax, cursor->at);
}

void sw_cursor_next(sw_cursor *cursor)
{
    cursor->at = cursor->syntax->nodes[cursor->at].next;
}

bool sw_cursor_is_mark(sw_cursor *cursor, char mark)
{
    return sw_cursor_more(cursor) && sw_cursor_kind(cursor) == SW_NODE_PUNCTUATION &&
           sw_cursor_text(cursor).data[0] == mark;
}

/* ---- building ---- */

uint32_t sw_music_add(sw_reader *reader, sw_music_kind kind, uint32_t file, uint32_t start, uint32_t end)
{
    sw_reading *reading = reader->reading;
    reading->music =
        sw_grow(reading->music, reading->music_count, &reading->music_capacity, sizeof(sw_music));
    reading->music[reading->music_count] = (sw_music){
        .kind = (uint8_t)kind,
        .file = (uint16_t)file,
        .start = start,
        .end = end,
        .first = SW_NO_INDEX,
        .next = SW_NO_INDEX,
        .num = 1,
        .den = 1,
    };
    return (uint32_t)reading->music_count++;
}

sw_music *sw_music_at(const sw_reader *reader, uint32_t music)
{
    return &reader->reading->music[music];
}

void sw_set_origin(const sw_reader *reader, sw_music *music, uint32_t file, uint32_t start)
{
    bool called = reader->origin != SW_NO_INDEX;
    music->origin = called ? reader->origin : start;
    music->origin_file = (uint16_t)(called ? reader->origin_file : file);
}

void sw_children_add(sw_reader *reader, sw_children *children, uint32_t music)
{
    if (music == SW_NO_INDEX) {
        return;
    }
    if (children->count++ == 0) {
        children->first = music;
    } else {
        sw_music_at(reader, children->last)->next = music;
    }
    children->last = music;
}

void sw_mark_stands_for(sw_reader *reader, uint32_t mark, uint32_t other)
{
    if (other != SW_NO_INDEX && sw_music_at(reader, other)->kind == SW_MUSIC_MARK) {
        const sw_reading *reading = reader->reading;
        uint32_t meant = reading->music[other].name2; /* a variable may stand for another one */
        meant = meant != 0 ? meant : sw_names_add(reading->names, sw_music_slice(reading, other));
        sw_music_at(reader, mark)->check = (int8_t)(sw_music_mark_class(reading, other) + 1);
        sw_music_at(reader, mark)->name2 = meant;
    }
}

uint32_t sw_music_wrap(sw_reader *reader, sw_music_kind kind, const sw_value *where, uint32_t child,
                       bool is_free)
{
    uint32_t music = sw_music_add(reader, kind, where->file, where->start, where->end);
    sw_music *m = sw_music_at(reader, music);
    m->first = child;
    if (is_free && child != SW_NO_INDEX) {
        m->flags |= sw_music_at(reader, child)->flags & SW_MUSIC_FREE;
    }
    return music;
}

void sw_music_add_lyrics(sw_reader *reader, uint32_t music, uint32_t lyrics)
{
    while (music != SW_NO_INDEX && sw_music_at(reader, music)->next != SW_NO_INDEX) {
        music = sw_music_at(reader, music)->next;
    }
    if (music != SW_NO_INDEX && lyrics != SW_NO_INDEX && music != lyrics) {
        sw_music_at(reader, music)->next = lyrics;
    }
}

void sw_music_set_duration(sw_music *music, sw_duration duration)
{
    music->log = duration.log;
    music->dots = duration.dots;
    music->num = duration.factor_num;
    music->den = duration.factor_den;
}

static sw_value music_value(const sw_cursor *cursor, const sw_node *node, uint32_t music)
{
    return (sw_value){
        .kind = SW_VALUE_MUSIC, .music = music, .file = cursor->file, .start = node->start, .end = node->end};
}

/* ---- marks ---- */

static uint32_t add_mark(sw_reader *reader, const sw_cursor *cursor, uint32_t start, uint32_t end)
{
    return sw_music_add(reader, SW_MUSIC_MARK, cursor->file, start, end);
}

/* What a text such as `^"pizz."` says; 0 for every other mark. */
static uint32_t quoted_text(sw_reader *reader, sw_slice mark)
{
    const char *quote = mark.length > 2 ? memchr(mark.data, '"', mark.length - 1) : NULL;
    if (quote == NULL || mark.data[mark.length - 1] != '"') {
        return 0;
    }
    sw_buffer text = {0};
    for (const char *c = quote + 1; c < mark.data + mark.length - 1; c++) {
        c += *c == '\\';
        sw_buffer_char(&text, *c);
    }
    uint32_t name = sw_names_add(reader->reading->names, sw_buffer_slice(&text));
    sw_buffer_free(&text);
    return name;
}

/* The abbreviation that the item at the cursor uses; NULL: none. */
static const sw_value *abbreviation_at(const sw_reader *reader, const sw_cursor *cursor)
{
    sw_slice text = sw_cursor_text(cursor);
    if (sw_cursor_kind(cursor) != SW_NODE_COMMAND || text.data[0] != '\\') {
        return NULL;
    }
    const sw_value *value = sw_lookup(reader, sw_names_find(reader->reading->names, sw_slice_from(text, 1)));
    return value != NULL && value->kind == SW_VALUE_ABBREVIATION ? value : NULL;
}

/* True when the item at the cursor belongs to the note before it. */
static bool is_post_event(sw_reader *reader, const sw_cursor *cursor)
{
    /* An abbreviation may begin with another one; one that begins with itself stands for nothing. */
    const sw_value *abbreviation = abbreviation_at(reader, cursor);
    for (int steps = 0; abbreviation != NULL; steps++) {
        if (steps == SW_MAX_DEPTH) {
            return false;
        }
        cursor = abbreviation->items;
        abbreviation = abbreviation_at(reader, cursor);
    }
    sw_slice text = sw_cursor_text(cursor);
    switch (sw_cursor_kind(cursor)) {
    case SW_NODE_POST_EVENT:
        return true;
    case SW_NODE_MARKUP:
        return text.data[0] != '\\';
    case SW_NODE_PUNCTUATION:
        return text.data[0] == '-' || text.data[0] == '^' || text.data[0] == '_';
    case SW_NODE_COMMAND: {
        if (text.data[0] != '\\') {
            return true;
        }
        sw_slice name = {text.data + 1, text.length - 1};
        const sw_value *value = sw_lookup(reader, sw_names_find(reader->reading->names, name));
        if (value != NULL) {
            return value->kind == SW_VALUE_POST ||
                   (value->kind == SW_VALUE_FUNCTION && value->function->kind == SW_COMMAND_EVENT_FUNCTION);
        }
        const sw_command *command = sw_command_find(name);
        return (command != NULL &&
                (command->kind == SW_COMMAND_POST_EVENT || command->kind == SW_COMMAND_EVENT_FUNCTION)) ||
               sw_slice_is(name, "rest");
    }
    default:
        return false;
    }
}

void sw_read_post_events(sw_reader *reader, sw_cursor *cursor, uint32_t music)
{
    uint32_t last = SW_NO_INDEX;
    if (music != SW_NO_INDEX) { /* marks stand behind the notes of a chord */
        for (uint32_t child = sw_music_at(reader, music)->first; child != SW_NO_INDEX;
             child = sw_music_at(reader, child)->next) {
            last = child;
        }
    }
    while (sw_cursor_more(cursor) && is_post_event(reader, cursor)) {
        const sw_node *node = sw_cursor_node(cursor);
        uint32_t start = node->start;
        if (sw_cursor_kind(cursor) == SW_NODE_COMMAND && sw_slice_is(sw_cursor_text(cursor), "\\rest")) {
            if (music != SW_NO_INDEX) {
                sw_music *m = sw_music_at(reader, music);
                m->flags |= SW_MUSIC_AS_REST;
                if (m->first == SW_NO_INDEX) { /* `b4\rest`: part of the rest's own text */
                    m->end = node->end;
                }
            }
            sw_cursor_next(cursor);
            continue;
        }
        sw_value value;
        uint32_t word = 0;                                   /* `^arco`: a text of one word needs no quotes */
        if (sw_cursor_kind(cursor) == SW_NODE_PUNCTUATION) { /* a direction, then what it is for */
            sw_cursor_next(cursor);
            if (!sw_cursor_more(cursor)) {
                return;
            }
            word = sw_cursor_kind(cursor) == SW_NODE_WORD
                       ? sw_names_add(reader->reading->names, sw_cursor_text(cursor))
                       : 0;
            value = sw_read_item(reader, cursor);
        } else {
            bool stroke = sw_slice_is(sw_cursor_text(cursor), ":"); /* `c4 : 32` */
            value = sw_read_item(reader, cursor);
            if (stroke && sw_cursor_more(cursor) && sw_cursor_kind(cursor) == SW_NODE_NUMBER) {
                value.end = sw_cursor_node(cursor)->end;
                sw_music_at(reader, value.music)->end = value.end;
                sw_cursor_next(cursor);
            }
        }
        uint32_t mark = value.kind == SW_VALUE_POST ? value.music : SW_NO_INDEX;
        if (mark == SW_NO_INDEX || sw_music_at(reader, mark)->next != SW_NO_INDEX ||
            sw_music_at(reader, mark)->start != start) {
            uint32_t end = value.end > start ? value.end : node->end;
            mark = add_mark(reader, cursor, start, end);
            sw_mark_stands_for(reader, mark, value.kind == SW_VALUE_POST ? value.music : SW_NO_INDEX);
        }
        if (value.kind == SW_VALUE_POST || value.kind == SW_VALUE_TEXT) {
            sw_music_at(reader, mark)->name = value.text;
        } else if (value.kind != SW_VALUE_MUSIC) {
            sw_music_at(reader, mark)->name = word;
        }
        if (music == SW_NO_INDEX) {
            continue;
        }
        if (last == SW_NO_INDEX) {
            sw_music_at(reader, music)->first = mark;
        } else {
            sw_music_at(reader, last)->next = mark;
        }
        last = mark;
    }
}

/* ---- blocks ---- */

static bool can_carry_marks(uint8_t kind)
{
    return kind == SW_MUSIC_NOTE || kind == SW_MUSIC_DRUM || kind == SW_MUSIC_REST ||
           kind == SW_MUSIC_FULL_REST || kind == SW_MUSIC_SKIP || kind == SW_MUSIC_CHORD ||
           kind == SW_MUSIC_REPEAT_CHORD || kind == SW_MUSIC_BARE || kind == SW_MUSIC_LYRIC;
}

/* The node to which a post-event at this place belongs: the last note of a result such as that of \tweak. */
static uint32_t carrier(const sw_reader *reader, uint32_t music)
{
    for (int steps = 0; music != SW_NO_INDEX && steps < 100; steps++) {
        const sw_music *m = sw_music_at(reader, music);
        if (can_carry_marks(m->kind)) {
            return music;
        }
        if (m->kind != SW_MUSIC_TAG && m->kind != SW_MUSIC_UNCERTAIN) {
            return SW_NO_INDEX;
        }
        music = m->first;
    }
    return SW_NO_INDEX;
}

uint32_t sw_read_music(sw_reader *reader, sw_cursor *cursor)
{
    if (!sw_cursor_more(cursor)) {
        return SW_NO_INDEX;
    }
    sw_slice text = sw_cursor_text(cursor);
    bool scheme = text.data[0] == '#'; /* #4 alone is a number, never a note value */
    bool command = sw_cursor_kind(cursor) == SW_NODE_COMMAND;
    sw_value value = sw_read_item(reader, cursor);
    uint32_t music = SW_NO_INDEX;
    if (value.kind == SW_VALUE_MUSIC || value.kind == SW_VALUE_POST) {
        music = value.music;
    } else if (value.kind == SW_VALUE_DURATION ||
               (value.kind == SW_VALUE_NUMBER && value.number.has_value && !scheme)) {
        music = sw_read_bare_duration(reader, cursor, &value);
    } else if (value.kind == SW_VALUE_PITCH) {
        music = sw_read_note_of_pitch(reader, cursor, &value);
    } else if (value.kind == SW_VALUE_SCHEME && command) {
        uint32_t name = sw_names_add(reader->reading->names, sw_slice_from(text, 1));
        if (sw_lookup(reader, name) != NULL) { /* not one of the language, such as \stringTuning */
            sw_unresolved(reader, &value, name,
                          "it is computed in Scheme, which is not run; a note or note value that it may "
                          "stand for is missing");
        }
    }
    if (music != SW_NO_INDEX && value.kind != SW_VALUE_POST) {
        uint32_t target = carrier(reader, music);
        if (target != SW_NO_INDEX) {
            sw_read_post_events(reader, cursor, target);
        }
    }
    return music;
}

void sw_read_sequence(sw_reader *reader, sw_cursor *cursor, sw_children *children)
{
    while (sw_cursor_more(cursor)) {
        sw_node_kind kind = sw_cursor_kind(cursor);
        if (kind == SW_NODE_CHORD_END || kind == SW_NODE_SCHEME_TEXT) {
            sw_cursor_next(cursor);
            continue;
        }
        /* Inside a block an assignment is possible only in output definitions; `word =` is passed over as two
         * items. */
        uint32_t music = sw_read_music(reader, cursor);
        if (music == SW_NO_INDEX) {
            continue;
        }
        sw_music *m = sw_music_at(reader, music);
        if (m->kind == SW_MUSIC_MARK && m->next != SW_NO_INDEX) {
            continue; /* a mark of a variable that is already in another list */
        }
        sw_children_add(reader, children, music);
    }
}

/* `<< a \\ b \\ c >>` is `<< \context Bottom = "1" a \context Bottom = "2" b ... >>`; without separators the
 * items stand as they are. */
static void read_simultaneous(sw_reader *reader, sw_cursor *inside, sw_children *children)
{
    uint32_t separators = 0;
    for (sw_cursor look = *inside; sw_cursor_more(&look); sw_cursor_next(&look)) {
        separators += sw_cursor_kind(&look) == SW_NODE_VOICE_SEPARATOR;
    }
    if (separators == 0) {
        sw_read_sequence(reader, inside, children);
        return;
    }
    sw_names *names = reader->reading->names;
    uint32_t number = 0;
    while (sw_cursor_more(inside)) {
        sw_cursor part = *inside;
        part.end = part.at;
        while (sw_cursor_more(inside) && sw_cursor_kind(inside) != SW_NODE_VOICE_SEPARATOR) {
            sw_cursor_next(inside);
            part.end = inside->at;
        }
        if (sw_cursor_more(inside)) {
            sw_cursor_next(inside);
        }
        char id[16];
        int length = snprintf(id, sizeof id, "%u", ++number);
        sw_children voice = {0};
        uint32_t first = part.at;
        sw_read_sequence(reader, &part, &voice);
        if (voice.count == 0) {
            continue;
        }
        const sw_music *begin = sw_music_at(reader, voice.first);
        sw_value where = {.file = inside->file, .start = begin->start, .end = begin->end};
        where.start = inside->syntax->nodes[first].start;
        where.end = sw_music_at(reader, voice.last)->end;
        uint8_t free_flag = 0;
        for (uint32_t c = voice.first; c != SW_NO_INDEX; c = sw_music_at(reader, c)->next) {
            free_flag |= sw_music_at(reader, c)->flags & SW_MUSIC_FREE;
        }
        uint32_t inner = voice.first;
        if (voice.count > 1) {
            inner = sw_music_wrap(reader, SW_MUSIC_SIMULTANEOUS, &where, voice.first, true);
            sw_music_at(reader, inner)->flags |= free_flag;
        }
        uint32_t context = sw_music_wrap(reader, SW_MUSIC_CONTEXT, &where, inner, true);
        sw_set_with(reader, context, SW_NO_INDEX);
        sw_music_at(reader, context)->name = sw_names_add(names, sw_slice_of("Bottom"));
        sw_music_at(reader, context)->name2 = sw_names_add(names, (sw_slice){id, (size_t)length});
        sw_children_add(reader, children, context);
    }
}

static sw_value read_block(sw_reader *reader, sw_cursor *cursor, bool simultaneous)
{
    const sw_node *node = sw_cursor_node(cursor);
    sw_cursor inside = sw_cursor_inside(reader, cursor->file, cursor->at);
    sw_cursor_next(cursor);
    uint32_t music = sw_music_add(reader, simultaneous ? SW_MUSIC_SIMULTANEOUS : SW_MUSIC_SEQUENCE,
                                  cursor->file, node->start, node->end);
    if (reader->depth >= SW_MAX_DEPTH) {
        if (!reader->too_deep) {
            sw_findings_add(
                &reader->reading->findings, SW_ERROR, "nesting", cursor->file, node->start, node->start + 1,
                "blocks are nested more than %d deep; what stands inside is not read, here and in all "
                "other such places",
                SW_MAX_DEPTH);
        }
        reader->too_deep = true;
        return music_value(cursor, node, music);
    }
    reader->depth++;
    sw_children children = {0};
    if (simultaneous) {
        read_simultaneous(reader, &inside, &children);
    } else {
        sw_read_sequence(reader, &inside, &children);
    }
    reader->depth--;
    if (children.count > 0) {
        sw_music_at(reader, music)->first = children.first;
        uint8_t free_flag = 0;
        for (uint32_t c = children.first; c != SW_NO_INDEX && free_flag == 0;
             c = sw_music_at(reader, c)->next) {
            free_flag = sw_music_at(reader, c)->flags & SW_MUSIC_FREE;
        }
        sw_music_at(reader, music)->flags |= free_flag;
    }
    return music_value(cursor, node, music);
}

/* A block of another input mode, read in that mode. */
static sw_value read_in_mode(sw_reader *reader, sw_cursor *cursor, sw_mode mode, bool simultaneous)
{
    sw_mode outer = reader->mode;
    reader->mode = mode;
    sw_value value = read_block(reader, cursor, simultaneous);
    reader->mode = outer;
    return value;
}

/* ---- one item ---- */

static sw_value read_number(sw_reader *reader, sw_cursor *cursor)
{
    (void)reader;
    const sw_node *node = sw_cursor_node(cursor);
    sw_slice text = sw_cursor_text(cursor);
    sw_value value = {.kind = SW_VALUE_NUMBER,
                      .music = SW_NO_INDEX,
                      .number = {.duration = {.factor_num = 1, .factor_den = 1}},
                      .file = cursor->file,
                      .start = node->start,
                      .end = node->end};
    if (sw_word_duration(text, &value.number) != text.length) {
        value.number.has_value = false;
    }
    int64_t num = 0;
    int64_t den = 1;
    size_t at = 0;
    bool negative = text.length > 0 && text.data[0] == '-';
    at += negative ? 1 : 0;
    for (; at < text.length && text.data[at] >= '0' && text.data[at] <= '9' && num < 100000000000; at++) {
        num = num * 10 + (text.data[at] - '0');
    }
    if (at + 1 < text.length && text.data[at] == '/') {
        den = 0;
        for (at++; at < text.length && text.data[at] >= '0' && text.data[at] <= '9' && den < 100000000000;
             at++) {
            den = den * 10 + (text.data[at] - '0');
        }
    } else if (at + 1 < text.length && text.data[at] == '.' && text.data[at + 1] >= '0' &&
               text.data[at + 1] <= '9') {
        for (at++; at < text.length && text.data[at] >= '0' && text.data[at] <= '9' && den < 1000000; at++) {
            num = num * 10 + (text.data[at] - '0');
            den *= 10;
        }
    }
    value.rational = sw_rational_make(negative ? -num : num, den);
    sw_cursor_next(cursor);
    return value;
}

/* What a syllable prints: `_` in a word is a blank. */
static uint32_t plain_syllable(sw_reader *reader, const sw_cursor *cursor)
{
    sw_slice text = sw_cursor_text(cursor);
    if (sw_cursor_kind(cursor) != SW_NODE_LYRIC_WORD || memchr(text.data, '_', text.length) == NULL) {
        return sw_read_plain_text(reader, cursor->file, cursor->at);
    }
    sw_buffer plain = {0};
    for (size_t i = 0; i < text.length; i++) {
        sw_buffer_char(&plain, text.data[i] == '_' ? ' ' : text.data[i]);
    }
    uint32_t name = sw_names_add(reader->reading->names, sw_buffer_slice(&plain));
    sw_buffer_free(&plain);
    return name;
}

static sw_value read_lyric_word(sw_reader *reader, sw_cursor *cursor)
{
    const sw_node *node = sw_cursor_node(cursor);
    sw_slice text = sw_cursor_text(cursor);
    bool hyphen = node->kind == SW_NODE_LYRIC_WORD && (sw_slice_is(text, "--") || sw_slice_is(text, "__"));
    uint32_t plain = hyphen ? 0 : plain_syllable(reader, cursor);
    sw_cursor_next(cursor);
    uint32_t music = sw_music_add(reader, hyphen ? SW_MUSIC_SETTING : SW_MUSIC_LYRIC, cursor->file,
                                  node->start, node->end);
    if (!hyphen) {
        sw_music_at(reader, music)->name = plain;
        sw_word word = {.duration = {.factor_num = 1, .factor_den = 1}};
        sw_read_duration(reader, cursor, &word, music);
    }
    return music_value(cursor, node, music);
}

sw_value sw_read_item(sw_reader *reader, sw_cursor *cursor)
{
    const sw_node *node = sw_cursor_node(cursor);
    sw_value value = {.file = cursor->file, .start = node->start, .end = node->end, .music = SW_NO_INDEX};
    switch ((sw_node_kind)node->kind) {
    case SW_NODE_WORD:
        return sw_read_word(reader, cursor, false);
    case SW_NODE_NUMBER:
        return read_number(reader, cursor);
    case SW_NODE_CHORD:
        return sw_read_chord(reader, cursor);
    case SW_NODE_COMMAND:
        return sw_read_command(reader, cursor);
    case SW_NODE_BLOCK:
        return read_block(reader, cursor, false);
    case SW_NODE_SIMULTANEOUS:
        return read_block(reader, cursor, true);
    case SW_NODE_LYRIC_BLOCK:
        return read_in_mode(reader, cursor, SW_MODE_LYRICS, false);
    case SW_NODE_LYRIC_SIMULTANEOUS:
        return read_in_mode(reader, cursor, SW_MODE_LYRICS, true);
    case SW_NODE_CHORDNAME_BLOCK:
        return read_in_mode(reader, cursor, SW_MODE_CHORDS, false);
    case SW_NODE_CHORDNAME_SIMULTANEOUS:
        return read_in_mode(reader, cursor, SW_MODE_CHORDS, true);
    case SW_NODE_FIGURE_BLOCK:
        return read_in_mode(reader, cursor, SW_MODE_FIGURES, false);
    case SW_NODE_FIGURE_SIMULTANEOUS:
        return read_in_mode(reader, cursor, SW_MODE_FIGURES, true);
    case SW_NODE_FIGURES: {
        uint32_t music = sw_music_add(reader, SW_MUSIC_LYRIC, cursor->file, node->start, node->end);
        sw_word word = {.duration = {.factor_num = 1, .factor_den = 1}};
        sw_slice text = sw_cursor_text(cursor);
        const char *close = memrchr(text.data, '>', text.length);
        if (close != NULL) {
            sw_word_duration((sw_slice){close + 1, (size_t)(text.data + text.length - close - 1)}, &word);
        }
        sw_cursor_next(cursor);
        sw_read_duration(reader, cursor, &word, music);
        return music_value(cursor, node, music);
    }
    case SW_NODE_LYRIC_WORD:
        return read_lyric_word(reader, cursor);
    case SW_NODE_STRING:
    case SW_NODE_MARKUP:
    case SW_NODE_MARKUP_WORD:
    case SW_NODE_MARKUP_BLOCK:
        if (reader->mode == SW_MODE_LYRICS && node->kind != SW_NODE_MARKUP_WORD) {
            return read_lyric_word(reader, cursor); /* a quoted syllable */
        }
        value.kind = SW_VALUE_TEXT;
        value.text = sw_read_plain_text(reader, cursor->file, cursor->at);
        sw_read_markup_scores(reader, cursor->file, cursor->at);
        if (node->kind == SW_NODE_MARKUP && sw_cursor_text(cursor).data[0] != '\\') {
            value.kind = SW_VALUE_POST;
            value.music = add_mark(reader, cursor, node->start, node->end);
        }
        sw_cursor_next(cursor);
        return value;
    case SW_NODE_SCHEME:
    case SW_NODE_EMBEDDED:
        return sw_read_scheme(reader, cursor);
    case SW_NODE_POST_EVENT:
        value.kind = SW_VALUE_POST;
        value.text = quoted_text(reader, sw_cursor_text(cursor));
        value.music = add_mark(reader, cursor, node->start, node->end);
        sw_cursor_next(cursor);
        return value;
    case SW_NODE_BAR_CHECK:
        value.kind = SW_VALUE_MUSIC;
        value.music = sw_music_add(reader, SW_MUSIC_BAR_CHECK, cursor->file, node->start, node->end);
        sw_cursor_next(cursor);
        return value;
    default:
        sw_cursor_next(cursor);
        return value;
    }
}
