/* Whether the sources are understood well enough for a change to be proved: what could not be read can't be
 * compared afterwards. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "write/division.h"

static bool fail(const sw_reading *reading, const sw_finding *finding, const char *why, char **error)
{
    const sw_text *text = reading->files[finding->file].text;
    sw_place place = sw_text_place(text, finding->start);
    if (asprintf(error, "%s:%u:%u: %s (%s)", text->path, place.line, place.column + 1, finding->message,
                 why) < 0) {
        abort();
    }
    return false;
}

static bool is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-' || c == '_';
}

/* The command with which a finding's text begins: "\foo". */
static sw_slice command_of(const sw_reading *reading, const sw_finding *finding)
{
    sw_slice text = sw_text_slice(reading->files[finding->file].text, finding->start, finding->end);
    size_t length = text.length > 0 && text.data[0] == '\\' ? 1 : 0;
    while (length > 0 && length < text.length && is_letter(text.data[length])) {
        length++;
    }
    return (sw_slice){text.data, length > 1 ? length : 0};
}

static bool holds_command(sw_slice text, sw_slice command)
{
    const char *end = text.data + text.length;
    for (const char *at = text.data; command.length > 0 && at < end;) {
        const char *found = memmem(at, (size_t)(end - at), command.data, command.length);
        if (found == NULL) {
            return false;
        }
        at = found + command.length;
        if (at == end || !is_letter(*at)) {
            return true;
        }
    }
    return false;
}

static bool touches_command(const sw_patch *patch, sw_slice command)
{
    for (size_t f = 0; f < patch->count; f++) {
        const sw_file_patch *file = &patch->files[f];
        for (size_t i = 0; i < file->edits.count; i++) {
            const sw_edit *edit = &file->edits.items[i];
            if (holds_command(sw_text_slice(file->text, edit->start, edit->end), command)) {
                return true;
            }
        }
    }
    return false;
}

bool sw_languages_stay(const sw_patch *patch, char **error)
{
    static const char language[] = "\\language";
    for (size_t f = 0; f < patch->count; f++) {
        const sw_file_patch *file = &patch->files[f];
        for (size_t i = 0; i < file->edits.count; i++) {
            const sw_edit *edit = &file->edits.items[i];
            sw_slice text = sw_text_slice(file->text, edit->start, edit->end);
            if (!holds_command(text, sw_slice_of(language))) {
                continue;
            }
            const char *found = memmem(text.data, text.length, language, strlen(language));
            sw_place place = sw_text_place(file->text, edit->start + (uint32_t)(found - text.data));
            if (asprintf(
                    error,
                    "%s:%u:%u: \\language stands in the music that would be divided; write it before the "
                    "variable, so that both parts are read alike",
                    file->text->path, place.line, place.column + 1) < 0) {
                abort();
            }
            return false;
        }
    }
    return true;
}

bool sw_sources_are_known(sw_reading *const *mains, size_t main_count, const sw_patch *patch, char **error)
{
    for (size_t m = 0; m < main_count; m++) {
        const sw_reading *reading = mains[m];
        for (size_t i = 0; i < reading->findings.count; i++) {
            const sw_finding *finding = &reading->findings.items[i];
            if (finding->severity == SW_ERROR) {
                return fail(reading, finding, "mend this first: what can't be read can't be changed safely",
                            error);
            }
            if (strcmp(finding->rule, "unresolved") == 0 &&
                touches_command(patch, command_of(reading, finding))) {
                return fail(reading, finding, "it stands in the music that would be changed", error);
            }
        }
    }
    return true;
}
