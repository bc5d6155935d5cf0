#include "checks/entry.h"

#include <stdlib.h>
#include <string.h>

#include "checks/rules.h"
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

/* \override NoteHead.style = #'harmonic (or 'harmonic-mixed ...), with any context in front. */
static bool styles_heads(const char *path)
{
    static const char style[] = "NoteHead.style";
    size_t length = strlen(path);
    size_t tail = sizeof style - 1;
    return length >= tail && strcmp(path + length - tail, style) == 0 &&
           (length == tail || path[length - tail - 1] == '.');
}

static bool same_class(sw_pitch a, sw_pitch b)
{
    return (sw_pitch_quarter_tones(a) - sw_pitch_quarter_tones(b)) % 24 == 0;
}

/* Settles which instrument of its kind is meant, and whether \transposition fits it. `named`: the one that
 * the name alone means. */
static void fit(const sw_instruments *instruments, const char *name, const sw_instrument *named,
                sw_entry *entry)
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
        const sw_instrument *other = sw_instruments_find(instruments, sw_buffer_text(&in_key));
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

/* A staff on the way through the settings of its score. */
typedef struct walker {
    const char *name;
    const sw_instrument *named;
    sw_entry now;
    size_t next;          /* the span of the seating that comes next */
    const sw_seats *span; /* the one before, if its players have several instruments; otherwise NULL */
} walker;

/* Whether an entry says again what the one before it says: most clefs change nothing here. */
static bool says_the_same(const sw_entry *a, const sw_entry *b)
{
    return a->instrument == b->instrument && a->fit == b->fit &&
           a->transposition_music == b->transposition_music && a->octave_clef == b->octave_clef &&
           a->bass_clef == b->bass_clef && a->harmonic_heads == b->harmonic_heads && !a->only_here &&
           !b->only_here && a->other_count == 0 && b->other_count == 0;
}

static bool is_other(const sw_entries *entries, const sw_entry *entry, const sw_instrument *taken)
{
    for (uint32_t i = 0; i < entry->other_count; i++) {
        if (entries->others[entry->others + i].taken == taken) {
            return true;
        }
    }
    return false;
}

/* Adds what holds for those players who have not taken what the others have. */
static void add_others(const sw_instruments *instruments, const sw_seating *seating, const walker *w,
                       sw_entries *entries, sw_entry *now)
{
    now->others = (uint32_t)entries->other_count;
    for (size_t i = 0; i < w->span->all_count; i++) {
        const sw_instrument *taken = seating->seats[w->span->all_first + i].instrument;
        if (taken == NULL || taken == w->named || is_other(entries, now, taken)) {
            continue;
        }
        sw_entry own = w->now;
        own.taken = taken;
        fit(instruments, taken->id, taken, &own);
        entries->others =
            sw_grow(entries->others, entries->other_count, &entries->other_capacity, sizeof *entries->others);
        entries->others[entries->other_count++] = own;
        now->other_count++;
    }
}

/* Adds what holds from now on. `seating` is needed only where the players have several instruments. */
static void add(const sw_instruments *instruments, const sw_seating *seating, const walker *w,
                sw_entries *entries)
{
    sw_entry now = w->now;
    now.taken = w->named;
    if (w->span != NULL) {
        add_others(instruments, seating, w, entries, &now);
    }
    if (entries->count > 0 && says_the_same(&entries->items[entries->count - 1], &now)) {
        return;
    }
    entries->items = sw_grow(entries->items, entries->count, &entries->capacity, sizeof *entries->items);
    entries->items[entries->count++] = now;
}

static walker begin(const sw_instruments *instruments, const sw_reading *reading, const sw_score *score,
                    uint32_t staff)
{
    walker w = {.name = sw_staff_instrument_name(instruments, reading, score, staff),
                .named = sw_staff_instrument(instruments, reading, score, staff)};
    w.now =
        (sw_entry){.onset = sw_rational_zero(), .instrument = w.named, .transposition_music = SW_NO_INDEX};
    return w;
}

/* Takes in what a setting says of how notes are meant; false when that is nothing. */
static bool take(const sw_instruments *instruments, const sw_reading *reading, const sw_setting *setting,
                 walker *w)
{
    const sw_music *m = &reading->music[setting->music];
    const char *text = sw_reading_name(reading, m->kind == SW_MUSIC_SET ? m->name2 : m->name);
    sw_slice written = sw_music_slice(reading, setting->music);
    if (m->kind == SW_MUSIC_TRANSPOSITION) {
        w->now.transposition = setting->pitch;
        w->now.transposition_music = setting->music;
    } else if (m->kind == SW_MUSIC_CLEF) {
        w->now.octave_clef = says_octave(text);
        w->now.bass_clef = is_bass(text);
    } else if (m->kind == SW_MUSIC_SET && !sw_rational_is_zero(setting->onset) &&
               names_instrument(sw_reading_name(reading, m->name))) {
        /* The names at the beginning are those of the staff. */
        const sw_instrument *other = sw_instruments_find(instruments, text);
        w->name = other == NULL ? w->name : text; /* a name may mean no instrument: "with mutes" */
        w->named = other == NULL ? w->named : other;
    } else if (m->kind == SW_MUSIC_SET && styles_heads(sw_reading_name(reading, m->name))) {
        w->now.harmonic_heads = strncmp(text, "harmonic", strlen("harmonic")) == 0;
        w->now.only_here = sw_slice_starts(written, "\\once");
    } else if (m->kind == SW_MUSIC_SETTING && sw_slice_starts(written, "\\harmonicsO")) {
        w->now.harmonic_heads = sw_slice_is(written, "\\harmonicsOn");
        w->now.only_here = false;
    } else {
        return false;
    }
    fit(instruments, w->name, w->named, &w->now);
    w->now.onset = setting->onset;
    return true;
}

/* What all players of a staff have in a span; NULL: not all the same. */
static const sw_instrument *taken_by_all(const sw_seating *seating, const sw_seats *span)
{
    const sw_instrument *taken = seating->seats[span->all_first].instrument;
    for (size_t i = 1; i < span->all_count; i++) {
        if (seating->seats[span->all_first + i].instrument != taken) {
            return NULL;
        }
    }
    return taken;
}

/* Takes in the texts over a staff that change its instrument, up to a moment; NULL: all that are left. */
static void take_texts(const sw_instruments *instruments, const sw_reading *reading,
                       const sw_seating *seating, uint32_t staff, const sw_rational *until, walker *w,
                       sw_entries *entries)
{
    const sw_seated_staff *seated = &seating->staves[staff];
    for (; w->next < seated->count; w->next++) {
        const sw_seats *span = &seating->spans[seated->first + w->next];
        if (until != NULL && sw_rational_compare(span->from, *until) > 0) {
            return;
        }
        bool by_text = span->said != SW_NO_INDEX && reading->music[span->said].kind == SW_MUSIC_MARK;
        if (!by_text || span->all_count == 0) {
            w->span = NULL; /* a new name is for all */
            continue;
        }
        const sw_instrument *taken = taken_by_all(seating, span);
        bool changes = taken == NULL || taken != w->named || w->span != NULL;
        w->span = taken == NULL ? span : NULL;
        if (taken != NULL && taken != w->named) {
            w->named = taken;
            w->name = taken->id;
            fit(instruments, w->name, w->named, &w->now);
        }
        if (changes) {
            w->now.onset = span->from;
            add(instruments, seating, w, entries);
        }
    }
}

sw_entries *sw_entries_of_score(const sw_instruments *instruments, const sw_reading *reading,
                                const sw_score *score, const sw_seating *seating_or_null)
{
    sw_entries *entries = sw_alloc_zero(score->staff_count + 1, sizeof *entries);
    walker *walkers = sw_alloc_zero(score->staff_count + 1, sizeof *walkers);
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        walkers[staff] = begin(instruments, reading, score, staff);
        add(instruments, seating_or_null, &walkers[staff], &entries[staff]);
    }
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        bool only = setting->staff == SW_NO_INDEX && score->staff_count == 1;
        uint32_t staff = only ? 0 : setting->staff;
        if (staff < score->staff_count && seating_or_null != NULL) {
            take_texts(instruments, reading, seating_or_null, staff, &setting->onset, &walkers[staff],
                       &entries[staff]);
        }
        if (staff < score->staff_count && take(instruments, reading, setting, &walkers[staff])) {
            add(instruments, seating_or_null, &walkers[staff], &entries[staff]);
        }
    }
    for (uint32_t staff = 0; staff < score->staff_count && seating_or_null != NULL; staff++) {
        take_texts(instruments, reading, seating_or_null, staff, NULL, &walkers[staff], &entries[staff]);
    }
    free(walkers);
    return entries;
}

sw_entries *sw_entries_of_film(const sw_film *film, const sw_reading *reading, const sw_score *score)
{
    sw_seating *seating = sw_seating_of(film, reading, score);
    sw_entries *entries = sw_entries_of_score(sw_film_instruments(film), reading, score, seating);
    sw_seating_free(seating);
    return entries;
}

void sw_entries_free(sw_entries *entries, size_t staff_count)
{
    for (size_t staff = 0; entries != NULL && staff < staff_count; staff++) {
        free(entries[staff].items);
        free(entries[staff].others);
    }
    free(entries);
}

const sw_entries *sw_check_entries(sw_check *check, const sw_score *score)
{
    sw_entries **entries = &check->entries[score - check->reading->scores];
    if (*entries == NULL) {
        size_t number = (size_t)(score - check->reading->scores);
        *entries =
            sw_entries_of_score(check->instruments, check->reading, score, sw_check_seating(check, number));
        for (uint32_t staff = 0; staff < score->staff_count; staff++) {
            if ((*entries)[staff].other_count > 0) {
                (*entries)[staff].seating = sw_check_seating(check, number);
                (*entries)[staff].ranges = sw_check_seat_ranges(check, number);
            }
        }
    }
    return *entries;
}

bool sw_entry_has_harmonic_heads(const sw_entry *entry, sw_rational onset)
{
    return entry->harmonic_heads && (!entry->only_here || sw_rational_equal(entry->onset, onset));
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

static bool holds(const sw_entries *entries, const sw_entry *entry, sw_rational onset)
{
    const sw_entry *next = entry + 1;
    return sw_rational_compare(entry->onset, onset) <= 0 &&
           (next == entries->items + entries->count || sw_rational_compare(next->onset, onset) > 0);
}

const sw_entry *sw_entries_next(const sw_entries *entries, const sw_entry *before, sw_rational onset)
{
    return before != NULL && holds(entries, before, onset) ? before : sw_entries_at(entries, onset);
}

const sw_entry *sw_entry_of_note(const sw_entries *entries, const sw_entry *entry, uint32_t event)
{
    if (entry->other_count == 0 || entries->ranges == NULL) {
        return entry;
    }
    const sw_seat_range *range = &entries->ranges[event];
    const sw_instrument *taken =
        range->first == range->end ? NULL : entries->seating->seats[range->first].instrument;
    for (uint32_t seat = range->first; seat < range->end; seat++) {
        if (entries->seating->seats[seat].instrument != taken) {
            return entry; /* all have the note */
        }
    }
    for (uint32_t i = 0; i < entry->other_count; i++) {
        if (entries->others[entry->others + i].taken == taken) {
            return &entries->others[entry->others + i];
        }
    }
    return entry;
}

bool sw_entries_any(const sw_entries *entries, bool (*is)(const sw_instrument *instrument))
{
    for (size_t i = 0; i < entries->count + entries->other_count; i++) {
        const sw_entry *entry =
            i < entries->count ? &entries->items[i] : &entries->others[i - entries->count];
        if (entry->instrument != NULL && is(entry->instrument)) {
            return true;
        }
    }
    return false;
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
