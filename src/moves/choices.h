/* What a transformation has chosen to do, one place after another. A place where it can't be done is told and
 * left as it is; the others are changed all the same. Private to moves/. */
#ifndef SW_MOVES_CHOICES_H
#define SW_MOVES_CHOICES_H

#include "stavewright/move.h"

/* One choice: changes that belong together. */
typedef struct sw_choice {
    size_t first; /* of the list's changes */
    size_t count;
    uint32_t event; /* where it is told, when it can't be done */
    char *why;      /* the choice and its reason, one line; owned */
} sw_choice;

typedef struct sw_choices {
    const char *move; /* name of the transformation, for findings */
    sw_change *changes;
    size_t change_count;
    size_t change_capacity;
    sw_choice *items;
    size_t count;
    size_t capacity;
} sw_choices;

/* Begins a choice; `why` (a line without its end) is formatted. */
void sw_choices_begin(sw_choices *choices, uint32_t event, const char *why, ...)
    __attribute__((format(printf, 3, 4)));
/* Adds a change to the last one. */
void sw_choices_add(sw_choices *choices, sw_change change);
void sw_choices_free(sw_choices *choices);

/* Makes the changes (see sw_edit_score; `request` without changes): as many choices as prove out together.
 * The move gets the patch, the reasons of what was done, and findings for what was not. */
void sw_choices_make(sw_move *move, const sw_choices *choices, const sw_edit_request *request);

/* Adds a finding at an event of a score that one of the move's main files has. */
void sw_move_tell(sw_move *move, const char *name, const sw_reading *reading, const sw_event *event,
                  const char *message);

#endif
