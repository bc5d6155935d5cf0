#include "checks/changeovers.h"

#include <stdlib.h>

/* The figures are round ones: a little less than what they say is enough. */
static const double ENOUGH = 0.9;

typedef struct scene {
    const sw_techniques *techniques;
    const sw_score *score;
    const sw_playing *playing;
    const sw_instrument *instrument; /* with which the staff begins */
    sw_seated_notes who;
    sw_changeovers *list;
} scene;

static const sw_technique_state *state_of(const scene *s, const sw_stroke *stroke)
{
    return &s->playing->states[s->playing->state_of[stroke->event]];
}

static bool is_plucked(const scene *s, const sw_stroke *stroke)
{
    const sw_technique_state *state = state_of(s, stroke);
    for (size_t g = 0; g < sw_techniques_group_count(s->techniques); g++) {
        if (sw_techniques_get(s->techniques, state->now[g])->plucked) {
            return true;
        }
    }
    return false;
}

static const sw_instrument *instrument_of(const scene *s, const sw_stroke *stroke)
{
    const sw_seat_range *range = s->who.ranges == NULL ? NULL : &s->who.ranges[stroke->event];
    bool known = range != NULL && range->first < range->end;
    const sw_instrument *own = known ? s->who.seating->seats[range->first].instrument : NULL;
    return own == NULL ? s->instrument : own;
}

/* Measures one change, and keeps it if it is the longest one that there is no time for. */
static void consider(const scene *s, const sw_stroke *before, const sw_stroke *stroke, uint8_t from,
                     uint8_t to, sw_changeover *longest)
{
    const sw_technique_change *change =
        sw_techniques_change(s->techniques, instrument_of(s, stroke), from, to);
    if (change == NULL) {
        return;
    }
    bool waits = !change->while_sounding && !is_plucked(s, before);
    double given = sw_score_seconds(s->score, stroke->onset) -
                   sw_score_seconds(s->score, waits ? before->end : before->onset);
    given = given > 0 ? given : 0;
    if (given < ENOUGH * change->seconds &&
        (longest->change == NULL || longest->change->seconds < change->seconds)) {
        *longest = (sw_changeover){.from = from, .to = to, .change = change, .given = given, .waits = waits};
    }
}

static sw_changeover longest_change(const scene *s, const sw_stroke *before, const sw_stroke *stroke)
{
    const sw_technique_state *old = state_of(s, before);
    const sw_technique_state *new = state_of(s, stroke);
    sw_changeover longest = {.change = NULL};
    if (!sw_instruments_alike(instrument_of(s, before), instrument_of(s, stroke))) {
        return longest; /* a mute stays on the trumpet that is laid aside: the rule chairs measures this */
    }
    for (size_t g = 0; old != new &&g < sw_techniques_group_count(s->techniques); g++) {
        bool main_part = old->now[g] != new->now[g];
        consider(s, before, stroke, main_part ? old->now[g] : old->half[g],
                 main_part ? new->now[g] : new->half[g], &longest);
    }
    return longest;
}

/* The last stroke before one in which one of its players has played: "2. con sord." is not for the first one,
 * who has played up to it. */
static uint32_t last_of_players(const scene *s, const sw_stroke *stroke)
{
    uint32_t before = stroke->before;
    while (s->who.ranges != NULL && before != SW_NO_INDEX &&
           !sw_seats_meet(s->who, s->list->strokes.items[before].event, stroke->event)) {
        before = s->list->strokes.items[before].before;
    }
    return before;
}

/* Whether two strokes stand in different endings of a repeat: the second one does not follow the first. The
 * way from the body to a later ending is not measured. */
static bool are_in_different_endings(const sw_playing *playing, uint32_t staff, const sw_stroke *before,
                                     const sw_stroke *stroke)
{
    for (size_t i = 0; i < playing->ending_count; i++) {
        const sw_other_ending *ending = &playing->endings[i];
        if (ending->staff == staff && sw_rational_compare(before->onset, ending->onset) < 0 &&
            sw_rational_compare(ending->onset, stroke->onset) <= 0) {
            return true;
        }
    }
    return false;
}

sw_changeovers sw_changeovers_of_staff(const sw_techniques *techniques, const sw_reading *reading,
                                       const sw_score *score, const sw_playing *playing, uint32_t staff,
                                       sw_seated_notes who)
{
    sw_changeovers list = {.strokes = sw_strokes_of_staff(reading, score, staff)};
    scene s = {techniques, score, playing, playing->instruments[staff], who, &list};
    for (uint32_t i = 0; i < list.strokes.count; i++) {
        const sw_stroke *stroke = &list.strokes.items[i];
        uint32_t before = last_of_players(&s, stroke);
        if (before == SW_NO_INDEX || stroke->tied) {
            continue;
        }
        sw_changeover found = longest_change(&s, &list.strokes.items[before], stroke);
        if (found.change != NULL &&
            !are_in_different_endings(playing, staff, &list.strokes.items[before], stroke)) {
            found.before = before;
            found.stroke = i;
            list.items = sw_grow(list.items, list.count, &list.capacity, sizeof *list.items);
            list.items[list.count++] = found;
        }
    }
    return list;
}

void sw_changeovers_free(sw_changeovers *changeovers)
{
    free(changeovers->strokes.items);
    free(changeovers->items);
    *changeovers = (sw_changeovers){0};
}

uint32_t sw_stroke_begin(const sw_strokes *strokes, uint32_t stroke)
{
    while (strokes->items[stroke].tied) {
        stroke = strokes->items[stroke].before;
    }
    return stroke;
}

bool sw_changeover_value(const sw_score *score, const sw_strokes *strokes, const sw_changeover *changeover,
                         sw_courtesy_value *value)
{
    static const struct {
        int denominator;
        const char *name;
    } values[] = {{8, "an eighth"}, {4, "a quarter"}, {2, "a half"}, {1, "a whole"}};
    const sw_stroke *before = &strokes->items[changeover->before];
    double begin = sw_score_seconds(score, strokes->items[changeover->stroke].onset);
    sw_rational length =
        sw_rational_sub(before->end, strokes->items[sw_stroke_begin(strokes, changeover->before)].onset);
    for (size_t i = 0; changeover->waits && i < sizeof values / sizeof values[0]; i++) {
        sw_rational taken = sw_rational_make(1, values[i].denominator);
        if (sw_rational_compare(sw_rational_add(taken, taken), length) > 0) {
            return false;
        }
        double end = sw_score_seconds(score, sw_rational_sub(before->end, taken));
        if (begin - end >= ENOUGH * changeover->change->seconds) {
            *value = (sw_courtesy_value){taken, values[i].name};
            return true;
        }
    }
    return false;
}
