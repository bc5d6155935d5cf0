#include <stdlib.h>
#include <string.h>

#include "write/part_notes.h"
#include "write/part_time.h"

static sw_slice text_of(const sw_part_printer *p, uint32_t music)
{
    return sw_music_slice(p->plan->reading, music);
}

/* ---- marks ---- */

static bool gets(const sw_part_printer *p, uint32_t mark)
{
    return p->plan->mark_parts == NULL || (p->plan->mark_parts[mark] & 1u << p->part) != 0;
}

/* A mark as it is written; dynamics of the lowest part of a brace stand above it, between the staves, and
 * texts on the side where they belong. */
static void put_mark(sw_part_printer *p, uint32_t mark)
{
    sw_slice text = text_of(p, mark);
    sw_mark_class class = sw_music_mark_class(p->plan->reading, mark);
    const sw_division *division = p->plan->division;
    bool lowest = p->part + 1 == division->parts;
    bool dynamic = class == SW_MARK_DYNAMIC || class == SW_MARK_HAIRPIN_START;
    sw_text_home home = p->plan->mark_parts == NULL ? SW_TEXT_AT_NOTES : sw_plan_text_home(p->plan, mark);
    char side = home == SW_TEXT_BETWEEN                 ? (lowest ? '^' : '_')
                : home == SW_TEXT_BELOW && lowest       ? '_'
                : division->braced && lowest && dynamic ? '^'
                                                        : '\0';
    if (side != '\0' && sw_music_mark_direction(p->plan->reading, mark) == '-') {
        sw_buffer_char(p->out, side);
        size_t skip = text.data[0] == '-' ? 1 : 0;
        text = (sw_slice){text.data + skip, text.length - skip};
    }
    sw_buffer_append(p->out, text);
}

void sw_print_marks(sw_part_printer *p, uint32_t music, bool spaced)
{
    const sw_music *m = sw_part_music(p, music);
    uint32_t before = m->end;
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        const sw_music *mark = sw_part_music(p, c);
        if (mark->kind != SW_MUSIC_MARK || mark->start < m->end) {
            continue; /* the notes of a chord and what stands among them */
        }
        if (gets(p, c)) {
            if (spaced && mark->start > before) {
                sw_buffer_append(p->out,
                                 sw_text_slice(p->plan->reading->files[m->file].text, before, mark->start));
            }
            put_mark(p, c);
        }
        before = mark->end;
    }
    for (size_t i = 0; i < p->plan->added_count; i++) {
        const sw_added_mark *added = &p->plan->added[i];
        if (added->item == music && added->part == p->part) {
            sw_buffer_append(p->out, added->text);
        }
    }
}

/* ---- pitch and duration ---- */

/* The octave marks that the note needs here; moves the reference. */
static int octave_marks(sw_part_printer *p, uint32_t note)
{
    const sw_music *m = sw_part_music(p, note);
    if (m->kind != SW_MUSIC_NOTE || !p->relative || (m->flags & SW_MUSIC_RELATIVE_ENTRY) == 0) {
        return m->octave_marks;
    }
    int marks = sw_pitch_relative_marks(p->last, m->pitch);
    p->last = m->pitch;
    return marks;
}

static void put_marks(sw_part_printer *p, int marks)
{
    for (; marks > 0; marks--) {
        sw_buffer_char(p->out, '\'');
    }
    for (; marks < 0; marks++) {
        sw_buffer_char(p->out, ',');
    }
}

/* Name, octave marks, reminder accidentals, octave check; no duration. */
static void put_pitch(sw_part_printer *p, uint32_t note, int marks)
{
    const sw_music *m = sw_part_music(p, note);
    sw_slice text = text_of(p, note);
    sw_buffer_append(p->out, (sw_slice){text.data, m->name_length});
    put_marks(p, marks);
    if (memchr(text.data, '!', text.length) != NULL) {
        sw_buffer_char(p->out, '!');
    }
    if (memchr(text.data, '?', text.length) != NULL) {
        sw_buffer_char(p->out, '?');
    }
    if ((m->flags & SW_MUSIC_CHECKED) != 0) {
        sw_buffer_char(p->out, '=');
        put_marks(p, m->check + 1);
    }
}

static bool inherits_rightly(const sw_part_printer *p, const sw_music *m)
{
    return (m->flags & SW_MUSIC_WRITTEN_VALUE) != 0 ||
           (p->has_duration && sw_duration_equal(p->duration, sw_music_duration(m)));
}

static void keep_duration(sw_part_printer *p, const sw_music *m)
{
    p->duration = sw_music_duration(m);
    p->has_duration = true;
}

/* The duration, where it is written in the source or would otherwise be inherited wrongly. `c*2` is written
 * out: what it multiplies may have changed. */
static void put_duration(sw_part_printer *p, uint32_t item)
{
    const sw_music *m = sw_part_music(p, item);
    char text[SW_DURATION_TEXT];
    if ((m->flags & SW_MUSIC_WRITTEN_VALUE) != 0 || !inherits_rightly(p, m)) {
        sw_buffer_string(p->out, sw_duration_print(sw_music_duration(m), text));
    }
    keep_duration(p, m);
}

/* Only a factor is written (`c*2`), and the value that it multiplies is inherited. */
static bool has_bare_factor(const sw_part_printer *p, uint32_t item)
{
    sw_slice text = text_of(p, item);
    const char *star = memchr(text.data, '*', text.length);
    if (star == NULL || star == text.data) {
        return false;
    }
    char before = star[-1];
    return !((before >= '0' && before <= '9') || before == '.' || before == 'e' || before == 'a');
}

/* ---- items ---- */

static void print_verbatim(sw_part_printer *p, uint32_t item)
{
    sw_buffer_append(p->out, text_of(p, item));
    keep_duration(p, sw_part_music(p, item));
}

static void print_note(sw_part_printer *p, uint32_t note)
{
    const sw_music *m = sw_part_music(p, note);
    int marks = octave_marks(p, note);
    if (marks == m->octave_marks && inherits_rightly(p, m) && !has_bare_factor(p, note)) {
        print_verbatim(p, note);
    } else {
        put_pitch(p, note, marks);
        put_duration(p, note);
    }
    sw_print_marks(p, note, true);
}

static void print_rest(sw_part_printer *p, uint32_t rest)
{
    const sw_music *m = sw_part_music(p, rest);
    if (m->kind == SW_MUSIC_NOTE) { /* `b4\rest`: its height was meant for the undivided staff */
        char text[SW_DURATION_TEXT];
        uint32_t event = p->plan->first_event[rest];
        const sw_event *heard = event == SW_NO_INDEX ? NULL : &p->plan->division->score->events[event];
        sw_buffer_format(p->out, "%c%s", sw_part_rest_letter(p, heard),
                         sw_duration_print(sw_music_duration(m), text));
        keep_duration(p, m);
        sw_print_marks(p, rest, true);
        return;
    }
    if (inherits_rightly(p, m) && !has_bare_factor(p, rest)) {
        print_verbatim(p, rest);
    } else if (text_of(p, rest).data[0] == '\\') { /* \skip 4 has a value of its own and changes no other */
        sw_buffer_append(p->out, text_of(p, rest));
        return;
    } else {
        sw_buffer_append(p->out, (sw_slice){text_of(p, rest).data, 1});
        put_duration(p, rest);
    }
    sw_print_marks(p, rest, true);
}

/* What stands at a note inside its chord: fingering, \harmonic ... */
static void put_inner_marks(sw_part_printer *p, uint32_t note)
{
    for (uint32_t c = sw_part_music(p, note)->first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        if (sw_part_music(p, c)->kind == SW_MUSIC_MARK) {
            sw_buffer_append(p->out, text_of(p, c));
        }
    }
}

/* A note of a chord with the call before it (`\tweak color #red c`). */
static void put_chord_note(sw_part_printer *p, uint32_t note, int marks)
{
    const sw_music *m = sw_part_music(p, note);
    if (sw_music_is_called(m)) {
        sw_buffer_append(p->out, sw_text_slice(p->plan->reading->files[m->file].text, m->origin, m->start));
    }
    put_pitch(p, note, marks);
    put_inner_marks(p, note);
}

/* The written notes of an item that this part plays; their number. */
static size_t own_notes(const sw_part_printer *p, uint32_t item, uint32_t notes[64], size_t *all)
{
    const sw_plan *plan = p->plan;
    uint32_t first = plan->first_event[item];
    size_t count = 0;
    if (first == SW_NO_INDEX) { /* not heard in this score */
        for (uint32_t c = sw_part_music(p, item)->first; c != SW_NO_INDEX && count < 64;
             c = sw_part_music(p, c)->next) {
            if (sw_part_music(p, c)->kind == SW_MUSIC_NOTE || sw_part_music(p, c)->kind == SW_MUSIC_DRUM) {
                notes[count++] = c;
            }
        }
        *all = count;
        return p->part == 0 ? count : 0;
    }
    *all = plan->event_count[item];
    for (size_t i = 0; i < *all && count < 64; i++) {
        if (sw_division_gives(plan->division, first + i, p->part)) {
            notes[count++] = plan->division->score->events[first + i].music;
        }
    }
    return count;
}

/* Notes of a chord, or of the chord that q or a bare duration repeats. */
static void print_chord(sw_part_printer *p, uint32_t item)
{
    const sw_music *m = sw_part_music(p, item);
    uint32_t notes[64];
    size_t all;
    size_t count = own_notes(p, item, notes, &all);
    sw_pitch reference = p->last;
    int marks[64];
    bool unchanged = m->kind == SW_MUSIC_CHORD && count == all;
    sw_pitch first_pitch = reference;
    for (size_t i = 0; i < count; i++) {
        marks[i] = octave_marks(p, notes[i]);
        first_pitch = i == 0 ? p->last : first_pitch;
        unchanged = unchanged && marks[i] == sw_part_music(p, notes[i])->octave_marks;
    }
    p->last = count > 0 ? first_pitch : reference; /* what follows a chord refers to its first note */
    if (count == 0) {                              /* q or a bare duration that is not heard in this score */
        sw_buffer_append(p->out, text_of(p, item));
        keep_duration(p, m);
        sw_print_marks(p, item, true);
        return;
    }
    if (m->kind == SW_MUSIC_REPEAT_CHORD && count == all && p->full_chord != SW_NO_INDEX) {
        const sw_event *event = &p->plan->division->score->events[p->plan->first_event[item]];
        for (uint32_t c = sw_part_music(p, p->full_chord)->first; c != SW_NO_INDEX;
             c = sw_part_music(p, c)->next) {
            if (c == event->music) { /* the very chord that this part has written last */
                p->last = reference;
                sw_buffer_char(p->out, 'q');
                put_duration(p, item);
                sw_print_marks(p, item, true);
                return;
            }
        }
    }
    if (unchanged && inherits_rightly(p, m) && !has_bare_factor(p, item)) {
        print_verbatim(p, item);
    } else if (count == 1 && !sw_music_is_called(sw_part_music(p, notes[0]))) {
        put_pitch(p, notes[0], marks[0]);
        put_duration(p, item);
        put_inner_marks(p, notes[0]);
    } else {
        sw_buffer_char(p->out, '<');
        for (size_t i = 0; i < count; i++) {
            if (i > 0) {
                sw_buffer_char(p->out, ' ');
            }
            put_chord_note(p, notes[i], marks[i]);
        }
        sw_buffer_char(p->out, '>');
        put_duration(p, item);
    }
    if (count > 1 || (count == 1 && m->kind == SW_MUSIC_CHORD && count == all)) {
        p->full_chord = m->kind == SW_MUSIC_CHORD && count == all ? item : SW_NO_INDEX;
    }
    sw_print_marks(p, item, true);
}

void sw_print_item(sw_part_printer *p, uint32_t music)
{
    const sw_music *m = sw_part_music(p, music);
    if (p->plan->parts == NULL) {
        sw_buffer_append(p->out, sw_text_slice(p->plan->reading->files[m->file].text, m->start,
                                               sw_node_end(p->plan->reading, music)));
        return;
    }
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_CHORD:
    case SW_MUSIC_REPEAT_CHORD:
    case SW_MUSIC_BARE:
        if (m->kind == SW_MUSIC_CHORD && m->num == 0) { /* <>: what hangs on it goes to the upper part */
            if (p->part == 0) {
                sw_buffer_append(p->out, sw_text_slice(p->plan->reading->files[m->file].text, m->start,
                                                       sw_node_end(p->plan->reading, music)));
            }
        } else {
            print_chord(p, music);
        }
        break;
    case SW_MUSIC_NOTE:
        if ((m->flags & SW_MUSIC_AS_REST) != 0) {
            print_rest(p, music);
            break;
        }
        print_note(p, music);
        break;
    case SW_MUSIC_DRUM:
        print_note(p, music);
        break;
    default:
        print_rest(p, music);
        break;
    }
}
