#include "app/input.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

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

void sw_give_back_input(int count, char **arguments)
{
    bool asked = false;
    for (int i = 0; i < count; i++) {
        asked = asked || strcmp(arguments[i], "-") == 0;
    }
    char bytes[1 << 14];
    size_t length;
    while (asked && !isatty(STDIN_FILENO) && (length = fread(bytes, 1, sizeof bytes, stdin)) > 0) {
        fwrite(bytes, 1, length, stdout);
    }
}
