#include <string.h>

#include "stavewright/report.h"

/* The syllable as it is printed, or as it is written when there is nothing to print; one line, no tabs. */
static void print_text(const sw_reading *reading, const sw_syllable *syllable, sw_buffer *result)
{
    const char *plain = sw_reading_name(reading, reading->music[syllable->music].name);
    bool is_blank = plain[strspn(plain, " ")] == '\0';
    sw_slice text = is_blank ? sw_music_slice(reading, syllable->music) : sw_slice_of(plain);
    for (size_t i = 0; i < text.length; i++) {
        sw_buffer_char(result, (unsigned char)text.data[i] < ' ' ? ' ' : text.data[i]);
    }
    sw_buffer_string(result, (syllable->flags & SW_SYLLABLE_HYPHEN) != 0     ? " --"
                             : (syllable->flags & SW_SYLLABLE_EXTENDER) != 0 ? " __"
                                                                             : "");
}

static const char *base_name(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash == NULL ? path : slash + 1;
}

static void print_syllable(const sw_reading *reading, const sw_score *score, size_t number,
                           const sw_syllable *syllable, sw_buffer *result)
{
    char onset[SW_RATIONAL_TEXT];
    char grace[SW_RATIONAL_TEXT];
    char duration[SW_RATIONAL_TEXT];
    char beat[SW_RATIONAL_TEXT];
    uint32_t bar = sw_score_bar_at(score, syllable->onset);
    sw_buffer_format(result, "%zu\t%s\t%s\t%s\t%d\t%s\t", number, sw_rational_print(syllable->onset, onset),
                     sw_rational_print((sw_rational){syllable->grace_num, syllable->grace_den}, grace),
                     sw_rational_print(syllable->duration, duration),
                     bar == SW_NO_INDEX ? 0 : score->bars[bar].number,
                     sw_rational_print(sw_score_beat(score, syllable->onset), beat));
    print_text(reading, syllable, result);
    bool follows = syllable->voice != SW_NO_INDEX;
    const sw_voice *voice = follows ? &score->voices[syllable->voice] : NULL;
    const sw_file *file = &reading->files[reading->music[syllable->music].file];
    const char *name = file->said_name != 0 ? sw_reading_name(reading, file->said_name) : file->text->path;
    sw_place place = sw_syllable_place(reading, syllable);
    sw_buffer_format(result, "\t%s\t%s\t%u\t%s\t%s\t%d\t%u\n",
                     follows ? sw_reading_name(reading, score->staves[voice->staff].id) : "-",
                     follows ? sw_reading_name(reading, voice->id) : "-", syllable->line + 1,
                     sw_reading_name(reading, score->lines[syllable->line].id), base_name(name),
                     (int)place.line + file->line_shift, place.column);
}

void sw_report_lyrics(const sw_reading *reading, sw_buffer *result)
{
    for (size_t s = 0; s < reading->score_count; s++) {
        const sw_score *score = &reading->scores[s];
        for (size_t i = 0; i < score->syllable_count; i++) {
            print_syllable(reading, score, s + 1, &score->syllables[i], result);
        }
    }
}
