/* Music functions that the sources define: their parameters, and their calls. Scheme is not run: what is
 * known of a body is a template, or that it gives back a parameter. */
#include <ctype.h>
#include <string.h>

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

/* Parameters and predicates behind (define-music-function. Returns the bytes read, 0 when they are not there.
 */
static size_t read_parameters(sw_reader *reader, sw_function *function, sw_slice text)
{
    sw_slice parameters;
    sw_slice predicates;
    size_t first = sw_datum_next(text, &parameters);
    size_t second = first == 0 ? 0 : sw_datum_next(sw_datum_rest(text, first), &predicates);
    if (second == 0 || parameters.data[0] != '(' || predicates.data[0] != '(') {
        return 0;
    }
    uint32_t names[SW_MAX_ARGUMENTS + 2];
    char signature[SW_MAX_ARGUMENTS + 1];
    size_t count = 0;
    size_t letters = 0;
    sw_slice word;
    sw_slice list = sw_datum_inside(parameters);
    for (size_t at; count < SW_MAX_ARGUMENTS + 2 && (at = sw_datum_next(list, &word)) > 0;
         list = sw_datum_rest(list, at)) {
        names[count++] = sw_names_add(reader->reading->names, word);
    }
    list = sw_datum_inside(predicates);
    for (size_t at; letters < SW_MAX_ARGUMENTS && (at = sw_datum_next(list, &word)) > 0;
         list = sw_datum_rest(list, at)) {
        bool optional = word.length > 0 && word.data[0] == '(';
        if (optional) {
            sw_datum_next(sw_datum_inside(word), &word);
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
    size_t at = sw_datum_next(text, &datum);
    if (at > 0 && datum.data[0] == '"') {
        text = sw_datum_rest(text, at);
        at = sw_datum_next(text, &datum);
    }
    return at == 0 || sw_slice_is(datum, "#{");
}

/* The parameter that is the whole body (`music` behind a string of documentation), or none. */
static size_t parameter_given_back(const sw_reader *reader, const sw_function *function, sw_slice text)
{
    sw_slice datum;
    size_t at = sw_datum_next(text, &datum);
    if (at > 0 && (datum.data[0] == '"' || sw_slice_starts(datum, "(_i "))) {
        text = sw_datum_rest(text, at);
        at = sw_datum_next(text, &datum);
    }
    sw_slice more;
    if (at == 0 || sw_datum_next(sw_datum_rest(text, at), &more) > 0) {
        return SIZE_MAX;
    }
    uint32_t name = sw_names_find(reader->reading->names, datum);
    for (size_t i = 0; function->signature[i] != '\0'; i++) {
        if (function->parameters[i] == name) {
            return i;
        }
    }
    return SIZE_MAX;
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
    size_t taken = read_parameters(reader, function, sw_datum_rest(text, (size_t)(place - text.data)));
    if (taken == 0) {
        return NULL;
    }
    size_t from_body = (size_t)(place - text.data) + taken;
    function->given_back = n->kind == SW_NODE_EMBEDDED
                               ? SIZE_MAX
                               : parameter_given_back(reader, function, sw_datum_rest(text, from_body));
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
            if (sw_datum_next(tail, &datum) == 0) { /* only closing parentheses */
                function->body_file = file;
                function->body = node + 2;
                function->body_end = last;
            }
        }
    }
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

/* Reads the template with the parameters standing for the arguments. */
static sw_value read_template(sw_reader *reader, const sw_function *function, const sw_value *arguments,
                              size_t count, const sw_value *call)
{
    sw_value *saved[SW_MAX_ARGUMENTS];
    for (size_t i = 0; i < count; i++) {
        saved[i] = sw_lookup(reader, function->parameters[i]);
        sw_define(reader, function->parameters[i], arguments[i].kind == SW_VALUE_NONE ? NULL : &arguments[i]);
    }
    sw_duration duration = reader->duration;
    uint32_t origin = reader->origin;
    if (origin == SW_NO_INDEX) { /* all that the template makes has the place of the call */
        reader->origin = call->start;
        reader->origin_file = call->file;
    }
    struct sw_open_call open = {function, reader->calls};
    reader->calls = &open;
    sw_value body = sw_read_embedded(reader, function->body_file, function->body, function->body_end, call);
    reader->calls = open.outer;
    reader->origin = origin;
    reader->duration = duration;
    for (size_t i = count;
         i-- > 0;) { /* the first of two parameters with the same name has the outer value */
        sw_define(reader, function->parameters[i], saved[i]);
    }
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

sw_value sw_call(sw_reader *reader, sw_cursor *cursor, const sw_function *function, uint32_t name,
                 const sw_value *where)
{
    sw_value arguments[SW_MAX_ARGUMENTS];
    size_t count = sw_read_arguments(reader, cursor, function->signature, arguments);
    sw_value result = *where; /* from the command to the end of its last argument */
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
    if (function->body != SW_NO_INDEX) {
        if (is_open(reader, function)) {
            return unknown_music(reader, arguments, count, name, where, &result,
                                 "it calls itself without end");
        }
        if (sw_reader_is_full(reader, result.file, result.start, result.end)) {
            return result;
        }
        return passed_on(reader, read_template(reader, function, arguments, count, &result), &result);
    }
    if (function->given_back < count) {
        return passed_on(reader, arguments[function->given_back], &result);
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
