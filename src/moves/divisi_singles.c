/* Who of the winds plays a single note between chords that they divide. */
#include "moves/divisi_winds.h"
#include "moves/divisi_work.h"

/* Whether the staff has said who plays since the last chord of several notes before a note. */
static bool says_who_since(const sw_divisi_work *w, size_t chord)
{
    const sw_seats *seats = sw_seating_at(w->fit.seating, w->fit.staff, sw_divisi_onset(w, chord));
    size_t before = chord;
    while (before > 0 && w->plan.chords[before].count < 2) {
        before--;
    }
    return w->plan.chords[before].count < 2 ||
           (seats != NULL && sw_rational_compare(seats->from, sw_divisi_onset(w, before)) > 0);
}

/* The parts that play a single note of winds between divided chords: whom the staff named last, or as
 * --single says. Bit p for part p, counted from the lowest. */
static unsigned parts_of_single(const sw_divisi_work *w, size_t chord, int parts)
{
    const unsigned all = (1u << parts) - 1;
    if (w->words) {
        return all;
    }
    if (w->options->single == SW_DIVISI_AS_BEFORE || says_who_since(w, chord)) {
        return sw_divisi_chosen_parts(&w->fit, sw_divisi_onset(w, chord), parts);
    }
    return w->options->single == SW_DIVISI_ONE ? 1u << (parts - 1) : all;
}

void sw_divisi_share_singles(const sw_divisi_work *w, int parts, uint8_t *event_parts)
{
    for (size_t i = 0; i < w->plan.count; i++) {
        const sw_divisi_chord *chord = &w->plan.chords[i];
        unsigned who = chord->count == 1 && !chord->tied ? parts_of_single(w, i, parts) : 0;
        for (int part = 0; part < parts && who != 0; part++) {
            uint8_t bit = (uint8_t)(1u << (parts - 1 - part));
            event_parts[chord->stroke->event] &= (uint8_t)((who >> part & 1) != 0 ? ~0u : ~(unsigned)bit);
        }
    }
}

void sw_divisi_leave_single_players(sw_divisi_work *w)
{
    for (size_t i = 0; i < w->plan.count; i++) {
        sw_divisi_chord *chord = &w->plan.chords[i];
        const sw_seats *seats = sw_seating_at(w->fit.seating, w->fit.staff, sw_divisi_onset(w, i));
        bool known = seats != NULL && seats->all_count > 1 && seats->all_count <= SW_DIVISI_MOST;
        int parts = known ? (int)seats->all_count : 2;
        bool single = chord->count == 1 && !chord->tied;
        chord->left = chord->left || (single && parts_of_single(w, i, parts) != (1u << parts) - 1);
    }
}
