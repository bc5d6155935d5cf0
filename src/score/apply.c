/* What the language's own functions make of their arguments. */
#include <ctype.h>
#include <string.h>

#include "score/rearrange.h"
#include "score/tags.h"

typedef struct call {
    sw_reader *reader;
    const sw_command *command;
    sw_value *arguments;
    size_t count;
    const sw_value *where; /* the whole call: from the command to the end of its last argument */
} call;

static sw_value music_value(const call *c, uint32_t music)
{
    return (sw_value){.kind = SW_VALUE_MUSIC,
                      .music = music,
                      .file = c->where->file,
                      .start = c->where->start,
                      .end = c->where->end};
}

static sw_value nothing(const call *c)
{
    sw_value value = music_value(c, SW_NO_INDEX);
    value.kind = SW_VALUE_NONE;
    return value;
}

static sw_music *add(const call *c, sw_music_kind kind, uint32_t *music)
{
    *music = sw_music_add(c->reader, kind, c->where->file, c->where->start, c->where->end);
    return sw_music_at(c->reader, *music);
}

/* The last argument that is music. */
static uint32_t last_music(const call *c)
{
    for (size_t i = c->count; i-- > 0;) {
        if (c->arguments[i].kind == SW_VALUE_MUSIC && c->arguments[i].music != SW_NO_INDEX) {
            return c->arguments[i].music;
        }
    }
    return SW_NO_INDEX;
}

static uint32_t wrap(const call *c, sw_music_kind kind, bool is_free)
{
    return sw_music_wrap(c->reader, kind, c->where, last_music(c), is_free);
}

static sw_pitch pitch_of(const sw_value *value, sw_pitch otherwise)
{
    return value->kind == SW_VALUE_PITCH ? value->pitch : otherwise;
}

static const sw_pitch middle_c = {0, 0, 0};

/* A function that gives back its argument gives it the place of the call. */
static sw_value passed_on(const call *c, uint32_t music)
{
    if (music != SW_NO_INDEX) {
        sw_music *m = sw_music_at(c->reader, music);
        if (m->kind == SW_MUSIC_NOTE || m->kind == SW_MUSIC_DRUM || m->kind == SW_MUSIC_REST ||
            m->kind == SW_MUSIC_FULL_REST || m->kind == SW_MUSIC_SKIP) {
            m->origin = c->where->start;
        } else if ((m->kind == SW_MUSIC_SETTING || m->kind == SW_MUSIC_SET) && m->file == c->where->file) {
            m->start = c->where->start; /* \once belongs to what it precedes */
        }
    }
    return music_value(c, music);
}

/* ---- setters without length ---- */

static sw_value key(const call *c)
{
    uint32_t music;
    sw_music *m = add(c, SW_MUSIC_KEY, &music);
    m->pitch = pitch_of(&c->arguments[0], middle_c);
    m->name = c->arguments[1].kind == SW_VALUE_SYMBOL ? c->arguments[1].text : 0;
    return music_value(c, music);
}

static sw_value clef(const call *c)
{
    uint32_t music;
    sw_music *m = add(c, SW_MUSIC_CLEF, &music);
    m->name = c->arguments[0].text;
    return music_value(c, music);
}

/* The numbers of a fraction as they are written: 2/4 and 1/2 are different metres. */
static void set_fraction(const call *c, sw_music *m, const sw_value *value)
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

static sw_value metre(const call *c)
{
    uint32_t music;
    sw_music *m = add(c, SW_MUSIC_TIME, &music);
    set_fraction(c, m, &c->arguments[1]);
    return music_value(c, music);
}

static sw_value partial(const call *c)
{
    uint32_t music;
    sw_music *m = add(c, SW_MUSIC_PARTIAL, &music);
    sw_music_set_duration(m, c->arguments[0].number.duration);
    return music_value(c, music);
}

static sw_value transposition(const call *c)
{
    uint32_t music;
    sw_music *m = add(c, SW_MUSIC_TRANSPOSITION, &music);
    m->pitch = pitch_of(&c->arguments[0], middle_c);
    return music_value(c, music);
}

static sw_value octave_check(const call *c)
{
    uint32_t music;
    sw_music *m = add(c, SW_MUSIC_OCTAVE_CHECK, &music);
    m->pitch = pitch_of(&c->arguments[0], middle_c);
    m->flags |= SW_MUSIC_FREE;
    return music_value(c, music);
}

static sw_value skip(const call *c)
{
    uint32_t music;
    sw_music *m = add(c, SW_MUSIC_SKIP, &music);
    m->origin = m->start;
    m->flags |= SW_MUSIC_WRITTEN_VALUE;
    if (c->arguments[0].kind == SW_VALUE_MUSIC) {
        m->kind = SW_MUSIC_EMPTY;
        return music_value(c, music);
    }
    sw_music_set_duration(m, c->arguments[0].number.duration);
    return music_value(c, music);
}

/* ---- pitch ---- */

static sw_value relative(const call *c)
{
    /* Without a start pitch the first note is absolute: that is what the F below middle C as reference gives.
     */
    sw_pitch start = pitch_of(&c->arguments[0], (sw_pitch){3, -1, 0});
    uint32_t music = wrap(c, SW_MUSIC_RELATIVE, false);
    sw_music_at(c->reader, music)->pitch = start;
    if (sw_music_at(c->reader, music)->first != SW_NO_INDEX) {
        sw_relative(c->reader, sw_music_at(c->reader, music)->first, start);
    }
    return music_value(c, music);
}

static sw_value fixed(const call *c)
{
    uint32_t music = wrap(c, SW_MUSIC_FIXED, false);
    sw_pitch reference = pitch_of(&c->arguments[0], (sw_pitch){0, -1, 0});
    sw_music_at(c->reader, music)->pitch = (sw_pitch){0, (int8_t)(reference.octave + 1), 0};
    return music_value(c, music);
}

static sw_value absolute(const call *c)
{
    return music_value(c, wrap(c, SW_MUSIC_FIXED, false));
}

static sw_value transpose(const call *c)
{
    uint32_t music = wrap(c, SW_MUSIC_TRANSPOSE, false);
    sw_music_at(c->reader, music)->pitch =
        sw_pitch_interval(pitch_of(&c->arguments[0], middle_c), pitch_of(&c->arguments[1], middle_c));
    return music_value(c, music);
}

/* ---- time ---- */

static sw_value scale(const call *c, bool inverted)
{
    uint32_t music = wrap(c, SW_MUSIC_SCALE, true);
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
    return music_value(c, music);
}

static sw_value tuplet(const call *c)
{
    return scale(c, true);
}

static sw_value scale_durations(const call *c)
{
    return scale(c, false);
}

static sw_value grace(const call *c)
{
    return music_value(c, wrap(c, SW_MUSIC_GRACE, true));
}

static sw_value after_grace(const call *c)
{
    const sw_value *main_note = &c->arguments[1];
    const sw_value *graces = &c->arguments[2];
    uint32_t music = sw_music_wrap(c->reader, SW_MUSIC_AFTER_GRACE, c->where, main_note->music, true);
    sw_music *m = sw_music_at(c->reader, music);
    m->num = 3;
    m->den = 4;
    if (c->arguments[0].kind == SW_VALUE_NUMBER && c->arguments[0].rational.den > 0) {
        m->num = (int32_t)c->arguments[0].rational.num;
        m->den = (int32_t)c->arguments[0].rational.den;
    }
    if (main_note->music != SW_NO_INDEX && graces->music != SW_NO_INDEX) {
        sw_music_at(c->reader, main_note->music)->next = graces->music;
        m->flags |= sw_music_at(c->reader, graces->music)->flags & SW_MUSIC_FREE;
    }
    return music_value(c, music);
}

static sw_value after(const call *c)
{
    return music_value(c, c->arguments[2].music);
}

/* ---- tags, repeats, parts ---- */

static sw_value with_list(const call *c, sw_music_kind kind)
{
    uint32_t music = wrap(c, kind, true);
    passed_on(c, sw_music_at(c->reader, music)->first);
    sw_music_at(c->reader, music)->list = c->arguments[0].text;
    return music_value(c, music);
}

/* "a b" of "a" and "b". */
static uint32_t joined(const call *c, uint32_t a, uint32_t b)
{
    sw_names *names = c->reader->reading->names;
    sw_buffer list = {0};
    sw_buffer_format(&list, "%s%s%s", sw_names_text(names, a), a != 0 && b != 0 ? " " : "",
                     sw_names_text(names, b));
    uint32_t name = sw_names_add(names, sw_buffer_slice(&list));
    sw_buffer_free(&list);
    return name;
}

/* A tag on tagged music is one more tag of the same music, not a tag around it. */
static sw_value tag(const call *c)
{
    sw_value value = with_list(c, SW_MUSIC_TAG);
    uint32_t holder = value.music;
    uint32_t inner = sw_music_at(c->reader, holder)->first;
    if (inner != SW_NO_INDEX && sw_music_at(c->reader, inner)->kind == SW_MUSIC_REFERENCE) {
        holder = inner;
        inner = sw_music_at(c->reader, holder)->first;
    }
    if (inner != SW_NO_INDEX && sw_music_at(c->reader, inner)->kind == SW_MUSIC_TAG) {
        uint32_t list =
            joined(c, sw_music_at(c->reader, value.music)->list, sw_music_at(c->reader, inner)->list);
        sw_music_at(c->reader, value.music)->list = list;
        sw_music_at(c->reader, holder)->first = sw_music_at(c->reader, inner)->first;
        if (holder == value.music) {
            passed_on(c, sw_music_at(c->reader, holder)->first);
        }
    }
    return value;
}

/* \tagGroup decides what the kept tags exclude: the other tags of their groups; and when one of them is in
 * no group, all tags that are in none. */
static sw_value keep(const call *c)
{
    sw_value value = with_list(c, SW_MUSIC_KEEP);
    sw_reader *reader = c->reader;
    const char *kept = sw_reading_name(reader->reading, c->arguments[0].text);
    uint32_t rivals = 0;
    uint32_t others = 0;
    size_t grouped = 0;
    for (size_t i = 0; i < reader->tag_group_count; i++) {
        uint32_t group = reader->tag_groups[i];
        size_t members = sw_tags_count(kept, sw_reading_name(reader->reading, group));
        grouped += members;
        *(members > 0 ? &rivals : &others) = joined(c, members > 0 ? rivals : others, group);
    }
    sw_music *m = sw_music_at(reader, value.music);
    bool all_but = sw_tags_count(kept, kept) > grouped;
    m->name = all_but ? others : rivals;
    m->flags |= all_but ? SW_MUSIC_NEW : 0;
    return value;
}

static sw_value drop(const call *c)
{
    return with_list(c, SW_MUSIC_DROP);
}

static sw_value tag_group(const call *c)
{
    sw_reader *reader = c->reader;
    reader->tag_groups = sw_grow(reader->tag_groups, reader->tag_group_count, &reader->tag_group_capacity,
                                 sizeof *reader->tag_groups);
    reader->tag_groups[reader->tag_group_count++] = c->arguments[0].text;
    return nothing(c);
}

static sw_value add_to_tag(const call *c)
{
    bool front = strcmp(c->command->name, "pushToTag") == 0;
    uint32_t music = c->arguments[2].music;
    sw_insert_at_tag(c->reader, music, c->arguments[0].text, c->arguments[1].music, front);
    return passed_on(c, music);
}

/* The variables named in the list get the bars in turn. */
static sw_value parallel_music(const call *c)
{
    sw_reader *reader = c->reader;
    uint32_t parts[32];
    const char *list = sw_reading_name(reader->reading, c->arguments[0].text);
    size_t count = sw_tags_count(list, list);
    if (c->arguments[0].kind != SW_VALUE_SYMBOL || count > sizeof parts / sizeof parts[0] ||
        !sw_deal_bars(reader, c->arguments[1].music, count, parts)) {
        sw_unresolved(reader, c->where, sw_names_add(reader->reading->names, sw_slice_of(c->command->name)),
                      "its list of names or its bar checks can't be read; the variables are not defined");
        return nothing(c);
    }
    char *names = sw_arena_copy(reader->arena, sw_slice_of(list)); /* the table of names may move */
    for (size_t i = 0; i < count; i++) {
        size_t length = strcspn(names, " ");
        sw_value part = music_value(c, parts[i]);
        sw_define(reader, sw_names_add(reader->reading->names, (sw_slice){names, length}), &part);
        names += length + (names[length] == ' ');
    }
    return nothing(c);
}

static sw_value voices(const call *c)
{
    uint32_t music = last_music(c);
    if (c->arguments[0].kind == SW_VALUE_SYMBOL) {
        sw_name_voices(c->reader, music, c->arguments[0].text);
    }
    return passed_on(c, music);
}

static sw_value volta(const call *c)
{
    return with_list(c, SW_MUSIC_VOLTA);
}

static sw_value unfold(const call *c)
{
    return music_value(c, wrap(c, SW_MUSIC_UNFOLD, true));
}

/* \unfolded: only heard when repeats are written out. */
static sw_value unfolded(const call *c)
{
    uint32_t music;
    add(c, SW_MUSIC_EMPTY, &music);
    return music_value(c, music);
}

/* Two whole numbers in a text such as `#'(0 . 12)`. */
static bool two_numbers(sw_slice text, int32_t numbers[2])
{
    int found = 0;
    for (size_t i = 0; i < text.length && found < 2; i++) {
        if (!isdigit((unsigned char)text.data[i])) {
            continue;
        }
        bool negative = i > 0 && text.data[i - 1] == '-';
        int32_t number = 0;
        for (; i < text.length && isdigit((unsigned char)text.data[i]) && number < 10000; i++) {
            number = number * 10 + (text.data[i] - '0');
        }
        numbers[found++] = negative ? -number : number;
    }
    return found == 2;
}

/* The parts are compared before anything around them is applied, so an outer \relative does not reach them.
 */
static sw_value part_combine(const call *c)
{
    const sw_value *range = &c->arguments[0];
    const sw_value *one = &c->arguments[c->count - 2];
    const sw_value *two = &c->arguments[c->count - 1];
    uint32_t music = sw_music_wrap(c->reader, SW_MUSIC_PART_COMBINE, c->where, one->music, false);
    if (one->music != SW_NO_INDEX && two->music != SW_NO_INDEX) {
        sw_music_at(c->reader, one->music)->next = two->music;
    }
    int32_t steps[2] = {0, 8};
    if (range->kind != SW_VALUE_NONE) {
        const sw_text *text = c->reader->reading->files[range->file].text;
        two_numbers((sw_slice){text->bytes + range->start, range->end - range->start}, steps);
    }
    sw_music_at(c->reader, music)->num = steps[0];
    sw_music_at(c->reader, music)->den = steps[1];
    return music_value(c, music);
}

static sw_value quote(const call *c)
{
    bool cue = strcmp(c->command->name, "quoteDuring") != 0;
    uint32_t music = wrap(c, cue ? SW_MUSIC_CUE : SW_MUSIC_QUOTE, true);
    sw_music *m = sw_music_at(c->reader, music);
    m->name = c->arguments[0].text;
    if (strcmp(c->command->name, "transposedCueDuring") == 0) {
        m->pitch = pitch_of(&c->arguments[2], middle_c);
        m->flags |= SW_MUSIC_PITCHED;
    }
    return music_value(c, music);
}

static sw_value kill_cues(const call *c)
{
    return music_value(c, wrap(c, SW_MUSIC_KILL_CUES, true));
}

static sw_value add_quote(const call *c)
{
    sw_reader *reader = c->reader;
    uint32_t music = c->arguments[1].kind == SW_VALUE_MUSIC ? c->arguments[1].music : SW_NO_INDEX;
    reader->quotes =
        sw_grow(reader->quotes, reader->quote_count, &reader->quote_capacity, sizeof *reader->quotes);
    reader->quotes[reader->quote_count++] = (sw_quote){c->arguments[0].text, music};
    return nothing(c);
}

static sw_value auto_change(const call *c)
{
    uint32_t music = wrap(c, SW_MUSIC_AUTO_CHANGE, false);
    sw_music_at(c->reader, music)->pitch = pitch_of(&c->arguments[0], middle_c);
    return music_value(c, music);
}

static sw_value language(const call *c)
{
    const char *name = sw_reading_name(c->reader->reading, c->arguments[0].text);
    const sw_language *found = sw_language_find(sw_slice_of(name));
    if (found != NULL) {
        sw_note_table_fill(&c->reader->notes, found);
    } else {
        sw_findings_add(&c->reader->reading->findings, SW_ERROR, "unresolved", c->where->file,
                        c->where->start, c->where->end,
                        "the input language \"%s\" is not known; note names are read as before", name);
    }
    return nothing(c);
}

static sw_value void_call(const call *c)
{
    return nothing(c);
}

static sw_value first_music(const call *c)
{
    return passed_on(c, c->arguments[0].music);
}

/* Functions whose effect on the notes is not modelled. */
static sw_value uncertain(const call *c)
{
    sw_unresolved(c->reader, c->where, sw_names_add(c->reader->reading->names, sw_slice_of(c->command->name)),
                  "its effect on the notes is not computed; they are read as they are written");
    return music_value(c, wrap(c, SW_MUSIC_UNCERTAIN, true));
}

static const struct row {
    const char *name;
    sw_value (*apply)(const call *c);
} rows[] = {
    {"absolute", absolute},
    {"acciaccatura", grace},
    {"addQuote", add_quote},
    {"after", after},
    {"afterGrace", after_grace},
    {"appendToTag", add_to_tag},
    {"applyMusic", uncertain},
    {"appoggiatura", grace},
    {"autoChange", auto_change},
    {"clef", clef},
    {"cueDuring", quote},
    {"cueDuringWithClef", quote},
    {"dropNote", uncertain},
    {"featherDurations", uncertain},
    {"fixed", fixed},
    {"grace", grace},
    {"inversion", uncertain},
    {"invertChords", uncertain},
    {"keepWithTag", keep},
    {"key", key},
    {"killCues", kill_cues},
    {"language", language},
    {"modalInversion", uncertain},
    {"modalTranspose", uncertain},
    {"musicMap", uncertain},
    {"octaveCheck", octave_check},
    {"parallelMusic", parallel_music},
    {"partCombine", part_combine},
    {"partCombineDown", part_combine},
    {"partCombineUp", part_combine},
    {"partial", partial},
    {"pitchedTrill", first_music},
    {"pushToTag", add_to_tag},
    {"quoteDuring", quote},
    {"raiseNote", uncertain},
    {"reduceChords", uncertain},
    {"relative", relative},
    {"removeWithTag", drop},
    {"resetRelativeOctave", octave_check},
    {"retrograde", uncertain},
    {"scaleDurations", scale_durations},
    {"shiftDurations", uncertain},
    {"skip", skip},
    {"slashedGrace", grace},
    {"tag", tag},
    {"tagGroup", tag_group},
    {"time", metre},
    {"times", scale_durations},
    {"transpose", transpose},
    {"transposedCueDuring", quote},
    {"transposition", transposition},
    {"tuplet", tuplet},
    {"unfoldRepeats", unfold},
    {"unfolded", unfolded},
    {"voices", voices},
    {"void", void_call},
    {"volta", volta},
};

static const struct row *find(const char *name)
{
    size_t low = 0;
    size_t high = sizeof rows / sizeof rows[0];
    while (low < high) {
        size_t middle = (low + high) / 2;
        int order = strcmp(name, rows[middle].name);
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

sw_value sw_apply(sw_reader *reader, const sw_command *command, sw_value *arguments, size_t count,
                  const sw_value *where)
{
    call c = {reader, command, arguments, count, where};
    if (command->kind == SW_COMMAND_MUSIC_FUNCTION || command->kind == SW_COMMAND_VOID_FUNCTION) {
        const struct row *row = find(command->name);
        if (row != NULL) {
            return row->apply(&c);
        }
    }
    switch (command->kind) {
    case SW_COMMAND_VOID_FUNCTION:
        return nothing(&c);
    case SW_COMMAND_EVENT_FUNCTION: {
        uint32_t music;
        add(&c, SW_MUSIC_MARK, &music);
        sw_value value = music_value(&c, music);
        value.kind = SW_VALUE_POST;
        return value;
    }
    case SW_COMMAND_MUSIC_FUNCTION: {
        /* \once, \tweak, \parenthesize ...: what they say is about looks; the music passes through. */
        uint32_t music = last_music(&c);
        if (music == SW_NO_INDEX) {
            add(&c, SW_MUSIC_SETTING, &music);
        }
        uint8_t kind = sw_music_at(reader, music)->kind;
        if (kind >= SW_MUSIC_SEQUENCE && kind < SW_MUSIC_BAR_CHECK) {
            return music_value(&c, sw_music_wrap(reader, SW_MUSIC_CALL, where, music, true));
        }
        sw_value value = passed_on(&c, music);
        if (sw_music_at(reader, music)->kind == SW_MUSIC_MARK) {
            value.kind = SW_VALUE_POST;
        }
        return value;
    }
    default: {
        sw_value value = nothing(&c);
        value.kind = SW_VALUE_SCHEME;
        return value;
    }
    }
}
