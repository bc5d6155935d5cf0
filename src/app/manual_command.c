/* stavewright manual: the manual page, made from the tables of commands, options and rules. */
#include <stdio.h>
#include <string.h>

#include "app/commands.h"
#include "app/words.h"
#include "stavewright/check.h"
#include "stavewright/report.h"

/* A text as the page's language wants it: backslashes, hyphens that are minus signs, and dots and quotes
 * where a line begins are its own signs. */
static void add_text(sw_buffer *page, const char *text, size_t length)
{
    for (size_t i = 0; i < length; i++) {
        bool first = page->length == 0 || page->data[page->length - 1] == '\n';
        char c = text[i];
        if (first && (c == '.' || c == '\'')) {
            sw_buffer_string(page, "\\&");
        }
        sw_buffer_string(page, c == '\\'  ? "\\e"
                               : c == '-' ? "\\-"
                               : c == '~' ? "\\(ti"
                               : c == '^' ? "\\(ha"
                                          : "");
        sw_buffer_string(page, c == '`' ? "\\(ga" : c == '\'' && !first ? "\\(aq" : "");
        if (strchr("\\-~^`", c) == NULL && (c != '\'' || first)) {
            sw_buffer_char(page, c);
        }
    }
}

/* Lines, as they are. */
static void add_lines(sw_buffer *page, const char *text, size_t length)
{
    sw_buffer_string(page, ".nf\n");
    add_text(page, text, length);
    if (length > 0 && text[length - 1] != '\n') {
        sw_buffer_char(page, '\n');
    }
    sw_buffer_string(page, ".fi\n");
}

static void add_term(sw_buffer *page, const char *term, const char *argument)
{
    sw_buffer_string(page, ".TP\n.B ");
    add_text(page, term, strlen(term));
    if (argument != NULL && argument[0] != '\0') {
        sw_buffer_string(page, argument[0] == '[' ? "" : " ");
        add_text(page, argument, strlen(argument));
    }
    sw_buffer_char(page, '\n');
}

/* Paragraphs that are filled, with an empty line between them. */
static void add_filled(sw_buffer *page, const char *text, size_t length)
{
    for (size_t i = 0, next; i < length; i = next) {
        const char *end = memmem(text + i, length - i, "\n\n", 2);
        size_t stop = end == NULL ? length : (size_t)(end - text);
        next = end == NULL ? length : stop + 2;
        sw_buffer_string(page, i > 0 ? ".PP\n" : "");
        add_text(page, text + i, stop - i);
        if (page->data[page->length - 1] != '\n') {
            sw_buffer_char(page, '\n');
        }
    }
}

static void add_command(sw_buffer *page, const sw_subcommand *command)
{
    sw_buffer_string(page, ".SS ");
    add_text(page, command->name, strlen(command->name));
    if (command->arguments[0] != '\0') {
        sw_buffer_char(page, ' ');
        add_text(page, command->arguments, strlen(command->arguments));
    }
    sw_buffer_char(page, '\n');
    add_filled(page, command->summary, strlen(command->summary));
    sw_buffer_string(page, ".PP\n");
    size_t text = sw_subcommand_text(command);
    add_filled(page, command->help, text);
    for (const sw_option *o = sw_option_next(command->name, NULL); o != NULL;
         o = sw_option_next(command->name, o)) {
        add_term(page, o->name, o->value);
        add_filled(page, o->help, strlen(o->help));
    }
    const char *example = command->help + text;
    example += strspn(example, "\n");
    if (example[0] != '\0') {
        sw_buffer_string(page, ".PP\n");
        add_lines(page, example, strlen(example));
    }
}

static void print_page(sw_buffer *page)
{
    sw_buffer_string(page, ".TH STAVEWRIGHT 1 \"\" \"stavewright " SW_VERSION "\" \"User commands\"\n"
                           ".SH NAME\nstavewright \\- read, check and transform LilyPond scores\n"
                           ".SH SYNOPSIS\n.B stavewright\n.I COMMAND\n[\\fIOPTIONS\\fR] ...\n"
                           ".SH COMMANDS\n");
    for (size_t i = 0; i < sw_subcommand_count(); i++) {
        add_command(page, sw_subcommand_get(i));
    }
    sw_buffer_string(page,
                     ".SH RULES\nWhat\n.B check\nlooks for;\n.B stavewright explain\n.I RULE\nsays more.\n");
    for (size_t i = 0; i < sw_rules_count(); i++) {
        const sw_rule *rule = sw_rules_get(i);
        add_term(page, rule->name, NULL);
        sw_buffer_format(page, "(%s) ", sw_severity_word(rule->severity));
        add_filled(page, rule->summary, strlen(rule->summary));
    }
    sw_buffer_string(
        page, ".SH EXIT STATUS\n.TP\n.B 0\nclean, or done\n.TP\n.B 1\nfindings, or changes to be made\n"
              ".TP\n.B 2\nbad use or bad input\n"
              ".SH ENVIRONMENT\n.TP\n.B NO_COLOR\nNo colours, also on a terminal.\n"
              ".SH FILES\n.TP\n.I stavewright.yaml\n"
              "At the top of the film's folder: who plays, and what is asked of the scores.\n");
}

int sw_command_manual(int count, char **words)
{
    if (count > 0) {
        return sw_say_bad("manual", "it takes no words; stavewright help %s shows one command", words[0]);
    }
    sw_buffer page = {0};
    print_page(&page);
    fputs(sw_buffer_text(&page), stdout);
    sw_buffer_free(&page);
    return SW_EXIT_CLEAN;
}
