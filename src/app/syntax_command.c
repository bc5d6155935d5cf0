#include <stdio.h>
#include <stdlib.h>

#include "app/commands.h"
#include "stavewright/syntax.h"

/* A small grammar mistake can leave many error nodes; the first ones tell where to look. */
enum { SHOWN_ERRORS = 20 };

static void print_errors(const sw_syntax *syntax)
{
    uint32_t shown = 0;
    for (uint32_t i = 0; i < syntax->count && shown < SHOWN_ERRORS; i++) {
        const sw_node *node = &syntax->nodes[i];
        if (node->kind != SW_NODE_ERROR && node->kind != SW_NODE_MISSING) {
            continue;
        }
        sw_place place = sw_text_place(syntax->text, node->start);
        printf("%s:%u:%u: %s\n", syntax->text->path, place.line, place.column + 1,
               node->kind == SW_NODE_ERROR ? "error: this can't be parsed"
                                           : "error: something is missing here");
        shown++;
    }
    if (syntax->errors > shown) {
        printf("%s: %u more\n", syntax->text->path, syntax->errors - shown);
    }
}

int sw_command_syntax(int count, char **arguments)
{
    if (count == 0) {
        fputs("stavewright syntax: no file is named\n", stderr);
        return SW_EXIT_BAD;
    }
    int status = SW_EXIT_CLEAN;
    uint64_t bytes = 0;
    uint64_t nodes = 0;
    int clean = 0;
    int read = 0;
    for (int i = 0; i < count; i++) {
        char *error = NULL;
        sw_text *text = sw_text_read(arguments[i], &error);
        if (text == NULL) {
            fprintf(stderr, "%s\n", error);
            free(error);
            status = SW_EXIT_BAD;
            continue;
        }
        sw_syntax *syntax = sw_syntax_parse(text);
        printf("%s: %u bytes, %u nodes, %u errors\n", text->path, text->length, syntax->tree_nodes,
               syntax->errors);
        print_errors(syntax);
        if (syntax->errors > 0 && status == SW_EXIT_CLEAN) {
            status = SW_EXIT_FINDINGS;
        }
        read++;
        clean += syntax->errors == 0;
        bytes += text->length;
        nodes += syntax->tree_nodes;
        sw_syntax_free(syntax);
        sw_text_free(text);
    }
    printf("total: %d files, %d without errors, %llu bytes, %llu nodes\n", read, clean,
           (unsigned long long)bytes, (unsigned long long)nodes);
    return status;
}
