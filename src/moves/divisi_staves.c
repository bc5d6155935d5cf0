/* A staff a part. */
#include <string.h>

#include "moves/divisi_graces.h"
#include "moves/divisi_winds.h"
#include "moves/divisi_work.h"
#include "write/draft.h"

/* The parts of the division with which a passage is played: bit 0 is the uppermost. */
static void share_passage(const sw_divisi_work *w, const sw_divisi_passage *passage, uint8_t *event_parts)
{
    const sw_divisi_plan *plan = &w->plan;
    for (size_t i = passage->first; i <= passage->last; i++) {
        uint32_t end = sw_voice_chord_end(plan->score, plan->chords[i].stroke->event);
        for (uint32_t e = plan->chords[i].stroke->event; e < end; e++) {
            int height = sw_pitch_quarter_tones(plan->score->events[e].pitch);
            event_parts[e] = 0;
            for (int part = 0; part < passage->section.parts; part++) {
                uint32_t note = sw_divisi_note(plan, passage, i, part);
                bool own = sw_pitch_quarter_tones(plan->score->events[note].pitch) == height;
                event_parts[e] |= (uint8_t)(own ? 1u << (passage->section.parts - 1 - part) : 0);
            }
        }
    }
}

/* Nobody comes in on a note that others hold: what is tied has only those parts that have begun it. */
static void keep_ties(const sw_divisi_plan *plan, uint8_t *event_parts)
{
    for (size_t i = 0; i < plan->count; i++) {
        uint32_t end = sw_voice_chord_end(plan->score, plan->chords[i].stroke->event);
        for (uint32_t e = plan->chords[i].stroke->event; e < end; e++) {
            uint32_t next = sw_voice_is_tied(plan->reading, plan->score, e)
                                ? sw_voice_joined(plan->score, sw_voice_chord(plan->score, e))
                                : SW_NO_INDEX;
            next = sw_voice_pitch(plan->score, next, plan->score->events[e].pitch);
            if (next != SW_NO_INDEX && (event_parts[next] & event_parts[e]) != 0) {
                event_parts[next] &= event_parts[e];
            }
        }
    }
}

/* As many as the largest chord that is to be divided has notes. */
static int parts_of_all(const sw_divisi_work *w)
{
    int parts = 2;
    for (size_t i = 0; i < w->plan.count; i++) {
        const sw_divisi_chord *chord = &w->plan.chords[i];
        const sw_divisi_wish any = {0};
        bool counts = chord->chosen && !chord->left && chord->count <= SW_DIVISI_MOST &&
                      !sw_divisi_lacks_players(&any, chord);
        parts = counts && chord->count > parts ? chord->count : parts;
    }
    return w->options->parts > 0 ? w->options->parts : parts;
}

/* On staves of their own, named by their numbers, players need not be told which of them plays. */
static void name_staves(sw_divisi_work *w, sw_division *division)
{
    const sw_reading *reading = w->plan.reading;
    const sw_score *score = w->plan.score;
    if (w->words || !sw_divisi_name_players(&w->fit, (int)division->parts, w->arena, division->names)) {
        return;
    }
    sw_staff_events events = sw_score_staff_events(score, w->plan.staff);
    uint32_t *dropped = NULL;
    for (int pass = 0; pass < 2; pass++) { /* count, then fill */
        w->dropped_count = 0;
        for (uint32_t e = events.first; e < events.end; e = sw_voice_chord_end(score, e)) {
            for (uint32_t m = reading->music[score->events[e].chord].first; m != SW_NO_INDEX;
                 m = reading->music[m].next) {
                if (reading->music[m].kind == SW_MUSIC_MARK &&
                    sw_divisi_only_says_who(w->instruments, w->instrument, sw_music_mark_text(reading, m))) {
                    if (pass == 1) {
                        dropped[w->dropped_count] = m;
                    }
                    w->dropped_count++;
                }
            }
        }
        dropped = pass == 0 ? sw_arena_alloc(w->arena, (w->dropped_count + 1) * sizeof *dropped) : dropped;
    }
    w->dropped = dropped;
    division->dropped = dropped;
    division->dropped_count = w->dropped_count;
}

bool sw_divisi_write_staves(sw_divisi_work *w, const sw_read_options *options, char **error)
{
    const sw_divisi_wish wish = {.parts = parts_of_all(w)};
    sw_divisi_find(&w->plan, &wish, &w->fit);
    sw_divisi_tell_left(w, &wish);
    if (w->plan.passage_count == 0) {
        return true;
    }
    const sw_score *score = w->plan.score;
    uint8_t *event_parts = sw_arena_alloc(w->arena, score->event_count);
    memset(event_parts, (1 << wish.parts) - 1, score->event_count);
    sw_divisi_share_singles(w, wish.parts, event_parts);
    sw_division division = {
        .reading = w->plan.reading,
        .score = score,
        .staff = w->plan.staff,
        .parts = (uint32_t)wish.parts,
        .suffixes = {"DivOne", "DivTwo", "DivThree", "DivFour", "DivFive", "DivSix"},
        .group = "GrandStaff",
        .apart = true,
        .event_parts = event_parts,
    };
    name_staves(w, &division);
    for (size_t i = 0; i < w->plan.count && !w->words; i++) {
        if (sw_divisi_says_who(w, i)) {
            sw_divisi_tell(w, i, "this text is for the staff of all players; it stands on each staff now");
            break;
        }
    }
    for (size_t p = 0; p < w->plan.passage_count; p++) {
        share_passage(w, &w->plan.passages[p], event_parts);
        sw_divisi_share_graces(&w->plan, &w->plan.passages[p], wish.parts, event_parts);
        sw_divisi_begin_choice(w, &w->plan.passages[p]);
        sw_buffer_format(&w->move->why, "%s\n", w->choices.items[w->choices.count - 1].why);
    }
    keep_ties(&w->plan, event_parts);
    sw_division_settle(w->plan.reading, score, w->plan.staff, event_parts);
    sw_move *move = w->move;
    return sw_divide(&division, move->mains, move->main_count, &move->patch, &move->notes, error) &&
           sw_patch_finish(&move->patch, error) &&
           sw_prove_division(&division, move->mains, move->main_count, &move->patch, options, error);
}
