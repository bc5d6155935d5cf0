/* stavewright completion: scripts for shells, made from the tables of commands, options and rules. */
#include <stdio.h>
#include <string.h>

#include "app/commands.h"
#include "app/words.h"
#include "stavewright/check.h"

static void add_rules(sw_buffer *text)
{
    for (size_t i = 0; i < sw_rules_count(); i++) {
        sw_buffer_format(text, "%s%s", i == 0 ? "" : " ", sw_rules_get(i)->name);
    }
}

static void add_commands(sw_buffer *text)
{
    for (size_t i = 0; i < sw_subcommand_count(); i++) {
        sw_buffer_format(text, "%s ", sw_subcommand_get(i)->name);
    }
}

/* The words that a command takes where paths would stand; "" for paths, NULL for none. */
static const char *words_of(const char *command)
{
    static const struct {
        const char *command;
        const char *words;
    } own[] = {{"completion", "bash zsh"},
               {"explain", "$rules"},
               {"hook", "install remove"},
               {"manual", NULL},
               {"rules", NULL}};
    for (size_t i = 0; i < sizeof own / sizeof own[0]; i++) {
        if (strcmp(own[i].command, command) == 0) {
            return own[i].words;
        }
    }
    return "";
}

/* ---- bash ------------------------------------------------------------------------------------------------
 */

static const char bash_end[] =
    "    esac\n"
    "    if [ -z \"$words$kind\" ]; then\n"
    "        case $command:$word in\n"
    "        *:-*) words=$options ;;\n"
    "        *) words=$own; [ -n \"$own\" ] || [ -n \"$nothing\" ] || kind=file ;;\n"
    "        esac\n"
    "    fi\n"
    "    case $kind in\n"
    "    file) compopt -o filenames; local IFS=$'\\n'; COMPREPLY=($(compgen -f -- \"$word\")) ;;\n"
    "    folder) compopt -o filenames; local IFS=$'\\n'; COMPREPLY=($(compgen -d -- \"$word\")) ;;\n"
    "    list) # names with commas between: complete the last one\n"
    "        local before=\n"
    "        case $word in *,*) before=${word%,*}, ;; esac\n"
    "        COMPREPLY=($(compgen -P \"$before\" -W \"$rules\" -- \"${word##*,}\")) ;;\n"
    "    *) COMPREPLY=($(compgen -W \"$words\" -- \"$word\")) ;;\n"
    "    esac\n"
    "}\n"
    "complete -F _stavewright stavewright\n";

static void add_bash_value(const sw_option *o, const char *command, sw_buffer *text)
{
    const char *kind = strcmp(o->value, "FILE") == 0     ? "kind=file"
                       : strcmp(o->value, "FOLDER") == 0 ? "kind=folder"
                       : strcmp(o->value, "RULES") == 0  ? "kind=list"
                                                         : "kind=value"; /* anything: no proposal */
    sw_buffer_format(text, "    %s:%s) ", command, o->name);
    if (o->choices != NULL) {
        sw_buffer_format(text, "words='%s' ;;\n", o->choices);
    } else {
        sw_buffer_format(text, "%s ;;\n", kind);
    }
}

static void print_bash(sw_buffer *text)
{
    sw_buffer_string(text, "# bash completion of stavewright, made by: stavewright completion bash\n"
                           "_stavewright() {\n"
                           "    local word=${COMP_WORDS[COMP_CWORD]} last=${COMP_WORDS[COMP_CWORD-1]}\n"
                           "    local command=${COMP_WORDS[1]} words= kind= options= own= nothing= rules='");
    add_rules(text);
    sw_buffer_string(text, "'\n    # --option=value comes as three words\n"
                           "    [ \"$word\" != = ] || word=\n"
                           "    [ \"$last\" != = ] || last=${COMP_WORDS[COMP_CWORD-2]}\n"
                           "    COMPREPLY=()\n    if [ \"$COMP_CWORD\" = 1 ]; then\n        words='");
    add_commands(text);
    sw_buffer_string(text,
                     "help --help --version'\n        COMPREPLY=($(compgen -W \"$words\" -- \"$word\"))\n"
                     "        return\n    fi\n    case $command in\n    help) own='");
    add_commands(text);
    sw_buffer_string(text, "' ;;\n");
    for (size_t i = 0; i < sw_subcommand_count(); i++) {
        const char *command = sw_subcommand_get(i)->name;
        const char *own = words_of(command);
        sw_buffer_format(text, "    %s) own=\"%s\" nothing=%s options='", command, own == NULL ? "" : own,
                         own == NULL ? "yes" : "");
        for (const sw_option *o = sw_option_next(command, NULL); o != NULL; o = sw_option_next(command, o)) {
            sw_buffer_format(text, "%s ", o->name);
        }
        sw_buffer_string(text, "--help' ;;\n");
    }
    sw_buffer_string(text, "    esac\n    case $command:$last in\n");
    for (size_t i = 0; i < sw_subcommand_count(); i++) {
        const char *command = sw_subcommand_get(i)->name;
        for (const sw_option *o = sw_option_next(command, NULL); o != NULL; o = sw_option_next(command, o)) {
            if (!sw_option_is_flag(o)) {
                add_bash_value(o, command, text);
            }
        }
    }
    sw_buffer_string(text, bash_end);
}

/* ---- zsh -------------------------------------------------------------------------------------------------
 */

/* Inside of single quotes, with the signs escaped that _arguments and _describe know. */
static void add_zsh_text(sw_buffer *text, const char *words)
{
    for (; *words != '\0'; words++) {
        if (*words == '\'') {
            sw_buffer_string(text, "'\\''");
        } else if (*words == '\n') {
            sw_buffer_char(text, ' ');
        } else {
            sw_buffer_format(text, "%s%c", strchr(":[]\\", *words) == NULL ? "" : "\\", *words);
        }
    }
}

static void add_zsh_option(const sw_option *o, sw_buffer *text)
{
    sw_buffer_format(text, " \\\n            '%s[", o->name);
    add_zsh_text(text, o->help);
    sw_buffer_char(text, ']');
    if (!sw_option_is_flag(o)) {
        sw_buffer_char(text, ':');
        add_zsh_text(text, o->value);
        if (o->choices != NULL) {
            sw_buffer_format(text, ":(%s)", o->choices);
        } else if (strcmp(o->value, "RULES") == 0) {
            sw_buffer_string(text, ":_values -s , rule $rules");
        } else if (strcmp(o->value, "FILE") == 0 || strcmp(o->value, "FOLDER") == 0) {
            sw_buffer_string(text, strcmp(o->value, "FILE") == 0 ? ":_files" : ":_files -/");
        } else {
            sw_buffer_string(text, ": ");
        }
    }
    sw_buffer_char(text, '\'');
}

static void print_zsh(sw_buffer *text)
{
    sw_buffer_string(
        text, "#compdef stavewright\n# zsh completion of stavewright, made by: stavewright completion zsh\n"
              "_stavewright() {\n    local -a rules commands\n    rules=(");
    add_rules(text);
    sw_buffer_string(text, ")\n    commands=(\n");
    for (size_t i = 0; i < sw_subcommand_count(); i++) {
        sw_buffer_format(text, "        '%s:", sw_subcommand_get(i)->name);
        add_zsh_text(text, sw_subcommand_get(i)->summary);
        sw_buffer_string(text, "'\n");
    }
    sw_buffer_string(
        text, "        'help:show the options of a command'\n    )\n"
              "    if (( CURRENT == 2 )); then\n        _describe command commands\n        return\n    fi\n"
              "    local command=$words[2]\n    shift words\n    (( CURRENT-- ))\n    case $command in\n"
              "    help)\n        _describe command commands ;;\n");
    for (size_t i = 0; i < sw_subcommand_count(); i++) {
        const char *command = sw_subcommand_get(i)->name;
        const char *own = words_of(command);
        sw_buffer_format(text, "    %s)\n        _arguments '--help[show what it does]'", command);
        for (const sw_option *o = sw_option_next(command, NULL); o != NULL; o = sw_option_next(command, o)) {
            add_zsh_option(o, text);
        }
        if (own != NULL && own[0] == '\0') {
            sw_buffer_string(text, " \\\n            '*:path:_files'");
        } else if (own != NULL) {
            sw_buffer_format(text, " \\\n            \"*:word:(%s)\"", own);
        }
        sw_buffer_string(text, " ;;\n");
    }
    sw_buffer_string(text, "    esac\n}\n"
                           "if [ \"$funcstack[1]\" = _stavewright ]; then\n    _stavewright \"$@\"\nelse\n"
                           "    compdef _stavewright stavewright\nfi\n");
}

int sw_command_completion(int count, char **words)
{
    bool bash = count == 1 && strcmp(words[0], "bash") == 0;
    bool zsh = count == 1 && strcmp(words[0], "zsh") == 0;
    if (!bash && !zsh) {
        return sw_say_bad("completion", "one word is needed, bash or zsh");
    }
    sw_buffer text = {0};
    (bash ? print_bash : print_zsh)(&text);
    fputs(sw_buffer_text(&text), stdout);
    sw_buffer_free(&text);
    return SW_EXIT_CLEAN;
}
