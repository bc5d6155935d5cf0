/* When the music of a part sounds, and silences. */
#ifndef SW_WRITE_PART_TIME_H
#define SW_WRITE_PART_TIME_H

#include "write/division.h"

/* Whether the part has notes in or below a node. */
bool sw_part_plays(const sw_part_printer *printer, uint32_t music);
/* Whether any part has. */
bool sw_part_has_notes(const sw_part_printer *printer, uint32_t music);
/* The first event in or below a node, NULL when nothing of it is heard. */
const sw_event *sw_part_first_event(const sw_part_printer *printer, uint32_t music);
/* When the music in or below a node has ended, grace notes aside; false when it takes no time. */
bool sw_part_end(const sw_part_printer *printer, uint32_t music, sw_rational *end);
/* Writes one rest; its value only where it would not be inherited. */
void sw_put_rest(sw_part_printer *printer, char letter, sw_duration value);
/* Writes a silence: full-bar rests for whole bars, otherwise values that suit the metre. */
void sw_put_silence(sw_part_printer *printer, sw_rational onset, sw_rational end);

#endif
