/* Makes room before a change: the last note in the old way of playing ends a little earlier.
 *
 * The places are those of the check prep-time (checks/changeovers.h). Of each note the smallest value is
 * taken that gives the seconds, at most half of the note. Players of a family that hold the same note let go
 * together. What somebody else must release with stays as it is and is told: a note held over a bar line up
 * to there, a fermata, the melody. A long bowed note that stays before a pizzicato gets an up-bow, which ends
 * with the hand near the string. */
#include <stdlib.h>
#include <string.h>

#include "checks/changeovers.h"
#include "checks/say.h"
#include "moves/choices.h"
#include "moves/linked.h"
#include "moves/opening.h"

/* A note that is to end earlier. */
typedef struct letting_go {
    uint32_t staff;
    uint32_t stroke;                 /* of that staff */
    const sw_changeover *changeover; /* NULL: it only goes along with another player */
    sw_rational length;              /* what is taken off */
    const char *name;
} letting_go;

typedef struct plan {
    sw_move *move;
    const sw_courtesy_options *options;
    const sw_techniques *techniques;
    const sw_playing *playing;
    sw_seated_notes who;
    sw_chosen chosen;
    bool *is_chosen; /* by event */
    sw_changeovers *staves;
    letting_go *items;
    size_t count;
    size_t capacity;
    sw_choices choices;
} plan;

/* ---- what notes are -------------------------------------------------------------------------------------
 */

static const sw_stroke *stroke_at(const plan *p, uint32_t staff, uint32_t stroke)
{
    return &p->staves[staff].strokes.items[stroke];
}

static const sw_event *event_of(const plan *p, const sw_stroke *stroke)
{
    return &p->chosen.score->events[stroke->event];
}

static bool is_slur_end(const sw_reading *reading, uint32_t mark)
{
    sw_mark_class class = sw_music_mark_class(reading, mark);
    return class == SW_MARK_SLUR_END || class == SW_MARK_PHRASE_END;
}

/* A fermata on any stroke of the score that sounds when this one ends holds all players. */
static bool is_held(const plan *p, const sw_stroke *stroke)
{
    for (uint32_t staff = 0; staff < p->chosen.score->staff_count; staff++) {
        const sw_strokes *strokes = &p->staves[staff].strokes;
        for (size_t i = 0; i < strokes->count; i++) {
            const sw_stroke *other = &strokes->items[i];
            if (sw_rational_compare(other->onset, stroke->end) < 0 &&
                sw_rational_compare(other->end, stroke->end) >= 0 &&
                sw_event_has_mark(p->chosen.reading, event_of(p, other), sw_mark_is_fermata)) {
                return true;
            }
        }
    }
    return false;
}

/* Whether nobody sounds higher when the stroke begins, and it ends a slur that came to it from another note.
 */
static bool is_melody(const plan *p, uint32_t staff, uint32_t number)
{
    const sw_stroke *stroke = stroke_at(p, staff, number);
    const sw_event *event = event_of(p, stroke);
    if (!sw_event_has_mark(p->chosen.reading, event, is_slur_end)) {
        return false;
    }
    int own = sw_pitch_semitones(event->pitch);
    for (uint32_t s = 0; s < p->chosen.score->staff_count; s++) {
        const sw_strokes *strokes = &p->staves[s].strokes;
        for (size_t i = 0; i < strokes->count && s != staff; i++) {
            const sw_stroke *other = &strokes->items[i];
            if (sw_rational_compare(other->onset, stroke->onset) <= 0 &&
                sw_rational_compare(other->end, stroke->onset) > 0 &&
                sw_pitch_semitones(event_of(p, other)->pitch) > own) {
                return false;
            }
        }
    }
    return true;
}

static bool is_combined(const plan *p, uint32_t staff)
{
    return sw_staff_is_combined(p->chosen.reading, p->chosen.score, staff);
}

/* Whether a tied note would end on or before a bar line over which it is held. */
static bool ends_before_bar_line(const plan *p, uint32_t staff, uint32_t number, sw_rational length)
{
    const sw_strokes *strokes = &p->staves[staff].strokes;
    const sw_stroke *stroke = &strokes->items[number];
    const sw_score *score = p->chosen.score;
    uint32_t bar = sw_score_bar_at(score, stroke->onset);
    bool tied_over = stroke->tied && bar != SW_NO_INDEX &&
                     sw_rational_compare(strokes->items[sw_stroke_begin(strokes, number)].onset,
                                         score->bars[bar].start) < 0;
    sw_rational end = sw_rational_sub(stroke->end, length);
    return tied_over && sw_rational_compare(end, score->bars[bar].start) <= 0;
}

/* ---- choosing -------------------------------------------------------------------------------------------
 */

static bool is_listed(const plan *p, uint32_t event)
{
    const sw_music *m = sw_event_written(p->chosen.reading, &p->chosen.score->events[event]);
    bool listed = p->options->at == NULL;
    for (size_t i = 0; i < p->options->at_count && !listed; i++) {
        listed = p->options->at[i].start == m->start &&
                 sw_same_path(p->options->at[i].path, p->chosen.reading->files[m->file].text->path);
    }
    return listed;
}

static bool is_wanted(const plan *p, const sw_strokes *strokes, const sw_changeover *c)
{
    const char *group =
        sw_techniques_group(p->techniques, sw_techniques_get(p->techniques, c->to)->group)->id;
    return (p->options->only == NULL || strcmp(p->options->only, group) == 0) &&
           is_listed(p, strokes->items[c->stroke].event) &&
           (p->is_chosen[strokes->items[c->stroke].event] || p->is_chosen[strokes->items[c->before].event]);
}

static void say_change(const plan *p, uint32_t staff, const sw_changeover *c, sw_buffer *text)
{
    char place[SW_SAY];
    char seconds[2][SW_SAY];
    char label[32];
    const sw_stroke *stroke = stroke_at(p, staff, c->stroke);
    sw_buffer_format(
        text, "%s, %s, %s to %s (%s, wants %s)", sw_say_place(p->chosen.score, stroke->onset, place),
        sw_staff_label(p->chosen.reading, p->chosen.score, staff, label),
        sw_techniques_get(p->techniques, c->from)->id, sw_techniques_get(p->techniques, c->to)->id,
        sw_say_seconds(c->given, seconds[0]), sw_say_seconds(c->change->seconds, seconds[1]));
}

/* Tells that a note stays, or gives it an up-bow. */
static void leave(plan *p, uint32_t staff, const sw_changeover *c, const char *reason)
{
    const sw_stroke *before = stroke_at(p, staff, c->before);
    const sw_event *event = event_of(p, before);
    sw_buffer text = {0};
    say_change(p, staff, c, &text);
    bool to_pluck = c->waits && sw_techniques_get(p->techniques, c->to)->plucked &&
                    strcmp(sw_techniques_get(p->techniques, c->from)->id, "arco") == 0;
    bool is_long =
        sw_rational_compare(sw_rational_sub(before->end, before->onset), sw_rational_make(1, 2)) >= 0;
    to_pluck = to_pluck && !is_combined(p, staff);
    if (to_pluck && is_long && sw_event_has_mark(p->chosen.reading, event, sw_mark_is_up_bow)) {
        sw_buffer_free(&text); /* has it already */
        return;
    }
    if (to_pluck && is_long) {
        sw_choices_begin(&p->choices, before->event, "%s: %s, so it gets an up-bow", sw_buffer_text(&text),
                         reason);
        sw_choices_add(&p->choices,
                       (sw_change){.kind = SW_CHANGE_ADD_MARK, .event = before->event, .text = "\\upbow"});
    } else {
        sw_buffer_format(&text, ": left alone: %s", reason);
        sw_move_tell(p->move, "courtesy", p->chosen.reading, event, sw_buffer_text(&text));
    }
    sw_buffer_free(&text);
}

/* The value to take off: the one that was asked for, or the smallest that gives the time. */
static bool find_value(const plan *p, uint32_t staff, const sw_changeover *c, sw_courtesy_value *value,
                       bool *done)
{
    const sw_strokes *strokes = &p->staves[staff].strokes;
    *done = false;
    if (sw_rational_is_zero(p->options->value)) {
        return sw_changeover_value(p->chosen.score, strokes, c, value);
    }
    *value = (sw_courtesy_value){p->options->value, p->options->value_name};
    const sw_stroke *before = &strokes->items[c->before];
    sw_rational rest = sw_rational_sub(strokes->items[c->stroke].onset, before->end);
    *done = sw_rational_compare(rest, value->length) >= 0; /* that much is free already */
    sw_rational length =
        sw_rational_sub(before->end, strokes->items[sw_stroke_begin(strokes, c->before)].onset);
    return c->waits && sw_rational_compare(value->length, length) < 0;
}

static void add(plan *p, letting_go item)
{
    for (size_t i = 0; i < p->count; i++) {
        if (p->items[i].staff == item.staff && p->items[i].stroke == item.stroke) {
            if (sw_rational_compare(p->items[i].length, item.length) < 0) {
                p->items[i].length = item.length;
                p->items[i].name = item.name;
            }
            return;
        }
    }
    p->items = sw_grow(p->items, p->count, &p->capacity, sizeof *p->items);
    p->items[p->count++] = item;
}

static void consider(plan *p, uint32_t staff, const sw_changeover *c)
{
    sw_courtesy_value value;
    bool done;
    bool found = find_value(p, staff, c, &value, &done);
    if (done) {
        return;
    }
    if (is_combined(p, staff)) {
        leave(p, staff, c, "two parts are combined on this staff, each has to end in its own source");
    } else if (!c->waits) {
        leave(p, staff, c, "the note before is over at once, only a rest before it helps");
    } else if (!found) {
        leave(p, staff, c, "the note before is too short to give so much");
    } else if (ends_before_bar_line(p, staff, c->before, value.length)) {
        leave(p, staff, c, "the note before is tied over the bar line, others may end with it");
    } else if (is_held(p, stroke_at(p, staff, c->before))) {
        leave(p, staff, c, "a fermata holds the note before");
    } else if (!p->options->melody && is_melody(p, staff, c->before)) {
        leave(p, staff, c, "the note before ends the melody (--melody shortens it, too)");
    } else {
        add(p, (letting_go){staff, c->before, c, value.length, value.name});
    }
}

/* ---- letting go together --------------------------------------------------------------------------------
 */

static const sw_instrument *instrument_of(const plan *p, uint32_t staff)
{
    return p->playing->instruments[staff];
}

/* The same note, or the same in another octave, at the same time. */
static bool is_same_note(const plan *p, const sw_stroke *a, const sw_stroke *b)
{
    return sw_rational_equal(a->onset, b->onset) && sw_rational_equal(a->end, b->end) &&
           (sw_pitch_semitones(event_of(p, a)->pitch) - sw_pitch_semitones(event_of(p, b)->pitch)) % 12 == 0;
}

static bool is_companion(const plan *p, const letting_go *item, uint32_t staff, uint32_t stroke)
{
    const sw_instrument *own = instrument_of(p, item->staff);
    const sw_instrument *other = instrument_of(p, staff);
    return other != NULL && !is_combined(p, staff) && own->family == other->family &&
           sw_pitch_equal(own->sounds, other->sounds) &&
           is_same_note(p, stroke_at(p, item->staff, item->stroke), stroke_at(p, staff, stroke)) &&
           !sw_event_has_mark(p->chosen.reading, event_of(p, stroke_at(p, staff, stroke)), is_slur_end);
}

/* Where all players of a staff are in the new note, those of its other voices have to let go, too. */
static void add_other_voices(plan *p, const letting_go *item)
{
    const sw_strokes *strokes = &p->staves[item->staff].strokes;
    const sw_stroke *own = &strokes->items[item->stroke];
    sw_rational moment = sw_rational_sub(own->end, item->length);
    for (uint32_t s = 0; s < strokes->count && strokes->items[item->changeover->stroke].alone; s++) {
        const sw_stroke *other = &strokes->items[s];
        sw_rational too_long = sw_rational_sub(other->end, moment);
        if (other->voice != own->voice && sw_rational_compare(other->onset, moment) < 0 &&
            sw_rational_compare(other->end, own->end) <= 0 &&
            sw_rational_compare(too_long, sw_rational_zero()) > 0) {
            add(p, (letting_go){item->staff, s, NULL, too_long, item->name});
        }
    }
}

/* Those of the family that hold the same note go along, by the largest value that one of them needs. */
static void add_companions(plan *p)
{
    size_t first = p->count;
    for (size_t i = 0; i < first; i++) {
        const letting_go item = p->items[i];
        add_other_voices(p, &item);
        for (uint32_t staff = 0; staff < p->chosen.score->staff_count; staff++) {
            const sw_strokes *strokes = &p->staves[staff].strokes;
            for (uint32_t s = 0; s < strokes->count; s++) {
                bool tied_on =
                    s + 1 < strokes->count && strokes->items[s + 1].tied && strokes->items[s + 1].before == s;
                if ((staff != item.staff || s != item.stroke) && !tied_on &&
                    is_companion(p, &item, staff, s)) {
                    add(p, (letting_go){staff, s, NULL, item.length, item.name});
                }
            }
        }
    }
}

/* ---- the changes ----------------------------------------------------------------------------------------
 */

static void choose(plan *p)
{
    for (size_t i = 0; i < p->count; i++) {
        const letting_go *item = &p->items[i];
        const sw_stroke *stroke = stroke_at(p, item->staff, item->stroke);
        char label[32];
        char place[SW_SAY];
        sw_buffer text = {0};
        if (item->changeover != NULL) {
            say_change(p, item->staff, item->changeover, &text);
        } else {
            sw_buffer_format(&text, "%s, %s, with the others of the family",
                             sw_say_place(p->chosen.score, stroke->onset, place),
                             sw_staff_label(p->chosen.reading, p->chosen.score, item->staff, label));
        }
        sw_choices_begin(&p->choices, stroke->event, "%s: the note before ends %s earlier",
                         sw_buffer_text(&text), item->name);
        sw_choices_add(&p->choices, (sw_change){.kind = SW_CHANGE_END,
                                                .event = stroke->event,
                                                .moment = sw_rational_sub(stroke->end, item->length)});
        sw_buffer_free(&text);
    }
}

static void make_plan(plan *p)
{
    const sw_score *score = p->chosen.score;
    p->staves = sw_alloc_zero(score->staff_count + 1, sizeof *p->staves);
    p->is_chosen = sw_chosen_map(&p->chosen);
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        p->staves[staff] =
            sw_changeovers_of_staff(p->techniques, p->chosen.reading, score, p->playing, staff, p->who);
    }
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        for (size_t i = 0; i < p->staves[staff].count && instrument_of(p, staff) != NULL; i++) {
            const sw_changeover *c = &p->staves[staff].items[i];
            if (is_wanted(p, &p->staves[staff].strokes, c)) {
                consider(p, staff, c);
            }
        }
    }
    add_companions(p);
    choose(p);
}

static void free_plan(plan *p)
{
    for (uint32_t staff = 0; p->staves != NULL && staff < p->chosen.score->staff_count; staff++) {
        sw_changeovers_free(&p->staves[staff]);
    }
    free(p->staves);
    free(p->is_chosen);
    free(p->items);
    sw_choices_free(&p->choices);
}

static bool run(sw_move *move, const sw_courtesy_options *options, const sw_read_options *reading_options,
                char **error)
{
    sw_opening o;
    if (!sw_opening_find(move, options->film, &options->places, &o, error)) {
        return false;
    }
    plan p = {.move = move,
              .options = options,
              .techniques = o.techniques,
              .chosen = o.chosen,
              .playing = o.playing,
              .who = o.who,
              .choices = {.move = "courtesy"}};
    make_plan(&p);
    sw_edit_request request = sw_chosen_request(move, &o.chosen, options->elsewhere, reading_options);
    sw_choices_make(move, &p.choices, &request);
    free_plan(&p);
    sw_opening_free(&o);
    return true;
}

sw_move *sw_move_courtesy(const char *path, const sw_courtesy_options *options,
                          const sw_read_options *reading_options, char **error)
{
    sw_move *move = sw_move_open(path, reading_options, error);
    return sw_move_close(move, move != NULL && run(move, options, reading_options, error));
}
