#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/words.h"
#include "stavewright/move.h"
#include "stavewright/report.h"

typedef struct hands_arguments {
    const char *path;
    sw_hands_options options;
    const char *folders[16]; /* --include */
    sw_read_options reading;
    bool write;
    bool why;
} hands_arguments;

static bool bad(const char *what, const char *value)
{
    fprintf(stderr, "stavewright hands: %s%s%s\n", what, value == NULL ? "" : " ",
            value == NULL ? "" : value);
    return false;
}

static bool parse_number(const char *text, int least, int most, int *number)
{
    char *end;
    long value = strtol(text, &end, 10);
    *number = (int)value;
    return end != text && *end == '\0' && value >= least && value <= most;
}

static bool parse(int count, char **arguments, hands_arguments *a)
{
    bool options = true; /* until -- */
    for (int i = 0; i < count; i++) {
        const char *option = arguments[i];
        if (options && strcmp(option, "--") == 0) {
            options = false;
            continue;
        }
        if (!options) {
            if (a->path != NULL) {
                return bad("one file at a time; not expected:", option);
            }
            a->path = option;
            continue;
        }
        bool takes_value = strcmp(option, "--staff") == 0 || strcmp(option, "--bars") == 0 ||
                           strcmp(option, "--instrument") == 0 || strcmp(option, "--span") == 0 ||
                           strcmp(option, "--fingers") == 0 || strcmp(option, "--include") == 0;
        if (takes_value && i + 1 == count) {
            return bad("a value is missing behind", option);
        }
        if (strcmp(option, "--include") == 0) {
            if (a->reading.include_path_count == 16) {
                return bad("at most 16 times", option);
            }
            a->folders[a->reading.include_path_count++] = arguments[++i];
        } else if (strcmp(option, "--staff") == 0) {
            a->options.staff = arguments[++i];
        } else if (strcmp(option, "--bars") == 0) {
            if (!sw_bar_range_parse(arguments[++i], &a->options.bars)) {
                return bad("--bars takes bars such as 8-12 or 8:3-9:1 (bar:beat), not", arguments[i]);
            }
        } else if (strcmp(option, "--instrument") == 0) {
            a->options.instrument = arguments[++i];
        } else if (strcmp(option, "--span") == 0) {
            if (!parse_number(arguments[++i], 5, 15, &a->options.span)) {
                return bad("--span takes an interval number from 5 to 15 (8 = octave, 10 = tenth), not",
                           arguments[i]);
            }
        } else if (strcmp(option, "--fingers") == 0) {
            if (!parse_number(arguments[++i], 1, 5, &a->options.fingers)) {
                return bad("--fingers takes a number from 1 to 5, not", arguments[i]);
            }
        } else if (strcmp(option, "--write") == 0) {
            a->write = true;
        } else if (strcmp(option, "--diff") == 0) {
            a->write = false;
        } else if (strcmp(option, "--why") == 0) {
            a->why = true;
        } else if (option[0] == '-' && option[1] != '\0') {
            static const char *const names[] = {"--staff",   "--bars", "--instrument", "--span", "--fingers",
                                                "--include", "--why",  "--write",      "--diff"};
            sw_say_bad("hands", "\"%s\" is not an option; %s", option,
                       sw_say_nearest(option, names, sizeof names / sizeof names[0],
                                      "stavewright help hands shows them"));
            return false;
        } else if (a->path == NULL) {
            a->path = option;
        } else {
            return bad("one file at a time; not expected:", option);
        }
    }
    if (a->path == NULL) {
        return bad("no file is named", NULL);
    }
    if (a->options.staff == NULL) {
        return bad("--staff NAME is needed: the staff to split; stavewright outline FILE lists the staves",
                   NULL);
    }
    return true;
}

int sw_command_hands(int count, char **arguments)
{
    hands_arguments a = {0};
    a.reading.include_path = a.folders;
    if (!parse(count, arguments, &a)) {
        return SW_EXIT_BAD;
    }
    char *error = NULL;
    sw_move *move = sw_move_hands(a.path, &a.options, &a.reading, &error);
    if (move == NULL) {
        fprintf(stderr, "stavewright hands: %s\n", error);
        free(error);
        return SW_EXIT_BAD;
    }
    if (move->patch.count == 0) {
        a.write = false; /* nothing to split: the notes say why */
    }
    int status = move->patch.count > 0 || move->findings.count > 0 ? SW_EXIT_FINDINGS : SW_EXIT_CLEAN;
    sw_buffer text = {0};
    sw_report_findings(move->mains[0], &move->findings, &text);
    sw_buffer_append(&text, sw_buffer_slice(&move->notes));
    if (a.why) {
        sw_buffer_append(&text, sw_buffer_slice(&move->why));
    }
    fputs(sw_buffer_text(&text), stderr);
    sw_buffer_clear(&text);
    if (a.write) {
        if (!sw_patch_write(&move->patch, &error)) {
            fprintf(stderr, "stavewright hands: %s\n", error);
            free(error);
            status = SW_EXIT_BAD;
        } else {
            fprintf(stderr, "stavewright hands: %zu file%s changed\n", move->patch.count,
                    move->patch.count == 1 ? "" : "s");
            status = move->findings.count > 0 ? SW_EXIT_FINDINGS : SW_EXIT_CLEAN;
        }
    } else {
        sw_patch_diff(&move->patch, &text);
        fwrite(sw_buffer_text(&text), 1, text.length, stdout);
    }
    sw_buffer_free(&text);
    sw_move_free(move);
    return status;
}
