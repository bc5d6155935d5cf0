/* What all transformations share on the command line: their places, their input and how the result is shown.
 */
#ifndef SW_APP_MOVE_WORDS_H
#define SW_APP_MOVE_WORDS_H

#include "app/films.h"
#include "app/words.h"
#include "stavewright/move.h"

enum { SW_MOST_FOLDERS = 16 };

typedef struct sw_move_words {
    const char *command;
    const char *path; /* as it was given; "-": standard input, NULL: none */
    char *one;        /* the score that is meant, after sw_move_words_open */
    sw_places places;
    sw_elsewhere elsewhere;
    const char *folders[SW_MOST_FOLDERS]; /* --include */
    const char *file_name;                /* with "-": what it is called */
    bool write;
    bool why;
    sw_read_options reading; /* after sw_move_words_open */
    sw_text *input;          /* what standard input holds; NULL without */
    const sw_text *overlays[1];
    sw_films films;
    const sw_film *film; /* that the file belongs to; after sw_move_words_open */
} sw_move_words;

/* Reads the words behind a subcommand. Options that are not shared are given to `own`, with `data`: false
 * when it has said that a value is wrong. False when something is wrong; it has been said then. */
bool sw_move_words_read(sw_move_words *m, sw_words *words,
                        bool (*own)(const char *option, const char *value, void *data), void *data);
/* For commands that read their words themselves: takes an option that all share (*shared: it was one). False
 * when its value is wrong; it has been said then. */
bool sw_move_words_take(sw_move_words *m, const char *option, const char *value, bool *shared);
/* Whether path, --write and --file-name go together; otherwise it has been said. */
bool sw_move_words_check(const sw_move_words *m);
/* Finds the film of the file, and reads standard input where it is the source; the path to be read from then
 * on is returned. A folder stands for the only score below it, no path for that of the film around the
 * working folder. NULL when that can't be done; it has been said then. */
const char *sw_move_words_open(sw_move_words *m);
/* Shows the result of a move (NULL: *error says why there is none) as the words want it, and frees it.
 * Returns the exit status. */
int sw_move_words_show(sw_move_words *m, sw_move *move, char *error);

#endif
