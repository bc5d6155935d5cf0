/* Private to syntax/. */
#ifndef SW_SYNTAX_FOREIGN_H
#define SW_SYNTAX_FOREIGN_H

#include "stavewright/source.h"

/* NULL for bytes that can be a text in UTF-8; otherwise why they can't, as a clause. */
const char *sw_bytes_refusal(const sw_text *text);

#endif
