/* Shifts notes by octaves. */
#include <stdlib.h>
#include <string.h>

#include "moves/linked.h"
#include "moves/octave_fit.h"
#include "moves/ottava.h"
#include "moves/places.h"

static void explain(sw_move *move, const sw_chosen *chosen, int by)
{
    const sw_score *score = chosen->score;
    uint32_t last = SW_NO_INDEX;
    size_t count = 0;
    for (size_t i = 0; i <= chosen->count; i++) {
        uint32_t staff =
            i == chosen->count ? SW_NO_INDEX : score->voices[score->events[chosen->events[i]].voice].staff;
        if (staff != last && count > 0) {
            char text[32];
            sw_buffer_format(&move->why, "%s: %zu note%s %d octave%s %s\n",
                             sw_staff_label(chosen->reading, score, last, text), count, count == 1 ? "" : "s",
                             abs(by), abs(by) == 1 ? "" : "s", by > 0 ? "higher" : "lower");
            count = 0;
        }
        last = staff;
        count++;
    }
}

/* By event of the score: the octaves by which it moves. False with *error. */
static bool find_octaves(sw_move *move, const sw_chosen *chosen, const sw_octave_options *options, int8_t *by,
                         char **error)
{
    if (options->by == 0) {
        return sw_octave_fit(move, chosen, options, by, error);
    }
    for (size_t i = 0; i < chosen->count; i++) {
        by[chosen->events[i]] = (int8_t)options->by;
    }
    explain(move, chosen, options->by);
    return true;
}

static bool has_pitches(const sw_chosen *chosen)
{
    for (size_t i = 0; i < chosen->count; i++) {
        if (chosen->score->events[chosen->events[i]].kind == SW_EVENT_NOTE) {
            return true;
        }
    }
    return false;
}

/* The changes that the move wants. False with *error for what leads too far. */
static bool plan(const sw_chosen *chosen, const int8_t *by, sw_change *changes, size_t *count, char **error)
{
    *count = 0;
    for (uint32_t e = 0; e < chosen->score->event_count; e++) {
        const sw_event *event = &chosen->score->events[e];
        int octave = event->pitch.octave + by[e];
        if (event->kind != SW_EVENT_NOTE || by[e] == 0) {
            continue; /* percussion, and what stays */
        }
        if (octave < -6 || octave > 8) {
            *error = strdup("that leads out of the range of hearing; nothing is changed");
            return false;
        }
        changes[*count] = (sw_change){.kind = SW_CHANGE_PITCH, .event = e};
        changes[*count].pitch = event->pitch;
        changes[(*count)++].pitch.octave = (int8_t)octave;
    }
    return true;
}

static bool shift(sw_move *move, const sw_chosen *chosen, const sw_octave_options *options,
                  const sw_read_options *reading_options, char **error)
{
    if (!has_pitches(chosen)) {
        *error = strdup("there is only percussion here, which has no octaves; nothing is changed");
        return false;
    }
    int8_t *by = sw_alloc_zero(chosen->score->event_count + 1, sizeof *by);
    sw_change *changes = sw_alloc_zero(chosen->score->event_count + 1, sizeof *changes);
    sw_edit_request request = sw_chosen_request(move, chosen, options->elsewhere, reading_options);
    request.changes = changes;
    bool done = find_octaves(move, chosen, options, by, error) &&
                plan(chosen, by, changes, &request.count, error) &&
                sw_edit_score(&request, &move->patch, &move->notes, error);
    free(changes);
    free(by);
    return done;
}

static bool run(sw_move *move, const sw_octave_options *options, const sw_read_options *reading_options,
                char **error)
{
    sw_chosen chosen;
    if (!sw_places_choose(move, &options->places, &chosen, error)) {
        return false;
    }
    bool done = options->ottava != SW_OTTAVA_LEAVE
                    ? sw_move_ottava(move, &chosen, options, reading_options, error)
                    : shift(move, &chosen, options, reading_options, error);
    free(chosen.events);
    return done;
}

sw_move *sw_move_octave(const char *path, const sw_octave_options *options,
                        const sw_read_options *reading_options, char **error)
{
    sw_move *move = sw_move_open(path, reading_options, error);
    return sw_move_close(move, move != NULL && run(move, options, reading_options, error));
}
