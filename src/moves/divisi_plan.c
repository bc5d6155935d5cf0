#include "moves/divisi_plan.h"

#include <stdlib.h>

#include "write/draft.h"

/* ---- the chords -----------------------------------------------------------------------------------------
 */

/* Puts a note in its place by height; a height that is there already counts once. */
static void add_note(const sw_score *score, sw_divisi_chord *chord, uint32_t event)
{
    int height = sw_pitch_quarter_tones(score->events[event].pitch);
    uint8_t listed = chord->count < SW_DIVISI_MOST ? chord->count : SW_DIVISI_MOST;
    uint8_t place = 0;
    while (place < listed && sw_pitch_quarter_tones(score->events[chord->notes[place]].pitch) < height) {
        place++;
    }
    if (place < listed && sw_pitch_quarter_tones(score->events[chord->notes[place]].pitch) == height) {
        return;
    }
    chord->count++;
    for (uint8_t n = listed < SW_DIVISI_MOST ? listed : SW_DIVISI_MOST - 1; n > place; n--) {
        chord->notes[n] = chord->notes[n - 1];
    }
    if (place < SW_DIVISI_MOST) {
        chord->notes[place] = event;
    }
}

/* Whether some note of a chord is tied to the next one. */
static bool goes_on_behind(const sw_reading *reading, const sw_score *score, uint32_t chord)
{
    bool tied = false;
    uint32_t end = chord == SW_NO_INDEX ? 0 : sw_voice_chord_end(score, chord);
    for (uint32_t e = chord; e < end; e++) {
        tied = tied || sw_voice_is_tied(reading, score, e);
    }
    return tied;
}

void sw_divisi_read(sw_divisi_plan *plan, const sw_chosen *chosen, uint32_t staff, const bool *is_chosen)
{
    const sw_score *score = chosen->score;
    *plan = (sw_divisi_plan){.reading = chosen->reading, .score = score, .staff = staff};
    plan->parent = sw_parents_of(chosen->reading);
    plan->strokes = sw_strokes_of_staff(chosen->reading, score, staff);
    plan->chords = sw_alloc_zero(plan->strokes.count + 1, sizeof *plan->chords);
    for (size_t i = 0; i < plan->strokes.count; i++) {
        const sw_stroke *stroke = &plan->strokes.items[i];
        if ((score->events[stroke->event].flags & SW_EVENT_GRACE) != 0) {
            continue;
        }
        sw_divisi_chord *chord = &plan->chords[plan->count++];
        uint32_t end = sw_voice_chord_end(score, stroke->event);
        chord->stroke = stroke;
        chord->tied = goes_on_behind(chosen->reading, score, sw_voice_joined_before(score, stroke->event));
        chord->chosen = is_chosen[stroke->event];
        for (uint32_t e = stroke->event; e < end; e++) {
            if (score->events[e].kind == SW_EVENT_NOTE) {
                add_note(score, chord, e);
            }
        }
        chord->left = chord->chosen && (!stroke->alone || chord->count == 0);
    }
}

/* ---- the passages ---------------------------------------------------------------------------------------
 */

bool sw_divisi_lacks_players(const sw_divisi_wish *wish, const sw_divisi_chord *chord)
{
    int parts = chord->count > wish->parts ? chord->count : wish->parts;
    return chord->players > 0 && chord->players < (parts > 2 ? parts : 2);
}

static bool has_parts(const sw_divisi_wish *wish, const sw_divisi_chord *chord)
{
    return chord->count <= (wish->parts > 0 ? wish->parts : SW_DIVISI_MOST) &&
           !sw_divisi_lacks_players(wish, chord);
}

static bool fits(const sw_divisi_wish *wish, const sw_divisi_chord *chord)
{
    return chord->chosen && !chord->left && has_parts(wish, chord);
}

/* Whether a chord asks for parts at all. */
static bool is_many(const sw_divisi_wish *wish, const sw_divisi_chord *chord)
{
    return chord->count > 1 || wish->single_too;
}

static bool is_divided(const sw_divisi_wish *wish, const sw_divisi_chord *chord)
{
    return fits(wish, chord) && is_many(wish, chord);
}

bool sw_divisi_is_near(const sw_divisi_plan *plan, size_t chord, size_t next)
{
    sw_rational end = plan->chords[chord].stroke->end;
    sw_rational gap = sw_rational_sub(plan->chords[next].stroke->onset, end);
    uint32_t bar = sw_score_bar_at(plan->score, end);
    return bar != SW_NO_INDEX && sw_rational_compare(gap, plan->score->bars[bar].metre) < 0;
}

/* Where an event stands when its tuplet counts as what that stands in. */
typedef struct place {
    uint32_t node;   /* the chord, or the tuplet around it */
    uint32_t frame;  /* how that was reached */
    uint32_t levels; /* of tuplets around the chord; a tuplet within a tuplet counts as itself */
} place;

/* The tuplet in which a node of a block stands, if the frame is its; SW_NO_INDEX: in none. */
static uint32_t tuplet_around(const sw_divisi_plan *plan, uint32_t node, uint32_t frame)
{
    uint32_t block = plan->parent[node];
    uint32_t tuplet = block == SW_NO_INDEX ? SW_NO_INDEX : plan->parent[block];
    bool is = tuplet != SW_NO_INDEX && frame != SW_NO_INDEX && plan->score->frames[frame].music == tuplet &&
              plan->reading->music[tuplet].kind == SW_MUSIC_SCALE;
    return is ? tuplet : SW_NO_INDEX;
}

static place place_of(const sw_divisi_plan *plan, uint32_t event)
{
    const sw_score *score = plan->score;
    const place own = {score->events[event].chord, score->events[event].frame, 0};
    place p = own;
    for (uint32_t t; (t = tuplet_around(plan, p.node, p.frame)) != SW_NO_INDEX;) {
        p = (place){t, score->frames[p.frame].parent, p.levels + 1};
    }
    bool one = p.levels == 1 && sw_tuplet_head(plan->reading, p.node).length > 0;
    return p.levels == 0 || one ? p : (place){own.node, own.frame, 2};
}

uint32_t sw_divisi_tuplet(const sw_divisi_plan *plan, uint32_t event, uint32_t *levels)
{
    place p = place_of(plan, event);
    *levels = p.levels;
    return p.levels == 1 ? p.node : SW_NO_INDEX;
}

/* Whether two chords stand in one block, or in tuplets of it, and are heard through it in the same way. */
static bool share_block(const sw_divisi_plan *plan, size_t a, size_t b)
{
    uint32_t x = plan->chords[a].stroke->event;
    uint32_t y = plan->chords[b].stroke->event;
    place p = place_of(plan, x);
    place q = place_of(plan, y);
    return plan->score->events[x].voice == plan->score->events[y].voice && p.frame == q.frame &&
           plan->parent[p.node] == plan->parent[q.node];
}

static bool share_tuplet(const sw_divisi_plan *plan, size_t a, size_t b)
{
    place p = place_of(plan, plan->chords[a].stroke->event);
    place q = place_of(plan, plan->chords[b].stroke->event);
    return p.levels == 1 && p.node == q.node && p.frame == q.frame;
}

/* Whether everything from one chord to another is one line that fits. */
static bool is_one_line(const sw_divisi_plan *plan, const sw_divisi_wish *wish, size_t from, size_t to)
{
    for (size_t i = from; i <= to; i++) {
        if (!fits(wish, &plan->chords[i]) || !share_block(plan, from, i) ||
            plan->chords[i].players != plan->chords[from].players) {
            return false;
        }
    }
    return true;
}

/* Whether a divided chord belongs to the last passage. */
static bool goes_on(const sw_divisi_plan *plan, const sw_divisi_wish *wish, size_t chord)
{
    if (plan->passage_count == 0) {
        return false;
    }
    size_t last = plan->passages[plan->passage_count - 1].last;
    if (wish->in_one_line) {
        return is_one_line(plan, wish, last, chord) && sw_divisi_is_near(plan, last, chord);
    }
    return last + 1 == chord && plan->chords[last].players == plan->chords[chord].players;
}

/* What is tied to a passage belongs to it. */
static void take_tied(sw_divisi_plan *plan, const sw_divisi_wish *wish, sw_divisi_passage *passage)
{
    while (passage->last + 1 < plan->count && plan->chords[passage->last + 1].tied &&
           (wish->in_one_line ? is_one_line(plan, wish, passage->last, passage->last + 1)
                              : fits(wish, &plan->chords[passage->last + 1]))) {
        passage->last++;
    }
    while (wish->in_one_line && passage->first > 0 && plan->chords[passage->first].tied &&
           is_one_line(plan, wish, passage->first - 1, passage->first)) {
        passage->first--;
    }
}

/* A tuplet is divided as a whole, with the single notes at its edges. */
static void take_tuplets(sw_divisi_plan *plan, const sw_divisi_wish *wish, sw_divisi_passage *passage)
{
    while (passage->first > 0 && share_tuplet(plan, passage->first - 1, passage->first) &&
           is_one_line(plan, wish, passage->first - 1, passage->first)) {
        passage->first--;
    }
    while (passage->last + 1 < plan->count && share_tuplet(plan, passage->last, passage->last + 1) &&
           is_one_line(plan, wish, passage->last, passage->last + 1)) {
        passage->last++;
    }
}

static void complete(sw_divisi_plan *plan, const sw_divisi_wish *wish, sw_divisi_passage *passage)
{
    size_t length;
    do {
        length = passage->last - passage->first;
        take_tied(plan, wish, passage);
        if (wish->in_one_line) {
            take_tuplets(plan, wish, passage);
        }
    } while (passage->last - passage->first != length);
}

bool sw_divisi_is_whole(const sw_divisi_plan *plan, const sw_divisi_passage *passage)
{
    return (passage->first == 0 || !share_tuplet(plan, passage->first - 1, passage->first)) &&
           (passage->last + 1 == plan->count || !share_tuplet(plan, passage->last, passage->last + 1));
}

static void solve(const sw_divisi_plan *plan, const sw_divisi_fit *fit, sw_divisi_passage *passage)
{
    size_t count = passage->last - passage->first + 1;
    sw_divisi_slice *slices = sw_alloc_zero(count, sizeof *slices);
    for (size_t i = 0; i < count; i++) {
        const sw_divisi_chord *chord = &plan->chords[passage->first + i];
        const sw_divisi_chord *before = i == 0 ? NULL : chord - 1;
        slices[i].count = chord->count;
        slices[i].apart =
            before != NULL && sw_rational_compare(before->stroke->end, chord->stroke->onset) < 0;
        for (uint8_t n = 0; n < chord->count; n++) {
            sw_pitch pitch = plan->score->events[chord->notes[n]].pitch;
            slices[i].heights[n] = sw_pitch_semitones(pitch);
            uint32_t held =
                before == NULL ? SW_NO_INDEX : sw_voice_pitch(plan->score, before->stroke->event, pitch);
            if (held != SW_NO_INDEX && sw_voice_is_tied(plan->reading, plan->score, held)) {
                slices[i].tied |= (uint8_t)(1u << n);
            }
        }
        sw_divisi_fit_slice(fit, &passage->groups, &passage->section, chord->notes, &slices[i]);
    }
    passage->notes = sw_alloc_zero(count * (size_t)passage->section.parts, 1);
    passage->cost = sw_divisi_solve(slices, count, &passage->section, passage->notes);
    free(slices);
}

void sw_divisi_find(sw_divisi_plan *plan, const sw_divisi_wish *wish, const sw_divisi_fit *fit)
{
    for (size_t i = 0; i < plan->count; i++) {
        sw_divisi_chord *chord = &plan->chords[i];
        bool known = plan->passage_count > 0 && i <= plan->passages[plan->passage_count - 1].last;
        chord->left = chord->left || (chord->chosen && is_many(wish, chord) && !has_parts(wish, chord));
        if (known || !is_divided(wish, chord)) {
            continue;
        }
        if (!goes_on(plan, wish, i)) {
            plan->passages =
                sw_grow(plan->passages, plan->passage_count, &plan->passage_capacity, sizeof *plan->passages);
            plan->passages[plan->passage_count++] = (sw_divisi_passage){.first = i};
        }
        sw_divisi_passage *passage = &plan->passages[plan->passage_count - 1];
        passage->last = i;
        complete(plan, wish, passage);
    }
    for (size_t p = 0; p < plan->passage_count; p++) {
        sw_divisi_passage *passage = &plan->passages[p];
        int parts = wish->parts > 0 ? wish->parts : 2;
        for (size_t i = passage->first; i <= passage->last; i++) {
            int count = plan->chords[i].count;
            parts = count > parts ? count : parts;
        }
        passage->groups = sw_divisi_groups_at(fit, plan->chords[passage->first].stroke->onset);
        if (passage->groups.count == 1) {
            passage->groups.players[0] = plan->chords[passage->first].players;
        }
        passage->section = sw_divisi_section_of(passage->groups.players, passage->groups.count, parts);
        solve(plan, fit, passage);
    }
}

void sw_divisi_plan_free(sw_divisi_plan *plan)
{
    for (size_t p = 0; p < plan->passage_count; p++) {
        free(plan->passages[p].notes);
    }
    free(plan->passages);
    free(plan->parent);
    free(plan->chords);
    free(plan->strokes.items);
    *plan = (sw_divisi_plan){0};
}

uint32_t sw_divisi_note(const sw_divisi_plan *plan, const sw_divisi_passage *passage, size_t chord, int part)
{
    size_t row = (chord - passage->first) * (size_t)passage->section.parts;
    return plan->chords[chord].notes[passage->notes[row + (size_t)part]];
}
