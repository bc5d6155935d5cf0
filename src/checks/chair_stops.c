/* Chords that one player of a bowed instrument can't strike, where nobody says that they are divided. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks/chair_findings.h"
#include "checks/entry.h"
#include "checks/say.h"
#include "players/staff_instrument.h"
#include "players/staff_words.h"

enum { MOST_NOTES = 16 }; /* of a chord, that are looked at */

/* The notes of one chord: events [first, end). */
typedef struct written_chord {
    const sw_entry *entry;
    uint32_t first;
    uint32_t end;
} written_chord;

typedef enum chord_fault {
    FAULT_NONE,
    FAULT_STRINGS, /* more notes than strings */
    FAULT_SAME,    /* two of them lie on one string alone */
    FAULTS
} chord_fault;

/* What is said of a staff: the first place, and how many more there are. */
typedef struct places {
    written_chord first;
    size_t count;
} places;

static int compare_pitches(const void *a, const void *b)
{
    return sw_pitch_semitones(*(const sw_pitch *)a) - sw_pitch_semitones(*(const sw_pitch *)b);
}

/* The different sounding pitches of a chord in one reading of its entry, from the lowest on. */
static size_t pitches_of(const sw_chair_scene *scene, const written_chord *chord, size_t reading,
                         sw_pitch pitches[MOST_NOTES])
{
    size_t count = 0;
    for (uint32_t i = chord->first; i < chord->end && count < MOST_NOTES; i++) {
        sw_pitch written[SW_ENTRY_READINGS];
        size_t readings = sw_entry_written(chord->entry, scene->score->events[i].pitch, written);
        if (readings > 0) {
            sw_pitch own = written[reading < readings ? reading : readings - 1];
            pitches[count++] = sw_instrument_sounding(chord->entry->instrument, own);
        }
    }
    sw_sort(pitches, count, sizeof *pitches, compare_pitches);
    size_t kept = 0;
    for (size_t i = 0; i < count; i++) {
        if (kept == 0 || compare_pitches(&pitches[kept - 1], &pitches[i]) != 0) {
            pitches[kept++] = pitches[i];
        }
    }
    return kept;
}

static chord_fault fault_in_reading(const sw_chair_scene *scene, const written_chord *chord, size_t reading)
{
    const sw_tuning *tuning = &chord->entry->instrument->can.tuning;
    sw_pitch pitches[MOST_NOTES];
    size_t count = pitches_of(scene, chord, reading, pitches);
    if (count > tuning->count) {
        return FAULT_STRINGS;
    }
    /* The second note from below has to be on the second string or higher; below the lowest one there is
     * nothing, which the range tells. */
    bool same = count > 1 && compare_pitches(&pitches[1], &tuning->strings[1]) < 0 &&
                compare_pitches(&pitches[0], &tuning->strings[0]) >= 0;
    return same ? FAULT_SAME : FAULT_NONE;
}

/* The least fault: where the source leaves open what it means, the reading counts that can be played. */
static chord_fault fault_of(const sw_chair_scene *scene, const written_chord *chord)
{
    chord_fault least = FAULT_STRINGS;
    for (size_t reading = 0; reading < SW_ENTRY_READINGS && least != FAULT_NONE; reading++) {
        chord_fault found = fault_in_reading(scene, chord, reading);
        least = found == FAULT_NONE || least == FAULT_STRINGS ? found : least;
    }
    return least;
}

/* ---- who shares a chord ----------------------------------------------------------------------------------
 */

static bool name_says_divided(const char *name)
{
    static const char *const says[] = {"div",     "divisi",  "divise", "divises",
                                       "divided", "geteilt", "get",    NULL};
    return sw_staff_name_says(name, says);
}

/* Whether another voice of the staff sounds with the chord: then the players are divided already. */
static bool others_play(const sw_chair_scene *scene, const written_chord *chord, uint32_t staff)
{
    const sw_event *e = &scene->score->events[chord->first];
    sw_staff_events events = sw_score_staff_events(scene->score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *other = &scene->score->events[i];
        if (other->voice != e->voice && sw_note_is_played(scene->check->reading, scene->score, other) &&
            sw_rational_compare(other->onset, sw_event_end(e)) < 0 &&
            sw_rational_compare(sw_event_end(other), e->onset) > 0) {
            return true;
        }
    }
    return false;
}

static bool is_divided(const sw_chair_scene *scene, const sw_playing *playing, const written_chord *chord)
{
    const sw_score *score = scene->score;
    uint32_t staff = score->voices[score->events[chord->first].voice].staff;
    const sw_technique_state *state = &playing->states[playing->state_of[chord->first]];
    uint8_t divided = sw_techniques_find(scene->check->techniques, "divided");
    uint8_t group = sw_techniques_get(scene->check->techniques, divided)->group;
    return state->now[group] == divided ||
           name_says_divided(sw_reading_name(scene->check->reading, score->staves[staff].instrument)) ||
           name_says_divided(sw_reading_name(scene->check->reading, score->staves[staff].short_instrument)) ||
           others_play(scene, chord, staff);
}

/* Whether a note of a chord is a harmonic: then one of two notes may only be touched. */
static bool has_harmonics(const sw_chair_scene *scene, const sw_playing *playing, const written_chord *chord)
{
    uint8_t harmonics = sw_techniques_find(scene->check->techniques, "harmonics-on");
    uint8_t group = sw_techniques_get(scene->check->techniques, harmonics)->group;
    for (uint32_t i = chord->first; i < chord->end; i++) {
        if (sw_playing_now(playing, i, group) == harmonics) {
            return true;
        }
    }
    return sw_entry_has_harmonic_heads(chord->entry, scene->score->events[chord->first].onset);
}

/* ---- the staves ------------------------------------------------------------------------------------------
 */

static bool is_bowed(const sw_instrument *instrument)
{
    return instrument != NULL && instrument->family == SW_STRINGS && instrument->can.tuning.count > 1;
}

static void report(const sw_chair_scene *scene, uint32_t staff, chord_fault kind, const places *found)
{
    const written_chord *chord = &found->first;
    char label[32];
    char others[64] = "";
    sw_pitch pitches[MOST_NOTES];
    size_t count = pitches_of(scene, chord, 0, pitches);
    const char *name = sw_staff_label(scene->check->reading, scene->score, staff, label);
    if (found->count > 1) {
        snprintf(others, sizeof others, " (and in %zu more place%s)", found->count - 1,
                 found->count == 2 ? "" : "s");
    }
    if (kind == FAULT_STRINGS) {
        sw_chair_finding(
            scene, SW_WARNING, chord->first, name,
            "%zu notes in one chord%s, and a player has %zu strings; write div., or leave out %zu", count,
            others, chord->entry->instrument->can.tuning.count,
            count - chord->entry->instrument->can.tuning.count);
    } else {
        char names[2][SW_SAY];
        bool alone =
            sw_staff_is_soloist(scene->check->instruments, scene->check->reading, scene->score, staff);
        sw_chair_finding(scene, alone ? SW_WARNING : SW_NOTE, chord->first, name,
                         "sounding %s and %s both lie on the lowest string%s; %s",
                         sw_say_pitch(pitches[0], names[0]), sw_say_pitch(pitches[1], names[1]), others,
                         alone ? "move one of them" : "write div. or two voices, or move one of them");
    }
}

/* Goes through the chords of a staff. */
static void check_staff(const sw_chair_scene *scene, const sw_playing *playing, const sw_entries *entries,
                        uint32_t staff)
{
    const sw_score *score = scene->score;
    sw_staff_events events = sw_score_staff_events(score, staff);
    places found[FAULTS] = {0};
    const sw_entry *entry = NULL;
    for (uint32_t i = events.first, end; i < events.end; i = end) {
        const sw_event *e = &score->events[i];
        for (end = i + 1;
             end < events.end && score->events[end].chord == e->chord &&
             score->events[end].voice == e->voice && sw_rational_equal(score->events[end].onset, e->onset);
             end++) {
        }
        if (end - i < 2 || score->voices[e->voice].staff != staff ||
            !sw_note_is_played(scene->check->reading, score, e)) {
            continue;
        }
        entry = sw_entries_next(entries, entry, e->onset);
        written_chord chord = {entry, i, end};
        chord_fault kind = is_bowed(entry->instrument) ? fault_of(scene, &chord) : FAULT_NONE;
        bool plain = kind != FAULT_NONE && !is_divided(scene, playing, &chord) &&
                     !has_harmonics(scene, playing, &chord);
        if (plain && found[kind].count++ == 0) {
            found[kind].first = chord;
        }
    }
    for (chord_fault f = FAULT_STRINGS; f < FAULTS; f++) {
        if (found[f].count > 0) {
            report(scene, staff, f, &found[f]);
        }
    }
}

void sw_find_impossible_stops(const sw_chair_scene *scene)
{
    const sw_playing *playing = sw_check_playing(scene->check, scene->number);
    const sw_entries *entries = sw_check_entries(scene->check, scene->score);
    for (uint32_t staff = 0; staff < scene->score->staff_count; staff++) {
        if (sw_entries_any(&entries[staff], is_bowed)) {
            check_staff(scene, playing, &entries[staff], staff);
        }
    }
}
