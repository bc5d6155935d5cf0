/* Beams and beats: what a run passes from hand to hand in. */
#include <stdlib.h>

#include "checks/say.h"
#include "moves/hands_plan.h"

static bool begins_beam(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_BEAM_START;
}

static bool ends_beam(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_BEAM_END;
}

/* A number for the beat that a moment lies in. */
static uint32_t beat_number(const sw_score *score, sw_rational onset)
{
    enum { BEATS = 256 }; /* of a bar, at most */
    uint32_t bar = sw_score_bar_at(score, onset);
    uint32_t beat = (uint32_t)sw_rational_floor(sw_score_beat(score, onset));
    return 1 + (bar == SW_NO_INDEX ? 0 : bar) * BEATS + beat % BEATS;
}

/* Groups of fewer than three moments are none: a hand that plays two notes does not pass a run on. */
static void drop_small(sw_hands *h)
{
    enum { LEAST = 3 };
    for (size_t i = 0; i < h->count;) {
        size_t end = i;
        size_t moments = 0;
        while (end < h->count && h->notes[end].group == h->notes[i].group &&
               h->notes[end].voice == h->notes[i].voice) {
            bool same = end > i && h->notes[end].grace == h->notes[end - 1].grace &&
                        sw_rational_equal(h->notes[end].onset, h->notes[end - 1].onset);
            moments += same ? 0 : 1;
            end++;
        }
        for (; i < end; i++) {
            h->notes[i].group = moments < LEAST ? 0 : h->notes[i].group;
        }
    }
}

/* A beam that is written by hand goes before the beats of the metre. */
void sw_hands_find_groups(sw_hands *h)
{
    const uint32_t beam_numbers = 1u << 31; /* above those of beats */
    uint32_t beams = 0;
    uint32_t *open = sw_alloc_zero(h->score->voice_count + 1, sizeof *open); /* 0: no beam is open */
    for (size_t i = 0; i < h->count; i++) {
        const sw_event *event = &h->score->events[h->events[i]];
        uint32_t *beam = &open[event->voice];
        if (*beam == 0 && sw_event_has_mark(h->reading, event, begins_beam)) {
            *beam = beam_numbers + ++beams;
        }
        h->notes[i].group = *beam != 0 ? *beam : beat_number(h->score, event->onset);
        bool last_of_chord = i + 1 == h->count || h->score->events[h->events[i + 1]].chord != event->chord;
        if (last_of_chord && sw_event_has_mark(h->reading, event, ends_beam)) {
            *beam = 0;
        }
    }
    free(open);
    drop_small(h);
}
