/* Music that Scheme builds out of music: nothing is run, but lists and copies of music say what they make. */
#include "score/built.h"

#include "score/datum.h"

typedef struct builder {
    sw_reader *reader;
    uint32_t file; /* where the Scheme stands ... */
    uint32_t node; /* ... and its node */
    const sw_value *where;
    uint32_t depth;
} builder;

enum { MOST_ELEMENTS = 10000 };

static bool build(builder *b, sw_slice expression, uint32_t *music);

/* The next datum of a list; false at its end. */
static bool take(sw_slice *list, sw_slice *datum)
{
    size_t at = sw_datum_next(*list, datum);
    *list = sw_datum_rest(*list, at);
    return at > 0;
}

/* ---- constants ---- */

static const sw_value *variable_of(const builder *b, sw_slice datum)
{
    return sw_lookup(b->reader, sw_names_find(b->reader->reading->names, datum));
}

/* What a datum is: the value of a variable or parameter, a constant, or one with numbers in variables, such
 * as (ly:make-duration 0 0 n). */
static sw_value value_of(builder *b, sw_slice datum)
{
    sw_value value = *b->where;
    value.kind = SW_VALUE_NONE;
    const sw_value *variable = variable_of(b, datum);
    if (variable != NULL) {
        return *variable;
    }
    if (datum.data[0] != '(') {
        sw_read_constant(b->reader, &value, datum);
        return value;
    }
    sw_buffer form = {0};
    sw_slice inside = sw_datum_inside(datum);
    for (sw_slice word; take(&inside, &word);) {
        char number[SW_RATIONAL_TEXT];
        variable = variable_of(b, word);
        bool known = variable != NULL && variable->kind == SW_VALUE_NUMBER;
        sw_buffer_char(&form, form.length == 0 ? '(' : ' ');
        sw_buffer_append(&form, known ? sw_slice_of(sw_rational_print(variable->rational, number)) : word);
    }
    sw_buffer_char(&form, ')');
    sw_read_constant(b->reader, &value, sw_buffer_slice(&form));
    sw_buffer_free(&form);
    return value;
}

/* A note, skip or rest of a duration. What is made for a list has no place for the compiler: that is left to
 * it. */
static bool make_event(builder *b, sw_music_kind kind, sw_slice duration, uint32_t *music)
{
    sw_value value = value_of(b, duration);
    bool has_duration =
        value.kind == SW_VALUE_DURATION || (value.kind == SW_VALUE_NUMBER && value.number.has_value);
    if (!has_duration || (b->depth > 1 && kind != SW_MUSIC_SKIP)) {
        return false;
    }
    *music = sw_music_add(b->reader, kind, b->where->file, b->where->start, b->where->end);
    sw_music *m = sw_music_at(b->reader, *music);
    sw_music_set_duration(m, value.number.duration);
    sw_set_origin(b->reader, m, b->where->file, b->where->start);
    m->flags |= SW_MUSIC_WRITTEN_VALUE;
    return true;
}

/* ---- lists ---- */

static bool add_music(builder *b, sw_slice expression, sw_children *children)
{
    uint32_t music;
    if (!build(b, expression, &music)) {
        return false;
    }
    sw_children_add(b->reader, children, music);
    return true;
}

/* (make-list n music), behind its name */
static bool repeat_element(builder *b, sw_slice inside, sw_children *children)
{
    sw_slice datum;
    if (!take(&inside, &datum)) {
        return false;
    }
    sw_value count = value_of(b, datum);
    if (count.kind != SW_VALUE_NUMBER || count.rational.den != 1 || count.rational.num < 0 ||
        count.rational.num > MOST_ELEMENTS || !take(&inside, &datum)) {
        return false;
    }
    for (int64_t i = 0; i < count.rational.num; i++) {
        if (!add_music(b, datum, children)) {
            return false;
        }
    }
    return true;
}

/* The elements that a list expression gives: (list a b), (make-list n a), (append list list), '(). */
static bool build_list(builder *b, sw_slice expression, sw_children *children)
{
    sw_slice head;
    if (sw_slice_is(expression, "'()")) {
        return true;
    }
    if (expression.length == 0 || expression.data[0] != '(' || b->depth >= SW_MAX_DEPTH) {
        return false;
    }
    sw_slice inside = sw_datum_inside(expression);
    if (!take(&inside, &head)) {
        return false;
    }
    if (sw_slice_is(head, "make-list")) {
        return repeat_element(b, inside, children);
    }
    bool appends = sw_slice_is(head, "append");
    bool understood = appends || sw_slice_is(head, "list");
    b->depth++;
    for (sw_slice datum; understood && take(&inside, &datum);) {
        understood = appends ? build_list(b, datum, children) : add_music(b, datum, children);
    }
    b->depth--;
    return understood;
}

static bool build_compound(builder *b, sw_music_kind kind, sw_slice list, uint32_t *music)
{
    sw_children children = {.first = SW_NO_INDEX};
    if (!build_list(b, list, &children)) {
        return false;
    }
    *music = sw_music_wrap(b->reader, kind, b->where, children.first, false);
    uint8_t free_flag = 0;
    for (uint32_t c = children.first; c != SW_NO_INDEX; c = sw_music_at(b->reader, c)->next) {
        free_flag |= sw_music_at(b->reader, c)->flags & SW_MUSIC_FREE;
    }
    sw_music_at(b->reader, *music)->flags |= free_flag;
    return true;
}

/* The value of a property in a list of properties and values; an empty slice when it has none. */
static sw_slice property_of(sw_slice list, const char *property)
{
    sw_slice name;
    sw_slice value;
    while (take(&list, &name) && take(&list, &value)) {
        if (sw_slice_is(name, property)) {
            return value;
        }
    }
    return (sw_slice){NULL, 0};
}

static bool make_note(builder *b, sw_slice pitch, sw_slice duration, uint32_t *music)
{
    if (pitch.length == 0) {
        return false;
    }
    sw_value value = value_of(b, pitch);
    if (value.kind != SW_VALUE_PITCH || !make_event(b, SW_MUSIC_NOTE, duration, music)) {
        return false;
    }
    sw_music *m = sw_music_at(b->reader, *music);
    m->pitch = value.pitch;
    m->flags |= SW_MUSIC_PITCHED;
    return true;
}

/* An event made by its kind and properties, behind the name of the function */
static bool build_event(builder *b, sw_slice inside, uint32_t *music)
{
    sw_slice kind;
    if (!take(&inside, &kind)) {
        return false;
    }
    sw_slice elements = property_of(inside, "'elements");
    sw_slice duration = property_of(inside, "'duration");
    if (sw_slice_is(kind, "'SequentialMusic")) {
        return build_compound(b, SW_MUSIC_SEQUENCE, elements, music);
    }
    if (sw_slice_is(kind, "'SimultaneousMusic")) {
        return build_compound(b, SW_MUSIC_SIMULTANEOUS, elements, music);
    }
    if (duration.length == 0) {
        return false;
    }
    if (sw_slice_is(kind, "'NoteEvent")) {
        return make_note(b, property_of(inside, "'pitch"), duration, music);
    }
    return (sw_slice_is(kind, "'SkipEvent") && make_event(b, SW_MUSIC_SKIP, duration, music)) ||
           (sw_slice_is(kind, "'RestEvent") && make_event(b, SW_MUSIC_REST, duration, music));
}

/* ---- expressions ---- */

/* Outside of a function the notes have the place of the expression behind its # or $. */
static sw_value read_template(builder *b, sw_slice datum)
{
    uint32_t outer = b->reader->origin;
    if (outer == SW_NO_INDEX) {
        b->reader->origin = b->where->start + 1;
        b->reader->origin_file = b->where->file;
    }
    sw_value value = sw_read_template_at(b->reader, b->file, b->node, datum, b->where);
    b->reader->origin = outer;
    return value;
}

static bool build_named(builder *b, sw_slice name, uint32_t *music)
{
    const sw_value *variable = variable_of(b, name);
    if (variable == NULL || variable->kind != SW_VALUE_MUSIC || variable->music == SW_NO_INDEX) {
        return false;
    }
    *music = sw_music_wrap(b->reader, SW_MUSIC_REFERENCE, b->where, variable->music, true);
    sw_music_at(b->reader, *music)->name = sw_names_find(b->reader->reading->names, name);
    return true;
}

static bool build_alone(builder *b, sw_slice body, uint32_t *music)
{
    sw_slice expression;
    sw_slice more;
    return take(&body, &expression) && !take(&body, &more) && build(b, expression, music);
}

/* ((name value) ...) and the expression behind them, in which the names have their values. */
static bool build_let(builder *b, sw_slice bindings, sw_slice body, uint32_t *music)
{
    sw_slice binding;
    if (!take(&bindings, &binding)) {
        return build_alone(b, body, music);
    }
    sw_slice inside = sw_datum_inside(binding);
    sw_slice name;
    sw_slice datum;
    if (!take(&inside, &name) || !take(&inside, &datum)) {
        return false;
    }
    sw_value value = value_of(b, datum);
    if (sw_slice_starts(datum, "#{")) { /* music or a mark */
        value = read_template(b, datum);
    } else if (value.kind == SW_VALUE_NONE && build(b, datum, &value.music)) {
        value.kind = SW_VALUE_MUSIC;
    }
    if (value.kind == SW_VALUE_NONE) {
        return false;
    }
    uint32_t number = sw_names_add(b->reader->reading->names, name);
    sw_value *outer = sw_lookup(b->reader, number);
    sw_define(b->reader, number, &value);
    bool understood = build_let(b, bindings, body, music);
    sw_define(b->reader, number, outer);
    return understood;
}

static bool build_form(builder *b, sw_slice inside, uint32_t *music)
{
    sw_slice head;
    sw_slice argument;
    if (!take(&inside, &head)) {
        return false;
    }
    if (sw_datum_makes_event(head)) {
        return build_event(b, inside, music);
    }
    if (!take(&inside, &argument)) {
        return false;
    }
    if (sw_slice_is(head, "let") || sw_slice_is(head, "let*")) {
        return build_let(b, sw_datum_inside(argument), inside, music);
    }
    if (sw_slice_is(head, "make-multi-measure-rest")) {
        return make_event(b, SW_MUSIC_FULL_REST, argument, music);
    }
    sw_slice more;
    if (take(&inside, &more)) {
        return false;
    }
    if (sw_slice_is(head, "make-sequential-music")) {
        return build_compound(b, SW_MUSIC_SEQUENCE, argument, music);
    }
    if (sw_slice_is(head, "make-simultaneous-music")) {
        return build_compound(b, SW_MUSIC_SIMULTANEOUS, argument, music);
    }
    return (sw_slice_is(head, "ly:music-deep-copy") || sw_slice_is(head, "begin")) &&
           build(b, argument, music);
}

static bool build(builder *b, sw_slice expression, uint32_t *music)
{
    if (expression.length == 0 || b->depth >= SW_MAX_DEPTH ||
        sw_reader_is_full(b->reader, b->where->file, b->where->start, b->where->end)) {
        return false;
    }
    b->depth++;
    bool understood;
    if (sw_slice_starts(expression, "#{")) {
        sw_value value = read_template(b, expression);
        *music = value.music;
        understood = value.kind == SW_VALUE_MUSIC && value.music != SW_NO_INDEX;
    } else if (expression.data[0] == '(') {
        understood = build_form(b, sw_datum_inside(expression), music);
    } else {
        understood = build_named(b, expression, music);
    }
    b->depth--;
    return understood;
}

bool sw_build_music(sw_reader *reader, sw_slice expression, uint32_t file, uint32_t node, bool spliced,
                    const sw_value *where, sw_value *value)
{
    builder b = {reader, file, node, where, 0};
    sw_duration duration = reader->duration;
    uint32_t music;
    bool built =
        spliced ? build_compound(&b, SW_MUSIC_SEQUENCE, expression, &music) : build(&b, expression, &music);
    reader->duration = duration;
    if (!built) {
        return false;
    }
    *value = *where;
    value->kind = SW_VALUE_MUSIC;
    value->music = music;
    return true;
}

/* An event made by its kind, behind the name of the function: most events are marks, and no music of their
 * own. */
static bool is_kind_with_length(sw_slice inside)
{
    sw_slice kind;
    return take(&inside, &kind) && (sw_slice_ends(kind, "Music") || sw_slice_is(kind, "'NoteEvent") ||
                                    sw_slice_is(kind, "'EventChord") || sw_slice_is(kind, "'RestEvent") ||
                                    sw_slice_is(kind, "'SkipEvent"));
}

bool sw_makes_music(sw_slice expression)
{
    static const char *const makers[] = {
        "make-sequential-music", "make-simultaneous-music", "make-multi-measure-rest",
        "make-repeat",           "make-grace-music",        "ly:music-deep-copy",
        "ly:music-transpose",    "ly:music-compress",       "music-map",
        "music-filter",          "unfold-repeats",          "unfold-repeats-fully"};
    sw_slice head;
    if (expression.length == 0 || expression.data[0] != '(') {
        return false;
    }
    sw_slice inside = sw_datum_inside(expression);
    if (!take(&inside, &head)) {
        return false;
    }
    if (sw_datum_makes_event(head)) {
        return is_kind_with_length(inside);
    }
    for (size_t i = 0; i < sizeof makers / sizeof makers[0]; i++) {
        if (sw_slice_is(head, makers[i])) {
            return true;
        }
    }
    return false;
}
