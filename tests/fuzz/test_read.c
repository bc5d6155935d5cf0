/* Parse and read anything: no input may crash, hang or take memory without bound.
 *
 * With libFuzzer (make fuzz) this file is the target; without it (make test) it has a main of its own that
 * replays the inputs that once were found: seeds/ and crashers/. */
#include <glob.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

#include "stavewright/report.h"
#include "stavewright/score.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    /* A folder that does not exist: nothing is included from the disk. */
    sw_text *text = sw_text_from_bytes("/nowhere/fuzz.ly", (sw_slice){(const char *)data, size});
    const sw_text *overlays[] = {text};
    sw_read_options options = {.overlays = overlays, .overlay_count = 1};
    char *error = NULL;
    sw_reading *reading = sw_read(text->path, &options, &error);
    if (reading == NULL) { /* no LilyPond source */
        if (error == NULL) {
            abort();
        }
        free(error);
        sw_text_free(text);
        return 0;
    }
    sw_buffer report = {0};
    sw_report_events(reading, &report);
    sw_report_outline(reading, &report);
    sw_report_findings(reading, &reading->findings, &report);
    sw_buffer_free(&report);
    sw_reading_free(reading);
    sw_text_free(text);
    return 0;
}

#ifndef SW_LIBFUZZER
int main(void)
{
    glob_t inputs;
    if (glob("tests/fuzz/seeds/*", 0, NULL, &inputs) != 0 ||
        glob("tests/fuzz/crashers/*", GLOB_APPEND, NULL, &inputs) != 0) {
        fprintf(stderr, "no inputs in tests/fuzz/seeds or tests/fuzz/crashers\n");
        return 1;
    }
    for (size_t i = 0; i < inputs.gl_pathc; i++) {
        char *error = NULL;
        sw_text *text = sw_text_read(inputs.gl_pathv[i], &error);
        if (text == NULL) {
            fprintf(stderr, "%s\n", error);
            free(error);
            globfree(&inputs);
            return 1;
        }
        fprintf(stderr, "%s\n", inputs.gl_pathv[i]); /* the last one named is the one that fails */
        LLVMFuzzerTestOneInput((const uint8_t *)text->bytes, text->length);
        sw_text_free(text);
    }
    printf("# %zu inputs read\n", inputs.gl_pathc);
    globfree(&inputs);
    return 0;
}
#endif
