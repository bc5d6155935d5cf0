/* Notes outside of their instrument's compass.
 *
 * The instrument is that of the time: a new name of the staff or a text for all of its players changes it.
 *
 * Whether a source holds written or sounding pitches is not always said. \transposition says it; where it
 * does not fit the instrument (the rule `transposition` says so), either may be wrong, and both readings
 * count. Without \transposition, instruments that sound one or two octaves away (double bass, piccolo,
 * celesta ...) are customarily entered as the player reads them, unless the clef itself says the octave;
 * instruments in other keys are entered either way. In the bass clef, horns and bass clarinets may be written
 * an octave lower than in the treble clef. Where there are several readings, only a note that is outside on
 * each of them is reported. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks/entry.h"
#include "checks/rules.h"
#include "checks/say.h"
#include "players/staff_instrument.h"

typedef enum reading_of_note { AS_SOUNDING, AS_WRITTEN } reading_of_note;

/* Where a note lies when it is read in one of the two ways. */
typedef struct verdict {
    reading_of_note reading;
    bool doubtful; /* there are other readings: all are outside, and this is the mildest */
    sw_pitch written;
    sw_pitch sounding;
    sw_compass_place place;
} verdict;

/* A note outside. */
typedef struct outlier {
    const sw_event *event;
    const sw_instrument *instrument;
    verdict verdict;
    uint32_t staff;
    uint32_t bar;
    int away; /* semitones from the section's compass */
} outlier;

typedef struct outliers {
    outlier *items;
    size_t count;
    size_t capacity;
} outliers;

/* ---- where a note lies --------------------------------------------------------------------------------- */

/* 0: any professional has it, 1: some have it, 2: nobody has it. */
static int badness(sw_compass_place place)
{
    return place == SW_IN_SECTION ? 0 : place == SW_BELOW_SECTION || place == SW_ABOVE_SECTION ? 1 : 2;
}

static bool is_below(sw_compass_place place)
{
    return place == SW_BELOW_SECTION || place == SW_BELOW_EXTREME;
}

static verdict read_as(const sw_instrument *instrument, sw_pitch pitch, reading_of_note reading)
{
    verdict v = {.reading = reading};
    v.written = reading == AS_WRITTEN ? pitch : sw_instrument_written(instrument, pitch);
    v.sounding = reading == AS_WRITTEN ? sw_instrument_sounding(instrument, pitch) : pitch;
    v.place = sw_instrument_place_written(instrument, v.written);
    return v;
}

static bool sounds_in_octaves(const sw_instrument *instrument)
{
    return instrument->sounds.step == 0 && instrument->sounds.alter == 0;
}

/* Keeps the milder one of two readings. */
static void consider(verdict *best, const sw_instrument *instrument, sw_pitch pitch, reading_of_note reading)
{
    verdict other = read_as(instrument, pitch, reading);
    if (badness(other.place) < badness(best->place)) {
        *best = other;
    }
    best->doubtful = true;
}

static verdict judge(const sw_entry *entry, sw_pitch pitch)
{
    const sw_instrument *instrument = entry->instrument;
    if (entry->fit == SW_TRANSPOSITION_NONE && sounds_in_octaves(instrument)) {
        return read_as(instrument, pitch, entry->octave_clef ? AS_SOUNDING : AS_WRITTEN);
    }
    sw_pitch sounding =
        entry->fit == SW_TRANSPOSITION_NONE ? pitch : sw_pitch_transpose(pitch, entry->transposition);
    verdict best = read_as(instrument, sounding, AS_SOUNDING);
    if (entry->fit != SW_TRANSPOSITION_FITS) {
        consider(&best, instrument, pitch, AS_WRITTEN);
    }
    if (entry->bass_clef && sw_pitch_semitones(instrument->sounds) < 0 && !sounds_in_octaves(instrument)) {
        sounding.octave++;
        consider(&best, instrument, sounding, AS_SOUNDING);
    }
    return best;
}

static bool is_harmonic_mark(const sw_reading *reading, uint32_t mark)
{
    sw_slice text = sw_music_slice(reading, mark);
    return sw_slice_ends(text, "\\harmonic") || sw_slice_ends(text, "\\flageolet");
}

/* Whether a note of the event's chord is marked as one that is only touched: then the others are stopped. */
static bool is_beside_harmonic(const sw_reading *reading, const sw_event *event)
{
    for (uint32_t n = reading->music[event->chord].first; n != SW_NO_INDEX; n = reading->music[n].next) {
        for (uint32_t m = reading->music[n].first; m != SW_NO_INDEX; m = reading->music[m].next) {
            if (reading->music[m].kind == SW_MUSIC_MARK && is_harmonic_mark(reading, m)) {
                return true;
            }
        }
    }
    return false;
}

/* Whether a technique is in force for an event, by its id. */
static bool is_played_so(const sw_check *check, const sw_playing *playing, size_t event, const char *id)
{
    uint8_t technique = sw_techniques_find(check->techniques, id);
    return technique != SW_NO_TECHNIQUE &&
           sw_playing_now(playing, event, sw_techniques_get(check->techniques, technique)->group) ==
               technique;
}

/* Whether a note is for one player who goes further than a section: of a soloist's staff, or "solo". */
static bool is_for_soloist(const sw_check *check, const sw_playing *playing, const sw_score *score,
                           const sw_event *event)
{
    return is_played_so(check, playing, (size_t)(event - score->events), "one-player") ||
           sw_staff_is_soloist(check->instruments, check->reading, score, score->voices[event->voice].staff);
}

/* Whether a note is a harmonic, by its mark, by its head or by a word in force ("harm."). */
static bool is_harmonic(const sw_check *check, const sw_playing *playing, const sw_score *score,
                        const sw_event *event, const sw_entry *entry)
{
    if (sw_entry_has_harmonic_heads(entry, event->onset) ||
        sw_event_has_mark(check->reading, event, is_harmonic_mark)) {
        return true;
    }
    return !is_beside_harmonic(check->reading, event) &&
           is_played_so(check, playing, (size_t)(event - score->events), "harmonics-on");
}

/* ---- what to say --------------------------------------------------------------------------------------- */

/* "sounding B flat 3" or "written D 7 (sounding D 8)": first as it was read, then as the other sees it. */
static void say_note(const verdict *v, const sw_instrument *instrument, sw_buffer *text)
{
    bool same = sw_pitch_equal(instrument->sounds, (sw_pitch){0, 0, 0});
    bool written = v->reading == AS_WRITTEN && !same;
    char first[SW_SAY];
    char second[SW_SAY];
    sw_buffer_format(text, "%s %s", written ? "written" : "sounding",
                     sw_say_pitch(written ? v->written : v->sounding, first));
    if (!same) {
        sw_buffer_format(text, " (%s %s)", written ? "sounding" : "written",
                         sw_say_pitch(written ? v->sounding : v->written, second));
    }
}

static const char *say_limit(const verdict *v, const sw_instrument *instrument, sw_pitch written,
                             char text[SW_SAY])
{
    return sw_say_pitch(v->reading == AS_WRITTEN ? written : sw_instrument_sounding(instrument, written),
                        text);
}

/* The octaves (-2 .. 2) that bring the note into the section's compass; 0: none does. */
static int octaves_to_fit(const verdict *v, const sw_instrument *instrument)
{
    int direction = is_below(v->place) ? 1 : -1;
    for (int octaves = 1; octaves <= 2; octaves++) {
        sw_pitch moved = v->written;
        moved.octave = (int8_t)(moved.octave + direction * octaves);
        if (sw_instrument_place_written(instrument, moved) == SW_IN_SECTION) {
            return direction * octaves;
        }
    }
    return 0;
}

/* The staff of another instrument of the family that has the sounding note, the nearest in the score;
 * SW_NO_INDEX: none. */
static uint32_t staff_that_has(const sw_entries *entries, const sw_score *score, uint32_t staff,
                               sw_pitch sounding)
{
    const sw_instrument *own = entries[staff].items[0].instrument;
    uint32_t nearest = SW_NO_INDEX;
    for (uint32_t s = 0; s < score->staff_count; s++) {
        const sw_instrument *other = entries[s].items[0].instrument;
        bool has = other != NULL && own != NULL && other != own && other->has_compass &&
                   other->family == own->family &&
                   sw_instrument_place_sounding(other, sounding) == SW_IN_SECTION;
        if (has && (nearest == SW_NO_INDEX || abs((int)s - (int)staff) < abs((int)nearest - (int)staff))) {
            nearest = s;
        }
    }
    return nearest;
}

static void say_mend(const sw_check *check, const sw_score *score, const outlier *o,
                     const sw_entries *entries, sw_buffer *text)
{
    int octaves = octaves_to_fit(&o->verdict, o->instrument);
    uint32_t other = staff_that_has(entries, score, o->staff, o->verdict.sounding);
    if (octaves != 0) {
        sw_buffer_format(text, "; fits %s %s", abs(octaves) == 1 ? "an octave" : "two octaves",
                         octaves > 0 ? "higher" : "lower");
    }
    if (other != SW_NO_INDEX) {
        char label[32];
        sw_buffer_format(text, "%s %s", octaves != 0 ? " or in" : "; fits in",
                         sw_staff_label(check->reading, score, other, label));
    }
}

static void say_bars(const sw_score *score, const outlier *group, size_t count, sw_buffer *text)
{
    uint32_t *bars = sw_alloc(count * sizeof *bars);
    for (size_t i = 0; i < count; i++) {
        bars[i] = group[i].bar;
    }
    sw_say_bars(score, bars, count, text);
    free(bars);
}

/* "its", or "the piccolo's", where others of the staff's players have another instrument. */
static void say_whose(const outlier *o, const sw_entries *entries, char text[SW_SAY])
{
    bool staffs = sw_entries_at(&entries[o->staff], o->event->onset)->instrument == o->instrument;
    char name[SW_SAY];
    if (staffs) {
        snprintf(text, SW_SAY, "its");
    } else {
        snprintf(text, SW_SAY, "the %.64s's", sw_say_instrument(o->instrument, name));
    }
}

/* `group`: the notes that are told together, the furthest first: those of one bar, and of the whole staff
 * where some instruments have them. */
static void report(sw_check *check, const sw_score *score, const outlier *group, size_t count,
                   const sw_entries *entries)
{
    const outlier *o = group;
    const sw_instrument *instrument = o->instrument;
    const verdict *v = &o->verdict;
    bool below = is_below(v->place);
    bool beyond_all = badness(v->place) == 2;
    sw_pitch section = below ? instrument->written_low : instrument->written_high;
    sw_pitch extreme = below ? instrument->extreme_low : instrument->extreme_high;
    char label[32];
    char words[4][SW_SAY];
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s, %s: ", sw_say_place(score, o->event->onset, words[0]),
                     sw_staff_label(check->reading, score, o->staff, label));
    say_note(v, instrument, &text);
    if (count > 1 && beyond_all) {
        sw_buffer_format(&text, " (and %s in this bar)", sw_say_count(count - 1, "more note", words[0]));
    } else if (count > 1 && o->bar != SW_NO_INDEX) {
        sw_buffer_format(&text, " (and %s, ", sw_say_count(count - 1, "more note", words[0]));
        say_bars(score, group, count, &text);
        sw_buffer_char(&text, ')');
    }
    sw_buffer_format(&text, " is %s %s ", sw_say_interval(o->away, words[0]), below ? "below" : "above");
    say_limit(v, instrument, section, words[1]);
    say_limit(v, instrument, extreme, words[2]);
    say_whose(o, entries, words[3]);
    if (!beyond_all) {
        sw_buffer_format(&text, "%s, the usual %s (some reach %s)", words[1], below ? "bottom" : "top",
                         words[2]);
    } else if (sw_pitch_equal(section, extreme)) {
        sw_buffer_format(&text, "%s %s note, %s", words[3], below ? "lowest" : "highest", words[1]);
    } else {
        sw_buffer_format(&text, "%s %s note, %s, or %s at the very most", words[3],
                         below ? "lowest" : "highest", words[1], words[2]);
    }
    if (v->doubtful) {
        sw_buffer_string(&text, "; outside however it is read");
    }
    say_mend(check, score, o, entries, &text);
    const sw_music *m = sw_event_written(check->reading, o->event);
    sw_findings_add(check->findings, beyond_all ? SW_ERROR : SW_WARNING, "range", m->file, m->start, m->end,
                    "%s", sw_buffer_text(&text));
    sw_buffer_free(&text);
}

/* ---- the rule ------------------------------------------------------------------------------------------ */

/* Adds a note to the list when it is outside. */
static void look_at(sw_check *check, size_t number, const sw_event *event, const sw_entry *entry,
                    outliers *list)
{
    const sw_score *score = &check->reading->scores[number];
    const sw_instrument *instrument = entry->instrument;
    if (instrument == NULL || !instrument->has_compass) {
        return;
    }
    verdict v = judge(entry, event->pitch);
    if (badness(v.place) == 0) {
        return;
    }
    const sw_playing *playing = sw_check_playing(check, number);
    bool above = !is_below(v.place);
    bool reaches = badness(v.place) == 1 && (above || instrument->family == SW_VOICE);
    if ((above && is_harmonic(check, playing, score, event, entry)) ||
        (reaches && is_for_soloist(check, playing, score, event))) {
        return;
    }
    sw_pitch limit = is_below(v.place) ? instrument->written_low : instrument->written_high;
    list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
    list->items[list->count++] = (outlier){event,
                                           instrument,
                                           v,
                                           score->voices[event->voice].staff,
                                           sw_score_bar_at(score, event->onset),
                                           abs(sw_pitch_semitones(v.written) - sw_pitch_semitones(limit))};
}

static int compare_numbers(uint64_t a, uint64_t b)
{
    return (a > b) - (a < b);
}

/* On one staff, on the same side of the compass and equally grave: 0. What nobody has is told bar by bar. */
static int compare_groups(const outlier *a, const outlier *b)
{
    int order = compare_numbers(a->staff, b->staff);
    order = order != 0 ? order : compare_numbers(is_below(a->verdict.place), is_below(b->verdict.place));
    order = order != 0 ? order : badness(b->verdict.place) - badness(a->verdict.place);
    return order != 0 || badness(a->verdict.place) == 1 ? order : compare_numbers(a->bar, b->bar);
}

/* Of a group the furthest note first, of equally far ones the earliest. */
static int compare_outliers(const void *a, const void *b)
{
    const outlier *x = a;
    const outlier *y = b;
    int order = compare_groups(x, y);
    order = order != 0 ? order : y->away - x->away;
    return order != 0 ? order : (x->event > y->event) - (x->event < y->event);
}

/* True when a written note has been asked for with this instrument before: it sounds in several places. */
static bool is_told(sw_names *told, const outlier *o)
{
    sw_buffer key = {0};
    sw_buffer_format(&key, "%u %s", o->event->music, o->instrument->id);
    bool known = sw_names_find(told, sw_buffer_slice(&key)) != UINT32_MAX;
    sw_names_add(told, sw_buffer_slice(&key));
    sw_buffer_free(&key);
    return known;
}

static void report_all(sw_check *check, const sw_score *score, outliers *list, const sw_entries *entries)
{
    if (list->count > 0) {
        qsort(list->items, list->count, sizeof *list->items, compare_outliers);
    }
    sw_names *told = sw_names_new();
    for (size_t first = 0, end; first < list->count; first = end) {
        for (end = first + 1;
             end < list->count && compare_groups(&list->items[first], &list->items[end]) == 0; end++) {
        }
        if (!is_told(told, &list->items[first])) {
            report(check, score, &list->items[first], end - first, entries);
        }
    }
    sw_names_free(told);
}

static void check_score(sw_check *check, size_t number)
{
    const sw_score *score = &check->reading->scores[number];
    const sw_entries *entries = sw_check_entries(check, score);
    outliers list = {0};
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        const sw_entry *entry = NULL;
        sw_staff_events events = sw_score_staff_events(score, staff);
        for (uint32_t i = events.first; i < events.end; i++) {
            const sw_event *event = &score->events[i];
            if (sw_event_is_played(check->reading, score, event)) {
                entry = sw_entries_next(&entries[staff], entry, event->onset);
                look_at(check, number, event, sw_entry_of_note(&entries[staff], entry, i), &list);
            }
        }
    }
    report_all(check, score, &list, entries);
    free(list.items);
}

static void run(sw_check *check)
{
    for (size_t s = 0; s < check->reading->score_count; s++) {
        if (!check->reading->scores[s].in_markup) {
            check_score(check, s);
        }
    }
}

const sw_rule sw_rule_range = {
    .name = "range",
    .summary = "a note outside of the instrument's compass",
    .severity = SW_ERROR,
    .explain =
        "Each note is compared with the compass of the instrument that the staff is named for "
        "(instrument name, short\n"
        "name, context id or variable), or that a new name or a text (\"muta in Piccolo\", for one player "
        "\"2. muta in\n"
        "Piccolo\") changes to. A note that the instrument does not have is an error; one "
        "that only soloists,\n"
        "larger models or instruments with an extension have is a warning: ask the player before the "
        "session.\n\n"
        "The figures: the built-in table of instruments gives a written compass for a section and for "
        "the extreme, each\n"
        "with its source: stavewright explain range horn shows those of the horn. They are defaults "
        "for healthy\n"
        "professionals. Where \\transposition is in force, sounding pitches are compared. Without it, "
        "piccolo,\n"
        "glockenspiel, celesta, xylophone, guitar, contrabassoon and double bass are read as written "
        "(sounding if the\n"
        "clef says the octave, as treble_8 does), and instruments in other keys are reported only if "
        "the note is outside\n"
        "both as written and as sounding pitch. Harmonics (by mark, head or \"harm.\") do not count at "
        "the top. What only\n"
        "soloists reach at the top is nothing on a soloist's staff (\"Violino principale\", \"Solo "
        "Cello\") or where one player\n"
        "of a section plays (\"1 solo\"). Horns in A, B flat alto and C alto are taken for those of the "
        "natural horn's time,\n"
        "usual up to written G5, their twelfth partial, which lies higher than a player of today likes. "
        "Of each bar the\n"
        "furthest note is reported; of what some have, the furthest note of the staff, with all bars.\n\n"
        "To mend: move the note or its phrase by an octave, give it to another instrument, or say "
        "\\transposition if the\n"
        "pitch is right and was only misread. Common causes: a wrong octave mark in \\relative, a "
        "part entered in the\n"
        "wrong transposition.\n",
    .run = run,
};
