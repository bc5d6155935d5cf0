/* The reader's own rules: they have no run function, as the reader finds these while it reads. */
#include "checks/rules.h"

const sw_rule sw_rule_syntax = {
    .name = "syntax",
    .summary = "the source can't be read as LilyPond",
    .severity = SW_ERROR,
    .explain = "Somewhere before this place a bracket or a quotation mark is missing, or there is one too "
               "many. What "
               "stands\nbehind it is read as well as can be, so other findings of this file may be wrong "
               "until it is "
               "mended.\n\n"
               "To mend: look at the line named, and at the block that it stands in, for { } < > << >> ( ) "
               "and \".\n",
};

const sw_rule sw_rule_include = {
    .name = "include",
    .summary = "an included file is missing",
    .severity = SW_ERROR,
    .explain =
        "The file that \\include names is neither beside the including file, nor beside the main file, nor "
        "in "
        "a folder\ngiven with --include; or files include one another in a ring. What it defines is missing, "
        "so notes may be\nmissing from the score.\n\n"
        "To mend: correct the name, or give its folder with --include FOLDER.\n",
};

const sw_rule sw_rule_unresolved = {
    .name = "unresolved",
    .summary = "a command or variable whose effect is not known",
    .severity = SW_WARNING,
    .explain =
        "A variable is used that no file defines, or a function written in Scheme, whose body this program "
        "does not\nrun. Music inside such a call is read as if the function left it alone; checks of pitches "
        "pass it over.\nEach name is reported once.\n\n"
        "To mend: define the variable, include the file that does, or take the finding as a reminder to "
        "look\n"
        "at that place yourself.\n",
};

const sw_rule sw_rule_nesting = {
    .name = "nesting",
    .summary = "blocks lie deeper inside each other than is read",
    .severity = SW_ERROR,
    .explain =
        "No score nests blocks thousands deep; a file that does is damaged or was made by a faulty program. "
        "What lies\ndeeper is not read.\n\n"
        "To mend: take the innermost blocks out into variables, or repair the file.\n",
};
