#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "stavewright/meaning.h"
#include "stavewright/report.h"

static const char *pitch_word(sw_pitch p, char text[16])
{
    static const char *const letters = "CDEFGAB";
    static const char *const words[] = {" double flat", "", " flat",        "", "", "",
                                        " sharp",       "", " double sharp"};
    snprintf(text, 16, "%c%s", letters[p.step], p.alter >= -4 && p.alter <= 4 ? words[p.alter + 4] : "");
    return text;
}

/* Printed once for each moment, however many staves say it. */
static bool said_before(const sw_reading *reading, const sw_score *score, size_t index)
{
    const sw_setting *s = &score->settings[index];
    const sw_music *m = &reading->music[s->music];
    for (size_t i = index; i-- > 0 && sw_rational_equal(score->settings[i].onset, s->onset);) {
        const sw_music *other = &reading->music[score->settings[i].music];
        if (other->kind == m->kind && other->num == m->num && other->den == m->den &&
            other->name == m->name &&
            (m->kind == SW_MUSIC_TIME || m->kind == SW_MUSIC_TEMPO ||
             sw_pitch_equal(score->settings[i].pitch, s->pitch))) {
            return true;
        }
    }
    return false;
}

static void print_changes(const sw_reading *reading, const sw_score *score, sw_buffer *result)
{
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *s = &score->settings[i];
        const sw_music *m = &reading->music[s->music];
        if ((m->kind != SW_MUSIC_TIME && m->kind != SW_MUSIC_KEY && m->kind != SW_MUSIC_TEMPO) ||
            said_before(reading, score, i)) {
            continue;
        }
        uint32_t bar = sw_score_bar_at(score, s->onset);
        char beat[SW_RATIONAL_TEXT];
        char tonic[16];
        sw_buffer_format(result, "  bar %d:%s  ", bar == SW_NO_INDEX ? 1 : score->bars[bar].number,
                         sw_rational_print(sw_score_beat(score, s->onset), beat));
        if (m->kind == SW_MUSIC_TIME) {
            sw_buffer_format(result, "time %d/%d\n", m->num, m->den);
        } else if (m->kind == SW_MUSIC_KEY) {
            sw_buffer_format(result, "key %s %s\n", pitch_word(s->pitch, tonic),
                             sw_reading_name(reading, m->name));
        } else {
            sw_buffer_string(result, "tempo ");
            sw_tempo_meaning(reading, s->music, result);
            sw_buffer_char(result, '\n');
        }
    }
}

bool sw_report_is_staff(const sw_reading *reading, const sw_staff *staff)
{
    static const char *const others[] = {"ChordNames", "Devnull", "Dynamics", "FiguredBass",
                                         "FretBoards", "Lyrics",  "NoteNames"};
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++) {
        if (strcmp(sw_reading_name(reading, staff->type), others[i]) == 0) {
            return false;
        }
    }
    return true;
}

static const char *some(size_t count, const char *one, const char *several)
{
    return count == 1 ? one : several;
}

/* What a staff holds. */
typedef struct content {
    size_t voices;
    size_t notes;
} content;

/* By staff; free() it. */
static content *count_contents(const sw_score *score)
{
    content *contents = sw_alloc_zero(score->staff_count + 1, sizeof *contents);
    for (size_t v = 0; v < score->voice_count; v++) {
        contents[score->voices[v].staff].voices++;
    }
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *e = &score->events[i];
        contents[score->voices[e->voice].staff].notes += e->kind == SW_EVENT_NOTE || e->kind == SW_EVENT_DRUM;
    }
    return contents;
}

static void print_staves(const sw_reading *reading, const sw_score *score, sw_buffer *result)
{
    content *contents = count_contents(score);
    for (uint32_t s = 0; s < score->staff_count; s++) {
        const sw_staff *staff = &score->staves[s];
        size_t notes = contents[s].notes;
        size_t voices = contents[s].voices;
        char label[32];
        sw_buffer_format(result, "  %-28s %s", sw_staff_label(reading, score, s, label),
                         sw_reading_name(reading, staff->type));
        if (staff->id != 0) {
            sw_buffer_format(result, " \"%s\"", sw_reading_name(reading, staff->id));
        }
        if (staff->variable != 0) {
            sw_buffer_format(result, " \\%s", sw_reading_name(reading, staff->variable));
        }
        if (staff->group != SW_NO_INDEX) {
            sw_buffer_format(result, " in %s", sw_reading_name(reading, score->groups[staff->group].type));
        }
        if (sw_report_is_staff(reading, staff)) {
            sw_buffer_format(result, ", %zu %s, %zu %s", voices, some(voices, "voice", "voices"), notes,
                             some(notes, "note", "notes"));
        }
        sw_buffer_char(result, '\n');
    }
    free(contents);
}

static bool says_score(const sw_reading *reading, const sw_score *score)
{
    static const char word[] = "\\score";
    const sw_text *text = reading->files[score->file].text;
    uint32_t from = score->start > 40 ? score->start - 40 : 0; /* blanks and a remark may stand between */
    uint32_t to = score->start + (uint32_t)sizeof word - 1;
    sw_slice near = sw_text_slice(text, from, to);
    return memmem(near.data, near.length, word, sizeof word - 1) != NULL;
}

/* By file the place of its first syntax error, UINT32_MAX when it has none; free() it. */
static uint32_t *find_errors(const sw_reading *reading)
{
    uint32_t *errors = sw_alloc((reading->file_count + 1) * sizeof *errors);
    memset(errors, 0xff, (reading->file_count + 1) * sizeof *errors);
    for (size_t i = reading->findings.count; i-- > 0;) {
        const sw_finding *f = &reading->findings.items[i];
        if (strcmp(f->rule, "syntax") == 0) {
            errors[f->file] = f->start;
        }
    }
    return errors;
}

/* True for what only looks like a score: behind a missing or superfluous bracket the music of variables
 * stands at the outer level, where each note is a score of its own. */
static bool is_ghost(const sw_reading *reading, const uint32_t *errors, const sw_score *score)
{
    return score->start > errors[score->file] && !says_score(reading, score);
}

static size_t count_staves(const sw_reading *reading, const sw_score *score)
{
    size_t count = 0;
    for (size_t i = 0; i < score->staff_count; i++) {
        count += sw_report_is_staff(reading, &score->staves[i]);
    }
    return count;
}

void sw_report_outline(const sw_reading *reading, sw_buffer *result)
{
    uint32_t *errors = find_errors(reading);
    for (size_t i = 0; i < reading->score_count; i++) {
        const sw_score *score = &reading->scores[i];
        if (is_ghost(reading, errors, score)) {
            continue;
        }
        double seconds = sw_score_seconds(score, score->length);
        size_t staves = count_staves(reading, score);
        sw_buffer_format(result, "score %zu: %zu %s, %zu %s, %d:%02d%s\n", i + 1, staves,
                         some(staves, "staff", "staves"), score->bar_count,
                         some(score->bar_count, "bar", "bars"), (int)(seconds / 60), (int)fmod(seconds, 60),
                         score->tempo_count == 1 && score->tempos[0].music == SW_NO_INDEX
                             ? " at an assumed 60 quarters a minute (no tempo is given)"
                             : "");
        print_staves(reading, score, result);
        print_changes(reading, score, result);
    }
    free(errors);
}
