#include "moves/octave_fit.h"

#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "moves/octave_range.h"
#include "moves/octave_strokes.h"

typedef struct fit {
    sw_move *move;
    const sw_chosen *chosen;
    sw_fit_range range;
    sw_lines lines;
    int8_t *offsets; /* by stroke */
} fit;

static const sw_event *event_of(const fit *f, size_t stroke)
{
    return &f->chosen->score->events[f->lines.strokes[stroke].event];
}

/* The heights of a stroke; those of its repetitions count for the range as well. */
static void measure(fit *f)
{
    const sw_score *score = f->chosen->score;
    for (size_t i = 0; i < f->lines.count; i++) {
        const sw_line_stroke *s = &f->lines.strokes[i];
        bool again = s->first != SW_NO_INDEX;
        sw_octave_stroke *note = &f->lines.notes[again ? s->first : i];
        note->fixed = !s->chosen;
        for (uint32_t e = s->event; e < s->end; e++) {
            int height = sw_pitch_semitones(sw_fit_range_pitch(&f->range, score, &score->events[e]));
            bool first = e == s->event && !again;
            note->low = first || height < note->low ? height : note->low;
            note->high = first || height > note->high ? height : note->high;
        }
        note->line = again ? note->line : note->high;
    }
}

/* The line of a voice: its strokes without those that are repetitions. A joint behind these is open. */
static void solve_voice(fit *f, size_t begin, size_t end)
{
    sw_octave_stroke *notes = sw_alloc((end - begin + 1) * sizeof *notes);
    size_t *numbers = sw_alloc((end - begin + 1) * sizeof *numbers);
    int8_t *offsets = sw_alloc_zero(end - begin + 1, sizeof *offsets);
    size_t count = 0;
    bool skipped = false;
    for (size_t i = begin; i < end; i++) {
        if (f->lines.strokes[i].first != SW_NO_INDEX) {
            skipped = true;
            continue;
        }
        notes[count] = f->lines.notes[i];
        notes[count].joint = skipped ? SW_JOINT_REST : notes[count].joint;
        numbers[count++] = i;
        skipped = false;
    }
    if (sw_octave_solve(notes, count, &f->range.heights, offsets) >= 0) {
        for (size_t i = 0; i < count; i++) {
            f->offsets[numbers[i]] = offsets[i];
        }
    }
    free(notes);
    free(numbers);
    free(offsets);
}

static void solve(fit *f)
{
    for (size_t begin = 0, end; begin < f->lines.count; begin = end) {
        for (end = begin + 1; end < f->lines.count && event_of(f, end)->voice == event_of(f, begin)->voice;
             end++) {
        }
        solve_voice(f, begin, end);
    }
    for (size_t i = 0; i < f->lines.count; i++) {
        uint32_t first = f->lines.strokes[i].first;
        f->offsets[i] = first != SW_NO_INDEX ? f->offsets[first] : f->offsets[i];
    }
}

/* ---- what is said ---- */

static const char *staff_label(const fit *f, const sw_event *event, char text[32])
{
    const sw_score *score = f->chosen->score;
    return sw_staff_label(f->chosen->reading, score, score->voices[event->voice].staff, text);
}

static void report(fit *f, const sw_event *event, sw_buffer *what)
{
    const sw_reading *reading = f->chosen->reading;
    const sw_music *m = sw_event_written(reading, event);
    sw_place place = sw_text_place(reading->files[m->file].text, m->start);
    if (reading == f->move->mains[0]) {
        sw_findings *findings = &f->move->findings;
        sw_findings_add(findings, SW_WARNING, "octave", m->file, m->start, m->end, "%s",
                        sw_buffer_text(what));
        findings->items[findings->count - 1].line = place.line;
        findings->items[findings->count - 1].column = place.column + 1;
    } else { /* findings are at places of the main file that was named */
        sw_buffer_format(&f->move->notes, "%s:%u:%u: warning: %s\n", reading->files[m->file].text->path,
                         place.line, place.column + 1, sw_buffer_text(what));
    }
}

/* Says what is outside from a stroke on, together with what follows it; returns the stroke behind. */
static size_t report_from(fit *f, size_t stroke)
{
    const sw_event *event = event_of(f, stroke);
    size_t end = stroke;
    int most = 0;
    while (end < f->lines.count && event_of(f, end)->voice == event->voice && f->lines.strokes[end].chosen) {
        int outside = f->lines.strokes[end].first != SW_NO_INDEX
                          ? 0
                          : sw_octave_outside(&f->lines.notes[end], &f->range.heights, f->offsets[end]);
        if (outside == 0) {
            break;
        }
        most = outside > most ? outside : most;
        end++;
    }
    char place[SW_SAY];
    char label[32];
    char interval[SW_SAY];
    char low[SW_SAY];
    char high[SW_SAY];
    sw_buffer what = {0};
    sw_buffer_format(&what, "%s, %s: ", sw_say_place(f->chosen->score, event->onset, place),
                     staff_label(f, event, label));
    if (end - stroke > 1) {
        sw_buffer_format(&what, "from here on %zu notes and chords fit", end - stroke);
    } else {
        sw_buffer_string(&what, "this fits");
    }
    sw_buffer_format(&what,
                     " in no octave between %s and %s (up to %s outside); thin it out, or give it to another "
                     "player",
                     sw_say_pitch(f->range.low, low), sw_say_pitch(f->range.high, high),
                     sw_say_interval(most, interval));
    report(f, event, &what);
    sw_buffer_free(&what);
    return end;
}

static void report_outside(fit *f)
{
    for (size_t i = 0; i < f->lines.count;) {
        bool own = f->lines.strokes[i].chosen && f->lines.strokes[i].first == SW_NO_INDEX;
        bool outside = own && sw_octave_outside(&f->lines.notes[i], &f->range.heights, f->offsets[i]) > 0;
        i = outside ? report_from(f, i) : i + 1;
    }
}

static void say_offset(sw_buffer *text, int offset)
{
    if (offset == 0) {
        sw_buffer_string(text, "as written");
    } else {
        sw_buffer_format(text, "%d octave%s %s", abs(offset), abs(offset) == 1 ? "" : "s",
                         offset > 0 ? "higher" : "lower");
    }
}

/* What made a seam cheap, or what it broke. */
static void say_reason(sw_buffer *text, unsigned joint)
{
    static const struct {
        unsigned flag;
        const char *words;
    } table[] = {
        {SW_JOINT_REST, "behind a rest"},
        {SW_JOINT_SHORT_REST, "behind a short rest"},
        {SW_JOINT_PHRASE_START, "where a phrase begins"},
        {SW_JOINT_REPEATED, "on a repeated note"},
        {SW_JOINT_LONG, "behind a long note"},
        {SW_JOINT_SLUR, "although a slur goes on"},
        {SW_JOINT_PHRASE, "although a phrase goes on"},
        {SW_JOINT_BEAT, "within a beat"},
        {SW_JOINT_SCALE, "within a scale"},
    };
    const char *comma = "";
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        if ((joint & table[i].flag) != 0) {
            sw_buffer_format(text, "%s%s", comma, table[i].words);
            comma = ", ";
        }
    }
    sw_buffer_string(text, comma[0] == '\0' ? "in the midst of the line" : "");
}

/* One line for each seam. */
static void explain_seams(fit *f)
{
    sw_buffer *why = &f->move->why;
    for (size_t i = 0; i < f->lines.count; i++) {
        bool first = i == 0 || event_of(f, i)->voice != event_of(f, i - 1)->voice;
        int before = first ? 0 : f->offsets[i - 1];
        if (f->offsets[i] == before || (f->lines.strokes[i].first != SW_NO_INDEX && f->offsets[i] == 0)) {
            continue;
        }
        char place[SW_SAY];
        char label[32];
        sw_buffer_format(why, "%s, %s: ", sw_say_place(f->chosen->score, event_of(f, i)->onset, place),
                         staff_label(f, event_of(f, i), label));
        say_offset(why, f->offsets[i]);
        sw_buffer_string(why, " from here on");
        if (f->lines.strokes[i].first != SW_NO_INDEX) {
            sw_buffer_string(why, ", as where it is written first");
        } else if (!first) {
            sw_buffer_string(why, ", ");
            say_reason(why, f->lines.notes[i].joint);
        }
        sw_buffer_string(why, "\n");
    }
}

static void explain(fit *f)
{
    char low[SW_SAY];
    char high[SW_SAY];
    size_t chosen = 0;
    size_t moved = 0;
    for (size_t i = 0; i < f->lines.count; i++) {
        chosen += f->lines.strokes[i].chosen;
        moved += f->offsets[i] != 0;
    }
    sw_buffer *why = &f->move->why;
    sw_buffer_format(why, "between %s and %s%s", sw_say_pitch(f->range.low, low),
                     sw_say_pitch(f->range.high, high), f->range.sounding ? ", sounding" : ", as written");
    if (f->range.instrument != NULL) {
        sw_buffer_format(why, ": the compass of the %s in a section", f->range.instrument->id);
    }
    sw_buffer_format(why,
                     "; %zu of %zu notes and chords move; no other way costs less (outside, strained "
                     "registers, seams, turns and leaps)\n",
                     moved, chosen);
    explain_seams(f);
}

/* On a staff of two combined parts a note that both have is heard once: the other part's would stay behind.
 * False with *error when a chosen note is combined. */
static bool is_one_part(const sw_chosen *chosen, char **error)
{
    for (size_t i = 0; i < chosen->count; i++) {
        const sw_event *event = &chosen->score->events[chosen->events[i]];
        for (uint32_t f = event->frame; f != SW_NO_INDEX; f = chosen->score->frames[f].parent) {
            const sw_music *m = &chosen->reading->music[chosen->score->frames[f].music];
            if (m->kind == SW_MUSIC_PART_COMBINE) {
                const sw_text *text = chosen->reading->files[m->file].text;
                sw_place place = sw_text_place(text, m->start);
                sw_buffer what = {0};
                sw_buffer_format(
                    &what,
                    "%s:%u:%u: two parts are combined here; move each where it plays alone, such "
                    "as in the player's part",
                    text->path, place.line, place.column + 1);
                *error = what.data;
                return false;
            }
        }
    }
    return true;
}

bool sw_octave_fit(sw_move *move, const sw_chosen *chosen, const sw_octave_options *options, int8_t *by,
                   char **error)
{
    fit f = {.move = move, .chosen = chosen};
    bool done = is_one_part(chosen, error) && sw_fit_range_find(chosen, options, &f.range, error);
    if (done) {
        f.lines = sw_lines_of(chosen);
        f.offsets = sw_alloc_zero(f.lines.count + 1, sizeof *f.offsets);
        measure(&f);
        solve(&f);
        for (size_t i = 0; i < f.lines.count; i++) {
            memset(&by[f.lines.strokes[i].event], f.offsets[i],
                   f.lines.strokes[i].end - f.lines.strokes[i].event);
        }
        report_outside(&f);
        explain(&f);
    }
    free(f.offsets);
    sw_lines_free(&f.lines);
    sw_fit_range_free(&f.range);
    return done;
}
