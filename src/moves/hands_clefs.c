/* The clefs of the two hands' staves. */
#include <stdlib.h>
#include <string.h>

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

static bool is_within(const sw_hands *h, sw_rational onset)
{
    return sw_rational_compare(onset, h->from) >= 0 && sw_rational_compare(onset, h->to) < 0;
}

static size_t collect(const sw_hands *h, uint32_t part, note *notes)
{
    const sw_score *score = h->score;
    size_t count = 0;
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (score->voices[event->voice].staff == h->staff && event->kind == SW_EVENT_NOTE &&
            h->event_part[i] == part && is_within(h, event->onset)) {
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

static void add(sw_hands *h, uint32_t part, sw_rational onset, const char *clef)
{
    h->clefs = sw_grow(h->clefs, h->clef_count, &h->clef_capacity, sizeof *h->clefs);
    h->clefs[h->clef_count++] = (sw_part_clef){onset, part, clef};
}

static const char *name_of(sw_hand_clef clef)
{
    return clef == SW_TREBLE_CLEF ? "treble" : "bass";
}

/* The clef of the source that is in force up to a moment; *here: one stands at this very moment. */
static const char *source_clef(const sw_hands *h, sw_rational moment, bool *here)
{
    const char *clef = "treble"; /* what a staff begins with anyhow */
    *here = false;
    for (size_t i = 0; i < h->score->setting_count; i++) {
        const sw_setting *setting = &h->score->settings[i];
        const sw_music *music = &h->reading->music[setting->music];
        if (setting->staff != h->staff || music->kind != SW_MUSIC_CLEF) {
            continue;
        }
        int order = sw_rational_compare(setting->onset, moment);
        clef = order < 0 ? sw_reading_name(h->reading, music->name) : clef;
        *here = *here || order == 0;
    }
    return clef;
}

/* Behind the bars that are split the upper staff goes on as it was. */
static void restore_clef(sw_hands *h, const char *now)
{
    bool says_itself;
    const char *clef = source_clef(h, h->to, &says_itself);
    bool goes_on = sw_rational_compare(h->to, h->score->length) < 0;
    if (goes_on && !says_itself && strcmp(clef, now) != 0) {
        add(h, 0, h->to, clef);
    }
}

static void choose_for(sw_hands *h, uint32_t part)
{
    note *notes = sw_alloc((h->score->event_count + 1) * sizeof *notes);
    sw_clef_moment *moments = sw_alloc((h->score->event_count + 1) * sizeof *moments);
    sw_hand_clef *clefs = sw_alloc((h->score->event_count + 1) * sizeof *clefs);
    size_t count = find_moments(h, notes, collect(h, part, notes), moments);
    sw_hand_clef usual = part == 0 ? SW_TREBLE_CLEF : SW_BASS_CLEF;
    sw_clefs_choose(moments, count, usual, clefs);
    bool here;
    const char *now = part == 0 ? source_clef(h, h->from, &here) : "treble";
    for (size_t i = 0; i < count || i == 0; i++) {
        const char *clef = name_of(count == 0 ? usual : clefs[i]);
        if (strcmp(clef, now) == 0) {
            continue;
        }
        sw_rational onset = i == 0 ? (part == 0 ? h->from : sw_rational_zero()) : moments[i].position;
        if (i > 0 && moments[i - 1].bar != moments[i].bar && moments[i].bar != SW_NO_INDEX) {
            onset = h->score->bars[moments[i].bar].start;
        }
        add(h, part, onset, clef);
        now = clef;
    }
    if (part == 0) {
        restore_clef(h, now);
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
