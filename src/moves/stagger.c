/* Lets players who end together leave one after another.
 *
 * Who leaves first follows from what each instrument can fade to: double reeds and the trumpets break off,
 * clarinets and strings go to nothing (common practice, no source; fading on clarinet and flute:
 * Rimsky-Korsakov, Principles of Orchestration). Among equals the harmony stays whole as long as it can
 * (moves/stagger_order.h). The exits stand on beats in the second half of the chord, on half beats or earlier
 * where the beats do not suffice. */
#include <stdlib.h>
#include <string.h>

#include "checks/changeovers.h"
#include "checks/entry.h"
#include "checks/say.h"
#include "moves/choices.h"
#include "moves/linked.h"
#include "moves/opening.h"
#include "moves/stagger_order.h"
#include "write/draft.h"

/* One who ends with the others. */
typedef struct player {
    uint32_t staff;
    uint32_t voice;
    uint32_t event; /* the last note */
    uint32_t begin; /* the first event of those that are tied up to it */
    sw_rational onset;
    int rank;
    unsigned notes; /* see sw_leaver */
} player;

typedef struct plan {
    sw_move *move;
    const sw_stagger_options *options;
    const sw_limits *limits;
    const sw_playing *playing;
    sw_chosen chosen;
    sw_entries *entries; /* by staff */
    bool *is_chosen;     /* by event */
    player *players;
    size_t count;
    size_t capacity;
    sw_rational end;  /* when they end */
    sw_rational step; /* between two possible exits */
    sw_choices choices;
} plan;

/* ---- who leaves first -----------------------------------------------------------------------------------
 */

/* "horn" means horns in all keys. */
static bool is_kind(const char *id, const char *kind, size_t length)
{
    return strncmp(id, kind, length) == 0 && (id[length] == '\0' || strncmp(id + length, "-in-", 4) == 0);
}

static int usual_rank(const sw_instrument *instrument)
{
    static const char *const first[] = {"oboe",        "oboe-d-amore", "english-horn",    "bass-oboe",
                                        "heckelphone", "bassoon",      "contrabassoon",   "trumpet",
                                        "cornet",      "flugelhorn",   "piccolo-trumpet", "bass-trumpet"};
    for (size_t i = 0; i < sizeof first / sizeof first[0]; i++) {
        if (is_kind(instrument->id, first[i], strlen(first[i]))) {
            return 0;
        }
    }
    bool last = strstr(instrument->id, "clarinet") != NULL || instrument->family == SW_STRINGS;
    return instrument->family == SW_BRASS ? 1 : last ? 3 : 2;
}

/* The place of an instrument in the user's list; behind it whom the list does not name. */
static int rank_of(const char *order, const sw_instrument *instrument)
{
    int rank = 0;
    for (const char *word = order; word != NULL && *word != '\0'; rank++) {
        size_t length = strcspn(word, ",");
        const char *family = sw_family_name(instrument->family);
        if (is_kind(instrument->id, word, length) ||
            (strlen(family) == length && strncmp(family, word, length) == 0)) {
            return rank;
        }
        word += length + (word[length] == ',');
    }
    return rank + usual_rank(instrument);
}

static bool is_order(const char *order, const sw_instruments *instruments, char **error)
{
    for (const char *word = order; word != NULL && *word != '\0';) {
        size_t length = strcspn(word, ",");
        bool known = false;
        for (size_t i = 0; i < sw_instruments_count(instruments) && length > 0; i++) {
            const sw_instrument *instrument = sw_instruments_get(instruments, i);
            const char *family = sw_family_name(instrument->family);
            known = known || is_kind(instrument->id, word, length) ||
                    (strlen(family) == length && strncmp(family, word, length) == 0);
        }
        if (!known) {
            sw_buffer text = {0};
            sw_buffer_format(&text,
                             "--order: \"%.*s\" is no instrument and no family; it takes a list such as "
                             "oboe,trumpet,brass,strings",
                             (int)length, word);
            *error = text.data;
            return false;
        }
        word += length + (word[length] == ',');
    }
    return true;
}

/* ---- who ends together ----------------------------------------------------------------------------------
 */

/* The last note of a voice in the places, if silence follows it; SW_NO_INDEX: none. */
static uint32_t last_stroke(const plan *p, const sw_strokes *strokes, uint32_t voice)
{
    uint32_t last = SW_NO_INDEX;
    for (uint32_t i = 0; i < strokes->count; i++) {
        const sw_stroke *stroke = &strokes->items[i];
        if (stroke->voice != voice) {
            continue;
        }
        if (p->is_chosen[stroke->event]) {
            last = i;
        } else if (last != SW_NO_INDEX) {
            return sw_rational_compare(stroke->onset, strokes->items[last].end) > 0 ? last : SW_NO_INDEX;
        }
    }
    return last;
}

/* What is heard of a chord, without octaves: the harmony is that of all staves together. */
static unsigned notes_of(const plan *p, uint32_t staff, uint32_t event)
{
    const sw_score *score = p->chosen.score;
    const sw_entry *entry = sw_entries_at(&p->entries[staff], score->events[event].onset);
    unsigned notes = 0;
    for (uint32_t e = event; e < sw_voice_chord_end(score, event); e++) {
        sw_pitch pitch = score->events[e].pitch;
        if (entry->fit != SW_TRANSPOSITION_NONE) {
            pitch = sw_pitch_transpose(pitch, entry->transposition);
        }
        notes |= 1U << ((sw_pitch_semitones(pitch) % 12 + 12) % 12);
    }
    return notes;
}

static void add_voice(plan *p, uint32_t staff, const sw_strokes *strokes, uint32_t voice)
{
    const sw_score *score = p->chosen.score;
    const sw_instrument *instrument = p->playing->instruments[staff];
    const sw_limit *limit = sw_limits_of(p->limits, instrument);
    uint32_t last = last_stroke(p, strokes, voice);
    if (last == SW_NO_INDEX || (limit != NULL && limit->rings)) {
        return;
    }
    const sw_event *event = &score->events[strokes->items[last].event];
    if (event->kind != SW_EVENT_NOTE || (event->flags & SW_EVENT_GRACE) != 0) {
        return;
    }
    uint32_t first = sw_stroke_begin(strokes, last);
    p->players = sw_grow(p->players, p->count, &p->capacity, sizeof *p->players);
    p->players[p->count++] = (player){.staff = staff,
                                      .voice = voice,
                                      .event = strokes->items[last].event,
                                      .begin = strokes->items[first].event,
                                      .onset = strokes->items[first].onset,
                                      .rank = rank_of(p->options->order, instrument),
                                      .notes = notes_of(p, staff, strokes->items[last].event)};
}

static sw_rational end_of(const plan *p, const player *who)
{
    return sw_event_end(&p->chosen.score->events[who->event]);
}

/* Keeps those who end when most end; of equally many the later ones. */
static void keep_group(plan *p)
{
    size_t most = 0;
    for (size_t i = 0; i < p->count; i++) {
        size_t together = 0;
        for (size_t k = 0; k < p->count; k++) {
            together += sw_rational_equal(end_of(p, &p->players[k]), end_of(p, &p->players[i]));
        }
        int later = sw_rational_compare(end_of(p, &p->players[i]), p->end);
        if (together > most || (together == most && later > 0)) {
            most = together;
            p->end = end_of(p, &p->players[i]);
        }
    }
    size_t kept = 0;
    for (size_t i = 0; i < p->count; i++) {
        if (sw_rational_equal(end_of(p, &p->players[i]), p->end)) {
            p->players[kept++] = p->players[i];
        }
    }
    p->count = kept;
}

static void find_players(plan *p)
{
    const sw_score *score = p->chosen.score;
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        if (p->playing->instruments[staff] == NULL || sw_staff_is_combined(p->chosen.reading, score, staff)) {
            continue;
        }
        sw_strokes strokes = sw_strokes_of_staff(p->chosen.reading, score, staff);
        for (uint32_t voice = 0; voice < score->voice_count; voice++) {
            if (score->voices[voice].staff == staff) {
                add_voice(p, staff, &strokes, voice);
            }
        }
        free(strokes.items);
    }
    keep_group(p);
}

/* ---- when -----------------------------------------------------------------------------------------------
 */

static sw_rational half_of(sw_rational value)
{
    return sw_rational_div(value, sw_rational_make(2, 1));
}

/* The beat of the bar in which they end. */
static sw_rational beat_of(const plan *p)
{
    const sw_score *score = p->chosen.score;
    uint32_t number = sw_score_bar_at(score, sw_rational_sub(p->end, sw_rational_make(1, 64)));
    if (number == SW_NO_INDEX) {
        return sw_rational_make(1, 4);
    }
    const sw_bar *bar = &score->bars[number];
    bool compound = bar->beats % 3 == 0 && bar->beats > 3 && bar->beat_value >= 8;
    return sw_rational_make(compound ? 3 : 1, bar->beat_value);
}

/* Whether a player's note is long enough that it can end one step earlier. */
static bool can_leave(const plan *p, const player *who, sw_rational step)
{
    sw_rational least = sw_rational_add(who->onset, sw_rational_add(step, step));
    return sw_rational_compare(least, p->end) <= 0;
}

/* How many exits lie between a moment and the end, both included. */
static int64_t slots_from(const plan *p, sw_rational from)
{
    return sw_rational_floor(sw_rational_div(sw_rational_sub(p->end, from), p->step)) + 1;
}

/* Chooses beats or half beats, drops who can't leave earlier, and returns the number of exits. */
static int64_t choose_slots(plan *p)
{
    sw_rational beat = beat_of(p);
    int64_t slots = 0;
    for (int half = 0; half < 2; half++) {
        p->step = half == 0 ? beat : half_of(beat);
        size_t able = 0;
        sw_rational start = sw_rational_zero();
        for (size_t i = 0; i < p->count; i++) {
            able += can_leave(p, &p->players[i], p->step);
            start =
                sw_rational_max(start, can_leave(p, &p->players[i], p->step) ? p->players[i].onset : start);
        }
        sw_rational middle = half_of(sw_rational_add(start, p->end));
        slots = slots_from(p, middle);
        slots = slots >= (int64_t)able ? slots : slots_from(p, sw_rational_add(start, p->step));
        if (able == p->count && slots >= (int64_t)able) {
            break;
        }
    }
    size_t kept = 0;
    for (size_t i = 0; i < p->count; i++) {
        if (can_leave(p, &p->players[i], p->step)) {
            p->players[kept++] = p->players[i];
            continue;
        }
        char label[32];
        sw_buffer text = {0};
        sw_buffer_format(&text, "%s: the last note is too short to leave earlier",
                         sw_staff_label(p->chosen.reading, p->chosen.score, p->players[i].staff, label));
        sw_move_tell(p->move, "stagger", p->chosen.reading, &p->chosen.score->events[p->players[i].event],
                     sw_buffer_text(&text));
        sw_buffer_free(&text);
    }
    p->count = kept;
    return slots;
}

/* ---- what is written ------------------------------------------------------------------------------------
 */

/* The note of those tied together that sounds just before a moment. */
static uint32_t note_before(const plan *p, const player *who, sw_rational moment)
{
    const sw_score *score = p->chosen.score;
    uint32_t found = who->begin;
    for (uint32_t e = who->begin; e != SW_NO_INDEX; e = sw_voice_next(score, e)) {
        if (sw_rational_compare(score->events[e].onset, moment) >= 0) {
            break;
        }
        found = e;
    }
    return found;
}

/* What ends a hairpin behind the exit goes to the exit. */
static void end_hairpins(plan *p, const player *who, sw_rational exit)
{
    const sw_score *score = p->chosen.score;
    const sw_reading *reading = p->chosen.reading;
    uint32_t holder = who->begin; /* the note in which the exit lies */
    bool open = false;
    for (uint32_t e = who->begin; e != SW_NO_INDEX; e = sw_voice_next(score, e)) {
        const sw_event *event = &score->events[e];
        if (sw_rational_compare(event->onset, p->end) > 0) {
            break;
        }
        holder = sw_rational_compare(event->onset, exit) <= 0 ? e : holder;
        for (uint32_t m = reading->music[event->chord].first; m != SW_NO_INDEX; m = reading->music[m].next) {
            if (reading->music[m].kind != SW_MUSIC_MARK) {
                continue;
            }
            sw_mark_class class = sw_music_mark_class(reading, m);
            bool ends = class == SW_MARK_HAIRPIN_END || class == SW_MARK_DYNAMIC;
            if (ends && open && sw_rational_compare(event->onset, exit) > 0) {
                sw_slice text = sw_music_slice(reading, m);
                sw_choices_add(&p->choices,
                               (sw_change){.kind = SW_CHANGE_REMOVE_MARK, .event = e, .mark = m});
                sw_choices_add(&p->choices, (sw_change){.kind = SW_CHANGE_ADD_MARK,
                                                        .event = holder,
                                                        .moment = exit,
                                                        .text = sw_arena_copy(p->playing->arena, text)});
            }
            open = class == SW_MARK_HAIRPIN_START || (open && !ends);
        }
    }
}

/* ", the last with E flat": the notes that nobody holds who leaves later. */
static void say_last(const player *who, unsigned later, sw_buffer *text)
{
    static const char *const names[] = {"C",       "C sharp", "D",      "E flat", "E",      "F",
                                        "F sharp", "G",       "A flat", "A",      "B flat", "B"};
    bool first = true;
    for (int note = 0; note < 12; note++) {
        if (((who->notes & ~later) >> note & 1U) != 0) {
            sw_buffer_format(text, "%s%s", first ? ", the last with " : " and ", names[note]);
            first = false;
        }
    }
}

static void choose(plan *p, const player *who, sw_rational exit, unsigned later)
{
    const sw_score *score = p->chosen.score;
    char place[SW_SAY];
    char label[32];
    sw_buffer text = {0};
    bool stays = sw_rational_equal(exit, p->end);
    sw_buffer_format(&text, "%s, %s: %s", sw_say_place(score, exit, place),
                     sw_staff_label(p->chosen.reading, score, who->staff, label),
                     stays ? "stays to the end" : "leaves");
    say_last(who, later, &text);
    sw_choices_begin(&p->choices, who->event, "%s", sw_buffer_text(&text));
    sw_buffer_free(&text);
    if (!stays) {
        sw_choices_add(
            &p->choices,
            (sw_change){.kind = SW_CHANGE_END, .event = note_before(p, who, exit), .moment = exit});
        end_hairpins(p, who, exit);
    }
}

/* Whether a fermata holds the last note of one of them. */
static bool is_held(const plan *p)
{
    for (size_t i = 0; i < p->count; i++) {
        const sw_event *last = &p->chosen.score->events[note_before(p, &p->players[i], p->end)];
        if (sw_event_has_mark(p->chosen.reading, last, sw_mark_is_fermata)) {
            return true;
        }
    }
    return false;
}

static bool make_plan(plan *p, char **error)
{
    find_players(p);
    if (is_held(p)) {
        *error = strdup("a fermata holds these notes, so the conductor says who leaves when; take it off "
                        "first, or choose "
                        "other bars");
        return false;
    }
    int64_t slots = choose_slots(p);
    if (p->count > SW_STAGGER_MOST) {
        *error = strdup("more than 16 players end together here, which leaves them no time to go one by one; "
                        "choose fewer with --staff, --bars or --lines");
        return false;
    }
    if (p->count < 2) {
        sw_buffer_string(&p->move->notes, "note: no two players end together here who could leave apart\n");
        return true;
    }
    sw_leaver leavers[SW_STAGGER_MOST];
    uint8_t order[SW_STAGGER_MOST];
    for (size_t i = 0; i < p->count; i++) {
        leavers[i] = (sw_leaver){p->players[i].rank, p->players[i].notes};
    }
    sw_stagger_solve(leavers, p->count, order);
    for (size_t k = 0; k < p->count; k++) {
        unsigned later = 0;
        for (size_t i = k + 1; i < p->count; i++) {
            later |= leavers[order[i]].notes;
        }
        int64_t slot = (int64_t)k * (slots - 1) / (int64_t)(p->count - 1); /* the last one stays alone */
        sw_rational back = sw_rational_mul(p->step, sw_rational_make(slots - 1 - slot, 1));
        choose(p, &p->players[order[k]], sw_rational_sub(p->end, back), later);
    }
    return true;
}

static bool run(sw_move *move, const sw_stagger_options *options, const sw_read_options *reading_options,
                char **error)
{
    sw_opening o;
    if (!sw_opening_find(move, options->film, &options->places, &o, error)) {
        return false;
    }
    plan p = {.move = move,
              .options = options,
              .limits = sw_film_limits(o.figures.film),
              .chosen = o.chosen,
              .entries = sw_entries_of_score(o.instruments, o.chosen.reading, o.chosen.score, o.seating),
              .playing = o.playing,
              .is_chosen = sw_chosen_map(&o.chosen),
              .end = sw_rational_zero(),
              .choices = {.move = "stagger"}};
    bool done = is_order(options->order, o.instruments, error) && make_plan(&p, error);
    if (done) {
        sw_edit_request request = sw_chosen_request(move, &o.chosen, options->elsewhere, reading_options);
        sw_choices_make(move, &p.choices, &request);
    }
    sw_choices_free(&p.choices);
    free(p.players);
    free(p.is_chosen);
    sw_entries_free(p.entries, o.chosen.score->staff_count);
    sw_opening_free(&o);
    return done;
}

sw_move *sw_move_stagger(const char *path, const sw_stagger_options *options,
                         const sw_read_options *reading_options, char **error)
{
    sw_move *move = sw_move_open(path, reading_options, error);
    return sw_move_close(move, move != NULL && run(move, options, reading_options, error));
}
