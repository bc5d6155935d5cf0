/* \transposition that does not fit the instrument that the staff is named for. */
#include <stdio.h>
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
    char name[SW_SAY];
    int away = sw_pitch_semitones(entry->transposition) - sw_pitch_semitones(entry->instrument->sounds);
    sw_findings_add(
        check->findings, SW_WARNING, "transposition", m->file, m->start, m->end,
        "%s: a written C4 is said to sound %s, but that of the %s sounds %s: it is %s too %s; correct "
        "\\transposition or the name of the staff",
        sw_staff_label(check->reading, score, staff, label), sw_say_pitch(entry->transposition, words[0]),
        sw_say_instrument(entry->instrument, name), sw_say_pitch(entry->instrument->sounds, words[1]),
        sw_say_interval(away, words[2]), away > 0 ? "high" : "low");
}

/* ---- \transpose -----------------------------------------------------------------------------------------
 */

enum { NO_SHIFT = -1 };

/* By how many semitones, 0 to 11, the \transpose around an event shifts it; *music is the outermost. */
static int shift_of(const sw_reading *reading, const sw_score *score, const sw_event *event, uint32_t *music)
{
    int semitones = 0;
    for (uint32_t f = event->frame; f != SW_NO_INDEX; f = score->frames[f].parent) {
        const sw_music *m = &reading->music[score->frames[f].music];
        if (m->kind == SW_MUSIC_TRANSPOSE) {
            semitones += sw_pitch_semitones(m->pitch);
            *music = score->frames[f].music;
        }
    }
    return ((semitones % 12) + 12) % 12;
}

/* The shift of all notes of a staff; NO_SHIFT: it has several. */
static int shift_of_staff(const sw_reading *reading, const sw_score *score, uint32_t staff, uint32_t *music)
{
    int shift = NO_SHIFT;
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *event = &score->events[i];
        if (sw_event_is_played(reading, score, event)) {
            int own = shift_of(reading, score, event, music);
            if (shift != NO_SHIFT && own != shift) {
                return NO_SHIFT;
            }
            shift = own;
        }
    }
    return shift;
}

/* How a written C of an instrument is reached from the one that sounds. */
static int own_shift(const sw_instrument *instrument)
{
    return (((-sw_pitch_semitones(instrument->sounds)) % 12) + 12) % 12;
}

/* By how much the whole piece is moved: the shift of the instruments that do not transpose; NO_SHIFT: there
 * are none, or they have several. */
static int shift_of_piece(sw_check *check, const sw_score *score)
{
    const sw_entries *entries = sw_check_entries(check, score);
    int shift = NO_SHIFT;
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        const sw_instrument *instrument = entries[staff].items[0].instrument;
        uint32_t music;
        if (instrument == NULL || own_shift(instrument) != 0 || !instrument->has_compass) {
            continue;
        }
        int own = shift_of_staff(check->reading, score, staff, &music);
        if (own == NO_SHIFT || (shift != NO_SHIFT && own != shift)) {
            return NO_SHIFT;
        }
        shift = own;
    }
    return shift;
}

/* The same kind of instrument in the key that a shift is for; NULL: there is none. */
static const sw_instrument *built_for(const sw_instruments *instruments, const sw_instrument *named,
                                      int shift)
{
    char kind[32];
    const char *key = strstr(named->id, "-in-");
    size_t length = key == NULL ? strlen(named->id) : (size_t)(key - named->id);
    snprintf(kind, sizeof kind, "%.*s", (int)length, named->id);
    for (size_t i = 0; i < sw_instruments_count(instruments); i++) {
        const sw_instrument *other = sw_instruments_get(instruments, i);
        if (other != named && own_shift(other) == shift && sw_instrument_is(other, kind)) {
            return other;
        }
    }
    return NULL;
}

/* A staff without \transposition that \transpose writes for the instrument of another key: "Clarinet in Bb"
 * and \transpose a c'. */
static void check_transpose(sw_check *check, const sw_score *score, uint32_t staff, const sw_entries *entries)
{
    const sw_instrument *named = entries->items[0].instrument;
    if (entries->count != 1 || named == NULL || own_shift(named) == 0 ||
        entries->items[0].fit != SW_TRANSPOSITION_NONE) {
        return;
    }
    uint32_t music = SW_NO_INDEX;
    int shift = shift_of_staff(check->reading, score, staff, &music);
    int piece = shift == NO_SHIFT || shift == 0 ? NO_SHIFT : shift_of_piece(check, score);
    shift = piece == NO_SHIFT ? NO_SHIFT : (shift - piece + 12) % 12;
    const sw_instrument *other = shift == NO_SHIFT || shift == 0 || shift == own_shift(named)
                                     ? NULL
                                     : built_for(check->instruments, named, shift);
    if (other == NULL) {
        return;
    }
    const sw_music *m = &check->reading->music[music];
    char label[32];
    char names[2][SW_SAY];
    sw_findings_add(
        check->findings, SW_WARNING, "transposition", m->file, m->start, m->end,
        "%s: \\transpose writes it for the %s, but the staff is named for the %s; correct one of both",
        sw_staff_label(check->reading, score, staff, label), sw_say_instrument(other, names[0]),
        sw_say_instrument(named, names[1]));
}

/* ---- the rule -------------------------------------------------------------------------------------------
 */

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
    check_transpose(check, score, staff, entries);
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
        "itself. A staff without \\transposition\n"
        "is told, too, when \\transpose writes it for the same instrument in another key (\"Clarinet in "
        "Bb\", "
        "\\transpose a c');\nwhat moves the whole piece is taken off.\n\n"
        "To mend: correct \\transposition, or the name of the staff if the part is for another instrument.\n",
    .run = run,
};
