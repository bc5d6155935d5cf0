/* What the language's own functions make of their arguments. */
#include <string.h>

#include "score/apply.h"
#include "score/datum.h"

sw_value sw_apply_music(const sw_apply_call *c, uint32_t music)
{
    return (sw_value){.kind = SW_VALUE_MUSIC,
                      .music = music,
                      .file = c->where->file,
                      .start = c->where->start,
                      .end = c->where->end};
}

sw_value sw_apply_nothing(const sw_apply_call *c)
{
    sw_value value = sw_apply_music(c, SW_NO_INDEX);
    value.kind = SW_VALUE_NONE;
    return value;
}

sw_music *sw_apply_add(const sw_apply_call *c, sw_music_kind kind, uint32_t *music)
{
    *music = sw_music_add(c->reader, kind, c->where->file, c->where->start, c->where->end);
    return sw_music_at(c->reader, *music);
}

uint32_t sw_apply_last(const sw_apply_call *c)
{
    for (size_t i = c->count; i-- > 0;) {
        if (c->arguments[i].kind == SW_VALUE_MUSIC && c->arguments[i].music != SW_NO_INDEX) {
            return c->arguments[i].music;
        }
    }
    return SW_NO_INDEX;
}

uint32_t sw_apply_wrap(const sw_apply_call *c, sw_music_kind kind, bool is_free)
{
    return sw_music_wrap(c->reader, kind, c->where, sw_apply_last(c), is_free);
}

sw_pitch sw_apply_pitch(const sw_value *value, sw_pitch otherwise)
{
    return value->kind == SW_VALUE_PITCH ? value->pitch : otherwise;
}

/* A note behind a variable. `#note` is the note itself, \note a copy of it. */
static uint32_t own_note(sw_reader *reader, uint32_t reference)
{
    const sw_music *r = sw_music_at(reader, reference);
    uint32_t note = r->first;
    if (note == SW_NO_INDEX || sw_music_at(reader, note)->kind < SW_MUSIC_NOTE ||
        sw_music_at(reader, note)->kind > SW_MUSIC_SKIP ||
        sw_music_slice(reader->reading, reference).data[0] == '#') {
        return note;
    }
    uint32_t copy = sw_music_copy(reader, note);
    sw_music_at(reader, reference)->first = copy;
    return copy;
}

/* Keeps the text of a call in front of a note. */
static void add_prefix(const sw_apply_call *c, uint32_t music)
{
    sw_reading *reading = c->reader->reading;
    const sw_music *m = &reading->music[music];
    bool is_item = (m->kind >= SW_MUSIC_NOTE && m->kind <= SW_MUSIC_LYRIC) || m->kind == SW_MUSIC_REFERENCE;
    if (is_item && m->file == c->where->file && m->start > c->where->start) {
        reading->prefixes = sw_grow(reading->prefixes, reading->prefix_count, &reading->prefix_capacity,
                                    sizeof *reading->prefixes);
        reading->prefixes[reading->prefix_count++] = (sw_prefix){music, c->where->start};
    }
}

sw_value sw_apply_passed_on(const sw_apply_call *c, uint32_t music)
{
    uint32_t result = music;
    if (music != SW_NO_INDEX) {
        add_prefix(c, music);
    }
    while (music != SW_NO_INDEX && sw_music_at(c->reader, music)->kind == SW_MUSIC_TAG) {
        music = sw_music_at(c->reader, music)->first;
    }
    if (music != SW_NO_INDEX && sw_music_at(c->reader, music)->kind == SW_MUSIC_REFERENCE) {
        music = own_note(c->reader, music);
    }
    if (music != SW_NO_INDEX) {
        sw_music *m = sw_music_at(c->reader, music);
        if (sw_music_has_origin(m)) {
            sw_set_origin(c->reader, m, c->where->file, c->where->start);
        } else if ((m->kind == SW_MUSIC_SETTING || m->kind == SW_MUSIC_SET) && m->file == c->where->file) {
            m->start = c->where->start; /* \once belongs to what it precedes */
        }
    }
    return sw_apply_music(c, result);
}

void sw_apply_unresolved(const sw_apply_call *c, const char *why)
{
    sw_unresolved(c->reader, c->where, sw_names_add(c->reader->reading->names, sw_slice_of(c->command->name)),
                  why);
}

static const sw_pitch middle_c = {0, 0, 0};

/* ---- setters without length ---- */

static sw_value key(const sw_apply_call *c)
{
    uint32_t music;
    sw_music *m = sw_apply_add(c, SW_MUSIC_KEY, &music);
    m->pitch = sw_apply_pitch(&c->arguments[0], middle_c);
    m->name = c->arguments[1].kind == SW_VALUE_SYMBOL ? c->arguments[1].text : 0;
    return sw_apply_music(c, music);
}

static sw_value clef(const sw_apply_call *c)
{
    uint32_t music;
    sw_music *m = sw_apply_add(c, SW_MUSIC_CLEF, &music);
    m->name = c->arguments[0].text;
    return sw_apply_music(c, music);
}

/* What all staves can read. */
static sw_value label(const sw_apply_call *c)
{
    static const struct {
        const char *command;
        sw_label label;
    } labels[] = {{"bar", SW_LABEL_BAR_LINE},
                  {"codaMark", SW_LABEL_CODA},
                  {"mark", SW_LABEL_MARK},
                  {"segnoMark", SW_LABEL_SEGNO}};
    uint32_t music;
    sw_music *m = sw_apply_add(c, SW_MUSIC_SETTING, &music);
    m->check = SW_LABEL_TEXT;
    for (size_t i = 0; i < sizeof labels / sizeof labels[0]; i++) {
        if (strcmp(c->command->name, labels[i].command) == 0) {
            m->check = (int8_t)labels[i].label;
        }
    }
    const sw_value *value = &c->arguments[0];
    m->name = value->kind == SW_VALUE_TEXT ? value->text : 0;
    bool is_number = value->kind == SW_VALUE_NUMBER && value->rational.den == 1;
    m->num = value->kind == SW_VALUE_NONE ? 0 : is_number ? (int32_t)value->rational.num : -1;
    return sw_apply_music(c, music);
}

/* The numbers of a fraction as they are written: 2/4 and 1/2 are different metres. */
static void set_fraction(const sw_apply_call *c, sw_music *m, const sw_value *value)
{
    m->num = (int32_t)value->rational.num;
    m->den = (int32_t)value->rational.den;
    if (value->kind != SW_VALUE_NUMBER || value->rational.den <= 0 || value->rational.num <= 0) {
        m->num = 4;
        m->den = 4;
        return;
    }
    sw_slice text = {c->reader->reading->files[value->file].text->bytes + value->start,
                     value->end - value->start};
    int64_t numbers[2] = {0, 0};
    int found = 0;
    for (size_t i = 0; i < text.length && found < 2; i++) {
        if (text.data[i] >= '0' && text.data[i] <= '9') {
            int64_t number = 0;
            for (; i < text.length && text.data[i] >= '0' && text.data[i] <= '9' && number < 100000; i++) {
                number = number * 10 + (text.data[i] - '0');
            }
            numbers[found++] = number;
        }
    }
    if (found == 2 && numbers[1] > 0 &&
        sw_rational_equal(sw_rational_make(numbers[0], numbers[1]), value->rational)) {
        m->num = (int32_t)numbers[0];
        m->den = (int32_t)numbers[1];
    }
}

static sw_value metre(const sw_apply_call *c)
{
    uint32_t music;
    sw_music *m = sw_apply_add(c, SW_MUSIC_TIME, &music);
    set_fraction(c, m, &c->arguments[1]);
    return sw_apply_music(c, music);
}

static sw_value partial(const sw_apply_call *c)
{
    uint32_t music;
    sw_music *m = sw_apply_add(c, SW_MUSIC_PARTIAL, &music);
    sw_music_set_duration(m, c->arguments[0].number.duration);
    return sw_apply_music(c, music);
}

static sw_value transposition(const sw_apply_call *c)
{
    uint32_t music;
    sw_music *m = sw_apply_add(c, SW_MUSIC_TRANSPOSITION, &music);
    m->pitch = sw_apply_pitch(&c->arguments[0], middle_c);
    return sw_apply_music(c, music);
}

static sw_value octave_check(const sw_apply_call *c)
{
    uint32_t music;
    sw_music *m = sw_apply_add(c, SW_MUSIC_OCTAVE_CHECK, &music);
    m->pitch = sw_apply_pitch(&c->arguments[0], middle_c);
    m->flags |= SW_MUSIC_FREE;
    m->flags |= strcmp(c->command->name, "octaveCheck") == 0 ? SW_MUSIC_CHECKED : 0;
    return sw_apply_music(c, music);
}

static sw_value skip(const sw_apply_call *c)
{
    uint32_t music;
    sw_music *m = sw_apply_add(c, SW_MUSIC_SKIP, &music);
    sw_set_origin(c->reader, m, m->file, m->start);
    m->flags |= SW_MUSIC_WRITTEN_VALUE;
    if (c->arguments[0].kind == SW_VALUE_MUSIC) { /* as long as that music */
        m->kind = SW_MUSIC_SPAN;
        m->reference = c->arguments[0].music;
        return sw_apply_music(c, music);
    }
    sw_music_set_duration(m, c->arguments[0].number.duration);
    return sw_apply_music(c, music);
}

/* ---- pitch ---- */

static sw_value relative(const sw_apply_call *c)
{
    /* Without a start pitch the first note is absolute: that is what the F below middle C as reference gives.
     */
    sw_pitch start = sw_apply_pitch(&c->arguments[0], (sw_pitch){3, -1, 0});
    uint32_t music = sw_apply_wrap(c, SW_MUSIC_RELATIVE, false);
    sw_music_at(c->reader, music)->pitch = start;
    if (sw_music_at(c->reader, music)->first != SW_NO_INDEX) {
        sw_relative(c->reader, sw_music_at(c->reader, music)->first, start);
    }
    return sw_apply_music(c, music);
}

static sw_value fixed(const sw_apply_call *c)
{
    uint32_t music = sw_apply_wrap(c, SW_MUSIC_FIXED, false);
    sw_pitch reference = sw_apply_pitch(&c->arguments[0], (sw_pitch){0, -1, 0});
    sw_music_at(c->reader, music)->pitch = (sw_pitch){0, (int8_t)(reference.octave + 1), 0};
    return sw_apply_music(c, music);
}

static sw_value absolute(const sw_apply_call *c)
{
    return sw_apply_music(c, sw_apply_wrap(c, SW_MUSIC_FIXED, false));
}

static sw_value transpose(const sw_apply_call *c)
{
    uint32_t music = sw_apply_wrap(c, SW_MUSIC_TRANSPOSE, false);
    sw_music_at(c->reader, music)->pitch = sw_pitch_interval(sw_apply_pitch(&c->arguments[0], middle_c),
                                                             sw_apply_pitch(&c->arguments[1], middle_c));
    return sw_apply_music(c, music);
}

/* ---- time ---- */

static sw_value scale(const sw_apply_call *c, bool inverted)
{
    uint32_t music = sw_apply_wrap(c, SW_MUSIC_SCALE, true);
    sw_rational factor = c->arguments[0].rational;
    if (c->arguments[0].kind == SW_VALUE_NUMBER && factor.num > 0 && factor.den > 0 &&
        factor.num <= INT32_MAX && factor.den <= INT32_MAX) {
        sw_music *m = sw_music_at(c->reader, music);
        m->num = (int32_t)(inverted ? factor.den : factor.num);
        m->den = (int32_t)(inverted ? factor.num : factor.den);
    } else {
        sw_unresolved(
            c->reader, c->where, sw_names_add(c->reader->reading->names, sw_slice_of(c->command->name)),
            "its fraction is computed; 1 is assumed, so the notes inside may be too long or too short");
    }
    return sw_apply_music(c, music);
}

static sw_value tuplet(const sw_apply_call *c)
{
    return scale(c, true);
}

/* One fraction of a compound metre, (3 2 8): the summands, then the note value of them all. */
static sw_rational read_summands(const sw_apply_call *c, sw_slice list, int64_t *beat_value)
{
    sw_rational sum = {0, 1};
    sw_rational last = {0, 1};
    sw_slice word;
    for (size_t at; (at = sw_datum_next(list, &word)) > 0; list = sw_datum_rest(list, at)) {
        sw_value number = {.kind = SW_VALUE_NONE};
        sw_read_constant(c->reader, &number, word);
        if (number.kind != SW_VALUE_NUMBER || number.rational.den != 1 || number.rational.num < 1 ||
            number.rational.num > 1024) {
            return (sw_rational){0, 1};
        }
        sum = sw_rational_add(sum, last);
        last = number.rational;
    }
    *beat_value = last.num > *beat_value ? last.num : *beat_value;
    return last.num > 0 ? sw_rational_div(sum, last) : last;
}

/* \compoundMeter #'((3 2 8) (2 4)), or a list of one fraction: a metre as long as all its parts, counted in
 * the smallest of their note values. */
static sw_value compound_metre(const sw_apply_call *c)
{
    const sw_value *given = &c->arguments[0];
    sw_slice list = given->kind == SW_VALUE_SYMBOL
                        ? sw_slice_of(sw_names_text(c->reader->reading->names, given->text))
                        : (sw_slice){"", 0};
    int64_t beat_value = 1;
    sw_rational length = {0, 1};
    if (list.length > 0 && list.data[0] != '(') {
        length = read_summands(c, list, &beat_value);
    } else {
        sw_slice part;
        for (size_t at; (at = sw_datum_next(list, &part)) > 0; list = sw_datum_rest(list, at)) {
            length = sw_rational_add(length, read_summands(c, sw_datum_inside(part), &beat_value));
        }
    }
    sw_rational beats = sw_rational_mul(length, sw_rational_make(beat_value, 1));
    uint32_t music;
    if (!sw_rational_valid(beats) || beats.den != 1 || beats.num < 1 || beats.num > INT32_MAX) {
        sw_apply_add(c, SW_MUSIC_SETTING, &music); /* computed elsewhere: the metre before it goes on */
        return sw_apply_music(c, music);
    }
    sw_music *m = sw_apply_add(c, SW_MUSIC_TIME, &music);
    m->num = (int32_t)beats.num;
    m->den = (int32_t)beat_value;
    return sw_apply_music(c, music);
}

static sw_value times(const sw_apply_call *c)
{
    return scale(c, false);
}

/* Changes the music itself, so a note by itself has the place of the call. */
static sw_value scale_durations(const sw_apply_call *c)
{
    sw_value value = scale(c, false);
    sw_apply_passed_on(c, sw_music_at(c->reader, value.music)->first);
    return value;
}

static sw_value grace(const sw_apply_call *c)
{
    return sw_apply_music(c, sw_apply_wrap(c, SW_MUSIC_GRACE, true));
}

static sw_value after_grace(const sw_apply_call *c)
{
    const sw_value *main_note = &c->arguments[1];
    const sw_value *graces = &c->arguments[2];
    uint32_t music = sw_music_wrap(c->reader, SW_MUSIC_AFTER_GRACE, c->where, main_note->music, true);
    sw_music *m = sw_music_at(c->reader, music);
    m->num = 3;
    m->den = 4;
    const sw_value *fraction = &c->arguments[0];
    if (fraction->kind == SW_VALUE_NONE) { /* the user's own, if there is one */
        const sw_value *usual =
            sw_lookup(c->reader, sw_names_find(c->reader->reading->names, sw_slice_of("afterGraceFraction")));
        fraction = usual != NULL ? usual : fraction;
    }
    if (fraction->kind == SW_VALUE_NUMBER && fraction->rational.den > 0) {
        m->num = (int32_t)fraction->rational.num;
        m->den = (int32_t)fraction->rational.den;
    }
    if (main_note->music != SW_NO_INDEX && graces->music != SW_NO_INDEX) {
        sw_music_at(c->reader, main_note->music)->next = graces->music;
        m->flags |= sw_music_at(c->reader, graces->music)->flags & SW_MUSIC_FREE;
    }
    return sw_apply_music(c, music);
}

/* The second argument of \after; a mark hangs on an empty chord: <>\f. */
static uint32_t later_music(const sw_apply_call *c)
{
    uint32_t later = c->arguments[1].kind == SW_VALUE_MUSIC ? c->arguments[1].music : SW_NO_INDEX;
    if (later == SW_NO_INDEX || sw_music_at(c->reader, later)->kind != SW_MUSIC_MARK) {
        return later;
    }
    uint32_t chord;
    sw_music *m = sw_apply_add(c, SW_MUSIC_CHORD, &chord);
    m->num = 0;
    m->first = later;
    return chord;
}

/* Marks or music that come later are heard beside the main music. */
static sw_value after(const sw_apply_call *c)
{
    uint32_t later = later_music(c);
    uint32_t main_music = c->arguments[2].music;
    if (later == SW_NO_INDEX || main_music == SW_NO_INDEX ||
        sw_music_at(c->reader, later)->kind >= SW_MUSIC_BAR_CHECK) {
        return sw_apply_music(c, main_music);
    }
    uint32_t music;
    sw_music *gap = sw_apply_add(c, SW_MUSIC_SKIP, &music);
    sw_music_set_duration(gap, c->arguments[0].number.duration);
    sw_set_origin(c->reader, gap, gap->file, gap->start);
    gap->next = later;
    music = sw_music_wrap(c->reader, SW_MUSIC_SEQUENCE, c->where, music, false);
    sw_music_at(c->reader, music)->next = main_music;
    uint32_t both = sw_music_wrap(c->reader, SW_MUSIC_SIMULTANEOUS, c->where, music, false);
    uint8_t free_flag = sw_music_at(c->reader, later)->flags & SW_MUSIC_FREE;
    sw_music_at(c->reader, music)->flags |= free_flag;
    sw_music_at(c->reader, both)->flags |=
        (uint8_t)(free_flag | (sw_music_at(c->reader, main_music)->flags & SW_MUSIC_FREE));
    return sw_apply_music(c, both);
}

/* ---- the rest ---- */

static sw_value language(const sw_apply_call *c)
{
    const char *name = sw_reading_name(c->reader->reading, c->arguments[0].text);
    const sw_language *found = sw_language_find(sw_slice_of(name));
    if (found != NULL) {
        sw_use_language(c->reader, found);
    } else {
        sw_findings_add(&c->reader->reading->findings, SW_ERROR, "unresolved", c->where->file,
                        c->where->start, c->where->end,
                        "the input language \"%s\" is not known; note names are read as before", name);
    }
    return sw_apply_nothing(c);
}

static sw_value void_call(const sw_apply_call *c)
{
    return sw_apply_nothing(c);
}

static sw_value first_music(const sw_apply_call *c)
{
    return sw_apply_passed_on(c, c->arguments[0].music);
}

/* Functions that put something before or behind the music: it keeps its own place. */
static sw_value wrapped(const sw_apply_call *c)
{
    return sw_apply_music(c, sw_apply_wrap(c, SW_MUSIC_CALL, true));
}

/* \incipit: a small score of its own in the place of the instrument's name, which is set when the lines are
 * made. */
static sw_value incipit(const sw_apply_call *c)
{
    sw_pending score = {.music = sw_apply_last(c),
                        .file = c->where->file,
                        .start = c->where->start,
                        .end = c->where->end,
                        .heard = true,
                        .late = true,
                        .quote_count = c->reader->quote_count};
    sw_pending_add(&c->reader->inner, &score);
    return sw_apply_nothing(c);
}

/* A cluster is printed as a shape; nobody plays its notes. */
static sw_value clusters(const sw_apply_call *c)
{
    uint32_t music = sw_apply_wrap(c, SW_MUSIC_CALL, true);
    sw_music_at(c->reader, music)->flags |= SW_MUSIC_AS_REST;
    return sw_apply_music(c, music);
}

static const sw_apply_row rows[] = {
    {"absolute", absolute},
    {"acciaccatura", grace},
    {"after", after},
    {"afterGrace", after_grace},
    {"appoggiatura", grace},
    {"bar", label},
    {"clef", clef},
    {"codaMark", label},
    {"compoundMeter", compound_metre},
    {"crossStaff", wrapped},
    {"endSpanners", wrapped},
    {"fixed", fixed},
    {"grace", grace},
    {"incipit", incipit},
    {"jump", label},
    {"key", key},
    {"language", language},
    {"makeClusters", clusters},
    {"mark", label},
    {"octaveCheck", octave_check},
    {"partial", partial},
    {"pitchedTrill", first_music},
    {"relative", relative},
    {"resetRelativeOctave", octave_check},
    {"scaleDurations", scale_durations},
    {"sectionLabel", label},
    {"segnoMark", label},
    {"skip", skip},
    {"slashedGrace", grace},
    {"textEndMark", label},
    {"textMark", label},
    {"time", metre},
    {"times", times},
    {"transpose", transpose},
    {"transposition", transposition},
    {"tuplet", tuplet},
    {"void", void_call},
};

static const sw_apply_row *find_in(const sw_apply_row *table, size_t count, const char *name)
{
    size_t low = 0;
    size_t high = count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        int order = strcmp(name, table[middle].name);
        if (order == 0) {
            return &table[middle];
        }
        if (order < 0) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    return NULL;
}

static const sw_apply_row *find(const char *name)
{
    const sw_apply_row *row = find_in(rows, sizeof rows / sizeof rows[0], name);
    row = row != NULL ? row : find_in(sw_apply_parts, sw_apply_parts_count, name);
    return row != NULL ? row : find_in(sw_apply_computed, sw_apply_computed_count, name);
}

static uint32_t inside_calls(const sw_reader *reader, uint32_t music)
{
    while (sw_music_at(reader, music)->kind == SW_MUSIC_CALL &&
           sw_music_at(reader, music)->first != SW_NO_INDEX) {
        music = sw_music_at(reader, music)->first;
    }
    return music;
}

sw_value sw_apply(sw_reader *reader, const sw_command *command, sw_value *arguments, size_t count,
                  const sw_value *where)
{
    sw_apply_call c = {reader, command, arguments, count, where};
    if (command->kind == SW_COMMAND_MUSIC_FUNCTION || command->kind == SW_COMMAND_VOID_FUNCTION) {
        const sw_apply_row *row = find(command->name);
        if (row != NULL) {
            return row->apply(&c);
        }
    }
    switch (command->kind) {
    case SW_COMMAND_VOID_FUNCTION:
        return sw_apply_nothing(&c);
    case SW_COMMAND_EVENT_FUNCTION: {
        uint32_t music;
        sw_apply_add(&c, SW_MUSIC_MARK, &music);
        sw_value value = sw_apply_music(&c, music);
        value.kind = SW_VALUE_POST;
        return value;
    }
    case SW_COMMAND_MUSIC_FUNCTION: {
        /* \once, \tweak, \parenthesize ...: what they say is about looks; the music passes through. */
        uint32_t music = sw_apply_last(&c);
        if (music == SW_NO_INDEX) {
            sw_apply_add(&c, SW_MUSIC_SETTING, &music);
        }
        uint8_t kind = sw_music_at(reader, music)->kind;
        if (kind >= SW_MUSIC_SEQUENCE && kind < SW_MUSIC_BAR_CHECK) {
            uint32_t passed = inside_calls(reader, music); /* `\once \hide \note` is the note */
            sw_apply_passed_on(&c, sw_music_at(reader, passed)->kind == SW_MUSIC_REFERENCE ? passed
                                                                                           : SW_NO_INDEX);
            return sw_apply_music(&c, sw_music_wrap(reader, SW_MUSIC_CALL, where, music, true));
        }
        sw_value value = sw_apply_passed_on(&c, music);
        if (sw_music_at(reader, music)->kind == SW_MUSIC_MARK) {
            value.kind = SW_VALUE_POST;
        }
        return value;
    }
    default: {
        sw_value value = sw_apply_nothing(&c);
        value.kind = SW_VALUE_SCHEME;
        return value;
    }
    }
}
