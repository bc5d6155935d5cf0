/* A passage as two voices on the staff. */
#include <string.h>

#include "moves/divisi_graces.h"
#include "moves/divisi_work.h"
#include "write/draft.h"

enum { LOWER = 1, UPPER = 2 }; /* voices */

/* Which voices have a note of a chord: bit 0 the lower one, bit 1 the upper one. The lower half of the parts
 * is the lower voice. */
static unsigned voices_of(const sw_divisi_work *w, const sw_divisi_passage *passage, size_t chord,
                          uint32_t event)
{
    const sw_divisi_plan *plan = &w->plan;
    int height = sw_pitch_quarter_tones(plan->score->events[event].pitch);
    unsigned voices = 0;
    for (int part = 0; part < passage->section.parts; part++) {
        uint32_t note = sw_divisi_note(plan, passage, chord, part);
        if (sw_pitch_quarter_tones(plan->score->events[note].pitch) == height) {
            voices |= part < passage->section.parts / 2 ? LOWER : UPPER;
        }
    }
    return voices != 0 && w->options->tremolo_half ? LOWER | UPPER : voices;
}

bool sw_divisi_is_too_deep(const sw_divisi_plan *plan, const sw_divisi_passage *passage)
{
    const sw_score *score = plan->score;
    for (size_t i = passage->first; i <= passage->last; i++) {
        uint32_t levels;
        sw_divisi_tuplet(plan, plan->chords[i].stroke->event, &levels);
        if (levels > 1) {
            return true;
        }
    }
    for (uint32_t f = score->events[plan->chords[passage->first].stroke->event].frame; f != SW_NO_INDEX;
         f = score->frames[f].parent) {
        const sw_music *m = &plan->reading->music[score->frames[f].music];
        if (m->kind == SW_MUSIC_REPEAT && strcmp(sw_reading_name(plan->reading, m->name), "tremolo") == 0) {
            return true;
        }
    }
    return false;
}

bool sw_divisi_ties_hold(const sw_divisi_work *w, const sw_divisi_passage *passage)
{
    const sw_divisi_plan *plan = &w->plan;
    bool hold = !plan->chords[passage->first].tied;
    for (size_t i = passage->first; i <= passage->last && hold; i++) {
        uint32_t end = sw_voice_chord_end(plan->score, plan->chords[i].stroke->event);
        for (uint32_t e = plan->chords[i].stroke->event; e < end && hold; e++) {
            hold = !sw_voice_is_tied(plan->reading, plan->score, e) ||
                   (i < passage->last && voices_of(w, passage, i, e) == voices_of(w, passage, i + 1, e));
        }
    }
    return hold;
}

/* The first or last event of the tuplet in which an event stands: rests at its edges belong to it. */
static uint32_t edge_of_tuplet(const sw_divisi_plan *plan, uint32_t event,
                               uint32_t (*step)(const sw_score *score, uint32_t event))
{
    uint32_t levels;
    uint32_t tuplet = sw_divisi_tuplet(plan, event, &levels);
    for (uint32_t e = event; tuplet != SW_NO_INDEX && e != SW_NO_INDEX; e = step(plan->score, e)) {
        bool inside = sw_divisi_tuplet(plan, e, &levels) == tuplet;
        if (!inside && sw_event_is_note(&plan->score->events[e])) {
            break; /* what is silent may be a spacer of another line in the same voice */
        }
        event = inside ? e : event;
    }
    return event;
}

void sw_divisi_write_voices(sw_divisi_work *w, const sw_divisi_passage *passage)
{
    const sw_divisi_plan *plan = &w->plan;
    uint32_t first = edge_of_tuplet(plan, plan->chords[passage->first].stroke->event, sw_voice_previous);
    uint32_t last = edge_of_tuplet(plan, plan->chords[passage->last].stroke->event, sw_voice_next);
    uint32_t *lower = sw_arena_alloc(w->arena, plan->score->event_count * sizeof *lower);
    size_t lower_count = 0;
    uint32_t *only = sw_arena_alloc(w->arena, plan->score->event_count * sizeof *only);
    size_t only_count = 0;
    for (size_t i = passage->first; i <= passage->last; i++) {
        uint32_t end = sw_voice_chord_end(plan->score, plan->chords[i].stroke->event);
        for (uint32_t e = plan->chords[i].stroke->event; e < end; e++) {
            unsigned voices = voices_of(w, passage, i, e);
            if ((voices & LOWER) != 0) {
                lower[lower_count++] = e;
            }
            if (voices == LOWER) {
                only[only_count++] = e;
            }
        }
    }
    sw_choices_add(&w->choices, (sw_change){.kind = SW_CHANGE_NEW_VOICE,
                                            .event = first,
                                            .last = last,
                                            .notes = lower,
                                            .note_count = lower_count,
                                            .left = w->tremolos,
                                            .left_count = w->tremolo_count,
                                            .text = w->options->tremolo_half ? "_\"half ord.\"" : NULL});
    for (size_t i = 0; i < only_count; i++) {
        sw_choices_add(&w->choices, (sw_change){.kind = SW_CHANGE_REMOVE_NOTE, .event = only[i]});
    }
}

void sw_divisi_tell_graces(const sw_divisi_work *w, const sw_divisi_passage *passage)
{
    for (uint32_t e = 0; (e = sw_divisi_next_grace(&w->plan, passage, e)) != SW_NO_INDEX; e++) {
        sw_move_tell(w->move, "divisi", w->plan.reading, &w->plan.score->events[e],
                     "the grace notes stay together in the upper voice: divide them by hand");
    }
}
