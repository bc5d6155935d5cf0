/* A line that goes to one target: one run of edit.h for each stretch in which one interval leads from staff
 * to staff. */
#include "moves/give_plan.h"

/* Plans the copy of notes for which both staves are entered in one way. */
static bool plan_stretch(sw_give_plan *g, const sw_entries *entries, const char *to, bool first,
                         sw_change_kind kind, char **error)
{
    if (!sw_give_find_staves(g, to, error) || !sw_give_is_whole(g, error) ||
        !sw_give_take_entries(g, entries, error) || !sw_give_find_voice(g, error) ||
        !sw_give_find_interval(g, error)) {
        return false;
    }
    sw_give_leave_graces(g);
    sw_give_find_left(g);
    sw_give_tell_chords(g);
    sw_change change = {.kind = kind,
                        .event = g->chosen.events[sw_give_first_copied(g)],
                        .last = g->chosen.events[g->chosen.count - 1],
                        .voice = g->voice,
                        .pitch = g->interval,
                        .left = g->left,
                        .left_count = g->left_count};
    if (first) { /* the rest of the line has what that brings along */
        sw_give_find_dynamic(g, &change);
    }
    sw_give_add_change(g, change);
    return true;
}

bool sw_give_plan_copy(sw_give_plan *g, const char *to, sw_change_kind kind, char **error)
{
    if (!sw_give_find_staves(g, to, error) || !sw_give_is_whole(g, error) ||
        !sw_give_clear_target(g, error)) {
        return false;
    }
    const sw_score *score = g->chosen.score;
    sw_entries *entries = sw_entries_of_film(g->figures.film, g->chosen.reading, score);
    g->parts = sw_alloc_zero(g->chosen.count, sizeof *g->parts);
    bool done = true;
    size_t end;
    for (size_t first = 0; first < g->chosen.count && done && g->move->findings.count == 0; first = end) {
        sw_rational until = sw_give_end_of_key(g, entries, sw_give_event(g, first)->onset);
        for (end = first + 1; end < g->chosen.count; end++) {
            if (sw_rational_compare(sw_give_event(g, end)->onset, until) >= 0) {
                break;
            }
        }
        sw_give_plan *part = sw_give_add_part(g, first, end);
        done = plan_stretch(part, entries, to, first == 0, kind, error);
        sw_give_take_changes(g, part);
    }
    sw_entries_free(entries, score->staff_count);
    return done;
}
