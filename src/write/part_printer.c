/* Writes the music of one part: blocks, voices, variables, calls. Sequences are in part_sequence.c, single
 * notes and chords in part_notes.c. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "write/part_notes.h"
#include "write/part_sequence.h"
#include "write/part_time.h"
#include "write/part_tokens.h"

const sw_music *sw_part_music(const sw_part_printer *p, uint32_t music)
{
    return &p->plan->reading->music[music];
}

void sw_part_copy(sw_part_printer *p, uint32_t file, uint32_t from, uint32_t to)
{
    if (to > from) {
        sw_buffer_append(p->out, sw_text_slice(p->plan->reading->files[file].text, from, to));
    }
}

void sw_part_fail(sw_part_printer *p, uint32_t music, const char *what)
{
    if (p->error != NULL) {
        return;
    }
    const sw_music *m = sw_part_music(p, music);
    const sw_text *text = p->plan->reading->files[m->file].text;
    sw_place place = sw_text_place(text, m->start);
    if (asprintf(&p->error, "%s:%u:%u: %s", text->path, place.line, place.column + 1, what) < 0) {
        abort();
    }
}

/* A child of a compound, in which this part may be silent. */
static void print_child(sw_part_printer *p, uint32_t music)
{
    bool silent = p->plan->parts != NULL && sw_part_has_notes(p, music) && !sw_part_plays(p, music);
    if (silent && sw_is_item(sw_part_music(p, music))) {
        sw_put_single_rest(p, music);
        sw_print_marks(p, music, false);
    } else if (!sw_part_is_unheard(p, music)) {
        sw_print_part(p, music);
    }
}

/* A command with music as its last arguments: its own text as it is, the music through the printer. */
static void print_wrapped(sw_part_printer *p, uint32_t music)
{
    const sw_music *m = sw_part_music(p, music);
    uint32_t position = m->start;
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        if (sw_part_music(p, c)->file != m->file) {
            sw_part_fail(p, c, "this music stands inside a call, and can't be divided");
            return;
        }
        uint32_t begin = sw_node_begin(p->plan->reading, c);
        sw_part_copy(p, m->file, position, begin);
        if (!sw_is_item(sw_part_music(p, c)) || !sw_part_has_notes(p, c) || sw_part_plays(p, c)) {
            sw_part_copy(p, m->file, begin, sw_part_music(p, c)->start);
        }
        print_child(p, c);
        position = sw_node_end(p->plan->reading, c);
    }
    sw_part_copy(p, m->file, position, sw_node_end(p->plan->reading, music));
}

static void print_block(sw_part_printer *p, uint32_t music, uint32_t bracket)
{
    const sw_music *m = sw_part_music(p, music);
    sw_slice text = sw_music_slice(p->plan->reading, music);
    if (text.length < 2 * bracket || (text.data[0] != '{' && text.data[0] != '<')) {
        print_wrapped(p, music);
        return;
    }
    sw_part_copy(p, m->file, m->start, m->start + bracket);
    sw_print_sequence(p, m->first, m->file, m->start + bracket, m->end - bracket);
    sw_part_copy(p, m->file, m->end - bracket, m->end);
}

/* The items of a block without its brackets and the white space inside them. */
static void print_without_brackets(sw_part_printer *p, uint32_t music)
{
    const sw_music *block = sw_part_music(p, music);
    uint32_t from = block->start + 1;
    uint32_t to = block->end - 1;
    const char *bytes = p->plan->reading->files[block->file].text->bytes;
    while (from < to && strchr(" \t\r\n", bytes[from]) != NULL) {
        from++;
    }
    uint32_t last = from;
    for (uint32_t c = block->first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        uint32_t end = sw_node_end(p->plan->reading, c);
        last = end > last ? end : last;
    }
    bool comment = last < to && memchr(bytes + last, '%', to - last) != NULL; /* it ends with its line */
    while (!comment && to > from && strchr(" \t\r\n", bytes[to - 1]) != NULL) {
        to--;
    }
    sw_print_sequence(p, block->first, block->file, from, to);
}

/* The one voice of `<< a \\ b >>` that this part has, filled up with rests where another voice is longer. */
static void put_only_voice(sw_part_printer *p, uint32_t whole, uint32_t voice, bool bare)
{
    sw_rational voice_end;
    sw_rational whole_end;
    bool shorter = sw_part_end(p, voice, &voice_end) && sw_part_end(p, whole, &whole_end) &&
                   sw_rational_compare(voice_end, whole_end) < 0;
    if (shorter && !bare) {
        sw_buffer_string(p->out, "{ ");
    }
    if (bare && sw_part_music(p, voice)->kind == SW_MUSIC_SEQUENCE &&
        sw_music_slice(p->plan->reading, voice).data[0] == '{') {
        print_without_brackets(p, voice);
    } else {
        print_child(p, voice);
    }
    if (shorter) {
        sw_buffer_char(p->out, ' ');
        sw_put_silence(p, sw_part_first_event(p, voice)->voice, voice_end, whole_end, SW_NO_INDEX);
        sw_buffer_string(p->out, bare ? "" : " }");
    }
}

/* One of several voices. A voice of a single note has no braces that \change could stand in. */
static void print_voice(sw_part_printer *p, uint32_t music)
{
    bool lone = p->voice_staff != NULL && sw_is_item(sw_part_music(p, music));
    if (lone) {
        sw_buffer_string(p->out, "{ ");
        sw_put_change(p, sw_part_first_event(p, music));
    }
    print_child(p, music);
    sw_buffer_string(p->out, lone ? " }" : "");
}

/* `<< a \\ b >>` where this part has notes in one of the voices only: that voice; `bare` among other items,
 * where it needs no brackets. */
static void print_simultaneous(sw_part_printer *p, uint32_t music, bool bare)
{
    const sw_music *m = sw_part_music(p, music);
    const sw_reading *reading = p->plan->reading;
    uint32_t voices = 0;
    uint32_t kept = 0;
    uint32_t the_one = SW_NO_INDEX;
    uint32_t plain = 0; /* children without notes of this staff */
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        if (!sw_part_has_notes(p, c)) {
            plain++;
            continue;
        }
        voices++;
        if (sw_plan_keeps(p->plan, p->part, music, c)) {
            kept++;
            the_one = c;
        }
    }
    bool separated = m->first != SW_NO_INDEX && sw_part_music(p, m->first)->kind == SW_MUSIC_CONTEXT &&
                     strcmp(sw_reading_name(reading, sw_part_music(p, m->first)->name), "Bottom") == 0;
    if (p->plan->parts == NULL || voices == 0 || kept == voices) {
        if (!separated) {
            print_block(p, music, 2);
            return;
        }
        the_one = SW_NO_INDEX;
    } else if (kept == 1 && plain == 0) {
        uint32_t inner = the_one;
        while (sw_part_music(p, inner)->kind == SW_MUSIC_CONTEXT &&
               sw_part_music(p, inner)->first != SW_NO_INDEX &&
               strcmp(sw_reading_name(reading, sw_part_music(p, inner)->name), "Bottom") == 0) {
            inner = sw_part_music(p, inner)->first;
        }
        put_only_voice(p, music, inner, bare);
        return;
    }
    /* Voices without notes of this part are left out, with their separators. */
    sw_buffer_string(p->out, "<< ");
    bool first = true;
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        if (!sw_plan_keeps(p->plan, p->part, music, c)) {
            continue;
        }
        if (!first) {
            sw_buffer_string(p->out, separated ? " \\\\ " : " ");
        }
        first = false;
        uint32_t inner = separated ? sw_part_music(p, c)->first : c;
        if (inner != SW_NO_INDEX) {
            print_voice(p, inner);
        }
    }
    sw_buffer_string(p->out, " >>");
}

/* \set Staff.instrumentName: the group gets it. */
static void print_setting(sw_part_printer *p, uint32_t music)
{
    const sw_music *m = sw_part_music(p, music);
    uint32_t end = sw_node_end(p->plan->reading, music);
    sw_slice text = sw_text_slice(p->plan->reading->files[m->file].text, m->start, end);
    const char *staff = sw_part_is_staff_name(p, music) ? memmem(text.data, text.length, "Staff.", 6) : NULL;
    size_t before = staff == NULL ? 0 : (size_t)(staff - text.data);
    if (staff != NULL) {
        sw_buffer_append(p->out, (sw_slice){text.data, before});
        sw_buffer_format(p->out, "%s.", p->plan->division->group);
        before += 6;
    }
    sw_buffer_append(p->out, (sw_slice){text.data + before, text.length - before});
}

static void print_reference(sw_part_printer *p, uint32_t music)
{
    const sw_music *m = sw_part_music(p, music);
    if (sw_part_is_unheard(p, music)) { /* `name = \other`, of another movement: the upper part has it */
        sw_buffer_string(p->out, "{ }");
        return;
    }
    sw_part_copy(p, m->file, m->start, m->end);
    bool divided = sw_plan_divides(p->plan, p->plan->reading, m->name);
    if (divided && p->plan->parts != NULL && m->first != SW_NO_INDEX &&
        sw_part_music(p, m->first)->file == m->file && p->relative &&
        (sw_part_music(p, m->first)->kind != SW_MUSIC_RELATIVE &&
         sw_part_music(p, m->first)->kind != SW_MUSIC_FIXED)) {
        sw_part_fail(p, music,
                     "this variable takes its octaves from the \\relative around it; write \\relative inside "
                     "the variable "
                     "first");
    }
    if (divided) {
        sw_buffer_string(p->out, p->plan->division->suffixes[p->part]);
        p->has_duration = false; /* what follows must not depend on the variable's last duration */
    }
}

/* \relative c'': the start pitch moves by octaves to where this part begins, so that its first note needs no
 * marks. */
static void print_relative(sw_part_printer *p, uint32_t music)
{
    const sw_music *m = sw_part_music(p, music);
    bool outer = p->relative;
    sw_pitch outer_last = p->last;
    p->relative = true;
    p->last = m->pitch;
    print_wrapped(p, music);
    p->relative = outer;
    p->last = outer_last;
}

static void print_absolute(sw_part_printer *p, uint32_t music)
{
    bool outer = p->relative;
    p->relative = false;
    print_wrapped(p, music);
    p->relative = outer;
}

/* Where values are scaled or grace notes are counted backwards, each note keeps its place. */
static void print_out_of_time(sw_part_printer *p, uint32_t music)
{
    bool in_time = p->in_time;
    bool among_graces = p->among_graces;
    p->in_time = false;
    p->among_graces = among_graces || sw_part_music(p, music)->kind == SW_MUSIC_GRACE;
    print_wrapped(p, music);
    p->in_time = in_time;
    p->among_graces = among_graces;
}

/* Whether an item below a node is another part's. */
static bool is_shared(const sw_part_printer *p, uint32_t music)
{
    const sw_music *m = sw_part_music(p, music);
    if (sw_is_item(m)) {
        return sw_part_has_notes(p, music) && !sw_part_plays(p, music);
    }
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        if (is_shared(p, c)) {
            return true;
        }
    }
    return false;
}

/* The strokes of a tremolo alternate: with rests among them it would say something else. */
static void print_tremolo(sw_part_printer *p, uint32_t music)
{
    if (sw_part_plays(p, music) && is_shared(p, music)) {
        sw_part_fail(p, music,
                     "this tremolo goes from part to part; write it out, or leave it to one of them");
        return;
    }
    print_out_of_time(p, music);
}

static void forget_staves(sw_part_printer *p)
{
    if (p->voice_staff != NULL) {
        memset(p->voice_staff, SW_STAFF_UNKNOWN, p->plan->division->score->voice_count);
    }
}

/* Voices that begin say on which staff: the compiler makes them where the music around them stands, also
 * those of a name that was there before. Behind them only what they have not moved is known. */
static void print_on_staves(sw_part_printer *p, uint32_t music, bool bare)
{
    if (p->voice_staff == NULL) {
        print_simultaneous(p, music, bare);
        return;
    }
    size_t voices = p->plan->division->score->voice_count;
    uint8_t *before = sw_alloc(voices + 1);
    memcpy(before, p->voice_staff, voices);
    forget_staves(p);
    print_simultaneous(p, music, bare);
    for (size_t v = 0; v < voices; v++) {
        p->voice_staff[v] = p->voice_staff[v] == SW_STAFF_UNKNOWN ? before[v] : SW_STAFF_UNKNOWN;
    }
    free(before);
}

void sw_print_part(sw_part_printer *p, uint32_t music)
{
    if (p->error != NULL) {
        return;
    }
    const sw_music *m = sw_part_music(p, music);
    bool bare = p->among_items;
    p->among_items = false;
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_NOTE:
    case SW_MUSIC_DRUM:
    case SW_MUSIC_CHORD:
    case SW_MUSIC_REPEAT_CHORD:
    case SW_MUSIC_BARE:
    case SW_MUSIC_REST:
    case SW_MUSIC_FULL_REST:
    case SW_MUSIC_SKIP:
        sw_print_item(p, music);
        break;
    case SW_MUSIC_SEQUENCE:
        print_block(p, music, 1);
        break;
    case SW_MUSIC_SIMULTANEOUS:
        print_on_staves(p, music, bare);
        break;
    case SW_MUSIC_SET:
        print_setting(p, music);
        break;
    case SW_MUSIC_REFERENCE:
        print_reference(p, music);
        break;
    case SW_MUSIC_RELATIVE:
        print_relative(p, music);
        break;
    case SW_MUSIC_FIXED:
    case SW_MUSIC_TRANSPOSE:
        print_absolute(p, music);
        break;
    case SW_MUSIC_GRACE:
    case SW_MUSIC_SCALE:
        print_out_of_time(p, music);
        break;
    case SW_MUSIC_REPEAT:
    case SW_MUSIC_VOLTA:
        if (sw_part_is_tremolo(p, music)) {
            print_tremolo(p, music);
        } else {
            forget_staves(p); /* it may be come to from its own end */
            print_wrapped(p, music);
            forget_staves(p);
        }
        break;
    case SW_MUSIC_CHANGE:
        sw_part_fail(
            p, music,
            "the music changes staves here; a staff that shares notes with another can't be divided");
        break;
    case SW_MUSIC_PART_COMBINE:
        sw_part_fail(p, music, "two parts are combined here; divide one of them before they are combined");
        break;
    case SW_MUSIC_UNCERTAIN:
    case SW_MUSIC_QUOTE:
    case SW_MUSIC_CUE:
        sw_part_fail(p, music, "what this call does to the notes is not known, so they can't be divided");
        break;
    default:
        print_wrapped(p, music);
        break;
    }
}
