/* Functions about parts: tags, repeats, voices, combined parts, quotes. */
#include <ctype.h>
#include <string.h>

#include "score/apply.h"
#include "score/rearrange.h"
#include "score/tags.h"

static const sw_pitch middle_c = {0, 0, 0};

/* The first argument as a list of tags: `a.b` is one as well as `a,b` and #'(a b). */
static uint32_t tag_list(const sw_apply_call *c)
{
    sw_names *names = c->reader->reading->names;
    sw_buffer list = {0};
    for (const char *at = sw_names_text(names, c->arguments[0].text); *at != '\0'; at++) {
        sw_buffer_char(&list, *at == '.' ? ' ' : *at);
    }
    uint32_t name = sw_names_add(names, sw_buffer_slice(&list));
    sw_buffer_free(&list);
    return name;
}

/* The tags are the music's own property. */
static sw_value with_list(const sw_apply_call *c, sw_music_kind kind)
{
    uint32_t music = sw_apply_wrap(c, kind, true);
    sw_apply_passed_on(c, sw_music_at(c->reader, music)->first);
    uint32_t list = tag_list(c);
    sw_music_at(c->reader, music)->list = list;
    return sw_apply_music(c, music);
}

/* "a b" of "a" and "b". */
static uint32_t joined(const sw_apply_call *c, uint32_t a, uint32_t b)
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
static sw_value tag(const sw_apply_call *c)
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
            sw_apply_passed_on(c, sw_music_at(c->reader, holder)->first);
        }
    }
    return value;
}

/* \tagGroup decides what the kept tags exclude: the other tags of their groups; and when one of them is in
 * no group, all tags that are in none. */
static sw_value keep(const sw_apply_call *c)
{
    sw_value value = with_list(c, SW_MUSIC_KEEP);
    sw_reader *reader = c->reader;
    const char *kept = sw_reading_name(reader->reading, sw_music_at(reader, value.music)->list);
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

static sw_value drop(const sw_apply_call *c)
{
    return with_list(c, SW_MUSIC_DROP);
}

static sw_value tag_group(const sw_apply_call *c)
{
    sw_reader *reader = c->reader;
    reader->tag_groups = sw_grow(reader->tag_groups, reader->tag_group_count, &reader->tag_group_capacity,
                                 sizeof *reader->tag_groups);
    reader->tag_groups[reader->tag_group_count++] = tag_list(c);
    return sw_apply_nothing(c);
}

static sw_value add_to_tag(const sw_apply_call *c)
{
    bool front = strcmp(c->command->name, "pushToTag") == 0;
    uint32_t music = c->arguments[2].music;
    sw_insert_at_tag(c->reader, music, tag_list(c), c->arguments[1].music, front);
    return sw_apply_passed_on(c, music);
}

/* The variables named in the list get the bars in turn. */
static sw_value parallel_music(const sw_apply_call *c)
{
    sw_reader *reader = c->reader;
    uint32_t parts[32];
    const char *list = sw_reading_name(reader->reading, c->arguments[0].text);
    size_t count = sw_tags_count(list, list);
    if (c->arguments[0].kind != SW_VALUE_SYMBOL || count > sizeof parts / sizeof parts[0] ||
        !sw_deal_bars(reader, c->arguments[1].music, count, parts)) {
        sw_unresolved(reader, c->where, sw_names_add(reader->reading->names, sw_slice_of(c->command->name)),
                      "its list of names or its bar checks can't be read; the variables are not defined");
        return sw_apply_nothing(c);
    }
    char *names = sw_arena_copy(reader->arena, sw_slice_of(list)); /* the table of names may move */
    for (size_t i = 0; i < count; i++) {
        size_t length = strcspn(names, " ");
        sw_value part = sw_apply_music(c, parts[i]);
        sw_define(reader, sw_names_add(reader->reading->names, (sw_slice){names, length}), &part);
        names += length + (names[length] == ' ');
    }
    return sw_apply_nothing(c);
}

static sw_value voices(const sw_apply_call *c)
{
    uint32_t music = sw_apply_last(c);
    if (c->arguments[0].kind == SW_VALUE_SYMBOL) {
        sw_name_voices(c->reader, music, c->arguments[0].text);
    }
    return sw_apply_passed_on(c, music);
}

static sw_value volta(const sw_apply_call *c)
{
    uint32_t music = sw_apply_wrap(c, SW_MUSIC_VOLTA, true);
    sw_music_at(c->reader, music)->list = c->arguments[0].text;
    return sw_apply_music(c, music);
}

/* \unfolded: only heard when repeats are written out, in any pass. */
static sw_value unfolded(const sw_apply_call *c)
{
    uint32_t music = sw_apply_wrap(c, SW_MUSIC_VOLTA, true);
    sw_music_at(c->reader, music)->flags |= SW_MUSIC_NEW;
    return sw_apply_music(c, music);
}

static sw_value unfold(const sw_apply_call *c)
{
    uint32_t music = sw_apply_wrap(c, SW_MUSIC_UNFOLD, true);
    sw_music_at(c->reader, music)->list = c->arguments[0].kind == SW_VALUE_SYMBOL ? c->arguments[0].text : 0;
    return sw_apply_music(c, music);
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
        for (; i < text.length && isdigit((unsigned char)text.data[i]); i++) {
            number = number < 10000 ? number * 10 + (text.data[i] - '0') : number;
        }
        numbers[found++] = negative ? -number : number;
    }
    return found == 2;
}

/* The parts are compared before anything around them is applied, so an outer \relative does not reach them.
 */
static sw_value part_combine(const sw_apply_call *c)
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
    return sw_apply_music(c, music);
}

static sw_value quote(const sw_apply_call *c)
{
    bool cue = strcmp(c->command->name, "quoteDuring") != 0;
    uint32_t music = sw_apply_wrap(c, cue ? SW_MUSIC_CUE : SW_MUSIC_QUOTE, true);
    sw_music *m = sw_music_at(c->reader, music);
    m->name = c->arguments[0].text;
    if (strcmp(c->command->name, "transposedCueDuring") == 0) {
        m->pitch = sw_apply_pitch(&c->arguments[2], middle_c);
        m->flags |= SW_MUSIC_PITCHED;
    }
    return sw_apply_music(c, music);
}

static sw_value kill_cues(const sw_apply_call *c)
{
    return sw_apply_music(c, sw_apply_wrap(c, SW_MUSIC_KILL_CUES, true));
}

static sw_value add_quote(const sw_apply_call *c)
{
    sw_reader *reader = c->reader;
    uint32_t music = c->arguments[1].kind == SW_VALUE_MUSIC ? c->arguments[1].music : SW_NO_INDEX;
    reader->quotes =
        sw_grow(reader->quotes, reader->quote_count, &reader->quote_capacity, sizeof *reader->quotes);
    reader->quotes[reader->quote_count++] = (sw_quote){c->arguments[0].text, music};
    return sw_apply_nothing(c);
}

static sw_value auto_change(const sw_apply_call *c)
{
    uint32_t music = sw_apply_wrap(c, SW_MUSIC_AUTO_CHANGE, false);
    sw_music_at(c->reader, music)->pitch = sw_apply_pitch(&c->arguments[0], middle_c);
    return sw_apply_music(c, music);
}

const sw_apply_row sw_apply_parts[] = {
    {"addQuote", add_quote},
    {"appendToTag", add_to_tag},
    {"autoChange", auto_change},
    {"cueDuring", quote},
    {"cueDuringWithClef", quote},
    {"keepWithTag", keep},
    {"killCues", kill_cues},
    {"parallelMusic", parallel_music},
    {"partCombine", part_combine},
    {"partCombineDown", part_combine},
    {"partCombineUp", part_combine},
    {"pushToTag", add_to_tag},
    {"quoteDuring", quote},
    {"removeWithTag", drop},
    {"tag", tag},
    {"tagGroup", tag_group},
    {"transposedCueDuring", quote},
    {"unfoldRepeats", unfold},
    {"unfolded", unfolded},
    {"voices", voices},
    {"volta", volta},
};

const size_t sw_apply_parts_count = sizeof sw_apply_parts / sizeof sw_apply_parts[0];
