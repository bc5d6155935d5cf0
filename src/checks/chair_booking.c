/* Instruments, mutes and percussion against what the chairs are booked for. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks/chair_findings.h"
#include "checks/say.h"
#include "players/percussion_names.h"

/* ---- staves without players ------------------------------------------------------------------------------
 */

static uint32_t first_note(const sw_chair_scene *scene, uint32_t staff)
{
    sw_staff_events events = sw_score_staff_events(scene->score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        if (sw_note_is_played(scene->check->reading, scene->score, &scene->score->events[i])) {
            return i;
        }
    }
    return SW_NO_INDEX;
}

/* Adds "Flute 2" or "Flute 2 and Flute 3 play it"; nothing when nobody plays it. Returns how many do. */
static size_t list_players(const sw_chair_scene *scene, const sw_instrument *instrument, const char *format,
                           sw_buffer *text)
{
    const char *names[4];
    size_t count = 0;
    size_t all = 0;
    for (size_t i = 0; i < sw_film_chair_count(scene->check->film); i++) {
        const sw_chair *chair = sw_film_chair(scene->check->film, i);
        if (sw_chair_plays(chair, instrument)) {
            all++;
            if (count < sizeof names / sizeof names[0]) {
                names[count++] = chair->name;
            }
        }
    }
    if (all == 0) {
        return 0;
    }
    sw_buffer_string(text, format);
    for (size_t i = 0; i < count; i++) {
        sw_buffer_format(text, "%s%s", i == 0 ? "" : i + 1 == all ? " and " : ", ", names[i]);
    }
    sw_buffer_string(text, all > count ? " ..." : "");
    return all;
}

static void report_staff(const sw_chair_scene *scene, uint32_t staff, uint32_t event)
{
    const sw_seated_staff *seated = &scene->seating->staves[staff];
    char label[32];
    char instrument[SW_SAY];
    const char *name = sw_staff_label(scene->check->reading, scene->score, staff, label);
    sw_say_instrument(seated->instrument, instrument);
    sw_buffer has = {0};
    if (seated->booking == SW_NUMBER_MISSING) {
        list_players(scene, seated->instrument, " (there is ", &has);
        sw_buffer_string(&has, has.length > 0 ? ")" : "");
        sw_chair_finding(scene, SW_WARNING, event, name,
                         "no chair in the list is %s %u%s; add one, or give the notes to another", instrument,
                         seated->missing_number, sw_buffer_text(&has));
    } else {
        sw_chair_finding(scene, SW_WARNING, event, name,
                         "nobody in the list plays the %s; add a chair, or say who doubles it", instrument);
    }
    sw_buffer_free(&has);
}

/* A change to an instrument that the player is not booked for. */
static void check_change(const sw_chair_scene *scene, uint32_t event, bool *told)
{
    const sw_seating *seating = scene->seating;
    for (uint32_t i = scene->ranges[event].first; i < scene->ranges[event].end; i++) {
        const sw_seat *seat = &seating->seats[i];
        const sw_player *player = &seating->players[seat->player];
        if (player->chair == NULL || seat->instrument == NULL ||
            sw_chair_plays(player->chair, seat->instrument) || told[seat->player]) {
            continue;
        }
        const sw_seats *seats =
            sw_seating_at(seating, scene->score->voices[scene->score->events[event].voice].staff,
                          scene->score->events[event].onset);
        if (seats->said == SW_NO_INDEX) {
            continue; /* the staff is theirs by a pattern, whatever stands in front of it */
        }
        told[seat->player] = true;
        char instrument[SW_SAY];
        sw_buffer others = {0};
        list_players(scene, seat->instrument, "; it is played by ", &others);
        sw_chair_finding(scene, SW_WARNING, event, player->name, "not booked for the %s%s",
                         sw_say_instrument(seat->instrument, instrument),
                         others.length > 0 ? sw_buffer_text(&others) : "; add it to what the chair plays");
        sw_buffer_free(&others);
    }
}

void sw_find_unbooked(const sw_chair_scene *scene)
{
    for (uint32_t staff = 0; staff < scene->score->staff_count; staff++) {
        uint32_t event =
            scene->seating->staves[staff].booking == SW_BOOKED ? SW_NO_INDEX : first_note(scene, staff);
        if (event != SW_NO_INDEX) {
            report_staff(scene, staff, event);
        }
    }
    bool *told = sw_alloc_zero(scene->seating->player_count + 1, sizeof *told);
    for (uint32_t i = 0; i < scene->score->event_count; i++) {
        check_change(scene, i, told);
    }
    free(told);
}

/* ---- things that a player does not have ------------------------------------------------------------------
 */

/* A thing that was told of already. */
typedef struct told_thing {
    const void *player; /* the first seat's chair */
    const void *thing;
} told_thing;

typedef struct told_things {
    told_thing *items;
    size_t count;
    size_t capacity;
} told_things;

static bool tell_once(told_things *told, const void *player, const void *thing)
{
    for (size_t i = 0; i < told->count; i++) {
        if (told->items[i].player == player && told->items[i].thing == thing) {
            return false;
        }
    }
    told->items = sw_grow(told->items, told->count, &told->capacity, sizeof *told->items);
    told->items[told->count++] = (told_thing){player, thing};
    return true;
}

static const sw_player *player_of(const sw_chair_scene *scene, uint32_t seat)
{
    return &scene->seating->players[scene->seating->seats[seat].player];
}

/* The percussion instrument that a note strikes; NULL: none, or not known. */
static const sw_instrument *struck(const sw_chair_scene *scene, uint32_t event)
{
    const sw_event *e = &scene->score->events[event];
    const sw_reading *reading = scene->check->reading;
    if (e->kind == SW_EVENT_DRUM) {
        return sw_percussion_of_drum(scene->check->instruments,
                                     sw_reading_name(reading, reading->music[e->music].name));
    }
    const sw_instrument *instrument = scene->seating->seats[scene->ranges[event].first].instrument;
    bool percussion = instrument != NULL && instrument->family == SW_PERCUSSION;
    return percussion && strcmp(instrument->id, "percussion") != 0 ? instrument : NULL;
}

/* It is enough that one of those who share the staff has it. */
static void check_percussion(const sw_chair_scene *scene, uint32_t event, told_things *told)
{
    const sw_instrument *thing = struck(scene, event);
    const sw_seat_range *range = &scene->ranges[event];
    for (uint32_t i = range->first; i < range->end && thing != NULL; i++) {
        const sw_chair *chair = player_of(scene, i)->chair;
        if (!chair->percussion_given || sw_chair_plays(chair, thing)) {
            return;
        }
    }
    const sw_player *player = thing == NULL ? NULL : player_of(scene, range->first);
    if (player != NULL && tell_once(told, player, thing)) {
        char name[SW_SAY];
        sw_buffer others = {0};
        list_players(scene, thing, "; it is with ", &others);
        sw_chair_finding(scene, SW_WARNING, event, player->name,
                         "%s is asked for, and not on the list of percussion at hand%s",
                         sw_say_instrument(thing, name), sw_buffer_text(&others));
        sw_buffer_free(&others);
    }
}

/* "con sord." for brass means the straight mute. */
static bool has_mute(const sw_chair_scene *scene, const sw_chair *chair, uint8_t mute)
{
    const sw_techniques *techniques = scene->check->techniques;
    uint8_t plain_word = sw_techniques_find(techniques, "muted");
    uint8_t straight = sw_techniques_find(techniques, "straight-mute");
    for (size_t i = 0; i < chair->mute_count; i++) {
        if (chair->mutes[i] == mute || (mute == plain_word && chair->mutes[i] == straight) ||
            (mute == straight && chair->mutes[i] == plain_word)) {
            return true;
        }
    }
    return false;
}

static void check_mute(const sw_chair_scene *scene, uint32_t event, uint8_t mute, told_things *told)
{
    const sw_technique *technique = sw_techniques_get(scene->check->techniques, mute);
    const sw_seat_range *range = &scene->ranges[event];
    for (uint32_t i = range->first; i < range->end && !technique->plain; i++) {
        const sw_player *player = player_of(scene, i);
        bool lacks = player->chair->mutes_given && !has_mute(scene, player->chair, mute);
        if (lacks && tell_once(told, player, technique)) {
            sw_chair_finding(scene, SW_WARNING, event, player->name,
                             "%s is wanted and not on the list of mutes at hand; let it be brought, or write "
                             "another one",
                             technique->id);
        }
    }
}

void sw_find_missing_things(const sw_chair_scene *scene)
{
    const sw_playing *playing = sw_check_playing(scene->check, scene->number);
    uint8_t group =
        sw_techniques_get(scene->check->techniques, sw_techniques_find(scene->check->techniques, "muted"))
            ->group;
    told_things told = {0};
    for (uint32_t i = 0; i < scene->score->event_count; i++) {
        if (scene->ranges[i].end > scene->ranges[i].first) {
            check_percussion(scene, i, &told);
            check_mute(scene, i, sw_playing_now(playing, i, group), &told);
        }
    }
    free(told.items);
}
