/* Too little time to change from one way of playing to another.
 *
 * The hand is free when the last note in the old way has ended; after a plucked one as soon as it has begun,
 * for the stroke is over then. Time is real time: the tempo map turns positions into seconds. */
#include <stdlib.h>

#include "checks/chair_findings.h"
#include "checks/changeovers.h"
#include "checks/rules.h"
#include "checks/say.h"
#include "players/chair_notes.h"

/* One staff of the score that is looked at. */
typedef struct scene {
    sw_check *check;
    const sw_score *score;
    const sw_instrument *instrument;
    uint32_t staff;
} scene;

/* Hardly possible, or only less than the player would like: an up-bow has brought the hand near. */
static sw_severity severity_of(const scene *s, const sw_changeovers *list, const sw_changeover *c)
{
    const sw_event *before = &s->score->events[list->strokes.items[c->before].event];
    bool hardly = c->given < 0.6 * c->change->seconds;
    return hardly && !sw_event_has_mark(s->check->reading, before, sw_mark_is_up_bow) ? SW_WARNING : SW_NOTE;
}

static void report(const scene *s, const sw_changeovers *list, const sw_changeover *c)
{
    char words[3][SW_SAY];
    char label[32];
    sw_buffer text = {0};
    const sw_event *event = &s->score->events[list->strokes.items[c->stroke].event];
    sw_buffer_format(&text, "%s, %s: %s to %s, %s for it (wants %s)",
                     sw_say_place(s->score, event->onset, words[0]),
                     sw_staff_label(s->check->reading, s->score, s->staff, label),
                     sw_techniques_get(s->check->techniques, c->from)->id,
                     sw_techniques_get(s->check->techniques, c->to)->id, sw_say_seconds(c->given, words[1]),
                     sw_say_seconds(c->change->seconds, words[2]));
    sw_courtesy_value value;
    bool fixable = sw_changeover_value(s->score, &list->strokes, c, &value);
    if (fixable) {
        sw_buffer_format(&text, "; take %s off the note before", value.name);
    } else {
        sw_buffer_string(&text, s->instrument->family == SW_STRINGS
                                    ? "; write a rest before it, or let one half change earlier"
                                    : "; write a rest before it, or give one of both to another player");
    }
    const sw_music *m = sw_event_written(s->check->reading, event);
    sw_findings_add(s->check->findings, severity_of(s, list, c), "prep-time", m->file, m->start, m->end, "%s",
                    sw_buffer_text(&text));
    if (fixable) {
        sw_fix_by_courtesy(s->check, (uint32_t)(s->score - s->check->reading->scores));
    }
    sw_buffer_free(&text);
}

/* How much less than the seconds wanted is let pass. */
static const sw_rule_option options[] = {
    {"margin", 0, 0, 1, "the share of the time wanted that may be missing: 0.2 lets 0.8 of 1 s pass"}, {0}};

static void check_staff(const scene *s, const sw_playing *playing, sw_seated_notes who)
{
    double share = 1 - sw_check_option(s->check, &sw_rule_prep_time, "margin");
    sw_changeovers list =
        sw_changeovers_of_staff(s->check->techniques, s->check->reading, s->score, playing, s->staff, who);
    for (size_t i = 0; i < list.count; i++) {
        if (list.items[i].given < share * list.items[i].change->seconds) {
            report(s, &list, &list.items[i]);
        }
    }
    sw_changeovers_free(&list);
}

/* Other instruments of one player: told by the rule chairs, or, where that is not run, here. */
static void check_instruments(sw_check *check, size_t number)
{
    const sw_score *score = &check->reading->scores[number];
    const sw_seating *seating = sw_check_seating(check, number);
    const sw_seat_range *ranges = sw_check_seat_ranges(check, number);
    sw_chair_scene players = {check, score, seating, ranges, (uint32_t)number, sw_rule_prep_time.name};
    sw_find_change_overs(&players);
}

static void check_score(sw_check *check, size_t number)
{
    if (!check->chairs) {
        check_instruments(check, number);
    }
    const sw_score *score = &check->reading->scores[number];
    const sw_playing *playing = sw_check_playing(check, number);
    sw_seated_notes who = {sw_check_seating(check, number), sw_check_seat_ranges(check, number)};
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        scene s = {check, score, playing->instruments[staff], staff};
        if (s.instrument != NULL && sw_playing_changes(playing, score, staff)) {
            check_staff(&s, playing, who);
        }
    }
}

static void run(sw_check *check)
{
    for (size_t i = 0; i < check->reading->score_count; i++) {
        if (!check->reading->scores[i].in_markup) {
            check_score(check, i);
        }
    }
}

const sw_rule sw_rule_prep_time = {
    .name = "prep-time",
    .summary = "too little time to change between bow and fingers, mute and open, sticks and hands",
    .severity = SW_WARNING,
    .explain =
        "Between the last note in one way of playing and the first one in another, hands have "
        "something to do: lay\n"
        "the bow aside, put the mute on, take other sticks. This rule follows the texts of each staff "
        "(pizz., arco,\n"
        "con sord., senza sord., +, soft sticks ... in English, Italian, German and French) and "
        "compares the seconds\n"
        "that are left, at the tempo there, with those that the change wants. After a plucked note "
        "the hand is free\n"
        "at once; after any other when the note has ended.\n\n"
        "The figures: arco to pizzicato 0.5 s, back 1 s (common practice, no source); strings' mutes "
        "on 4.8 s (two\n"
        "bars of 4/4 at crotchet = 100, Berlioz, Treatise on Instrumentation), off 3 s; brass mutes "
        "in 4 s, out 3 s,\n"
        "tuba and horn 5 s in (common practice, no source); sticks 2.5 s. They are defaults for "
        "professionals\n"
        "without hurry: less than 60 percent of them is a warning, more a note. Ask the players. Where a "
        "player takes\n"
        "another instrument (\"muta in Flicorno\"), the rule chairs tells whether there is time for that "
        "(this one, where\n"
        "chairs is not run), and the mute of the old one counts no more.\n\n"
        "To mend: take a value off the note before (the message says which, if half of the note can "
        "stay), write a\n"
        "rest, let one half of a section change earlier than the other, or give one of both to "
        "another player.\n",
    .run = run,
    .options = options,
};
