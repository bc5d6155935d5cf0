/* The words of the grammar itself: \new, \repeat, \set, \tempo, the input modes ... */
#include <stdlib.h>
#include <string.h>

#include "score/reader.h"
#include "score/with_blocks.h"

typedef enum keyword {
    K_ALTERNATIVE,
    K_BLOCK, /* \header, \layout, ...: a block that holds no notes */
    K_CHANGE,
    K_CONTEXT,
    K_DEFAULT,
    K_INCLUDE,
    K_LYRICS, /* lyrics that follow a voice */
    K_MODE,   /* \lyricmode, \drummode ... */
    K_NEW,
    K_REPEAT,
    K_SCORE,
    K_SEQUENTIAL,
    K_SET, /* path = value */
    K_SIMULTANEOUS,
    K_SOURCE_LINE, /* \sourcefileline: the compiler's own numbering of lines */
    K_SOURCE_NAME,
    K_TEMPO,
    K_UNSET, /* path */
    K_VALUE, /* takes one value of no interest: \version */
    K_WITH
} keyword;

static const struct row {
    const char *name;
    keyword keyword;
    sw_mode mode;
    const char *context; /* MODE: the context that the short form makes */
} rows[] = {
    {"accepts", K_VALUE, 0, NULL},
    {"addlyrics", K_LYRICS, 0, NULL},
    {"alias", K_VALUE, 0, NULL},
    {"alternative", K_ALTERNATIVE, 0, NULL},
    {"book", K_BLOCK, 0, NULL},
    {"bookpart", K_BLOCK, 0, NULL},
    {"change", K_CHANGE, 0, NULL},
    {"chordmode", K_MODE, SW_MODE_CHORDS, NULL},
    {"chords", K_MODE, SW_MODE_CHORDS, "ChordNames"},
    {"consists", K_VALUE, 0, NULL},
    {"context", K_CONTEXT, 0, NULL},
    {"default", K_DEFAULT, 0, NULL},
    {"defaultchild", K_VALUE, 0, NULL},
    {"denies", K_VALUE, 0, NULL},
    {"description", K_VALUE, 0, NULL},
    {"drummode", K_MODE, SW_MODE_DRUMS, NULL},
    {"drums", K_MODE, SW_MODE_DRUMS, "DrumStaff"},
    {"figuremode", K_MODE, SW_MODE_FIGURES, NULL},
    {"figures", K_MODE, SW_MODE_FIGURES, "FiguredBass"},
    {"header", K_BLOCK, 0, NULL},
    {"include", K_INCLUDE, 0, NULL},
    {"layout", K_BLOCK, 0, NULL},
    {"lyricmode", K_MODE, SW_MODE_LYRICS, NULL},
    {"lyrics", K_MODE, SW_MODE_LYRICS, "Lyrics"},
    {"lyricsto", K_LYRICS, 0, NULL},
    {"midi", K_BLOCK, 0, NULL},
    {"name", K_VALUE, 0, NULL},
    {"new", K_NEW, 0, NULL},
    {"notemode", K_MODE, SW_MODE_NOTES, NULL},
    {"override", K_SET, 0, NULL},
    {"paper", K_BLOCK, 0, NULL},
    {"remove", K_VALUE, 0, NULL},
    {"repeat", K_REPEAT, 0, NULL},
    {"revert", K_UNSET, 0, NULL},
    {"score", K_SCORE, 0, NULL},
    {"sequential", K_SEQUENTIAL, 0, NULL},
    {"set", K_SET, 0, NULL},
    {"simultaneous", K_SIMULTANEOUS, 0, NULL},
    {"sourcefileline", K_SOURCE_LINE, 0, NULL},
    {"sourcefilename", K_SOURCE_NAME, 0, NULL},
    {"tempo", K_TEMPO, 0, NULL},
    {"type", K_VALUE, 0, NULL},
    {"unset", K_UNSET, 0, NULL},
    {"version", K_VALUE, 0, NULL},
    {"with", K_WITH, 0, NULL},
};

static const struct row *find(sw_slice name)
{
    size_t low = 0;
    size_t high = sizeof rows / sizeof rows[0];
    while (low < high) {
        size_t middle = (low + high) / 2;
        int order = sw_slice_compare(name, sw_slice_of(rows[middle].name));
        if (order == 0) {
            return &rows[middle];
        }
        if (order < 0) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    return NULL;
}

static sw_value music_from(const sw_value *where, uint32_t music, uint32_t end)
{
    return (sw_value){.kind = SW_VALUE_MUSIC,
                      .music = music,
                      .file = where->file,
                      .start = where->start,
                      .end = end > where->end ? end : where->end};
}

static uint32_t end_of(const sw_reader *reader, uint32_t music, uint32_t otherwise)
{
    return music == SW_NO_INDEX ? otherwise : sw_music_at(reader, music)->end;
}

/* The next item as plain text (a word, string, number or Scheme string or symbol); 0 when there is none. */
static uint32_t read_name(sw_reader *reader, sw_cursor *cursor)
{
    if (!sw_cursor_more(cursor)) {
        return 0;
    }
    uint32_t name = sw_read_plain_text(reader, cursor->file, cursor->at);
    sw_cursor_next(cursor);
    return name;
}

static bool skip_mark(sw_cursor *cursor, char mark)
{
    if (!sw_cursor_is_mark(cursor, mark)) {
        return false;
    }
    sw_cursor_next(cursor);
    return true;
}

static sw_value make_context(sw_reader *reader, sw_cursor *cursor, const sw_value *where, uint32_t type,
                             uint32_t id, uint32_t with, bool is_new, uint32_t music)
{
    (void)cursor;
    uint32_t context = sw_music_wrap(reader, SW_MUSIC_CONTEXT, where, music, true);
    sw_music *m = sw_music_at(reader, context);
    m->name = type;
    m->name2 = id;
    m->end = end_of(reader, music, m->end);
    if (is_new) {
        m->flags |= SW_MUSIC_NEW;
    }
    sw_set_with(reader, context, with);
    return music_from(where, context, sw_music_at(reader, context)->end);
}

static sw_value read_context(sw_reader *reader, sw_cursor *cursor, const sw_value *where, bool is_new)
{
    uint32_t type = read_name(reader, cursor);
    uint32_t id = skip_mark(cursor, '=') ? read_name(reader, cursor) : 0;
    uint32_t with = sw_read_with_blocks(reader, cursor, type, id);
    uint32_t music = sw_read_music(reader, cursor);
    return make_context(reader, cursor, where, type, id, with, is_new, music);
}

static sw_value read_change(sw_reader *reader, sw_cursor *cursor, const sw_value *where)
{
    uint32_t type = read_name(reader, cursor);
    uint32_t id = skip_mark(cursor, '=') ? read_name(reader, cursor) : 0;
    uint32_t music = sw_music_add(reader, SW_MUSIC_CHANGE, where->file, where->start, where->end);
    sw_music_at(reader, music)->name = type;
    sw_music_at(reader, music)->name2 = id;
    return music_from(where, music, where->end);
}

static sw_value read_mode(sw_reader *reader, sw_cursor *cursor, const sw_value *where, const struct row *row)
{
    uint32_t id = skip_mark(cursor, '=') ? read_name(reader, cursor) : 0;
    uint32_t type =
        row->context == NULL ? 0 : sw_names_add(reader->reading->names, sw_slice_of(row->context));
    uint32_t with = sw_read_with_blocks(reader, cursor, type, id);
    sw_mode outer = reader->mode;
    reader->mode = row->mode;
    uint32_t music = sw_read_music(reader, cursor);
    reader->mode = outer;
    if (row->context != NULL) {
        return make_context(reader, cursor, where, type, id, with, true, music);
    }
    return music_from(where, music, end_of(reader, music, where->end));
}

/* \addlyrics and \lyricsto: syllables take their time from the notes, so nothing here has a length. */
static sw_value read_lyrics(sw_reader *reader, sw_cursor *cursor, const sw_value *where, bool named)
{
    uint32_t voice = named ? read_name(reader, cursor) : 0;
    sw_mode outer = reader->mode;
    reader->mode = SW_MODE_LYRICS;
    uint32_t type = sw_names_add(reader->reading->names, sw_slice_of("Lyrics"));
    uint32_t with = sw_read_with_blocks(reader, cursor, type, 0);
    uint32_t text = sw_read_music(reader, cursor);
    reader->mode = outer;
    uint32_t music = sw_music_wrap(reader, SW_MUSIC_ADD_LYRICS, where, text, false);
    sw_music *m = sw_music_at(reader, music);
    m->name = voice;
    m->end = end_of(reader, text, m->end);
    m->flags |= named ? 0 : SW_MUSIC_NEW;
    sw_set_with(reader, music, with);
    return music_from(where, music, m->end);
}

/* \alternative { a b }: the block's items become the children. */
static uint32_t read_alternatives(sw_reader *reader, sw_cursor *cursor, const sw_value *where)
{
    uint32_t block = sw_read_music(reader, cursor);
    uint32_t first = block;
    if (block != SW_NO_INDEX && (sw_music_at(reader, block)->kind == SW_MUSIC_SEQUENCE ||
                                 sw_music_at(reader, block)->kind == SW_MUSIC_SIMULTANEOUS)) {
        first = sw_music_at(reader, block)->first;
    }
    uint32_t music = sw_music_wrap(reader, SW_MUSIC_ALTERNATIVES, where, first, false);
    sw_music *m = sw_music_at(reader, music);
    m->end = end_of(reader, block, where->end);
    if (block != SW_NO_INDEX) {
        m->flags |= sw_music_at(reader, block)->flags & SW_MUSIC_FREE;
    }
    return music;
}

/* `\repeat unfold 2 { ... } \addlyrics { ... }`: the words belong to the music that is repeated, and come
 * again with it. Of a repeat that is not written out they may stand behind it as well. */
static uint32_t with_lyrics(sw_reader *reader, sw_cursor *cursor, uint32_t body)
{
    sw_children children = {.first = SW_NO_INDEX};
    sw_children_add(reader, &children, body);
    while (body != SW_NO_INDEX && sw_cursor_more(cursor) && sw_cursor_kind(cursor) == SW_NODE_COMMAND &&
           sw_slice_is(sw_cursor_text(cursor), "\\addlyrics")) {
        sw_children_add(reader, &children, sw_read_music(reader, cursor));
    }
    if (children.count < 2) {
        return body;
    }
    const sw_music *m = sw_music_at(reader, body);
    sw_value where = {.file = m->file, .start = m->start, .end = sw_music_at(reader, children.last)->end};
    return sw_music_wrap(reader, SW_MUSIC_SEQUENCE, &where, body, true);
}

static sw_value read_repeat(sw_reader *reader, sw_cursor *cursor, const sw_value *where)
{
    uint32_t kind = read_name(reader, cursor);
    sw_value times = {.kind = SW_VALUE_NONE};
    sw_read_arguments(reader, cursor, "n", &times);
    uint32_t body = sw_read_music(reader, cursor);
    if (strcmp(sw_reading_name(reader->reading, kind), "unfold") == 0) {
        body = with_lyrics(reader, cursor, body);
    }
    uint32_t music = sw_music_wrap(reader, SW_MUSIC_REPEAT, where, body, true);
    sw_music_at(reader, music)->name = kind;
    sw_music_at(reader, music)->num =
        times.kind == SW_VALUE_NUMBER && times.rational.num > 0 && times.rational.num < 100000
            ? (int32_t)times.rational.num
            : 1;
    uint32_t end = end_of(reader, body, where->end);
    if (sw_cursor_more(cursor) && sw_cursor_kind(cursor) == SW_NODE_COMMAND &&
        sw_slice_is(sw_cursor_text(cursor), "\\alternative")) {
        const sw_node *node = sw_cursor_node(cursor);
        sw_value place = {.file = cursor->file, .start = node->start, .end = node->end};
        sw_cursor_next(cursor);
        uint32_t alternatives = read_alternatives(reader, cursor, &place);
        if (body == SW_NO_INDEX) {
            sw_music_at(reader, music)->first = alternatives;
        } else {
            sw_music_at(reader, body)->next = alternatives;
        }
        sw_music_at(reader, music)->flags |= sw_music_at(reader, alternatives)->flags & SW_MUSIC_FREE;
        end = end_of(reader, alternatives, end);
    }
    sw_music_at(reader, music)->end = end;
    return music_from(where, music, end);
}

/* A property path: `Staff.instrumentName`, `Staff . x`, `Staff.NoteHead #'color`. *end is moved behind it;
 * what an abbreviation gives stands elsewhere. */
static uint32_t read_path(sw_reader *reader, sw_cursor *cursor, bool until_equals, uint32_t *end)
{
    sw_buffer path = {0};
    for (bool first = true; sw_cursor_more(cursor); first = false) {
        sw_node_kind kind = sw_cursor_kind(cursor);
        sw_slice text = sw_cursor_text(cursor);
        if (kind == SW_NODE_PUNCTUATION && text.data[0] == '.') {
            sw_cursor_next(cursor);
            sw_buffer_char(&path, '.');
            first = true;
            if (!sw_cursor_more(cursor)) {
                break;
            }
            kind = sw_cursor_kind(cursor);
        }
        bool quoted_symbol = kind == SW_NODE_SCHEME && sw_cursor_text(cursor).length > 1 &&
                             sw_cursor_text(cursor).data[1] == '\'';
        bool joined = path.length > 0 && path.data[path.length - 1] == '.';
        if (!(first || joined || quoted_symbol || (until_equals && kind == SW_NODE_SCHEME))) {
            break;
        }
        if (kind != SW_NODE_WORD && kind != SW_NODE_STRING && kind != SW_NODE_SCHEME &&
            kind != SW_NODE_NUMBER && kind != SW_NODE_LYRIC_WORD && kind != SW_NODE_COMMAND) {
            break;
        }
        if (path.length > 0 && !joined) {
            sw_buffer_char(&path, '.');
        }
        uint32_t word = sw_read_plain_text(reader, cursor->file, cursor->at);
        sw_buffer_string(&path, sw_reading_name(reader->reading, word));
        *end = cursor->abbreviated == NULL ? sw_cursor_node(cursor)->end : *end;
        sw_cursor_next(cursor);
    }
    uint32_t name = sw_names_add(reader->reading->names, sw_buffer_slice(&path));
    sw_buffer_free(&path);
    return name;
}

uint32_t sw_read_set_value(sw_reader *reader, sw_cursor *cursor, uint32_t *end)
{
    if (!skip_mark(cursor, '=') || !sw_cursor_more(cursor)) {
        return 0;
    }
    if (sw_cursor_kind(cursor) == SW_NODE_PUNCTUATION) { /* a sign */
        sw_cursor_next(cursor);
    }
    if (!sw_cursor_more(cursor)) {
        return 0;
    }
    *end = sw_cursor_node(cursor)->end;
    sw_value value = {.kind = SW_VALUE_NONE};
    sw_read_arguments(reader, cursor, "k", &value);
    while (skip_mark(cursor, ',') && sw_cursor_more(cursor)) { /* a list: 2,1 */
        *end = sw_cursor_node(cursor)->end;
        sw_cursor_next(cursor);
    }
    return value.kind == SW_VALUE_TEXT || value.kind == SW_VALUE_SYMBOL ? value.text : 0;
}

static sw_value read_set(sw_reader *reader, sw_cursor *cursor, const sw_value *where, bool with_value)
{
    uint32_t end = where->end;
    uint32_t path = read_path(reader, cursor, with_value, &end);
    uint32_t text = with_value ? sw_read_set_value(reader, cursor, &end) : 0;
    uint32_t music = sw_music_add(reader, SW_MUSIC_SET, where->file, where->start, end);
    sw_music *m = sw_music_at(reader, music);
    m->name = path;
    m->name2 = text;
    const char *property = sw_reading_name(reader->reading, path);
    bool timing = strcmp(property, "Timing.timing") == 0 || strcmp(property, "Score.timing") == 0;
    if (timing && with_value) { /* what \cadenzaOn and \cadenzaOff do, by hand */
        sw_slice said = sw_music_slice(reader->reading, music);
        m->kind = sw_slice_ends(said, "#f") || sw_slice_ends(said, "#t") ? SW_MUSIC_CADENZA : SW_MUSIC_SET;
        m->num = sw_slice_ends(said, "#f");
    }
    return music_from(where, music, end);
}

static sw_value read_tempo(sw_reader *reader, sw_cursor *cursor, const sw_value *where)
{
    uint32_t music = sw_music_add(reader, SW_MUSIC_TEMPO, where->file, where->start, where->end);
    uint32_t end = where->end;
    if (sw_cursor_more(cursor) && sw_cursor_kind(cursor) != SW_NODE_NUMBER) {
        sw_value text = {.kind = SW_VALUE_NONE};
        end = sw_cursor_node(cursor)->end;
        sw_read_arguments(reader, cursor, "k", &text);
        sw_music_at(reader, music)->name = text.text;
    }
    if (sw_cursor_more(cursor)) {
        sw_cursor after = *cursor;
        sw_value beat = {.kind = SW_VALUE_NONE};
        sw_read_arguments(reader, &after, "D", &beat);
        if (beat.kind != SW_VALUE_NONE && skip_mark(&after, '=') && sw_cursor_more(&after)) {
            sw_value rate = {.kind = SW_VALUE_NONE};
            end = sw_cursor_node(&after)->end;
            sw_read_arguments(reader, &after, "n", &rate);
            /* a second number of a range `60 - 72` */
            if (sw_cursor_more(&after) && sw_cursor_kind(&after) == SW_NODE_POST_EVENT &&
                sw_cursor_text(&after).data[0] == '-' && sw_cursor_text(&after).length > 1 &&
                sw_cursor_text(&after).data[1] >= '0' && sw_cursor_text(&after).data[1] <= '9') {
                end = sw_cursor_node(&after)->end;
                sw_cursor_next(&after);
            } else if (sw_cursor_is_mark(&after, '-')) {
                sw_cursor_next(&after);
                if (sw_cursor_more(&after) && sw_cursor_kind(&after) == SW_NODE_NUMBER) {
                    end = sw_cursor_node(&after)->end;
                    sw_cursor_next(&after);
                }
            }
            sw_music *m = sw_music_at(reader, music);
            sw_music_set_duration(m, beat.number.duration);
            double number = sw_rational_to_double(rate.rational);
            m->name2 = number > 0 && number < 100000 ? (uint32_t)(number * 1000 + 0.5) : 0;
            *cursor = after;
        }
    }
    sw_music_at(reader, music)->end = end;
    return music_from(where, music, end);
}

bool sw_read_keyword(sw_reader *reader, sw_cursor *cursor, sw_slice name, const sw_value *where,
                     sw_value *result)
{
    const struct row *row = find(name);
    if (row == NULL) {
        return false;
    }
    *result = (sw_value){.kind = SW_VALUE_NONE,
                         .music = SW_NO_INDEX,
                         .file = where->file,
                         .start = where->start,
                         .end = where->end};
    switch (row->keyword) {
    case K_ALTERNATIVE: {
        uint32_t music = read_alternatives(reader, cursor, where);
        *result = music_from(where, music, sw_music_at(reader, music)->end);
        break;
    }
    case K_BLOCK:
        result->kind = SW_VALUE_OUTPUT;
        result->text = sw_names_add(reader->reading->names, name);
        if (sw_cursor_more(cursor) && sw_cursor_kind(cursor) == SW_NODE_BLOCK) {
            result->end = sw_cursor_node(cursor)->end;
            sw_cursor_next(cursor);
        }
        break;
    case K_CHANGE:
        *result = read_change(reader, cursor, where);
        break;
    case K_CONTEXT:
    case K_NEW:
        *result = read_context(reader, cursor, where, row->keyword == K_NEW);
        break;
    case K_DEFAULT:
        break;
    case K_INCLUDE:
        if (sw_cursor_more(cursor)) {
            const sw_node *node = sw_cursor_node(cursor);
            uint32_t path = read_name(reader, cursor);
            sw_children children = {.first = SW_NO_INDEX};
            sw_read_include(reader, cursor, sw_slice_of(sw_reading_name(reader->reading, path)), node, NULL,
                            &children);
            uint32_t music = sw_music_wrap(reader, SW_MUSIC_SEQUENCE, where, children.first, false);
            for (uint32_t c = children.first; c != SW_NO_INDEX; c = sw_music_at(reader, c)->next) {
                sw_music_at(reader, music)->flags |= sw_music_at(reader, c)->flags & SW_MUSIC_FREE;
            }
            *result = music_from(where, music, node->end);
        }
        break;
    case K_LYRICS:
        *result = read_lyrics(reader, cursor, where, sw_slice_is(name, "lyricsto"));
        break;
    case K_MODE:
        *result = read_mode(reader, cursor, where, row);
        break;
    case K_REPEAT:
        *result = read_repeat(reader, cursor, where);
        break;
    case K_SCORE:
        if (sw_cursor_more(cursor) && sw_cursor_kind(cursor) == SW_NODE_BLOCK) {
            result->kind = SW_VALUE_SCORE;
            result->end = sw_cursor_node(cursor)->end;
            sw_pending *pending = sw_arena_alloc(reader->arena, sizeof *pending);
            *pending = sw_read_score_block(reader, cursor->file, cursor->at);
            pending->start = where->start;
            result->score = pending;
            sw_cursor_next(cursor);
        }
        break;
    case K_SEQUENTIAL:
    case K_SIMULTANEOUS: {
        uint32_t music = sw_read_music(reader, cursor);
        if (music != SW_NO_INDEX && row->keyword == K_SIMULTANEOUS &&
            sw_music_at(reader, music)->kind == SW_MUSIC_SEQUENCE) {
            sw_music_at(reader, music)->kind = SW_MUSIC_SIMULTANEOUS;
        }
        *result = music_from(where, music, end_of(reader, music, where->end));
        break;
    }
    case K_SET:
    case K_UNSET:
        *result = read_set(reader, cursor, where, row->keyword == K_SET);
        break;
    case K_SOURCE_LINE:
    case K_SOURCE_NAME: {
        sw_file *file = &reader->reading->files[where->file];
        uint32_t text = read_name(reader, cursor);
        if (row->keyword == K_SOURCE_NAME) {
            file->said_name = text;
        } else {
            int line = (int)sw_text_line(file->text, where->start);
            file->line_shift = atoi(sw_reading_name(reader->reading, text)) - line;
        }
        break;
    }
    case K_TEMPO:
        *result = read_tempo(reader, cursor, where);
        break;
    case K_VALUE:
        if (sw_cursor_more(cursor)) {
            sw_cursor_next(cursor);
        }
        break;
    case K_WITH:
        result->kind = SW_VALUE_OUTPUT;
        result->text = sw_names_add(reader->reading->names, name);
        result->music = sw_read_with_block(reader, cursor, where->file, where->start, &result->end);
        break;
    }
    return true;
}
