/* The edits that divide a staff: its variables, and the places that use them. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "write/division.h"

typedef struct job {
    const sw_plan *plan; /* of the division's own reading */
    const sw_plan *here; /* of the main file that is looked at: the same, or one for another file */
    sw_patch *patch;
    sw_buffer *notes;
    char **error;
} job;

static const char *suffix(const job *j, uint32_t part)
{
    return j->plan->division->suffixes[part];
}

static const sw_text *text_of(const sw_reading *reading, uint32_t file)
{
    return reading->files[file].text;
}

static bool fail(const job *j, const sw_reading *reading, uint32_t file, uint32_t offset, const char *what)
{
    sw_place place = sw_text_place(text_of(reading, file), offset);
    if (*j->error == NULL && asprintf(j->error, "%s:%u:%u: %s", text_of(reading, file)->path, place.line,
                                      place.column + 1, what) < 0) {
        abort();
    }
    return false;
}

/* What the text of one part leaves behind for the next: notes refer to what stands before them. */
typedef struct leftover {
    sw_duration duration; /* what the next item would inherit; zero when that is not known */
    bool relative;        /* a \relative around the music holds on */
    sw_pitch pitch;       /* and this is what its next note refers to */
} leftover;

/* One part of some music. False when it can't be written. */
static bool print_part(const job *j, const sw_plan *plan, uint32_t part, uint32_t music, sw_buffer *out,
                       leftover *state)
{
    sw_part_printer printer = {
        .plan = plan,
        .part = part,
        .out = out,
        .relative = state->relative,
        .last = state->pitch,
        .full_chord = SW_NO_INDEX,
        .in_time = true,
    };
    if (plan->division->change_part != NULL && plan->parts != NULL) {
        size_t voices = plan->division->score->voice_count + 1;
        printer.voice_staff = sw_alloc(voices);
        memset(printer.voice_staff, SW_STAFF_UNKNOWN, voices);
    }
    sw_print_part(&printer, music);
    free(printer.voice_staff);
    if (printer.error != NULL) {
        if (*j->error == NULL) {
            *j->error = printer.error;
        } else {
            free(printer.error);
        }
        return false;
    }
    state->duration = printer.has_duration ? printer.duration : (sw_duration){0};
    state->pitch = printer.last;
    return true;
}

/* What the first note of some music refers to, when a \relative around that music decides about it;
 * SW_NO_INDEX when none does. */
static uint32_t outer_reference(const sw_reading *reading, uint32_t music)
{
    const sw_music *m = &reading->music[music];
    if (m->kind == SW_MUSIC_NOTE) {
        return (m->flags & SW_MUSIC_RELATIVE_ENTRY) != 0 ? m->reference : SW_NO_INDEX;
    }
    if (m->kind == SW_MUSIC_RELATIVE || m->kind == SW_MUSIC_FIXED || m->kind == SW_MUSIC_REFERENCE) {
        return SW_NO_INDEX;
    }
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = reading->music[c].next) {
        uint32_t found = outer_reference(reading, c);
        if (found != SW_NO_INDEX) {
            return found;
        }
    }
    return SW_NO_INDEX;
}

/* Whether an offset lies in the text of a variable that is divided itself. */
static bool in_divided_variable(const job *j, uint32_t file, uint32_t offset)
{
    const sw_reading *reading = j->here->reading;
    for (size_t v = 0; v < reading->variable_count; v++) {
        const sw_variable *variable = &reading->variables[v];
        if (variable->file == file && variable->start <= offset && offset < variable->end &&
            sw_plan_divides(j->here, reading, variable->name)) {
            return true;
        }
    }
    return false;
}

/* ---- variables ---- */

/* The next item with an inherited duration behind a variable would inherit from its last part now: it gets
 * its own value. */
static void mend_next_duration(const job *j, const sw_variable *variable, sw_duration last)
{
    const sw_reading *reading = j->plan->reading;
    for (uint32_t m = 0; m < reading->music_count; m++) {
        const sw_music *music = &reading->music[m];
        if (music->file != variable->file || music->start < variable->end || music->kind < SW_MUSIC_NOTE ||
            music->kind > SW_MUSIC_LYRIC || (music->kind == SW_MUSIC_CHORD && music->num == 0)) {
            continue;
        }
        if (music->kind == SW_MUSIC_LYRIC && (music->flags & SW_MUSIC_WRITTEN_VALUE) == 0) {
            continue; /* syllables take their time from notes */
        }
        if (music->kind == SW_MUSIC_NOTE || music->kind == SW_MUSIC_DRUM) {
            bool in_chord = false; /* the notes of a chord have no value of their own */
            for (uint32_t c = m + 1; c < reading->music_count && c < m + 64 && !in_chord; c++) {
                in_chord = reading->music[c].kind == SW_MUSIC_CHORD &&
                           reading->music[c].start < music->start && reading->music[c].end > music->start &&
                           reading->music[c].file == music->file;
            }
            for (uint32_t c = m; c-- > 0 && m - c < 64 && !in_chord;) {
                in_chord = reading->music[c].kind == SW_MUSIC_CHORD &&
                           reading->music[c].start < music->start && reading->music[c].end > music->start &&
                           reading->music[c].file == music->file;
            }
            if (in_chord) {
                continue;
            }
        }
        if ((music->flags & SW_MUSIC_WRITTEN_VALUE) == 0 &&
            !sw_duration_equal(last, sw_music_duration(music)) &&
            !in_divided_variable(j, music->file, music->start)) {
            char text[SW_DURATION_TEXT];
            sw_duration_print(sw_music_duration(music), text);
            sw_patch_add(j->patch, text_of(reading, music->file), music->end, music->end, sw_slice_of(text));
        }
        return;
    }
}

/* `name = value` becomes `nameRight = ...` and `nameLeft = ...`. */
static bool divide_variable(const job *j, const sw_variable *variable)
{
    const sw_reading *reading = j->plan->reading;
    const sw_text *text = text_of(reading, variable->file);
    const char *newline = sw_text_newline(text);
    sw_slice head = sw_text_slice(text, variable->start, variable->value_start);
    const char *name = sw_reading_name(reading, variable->name);
    sw_buffer out = {0};
    leftover last = {0};
    for (uint32_t part = 0; part < j->plan->division->parts; part++) {
        if (part > 0) {
            sw_buffer_format(&out, "%s%s", newline, newline);
        }
        /* `name =` as it is written, with the suffix behind the name */
        const char *place = memmem(head.data, head.length, name, strlen(name));
        size_t name_end = place == NULL ? 0 : (size_t)(place - head.data) + strlen(name);
        sw_buffer_append(&out, (sw_slice){head.data, name_end});
        sw_buffer_string(&out, suffix(j, part));
        sw_buffer_append(&out, (sw_slice){head.data + name_end, head.length - name_end});
        if (!print_part(j, j->plan, part, variable->music, &out, &last)) {
            sw_buffer_free(&out);
            return false;
        }
    }
    uint32_t end = sw_node_end(reading, variable->music);
    end = end > variable->end ? end : variable->end;
    sw_patch_add(j->patch, text, variable->start, end, sw_buffer_slice(&out));
    sw_buffer_free(&out);
    mend_next_duration(j, variable, last.duration);
    return true;
}

/* ---- uses ---- */

/* The smallest \new or \context of a staff whose text holds an offset. */
static uint32_t staff_around(const sw_reading *reading, uint32_t file, uint32_t offset)
{
    uint32_t best = SW_NO_INDEX;
    for (uint32_t m = 0; m < reading->music_count; m++) {
        const sw_music *music = &reading->music[m];
        if (music->kind != SW_MUSIC_CONTEXT || music->file != file || music->start > offset ||
            music->end <= offset || strcmp(sw_reading_name(reading, music->name), "Staff") != 0) {
            continue;
        }
        if (best == SW_NO_INDEX || music->start > reading->music[best].start) {
            best = m;
        }
    }
    return best;
}

static void append_indented(sw_buffer *out, sw_slice text, const char *more)
{
    for (size_t i = 0; i < text.length; i++) {
        sw_buffer_char(out, text.data[i]);
        if (text.data[i] == '\n' && i + 1 < text.length && text.data[i + 1] != '\n' &&
            text.data[i + 1] != '\r') {
            sw_buffer_string(out, more);
        }
    }
}

/* Whether a node is one of several that sound together, so that another can be put beside it. */
static bool is_in_simultaneous(const sw_reading *reading, uint32_t music)
{
    for (uint32_t m = 0; m < reading->music_count; m++) {
        if (reading->music[m].kind != SW_MUSIC_SIMULTANEOUS) {
            continue;
        }
        for (uint32_t c = reading->music[m].first; c != SW_NO_INDEX; c = reading->music[c].next) {
            if (c == music) {
                return true;
            }
        }
    }
    return false;
}

/* The context that holds the new staves. */
static const char *brace_type(const job *j)
{
    const sw_division *division = j->plan->division;
    uint32_t group = division->score->staves[division->staff].group;
    return division->group != NULL || group == SW_NO_INDEX
               ? division->group
               : sw_reading_name(division->reading, division->score->groups[group].type);
}

/* The staves of the parts, a line each, indented by `indent` and two more columns where they stand in a
 * group. */
static bool put_staves(const job *j, uint32_t staff, sw_slice indent, sw_slice rest, sw_buffer *out)
{
    const sw_reading *reading = j->here->reading;
    const sw_division *division = j->plan->division;
    const sw_music *m = &reading->music[staff];
    const char *newline = sw_text_newline(text_of(reading, m->file));
    const char *id = division->change_id != NULL ? division->change_id : sw_reading_name(reading, m->name2);
    if (j->plan->connects_arpeggios && division->braced) {
        if (division->group != NULL) {
            sw_buffer_format(out, "%s%.*s  ", newline, (int)indent.length, indent.data);
        }
        sw_buffer_format(out, "\\set %s.connectArpeggios = ##t", brace_type(j));
        sw_buffer_string(out, division->group != NULL ? "" : " ");
    }
    uint32_t reference = outer_reference(reading, m->first);
    leftover last = {.relative = reference != SW_NO_INDEX};
    last.pitch = reference == SW_NO_INDEX ? last.pitch : reading->music[reference].pitch;
    for (uint32_t part = 0; part < division->parts; part++) {
        if (part > 0 || division->group != NULL) {
            sw_buffer_string(out, newline);
            sw_buffer_append(out, indent);
            sw_buffer_string(out, division->group != NULL ? "  " : "");
        }
        sw_buffer_string(out, "\\new Staff ");
        if (id[0] != '\0') {
            sw_buffer_format(out, "= \"%s%s\" ", id, suffix(j, part));
        }
        if (division->group == NULL && part == 0 &&
            rest.length > 0) { /* the upper staff keeps the \with block */
            sw_buffer_append(out, rest);
            sw_buffer_char(out, ' ');
        }
        if (division->names[part] != NULL) {
            sw_buffer_format(out, "\\with { instrumentName = \"%s\" } ", division->names[part]);
        }
        sw_buffer music = {0};
        bool printed = print_part(j, j->here, part, m->first, &music, &last);
        append_indented(out, sw_buffer_slice(&music), division->group != NULL ? "  " : "");
        sw_buffer_free(&music);
        if (!printed) {
            return false;
        }
    }
    return true;
}

/* `\new Staff = "harp1" \with { ... } MUSIC` becomes a group of staves: the names and the \with block go to
 * the group, each staff gets MUSIC with its own variables. */
static bool divide_staff(const job *j, uint32_t staff)
{
    const sw_reading *reading = j->here->reading;
    const sw_division *division = j->plan->division;
    const sw_music *m = &reading->music[staff];
    const sw_text *text = text_of(reading, m->file);
    const char *newline = sw_text_newline(text);
    if (m->first == SW_NO_INDEX) {
        return true;
    }
    const sw_music *content = &reading->music[m->first];
    uint32_t content_end = sw_node_end(reading, m->first);
    sw_slice head = sw_text_slice(text, m->start, content->start);
    /* `\new Staff` up to behind the word Staff, then the rest of the head (id, \with). */
    const char *word = memmem(head.data, head.length, "Staff", 5);
    if (word == NULL) {
        return fail(j, reading, m->file, m->start, "this staff is made in a way that can't be rewritten");
    }
    size_t word_end = (size_t)(word - head.data) + 5;
    sw_slice indent = sw_text_indent(text, m->start);
    sw_slice rest = {head.data + word_end, head.length - word_end};
    while (rest.length > 0 && strchr(" \t\r\n", rest.data[rest.length - 1]) != NULL) {
        rest.length--;
    }
    sw_buffer out = {0};
    bool brackets = division->group != NULL || !is_in_simultaneous(reading, staff);
    if (division->group != NULL) {
        sw_buffer_append(&out, (sw_slice){head.data, (size_t)(word - head.data)});
        sw_buffer_string(&out, division->group);
        sw_buffer_append(&out, rest);
        sw_buffer_string(&out, " <<");
    } else {
        /* what stands behind the id: the \with block */
        const char *with = memmem(rest.data, rest.length, "\\with", 5);
        size_t skip = with == NULL ? rest.length : (size_t)(with - rest.data);
        rest = (sw_slice){rest.data + skip, rest.length - skip};
        sw_buffer_string(&out, brackets ? "<< " : "");
    }
    if (!put_staves(j, staff, indent, rest, &out)) {
        sw_buffer_free(&out);
        return false;
    }
    if (division->group != NULL) {
        sw_buffer_string(&out, newline);
        sw_buffer_append(&out, indent);
        sw_buffer_string(&out, ">>");
    } else if (brackets) {
        sw_buffer_string(&out, " >>");
    }
    sw_patch_add(j->patch, text, m->start, content_end, sw_buffer_slice(&out));
    sw_buffer_free(&out);
    return true;
}

/* A use outside of a staff of its own (a quotation, a combined part): both hands together. */
static void join_parts(const job *j, const sw_music *reference)
{
    const sw_reading *reading = j->here->reading;
    sw_slice name = sw_text_slice(text_of(reading, reference->file), reference->start, reference->end);
    sw_buffer out = {0};
    sw_buffer_string(&out, "<< ");
    for (uint32_t part = 0; part < j->plan->division->parts; part++) {
        if (part > 0) {
            sw_buffer_string(&out, " \\\\ ");
        }
        sw_buffer_append(&out, name);
        sw_buffer_string(&out, suffix(j, part));
    }
    sw_buffer_string(&out, " >>");
    sw_patch_add(j->patch, text_of(reading, reference->file), reference->start, reference->end,
                 sw_buffer_slice(&out));
    sw_buffer_free(&out);
    sw_place place = sw_text_place(text_of(reading, reference->file), reference->start);
    sw_buffer_format(
        j->notes,
        "%s:%u:%u: note: %.*s is used here outside of a staff of its own; it becomes both parts together\n",
        text_of(reading, reference->file)->path, place.line, place.column + 1, (int)name.length, name.data);
}

/* Another staff that uses a divided variable is divided along: worth saying where it is not the one that was
 * named. */
static void note_staff(const job *j, uint32_t staff, const sw_music *reference)
{
    const sw_reading *reading = j->here->reading;
    const sw_division *division = j->plan->division;
    const sw_music *m = &reading->music[staff];
    if (reading == division->reading && staff == division->score->staves[division->staff].music) {
        return;
    }
    sw_place place = sw_text_place(text_of(reading, m->file), m->start);
    sw_buffer_format(j->notes, "%s:%u:%u: note: the staff here uses \\%s too, and is split along\n",
                     text_of(reading, m->file)->path, place.line, place.column + 1,
                     sw_reading_name(reading, reference->name));
}

static bool divide_uses(job *j)
{
    const sw_reading *reading = j->here->reading;
    uint32_t last_staff = SW_NO_INDEX;
    for (uint32_t m = 0; m < reading->music_count; m++) {
        const sw_music *music = &reading->music[m];
        if (music->kind != SW_MUSIC_REFERENCE || !sw_plan_divides(j->here, reading, music->name) ||
            in_divided_variable(j, music->file, music->start)) {
            continue;
        }
        uint32_t staff = staff_around(reading, music->file, music->start);
        if (staff == SW_NO_INDEX && j->plan->division->change_part != NULL) {
            return fail(
                j, reading, music->file, music->start,
                "this is used here without a staff of its own, so it can't go from staff to staff; split it "
                "without --change-staff");
        }
        if (staff == SW_NO_INDEX) {
            join_parts(j, music);
        } else if (staff != last_staff) {
            last_staff = staff;
            note_staff(j, staff, music);
            if (!divide_staff(j, staff)) {
                return false;
            }
        }
    }
    return true;
}

/* The staff's music stands in the \score itself, without a variable. */
static bool divide_inline(job *j)
{
    const sw_division *division = j->plan->division;
    uint32_t staff = division->score->staves[division->staff].music;
    if (staff == SW_NO_INDEX) {
        return fail(j, j->plan->reading, division->score->file, division->score->start,
                    "this staff is made implicitly; write \\new Staff { ... } around its music, or keep it "
                    "in a variable");
    }
    return divide_staff(j, staff);
}

/* Music that comes from another staff (\change Staff = "this one") would have nowhere to go. */
static bool has_no_visitors(const job *j)
{
    const sw_reading *reading = j->plan->reading;
    uint32_t id = j->plan->division->score->staves[j->plan->division->staff].id;
    for (uint32_t m = 0; m < reading->music_count && id != 0; m++) {
        if (reading->music[m].kind == SW_MUSIC_CHANGE && reading->music[m].name2 == id) {
            return fail(j, reading, reading->music[m].file, reading->music[m].start,
                        "the music of another staff comes to the staff here; it can't be divided");
        }
    }
    return true;
}

static bool names_are_free(const job *j)
{
    const sw_reading *reading = j->plan->reading;
    for (size_t i = 0; i < j->plan->name_count; i++) {
        for (uint32_t part = 0; part < j->plan->division->parts; part++) {
            sw_buffer name = {0};
            sw_buffer_format(&name, "%s%s", sw_reading_name(reading, j->plan->names[i]), suffix(j, part));
            if (suffix(j, part)[0] == '\0') { /* it keeps its own */
                sw_buffer_free(&name);
                continue;
            }
            uint32_t number = sw_names_find(reading->names, sw_buffer_slice(&name));
            for (size_t v = 0; number != UINT32_MAX && v < reading->variable_count; v++) {
                if (reading->variables[v].name == number) {
                    sw_buffer_free(&name);
                    return fail(j, reading, reading->variables[v].file, reading->variables[v].start,
                                "this name is needed for the new part; rename the variable first");
                }
            }
            sw_buffer_free(&name);
        }
    }
    return true;
}

bool sw_division_gives(const sw_division *division, size_t event, uint32_t part)
{
    return division->event_parts != NULL ? (division->event_parts[event] & 1u << part) != 0
                                         : division->event_part[event] == part;
}

void sw_division_settle(const sw_reading *reading, const sw_score *score, uint32_t staff,
                        uint8_t *event_parts)
{
    uint32_t *first = sw_alloc((reading->music_count + 1) * sizeof *first);
    memset(first, 0xff, (reading->music_count + 1) * sizeof *first);
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (score->voices[event->voice].staff != staff) {
            continue;
        }
        if (first[event->chord] == SW_NO_INDEX) {
            first[event->chord] = i;
        }
        for (uint32_t k = first[event->chord]; k < i && score->events[k].chord == event->chord; k++) {
            if (score->events[k].music == event->music) {
                event_parts[i] = event_parts[k];
                break;
            }
        }
    }
    free(first);
}

bool sw_divide(const sw_division *division, sw_reading *const *mains, size_t main_count, sw_patch *patch,
               sw_buffer *notes, char **error)
{
    *error = NULL;
    sw_plan *plan = sw_plan_new(division);
    job j = {.plan = plan, .here = plan, .patch = patch, .notes = notes, .error = error};
    bool done = names_are_free(&j) && has_no_visitors(&j);
    for (size_t v = 0; v < division->reading->variable_count && done; v++) {
        const sw_variable *variable = &division->reading->variables[v];
        if (variable->music != SW_NO_INDEX && sw_plan_divides(plan, division->reading, variable->name)) {
            done = divide_variable(&j, variable);
        }
    }
    if (done && plan->name_count == 0) {
        done = divide_inline(&j);
    }
    for (size_t i = 0; i < main_count && done && plan->name_count > 0; i++) {
        if (mains[i] == division->reading) {
            done = divide_uses(&j);
            continue;
        }
        sw_plan *other = sw_plan_for_other(plan, mains[i]);
        j.here = other;
        if (other->name_count > 0) {
            done = divide_uses(&j);
        }
        sw_plan_free(other);
        j.here = plan;
    }
    sw_plan_free(plan);
    return done && sw_languages_stay(patch, error) && sw_sources_are_known(mains, main_count, patch, error);
}
