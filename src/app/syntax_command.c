/* stavewright syntax: what can't be parsed. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/inputs.h"
#include "stavewright/syntax.h"

typedef struct totals {
    size_t files;
    size_t clean;
    uint64_t bytes;
    uint64_t nodes;
} totals;

static const char *plural(uint64_t count)
{
    return count == 1 ? "" : "s";
}

/* One mistake can leave many error nodes; the first ones tell where to look. */
enum { SHOWN_ERRORS = 20 };

static void print_error_nodes(const sw_syntax *syntax)
{
    uint32_t shown = 0;
    for (uint32_t i = 0; i < syntax->count && shown < SHOWN_ERRORS; i++) {
        const sw_node *node = &syntax->nodes[i];
        if (node->kind != SW_NODE_ERROR && node->kind != SW_NODE_MISSING) {
            continue;
        }
        sw_place place = sw_text_place(syntax->text, node->start);
        printf("%s:%u:%u: note: %s\n", syntax->text->path, place.line, place.column + 1,
               node->kind == SW_NODE_ERROR ? "this can't be parsed" : "something is missing here");
        shown++;
    }
    if (syntax->errors > shown) {
        printf("%s: %u more\n", syntax->text->path, syntax->errors - shown);
    }
}

static void print_file(const sw_syntax *syntax)
{
    const sw_text *text = syntax->text;
    printf("%s: %u byte%s, %u node%s, %u error%s\n", text->path, text->length, plural(text->length),
           syntax->tree_nodes, plural(syntax->tree_nodes), syntax->errors, plural(syntax->errors));
    sw_syntax_fault fault;
    if (sw_syntax_find_fault(syntax, &fault)) {
        sw_place place = sw_text_place(text, fault.start);
        printf("%s:%u:%u: error: %s\n", text->path, place.line, place.column + 1, fault.message);
    }
    print_error_nodes(syntax);
}

static int parse_file(const char *path, totals *sum)
{
    char *error = NULL;
    sw_text *text = sw_text_read(path, &error);
    if (text == NULL) {
        sw_say_bad("syntax", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    sw_syntax *syntax = sw_syntax_parse(text);
    int status = syntax->errors == 0 ? SW_EXIT_CLEAN : SW_EXIT_FINDINGS;
    error = syntax->errors > 0 ? sw_syntax_refusal(syntax) : NULL; /* a list of words can be parsed */
    if (error != NULL) {
        status = sw_say_bad("syntax", "%s", error);
        free(error);
    } else {
        print_file(syntax);
        sum->files++;
        sum->clean += syntax->errors == 0;
        sum->bytes += text->length;
        sum->nodes += syntax->tree_nodes;
    }
    sw_syntax_free(syntax);
    sw_text_free(text);
    return status;
}

int sw_command_syntax(int count, char **items)
{
    sw_words words = {.command = "syntax", .items = items, .count = count};
    sw_inputs inputs = {.command = "syntax"};
    totals sum = {0};
    bool good = true;
    sw_word word;
    while (good && (word = sw_words_next(&words)) != SW_WORD_END) {
        good = word == SW_WORD_PATH;
        if (good) {
            sw_inputs_take(&inputs, words.value);
        }
    }
    good = good && sw_inputs_close(&inputs, NULL);
    int status = !good ? SW_EXIT_BAD : inputs.standard_input ? parse_file("-", &sum) : SW_EXIT_CLEAN;
    for (size_t i = 0; good && i < inputs.paths.count; i++) {
        int one = parse_file(inputs.paths.items[i], &sum);
        status = one > status ? one : status;
    }
    sw_inputs_free(&inputs);
    if (good) {
        printf("total: %zu file%s, %zu without errors, %llu byte%s, %llu node%s\n", sum.files,
               plural(sum.files), sum.clean, (unsigned long long)sum.bytes, plural(sum.bytes),
               (unsigned long long)sum.nodes, plural(sum.nodes));
    }
    return status;
}
