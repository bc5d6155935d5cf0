#include "checks/entry.h"

#include <stdlib.h>
#include <string.h>

#include "players/staff_instrument.h"

static bool names_instrument(const char *path)
{
    const char *dot = strrchr(path, '.');
    const char *property = dot == NULL ? path : dot + 1;
    return strcmp(property, "instrumentName") == 0 || strcmp(property, "shortInstrumentName") == 0;
}

static bool says_octave(const char *clef)
{
    const char *mark = strpbrk(clef, "_^");
    return mark != NULL && (strstr(mark, "8") != NULL || strstr(mark, "15") != NULL);
}

static bool is_bass(const char *clef)
{
    static const char *const names[] = {"bass", "F", "subbass", "varbaritone"};
    size_t length = strcspn(clef, "_^");
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (strlen(names[i]) == length && strncmp(names[i], clef, length) == 0) {
            return true;
        }
    }
    return false;
}

static bool same_class(sw_pitch a, sw_pitch b)
{
    return (sw_pitch_quarter_tones(a) - sw_pitch_quarter_tones(b)) % 24 == 0;
}

/* Settles which instrument of its kind is meant, and whether \transposition fits it. `named`: the one that
 * the name alone means. */
static void fit(const sw_check *check, const char *name, const sw_instrument *named, sw_entry *entry)
{
    entry->instrument = named;
    if (entry->transposition_music == SW_NO_INDEX) {
        entry->fit = SW_TRANSPOSITION_NONE;
        return;
    }
    entry->fit = SW_TRANSPOSITION_FITS;
    if (named == NULL) {
        return;
    }
    if (!same_class(named->sounds, entry->transposition)) {
        sw_buffer in_key = {0};
        const char *flat_or_sharp = entry->transposition.alter < 0   ? "b"
                                    : entry->transposition.alter > 0 ? "#"
                                                                     : "";
        sw_buffer_format(&in_key, "%s in %c%s", name, "CDEFGAB"[entry->transposition.step], flat_or_sharp);
        const sw_instrument *other = sw_instruments_find(check->instruments, sw_buffer_text(&in_key));
        sw_buffer_free(&in_key);
        if (other == NULL || !same_class(other->sounds, entry->transposition)) {
            entry->fit = SW_TRANSPOSITION_OTHER;
            return;
        }
        entry->instrument = other;
    }
    if (sw_pitch_quarter_tones(entry->instrument->sounds) != sw_pitch_quarter_tones(entry->transposition)) {
        entry->fit = SW_TRANSPOSITION_OCTAVE;
    }
}

sw_entries sw_entries_of_staff(const sw_check *check, const sw_score *score, uint32_t staff)
{
    const char *name = sw_staff_instrument_name(check->instruments, check->reading, score, staff);
    const sw_instrument *named = sw_staff_instrument(check->instruments, check->reading, score, staff);
    sw_entry entry = {.onset = sw_rational_zero(), .instrument = named, .transposition_music = SW_NO_INDEX};
    sw_entries entries = {0};
    entries.items = sw_grow(entries.items, 0, &entries.capacity, sizeof *entries.items);
    entries.items[entries.count++] = entry;
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        const sw_music *m = &check->reading->music[setting->music];
        if (setting->staff != staff && (setting->staff != SW_NO_INDEX || score->staff_count > 1)) {
            continue;
        }
        const char *text = sw_reading_name(check->reading, m->kind == SW_MUSIC_SET ? m->name2 : m->name);
        if (m->kind == SW_MUSIC_TRANSPOSITION) {
            entry.transposition = setting->pitch;
            entry.transposition_music = setting->music;
        } else if (m->kind == SW_MUSIC_CLEF) {
            entry.octave_clef = says_octave(text);
            entry.bass_clef = is_bass(text);
        } else if (m->kind == SW_MUSIC_SET && !sw_rational_is_zero(setting->onset) &&
                   names_instrument(sw_reading_name(check->reading, m->name))) {
            /* The names at the beginning are those of the staff. */
            const sw_instrument *other = sw_instruments_find(check->instruments, text);
            name = other == NULL ? name : text; /* a name may mean no instrument: "with mutes" */
            named = other == NULL ? named : other;
        } else {
            continue;
        }
        fit(check, name, named, &entry);
        entry.onset = setting->onset;
        entries.items = sw_grow(entries.items, entries.count, &entries.capacity, sizeof *entries.items);
        entries.items[entries.count++] = entry;
    }
    return entries;
}

void sw_entries_free(sw_entries *entries)
{
    free(entries->items);
    *entries = (sw_entries){0};
}

const sw_entry *sw_entries_at(const sw_entries *entries, sw_rational onset)
{
    size_t low = 0;
    size_t high = entries->count;
    while (high - low > 1) {
        size_t middle = (low + high) / 2;
        if (sw_rational_compare(entries->items[middle].onset, onset) <= 0) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return &entries->items[low];
}

static bool sounds_in_octaves(const sw_instrument *instrument)
{
    return instrument->sounds.step == 0 && instrument->sounds.alter == 0;
}

size_t sw_entry_written(const sw_entry *entry, sw_pitch pitch, sw_pitch written[SW_ENTRY_READINGS])
{
    const sw_instrument *instrument = entry->instrument;
    if (instrument == NULL) {
        return 0;
    }
    if (entry->fit == SW_TRANSPOSITION_NONE && sounds_in_octaves(instrument)) {
        written[0] = entry->octave_clef ? sw_instrument_written(instrument, pitch) : pitch;
        return 1;
    }
    sw_pitch sounding =
        entry->fit == SW_TRANSPOSITION_NONE ? pitch : sw_pitch_transpose(pitch, entry->transposition);
    size_t count = 0;
    written[count++] = sw_instrument_written(instrument, sounding);
    if (entry->fit != SW_TRANSPOSITION_FITS) {
        written[count++] = pitch;
    }
    if (entry->bass_clef && sw_pitch_semitones(instrument->sounds) < 0 && !sounds_in_octaves(instrument)) {
        sounding.octave++;
        written[count++] = sw_instrument_written(instrument, sounding);
    }
    return count;
}
