/* Input languages: which one is in force where, and what it calls a pitch. */
#include "score/reader.h"
#include "syntax/note_names.h"

void sw_use_language(sw_reader *reader, const sw_language *language)
{
    sw_reading *reading = reader->reading;
    sw_note_table_fill(&reader->notes, language);
    reading->languages = sw_grow(reading->languages, reading->language_count, &reading->language_capacity,
                                 sizeof *reading->languages);
    reading->languages[reading->language_count++] =
        (sw_language_use){(uint32_t)reading->music_count, (uint32_t)(language - sw_languages)};
}

static uint32_t language_at(const sw_reading *reading, uint32_t music)
{
    size_t i = reading->language_count;
    while (i > 1 && reading->languages[i - 1].music > music) {
        i--;
    }
    return reading->languages[i - 1].language;
}

/* The name by which some note of the reading calls a pitch, in one language; empty when none does. */
static sw_slice habitual_name(const sw_reading *reading, uint32_t language, sw_pitch pitch)
{
    for (uint32_t i = 0; i < reading->music_count; i++) {
        const sw_music *m = &reading->music[i];
        if (m->kind == SW_MUSIC_NOTE && m->name_length > 0 && m->pitch.step == pitch.step &&
            m->pitch.alter == pitch.alter && (m->flags & SW_MUSIC_CHORD_MODE) == 0 &&
            language_at(reading, i) == language) {
            return (sw_slice){sw_music_slice(reading, i).data, m->name_length};
        }
    }
    return (sw_slice){NULL, 0};
}

sw_slice sw_reading_note_name(const sw_reading *reading, uint32_t music, sw_pitch pitch)
{
    const sw_language *language = &sw_languages[language_at(reading, music)];
    sw_slice habit = habitual_name(reading, (uint32_t)(language - sw_languages), pitch);
    for (size_t i = 0; i < language->count; i++) {
        const sw_note_name *name = &language->notes[i];
        sw_slice text = sw_slice_of(name->name);
        bool right = name->step == pitch.step && name->alter == pitch.alter;
        if (right && (habit.length == 0 || sw_slice_equal(habit, text))) {
            return text; /* of the table, so that a copied or computed note does not decide */
        }
    }
    for (size_t i = 0; i < language->count; i++) {
        if (language->notes[i].step == pitch.step && language->notes[i].alter == pitch.alter) {
            return sw_slice_of(language->notes[i].name);
        }
    }
    return (sw_slice){NULL, 0};
}
