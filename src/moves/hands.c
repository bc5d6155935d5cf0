/* The transformation `hands`: one staff becomes two, a hand each. */
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "players/hand_clefs.h"
#include "players/hand_split.h"
#include "players/staff_instrument.h"
#include "stavewright/main_files.h"
#include "stavewright/move.h"

typedef struct hands {
    sw_move *move;
    const sw_reading *reading;
    const sw_score *score;
    uint32_t staff;
    sw_hand_limits limits;
    sw_rational from; /* what is split */
    sw_rational to;
    uint32_t *events; /* by note given to the split: the event */
    sw_hand_note *notes;
    size_t count;
    uint8_t *event_part; /* by event: 0 right, 1 left */
    sw_part_clef *clefs;
    size_t clef_count;
    size_t clef_capacity;
} hands;

/* ---- notes ---- */

static bool has_tie(const sw_reading *reading, uint32_t music)
{
    for (uint32_t c = reading->music[music].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind == SW_MUSIC_MARK && sw_music_mark_class(reading, c) == SW_MARK_TIE) {
            return true;
        }
    }
    return false;
}

/* Whether an event continues a tied one: the last note of this pitch in the voice has a tie and ends here. */
static bool is_tied(const hands *h, size_t note)
{
    const sw_event *event = &h->score->events[h->events[note]];
    for (size_t i = note; i-- > 0 && note - i < 64;) {
        const sw_event *before = &h->score->events[h->events[i]];
        if (before->voice != event->voice) {
            return false;
        }
        if (sw_pitch_equal(before->pitch, event->pitch) &&
            sw_rational_equal(sw_event_end(before), event->onset)) {
            return has_tie(h->reading, before->chord) || has_tie(h->reading, before->music);
        }
    }
    return false;
}

/* The pitches that the hand touches: an octave-transposing instrument is played as it is written. */
static void collect_notes(hands *h)
{
    const sw_score *score = h->score;
    h->events = sw_alloc((score->event_count + 1) * sizeof *h->events);
    h->notes = sw_alloc((score->event_count + 1) * sizeof *h->notes);
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (score->voices[event->voice].staff != h->staff || event->kind != SW_EVENT_NOTE ||
            sw_rational_compare(event->onset, h->from) < 0 || sw_rational_compare(event->onset, h->to) >= 0) {
            continue;
        }
        h->events[h->count] = i;
        bool grace = (event->flags & SW_EVENT_GRACE) != 0;
        int order = 0;
        if (grace && event->grace_den > 0) { /* 64ths before the main note keep the order of grace notes */
            order = (int)((int64_t)event->grace_num * 1024 / event->grace_den);
        }
        h->notes[h->count] = (sw_hand_note){
            .id = i,
            .onset = event->onset,
            .end = grace ? event->onset : sw_event_end(event),
            .seconds = sw_score_seconds(score, event->onset),
            .semitone = sw_pitch_midi(event->pitch),
            .step = sw_pitch_staff_steps(event->pitch),
            .voice = event->voice,
            .grace = order,
            .tied = is_tied(h, h->count),
        };
        h->count++;
    }
}

/* ---- what can't be played ---- */

static void place_text(const hands *h, sw_rational onset, char text[80])
{
    char beat[SW_RATIONAL_TEXT];
    uint32_t bar = sw_score_bar_at(h->score, onset);
    snprintf(text, 80, "bar %d, beat %s", bar == SW_NO_INDEX ? 1 : h->score->bars[bar].number,
             sw_rational_print(sw_score_beat(h->score, onset), beat));
}

static const char *interval_name(int steps, char text[24])
{
    static const char *const names[] = {"unison",  "second", "third", "fourth", "fifth",    "sixth",
                                        "seventh", "octave", "ninth", "tenth",  "eleventh", "twelfth"};
    if (steps >= 0 && steps < 12) {
        return names[steps];
    }
    snprintf(text, 24, "%dth", steps + 1);
    return text;
}

static void report_problem(hands *h, const sw_hand_problem *problem)
{
    char place[80];
    char label[32];
    char a[24];
    char b[24];
    sw_buffer what = {0};
    place_text(h, problem->onset, place);
    const char *hand = problem->hand == SW_LEFT_HAND ? "left" : "right";
    int keys = problem->keys[0] + problem->keys[1];
    switch (problem->reason) {
    case SW_HANDS_MANY:
        sw_buffer_format(&what,
                         "%d notes at once, and two hands have %d fingers; leave out or double elsewhere %d",
                         keys, 2 * h->limits.fingers, keys - 2 * h->limits.fingers);
        break;
    case SW_HANDS_WIDE:
    case SW_HANDS_MANY_AND_WIDE:
    case SW_HANDS_MANY_OR_WIDE:
        sw_buffer_format(
            &what,
            "no split is playable: at best one hand spans a %s, and its limit is a %s; close the gap, "
            "roll the chord (\\arpeggio) or give notes to another player",
            interval_name(problem->least_steps, a), interval_name(h->limits.span, b));
        break;
    case SW_HANDS_HELD:
        sw_buffer_format(
            &what, "playable alone, but not while the notes before it are held; shorten them or let them "
                   "ring");
        break;
    case SW_HANDS_QUICK:
        sw_buffer_format(&what,
                         "the %s hand has %.2f seconds for a move of %d steps and needs %.2f; give it a rest "
                         "before",
                         hand, problem->available, problem->travel_steps, problem->needed);
        break;
    case SW_HANDS_LOW:
        sw_buffer_format(&what, "the %s hand goes below the lowest string that it reaches", hand);
        break;
    }
    const sw_event *event = problem->id_count > 0 ? &h->score->events[problem->ids[0]] : NULL;
    const sw_music *music = event == NULL ? NULL : &h->reading->music[event->chord];
    sw_findings_add(&h->move->findings, problem->reason == SW_HANDS_QUICK ? SW_WARNING : SW_ERROR, "hands",
                    music == NULL ? 0 : music->file, music == NULL ? 0 : music->start,
                    music == NULL ? 0 : music->end, "%s, %s: %s", place,
                    sw_staff_label(h->reading, h->score, h->staff, label), sw_buffer_text(&what));
    sw_buffer_free(&what);
}

/* ---- clefs ---- */

static int compare_clefs(const void *a, const void *b)
{
    const sw_part_clef *x = a;
    const sw_part_clef *y = b;
    int order = sw_rational_compare(x->onset, y->onset);
    return order != 0 ? order : (int)x->part - (int)y->part;
}

static int compare_moments(const void *a, const void *b)
{
    const sw_clef_moment *x = a;
    const sw_clef_moment *y = b;
    return sw_rational_compare(x->position, y->position);
}

static void choose_clefs(hands *h, uint32_t part)
{
    const sw_score *score = h->score;
    sw_clef_moment *moments = sw_alloc((score->event_count + 1) * sizeof *moments);
    size_t count = 0;
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (score->voices[event->voice].staff != h->staff || event->kind != SW_EVENT_NOTE ||
            h->event_part[i] != part) {
            continue;
        }
        int step = sw_pitch_staff_steps(event->pitch);
        moments[count++] = (sw_clef_moment){event->onset, sw_score_bar_at(score, event->onset), step, step};
    }
    qsort(moments, count, sizeof *moments, compare_moments);
    size_t merged = 0;
    for (size_t i = 0; i < count; i++) { /* one moment for all notes that begin together */
        if (merged > 0 && sw_rational_equal(moments[merged - 1].position, moments[i].position)) {
            sw_clef_moment *m = &moments[merged - 1];
            m->lowest = moments[i].lowest < m->lowest ? moments[i].lowest : m->lowest;
            m->highest = moments[i].highest > m->highest ? moments[i].highest : m->highest;
        } else {
            moments[merged++] = moments[i];
        }
    }
    sw_hand_clef *clefs = sw_alloc((merged + 1) * sizeof *clefs);
    sw_hand_clef usual = part == 0 ? SW_TREBLE_CLEF : SW_BASS_CLEF;
    sw_clefs_choose(moments, merged, usual, clefs);
    for (size_t i = 0; i < merged || (i == 0 && merged == 0); i++) {
        sw_hand_clef clef = merged == 0 ? usual : clefs[i];
        if (i > 0 && clefs[i - 1] == clef) {
            continue;
        }
        if (i == 0 && part == 0 && clef == SW_TREBLE_CLEF) {
            continue; /* what a staff begins with anyhow */
        }
        sw_rational onset = i == 0 ? sw_rational_zero() : moments[i].position;
        if (i > 0 && moments[i - 1].bar != moments[i].bar && moments[i].bar != SW_NO_INDEX) {
            onset = score->bars[moments[i].bar].start;
        }
        h->clefs = sw_grow(h->clefs, h->clef_count, &h->clef_capacity, sizeof *h->clefs);
        h->clefs[h->clef_count++] = (sw_part_clef){onset, part, clef == SW_TREBLE_CLEF ? "treble" : "bass"};
    }
    free(moments);
    free(clefs);
}

/* ---- the whole ---- */

static bool find_limits(hands *h, const sw_hands_options *options, char **error)
{
    bool harp = options->instrument != NULL && strcmp(options->instrument, "harp") == 0;
    bool keys = options->instrument != NULL && strcmp(options->instrument, "piano") == 0;
    if (options->instrument != NULL && !harp && !keys) {
        return asprintf(error, "there are no hands for the instrument \"%s\"; use harp or piano",
                        options->instrument) < 0;
    }
    if (!harp && !keys) {
        sw_instruments *instruments = sw_instruments_load(NULL, (sw_slice){NULL, 0}, error);
        if (instruments == NULL) {
            return false;
        }
        const sw_instrument *found = sw_staff_instrument(instruments, h->reading, h->score, h->staff);
        harp = found != NULL && found->fingers == 4;
        keys = found != NULL && found->fingers == 5;
        char label[32];
        if (!harp && !keys &&
            asprintf(error,
                     "the staff \"%s\" is not known to be for a harp or a keyboard; say which with "
                     "--instrument harp or "
                     "--instrument piano",
                     sw_staff_label(h->reading, h->score, h->staff, label)) < 0) {
            abort();
        }
        sw_instruments_free(instruments);
        if (!harp && !keys) {
            return false;
        }
    }
    h->limits = harp ? sw_hand_limits_harp() : sw_hand_limits_piano();
    if (options->span > 0) {
        h->limits.span = options->span - 1;
        h->limits.comfort = h->limits.comfort < h->limits.span ? h->limits.comfort : h->limits.span;
    }
    if (options->fingers > 0) {
        h->limits.fingers = options->fingers;
    }
    return true;
}

static void add_main(sw_move *move, sw_reading *reading)
{
    move->mains = sw_realloc(move->mains, (move->main_count + 1) * sizeof *move->mains);
    move->mains[move->main_count++] = reading;
}

/* All scores in the folder of the file and below: those that use the same variables are changed along. */
static bool read_folder(sw_move *move, const char *path, const sw_read_options *options, char **error)
{
    const char *slash = strrchr(path, '/');
    char *folder = slash == NULL ? strdup(".") : strndup(path, slash == path ? 1 : (size_t)(slash - path));
    sw_paths all = {0};
    bool good = sw_paths_collect(&all, folder, error);
    free(folder);
    if (good) {
        sw_paths mains = sw_main_files(&all, options);
        for (size_t i = 0; i < mains.count && good; i++) {
            char *real = realpath(mains.items[i], NULL);
            char *own = realpath(path, NULL);
            bool same = real != NULL && own != NULL && strcmp(real, own) == 0;
            free(real);
            free(own);
            if (same) {
                continue;
            }
            sw_reading *reading = sw_read(mains.items[i], options, error);
            if (reading == NULL) {
                good = false;
            } else {
                add_main(move, reading);
            }
        }
        sw_paths_free(&mains);
    }
    sw_paths_free(&all);
    return good;
}

/* A staff that stands in a brace already becomes two staves of that brace. */
static bool is_in_a_brace(const hands *h)
{
    uint32_t group = h->score->staves[h->staff].group;
    const char *type = group == SW_NO_INDEX ? "" : sw_reading_name(h->reading, h->score->groups[group].type);
    return strcmp(type, "PianoStaff") == 0 || strcmp(type, "GrandStaff") == 0;
}

static void explain(hands *h, const sw_hand_split *split)
{
    size_t passes = 0;
    size_t left = 0;
    for (size_t i = 0; i < h->count; i++) {
        left += split->hands[i] == SW_LEFT_HAND;
        passes += i > 0 && split->hands[i] != split->hands[i - 1];
    }
    char label[32];
    sw_buffer_format(
        &h->move->why,
        "%s: %zu notes, %zu for the right hand and %zu for the left; at most %d fingers and a span of %d "
        "steps a hand; %zu places that no split makes easy; %s\n",
        sw_staff_label(h->reading, h->score, h->staff, label), h->count, h->count - left, left,
        h->limits.fingers, h->limits.span, split->problem_count,
        split->exact ? "the split is the best by the costs in hand_split.h" : "a better split may exist");
    for (size_t i = 0; i < h->clef_count; i++) {
        char place[80];
        place_text(h, h->clefs[i].onset, place);
        sw_buffer_format(&h->move->why, "%s: %s clef for the %s hand\n", place, h->clefs[i].clef,
                         h->clefs[i].part == 0 ? "right" : "left");
    }
}

/* A note that is written once and heard several times (in a variable used twice, in an unfolded repeat) can only have one hand: that
 * of its first time. */
static void settle_repetitions(hands *h)
{
    const sw_score *score = h->score;
    uint32_t *first = sw_alloc((h->reading->music_count + 1) * sizeof *first);
    memset(first, 0xff, (h->reading->music_count + 1) * sizeof *first);
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (score->voices[event->voice].staff != h->staff) {
            continue;
        }
        if (first[event->chord] == SW_NO_INDEX) {
            first[event->chord] = i;
        }
        for (uint32_t k = first[event->chord]; k < i && score->events[k].chord == event->chord; k++) {
            if (score->events[k].music == event->music) {
                h->event_part[i] = h->event_part[k];
                break;
            }
        }
    }
    free(first);
}

static bool run(hands *h, const sw_hands_options *options, const sw_read_options *reading_options,
                char **error)
{
    uint32_t score_index;
    if (!sw_staff_find(h->reading, options->staff, &score_index, &h->staff, error)) {
        return false;
    }
    h->score = &h->reading->scores[score_index];
    if (!find_limits(h, options, error)) {
        return false;
    }
    if (!sw_bar_range_moments(h->score, &options->bars, &h->from, &h->to)) {
        return asprintf(error, "the score has no bars %d to %d; its last bar is %d", options->bars.first_bar,
                        options->bars.last_bar,
                        h->score->bar_count == 0 ? 0 : h->score->bars[h->score->bar_count - 1].number) < 0;
    }
    collect_notes(h);
    if (h->count == 0) {
        *error = strdup("the staff has no notes there; nothing is split");
        return false;
    }
    sw_arena *arena = sw_arena_new();
    sw_hand_split split = sw_hands_split(arena, h->notes, h->count, &h->limits);
    h->event_part = sw_alloc_zero(h->score->event_count + 1, 1);
    for (size_t i = 0; i < h->count; i++) {
        h->event_part[h->events[i]] = split.hands[i] == SW_LEFT_HAND ? 1 : 0;
    }
    settle_repetitions(h);
    for (size_t i = 0; i < split.problem_count; i++) {
        report_problem(h, &split.problems[i]);
    }
    choose_clefs(h, 0);
    choose_clefs(h, 1);
    qsort(h->clefs, h->clef_count, sizeof *h->clefs, compare_clefs);
    explain(h, &split);
    sw_arena_free(arena);
    sw_division division = {
        .reading = h->reading,
        .score = h->score,
        .staff = h->staff,
        .parts = 2,
        .suffixes = {"Right", "Left"},
        .group = is_in_a_brace(h) ? NULL : "PianoStaff",
        .event_part = h->event_part,
        .clefs = h->clefs,
        .clef_count = h->clef_count,
    };
    sw_move *move = h->move;
    return sw_divide(&division, move->mains, move->main_count, &move->patch, &move->notes, error) &&
           sw_patch_finish(&move->patch, error) &&
           sw_prove_division(&division, move->mains, move->main_count, &move->patch, reading_options, error);
}

static void place_findings(sw_move *move)
{
    for (size_t i = 0; i < move->findings.count; i++) {
        sw_finding *finding = &move->findings.items[i];
        sw_place place = sw_text_place(move->mains[0]->files[finding->file].text, finding->start);
        finding->line = place.line;
        finding->column = place.column + 1;
    }
}

sw_move *sw_move_hands(const char *path, const sw_hands_options *options,
                       const sw_read_options *reading_options, char **error)
{
    *error = NULL;
    sw_move *move = sw_alloc_zero(1, sizeof *move);
    sw_reading *reading = sw_read(path, reading_options, error);
    if (reading == NULL) {
        sw_move_free(move);
        return NULL;
    }
    add_main(move, reading);
    hands h = {.move = move, .reading = reading};
    bool done = read_folder(move, path, reading_options, error) && run(&h, options, reading_options, error);
    place_findings(move);
    free(h.events);
    free(h.notes);
    free(h.event_part);
    free(h.clefs);
    if (!done) {
        sw_move_free(move);
        return NULL;
    }
    return move;
}
