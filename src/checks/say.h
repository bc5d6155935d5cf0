/* How findings name places, pitches and intervals, and what rules ask of events. Private to checks/. */
#ifndef SW_CHECKS_SAY_H
#define SW_CHECKS_SAY_H

#include "stavewright/check.h"

enum { SW_SAY = 96 }; /* bytes that each of these texts fits into; every function returns `text` */

/* "bar 12, beat 3", "bar 7, beat 2 1/2" */
const char *sw_say_place(const sw_score *score, sw_rational onset, char text[SW_SAY]);
/* "B flat 3" */
const char *sw_say_pitch(sw_pitch pitch, char text[SW_SAY]);
/* "a whole tone", "two octaves and a fifth" */
const char *sw_say_interval(int semitones, char text[SW_SAY]);
/* "an octave", "a tenth", "a 17th": from steps of the staff (7 is an octave) */
const char *sw_say_span(int steps, char text[SW_SAY]);
/* Adds "bar 8" or "bars 8, 46, 61-63", the first ones when there are many. `bars`: indices into score->bars,
 * in any order; they are sorted. */
void sw_say_bars(const sw_score *score, uint32_t *bars, size_t count, sw_buffer *text);
/* "2 s", "0.4 s", "no time" */
const char *sw_say_seconds(double seconds, char text[SW_SAY]);
/* An instrument as a word of a sentence: "double bass", "clarinet in A". */
const char *sw_say_instrument(const sw_instrument *instrument, char text[SW_SAY]);
/* "1 thing", "2 things" */
const char *sw_say_count(size_t count, const char *thing, char text[SW_SAY]);

/* The written marks of an event, those of its chord included: calls `wanted` for each until it says true. */
bool sw_event_has_mark(const sw_reading *reading, const sw_event *event,
                       bool (*wanted)(const sw_reading *reading, uint32_t mark));
/* Marks that such questions are about. */
bool sw_mark_is_fermata(const sw_reading *reading, uint32_t mark);
bool sw_mark_is_up_bow(const sw_reading *reading, uint32_t mark);
/* The note where an event is written: that of a repeated chord is the repetition. */
const sw_music *sw_event_written(const sw_reading *reading, const sw_event *event);
/* Whether the score says how fast it goes at a moment: seconds mean nothing where that is only assumed. */
bool sw_tempo_is_told(const sw_reading *reading, const sw_score *score, sw_rational onset);
/* True for a note that this staff's player plays: no cue, not hidden, of known pitch. */
bool sw_event_is_played(const sw_reading *reading, const sw_score *score, const sw_event *event);

#endif
