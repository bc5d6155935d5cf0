/* The little that is understood of Scheme: constants, names, and the definitions of music functions, whose
 * parameters tell how to bind the arguments of a user's own commands. Nothing is run. */
#include <ctype.h>
#include <string.h>

#include "score/reader.h"

/* One datum at the beginning of the text: white space and comments before it are passed over. Returns the
 * bytes up to its end, 0 when there is none; *datum is the datum itself. */
static size_t next_datum(sw_slice text, sw_slice *datum)
{
    size_t at = 0;
    while (at < text.length) {
        if (isspace((unsigned char)text.data[at])) {
            at++;
        } else if (text.data[at] == ';') {
            while (at < text.length && text.data[at] != '\n') {
                at++;
            }
        } else {
            break;
        }
    }
    size_t start = at;
    size_t depth = 0;
    while (at < text.length) {
        char c = text.data[at];
        if (c == '"') {
            for (at++; at < text.length && text.data[at] != '"'; at++) {
                at += text.data[at] == '\\' && at + 1 < text.length;
            }
            at++;
        } else if (c == '(') {
            depth++;
            at++;
            continue;
        } else if (c == ')') {
            if (depth == 0) {
                break;
            }
            depth--;
            at++;
        } else if (c == '\'' || c == '`' || c == ',' ||
                   (c == '#' && at + 1 < text.length && text.data[at + 1] == '(')) {
            at++;
            continue;
        } else if (isspace((unsigned char)c)) {
            at++;
            continue;
        } else if (c == ';') {
            while (at < text.length && text.data[at] != '\n') {
                at++;
            }
            continue;
        } else {
            if (c == '#' && at + 1 < text.length && text.data[at + 1] == '\\') {
                at += 3;
            }
            while (at < text.length && !isspace((unsigned char)text.data[at]) && text.data[at] != '(' &&
                   text.data[at] != ')' && text.data[at] != '"' && text.data[at] != ';') {
                at++;
            }
        }
        if (depth == 0) {
            break;
        }
    }
    if (at > text.length) {
        at = text.length;
    }
    *datum = (sw_slice){text.data + start, at - start};
    return at == start ? 0 : at;
}

static sw_slice rest_of(sw_slice text, size_t from)
{
    return (sw_slice){text.data + from, text.length - from};
}

/* The inside of a parenthesised datum. */
static sw_slice inside(sw_slice datum)
{
    if (datum.length < 2 || datum.data[0] != '(') {
        return (sw_slice){datum.data, 0};
    }
    bool closed = datum.data[datum.length - 1] == ')';
    return (sw_slice){datum.data + 1, datum.length - (closed ? 2 : 1)};
}

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
        if (!read_integer((sw_slice){text.data, at}, &num) || !read_integer(rest_of(text, at + 1), &den)) {
            return false;
        }
    } else if (point != NULL) {
        size_t at = (size_t)(point - text.data);
        int64_t whole = 0;
        int64_t part = 0;
        if ((at > 0 && !read_integer((sw_slice){text.data, at}, &whole)) ||
            (at + 1 < text.length && !read_integer(rest_of(text, at + 1), &part)) || text.length - at > 10 ||
            whole > 1000000) {
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

/* (function a b ...) for the few functions that give constants. */
static void read_form(sw_value *value, sw_slice form)
{
    sw_slice words[6];
    size_t count = 0;
    for (size_t at; count < 6 && (at = next_datum(form, &words[count])) > 0; form = rest_of(form, at)) {
        count++;
    }
    int64_t numbers[5] = {0};
    sw_rational fraction = {0, 1};
    for (size_t i = 1; i < count; i++) {
        if (!read_integer(words[i], &numbers[i - 1]) && i < 3 && !read_rational(words[i], &fraction)) {
            return;
        }
    }
    if (count == 3 && (sw_slice_is(words[0], "cons") || sw_slice_is(words[0], "ly:make-moment"))) {
        set_number(value, sw_rational_make(numbers[0], numbers[1]));
    } else if (count == 2 && sw_slice_is(words[0], "ly:make-moment")) {
        set_number(value, fraction.num != 0 ? fraction : sw_rational_make(numbers[0], 1));
    } else if (count >= 3 && sw_slice_is(words[0], "ly:make-pitch")) {
        value->kind = SW_VALUE_PITCH;
        value->pitch = (sw_pitch){(int8_t)numbers[1], (int8_t)numbers[0], 0};
        if (count > 3 && sw_slice_is(words[3], "FLAT")) {
            value->pitch.alter = -2;
        } else if (count > 3 && sw_slice_is(words[3], "SHARP")) {
            value->pitch.alter = 2;
        } else if (count > 3 && read_rational(words[3], &fraction)) {
            value->pitch.alter = (int8_t)(4 * fraction.num / fraction.den);
        }
    } else if (count >= 2 && sw_slice_is(words[0], "ly:make-duration")) {
        value->kind = SW_VALUE_DURATION;
        value->number.has_value = true;
        value->number.duration = (sw_duration){(int8_t)numbers[0], (uint8_t)numbers[1], 1, 1};
        if (count > 4 && numbers[3] != 0) {
            value->number.duration.factor_num = (int32_t)numbers[2];
            value->number.duration.factor_den = (int32_t)numbers[3];
        }
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
    for (size_t at; (at = next_datum(list, &word)) > 0; list = rest_of(list, at)) {
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

static void read_constant(sw_reader *reader, sw_value *value, sw_slice text)
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
        sw_slice quoted = rest_of(text, 1);
        while (quoted.length > 0 && isspace((unsigned char)quoted.data[0])) {
            quoted = rest_of(quoted, 1);
        }
        if (quoted.length > 0 && quoted.data[0] == '(') {
            read_list(reader, value, inside(quoted));
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
        read_form(value, inside(text));
    }
}

static sw_slice without_marker(sw_slice text)
{
    size_t marker = text.length > 1 && text.data[1] == '@' ? 2 : 1;
    text = rest_of(text, marker < text.length ? marker : text.length);
    while (text.length > 0 && isspace((unsigned char)text.data[0])) {
        text = rest_of(text, 1);
    }
    return text;
}

/* ---- definitions of functions ---- */

static char letter_of(sw_slice predicate)
{
    static const struct {
        const char *name;
        char letter;
    } letters[] = {
        {"ly:music?", 'm'},
        {"ly:pitch?", 'p'},
        {"ly:duration?", 'd'},
        {"ly:event?", 'e'},
        {"number?", 'n'},
        {"integer?", 'n'},
        {"real?", 'n'},
        {"index?", 'n'},
        {"positive?", 'n'},
        {"rational?", 'n'},
        {"exact-rational?", 'n'},
        {"ly:dir?", 'n'},
        {"fraction?", 'f'},
        {"scale?", 'f'},
        {"string?", 's'},
        {"markup?", 'k'},
        {"cheap-markup?", 'k'},
        {"symbol?", 'y'},
        {"symbol-list?", 'y'},
        {"symbol-list-or-symbol?", 'y'},
        {"key?", 'y'},
        {"key-list?", 'y'},
        {"key-list-or-symbol?", 'y'},
        {"symbol-list-or-music?", 'r'},
        {"key-list-or-music?", 'r'},
        {"duration-or-music?", 't'},
        {"number-list?", 'l'},
        {"ly:context-mod?", 'w'},
        {"ly:moment?", 'x'},
        {"boolean?", 'x'},
    };
    for (size_t i = 0; i < sizeof letters / sizeof letters[0]; i++) {
        if (sw_slice_is(predicate, letters[i].name)) {
            return letters[i].letter;
        }
    }
    return 'x';
}

static const struct definer {
    const char *name;
    sw_command_kind kind;
} definers[] = {
    {"define-music-function", SW_COMMAND_MUSIC_FUNCTION},
    {"define-event-function", SW_COMMAND_EVENT_FUNCTION},
    {"define-scheme-function", SW_COMMAND_VALUE_FUNCTION},
    {"define-void-function", SW_COMMAND_VOID_FUNCTION},
};

/* Parameters and predicates behind (define-music-function. Returns the bytes read, 0 when they are not there.
 */
static size_t read_parameters(sw_reader *reader, sw_function *function, sw_slice text)
{
    sw_slice parameters;
    sw_slice predicates;
    size_t first = next_datum(text, &parameters);
    size_t second = first == 0 ? 0 : next_datum(rest_of(text, first), &predicates);
    if (second == 0 || parameters.data[0] != '(' || predicates.data[0] != '(') {
        return 0;
    }
    uint32_t names[SW_MAX_ARGUMENTS + 2];
    char signature[SW_MAX_ARGUMENTS + 1];
    size_t count = 0;
    size_t letters = 0;
    sw_slice word;
    sw_slice list = inside(parameters);
    for (size_t at; count < SW_MAX_ARGUMENTS + 2 && (at = next_datum(list, &word)) > 0;
         list = rest_of(list, at)) {
        names[count++] = sw_names_add(reader->reading->names, word);
    }
    list = inside(predicates);
    for (size_t at; letters < SW_MAX_ARGUMENTS && (at = next_datum(list, &word)) > 0;
         list = rest_of(list, at)) {
        bool optional = word.length > 0 && word.data[0] == '(';
        if (optional) {
            next_datum(inside(word), &word);
        }
        char letter = letter_of(word);
        signature[letters++] = optional ? (char)toupper((unsigned char)letter) : letter;
    }
    /* Definitions of older versions begin their parameters with `parser location`. */
    size_t extra = count > letters ? count - letters : 0;
    if (count < letters) {
        letters = count;
    }
    signature[letters] = '\0';
    uint32_t *kept = sw_arena_alloc(reader->arena, (letters + 1) * sizeof *kept);
    memcpy(kept, names + extra, letters * sizeof *kept);
    function->signature = sw_arena_copy(reader->arena, (sw_slice){signature, letters});
    function->parameters = kept;
    return first + second;
}

/* White space, comments and a string of documentation only. */
static bool is_template_head(sw_slice text)
{
    sw_slice datum;
    size_t at = next_datum(text, &datum);
    if (at > 0 && datum.data[0] == '"') {
        text = rest_of(text, at);
        at = next_datum(text, &datum);
    }
    return at == 0 || sw_slice_is(datum, "#{");
}

sw_function *sw_read_function(sw_reader *reader, uint32_t file, uint32_t node)
{
    const sw_syntax *syntax = reader->reading->files[file].syntax;
    const sw_node *n = &syntax->nodes[node];
    sw_slice text = sw_syntax_slice(syntax, node);
    const char *place = NULL;
    sw_command_kind kind = SW_COMMAND_UNKNOWN;
    for (size_t i = 0; i < sizeof definers / sizeof definers[0] && place == NULL; i++) {
        place = memmem(text.data, text.length, definers[i].name, strlen(definers[i].name));
        if (place != NULL) {
            kind = definers[i].kind;
            place += strlen(definers[i].name);
        }
    }
    if (place == NULL) {
        return NULL;
    }
    sw_function *function = sw_arena_alloc(reader->arena, sizeof *function);
    function->kind = kind;
    function->body = SW_NO_INDEX;
    size_t taken = read_parameters(reader, function, rest_of(text, (size_t)(place - text.data)));
    if (taken == 0) {
        return NULL;
    }
    if (n->kind == SW_NODE_EMBEDDED) {
        /* The body is a template when nothing but documentation stands between the predicates and #{, and
         * only the closing parenthesis behind #}. */
        const sw_node *head = &syntax->nodes[node + 1];
        size_t from = (size_t)(place - syntax->text->bytes) + taken;
        uint32_t last = SW_NO_INDEX;
        uint32_t texts = 0;
        for (uint32_t child = node + 1; child < n->next; child = syntax->nodes[child].next) {
            if (syntax->nodes[child].kind == SW_NODE_SCHEME_TEXT) {
                texts++;
                last = child;
            }
        }
        if (texts == 2 && from <= head->end &&
            is_template_head((sw_slice){syntax->text->bytes + from, head->end - from})) {
            sw_slice tail = sw_syntax_slice(syntax, last);
            sw_slice datum;
            if (next_datum(tail, &datum) == 0) { /* only closing parentheses */
                function->body_file = file;
                function->body = node + 2;
                function->body_end = last;
            }
        }
    }
    return function;
}

/* (define name ...): the name, or an empty slice. */
static sw_slice defined_name(sw_slice text)
{
    sw_slice word;
    sw_slice form = text.length > 0 && text.data[0] == '(' ? rest_of(text, 1) : text;
    size_t at = next_datum(form, &word);
    if (at == 0 || !(sw_slice_is(word, "define") || sw_slice_is(word, "define-public"))) {
        return (sw_slice){NULL, 0};
    }
    return next_datum(rest_of(form, at), &word) > 0 && is_name(word) ? word : (sw_slice){NULL, 0};
}

/* The items between #{ and #} as one value. */
static sw_value read_embedded(sw_reader *reader, uint32_t file, uint32_t first, uint32_t end,
                              const sw_value *where)
{
    sw_cursor cursor = {reader->reading->files[file].syntax, file, first, end};
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
    value.music = sw_music_wrap(reader, SW_MUSIC_SEQUENCE, where,
                                children.count > 0 ? children.first : SW_NO_INDEX, true);
    for (uint32_t c = children.count > 0 ? children.first : SW_NO_INDEX; c != SW_NO_INDEX;
         c = sw_music_at(reader, c)->next) {
        sw_music_at(reader, value.music)->flags |= sw_music_at(reader, c)->flags & SW_MUSIC_FREE;
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
    sw_slice text = without_marker(sw_cursor_text(cursor));
    sw_cursor_next(cursor);
    const sw_function *function = sw_read_function(reader, cursor->file, index);
    sw_slice name = defined_name(text);
    if (function != NULL) {
        value.kind = SW_VALUE_FUNCTION;
        value.function = function;
    } else if (sw_slice_starts(text, "(make-dynamic-script")) { /* a dynamic of the user's own: no music */
        value.kind = SW_VALUE_POST;
        value.music = sw_music_add(reader, SW_MUSIC_MARK, value.file, value.start, value.end);
    } else if (node->kind == SW_NODE_EMBEDDED) {
        const sw_syntax *syntax = cursor->syntax;
        sw_slice head = sw_syntax_slice(syntax, index + 1);
        uint32_t first = index + 2;
        uint32_t end = first;
        while (end < node->next && syntax->nodes[end].kind != SW_NODE_SCHEME_TEXT) {
            end = syntax->nodes[end].next;
        }
        bool whole = head.length <= 3 && node->next == (end < node->next ? syntax->nodes[end].next : end);
        value = read_embedded(reader, cursor->file, first, end, &value);
        if (!whole && name.length == 0) {
            sw_findings_add(&reader->reading->findings, SW_NOTE, "unresolved", value.file, value.start,
                            value.end,
                            "this Scheme expression computes music; the LilyPond inside it is not heard");
            value.kind = SW_VALUE_SCHEME;
        }
    } else if (is_name(text) && name.length == 0 &&
               sw_lookup(reader, sw_names_find(reader->reading->names, text)) != NULL) {
        const sw_value *variable = sw_lookup(reader, sw_names_find(reader->reading->names, text));
        sw_value copy = *variable;
        copy.file = value.file;
        copy.start = value.start;
        copy.end = value.end;
        if (copy.kind == SW_VALUE_MUSIC && copy.music != SW_NO_INDEX) {
            copy.music = sw_music_wrap(reader, SW_MUSIC_REFERENCE, &value, variable->music, true);
            sw_music_at(reader, copy.music)->name = sw_names_find(reader->reading->names, text);
        } else if (copy.kind == SW_VALUE_POST) {
            copy.music = sw_music_add(reader, SW_MUSIC_MARK, value.file, value.start, value.end);
        }
        return copy;
    } else {
        read_constant(reader, &value, text);
    }
    if (name.length > 0) {
        sw_define(reader, sw_names_add(reader->reading->names, name), &value);
        value.kind = SW_VALUE_NONE;
    }
    return value;
}

sw_value sw_call(sw_reader *reader, sw_cursor *cursor, const sw_function *function, uint32_t name,
                 const sw_value *where)
{
    sw_value arguments[SW_MAX_ARGUMENTS];
    sw_value result = *where;
    size_t count = sw_read_arguments(reader, cursor, function->signature, arguments);
    for (size_t i = 0; i < count; i++) {
        if (arguments[i].kind != SW_VALUE_NONE && arguments[i].file == where->file &&
            arguments[i].end > result.end) {
            result.end = arguments[i].end;
        }
    }
    result.kind = SW_VALUE_MUSIC;
    result.music = SW_NO_INDEX;
    if (function->kind == SW_COMMAND_EVENT_FUNCTION) {
        result.kind = SW_VALUE_POST;
        result.music = sw_music_add(reader, SW_MUSIC_MARK, result.file, result.start, result.end);
        return result;
    }
    if (function->body != SW_NO_INDEX && reader->calls < 50) {
        sw_value *saved[SW_MAX_ARGUMENTS];
        for (size_t i = 0; i < count; i++) {
            saved[i] = sw_lookup(reader, function->parameters[i]);
            sw_define(reader, function->parameters[i],
                      arguments[i].kind == SW_VALUE_NONE ? NULL : &arguments[i]);
        }
        sw_duration duration = reader->duration;
        reader->calls++;
        sw_value body =
            read_embedded(reader, function->body_file, function->body, function->body_end, &result);
        reader->calls--;
        reader->duration = duration;
        for (size_t i = 0; i < count; i++) {
            sw_define(reader, function->parameters[i], saved[i]);
        }
        result.kind = body.kind;
        result.music = body.music;
        result.text = body.text;
        return result;
    }
    if (function->kind == SW_COMMAND_VOID_FUNCTION || function->kind == SW_COMMAND_VALUE_FUNCTION) {
        result.kind = function->kind == SW_COMMAND_VOID_FUNCTION ? SW_VALUE_NONE : SW_VALUE_SCHEME;
        return result;
    }
    sw_children children = {0};
    uint8_t free_flag = 0;
    for (size_t i = 0; i < count; i++) {
        if (arguments[i].kind == SW_VALUE_MUSIC && arguments[i].music != SW_NO_INDEX) {
            free_flag |= sw_music_at(reader, arguments[i].music)->flags & SW_MUSIC_FREE;
            sw_children_add(reader, &children, arguments[i].music);
        }
    }
    sw_unresolved(reader, where, name,
                  children.count > 0
                      ? "it is computed in Scheme, which is not run; the music in its arguments is read as "
                        "it is written"
                      : "it is computed in Scheme, which is not run; notes that it may make are missing");
    result.music = sw_music_wrap(reader, SW_MUSIC_UNCERTAIN, &result,
                                 children.count > 0 ? children.first : SW_NO_INDEX, false);
    sw_music_at(reader, result.music)->flags |= free_flag;
    return result;
}
