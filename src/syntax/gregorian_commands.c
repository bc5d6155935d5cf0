/* The commands of gregorian.ly, which comes with the compiler: known only to files that include it. */
#include "syntax/commands.h"

const sw_command sw_gregorian_commands[] = {
    {"accentus", SW_COMMAND_EVENT_FUNCTION, ""},      {"ascendens", SW_COMMAND_MUSIC_FUNCTION, ""},
    {"auctum", SW_COMMAND_MUSIC_FUNCTION, ""},        {"augmentum", SW_COMMAND_MUSIC_FUNCTION, "m"},
    {"cavum", SW_COMMAND_MUSIC_FUNCTION, ""},         {"circulus", SW_COMMAND_EVENT_FUNCTION, ""},
    {"deminutum", SW_COMMAND_MUSIC_FUNCTION, ""},     {"descendens", SW_COMMAND_MUSIC_FUNCTION, ""},
    {"divisioMaior", SW_COMMAND_MUSIC_FUNCTION, ""},  {"divisioMaxima", SW_COMMAND_MUSIC_FUNCTION, ""},
    {"divisioMinima", SW_COMMAND_MUSIC_FUNCTION, ""}, {"finalis", SW_COMMAND_MUSIC_FUNCTION, ""},
    {"flexa", SW_COMMAND_MUSIC_FUNCTION, ""},         {"ictus", SW_COMMAND_EVENT_FUNCTION, ""},
    {"inclinatum", SW_COMMAND_MUSIC_FUNCTION, ""},    {"ligature", SW_COMMAND_MUSIC_FUNCTION, "m"},
    {"linea", SW_COMMAND_MUSIC_FUNCTION, ""},         {"oriscus", SW_COMMAND_MUSIC_FUNCTION, ""},
    {"pes", SW_COMMAND_MUSIC_FUNCTION, ""},           {"quilisma", SW_COMMAND_MUSIC_FUNCTION, ""},
    {"responsum", SW_COMMAND_MUSIC_FUNCTION, "m"},    {"semicirculus", SW_COMMAND_EVENT_FUNCTION, ""},
    {"stropha", SW_COMMAND_MUSIC_FUNCTION, ""},       {"versus", SW_COMMAND_MUSIC_FUNCTION, "m"},
    {"virga", SW_COMMAND_MUSIC_FUNCTION, ""},         {"virgula", SW_COMMAND_MUSIC_FUNCTION, ""},
};

const size_t sw_gregorian_command_count = sizeof sw_gregorian_commands / sizeof sw_gregorian_commands[0];
