/* Checks against sources whose comments say what is to be found: `% want: RULE text` on a line asks for one
 * finding of that rule there, whose message holds the text; a line may ask for several. A finding that no
 * line asks for fails the test, and so does a wish that is not met. Run from the root of the repository. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/check.h"
#include "stavewright/main_files.h"

static const char *const folder = "tests/golden/check";
static const char *const mark = "% want: ";

enum { LONGEST = 190 }; /* bytes of a message: longer ones are not read */

typedef struct want {
    uint32_t line;
    char rule[64];
    char text[256];
    bool met;
} want;

typedef struct wants {
    want items[64];
    size_t count;
} wants;

static void read_wants(const sw_text *text, wants *list)
{
    list->count = 0;
    for (uint32_t line = 1; line <= text->line_count; line++) {
        char copy[1024] = {0};
        sw_slice slice = sw_text_line_slice(text, line);
        memcpy(copy, slice.data, slice.length < sizeof copy ? slice.length : sizeof copy - 1);
        for (char *at = strstr(copy, mark); at != NULL;) {
            char *next = strstr(at + 1, mark);
            if (next != NULL) {
                next[-1] = '\0'; /* the blank before it */
            }
            want *w = &list->items[list->count];
            *w = (want){.line = line};
            if (sscanf(at + strlen(mark), "%63s %255[^\n]", w->rule, w->text) < 1 || ++list->count == 64) {
                fail_msg("%s:%u: this wish can't be read", text->path, line);
            }
            at = next;
        }
    }
}

static bool meets(const sw_finding *finding, const want *w)
{
    return !w->met && finding->line == w->line && strcmp(finding->rule, w->rule) == 0 &&
           strstr(finding->message, w->text) != NULL;
}

/* Returns how many findings and wishes have no counterpart. */
static size_t check_case(const char *path, const sw_film *film)
{
    char *error = NULL;
    sw_text *text = sw_text_read(path, &error);
    assert_non_null(text);
    wants list;
    read_wants(text, &list);
    sw_text_free(text);
    sw_check_result result = {0};
    sw_check_options options = {.film = film};
    assert_true(sw_check_file(path, &options, &result, &error));
    sw_check_finish(&result);
    size_t wrong = 0;
    for (size_t i = 0; i < result.count; i++) {
        const sw_finding *finding = &result.items[i].finding;
        if (strlen(finding->message) > LONGEST) {
            print_message("%s:%u: longer than %d: %s\n", path, finding->line, LONGEST, finding->message);
            wrong++;
        }
        size_t w = 0;
        while (w < list.count && !meets(finding, &list.items[w])) {
            w++;
        }
        if (w < list.count) {
            list.items[w].met = true;
        } else {
            print_message("%s:%u:%u: not wanted: %s [%s]\n", path, finding->line, finding->column,
                          finding->message, finding->rule);
            wrong++;
        }
    }
    for (size_t w = 0; w < list.count; w++) {
        if (!list.items[w].met) {
            print_message("%s:%u: wanted: %s %s\n", path, list.items[w].line, list.items[w].rule,
                          list.items[w].text);
            wrong++;
        }
    }
    sw_check_result_free(&result);
    return wrong;
}

static void test_cases(void **state)
{
    (void)state;
    char *error = NULL;
    sw_paths paths = {0};
    if (!sw_paths_collect(&paths, folder, &error)) {
        fail_msg("%s", error);
    }
    assert_true(paths.count >= 25);
    sw_film *film = sw_check_film(NULL, (sw_slice){0}, &error);
    assert_non_null(film);
    size_t wrong = 0;
    for (size_t i = 0; i < paths.count; i++) {
        wrong += check_case(paths.items[i], film);
    }
    print_message("%zu sources\n", paths.count);
    assert_int_equal(wrong, 0);
    sw_film_free(film);
    sw_paths_free(&paths);
}

/* Each rule says what it is about, and a mistyped name leads to it. */
static void test_rules(void **state)
{
    (void)state;
    for (size_t i = 0; i < sw_rules_count(); i++) {
        const sw_rule *rule = sw_rules_get(i);
        assert_ptr_equal(sw_rules_find(rule->name), rule);
        assert_true(strlen(rule->summary) > 10 && strlen(rule->explain) > 100);
        assert_non_null(strstr(rule->explain, "To mend"));
    }
    assert_null(sw_rules_find("rnage"));
    assert_string_equal(sw_rules_nearest("rnage"), "range");
    assert_string_equal(sw_rules_nearest("hand_span"), "hand-span");
    assert_null(sw_rules_nearest("something else"));
}

/* One trouble in a file that a score and two parts include is told once, with the score's name of the
 * player. */
static void test_shared_file(void **state)
{
    (void)state;
    char *error = NULL;
    sw_paths paths = {0};
    assert_true(sw_paths_collect(&paths, "corpus/1m1-first-light", &error));
    sw_paths mains = sw_main_files(&paths, NULL);
    assert_true(mains.count < paths.count);
    assert_string_equal(mains.items[0], "corpus/1m1-first-light/score.ly");
    sw_film *film = sw_check_film(NULL, (sw_slice){0}, &error);
    assert_non_null(film);
    sw_check_result result = {0};
    sw_check_options options = {.film = film};
    for (size_t i = 0; i < mains.count; i++) {
        assert_true(sw_check_file(mains.items[i], &options, &result, &error));
    }
    size_t before = result.count;
    sw_check_finish(&result);
    assert_true(result.count < before);
    size_t found = 0;
    for (size_t i = 0; i < result.count; i++) {
        if (strstr(result.items[i].finding.message, "F sharp 3") != NULL) {
            assert_string_equal(result.items[i].path, "corpus/1m1-first-light/strings.ily");
            assert_non_null(strstr(result.items[i].finding.message, "Violin I:"));
            found++;
        }
    }
    assert_int_equal(found, 1);
    sw_check_result_free(&result);
    sw_film_free(film);
    sw_paths_free(&mains);
    sw_paths_free(&paths);
}

static void test_paths(void **state)
{
    (void)state;
    static const char *const cases[][2] = {
        {"corpus/./troubles//miscounted.ly", "corpus/troubles/miscounted.ly"},
        {"./corpus/1m1-first-light/../common.ily", "corpus/common.ily"},
        {"corpus/..", "."},
        {"../a/../../b", "../../b"}, /* nothing of it need be there: git may have it */
        {"/usr/../usr/./lib/", "/usr/lib"},
        {"/", "/"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        sw_paths paths = {0};
        sw_paths_add(&paths, cases[i][0]);
        assert_string_equal(paths.items[0], cases[i][1]);
        sw_paths_free(&paths);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_cases),
        cmocka_unit_test(test_rules),
        cmocka_unit_test(test_shared_file),
        cmocka_unit_test(test_paths),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
