/* Techniques through time: which words of a staff count for which note. */
#include <stdlib.h>
#include <string.h>

#include "players/endings.h"
#include "players/playing.h"
#include "players/staff_instrument.h"

enum {
    SAID = SW_TECHNIQUE_GROUPS, /* things that one text may say */
    FAMILIES = SW_VOICE + 2,    /* with the unknown one */
    PLAYERS = 8                 /* of one staff, that are told apart */
};

/* What a text says to a family: read once, however often it stands in the score. */
typedef struct reading_of_text {
    sw_technique_said said[SAID];
    const char *parts[SAID]; /* the part of the text that says it: "2. senza sord." */
    size_t count;
    bool in_brackets;
} reading_of_text;

/* A word with the voice in which it is written. */
typedef struct written_word {
    sw_technique_word word;
    uint32_t voice; /* SW_NO_INDEX: in none */
    size_t order;   /* in the order of the text */
} written_word;

/* The events of a voice: [first, end). */
typedef struct voice_events {
    size_t first;
    size_t end;
} voice_events;

typedef struct builder {
    const sw_techniques *techniques;
    const sw_reading *reading;
    const sw_score *score;
    const sw_instruments *known;
    const sw_instrument **instruments; /* by staff */
    sw_seated_notes who;
    reading_of_text **texts; /* by name and family */
    voice_events *voices;
    written_word *words;
    size_t word_count;
    size_t word_capacity;
    sw_endings endings;
    sw_technique_state *states;
    size_t state_count;
    size_t state_capacity;
    uint32_t *state_of;
    sw_arena *arena;
} builder;

/* ---- the words ---------------------------------------------------------------------------------------- */

/* Where the part of a text that begins at `from` ends: in front of a comma or the like with a number behind
 * it, "1. con sord., 2. senza sord.". */
static size_t part_end(const char *text, size_t from)
{
    size_t end = from;
    while (text[end] != '\0') {
        if (strchr(",;/\n", text[end]) != NULL) {
            size_t next = end + 1 + strspn(text + end + 1, " ");
            if (text[next] >= '1' && text[next] <= '9' && (text[next + 1] == '.' || text[next + 1] == ' ')) {
                return end;
            }
        }
        end++;
    }
    return end;
}

/* Reads a text part by part; one that says nothing goes on in the next: "1., 2. con sord." */
static void read_parts(const builder *b, const sw_family *family, const char *whole, reading_of_text *text)
{
    for (size_t from = 0, end = 0; whole[end] != '\0'; end += whole[end] != '\0') {
        end = part_end(whole, end);
        sw_slice part = {whole + from, end - from};
        size_t count = sw_techniques_read(b->techniques, family, part, text->said + text->count,
                                          SAID - text->count, &text->in_brackets);
        for (size_t i = 0; i < count; i++) {
            text->parts[text->count++] = sw_arena_format(b->arena, "%.*s", (int)part.length, part.data);
        }
        from = count > 0 ? end + 1 : from;
    }
    sw_techniques_read(b->techniques, family, sw_slice_of(whole), NULL, 0, &text->in_brackets);
}

static const reading_of_text *read_text(builder *b, uint32_t staff, uint32_t mark)
{
    const sw_instrument *instrument = b->instruments[staff];
    size_t family = instrument == NULL ? FAMILIES - 1 : (size_t)instrument->family;
    size_t slot = b->reading->music[mark].name * (size_t)FAMILIES + family;
    if (b->texts[slot] == NULL) {
        reading_of_text *text = sw_arena_alloc(b->arena, sizeof *text);
        *text = (reading_of_text){.count = 0};
        read_parts(b, instrument == NULL ? NULL : &instrument->family, sw_music_mark_text(b->reading, mark),
                   text);
        b->texts[slot] = text;
    }
    return b->texts[slot];
}

/* ---- players of one staff -------------------------------------------------------------------------------
 */

static bool is_wind(const sw_instrument *instrument)
{
    return instrument != NULL && (instrument->family == SW_WOODWIND || instrument->family == SW_BRASS);
}

/* How many players of a staff have ways of playing of their own: those of winds. */
static size_t players_of(const builder *b, uint32_t staff)
{
    if (b->who.ranges == NULL || !is_wind(b->instruments[staff]) ||
        b->who.seating->staves[staff].count == 0) {
        return 1;
    }
    size_t count = b->who.seating->spans[b->who.seating->staves[staff].first].all_count;
    return count > PLAYERS ? 1 : count;
}

/* The player at a place: they keep their order in all spans. */
static uint32_t player_at(const builder *b, uint32_t staff, size_t place)
{
    const sw_seating *seating = b->who.seating;
    return seating->seats[seating->spans[seating->staves[staff].first].all_first + place].player;
}

/* The place of (the first of) those who play an event, of `players`. */
static size_t place_of(const builder *b, uint32_t staff, size_t event, size_t players)
{
    if (players == 1 || b->who.ranges[event].first == b->who.ranges[event].end) {
        return 0;
    }
    size_t place = 0;
    uint32_t player = b->who.seating->seats[b->who.ranges[event].first].player;
    while (place + 1 < players && player_at(b, staff, place) != player) {
        place++;
    }
    return place;
}

/* The players whom a text names ("2. con sord."), as bits; 0: none. */
static unsigned players_named(const builder *b, uint32_t staff, const char *text)
{
    size_t players = players_of(b, staff);
    if (players == 1) {
        return 0;
    }
    sw_chair_text said = sw_chair_text_read(b->known, b->instruments[staff], text);
    unsigned named = 0;
    for (size_t place = 0; place < players; place++) {
        unsigned number = b->who.seating->players[player_at(b, staff, place)].number;
        for (size_t i = 0; i < said.number_count; i++) {
            named |= said.numbers[i] == (number == 0 ? place + 1 : number) ? 1U << place : 0;
        }
    }
    return named;
}

static void add_text(builder *b, sw_rational onset, uint32_t staff, uint32_t voice, uint32_t mark)
{
    const reading_of_text *text = read_text(b, staff, mark);
    for (size_t i = 0; i < text->count; i++) {
        b->words = sw_grow(b->words, b->word_count, &b->word_capacity, sizeof *b->words);
        b->words[b->word_count] = (written_word){.word = {.onset = onset,
                                                          .staff = staff,
                                                          .voice = SW_NO_INDEX,
                                                          .mark = mark,
                                                          .technique = text->said[i].technique,
                                                          .before = text->said[i].technique,
                                                          .players = players_named(b, staff, text->parts[i]),
                                                          .half = text->said[i].half,
                                                          .reminder = text->in_brackets},
                                                 .voice = voice,
                                                 .order = b->word_count};
        b->word_count++;
    }
}

static void add_texts_of(builder *b, uint32_t music, sw_rational onset, uint32_t staff, uint32_t voice)
{
    for (uint32_t m = b->reading->music[music].first; m != SW_NO_INDEX; m = b->reading->music[m].next) {
        if (b->reading->music[m].kind == SW_MUSIC_MARK && b->reading->music[m].name != 0) {
            add_text(b, onset, staff, voice, m);
        }
    }
}

static bool is_his(const sw_event *event)
{
    return (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) == 0;
}

static void collect_words(builder *b)
{
    const sw_score *score = b->score;
    const sw_event *before = NULL;
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (!is_his(event)) {
            continue;
        }
        uint32_t staff = score->voices[event->voice].staff;
        bool same_chord = before != NULL && before->chord == event->chord && before->voice == event->voice &&
                          sw_rational_equal(before->onset, event->onset);
        if (!same_chord) {
            add_texts_of(b, event->chord, event->onset, staff, event->voice);
        }
        if (event->music != event->chord && b->reading->music[event->chord].kind == SW_MUSIC_CHORD) {
            add_texts_of(b, event->music, event->onset, staff, event->voice);
        }
        before = event;
    }
    for (size_t i = 0; i < score->setting_count; i++) { /* <>^"pizz." */
        const sw_setting *setting = &score->settings[i];
        if (b->reading->music[setting->music].kind == SW_MUSIC_CHORD && setting->staff != SW_NO_INDEX) {
            add_texts_of(b, setting->music, setting->onset, setting->staff, setting->voice);
        }
    }
}

static int compare_words(const void *a, const void *b)
{
    const written_word *x = a;
    const written_word *y = b;
    if (x->word.staff != y->word.staff) {
        return x->word.staff < y->word.staff ? -1 : 1;
    }
    int order = sw_rational_compare(x->word.onset, y->word.onset);
    return order != 0 ? order : (x->order > y->order) - (x->order < y->order);
}

/* ---- for whom a word holds ---------------------------------------------------------------------------- */

static void find_voices(builder *b)
{
    b->voices = sw_arena_alloc(b->arena, (b->score->voice_count + 1) * sizeof *b->voices);
    for (size_t i = 0; i < b->score->event_count; i++) {
        voice_events *voice = &b->voices[b->score->events[i].voice];
        voice->first = voice->end == 0 ? i : voice->first;
        voice->end = i + 1;
    }
}

/* Whether a voice plays or rests at a moment, as opposed to having nothing but skips there. */
static bool is_present(const builder *b, uint32_t voice, sw_rational onset)
{
    size_t low = b->voices[voice].first;
    size_t high = b->voices[voice].end;
    while (high > low) { /* the last event that begins not later */
        size_t middle = (low + high) / 2;
        if (sw_rational_compare(b->score->events[middle].onset, onset) <= 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    if (low == b->voices[voice].first) {
        return false;
    }
    const sw_event *event = &b->score->events[low - 1];
    return is_his(event) && event->kind != SW_EVENT_SKIP &&
           sw_rational_compare(sw_event_end(event), onset) > 0;
}

static bool others_are_present(const builder *b, const written_word *w)
{
    for (uint32_t voice = 0; voice < b->score->voice_count; voice++) {
        if (voice != w->voice && b->score->voices[voice].staff == w->word.staff &&
            is_present(b, voice, w->word.onset)) {
            return true;
        }
    }
    return false;
}

static uint8_t group_of(const builder *b, uint8_t technique)
{
    return sw_techniques_get(b->techniques, technique)->group;
}

/* Another voice says something else of the same group at the same moment. */
static bool is_contradicted(const builder *b, size_t number)
{
    const written_word *w = &b->words[number];
    for (int step = -1; step <= 1; step += 2) {
        for (size_t i = number + (size_t)step; i < b->word_count; i += (size_t)step) {
            const written_word *other = &b->words[i];
            if (other->word.staff != w->word.staff || !sw_rational_equal(other->word.onset, w->word.onset)) {
                break;
            }
            if (other->voice != w->voice && other->word.technique != w->word.technique &&
                group_of(b, other->word.technique) == group_of(b, w->word.technique)) {
                return true;
            }
        }
    }
    return false;
}

static void settle_scopes(builder *b)
{
    for (size_t i = 0; i < b->word_count; i++) {
        written_word *w = &b->words[i];
        const sw_instrument *instrument = b->instruments[w->word.staff];
        bool winds = is_wind(instrument);
        bool own = w->word.players == 0 && w->voice != SW_NO_INDEX &&
                   is_present(b, w->voice, w->word.onset) &&
                   ((winds && others_are_present(b, w)) || is_contradicted(b, i));
        w->word.voice = own ? w->voice : SW_NO_INDEX;
    }
}

/* ---- states ------------------------------------------------------------------------------------------- */

static sw_technique_state plain_state(const builder *b)
{
    sw_technique_state state = {{0}, {0}};
    for (size_t g = 0; g < sw_techniques_group_count(b->techniques); g++) {
        state.now[g] = state.half[g] = sw_techniques_group(b->techniques, g)->plain;
    }
    return state;
}

/* Sets what a word says. `last`: the word before it, which may speak of the other half. */
static void apply(const builder *b, written_word *w, const written_word *last, sw_technique_state *state)
{
    uint8_t group = group_of(b, w->word.technique);
    bool second = w->word.half && last != NULL && last->word.half && last->word.mark == w->word.mark &&
                  group_of(b, last->word.technique) == group;
    if (w->word.before == w->word.technique) { /* unless another voice has told */
        w->word.before = state->now[group] != w->word.technique ? state->now[group] : state->half[group];
    }
    if (!w->word.half || second) {
        state->now[group] = w->word.technique;
    }
    if (!w->word.half || !second) {
        state->half[group] = w->word.technique;
    }
}

static uint32_t add_state(builder *b, const sw_technique_state *state)
{
    if (b->state_count == 0 || memcmp(&b->states[b->state_count - 1], state, sizeof *state) != 0) {
        b->states = sw_grow(b->states, b->state_count, &b->state_capacity, sizeof *b->states);
        b->states[b->state_count++] = *state;
    }
    return (uint32_t)(b->state_count - 1);
}

static void apply_marks_of(const builder *b, uint32_t music, sw_technique_state *state)
{
    for (uint32_t m = b->reading->music[music].first; m != SW_NO_INDEX; m = b->reading->music[m].next) {
        const sw_music *mark = &b->reading->music[m];
        if (mark->kind != SW_MUSIC_MARK || mark->name != 0) {
            continue;
        }
        uint8_t technique = sw_techniques_of_mark(b->techniques, sw_music_slice(b->reading, m));
        if (technique != SW_NO_TECHNIQUE) {
            state->now[group_of(b, technique)] = state->half[group_of(b, technique)] = technique;
        }
    }
}

/* The state of one note: what is in force, and what its own marks say. */
static uint32_t state_of_event(builder *b, const sw_event *event, const sw_technique_state *in_force)
{
    sw_technique_state own = *in_force;
    apply_marks_of(b, event->chord, &own);
    if (event->music != event->chord) {
        apply_marks_of(b, event->music, &own);
    }
    return add_state(b, &own);
}

/* A voice that is gone through, and how its staff's players play by now. */
typedef struct voice_walk {
    uint32_t voice;
    uint32_t staff;
    size_t players;
    sw_technique_state states[PLAYERS];
    sw_technique_state behind_body[PLAYERS]; /* where the first ending of `repeat` begins */
    const sw_setting *repeat;
    const written_word *last;
    size_t next_ending;
} voice_walk;

/* Passes the endings up to a moment: each one follows the body, not the ending before it. */
static void pass_endings(const builder *b, voice_walk *w, sw_rational moment)
{
    for (; w->next_ending < b->endings.count; w->next_ending++) {
        const sw_setting *setting = b->endings.items[w->next_ending];
        if (setting->staff > w->staff ||
            (setting->staff == w->staff && sw_rational_compare(setting->onset, moment) > 0)) {
            return;
        }
        bool again = w->repeat != NULL && sw_endings_of_one_repeat(w->repeat, setting);
        if (setting->staff == w->staff) {
            memcpy(again ? w->states : w->behind_body, again ? w->behind_body : w->states, sizeof w->states);
            w->repeat = setting;
        }
    }
}

static void pass_word(const builder *b, voice_walk *w, written_word *word)
{
    if (word->word.voice != SW_NO_INDEX && word->word.voice != w->voice) {
        return;
    }
    for (size_t p = 0; p < w->players; p++) {
        if (word->word.players == 0 || (word->word.players >> p & 1) != 0) {
            apply(b, word, w->last, &w->states[p]);
        }
    }
    w->last = word;
}

/* Goes through the words of a staff, [first, end), and the events of one of its voices. */
static void fill_voice(builder *b, uint32_t voice, size_t first, size_t end)
{
    uint32_t staff = b->score->voices[voice].staff;
    voice_walk w = {.voice = voice, .staff = staff, .players = players_of(b, staff)};
    for (size_t p = 0; p < PLAYERS; p++) {
        w.states[p] = plain_state(b);
    }
    size_t next = first;
    for (size_t i = b->voices[voice].first; i < b->voices[voice].end; i++) {
        sw_rational now = b->score->events[i].onset;
        for (; next < end && sw_rational_compare(b->words[next].word.onset, now) <= 0; next++) {
            pass_endings(b, &w, b->words[next].word.onset);
            pass_word(b, &w, &b->words[next]);
        }
        pass_endings(b, &w, now);
        b->state_of[i] = state_of_event(b, &b->score->events[i], &w.states[place_of(b, staff, i, w.players)]);
    }
    for (; next < end; next++) {
        pass_word(b, &w, &b->words[next]);
    }
}

static void fill_states(builder *b)
{
    size_t first = 0;
    for (uint32_t staff = 0; staff < b->score->staff_count; staff++) {
        size_t end = first;
        while (end < b->word_count && b->words[end].word.staff == staff) {
            end++;
        }
        for (uint32_t voice = 0; voice < b->score->voice_count; voice++) {
            if (b->score->voices[voice].staff == staff && b->voices[voice].end > 0) {
                fill_voice(b, voice, first, end);
            }
        }
        first = end;
    }
}

/* ---- the whole ---------------------------------------------------------------------------------------- */

static void *keep(sw_arena *arena, const void *items, size_t count, size_t size)
{
    void *kept = sw_arena_alloc(arena, (count + 1) * size);
    if (count > 0) {
        memcpy(kept, items, count * size);
    }
    return kept;
}

sw_playing *sw_playing_of(const sw_techniques *techniques, const sw_instruments *instruments,
                          const sw_reading *reading, const sw_score *score)
{
    return sw_playing_of_players(techniques, instruments, reading, score, (sw_seated_notes){NULL, NULL});
}

sw_playing *sw_playing_of_players(const sw_techniques *techniques, const sw_instruments *instruments,
                                  const sw_reading *reading, const sw_score *score, sw_seated_notes who)
{
    sw_arena *arena = sw_arena_new();
    builder b = {.techniques = techniques,
                 .reading = reading,
                 .score = score,
                 .known = instruments,
                 .who = who,
                 .arena = arena};
    b.instruments = sw_arena_alloc(arena, (score->staff_count + 1) * sizeof *b.instruments);
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        b.instruments[staff] = sw_staff_instrument(instruments, reading, score, staff);
    }
    b.texts = sw_alloc_zero((size_t)sw_names_count(reading->names) * FAMILIES + 1, sizeof *b.texts);
    b.state_of = sw_arena_alloc(arena, (score->event_count + 1) * sizeof *b.state_of);
    find_voices(&b);
    collect_words(&b);
    b.endings = sw_endings_of_score(reading, score);
    sw_sort(b.words, b.word_count, sizeof *b.words, compare_words);
    settle_scopes(&b);
    fill_states(&b);
    sw_technique_word *words = sw_arena_alloc(arena, (b.word_count + 1) * sizeof *words);
    for (size_t i = 0; i < b.word_count; i++) {
        words[i] = b.words[i].word;
    }
    uint8_t *players = sw_arena_alloc(arena, score->staff_count + 1);
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        players[staff] = (uint8_t)players_of(&b, staff);
    }
    sw_other_ending *endings = sw_arena_alloc(arena, (b.endings.count + 1) * sizeof *endings);
    size_t ending_count = 0;
    for (size_t i = 0; i < b.endings.count; i++) {
        const sw_setting *setting = b.endings.items[i];
        if (i > 0 && sw_endings_of_one_repeat(b.endings.items[i - 1], setting)) {
            endings[ending_count++] = (sw_other_ending){setting->staff, setting->onset};
        }
    }
    sw_playing *playing = sw_arena_alloc(arena, sizeof *playing);
    *playing = (sw_playing){.states = keep(arena, b.states, b.state_count, sizeof *b.states),
                            .state_of = b.state_of,
                            .words = words,
                            .word_count = b.word_count,
                            .instruments = b.instruments,
                            .players = players,
                            .endings = endings,
                            .ending_count = ending_count,
                            .arena = arena};
    free(b.texts);
    free(b.words);
    free(b.endings.items);
    free(b.states);
    return playing;
}

void sw_playing_free(sw_playing *playing)
{
    if (playing != NULL) {
        sw_arena_free(playing->arena);
    }
}

uint8_t sw_playing_now(const sw_playing *playing, size_t event, uint8_t group)
{
    return playing->states[playing->state_of[event]].now[group];
}

bool sw_playing_changes(const sw_playing *playing, const sw_score *score, uint32_t staff)
{
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t i = events.first + 1; i < events.end; i++) {
        if (memcmp(&playing->states[playing->state_of[i]], &playing->states[playing->state_of[events.first]],
                   sizeof *playing->states) != 0) {
            return true;
        }
    }
    return false;
}
