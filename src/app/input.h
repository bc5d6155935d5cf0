/* What an editor sends. */
#ifndef SW_APP_INPUT_H
#define SW_APP_INPUT_H

#include "stavewright/source.h"

/* Standard input as the text of the file `name` ("-" when that is NULL). NULL when it can't be read: that has
 * been said for the subcommand. The caller frees the result. */
sw_text *sw_read_input(const char *command, const char *name);

#endif
