/* The commands that only read: events and outline. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "stavewright/report.h"

static int report(const char *name, int count, char **arguments,
                  void (*print)(const sw_reading *, sw_buffer *))
{
    const char *folders[16];
    sw_read_options options = {.include_path = folders};
    const char *path = NULL;
    for (int i = 0; i < count; i++) {
        if (strcmp(arguments[i], "--include") == 0 && i + 1 < count && options.include_path_count < 16) {
            folders[options.include_path_count++] = arguments[++i];
        } else if (path == NULL && (arguments[i][0] != '-' || arguments[i][1] == '\0')) {
            path = arguments[i];
        } else {
            fprintf(stderr,
                    "stavewright %s: \"%s\" is not expected; usage: stavewright %s [--include FOLDER] FILE\n",
                    name, arguments[i], name);
            return SW_EXIT_BAD;
        }
    }
    if (path == NULL) {
        fprintf(stderr, "stavewright %s: no file is named\n", name);
        return SW_EXIT_BAD;
    }
    char *error = NULL;
    sw_reading *reading = sw_read(path, &options, &error);
    if (reading == NULL) {
        fprintf(stderr, "stavewright: %s\n", error);
        free(error);
        return SW_EXIT_BAD;
    }
    sw_buffer text = {0};
    print(reading, &text);
    fwrite(sw_buffer_text(&text), 1, text.length, stdout);
    sw_buffer_clear(&text);
    sw_report_findings(reading, &reading->findings, &text);
    fputs(sw_buffer_text(&text), stderr);
    sw_buffer_free(&text);
    int status = reading->findings.count > 0 ? SW_EXIT_FINDINGS : SW_EXIT_CLEAN;
    sw_reading_free(reading);
    return status;
}

int sw_command_events(int count, char **arguments)
{
    return report("events", count, arguments, sw_report_events);
}

int sw_command_outline(int count, char **arguments)
{
    return report("outline", count, arguments, sw_report_outline);
}
