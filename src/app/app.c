/* The command line: finds the subcommand, and shows help. */
#include <errno.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#include "app/app.h"
#include "app/commands.h"
#include "app/words.h"
#include "stavewright/source.h"

static const sw_subcommand subcommands[] = {
    {"bars", "FILE...", "lay the music out: one bar a line, with bar check and bar number",
     "Only white space, bar checks and comments that are bar numbers change; nothing else that is written or "
     "heard does.\n"
     "Line breaks inside of a bar, other comments, lyrics, markup and Scheme stay. - is standard input, and "
     "the "
     "whole result\n"
     "is printed then, as an editor's filter needs it.\n\n"
     "  --check             change nothing: name the files that are not laid out so, with exit status 1\n"
     "  --lines A-B         only the bars that end on these lines of FILE\n"
     "  --include FOLDER    look for included files here, too; may be given several times\n"
     "  --file-name NAME    with -: the name of what standard input holds, for its includes\n"
     "  --write             change the files; otherwise a unified diff is printed\n\n"
     "example: stavewright bars corpus/1m1-first-light/brass.ily\n",
     sw_command_bars},
    {"breaths", "FILE", "mark where winds and singers breathe",
     "How long a breath lasts follows from the instrument, loudness, register and tempo (the rule breath). "
     "The "
     "places are\n"
     "the best of all: at the ends of slurs and phrases, behind long notes, at bar lines, before leaps; "
     "hardly "
     "within a\n"
     "slur, a beat or a word, never in a tie; and where another player holds the same note, not together. "
     "Where a rest or\n"
     "breath mark serves, nothing is written. What has no place for a breath is told.\n\n"
     "  --rest 1/8          end the note before by an eighth earlier (1/4, 1/16 ...) instead of a breath "
     "mark; "
     "not in slurs\n"
     "  --staff NAME        instrument name, short name, context id or variable; /.../ is a pattern\n"
     "  --bars A-B          only these bars (8-12, or 8:3-9:1 with beats)\n"
     "  --lines A-B         only what is written on these lines of FILE\n"
     "  --everywhere        where a note is written once and heard in several places, change all of them\n"
     "  --copy              there, give the chosen place a copy of the variable of its own\n"
     "  --include FOLDER    look for included files here, too; may be given several times\n"
     "  --file-name NAME    with -: the name of what standard input holds, for its includes\n"
     "  --why               say where, after how many seconds, and why there\n"
     "  --write             change the files; otherwise a unified diff is printed\n\n"
     "example: stavewright breaths corpus/1m1-first-light/score.ly --why\n",
     sw_command_breaths},
    {"check", "PATH...", "look for what can't be played, won't sound or doesn't add up",
     "PATH is a file, a folder (all .ly and .ily files below it) or - (standard input). A file that another "
     "one includes\n"
     "is read as part of it. stavewright explain RULE says what a rule is about.\n\n"
     "  --rules A,B         only these rules\n"
     "  --not-rules A,B     all rules but these\n"
     "  --include FOLDER    look for included files here, too; may be given several times\n"
     "  --file-name NAME    with -: the name of what standard input holds, for its includes and for the "
     "output\n\n"
     "example: stavewright check --not-rules staff-length 1m1 1m2\n",
     sw_command_check},
    {"courtesy", "FILE", "make room before a change: arco to pizz., mutes, sticks",
     "Where players have too little time to change (the rule prep-time), the note before ends a little "
     "earlier: "
     "by the\n"
     "smallest value that gives the seconds needed, at most half of it. Players of a family that hold the "
     "same "
     "note let\n"
     "go together. What is left alone, and why, is told.\n\n"
     "  --only KIND         only pizzicato, mutes, hand, sticks or snares\n"
     "  --value V           take off just so much, as a score writes it: 8 is an eighth, 4. a dotted "
     "quarter\n"
     "  --melody            shorten the notes that end the melody, too\n"
     "  --staff NAME        instrument name, short name, context id or variable; /.../ is a pattern\n"
     "  --bars A-B          only these bars (8-12, or 8:3-9:1 with beats)\n"
     "  --lines A-B         only what is written on these lines of FILE\n"
     "  --everywhere        where a note is written once and heard in several places, change all of them\n"
     "  --copy              there, give the chosen place a copy of the variable of its own\n"
     "  --include FOLDER    look for included files here, too; may be given several times\n"
     "  --file-name NAME    with -: the name of what standard input holds, for its includes\n"
     "  --why               say what was done\n"
     "  --write             change the files; otherwise a unified diff is printed\n\n"
     "example: stavewright courtesy corpus/1m2-across-the-flats/score.ly --only pizzicato --why\n",
     sw_command_courtesy},
    {"explain", "[RULE...]", "say what a rule looks for, why, and how to mend it",
     "Without RULE: lists the rules. The name of an instrument shows its figures and their source.\n\n"
     "example: stavewright explain range horn\n",
     sw_command_explain},
    {"events", "FILE", "print what the score says: one tab-separated row a note or rest",
     "Columns: score onset grace duration kind pitch staff voice file line column\n"
     "Onset and duration are exact fractions of a whole note; pitch is name, octave and quarter tones (c0/0 "
     "is middle C).\n"
     "A last column `uncertain` stands on rows inside a call whose effect on the notes is not known.\n\n"
     "  --lyrics            instead of notes the sung syllables, verse by verse. Columns: score onset grace "
     "duration bar\n"
     "                      beat syllable staff voice verse line-id file line column. The duration holds the "
     "whole\n"
     "                      melisma; staff and voice are - for syllables with a length of their own\n"
     "  --include FOLDER    look for included files here, too; may be given several times\n\n"
     "example: stavewright events corpus/1m1-first-light/score.ly | grep harp1\n",
     sw_command_events},
    {"hands", "FILE --staff NAME", "split one staff between right and left hand",
     "  --staff NAME        instrument name, short name, context id or variable; /.../ is a pattern\n"
     "  --bars A-B          only these bars (8-12, or 8:3-9:1 with beats)\n"
     "  --instrument NAME   harp or piano, where the staff's name does not say it\n"
     "  --span N            widest interval of one hand (10 = a tenth)\n"
     "  --fingers N         fingers of one hand\n"
     "  --include FOLDER    look for included files here, too; may be given several times\n"
     "  --file-name NAME    with -: the name of what standard input holds, for its includes\n"
     "  --why               say what was chosen and why\n"
     "  --write             change the files; otherwise a unified diff is printed\n\n"
     "example: stavewright hands corpus/1m1-first-light/score.ly --staff harp1\n",
     sw_command_hands},
    {"octave", "FILE --by N", "shift notes by octaves, or fit lines into a range",
     "FILE is a score or a file that scores include; - is standard input, and the whole result is printed "
     "then,\n"
     "as an editor's filter needs it. One of the first four says what to do:\n\n"
     "  --by N              so many octaves up, or down with -N\n"
     "  --into INSTRUMENT   into its compass (explain INSTRUMENT shows it), as it sounds, best into the "
     "middle\n"
     "  --between \"LOW HIGH\"  between two written pitches: \"c' g'''\" in the source's note language, or "
     "\"C4 "
     "G6\"\n"
     "  --ottava add|remove write 8va brackets (15ma, 8vb ...) over what lies too high, or take them out\n"
     "  --fold              with --into and --between: only what lies outside, and what a smooth line needs\n"
     "  --ledgers N         with --ottava add: too high is what has more ledger lines than N (4)\n"
     "  --staff NAME        instrument name, short name, context id or variable; /.../ is a pattern\n"
     "  --bars A-B          only these bars (8-12, or 8:3-9:1 with beats)\n"
     "  --lines A-B         only what is written on these lines of FILE\n"
     "  --everywhere        where a note is written once and heard in several places, change all of them\n"
     "  --copy              there, give the chosen place a copy of the variable of its own\n"
     "  --include FOLDER    look for included files here, too; may be given several times\n"
     "  --file-name NAME    with -: the name of what standard input holds, for its includes\n"
     "  --why               say what was done, and why each line changes its octave where it does\n"
     "  --write             change the files; otherwise a unified diff is printed\n\n"
     "A line changes its octave best behind a rest, where a phrase begins, behind a long note or on a "
     "repeated one;\n"
     "hardly within a slur, a beat or a scale. Chords, ties and grace notes stay together. What fits nowhere "
     "is "
     "reported.\n\n"
     "examples: stavewright octave corpus/1m1-first-light/score.ly --staff flute1 --bars 8-9 --by 1\n"
     "          stavewright octave corpus/1m1-first-light/score.ly --staff flute1 --into oboe --fold --why\n",
     sw_command_octave},
    {"outline", "PATH...", "print staves, instruments, bars, metre, keys, tempos and the duration",
     "PATH is a file, a folder (all scores below it) or - (standard input).\n\n"
     "  --include FOLDER    look for included files here, too; may be given several times\n\n"
     "example: stavewright outline corpus/1m1-first-light/score.ly\n",
     sw_command_outline},
    {"ring", "FILE", "let notes ring: harp, mallets, piano, pizzicato",
     "Notes before rests that go on sounding by themselves get a tie into nothing, and short ones a value "
     "that shows "
     "it;\n"
     "where every note of a staff would, one text says so. What is staccato or damped, or ended by a change "
     "of "
     "pedals, stays.\n\n"
     "  --staff NAME        instrument name, short name, context id or variable; /.../ is a pattern\n"
     "  --bars A-B          only these bars (8-12, or 8:3-9:1 with beats)\n"
     "  --lines A-B         only what is written on these lines of FILE\n"
     "  --everywhere        where a note is written once and heard in several places, change all of them\n"
     "  --copy              there, give the chosen place a copy of the variable of its own\n"
     "  --include FOLDER    look for included files here, too; may be given several times\n"
     "  --file-name NAME    with -: the name of what standard input holds, for its includes\n"
     "  --why               say what was done\n"
     "  --write             change the files; otherwise a unified diff is printed\n\n"
     "example: stavewright ring corpus/1m1-first-light/score.ly --staff harp1 --why\n",
     sw_command_ring},
    {"roster", "init [PATH...]", "write a first list of who plays, from the scores",
     "Prints a stavewright.yaml with a chair for each player that the staves of the scores below PATH (the "
     "working\n"
     "folder) speak of: name, instrument, number, the percussion that is struck. Go through it, add who "
     "doubles "
     "what, and\n"
     "put it at the top of the film's folder; stavewright check finds it there.\n\n"
     "  --write             write the file stavewright.yaml; an existing one is never changed\n"
     "  --to FOLDER         with --write: into this folder instead of the working folder\n\n"
     "example: stavewright roster init corpus\n",
     sw_command_roster},
    {"stagger", "FILE --bars A-B", "let players who end together leave one after another",
     "The players whose last notes in these bars end together, before silence, leave on beats or half beats: "
     "double\n"
     "reeds and trumpets first, then the other brass, flutes and others, clarinets and strings last. Among "
     "equals the\n"
     "harmony stays whole as long as it can. Hairpins end with their notes. --why names the last one of each "
     "note.\n\n"
     "  --order A,B,...     instruments or families, first to last: oboe,brass,strings\n"
     "  --bars A-B          the bars of the last notes (8-12, or 8:3-9:1 with beats)\n"
     "  --staff NAME        instrument name, short name, context id or variable; /.../ is a pattern\n"
     "  --lines A-B         only what is written on these lines of FILE\n"
     "  --everywhere        where a note is written once and heard in several places, change all of them\n"
     "  --copy              there, give the chosen place a copy of the variable of its own\n"
     "  --include FOLDER    look for included files here, too; may be given several times\n"
     "  --file-name NAME    with -: the name of what standard input holds, for its includes\n"
     "  --why               say who leaves when, and who is the last with each note\n"
     "  --write             change the files; otherwise a unified diff is printed\n\n"
     "example: stavewright stagger corpus/1m1-first-light/score.ly --bars 24 --why\n",
     sw_command_stagger},
    {"syntax", "PATH...", "print bytes, nodes and the places that can't be parsed",
     "PATH is a file, a folder (all .ly and .ily files below it) or - (standard input).\n\n"
     "example: stavewright syntax corpus\n",
     sw_command_syntax},
};

enum { SUBCOMMANDS = sizeof subcommands / sizeof subcommands[0] };

static void print_usage(FILE *out)
{
    fputs("usage: stavewright COMMAND [OPTIONS] ...\n\n", out);
    for (size_t i = 0; i < SUBCOMMANDS; i++) {
        fprintf(out, "  %-9s %-17s %s\n", subcommands[i].name, subcommands[i].arguments,
                subcommands[i].summary);
    }
    fputs("\nstavewright help COMMAND shows its options. Exit status: 0 clean, 1 findings, 2 bad use or "
          "input.\n",
          out);
}

static const sw_subcommand *find(const char *name)
{
    for (size_t i = 0; i < SUBCOMMANDS; i++) {
        if (strcmp(name, subcommands[i].name) == 0) {
            return &subcommands[i];
        }
    }
    return NULL;
}

static int say_unknown(const char *name)
{
    const char *names[SUBCOMMANDS];
    for (size_t i = 0; i < SUBCOMMANDS; i++) {
        names[i] = subcommands[i].name;
    }
    fprintf(stderr, "stavewright: there is no command \"%s\"; %s\n", name,
            sw_say_nearest(name, names, SUBCOMMANDS, "stavewright help lists them"));
    return SW_EXIT_BAD;
}

static int help(const char *name)
{
    const sw_subcommand *command = name == NULL ? NULL : find(name);
    if (name != NULL && command == NULL) {
        return say_unknown(name);
    }
    if (command == NULL) {
        print_usage(stdout);
    } else {
        printf("usage: stavewright %s %s\n\n%s\n\n%s", command->name, command->arguments, command->summary,
               command->help);
    }
    return SW_EXIT_CLEAN;
}

static void say_recovery(void *context, const char *sentence)
{
    (void)context;
    fprintf(stderr, "stavewright: %s\n", sentence);
}

int sw_app(int count, char **arguments)
{
    int status;
    sw_recovery_use(say_recovery, NULL);
    if (count < 2) {
        print_usage(stderr);
        return SW_EXIT_BAD;
    }
    const char *first = arguments[1];
    if (strcmp(first, "--version") == 0) {
        puts("stavewright " SW_VERSION);
        status = SW_EXIT_CLEAN;
    } else if (strcmp(first, "help") == 0 || strcmp(first, "--help") == 0 || strcmp(first, "-h") == 0) {
        status = help(count > 2 ? arguments[2] : NULL);
    } else {
        const sw_subcommand *command = find(first);
        if (command == NULL) {
            return say_unknown(first);
        }
        if (count > 2 && (strcmp(arguments[2], "--help") == 0 || strcmp(arguments[2], "-h") == 0)) {
            status = help(command->name);
        } else {
            status = command->run(count - 2, arguments + 2);
        }
    }
    /* A write can have failed long before the last flush. */
    bool failed = ferror(stdout) != 0;
    errno = 0;
    failed |= fflush(stdout) != 0;
    if (failed) {
        fprintf(stderr, "stavewright: the output can't be written: %s\n",
                errno != 0 ? strerror(errno) : "the disk is full, or the reader is gone");
        return SW_EXIT_BAD;
    }
    return status;
}
