#include "players/chair_staves.h"

#include <stdlib.h>
#include <string.h>

#include "players/staff_instrument.h"

/* ---- instruments that one player takes for the same ------------------------------------------------------
 */

/* The id without a key or a clef. */
static size_t base_length(const sw_instrument *instrument)
{
    static const char *const additions[] = {"-in-", "-treble-clef", "-bass-clef"};
    for (size_t i = 0; i < sizeof additions / sizeof additions[0]; i++) {
        const char *at = strstr(instrument->id, additions[i]);
        if (at != NULL) {
            return (size_t)(at - instrument->id);
        }
    }
    return strlen(instrument->id);
}

/* The small clarinets and the flute in D flat are instruments of their own. */
static bool is_small(const sw_instrument *instrument)
{
    return instrument->family == SW_WOODWIND &&
           (strstr(instrument->id, "-in-eb") != NULL || strstr(instrument->id, "-in-d") != NULL);
}

/* What a percussionist's staff is called: "Percussion", "Drums". */
static bool is_battery(const sw_instrument *instrument)
{
    return strcmp(instrument->id, "percussion") == 0 || strcmp(instrument->id, "drum-kit") == 0;
}

bool sw_instruments_alike(const sw_instrument *a, const sw_instrument *b)
{
    if (a == b || a == NULL || b == NULL) {
        return a == b;
    }
    size_t length = base_length(a);
    return (is_battery(a) && is_battery(b)) ||
           (length == base_length(b) && strncmp(a->id, b->id, length) == 0 && !is_small(a) && !is_small(b));
}

bool sw_chair_plays(const sw_chair *chair, const sw_instrument *instrument)
{
    for (size_t i = 0; i < chair->play_count; i++) {
        if (sw_instruments_alike(chair->plays[i], instrument)) {
            return true;
        }
    }
    for (size_t i = 0; i < chair->percussion_count; i++) {
        if (chair->percussion[i] == instrument) {
            return true;
        }
    }
    return false;
}

/* ---- by instrument ---------------------------------------------------------------------------------------
 */

static void add(sw_chair_list *list, size_t chair)
{
    list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
    list->items[list->count++] = (uint32_t)chair;
}

/* All chairs with the instrument as their own. */
static void collect_own(const sw_film *film, const sw_instrument *instrument, sw_chair_list *list)
{
    for (size_t i = 0; i < sw_film_chair_count(film); i++) {
        if (sw_instruments_alike(sw_film_chair(film, i)->own, instrument)) {
            add(list, i);
        }
    }
}

/* Chairs that double it; for percussion those that have it, or else those who may have anything. */
static void collect_doubling(const sw_film *film, const sw_instrument *instrument, sw_chair_list *list)
{
    for (size_t i = 0; i < sw_film_chair_count(film); i++) {
        if (sw_chair_plays(sw_film_chair(film, i), instrument)) {
            add(list, i);
        }
    }
    bool percussion = instrument->family == SW_PERCUSSION && strcmp(instrument->id, "timpani") != 0;
    for (size_t i = 0; i < sw_film_chair_count(film) && percussion && list->count == 0; i++) {
        const sw_chair *chair = sw_film_chair(film, i);
        if (!chair->percussion_given && is_battery(chair->plays[0])) {
            add(list, i);
        }
    }
}

/* "Strings", "Choir": a name of many. */
static bool is_family_booked(const sw_film *film, const sw_instrument *instrument)
{
    bool whole = strcmp(instrument->id, "strings") == 0 || strcmp(instrument->id, "choir") == 0;
    for (size_t i = 0; i < sw_film_chair_count(film) && whole; i++) {
        if (sw_film_chair(film, i)->plays[0]->family == instrument->family) {
            return true;
        }
    }
    return false;
}

/* Of chairs with the instrument as their own those with the numbers. */
static sw_booking choose_numbers(const sw_film *film, const sw_chair_list *own,
                                 const sw_staff_numbers *numbers, sw_chair_list *list, unsigned *missing)
{
    sw_booking booking = SW_BOOKED;
    for (size_t n = 0; n < numbers->count; n++) {
        bool found = false;
        for (size_t i = 0; i < own->count; i++) {
            unsigned number = sw_film_chair(film, own->items[i])->number;
            bool only = number == 0 && own->count == 1 && numbers->items[n] == 1;
            if (number == numbers->items[n] || only) {
                add(list, own->items[i]);
                found = true;
                break;
            }
        }
        if (!found && booking == SW_BOOKED) {
            booking = SW_NUMBER_MISSING;
            *missing = numbers->items[n];
        }
    }
    return booking;
}

sw_booking sw_chairs_of_instrument(const sw_film *film, const sw_instrument *instrument,
                                   const sw_staff_numbers *numbers, sw_chair_list *list, unsigned *missing)
{
    sw_chair_list own = {0};
    sw_booking booking = SW_BOOKED;
    collect_own(film, instrument, &own);
    if (own.count > 0 && numbers->count > 0) {
        booking = choose_numbers(film, &own, numbers, list, missing);
    } else if (own.count > 0) {
        for (size_t i = 0; i < own.count; i++) {
            add(list, own.items[i]);
        }
    } else {
        collect_doubling(film, instrument, &own);
        bool counted = numbers->count == 1 && numbers->items[0] <= own.count;
        if (counted) {
            add(list, own.items[numbers->items[0] - 1]);
        } else if (own.count == 1) {
            add(list, own.items[0]);
        } else if (own.count == 0 && !is_family_booked(film, instrument)) {
            booking = SW_NOT_BOOKED;
        }
    }
    free(own.items);
    return booking;
}

/* ---- by patterns -----------------------------------------------------------------------------------------
 */

void sw_chairs_that_claim(const sw_film *film, const sw_reading *reading, const sw_score *score,
                          uint32_t staff, sw_chair_list *list)
{
    const sw_staff *s = &score->staves[staff];
    uint32_t brace = sw_staff_brace(reading, score, staff);
    const uint32_t names[] = {s->instrument,
                              s->short_instrument,
                              s->id,
                              s->variable,
                              brace == SW_NO_INDEX ? 0 : score->groups[brace].instrument,
                              brace == SW_NO_INDEX ? 0 : score->groups[brace].id};
    for (size_t i = 0; i < sw_film_chair_count(film); i++) {
        for (size_t n = 0; n < sizeof names / sizeof names[0]; n++) {
            if (names[n] != 0 && sw_film_chair_claims(film, i, sw_reading_name(reading, names[n]))) {
                add(list, i);
                break;
            }
        }
    }
}
