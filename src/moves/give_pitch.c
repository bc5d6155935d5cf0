/* Which interval leads from the source's written notes to the target's, and how far it holds. It follows from
 * how each staff is entered: by its \transposition; without one, instruments that sound octaves away are
 * entered as their player reads them, all others as they sound. The whole line goes by one octave shift, the
 * smallest that brings every note into the section's compass. */
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "moves/give_plan.h"

sw_pitch sw_give_sounds(sw_give_plan *g, const sw_entry *entry, uint32_t staff)
{
    const sw_instrument *instrument = entry->instrument;
    const sw_pitch middle = {0, 0, 0};
    char text[32];
    if (entry->fit == SW_TRANSPOSITION_FITS && instrument != NULL) {
        return instrument->sounds; /* a B flat clarinet reads B flats, also where its source says ais */
    }
    if (entry->fit != SW_TRANSPOSITION_NONE) {
        return entry->transposition;
    }
    if (instrument == NULL || entry->octave_clef) {
        return middle;
    }
    if (instrument->sounds.step == 0 && instrument->sounds.alter == 0) {
        return instrument->sounds;
    }
    sw_buffer note = {0};
    sw_buffer_format(&note, "note: %s has no \\transposition: its notes are taken as they sound\n",
                     sw_give_label(g, staff, text));
    if (strstr(sw_buffer_text(&g->move->notes), sw_buffer_text(&note)) == NULL) {
        sw_buffer_string(&g->move->notes, sw_buffer_text(&note));
    }
    sw_buffer_free(&note);
    return middle;
}

static bool fits(const sw_give_plan *g, sw_pitch source, int octaves)
{
    for (size_t i = 0; i < g->chosen.count; i++) {
        sw_pitch sounding = sw_pitch_transpose(sw_give_event(g, i)->pitch, source);
        sounding.octave = sw_pitch_octave(sounding.octave + octaves);
        if (sw_instrument_place_sounding(g->to.instrument, sounding) != SW_IN_SECTION) {
            return false;
        }
    }
    return true;
}

bool sw_give_find_interval(sw_give_plan *g, char **error)
{
    char text[32];
    sw_pitch source = sw_give_sounds(g, &g->from, g->source);
    sw_pitch target = sw_give_sounds(g, &g->to, g->target);
    const char *name = sw_give_label(g, g->target, text);
    int octaves = g->octaves;
    g->interval = sw_pitch_interval(target, source);
    if (g->to.instrument == NULL) {
        sw_buffer_format(&g->move->why, "%s: an instrument that is not known; the line stays at its height\n",
                         name);
        return true;
    }
    while (!fits(g, source, octaves)) {
        octaves = octaves > 0 ? -octaves : 1 - octaves;
        if (octaves > 6) {
            return sw_give_fail(
                error,
                "the line fits %s in no octave; fold it first (stavewright octave --into INSTRUMENT "
                "--fold), or choose fewer bars",
                name, "");
        }
    }
    g->interval.octave = sw_pitch_octave(g->interval.octave + octaves);
    if (octaves != 0) {
        sw_buffer_format(&g->move->why, "%s: the line goes %d octave%s %s, to fit its compass\n", name,
                         abs(octaves), abs(octaves) == 1 ? "" : "s", octaves > 0 ? "up" : "down");
    }
    return true;
}

/* Whether the notes of a staff mean the same pitches in all of the passage, so that one interval leads from
 * one staff to the other. */
static bool is_in_one_key(sw_give_plan *g, const sw_entries *entries, uint32_t staff, char **error)
{
    sw_pitch first = sw_give_sounds(g, sw_entries_at(entries, g->begin), staff);
    for (size_t i = 0; i < entries->count; i++) {
        const sw_entry *entry = &entries->items[i];
        bool inside =
            sw_rational_compare(g->begin, entry->onset) < 0 && sw_rational_compare(entry->onset, g->end) < 0;
        if (inside && !sw_pitch_equal(sw_give_sounds(g, entry, staff), first)) {
            char place[SW_SAY];
            char text[32];
            return sw_give_fail(
                error,
                "%s: from here on %s is written in another key; take what stands before and what "
                "stands behind one after the other; nothing is changed",
                sw_say_place(g->chosen.score, entry->onset, place), sw_give_label(g, staff, text));
        }
    }
    return true;
}

bool sw_give_take_entries(sw_give_plan *g, const sw_entries *entries, char **error)
{
    g->from = *sw_entries_at(&entries[g->source], g->begin);
    g->to = *sw_entries_at(&entries[g->target], g->begin);
    return is_in_one_key(g, &entries[g->source], g->source, error) &&
           is_in_one_key(g, &entries[g->target], g->target, error);
}

bool sw_give_find_entries(sw_give_plan *g, char **error)
{
    const sw_score *score = g->chosen.score;
    sw_entries *entries = sw_entries_of_film(g->figures.film, g->chosen.reading, score);
    bool done = sw_give_take_entries(g, entries, error);
    sw_entries_free(entries, score->staff_count);
    return done;
}

sw_rational sw_give_end_of_key(sw_give_plan *g, const sw_entries *entries, sw_rational moment)
{
    const uint32_t staves[2] = {g->source, g->target};
    sw_rational end = g->end;
    for (int s = 0; s < 2; s++) {
        const sw_entries *all = &entries[staves[s]];
        sw_pitch now = sw_give_sounds(g, sw_entries_at(all, moment), staves[s]);
        for (size_t i = 0; i < all->count; i++) {
            sw_rational onset = all->items[i].onset;
            if (sw_rational_compare(moment, onset) < 0 && sw_rational_compare(onset, end) < 0 &&
                !sw_pitch_equal(sw_give_sounds(g, &all->items[i], staves[s]), now)) {
                end = onset;
            }
        }
    }
    return end;
}
