/* Steps along a voice of a score. */
#include "write/draft.h"

bool sw_event_is_note(const sw_event *event)
{
    return event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM;
}

static bool is_one_chord(const sw_event *a, const sw_event *b)
{
    return a->voice == b->voice && a->chord == b->chord && a->frame == b->frame &&
           sw_rational_equal(a->onset, b->onset) && a->grace_num == b->grace_num &&
           a->grace_den == b->grace_den;
}

uint32_t sw_voice_chord(const sw_score *score, uint32_t event)
{
    while (event > 0 && is_one_chord(&score->events[event - 1], &score->events[event])) {
        event--;
    }
    return event;
}

uint32_t sw_voice_chord_end(const sw_score *score, uint32_t event)
{
    uint32_t end = event + 1;
    while (end < score->event_count && is_one_chord(&score->events[event], &score->events[end])) {
        end++;
    }
    return end;
}

uint32_t sw_voice_next(const sw_score *score, uint32_t event)
{
    uint32_t end = sw_voice_chord_end(score, event);
    bool found = end < score->event_count && score->events[end].voice == score->events[event].voice;
    return found ? end : SW_NO_INDEX;
}

uint32_t sw_voice_previous(const sw_score *score, uint32_t event)
{
    event = sw_voice_chord(score, event);
    bool found = event > 0 && score->events[event - 1].voice == score->events[event].voice;
    return found ? sw_voice_chord(score, event - 1) : SW_NO_INDEX;
}

uint32_t sw_voice_joined(const sw_score *score, uint32_t event)
{
    const sw_event *a = &score->events[event];
    uint32_t joined = SW_NO_INDEX;
    /* Spacers of another line in the same voice (<< \global \cello >>) stand beside the notes. */
    for (uint32_t e = sw_voice_next(score, event); e != SW_NO_INDEX; e = sw_voice_next(score, e)) {
        const sw_event *b = &score->events[e];
        int order = sw_rational_compare(b->onset, sw_event_end(a));
        if (order > 0 || ((a->flags | b->flags) & SW_EVENT_GRACE) != 0) {
            break;
        }
        if (order == 0 && (joined == SW_NO_INDEX || sw_event_is_note(b))) {
            joined = e;
        }
        if (order == 0 && sw_event_is_note(b)) {
            break;
        }
    }
    return joined;
}

uint32_t sw_voice_joined_before(const sw_score *score, uint32_t event)
{
    uint32_t joined = SW_NO_INDEX;
    for (uint32_t e = sw_voice_previous(score, event); e != SW_NO_INDEX; e = sw_voice_previous(score, e)) {
        const sw_event *b = &score->events[e];
        bool reaches = sw_rational_equal(sw_event_end(b), score->events[event].onset);
        if (sw_event_is_note(b) || (b->flags & SW_EVENT_GRACE) != 0) {
            return reaches && (b->flags & SW_EVENT_GRACE) == 0 ? e : joined;
        }
        joined = joined == SW_NO_INDEX && reaches ? e : joined;
    }
    return joined;
}

uint32_t sw_voice_pitch(const sw_score *score, uint32_t chord, sw_pitch pitch)
{
    uint32_t end = chord == SW_NO_INDEX ? chord : sw_voice_chord_end(score, chord);
    for (uint32_t e = chord; e < end; e++) {
        if (score->events[e].kind == SW_EVENT_NOTE && sw_pitch_equal(score->events[e].pitch, pitch)) {
            return e;
        }
    }
    return SW_NO_INDEX;
}

static bool has_tie(const sw_reading *reading, uint32_t music)
{
    for (uint32_t c = reading->music[music].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind == SW_MUSIC_MARK && sw_music_mark_class(reading, c) == SW_MARK_TIE) {
            return true;
        }
    }
    return false;
}

bool sw_voice_is_tied(const sw_reading *reading, const sw_score *score, uint32_t event)
{
    const sw_event *note = &score->events[event];
    uint32_t chord = sw_voice_chord(score, event);
    uint32_t next = sw_voice_joined(score, chord);
    bool written = has_tie(reading, note->chord) ||
                   (note->music != note->chord && reading->music[note->chord].kind == SW_MUSIC_CHORD &&
                    has_tie(reading, note->music));
    return written && note->kind == SW_EVENT_NOTE && sw_voice_pitch(score, next, note->pitch) != SW_NO_INDEX;
}

uint32_t sw_voice_at(const sw_score *score, uint32_t voice, sw_rational moment)
{
    sw_staff_events events = sw_score_staff_events(score, score->voices[voice].staff);
    uint32_t skip = SW_NO_INDEX;
    for (uint32_t e = events.first; e < events.end; e++) {
        const sw_event *event = &score->events[e];
        if (event->voice != voice) {
            continue;
        }
        if (sw_rational_compare(event->onset, moment) > 0) {
            break; /* a voice goes on in time */
        }
        if ((event->flags & SW_EVENT_GRACE) == 0 && sw_rational_compare(moment, sw_event_end(event)) < 0) {
            if (event->kind != SW_EVENT_SKIP) {
                return e;
            }
            skip = e;
        }
    }
    return skip;
}
