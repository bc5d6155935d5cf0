/* The grammar's own tests: grammar/test/corpus holds sources and the trees they must give, in the tree-sitter
 * command's format, but the command is not needed here. Also what the scanner's table promises. */
#include <glob.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>
#include <tree_sitter/api.h>

#include "markup_commands.h"
#include "stavewright/source.h"
#include "stavewright/syntax.h"

const TSLanguage *tree_sitter_stavewright(void);

/* ---- the corpus format: a title between two lines of "=", the source, a line of "-", the tree ---- */

typedef struct test_case {
    sw_slice title;
    sw_slice source;
    sw_slice tree;
    uint32_t line;
} test_case;

static bool is_rule(sw_slice line, char c)
{
    size_t i = 0;
    while (i < line.length && line.data[i] == c) {
        i++;
    }
    return i == line.length && i >= 3;
}

/* The bytes of whole lines [from, to), without empty lines around them. */
static sw_slice lines_between(const sw_text *text, uint32_t from, uint32_t to)
{
    while (from < to && sw_text_line_slice(text, from).length == 0) {
        from++;
    }
    while (from < to && sw_text_line_slice(text, to - 1).length == 0) {
        to--;
    }
    uint32_t end = to <= text->line_count ? text->lines[to - 1] : text->length;
    return from < to ? sw_text_slice(text, text->lines[from - 1], end) : sw_slice_of("");
}

/* The number of the first line from `line` on that is a rule of `c`, or that behind the last line. */
static uint32_t find_rule(const sw_text *text, uint32_t line, char c)
{
    while (line <= text->line_count && !is_rule(sw_text_line_slice(text, line), c)) {
        line++;
    }
    return line;
}

/* The case whose heading is the first one from *line on; *line moves behind the case. */
static bool next_case(const sw_text *text, uint32_t *line, test_case *found)
{
    uint32_t heading = find_rule(text, *line, '=');
    uint32_t body = find_rule(text, heading + 1, '=') + 1;
    uint32_t divider = find_rule(text, body, '-');
    if (divider > text->line_count) {
        return false;
    }
    *line = find_rule(text, divider + 1, '=');
    *found = (test_case){sw_text_line_slice(text, heading + 1), lines_between(text, body, divider),
                         lines_between(text, divider + 1, *line), heading + 1};
    return true;
}

/* ---- trees ---- */

/* A tree on one line, as the parser library prints it: one space between nodes, none before a parenthesis. */
static void append_on_one_line(sw_buffer *line, sw_slice tree)
{
    for (size_t i = 0; i < tree.length; i++) {
        char c = tree.data[i];
        if (c == '\n' || c == ' ') {
            if (line->length > 0 && line->data[line->length - 1] != ' ') {
                sw_buffer_char(line, ' ');
            }
            continue;
        }
        if (c == ')' && line->length > 0 && line->data[line->length - 1] == ' ') {
            line->data[--line->length] = '\0';
        }
        sw_buffer_char(line, c);
    }
    while (line->length > 0 && line->data[line->length - 1] == ' ') {
        line->data[--line->length] = '\0';
    }
}

static char *tree_of(sw_slice source)
{
    TSParser *parser = ts_parser_new();
    assert_true(ts_parser_set_language(parser, tree_sitter_stavewright()));
    TSTree *tree = ts_parser_parse_string(parser, NULL, source.data, (uint32_t)source.length);
    char *text = ts_node_string(ts_tree_root_node(tree));
    ts_tree_delete(tree);
    ts_parser_delete(parser);
    return text;
}

static bool check_case(const sw_text *text, const test_case *wanted, sw_buffer *all_trees)
{
    sw_buffer expected = {0};
    append_on_one_line(&expected, wanted->tree);
    sw_buffer_string(all_trees, sw_buffer_text(&expected));
    char *found = tree_of(wanted->source);
    bool equal = strcmp(sw_buffer_text(&expected), found) == 0;
    if (!equal) {
        fprintf(stderr, "%s:%u: %.*s\n  expected %s\n  found    %s\n", text->path, wanted->line,
                (int)wanted->title.length, wanted->title.data, sw_buffer_text(&expected), found);
    }
    free(found);
    sw_buffer_free(&expected);
    return equal;
}

static void the_corpus_gives_its_trees(void **state)
{
    (void)state;
    glob_t files;
    assert_int_equal(glob("grammar/test/corpus/*.txt", 0, NULL, &files), 0);
    int cases = 0;
    int failed = 0;
    sw_buffer all_trees = {0};
    for (size_t i = 0; i < files.gl_pathc; i++) {
        char *error = NULL;
        sw_text *text = sw_text_read(files.gl_pathv[i], &error);
        assert_non_null(text);
        uint32_t line = 1;
        for (test_case wanted; next_case(text, &line, &wanted); cases++) {
            failed += !check_case(text, &wanted, &all_trees);
        }
        sw_text_free(text);
    }
    globfree(&files);
    printf("# %d of %d trees as expected\n", cases - failed, cases);
    assert_int_equal(failed, 0);
    /* No kind of node goes untested. */
    for (int kind = SW_NODE_ERROR; kind < SW_NODE_KINDS; kind++) {
        sw_buffer wanted = {0};
        sw_buffer_format(&wanted, "(%s", sw_node_kind_name((sw_node_kind)kind));
        bool used = false;
        for (const char *p = all_trees.data; !used && (p = strstr(p, wanted.data)) != NULL; p++) {
            used = strchr(" )", p[wanted.length]) != NULL;
        }
        if (!used) {
            fail_msg("no test in grammar/test/corpus has a node of the kind %s", wanted.data + 1);
        }
        sw_buffer_free(&wanted);
    }
    sw_buffer_free(&all_trees);
}

/* ---- what belongs to the grammar ---- */

static void every_visible_kind_is_known_to_the_flat_tree(void **state)
{
    (void)state;
    const TSLanguage *language = tree_sitter_stavewright();
    for (uint32_t s = 1; s < ts_language_symbol_count(language); s++) {
        const char *name = ts_language_symbol_name(language, (TSSymbol)s);
        if (ts_language_symbol_type(language, (TSSymbol)s) != TSSymbolTypeRegular) {
            continue;
        }
        bool known = false;
        for (int kind = SW_NODE_FILE; kind < SW_NODE_KINDS; kind++) {
            known = known || strcmp(name, sw_node_kind_name((sw_node_kind)kind)) == 0;
        }
        if (!known) {
            fail_msg("the grammar's node %s has no sw_node_kind", name);
        }
    }
}

static void markup_commands_are_sorted(void **state)
{
    (void)state;
    for (size_t i = 1; i < markup_command_count; i++) {
        if (strcmp(markup_commands[i - 1].name, markup_commands[i].name) >= 0) {
            fail_msg("%s must stand before %s", markup_commands[i].name, markup_commands[i - 1].name);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_corpus_gives_its_trees),
        cmocka_unit_test(every_visible_kind_is_known_to_the_flat_tree),
        cmocka_unit_test(markup_commands_are_sorted),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
