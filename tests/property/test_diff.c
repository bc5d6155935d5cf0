/* Diffs of real files, in folders with odd names: patch and git, run in the folder that the diff is for, must
 * make exactly the edited bytes. And the time and memory that large and hostile texts take. */
#include <glob.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include <cmocka.h>

#include "stavewright/change.h"
#include "stavewright/source.h"

enum { MOST_FILES = 60, EDITS = 12 };

static uint64_t random_state = 20240607;

static uint32_t below(uint32_t limit)
{
    random_state ^= random_state << 13;
    random_state ^= random_state >> 7;
    random_state ^= random_state << 17;
    return (uint32_t)(random_state % limit);
}

static char home[300];
static char start[300];

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

static int make_home(void **state)
{
    (void)state;
    const char *parent = getenv("TMPDIR");
    char path[200];
    snprintf(path, sizeof path, "%s/diff-test-XXXXXX", parent == NULL ? "/tmp" : parent);
    if (getcwd(start, sizeof start) == NULL || mkdtemp(path) == NULL || realpath(path, home) == NULL) {
        return -1;
    }
    setenv("GIT_CONFIG_GLOBAL", "/dev/null", 1);
    setenv("GIT_CONFIG_NOSYSTEM", "1", 1);
    setenv("GIT_CEILING_DIRECTORIES", home, 1);
    return 0;
}

static int remove_home(void **state)
{
    (void)state;
    return chdir("/") != 0 || run("rm -rf '%s'", home) != 0 ? -1 : 0;
}

static void put_file(const char *path, sw_slice bytes)
{
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    assert_int_equal(fwrite(bytes.data, 1, bytes.length, file), bytes.length);
    assert_int_equal(fclose(file), 0);
}

/* ---- texts ---- */

static sw_slice slice_of(const sw_text *text)
{
    return (sw_slice){text->bytes, text->length};
}

/* A real text, as it is or with other line ends, or without its last one. */
static void vary(const sw_text *text, sw_buffer *bytes)
{
    uint32_t way = below(4);
    for (uint32_t i = 0; i < text->length; i++) {
        if (way == 1 && text->bytes[i] == '\n' && (i == 0 || text->bytes[i - 1] != '\r')) {
            sw_buffer_char(bytes, '\r');
        }
        if (way != 2 || text->bytes[i] != '\n' || i + 1 < text->length) {
            sw_buffer_char(bytes, text->bytes[i]);
        }
    }
}

static void draw_edits(sw_edits *edits, const sw_text *text)
{
    static const char *const words[] = {"",       "es",    "\n",         "\r\n",         "\t% tab\n",
                                        "c'4 d ", "-- x ", "\n@@ x\n+y", "\xC3\xA9\n\n", "\\ No newline"};
    uint32_t where;
    for (uint32_t n = below(EDITS); n > 0; n--) {
        uint32_t from = below(text->length + 1);
        uint32_t length = below(8) == 0 ? below(2000) : below(30);
        uint32_t to = from + length > text->length ? text->length : from + length;
        sw_edits_add(edits, from, to, sw_slice_of(words[below(sizeof words / sizeof words[0])]));
    }
    while (!sw_edits_finish(edits, text, &where)) {
        free(edits->items[--edits->count].text);
    }
}

/* ---- patch and git ------------------------------------------------------------------------------------- */

static const char *const folders[] = {".", "brass", "1m1 first light", "-x/caf\xC3\xA9", "brass/brass"};

typedef struct batch {
    size_t count;
    sw_file_patch files[MOST_FILES];
    char names[MOST_FILES][200]; /* below the film's folder */
} batch;

/* Names files of the film as they are seen from one of its folders. */
static void fill(batch *b, glob_t *sources, size_t *next, const char *prefix)
{
    b->count = 0;
    while (b->count < MOST_FILES && *next < sources->gl_pathc) {
        char path[400];
        char *error = NULL;
        snprintf(path, sizeof path, "%s%s", sources->gl_pathv[*next][0] == '/' ? "" : start,
                 sources->gl_pathv[*next]);
        sw_text *real = sw_text_read(path, &error);
        ++*next;
        if (real == NULL || real->length > 400000) {
            free(error);
            sw_text_free(real);
            continue;
        }
        sw_buffer bytes = {0};
        vary(real, &bytes);
        sw_text_free(real);
        char *name = b->names[b->count];
        snprintf(name, sizeof b->names[0], "%s/%s%zu.ly", folders[below(5)], below(3) == 0 ? "-a b " : "f",
                 b->count);
        char seen[300];
        snprintf(seen, sizeof seen, "%s%s", prefix, name);
        bool new = below(10) == 0 && bytes.length > 0;
        sw_file_patch *file = &b->files[b->count++];
        *file = (sw_file_patch){0};
        if (new) {
            file->text = sw_text_new(seen);
            sw_edits_add(&file->edits, 0, 0, sw_buffer_slice(&bytes));
        } else {
            file->text = sw_text_from_bytes(seen, sw_buffer_slice(&bytes));
            draw_edits(&file->edits, file->text);
        }
        sw_buffer after = {0};
        sw_edits_apply(&file->edits, file->text, &after);
        file->after = sw_text_from_bytes(seen, sw_buffer_slice(&after));
        sw_buffer_free(&after);
        sw_buffer_free(&bytes);
    }
}

static void empty_batch(batch *b)
{
    for (size_t i = 0; i < b->count; i++) {
        sw_text_free((sw_text *)(uintptr_t)b->files[i].text);
        sw_text_free(b->files[i].after);
        sw_edits_free(&b->files[i].edits);
    }
}

static void put_film(const batch *b, bool git)
{
    assert_int_equal(run("rm -rf '%s/film' && cd '%s' && mkdir -p film/brass/brass 'film/1m1 first light' "
                         "film/-x/caf\xC3\xA9 && cd film && { %s || git init -q .; }",
                         home, home, git ? "false" : "true"),
                     0);
    for (size_t i = 0; i < b->count; i++) {
        char path[600];
        snprintf(path, sizeof path, "%s/film/%s", home, b->names[i]);
        if (b->files[i].text->exists) {
            put_file(path, slice_of(b->files[i].text));
        }
    }
}

static void compare_film(const batch *b, const char *tool)
{
    for (size_t i = 0; i < b->count; i++) {
        char path[600];
        char *error = NULL;
        snprintf(path, sizeof path, "%s/film/%s", home, b->names[i]);
        sw_text *found = sw_text_read(path, &error);
        if (found == NULL || !sw_slice_equal(slice_of(found), slice_of(b->files[i].after))) {
            fail_msg("%s: %s holds other bytes %s", tool, path, error == NULL ? "" : error);
        }
        sw_text_free(found);
    }
}

static const char *const tools[] = {"patch -p1 --fuzz=0 --no-backup-if-mismatch --silent <",
                                    "git apply --whitespace=nowarn -p1",
                                    "git apply --check --whitespace=nowarn -p1"};

/* `from`: the folder in which the command would run; `prefix`: the film as seen from there; `apply`: the
 * folder in which the diff must apply. */
static size_t apply_batches(const char *from, const char *prefix, const char *apply, bool in_git)
{
    glob_t sources;
    char pattern[400];
    const char *scores = getenv("SW_SCORES");
    snprintf(pattern, sizeof pattern, "%s/corpus/*/*ly", start);
    assert_int_equal(glob(pattern, 0, NULL, &sources), 0);
    if (scores != NULL) {
        static const char *const depths[] = {"*/*", "*/*/*", "*/*/*/*", "*/*/*/*/*"};
        for (size_t i = 0; i < sizeof depths / sizeof depths[0]; i++) {
            snprintf(pattern, sizeof pattern, "%s%s%s/%s.ly", scores[0] == '/' ? "" : start,
                     scores[0] == '/' ? "" : "/", scores, depths[i]);
            (void)glob(pattern, GLOB_APPEND, NULL, &sources);
        }
    }
    size_t files = 0;
    static batch b;
    for (size_t next = 0; next < sources.gl_pathc && next < 400;) {
        fill(&b, &sources, &next, prefix);
        for (size_t t = 0; t < sizeof tools / sizeof tools[0]; t++) {
            put_film(&b, in_git);
            char path[600];
            snprintf(path, sizeof path, "%s/film/%s", home, from);
            assert_int_equal(chdir(path), 0);
            sw_buffer diff = {0};
            sw_patch patch = {.files = b.files, .count = b.count};
            sw_patch_diff(&patch, &diff);
            snprintf(path, sizeof path, "%s/change.diff", home);
            put_file(path, sw_buffer_slice(&diff));
            sw_buffer_free(&diff);
            if (run("cd '%s/film/%s' && %s '%s/change.diff' > '%s/log' 2>&1", home, apply, tools[t], home,
                    home) != 0) {
                run("head -50 '%s/log'", home);
                fail_msg("%s fails", tools[t]);
            }
            if (strstr(tools[t], "--check") == NULL) {
                compare_film(&b, tools[t]);
            }
        }
        files += b.count;
        empty_batch(&b);
    }
    globfree(&sources);
    return files;
}

static bool tools_are_there(void)
{
    bool there = run("command -v patch > /dev/null && command -v git > /dev/null") == 0;
    if (!there) {
        print_message("# patch or git is missing: diffs are not applied\n");
    }
    return there;
}

static void diffs_of_real_files_apply(void **state)
{
    (void)state;
    if (!tools_are_there()) {
        skip();
    }
    printf("# %zu files: in the film's folder\n", apply_batches(".", "", ".", false));
    printf("# %zu files: in the film's folder, a git work tree\n", apply_batches(".", "", ".", true));
    printf("# %zu files: from another folder, as ../NAME\n",
           apply_batches("brass/brass", "../../", ".", true));
    char prefix[400];
    snprintf(prefix, sizeof prefix, "%s/film/", home);
    printf("# %zu files: by absolute paths\n", apply_batches(".", prefix, ".", false));
}

/* In a sub-folder of a git work tree, and through symbolic links. */
static void diffs_apply_where_they_were_made(void **state)
{
    (void)state;
    if (!tools_are_there()) {
        skip();
    }
    for (size_t t = 0; t < 2; t++) {
        assert_int_equal(chdir(home), 0);
        assert_int_equal(
            run("rm -rf film && mkdir -p film/cue/parts && cd film && git init -q . && "
                "printf '1\\n' > cue/parts/a.ly && ln -s parts cue/link && ln -s parts/a.ly cue/b.ly"),
            0);
        assert_int_equal(chdir("film/cue"), 0);
        char *error = NULL;
        sw_text *text = sw_text_read(t == 0 ? "link/a.ly" : "b.ly", &error);
        sw_file_patch file = {.text = text};
        uint32_t where;
        sw_edits_add(&file.edits, 0, 1, sw_slice_of("x"));
        assert_true(sw_edits_finish(&file.edits, text, &where));
        sw_patch patch = {.files = &file, .count = 1};
        sw_buffer diff = {0};
        sw_patch_diff(&patch, &diff);
        assert_string_equal(sw_buffer_text(&diff),
                            "--- a/parts/a.ly\n+++ b/parts/a.ly\n@@ -1 +1 @@\n-1\n+x\n");
        put_file("change.diff", sw_buffer_slice(&diff));
        assert_int_equal(run("%s change.diff && grep -qx x parts/a.ly && test -h b.ly", tools[t]), 0);
        sw_buffer_free(&diff);
        sw_edits_free(&file.edits);
        sw_text_free(text);
    }
}

/* ---- large and hostile texts --------------------------------------------------------------------------- */

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

/* A text of so many bytes, in lines of so many, with an edit every `step` bytes. Returns the time of the
 * diff. */
static double time_diff(size_t bytes, size_t line, size_t step, size_t *length)
{
    sw_buffer text_bytes = {0};
    for (size_t i = 0; i < bytes; i++) {
        sw_buffer_char(&text_bytes, i % line == line - 1 ? '\n' : (char)('a' + i % 7));
    }
    sw_text *text = sw_text_from_bytes("a.ly", sw_buffer_slice(&text_bytes));
    sw_edits edits = {0};
    uint32_t where;
    if (step == 0) { /* all of it, by something quite different */
        for (size_t i = 0; i < text_bytes.length; i++) {
            text_bytes.data[i] = i % 11 == 10 ? '\n' : (char)('A' + i % 5);
        }
        sw_edits_add(&edits, 0, text->length, sw_buffer_slice(&text_bytes));
    } else {
        for (size_t i = 0; i + 1 < bytes; i += step) {
            sw_edits_add(&edits, (uint32_t)i, (uint32_t)i + 1, sw_slice_of("X"));
        }
    }
    assert_true(sw_edits_finish(&edits, text, &where));
    sw_buffer diff = {0};
    double begin = seconds();
    sw_diff_print(&edits, text, NULL, &diff);
    double took = seconds() - begin;
    *length = diff.length;
    sw_buffer_free(&diff);
    sw_edits_free(&edits);
    sw_text_free(text);
    sw_buffer_free(&text_bytes);
    return took;
}

/* Generous limits, for a busy machine and the sanitizers: what is not linear misses them by far. */
static void time_and_memory_are_bounded(void **state)
{
    (void)state;
    static const struct {
        const char *what;
        size_t bytes;
        size_t line;
        size_t step;
    } cases[] = {
        {"10 MB, an edit in each tenth line", 10000000, 50, 500},
        {"10 MB, an edit in each line", 10000000, 50, 50},
        {"10 MB in one line, 100000 edits", 10000000, SIZE_MAX, 100},
        {"10 MB in lines of one byte, each edited", 10000000 / 5, 2, 2},
        {"5 MB replaced by quite different 5 MB", 5000000, 40, 0},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        size_t length;
        double took = time_diff(cases[i].bytes, cases[i].line, cases[i].step, &length);
        printf("# %s: %.2f s, a diff of %.1f MB\n", cases[i].what, took, (double)length / 1e6);
        assert_true(took < 10);
        assert_true(length < 6 * cases[i].bytes);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(diffs_of_real_files_apply),
        cmocka_unit_test(diffs_apply_where_they_were_made),
        cmocka_unit_test(time_and_memory_are_bounded),
    };
    return cmocka_run_group_tests(tests, make_home, remove_home);
}
