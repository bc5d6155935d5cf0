#include "moves/divisi_graces.h"

#include "write/draft.h"

uint32_t sw_divisi_next_grace(const sw_divisi_plan *plan, const sw_divisi_passage *passage, uint32_t event)
{
    const sw_score *score = plan->score;
    sw_rational first = plan->chords[passage->first].stroke->onset;
    sw_rational last = plan->chords[passage->last].stroke->onset;
    for (uint32_t e = event; e < score->event_count; e++) {
        const sw_event *grace = &score->events[e];
        if ((grace->flags & SW_EVENT_GRACE) != 0 && grace->kind == SW_EVENT_NOTE &&
            score->voices[grace->voice].staff == plan->staff && sw_voice_chord(score, e) == e &&
            sw_voice_chord_end(score, e) - e > 1 && sw_rational_compare(first, grace->onset) <= 0 &&
            sw_rational_compare(grace->onset, last) <= 0) {
            return e;
        }
    }
    return SW_NO_INDEX;
}

static void share(const sw_score *score, uint32_t grace, uint32_t parts, uint8_t *event_parts)
{
    uint32_t end = sw_voice_chord_end(score, grace);
    for (uint32_t e = grace; e < end; e++) {
        uint32_t below = 0; /* by height, not by the order in the source */
        for (uint32_t other = grace; other < end; other++) {
            below += sw_pitch_compare(score->events[other].pitch, score->events[e].pitch) < 0;
        }
        event_parts[e] = 0;
        for (uint32_t part = 0; part < parts; part++) {
            bool own = part * (end - grace) / parts == below;
            event_parts[e] |= (uint8_t)(own ? 1u << (parts - 1 - part) : 0);
        }
    }
}

void sw_divisi_share_graces(const sw_divisi_plan *plan, const sw_divisi_passage *passage, int parts,
                            uint8_t *event_parts)
{
    for (uint32_t e = 0; (e = sw_divisi_next_grace(plan, passage, e)) != SW_NO_INDEX; e++) {
        if (sw_voice_chord_end(plan->score, e) - e <= (uint32_t)parts) {
            share(plan->score, e, (uint32_t)parts, event_parts);
        }
    }
}
