/* The range that a line is to fit, and how the notes of a staff are compared with it. Private to moves/. */
#ifndef SW_MOVES_OCTAVE_RANGE_H
#define SW_MOVES_OCTAVE_RANGE_H

#include "checks/entry.h"
#include "moves/figures.h"
#include "moves/octave_line.h"
#include "moves/places.h"

typedef struct sw_fit_range {
    sw_octave_range heights;
    sw_pitch low; /* as `heights`, spelled */
    sw_pitch high;
    bool sounding;                   /* the notes count as they sound, otherwise as they are written */
    const sw_instrument *instrument; /* into which; NULL: between two pitches */
    sw_figures figures;
    sw_entries *entries; /* by staff; NULL when not sounding */
    size_t staff_count;
} sw_fit_range;

/* Finds the range that the options name. False with *error (free() it). Free with sw_fit_range_free either
 * way. */
bool sw_fit_range_find(const sw_chosen *chosen, const sw_octave_options *options, sw_fit_range *range,
                       char **error);
void sw_fit_range_free(sw_fit_range *range);
/* The pitch of a note that is compared with the range. */
sw_pitch sw_fit_range_pitch(const sw_fit_range *range, const sw_score *score, const sw_event *event);

/* Reads a pitch, in scientific notation ("C4") or as the input language at a music node has it ("c'"). */
bool sw_read_pitch(const sw_reading *reading, uint32_t music, sw_slice text, sw_pitch *pitch);

#endif
