#include "players/chairs.h"

#include <stdlib.h>
#include <string.h>

#include "players/chair_staves.h"
#include "players/staff_instrument.h"

/* A text or a new name over a staff, with the moment from which it holds. */
typedef struct saying {
    sw_rational from;
    uint32_t music; /* MARK or SET */
    const char *text;
    bool is_name;
    uint32_t voice; /* SW_NO_INDEX: in none with notes */
    bool over_note;
    size_t order;
} saying;

typedef struct builder {
    const sw_film *film;
    const sw_reading *reading;
    const sw_score *score;
    sw_seating *seating;
    saying *sayings; /* of the staff at hand */
    size_t saying_count;
    size_t saying_capacity;
    uint32_t *settings; /* those of the score that may say something: marks of chords, names */
    size_t setting_count;
    /* who plays the staff at hand now */
    sw_seat *present; /* all of its players */
    bool *active;
    size_t present_count;
} builder;

/* ---- what is said over a staff ---------------------------------------------------------------------------
 */

static void add_saying(builder *b, sw_rational from, uint32_t music, const char *text, bool is_name,
                       uint32_t voice, bool over_note)
{
    if (text[0] == '\0') {
        return;
    }
    b->sayings = sw_grow(b->sayings, b->saying_count, &b->saying_capacity, sizeof *b->sayings);
    b->sayings[b->saying_count] = (saying){from, music, text, is_name, voice, over_note, b->saying_count};
    b->saying_count++;
}

static void add_marks(builder *b, uint32_t music, sw_rational onset, uint32_t voice, bool over_note)
{
    for (uint32_t m = b->reading->music[music].first; m != SW_NO_INDEX; m = b->reading->music[m].next) {
        if (b->reading->music[m].kind == SW_MUSIC_MARK && b->reading->music[m].name != 0) {
            add_saying(b, onset, m, sw_music_mark_text(b->reading, m), false, voice, over_note);
        }
    }
}

static bool is_new_name(const builder *b, const sw_setting *setting)
{
    const sw_music *m = &b->reading->music[setting->music];
    return m->kind == SW_MUSIC_SET && !sw_rational_is_zero(setting->onset) &&
           sw_slice_ends(sw_slice_of(sw_reading_name(b->reading, m->name)), "nstrumentName");
}

/* There are many settings, and few that say something: they are found once for all staves. */
static void find_settings(builder *b)
{
    size_t capacity = 0;
    for (size_t i = 0; i < b->score->setting_count; i++) {
        const sw_setting *setting = &b->score->settings[i];
        if (b->reading->music[setting->music].kind == SW_MUSIC_CHORD || is_new_name(b, setting)) {
            b->settings = sw_grow(b->settings, b->setting_count, &capacity, sizeof *b->settings);
            b->settings[b->setting_count++] = (uint32_t)i;
        }
    }
}

static void add_settings(builder *b, uint32_t staff)
{
    for (size_t i = 0; i < b->setting_count; i++) {
        const sw_setting *setting = &b->score->settings[b->settings[i]];
        const sw_music *m = &b->reading->music[setting->music];
        if (setting->staff != staff) {
            continue;
        }
        if (m->kind == SW_MUSIC_CHORD) {
            add_marks(b, setting->music, setting->onset, setting->voice, true);
        } else {
            add_saying(b, setting->onset, setting->music, sw_reading_name(b->reading, m->name2), true,
                       SW_NO_INDEX, false);
        }
    }
}

static int compare_sayings(const void *a, const void *b)
{
    const saying *x = a;
    const saying *y = b;
    int order = sw_rational_compare(x->from, y->from);
    return order != 0 ? order : (x->order > y->order) - (x->order < y->order);
}

static void collect_sayings(builder *b, uint32_t staff)
{
    b->saying_count = 0;
    uint32_t chord = SW_NO_INDEX;
    sw_staff_events events = sw_score_staff_events(b->score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *event = &b->score->events[i];
        if ((event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) != 0) {
            continue;
        }
        if (event->chord != chord) {
            add_marks(b, event->chord, event->onset, event->voice, event->kind == SW_EVENT_NOTE);
        }
        if (event->music != event->chord && b->reading->music[event->chord].kind == SW_MUSIC_CHORD) {
            add_marks(b, event->music, event->onset, event->voice, event->kind == SW_EVENT_NOTE);
        }
        chord = event->chord;
    }
    add_settings(b, staff);
    sw_sort(b->sayings, b->saying_count, sizeof *b->sayings, compare_sayings);
}

/* ---- spans -----------------------------------------------------------------------------------------------
 */

/* Adds seats; returns the first. */
static size_t add_seats(builder *b, bool only_active, size_t *count)
{
    sw_seating *s = b->seating;
    size_t first = s->seat_count;
    for (size_t i = 0; i < b->present_count; i++) {
        if (b->active[i] || !only_active) {
            s->seats = sw_grow(s->seats, s->seat_count, &s->seat_capacity, sizeof *s->seats);
            s->seats[s->seat_count++] = b->present[i];
        }
    }
    *count = s->seat_count - first;
    return first;
}

static void begin_span(builder *b, uint32_t staff, sw_rational from, uint32_t said)
{
    sw_seating *s = b->seating;
    sw_seated_staff *seated = &s->staves[staff];
    sw_seats span = {.from = from, .said = said};
    span.all_first = add_seats(b, false, &span.all_count);
    span.first = add_seats(b, true, &span.count);
    span.some = span.count < span.all_count;
    if (seated->count > 0 && sw_rational_equal(s->spans[s->span_count - 1].from, from)) {
        s->spans[s->span_count - 1] = span; /* several texts at one moment */
        return;
    }
    seated->first = seated->count == 0 ? s->span_count : seated->first;
    seated->count++;
    s->spans = sw_grow(s->spans, s->span_count, &s->span_capacity, sizeof *s->spans);
    s->spans[s->span_count++] = span;
}

static bool is_named(const builder *b, const sw_seat *seat, size_t place, const sw_chair_text *said)
{
    unsigned number = b->seating->players[seat->player].number;
    for (size_t i = 0; i < said->number_count; i++) {
        if (said->numbers[i] == (number == 0 ? place + 1 : number)) {
            return true;
        }
    }
    return false;
}

/* "1." on a staff of the horns 3 and 4 is no player of theirs. */
static bool names_any(const builder *b, const sw_chair_text *said)
{
    for (size_t i = 0; i < b->present_count; i++) {
        if (is_named(b, &b->present[i], i, said)) {
            return true;
        }
    }
    return false;
}

/* Whom a change of instrument means: those with the numbers, otherwise those who play it, otherwise all. */
static bool change_instrument(builder *b, const sw_chair_text *said)
{
    bool numbered = said->number_count > 0 && names_any(b, said);
    bool some_play = false;
    for (size_t i = 0; i < b->present_count; i++) {
        const sw_chair *chair = b->seating->players[b->present[i].player].chair;
        some_play = some_play || (chair != NULL && sw_chair_plays(chair, said->instrument));
    }
    bool changed = false;
    for (size_t i = 0; i < b->present_count; i++) {
        const sw_chair *chair = b->seating->players[b->present[i].player].chair;
        bool meant = numbered    ? is_named(b, &b->present[i], i, said)
                     : some_play ? sw_chair_plays(chair, said->instrument)
                                 : true;
        if (meant && b->present[i].instrument != said->instrument) {
            b->present[i].instrument = said->instrument;
            changed = true;
        }
    }
    return changed;
}

/* The instrument that all of a staff's players have; NULL: they have several. */
static const sw_instrument *common_instrument(const builder *b)
{
    for (size_t i = 1; i < b->present_count; i++) {
        if (b->present[i].instrument != b->present[0].instrument) {
            return NULL;
        }
    }
    return b->present[0].instrument;
}

/* Where the players have several instruments, "Picc." alone says whose notes follow. */
static bool choose_by_instrument(builder *b, const char *text)
{
    const sw_instrument *named =
        common_instrument(b) != NULL ? NULL : sw_instruments_find(sw_film_instruments(b->film), text);
    bool any = false;
    for (size_t i = 0; i < b->present_count; i++) {
        any = any || (named != NULL && b->present[i].instrument == named);
    }
    for (size_t i = 0; i < b->present_count && any; i++) {
        b->active[i] = b->present[i].instrument == named;
    }
    return any;
}

static bool choose_players(builder *b, const sw_chair_text *said)
{
    bool all = said->kind == SW_CHAIR_TEXT_ALL;
    if (b->present_count < 2 || (!all && !names_any(b, said))) {
        return false;
    }
    for (size_t i = 0; i < b->present_count; i++) {
        b->active[i] = all || is_named(b, &b->present[i], i, said);
    }
    return true;
}

/* Whether what a saying stands over is all that the staff has then: one note of one voice. */
static bool is_over_single_note(const builder *b, uint32_t staff, const saying *s)
{
    sw_staff_events events = sw_score_staff_events(b->score, staff);
    for (uint32_t i = events.first; i < events.end && s->over_note; i++) {
        const sw_event *event = &b->score->events[i];
        bool sounds = event->kind != SW_EVENT_SKIP && sw_rational_compare(event->onset, s->from) <= 0 &&
                      sw_rational_compare(sw_event_end(event), s->from) > 0;
        if (sounds && (event->voice != s->voice || (event->flags & SW_EVENT_CHORD) != 0)) {
            return false;
        }
    }
    return s->over_note;
}

/* "2. con sord." over a single note of winds tells who plays it, too. */
static bool is_for_named(const builder *b, uint32_t staff, const saying *s, const sw_chair_text *said)
{
    const sw_instrument *present = b->present[0].instrument;
    if (said->kind != SW_CHAIR_TEXT_NONE || said->number_count == 0 || present == NULL ||
        (present->family != SW_WOODWIND && present->family != SW_BRASS)) {
        return false;
    }
    sw_technique_said way;
    bool in_brackets;
    return sw_techniques_read(sw_film_techniques(b->film), &present->family, sw_slice_of(s->text), &way, 1,
                              &in_brackets) > 0 &&
           is_over_single_note(b, staff, s);
}

/* A new name in front of the staff is a change for all of its players. */
static sw_chair_text read_saying(const builder *b, const saying *s)
{
    const sw_instruments *instruments = sw_film_instruments(b->film);
    const sw_instrument *present = b->present_count == 0 ? NULL : b->present[0].instrument;
    if (!s->is_name) {
        return sw_chair_text_read(instruments, present, s->text);
    }
    const sw_instrument *named = sw_instruments_find(instruments, s->text);
    return (sw_chair_text){.kind = named == NULL ? SW_CHAIR_TEXT_NONE : SW_CHAIR_TEXT_CHANGE,
                           .instrument = named};
}

/* A "muta in" over a note holds behind that note: the end of what its voice begins then. */
static sw_rational end_of_note(const builder *b, uint32_t staff, const saying *said)
{
    sw_rational end = said->from;
    sw_staff_events events = sw_score_staff_events(b->score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *event = &b->score->events[i];
        bool own = said->voice == SW_NO_INDEX || event->voice == said->voice;
        if (event->kind == SW_EVENT_NOTE && own && sw_rational_equal(event->onset, said->from) &&
            (event->flags & SW_EVENT_GRACE) == 0) {
            sw_rational note_end = sw_event_end(event);
            end = sw_rational_compare(note_end, end) > 0 ? note_end : end;
        }
    }
    return end;
}

static void go_through(builder *b, uint32_t staff)
{
    collect_sayings(b, staff);
    begin_span(b, staff, sw_rational_zero(), SW_NO_INDEX);
    sw_rational last = sw_rational_zero();
    for (size_t i = 0; i < b->saying_count; i++) {
        sw_chair_text said = read_saying(b, &b->sayings[i]);
        said.kind = is_for_named(b, staff, &b->sayings[i], &said) ? SW_CHAIR_TEXT_ONLY : said.kind;
        bool changed = said.kind == SW_CHAIR_TEXT_CHANGE ? change_instrument(b, &said)
                       : said.kind == SW_CHAIR_TEXT_NONE ? choose_by_instrument(b, b->sayings[i].text)
                                                         : choose_players(b, &said);
        if (!changed) {
            continue;
        }
        bool behind = said.kind == SW_CHAIR_TEXT_CHANGE && !b->sayings[i].is_name;
        sw_rational from = behind ? end_of_note(b, staff, &b->sayings[i]) : b->sayings[i].from;
        last = sw_rational_compare(from, last) > 0 ? from : last;
        begin_span(b, staff, last, b->sayings[i].music);
    }
}

/* ---- staves ----------------------------------------------------------------------------------------------
 */

static void seat(builder *b, uint32_t player, const sw_instrument *instrument)
{
    b->present[b->present_count] = (sw_seat){player, instrument};
    b->active[b->present_count++] = true;
}

static void seat_chairs(builder *b, uint32_t staff, const sw_chair_list *list)
{
    sw_seated_staff *seated = &b->seating->staves[staff];
    seated->prerecorded = list->count > 0;
    for (size_t i = 0; i < list->count; i++) {
        const sw_chair *chair = b->seating->players[list->items[i]].chair;
        seat(b, list->items[i], seated->instrument == NULL ? chair->plays[0] : seated->instrument);
        seated->players += chair->players;
        seated->prerecorded = seated->prerecorded && chair->prerecorded;
    }
    if (seated->instrument == NULL && list->count > 0) {
        seated->instrument = b->seating->players[list->items[0]].chair->plays[0];
    }
}

/* Without a roster: a player for each number of the staff's name. */
static void assume_players(builder *b, uint32_t staff, const sw_staff_numbers *numbers)
{
    sw_seating *s = b->seating;
    char label[32];
    const char *name = sw_staff_label(b->reading, b->score, staff, label);
    for (size_t i = 0; i < numbers->count || i == 0; i++) {
        sw_player player = {.number = numbers->count == 0 ? 0 : numbers->items[i]};
        player.name = numbers->count > 1 ? sw_arena_format(s->arena, "%s, player %u", name, player.number)
                                         : sw_arena_copy(s->arena, sw_slice_of(name));
        s->players = sw_grow(s->players, s->player_count, &s->player_capacity, sizeof *s->players);
        s->players[s->player_count] = player;
        seat(b, (uint32_t)s->player_count++, s->staves[staff].instrument);
    }
}

static void seat_staff(builder *b, uint32_t staff)
{
    sw_seated_staff *seated = &b->seating->staves[staff];
    const sw_instruments *instruments = sw_film_instruments(b->film);
    sw_chair_list list = {0};
    b->present_count = 0;
    seated->instrument = sw_staff_instrument(instruments, b->reading, b->score, staff);
    bool drums = strcmp(sw_reading_name(b->reading, b->score->staves[staff].type), "DrumStaff") == 0;
    if (seated->instrument == NULL && drums) {
        seated->instrument = sw_instruments_by_id(instruments, "percussion");
    }
    sw_staff_numbers numbers = sw_staff_numbers_of_staff(instruments, b->reading, b->score, staff);
    if (sw_film_has_roster(b->film)) {
        sw_chairs_that_claim(b->film, b->reading, b->score, staff, &list);
        if (list.count == 0 && seated->instrument != NULL) {
            seated->booking = sw_chairs_of_instrument(b->film, seated->instrument, &numbers, &list,
                                                      &seated->missing_number);
        }
        seat_chairs(b, staff, &list);
    } else if (seated->instrument != NULL) {
        assume_players(b, staff, &numbers);
    }
    free(list.items);
    if (b->present_count > 0) {
        go_through(b, staff);
    }
}

sw_seating *sw_seating_of(const sw_film *film, const sw_reading *reading, const sw_score *score)
{
    sw_seating *seating = sw_alloc_zero(1, sizeof *seating);
    size_t most = sw_film_chair_count(film) + SW_STAFF_NUMBERS + 1; /* players of one staff */
    builder b = {.film = film, .reading = reading, .score = score, .seating = seating};
    seating->arena = sw_arena_new();
    seating->staves = sw_arena_alloc(seating->arena, (score->staff_count + 1) * sizeof *seating->staves);
    for (size_t i = 0; i < sw_film_chair_count(film); i++) {
        const sw_chair *chair = sw_film_chair(film, i);
        seating->players = sw_grow(seating->players, seating->player_count, &seating->player_capacity,
                                   sizeof *seating->players);
        seating->players[seating->player_count++] = (sw_player){chair, chair->name, chair->number};
    }
    b.present = sw_alloc(most * sizeof *b.present);
    b.active = sw_alloc(most * sizeof *b.active);
    find_settings(&b);
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        seat_staff(&b, staff);
    }
    free(b.settings);
    free(b.present);
    free(b.active);
    free(b.sayings);
    return seating;
}

void sw_seating_free(sw_seating *seating)
{
    if (seating != NULL) {
        free(seating->players);
        free(seating->seats);
        free(seating->spans);
        sw_arena_free(seating->arena);
        free(seating);
    }
}

const sw_seats *sw_seating_at(const sw_seating *seating, uint32_t staff, sw_rational onset)
{
    const sw_seated_staff *seated = &seating->staves[staff];
    size_t i = seated->count;
    while (i > 1 && sw_rational_compare(seating->spans[seated->first + i - 1].from, onset) > 0) {
        i--;
    }
    return i == 0 ? NULL : &seating->spans[seated->first + i - 1];
}
