#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "source/recover.h"

/* Continuation bytes are counted ahead once a block, so that a column costs no more in a file that is one
 * long line than in any other. */
enum { COLUMN_BLOCK = 1024, READ_BLOCK = 65536 };

uint64_t sw_digest(uint64_t digest, sw_slice bytes)
{
    for (size_t i = 0; i < bytes.length; i++) {
        digest = (digest ^ (unsigned char)bytes.data[i]) * UINT64_C(1099511628211); /* FNV-1a */
    }
    return digest;
}

static void index_lines(sw_text *text)
{
    const char *end = text->bytes + text->length;
    uint32_t count = 1;
    for (const char *p = text->bytes; (p = memchr(p, '\n', (size_t)(end - p))) != NULL; p++) {
        count++;
    }
    text->lines = sw_alloc(count * sizeof *text->lines);
    text->lines[0] = 0;
    text->line_count = 1;
    for (const char *p = text->bytes; (p = memchr(p, '\n', (size_t)(end - p))) != NULL; p++) {
        text->lines[text->line_count++] = (uint32_t)(p - text->bytes) + 1;
    }
}

static void index_columns(sw_text *text)
{
    unsigned char all = 0;
    for (uint32_t i = 0; i < text->length; i++) {
        all |= (unsigned char)text->bytes[i];
    }
    if (all < 0x80) {
        return;
    }
    text->continuations = sw_alloc((text->length / COLUMN_BLOCK + 1) * sizeof *text->continuations);
    uint32_t count = 0;
    for (uint32_t i = 0; i <= text->length; i++) {
        if (i % COLUMN_BLOCK == 0) {
            text->continuations[i / COLUMN_BLOCK] = count;
        }
        count += sw_is_continuation(text->bytes[i]) ? 1 : 0;
    }
}

/* Takes over the memory of `bytes`. */
static sw_text *text_over(const char *path, sw_buffer bytes, bool exists)
{
    sw_text *text = sw_alloc_zero(1, sizeof *text);
    text->path = sw_alloc(strlen(path) + 1);
    strcpy(text->path, path);
    text->bytes = bytes.data;
    text->length = (uint32_t)bytes.length;
    text->exists = exists;
    index_lines(text);
    index_columns(text);
    return text;
}

sw_text *sw_text_from_bytes(const char *path, sw_slice bytes)
{
    sw_buffer copy = {0};
    sw_buffer_append(&copy, bytes);
    return text_over(path, copy, true);
}

sw_text *sw_text_changed(const sw_text *text, sw_slice bytes)
{
    sw_text *changed = sw_text_from_bytes(text->path, bytes);
    changed->real_path = text->real_path == NULL ? NULL : strdup(text->real_path);
    return changed;
}

sw_text *sw_text_share(const char *path, const sw_text *other)
{
    sw_text *text = sw_alloc(sizeof *text);
    *text = *other;
    text->path = strdup(path);
    text->shared = true;
    return text;
}

sw_text *sw_text_new(const char *path)
{
    sw_buffer empty = {0};
    sw_buffer_string(&empty, "");
    return text_over(path, empty, false);
}

static bool read_bytes(int fd, const char *name, sw_buffer *bytes, char **error)
{
    struct stat status;
    bool too_long = fstat(fd, &status) == 0 && S_ISREG(status.st_mode) && status.st_size > SW_TEXT_LIMIT;
    char *block = sw_alloc(READ_BLOCK);
    long got = 0;
    sw_buffer_string(bytes, "");
    while (!too_long && (got = sw_system_read(fd, block, READ_BLOCK)) > 0) {
        sw_buffer_append(bytes, (sw_slice){block, (size_t)got});
        too_long = bytes->length > SW_TEXT_LIMIT;
    }
    int reason = errno;
    free(block);
    if (too_long) {
        return sw_source_fail(error, "%s: larger than %d bytes, which is no score", name, SW_TEXT_LIMIT);
    }
    if (got < 0) {
        return sw_source_fail(error, "%s: cannot be read: %s", name, strerror(reason));
    }
    return true;
}

sw_text *sw_text_read(const char *path, char **error)
{
    bool standard_input = strcmp(path, "-") == 0;
    const char *name = standard_input ? "standard input" : path;
    sw_buffer bytes = {0};
    sw_file_origin origin = standard_input ? SW_FILE_ON_DISK : sw_file_look(path, &bytes);
    if (origin == SW_FILE_GIVEN) {
        sw_buffer_string(&bytes, "");
        return text_over(path, bytes, true);
    }
    if (origin == SW_FILE_MISSING) {
        sw_source_fail(error, "%s: is not staged; git add it", name);
        return NULL;
    }
    if (!standard_input) {
        sw_recover_before_reading(path);
    }
    int fd = standard_input ? STDIN_FILENO : sw_system_calls()->open(path, O_RDONLY | O_CLOEXEC, 0);
    if (fd < 0) {
        sw_source_fail(error, "%s: cannot be opened: %s", name, strerror(errno));
        return NULL;
    }
    bool good = read_bytes(fd, name, &bytes, error);
    if (!standard_input) {
        sw_system_close(fd); /* nothing was written to it, so nothing can be lost */
    }
    if (!good) {
        sw_buffer_free(&bytes);
        return NULL;
    }
    sw_text *text = text_over(path, bytes, true);
    text->real_path = standard_input ? NULL : realpath(path, NULL); /* many ask whether it is their file */
    return text;
}

void sw_text_free(sw_text *text)
{
    if (text == NULL) {
        return;
    }
    free(text->path);
    if (!text->shared) {
        free(text->bytes);
        free(text->lines);
        free(text->continuations);
        free(text->real_path);
    }
    free(text);
}

uint32_t sw_text_line(const sw_text *text, uint32_t offset)
{
    uint32_t low = 0; /* the line looked for is in [low, high) */
    uint32_t high = text->line_count;
    while (high - low > 1) {
        uint32_t middle = low + (high - low) / 2;
        if (text->lines[middle] <= offset) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return low + 1;
}

static uint32_t continuations_before(const sw_text *text, uint32_t offset)
{
    if (text->continuations == NULL) {
        return 0;
    }
    uint32_t count = text->continuations[offset / COLUMN_BLOCK];
    for (uint32_t i = offset - offset % COLUMN_BLOCK; i < offset; i++) {
        count += sw_is_continuation(text->bytes[i]) ? 1 : 0;
    }
    return count;
}

sw_place sw_text_place(const sw_text *text, uint32_t offset)
{
    if (offset > text->length) {
        offset = text->length;
    }
    uint32_t line = sw_text_line(text, offset);
    uint32_t start = text->lines[line - 1];
    uint32_t hidden = continuations_before(text, offset) - continuations_before(text, start);
    return (sw_place){line, offset - start - hidden};
}

sw_slice sw_text_slice(const sw_text *text, uint32_t start, uint32_t end)
{
    end = end > text->length ? text->length : end;
    start = start > end ? end : start;
    return (sw_slice){text->bytes + start, end - start};
}

sw_slice sw_text_line_slice(const sw_text *text, uint32_t line)
{
    if (line < 1 || line > text->line_count) {
        return (sw_slice){text->bytes, 0};
    }
    uint32_t end = line < text->line_count ? text->lines[line] : text->length;
    sw_slice slice = sw_text_slice(text, text->lines[line - 1], end);
    if (sw_slice_ends(slice, "\n")) {
        slice.length -= sw_slice_ends(slice, "\r\n") ? 2 : 1;
    }
    return slice;
}

const char *sw_text_newline(const sw_text *text)
{
    uint32_t pairs = 0;
    uint32_t lone_returns = 0;
    for (uint32_t i = 0; i < text->length; i++) {
        if (text->bytes[i] == '\r') { /* the byte behind the last one is a NUL */
            *(text->bytes[i + 1] == '\n' ? &pairs : &lone_returns) += 1;
        }
    }
    uint32_t feeds = text->line_count - 1 - pairs;
    if (lone_returns > pairs && lone_returns > feeds) {
        return "\r";
    }
    return pairs > feeds ? "\r\n" : "\n";
}

const char *sw_base_name(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash == NULL ? path : slash + 1;
}

char *sw_folder_of(const char *path)
{
    const char *base = sw_base_name(path);
    if (base == path) {
        return sw_source_format(".");
    }
    int length = base - path > 1 ? (int)(base - path - 1) : 1;
    return sw_source_format("%.*s", length, path);
}

bool sw_same_path(const char *a, const char *b)
{
    char *real_a = realpath(a, NULL);
    char *real_b = realpath(b, NULL);
    bool same = real_a != NULL && real_b != NULL && strcmp(real_a, real_b) == 0;
    free(real_a);
    free(real_b);
    return same;
}

bool sw_text_same_file(const sw_text *a, const sw_text *b)
{
    if (a == b || strcmp(a->path, b->path) == 0) {
        return true;
    }
    bool known = a->real_path != NULL && b->real_path != NULL;
    return known ? strcmp(a->real_path, b->real_path) == 0 : sw_same_path(a->path, b->path);
}

sw_slice sw_text_indent(const sw_text *text, uint32_t offset)
{
    sw_slice bytes = sw_text_line_slice(text, sw_text_line(text, offset));
    size_t length = 0;
    while (length < bytes.length && (bytes.data[length] == ' ' || bytes.data[length] == '\t')) {
        length++;
    }
    return (sw_slice){bytes.data, length};
}
