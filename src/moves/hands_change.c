/* `hands --change-staff`: the music stays in one piece and goes from staff to staff. */
#include <string.h>

#include "checks/say.h"
#include "moves/hands_plan.h"

/* One chord, or notes of several lines in one voice. */
static bool is_together(const sw_event *a, const sw_event *b)
{
    return a->voice == b->voice && a->grace_num == b->grace_num && a->grace_den == b->grace_den &&
           sw_rational_equal(a->onset, b->onset);
}

/* What a voice plays at one moment stands on one staff: the one of most of its notes. */
static void settle_chord(sw_hands *h, size_t first, size_t end)
{
    const sw_event *event = &h->score->events[h->events[first]];
    size_t left = 0;
    for (size_t i = first; i < end; i++) {
        left += h->event_part[h->events[i]];
    }
    if (left == 0 || left == end - first) {
        return;
    }
    uint8_t part = 2 * left > end - first;
    for (size_t i = first; i < end; i++) {
        h->event_part[h->events[i]] = part;
    }
    const sw_music *music = &h->reading->music[event->chord];
    char place[SW_SAY];
    char label[32];
    sw_findings_add(
        &h->move->findings, SW_WARNING, "hands", music->file, music->start, music->end,
        "%s, %s: the chord is for both hands, but in one voice it can only stand on one staff, here the "
        "%s one; split these bars without --change-staff",
        sw_say_place(h->score, event->onset, place), sw_staff_label(h->reading, h->score, h->staff, label),
        part == 0 ? "upper" : "lower");
}

void sw_hands_settle_chords(sw_hands *h)
{
    for (size_t first = 0, end; first < h->count; first = end) {
        const sw_event *event = &h->score->events[h->events[first]];
        end = first + 1;
        while (end < h->count && is_together(event, &h->score->events[h->events[end]])) {
            end++;
        }
        settle_chord(h, first, end);
    }
}

const char *sw_hands_change_id(const sw_hands *h)
{
    const sw_staff *staff = &h->score->staves[h->staff];
    const char *id = sw_reading_name(h->reading, staff->id);
    const char *variable = sw_reading_name(h->reading, staff->variable);
    return id[0] != '\0' ? id : variable[0] != '\0' ? variable : "hands";
}
