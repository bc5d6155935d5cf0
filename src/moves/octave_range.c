#include "moves/octave_range.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/nearest.h"
#include "syntax/note_names.h"

/* ---- pitches as people write them ---- */

static uint32_t language_at(const sw_reading *reading, uint32_t music)
{
    uint32_t language = 0;
    for (size_t i = 0; i < reading->language_count && reading->languages[i].music <= music; i++) {
        language = reading->languages[i].language;
    }
    return language;
}

bool sw_read_pitch(const sw_reading *reading, uint32_t music, sw_slice text, sw_pitch *pitch)
{
    if (sw_pitch_from_scientific(text, pitch)) {
        return true;
    }
    size_t name = text.length;
    while (name > 0 && strchr("',", text.data[name - 1]) != NULL) {
        name--;
    }
    int octave = -1; /* of a name without marks */
    for (size_t i = name; i < text.length; i++) {
        octave += text.data[i] == '\'' ? 1 : -1;
    }
    const sw_language *language = &sw_languages[language_at(reading, music)];
    for (size_t i = 0; i < language->count; i++) {
        if (sw_slice_is((sw_slice){text.data, name}, language->notes[i].name)) {
            *pitch = (sw_pitch){language->notes[i].step, sw_pitch_octave(octave), language->notes[i].alter};
            return true;
        }
    }
    return false;
}

/* The next word of a text; empty at its end. */
static sw_slice next_word(const char **text)
{
    *text += strspn(*text, " ");
    sw_slice word = {*text, strcspn(*text, " ")};
    *text += word.length;
    return word;
}

static bool find_between(const sw_chosen *chosen, const char *text, sw_fit_range *range, char **error)
{
    const char *rest = text;
    uint32_t music = chosen->score->events[chosen->events[0]].music;
    sw_slice low = next_word(&rest);
    sw_slice high = next_word(&rest);
    bool good = low.length > 0 && high.length > 0 && next_word(&rest).length == 0 &&
                sw_read_pitch(chosen->reading, music, low, &range->low) &&
                sw_read_pitch(chosen->reading, music, high, &range->high);
    if (!good) {
        if (asprintf(error,
                     "--between takes two pitches such as \"c' g'''\", in the language of the source, or "
                     "\"C4 G6\", not \"%s\"",
                     text) < 0) {
            abort();
        }
        return false;
    }
    if (sw_pitch_semitones(range->low) > sw_pitch_semitones(range->high)) {
        *error = strdup("--between takes the lower pitch first");
        return false;
    }
    return true;
}

/* ---- instruments ---- */

static char *say_unknown(const sw_instruments *instruments, const char *name)
{
    size_t count = sw_instruments_count(instruments);
    const char **ids = sw_alloc((count + 1) * sizeof *ids);
    for (size_t i = 0; i < count; i++) {
        ids[i] = sw_instruments_get(instruments, i)->id;
    }
    const char *nearest = sw_nearest_word(sw_slice_of(name), ids, count);
    sw_buffer text = {0};
    sw_buffer_format(&text, "no instrument is called \"%s\"", name);
    if (nearest != NULL) {
        sw_buffer_format(&text, "; did you mean \"%s\"?", nearest);
    } else {
        sw_buffer_string(&text, "; give the name in full, such as flute, english-horn, \"Horn in F\"");
    }
    free(ids);
    return text.data;
}

static bool find_into(const char *name, sw_fit_range *range, char **error)
{
    const sw_instrument *found = sw_instruments_by_id(sw_film_instruments(range->figures.film), name);
    found = found != NULL ? found : sw_instruments_find(sw_film_instruments(range->figures.film), name);
    if (found == NULL) {
        *error = say_unknown(sw_film_instruments(range->figures.film), name);
        return false;
    }
    if (!found->has_compass) {
        if (asprintf(error, "no compass is known for the instrument \"%s\"; say it with --between",
                     found->id) < 0) {
            abort();
        }
        return false;
    }
    range->instrument = found;
    range->low = sw_instrument_sounding(found, found->written_low);
    range->high = sw_instrument_sounding(found, found->written_high);
    return true;
}

static void find_entries(const sw_chosen *chosen, sw_fit_range *range)
{
    range->sounding = true;
    range->staff_count = chosen->score->staff_count;
    range->entries = sw_entries_of_film(range->figures.film, chosen->reading, chosen->score);
}

/* ---- the range ---- */

/* The comfortable part of an instrument's compass: without its lowest sixth and its highest quarter (common
 * practice, no source). Of a range that was given all is comfortable. */
static void set_heights(sw_fit_range *range, bool fold)
{
    int low = sw_pitch_semitones(range->low);
    int high = sw_pitch_semitones(range->high);
    range->heights = (sw_octave_range){low, high, low, high, fold};
    if (range->instrument != NULL) {
        range->heights.easy_low = low + (high - low) / 6;
        range->heights.easy_high = high - (high - low) / 4;
    }
}

bool sw_fit_range_find(const sw_chosen *chosen, const sw_octave_options *options, sw_fit_range *range,
                       char **error)
{
    *range = (sw_fit_range){0};
    if (options->between != NULL) {
        if (!find_between(chosen, options->between, range, error)) {
            return false;
        }
    } else {
        if (!sw_figures_find(&range->figures, options->film, error) ||
            !find_into(options->into, range, error)) {
            return false;
        }
        find_entries(chosen, range);
    }
    set_heights(range, options->fold);
    return true;
}

void sw_fit_range_free(sw_fit_range *range)
{
    sw_entries_free(range->entries, range->staff_count);
    sw_figures_free(&range->figures);
    *range = (sw_fit_range){0};
}

/* What \transposition says; without it, an instrument that sounds in octaves is entered as its player reads
 * it, unless the clef says the octave, and any other note as it sounds. */
sw_pitch sw_fit_range_pitch(const sw_fit_range *range, const sw_score *score, const sw_event *event)
{
    if (!range->sounding) {
        return event->pitch;
    }
    const sw_entry *entry = sw_entries_at(&range->entries[score->voices[event->voice].staff], event->onset);
    if (entry->fit != SW_TRANSPOSITION_NONE) {
        return sw_pitch_transpose(event->pitch, entry->transposition);
    }
    const sw_instrument *own = entry->instrument;
    bool octaves = own != NULL && own->sounds.step == 0 && own->sounds.alter == 0 && !entry->octave_clef;
    return octaves ? sw_instrument_sounding(own, event->pitch) : event->pitch;
}
