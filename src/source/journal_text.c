/* The text of a journal: for people first, then one line for each folder and file. It is written once, up to
 * "listed", and "ready" is added later: a text without these was cut short. */
#include <errno.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "source/journal.h"

#define FIRST_LINE "stavewright journal 1\n"

static const char explanation[] =
    "# A stavewright command is changing the files below together, or was killed while it did.\n"
    "# If none is running, any stavewright command that reads one of them puts all back as they were,\n"
    "# or, if all of them are new already, only clears up. By hand: the original of a file NAME is beside it "
    "as\n"
    "# .NAME.stavewright-ID-N.old, its new version as .NAME.stavewright-ID-N.new while it is not yet in "
    "place.\n"
    "# Move the originals back, then remove what is left of these files, and this one in each folder.\n";

/* Names may hold anything but a NUL: bytes that would spoil a line are written as %XX. */
static void print_name(sw_buffer *result, const char *name)
{
    for (; *name != '\0'; name++) {
        unsigned char c = (unsigned char)*name;
        if (c < 0x20 || c == 0x7F || c == '%') {
            sw_buffer_format(result, "%%%02X", c);
        } else {
            sw_buffer_char(result, *name);
        }
    }
}

static int hex_digit(char c)
{
    const char *digits = "0123456789ABCDEF";
    const char *found = c == '\0' ? NULL : strchr(digits, c);
    return found == NULL ? -1 : (int)(found - digits);
}

/* NULL when the name is none that print_name writes. */
static char *parse_name(sw_slice text)
{
    sw_buffer name = {0};
    for (size_t i = 0; i < text.length; i++) {
        char c = text.data[i];
        if (c == '%') {
            int high = i + 2 < text.length ? hex_digit(text.data[i + 1]) : -1;
            int low = high < 0 ? -1 : hex_digit(text.data[i + 2]);
            c = low < 0 ? '\0' : (char)(high * 16 + low);
            i += 2;
        }
        if (c == '\0') {
            sw_buffer_free(&name);
            return NULL;
        }
        sw_buffer_char(&name, c);
    }
    return name.data; /* NULL for the empty name, too */
}

void sw_source_way(const char *from, const char *to, sw_buffer *way)
{
    size_t common = 0; /* length of the folder that holds both */
    size_t i = 0;
    for (; from[i] != '\0' && from[i] == to[i]; i++) {
        common = from[i] == '/' ? i : common;
    }
    if ((from[i] == '\0' || from[i] == '/') && (to[i] == '\0' || to[i] == '/')) {
        common = i;
    }
    size_t start = way->length;
    for (const char *p = from + common; *p != '\0'; p++) {
        if (*p == '/' && p[1] != '\0') {
            sw_buffer_string(way, way->length > start ? "/.." : "..");
        }
    }
    const char *down = to + common + strspn(to + common, "/");
    if (*down != '\0') {
        sw_buffer_format(way, "%s%s", way->length > start ? "/" : "", down);
    }
    if (way->length == start) {
        sw_buffer_char(way, '.');
    }
}

static void print_way(sw_buffer *result, const char *from, const char *to)
{
    sw_buffer way = {0};
    sw_source_way(from, to, &way);
    print_name(result, way.data);
    sw_buffer_free(&way);
}

static void print_fingerprint(sw_buffer *result, sw_fingerprint f)
{
    if (f.exists) {
        sw_buffer_format(result, " %" PRIu64 "-%016" PRIx64, f.length, f.digest);
    } else {
        sw_buffer_string(result, " none");
    }
}

void sw_journal_print(const sw_journal *journal, size_t folder, sw_buffer *result)
{
    sw_buffer_string(result, FIRST_LINE);
    sw_buffer_string(result, explanation);
    sw_buffer_format(result, "id %016" PRIx64 "\n", journal->id);
    for (size_t i = 0; i < journal->folder_count; i++) {
        sw_buffer_string(result, "folder ");
        print_way(result, journal->folders[folder].path, journal->folders[i].path);
        sw_buffer_char(result, '\n');
    }
    for (size_t i = 0; i < journal->file_count; i++) {
        const sw_journal_file *file = &journal->files[i];
        sw_buffer_format(result, "file %zu", file->folder);
        print_fingerprint(result, file->before);
        print_fingerprint(result, file->after);
        sw_buffer_char(result, ' ');
        print_name(result, file->name);
        sw_buffer_char(result, '\n');
    }
    sw_buffer_string(result, "listed\n");
}

/* Takes the text up to a mark off the front; false when the mark does not come. */
static bool cut(sw_slice *text, char mark, sw_slice *part)
{
    const char *end = text->length == 0 ? NULL : memchr(text->data, mark, text->length);
    if (end == NULL) {
        return false;
    }
    *part = (sw_slice){text->data, (size_t)(end - text->data)};
    *text = sw_slice_from(*text, part->length + 1);
    return true;
}

static bool parse_number(sw_slice text, int base, uint64_t *number)
{
    char digits[24] = "";
    if (text.length == 0 || text.length >= sizeof digits) {
        return false;
    }
    memcpy(digits, text.data, text.length);
    char *end;
    errno = 0;
    *number = strtoull(digits, &end, base);
    return digits[0] != '-' && *end == '\0' && errno == 0;
}

static bool parse_fingerprint(sw_slice text, sw_fingerprint *f)
{
    *f = (sw_fingerprint){0};
    if (sw_slice_is(text, "none")) {
        return true;
    }
    sw_slice length;
    f->exists = true;
    return cut(&text, '-', &length) && parse_number(length, 10, &f->length) &&
           parse_number(text, 16, &f->digest);
}

static bool parse_folder(sw_slice line, const char *here, sw_journal *journal)
{
    char *way = parse_name(line);
    if (way == NULL || way[0] == '/') {
        free(way);
        return false;
    }
    char *path = sw_source_format("%s/%s", here, way);
    char *real = realpath(path, NULL);
    if (real != NULL) {
        free(path);
        path = real;
    }
    free(way);
    /* In the order of the text, for the numbers there count. */
    size_t size = (journal->folder_count + 1) * sizeof *journal->folders;
    journal->folders = sw_realloc(journal->folders, size);
    journal->folders[journal->folder_count++] = (sw_journal_folder){.path = path, .fd = -1};
    return true;
}

static bool parse_file(sw_slice line, sw_journal *journal)
{
    sw_slice folder;
    sw_slice before;
    sw_slice after;
    uint64_t number;
    sw_journal_file file = {0};
    if (!cut(&line, ' ', &folder) || !cut(&line, ' ', &before) || !cut(&line, ' ', &after) ||
        !parse_number(folder, 10, &number) || number >= journal->folder_count ||
        !parse_fingerprint(before, &file.before) || !parse_fingerprint(after, &file.after)) {
        return false;
    }
    file.folder = (size_t)number;
    file.name = parse_name(line);
    if (file.name == NULL || strchr(file.name, '/') != NULL || strcmp(file.name, ".") == 0 ||
        strcmp(file.name, "..") == 0) {
        free(file.name);
        return false;
    }
    sw_journal_add_file(journal, file);
    return true;
}

/* The lines behind the first one, up to "listed"; *text is what comes behind it. */
static sw_journal_state parse_list(sw_slice *text, const char *folder, sw_journal *journal)
{
    for (sw_slice line; cut(text, '\n', &line);) {
        bool good = true;
        if (sw_slice_is(line, "listed")) {
            return SW_JOURNAL_COMPLETE;
        }
        if (sw_slice_starts(line, "id ")) {
            good = parse_number(sw_slice_from(line, 3), 16, &journal->id);
        } else if (sw_slice_starts(line, "folder ")) {
            good = parse_folder(sw_slice_from(line, 7), folder, journal);
        } else if (sw_slice_starts(line, "file ")) {
            good = parse_file(sw_slice_from(line, 5), journal);
        } else {
            good = sw_slice_starts(line, "#");
        }
        if (!good) {
            return SW_JOURNAL_FOREIGN;
        }
    }
    return SW_JOURNAL_TORN;
}

sw_journal_state sw_journal_parse(sw_slice text, const char *folder, sw_journal *journal, bool *ready)
{
    *journal = (sw_journal){0};
    *ready = false;
    sw_slice first = sw_slice_of(FIRST_LINE);
    size_t length = text.length < first.length ? text.length : first.length;
    if (memcmp(text.length > 0 ? text.data : "", first.data, length) != 0) {
        return SW_JOURNAL_FOREIGN;
    }
    if (length < first.length) {
        return SW_JOURNAL_TORN;
    }
    text = sw_slice_from(text, first.length);
    sw_journal_state state = parse_list(&text, folder, journal);
    if (state == SW_JOURNAL_COMPLETE) {
        *ready = sw_slice_is(text, "ready\n");
    } else {
        sw_journal_close(journal);
    }
    return state;
}
