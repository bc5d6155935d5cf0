/* The bare parse of files, each once: the measure that the check of a whole film is held against.
 * usage: bench_parse FILE...
 *
 * Prints the bytes of all files and the seconds of processor time that parsing them takes, tab-separated. */
#include <stdio.h>

#include "stavewright/syntax.h"

int main(int count, char **paths)
{
    double seconds = 0;
    size_t bytes = 0;
    for (int i = 1; i < count; i++) {
        char *error = NULL;
        sw_text *text = sw_text_read(paths[i], &error);
        if (text == NULL) {
            fprintf(stderr, "%s\n", error);
            return 2;
        }
        bytes += text->length;
        seconds += sw_syntax_bare_parse(text);
        sw_text_free(text);
    }
    printf("%zu\t%.6f\n", bytes, seconds);
    return 0;
}
