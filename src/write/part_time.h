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
/* r, or s where another voice of the staff shows what happens meanwhile, and among grace notes. */
char sw_part_rest_letter(const sw_part_printer *printer, const sw_event *event);
/* Whether a rest of the source stands in a voice that this part does not play in that bar, beside another
 * voice that shows what happens meanwhile. */
bool sw_part_hides_rest(const sw_part_printer *printer, uint32_t music);
/* Writes a silence of a voice: full-bar rests for whole bars, otherwise values that suit the metre; not shown
 * (s) where another voice of the staff shows what happens meanwhile. The marks of the item `marks` that the
 * part has (SW_NO_INDEX: none) stand at the first rest. */
void sw_put_silence(sw_part_printer *printer, uint32_t voice, sw_rational onset, sw_rational end,
                    uint32_t marks);

#endif
