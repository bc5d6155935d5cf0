/* stavewright music: one file's music as text, for git's diff. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/words.h"
#include "stavewright/report.h"

/* Whatever is in the file, a diff of others must not fail for it. */
static int print(const sw_text *text)
{
    char *error = NULL;
    sw_reading *reading = sw_read_alone(text, &error);
    if (reading == NULL) {
        const char *reason =
            strncmp(error, text->path, strlen(text->path)) == 0 ? error + strlen(text->path) : error;
        printf("no music%s\n", reason); /* the path is another one each time */
        free(error);
        return SW_EXIT_CLEAN;
    }
    sw_buffer music = {0};
    sw_report_music(reading, &music);
    fwrite(sw_buffer_text(&music), 1, music.length, stdout);
    sw_buffer_free(&music);
    sw_reading_free(reading);
    return SW_EXIT_CLEAN;
}

int sw_command_music(int count, char **items)
{
    sw_words words = {.command = "music", .items = items, .count = count};
    const char *path = NULL;
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        if (word == SW_WORD_BAD) {
            return SW_EXIT_BAD;
        }
        if (path != NULL) {
            return sw_say_bad("music", "one file at a time; \"%s\" is one too many", words.value);
        }
        path = words.value;
    }
    if (path == NULL) {
        return sw_say_bad("music", "name a file");
    }
    char *error = NULL;
    sw_text *text = sw_text_read(path, &error);
    if (text == NULL) {
        sw_say_bad("music", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    int status = print(text);
    sw_text_free(text);
    return status;
}
