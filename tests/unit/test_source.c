/* Texts, places, edits and diffs. Diffs are proved by the programs that apply them: patch and git. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cmocka.h>

#include "stavewright/source.h"

/* ---- random numbers, the same on every machine ------------------------------------------------------ */

static uint64_t random_state;

static uint64_t next_random(void)
{
    uint64_t x = random_state += UINT64_C(0x9E3779B97F4A7C15); /* splitmix64 */
    x = (x ^ x >> 30) * UINT64_C(0xBF58476D1CE4E5B9);
    x = (x ^ x >> 27) * UINT64_C(0x94D049BB133111EB);
    return x ^ x >> 31;
}

static uint32_t below(uint32_t limit)
{
    return (uint32_t)(next_random() % limit);
}

static uint64_t seed_random(void)
{
    const char *given = getenv("TEST_SEED");
    random_state = given == NULL ? 20240607 : strtoull(given, NULL, 10);
    printf("TEST_SEED=%llu\n", (unsigned long long)random_state);
    return random_state;
}

/* ---- a folder for files ----------------------------------------------------------------------------- */

static char folder[256];

static int make_folder(void **state)
{
    (void)state;
    const char *parent = getenv("TMPDIR");
    snprintf(folder, sizeof folder, "%s/source-test-XXXXXX", parent == NULL ? "/tmp" : parent);
    return mkdtemp(folder) == NULL ? -1 : 0;
}

static int run(const char *format, ...) __attribute__((format(printf, 1, 2)));
static int run(const char *format, ...)
{
    char command[2048];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(command, sizeof command, format, arguments);
    va_end(arguments);
    return system(command);
}

static int remove_folder(void **state)
{
    (void)state;
    return run("rm -rf '%s'", folder);
}

static char *in_folder(const char *name)
{
    static char path[1024];
    snprintf(path, sizeof path, "%s/%s", folder, name);
    return path;
}

static void put_file(const char *name, sw_slice bytes)
{
    FILE *file = fopen(in_folder(name), "wb");
    assert_non_null(file);
    assert_int_equal(fwrite(bytes.data, 1, bytes.length, file), bytes.length);
    assert_int_equal(fclose(file), 0);
}

static void assert_slice(sw_slice slice, const char *wanted)
{
    if (!sw_slice_is(slice, wanted)) {
        fail_msg("'%.*s' is not '%s'", (int)slice.length, slice.data, wanted);
    }
}

/* ---- lines and places ------------------------------------------------------------------------------- */

static sw_text *text_of(const char *bytes)
{
    return sw_text_from_bytes("cue.ly", sw_slice_of(bytes));
}

static void assert_place(const sw_text *text, uint32_t offset, uint32_t line, uint32_t column)
{
    sw_place place = sw_text_place(text, offset);
    if (place.line != line || place.column != column) {
        fail_msg("byte %u lies at %u:%u, not at %u:%u", offset, place.line, place.column, line, column);
    }
    assert_int_equal(sw_text_line(text, offset), line);
}

static void ascii_places(void **state)
{
    (void)state;
    sw_text *text = text_of("ab\n\ncd");
    assert_null(text->continuations);
    assert_int_equal(text->line_count, 3);
    assert_place(text, 0, 1, 0);
    assert_place(text, 2, 1, 2); /* a line end belongs to the line that it ends */
    assert_place(text, 3, 2, 0);
    assert_place(text, 4, 3, 0);
    assert_place(text, 5, 3, 1);
    assert_place(text, 6, 3, 2);
    assert_place(text, 600, 3, 2); /* behind the end: the end */
    sw_text_free(text);
}

static void empty_and_final_lines(void **state)
{
    (void)state;
    sw_text *text = text_of("");
    assert_int_equal(text->line_count, 1);
    assert_place(text, 0, 1, 0);
    assert_slice(sw_text_line_slice(text, 1), "");
    sw_text_free(text);
    text = text_of("a\n");
    assert_int_equal(text->line_count, 2);
    assert_place(text, 2, 2, 0);
    assert_slice(sw_text_line_slice(text, 1), "a");
    assert_slice(sw_text_line_slice(text, 2), "");
    assert_slice(sw_text_line_slice(text, 3), "");
    assert_slice(sw_text_line_slice(text, 0), "");
    sw_text_free(text);
    sw_text_free(NULL);
}

/* Lines and columns of this file as the compiler gives them to its note events (version 2.24.1). */
static void places_agree_with_the_compiler(void **state)
{
    (void)state;
    static const char bytes[] = "\xEF\xBB\xBF\\version \"2.24.0\" { c4 }\r\n"
                                "{ \t d4 %\xC3\xA9\n"
                                "  <>^\"\xC3\xA9\xF0\x9F\x8E\xBB\" e4 }\r{ f4 }\n"
                                "{ g4 }\n";
    static const struct {
        const char *note;
        uint32_t line;
        uint32_t column;
    } cases[] = {{"c4", 1, 21}, {"d4", 2, 4}, {"e4", 3, 10}, {"f4", 3, 17}, {"g4", 4, 2}};
    sw_text *text = text_of(bytes);
    assert_non_null(text->continuations);
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        uint32_t offset = (uint32_t)(strstr(bytes, cases[i].note) - bytes);
        assert_place(text, offset, cases[i].line, cases[i].column);
    }
    assert_slice(sw_text_line_slice(text, 1), "\xEF\xBB\xBF\\version \"2.24.0\" { c4 }");
    assert_slice(sw_text_line_slice(text, 2), "{ \t d4 %\xC3\xA9");
    sw_text_free(text);
}

/* Columns counted from the line's start, byte by byte. */
static uint32_t slow_column(const sw_text *text, uint32_t offset)
{
    uint32_t column = 0;
    for (uint32_t i = offset; i > 0 && text->bytes[i - 1] != '\n'; i--) {
        column += ((unsigned char)text->bytes[i - 1] & 0xC0) != 0x80 ? 1 : 0;
    }
    return column;
}

static void places_in_long_lines(void **state)
{
    (void)state;
    seed_random();
    sw_buffer bytes = {0};
    sw_buffer_string(&bytes, "\xC3\xA9");
    for (int i = 0; i < 6000; i++) {
        static const char *const pieces[] = {"c4 ",          "\xC3\xA9", "\xF0\x9F\x8E\xBB",
                                             "\xE2\x99\xAF", "\t",       "\xA9"};
        sw_buffer_string(&bytes, below(900) == 0 ? "\n" : pieces[below(6)]);
    }
    while (bytes.length % 1024 != 0) {
        sw_buffer_string(&bytes, "c"); /* that the end is also the start of a block */
    }
    sw_text *text = sw_text_from_bytes("long.ly", sw_buffer_slice(&bytes));
    uint32_t line = 1;
    for (uint32_t i = 0; i <= text->length; i++) {
        assert_place(text, i, line, slow_column(text, i));
        line += i < text->length && text->bytes[i] == '\n' ? 1 : 0;
    }
    printf("%u offsets, %u lines\n", text->length, text->line_count);
    sw_text_free(text);
    sw_buffer_free(&bytes);
}

static void slices_are_clipped(void **state)
{
    (void)state;
    sw_text *text = text_of("abc");
    assert_slice(sw_text_slice(text, 1, 2), "b");
    assert_slice(sw_text_slice(text, 1, 99), "bc");
    assert_slice(sw_text_slice(text, 2, 1), "");
    assert_slice(sw_text_slice(text, 98, 99), "");
    sw_text_free(text);
}

static void line_ends_are_told_apart(void **state)
{
    (void)state;
    static const char *const cases[][2] = {
        {"", "\n"},       {"a", "\n"},        {"a\nb\n", "\n"},          {"a\r\nb\r\n", "\r\n"},
        {"a\rb\r", "\r"}, {"a\r\nb\n", "\n"}, {"a\r\nb\r\nc\n", "\r\n"}, {"a\rb\r\n", "\r\n"},
        {"a\r", "\r"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        sw_text *text = text_of(cases[i][0]);
        assert_string_equal(sw_text_newline(text), cases[i][1]);
        sw_text_free(text);
    }
}

/* ---- reading
 * ------------------------------------------------------------------------------------------------ */

static void files_are_read_as_they_are(void **state)
{
    (void)state;
    static const char bytes[] = "\xEF\xBB\xBF{ c4\0 }\r\n\xFF\xFE";
    put_file("raw.ly", (sw_slice){bytes, sizeof bytes - 1});
    char *error = NULL;
    sw_text *text = sw_text_read(in_folder("raw.ly"), &error);
    assert_non_null(text);
    assert_int_equal(text->length, sizeof bytes - 1);
    assert_memory_equal(text->bytes, bytes, sizeof bytes);
    assert_true(text->exists);
    sw_text *copy = sw_text_from_bytes("copy.ly", (sw_slice){bytes, sizeof bytes - 1});
    assert_int_equal(copy->length, text->length);
    assert_memory_equal(copy->bytes, text->bytes, sizeof bytes);
    sw_text_free(copy);
    sw_text_free(text);
    put_file("empty.ly", (sw_slice){"", 0});
    text = sw_text_read(in_folder("empty.ly"), &error);
    assert_int_equal(text->length, 0);
    assert_string_equal(text->bytes, "");
    sw_text_free(text);
    text = sw_text_new("new.ly");
    assert_false(text->exists);
    assert_int_equal(text->length, 0);
    sw_text_free(text);
}

static void assert_read_error(const char *path, const char *reason)
{
    char *error = NULL;
    assert_null(sw_text_read(path, &error));
    assert_non_null(error);
    if (strstr(error, path) != error || strstr(error, reason) == NULL) {
        fail_msg("'%s' does not begin with '%s' and say '%s'", error, path, reason);
    }
    free(error);
}

static void reading_errors_name_path_and_reason(void **state)
{
    (void)state;
    assert_read_error(in_folder("none.ly"), "No such file");
    assert_read_error(folder, "Is a directory");
    put_file("large.ly", (sw_slice){"", 0});
    assert_int_equal(truncate(in_folder("large.ly"), (off_t)SW_TEXT_LIMIT + 1), 0); /* takes no room */
    assert_read_error(in_folder("large.ly"), "larger than 1073741824 bytes");
    unlink(in_folder("large.ly"));
}

static void standard_input_is_read(void **state)
{
    (void)state;
    put_file("input.ly", sw_slice_of("{ c4 }\n"));
    assert_non_null(freopen(in_folder("input.ly"), "rb", stdin));
    char *error = NULL;
    sw_text *text = sw_text_read("-", &error);
    assert_non_null(text);
    assert_string_equal(text->bytes, "{ c4 }\n");
    assert_string_equal(text->path, "-");
    sw_text_free(text);
}

/* ---- edits
 * ---------------------------------------------------------------------------------------------------- */

static void assert_edit(const sw_edit *edit, uint32_t start, uint32_t end, const char *text)
{
    assert_int_equal(edit->start, start);
    assert_int_equal(edit->end, end);
    assert_string_equal(edit->text, text);
    assert_int_equal(edit->length, strlen(text));
}

static void edits_are_sorted(void **state)
{
    (void)state;
    sw_text *text = text_of("c4 d e f");
    sw_edits edits = {0};
    uint32_t where = 0;
    sw_edits_add(&edits, 5, 6, sw_slice_of("es"));
    sw_edits_add(&edits, 3, 4, sw_slice_of("x"));
    sw_edits_add(&edits, 3, 3, sw_slice_of("1"));
    sw_edits_add(&edits, 4, 4, sw_slice_of("3"));
    sw_edits_add(&edits, 3, 3, sw_slice_of("2"));
    sw_edits_add(&edits, 0, 2, sw_slice_of("c4")); /* changes nothing */
    assert_true(sw_edits_finish(&edits, text, &where));
    assert_int_equal(edits.count, 5);
    assert_edit(&edits.items[0], 3, 3, "1"); /* insertions come before the replacement that begins there */
    assert_edit(&edits.items[1], 3, 3, "2"); /* and keep their order */
    assert_edit(&edits.items[2], 3, 4, "x");
    assert_edit(&edits.items[3], 4, 4, "3");
    assert_edit(&edits.items[4], 6, 6, "s");
    sw_buffer result = {0};
    sw_edits_apply(&edits, text, &result);
    assert_string_equal(sw_buffer_text(&result), "c4 12x3 es f");
    sw_buffer_free(&result);
    sw_edits_free(&edits);
    assert_int_equal(edits.count, 0);
    assert_true(sw_edits_finish(&edits, text, &where)); /* none */
    sw_text_free(text);
}

static void edits_are_shrunk(void **state)
{
    (void)state;
    static const struct {
        const char *old;
        const char *new;
        uint32_t start;
        uint32_t end;
        const char *text;
    } cases[] = {
        {"cis4", "ces4", 1, 2, "e"},
        {"c4", "c4 d", 2, 2, " d"},
        {"c4 d", "d", 0, 3, ""},
        {"aaa", "aa", 2, 3, ""},
        {"aa", "aaa", 2, 2, "a"},
        {"abab", "ab", 2, 4, ""},
        {"x\xC3\xA9", "x\xC3\xA8", 1, 3, "\xC3\xA8"}, /* never within a character: from its front */
        {"\xC3\xA9x", "\xC4\xA9x", 0, 2, "\xC4\xA9"}, /* nor from its end */
        {"\xC3\xA9", "\xC3\xA9\xC3\xA8", 2, 2, "\xC3\xA8"},
        {"a\r\nb", "a\nb", 1, 3, "\n"}, /* nor within a line end */
        {"a\nb", "a\r\nb", 1, 2, "\r\n"},
        {"\xA9", "\xA8", 0, 1, "\xA8"}, /* bytes that are no UTF-8 */
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        sw_text *text = text_of(cases[i].old);
        sw_edits edits = {0};
        uint32_t where = 0;
        sw_edits_add(&edits, 0, text->length, sw_slice_of(cases[i].new));
        assert_true(sw_edits_finish(&edits, text, &where));
        assert_int_equal(edits.count, 1);
        assert_edit(&edits.items[0], cases[i].start, cases[i].end, cases[i].text);
        sw_buffer result = {0};
        sw_edits_apply(&edits, text, &result);
        assert_string_equal(sw_buffer_text(&result), cases[i].new);
        sw_buffer_free(&result);
        sw_edits_free(&edits);
        sw_text_free(text);
    }
}

static void edits_may_hold_nuls(void **state)
{
    (void)state;
    sw_text *text = sw_text_from_bytes("nul.ly", (sw_slice){"a\0b", 3});
    sw_edits edits = {0};
    uint32_t where = 0;
    sw_edits_add(&edits, 1, 2, (sw_slice){"\0\0", 2});
    assert_true(sw_edits_finish(&edits, text, &where));
    sw_buffer result = {0};
    sw_edits_apply(&edits, text, &result);
    assert_int_equal(result.length, 4);
    assert_memory_equal(result.data, "a\0\0b", 5);
    sw_buffer_free(&result);
    sw_edits_free(&edits);
    sw_text_free(text);
}

static void overlapping_edits_are_refused(void **state)
{
    (void)state;
    static const struct {
        uint32_t ranges[2][2];
        bool good;
        uint32_t where;
    } cases[] = {
        {{{1, 4}, {3, 5}}, false, 3},  {{{3, 5}, {1, 4}}, false, 3}, {{{1, 4}, {1, 4}}, false, 1},
        {{{1, 4}, {2, 2}}, false, 2},  {{{1, 6}, {2, 3}}, false, 2}, {{{1, 4}, {4, 5}}, true, 0},
        {{{1, 4}, {1, 1}}, true, 0},   {{{1, 4}, {4, 4}}, true, 0},  {{{2, 2}, {2, 2}}, true, 0},
        {{{1, 2}, {5, 11}}, false, 5}, {{{4, 3}, {5, 6}}, false, 4}, {{{12, 12}, {1, 2}}, false, 12},
        {{{10, 10}, {0, 0}}, true, 0},
    };
    sw_text *text = text_of("0123456789");
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        sw_edits edits = {0};
        for (int k = 0; k < 2; k++) {
            sw_edits_add(&edits, cases[i].ranges[k][0], cases[i].ranges[k][1], sw_slice_of("x"));
        }
        uint32_t where = 0;
        assert_int_equal(sw_edits_finish(&edits, text, &where), cases[i].good);
        if (!cases[i].good) {
            assert_int_equal(where, cases[i].where);
            assert_int_equal(edits.count, 2);
            assert_int_equal(edits.items[0].start, cases[i].ranges[0][0]); /* as it was */
        }
        sw_edits_free(&edits);
    }
    sw_text_free(text);
}

/* ---- diffs: forms
 * ----------------------------------------------------------------------------------------------- */

static void assert_diff(const char *path, const char *old, uint32_t start, uint32_t end, const char *new,
                        const char *wanted)
{
    sw_text *text = old == NULL ? sw_text_new(path) : sw_text_from_bytes(path, sw_slice_of(old));
    sw_edits edits = {0};
    uint32_t where = 0;
    sw_edits_add(&edits, start, end, sw_slice_of(new));
    assert_true(sw_edits_finish(&edits, text, &where));
    sw_buffer diff = {0};
    sw_diff_print(&edits, text, NULL, &diff);
    assert_string_equal(sw_buffer_text(&diff), wanted);
    sw_buffer_free(&diff);
    sw_edits_free(&edits);
    sw_text_free(text);
}

static void diffs_have_the_usual_form(void **state)
{
    (void)state;
    assert_diff("a.ly", "1\n2\n3\n4\n5\n6\n7\n8\n", 8, 9, "x",
                "--- a/a.ly\n+++ b/a.ly\n"
                "@@ -2,7 +2,7 @@\n 2\n 3\n 4\n-5\n+x\n 6\n 7\n 8\n");
    assert_diff("a.ly", "1\n2\n", 2, 2, "x\n", "--- a/a.ly\n+++ b/a.ly\n@@ -1,2 +1,3 @@\n 1\n+x\n 2\n");
    assert_diff("a.ly", "1\n", 0, 1, "x", "--- a/a.ly\n+++ b/a.ly\n@@ -1 +1 @@\n-1\n+x\n");
    assert_diff("a.ly", "1\n", 0, 2, "", "--- a/a.ly\n+++ b/a.ly\n@@ -1 +0,0 @@\n-1\n");
    assert_diff("a.ly", "1", 1, 1, "\n2",
                "--- a/a.ly\n+++ b/a.ly\n@@ -1 +1,2 @@\n"
                "-1\n\\ No newline at end of file\n+1\n+2\n\\ No newline at end of file\n");
    assert_diff("a.ly", "1\r\n2\r\n", 3, 4, "x",
                "--- a/a.ly\n+++ b/a.ly\n@@ -1,2 +1,2 @@\n 1\r\n-2\r\n+x\r\n");
    assert_diff("a.ly", "1\n", 0, 1, "1", "");
    assert_diff("a.ly", "c4 d\n", 0, 5, "c4 e\nc4 d\n", /* the line that stays is not shown as changed */
                "--- a/a.ly\n+++ b/a.ly\n@@ -1 +1,2 @@\n+c4 e\n c4 d\n");
    assert_diff("n.ly", NULL, 0, 0, "1\n", "--- /dev/null\n+++ b/n.ly\n@@ -0,0 +1 @@\n+1\n");
    assert_diff("n.ly", NULL, 0, 0, "", "diff --git a/n.ly b/n.ly\nnew file mode 100644\n");
    assert_diff("a b.ly", NULL, 0, 0, "", "diff --git \"a/a b.ly\" \"b/a b.ly\"\nnew file mode 100644\n");
}

static void paths_are_written_so_that_they_can_be_read(void **state)
{
    (void)state;
    static const char *const cases[][2] = {
        {"./1m1//./brass.ly", "--- a/1m1/brass.ly\n+++ b/1m1/brass.ly\n"},
        {"/films/a.ly", "--- a/films/a.ly\n+++ b/films/a.ly\n"},
        {"a b.ly", "--- a/a b.ly\t\n+++ b/a b.ly\t\n"},
        {"a\"b.ly", "--- \"a/a\\\"b.ly\"\n+++ \"b/a\\\"b.ly\"\n"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        char wanted[512];
        snprintf(wanted, sizeof wanted, "%s@@ -1 +1 @@\n-1\n+x\n", cases[i][1]);
        assert_diff(cases[i][0], "1\n", 0, 1, "x", wanted);
    }
}

/* Each of two changes lies `gap` unchanged lines before the other: up to six, one hunk shows both. */
static void near_hunks_are_merged(void **state)
{
    (void)state;
    for (int gap = 0; gap <= 9; gap++) {
        sw_buffer bytes = {0};
        for (int i = 0; i < 20; i++) {
            sw_buffer_format(&bytes, "%c\n", 'a' + i);
        }
        sw_text *text = sw_text_from_bytes("a.ly", sw_buffer_slice(&bytes));
        sw_edits edits = {0};
        uint32_t where = 0;
        sw_edits_add(&edits, text->lines[4], text->lines[4] + 1, sw_slice_of("1"));
        sw_edits_add(&edits, text->lines[5 + gap], text->lines[5 + gap] + 1, sw_slice_of("2"));
        assert_true(sw_edits_finish(&edits, text, &where));
        sw_buffer diff = {0};
        sw_diff_print(&edits, text, NULL, &diff);
        int hunks = 0;
        for (const char *p = sw_buffer_text(&diff); (p = strstr(p, "\n@@ ")) != NULL; p++) {
            hunks++;
        }
        assert_int_equal(hunks, gap <= 6 ? 1 : 2);
        sw_buffer_free(&diff);
        sw_edits_free(&edits);
        sw_text_free(text);
        sw_buffer_free(&bytes);
    }
}

static void edits_that_cancel_each_other_give_no_diff(void **state)
{
    (void)state;
    sw_text *text = text_of("abxc\nd\n");
    sw_edits edits = {0};
    uint32_t where = 0;
    sw_edits_add(&edits, 2, 3, sw_slice_of(""));
    sw_edits_add(&edits, 3, 3, sw_slice_of("x"));
    assert_true(sw_edits_finish(&edits, text, &where));
    assert_int_equal(edits.count, 2);
    sw_buffer diff = {0};
    sw_diff_print(&edits, text, NULL, &diff);
    assert_string_equal(sw_buffer_text(&diff), "");
    sw_buffer_free(&diff);
    sw_edits_free(&edits);
    sw_text_free(text);
}

/* ---- diffs: applied by patch and git
 * -------------------------------------------------------------------------------- */

enum { BATCHES = 20, FILES = 100 };

static const char *random_line_end(uint32_t style)
{
    static const char *const ends[] = {"\n", "\r\n", "\r"};
    return style < 2 ? ends[style] : ends[below(3)]; /* 2: mixed */
}

/* Few different lines, so that places are easily confused. */
static void random_line(sw_buffer *bytes, uint32_t style)
{
    static const char *const words[] = {"c4", "d", "\xC3\xA9", "-x", "+y", "@@", " ", "\\ No", "\t"};
    for (uint32_t n = below(3); n > 0; n--) {
        sw_buffer_string(bytes, words[below(9)]);
    }
    sw_buffer_string(bytes, random_line_end(style));
}

static sw_text *random_text(const char *name)
{
    if (below(12) == 0) {
        return sw_text_new(name);
    }
    sw_buffer bytes = {0};
    uint32_t style = below(3);
    for (uint32_t n = below(6) == 0 ? 0 : below(40); n > 0; n--) {
        random_line(&bytes, style);
    }
    if (below(3) == 0) {
        sw_buffer_string(&bytes, "last");
    }
    sw_text *text = sw_text_from_bytes(name, sw_buffer_slice(&bytes));
    sw_buffer_free(&bytes);
    return text;
}

static uint32_t random_offset(const sw_text *text)
{
    return below(2) == 0 ? below(text->length + 1) : text->lines[below(text->line_count)];
}

static void random_edit(sw_edits *edits, const sw_text *text)
{
    uint32_t start = random_offset(text);
    uint32_t end = start;
    switch (below(4)) {
    case 0:
        end = random_offset(text);
        break;
    case 1:
        end = start + below(6);
        break;
    case 2:
        end = below(20) == 0 ? text->length : start;
        break;
    default:
        break;
    }
    if (end < start || end > text->length) {
        end = start;
    }
    sw_buffer bytes = {0};
    switch (below(5)) {
    case 0: /* what was there, and more */
        sw_buffer_append(&bytes, sw_text_slice(text, start, end));
        random_line(&bytes, 2);
        break;
    case 1:
        sw_buffer_string(&bytes, "es");
        break;
    case 2:
        break;
    default:
        for (uint32_t n = below(3) + 1; n > 0; n--) {
            random_line(&bytes, 0);
        }
    }
    sw_edits_add(edits, start, end, sw_buffer_slice(&bytes));
    sw_buffer_free(&bytes);
}

/* The result, worked out the long way: offset by offset, from the edits as they were added. */
static void apply_slowly(const sw_edits *edits, const sw_text *text, sw_buffer *result)
{
    for (uint32_t at = 0; at <= text->length;) {
        uint32_t next = at + 1;
        for (size_t i = 0; i < edits->count; i++) {
            if (edits->items[i].start == at && edits->items[i].end == at) {
                sw_buffer_string(result, edits->items[i].text);
            }
        }
        for (size_t i = 0; i < edits->count; i++) {
            if (edits->items[i].start == at && edits->items[i].end > at) {
                sw_buffer_string(result, edits->items[i].text);
                next = edits->items[i].end;
            }
        }
        if (next == at + 1 && at < text->length) {
            bool replaced = false;
            for (size_t i = 0; i < edits->count; i++) {
                replaced |= edits->items[i].start == at && edits->items[i].end > at;
            }
            if (!replaced) {
                sw_buffer_char(result, text->bytes[at]);
            }
        }
        at = next;
    }
}

/* Draws edits until a set fits; *result is what they must lead to. */
static void random_edits(sw_edits *edits, const sw_text *text, sw_buffer *result)
{
    for (;;) {
        for (uint32_t n = below(7); n > 0; n--) {
            random_edit(edits, text);
        }
        sw_buffer_clear(result);
        apply_slowly(edits, text, result);
        uint32_t where = 0;
        if (sw_edits_finish(edits, text, &where)) {
            return;
        }
        sw_edits_free(edits);
    }
}

/* Each line that the diff takes away must be touched by an edit. */
static void check_touched(const char *diff, const sw_edits *edits, const sw_text *text)
{
    uint32_t line = 0;
    bool in_hunk = false;
    for (const char *p = diff; *p != '\0'; p = strchr(p, '\n') + 1) {
        unsigned start;
        unsigned count = 1;
        if (strncmp(p, "@@ -", 4) == 0 && sscanf(p, "@@ -%u,%u", &start, &count) >= 1) {
            line = count == 0 ? start + 1 : start;
            in_hunk = true;
        } else if (in_hunk && *p == '-') {
            uint32_t from = text->lines[line - 1];
            uint32_t to = line < text->line_count ? text->lines[line] : text->length;
            bool touched = false;
            for (size_t i = 0; i < edits->count; i++) {
                touched |= edits->items[i].start <= to && edits->items[i].end >= from;
            }
            if (!touched) {
                fail_msg("line %u is shown as changed, but no edit touches it:\n%s", line, diff);
            }
            line++;
        } else if (in_hunk && *p == ' ') {
            line++;
        }
    }
}

static void write_old_files(const char *tool, sw_text *const *texts)
{
    assert_int_equal(run("rm -rf '%s/%s' && mkdir '%s/%s'", folder, tool, folder, tool), 0);
    for (int i = 0; i < FILES; i++) {
        char name[300];
        snprintf(name, sizeof name, "%s/%s", tool, texts[i]->path);
        if (texts[i]->exists) {
            put_file(name, (sw_slice){texts[i]->bytes, texts[i]->length});
        }
    }
}

static void compare_new_files(const char *tool, sw_text *const *texts, const sw_buffer *results)
{
    for (int i = 0; i < FILES; i++) {
        char name[300];
        snprintf(name, sizeof name, "%s/%s", tool, texts[i]->path);
        char *error = NULL;
        sw_text *after = sw_text_read(in_folder(name), &error);
        if (after == NULL) {
            fail_msg("after %s: %s", tool, error);
            return;
        }
        if (!sw_slice_equal((sw_slice){after->bytes, after->length}, sw_buffer_slice(&results[i]))) {
            fail_msg("after %s, %s holds other bytes", tool, name);
        }
        sw_text_free(after);
    }
}

static void one_batch(int batch, size_t *edit_count)
{
    static const char *const odd_names[] = {"a b.ly", "caf\xC3\xA9.ly", "q\"uote.ly", "back\\slash.ly",
                                            "ta\tb.ly"};
    sw_text *texts[FILES];
    sw_buffer results[FILES] = {{0}};
    sw_buffer diff = {0};
    sw_buffer empty = {0};
    for (int i = 0; i < FILES; i++) {
        char name[32];
        snprintf(name, sizeof name, "f%03d.ly", i);
        texts[i] = random_text(i < 5 ? odd_names[i] : name);
        sw_edits edits = {0};
        random_edits(&edits, texts[i], &results[i]);
        sw_buffer applied = {0};
        sw_edits_apply(&edits, texts[i], &applied);
        assert_true(sw_slice_equal(sw_buffer_slice(&applied), sw_buffer_slice(&results[i])));
        sw_buffer one = {0};
        sw_diff_print(&edits, texts[i], NULL, &one);
        bool same = texts[i]->exists &&
                    sw_slice_equal(sw_buffer_slice(&applied), (sw_slice){texts[i]->bytes, texts[i]->length});
        assert_int_equal(one.length == 0, same);
        check_touched(sw_buffer_text(&one), &edits, texts[i]);
        /* New files without a line come last. */
        sw_buffer_append(strstr(sw_buffer_text(&one), "@@") == NULL ? &empty : &diff, sw_buffer_slice(&one));
        *edit_count += edits.count;
        sw_buffer_free(&one);
        sw_buffer_free(&applied);
        sw_edits_free(&edits);
    }
    sw_buffer_append(&diff, sw_buffer_slice(&empty));
    sw_buffer_free(&empty);
    put_file("change.diff", sw_buffer_slice(&diff));

    write_old_files("patch", texts);
    if (run("cd '%s/patch' && patch -p1 --fuzz=0 --no-backup-if-mismatch < ../change.diff > ../patch.log "
            "2>&1",
            folder) != 0) {
        run("cat '%s/patch.log'", folder);
        fail_msg("batch %d: patch fails", batch);
    }
    if (run("grep -q -e offset -e fuzz '%s/patch.log'", folder) == 0) {
        fail_msg("batch %d: patch had to search for a place", batch);
    }
    compare_new_files("patch", texts, results);

    write_old_files("git", texts);
    if (run("cd '%s/git' && GIT_CEILING_DIRECTORIES='%s' GIT_CONFIG_GLOBAL=/dev/null GIT_CONFIG_NOSYSTEM=1 "
            "git apply --whitespace=nowarn ../change.diff > ../git.log 2>&1",
            folder, folder) != 0) {
        run("cat '%s/git.log'", folder);
        fail_msg("batch %d: git apply fails", batch);
    }
    compare_new_files("git", texts, results);

    for (int i = 0; i < FILES; i++) {
        sw_text_free(texts[i]);
        sw_buffer_free(&results[i]);
    }
    sw_buffer_free(&diff);
}

static void diffs_are_applied_by_patch_and_git(void **state)
{
    (void)state;
    if (run("command -v patch > /dev/null && command -v git > /dev/null") != 0) {
        print_message("patch or git is missing\n");
        skip();
    }
    seed_random();
    size_t edit_count = 0;
    for (int batch = 0; batch < BATCHES; batch++) {
        one_batch(batch, &edit_count);
    }
    printf("%d files with %zu edits, each diff applied by patch and by git\n", BATCHES * FILES, edit_count);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ascii_places),
        cmocka_unit_test(empty_and_final_lines),
        cmocka_unit_test(places_agree_with_the_compiler),
        cmocka_unit_test(places_in_long_lines),
        cmocka_unit_test(slices_are_clipped),
        cmocka_unit_test(line_ends_are_told_apart),
        cmocka_unit_test(files_are_read_as_they_are),
        cmocka_unit_test(reading_errors_name_path_and_reason),
        cmocka_unit_test(standard_input_is_read),
        cmocka_unit_test(edits_are_sorted),
        cmocka_unit_test(edits_are_shrunk),
        cmocka_unit_test(edits_may_hold_nuls),
        cmocka_unit_test(overlapping_edits_are_refused),
        cmocka_unit_test(diffs_have_the_usual_form),
        cmocka_unit_test(paths_are_written_so_that_they_can_be_read),
        cmocka_unit_test(near_hunks_are_merged),
        cmocka_unit_test(edits_that_cancel_each_other_give_no_diff),
        cmocka_unit_test(diffs_are_applied_by_patch_and_git),
    };
    return cmocka_run_group_tests(tests, make_folder, remove_folder);
}
