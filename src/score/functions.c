/* Music functions that the sources define: their parameters, and their calls. Scheme is not run: what is
 * known of a body is a template, or that it gives back a parameter. */
#include <ctype.h>
#include <stdlib.h>
#include <string.h>

#include "score/built.h"
#include "score/datum.h"
#include "score/reader.h"

/* ---- definitions ---- */

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

/* The text behind the word define-music-function (or another) in a list or in the lists inside of it; empty
 * when it stands nowhere there. What is quoted, a string or a comment defines nothing. */
static sw_slice behind_definer(sw_slice list, sw_command_kind *kind, uint32_t depth)
{
    sw_slice datum;
    bool first = true;
    for (size_t at; depth < SW_MAX_DEPTH && (at = sw_datum_next(list, &datum)) > 0; first = false) {
        list = sw_datum_rest(list, at);
        for (size_t i = 0; first && i < sizeof definers / sizeof definers[0]; i++) {
            if (sw_slice_is(datum, definers[i].name)) {
                *kind = definers[i].kind;
                return list;
            }
        }
        if (datum.data[0] == '(') {
            sw_slice found = behind_definer(sw_datum_inside(datum), kind, depth + 1);
            if (found.length > 0) {
                return found;
            }
        }
    }
    return (sw_slice){NULL, 0};
}

static size_t count_data(sw_slice list)
{
    size_t count = 0;
    sw_slice datum;
    for (size_t at; (at = sw_datum_next(list, &datum)) > 0; list = sw_datum_rest(list, at)) {
        count++;
    }
    return count;
}

/* A predicate of the list: its letter, large when the argument may be left out, and what stands for it then.
 */
static char read_predicate(sw_slice predicate, sw_slice *otherwise)
{
    *otherwise = (sw_slice){NULL, 0};
    if (predicate.data[0] != '(') {
        return letter_of(predicate);
    }
    sw_slice name = {NULL, 0};
    sw_slice inside = sw_datum_inside(predicate);
    inside = sw_datum_rest(inside, sw_datum_next(inside, &name));
    sw_datum_next(inside, otherwise);
    return (char)toupper((unsigned char)letter_of(name));
}

/* Parameters and predicates behind (define-music-function. Returns the text behind them, an empty one when
 * they are not there. */
static sw_slice read_parameters(sw_reader *reader, sw_function *function, sw_slice text)
{
    static const sw_slice nothing = {NULL, 0};
    sw_slice names;
    sw_slice predicates;
    size_t first = sw_datum_next(text, &names);
    size_t second = first == 0 ? 0 : sw_datum_next(sw_datum_rest(text, first), &predicates);
    if (second == 0 || names.data[0] != '(' || predicates.data[0] != '(') {
        return nothing;
    }
    names = sw_datum_inside(names);
    predicates = sw_datum_inside(predicates);
    size_t name_count = count_data(names);
    size_t count = count_data(predicates);
    /* Definitions of older versions begin their parameters with `parser location`. */
    for (sw_slice extra; name_count > count; name_count--) {
        names = sw_datum_rest(names, sw_datum_next(names, &extra));
    }
    count = name_count;
    char *signature = sw_arena_alloc(reader->arena, count + 1);
    uint32_t *parameters = sw_arena_alloc(reader->arena, (count + 1) * sizeof *parameters);
    sw_slice *defaults = sw_arena_alloc(reader->arena, (count + 1) * sizeof *defaults);
    for (size_t i = 0; i < count; i++) {
        sw_slice datum;
        names = sw_datum_rest(names, sw_datum_next(names, &datum));
        parameters[i] = sw_names_add(reader->reading->names, datum);
        predicates = sw_datum_rest(predicates, sw_datum_next(predicates, &datum));
        signature[i] = read_predicate(datum, &defaults[i]);
    }
    signature[count] = '\0';
    function->signature = signature;
    function->parameters = parameters;
    function->defaults = defaults;
    return sw_datum_rest(text, first + second);
}

/* White space, comments and a string of documentation only, up to the #{ at the end. */
static bool is_template_head(sw_slice text)
{
    sw_slice datum;
    size_t at = sw_datum_next(text, &datum);
    if (at > 0 && (datum.data[0] == '"' || sw_slice_starts(datum, "(_i "))) {
        text = sw_datum_rest(text, at);
        at = sw_datum_next(text, &datum);
    }
    return at == 0 || sw_slice_is(datum, "#{");
}

/* The only expression of a body, but for a string of documentation before it; empty when there are others. */
static sw_slice only_expression(sw_slice text)
{
    static const sw_slice none = {NULL, 0};
    sw_slice datum;
    size_t at = sw_datum_next(text, &datum);
    if (at > 0 && (datum.data[0] == '"' || sw_slice_starts(datum, "(_i "))) {
        text = sw_datum_rest(text, at);
        at = sw_datum_next(text, &datum);
    }
    sw_slice more;
    return at == 0 || sw_datum_next(sw_datum_rest(text, at), &more) > 0 ? none : datum;
}

/* The parameter that an expression is, or none. */
static size_t parameter_given_back(const sw_reader *reader, const sw_function *function, sw_slice expression)
{
    if (expression.length == 0) {
        return SIZE_MAX;
    }
    uint32_t name = sw_names_find(reader->reading->names, expression);
    for (size_t i = 0; function->signature[i] != '\0'; i++) {
        if (function->parameters[i] == name) {
            return i;
        }
    }
    return SIZE_MAX;
}

/* The Scheme that ends with the #{ at or behind a byte: its node, SW_NO_INDEX when there is none. */
static uint32_t text_before_template(const sw_syntax *syntax, uint32_t node, size_t from)
{
    for (uint32_t child = node + 1; child < syntax->nodes[node].next; child = syntax->nodes[child].next) {
        if (syntax->nodes[child].kind == SW_NODE_SCHEME_TEXT && syntax->nodes[child].end >= from) {
            return child;
        }
    }
    return SW_NO_INDEX;
}

/* Where the items behind a Scheme text end: at the next Scheme text, which begins with #}. */
static uint32_t template_end(const sw_syntax *syntax, uint32_t node, uint32_t text)
{
    uint32_t at = syntax->nodes[text].next;
    while (at < syntax->nodes[node].next && syntax->nodes[at].kind != SW_NODE_SCHEME_TEXT) {
        at = syntax->nodes[at].next;
    }
    return at;
}

/* The body is a template when nothing but documentation stands between the predicates and #{, and only the
 * closing parenthesis behind #}. */
static void read_body(const sw_syntax *syntax, sw_function *function, size_t from)
{
    uint32_t head = text_before_template(syntax, function->node, from);
    if (head == SW_NO_INDEX ||
        !is_template_head((sw_slice){syntax->text->bytes + from, syntax->nodes[head].end - from})) {
        return;
    }
    uint32_t last = template_end(syntax, function->node, head);
    sw_slice datum;
    if (last < syntax->nodes[function->node].next &&
        syntax->nodes[last].next >= syntax->nodes[function->node].next &&
        sw_datum_next(sw_syntax_slice(syntax, last), &datum) == 0) { /* only closing parentheses */
        function->body = syntax->nodes[head].next;
        function->body_end = last;
    }
}

sw_value sw_read_template_at(sw_reader *reader, uint32_t file, uint32_t node, sw_slice datum,
                             const sw_value *where)
{
    const sw_syntax *syntax = reader->reading->files[file].syntax;
    uint32_t head =
        text_before_template(syntax, node, (size_t)(datum.data - syntax->text->bytes) + strlen("#{"));
    if (head == SW_NO_INDEX) {
        sw_value nothing = *where;
        nothing.kind = SW_VALUE_NONE;
        nothing.music = SW_NO_INDEX;
        return nothing;
    }
    return sw_read_embedded(reader, file, syntax->nodes[head].next, template_end(syntax, node, head), where);
}

sw_function *sw_read_function(sw_reader *reader, uint32_t file, uint32_t node)
{
    const sw_syntax *syntax = reader->reading->files[file].syntax;
    sw_slice text = sw_syntax_slice(syntax, node);
    if (memmem(text.data, text.length, "-function", strlen("-function")) == NULL) {
        return NULL; /* most Scheme, quickly */
    }
    while (text.length > 0 && text.data[0] != '(') { /* the # or $ */
        text = sw_datum_rest(text, 1);
    }
    sw_command_kind kind = SW_COMMAND_UNKNOWN;
    sw_slice behind = behind_definer(text, &kind, 0);
    if (behind.length == 0) {
        return NULL;
    }
    sw_function *function = sw_arena_alloc(reader->arena, sizeof *function);
    function->command = NULL;
    function->kind = kind;
    function->file = file;
    function->node = node;
    function->body = SW_NO_INDEX;
    function->given_back = SIZE_MAX;
    sw_slice body = read_parameters(reader, function, behind);
    if (body.data == NULL) {
        return NULL;
    }
    if (syntax->nodes[node].kind == SW_NODE_EMBEDDED) {
        read_body(syntax, function, (size_t)(body.data - syntax->text->bytes));
    }
    if (function->body == SW_NO_INDEX) {
        function->expression = only_expression(body);
        function->given_back = parameter_given_back(reader, function, function->expression);
    }
    return function;
}

const sw_function *sw_function_named(sw_reader *reader, sw_slice name)
{
    const sw_command *command = sw_command_find(name);
    if (command == NULL ||
        !(command->kind == SW_COMMAND_MUSIC_FUNCTION || command->kind == SW_COMMAND_EVENT_FUNCTION)) {
        return NULL;
    }
    return sw_function_of(reader, command);
}

const sw_function *sw_function_of(sw_reader *reader, const sw_command *command)
{
    sw_function *function = sw_arena_alloc(reader->arena, sizeof *function);
    *function = (sw_function){.command = command,
                              .signature = command->signature,
                              .kind = command->kind,
                              .body = SW_NO_INDEX,
                              .given_back = SIZE_MAX};
    return function;
}

/* ---- calls ---- */

/* The compiler gives a note that a function passes on the place of the call. */
static sw_value passed_on(sw_reader *reader, sw_value given, const sw_value *call)
{
    given.file = call->file;
    given.start = call->start;
    given.end = call->end;
    uint32_t music = given.kind == SW_VALUE_MUSIC ? given.music : SW_NO_INDEX;
    for (int steps = 0; music != SW_NO_INDEX && steps < 32; steps++) {
        sw_music *m = sw_music_at(reader, music);
        if (sw_music_has_origin(m)) {
            sw_set_origin(reader, m, call->file, call->start);
        }
        bool through =
            m->kind == SW_MUSIC_REFERENCE ||
            (m->kind == SW_MUSIC_CALL && m->first != SW_NO_INDEX &&
             sw_music_at(reader, m->first)->kind == SW_MUSIC_REFERENCE); /* `\tweak color #red #note` */
        music = through ? m->first : SW_NO_INDEX;
    }
    return given;
}

/* A template that is being read. */
struct sw_open_call {
    const sw_function *function;
    const struct sw_open_call *outer;
};

static bool is_open(const sw_reader *reader, const sw_function *function)
{
    const struct sw_open_call *open = reader->calls;
    while (open != NULL && open->function != function) {
        open = open->outer;
    }
    return open != NULL;
}

/* A note value or pitch that was written between #{ and #}. */
static void take_as(sw_reader *reader, char letter, sw_value *value)
{
    const sw_music *m = value->kind == SW_VALUE_MUSIC && value->music != SW_NO_INDEX
                            ? sw_music_at(reader, value->music)
                            : NULL;
    if (m != NULL && letter == 'D' && m->kind == SW_MUSIC_BARE) {
        value->kind = SW_VALUE_DURATION;
        value->number.has_value = true;
        value->number.duration = sw_music_duration(m);
    } else if (m != NULL && letter == 'P' && m->kind == SW_MUSIC_NOTE) {
        value->kind = SW_VALUE_PITCH;
        value->pitch = m->pitch;
    }
}

/* What stands for an argument that was left out. A single note has the place of \default or of the call, all
 * others that of the definition. The inherited duration of the call is not theirs. */
static sw_value default_of(sw_reader *reader, const sw_function *function, size_t i, const sw_value *left_out,
                           const sw_value *call)
{
    sw_slice text = function->defaults[i];
    sw_value value = *call;
    value.kind = SW_VALUE_NONE;
    value.music = SW_NO_INDEX;
    if (!sw_slice_starts(text, "#{")) {
        sw_read_constant(reader, &value, text);
        return value;
    }
    const sw_syntax *syntax = reader->reading->files[function->file].syntax;
    sw_duration duration = reader->duration;
    uint32_t origin = reader->origin;
    reader->origin = syntax->nodes[function->node].start + 1;
    reader->origin_file = function->file;
    value = sw_read_template_at(reader, function->file, function->node, text, call);
    reader->origin = origin;
    reader->duration = duration;
    if (origin == SW_NO_INDEX && left_out->start != 0) {
        value.start = left_out->start;
    }
    value = passed_on(reader, value, &value);
    take_as(reader, function->signature[i], &value);
    return value;
}

/* Reads the body, a template or an expression, with the parameters standing for the arguments. Kind NONE: it
 * is an expression that is not understood. */
static sw_value read_with_arguments(sw_reader *reader, const sw_function *function, sw_value *arguments,
                                    size_t count, const sw_value *call)
{
    struct sw_open_call open = {function, reader->calls};
    reader->calls = &open;
    for (size_t i = 0; i < count; i++) {
        if (arguments[i].kind == SW_VALUE_NONE) {
            arguments[i] = default_of(reader, function, i, &arguments[i], call);
        }
    }
    uint32_t origin = reader->origin;
    if (origin == SW_NO_INDEX) { /* all that the template makes has the place of the call */
        reader->origin = call->start;
        reader->origin_file = call->file;
    }
    sw_value **saved = sw_alloc((count + 1) * sizeof *saved);
    for (size_t i = 0; i < count; i++) {
        saved[i] = sw_lookup(reader, function->parameters[i]);
        sw_define(reader, function->parameters[i], arguments[i].kind == SW_VALUE_NONE ? NULL : &arguments[i]);
    }
    sw_duration duration = reader->duration;
    sw_value body = {.kind = SW_VALUE_NONE, .music = SW_NO_INDEX};
    if (function->body != SW_NO_INDEX) {
        body = sw_read_embedded(reader, function->file, function->body, function->body_end, call);
    } else {
        sw_build_music(reader, function->expression, function->file, function->node, false, call, &body);
    }
    reader->duration = duration;
    for (size_t i = count;
         i-- > 0;) { /* the first of two parameters with the same name has the outer value */
        sw_define(reader, function->parameters[i], saved[i]);
    }
    free(saved);
    reader->calls = open.outer;
    reader->origin = origin;
    sw_value result = *call;
    result.kind = body.kind;
    result.music = body.music;
    result.text = body.text;
    return result;
}

/* The music in the arguments of a call that gives unknown music: it may be part of the result. */
static sw_value unknown_music(sw_reader *reader, const sw_value *arguments, size_t count, uint32_t name,
                              const sw_value *where, const sw_value *call, const char *why)
{
    sw_children children = {.first = SW_NO_INDEX};
    uint8_t free_flag = 0;
    for (size_t i = 0; i < count; i++) {
        if (arguments[i].kind == SW_VALUE_MUSIC && arguments[i].music != SW_NO_INDEX) {
            free_flag |= sw_music_at(reader, arguments[i].music)->flags & SW_MUSIC_FREE;
            sw_children_add(reader, &children, arguments[i].music);
        }
    }
    sw_buffer message = {0};
    sw_buffer_format(&message, "%s; %s", why,
                     children.count > 0 ? "the music in its arguments is read as it is written"
                                        : "notes that it may make are missing");
    sw_unresolved(reader, where, name, sw_buffer_text(&message));
    sw_buffer_free(&message);
    sw_value result = *call;
    result.music = sw_music_wrap(reader, SW_MUSIC_UNCERTAIN, call, children.first, false);
    sw_music_at(reader, result.music)->flags |= free_flag;
    return result;
}

/* What a call with these arguments gives. `call` reaches from the command, `where`, to the end of the last
 * argument. */
static sw_value called(sw_reader *reader, const sw_function *function, uint32_t name, sw_value *arguments,
                       size_t count, const sw_value *where, const sw_value *call)
{
    if (function->command != NULL) {
        return sw_apply(reader, function->command, arguments, count, call);
    }
    sw_value result = *call;
    if (function->kind == SW_COMMAND_EVENT_FUNCTION) {
        result.kind = SW_VALUE_POST;
        result.music = sw_music_add(reader, SW_MUSIC_MARK, result.file, result.start, result.end);
        return result;
    }
    bool built = function->kind == SW_COMMAND_MUSIC_FUNCTION && function->expression.length > 0 &&
                 function->given_back == SIZE_MAX;
    if (function->body != SW_NO_INDEX || built) {
        if (is_open(reader, function)) {
            return unknown_music(reader, arguments, count, name, where, &result,
                                 "it calls itself without end");
        }
        if (sw_reader_is_full(reader, result.file, result.start, result.end)) {
            return result;
        }
        sw_value body = read_with_arguments(reader, function, arguments, count, &result);
        if (body.kind != SW_VALUE_NONE || !built) {
            return passed_on(reader, body, &result);
        }
    }
    if (function->given_back < count) {
        sw_value *given = &arguments[function->given_back];
        if (given->kind == SW_VALUE_NONE) {
            *given = default_of(reader, function, function->given_back, given, &result);
        }
        return passed_on(reader, *given, &result);
    }
    switch (function->kind) {
    case SW_COMMAND_VOID_FUNCTION:
        result.kind = SW_VALUE_NONE;
        return result;
    case SW_COMMAND_VALUE_FUNCTION:
        result.kind = SW_VALUE_SCHEME;
        return result;
    default:
        return unknown_music(reader, arguments, count, name, where, &result,
                             "it is computed in Scheme, which is not run");
    }
}

sw_value sw_call(sw_reader *reader, sw_cursor *cursor, const sw_function *function, uint32_t name,
                 const sw_value *where)
{
    sw_value *arguments = sw_alloc((strlen(function->signature) + 1) * sizeof *arguments);
    size_t count = sw_read_arguments(reader, cursor, function->signature, arguments);
    sw_value call = *where;
    for (size_t i = 0; i < count; i++) {
        if (arguments[i].kind != SW_VALUE_NONE && arguments[i].file == where->file &&
            arguments[i].end > call.end) {
            call.end = arguments[i].end;
        }
    }
    call.kind = SW_VALUE_MUSIC;
    call.music = SW_NO_INDEX;
    sw_value result = called(reader, function, name, arguments, count, where, &call);
    free(arguments);
    return result;
}
