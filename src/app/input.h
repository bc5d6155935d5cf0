/* What an editor sends. */
#ifndef SW_APP_INPUT_H
#define SW_APP_INPUT_H

#include "stavewright/source.h"

/* Standard input as the text of the file `name` ("-" when that is NULL). NULL when it can't be read: that has
 * been said for the subcommand. The caller frees the result. */
sw_text *sw_read_input(const char *command, const char *name);
/* For a command line with a mistake: prints standard input again when it was asked for (-) and is no
 * terminal. An editor puts what is printed in the place of what it has sent. */
void sw_give_back_input(int count, char **arguments);

#endif
