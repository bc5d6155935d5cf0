#include "app/input.h"

#include <stdlib.h>

#include "app/words.h"

sw_text *sw_read_input(const char *command, const char *name)
{
    char *error = NULL;
    sw_text *input = sw_text_read("-", &error);
    if (input == NULL) {
        sw_say_bad(command, "%s", error);
        free(error);
        return NULL;
    }
    sw_text *text = sw_text_from_bytes(name == NULL ? "-" : name, (sw_slice){input->bytes, input->length});
    sw_text_free(input);
    return text;
}
