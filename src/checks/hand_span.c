/* Chords that two hands cannot strike: too many notes, or too far apart, however they are shared out.
 *
 * Only notes that are struck together count. What still sounds may be held by a pedal or ring by itself;
 * whether hands that hold notes can do it is a question for a transformation that shares the music out. */
#include <stdlib.h>
#include <string.h>

#include "checks/entry.h"
#include "checks/rules.h"
#include "checks/say.h"
#include "players/hand_chord.h"
#include "players/staff_instrument.h"

/* The staves of one player. */
typedef struct player {
    const sw_instrument *instrument;
    bool
        assumed; /* nothing names the instrument: a brace without a name is taken for a piano, with caution */
    bool feet;   /* an organ without a staff for the pedals: the lowest note may be theirs */
    uint32_t brace;
    uint32_t staff; /* the first */
} player;

/* One key that is struck at a moment. */
typedef struct stroke {
    sw_rational onset;
    sw_rational grace;
    sw_chord_key key;
    sw_pitch pitch;
    const sw_event *event;
} stroke;

typedef struct strokes {
    stroke *items;
    size_t count;
    size_t capacity;
} strokes;

/* The end of a tied note: a note of this pitch that begins here is not struck. */
typedef struct tied {
    sw_rational end;
    sw_pitch pitch;
} tied;

typedef struct ties {
    tied *items;
    size_t count;
    size_t capacity;
} ties;

/* ---- collecting what is struck ------------------------------------------------------------------------- */

static int compare_moments(sw_rational onset_a, sw_rational grace_a, sw_rational onset_b, sw_rational grace_b)
{
    int order = sw_rational_compare(onset_a, onset_b);
    return order != 0 ? order : sw_rational_compare(grace_a, grace_b);
}

/* By moment, then by height; of notes on one key the rolled one first. */
static int compare_strokes(const void *a, const void *b)
{
    const stroke *x = a;
    const stroke *y = b;
    int order = compare_moments(x->onset, x->grace, y->onset, y->grace);
    if (order == 0) {
        order = x->key.semitone - y->key.semitone;
    }
    if (order == 0) {
        order = x->key.step - y->key.step;
    }
    return order != 0 ? order : (int)y->key.rolled - (int)x->key.rolled;
}

static int compare_ties(const void *a, const void *b)
{
    const tied *x = a;
    const tied *y = b;
    int order = sw_rational_compare(x->end, y->end);
    return order != 0 ? order : sw_pitch_quarter_tones(x->pitch) - sw_pitch_quarter_tones(y->pitch);
}

static bool is_tie(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_TIE;
}

static bool is_arpeggio(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_ARPEGGIO;
}

/* An organist's feet take what stands on the staff of the pedals. */
static bool is_pedal_staff(const sw_check *check, const sw_score *score, uint32_t staff)
{
    const sw_staff *s = &score->staves[staff];
    const uint32_t names[] = {s->instrument, s->short_instrument, s->id, s->variable};
    for (size_t i = 0; i < 4; i++) {
        if (strcasestr(sw_reading_name(check->reading, names[i]), "ped") != NULL) {
            return true;
        }
    }
    return false;
}

static bool plays_here(const sw_check *check, const sw_score *score, const player *p, uint32_t staff)
{
    if (p->brace == SW_NO_INDEX) {
        return staff == p->staff;
    }
    return sw_staff_brace(check->reading, score, staff) == p->brace && !is_pedal_staff(check, score, staff);
}

/* Adds what is played on a staff, and the ties from there. */
static void add_staff(const sw_check *check, const sw_score *score, uint32_t staff, strokes *list, ties *held)
{
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *e = &score->events[i];
        if (!sw_event_is_played(check->reading, score, e)) {
            continue;
        }
        if (sw_event_has_mark(check->reading, e, is_tie)) {
            held->items = sw_grow(held->items, held->count, &held->capacity, sizeof *held->items);
            held->items[held->count++] = (tied){sw_event_end(e), e->pitch};
        }
        list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
        list->items[list->count++] = (stroke){
            .onset = e->onset,
            .grace = {e->grace_num, e->grace_den},
            .key = {.step = sw_pitch_staff_steps(e->pitch),
                    .semitone = sw_pitch_midi(e->pitch),
                    .rolled = sw_event_has_mark(check->reading, e, is_arpeggio)},
            .pitch = e->pitch,
            .event = e,
        };
    }
}

/* `staves` says for each staff whether the player plays it. */
static strokes collect(const sw_check *check, const sw_score *score, const bool *staves)
{
    ties held = {0};
    strokes list = {0};
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        if (staves[staff]) {
            add_staff(check, score, staff, &list, &held);
        }
    }
    if (held.count > 0) {
        qsort(held.items, held.count, sizeof *held.items, compare_ties);
        size_t struck = 0;
        for (size_t i = 0; i < list.count; i++) {
            tied wanted = {list.items[i].onset, list.items[i].pitch};
            if (bsearch(&wanted, held.items, held.count, sizeof wanted, compare_ties) == NULL) {
                list.items[struck++] = list.items[i];
            }
        }
        list.count = struck;
    }
    free(held.items);
    sw_sort(list.items, list.count, sizeof *list.items, compare_strokes);
    return list;
}

/* ---- what to say --------------------------------------------------------------------------------------- */

static bool is_mallets(const sw_instrument *instrument)
{
    return instrument->family == SW_PERCUSSION && instrument->fingers <= 2;
}

/* "A1 E2 | A3 C sharp 4": the notes of the two hands in the best sharing; where there are too many to be
 * shared, the outer ones: "A1 to E6". */
static void say_notes(const stroke *const *chord, size_t count, const sw_chord_split *best, sw_buffer *text)
{
    char pitch[2][SW_SAY];
    if (best->excess > 0) {
        sw_buffer_format(text, "%s to %s", sw_say_pitch(chord[0]->pitch, pitch[0]),
                         sw_say_pitch(chord[count - 1]->pitch, pitch[1]));
        return;
    }
    for (size_t i = 0; i < count; i++) {
        const char *before = i == 0 ? "" : i == best->split ? " | " : " ";
        sw_buffer_format(text, "%s%s", before, sw_say_pitch(chord[i]->pitch, pitch[0]));
    }
}

static void say_excess(const sw_instrument *instrument, size_t count, const sw_chord_split *best, bool rolled,
                       sw_buffer *text)
{
    char words[2][SW_SAY];
    int room = 2 * instrument->fingers;
    if ((int)count > room) {
        sw_buffer_format(text, "two hands have %d %s; leave out %d%s or share with another player", room,
                         is_mallets(instrument) ? "mallets" : "fingers", (int)count - room,
                         rolled || is_mallets(instrument) ? "" : ", roll it");
        return;
    }
    int most = instrument->extreme_span > instrument->span ? instrument->extreme_span : instrument->span;
    bool beyond = best->spread > most - 1;
    sw_buffer_format(text, "at best one hand spans %s, and %s is %s; ", sw_say_span(best->spread, words[0]),
                     sw_say_span((beyond ? most : instrument->span) - 1, words[1]),
                     beyond ? "the most" : "safe");
    sw_buffer_string(text, is_mallets(instrument) ? "close it up or thin it out"
                                                  : "roll it, close it up or thin it out");
}

static void report(sw_check *check, const sw_score *score, const player *p, const stroke *const *chord,
                   size_t count, const sw_chord_split *best)
{
    bool rolled = false;
    const sw_music *place = NULL; /* the first written of its notes */
    for (size_t i = 0; i < count; i++) {
        const sw_music *m = &check->reading->music[chord[i]->event->chord];
        rolled = rolled || chord[i]->key.rolled;
        if (place == NULL || m->file < place->file || (m->file == place->file && m->start < place->start)) {
            place = m;
        }
    }
    bool too_many = best->excess > 0;
    bool beyond_all = too_many ? !rolled : best->spread > p->instrument->extreme_span - 1;
    bool certain = beyond_all && !p->assumed;
    char words[2][SW_SAY];
    char label[32];
    const sw_group *brace = p->brace == SW_NO_INDEX ? NULL : &score->groups[p->brace];
    bool named = brace != NULL && brace->instrument != 0;
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s, %s%s: %s%s, ", sw_say_place(score, chord[0]->onset, words[0]),
                     named ? sw_reading_name(check->reading, brace->instrument)
                           : sw_staff_label(check->reading, score, p->staff, label),
                     p->assumed ? " (taken for a piano)" : "", sw_say_count(count, "note", words[1]),
                     rolled ? " rolled" : " at once");
    say_notes(chord, count, best, &text);
    sw_buffer_string(&text, ": ");
    say_excess(p->instrument, count, best, rolled, &text);
    sw_findings_add(check->findings, certain ? SW_ERROR : SW_WARNING, "hand-span", place->file, place->start,
                    place->end, "%s", sw_buffer_text(&text));
    sw_buffer_free(&text);
}

/* ---- the rule ------------------------------------------------------------------------------------------ */

/* The same key twice: on the harp two spellings are two strings, on keys and bars one. */
static bool same_key(const sw_instrument *instrument, const sw_chord_key *a, const sw_chord_key *b)
{
    bool by_string = instrument->family == SW_PLUCKED;
    return a->semitone == b->semitone && (!by_string || a->step == b->step);
}

static void check_player(sw_check *check, const sw_score *score, const player *p, const strokes *list)
{
    const stroke **chord = sw_alloc((list->count + 1) * sizeof(const stroke *));
    sw_chord_key *keys = sw_alloc((list->count + 1) * sizeof *keys);
    for (size_t first = 0, end; first < list->count; first = end) {
        size_t count = 0;
        for (end = first; end < list->count; end++) {
            const stroke *s = &list->items[end];
            if (compare_moments(s->onset, s->grace, list->items[first].onset, list->items[first].grace) !=
                0) {
                break;
            }
            if (count == 0 || !same_key(p->instrument, &s->key, &keys[count - 1])) {
                chord[count] = s;
                keys[count++] = s->key;
            }
        }
        size_t feet = p->feet && count > 0;
        sw_chord_split best = sw_chord_share(keys + feet, count - feet, p->instrument->fingers);
        int span = p->assumed ? p->instrument->extreme_span : p->instrument->span;
        if (best.excess > 0 || best.spread > span - 1) {
            report(check, score, p, chord + feet, count - feet, &best);
        }
    }
    free(chord);
    free(keys);
}

/* The player whose first staff this is; false when there is none with hands. */
static bool player_of(const sw_check *check, const sw_score *score, uint32_t staff, player *p)
{
    *p = (player){.staff = staff, .brace = sw_staff_brace(check->reading, score, staff)};
    p->instrument = sw_staff_instrument(check->instruments, check->reading, score, staff);
    for (uint32_t before = 0; before < staff && p->brace != SW_NO_INDEX; before++) {
        if (sw_staff_brace(check->reading, score, before) == p->brace) {
            return false; /* looked at already */
        }
    }
    for (uint32_t s = staff; s < score->staff_count && p->brace != SW_NO_INDEX; s++) {
        const sw_instrument *other = sw_staff_instrument(check->instruments, check->reading, score, s);
        if (sw_staff_brace(check->reading, score, s) == p->brace && p->instrument == NULL) {
            p->instrument = other;
        }
    }
    p->feet = p->instrument != NULL && strcmp(p->instrument->id, "organ") == 0;
    for (uint32_t s = 0; s < score->staff_count; s++) {
        p->feet = p->feet && !is_pedal_staff(check, score, s);
    }
    if (p->instrument == NULL && p->brace != SW_NO_INDEX) {
        p->instrument = sw_instruments_by_id(check->instruments, "piano");
        p->assumed = true;
    }
    return p->instrument != NULL && p->instrument->fingers > 0;
}

static void run(sw_check *check)
{
    for (size_t i = 0; i < check->reading->score_count; i++) {
        const sw_score *score = &check->reading->scores[i];
        if (score->in_markup) {
            continue;
        }
        bool *staves = sw_alloc(score->staff_count + 1);
        for (uint32_t staff = 0; staff < score->staff_count; staff++) {
            player p;
            if (!player_of(check, score, staff, &p)) {
                continue;
            }
            for (uint32_t s = 0; s < score->staff_count; s++) {
                staves[s] = plays_here(check, score, &p, s);
            }
            strokes list = collect(check, score, staves);
            check_player(check, score, &p, &list);
            free(list.items);
        }
        free(staves);
    }
}

const sw_rule sw_rule_hand_span = {
    .name = "hand-span",
    .summary = "a chord that two hands can't strike",
    .severity = SW_ERROR,
    .explain = "For harp, keyboards and mallets: all notes that are struck at one moment on the staves of "
               "one player (those of\n"
               "one PianoStaff or GrandStaff, or a single staff) are shared between two hands in every "
               "possible way. If each way\n"
               "leaves a note without a finger, or asks a hand for more than it can span, the player has to "
               "leave notes out, and\n"
               "it will not be you who chooses which.\n\n"
               "The figures: harp four fingers a hand (the little finger is not used) and a tenth; keyboards "
               "five fingers, a\n"
               "ninth for everybody (more: warning) and a tenth for large hands (more: error); mallets two a "
               "hand, so four notes\n"
               "at most, an octave, and more only high on the instrument. stavewright explain hand-span harp "
               "shows where they\n"
               "come from. In a rolled chord (\\arpeggio) the span does not matter, and too many notes are "
               "only a warning, as a\n"
               "hand may go over. Notes that still sound from before do not count: pedal or resonance may "
               "hold them. A\n"
               "PianoStaff without a name is taken for a piano, but then only what no pianist can play is "
               "reported, as a\n"
               "warning. Of an organ without a staff for the pedals the lowest note is the feet's.\n\n"
               "To mend: roll the chord, bring the groups together, leave doublings out, or give notes to a "
               "second player.\n",
    .run = run,
};
