/* Reads the arguments of a command by its signature. */
#include <ctype.h>
#include <string.h>

#include "score/reader.h"

static sw_value absent(const sw_cursor *cursor)
{
    return (sw_value){.kind = SW_VALUE_NONE, .music = SW_NO_INDEX, .file = cursor->file};
}

static bool is_default(const sw_cursor *cursor)
{
    return sw_cursor_kind(cursor) == SW_NODE_COMMAND && sw_slice_is(sw_cursor_text(cursor), "\\default");
}

/* The variable that a command at the cursor names, if it is one. */
static const sw_value *variable_at(const sw_reader *reader, const sw_cursor *cursor)
{
    sw_slice text = sw_cursor_text(cursor);
    if (sw_cursor_kind(cursor) != SW_NODE_COMMAND || text.length < 2 || text.data[0] != '\\') {
        return NULL;
    }
    return sw_lookup(reader,
                     sw_names_find(reader->reading->names, (sw_slice){text.data + 1, text.length - 1}));
}

static bool is_note_word(const sw_reader *reader, const sw_cursor *cursor)
{
    return sw_cursor_kind(cursor) == SW_NODE_WORD &&
           sw_note_table_find(&reader->notes, sw_word_decode(sw_cursor_text(cursor)).name) != NULL;
}

/* A word that is music in the present mode: a note, drum or rest. */
static bool is_music_word(const sw_reader *reader, const sw_cursor *cursor)
{
    if (sw_cursor_kind(cursor) != SW_NODE_WORD) {
        return false;
    }
    sw_slice name = sw_word_decode(sw_cursor_text(cursor)).name;
    return (name.length == 1 && memchr("rRsq", name.data[0], 4) != NULL) ||
           (reader->mode == SW_MODE_DRUMS ? sw_drum_find(reader, name) != 0 : is_note_word(reader, cursor));
}

/* A pitch: note name and octave marks, no duration. The node that reading a note would make is not wanted. */
static sw_value read_pitch(sw_reader *reader, sw_cursor *cursor)
{
    if (sw_cursor_kind(cursor) != SW_NODE_WORD) {
        sw_value given = sw_read_item(reader, cursor);
        uint32_t music = given.kind == SW_VALUE_MUSIC ? given.music : SW_NO_INDEX;
        if (music != SW_NO_INDEX && sw_music_at(reader, music)->kind == SW_MUSIC_REFERENCE) {
            music = sw_music_at(reader, music)->first;
        }
        if (music != SW_NO_INDEX && sw_music_at(reader, music)->kind == SW_MUSIC_NOTE) { /* `target = a,` */
            given.kind = SW_VALUE_PITCH;
            given.pitch = sw_music_at(reader, music)->pitch;
        }
        return given;
    }
    const sw_node *node = sw_cursor_node(cursor);
    sw_word word = sw_word_decode(sw_cursor_text(cursor));
    const sw_note_name *name = sw_note_table_find(&reader->notes, word.name);
    sw_value value = {.kind = SW_VALUE_SYMBOL,
                      .music = SW_NO_INDEX,
                      .file = cursor->file,
                      .start = node->start,
                      .end = node->end};
    sw_cursor_next(cursor);
    if (name == NULL) {
        value.text = sw_names_add(reader->reading->names, word.name);
        return value;
    }
    while (sw_cursor_is_mark(cursor, '\'') || sw_cursor_is_mark(cursor, ',')) {
        sw_slice marks = sw_cursor_text(cursor);
        word.octave_marks += (int)marks.length * (marks.data[0] == '\'' ? 1 : -1);
        value.end = sw_cursor_node(cursor)->end;
        sw_cursor_next(cursor);
    }
    value.kind = SW_VALUE_PITCH;
    value.pitch = (sw_pitch){name->step, sw_pitch_octave(word.octave_marks - 1), name->alter};
    return value;
}

/* A text argument. In lyrics a string would otherwise be a syllable. */
static sw_value read_text(sw_reader *reader, sw_cursor *cursor)
{
    const sw_node *node = sw_cursor_node(cursor);
    switch ((sw_node_kind)node->kind) {
    case SW_NODE_STRING:
    case SW_NODE_MARKUP:
    case SW_NODE_LYRIC_WORD:
    case SW_NODE_WORD: {
        sw_value value = {.kind = SW_VALUE_TEXT,
                          .music = SW_NO_INDEX,
                          .text = sw_read_plain_text(reader, cursor->file, cursor->at),
                          .file = cursor->file,
                          .start = node->start,
                          .end = node->end};
        sw_read_markup_scores(reader, cursor->file, cursor->at);
        sw_cursor_next(cursor);
        return value;
    }
    default:
        return sw_read_item(reader, cursor);
    }
}

static bool is_symbol(const sw_cursor *cursor)
{
    sw_node_kind kind = sw_cursor_kind(cursor);
    return kind == SW_NODE_WORD || kind == SW_NODE_STRING || kind == SW_NODE_NUMBER;
}

/* One word of a list or path. In `full,part` the comma looks like an octave mark and belongs to the first
 * word's node: it is taken off, and *listed is set. */
static uint32_t read_symbol(sw_reader *reader, sw_cursor *cursor, bool *listed)
{
    sw_names *names = reader->reading->names;
    bool word = sw_cursor_kind(cursor) == SW_NODE_WORD;
    uint32_t text = sw_read_plain_text(reader, cursor->file, cursor->at);
    sw_cursor_next(cursor);
    sw_slice whole = sw_slice_of(sw_names_text(names, text));
    *listed = word && whole.length > 1 && whole.data[whole.length - 1] == ',';
    return *listed ? sw_names_add(names, (sw_slice){whole.data, whole.length - 1}) : text;
}

/* `name`, `Context.property`, `a,b,c`, `1,2`, #'name, #'(a b), "name": becomes a word or a space-separated
 * list. */
static sw_value read_symbols(sw_reader *reader, sw_cursor *cursor)
{
    if (!is_symbol(cursor)) {
        sw_value value = read_text(reader, cursor);
        value.kind = value.kind == SW_VALUE_TEXT ? SW_VALUE_SYMBOL : value.kind;
        return value;
    }
    sw_names *names = reader->reading->names;
    const sw_node *node = sw_cursor_node(cursor);
    sw_value value = {.kind = SW_VALUE_SYMBOL,
                      .music = SW_NO_INDEX,
                      .file = cursor->file,
                      .start = node->start,
                      .end = node->end};
    bool listed;
    value.text = read_symbol(reader, cursor, &listed);
    while (sw_cursor_more(cursor)) {
        sw_cursor after = *cursor;
        bool list = listed;
        if (!listed) {
            if (!sw_cursor_is_mark(cursor, '.') && !sw_cursor_is_mark(cursor, ',')) {
                break;
            }
            list = sw_cursor_text(cursor).data[0] == ',';
            sw_cursor_next(&after);
        }
        if (!sw_cursor_more(&after) || !is_symbol(&after)) {
            break;
        }
        value.end = sw_cursor_node(&after)->end;
        uint32_t more = read_symbol(reader, &after, &listed);
        sw_buffer joined = {0};
        sw_buffer_format(&joined, "%s%s%s", sw_names_text(names, value.text), list ? " " : ".",
                         sw_names_text(names, more));
        value.text = sw_names_add(names, sw_buffer_slice(&joined));
        sw_buffer_free(&joined);
        *cursor = after;
    }
    return value;
}

/* `3,2` or #'(3 2): the text of the list. */
static sw_value read_number_list(sw_reader *reader, sw_cursor *cursor)
{
    if (sw_cursor_kind(cursor) != SW_NODE_NUMBER) {
        return sw_read_item(reader, cursor);
    }
    sw_buffer list = {0};
    const sw_node *first = sw_cursor_node(cursor);
    sw_value value = {
        .kind = SW_VALUE_SYMBOL, .music = SW_NO_INDEX, .file = cursor->file, .start = first->start};
    while (sw_cursor_more(cursor) && sw_cursor_kind(cursor) == SW_NODE_NUMBER) {
        if (list.length > 0) {
            sw_buffer_char(&list, ' ');
        }
        sw_buffer_append(&list, sw_cursor_text(cursor));
        value.end = sw_cursor_node(cursor)->end;
        sw_cursor_next(cursor);
        if (!sw_cursor_is_mark(cursor, ',')) {
            break;
        }
        sw_cursor_next(cursor);
    }
    value.text = sw_names_add(reader->reading->names, sw_buffer_slice(&list));
    sw_buffer_free(&list);
    return value;
}

/* `$part` in the body of a function: Scheme, but music. */
static bool is_music_variable(const sw_reader *reader, sw_slice text)
{
    if (text.length < 2) {
        return false;
    }
    sw_slice name = {text.data + 1, text.length - 1};
    const sw_value *value = sw_lookup(reader, sw_names_find(reader->reading->names, name));
    return value != NULL && value->kind == SW_VALUE_MUSIC;
}

/* Whether the item at the cursor, which may name a variable, is music. */
static bool is_music(const sw_reader *reader, const sw_cursor *cursor, const sw_value *variable)
{
    sw_node_kind kind = sw_cursor_kind(cursor);
    if (kind == SW_NODE_SCHEME) {
        return is_music_variable(reader, sw_cursor_text(cursor));
    }
    if (kind != SW_NODE_COMMAND) {
        return is_music_word(reader, cursor) || kind == SW_NODE_EMBEDDED ||
               (kind >= SW_NODE_BLOCK && kind <= SW_NODE_FIGURES && kind != SW_NODE_CHORD_END);
    }
    if (variable != NULL) {
        return variable->kind == SW_VALUE_MUSIC ||
               (variable->kind == SW_VALUE_FUNCTION && variable->function->kind == SW_COMMAND_MUSIC_FUNCTION);
    }
    const sw_command *command = sw_command_find(sw_slice_from(sw_cursor_text(cursor), 1));
    return command == NULL || command->kind == SW_COMMAND_MUSIC_FUNCTION ||
           command->kind == SW_COMMAND_SETTING;
}

/* Whether the item at the cursor can be an argument of this kind, so that an optional one is there. */
static bool matches(const sw_reader *reader, const sw_cursor *cursor, char letter)
{
    sw_node_kind kind = sw_cursor_kind(cursor);
    const sw_value *variable = variable_at(reader, cursor);
    bool scheme = kind == SW_NODE_SCHEME;
    sw_slice text = sw_cursor_text(cursor);
    switch (letter) {
    case 'm':
        return is_music(reader, cursor, variable);
    case 'p':
        return is_note_word(reader, cursor) || (variable != NULL && variable->kind == SW_VALUE_PITCH) ||
               (scheme && memmem(text.data, text.length, "pitch", 5) != NULL);
    case 'd':
        if (kind == SW_NODE_COMMAND) {
            const sw_command *command = sw_command_find((sw_slice){text.data + 1, text.length - 1});
            return (variable != NULL &&
                    (variable->kind == SW_VALUE_DURATION || variable->kind == SW_VALUE_NUMBER)) ||
                   (variable == NULL && command != NULL && command->kind == SW_COMMAND_DURATION);
        }
        return kind == SW_NODE_NUMBER || (scheme && memmem(text.data, text.length, "duration", 8) != NULL);
    case 'f':
    case 'n':
        return kind == SW_NODE_NUMBER || scheme || kind == SW_NODE_POST_EVENT ||
               (variable != NULL && variable->kind == SW_VALUE_NUMBER);
    case 'l': {
        if (kind == SW_NODE_NUMBER && memchr(text.data, '/', text.length) != NULL) {
            return false;
        }
        return kind == SW_NODE_NUMBER || scheme;
    }
    case 'y':
        return kind == SW_NODE_WORD ? !is_note_word(reader, cursor) : (kind == SW_NODE_STRING || scheme);
    case 'k':
    case 's':
        if (scheme && sw_slice_starts(text, "#'(")) {
            return false; /* `\footnote #'(1 . 2) "text"`: a pair of numbers */
        }
        return kind == SW_NODE_STRING || kind == SW_NODE_MARKUP || scheme || kind == SW_NODE_NUMBER ||
               (variable != NULL && variable->kind == SW_VALUE_TEXT);
    case 'w':
        return kind == SW_NODE_COMMAND &&
               (sw_slice_is(text, "\\with") || (variable != NULL && variable->kind == SW_VALUE_OUTPUT));
    case 'x': {
        if (kind == SW_NODE_COMMAND) { /* \major, or a variable with such a value */
            const sw_command *command = sw_command_find((sw_slice){text.data + 1, text.length - 1});
            return (variable != NULL && variable->kind != SW_VALUE_MUSIC &&
                    variable->kind != SW_VALUE_POST) ||
                   (variable == NULL && command != NULL && command->kind == SW_COMMAND_VALUE);
        }
        return (scheme && !is_music_variable(reader, text)) || kind == SW_NODE_EMBEDDED;
    }
    default:
        return false;
    }
}

static sw_value read_one(sw_reader *reader, sw_cursor *cursor, char letter)
{
    switch (letter) {
    case 'm': {
        sw_value value = {
            .kind = SW_VALUE_MUSIC, .file = cursor->file, .start = sw_cursor_node(cursor)->start};
        value.music = sw_read_music(reader, cursor);
        value.end = value.music != SW_NO_INDEX ? sw_music_at(reader, value.music)->end : value.start;
        return value;
    }
    case 'p':
        return read_pitch(reader, cursor);
    case 's':
    case 'k':
        return read_text(reader, cursor);
    case 'y':
        return read_symbols(reader, cursor);
    case 'l':
        return read_number_list(reader, cursor);
    case 'r': {
        sw_node_kind kind = sw_cursor_kind(cursor);
        bool path = (kind == SW_NODE_WORD && !is_music_word(reader, cursor)) || kind == SW_NODE_STRING ||
                    kind == SW_NODE_SCHEME || kind == SW_NODE_LYRIC_WORD;
        return read_one(reader, cursor, path ? 'y' : 'm');
    }
    case 't':
        return read_one(reader, cursor, matches(reader, cursor, 'd') ? 'd' : 'm');
    case 'n':
    case 'f': {
        sw_value value = sw_read_item(reader, cursor);
        if (value.kind == SW_VALUE_POST && value.music != SW_NO_INDEX) { /* -1 was read as a fingering */
            sw_slice text = sw_music_slice(reader->reading, value.music);
            int64_t number = 0;
            for (size_t i = 1; i < text.length && isdigit((unsigned char)text.data[i]) && number < 1000000;
                 i++) {
                number = number * 10 + (text.data[i] - '0');
            }
            value.kind = SW_VALUE_NUMBER;
            value.rational = sw_rational_make(-number, 1);
        }
        return value;
    }
    default:
        return reader->mode == SW_MODE_LYRICS ? read_text(reader, cursor) : sw_read_item(reader, cursor);
    }
}

/* The duration that a note has which is taken as a pitch; kind NONE when it has none. */
static sw_value duration_behind_pitch(const sw_cursor *cursor)
{
    sw_value value = absent(cursor);
    if (sw_cursor_kind(cursor) != SW_NODE_WORD) {
        return value;
    }
    sw_slice text = sw_cursor_text(cursor);
    sw_word word = sw_word_decode(text);
    if (word.has_value) {
        const char *begin = text.data + word.name.length;
        while (begin < text.data + text.length && *begin != '\\' && !isdigit((unsigned char)*begin)) {
            begin++;
        }
        value.kind = SW_VALUE_DURATION;
        value.number = word;
        value.start = sw_cursor_node(cursor)->start + (uint32_t)(begin - text.data);
        value.end = sw_cursor_node(cursor)->end;
    }
    return value;
}

/* `\\fn c'4` with a pitch as first argument: 4 is the next one. Whether it can be that. */
static bool take_duration(sw_reader *reader, sw_cursor *cursor, char letter, sw_value *duration,
                          sw_value *argument)
{
    if (duration->kind == SW_VALUE_NONE || memchr("dtm", letter, 3) == NULL) {
        return false;
    }
    *argument = *duration;
    if (letter == 'm') {
        argument->kind = SW_VALUE_MUSIC;
        argument->music = sw_read_bare_duration(reader, cursor, duration);
        sw_read_post_events(reader, cursor, argument->music);
    }
    return true;
}

size_t sw_read_arguments(sw_reader *reader, sw_cursor *cursor, const char *signature, sw_value *arguments)
{
    size_t count = 0;
    sw_value duration = absent(cursor);
    bool skipping = false; /* with one optional argument those directly behind it are left out too */
    for (const char *letter = signature; *letter != '\0'; letter++) {
        sw_value *argument = &arguments[count++];
        *argument = absent(cursor);
        bool optional = isupper((unsigned char)*letter) != 0;
        char wanted = (char)tolower((unsigned char)*letter);
        skipping = skipping && optional;
        if (!skipping && take_duration(reader, cursor, wanted, &duration, argument)) {
            duration.kind = SW_VALUE_NONE;
            continue;
        }
        if (skipping || !sw_cursor_more(cursor)) {
            continue;
        }
        if (optional && is_default(cursor)) {
            argument->start = sw_cursor_node(cursor)->start;
            sw_cursor_next(cursor);
            skipping = true;
        } else if (!optional || matches(reader, cursor, wanted)) {
            duration = wanted == 'p' ? duration_behind_pitch(cursor) : absent(cursor);
            *argument = read_one(reader, cursor, wanted);
        } else {
            skipping = true;
        }
    }
    return count;
}
