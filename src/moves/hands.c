/* The transformation `hands`: one staff becomes two, a hand each. */
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "moves/hands_plan.h"
#include "moves/linked.h"
#include "moves/places.h"
#include "stavewright/move.h"

/* ---- notes ---- */

static bool is_tie(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_TIE;
}

static bool is_glissando(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_GLISSANDO;
}

/* Whether an event continues a tied one: the last note of this pitch in the voice has a tie and ends here. */
static bool is_tied(const sw_hands *h, size_t note)
{
    const sw_event *event = &h->score->events[h->events[note]];
    for (size_t i = note; i-- > 0 && note - i < 64;) {
        const sw_event *before = &h->score->events[h->events[i]];
        if (before->voice != event->voice) {
            return false;
        }
        if (sw_pitch_equal(before->pitch, event->pitch) &&
            sw_rational_equal(sw_event_end(before), event->onset)) {
            return sw_event_has_mark(h->reading, before, is_tie);
        }
    }
    return false;
}

/* The tremolo (\repeat tremolo) that an event stands in, or SW_NO_INDEX. */
static uint32_t tremolo_of(const sw_hands *h, const sw_event *event)
{
    for (uint32_t f = event->frame; f != SW_NO_INDEX; f = h->score->frames[f].parent) {
        const sw_music *m = &h->reading->music[h->score->frames[f].music];
        if (m->kind == SW_MUSIC_REPEAT && strcmp(sw_reading_name(h->reading, m->name), "tremolo") == 0) {
            return f;
        }
    }
    return SW_NO_INDEX;
}

/* Whether a glissando or a tremolo leads from an event to the next of its voice. */
static bool is_bound(const sw_hands *h, uint32_t event)
{
    const sw_event *e = &h->score->events[event];
    if (sw_event_has_mark(h->reading, e, is_glissando)) {
        return true;
    }
    uint32_t tremolo = tremolo_of(h, e);
    for (uint32_t i = event + 1; tremolo != SW_NO_INDEX && i < h->score->event_count; i++) {
        const sw_event *next = &h->score->events[i];
        if (next->voice != e->voice || tremolo_of(h, next) != tremolo) {
            return false;
        }
        if (sw_rational_compare(next->onset, e->onset) > 0) {
            return true;
        }
    }
    return false;
}

/* The pitches that the hand touches: an octave-transposing instrument is played as it is written. */
static void collect_notes(sw_hands *h)
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
            .bound = is_bound(h, i),
            .rolled = sw_event_has_mark(h->reading, event, sw_hands_is_arpeggio),
            .tied = is_tied(h, h->count),
        };
        h->count++;
    }
    sw_hands_find_groups(h);
}

/* ---- the whole ---- */

/* A staff that stands in a brace already becomes two staves of that brace. */
static bool is_in_a_brace(const sw_hands *h)
{
    uint32_t group = h->score->staves[h->staff].group;
    const char *type = group == SW_NO_INDEX ? "" : sw_reading_name(h->reading, h->score->groups[group].type);
    return strcmp(type, "PianoStaff") == 0 || strcmp(type, "GrandStaff") == 0;
}

/* A brace of two staves gets a third: worth saying, as the staff may be one hand's already. */
static void note_other_staves(sw_hands *h)
{
    for (uint32_t i = 0; i < h->score->staff_count && is_in_a_brace(h); i++) {
        if (i != h->staff && h->score->staves[i].group == h->score->staves[h->staff].group) {
            char label[32];
            char other[32];
            sw_buffer_format(&h->move->notes,
                             "note: \"%s\" shares its brace with \"%s\" and may be one hand's already; the "
                             "brace gets one staff more\n",
                             sw_staff_label(h->reading, h->score, h->staff, label),
                             sw_staff_label(h->reading, h->score, i, other));
            return;
        }
    }
}

/* Whether both hands have something to play; if not, there is nothing to split. */
static bool is_shared(sw_hands *h, bool one_voice)
{
    size_t left = 0;
    for (size_t i = 0; i < h->count; i++) {
        left += h->event_part[h->events[i]];
    }
    if (left > 0 && left < h->count) {
        return true;
    }
    char label[32];
    const char *name = sw_staff_label(h->reading, h->score, h->staff, label);
    if (one_voice) {
        sw_buffer_format(
            &h->move->notes,
            "note: in one voice all %zu notes of \"%s\" stand on the %s staff; nothing is split\n", h->count,
            name, left == 0 ? "upper" : "lower");
    } else {
        sw_buffer_format(&h->move->notes,
                         "note: all %zu notes of \"%s\" lie well for the %s hand; nothing is split\n",
                         h->count, name, left == 0 ? "right" : "left");
    }
    return false;
}

/* The file has no score of its own: names those that include it. */
static char *say_no_score(const sw_move *move)
{
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s has no score of its own", move->mains[0]->files[0].text->path);
    for (size_t i = 1; i < move->main_count; i++) {
        sw_buffer_format(&text, "%s %s", i == 1 ? "; name a file that includes it:" : ",",
                         move->mains[i]->files[0].text->path);
    }
    return text.data;
}

static void explain_rolls(sw_hands *h, const sw_hand_split *split)
{
    for (size_t i = 0; i < h->count; i++) {
        bool again = false;
        for (size_t k = 0; k < i && split->rolls[i] && !again; k++) {
            again = h->notes[k].grace == h->notes[i].grace &&
                    sw_rational_equal(h->notes[k].onset, h->notes[i].onset);
        }
        if (split->rolls[i] && !again) {
            char place[SW_SAY];
            sw_buffer_format(&h->move->why, "%s: rolled, as it is too wide for the hands at once\n",
                             sw_say_place(h->score, h->notes[i].onset, place));
        }
    }
}

/* Whether a note of the left hand lies above one of the right that sounds when it begins. */
static bool lies_over(const sw_hands *h, const sw_hand_split *split, size_t left)
{
    for (size_t i = 0; i < h->count && split->hands[left] == SW_LEFT_HAND; i++) {
        const sw_hand_note *note = &h->notes[i];
        if (split->hands[i] == SW_RIGHT_HAND && note->semitone < h->notes[left].semitone &&
            sw_rational_compare(note->onset, h->notes[left].onset) <= 0 &&
            sw_rational_compare(note->end, h->notes[left].onset) > 0) {
            return true;
        }
    }
    return false;
}

static void explain_crossing(sw_hands *h, const sw_hand_split *split)
{
    bool over = false;
    for (size_t i = 0; i < h->count && h->limits.may_cross; i++) {
        if (split->hands[i] != SW_LEFT_HAND) {
            continue;
        }
        bool now = lies_over(h, split, i);
        if (now && !over) {
            char place[SW_SAY];
            sw_buffer_format(&h->move->why, "%s: the left hand goes over the right\n",
                             sw_say_place(h->score, h->notes[i].onset, place));
        }
        over = now;
    }
}

static void explain(sw_hands *h, const sw_hand_split *split, size_t problems)
{
    size_t left = 0;
    size_t passes = 0;
    for (size_t i = 0; i < h->count; i++) {
        left += split->hands[i] == SW_LEFT_HAND;
        for (size_t k = i; k-- > 0;) { /* the note before in this voice */
            if (h->notes[k].voice == h->notes[i].voice) {
                passes += split->hands[k] != split->hands[i];
                break;
            }
        }
    }
    char label[32];
    char span[SW_SAY];
    sw_buffer_format(&h->move->why, "%s: %zu notes for the right hand, %zu for the left; ",
                     sw_staff_label(h->reading, h->score, h->staff, label), h->count - left, left);
    sw_buffer_format(
        &h->move->why, "at most %d %s and %s a hand%s; lines change hands %zu time%s; ", h->limits.fingers,
        h->mallets ? h->limits.fingers == 1 ? "mallet" : "mallets" : "fingers",
        sw_say_span(h->limits.span, span), h->limits.reach_count > 0 ? " at the bottom, more higher up" : "",
        passes, passes == 1 ? "" : "s");
    sw_buffer_format(&h->move->why,
                     "%zu place%s not playable or too quick; %s way costs less (lines that change hands, "
                     "fingers placed anew, stretches, quick moves, crossed hands, register)\n",
                     problems, problems == 1 ? " is" : "s are",
                     split->exact ? "no other" : "perhaps another");
    explain_rolls(h, split);
    explain_crossing(h, split);
    for (size_t i = 0; i < h->clef_count; i++) {
        char place[SW_SAY];
        sw_buffer_format(&h->move->why, "%s: %s clef for the %s hand, for fewer ledger lines\n",
                         sw_say_place(h->score, h->clefs[i].onset, place), h->clefs[i].clef,
                         h->clefs[i].part == 0 ? "right" : "left");
    }
}

/* A chord that is written once and heard several times is rolled each time when it has to be once. */
static void settle_rolls(sw_hands *h, const sw_hand_split *split)
{
    const sw_score *score = h->score;
    bool *rolled = sw_alloc_zero(h->reading->music_count + 1, sizeof *rolled);
    for (size_t i = 0; i < h->count; i++) {
        uint32_t chord = score->events[h->events[i]].chord;
        rolled[chord] = rolled[chord] || split->rolls[i];
    }
    h->event_rolls = sw_alloc_zero(score->event_count + 1, sizeof *h->event_rolls);
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        h->event_rolls[i] = score->voices[event->voice].staff == h->staff && rolled[event->chord];
    }
    free(rolled);
}

/* Writes the staves of the hands, and proves that they sound as before. */
static bool divide(sw_hands *h, const sw_hands_options *options, const sw_read_options *reading_options,
                   char **error)
{
    uint8_t *one_part = sw_alloc_zero(h->score->event_count + 1, 1);
    sw_division division = {
        .reading = h->reading,
        .score = h->score,
        .staff = h->staff,
        .parts = 2,
        .suffixes = {"Right", "Left"},
        .group = is_in_a_brace(h) ? NULL : "PianoStaff",
        .braced = true,
        .event_part = h->event_part,
        .text_homes = h->text_homes,
        .event_rolls = options->roll ? h->event_rolls : NULL,
        .from = h->from,
        .to = h->to,
        .clefs = h->clefs,
        .clef_count = h->clef_count,
    };
    if (options->change_staff) {
        division.suffixes[0] = ""; /* the music keeps its name, the other staff gets skips */
        division.event_part = one_part;
        division.change_part = h->event_part;
        division.change_id = sw_hands_change_id(h);
    }
    sw_move *move = h->move;
    bool done =
        sw_divide(&division, move->mains, move->main_count, &move->patch, &move->notes, error) &&
        sw_patch_finish(&move->patch, error) &&
        sw_prove_division(&division, move->mains, move->main_count, &move->patch, reading_options, error);
    free(one_part);
    return done;
}

static bool run(sw_hands *h, const sw_hands_options *options, const sw_read_options *reading_options,
                char **error)
{
    uint32_t score_index;
    if (h->reading->score_count == 0) {
        *error = say_no_score(h->move);
        return false;
    }
    if (!sw_staff_find(h->reading, options->staff, &score_index, &h->staff, error)) {
        return false;
    }
    h->score = &h->reading->scores[score_index];
    if (!sw_hands_find_limits(h, options, error)) {
        return false;
    }
    if (!sw_bar_range_moments(h->score, &options->bars, &h->from, &h->to)) {
        *error = sw_places_say_no_bars(h->score, &options->bars);
        return false;
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
    settle_rolls(h, &split);
    sw_division_settle(h->reading, h->score, h->staff, h->event_part);
    if (options->change_staff) {
        sw_hands_settle_chords(h);
        sw_division_settle(h->reading, h->score, h->staff, h->event_part);
    }
    if (!is_shared(h, options->change_staff)) {
        sw_arena_free(arena);
        return true;
    }
    if (!sw_hands_find_texts(h, options->film, error)) {
        sw_arena_free(arena);
        return false;
    }
    note_other_staves(h);
    size_t before = h->move->findings.count;
    for (size_t i = 0; i < split.problem_count; i++) {
        sw_hands_report(h, &split.problems[i]);
    }
    sw_hands_choose_clefs(h);
    explain(h, &split, h->move->findings.count - before);
    sw_arena_free(arena);
    return divide(h, options, reading_options, error);
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
    sw_move *move = sw_move_open(path, reading_options, error);
    if (move == NULL) {
        return NULL;
    }
    sw_hands h = {.move = move, .reading = move->mains[0]};
    bool done = run(&h, options, reading_options, error);
    place_findings(move);
    free(h.events);
    free(h.notes);
    free(h.event_part);
    free(h.event_rolls);
    free(h.text_homes);
    free(h.clefs);
    return sw_move_close(move, done);
}
