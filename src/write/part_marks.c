/* Which part gets which mark when a staff is divided.
 *
 *   - what belongs to single notes (articulations, fingerings, tremolo) goes with them;
 *   - a slur is given to each part that has at least two of its notes, from its first to its last note there,
 *     interrupted by empty bars;
 *   - a manual beam stays where one part has all its notes;
 *   - a hairpin and what ends it go to the part with more notes under it, even where that part rests at one
 * end;
 *   - a dynamic goes to the part that plays there, the upper one if both do; in a brace it stands between the
 *     staves;
 *   - the sign of a rolled chord goes to each part that has notes of it, and through both staves;
 *   - text goes to the upper part, with _ to the lower; what concerns both hands between the staves of a
 * brace; pedals and texts for the feet to the lowest part, where that does not write the voice to another of
 * its items at the same moment;
 *   - where different players read the staves, dynamics, hairpins, texts and spans go to all of them;
 *   - a fermata goes to all parts, to the rest of who has one;
 *   - a chord that is to be rolled gets the sign, each part its own;
 *   - a tie stays where a note goes on in the same part. */
#include <stdlib.h>
#include <string.h>

#include "write/division.h"

/* An item (note, chord, rest) of one voice of the staff. */
typedef struct item {
    uint32_t music;
    uint32_t event; /* its first event */
    uint32_t notes; /* how many events */
    uint8_t parts;
} item;

typedef struct items {
    item *list;
    size_t count;
    size_t capacity;
} items;

/* A span that has begun and not ended. */
typedef struct open_span {
    uint32_t mark; /* SW_NO_INDEX: none is open */
    size_t from;   /* item */
} open_span;

static void collect(const sw_plan *plan, uint32_t voice, items *result)
{
    const sw_score *score = plan->division->score;
    result->count = 0;
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (event->voice != voice || plan->first_event[event->chord] != i) {
            continue;
        }
        result->list = sw_grow(result->list, result->count, &result->capacity, sizeof *result->list);
        result->list[result->count++] =
            (item){event->chord, i, plan->event_count[event->chord], plan->parts[event->chord]};
    }
}

static void add_slice(sw_plan *plan, uint32_t music, uint32_t part, sw_slice text)
{
    plan->added = sw_grow(plan->added, plan->added_count, &plan->added_capacity, sizeof *plan->added);
    plan->added[plan->added_count++] = (sw_added_mark){music, part, text};
}

static void add_text(sw_plan *plan, uint32_t music, uint32_t part, const char *text)
{
    add_slice(plan, music, part, sw_slice_of(text));
}

static void add_mark(sw_plan *plan, uint32_t music, uint32_t part, uint32_t like)
{
    add_slice(plan, music, part, sw_music_slice(plan->reading, like));
}

static void give(sw_plan *plan, uint32_t mark, uint32_t part)
{
    plan->mark_parts[mark] |= (uint8_t)(1u << part);
}

static uint32_t uppermost(uint8_t parts)
{
    for (uint32_t part = 0; part < SW_MAX_PARTS; part++) {
        if ((parts & 1u << part) != 0) {
            return part;
        }
    }
    return 0;
}

static uint32_t lowermost(uint8_t parts)
{
    uint32_t lowest = 0;
    for (uint32_t part = 0; part < SW_MAX_PARTS; part++) {
        if ((parts & 1u << part) != 0) {
            lowest = part;
        }
    }
    return lowest;
}

/* An item of any voice of the staff that begins with `here` and that the part writes, SW_NO_INDEX when there
 * is none. */
static uint32_t item_of_part(const sw_plan *plan, const item *here, uint32_t part)
{
    const sw_score *score = plan->division->score;
    const sw_event *event = &score->events[here->event];
    if ((plan->left_out[here->music] & 1u << part) == 0) {
        return here->music;
    }
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *other = &score->events[i];
        if (score->voices[other->voice].staff == plan->division->staff &&
            sw_rational_equal(other->onset, event->onset) && other->grace_num == event->grace_num &&
            (plan->left_out[other->chord] & 1u << part) == 0 && other->kind != SW_EVENT_SKIP &&
            plan->reading->music[other->chord].file == plan->reading->music[here->music].file) {
            return other->chord;
        }
    }
    return SW_NO_INDEX;
}

/* To the lowest part, or to one that has something at this moment to hang it on. */
static void give_to_lowest(sw_plan *plan, const item *here, uint32_t mark)
{
    for (uint32_t part = plan->division->parts; part-- > 0;) {
        uint32_t music = item_of_part(plan, here, part);
        if (music == here->music) {
            give(plan, mark, part);
            return;
        }
        if (music != SW_NO_INDEX) {
            add_mark(plan, music, part, mark);
            return;
        }
    }
}

sw_text_home sw_plan_text_home(const sw_plan *plan, uint32_t mark)
{
    const sw_division *division = plan->division;
    char direction = sw_music_mark_direction(plan->reading, mark);
    if (division->text_homes == NULL || !division->braced || direction == '^' ||
        sw_music_mark_class(plan->reading, mark) != SW_MARK_TEXT) {
        return SW_TEXT_AT_NOTES;
    }
    sw_text_home home = (sw_text_home)division->text_homes[mark];
    return home == SW_TEXT_BETWEEN && direction == '_' ? SW_TEXT_AT_NOTES : home;
}

/* Whether a whole bar lies between two items. */
static bool has_empty_bar(const sw_plan *plan, const item *before, const item *after)
{
    const sw_score *score = plan->division->score;
    uint32_t from = sw_score_bar_at(score, score->events[before->event].onset);
    uint32_t to = sw_score_bar_at(score, score->events[after->event].onset);
    sw_rational end = sw_event_end(&score->events[before->event]);
    bool held = to != SW_NO_INDEX && to > 0 && sw_rational_compare(end, score->bars[to - 1].start) > 0;
    return from != SW_NO_INDEX && to != SW_NO_INDEX && to > from + 1 && !held;
}

static void give_slur_piece(sw_plan *plan, const items *all, uint32_t part, size_t first, size_t last,
                            const open_span *start, size_t b, uint32_t end)
{
    if (first == start->from) {
        give(plan, start->mark, part);
    } else {
        add_mark(plan, all->list[first].music, part, start->mark);
    }
    if (last == b) {
        give(plan, end, part);
    } else {
        add_mark(plan, all->list[last].music, part, end);
    }
}

/* A slur up to item b: each part with two or more of its notes has its own, and a new one after an empty bar.
 */
static void give_slur(sw_plan *plan, const items *all, const open_span *start, size_t b, uint32_t end)
{
    for (uint32_t part = 0; part < plan->division->parts; part++) {
        size_t first = SIZE_MAX;
        size_t last = SIZE_MAX;
        for (size_t i = start->from; i <= b; i++) {
            if ((all->list[i].parts & 1u << part) == 0) {
                continue;
            }
            if (last != SIZE_MAX && has_empty_bar(plan, &all->list[last], &all->list[i])) {
                if (first != last) {
                    give_slur_piece(plan, all, part, first, last, start, b, end);
                }
                first = SIZE_MAX;
            }
            first = first == SIZE_MAX ? i : first;
            last = i;
        }
        if (first != last) {
            give_slur_piece(plan, all, part, first, last, start, b, end);
        }
    }
}

static void give_beam(sw_plan *plan, const items *all, size_t a, uint32_t start, size_t b, uint32_t end)
{
    uint8_t parts = (uint8_t)((1u << plan->division->parts) - 1);
    for (size_t i = a; i <= b; i++) {
        parts &= all->list[i].parts;
    }
    plan->mark_parts[start] |= parts;
    plan->mark_parts[end] |= parts;
}

/* The part with most notes from item a to item b, the upper one among equals. */
static uint32_t busiest(const sw_plan *plan, const items *all, size_t a, size_t b)
{
    uint32_t best = 0;
    size_t most = 0;
    for (uint32_t part = 0; part < plan->division->parts; part++) {
        size_t notes = 0;
        for (size_t i = a; i <= b; i++) {
            notes += (all->list[i].parts & 1u << part) != 0 ? 1 : 0;
        }
        if (notes > most) {
            most = notes;
            best = part;
        }
    }
    return best;
}

/* Whether a note of the part at item i goes on, tied, at the next item of its voice. */
static bool continues(const sw_plan *plan, const items *all, size_t i, uint32_t part)
{
    const sw_score *score = plan->division->score;
    const item *here = &all->list[i];
    for (uint32_t n = 0; n < here->notes; n++) {
        const sw_event *note = &score->events[here->event + n];
        if (note->kind != SW_EVENT_NOTE || !sw_division_gives(plan->division, here->event + n, part)) {
            continue;
        }
        for (size_t j = i + 1; j < all->count && j < i + 64; j++) {
            const item *there = &all->list[j];
            for (uint32_t k = 0; k < there->notes; k++) {
                const sw_event *next = &score->events[there->event + k];
                if (next->kind == SW_EVENT_NOTE &&
                    sw_division_gives(plan->division, there->event + k, part) &&
                    sw_pitch_equal(next->pitch, note->pitch)) {
                    return true;
                }
            }
        }
    }
    return false;
}

static bool is_fermata(const sw_reading *reading, uint32_t mark)
{
    sw_slice text = sw_music_slice(reading, mark);
    return memmem(text.data, text.length, "fermata", strlen("fermata")) != NULL;
}

/* Marks that different players must each read for themselves. */
static bool is_for_everybody(sw_mark_class class)
{
    switch (class) {
    case SW_MARK_DYNAMIC:
    case SW_MARK_HAIRPIN_START:
    case SW_MARK_HAIRPIN_END:
    case SW_MARK_SPAN_START:
    case SW_MARK_SPAN_END:
    case SW_MARK_PEDAL:
    case SW_MARK_TEXT:
        return true;
    default:
        return false;
    }
}

static void give_mark(sw_plan *plan, const items *all, size_t i, uint32_t mark, open_span spans[4],
                      uint32_t *hairpin, uint32_t *text_span)
{
    enum { SLUR, PHRASE, BEAM, HAIRPIN };
    const item *here = &all->list[i];
    uint8_t parts = here->parts;
    if (sw_division_drops(plan->division, plan->reading, mark)) {
        return;
    }
    if (plan->division->apart && is_for_everybody(sw_music_mark_class(plan->reading, mark))) {
        plan->mark_parts[mark] = (uint8_t)((1u << plan->division->parts) - 1);
        return;
    }
    switch (sw_music_mark_class(plan->reading, mark)) {
    case SW_MARK_SLUR_START:
        spans[SLUR] = (open_span){mark, i};
        break;
    case SW_MARK_PHRASE_START:
        spans[PHRASE] = (open_span){mark, i};
        break;
    case SW_MARK_BEAM_START:
        spans[BEAM] = (open_span){mark, i};
        break;
    case SW_MARK_SLUR_END:
    case SW_MARK_PHRASE_END: {
        open_span *span =
            &spans[sw_music_mark_class(plan->reading, mark) == SW_MARK_SLUR_END ? SLUR : PHRASE];
        if (span->mark != SW_NO_INDEX) {
            give_slur(plan, all, span, i, mark);
            span->mark = SW_NO_INDEX;
        }
        break;
    }
    case SW_MARK_BEAM_END:
        if (spans[BEAM].mark != SW_NO_INDEX) {
            give_beam(plan, all, spans[BEAM].from, spans[BEAM].mark, i, mark);
            spans[BEAM].mark = SW_NO_INDEX;
        }
        break;
    case SW_MARK_HAIRPIN_START:
        if (spans[HAIRPIN].mark != SW_NO_INDEX) { /* ended by this one */
            give(plan, spans[HAIRPIN].mark, busiest(plan, all, spans[HAIRPIN].from, i));
        }
        spans[HAIRPIN] = (open_span){mark, i};
        break;
    case SW_MARK_HAIRPIN_END:
    case SW_MARK_DYNAMIC: {
        uint32_t owner = uppermost(parts);
        if (spans[HAIRPIN].mark != SW_NO_INDEX && spans[HAIRPIN].from < i) {
            owner = busiest(plan, all, spans[HAIRPIN].from, i);
            give(plan, spans[HAIRPIN].mark, owner);
            spans[HAIRPIN].mark = SW_NO_INDEX;
            *hairpin = owner;
        } else if (sw_music_mark_class(plan->reading, mark) == SW_MARK_HAIRPIN_END) {
            owner = *hairpin;
        }
        give(plan, mark, owner);
        break;
    }
    case SW_MARK_TIE:
        for (uint32_t part = 0; part < plan->division->parts; part++) {
            if (continues(plan, all, i, part)) {
                give(plan, mark, part);
            }
        }
        break;
    case SW_MARK_ARPEGGIO: /* rolled from hand to hand: the sign goes through both staves */
        plan->mark_parts[mark] = parts;
        plan->connects_arpeggios = plan->connects_arpeggios || (parts & (parts - 1)) != 0;
        break;
    case SW_MARK_GLISSANDO: { /* where it ends, too, if only one part goes there */
        uint8_t both = i + 1 < all->count ? parts & all->list[i + 1].parts : 0;
        plan->mark_parts[mark] = both != 0 ? both : parts;
        break;
    }
    case SW_MARK_PEDAL:
        give_to_lowest(plan, here, mark);
        break;
    case SW_MARK_SPAN_START:
        *text_span = uppermost(parts);
        give(plan, mark, *text_span);
        break;
    case SW_MARK_SPAN_END:
        give(plan, mark, *text_span);
        break;
    case SW_MARK_TEXT:
        if (sw_plan_text_home(plan, mark) == SW_TEXT_BELOW) {
            give_to_lowest(plan, here, mark);
            break;
        }
        give(plan, mark,
             sw_music_mark_direction(plan->reading, mark) == '_' ? lowermost(parts) : uppermost(parts));
        break;
    default:
        if (is_fermata(plan->reading, mark)) { /* everybody waits, also who rests */
            parts = (uint8_t)((1u << plan->division->parts) - 1);
        }
        plan->mark_parts[mark] = parts != 0 ? parts : 1;
        break;
    }
}

/* The sign of a rolled chord where the division asks for it. */
static void add_roll(sw_plan *plan, const item *here)
{
    const bool *rolls = plan->division->event_rolls;
    bool wanted = false;
    for (uint32_t n = 0; rolls != NULL && n < here->notes; n++) {
        wanted = wanted || rolls[here->event + n];
    }
    for (uint32_t part = 0; part < plan->division->parts && wanted; part++) {
        if ((here->parts & 1u << part) != 0) {
            add_text(plan, here->music, part, "\\arpeggio");
            plan->connects_arpeggios = plan->division->change_part == NULL;
        }
    }
}

/* Items that are not heard in this score (of another movement, of another edition) keep their marks in the
 * upper part, which keeps their notes. */
static void give_unheard(sw_plan *plan)
{
    const sw_reading *reading = plan->reading;
    for (uint32_t m = 0; m < reading->music_count; m++) {
        if (!sw_is_item(&reading->music[m]) || plan->first_event[m] != SW_NO_INDEX) {
            continue;
        }
        for (uint32_t c = reading->music[m].first; c != SW_NO_INDEX; c = reading->music[c].next) {
            if (reading->music[c].kind == SW_MUSIC_MARK) {
                give(plan, c, 0);
            }
        }
    }
}

void sw_plan_marks(sw_plan *plan)
{
    give_unheard(plan);
    const sw_score *score = plan->division->score;
    items all = {0};
    for (uint32_t voice = 0; voice < score->voice_count; voice++) {
        if (score->voices[voice].staff != plan->division->staff) {
            continue;
        }
        collect(plan, voice, &all);
        open_span spans[4] = {{SW_NO_INDEX, 0}, {SW_NO_INDEX, 0}, {SW_NO_INDEX, 0}, {SW_NO_INDEX, 0}};
        uint32_t hairpin = 0;
        uint32_t text_span = 0;
        for (size_t i = 0; i < all.count; i++) {
            add_roll(plan, &all.list[i]);
            uint32_t child = plan->reading->music[all.list[i].music].first;
            for (; child != SW_NO_INDEX; child = plan->reading->music[child].next) {
                if (plan->reading->music[child].kind == SW_MUSIC_MARK) {
                    give_mark(plan, &all, i, child, spans, &hairpin, &text_span);
                }
            }
        }
        for (size_t s = 0; s < 4; s++) { /* never ended: an unfinished span stays with its note */
            if (spans[s].mark != SW_NO_INDEX) {
                give(plan, spans[s].mark, uppermost(all.list[spans[s].from].parts));
            }
        }
    }
    free(all.list);
}
