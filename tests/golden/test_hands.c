/* `hands` on small sources: each folder of tests/golden/hands holds score.ly, whose first line gives the
 * options, the files that it needs, and in want/ the files as they should be afterwards. ACCEPT=1 in the
 * environment writes what comes out to want/. */
#include <dirent.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include <cmocka.h>

#include "stavewright/move.h"

static const char *const folder = "tests/golden/hands";

/* The words of `% hands: --staff "Harp 1" --bars 2-3`. */
static size_t split_words(char *line, char *words[16])
{
    size_t count = 0;
    for (char *c = line; *c != '\0' && count < 16;) {
        while (*c == ' ') {
            c++;
        }
        char end = ' ';
        if (*c == '"') {
            end = '"';
            c++;
        }
        if (*c == '\0') {
            break;
        }
        words[count++] = c;
        while (*c != '\0' && *c != end) {
            c++;
        }
        if (*c != '\0') {
            *c++ = '\0';
        }
    }
    return count;
}

static void read_options(const sw_text *text, char line[256], sw_hands_options *options)
{
    sw_slice first = sw_text_line_slice(text, 1);
    assert_true(sw_slice_starts(first, "% hands:") && first.length < 256);
    memcpy(line, first.data + 8, first.length - 8);
    line[first.length - 8] = '\0';
    char *words[16];
    size_t count = split_words(line, words);
    for (size_t i = 0; i + 1 < count; i += 2) {
        if (strcmp(words[i], "--staff") == 0) {
            options->staff = words[i + 1];
        } else if (strcmp(words[i], "--instrument") == 0) {
            options->instrument = words[i + 1];
        } else if (strcmp(words[i], "--bars") == 0) {
            assert_true(sw_bar_range_parse(words[i + 1], &options->bars));
        } else if (strcmp(words[i], "--span") == 0) {
            options->span = atoi(words[i + 1]);
        } else {
            fail_msg("option %s in the first line", words[i]);
        }
    }
}

static void compare_file(const char *name, const sw_text *after)
{
    char path[512];
    const char *slash = strrchr(after->path, '/');
    snprintf(path, sizeof path, "%s/%s/want", folder, name);
    bool accept = getenv("ACCEPT") != NULL;
    if (accept) {
        mkdir(path, 0777);
    }
    snprintf(path, sizeof path, "%s/%s/want/%s", folder, name, slash + 1);
    if (accept) {
        FILE *file = fopen(path, "wb");
        assert_non_null(file);
        assert_int_equal(fwrite(after->bytes, 1, after->length, file), after->length);
        fclose(file);
        return;
    }
    char *error = NULL;
    sw_text *want = sw_text_read(path, &error);
    if (want == NULL) {
        fail_msg("%s", error);
        return;
    }
    if (want->length != after->length || memcmp(want->bytes, after->bytes, want->length) != 0) {
        printf("---- wanted %s ----\n%s\n---- came ----\n%s\n", path, want->bytes, after->bytes);
        fail_msg("%s differs", path);
    }
    sw_text_free(want);
}

static void run_case(const char *name)
{
    char path[512];
    char line[256];
    char *error = NULL;
    snprintf(path, sizeof path, "%s/%s/score.ly", folder, name);
    sw_text *text = sw_text_read(path, &error);
    assert_non_null(text);
    sw_hands_options options = {0};
    read_options(text, line, &options);
    sw_text_free(text);
    sw_move *move = sw_move_hands(path, &options, NULL, &error);
    if (move == NULL) {
        fail_msg("%s: %s", path, error);
    }
    assert_true(move->patch.count > 0);
    for (size_t i = 0; i < move->patch.count; i++) {
        compare_file(name, move->patch.files[i].after);
    }
    sw_move_free(move);
}

static void test_cases(void **state)
{
    (void)state;
    DIR *dir = opendir(folder);
    assert_non_null(dir);
    size_t cases = 0;
    for (struct dirent *entry = readdir(dir); entry != NULL; entry = readdir(dir)) {
        if (entry->d_name[0] != '.') {
            run_case(entry->d_name);
            cases++;
        }
    }
    closedir(dir);
    printf("%zu cases of hands\n", cases);
    assert_true(cases >= 8);
}

/* What can't be divided is refused with a place and a reason. */
static void expect_refusal(const char *source, const char *staff, const char *reason)
{
    char folder_name[] = "/tmp/stavewright-hands-XXXXXX";
    char path[64];
    assert_non_null(mkdtemp(folder_name));
    snprintf(path, sizeof path, "%s/score.ly", folder_name);
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    fputs(source, file);
    fclose(file);
    char *error = NULL;
    sw_hands_options options = {.staff = staff, .instrument = "piano"};
    sw_move *move = sw_move_hands(path, &options, NULL, &error);
    assert_null(move);
    assert_non_null(error);
    if (strstr(error, reason) == NULL) {
        fail_msg("wanted \"%s\" in \"%s\"", reason, error);
    }
    free(error);
    remove(path);
    remove(folder_name);
}

static void test_refusals(void **state)
{
    (void)state;
    expect_refusal("{ c'4 }", "harp", "no staff is called \"harp\"");
    expect_refusal(
        "a = { c,4 c'' \\change Staff = \"b\" d' } << \\new Staff = \"a\" \\a \\new Staff = \"b\" { s2 } >>",
        "a", "changes staves");
    expect_refusal("m = { c,4 c'' } a = { d'4 } << \\new Staff = \"b\" \\m "
                   "\\new Staff = \"a\" { \\a \\change Staff = \"b\" c' } >>",
                   "b", "comes to the staff");
    expect_refusal("a = { c,4 c'' } aRight = { } \\new Staff = \"x\" \\a", "x", "rename the variable");
    expect_refusal("inner = { c,,4 e'' } a = \\relative { c' \\inner } \\new Staff = \"x\" \\a", "x",
                   "\\relative");
    expect_refusal("\\include \"not-there.ily\" a = { c,4 c'' } \\new Staff = \"x\" \\a", "x",
                   "score.ly:1:10: the included file \"not-there.ily\" is not found");
    expect_refusal("a = { c,4 \\loud c'' } \\new Staff = \"x\" \\a", "x",
                   "score.ly:1:11: \\loud: it is not defined");
    expect_refusal(
        "a = { c,4 c'' } << \\new PianoStaff = \"Harp 2\" << \\new Staff = \"up\" \\a \\new Staff = \"low\" "
        "{ c4 } >> >>",
        "harp 2", "\"harp 2\" means 2 staves: up, low");
    expect_refusal("a = { c,4 c'' }", "x", "has no score of its own");
    expect_refusal("a = { c,4 c'' } \\new Staff = \"Harfe\" \\a", "Hafre", "did you mean \"Harfe\"?");
}

/* A staff that one hand plays well stays as it is. */
static void test_nothing_to_split(void **state)
{
    (void)state;
    char *error = NULL;
    sw_hands_options options = {.staff = "x", .instrument = "piano"};
    sw_text *text = sw_text_from_bytes("/tmp/stavewright-none/score.ly",
                                       sw_slice_of("a = { c''4 d'' e'' f'' } \\new Staff = \"x\" \\a"));
    const sw_text *overlays[] = {text};
    sw_read_options reading = {.overlays = overlays, .overlay_count = 1};
    mkdir("/tmp/stavewright-none", 0777);
    sw_move *move = sw_move_hands("/tmp/stavewright-none/score.ly", &options, &reading, &error);
    assert_non_null(move);
    assert_int_equal(move->patch.count, 0);
    assert_non_null(strstr(sw_buffer_text(&move->notes), "all 4 notes of \"x\" lie well for the right hand"));
    sw_move_free(move);
    sw_text_free(text);
    remove("/tmp/stavewright-none");
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_cases), cmocka_unit_test(test_refusals),
                                       cmocka_unit_test(test_nothing_to_split)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
