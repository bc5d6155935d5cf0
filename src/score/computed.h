/* Music that functions of the language compute from other music: \retrograde, \modalTranspose, \invertChords,
 * \shiftDurations ... They work on nodes of their own (sw_music_own), whose pitches and durations are then no
 * longer those of the text at their place. */
#ifndef SW_SCORE_COMPUTED_H
#define SW_SCORE_COMPUTED_H

#include "score/reader.h"

/* A copy of the music with nothing shared: variables' music is copied too, and transpositions are carried out
 * in the pitches, as the compiler does before it calls a function. */
uint32_t sw_music_own(sw_reader *reader, uint32_t music);

/* The rest works in place, on such a copy. */
typedef sw_pitch (*sw_pitch_change)(sw_pitch pitch, const void *data);
void sw_change_pitches(sw_reader *reader, uint32_t music, sw_pitch_change change, const void *data);
/* Moves the n-th note of each chord, counted from the lowest (from -1 down: from the highest), by octaves
 * until it is the highest or the lowest. */
void sw_move_chord_notes(sw_reader *reader, uint32_t music, int n, bool up);
/* Reverses the order of all sequences. */
void sw_retrograde(sw_reader *reader, uint32_t music);
/* Adds to all note values and dots. */
void sw_shift_durations(sw_reader *reader, uint32_t music, int shift, int dots);
/* Makes each note so many times as long as the one before, and all together as long as they were. False when
 * the fractions get too large. */
bool sw_feather_durations(sw_reader *reader, uint32_t music, sw_rational factor);

/* A scale: the pitches of all notes in the music, in their order. */
typedef struct sw_scale {
    sw_pitch *steps;
    size_t count;
    size_t capacity;
} sw_scale;
void sw_scale_read(sw_reader *reader, uint32_t music, sw_scale *scale);
/* \modalTranspose, \modalInversion: moves or mirrors a pitch along a scale that goes on five octaves to both
 * sides, as `from` moves to `to`. Pitches outside of it stay as they are. */
typedef struct sw_modal {
    const sw_scale *scale;
    int from; /* places in the scale that goes on */
    int to;
    bool inverted;
} sw_modal;
/* False when one of the two pitches is not in the scale: then nothing moves. The scale is borrowed. */
bool sw_modal_make(sw_modal *modal, const sw_scale *scale, sw_pitch from, sw_pitch to, bool inverted);
/* An sw_pitch_change for an sw_modal. */
sw_pitch sw_modal_change(sw_pitch pitch, const void *modal);

#endif
