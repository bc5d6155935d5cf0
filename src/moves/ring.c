/* Lets notes ring.
 *
 * Which notes: those of instruments that go on sounding until they are damped (players/limits.yaml), and
 * those of strings that are plucked, when a rest follows. They get a tie into nothing (\laissezVibrer), and
 * what is shorter than a quarter becomes one as far as the rests of its bar allow. Left alone is what is
 * damped by a word or a staccato, and what a change of pedals or a damping mark ends before the next note.
 * Where every note of a staff that was chosen would ring, one text at the first of them says so. */
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "checks/strokes.h"
#include "moves/choices.h"
#include "moves/linked.h"
#include "moves/opening.h"
#include "stavewright/limits.h"
#include "stavewright/metre.h"

enum { MANY = 4 }; /* notes from which on one text is better than a tie each */

typedef struct plan {
    sw_move *move;
    const sw_techniques *techniques;
    const sw_limits *limits;
    const sw_playing *playing;
    sw_chosen chosen;
    bool *is_chosen; /* by event */
    sw_choices choices;
    uint8_t let_ring;
    uint8_t damped;
    uint8_t ringing; /* the group of both */
} plan;

/* ---- which notes ring -----------------------------------------------------------------------------------
 */

static bool stops_ringing(const sw_reading *reading, uint32_t mark)
{
    sw_slice text = sw_music_slice(reading, mark);
    return sw_slice_ends(text, "-.") || sw_slice_ends(text, "\\staccato") || sw_slice_ends(text, "-!") ||
           sw_slice_ends(text, "\\staccatissimo") || sw_music_mark_class(reading, mark) == SW_MARK_TIE ||
           sw_music_mark_class(reading, mark) == SW_MARK_TREMOLO || sw_slice_ends(text, "\\laissezVibrer");
}

static bool may_ring(const plan *p, uint32_t staff, const sw_stroke *stroke)
{
    const sw_instrument *instrument = p->playing->instruments[staff];
    const sw_limit *limit = sw_limits_of(p->limits, instrument);
    const sw_technique_state *state = &p->playing->states[p->playing->state_of[stroke->event]];
    bool plucked = false;
    for (size_t g = 0; g < sw_techniques_group_count(p->techniques); g++) {
        plucked = plucked || sw_techniques_get(p->techniques, state->now[g])->plucked;
    }
    bool rings = (limit != NULL && limit->rings) ||
                 (instrument != NULL && instrument->family == SW_STRINGS && plucked);
    return rings && state->now[p->ringing] != p->damped && state->now[p->ringing] != p->let_ring &&
           !sw_event_has_mark(p->chosen.reading, &p->chosen.score->events[stroke->event], stops_ringing);
}

static bool is_pedal_change(const sw_reading *reading, uint32_t music)
{
    for (uint32_t m = reading->music[music].first; m != SW_NO_INDEX; m = reading->music[m].next) {
        if (reading->music[m].kind != SW_MUSIC_MARK) {
            continue;
        }
        sw_slice text = sw_music_slice(reading, m);
        if (sw_slice_ends(text, "\\sustainOff") || memmem(text.data, text.length, "harp-pedal", 10) != NULL) {
            return true;
        }
    }
    return false;
}

/* Whether something ends the sound between two moments: a word that damps, or a change of pedals. */
static bool is_ended(const plan *p, uint32_t staff, sw_rational from, sw_rational to)
{
    const sw_score *score = p->chosen.score;
    for (size_t i = 0; i < p->playing->word_count; i++) {
        const sw_technique_word *word = &p->playing->words[i];
        if (word->staff == staff && word->technique == p->damped &&
            sw_rational_compare(word->onset, from) > 0 && sw_rational_compare(word->onset, to) < 0) {
            return true;
        }
    }
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *event = &score->events[i];
        if (sw_rational_compare(event->onset, from) > 0 && sw_rational_compare(event->onset, to) < 0 &&
            is_pedal_change(p->chosen.reading, event->chord)) {
            return true;
        }
    }
    return false;
}

/* The next stroke of the voice; NULL: none. */
static const sw_stroke *next_of(const sw_strokes *strokes, size_t number)
{
    for (size_t i = number + 1; i < strokes->count; i++) {
        if (strokes->items[i].voice == strokes->items[number].voice) {
            return &strokes->items[i];
        }
    }
    return NULL;
}

/* Whether a rest, and not a skip, follows the stroke. */
static bool rest_follows(const plan *p, const sw_stroke *stroke)
{
    const sw_score *score = p->chosen.score;
    for (uint32_t e = stroke->event + 1; e < score->event_count && score->events[e].voice == stroke->voice;
         e++) {
        const sw_event *event = &score->events[e];
        if (sw_rational_compare(event->onset, stroke->end) >= 0) {
            return sw_rational_equal(event->onset, stroke->end) &&
                   (event->kind == SW_EVENT_REST || event->kind == SW_EVENT_FULL_REST);
        }
    }
    return false;
}

/* ---- what is written ------------------------------------------------------------------------------------
 */

/* Up to where the rests behind a stroke carry nothing, no text and no mark, and stand beside it: not in
 * another repeat, into which the note would be tied. */
static sw_rational free_until(const plan *p, const sw_stroke *stroke)
{
    const sw_score *score = p->chosen.score;
    sw_rational until = stroke->end;
    for (uint32_t e = stroke->event + 1; e < score->event_count && score->events[e].voice == stroke->voice;
         e++) {
        const sw_event *event = &score->events[e];
        if (sw_rational_compare(event->onset, stroke->end) < 0) {
            continue; /* of the same chord */
        }
        if (event->kind != SW_EVENT_REST || event->frame != score->events[stroke->event].frame ||
            p->chosen.reading->music[event->chord].first != SW_NO_INDEX) {
            break;
        }
        until = sw_event_end(event);
    }
    return until;
}

/* Where the longer value of a short note ends: a quarter or an eighth behind its beginning, where one note
 * can say so, its bar goes on and the rests are free. What would have to be tied over the middle of the bar
 * stays short: two ties at one note show less than one. */
static sw_rational longer_end(const plan *p, const sw_stroke *stroke)
{
    const sw_score *score = p->chosen.score;
    uint32_t number = sw_score_bar_at(score, stroke->onset);
    sw_rational until = free_until(p, stroke);
    for (int parts = 4; parts <= 8 && number != SW_NO_INDEX; parts *= 2) {
        const sw_bar *bar = &score->bars[number];
        sw_rational end = sw_rational_add(stroke->onset, sw_rational_make(1, parts));
        sw_rational position = sw_rational_add(sw_rational_sub(stroke->onset, bar->start), bar->first);
        sw_rational steps = sw_rational_mul(position, sw_rational_make(2 * parts, 1));
        sw_rational length = sw_rational_make(1, parts);
        if (sw_rational_compare(end, stroke->end) > 0 && sw_rational_compare(end, until) <= 0 &&
            steps.den == 1 &&
            sw_metre_notes((sw_metre){bar->beats, bar->beat_value}, position, length, NULL, 0) == 1 &&
            sw_rational_compare(end, sw_rational_add(bar->start, bar->length)) <= 0) {
            return end;
        }
    }
    return stroke->end;
}

static void lengthen(plan *p, const sw_stroke *stroke)
{
    sw_rational end = longer_end(p, stroke);
    if (sw_rational_compare(end, stroke->end) > 0) {
        sw_choices_add(&p->choices,
                       (sw_change){.kind = SW_CHANGE_END, .event = stroke->event, .moment = end});
    }
}

static void let_each_ring(plan *p, uint32_t staff, const sw_strokes *strokes, const bool *rings)
{
    for (size_t i = 0; i < strokes->count; i++) {
        if (!rings[i]) {
            continue;
        }
        const sw_stroke *stroke = &strokes->items[i];
        char place[SW_SAY];
        char label[32];
        sw_choices_begin(&p->choices, stroke->event, "%s, %s: rings into the rest",
                         sw_say_place(p->chosen.score, stroke->onset, place),
                         sw_staff_label(p->chosen.reading, p->chosen.score, staff, label));
        lengthen(p, stroke);
        sw_choices_add(
            &p->choices,
            (sw_change){.kind = SW_CHANGE_ADD_MARK, .event = stroke->event, .text = "\\laissezVibrer"});
    }
}

static void let_all_ring(plan *p, uint32_t staff, const sw_strokes *strokes, const bool *rings, size_t count)
{
    bool begun = false;
    for (size_t i = 0; i < strokes->count; i++) {
        if (!rings[i]) {
            continue;
        }
        if (!begun) {
            char place[SW_SAY];
            char label[32];
            sw_choices_begin(&p->choices, strokes->items[i].event,
                             "%s, %s: all %zu notes ring, one text says so",
                             sw_say_place(p->chosen.score, strokes->items[i].onset, place),
                             sw_staff_label(p->chosen.reading, p->chosen.score, staff, label), count);
            sw_choices_add(&p->choices, (sw_change){.kind = SW_CHANGE_ADD_MARK,
                                                    .event = strokes->items[i].event,
                                                    .text = "^\\markup \\italic \"l.v. sempre\""});
            begun = true;
        }
        lengthen(p, &strokes->items[i]);
    }
}

static void plan_staff(plan *p, uint32_t staff)
{
    sw_strokes strokes = sw_strokes_of_staff(p->chosen.reading, p->chosen.score, staff);
    bool *rings = sw_alloc_zero(strokes.count + 1, sizeof *rings);
    size_t chosen = 0;
    size_t ringing = 0;
    for (size_t i = 0; i < strokes.count; i++) {
        const sw_stroke *stroke = &strokes.items[i];
        if (!p->is_chosen[stroke->event]) {
            continue;
        }
        chosen++;
        const sw_stroke *next = next_of(&strokes, i);
        sw_rational until = next == NULL ? p->chosen.score->length : next->onset;
        rings[i] = (p->chosen.score->events[stroke->event].flags & SW_EVENT_GRACE) == 0 &&
                   may_ring(p, staff, stroke) && rest_follows(p, stroke) &&
                   !is_ended(p, staff, stroke->onset, until);
        ringing += rings[i];
    }
    if (ringing > 0 && sw_staff_is_combined(p->chosen.reading, p->chosen.score, staff)) {
        size_t first = 0;
        while (!rings[first]) {
            first++;
        }
        sw_move_tell(p->move, "ring", p->chosen.reading, &p->chosen.score->events[strokes.items[first].event],
                     "two parts are combined on this staff, each rings in its own source: left alone");
    } else if (ringing == chosen && ringing >= MANY) {
        let_all_ring(p, staff, &strokes, rings, ringing);
    } else {
        let_each_ring(p, staff, &strokes, rings);
    }
    free(rings);
    free(strokes.items);
}

static bool run(sw_move *move, const sw_ring_options *options, const sw_read_options *reading_options,
                char **error)
{
    sw_opening o;
    if (!sw_opening_find(move, options->film, &options->places, &o, error)) {
        return false;
    }
    plan p = {.move = move,
              .techniques = o.techniques,
              .limits = sw_film_limits(o.figures.film),
              .chosen = o.chosen,
              .playing = o.playing,
              .is_chosen = sw_chosen_map(&o.chosen),
              .let_ring = sw_techniques_find(o.techniques, "let-ring"),
              .damped = sw_techniques_find(o.techniques, "damped"),
              .choices = {.move = "ring"}};
    p.ringing = sw_techniques_get(o.techniques, p.let_ring)->group;
    for (uint32_t staff = 0; staff < o.chosen.score->staff_count; staff++) {
        plan_staff(&p, staff);
    }
    sw_edit_request request = sw_chosen_request(move, &o.chosen, options->elsewhere, reading_options);
    sw_choices_make(move, &p.choices, &request);
    sw_choices_free(&p.choices);
    free(p.is_chosen);
    sw_opening_free(&o);
    return true;
}

sw_move *sw_move_ring(const char *path, const sw_ring_options *options,
                      const sw_read_options *reading_options, char **error)
{
    sw_move *move = sw_move_open(path, reading_options, error);
    return sw_move_close(move, move != NULL && run(move, options, reading_options, error));
}
