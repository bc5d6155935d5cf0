/* \transposition that does not fit the instrument that the staff is named for. */
#include <stdlib.h>
#include <string.h>

#include "checks/entry.h"
#include "checks/rules.h"
#include "checks/say.h"
#include "players/staff_instrument.h"

/* True where the octave is a matter of notation: old horn parts and bass clarinets in the bass clef, and
 * clefs that say the octave themselves. */
static bool octave_is_free(const sw_entry *entry)
{
    return entry->octave_clef || entry->bass_clef;
}

/* Whether the staff plays from a moment on, up to another one; NULL: to the end. */
static bool staff_plays(const sw_check *check, const sw_score *score, uint32_t staff, sw_rational from,
                        const sw_rational *to)
{
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *e = &score->events[i];
        bool behind = to != NULL && sw_rational_compare(e->onset, *to) >= 0;
        if (!behind && sw_rational_compare(e->onset, from) >= 0 &&
            sw_event_is_played(check->reading, score, e)) {
            return true;
        }
    }
    return false;
}

/* True when it fits what another player of the staff has in hand. */
static bool fits_another(const sw_entries *entries, const sw_entry *entry)
{
    for (uint32_t i = 0; i < entry->other_count; i++) {
        if (entries->others[entry->others + i].fit == SW_TRANSPOSITION_FITS) {
            return true;
        }
    }
    return false;
}

static void report(sw_check *check, const sw_score *score, uint32_t staff, const sw_entry *entry)
{
    const sw_music *m = &check->reading->music[entry->transposition_music];
    char label[32];
    char words[3][SW_SAY];
    sw_buffer id = {0};
    for (const char *c = entry->instrument->id; *c != '\0'; c++) {
        sw_buffer_char(&id, *c == '-' ? ' ' : *c);
    }
    int away = sw_pitch_semitones(entry->transposition) - sw_pitch_semitones(entry->instrument->sounds);
    sw_findings_add(
        check->findings, SW_WARNING, "transposition", m->file, m->start, m->end,
        "%s: a written C4 is said to sound %s, but that of the %s sounds %s: it is %s too %s; correct "
        "\\transposition or the name of the staff",
        sw_staff_label(check->reading, score, staff, label), sw_say_pitch(entry->transposition, words[0]),
        sw_buffer_text(&id), sw_say_pitch(entry->instrument->sounds, words[1]),
        sw_say_interval(away, words[2]), away > 0 ? "high" : "low");
    sw_buffer_free(&id);
}

/* True when the name that a person reads is the one that means the instrument; otherwise an id told, and ids
 * are copied from elsewhere too easily. */
static bool is_named(const sw_check *check, const sw_score *score, uint32_t staff)
{
    char label[32];
    const char *name = sw_staff_instrument_name(check->instruments, check->reading, score, staff);
    return strcmp(name, sw_staff_label(check->reading, score, staff, label)) == 0;
}

static void check_staff(sw_check *check, const sw_score *score, uint32_t staff)
{
    if (!is_named(check, score, staff)) {
        return;
    }
    const sw_entries *entries = &sw_check_entries(check, score)[staff];
    uint32_t told = SW_NO_INDEX;
    for (size_t i = 0; i < entries->count; i++) {
        const sw_entry *entry = &entries->items[i];
        bool lasts = i + 1 == entries->count || !sw_rational_equal(entry->onset, entries->items[i + 1].onset);
        bool transposes = entry->instrument != NULL && (entry->instrument->key[0] != '\0' ||
                                                        sw_pitch_semitones(entry->instrument->sounds) != 0);
        bool wrong = transposes && (entry->fit == SW_TRANSPOSITION_OTHER ||
                                    (entry->fit == SW_TRANSPOSITION_OCTAVE && !octave_is_free(entry)));
        if (lasts && wrong && !fits_another(entries, entry) && entry->transposition_music != told &&
            staff_plays(check, score, staff, entry->onset,
                        i + 1 < entries->count ? &entries->items[i + 1].onset : NULL)) {
            report(check, score, staff, entry);
            told = entry->transposition_music;
        }
    }
}

static void run(sw_check *check)
{
    sw_check_each_staff(check, check_staff);
}

const sw_rule sw_rule_transposition = {
    .name = "transposition",
    .summary = "\\transposition that does not fit the instrument",
    .severity = SW_WARNING,
    .explain =
        "\\transposition says how a written middle C sounds. Where it says something else than the "
        "instrument that "
        "the staff\nis named for does (a horn in F with \\transposition es, a clarinet in A with "
        "\\transposition a' "
        "instead of a), either\nthe part is written for another instrument than its player holds, or cues, "
        "playback and every check of sounding\npitches are wrong.\n\n"
        "The figure: the transposition of the built-in table of instruments. A name without a key "
        "(\"Clarinets\") fits every\nkey that the instrument is built in. Octaves are not compared in the "
        "bass "
        "clef, where horns and bass clarinets have\ntwo customs, nor with a clef that says the octave "
        "itself.\n\n"
        "To mend: correct \\transposition, or the name of the staff if the part is for another instrument.\n",
    .run = run,
};
