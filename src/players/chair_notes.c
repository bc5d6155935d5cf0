#include "players/chair_notes.h"

#include <stdlib.h>
#include <string.h>

/* A staff that is gone through in order of time. */
typedef struct sweep {
    const sw_seating *seating;
    const sw_score *score;
    uint32_t staff;
    sw_note_list notes; /* and rests */
    uint32_t *sounding; /* of them, those that sound now, first player's first; rests, too */
    size_t sounding_count;
} sweep;

bool sw_note_is_played(const sw_reading *reading, const sw_score *score, const sw_event *event)
{
    const unsigned not_his = SW_EVENT_CUE | SW_EVENT_HIDDEN | SW_EVENT_UNCERTAIN;
    return (event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM) && (event->flags & not_his) == 0 &&
           strcmp(sw_reading_name(reading, score->voices[event->voice].type), "CueVoice") != 0;
}

static int compare_times(const void *a, const void *b, void *score)
{
    const uint32_t *x = a;
    const uint32_t *y = b;
    const sw_event *events = ((const sw_score *)score)->events;
    int order = sw_rational_compare(events[*x].onset, events[*y].onset);
    return order != 0 ? order : (*x > *y) - (*x < *y);
}

/* The first player's note first: that of the first voice, of a chord the highest. */
static int compare_players(const void *a, const void *b, void *score)
{
    const uint32_t *x = a;
    const uint32_t *y = b;
    const sw_event *events = ((const sw_score *)score)->events;
    if (events[*x].voice != events[*y].voice) {
        return events[*x].voice < events[*y].voice ? -1 : 1;
    }
    int high = sw_pitch_quarter_tones(events[*y].pitch) - sw_pitch_quarter_tones(events[*x].pitch);
    return high != 0 ? high : (*x > *y) - (*x < *y);
}

/* A rest that is written for players of the staff: it shows that its voice is theirs and silent. */
static bool is_rest(const sw_event *event)
{
    return (event->kind == SW_EVENT_REST || event->kind == SW_EVENT_FULL_REST) &&
           (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) == 0;
}

static sw_note_list list_staff(const sw_reading *reading, const sw_score *score, uint32_t staff, bool rests)
{
    sw_note_list list = {0};
    size_t capacity = 0;
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *event = &score->events[i];
        if (sw_note_is_played(reading, score, event) || (rests && is_rest(event))) {
            list.items = sw_grow(list.items, list.count, &capacity, sizeof *list.items);
            list.items[list.count++] = i;
        }
    }
    sw_sort_with(list.items, list.count, sizeof *list.items, compare_times, (void *)score);
    return list;
}

sw_note_list sw_notes_of_staff(const sw_reading *reading, const sw_score *score, uint32_t staff)
{
    return list_staff(reading, score, staff, false);
}

static void drop_ended(sweep *s, sw_rational now)
{
    size_t kept = 0;
    for (size_t i = 0; i < s->sounding_count; i++) {
        if (sw_rational_compare(sw_event_end(&s->score->events[s->sounding[i]]), now) > 0) {
            s->sounding[kept++] = s->sounding[i];
        }
    }
    s->sounding_count = kept;
}

/* Shares `count` players out among `notes` notes: those of note number `note`. */
static sw_seat_range share(const sw_seats *seats, bool all, size_t note, size_t notes)
{
    size_t count = all ? seats->all_count : seats->count;
    size_t begin = all ? seats->all_first : seats->first;
    size_t first = notes > count ? note * count / notes : (note * count + notes - 1) / notes;
    size_t end = notes > count ? first + 1 : ((note + 1) * count + notes - 1) / notes;
    return (sw_seat_range){(uint32_t)(begin + first), (uint32_t)(begin + end), 0, all};
}

/* Different heights among what sounds. */
static uint32_t count_heights(const sweep *s)
{
    uint32_t count = 0;
    for (size_t i = 0; i < s->sounding_count; i++) {
        const sw_event *event = &s->score->events[s->sounding[i]];
        bool known = is_rest(event);
        for (size_t k = 0; k < i && !known; k++) {
            const sw_event *other = &s->score->events[s->sounding[k]];
            known = !is_rest(other) &&
                    sw_pitch_quarter_tones(other->pitch) == sw_pitch_quarter_tones(event->pitch);
        }
        count += !known;
    }
    return count;
}

static void go_through(sweep *s, sw_seat_range *ranges)
{
    s->sounding_count = 0;
    for (size_t i = 0, end; i < s->notes.count; i = end) {
        sw_rational now = s->score->events[s->notes.items[i]].onset;
        drop_ended(s, now);
        const sw_seats *seats = sw_seating_at(s->seating, s->staff, now);
        for (end = i;
             end < s->notes.count && sw_rational_equal(s->score->events[s->notes.items[end]].onset, now);
             end++) {
            if ((s->score->events[s->notes.items[end]].flags & SW_EVENT_GRACE) == 0) {
                s->sounding[s->sounding_count++] = s->notes.items[end];
            } else { /* one after another, for all */
                ranges[s->notes.items[end]] = share(seats, false, 0, 1);
            }
        }
        if (s->sounding_count > 1) {
            qsort_r(s->sounding, s->sounding_count, sizeof *s->sounding, compare_players, (void *)s->score);
        }
        uint32_t heights = count_heights(s);
        bool several =
            s->sounding_count > 1 && s->score->events[s->sounding[0]].voice !=
                                         s->score->events[s->sounding[s->sounding_count - 1]].voice;
        for (size_t n = 0; n < s->sounding_count; n++) {
            const sw_event *event = &s->score->events[s->sounding[n]];
            if (sw_rational_equal(event->onset, now) && !is_rest(event)) {
                ranges[s->sounding[n]] = share(seats, several, n, s->sounding_count);
                ranges[s->sounding[n]].notes = heights;
            }
        }
    }
}

sw_seat_range *sw_seating_of_notes(const sw_seating *seating, const sw_reading *reading,
                                   const sw_score *score)
{
    sw_seat_range *ranges = sw_alloc_zero(score->event_count + 1, sizeof *ranges);
    sweep s = {.seating = seating, .score = score};
    s.sounding = sw_alloc((score->event_count + 1) * sizeof *s.sounding);
    for (s.staff = 0; s.staff < score->staff_count; s.staff++) {
        if (seating->staves[s.staff].count > 0) {
            s.notes = list_staff(reading, score, s.staff, true);
            go_through(&s, ranges);
            free(s.notes.items);
        }
    }
    free(s.sounding);
    return ranges;
}

bool sw_seats_meet(sw_seated_notes who, uint32_t one, uint32_t other)
{
    const sw_seat_range *a = &who.ranges[one];
    const sw_seat_range *b = &who.ranges[other];
    bool known = a->first < a->end && b->first < b->end;
    for (uint32_t i = a->first; known && i < a->end; i++) {
        for (uint32_t k = b->first; k < b->end; k++) {
            if (who.seating->seats[i].player == who.seating->seats[k].player) {
                return true;
            }
        }
    }
    return !known;
}

static int compare_own(const void *a, const void *b)
{
    const sw_own_note *x = a;
    const sw_own_note *y = b;
    int order = sw_rational_compare(x->onset, y->onset);
    return order != 0 ? order : (x->event > y->event) - (x->event < y->event);
}

size_t sw_notes_of_player(const sw_seating *seating, const sw_score *score, const sw_seat_range *ranges,
                          uint32_t player, sw_own_note *notes)
{
    size_t count = 0;
    for (uint32_t i = 0; i < score->event_count; i++) {
        for (uint32_t seat = ranges[i].first; seat < ranges[i].end; seat++) {
            if (seating->seats[seat].player == player) {
                const sw_event *e = &score->events[i];
                notes[count++] = (sw_own_note){e->onset, sw_event_end(e), i, seating->seats[seat].instrument};
            }
        }
    }
    sw_sort(notes, count, sizeof *notes, compare_own);
    return count;
}
