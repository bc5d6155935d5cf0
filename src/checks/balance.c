#include "checks/balance.h"

#include <stdlib.h>
#include <string.h>

#include "checks/entry.h"
#include "checks/say.h"

/* A note that sounds. */
typedef struct heard {
    sw_rational onset;
    sw_rational end;
    int semitones;
    uint32_t voice;
    const sw_instrument *instrument;
} heard;

typedef struct part {
    heard *items; /* in order of time */
    size_t count;
    size_t capacity;
    sw_rational longest; /* no note is longer */
    bool section;        /* strings: one weight, however many notes */
} part;

struct sw_balance {
    const sw_dynamics *dynamics; /* of the score: few notes are asked for theirs */
    part *parts;                 /* for each staff */
    size_t count;
};

static int compare_heard(const void *a, const void *b)
{
    return sw_rational_compare(((const heard *)a)->onset, ((const heard *)b)->onset);
}

static void add(part *p, heard s)
{
    p->items = sw_grow(p->items, p->count, &p->capacity, sizeof *p->items);
    p->items[p->count++] = s;
    p->longest = sw_rational_max(p->longest, sw_rational_sub(s.end, s.onset));
}

/* Where the source leaves two readings, the first one will do: weights ask for no exact height. */
static bool sounds_as(const sw_entry *entry, sw_pitch pitch, sw_pitch *sound)
{
    sw_pitch written[SW_ENTRY_READINGS];
    if (sw_entry_written(entry, pitch, written) == 0) {
        return false;
    }
    *sound = sw_instrument_sounding(entry->instrument, written[0]);
    return true;
}

static void fill(const sw_check *check, const sw_score *score, uint32_t staff, const sw_entries *entries,
                 part *p)
{
    const sw_entry *on_staff = NULL;
    sw_staff_events events = sw_score_staff_events(score, staff);
    p->longest = sw_rational_zero();
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *event = &score->events[i];
        on_staff = sw_entries_next(entries, on_staff, event->onset);
        const sw_entry *entry = sw_entry_of_note(entries, on_staff, i);
        sw_pitch sound;
        if ((event->flags & SW_EVENT_GRACE) != 0 || !sw_event_is_played(check->reading, score, event) ||
            !sounds_as(entry, event->pitch, &sound)) {
            continue;
        }
        p->section = entry->instrument->family == SW_STRINGS;
        add(p, (heard){event->onset, sw_event_end(event), sw_pitch_semitones(sound), event->voice,
                       entry->instrument});
    }
    sw_sort(p->items, p->count, sizeof *p->items, compare_heard);
}

/* A score of one staff, as a part is, has nothing beside it. */
sw_balance *sw_balance_of(sw_check *check, size_t number)
{
    const sw_score *score = &check->reading->scores[number];
    sw_balance *balance = sw_alloc(sizeof *balance);
    *balance = (sw_balance){sw_check_dynamics(check, number),
                            sw_alloc_zero(score->staff_count + 1, sizeof(part)), score->staff_count};
    const sw_entries *entries = sw_check_entries(check, score);
    for (uint32_t staff = 0; staff < score->staff_count && score->staff_count > 1; staff++) {
        fill(check, score, staff, &entries[staff], &balance->parts[staff]);
    }
    return balance;
}

void sw_balance_free(sw_balance *balance)
{
    if (balance != NULL) {
        for (size_t staff = 0; staff < balance->count; staff++) {
            free(balance->parts[staff].items);
        }
        free(balance->parts);
        free(balance);
    }
}

/* How many notes of a part begin not later than a moment. */
static size_t begun(const part *p, sw_rational onset)
{
    size_t low = 0;
    size_t high = p->count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (sw_rational_compare(p->items[middle].onset, onset) <= 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

/* The weight of one part near a height; sets what `beside` says of doublings when it has the note. */
static double weight_of(const sw_balance *balance, const part *p, sw_rational onset, int semitones,
                        sw_dynamic dynamic, const sw_instrument *own, sw_beside *beside)
{
    enum { NEAR = 12 };
    double weight = 0;
    sw_rational earliest = sw_rational_sub(onset, p->longest);
    for (size_t i = begun(p, onset); i > 0; i--) {
        const heard *s = &p->items[i - 1];
        if (sw_rational_compare(s->onset, earliest) < 0) {
            break;
        }
        if (sw_rational_compare(s->end, onset) <= 0) {
            continue;
        }
        beside->doubled = beside->doubled || (s->semitones - semitones) % 12 == 0;
        if (abs(s->semitones - semitones) > NEAR) {
            continue;
        }
        sw_dynamic level = sw_dynamics_at(balance->dynamics, s->voice, s->onset).level;
        if (level != SW_NO_DYNAMIC && level >= dynamic) {
            beside->in_unison = beside->in_unison || (s->semitones == semitones && s->instrument != own);
            double one = sw_instrument_weight(s->instrument, level); /* its player's, at the dynamic there */
            weight = p->section ? one : weight + one;
        }
    }
    return weight;
}

sw_beside sw_balance_beside(const sw_balance *balance, uint32_t staff, sw_rational onset, sw_pitch sounding,
                            sw_dynamic dynamic, const sw_instrument *own)
{
    sw_beside beside = {.heaviest = SW_NO_INDEX};
    double most = 0;
    for (uint32_t s = 0; s < balance->count; s++) {
        if (s == staff) {
            continue;
        }
        double weight = weight_of(balance, &balance->parts[s], onset, sw_pitch_semitones(sounding), dynamic,
                                  own, &beside);
        beside.weight += weight;
        if (weight > most) {
            most = weight;
            beside.heaviest = s;
        }
    }
    return beside;
}
