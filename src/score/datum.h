/* Reading Scheme text datum by datum. */
#ifndef SW_SCORE_DATUM_H
#define SW_SCORE_DATUM_H

#include "stavewright/base.h"

/* One datum at the beginning of the text: white space and comments before it are passed over; LilyPond in
 * Scheme, #{ ... #}, is one. Returns the
 * bytes up to its end, 0 when there is none; *datum is the datum itself. */
size_t sw_datum_next(sw_slice text, sw_slice *datum);
/* The text from a byte on. */
sw_slice sw_datum_rest(sw_slice text, size_t from);
/* The inside of a parenthesised datum. */
sw_slice sw_datum_inside(sw_slice datum);

/* Whether a symbol is the function of the language that makes an event of any kind: "make-" and "-music"
 * around one hyphen. */
bool sw_datum_makes_event(sw_slice symbol);

#endif
