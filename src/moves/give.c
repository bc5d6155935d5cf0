/* Gives a line to another staff, doubles it there, or shares it among several.
 *
 * The plan finds what changes (give_copy.c for one target, give_share.c for several); the rest is edit.h,
 * which writes it and proves it. */
#include <stdlib.h>

#include "moves/give_plan.h"
#include "moves/linked.h"

static bool plan(sw_give_plan *g, char **error)
{
    bool done = g->options->share
                    ? sw_give_plan_shared(g, error)
                    : sw_give_plan_copy(g, g->options->to,
                                        g->options->keep ? SW_CHANGE_COPY_RUN : SW_CHANGE_MOVE_RUN, error);
    g->count = g->move->findings.count > 0 ? 0 : g->count;
    return done;
}

static bool run(sw_give_plan *g, const sw_read_options *reading_options, char **error)
{
    if (!sw_figures_find(&g->figures, g->options->film, error)) {
        return false;
    }
    g->techniques = sw_film_techniques(g->figures.film);
    if (!sw_places_choose(g->move, &g->options->places, &g->chosen, error)) {
        return false;
    }
    if (!plan(g, error)) {
        return false;
    }
    sw_edit_request request = sw_chosen_request(g->move, &g->chosen, g->options->elsewhere, reading_options);
    request.changes = g->changes;
    request.count = g->count;
    return g->count == 0 || sw_edit_score(&request, &g->move->patch, &g->move->notes, error);
}

sw_move *sw_move_give(const char *path, const sw_give_options *options,
                      const sw_read_options *reading_options, char **error)
{
    sw_give_plan g = {.move = sw_move_open(path, reading_options, error), .options = options};
    g.move = sw_move_close(g.move, g.move != NULL && run(&g, reading_options, error));
    sw_give_free_parts(&g);
    free(g.changes);
    free(g.chosen.events);
    sw_figures_free(&g.figures);
    return g.move;
}
