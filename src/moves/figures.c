#include "moves/figures.h"

bool sw_figures_find(sw_figures *figures, const sw_film *film_or_null, char **error)
{
    *figures = (sw_figures){.film = film_or_null};
    if (film_or_null == NULL) {
        figures->own = sw_film_load(NULL, (sw_slice){NULL, 0}, NULL, 0, error);
        figures->film = figures->own;
    }
    return figures->film != NULL;
}

void sw_figures_free(sw_figures *figures)
{
    sw_film_free(figures->own);
    *figures = (sw_figures){0};
}
