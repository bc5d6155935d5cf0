/* The items of a sequence, and what becomes of each in one part. Private to write/. */
#ifndef SW_WRITE_PART_TOKENS_H
#define SW_WRITE_PART_TOKENS_H

#include "write/division.h"

typedef enum sw_token_kind {
    SW_TOKEN_KEEP,     /* written note by note */
    SW_TOKEN_VERBATIM, /* copied */
    SW_TOKEN_REST,     /* a rest of the source */
    SW_TOKEN_SILENT,   /* another part's notes: becomes a rest */
    SW_TOKEN_DROP      /* left out */
} sw_token_kind;

/* What the part does with an item. */
sw_token_kind sw_part_classify(const sw_part_printer *printer, uint32_t music);
/* Whether a \set gives the name of the staff, which belongs to the group of its parts. */
bool sw_part_is_staff_name(const sw_part_printer *printer, uint32_t music);
/* Whether it is \repeat tremolo. */
bool sw_part_is_tremolo(const sw_part_printer *printer, uint32_t music);
/* Whether a variable with notes is not divided: it is not heard in this score, and the upper part keeps it.
 */
bool sw_part_is_unheard(const sw_part_printer *printer, uint32_t music);

/* Whether this part has marks at an item, so that its rest can't be joined to the one before. */
bool sw_part_has_marks(const sw_part_printer *printer, uint32_t music);

#endif
