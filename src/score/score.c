/* Access to a reading and its scores. */
#include <stdio.h>
#include <stdlib.h>

#include "score/reader.h"
#include "stavewright/metre.h"
#include "stavewright/score.h"

static void free_score(sw_score *score)
{
    free(score->events);
    free(score->staves);
    free(score->voices);
    free(score->groups);
    free(score->frames);
    free(score->settings);
    free(score->bars);
    free(score->tempos);
    free(score->lines);
    free(score->syllables);
}

void sw_reading_clear(sw_reading *reading)
{
    for (size_t i = 0; i < reading->file_count; i++) {
        sw_syntax_free(reading->files[i].syntax);
        if (reading->files[i].owned) {
            sw_text_free(reading->files[i].text);
        }
    }
    for (size_t i = 0; i < reading->score_count; i++) {
        free_score(&reading->scores[i]);
    }
    free(reading->files);
    free(reading->scores);
    free(reading->music);
    free(reading->variables);
    free(reading->languages);
    free(reading->prefixes);
    sw_findings_free(&reading->findings);
    sw_names_free(reading->names);
}

void sw_reading_free(sw_reading *reading)
{
    if (reading != NULL) {
        sw_reading_clear(reading);
        free(reading);
    }
}

size_t sw_reading_memory(const sw_reading *reading)
{
    size_t bytes = reading->music_capacity * sizeof(sw_music) +
                   reading->variable_capacity * sizeof(sw_variable) +
                   reading->prefix_capacity * sizeof(sw_prefix);
    for (size_t i = 0; i < reading->score_count; i++) {
        const sw_score *s = &reading->scores[i];
        bytes += s->event_capacity * sizeof(sw_event) + s->frame_capacity * sizeof(sw_frame) +
                 s->setting_capacity * sizeof(sw_setting) + s->bar_capacity * sizeof(sw_bar) +
                 s->line_capacity * sizeof(sw_lyric_line) + s->syllable_capacity * sizeof(sw_syllable);
    }
    return bytes;
}

/* What a \relative or \fixed has settled is left alone by a \fixed around it. */
sw_pitch sw_score_pitch(const sw_reading *reading, const sw_score *score, uint32_t frame, sw_pitch written)
{
    bool settled = false;
    for (; frame != SW_NO_INDEX; frame = score->frames[frame].parent) {
        const sw_music *m = &reading->music[score->frames[frame].music];
        if (m->kind == SW_MUSIC_TRANSPOSE || (m->kind == SW_MUSIC_FIXED && !settled)) {
            written = sw_pitch_transpose(written, m->pitch);
        }
        settled = settled || m->kind == SW_MUSIC_RELATIVE || m->kind == SW_MUSIC_FIXED;
    }
    return written;
}

sw_pitch sw_score_written_pitch(const sw_reading *reading, const sw_score *score, uint32_t frame,
                                sw_pitch heard)
{
    const sw_pitch middle_c = {0, 0, 0};
    sw_pitch up = sw_score_pitch(reading, score, frame, middle_c);
    return sw_pitch_transpose(heard, sw_pitch_interval(up, middle_c));
}

int sw_music_compare_places(const sw_music *a, const sw_music *b)
{
    if (a->file != b->file) {
        return a->file < b->file ? -1 : 1;
    }
    return a->start < b->start ? -1 : a->start > b->start;
}

sw_slice sw_music_slice(const sw_reading *reading, uint32_t music)
{
    const sw_music *m = &reading->music[music];
    return sw_text_slice(reading->files[m->file].text, m->start, m->end);
}

sw_slice sw_music_calls(const sw_reading *reading, uint32_t music)
{
    size_t low = 0;
    size_t high = reading->prefix_count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (reading->prefixes[middle].music < music) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    const sw_music *m = &reading->music[music];
    bool found = low < reading->prefix_count && reading->prefixes[low].music == music;
    uint32_t start = found ? reading->prefixes[low].start : m->start;
    return sw_text_slice(reading->files[m->file].text, start, m->start);
}

sw_duration sw_music_duration(const sw_music *music)
{
    return (sw_duration){music->log, music->dots, music->num, music->den};
}

const char *sw_reading_name(const sw_reading *reading, uint32_t name)
{
    return sw_names_text(reading->names, name);
}

bool sw_music_has_origin(const sw_music *music)
{
    return music->kind >= SW_MUSIC_NOTE && music->kind <= SW_MUSIC_BARE && music->kind != SW_MUSIC_CHORD;
}

bool sw_music_is_called(const sw_music *music)
{
    return sw_music_has_origin(music) && music->origin_file == music->file && music->origin < music->start;
}

sw_place sw_event_place(const sw_reading *reading, const sw_event *event, uint32_t *file)
{
    /* The notes of a repeated chord stand where the repetition is written. */
    const sw_music *m = &reading->music[event->music];
    const sw_music *chord = &reading->music[event->chord];
    if (chord->kind == SW_MUSIC_REPEAT_CHORD || chord->kind == SW_MUSIC_BARE) {
        m = chord;
    }
    bool single = sw_music_has_origin(m);
    *file = single ? m->origin_file : m->file;
    return sw_text_place(reading->files[*file].text, single ? m->origin : m->start);
}

/* The first event that belongs to this staff or a later one. */
static uint32_t first_event_from(const sw_score *score, uint32_t staff)
{
    size_t low = 0;
    size_t high = score->event_count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (score->voices[score->events[middle].voice].staff < staff) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return (uint32_t)low;
}

sw_staff_events sw_score_staff_events(const sw_score *score, uint32_t staff)
{
    return (sw_staff_events){first_event_from(score, staff), first_event_from(score, staff + 1)};
}

sw_rational sw_event_end(const sw_event *event)
{
    return sw_rational_add(event->onset, event->duration);
}

sw_place sw_syllable_place(const sw_reading *reading, const sw_syllable *syllable)
{
    const sw_music *m = &reading->music[syllable->music];
    return sw_text_place(reading->files[m->file].text, m->start);
}

uint32_t sw_score_bar_at(const sw_score *score, sw_rational onset)
{
    if (score->bar_count == 0) {
        return SW_NO_INDEX;
    }
    size_t low = 0;
    size_t high = score->bar_count;
    while (high - low > 1) {
        size_t middle = (low + high) / 2;
        if (sw_rational_compare(score->bars[middle].start, onset) <= 0) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return (uint32_t)low;
}

uint32_t sw_score_bar_numbered(const sw_score *score, int number)
{
    for (uint32_t i = 0; i < score->bar_count; i++) {
        if (score->bars[i].number == number) {
            return i;
        }
    }
    return SW_NO_INDEX;
}

sw_rational sw_score_beat(const sw_score *score, sw_rational onset)
{
    uint32_t index = sw_score_bar_at(score, onset);
    if (index == SW_NO_INDEX) {
        return sw_rational_make(1, 1);
    }
    const sw_bar *bar = &score->bars[index];
    sw_rational position = sw_rational_add(bar->first, sw_rational_sub(onset, bar->start));
    sw_metre metre = {bar->beats, bar->beat_value};
    return sw_rational_add(sw_rational_div(position, sw_metre_beat(metre)), sw_rational_make(1, 1));
}

double sw_score_seconds(const sw_score *score, sw_rational onset)
{
    size_t low = 0;
    size_t high = score->tempo_count;
    while (high - low > 1) {
        size_t middle = (low + high) / 2;
        if (sw_rational_compare(score->tempos[middle].onset, onset) <= 0) {
            low = middle;
        } else {
            high = middle;
        }
    }
    if (score->tempo_count == 0) {
        return 0;
    }
    const sw_tempo *tempo = &score->tempos[low];
    return tempo->seconds + sw_rational_to_double(sw_rational_sub(onset, tempo->onset)) * tempo->whole_note;
}

const char *sw_staff_label(const sw_reading *reading, const sw_score *score, uint32_t staff, char text[32])
{
    const sw_staff *s = &score->staves[staff];
    const uint32_t names[] = {s->instrument, s->short_instrument, s->id, s->variable};
    for (size_t i = 0; i < 4; i++) {
        if (names[i] != 0) {
            return sw_reading_name(reading, names[i]);
        }
    }
    snprintf(text, 32, "staff %u", staff + 1);
    return text;
}
