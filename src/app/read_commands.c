/* The commands that only read: events and outline. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/words.h"
#include "stavewright/main_files.h"
#include "stavewright/report.h"

enum { MAX_FOLDERS = 64 };

typedef struct arguments {
    const char *command;
    const char *folders[MAX_FOLDERS];
    sw_read_options options;
    sw_paths paths;  /* the scores to read */
    bool has_lyrics; /* the command knows --lyrics */
    bool wants_lyrics;
} arguments;

static int take_path(arguments *a, const char *path)
{
    char *error = NULL;
    if (strcmp(path, "-") == 0) {
        sw_paths_add(&a->paths, path);
    } else if (!sw_paths_collect(&a->paths, path, &error)) {
        sw_say_bad(a->command, "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    return SW_EXIT_CLEAN;
}

static int take_arguments(arguments *a, int count, char **items)
{
    static const char *const options[] = {"--include", "--lyrics"};
    sw_words words = {.command = a->command,
                      .options = options,
                      .option_count = a->has_lyrics ? 2 : 1,
                      .flag_count = a->has_lyrics ? 1 : 0,
                      .items = items,
                      .count = count};
    bool named = false;
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        if (word == SW_WORD_BAD) {
            return SW_EXIT_BAD;
        }
        if (word == SW_WORD_PATH) {
            named = true;
            if (take_path(a, words.value) != SW_EXIT_CLEAN) {
                return SW_EXIT_BAD;
            }
        } else if (words.option == 1) {
            a->wants_lyrics = true;
        } else if (a->options.include_path_count < MAX_FOLDERS) {
            a->folders[a->options.include_path_count++] = words.value;
        } else {
            return sw_say_bad(a->command, "more folders to include from than are taken: %s", words.value);
        }
    }
    if (!named) {
        return sw_say_bad(a->command, "no file is named; usage: stavewright %s [--include FOLDER] FILE",
                          a->command);
    }
    if (a->paths.count == 0) {
        return sw_say_bad(a->command, "there is no .ly or .ily file below what is named");
    }
    a->options.include_path = a->folders;
    if (a->paths.count > 1) { /* what another one includes is read as part of it */
        sw_paths mains = sw_main_files(&a->paths, &a->options);
        sw_paths_free(&a->paths);
        a->paths = mains;
    }
    return SW_EXIT_CLEAN;
}

static int report(const arguments *a, const char *path, void (*print)(const sw_reading *, sw_buffer *))
{
    char *error = NULL;
    sw_reading *reading = sw_read(path, &a->options, &error);
    if (reading == NULL) {
        sw_say_bad(a->command, "%s", error);
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

int sw_command_events(int count, char **items)
{
    arguments a = {.command = "events", .has_lyrics = true};
    int status = take_arguments(&a, count, items);
    if (status == SW_EXIT_CLEAN && a.paths.count > 1) {
        /* The rows of several would not be told apart. */
        status = sw_say_bad(a.command, "one score at a time, and here are %zu; name one, such as %s",
                            a.paths.count, a.paths.items[0]);
    } else if (status == SW_EXIT_CLEAN) {
        status = report(&a, a.paths.items[0], a.wants_lyrics ? sw_report_lyrics : sw_report_events);
    }
    sw_paths_free(&a.paths);
    return status;
}

int sw_command_outline(int count, char **items)
{
    arguments a = {.command = "outline"};
    int status = take_arguments(&a, count, items);
    for (size_t i = 0; i < a.paths.count && status != SW_EXIT_BAD; i++) {
        if (a.paths.count > 1) {
            printf("%s%s\n", i == 0 ? "" : "\n", a.paths.items[i]);
        }
        int one = report(&a, a.paths.items[i], sw_report_outline);
        status = one > status ? one : status;
    }
    sw_paths_free(&a.paths);
    return status;
}
