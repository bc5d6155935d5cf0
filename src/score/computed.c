#include <stdlib.h>

#include "score/computed.h"

static uint32_t child_of(const sw_reader *reader, uint32_t music)
{
    return sw_music_at(reader, music)->first;
}

static uint32_t after(const sw_reader *reader, uint32_t music)
{
    return sw_music_at(reader, music)->next;
}

/* ---- owning ---- */

/* Outside of every \relative the octave is what is written, so the marks follow the pitch: an outer \relative
 * goes by them. */
static void set_pitch(sw_music *m, sw_pitch pitch)
{
    m->pitch = pitch;
    if ((m->flags & SW_MUSIC_FREE) != 0) {
        m->octave_marks = (int8_t)(pitch.octave + 1);
    }
}

/* Moves everything that \transpose moves. What a \relative or \fixed has settled is left alone by an outer
 * \fixed. */
static void carry_out(sw_reader *reader, uint32_t music, sw_pitch by, bool fixed, uint32_t depth)
{
    sw_music *m = sw_music_at(reader, music);
    if (depth > SW_MAX_DEPTH || (fixed && m->kind == SW_MUSIC_RELATIVE)) {
        return;
    }
    if (m->kind == SW_MUSIC_NOTE || m->kind == SW_MUSIC_KEY) {
        m->pitch = sw_pitch_transpose(m->pitch, by);
    }
    for (uint32_t child = child_of(reader, music); child != SW_NO_INDEX; child = after(reader, child)) {
        carry_out(reader, child, by, fixed, depth + 1);
    }
}

/* What lies too deep is cut off: all that works on the copy goes down by recursion, and must not come to
 * shared music. */
static void cut_off(sw_reader *reader, uint32_t music)
{
    sw_music *m = sw_music_at(reader, music);
    if (m->first != SW_NO_INDEX) {
        m->first = SW_NO_INDEX;
        sw_value where = {.file = m->file, .start = m->start, .end = m->end};
        sw_unresolved(reader, &where, sw_names_add(reader->reading->names, sw_slice_of("variables")),
                      "they are used too deep inside of one another here; what lies deeper is not computed");
    }
}

static void settle(sw_reader *reader, uint32_t music, uint32_t depth)
{
    if (depth > SW_MAX_DEPTH) {
        cut_off(reader, music);
        return;
    }
    if (sw_music_at(reader, music)->kind == SW_MUSIC_REFERENCE) {
        uint32_t shared = child_of(reader, music);
        uint32_t own = shared == SW_NO_INDEX ? SW_NO_INDEX : sw_music_copy(reader, shared);
        sw_music_at(reader, music)->first = own;
    }
    for (uint32_t child = child_of(reader, music); child != SW_NO_INDEX; child = after(reader, child)) {
        settle(reader, child, depth + 1);
    }
    sw_music *m = sw_music_at(reader, music);
    bool fixed = m->kind == SW_MUSIC_FIXED;
    if (fixed || m->kind == SW_MUSIC_TRANSPOSE) {
        sw_pitch by = m->pitch;
        for (uint32_t child = m->first; child != SW_NO_INDEX; child = after(reader, child)) {
            carry_out(reader, child, by, fixed, depth + 1);
        }
        sw_music_at(reader, music)->kind = SW_MUSIC_RELATIVE; /* settled for what is around it */
    }
}

uint32_t sw_music_own(sw_reader *reader, uint32_t music)
{
    uint32_t own = sw_music_copy(reader, music);
    settle(reader, own, 0);
    return own;
}

/* ---- pitches ---- */

void sw_change_pitches(sw_reader *reader, uint32_t music, sw_pitch_change change, const void *data)
{
    sw_music *m = sw_music_at(reader, music);
    if (m->kind == SW_MUSIC_NOTE) {
        set_pitch(m, change(m->pitch, data));
        return;
    }
    for (uint32_t child = m->first; child != SW_NO_INDEX; child = after(reader, child)) {
        sw_change_pitches(reader, child, change, data);
    }
}

typedef struct chord_note {
    sw_pitch pitch;
    uint32_t music;
    size_t place; /* among the notes of the chord, as written */
} chord_note;

static int compare_height(const void *a, const void *b)
{
    const chord_note *x = a;
    const chord_note *y = b;
    int order = sw_pitch_compare(x->pitch, y->pitch);
    return order != 0 ? order : x->place < y->place ? -1 : 1;
}

static void move_chord_note(sw_reader *reader, uint32_t chord, int n, bool up)
{
    chord_note *notes = NULL; /* from the lowest to the highest */
    size_t count = 0;
    size_t capacity = 0;
    for (uint32_t note = child_of(reader, chord); note != SW_NO_INDEX; note = after(reader, note)) {
        const sw_music *m = sw_music_at(reader, note);
        if (m->kind == SW_MUSIC_NOTE) {
            notes = sw_grow(notes, count, &capacity, sizeof *notes);
            notes[count] = (chord_note){m->pitch, note, count};
            count++;
        }
    }
    int rank = n < 0 ? (int)count + n : n;
    if (rank >= 0 && rank < (int)count) {
        qsort(notes, count, sizeof *notes, compare_height);
        sw_pitch moved = notes[rank].pitch;
        sw_pitch limit = notes[up ? count - 1 : 0].pitch;
        moved.octave = sw_pitch_octave(moved.octave + sw_pitch_interval(moved, limit).octave + (up ? 1 : 0));
        set_pitch(sw_music_at(reader, notes[rank].music), moved);
    }
    free(notes);
}

void sw_move_chord_notes(sw_reader *reader, uint32_t music, int n, bool up)
{
    if (sw_music_at(reader, music)->kind == SW_MUSIC_CHORD) {
        move_chord_note(reader, music, n, up);
        return;
    }
    for (uint32_t child = child_of(reader, music); child != SW_NO_INDEX; child = after(reader, child)) {
        sw_move_chord_notes(reader, child, n, up);
    }
}

/* ---- scales ---- */

void sw_scale_read(sw_reader *reader, uint32_t music, sw_scale *scale)
{
    const sw_music *m = sw_music_at(reader, music);
    if (m->kind == SW_MUSIC_NOTE) {
        scale->steps = sw_grow(scale->steps, scale->count, &scale->capacity, sizeof *scale->steps);
        scale->steps[scale->count++] = m->pitch;
        return;
    }
    for (uint32_t child = m->first; child != SW_NO_INDEX; child = after(reader, child)) {
        sw_scale_read(reader, child, scale);
    }
}

enum { SCALE_REACH = 5 }; /* octaves below and above the written scale */

/* Where a pitch stands in the extended scale, from 0; -1 when it is not in it. A scale that has it twice (its
 * octave is written too, say) has it at the lower of the two places. */
static int index_in(const sw_scale *scale, sw_pitch pitch)
{
    int found = -1;
    for (size_t i = 0; i < scale->count; i++) {
        sw_pitch step = scale->steps[i];
        int octaves = pitch.octave - step.octave;
        if (step.step == pitch.step && step.alter == pitch.alter && abs(octaves) <= SCALE_REACH) {
            int index = (octaves + SCALE_REACH) * (int)scale->count + (int)i;
            found = found < 0 || index < found ? index : found;
        }
    }
    return found;
}

bool sw_modal_make(sw_modal *modal, const sw_scale *scale, sw_pitch from, sw_pitch to, bool inverted)
{
    *modal = (sw_modal){
        .scale = scale, .from = index_in(scale, from), .to = index_in(scale, to), .inverted = inverted};
    return modal->from >= 0 && modal->to >= 0;
}

sw_pitch sw_modal_change(sw_pitch pitch, const void *data)
{
    const sw_modal *modal = data;
    int at = index_in(modal->scale, pitch);
    if (at < 0) {
        return pitch; /* the compiler warns */
    }
    int count = (int)modal->scale->count;
    int all = count * (2 * SCALE_REACH + 1);
    int index = (modal->inverted ? modal->to + modal->from - at : at + modal->to - modal->from) % all;
    index = index < 0 ? index + all : index;
    sw_pitch step = modal->scale->steps[index % count];
    step.octave = sw_pitch_octave(step.octave + index / count - SCALE_REACH);
    return step;
}

/* ---- order ---- */

typedef struct last {
    uint32_t chord; /* that q repeats */
    uint32_t note;  /* note or chord that a bare duration repeats */
} last;

/* Lets a q or bare duration be the chord or note that it stands for. */
static void write_out(sw_reader *reader, uint32_t music, uint32_t source)
{
    uint32_t marks = child_of(reader, music);
    uint32_t start = sw_music_at(reader, music)->start;
    uint32_t file = sw_music_at(reader, music)->file;
    uint32_t origin = sw_music_at(reader, music)->origin;
    uint16_t origin_file = sw_music_at(reader, music)->origin_file;
    if (sw_music_at(reader, source)->kind != SW_MUSIC_CHORD) {
        const sw_music *s = sw_music_at(reader, source);
        sw_music *m = sw_music_at(reader, music);
        m->kind = s->kind;
        m->flags |= s->flags & (SW_MUSIC_PITCHED | SW_MUSIC_FREE);
        m->pitch = s->pitch;
        m->octave_marks = s->octave_marks;
        m->name = s->name;
        return;
    }
    sw_children notes = {.first = SW_NO_INDEX};
    for (uint32_t child = child_of(reader, source); child != SW_NO_INDEX; child = after(reader, child)) {
        if (sw_music_at(reader, child)->kind == SW_MUSIC_MARK) {
            continue;
        }
        uint32_t twin = sw_music_copy(reader, child);
        sw_music *m = sw_music_at(reader, twin);
        m->file = (uint16_t)file;
        m->start = start;
        m->origin = origin;
        m->origin_file = origin_file;
        sw_children_add(reader, &notes, twin);
    }
    if (notes.count > 0) {
        sw_music_at(reader, notes.last)->next = marks;
        sw_music *m = sw_music_at(reader, music);
        m->kind = SW_MUSIC_CHORD;
        m->first = notes.first;
        m->flags |= sw_music_at(reader, source)->flags & SW_MUSIC_FREE;
    }
}

static void write_out_repeats(sw_reader *reader, uint32_t music, last *l)
{
    uint8_t kind = sw_music_at(reader, music)->kind;
    if (kind == SW_MUSIC_REPEAT_CHORD && l->chord != SW_NO_INDEX) {
        write_out(reader, music, l->chord);
    } else if (kind == SW_MUSIC_BARE && l->note != SW_NO_INDEX) {
        write_out(reader, music, l->note);
    }
    kind = sw_music_at(reader, music)->kind;
    if (kind == SW_MUSIC_CHORD) {
        l->chord = l->note = music;
    } else if (kind == SW_MUSIC_NOTE || kind == SW_MUSIC_DRUM) {
        l->note = music;
    } else {
        for (uint32_t child = child_of(reader, music); child != SW_NO_INDEX; child = after(reader, child)) {
            write_out_repeats(reader, child, l);
        }
    }
}

/* Settings stay in front of what they stood in front of. */
static bool stays_in_front(const sw_music *m)
{
    return m->kind == SW_MUSIC_SET || m->kind == SW_MUSIC_SETTING;
}

/* Moves the items of one list to the front of another, which turns them round. */
static void move_all(sw_reader *reader, uint32_t *from, uint32_t *to)
{
    while (*from != SW_NO_INDEX) {
        uint32_t item = *from;
        *from = after(reader, item);
        sw_music_at(reader, item)->next = *to;
        *to = item;
    }
}

static void reverse(sw_reader *reader, uint32_t music)
{
    uint32_t done = SW_NO_INDEX;     /* the new order so far */
    uint32_t settings = SW_NO_INDEX; /* before the present item, last first */
    uint32_t next;
    for (uint32_t child = child_of(reader, music); child != SW_NO_INDEX; child = next) {
        next = after(reader, child);
        bool waits = stays_in_front(sw_music_at(reader, child));
        uint32_t *list = waits ? &settings : &done;
        sw_music_at(reader, child)->next = *list;
        *list = child;
        if (!waits) {
            move_all(reader, &settings, &done);
        }
    }
    move_all(reader, &settings, &done); /* those behind the last item */
    sw_music_at(reader, music)->first = done;
}

static void turn_round(sw_reader *reader, uint32_t music)
{
    for (uint32_t child = child_of(reader, music); child != SW_NO_INDEX; child = after(reader, child)) {
        turn_round(reader, child);
    }
    uint8_t kind = sw_music_at(reader, music)->kind;
    if (kind == SW_MUSIC_SEQUENCE || kind == SW_MUSIC_ALTERNATIVES) {
        reverse(reader, music);
    }
}

void sw_retrograde(sw_reader *reader, uint32_t music)
{
    last none = {SW_NO_INDEX, SW_NO_INDEX};
    write_out_repeats(reader, music, &none);
    turn_round(reader, music);
}

/* ---- durations ---- */

static bool has_duration(const sw_music *m)
{
    return m->kind >= SW_MUSIC_NOTE && m->kind <= SW_MUSIC_LYRIC;
}

void sw_shift_durations(sw_reader *reader, uint32_t music, int shift, int dots)
{
    sw_music *m = sw_music_at(reader, music);
    if (has_duration(m)) {
        int log = m->log + shift;
        int all = m->dots + dots;
        m->log = (int8_t)(log < -16 ? -16 : log > 30 ? 30 : log);
        m->dots = (uint8_t)(all < 0 ? 0 : all > 30 ? 30 : all);
        return;
    }
    for (uint32_t child = m->first; child != SW_NO_INDEX; child = after(reader, child)) {
        sw_shift_durations(reader, child, shift, dots);
    }
}

static bool compress(sw_music *m, sw_rational factor)
{
    sw_rational product = sw_rational_mul(sw_rational_make(m->num, m->den), factor);
    if (!sw_rational_valid(product) || product.num > INT32_MAX || product.den > INT32_MAX) {
        return false;
    }
    m->num = (int32_t)product.num;
    m->den = (int32_t)product.den;
    return true;
}

/* Notes and rests after one another; `factor` 1 makes all of them `present` times as long. */
static bool compress_all(sw_reader *reader, uint32_t music, sw_rational *present, sw_rational factor)
{
    sw_music *m = sw_music_at(reader, music);
    if (has_duration(m)) {
        bool fits = m->num == 0 || compress(m, *present);
        if (m->kind != SW_MUSIC_FULL_REST && m->kind != SW_MUSIC_LYRIC) {
            *present = sw_rational_mul(*present, factor);
        }
        return fits;
    }
    bool fits = true;
    for (uint32_t child = m->first; child != SW_NO_INDEX; child = after(reader, child)) {
        fits = compress_all(reader, child, present, factor) && fits;
    }
    return fits;
}

bool sw_feather_durations(sw_reader *reader, uint32_t music, sw_rational factor)
{
    static const sw_rational one = {1, 1};
    sw_rational before = sw_music_length(reader, music);
    sw_rational present = one;
    bool fits = compress_all(reader, music, &present, factor) && sw_rational_valid(present);
    sw_rational now = sw_music_length(reader, music);
    if (!fits || !sw_rational_valid(now) || sw_rational_is_zero(now)) {
        return false;
    }
    sw_rational all = sw_rational_div(before, now);
    return sw_rational_valid(all) && compress_all(reader, music, &all, one);
}
