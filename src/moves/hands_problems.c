/* What no hands can play, with the nearest voicing that they can. */
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "moves/hands_plan.h"
#include "players/hand_voicing.h"

bool sw_hands_is_arpeggio(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_ARPEGGIO;
}

/* Whether all notes of the moment are rolled: the hands move while they play. */
static bool is_rolled(const sw_hands *h, const sw_hand_problem *problem)
{
    for (size_t i = 0; i < problem->id_count; i++) {
        if (!sw_event_has_mark(h->reading, &h->score->events[problem->ids[i]], sw_hands_is_arpeggio)) {
            return false;
        }
    }
    return problem->id_count > 0;
}

/* A span is no problem in a rolled chord: check says nothing of it either. */
static bool is_solved_by_rolling(const sw_hand_problem *problem)
{
    return problem->reason == SW_HANDS_WIDE || problem->reason == SW_HANDS_MANY_OR_WIDE;
}

/* ---- the nearest voicing ---- */

static bool same_key(const sw_hand_limits *limits, const sw_voiced_note *a, const sw_voiced_note *b)
{
    return a->semitone == b->semitone && (!limits->by_string || a->step == b->step);
}

/* The keys of a problem, each once, from low to high; `events` gets the event of each. Strings that ring are
 * left out. */
static size_t collect_keys(const sw_hands *h, const sw_hand_problem *problem, sw_voiced_note *notes,
                           const sw_event **events)
{
    size_t count = 0;
    for (size_t i = 0; i < problem->id_count; i++) {
        const sw_event *event = &h->score->events[problem->ids[i]];
        bool sounds = sw_rational_compare(event->onset, problem->onset) < 0;
        if (sounds && h->limits.holds == SW_HOLD_SOFT) {
            continue;
        }
        sw_voiced_note note = {.step = sw_pitch_staff_steps(event->pitch),
                               .semitone = sw_pitch_midi(event->pitch),
                               .fixed = sounds};
        if (count > 0 && same_key(&h->limits, &notes[count - 1], &note)) {
            notes[count - 1].fixed = notes[count - 1].fixed || sounds;
            continue;
        }
        if (count == SW_VOICING_NOTES) {
            return 0;
        }
        events[count] = event;
        notes[count++] = note;
    }
    return count;
}

/* "C4 an octave down", "E5 left out": what becomes of a note. */
static void say_change(const sw_voiced_note *note, sw_pitch pitch, sw_buffer *what)
{
    static const char *const ways[] = {"two octaves down", "an octave down", "", "an octave up",
                                       "two octaves up"};
    char text[SW_SAY];
    sw_buffer_format(what, "%s %s", sw_say_pitch(pitch, text),
                     note->left_out ? "left out" : ways[note->octaves + 2]);
}

/* A note in its place of the new voicing. */
typedef struct placed {
    int step;
    int semitone;
    sw_pitch pitch;
} placed;

static int compare_placed(const void *a, const void *b)
{
    const placed *x = a;
    const placed *y = b;
    return x->semitone != y->semitone ? x->semitone - y->semitone : x->step - y->step;
}

/* Adds "; nearest that they can: C2 C3 | C6 (C4 an octave down)". */
static void say_voicing(const sw_hands *h, const sw_hand_problem *problem, sw_buffer *what)
{
    sw_voiced_note notes[SW_VOICING_NOTES];
    const sw_event *events[SW_VOICING_NOTES];
    size_t count = collect_keys(h, problem, notes, events);
    if (sw_hand_voicing(notes, count, &h->limits, h->compass_low, h->compass_high) <= 0) {
        return;
    }
    placed order[SW_VOICING_NOTES];
    size_t kept = 0;
    for (size_t i = 0; i < count; i++) {
        if (!notes[i].left_out) {
            sw_pitch pitch = events[i]->pitch;
            pitch.octave = (int8_t)(pitch.octave + notes[i].octaves);
            order[kept++] = (placed){sw_pitch_staff_steps(pitch), sw_pitch_midi(pitch), pitch};
        }
    }
    qsort(order, kept, sizeof *order, compare_placed);
    size_t split = (size_t)sw_hand_voicing_split(notes, count, &h->limits);
    sw_buffer_string(what, "; nearest that can be played: ");
    for (size_t i = 0; i < kept; i++) {
        char text[SW_SAY];
        sw_buffer_format(what, "%s%s",
                         i == 0       ? ""
                         : i == split ? " | "
                                      : " ",
                         sw_say_pitch(order[i].pitch, text));
    }
    const char *before = " (";
    for (size_t i = 0; i < count; i++) {
        if (notes[i].left_out || notes[i].octaves != 0) {
            sw_buffer_string(what, before);
            say_change(&notes[i], events[i]->pitch, what);
            before = ", ";
        }
    }
    sw_buffer_char(what, ')');
}

/* ---- findings ---- */

/* The widest that a hand spans in any register. */
static int widest(const sw_hands *h)
{
    size_t count = h->limits.reach_count;
    return count > 0 ? h->limits.reaches[count - 1].span : h->limits.span;
}

static void say_problem(const sw_hands *h, const sw_hand_problem *problem, bool rolled, sw_buffer *what)
{
    char a[SW_SAY];
    char b[SW_SAY];
    const char *hand = problem->hand == SW_LEFT_HAND ? "left" : "right";
    int keys = problem->keys[0] + problem->keys[1];
    int room = 2 * h->limits.fingers;
    sw_hand_reason reason = problem->reason == SW_HANDS_MANY_AND_WIDE ? SW_HANDS_MANY : problem->reason;
    switch (reason) {
    case SW_HANDS_MANY:
        sw_buffer_format(what,
                         "%d notes %s: two hands have %d %s; leave out %d%s or share with another player",
                         keys, rolled ? "rolled" : "at once", room, h->mallets ? "mallets" : "fingers",
                         keys - room, rolled || h->mallets ? "" : ", roll it");
        break;
    case SW_HANDS_MANY_OR_WIDE:
        sw_buffer_format(what,
                         "%d notes at once: however they are shared, a hand has more than %d %s or spans too "
                         "much; %sclose it up or thin it out",
                         keys, h->limits.fingers, h->mallets ? "mallets" : "fingers",
                         h->mallets ? "" : "roll it, ");
        break;
    case SW_HANDS_WIDE:
    case SW_HANDS_MANY_AND_WIDE:
        sw_buffer_format(what,
                         "%d notes at once: at best one hand spans %s, and %s is the most%s; %sclose "
                         "it up or thin it out",
                         keys, sw_say_span(problem->least_steps, a), sw_say_span(widest(h), b),
                         h->limits.reach_count > 0 ? " at the top" : "", h->mallets ? "" : "roll it, ");
        break;
    case SW_HANDS_HELD:
        sw_buffer_string(
            what, "playable alone, but not with what is held from before or into what follows; shorten that");
        break;
    case SW_HANDS_QUICK:
        sw_buffer_format(what,
                         "the %s hand has %.2f seconds for a move of %d steps and needs %.2f; give it a rest "
                         "before",
                         hand, problem->available, problem->travel_steps, problem->needed);
        break;
    case SW_HANDS_LOW:
        sw_buffer_format(what, "the %s hand goes below the lowest string that it reaches", hand);
        break;
    }
}

/* Whether the hands hold a note that a pedal could hold as well. */
static bool pedal_would_help(const sw_hands *h, const sw_hand_problem *problem)
{
    bool held = problem->reason == SW_HANDS_HELD;
    for (size_t i = 0; i < problem->id_count; i++) {
        sw_rational onset = h->score->events[problem->ids[i]].onset;
        held = held || sw_rational_compare(onset, problem->onset) < 0;
    }
    return held && h->can_pedal && h->limits.holds == SW_HOLD_FIRM && problem->reason != SW_HANDS_LOW &&
           problem->reason != SW_HANDS_QUICK;
}

void sw_hands_report(sw_hands *h, const sw_hand_problem *problem)
{
    char place[SW_SAY];
    char label[32];
    bool rolled = is_rolled(h, problem);
    if (rolled && is_solved_by_rolling(problem)) {
        return;
    }
    bool many = problem->reason == SW_HANDS_MANY || problem->reason == SW_HANDS_MANY_AND_WIDE;
    bool grave = problem->reason != SW_HANDS_QUICK && !(rolled && many);
    sw_buffer what = {0};
    say_problem(h, problem, rolled, &what);
    if (problem->reason <= SW_HANDS_MANY_OR_WIDE) {
        say_voicing(h, problem, &what);
    }
    if (pedal_would_help(h, problem)) {
        sw_buffer_string(&what, "; --pedal leaves to the pedal what is held");
    }
    const sw_event *event = problem->id_count > 0 ? &h->score->events[problem->ids[0]] : NULL;
    const sw_music *music = event == NULL ? NULL : &h->reading->music[event->chord];
    sw_findings_add(&h->move->findings, grave ? SW_ERROR : SW_WARNING, "hands",
                    music == NULL ? 0 : music->file, music == NULL ? 0 : music->start,
                    music == NULL ? 0 : music->end, "%s, %s: %s",
                    sw_say_place(h->score, problem->onset, place),
                    sw_staff_label(h->reading, h->score, h->staff, label), sw_buffer_text(&what));
    sw_buffer_free(&what);
}
