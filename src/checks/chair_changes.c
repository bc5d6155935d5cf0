/* One player with two instruments: at once, or with too little time between. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks/chair_findings.h"
#include "checks/say.h"
#include "players/doublings.h"

/* The notes of a player whose instrument is known, without grace notes. Returns how many; *several says
 * whether they are on more than one instrument. */
static size_t notes_of(const sw_chair_scene *scene, uint32_t player, sw_own_note *notes, bool *several)
{
    size_t all = sw_notes_of_player(scene->seating, scene->score, scene->ranges, player, notes);
    size_t count = 0;
    *several = false;
    for (size_t i = 0; i < all; i++) {
        bool grace = (scene->score->events[notes[i].event].flags & SW_EVENT_GRACE) != 0;
        if (!grace && notes[i].instrument != NULL) {
            notes[count++] = notes[i];
            *several = *several || notes[i].instrument != notes[0].instrument;
        }
    }
    return count;
}

/* A note that comes too early after one on another instrument. */
typedef struct trouble {
    const sw_own_note *before; /* the one that ends last of those before */
    const sw_own_note *note;
    double given; /* seconds between */
    double wanted;
    bool at_once;
} trouble;

typedef struct troubles {
    trouble *items; /* in order of time */
    size_t count;
    size_t capacity;
} troubles;

static troubles find_troubles(const sw_chair_scene *scene, const sw_own_note *notes, size_t count)
{
    troubles list = {0};
    double share = 1 - sw_check_option(scene->check, &sw_rule_chairs, "margin");
    const sw_own_note *latest = NULL; /* of those before that ends last */
    for (size_t i = 0; i < count; i++) {
        const sw_own_note *note = &notes[i];
        if (latest != NULL && latest->instrument != note->instrument) {
            trouble t = {.before = latest, .note = note};
            t.wanted = sw_doubling_between(latest->instrument, note->instrument).seconds;
            t.given =
                sw_score_seconds(scene->score, note->onset) - sw_score_seconds(scene->score, latest->end);
            t.at_once = sw_rational_compare(note->onset, latest->end) < 0;
            if (t.wanted > 0 && (t.at_once || t.given < share * t.wanted)) {
                list.items = sw_grow(list.items, list.count, &list.capacity, sizeof *list.items);
                list.items[list.count++] = t;
            }
        }
        if (latest == NULL || sw_rational_compare(note->end, latest->end) >= 0) {
            latest = note;
        }
    }
    return list;
}

static bool same_pair(const trouble *a, const trouble *b)
{
    const sw_instrument *one = a->before->instrument;
    const sw_instrument *other = a->note->instrument;
    return (b->before->instrument == one && b->note->instrument == other) ||
           (b->before->instrument == other && b->note->instrument == one);
}

/* Two at once: told where it begins, with the bars of all troubles of the pair. */
static void report_at_once(const sw_chair_scene *scene, const char *player, const troubles *list,
                           const trouble *first)
{
    char names[2][SW_SAY];
    sw_buffer bars = {0};
    uint32_t *numbers = sw_alloc(list->count * sizeof *numbers);
    size_t count = 0;
    for (size_t i = 0; i < list->count; i++) {
        if (same_pair(&list->items[i], first)) {
            numbers[count++] = sw_score_bar_at(scene->score, list->items[i].note->onset);
        }
    }
    if (count > 1) {
        sw_buffer_string(&bars, " (");
        sw_say_bars(scene->score, numbers, count, &bars);
        sw_buffer_string(&bars, ")");
    }
    const sw_own_note *before = first->before;
    const sw_own_note *note = first->note;
    bool percussion =
        before->instrument->family == SW_PERCUSSION && note->instrument->family == SW_PERCUSSION;
    sw_chair_finding(scene, percussion ? SW_WARNING : SW_ERROR, note->event, player,
                     "%s and %s at once%s; give one of them to another player",
                     sw_say_instrument(before->instrument, names[0]),
                     sw_say_instrument(note->instrument, names[1]), sw_buffer_text(&bars));
    sw_buffer_free(&bars);
    free(numbers);
}

static void report_change(const sw_chair_scene *scene, const char *player, const trouble *t)
{
    char names[2][SW_SAY];
    char seconds[2][SW_SAY];
    sw_chair_finding(
        scene, t->given < 0.6 * t->wanted ? SW_WARNING : SW_NOTE, t->note->event, player,
        "%s to %s, %s for it (wants %s); leave more rests, or give one of both to another player",
        sw_say_instrument(t->before->instrument, names[0]), sw_say_instrument(t->note->instrument, names[1]),
        sw_say_seconds(t->given, seconds[0]), sw_say_seconds(t->wanted, seconds[1]));
}

/* Where players go to and fro within the time that one change wants, it is told once. */
static bool told_before(const sw_chair_scene *scene, const troubles *list, size_t i)
{
    const trouble *t = &list->items[i];
    for (size_t b = i; b-- > 0;) {
        if (same_pair(&list->items[b], t)) {
            double since = sw_score_seconds(scene->score, t->note->onset) -
                           sw_score_seconds(scene->score, list->items[b].note->onset);
            return since < t->wanted;
        }
    }
    return false;
}

static void report_all(const sw_chair_scene *scene, const char *player, const troubles *list)
{
    for (size_t i = 0; i < list->count; i++) {
        const trouble *first = NULL; /* at once, of the pair */
        for (size_t k = 0; k < list->count && first == NULL; k++) {
            bool found = list->items[k].at_once && same_pair(&list->items[k], &list->items[i]);
            first = found ? &list->items[k] : NULL;
        }
        if (first == &list->items[i] && scene->check->chairs) {
            report_at_once(scene, player, list, first);
        } else if (first == NULL && !told_before(scene, list, i)) {
            report_change(scene, player, &list->items[i]);
        }
    }
}

/* Whether a player has seats with more than one instrument. */
static bool doubles(const sw_seating *seating, uint32_t player)
{
    const sw_instrument *first = NULL;
    for (size_t i = 0; i < seating->seat_count; i++) {
        const sw_instrument *own = seating->seats[i].player == player ? seating->seats[i].instrument : NULL;
        if (own != NULL && first != NULL && own != first) {
            return true;
        }
        first = own != NULL ? own : first;
    }
    return false;
}

void sw_find_change_overs(const sw_chair_scene *scene)
{
    sw_own_note *notes = sw_alloc((scene->score->event_count + 1) * sizeof *notes);
    for (uint32_t player = 0; player < scene->seating->player_count; player++) {
        const sw_chair *chair = scene->seating->players[player].chair;
        bool section = chair != NULL && chair->players > 1; /* they can share */
        if (section || !doubles(scene->seating, player)) {
            continue;
        }
        bool several;
        size_t count = notes_of(scene, player, notes, &several);
        if (several) {
            troubles list = find_troubles(scene, notes, count);
            report_all(scene, scene->seating->players[player].name, &list);
            free(list.items);
        }
    }
    free(notes);
}
