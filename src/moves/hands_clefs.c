/* The clefs of the two hands' staves. */
#include <stdlib.h>

#include "moves/hands_plan.h"
#include "players/hand_clefs.h"

static int compare_clefs(const void *a, const void *b)
{
    const sw_part_clef *x = a;
    const sw_part_clef *y = b;
    int order = sw_rational_compare(x->onset, y->onset);
    return order != 0 ? order : (int)x->part - (int)y->part;
}

/* A note of the hand. */
typedef struct note {
    sw_rational onset;
    sw_rational end;
    int step;
} note;

static int compare_notes(const void *a, const void *b)
{
    const note *x = a;
    const note *y = b;
    return sw_rational_compare(x->onset, y->onset);
}

static size_t collect(const sw_hands *h, uint32_t part, note *notes)
{
    const sw_score *score = h->score;
    size_t count = 0;
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (score->voices[event->voice].staff == h->staff && event->kind == SW_EVENT_NOTE &&
            h->event_part[i] == part) {
            notes[count++] = (note){event->onset, sw_event_end(event), sw_pitch_staff_steps(event->pitch)};
        }
    }
    qsort(notes, count, sizeof *notes, compare_notes);
    return count;
}

/* One moment for all notes that begin together. */
static size_t find_moments(const sw_hands *h, const note *notes, size_t count, sw_clef_moment *moments)
{
    size_t found = 0;
    sw_rational silent_since = sw_rational_zero();
    for (size_t i = 0; i < count; i++) {
        sw_clef_moment *last = found == 0 ? NULL : &moments[found - 1];
        int step = notes[i].step;
        if (last != NULL && sw_rational_equal(last->position, notes[i].onset)) {
            last->lowest = step < last->lowest ? step : last->lowest;
            last->highest = step > last->highest ? step : last->highest;
        } else {
            moments[found++] = (sw_clef_moment){
                .position = notes[i].onset,
                .bar = sw_score_bar_at(h->score, notes[i].onset),
                .lowest = step,
                .highest = step,
                .after_rest = sw_rational_compare(silent_since, notes[i].onset) < 0,
            };
        }
        silent_since = sw_rational_max(silent_since, notes[i].end);
    }
    return found;
}

static void add(sw_hands *h, uint32_t part, sw_rational onset, sw_hand_clef clef)
{
    h->clefs = sw_grow(h->clefs, h->clef_count, &h->clef_capacity, sizeof *h->clefs);
    h->clefs[h->clef_count++] = (sw_part_clef){onset, part, clef == SW_TREBLE_CLEF ? "treble" : "bass"};
}

static void choose_for(sw_hands *h, uint32_t part)
{
    note *notes = sw_alloc((h->score->event_count + 1) * sizeof *notes);
    sw_clef_moment *moments = sw_alloc((h->score->event_count + 1) * sizeof *moments);
    sw_hand_clef *clefs = sw_alloc((h->score->event_count + 1) * sizeof *clefs);
    size_t count = find_moments(h, notes, collect(h, part, notes), moments);
    sw_hand_clef usual = part == 0 ? SW_TREBLE_CLEF : SW_BASS_CLEF;
    sw_clefs_choose(moments, count, usual, clefs);
    sw_hand_clef now = SW_TREBLE_CLEF; /* what a staff begins with anyhow */
    for (size_t i = 0; i < count || i == 0; i++) {
        sw_hand_clef clef = count == 0 ? usual : clefs[i];
        if (clef == now) {
            continue;
        }
        sw_rational onset = i == 0 ? sw_rational_zero() : moments[i].position;
        if (i > 0 && moments[i - 1].bar != moments[i].bar && moments[i].bar != SW_NO_INDEX) {
            onset = h->score->bars[moments[i].bar].start;
        }
        add(h, part, onset, clef);
        now = clef;
    }
    free(notes);
    free(moments);
    free(clefs);
}

void sw_hands_choose_clefs(sw_hands *h)
{
    choose_for(h, 0);
    choose_for(h, 1);
    if (h->clef_count > 0) {
        qsort(h->clefs, h->clef_count, sizeof *h->clefs, compare_clefs);
    }
}
