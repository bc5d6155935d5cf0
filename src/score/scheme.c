/* The little that is understood of Scheme: constants, names, and LilyPond inside it. Nothing is run. */
#include <ctype.h>
#include <string.h>

#include "score/built.h"
#include "score/datum.h"
#include "score/reader.h"

static bool read_integer(sw_slice text, int64_t *number)
{
    size_t at = 0;
    bool negative = text.length > 1 && text.data[0] == '-';
    at += negative ? 1 : 0;
    int64_t value = 0;
    size_t digits = 0;
    for (; at < text.length && isdigit((unsigned char)text.data[at]) && value < 100000000000;
         at++, digits++) {
        value = value * 10 + (text.data[at] - '0');
    }
    *number = negative ? -value : value;
    return digits > 0 && at == text.length;
}

/* 3, -1, 3/4, 1.5 */
static bool read_rational(sw_slice text, sw_rational *number)
{
    const char *slash = memchr(text.data, '/', text.length);
    const char *point = memchr(text.data, '.', text.length);
    int64_t num;
    int64_t den = 1;
    if (slash != NULL) {
        size_t at = (size_t)(slash - text.data);
        if (!read_integer((sw_slice){text.data, at}, &num) ||
            !read_integer(sw_datum_rest(text, at + 1), &den)) {
            return false;
        }
    } else if (point != NULL) {
        size_t at = (size_t)(point - text.data);
        int64_t whole = 0;
        int64_t part = 0;
        if ((at > 0 && !read_integer((sw_slice){text.data, at}, &whole)) ||
            (at + 1 < text.length && !read_integer(sw_datum_rest(text, at + 1), &part)) ||
            text.length - at > 10 || whole > 1000000 || whole < -1000000) {
            return false;
        }
        for (size_t i = at + 1; i < text.length; i++) {
            den *= 10;
        }
        num = whole * den + (text.data[0] == '-' ? -part : part);
    } else if (!read_integer(text, &num)) {
        return false;
    }
    *number = sw_rational_make(num, den);
    return den != 0;
}

static void set_number(sw_value *value, sw_rational number)
{
    value->kind = SW_VALUE_NUMBER;
    value->rational = number;
}

/* FLAT, SEMI-SHARP, -1/2 ...: in quarter tones. */
static bool read_alteration(sw_slice text, int8_t *quarter_tones)
{
    static const struct {
        const char *name;
        int8_t quarter_tones;
    } names[] = {
        {"DOUBLE-FLAT", -4}, {"THREE-Q-FLAT", -3}, {"FLAT", -2},         {"SEMI-FLAT", -1},   {"NATURAL", 0},
        {"SEMI-SHARP", 1},   {"SHARP", 2},         {"THREE-Q-SHARP", 3}, {"DOUBLE-SHARP", 4},
    };
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (sw_slice_is(text, names[i].name)) {
            *quarter_tones = names[i].quarter_tones;
            return true;
        }
    }
    sw_rational number;
    if (!read_rational(text, &number) || number.num > 10000 || number.num < -10000) {
        return false;
    }
    *quarter_tones = sw_pitch_alteration((int)(4 * number.num / number.den));
    return true;
}

static bool read_small(sw_slice text, int farthest, int *number)
{
    int64_t wide;
    if (!read_integer(text, &wide) || wide > farthest || wide < -farthest) {
        return false;
    }
    *number = (int)wide;
    return true;
}

/* (ly:make-pitch octave step alteration), without the function's name. Steps count on beyond the octave. */
static void read_pitch(sw_value *value, const sw_slice *words, size_t count)
{
    int octave;
    int step;
    int8_t alteration = 0;
    if (count < 2 || count > 3 || !read_small(words[0], 10000, &octave) ||
        !read_small(words[1], 10000, &step) || (count == 3 && !read_alteration(words[2], &alteration))) {
        return;
    }
    int octaves = step >= 0 ? step / 7 : -((6 - step) / 7);
    value->kind = SW_VALUE_PITCH;
    value->pitch = (sw_pitch){(int8_t)(step - octaves * 7), sw_pitch_octave(octave + octaves), alteration};
}

/* (ly:make-duration log dots num den): the factor may be one fraction too. */
static void read_note_value(sw_value *value, const sw_slice *words, size_t count)
{
    int log;
    int dots = 0;
    sw_rational factor = {1, 1};
    sw_rational divisor = {1, 1};
    if (count < 1 || count > 4 || !read_small(words[0], 16, &log) ||
        (count > 1 && !read_small(words[1], 20, &dots)) || dots < 0 ||
        (count > 2 && !read_rational(words[2], &factor)) ||
        (count > 3 && (!read_rational(words[3], &divisor) || divisor.num == 0))) {
        return;
    }
    factor = sw_rational_div(factor, divisor);
    if (!sw_rational_valid(factor) || factor.num > INT32_MAX || factor.num < 0 || factor.den > INT32_MAX) {
        return;
    }
    value->kind = SW_VALUE_DURATION;
    value->number.has_value = true;
    value->number.has_factor = count > 2;
    value->number.duration =
        (sw_duration){(int8_t)log, (uint8_t)dots, (int32_t)factor.num, (int32_t)factor.den};
}

/* (cons a b), (/ a b), (ly:make-moment a b), (ly:make-moment a/b) */
static void read_fraction(sw_value *value, const sw_slice *words, size_t count)
{
    sw_rational number;
    sw_rational divisor = {1, 1};
    if ((count == 1 || count == 2) && read_rational(words[0], &number) &&
        (count == 1 || (read_rational(words[1], &divisor) && divisor.num != 0))) {
        set_number(value, sw_rational_div(number, divisor));
    }
}

/* (function a b ...) for the few functions that give constants. */
static void read_form(sw_value *value, sw_slice form)
{
    sw_slice words[6];
    size_t count = 0;
    for (size_t at; count < 6 && (at = sw_datum_next(form, &words[count])) > 0;
         form = sw_datum_rest(form, at)) {
        count++;
    }
    if (count == 0) {
        return;
    }
    bool is_pair = count == 3 && (sw_slice_is(words[0], "cons") || sw_slice_is(words[0], "/"));
    if (is_pair || sw_slice_is(words[0], "ly:make-moment")) {
        read_fraction(value, words + 1, count - 1);
    } else if (sw_slice_is(words[0], "ly:make-pitch")) {
        read_pitch(value, words + 1, count - 1);
    } else if (sw_slice_is(words[0], "ly:make-duration")) {
        read_note_value(value, words + 1, count - 1);
    }
}

/* '(a b c), '(3 . 2), '((a b)): a pair of numbers is a fraction, anything else a list of its words. */
static void read_list(sw_reader *reader, sw_value *value, sw_slice list)
{
    sw_buffer words = {0};
    sw_slice word;
    int64_t numbers[3] = {0};
    size_t count = 0;
    bool pair = false;
    for (size_t at; (at = sw_datum_next(list, &word)) > 0; list = sw_datum_rest(list, at)) {
        if (sw_slice_is(word, ".")) {
            pair = true;
            continue;
        }
        if (count < 3 && !read_integer(word, &numbers[count])) {
            count = 100;
        }
        count++;
        if (words.length > 0) {
            sw_buffer_char(&words, ' ');
        }
        sw_buffer_append(&words, word);
    }
    if (pair && count == 2 && numbers[1] != 0) {
        set_number(value, sw_rational_make(numbers[0], numbers[1]));
    } else {
        value->kind = SW_VALUE_SYMBOL;
        value->text = sw_names_add(reader->reading->names, sw_buffer_slice(&words));
    }
    sw_buffer_free(&words);
}

static bool is_name(sw_slice text)
{
    for (size_t i = 0; i < text.length; i++) {
        if (isspace((unsigned char)text.data[i]) || strchr("()\"';#", text.data[i]) != NULL) {
            return false;
        }
    }
    return text.length > 0;
}

void sw_read_constant(sw_reader *reader, sw_value *value, sw_slice text)
{
    sw_names *names = reader->reading->names;
    sw_rational number;
    if (text.length == 0) {
        return;
    }
    if (text.data[0] == '"') {
        value->kind = SW_VALUE_TEXT;
        value->text = sw_names_add(names, (sw_slice){text.data + 1, text.length > 1 ? text.length - 2 : 0});
    } else if (text.data[0] == '\'') {
        sw_slice quoted = sw_datum_rest(text, 1);
        while (quoted.length > 0 && isspace((unsigned char)quoted.data[0])) {
            quoted = sw_datum_rest(quoted, 1);
        }
        if (quoted.length > 0 && quoted.data[0] == '(') {
            read_list(reader, value, sw_datum_inside(quoted));
        } else if (is_name(quoted)) {
            value->kind = SW_VALUE_SYMBOL;
            value->text = sw_names_add(names, quoted);
        }
    } else if (read_rational(text, &number)) {
        set_number(value, number);
        int64_t whole = number.den == 1 ? number.num : 0; /* #4 can be a note value too */
        for (int8_t log = 0; log < 10; log++) {
            if (whole == (int64_t)1 << log) {
                value->number.has_value = true;
                value->number.duration.log = log;
            }
        }
    } else if (text.data[0] == '(') {
        read_form(value, sw_datum_inside(text));
    }
}

/* (skip-of-length music) and (mmrest-of-length music), with the name of a variable. */
static bool read_length_form(sw_reader *reader, sw_value *value, sw_slice text)
{
    static const char skip[] = "(skip-of-length ";
    bool rest = sw_slice_starts(text, "(mmrest-of-length ");
    if (!rest && !sw_slice_starts(text, skip)) {
        return false;
    }
    sw_slice name = sw_datum_inside(text);
    sw_slice word;
    name = sw_datum_rest(name, sw_datum_next(name, &word));
    sw_datum_next(name, &word);
    const sw_value *music = sw_lookup(reader, sw_names_find(reader->reading->names, word));
    if (music == NULL || music->kind != SW_VALUE_MUSIC || music->music == SW_NO_INDEX) {
        return false;
    }
    sw_rational length = sw_music_length(reader, music->music);
    if (!sw_rational_valid(length) || length.num > INT32_MAX || length.den > INT32_MAX) {
        return false;
    }
    value->kind = SW_VALUE_MUSIC;
    value->music = sw_music_add(reader, rest ? SW_MUSIC_FULL_REST : SW_MUSIC_SKIP, value->file, value->start,
                                value->end);
    sw_music *m = sw_music_at(reader, value->music);
    sw_music_set_duration(m, (sw_duration){0, 0, (int32_t)length.num, (int32_t)length.den});
    sw_set_origin(reader, m, value->file, value->start);
    m->flags |= SW_MUSIC_WRITTEN_VALUE;
    return true;
}

static sw_slice without_marker(sw_slice text)
{
    size_t marker = text.length > 1 && text.data[1] == '@' ? 2 : 1;
    text = sw_datum_rest(text, marker < text.length ? marker : text.length);
    while (text.length > 0 && isspace((unsigned char)text.data[0])) {
        text = sw_datum_rest(text, 1);
    }
    return text;
}

/* (define name ...) or (set! name ...): the name, or an empty slice. */
static sw_slice defined_name(sw_slice text)
{
    sw_slice word;
    sw_slice form = text.length > 0 && text.data[0] == '(' ? sw_datum_rest(text, 1) : text;
    size_t at = sw_datum_next(form, &word);
    if (at == 0 ||
        !(sw_slice_is(word, "define") || sw_slice_is(word, "define-public") || sw_slice_is(word, "set!"))) {
        return (sw_slice){NULL, 0};
    }
    return sw_datum_next(sw_datum_rest(form, at), &word) > 0 && is_name(word) ? word : (sw_slice){NULL, 0};
}

/* (define-markup-command (name ...) ...): what stands in it is no music. */
static bool defines_markup(sw_slice text)
{
    return sw_slice_starts(text, "(define-markup-");
}

/* (define name value): the value. */
static sw_slice defined_value(sw_slice text, sw_slice name)
{
    size_t at = (size_t)(name.data + name.length - text.data);
    sw_slice value;
    return sw_datum_next(sw_datum_rest(text, at), &value) > 0 ? value : text;
}

sw_value sw_read_embedded(sw_reader *reader, uint32_t file, uint32_t first, uint32_t end,
                          const sw_value *where)
{
    sw_cursor cursor = {reader->reading->files[file].syntax, file, first, end, NULL};
    sw_children children = {0};
    sw_mode outer = reader->mode;
    reader->mode = SW_MODE_NOTES;
    sw_value value = *where;
    value.kind = SW_VALUE_MUSIC;
    if (sw_cursor_more(&cursor)) {
        sw_cursor only = cursor;
        sw_cursor_next(&only);
        sw_node_kind kind = sw_cursor_kind(&cursor);
        if (!sw_cursor_more(&only) && (kind == SW_NODE_MARKUP || kind == SW_NODE_STRING)) {
            value = sw_read_item(reader, &cursor);
            reader->mode = outer;
            return value;
        }
    }
    sw_read_sequence(reader, &cursor, &children);
    reader->mode = outer;
    if (children.count == 1) {
        value.music = children.first;
        if (sw_music_at(reader, value.music)->kind == SW_MUSIC_MARK) {
            value.kind = SW_VALUE_POST;
        }
        return value;
    }
    bool marked = children.count > 0; /* one item and its marks: still that item */
    uint8_t free_flag = 0;
    for (uint32_t c = children.count > 0 ? children.first : SW_NO_INDEX; c != SW_NO_INDEX;
         c = sw_music_at(reader, c)->next) {
        free_flag |= sw_music_at(reader, c)->flags & SW_MUSIC_FREE;
        marked = marked && (c == children.first) != (sw_music_at(reader, c)->kind == SW_MUSIC_MARK);
    }
    value.music = sw_music_wrap(reader, marked ? SW_MUSIC_CALL : SW_MUSIC_SEQUENCE, where,
                                children.count > 0 ? children.first : SW_NO_INDEX, false);
    sw_music_at(reader, value.music)->flags |= free_flag;
    return value;
}

/* An expression that makes a mark: a dynamic of the user's own, or an event that hangs on a note. */
static bool makes_mark(sw_slice text, sw_mark_class *class)
{
    static const struct {
        const char *event;
        sw_mark_class begin;
        sw_mark_class end; /* with STOP */
    } events[] = {
        {"'AbsoluteDynamicEvent", SW_MARK_DYNAMIC, SW_MARK_DYNAMIC},
        {"'ArpeggioEvent", SW_MARK_ARPEGGIO, SW_MARK_ARPEGGIO},
        {"'ArticulationEvent", SW_MARK_ARTICULATION, SW_MARK_ARTICULATION},
        {"'BeamEvent", SW_MARK_BEAM_START, SW_MARK_BEAM_END},
        {"'CrescendoEvent", SW_MARK_HAIRPIN_START, SW_MARK_HAIRPIN_END},
        {"'DecrescendoEvent", SW_MARK_HAIRPIN_START, SW_MARK_HAIRPIN_END},
        {"'FingeringEvent", SW_MARK_FINGERING, SW_MARK_FINGERING},
        {"'GlissandoEvent", SW_MARK_GLISSANDO, SW_MARK_GLISSANDO},
        {"'PhrasingSlurEvent", SW_MARK_PHRASE_START, SW_MARK_PHRASE_END},
        {"'PostEvents", SW_MARK_ARTICULATION, SW_MARK_ARTICULATION},
        {"'SlurEvent", SW_MARK_SLUR_START, SW_MARK_SLUR_END},
        {"'SustainEvent", SW_MARK_PEDAL, SW_MARK_PEDAL},
        {"'TextScriptEvent", SW_MARK_TEXT, SW_MARK_TEXT},
        {"'TextSpanEvent", SW_MARK_SPAN_START, SW_MARK_SPAN_END},
        {"'TieEvent", SW_MARK_TIE, SW_MARK_TIE},
        {"'TrillSpanEvent", SW_MARK_SPAN_START, SW_MARK_SPAN_END},
    };
    if (text.length == 0 || text.data[0] != '(') {
        return false;
    }
    sw_slice inside = sw_datum_inside(text);
    sw_slice head;
    sw_slice event;
    inside = sw_datum_rest(inside, sw_datum_next(inside, &head));
    if (sw_slice_is(head, "make-dynamic-script")) {
        *class = SW_MARK_DYNAMIC;
        return true;
    }
    if (sw_slice_is(head, "make-articulation")) {
        *class = SW_MARK_ARTICULATION;
        return true;
    }
    bool is_span = sw_slice_is(head, "make-span-event"); /* (make-span-event 'SlurEvent START) */
    size_t at = is_span || sw_datum_makes_event(head) ? sw_datum_next(inside, &event) : 0;
    for (size_t i = 0; at > 0 && i < sizeof events / sizeof events[0]; i++) {
        if (sw_slice_is(event, events[i].event)) {
            const char *stop = is_span ? " STOP" : "'span-direction STOP";
            bool stops = memmem(inside.data, inside.length, stop, strlen(stop)) != NULL;
            *class = stops ? events[i].end : events[i].begin;
            return true;
        }
    }
    return false;
}

static void report_unheard(sw_reader *reader, const sw_value *value)
{
    sw_findings_add(&reader->reading->findings, SW_NOTE, "unresolved", value->file, value->start, value->end,
                    "this Scheme expression computes music, which is not heard: Scheme is not run");
}

/* Scheme with LilyPond inside: its music when it is all there is, between #{ and #}. */
static sw_value read_lilypond_inside(sw_reader *reader, const sw_cursor *cursor, uint32_t index,
                                     const sw_value *where, bool defined)
{
    const sw_syntax *syntax = cursor->syntax;
    uint32_t behind = syntax->nodes[index].next;
    sw_slice head = sw_syntax_slice(syntax, index + 1);
    uint32_t first = index + 2;
    uint32_t end = first;
    while (end < behind && syntax->nodes[end].kind != SW_NODE_SCHEME_TEXT) {
        end = syntax->nodes[end].next;
    }
    bool whole = head.length <= strlen("##{") && behind == (end < behind ? syntax->nodes[end].next : end);
    uint32_t outer = reader->origin; /* as for the template of a function */
    if (outer == SW_NO_INDEX) {
        reader->origin = where->start + 1;
        reader->origin_file = cursor->file;
    }
    sw_value value = sw_read_embedded(reader, cursor->file, first, end, where);
    reader->origin = outer;
    if (!whole && !defined) {
        report_unheard(reader, &value);
        value.kind = SW_VALUE_SCHEME;
    }
    return value;
}

/* The variable that an expression names, NULL when it names none. */
static const sw_value *variable_of(const sw_reader *reader, sw_slice text)
{
    return is_name(text) ? sw_lookup(reader, sw_names_find(reader->reading->names, text)) : NULL;
}

/* A variable's value where its name stands. */
static sw_value use_of(sw_reader *reader, const sw_value *variable, sw_slice name, const sw_value *where)
{
    sw_value value = *variable;
    value.file = where->file;
    value.start = where->start;
    value.end = where->end;
    if (value.kind == SW_VALUE_MUSIC && value.music != SW_NO_INDEX) {
        value.music = sw_music_wrap(reader, SW_MUSIC_REFERENCE, where, variable->music, true);
        sw_music_at(reader, value.music)->name = sw_names_find(reader->reading->names, name);
    } else if (value.kind == SW_VALUE_POST) {
        value.music = sw_music_add(reader, SW_MUSIC_MARK, where->file, where->start, where->end);
        sw_mark_stands_for(reader, value.music, variable->music);
    }
    return value;
}

sw_value sw_read_scheme(sw_reader *reader, sw_cursor *cursor)
{
    const sw_node *node = sw_cursor_node(cursor);
    uint32_t index = cursor->at;
    sw_value value = {.kind = SW_VALUE_SCHEME,
                      .music = SW_NO_INDEX,
                      .number = {.duration = {.factor_num = 1, .factor_den = 1}},
                      .file = cursor->file,
                      .start = node->start,
                      .end = node->end};
    const sw_value where = value;
    sw_slice marked = sw_cursor_text(cursor);
    bool spliced = marked.length > 1 && marked.data[1] == '@';
    sw_slice text = without_marker(marked);
    sw_cursor_next(cursor);
    const sw_function *function = sw_read_function(reader, cursor->file, index);
    sw_slice name = defined_name(text);
    sw_slice expression = name.length > 0 ? defined_value(text, name) : text;
    const sw_value *variable = variable_of(reader, expression);
    sw_mark_class class;
    if (function == NULL && variable == NULL && is_name(expression)) { /* #(define RH rightHandFinger) */
        function = sw_function_named(reader, expression);
    }
    if (function != NULL) {
        value.kind = SW_VALUE_FUNCTION;
        value.function = function;
    } else if (makes_mark(text, &class)) {
        value.kind = SW_VALUE_POST;
        value.music = sw_music_add(reader, SW_MUSIC_MARK, value.file, value.start, value.end);
        sw_music_at(reader, value.music)->check = (int8_t)(class + 1);
    } else if (variable != NULL && name.length > 0) { /* another name */
        value = *variable;
    } else if (variable != NULL) {
        return use_of(reader, variable, text, &value);
    } else if (!sw_build_music(reader, expression, cursor->file, index, spliced, &where, &value)) {
        if (node->kind == SW_NODE_EMBEDDED) {
            value =
                read_lilypond_inside(reader, cursor, index, &value, name.length > 0 || defines_markup(text));
        } else if (sw_makes_music(expression)) {
            report_unheard(reader, &value);
        } else if (!read_length_form(reader, &value, text)) {
            sw_read_constant(reader, &value, expression);
        }
    }
    if (name.length > 0) {
        sw_define(reader, sw_names_add(reader->reading->names, name), &value);
        value.kind = SW_VALUE_NONE;
    }
    return value;
}
