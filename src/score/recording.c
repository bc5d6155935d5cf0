#include <ctype.h>
#include <stdlib.h>
#include <string.h>

#include "score/recording.h"

sw_recording *sw_recording_new(const sw_reader *reader, uint32_t id)
{
    sw_recording *recording = sw_alloc_zero(1, sizeof *recording);
    recording->reader = reader;
    recording->contexts =
        sw_grow(recording->contexts, 0, &recording->context_capacity, sizeof *recording->contexts);
    recording->contexts[recording->context_count++] =
        (sw_recorded_context){sw_names_add(reader->reading->names, sw_slice_of("Voice")), id};
    return recording;
}

void sw_recording_free(sw_recording *recording)
{
    if (recording == NULL) {
        return;
    }
    free(recording->heard);
    free(recording->contexts);
    free(recording);
}

uint32_t sw_recording_enter(sw_recording *recording, uint32_t here, uint32_t music)
{
    const sw_music *m = sw_music_at(recording->reader, music);
    if (strcmp(sw_reading_name(recording->reader->reading, m->name), "Bottom") == 0) {
        return here; /* voices made by \\ are made only when the score is played */
    }
    if ((m->flags & SW_MUSIC_NEW) == 0) {
        if (here < recording->context_count) { /* not in a voice of \partCombine's own */
            const sw_recorded_context *own = &recording->contexts[here];
            if (own->type == m->name && (m->name2 == 0 || own->id == m->name2)) {
                return here;
            }
        }
        for (uint32_t i = 0; i < recording->context_count; i++) {
            if (recording->contexts[i].type == m->name && recording->contexts[i].id == m->name2 &&
                m->name2 != 0) {
                return i;
            }
        }
    }
    recording->contexts = sw_grow(recording->contexts, recording->context_count, &recording->context_capacity,
                                  sizeof *recording->contexts);
    recording->contexts[recording->context_count] = (sw_recorded_context){m->name, m->name2};
    return (uint32_t)recording->context_count++;
}

void sw_recording_add(sw_recording *recording, const sw_heard *heard)
{
    recording->heard =
        sw_grow(recording->heard, recording->count, &recording->capacity, sizeof *recording->heard);
    recording->heard[recording->count++] = *heard;
}

void sw_recording_touch(sw_recording *recording, const sw_heard *at)
{
    sw_heard heard = *at;
    heard.kind = SW_HEARD_OTHER;
    sw_recording_add(recording, &heard);
}

void sw_recording_span(sw_recording *recording, const sw_heard *at, sw_heard_span span, bool start)
{
    sw_heard heard = *at;
    heard.kind = start ? SW_HEARD_SPAN_START : SW_HEARD_SPAN_END;
    heard.span = (uint8_t)span;
    sw_recording_add(recording, &heard);
}

/* ---- marks ---- */

/* The mark that a variable stands for, however many steps away. */
static uint32_t meant(const sw_recording *recording, uint32_t mark)
{
    const sw_reader *reader = recording->reader;
    for (int steps = 0; steps < 8; steps++) {
        sw_slice text = sw_music_slice(reader->reading, mark);
        while (text.length > 1 && strchr("-^_", text.data[0]) != NULL) {
            text = (sw_slice){text.data + 1, text.length - 1};
        }
        if (text.length < 2 || text.data[0] != '\\' || !isalpha((unsigned char)text.data[1])) {
            break;
        }
        sw_slice name = {text.data + 1, text.length - 1};
        const sw_value *value = sw_lookup(reader, sw_names_find(reader->reading->names, name));
        if (value == NULL || value->kind != SW_VALUE_POST || value->music == SW_NO_INDEX ||
            value->music == mark) {
            break;
        }
        mark = value->music;
    }
    return mark;
}

static bool contains(sw_slice text, const char *word)
{
    return memmem(text.data, text.length, word, strlen(word)) != NULL;
}

static sw_heard_span hairpin(sw_slice text)
{
    bool louder = sw_slice_ends(text, "\\<") || sw_slice_ends(text, "cr") || sw_slice_ends(text, "\\cresc");
    return louder && !sw_slice_ends(text, "\\decr") ? SW_SPAN_CRESCENDO : SW_SPAN_DECRESCENDO;
}

void sw_recording_marks(sw_recording *recording, const sw_heard *at, uint32_t music)
{
    const sw_reading *reading = recording->reader->reading;
    sw_heard heard = *at;
    for (uint32_t mark = reading->music[music].first; mark != SW_NO_INDEX; mark = reading->music[mark].next) {
        if (reading->music[mark].kind != SW_MUSIC_MARK) {
            continue;
        }
        uint32_t target = meant(recording, mark);
        sw_slice text = sw_music_slice(reading, target);
        switch (sw_music_mark_class(reading, target)) {
        case SW_MARK_TIE:
            heard.kind = SW_HEARD_TIE;
            break;
        case SW_MARK_DYNAMIC:
            heard.kind = SW_HEARD_DYNAMIC;
            break;
        case SW_MARK_SLUR_START:
        case SW_MARK_SLUR_END:
            sw_recording_span(recording, at, SW_SPAN_SLUR,
                              sw_music_mark_class(reading, target) == SW_MARK_SLUR_START);
            continue;
        case SW_MARK_PHRASE_START:
        case SW_MARK_PHRASE_END:
            sw_recording_span(recording, at, SW_SPAN_TIE,
                              sw_music_mark_class(reading, target) == SW_MARK_PHRASE_START);
            continue;
        case SW_MARK_BEAM_START:
        case SW_MARK_BEAM_END:
            sw_recording_span(recording, at, SW_SPAN_BEAM,
                              sw_music_mark_class(reading, target) == SW_MARK_BEAM_START);
            continue;
        case SW_MARK_HAIRPIN_START:
            sw_recording_span(recording, at, hairpin(text), true);
            continue;
        case SW_MARK_HAIRPIN_END:
            sw_recording_span(recording, at, SW_SPAN_CRESCENDO, false);
            continue;
        default:
            heard.kind = contains(text, "make-dynamic-script") || contains(text, "AbsoluteDynamicEvent")
                             ? SW_HEARD_DYNAMIC
                             : SW_HEARD_OTHER;
            break;
        }
        sw_recording_add(recording, &heard);
    }
}

/* ---- settings ---- */

/* Commands that speak to the staff or the score (or to nobody), so that the voice hears nothing. */
static bool bypasses_voice(sw_slice command)
{
    static const char *const names[] = {
        "accidentalStyle",
        "ambitusAfter",
        "applyContext",
        "autoBreaksOff",
        "autoBreaksOn",
        "autoLineBreaksOff",
        "autoLineBreaksOn",
        "autoPageBreaksOff",
        "autoPageBreaksOn",
        "barNumberCheck",
        "bassFigureStaffAlignmentDown",
        "bassFigureStaffAlignmentNeutral",
        "bassFigureStaffAlignmentUp",
        "cadenzaOff",
        "cadenzaOn",
        "clef",
        "compoundMeter",
        "compressEmptyMeasures",
        "cueClef",
        "cueClefUnset",
        "defaultTimeSignature",
        "expandEmptyMeasures",
        "hideSplitTiedTabNotes",
        "instrumentSwitch",
        "markLengthOff",
        "markLengthOn",
        "mergeDifferentlyDottedOff",
        "mergeDifferentlyDottedOn",
        "mergeDifferentlyHeadedOff",
        "mergeDifferentlyHeadedOn",
        "numericTimeSignature",
        "octaveCheck",
        "overrideTimeSignatureSettings",
        "partial",
        "resetRelativeOctave",
        "revertTimeSignatureSettings",
        "showSplitTiedTabNotes",
        "startGraceMusic",
        "stopGraceMusic",
        "tabFullNotation",
        "tocItem",
        "transposition",
        NULL,
    };
    for (const char *const *name = names; *name != NULL; name++) {
        if (sw_slice_is(command, *name)) {
            return true;
        }
    }
    return false;
}

/* `Staff.fontSize`, `Score.BarNumber.X`: a path that begins with a context above the voice. */
static bool is_above_voice(sw_slice path)
{
    static const char *const names[] = {"Score",       "Timing",        "Global",     "Staff",
                                        "StaffGroup",  "PianoStaff",    "GrandStaff", "ChoirStaff",
                                        "DrumStaff",   "TabStaff",      "Lyrics",     "ChordNames",
                                        "FiguredBass", "RhythmicStaff", NULL};
    const char *dot = memchr(path.data, '.', path.length);
    if (dot == NULL) {
        return false;
    }
    sw_slice first = {path.data, (size_t)(dot - path.data)};
    for (const char *const *name = names; *name != NULL; name++) {
        if (sw_slice_is(first, *name)) {
            return true;
        }
    }
    return false;
}

static sw_slice command_name(sw_slice text)
{
    size_t end = 1;
    while (end < text.length && isalpha((unsigned char)text.data[end])) {
        end++;
    }
    return text.length > 0 ? (sw_slice){text.data + 1, end - 1} : text;
}

static sw_slice first_argument(sw_slice text, sw_slice command)
{
    const char *end = text.data + text.length;
    const char *begin = command.data + command.length;
    while (begin < end && isspace((unsigned char)*begin)) {
        begin++;
    }
    const char *stop = begin;
    while (stop < end && !isspace((unsigned char)*stop)) {
        stop++;
    }
    return (sw_slice){begin, (size_t)(stop - begin)};
}

void sw_recording_setting(sw_recording *recording, const sw_heard *at, uint32_t music)
{
    const sw_reading *reading = recording->reader->reading;
    const sw_music *m = &reading->music[music];
    sw_heard heard = *at;
    heard.kind = SW_HEARD_OTHER;
    heard.music = music;
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_TRANSPOSITION:
        heard.kind = SW_HEARD_TRANSPOSITION;
        break;
    case SW_MUSIC_BAR_CHECK:
    case SW_MUSIC_MARK:
    case SW_MUSIC_CLEF:
    case SW_MUSIC_PARTIAL:
    case SW_MUSIC_CADENZA:
    case SW_MUSIC_OCTAVE_CHECK:
    case SW_MUSIC_EMPTY:
        return;
    case SW_MUSIC_SET:
        if (is_above_voice(sw_slice_of(sw_reading_name(reading, m->name)))) {
            return;
        }
        break;
    case SW_MUSIC_SETTING: {
        sw_slice text = sw_music_slice(reading, music);
        if (sw_slice_starts(text, "\\once")) {
            const char *next = memchr(text.data + 1, '\\', text.length - 1);
            text = next == NULL ? text : (sw_slice){next, (size_t)(text.data + text.length - next)};
        }
        sw_slice command = command_name(text);
        if (bypasses_voice(command) || is_above_voice(first_argument(text, command))) {
            return;
        }
        if (sw_slice_starts(command, "partCombine")) {
            heard.kind = SW_HEARD_FORCE;
        }
        break;
    }
    default:
        break;
    }
    sw_recording_add(recording, &heard);
}

/* ---- order ---- */

static int compare(const void *a, const void *b, void *context)
{
    const sw_heard *heard = context;
    uint32_t x = *(const uint32_t *)a;
    uint32_t y = *(const uint32_t *)b;
    int order = sw_moment_compare(heard[x].when, heard[y].when);
    return order != 0 ? order : (x < y ? -1 : 1);
}

static bool in_order(const sw_recording *recording)
{
    for (size_t i = 1; i < recording->count; i++) {
        if (sw_moment_compare(recording->heard[i - 1].when, recording->heard[i].when) > 0) {
            return false;
        }
    }
    return true;
}

void sw_recording_end(sw_recording *recording, sw_moment end)
{
    recording->end = end;
    if (in_order(recording)) {
        return;
    }
    uint32_t *order = sw_alloc(recording->count * sizeof *order);
    for (uint32_t i = 0; i < recording->count; i++) {
        order[i] = i;
    }
    qsort_r(order, recording->count, sizeof *order, compare, recording->heard);
    sw_heard *sorted = sw_alloc(recording->count * sizeof *sorted);
    for (size_t i = 0; i < recording->count; i++) {
        sorted[i] = recording->heard[order[i]];
    }
    free(order);
    free(recording->heard);
    recording->heard = sorted;
    recording->capacity = recording->count;
}
