/* Notes, drums, rests and chords with their octave marks and durations. */
#include <stdlib.h>
#include <string.h>

#include "score/reader.h"
#include "syntax/drum_names.h"

/* ---- durations behind an item ---- */

/* Where the last item before a cursor ends. */
static uint32_t after_end(const sw_cursor *cursor, const sw_cursor *before)
{
    uint32_t last = before->at;
    if (cursor->abbreviated != before->abbreviated) {
        return before->syntax->nodes[last].end;
    }
    for (uint32_t node = before->at; node < cursor->at; node = cursor->syntax->nodes[node].next) {
        if (cursor->syntax->nodes[node].kind != SW_NODE_COMMENT) {
            last = node;
        }
    }
    return cursor->syntax->nodes[last].end;
}

/* Takes a note value that stands behind its note after white space: a number, \breve, or a variable. */
static void read_value_behind(sw_reader *reader, sw_cursor *cursor, sw_word *word, uint32_t music)
{
    sw_word behind = {.duration = {.factor_num = 1, .factor_den = 1}};
    sw_slice text = sw_cursor_text(cursor);
    switch (sw_cursor_kind(cursor)) {
    case SW_NODE_NUMBER:
        if (sw_word_duration(text, &behind) != text.length) {
            return;
        }
        break;
    case SW_NODE_COMMAND:
    case SW_NODE_SCHEME: {
        sw_slice name = sw_slice_from(text, 1);
        if (sw_slice_starts(text, "$(")) { /* c'$(ly:make-duration 1) */
            sw_value value = {.kind = SW_VALUE_NONE};
            sw_read_constant(reader, &value, name);
            behind = value.kind == SW_VALUE_DURATION ? value.number : behind;
            break;
        }
        const sw_command *command = sw_command_find(name);
        const sw_value *variable =
            text.data[0] == '#' ? NULL : sw_lookup(reader, sw_names_find(reader->reading->names, name));
        if (variable != NULL && (variable->kind == SW_VALUE_DURATION || variable->kind == SW_VALUE_NUMBER)) {
            behind = variable->number;
        } else if (variable == NULL && command != NULL && command->kind == SW_COMMAND_DURATION) {
            sw_word_duration(text, &behind);
        }
        break;
    }
    default:
        break;
    }
    if (behind.has_value) {
        word->duration = behind.duration;
        word->has_value = true;
        word->has_factor = behind.has_factor;
        word->too_large = behind.too_large;
        sw_music_at(reader, music)->end = sw_cursor_node(cursor)->end;
        sw_cursor_next(cursor);
    }
}

/* Takes one more dot or factor that stands apart: `4 .`, `4 *2/3`, `4*#x`. */
static void read_loose_factor(sw_reader *reader, sw_cursor *cursor, sw_word *word)
{
    bool dot = sw_cursor_text(cursor).data[0] == '.';
    sw_cursor_next(cursor);
    if (dot) {
        bool room = word->duration.dots < SW_MAX_DOTS;
        word->duration.dots = (uint8_t)(word->duration.dots + room);
        word->too_large = word->too_large || !room;
    } else if (sw_cursor_more(cursor)) {
        sw_value factor = sw_read_item(reader, cursor);
        sw_rational product = sw_rational_mul(
            sw_rational_make(word->duration.factor_num, word->duration.factor_den), factor.rational);
        if (factor.kind != SW_VALUE_NUMBER) {
            sw_findings_add(&reader->reading->findings, SW_WARNING, "unresolved", factor.file, factor.start,
                            factor.end,
                            "the factor of this duration is computed; 1 is assumed, so what follows may come "
                            "too early or too late");
            return;
        }
        if (sw_rational_valid(product) && product.num <= INT32_MAX && product.den <= INT32_MAX) {
            word->duration.factor_num = (int32_t)product.num;
            word->duration.factor_den = (int32_t)product.den;
            word->has_factor = true;
        } else {
            word->too_large = true;
        }
    }
}

void sw_read_duration(sw_reader *reader, sw_cursor *cursor, sw_word *word, uint32_t music)
{
    if (!word->has_value && !word->has_factor && sw_cursor_more(cursor)) {
        read_value_behind(reader, cursor, word, music);
    }
    while (sw_cursor_is_mark(cursor, '*') || (word->has_value && sw_cursor_is_mark(cursor, '.'))) {
        sw_cursor before = *cursor;
        read_loose_factor(reader, cursor, word);
        sw_music_at(reader, music)->end = after_end(cursor, &before);
    }
    sw_music *m = sw_music_at(reader, music);
    if (word->too_large) {
        sw_findings_add(&reader->reading->findings, SW_ERROR, "unresolved", m->file, m->start, m->end,
                        "this duration has more dots, or a larger factor, than can be counted; it is read "
                        "without them");
    }
    if (word->has_value) {
        reader->duration = word->duration;
        m->flags |= SW_MUSIC_WRITTEN_VALUE;
    } else if (word->has_factor) { /* `c*2`: the inherited value with another factor */
        reader->duration.factor_num = word->duration.factor_num;
        reader->duration.factor_den = word->duration.factor_den;
        m->flags |= SW_MUSIC_WRITTEN_VALUE;
    }
    sw_music_set_duration(m, reader->duration);
}

/* Octave marks and flags that stand apart from their note. */
static void read_loose_marks(sw_reader *reader, sw_cursor *cursor, sw_word *word, uint32_t music)
{
    while (!word->has_value && !word->has_factor && sw_cursor_more(cursor) &&
           sw_cursor_kind(cursor) == SW_NODE_PUNCTUATION) {
        sw_slice text = sw_cursor_text(cursor);
        if (text.data[0] == '\'' || text.data[0] == ',') {
            int marks = (int)text.length * (text.data[0] == '\'' ? 1 : -1);
            if (word->has_check) {
                word->check_marks += marks;
            } else {
                word->octave_marks += marks;
                word->has_marks = true;
            }
        } else if (text.data[0] == '=') {
            word->has_check = true;
        } else if (text.data[0] != '!' && text.data[0] != '?') {
            return;
        }
        sw_music_at(reader, music)->end = sw_cursor_node(cursor)->end;
        sw_cursor_next(cursor);
    }
}

/* ---- single notes and rests ---- */

static sw_value music_value(const sw_cursor *cursor, const sw_node *node, uint32_t music)
{
    return (sw_value){
        .kind = SW_VALUE_MUSIC, .music = music, .file = cursor->file, .start = node->start, .end = node->end};
}

static uint32_t add_note(sw_reader *reader, const sw_cursor *cursor, const sw_node *node, const sw_word *word,
                         const sw_note_name *name)
{
    uint32_t music = sw_music_add(reader, SW_MUSIC_NOTE, cursor->file, node->start, node->end);
    sw_music *m = sw_music_at(reader, music);
    m->flags = SW_MUSIC_PITCHED | SW_MUSIC_FREE;
    m->name_length = (uint8_t)word->name.length;
    m->pitch = (sw_pitch){name->step, -1, name->alter};
    m->reference = SW_NO_INDEX;
    sw_set_origin(reader, m, cursor->file, node->start);
    return music;
}

static void set_octave(sw_reader *reader, sw_music *m, const sw_word *word)
{
    m->octave_marks = sw_pitch_octave(word->octave_marks);
    m->pitch.octave = sw_pitch_octave(word->octave_marks - 1);
    if (word->has_check) {
        m->flags |= SW_MUSIC_CHECKED;
        m->check = sw_pitch_octave(word->check_marks - 1);
    }
    if (m->octave_marks != word->octave_marks || m->pitch.octave != word->octave_marks - 1) {
        sw_findings_add(&reader->reading->findings, SW_ERROR, "unresolved", m->file, m->start, m->end,
                        "this note has %d octave marks, more than can be counted", abs(word->octave_marks));
    }
}

uint32_t sw_drum_find(const sw_reader *reader, sw_slice word)
{
    sw_names *names = reader->reading->names;
    for (size_t i = reader->drum_count; i-- > 0;) { /* usually none */
        if (sw_slice_is(word, sw_names_text(names, reader->drums[i].word))) {
            return reader->drums[i].drum;
        }
    }
    size_t low = 0;
    size_t high = sw_drum_name_count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        int order = sw_slice_compare(word, sw_slice_of(sw_drum_names[middle].name));
        if (order == 0) {
            return sw_names_add(names, sw_slice_of(sw_drum_names[middle].instrument));
        }
        if (order < 0) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    return 0;
}

static sw_music_kind rest_kind(sw_slice name)
{
    if (name.length != 1) {
        return SW_MUSIC_EMPTY;
    }
    switch (name.data[0]) {
    case 'r':
        return SW_MUSIC_REST;
    case 'R':
        return SW_MUSIC_FULL_REST;
    case 's':
        return SW_MUSIC_SKIP;
    case 'q':
        return SW_MUSIC_REPEAT_CHORD;
    default:
        return SW_MUSIC_EMPTY;
    }
}

sw_value sw_read_word(sw_reader *reader, sw_cursor *cursor, bool in_chord)
{
    const sw_node *node = sw_cursor_node(cursor);
    sw_word word = sw_word_decode(sw_cursor_text(cursor));
    sw_cursor_next(cursor);
    uint32_t music = SW_NO_INDEX;
    if (reader->mode == SW_MODE_DRUMS) {
        uint32_t drum = sw_drum_find(reader, word.name);
        if (drum != 0) {
            music = sw_music_add(reader, SW_MUSIC_DRUM, cursor->file, node->start, node->end);
            sw_music_at(reader, music)->name_length = (uint8_t)word.name.length;
            sw_set_origin(reader, sw_music_at(reader, music), cursor->file, node->start);
            sw_music_at(reader, music)->name = drum;
        }
    } else {
        const sw_note_name *name = sw_note_table_find(&reader->notes, word.name);
        if (name != NULL) {
            music = add_note(reader, cursor, node, &word, name);
            read_loose_marks(reader, cursor, &word, music);
            set_octave(reader, sw_music_at(reader, music), &word);
        }
    }
    if (music == SW_NO_INDEX) {
        sw_music_kind kind = rest_kind(word.name);
        if (kind == SW_MUSIC_EMPTY) {
            return (sw_value){.kind = SW_VALUE_SYMBOL,
                              .text = sw_names_add(reader->reading->names, word.name),
                              .file = cursor->file,
                              .start = node->start,
                              .end = node->end};
        }
        music = sw_music_add(reader, kind, cursor->file, node->start, node->end);
        sw_set_origin(reader, sw_music_at(reader, music), cursor->file, node->start);
    }
    if (!in_chord) {
        sw_read_duration(reader, cursor, &word, music);
        if (reader->mode == SW_MODE_CHORDS && sw_music_at(reader, music)->kind == SW_MUSIC_NOTE) {
            music = sw_read_chord_mode(reader, cursor, music);
        }
    }
    return music_value(cursor, node, music);
}

uint32_t sw_read_bare_duration(sw_reader *reader, sw_cursor *cursor, sw_value *value)
{
    uint32_t music = sw_music_add(reader, SW_MUSIC_BARE, value->file, value->start, value->end);
    sw_music_at(reader, music)->name = reader->no_pitch;
    sw_set_origin(reader, sw_music_at(reader, music), value->file, value->start);
    sw_read_duration(reader, cursor, &value->number, music);
    return music;
}

uint32_t sw_read_note_of_pitch(sw_reader *reader, sw_cursor *cursor, const sw_value *value)
{
    sw_word word = {.duration = {.factor_num = 1, .factor_den = 1}};
    uint32_t music = sw_note_of_pitch(reader, value);
    read_loose_marks(reader, cursor, &word, music);
    if (word.has_marks || word.has_check) {
        word.octave_marks += value->pitch.octave + 1;
        set_octave(reader, sw_music_at(reader, music), &word);
    }
    sw_read_duration(reader, cursor, &word, music);
    return music;
}

uint32_t sw_note_of_pitch(sw_reader *reader, const sw_value *value)
{
    uint32_t music = sw_music_add(reader, SW_MUSIC_NOTE, value->file, value->start, value->end);
    sw_music *m = sw_music_at(reader, music);
    m->flags = SW_MUSIC_PITCHED | SW_MUSIC_FREE;
    m->pitch = value->pitch;
    m->octave_marks = (int8_t)(value->pitch.octave + 1);
    m->reference = SW_NO_INDEX;
    sw_set_origin(reader, m, value->file, value->start);
    return music;
}

/* ---- chords ---- */

/* What a chord takes of an item inside: the note in what `\tweak color #red c` has wrapped; of a variable's
 * note a copy, which has the place of the item. */
static uint32_t chord_member(sw_reader *reader, uint32_t item)
{
    uint32_t music = item;
    bool shared = false;
    const sw_music *m = sw_music_at(reader, music);
    while ((m->kind == SW_MUSIC_SEQUENCE || m->kind == SW_MUSIC_CALL || m->kind == SW_MUSIC_REFERENCE) &&
           m->first != SW_NO_INDEX) {
        shared = shared || m->kind == SW_MUSIC_REFERENCE;
        music = m->first;
        m = sw_music_at(reader, music);
    }
    if (!shared || (m->kind != SW_MUSIC_NOTE && m->kind != SW_MUSIC_DRUM)) {
        return shared ? item : music;
    }
    uint32_t copy = sw_music_copy(reader, music);
    sw_music_at(reader, copy)->next = SW_NO_INDEX;
    sw_set_origin(reader, sw_music_at(reader, copy), sw_music_at(reader, item)->file,
                  sw_music_at(reader, item)->start);
    return copy;
}

sw_value sw_read_chord(sw_reader *reader, sw_cursor *cursor)
{
    const sw_node *node = sw_cursor_node(cursor);
    uint32_t chord = sw_music_add(reader, SW_MUSIC_CHORD, cursor->file, node->start, node->end);
    sw_cursor inside = sw_cursor_inside(reader, cursor->file, cursor->at);
    sw_cursor_next(cursor);
    sw_children children = {0};
    sw_word word = {.duration = {.factor_num = 1, .factor_den = 1}};
    uint8_t free_flag = 0;
    while (sw_cursor_more(&inside)) {
        sw_node_kind kind = sw_cursor_kind(&inside);
        if (kind == SW_NODE_CHORD_END) {
            sw_slice text = sw_cursor_text(&inside);
            sw_word_duration((sw_slice){text.data + 1, text.length - 1}, &word);
            sw_cursor_next(&inside);
            continue;
        }
        sw_value value =
            kind == SW_NODE_WORD ? sw_read_word(reader, &inside, true) : sw_read_item(reader, &inside);
        if (value.kind == SW_VALUE_PITCH) { /* <$low $high> */
            value.kind = SW_VALUE_MUSIC;
            value.music = sw_note_of_pitch(reader, &value);
        }
        if (value.kind != SW_VALUE_MUSIC || value.music == SW_NO_INDEX) {
            if (value.kind == SW_VALUE_POST && children.count > 0 && value.music != SW_NO_INDEX) {
                sw_children_add(reader, &children, value.music);
            }
            continue;
        }
        uint32_t music = chord_member(reader, value.music);
        sw_read_post_events(reader, &inside, music);
        free_flag |= sw_music_at(reader, music)->flags & SW_MUSIC_FREE;
        sw_children_add(reader, &children, music);
    }
    if (children.count > 0) {
        sw_music_at(reader, chord)->first = children.first;
    }
    sw_music_at(reader, chord)->flags |= free_flag;
    if (children.count == 0 && !word.has_value && !word.has_factor) {
        /* <> has no length and leaves the inherited duration alone */
        sw_music_at(reader, chord)->num = 0;
        return music_value(cursor, node, chord);
    }
    sw_read_duration(reader, cursor, &word, chord);
    return music_value(cursor, node, chord);
}
