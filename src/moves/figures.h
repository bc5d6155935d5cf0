/* The instruments, techniques and times that a transformation goes by. Private to moves/. */
#ifndef SW_MOVES_FIGURES_H
#define SW_MOVES_FIGURES_H

#include "stavewright/film.h"

typedef struct sw_figures {
    const sw_film *film; /* never NULL once found */
    sw_film *own;        /* the one that was loaded because none was given; NULL */
} sw_figures;

/* Those of a film, or where it is NULL the defaults. False with *error (free() it); sw_figures_free either
 * way. */
bool sw_figures_find(sw_figures *figures, const sw_film *film_or_null, char **error);
void sw_figures_free(sw_figures *figures);

#endif
