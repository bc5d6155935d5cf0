#include <stdlib.h>
#include <string.h>

#include "stavewright/report.h"

static const char *base_name(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash == NULL ? path : slash + 1;
}

static void print_event(const sw_reading *reading, const sw_score *score, size_t number,
                        const sw_event *event, sw_buffer *result)
{
    static const char *const kinds[] = {"note", "drum", "rest", "full-bar-rest"};
    char onset[SW_RATIONAL_TEXT];
    char grace[SW_RATIONAL_TEXT];
    char duration[SW_RATIONAL_TEXT];
    const sw_voice *voice = &score->voices[event->voice];
    const sw_music *music = &reading->music[event->music];
    uint32_t written;
    sw_place place = sw_event_place(reading, event, &written);
    sw_buffer_format(result, "%zu\t%s\t%s\t%s\t%s\t", number, sw_rational_print(event->onset, onset),
                     sw_rational_print((sw_rational){event->grace_num, event->grace_den}, grace),
                     sw_rational_print(event->duration, duration), kinds[event->kind]);
    if (event->kind == SW_EVENT_NOTE) {
        sw_buffer_format(result, "%c%d/%d", "cdefgab"[event->pitch.step], event -> pitch.octave,
                         event->pitch.alter);
    } else if (event->kind == SW_EVENT_DRUM) {
        sw_buffer_string(result, sw_reading_name(reading, music->name));
    } else {
        sw_buffer_char(result, '-');
    }
    const sw_file *file = &reading->files[written];
    const char *name = file->said_name != 0 ? sw_reading_name(reading, file->said_name) : file->text->path;
    sw_buffer_format(result, "\t%s\t%s\t%s\t%d\t%u%s\n",
                     sw_reading_name(reading, score->staves[voice->staff].id),
                     sw_reading_name(reading, voice->id), base_name(name), (int)place.line + file->line_shift,
                     place.column, (event->flags & SW_EVENT_UNCERTAIN) != 0 ? "\tuncertain" : "");
}

void sw_report_events(const sw_reading *reading, sw_buffer *result)
{
    for (size_t s = 0; s < reading->score_count; s++) {
        const sw_score *score = &reading->scores[s];
        for (size_t i = 0; i < score->event_count; i++) {
            const sw_event *event = &score->events[i];
            if (event->kind != SW_EVENT_SKIP && (event->flags & SW_EVENT_HIDDEN) == 0) {
                print_event(reading, score, s + 1, event, result);
            }
        }
    }
}
