#include <stdlib.h>
#include <string.h>

#include "source/internal.h"

enum { CONTEXT = 3 };

/* A run of whole lines of the old text and the whole lines that replace it, as byte ranges. */
typedef struct change {
    size_t old_start;
    size_t old_end;
    size_t new_start;
    size_t new_end;
} change;

typedef struct changes {
    change *items;
    size_t count;
    size_t capacity;
} changes;

static bool at_line_start(sw_slice text, size_t at)
{
    return at == 0 || text.data[at - 1] == '\n';
}

static size_t line_start(sw_slice text, size_t at)
{
    const char *end = at == 0 ? NULL : memrchr(text.data, '\n', at);
    return end == NULL ? 0 : (size_t)(end - text.data) + 1;
}

/* The start of the line behind the one that holds `at`, or the end of the text. */
static size_t next_line(sw_slice text, size_t at)
{
    const char *end = memchr(text.data + at, '\n', text.length - at);
    return end == NULL ? text.length : (size_t)(end - text.data) + 1;
}

static size_t count_lines(sw_slice text, size_t start, size_t end)
{
    size_t count = 0;
    for (; start < end; start = next_line(text, start)) {
        count++;
    }
    return count;
}

/* Takes the lines that both sides have in common at their beginning and at their end off a change. */
static void trim(change *c, sw_slice old, sw_slice new)
{
    while (c->old_start < c->old_end && c->new_start < c->new_end) {
        sw_slice a = {old.data + c->old_start, next_line(old, c->old_start) - c->old_start};
        sw_slice b = {new.data + c->new_start, next_line(new, c->new_start) - c->new_start};
        if (!sw_slice_equal(a, b)) {
            break;
        }
        c->old_start += a.length;
        c->new_start += b.length;
    }
    while (c->old_start < c->old_end && c->new_start < c->new_end) {
        size_t a_start = line_start(old, c->old_end - 1);
        size_t b_start = line_start(new, c->new_end - 1);
        if (!sw_slice_equal((sw_slice){old.data + a_start, c->old_end - a_start},
                            (sw_slice){new.data + b_start, c->new_end - b_start})) {
            break;
        }
        c->old_end = a_start;
        c->new_end = b_start;
    }
}

static bool is_empty(const change *c)
{
    return c->old_start == c->old_end && c->new_start == c->new_end;
}

/* Trims the last change of the list and drops it when nothing is left. */
static void close_last(changes *list, sw_slice old, sw_slice new)
{
    if (list->count > 0) {
        trim(&list->items[list->count - 1], old, new);
        list->count -= is_empty(&list->items[list->count - 1]) ? 1 : 0;
    }
}

/* Widens each edit to whole lines; edits that then meet become one change. */
static changes find_changes(const sw_edits *edits, sw_slice old, sw_slice new)
{
    changes list = {0};
    bool open = false;     /* the last change may still grow */
    size_t open_until = 0; /* its end in the old text, before trimming */
    size_t added = 0;      /* bytes inserted and */
    size_t removed = 0;    /* deleted by the edits so far */
    for (size_t i = 0; i < edits->count; i++) {
        const sw_edit *edit = &edits->items[i];
        /* A line is searched for its ends once, not for each of its edits. */
        size_t start = open && edit->start <= open_until ? open_until : line_start(old, edit->start);
        size_t end = edit->end;
        size_t new_end = edit->start + added - removed + edit->length;
        if (!at_line_start(old, end) || !at_line_start(new, new_end)) {
            end = open && end < open_until ? open_until : next_line(old, end);
            new_end += end - edit->end;
        }
        if (open && start <= open_until) {
            list.items[list.count - 1].old_end = end;
            list.items[list.count - 1].new_end = new_end;
        } else {
            close_last(&list, old, new);
            list.items = sw_grow(list.items, list.count, &list.capacity, sizeof *list.items);
            list.items[list.count++] = (change){start, end, start + added - removed, new_end};
        }
        open = true;
        open_until = end;
        added += edit->length;
        removed += edit->end - edit->start;
    }
    close_last(&list, old, new);
    return list;
}

/* Prints whole lines, each behind a mark. */
static void print_lines(sw_buffer *result, char mark, sw_slice text, size_t start, size_t end)
{
    while (start < end) {
        size_t next = next_line(text, start);
        sw_buffer_char(result, mark);
        sw_buffer_append(result, (sw_slice){text.data + start, next - start});
        if (!at_line_start(text, next)) {
            sw_buffer_string(result, "\n\\ No newline at end of file\n");
        }
        start = next;
    }
}

/* Where a range of lines lies, as a hunk's header says it; an empty range is named by the line before it. */
static void print_range(sw_buffer *result, size_t lines_before, size_t count)
{
    sw_buffer_format(result, "%zu", lines_before + (count > 0 ? 1 : 0));
    if (count != 1) {
        sw_buffer_format(result, ",%zu", count);
    }
}

/* How many of the changes from the first one on are so close that their contexts meet. */
static size_t hunk_length(const change *c, size_t count, sw_slice old)
{
    size_t n = 1;
    while (n < count && count_lines(old, c[n - 1].old_end, c[n].old_start) <= 2 * (size_t)CONTEXT) {
        n++;
    }
    return n;
}

/* How far a diff has been printed. */
typedef struct progress {
    size_t at;       /* a line start of the old text, */
    size_t old_line; /* the lines before it in the old text */
    size_t new_line; /* and in the new one */
} progress;

/* Prints a hunk of n changes and moves `done` behind it. */
static void print_hunk(sw_buffer *result, const change *c, size_t n, sw_slice old, sw_slice new,
                       progress *done)
{
    size_t start = c[0].old_start;
    size_t end = c[n - 1].old_end;
    for (int i = 0; i < CONTEXT; i++) {
        start = start > 0 ? line_start(old, start - 1) : 0;
        end = end < old.length ? next_line(old, end) : end;
    }
    size_t skipped = count_lines(old, done->at, start);
    size_t old_count = count_lines(old, start, end);
    size_t new_count = old_count;
    for (size_t i = 0; i < n; i++) {
        new_count += count_lines(new, c[i].new_start, c[i].new_end);
        new_count -= count_lines(old, c[i].old_start, c[i].old_end);
    }
    sw_buffer_string(result, "@@ -");
    print_range(result, done->old_line + skipped, old_count);
    sw_buffer_string(result, " +");
    print_range(result, done->new_line + skipped, new_count);
    sw_buffer_string(result, " @@\n");
    for (size_t i = 0; i < n; i++) {
        print_lines(result, ' ', old, start, c[i].old_start);
        print_lines(result, '-', old, c[i].old_start, c[i].old_end);
        print_lines(result, '+', new, c[i].new_start, c[i].new_end);
        start = c[i].old_end;
    }
    print_lines(result, ' ', old, start, end);
    done->at = end;
    done->old_line += skipped + old_count;
    done->new_line += skipped + new_count;
}

/* Appends a part of a path with the escapes of C strings; true when there were any. */
static bool print_part(sw_buffer *result, sw_slice part)
{
    bool escaped = false;
    for (size_t i = 0; i < part.length; i++) {
        unsigned char c = (unsigned char)part.data[i];
        if (c < 0x20 || c == 0x7F) {
            sw_buffer_format(result, "\\%03o", c);
            escaped = true;
        } else if (c == '"' || c == '\\') {
            sw_buffer_format(result, "\\%c", c);
            escaped = true;
        } else {
            sw_buffer_char(result, (char)c);
        }
    }
    return escaped;
}

/* Prints a path in the form that patch and git read: parts joined by single slashes, in quotes when asked for
 * or when something had to be escaped. */
static void print_path(sw_buffer *result, const char *prefix, const char *path, bool quoted)
{
    sw_buffer name = {0};
    sw_buffer_string(&name, prefix);
    while (*path != '\0') {
        sw_slice part = {path, strcspn(path, "/")};
        if (part.length > 0 && !sw_slice_is(part, ".")) {
            sw_buffer_char(&name, '/');
            quoted |= print_part(&name, part);
        }
        path += part.length + (path[part.length] == '/' ? 1 : 0);
    }
    sw_buffer_format(result, quoted ? "\"%s\"" : "%s", sw_buffer_text(&name));
    sw_buffer_free(&name);
}

/* Prints a line that names a file. A tab ends a name with spaces, which patch would otherwise cut. */
static void print_file_line(sw_buffer *result, const char *mark, const char *prefix, const char *path)
{
    sw_buffer_string(result, mark);
    print_path(result, prefix, path, false);
    sw_buffer_string(result, strchr(path, ' ') != NULL ? "\t\n" : "\n");
}

/* No line in git's own form: in a sub-folder git would look for the file from the top of the work tree, not
 * find it there, and say nothing. Only a new file without a line cannot be shown otherwise. There, patch
 * finds a name with spaces only in quotes. */
static void print_header(sw_buffer *result, const char *path, bool exists, bool has_lines)
{
    if (!has_lines) {
        bool quoted = strchr(path, ' ') != NULL;
        sw_buffer_string(result, "diff --git ");
        print_path(result, "a", path, quoted);
        sw_buffer_char(result, ' ');
        print_path(result, "b", path, quoted);
        sw_buffer_string(result, "\nnew file mode 100644\n");
        return;
    }
    if (exists) {
        print_file_line(result, "--- ", "a", path);
    } else {
        sw_buffer_string(result, "--- /dev/null\n");
    }
    print_file_line(result, "+++ ", "b", path);
}

/* ---- where a diff applies ---- */

/* The real path of a text's file, also of one that is to be created; NULL when it leads nowhere. */
static char *real_path(const sw_text *text)
{
    char *real = realpath(text->path, NULL);
    if (real == NULL && !text->exists) {
        char *named = sw_folder_of(text->path);
        char *folder = realpath(named, NULL);
        if (folder != NULL) {
            real = sw_source_format("%s/%s", folder, sw_base_name(text->path));
        }
        free(folder);
        free(named);
    }
    return real;
}

/* The way from a folder down to a path below it; NULL when it is not below. */
static const char *below(const char *folder, const char *path)
{
    size_t length = strcmp(folder, "/") == 0 ? 0 : strlen(folder);
    return strncmp(folder, path, length) == 0 && path[length] == '/' ? path + length + 1 : NULL;
}

char *sw_diff_folder(const sw_text *const *texts, size_t count)
{
    char *folder = realpath(".", NULL);
    for (size_t i = 0; i < count && folder != NULL; i++) {
        char *real = real_path(texts[i]);
        while (real != NULL && below(folder, real) == NULL && strcmp(folder, "/") != 0) {
            char *upper = sw_folder_of(folder);
            free(folder);
            folder = upper;
        }
        free(real);
    }
    return folder;
}

void sw_diff_print(const sw_edits *edits, const sw_text *text, const char *folder, sw_buffer *result)
{
    char *real = folder == NULL ? NULL : real_path(text);
    const char *path = real == NULL ? NULL : below(folder, real);
    path = path == NULL ? text->path : path;
    sw_buffer after = {0};
    sw_buffer_string(&after, "");
    sw_edits_apply(edits, text, &after);
    sw_slice old = {text->bytes, text->length};
    sw_slice new = sw_buffer_slice(&after);
    changes list = find_changes(edits, old, new);
    if (list.count > 0 || !text->exists) {
        print_header(result, path, text->exists, list.count > 0);
    }
    progress done = {0};
    for (size_t i = 0; i < list.count;) {
        size_t n = hunk_length(&list.items[i], list.count - i, old);
        print_hunk(result, &list.items[i], n, old, new, &done);
        i += n;
    }
    free(list.items);
    free(real);
    sw_buffer_free(&after);
}
