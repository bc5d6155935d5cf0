/* The marks that matter for a melisma: slurs, ties and beams. Private to score/. */
#ifndef SW_SCORE_SUNG_MARKS_H
#define SW_SCORE_SUNG_MARKS_H

#include "score/reader.h"

enum { SW_MAX_SLURS = 8 };

/* What begins and ends at a moment. */
typedef struct sw_turn_marks {
    uint32_t slur_starts[SW_MAX_SLURS]; /* spanner names */
    uint32_t slur_ends[SW_MAX_SLURS];
    size_t start_count;
    size_t end_count;
    bool beam_start;
    bool beam_end;
    bool tie;
} sw_turn_marks;

typedef struct sw_sung_marks sw_sung_marks;

/* `graces`: the slurs of \appoggiatura and \acciaccatura are wanted too. */
sw_sung_marks *sw_sung_marks_new(sw_reader *reader, bool graces);
void sw_sung_marks_free(sw_sung_marks *marks);
/* Adds the marks among the children of a node. */
void sw_sung_marks_read(const sw_sung_marks *marks, uint32_t music, sw_turn_marks *turn);
/* Whether a grace note is slurred to the main note by its command. */
bool sw_sung_marks_slurs_grace(const sw_sung_marks *marks, const sw_event *event);

#endif
