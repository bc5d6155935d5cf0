/* Gives a line to another staff, or doubles it there.
 *
 * The interval from the source's written notes to the target's follows from how each staff is entered: by its
 * \transposition; without one, instruments that sound octaves away are entered as their player reads them,
 * all others as they sound. The whole line goes by one octave shift, the smallest that brings every note into
 * the section's compass. The rest is one run of edit.h, which writes it and proves it.
 *
 * A run that is shared goes to the instrument in whose middle it lies (share_line.h), note by note; where it
 * is handed over, both play one note. */
#include <stdlib.h>
#include <string.h>

#include "checks/entry.h"
#include "checks/say.h"
#include "moves/figures.h"
#include "moves/foreign_marks.h"
#include "moves/linked.h"
#include "moves/places.h"
#include "moves/share_line.h"
#include "players/chairs.h"
#include "write/draft.h"

typedef struct give {
    sw_move *move;
    const sw_give_options *options;
    sw_chosen chosen;
    sw_figures figures;
    const sw_instruments *instruments; /* of the figures, as are the techniques */
    const sw_techniques *techniques;
    uint32_t source; /* staves */
    uint32_t target;
    sw_entry from; /* how the two are entered, at the beginning of the passage */
    sw_entry to;
    sw_rational begin;
    sw_rational end;
    uint32_t voice; /* of the target, with the rests */
    sw_pitch interval;
    uint32_t *left; /* marks that the target does not play, and grace notes */
    size_t left_count;
    size_t left_capacity;
    sw_change *changes;
    size_t count;
    size_t capacity;
    int octaves;        /* by which the line goes, or more if that does not fit */
    char *dynamic;      /* that the target's first note gets */
    struct give *parts; /* of a run that is shared: each with its own target; of any other line: stretches in
                           which one interval leads from staff to staff */
    size_t part_count;
} give;

static bool fail(char **error, const char *format, const char *a, const char *b)
{
    sw_buffer text = {0};
    sw_buffer_format(&text, format, a, b);
    *error = text.data;
    return false;
}

static const char *label(const give *g, uint32_t staff, char text[32])
{
    return sw_staff_label(g->chosen.reading, g->chosen.score, staff, text);
}

static const sw_event *event_at(const give *g, size_t i)
{
    return &g->chosen.score->events[g->chosen.events[i]];
}

static bool is_note(const sw_event *event)
{
    return event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM;
}

/* ---- the two staves ------------------------------------------------------------------------------------ */

static bool find_staves(give *g, const char *to, char **error)
{
    const sw_score *score = g->chosen.score;
    uint32_t number = 0;
    char text[32];
    if (!sw_staff_find(g->chosen.reading, to, &number, &g->target, error)) {
        return false;
    }
    g->source = score->voices[event_at(g, 0)->voice].staff;
    if (&g->chosen.reading->scores[number] != score) {
        return fail(error, "the staves are not in the same score; nothing is changed", "", "");
    }
    if (g->target == g->source) {
        return fail(error, "%s has the line already; nothing is changed", label(g, g->source, text), "");
    }
    g->begin = event_at(g, 0)->onset;
    g->end = g->begin;
    for (size_t i = 0; i < g->chosen.count; i++) {
        const sw_event *event = event_at(g, i);
        sw_rational end = sw_event_end(event);
        g->end = sw_rational_compare(end, g->end) > 0 ? end : g->end;
        if (event->voice != event_at(g, 0)->voice) {
            return fail(error, "%s has two voices here: choose bars with one; nothing is changed",
                        label(g, g->source, text), "");
        }
        if (event->kind == SW_EVENT_DRUM) {
            return fail(error, "%s has percussion without pitch here; nothing is changed",
                        label(g, g->source, text), "");
        }
    }
    return true;
}

static bool has_tie(const sw_reading *reading, uint32_t music)
{
    for (uint32_t c = reading->music[music].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        bool mark = reading->music[c].kind == SW_MUSIC_MARK;
        if (mark ? sw_music_mark_class(reading, c) == SW_MARK_TIE : has_tie(reading, c)) {
            return true;
        }
    }
    return false;
}

/* Whether a note is held over the beginning or the end of the passage: half of it can't be given away. */
static bool is_whole(const give *g, char **error)
{
    const sw_score *score = g->chosen.score;
    char place[SW_SAY];
    for (uint32_t e = 0; e < score->event_count && !g->options->keep; e++) {
        const sw_event *event = &score->events[e];
        sw_rational end = sw_event_end(event);
        if (is_note(event) && event->voice == event_at(g, 0)->voice &&
            (sw_rational_equal(end, g->begin) || sw_rational_equal(end, g->end)) &&
            has_tie(g->chosen.reading, event->chord)) {
            return fail(error,
                        "%s: a tie leads over the edge of the passage; choose bars that hold the whole "
                        "note%s",
                        sw_say_place(score, event->onset, place), "");
        }
    }
    return true;
}

static void add_change(give *g, sw_change change)
{
    g->changes = sw_grow(g->changes, g->count, &g->capacity, sizeof *g->changes);
    g->changes[g->count++] = change;
}

static bool is_hairpin_start(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_HAIRPIN_START;
}

static bool is_of_hairpin(const sw_reading *reading, uint32_t mark)
{
    sw_mark_class class = sw_music_mark_class(reading, mark);
    return class == SW_MARK_DYNAMIC || class == SW_MARK_HAIRPIN_START || class == SW_MARK_HAIRPIN_END;
}

/* Whether a hairpin of the target is open at a moment: the last thing said before it in that voice. */
static bool in_hairpin(const give *g, uint32_t voice, sw_rational moment)
{
    const sw_score *score = g->chosen.score;
    bool open = false;
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        if (event->voice == voice && sw_rational_compare(event->onset, moment) < 0 &&
            sw_event_has_mark(g->chosen.reading, event, is_of_hairpin)) {
            open = sw_event_has_mark(g->chosen.reading, event, is_hairpin_start);
        }
    }
    return open;
}

/* The target's dynamics go with its notes: the line brings its own. */
static void drop_dynamics(give *g, uint32_t event)
{
    const sw_reading *reading = g->chosen.reading;
    uint32_t chord = g->chosen.score->events[event].chord;
    for (uint32_t c = reading->music[chord].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind == SW_MUSIC_MARK && is_of_hairpin(reading, c)) {
            add_change(g, (sw_change){.kind = SW_CHANGE_REMOVE_MARK, .event = event, .mark = c});
        }
    }
}

/* The notes of the target in the passage: a finding for the first, or, with --over, silence. */
static bool clear_target(give *g, char **error)
{
    const sw_score *score = g->chosen.score;
    uint32_t last = SW_NO_INDEX;
    char text[32];
    char place[SW_SAY];
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        if (!is_note(event) || score->voices[event->voice].staff != g->target ||
            (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) != 0 ||
            sw_rational_compare(event->onset, g->end) >= 0 ||
            sw_rational_compare(g->begin, sw_event_end(event)) >= 0) {
            continue;
        }
        const char *where = sw_say_place(score, event->onset, place);
        if (!g->options->over) {
            const sw_music *m = sw_event_written(g->chosen.reading, event);
            if (g->chosen.reading != g->move->mains[0]) {
                return fail(error, "%s: %s plays there already; --over gives it the line instead", where,
                            label(g, g->target, text));
            }
            sw_findings_add(&g->move->findings, SW_ERROR, g->options->keep ? "double" : "give", m->file,
                            m->start, m->end,
                            "%s: %s plays here already; choose other bars, or give it the line instead with "
                            "--over",
                            where, label(g, g->target, text));
            sw_place at = sw_text_place(g->chosen.reading->files[m->file].text, m->start);
            g->move->findings.items[0].line = at.line;
            g->move->findings.items[0].column = at.column + 1;
            return true;
        }
        if (sw_rational_compare(event->onset, g->begin) < 0 ||
            sw_rational_compare(sw_event_end(event), g->end) > 0) {
            return fail(error, "%s: a note of %s reaches beyond the passage; nothing is changed", where,
                        label(g, g->target, text));
        }
        if (last == SW_NO_INDEX || score->events[last].chord != event->chord ||
            score->events[last].voice != event->voice) {
            if (in_hairpin(g, event->voice, g->begin) || in_hairpin(g, event->voice, g->end)) {
                return fail(error,
                            "%s: a hairpin of %s leads over the edge of the passage; choose bars that "
                            "hold all of it",
                            where, label(g, g->target, text));
            }
            drop_dynamics(g, e);
            add_change(g, (sw_change){.kind = SW_CHANGE_SILENCE, .event = e});
            last = e;
        }
    }
    return true;
}

/* The voice of the target that is there at the beginning; skips are of voices that hold only marks. */
static bool find_voice(give *g, char **error)
{
    const sw_score *score = g->chosen.score;
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        if (score->voices[event->voice].staff == g->target && event->kind != SW_EVENT_SKIP &&
            (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN | SW_EVENT_GRACE)) == 0 &&
            sw_rational_compare(event->onset, g->begin) <= 0 &&
            sw_rational_compare(g->begin, sw_event_end(event)) < 0) {
            g->voice = event->voice;
            return true;
        }
    }
    char text[32];
    char place[SW_SAY];
    return fail(error, "%s: %s has no rests to write into; nothing is changed",
                sw_say_place(score, g->begin, place), label(g, g->target, text));
}

/* ---- pitch --------------------------------------------------------------------------------------------- */

/* How a middle C of the staff sounds. */
static sw_pitch sounds(give *g, const sw_entry *entry, uint32_t staff)
{
    const sw_instrument *instrument = entry->instrument;
    const sw_pitch middle = {0, 0, 0};
    char text[32];
    if (entry->fit == SW_TRANSPOSITION_FITS && instrument != NULL) {
        return instrument->sounds; /* a B flat clarinet reads B flats, also where its source says ais */
    }
    if (entry->fit != SW_TRANSPOSITION_NONE) {
        return entry->transposition;
    }
    if (instrument == NULL || entry->octave_clef) {
        return middle;
    }
    if (instrument->sounds.step == 0 && instrument->sounds.alter == 0) {
        return instrument->sounds;
    }
    sw_buffer note = {0};
    sw_buffer_format(&note, "note: %s has no \\transposition: its notes are taken as they sound\n",
                     label(g, staff, text));
    if (strstr(sw_buffer_text(&g->move->notes), sw_buffer_text(&note)) == NULL) {
        sw_buffer_string(&g->move->notes, sw_buffer_text(&note));
    }
    sw_buffer_free(&note);
    return middle;
}

static bool fits(const give *g, sw_pitch source, int octaves)
{
    for (size_t i = 0; i < g->chosen.count; i++) {
        sw_pitch sounding = sw_pitch_transpose(event_at(g, i)->pitch, source);
        sounding.octave = sw_pitch_octave(sounding.octave + octaves);
        if (sw_instrument_place_sounding(g->to.instrument, sounding) != SW_IN_SECTION) {
            return false;
        }
    }
    return true;
}

static bool find_interval(give *g, char **error)
{
    char text[32];
    sw_pitch source = sounds(g, &g->from, g->source);
    sw_pitch target = sounds(g, &g->to, g->target);
    const char *name = label(g, g->target, text);
    int octaves = g->octaves;
    g->interval = sw_pitch_interval(target, source);
    if (g->to.instrument == NULL) {
        sw_buffer_format(&g->move->why, "%s: an instrument that is not known; the line stays at its height\n",
                         name);
        return true;
    }
    while (!fits(g, source, octaves)) {
        octaves = octaves > 0 ? -octaves : 1 - octaves;
        if (octaves > 6) {
            return fail(error,
                        "the line fits %s in no octave; fold it first (stavewright octave --into INSTRUMENT "
                        "--fold), or choose fewer bars",
                        name, "");
        }
    }
    g->interval.octave = sw_pitch_octave(g->interval.octave + octaves);
    if (octaves != 0) {
        sw_buffer_format(&g->move->why, "%s: the line goes %d octave%s %s, to fit its compass\n", name,
                         abs(octaves), abs(octaves) == 1 ? "" : "s", octaves > 0 ? "up" : "down");
    }
    return true;
}

/* ---- marks --------------------------------------------------------------------------------------------- */

static void add_left(give *g, uint32_t music)
{
    g->left = sw_grow(g->left, g->left_count, &g->left_capacity, sizeof *g->left);
    g->left[g->left_count++] = music;
}

/* The mark of a class at a note or chord; SW_NO_INDEX: none. */
static uint32_t mark_of(const sw_reading *reading, uint32_t music, sw_mark_class class)
{
    uint32_t child = reading->music[music].first;
    while (child != SW_NO_INDEX &&
           (reading->music[child].kind != SW_MUSIC_MARK || sw_music_mark_class(reading, child) != class)) {
        child = reading->music[child].next;
    }
    return child;
}

/* A doubling does without grace notes that can't be copied, and without the slurs that lead from them to
 * their main notes. A line that moves would lose them, so there the edit refuses. */
static void leave_graces(give *g)
{
    const sw_reading *reading = g->chosen.reading;
    uint32_t *parents = sw_parents_of(reading);
    bool slurred = false;
    uint32_t last = SW_NO_INDEX;
    for (size_t i = 0; i < g->chosen.count && g->options->keep; i++) {
        const sw_event *event = event_at(g, i);
        uint32_t group;
        bool grace = (event->flags & SW_EVENT_GRACE) != 0;
        bool left = grace && sw_grace_head(reading, parents, event->chord, &group).length == 0;
        if (event->chord == last || (grace && !left)) {
            continue;
        }
        last = event->chord;
        uint32_t slur_end = mark_of(reading, event->chord, SW_MARK_SLUR_END);
        if (slurred && slur_end != SW_NO_INDEX && !grace) {
            add_left(g, slur_end);
        }
        slurred = slurred && slur_end == SW_NO_INDEX;
        if (left) {
            char place[SW_SAY];
            slurred = slurred || mark_of(reading, event->chord, SW_MARK_SLUR_START) != SW_NO_INDEX;
            add_left(g, event->chord);
            sw_buffer_format(&g->move->notes, "note: %s: a grace note is left out: write it by hand\n",
                             sw_say_place(g->chosen.score, event->onset, place));
        }
    }
    free(parents);
}

/* The first note of the line that takes time; grace notes alone are no line. */
static size_t first_main_note(const give *g)
{
    size_t i = 0;
    while (i + 1 < g->chosen.count && (event_at(g, i)->flags & SW_EVENT_GRACE) != 0) {
        i++;
    }
    return i;
}

static bool is_left(const give *g, uint32_t music)
{
    size_t i = 0;
    while (i < g->left_count && g->left[i] != music) {
        i++;
    }
    return i < g->left_count;
}

/* The first note that is copied. */
static size_t first_copied(const give *g)
{
    size_t i = 0;
    while (i + 1 < g->chosen.count && is_left(g, event_at(g, i)->chord)) {
        i++;
    }
    return i;
}

/* Finds what the target does not play among the marks at a chord, or at one of its notes. */
static void find_left_at(give *g, const sw_event *event, uint32_t music)
{
    const sw_reading *reading = g->chosen.reading;
    const sw_instrument *to = g->to.instrument;
    for (uint32_t c = reading->music[music].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind != SW_MUSIC_MARK) {
            continue;
        }
        bool fingering = to != g->from.instrument && sw_music_mark_class(reading, c) == SW_MARK_FINGERING;
        if (fingering || sw_mark_is_foreign(reading, c, g->techniques, g->from.instrument, to)) {
            sw_slice written = sw_music_slice(reading, c);
            add_left(g, c);
            char place[SW_SAY];
            char text[32];
            sw_buffer_format(&g->move->why, "%s: %.*s is left out: %s has no use for it\n",
                             sw_say_place(g->chosen.score, event->onset, place), (int)written.length,
                             written.data, label(g, g->target, text));
        }
    }
}

/* The same for all of the line. Fingerings are of the instrument that they were written for. */
static void find_left(give *g)
{
    uint32_t last = SW_NO_INDEX;
    for (size_t i = 0; g->to.instrument != NULL && i < g->chosen.count; i++) {
        const sw_event *event = event_at(g, i);
        if (event->chord != last) {
            find_left_at(g, event, event->chord);
        }
        last = event->chord;
        if (event->music != event->chord && g->chosen.reading->music[last].kind == SW_MUSIC_CHORD) {
            find_left_at(g, event, event->music);
        }
    }
}

/* Whether one player of a wind instrument reads a staff: the film says so, or its name has one number. */
static bool is_one_wind(const give *g, uint32_t staff, sw_rational moment)
{
    const sw_instrument *to = g->to.instrument;
    if (to == NULL || (to->family != SW_WOODWIND && to->family != SW_BRASS)) {
        return false;
    }
    sw_seating *seating = sw_seating_of(g->figures.film, g->chosen.reading, g->chosen.score);
    const sw_seats *seats = sw_seating_at(seating, staff, moment);
    int players = seating->staves[staff].players;
    bool one = seats != NULL && seats->all_count == 1 &&
               (players == 1 ||
                (players == 0 && seating->players[seating->seats[seats->all_first].player].number > 0));
    sw_seating_free(seating);
    return one;
}

/* Tells of the first chord that the target's only player can't blow. */
static void tell_chords(give *g)
{
    for (size_t i = 1; i < g->chosen.count; i++) {
        if (event_at(g, i)->chord == event_at(g, i - 1)->chord &&
            sw_rational_equal(event_at(g, i)->onset, event_at(g, i - 1)->onset)) {
            if (is_one_wind(g, g->target, event_at(g, i)->onset)) {
                char place[SW_SAY];
                char text[32];
                sw_buffer_format(
                    &g->move->notes, "note: %s: the line has chords, and %s plays one note at a time\n",
                    sw_say_place(g->chosen.score, event_at(g, i)->onset, place), label(g, g->target, text));
            }
            return;
        }
    }
}

/* ---- the move ------------------------------------------------------------------------------------------ */

/* Whether the notes of a staff mean the same pitches in all of the passage, so that one interval leads from
 * one staff to the other. */
static bool is_in_one_key(give *g, const sw_entries *entries, uint32_t staff, char **error)
{
    sw_pitch first = sounds(g, sw_entries_at(entries, g->begin), staff);
    for (size_t i = 0; i < entries->count; i++) {
        const sw_entry *entry = &entries->items[i];
        bool inside =
            sw_rational_compare(g->begin, entry->onset) < 0 && sw_rational_compare(entry->onset, g->end) < 0;
        if (inside && !sw_pitch_equal(sounds(g, entry, staff), first)) {
            char place[SW_SAY];
            char text[32];
            return fail(error,
                        "%s: from here on %s is written in another key; take what stands before and what "
                        "stands behind one after the other; nothing is changed",
                        sw_say_place(g->chosen.score, entry->onset, place), label(g, staff, text));
        }
    }
    return true;
}

/* How both staves are entered in a passage of one key. */
static bool take_entries(give *g, const sw_entries *entries, char **error)
{
    g->from = *sw_entries_at(&entries[g->source], g->begin);
    g->to = *sw_entries_at(&entries[g->target], g->begin);
    return is_in_one_key(g, &entries[g->source], g->source, error) &&
           is_in_one_key(g, &entries[g->target], g->target, error);
}

static bool find_entries(give *g, char **error)
{
    const sw_score *score = g->chosen.score;
    sw_entries *entries = sw_entries_of_film(g->figures.film, g->chosen.reading, score);
    bool done = take_entries(g, entries, error);
    sw_entries_free(entries, score->staff_count);
    return done;
}

/* The dynamic in force at a moment in a voice, as it is written; empty when there is none, or when a hairpin
 * has led away from it. */
static sw_slice dynamic_before(const give *g, uint32_t voice, sw_rational moment)
{
    const sw_reading *reading = g->chosen.reading;
    const sw_score *score = g->chosen.score;
    sw_slice found = {NULL, 0};
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        if (event->voice != voice || sw_rational_compare(event->onset, moment) >= 0) {
            continue;
        }
        for (uint32_t m = reading->music[event->chord].first; m != SW_NO_INDEX; m = reading->music[m].next) {
            if (reading->music[m].kind == SW_MUSIC_MARK && is_of_hairpin(reading, m)) {
                bool level = sw_music_mark_class(reading, m) == SW_MARK_DYNAMIC;
                found = level ? sw_music_slice(reading, m) : (sw_slice){NULL, 0};
            }
        }
    }
    return found;
}

/* What the first note of the copy says about loudness when the line does not say it there. */
static void find_dynamic(give *g, sw_change *change)
{
    if (sw_event_has_mark(g->chosen.reading, event_at(g, first_main_note(g)), is_of_hairpin)) {
        return;
    }
    sw_slice own = dynamic_before(g, event_at(g, 0)->voice, g->begin);
    sw_slice there = dynamic_before(g, g->voice, g->begin);
    if (own.length > 0 && !sw_slice_equal(own, there)) {
        g->dynamic = strndup(own.data, own.length);
        change->text = g->dynamic;
    }
}

/* A part of a line, without changes of its own: they are all in the line's list. */
static give *add_part(give *g, size_t first, size_t end)
{
    give *part = &g->parts[g->part_count++];
    *part = *g;
    part->left = NULL;
    part->left_count = 0;
    part->left_capacity = 0;
    part->parts = NULL;
    part->part_count = 0;
    part->chosen.events = g->chosen.events + first;
    part->chosen.count = end - first;
    return part;
}

static void take_changes(give *g, const give *part)
{
    g->changes = part->changes;
    g->count = part->count;
    g->capacity = part->capacity;
}

/* Plans the copy of notes for which both staves are entered in one way. */
static bool plan_stretch(give *g, const sw_entries *entries, const char *to, bool first, sw_change_kind kind,
                         char **error)
{
    if (!find_staves(g, to, error) || !is_whole(g, error) || !take_entries(g, entries, error) ||
        !find_voice(g, error) || !find_interval(g, error)) {
        return false;
    }
    leave_graces(g);
    find_left(g);
    tell_chords(g);
    sw_change change = {.kind = kind,
                        .event = g->chosen.events[first_copied(g)],
                        .last = g->chosen.events[g->chosen.count - 1],
                        .voice = g->voice,
                        .pitch = g->interval,
                        .left = g->left,
                        .left_count = g->left_count};
    if (first) { /* the rest of the line has what that brings along */
        find_dynamic(g, &change);
    }
    add_change(g, change);
    return true;
}

/* Where, behind a moment, one of the staves is first written in another key; otherwise the end. */
static sw_rational end_of_key(give *g, const sw_entries *entries, sw_rational moment)
{
    const uint32_t staves[2] = {g->source, g->target};
    sw_rational end = g->end;
    for (int s = 0; s < 2; s++) {
        const sw_entries *all = &entries[staves[s]];
        sw_pitch now = sounds(g, sw_entries_at(all, moment), staves[s]);
        for (size_t i = 0; i < all->count; i++) {
            sw_rational onset = all->items[i].onset;
            if (sw_rational_compare(moment, onset) < 0 && sw_rational_compare(onset, end) < 0 &&
                !sw_pitch_equal(sounds(g, &all->items[i], staves[s]), now)) {
                end = onset;
            }
        }
    }
    return end;
}

/* Plans the copy of the chosen notes for the target, also where a player changes the instrument. */
static bool plan_copy(give *g, const char *to, sw_change_kind kind, char **error)
{
    if (!find_staves(g, to, error) || !is_whole(g, error) || !clear_target(g, error)) {
        return false;
    }
    const sw_score *score = g->chosen.score;
    sw_entries *entries = sw_entries_of_film(g->figures.film, g->chosen.reading, score);
    g->parts = sw_alloc_zero(g->chosen.count, sizeof *g->parts);
    bool done = true;
    size_t end;
    for (size_t first = 0; first < g->chosen.count && done && g->move->findings.count == 0; first = end) {
        sw_rational until = end_of_key(g, entries, event_at(g, first)->onset);
        for (end = first + 1; end < g->chosen.count; end++) {
            if (sw_rational_compare(event_at(g, end)->onset, until) >= 0) {
                break;
            }
        }
        give *part = add_part(g, first, end);
        done = plan_stretch(part, entries, to, first == 0, kind, error);
        take_changes(g, part);
    }
    sw_entries_free(entries, score->staff_count);
    return done;
}

/* ---- a run shared among several ------------------------------------------------------------------------ */

/* The run, stroke by stroke, and who plays what. */
typedef struct sharing {
    size_t *firsts; /* by stroke: its first note among the chosen ones; one more at the end */
    sw_share_stroke *strokes;
    uint8_t *who;
    size_t count;
    sw_share_player players[SW_SHARE_MOST];
    char *names[SW_SHARE_MOST]; /* as they were given */
    size_t player_count;
} sharing;

static void free_sharing(sharing *s)
{
    free(s->firsts);
    free(s->strokes);
    free(s->who);
    for (size_t p = 0; p < s->player_count; p++) {
        free(s->names[p]);
    }
}

static void find_strokes(give *g, sharing *s)
{
    sw_pitch source = sounds(g, &g->from, g->source);
    s->firsts = sw_alloc_zero(g->chosen.count + 1, sizeof *s->firsts);
    s->strokes = sw_alloc_zero(g->chosen.count + 1, sizeof *s->strokes);
    s->who = sw_alloc_zero(g->chosen.count + 1, sizeof *s->who);
    for (size_t i = 0; i < g->chosen.count; i++) {
        const sw_event *event = event_at(g, i);
        int height = sw_pitch_semitones(sw_pitch_transpose(event->pitch, source));
        if (i > 0 && sw_rational_equal(event->onset, event_at(g, i - 1)->onset)) {
            sw_share_stroke *stroke = &s->strokes[s->count - 1];
            stroke->low = height < stroke->low ? height : stroke->low;
            stroke->high = height > stroke->high ? height : stroke->high;
        } else {
            bool bound = i > 0 && has_tie(g->chosen.reading, event_at(g, i - 1)->chord);
            s->firsts[s->count] = i;
            s->strokes[s->count++] = (sw_share_stroke){height, height, bound};
        }
    }
    s->firsts[s->count] = g->chosen.count;
}

/* The names between commas. */
static bool find_players(give *g, sharing *s, char **error)
{
    for (const char *at = g->options->to; at != NULL;) {
        const char *comma = strchr(at, ',');
        at += strspn(at, " ");
        if (s->player_count == SW_SHARE_MOST) {
            return fail(error, "a run can be shared among 8 at most", "", "");
        }
        char *name = comma == NULL ? strdup(at) : strndup(at, (size_t)(comma - at));
        sw_share_player *player = &s->players[s->player_count];
        s->names[s->player_count++] = name;
        give one = *g;
        if (!find_staves(&one, name, error) || !find_entries(&one, error)) {
            return false;
        }
        const sw_instrument *to = one.to.instrument;
        if (to == NULL || !to->has_compass) {
            return fail(error, "no compass is known for %s; give it its part by itself", name, "");
        }
        player->low = sw_pitch_semitones(sw_instrument_sounding(to, to->written_low));
        player->high = sw_pitch_semitones(sw_instrument_sounding(to, to->written_high));
        g->from = one.from;
        g->source = one.source;
        at = comma == NULL ? NULL : comma + 1;
    }
    return true;
}

/* Finds who plays what, in the nearest octave in which somebody has each stroke. */
static bool find_shares(give *g, sharing *s, char **error)
{
    for (int octaves = 0; octaves <= 6; octaves = octaves > 0 ? -octaves : 1 - octaves) {
        int by = 12 * (octaves - g->octaves);
        for (size_t i = 0; i < s->count; i++) {
            s->strokes[i].low += by;
            s->strokes[i].high += by;
        }
        g->octaves = octaves;
        if (sw_share_solve(s->strokes, s->count, s->players, s->player_count, s->who) >= 0) {
            return true;
        }
    }
    return fail(error, "in every octave the run has notes that none of them has; add another instrument", "",
                "");
}

/* The stroke that begins the note of which a stroke may be a tied value, and the one behind its last value.
 */
static size_t note_begin(const sharing *s, size_t stroke)
{
    while (stroke > 0 && s->strokes[stroke].bound) {
        stroke--;
    }
    return stroke;
}

static size_t note_end(const sharing *s, size_t stroke)
{
    for (stroke++; stroke < s->count && s->strokes[stroke].bound; stroke++) {
    }
    return stroke;
}

/* Plans the copy of the strokes [first, end) for their player, and of one more note that overlaps with the
 * next player's, or with the last one's where that one does not have it. */
static bool plan_share(give *g, const sharing *s, size_t first, size_t end, char **error)
{
    uint8_t player = s->who[first];
    char place[SW_SAY];
    bool begins_early = first > 0 && !sw_share_has(&s->players[s->who[first - 1]], &s->strokes[first]) &&
                        sw_share_has(&s->players[player], &s->strokes[first - 1]);
    first = begins_early ? note_begin(s, first - 1) : first;
    bool overlaps = end < s->count && sw_share_has(&s->players[player], &s->strokes[end]);
    end = overlaps ? note_end(s, end) : end;
    give *part = add_part(g, s->firsts[first], s->firsts[end]);
    sw_buffer_format(&g->move->why, "%s: %s has the best register from here on\n",
                     sw_say_place(g->chosen.score, event_at(part, 0)->onset, place), s->names[player]);
    bool done = plan_copy(part, s->names[player], SW_CHANGE_COPY_RUN, error);
    take_changes(g, part);
    return done;
}

/* The source falls silent. */
static bool silence_source(give *g, char **error)
{
    char text[32];
    if (in_hairpin(g, event_at(g, 0)->voice, g->begin) || in_hairpin(g, event_at(g, 0)->voice, g->end)) {
        return fail(error,
                    "a hairpin of %s leads over the edge of the passage; choose bars that hold all of it%s",
                    label(g, g->source, text), "");
    }
    for (size_t i = 0; i < g->chosen.count; i++) {
        if (i == 0 || event_at(g, i)->chord != event_at(g, i - 1)->chord) {
            drop_dynamics(g, g->chosen.events[i]);
            add_change(g, (sw_change){.kind = SW_CHANGE_SILENCE, .event = g->chosen.events[i]});
        }
    }
    return true;
}

static bool plan_shared(give *g, char **error)
{
    sharing s = {.count = 0};
    bool done = find_players(g, &s, error);
    if (done) {
        find_strokes(g, &s);
        done = find_shares(g, &s, error);
    }
    g->parts = sw_alloc_zero(s.count + 1, sizeof *g->parts);
    for (size_t first = 0, end; first < s.count && done && g->move->findings.count == 0; first = end) {
        for (end = first + 1; end < s.count && s.who[end] == s.who[first]; end++) {
        }
        done = plan_share(g, &s, first, end, error);
    }
    free_sharing(&s);
    if (done) {
        sw_rational begin = g->parts[0].begin;
        g->begin = begin;
        g->end = g->parts[g->part_count - 1].end;
    }
    return done && (g->options->keep || silence_source(g, error));
}

/* ---- all of it ----------------------------------------------------------------------------------------- */

static bool plan(give *g, char **error)
{
    bool done =
        g->options->share
            ? plan_shared(g, error)
            : plan_copy(g, g->options->to, g->options->keep ? SW_CHANGE_COPY_RUN : SW_CHANGE_MOVE_RUN, error);
    g->count = g->move->findings.count > 0 ? 0 : g->count;
    return done;
}

static bool run(give *g, const sw_read_options *reading_options, char **error)
{
    if (!sw_figures_find(&g->figures, g->options->film, error)) {
        return false;
    }
    g->instruments = sw_film_instruments(g->figures.film);
    g->techniques = sw_film_techniques(g->figures.film);
    if (!sw_places_choose(g->move, &g->options->places, &g->chosen, error)) {
        return false;
    }
    if (!plan(g, error)) {
        return false;
    }
    sw_edit_request request = sw_chosen_request(g->move, &g->chosen, g->options->elsewhere, reading_options);
    request.changes = g->changes;
    request.count = g->count;
    return g->count == 0 || sw_edit_score(&request, &g->move->patch, &g->move->notes, error);
}

static void free_parts(give *g)
{
    for (size_t i = 0; i < g->part_count; i++) {
        free_parts(&g->parts[i]);
        free(g->parts[i].left);
        free(g->parts[i].dynamic);
    }
    free(g->parts);
}

sw_move *sw_move_give(const char *path, const sw_give_options *options,
                      const sw_read_options *reading_options, char **error)
{
    give g = {.move = sw_move_open(path, reading_options, error), .options = options};
    g.move = sw_move_close(g.move, g.move != NULL && run(&g, reading_options, error));
    free_parts(&g);
    free(g.changes);
    free(g.chosen.events);
    sw_figures_free(&g.figures);
    return g.move;
}
