#include "report/players_table.h"

#include <stdlib.h>
#include <string.h>

#include "players/chair_notes.h"
#include "players/percussion_names.h"
#include "players/playing.h"

sw_players_table *sw_players_table_new(const sw_film *film)
{
    sw_players_table *table = sw_alloc_zero(1, sizeof *table);
    table->film = film;
    table->arena = sw_arena_new();
    for (size_t i = 0; i < sw_film_chair_count(film); i++) {
        const sw_chair *chair = sw_film_chair(film, i);
        table->rows = sw_grow(table->rows, table->row_count, &table->row_capacity, sizeof *table->rows);
        table->rows[table->row_count++] = (sw_player_row){.name = chair->name, .chair = chair};
    }
    return table;
}

void sw_players_table_free(sw_players_table *table)
{
    if (table == NULL) {
        return;
    }
    for (size_t i = 0; i < table->row_count; i++) {
        free(table->rows[i].instruments);
        free(table->rows[i].cues);
        free(table->rows[i].changes);
        free(table->rows[i].things);
    }
    free(table->rows);
    free(table->cues);
    sw_arena_free(table->arena);
    free(table);
}

/* ---- rows ------------------------------------------------------------------------------------------------
 */

/* The row of a player: of a chair its own, otherwise that of the name. */
static size_t row_of(sw_players_table *table, const sw_player *player)
{
    for (size_t i = 0; i < table->row_count; i++) {
        if (player->chair != NULL ? table->rows[i].chair == player->chair
                                  : strcmp(table->rows[i].name, player->name) == 0) {
            return i;
        }
    }
    table->rows = sw_grow(table->rows, table->row_count, &table->row_capacity, sizeof *table->rows);
    table->rows[table->row_count] =
        (sw_player_row){.name = sw_arena_copy(table->arena, sw_slice_of(player->name))};
    return table->row_count++;
}

static void add_thing(sw_player_row *row, const char *thing)
{
    for (size_t i = 0; i < row->thing_count; i++) {
        if (strcmp(row->things[i], thing) == 0) {
            return;
        }
    }
    row->things = sw_grow(row->things, row->thing_count, &row->thing_capacity, sizeof *row->things);
    row->things[row->thing_count++] = thing;
}

static void add_instrument(sw_player_row *row, const sw_instrument *instrument)
{
    for (size_t i = 0; i < row->instrument_count; i++) {
        if (row->instruments[i] == instrument) {
            return;
        }
    }
    row->instruments =
        sw_grow(row->instruments, row->instrument_count, &row->instrument_capacity, sizeof *row->instruments);
    row->instruments[row->instrument_count++] = instrument;
}

static void add_change(sw_player_row *row, const sw_player_change *change)
{
    for (size_t i = 0; i < row->change_count; i++) {
        sw_player_change *known = &row->changes[i];
        if (known->from == change->from && known->to == change->to) {
            *known = change->seconds < known->seconds ? *change : *known;
            return;
        }
    }
    row->changes = sw_grow(row->changes, row->change_count, &row->change_capacity, sizeof *row->changes);
    row->changes[row->change_count++] = *change;
}

/* ---- a score ---------------------------------------------------------------------------------------------
 */

/* A score with its players. */
typedef struct scene {
    sw_players_table *table;
    const sw_reading *reading;
    const sw_score *score;
    const sw_seating *seating;
    const sw_playing *playing;
    const sw_seat_range *ranges;
    const sw_setting **transpositions; /* of the score, in order of time */
    size_t transposition_count;
    uint8_t mutes; /* the group of techniques */
    size_t cue;
} scene;

/* How a written middle C sounds on a staff at a moment; C4 where nothing says so. */
static sw_pitch transposition_at(const scene *s, uint32_t staff, sw_rational onset)
{
    sw_pitch pitch = {0};
    for (size_t i = 0; i < s->transposition_count; i++) {
        const sw_setting *setting = s->transpositions[i];
        bool own = setting->staff == staff || (setting->staff == SW_NO_INDEX && s->score->staff_count == 1);
        if (own && sw_rational_compare(setting->onset, onset) <= 0) {
            pitch = setting->pitch;
        }
    }
    return pitch;
}

static void add_pitch(const scene *s, sw_player_row *row, const sw_event *e)
{
    if (e->kind != SW_EVENT_NOTE) {
        return;
    }
    sw_pitch transposition = transposition_at(s, s->score->voices[e->voice].staff, e->onset);
    sw_pitch pitch = sw_pitch_transpose(e->pitch, transposition);
    int height = sw_pitch_quarter_tones(pitch);
    if (!row->has_pitch || height < sw_pitch_quarter_tones(row->lowest)) {
        row->lowest = pitch;
    }
    if (!row->has_pitch || height > sw_pitch_quarter_tones(row->highest)) {
        row->highest = pitch;
    }
    row->has_pitch = true;
}

static void add_things(const scene *s, sw_player_row *row, uint32_t event)
{
    const sw_techniques *techniques = sw_film_techniques(s->table->film);
    const sw_technique *mute = sw_techniques_get(techniques, sw_playing_now(s->playing, event, s->mutes));
    if (!mute->plain) {
        add_thing(row, mute->id);
    }
    const sw_event *e = &s->score->events[event];
    const sw_instrument *drum =
        e->kind == SW_EVENT_DRUM
            ? sw_percussion_of_drum(sw_film_instruments(s->table->film),
                                    sw_reading_name(s->reading, s->reading->music[e->music].name))
            : NULL;
    if (drum != NULL) {
        add_thing(row, drum->id);
    }
}

/* Bars and seconds with notes: overlapping notes count once. */
static void add_time(const scene *s, sw_player_row *row, const sw_own_note *notes, size_t count)
{
    bool *bars = sw_alloc_zero(s->score->bar_count + 1, sizeof *bars);
    sw_rational end = sw_rational_zero();
    for (size_t i = 0; i < count; i++) {
        const sw_own_note *note = &notes[i];
        sw_rational from = sw_rational_compare(note->onset, end) > 0 ? note->onset : end;
        if (sw_rational_compare(note->end, from) > 0) {
            row->seconds += sw_score_seconds(s->score, note->end) - sw_score_seconds(s->score, from);
            end = note->end;
        }
        for (uint32_t bar = sw_score_bar_at(s->score, note->onset);
             bar < s->score->bar_count && (sw_rational_compare(s->score->bars[bar].start, note->end) < 0 ||
                                           sw_rational_equal(s->score->bars[bar].start, note->onset));
             bar++) {
            row->bars += !bars[bar];
            bars[bar] = true;
        }
    }
    free(bars);
}

static void add_changes(const scene *s, sw_player_row *row, const sw_own_note *notes, size_t count)
{
    const sw_own_note *latest = NULL; /* of those before that ends last */
    for (size_t i = 0; i < count; i++) {
        const sw_own_note *note = &notes[i];
        if (latest != NULL && latest->instrument != NULL && note->instrument != NULL &&
            !sw_instruments_alike(latest->instrument, note->instrument)) {
            uint32_t bar = sw_score_bar_at(s->score, note->onset);
            sw_player_change change = {.from = latest->instrument,
                                       .to = note->instrument,
                                       .seconds = sw_score_seconds(s->score, note->onset) -
                                                  sw_score_seconds(s->score, latest->end),
                                       .cue = s->cue,
                                       .bar = bar == SW_NO_INDEX ? 1 : s->score->bars[bar].number};
            add_change(row, &change);
        }
        if (latest == NULL || sw_rational_compare(note->end, latest->end) >= 0) {
            latest = note;
        }
    }
}

static void add_player(const scene *s, uint32_t player, sw_own_note *notes)
{
    size_t count = sw_notes_of_player(s->seating, s->score, s->ranges, player, notes);
    if (count == 0) {
        return;
    }
    size_t number = row_of(s->table, &s->seating->players[player]);
    sw_player_row *row = &s->table->rows[number];
    if (row->cue_count == 0 || row->cues[row->cue_count - 1] != s->cue) {
        row->cues = sw_grow(row->cues, row->cue_count, &row->cue_capacity, sizeof *row->cues);
        row->cues[row->cue_count++] = s->cue;
    }
    for (size_t i = 0; i < count; i++) {
        if (notes[i].instrument != NULL) {
            add_instrument(row, notes[i].instrument);
        }
        add_pitch(s, row, &s->score->events[notes[i].event]);
        add_things(s, row, notes[i].event);
    }
    add_time(s, row, notes, count);
    add_changes(s, row, notes, count);
}

static void add_score(sw_players_table *table, const sw_reading *reading, const sw_score *score, size_t cue)
{
    const sw_techniques *techniques = sw_film_techniques(table->film);
    sw_seating *seating = sw_seating_of(table->film, reading, score);
    sw_seat_range *ranges = sw_seating_of_notes(seating, reading, score);
    sw_playing *playing = sw_playing_of_players(techniques, sw_film_instruments(table->film), reading, score,
                                                (sw_seated_notes){seating, ranges});
    scene s = {.table = table,
               .reading = reading,
               .score = score,
               .seating = seating,
               .playing = playing,
               .ranges = ranges,
               .mutes = sw_techniques_get(techniques, sw_techniques_find(techniques, "muted"))->group,
               .cue = cue};
    s.transpositions = sw_alloc((score->setting_count + 1) * sizeof *s.transpositions);
    for (size_t i = 0; i < score->setting_count; i++) {
        if (reading->music[score->settings[i].music].kind == SW_MUSIC_TRANSPOSITION) {
            s.transpositions[s.transposition_count++] = &score->settings[i];
        }
    }
    sw_own_note *notes = sw_alloc((score->event_count + 1) * sizeof *notes);
    for (uint32_t player = 0; player < seating->player_count; player++) {
        add_player(&s, player, notes);
    }
    free(notes);
    free(s.transpositions);
    free(ranges);
    sw_playing_free(playing);
    sw_seating_free(seating);
}

bool sw_players_table_add(sw_players_table *table, const sw_reading *reading)
{
    size_t scores = 0;
    for (size_t i = 0; i < reading->score_count; i++) {
        scores += !reading->scores[i].in_markup;
    }
    if (scores == 0) {
        return false;
    }
    table->cues = sw_grow(table->cues, table->cue_count, &table->cue_capacity, sizeof *table->cues);
    table->cues[table->cue_count] = sw_arena_copy(table->arena, sw_slice_of(reading->files[0].text->path));
    for (size_t i = 0; i < reading->score_count; i++) {
        if (!reading->scores[i].in_markup) {
            add_score(table, reading, &reading->scores[i], table->cue_count);
        }
    }
    table->cue_count++;
    return true;
}
