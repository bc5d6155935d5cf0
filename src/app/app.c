/* The command line: finds the subcommand, and shows help. */
#include <errno.h>
#include <pthread.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

#include "app/app.h"
#include "app/commands.h"
#include "app/words.h"
#include "stavewright/source.h"

static const sw_subcommand subcommands[] = {
    {"bars", "FILE...", "lay the music out: one bar a line, with bar check and bar number",
     "Only white space, bar checks and comments that are bar numbers change; nothing else that is written "
     "or\n"
     "heard does. Line breaks inside of a bar, other comments, lyrics, markup and Scheme stay. - is standard "
     "input,\n"
     "and the whole result is printed then, as an editor's filter needs it. A folder stands for all sources "
     "below\n"
     "it, no FILE for those of the film around the working folder.\n\n"
     "example: stavewright bars corpus/1m1-first-light/brass.ily\n",
     sw_command_bars},
    {"breaths", "FILE", "mark where winds and singers breathe",
     "How long a breath lasts follows from the instrument, loudness, register and tempo (the rule breath). "
     "The places\n"
     "are the best of all: at the ends of slurs and phrases, behind long notes, at bar lines, before leaps; "
     "hardly\n"
     "within a slur, a beat or a word, never in a tie; and where another player holds the same note, not "
     "together.\n"
     "Where a rest or breath mark serves, nothing is written. What has no place for a breath is told.\n\n"
     "example: stavewright breaths corpus/1m1-first-light/score.ly --why\n",
     sw_command_breaths},
    {"changed", "[REV [REV]] [PATH...]", "list what has changed in the music, staff by staff and bar by bar",
     "As a copyist needs it for the parts: notes, rhythm, dynamics, articulations, texts, lyrics, key, "
     "metre, "
     "tempo,\n"
     "marks and repeats; bars, staves, scores and cues that came in or went. What only looks otherwise is "
     "left "
     "out, and\n"
     "what is only written otherwise: through a variable, in another note language.\n\n"
     "REV is a git revision: one is compared with the files as they are now (without any, the last commit), "
     "two with\n"
     "each other; where a word could be a path as well, -- stands behind the revisions. Or two files or "
     "folders, the old\n"
     "and the new one. Bars that came in or went do not make all that follows another. Bar numbers are those "
     "of the new\n"
     "version; of what is gone, those of the old one. Exit status 1 when something has changed.\n\n"
     "example: stavewright changed corpus/1m1-first-light/score.ly corpus/1m2-across-the-flats/score.ly\n",
     sw_command_changed},
    {"check", "PATH...", "look for what can't be played, won't sound or doesn't add up",
     "PATH is a file, a folder (all .ly and .ily files below it) or - (standard input); no PATH is the film "
     "around\n"
     "the working folder. A file that another one includes is read as part of it. stavewright explain RULE "
     "says what a\n"
     "rule is about, stavewright rules lists them.\n\n"
     "In git: --staged checks the scores that staged changes touch, through whatever they include, as they "
     "are "
     "staged;\n"
     "--since REV those that have changed since a commit.\n\n"
     "Accepted findings: with --baseline FILE only what FILE does not list is told. They are known by rule, "
     "file,\n"
     "staff, place in the bar and what is played there, so they stay accepted when lines and bars come in or "
     "go\n"
     "elsewhere. What is listed and no longer found is counted, and is no reason to fail.\n\n"
     "example: stavewright check --not-rules staff-length corpus/1m1-first-light "
     "corpus/1m2-across-the-flats\n",
     sw_command_check},
    {"completion", "SHELL", "print what makes a shell complete commands, options and rules",
     "SHELL is bash or zsh. For bash, put this into ~/.bashrc: eval \"$(stavewright completion bash)\"\n"
     "For zsh, into ~/.zshrc behind compinit: eval \"$(stavewright completion zsh)\"\n\n"
     "example: stavewright completion bash\n",
     sw_command_completion},
    {"courtesy", "FILE", "make room before a change: arco to pizz., mutes, sticks",
     "Where players have too little time to change (the rule prep-time), the note before ends a little "
     "earlier: by\n"
     "the smallest value that gives the seconds needed, at most half of it. Players of a family that hold "
     "the same\n"
     "note let go together. What is left alone, and why, is told.\n\n"
     "example: stavewright courtesy corpus/1m2-across-the-flats/score.ly --only pizzicato --why\n",
     sw_command_courtesy},
    {"cue", "FILE --staff NAME", "make a passage small optional notes, or full notes again",
     "The notes stay where they are, in small print, with a name over the first one, so that the composer "
     "can\n"
     "decide. --undo takes it back, to the last byte.\n\n"
     "example: stavewright cue corpus/1m1-first-light/score.ly --staff oboe1 --bars 8 --name Flute\n",
     sw_command_cue},
    {"cut", "FILE --bars A-B", "take whole bars out of all staves and parts",
     "Bars go from each line of the score and of the scores that share it: staves, parts, dynamics, words. "
     "Clefs, "
     "keys and\n"
     "tempos in them stay for what follows; slurs and hairpins that lose one end get another at the nearest "
     "note. What "
     "is\n"
     "written once and heard in several places is refused, with its place.\n\n"
     "example: stavewright cut corpus/1m2-across-the-flats/score.ly --bars 9-10\n",
     sw_command_cut},
    {"divisi", "FILE --staff NAME", "divide a section's chords among its players",
     "Who takes which note is computed over each passage: least movement, no crossing, ties kept, nobody\n"
     "beyond the compass or in a high position without need, the players of stavewright.yaml as even as may\n"
     "be, the outer parts doubled first; --why says at which desks they sit. --way chords writes where the\n"
     "division begins and ends (div., div. a 3, unis.; winds: a 2, 1.), --way voices writes two voices on "
     "the\n"
     "staff, --way staves a staff a part; what stands under \"non div.\" stays. With --tremolo-half both\n"
     "halves have all notes, the upper voice with tremolo strokes.\n\n"
     "example: stavewright divisi corpus/1m3-the-crossing/score.ly --staff viola --bars 1-4 --why\n",
     sw_command_divisi},
    {"double", "FILE --from NAME --to NAME", "copy a line to another staff",
     "The line goes into the target's rests, as its instrument is written, in the nearest octave that it "
     "has.\n\n"
     "example: stavewright double corpus/1m1-first-light/score.ly --from oboe1 --to flute1 --bars 8\n",
     sw_command_double},
    {"explain", "[RULE...]", "say what a rule looks for, why, and how to mend it",
     "Without RULE: lists the rules. The name of an instrument shows its figures and their source.\n\n"
     "example: stavewright explain range horn\n",
     sw_command_explain},
    {"events", "FILE", "print what the score says: one tab-separated row a note or rest",
     "Columns: score onset grace duration kind pitch staff voice file line column\n"
     "Onset and duration are exact fractions of a whole note; pitch is name, octave and quarter tones (c0/0 "
     "is\n"
     "middle C). A last column `uncertain` stands on rows inside a call whose effect on the notes is not "
     "known.\n"
     "A folder, or nothing, stands for the only score in it or in the film around the working folder.\n\n"
     "example: stavewright events corpus/1m1-first-light/score.ly | grep harp1\n",
     sw_command_events},
    {"give", "FILE --from NAME --to NAME", "move a line to another staff",
     "The line goes into the target's rests, as its instrument is written, in the nearest octave that it "
     "has.\n\n"
     "example: stavewright give corpus/1m1-first-light/score.ly --from oboe1 --to flute1 --bars 8\n",
     sw_command_give},
    {"hands", "FILE --staff NAME", "split one staff between right and left hand",
     "The split is the best one by stated costs: fingers, spans, time to move, lines and glissandi kept in "
     "one hand.\n"
     "What no hands can play is told with the bar, the reason and the nearest voicing that they can. Harp,\n"
     "keyboards, and marimba, vibraphone and xylophone with two or four mallets.\n\n"
     "example: stavewright hands corpus/1m1-first-light/score.ly --staff harp1\n",
     sw_command_hands},
    {"hook", "install | remove", "check what is staged before each commit, as a git hook",
     "Writes the pre-commit hook of the repository that holds the working folder, where git looks for it\n"
     "(core.hooksPath, worktrees); it runs stavewright check --staged. A hook that is there already is never "
     "changed:\n"
     "the line to add to it is told. remove takes out only what install has written.\n\n"
     "example: stavewright hook install\n",
     sw_command_hook},
    {"insert", "FILE --bars N [--count N]", "put empty bars into all staves and parts",
     "Empty bars come in before the bar, as long as the one before it, in each line of the score and of the "
     "scores "
     "that\n"
     "share it, written as its neighbours are.\n\n"
     "example: stavewright insert corpus/1m2-across-the-flats/score.ly --bars 9 --count 2\n",
     sw_command_insert},
    {"manual", "", "print the manual page, for man -l -",
     "It is made from the same tables as these help texts; make install puts it where man finds it.\n\n"
     "example: stavewright manual\n",
     sw_command_manual},
    {"music", "FILE", "print one file's music as text, bar by bar, for git's diff",
     "One line a bar a staff: pitches, rhythm, dynamics, marks, texts and words; no looks. FILE is read by "
     "itself,\n"
     "without what it includes, as git shows it to a textconv driver, so that each change is shown once, in "
     "the file\n"
     "where it was made. Music of variables that no score in FILE plays is printed variable by variable, "
     "line "
     "by line\n"
     "without numbers. Note names come out alike in every note language: c#'4 is C sharp 4, a quarter. Exit "
     "status 0\n"
     "for whatever can be opened.\n\n"
     "  echo '*.ly diff=music' >>.gitattributes    # the same for *.ily\n"
     "  git config diff.music.textconv 'stavewright music'\n"
     "  git config diff.music.xfuncname '^bar .*'\n\n"
     "example: stavewright music corpus/1m1-first-light/strings.ily\n",
     sw_command_music},
    {"octave", "FILE --by N", "shift notes by octaves, or fit lines into a range",
     "FILE is a score or a file that scores include; - is standard input, and the whole result is printed "
     "then,\n"
     "as an editor's filter needs it. One of --by, --into, --between and --ottava says what to do.\n\n"
     "A line changes its octave best behind a rest, where a phrase begins, behind a long note or on a "
     "repeated one;\n"
     "hardly within a slur, a beat or a scale. Chords, ties and grace notes stay together. What fits nowhere "
     "is\n"
     "reported.\n\n"
     "examples: stavewright octave corpus/1m1-first-light/score.ly --staff flute1 --bars 8-9 --by 1\n"
     "          stavewright octave corpus/1m1-first-light/score.ly --staff flute1 --into oboe --fold --why\n",
     sw_command_octave},
    {"outline", "PATH...", "print staves, instruments, bars, metre, keys, tempos and the duration",
     "PATH is a file, a folder (all scores below it) or - (standard input); no PATH is the film around the "
     "working\n"
     "folder.\n\n"
     "example: stavewright outline corpus/1m1-first-light/score.ly\n",
     sw_command_outline},
    {"players", "PATH...", "print what each player has to play, over all cues",
     "One row a chair of stavewright.yaml, or, without one, a player that the staves speak of: instruments, "
     "cues with\n"
     "notes, bars and minutes with notes, lowest and highest sounding note, the shortest time for each "
     "change of\n"
     "instrument, mutes and percussion to bring. Full scores are counted; parts and sketches of the same "
     "music are\n"
     "not. A note sounds as \\transposition says; where nothing does, it is shown as it is written.\n\n"
     "example: stavewright players corpus\n",
     sw_command_players},
    {"ring", "FILE", "let notes ring: harp, mallets, piano, pizzicato",
     "Notes before rests that go on sounding by themselves get a tie into nothing, and short ones a value "
     "that shows\n"
     "it; where every note of a staff would, one text says so. What is staccato or damped, or ended by a "
     "change of\n"
     "pedals, stays.\n\n"
     "example: stavewright ring corpus/1m1-first-light/score.ly --staff harp1 --why\n",
     sw_command_ring},
    {"roster", "init [PATH...]", "write a first list of who plays, from the scores",
     "Prints a stavewright.yaml with a chair for each player that the staves of the scores below PATH (the "
     "film\n"
     "around the working folder) speak of: name, instrument, number, the percussion that is struck. Go "
     "through it,\n"
     "add who doubles what, and put it at the top of the film's folder; stavewright check finds it there.\n\n"
     "example: stavewright roster init corpus\n",
     sw_command_roster},
    {"rules", "", "list the rules of check with their gravity",
     "Behind each name: the gravest that it gives, and what it looks for. stavewright.yaml can set all of "
     "them.\n\n"
     "example: stavewright rules\n",
     sw_command_rules},
    {"run", "RECIPE [PATH...]", "run a recipe of transformations over a whole film, as one change",
     "RECIPE is a YAML file with steps: what to do, where, and the options of the transformation. PATHs are "
     "files and\n"
     "folders; none is the film around the working folder. Each cue's full score is changed, and what shares "
     "its\n"
     "music along with it. Each step reads what the ones before have left, and is proved. A unified diff of "
     "all is\n"
     "printed, or, with --write, all files are written, or none. A table says what changed in each cue.\n\n"
     "  steps:\n"
     "    - do: courtesy            # the name of a transformation\n"
     "      only: pizzicato         # its options, without the dashes\n"
     "      where: prep-time        # only bars and staves in which this rule reports something\n"
     "    - do: octave\n"
     "      cues: [1m1, /^2m/]      # files whose path holds this; a pattern stands between slashes\n"
     "      staff: /flute/          # each staff that is called so\n"
     "      instrument: piccolo     # or each staff of an instrument (explain lists them; or a pattern)\n"
     "      bars: 8-12\n"
     "      by: 1\n\n"
     "example: stavewright run corpus/before-the-session.yaml corpus\n",
     sw_command_run},
    {"stagger", "FILE --bars A-B", "let players who end together leave one after another",
     "The players whose last notes in these bars end together, before silence, leave on beats or half beats: "
     "double\n"
     "reeds and trumpets first, then the other brass, flutes and others, clarinets and strings last. Among "
     "equals the\n"
     "harmony stays whole as long as it can. Hairpins end with their notes. --why names the last one of each "
     "note.\n\n"
     "example: stavewright stagger corpus/1m1-first-light/score.ly --bars 24 --why\n",
     sw_command_stagger},
    {"syntax", "PATH...", "print bytes, nodes and the places that can't be parsed",
     "PATH is a file, a folder (all .ly and .ily files below it) or - (standard input); no PATH is the film "
     "around\n"
     "the working folder.\n\n"
     "example: stavewright syntax corpus\n",
     sw_command_syntax},
    {"unite", "FILE", "make one of two voices in one rhythm",
     "Two voices that stand side by side become one where they have the same values and are marked alike; "
     "\"div.\" and\n"
     "\"unis.\" at their edges go along. Voices that differ are told and stay.\n\n"
     "example: stavewright unite corpus/1m1-first-light/score.ly --staff viola\n",
     sw_command_unite},
};

enum { SUBCOMMANDS = sizeof subcommands / sizeof subcommands[0] };

size_t sw_subcommand_count(void)
{
    return SUBCOMMANDS;
}

const sw_subcommand *sw_subcommand_get(size_t i)
{
    return &subcommands[i];
}

size_t sw_subcommand_text(const sw_subcommand *command)
{
    const char *example = strstr(command->help, "\n\nexample");
    return example == NULL ? strlen(command->help) : (size_t)(example - command->help) + 1;
}

static void print_usage(FILE *out)
{
    fputs("usage: stavewright COMMAND [OPTIONS] ...\n\n", out);
    for (size_t i = 0; i < SUBCOMMANDS; i++) {
        fprintf(out, "  %-10s %-30s %s\n", subcommands[i].name, subcommands[i].arguments,
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
    char text[SW_NEAREST_TEXT];
    fprintf(stderr, "stavewright: there is no command \"%s\"; %s\n", name,
            sw_say_nearest(name, names, SUBCOMMANDS, "stavewright help lists them", text));
    return SW_EXIT_BAD;
}

static void print_help(const sw_subcommand *command)
{
    size_t text = sw_subcommand_text(command);
    sw_buffer options = {0};
    sw_options_print(command->name, &options);
    printf("usage: stavewright %s%s%s\n\n%s\n\n%.*s%s%s%s", command->name,
           command->arguments[0] == '\0' ? "" : " ", command->arguments, command->summary, (int)text,
           command->help, options.length > 0 ? "\n" : "", sw_buffer_text(&options), command->help + text);
    sw_buffer_free(&options);
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
        print_help(command);
    }
    return SW_EXIT_CLEAN;
}

/* Whether somebody asks for help, anywhere before "--". */
static bool asks_for_help(int count, char **words)
{
    for (int i = 0; i < count && strcmp(words[i], "--") != 0; i++) {
        if (strcmp(words[i], "--help") == 0 || strcmp(words[i], "-h") == 0) {
            return true;
        }
    }
    return false;
}

/* What can't be settled is met again with each file of its folder, and is said once. */
static void say_recovery(void *context, const char *sentence)
{
    static pthread_mutex_t guard = PTHREAD_MUTEX_INITIALIZER; /* any thread may tell */
    static char last[1000];
    (void)context;
    pthread_mutex_lock(&guard);
    if (strncmp(sentence, last, sizeof last - 1) != 0) {
        fprintf(stderr, "stavewright: %s\n", sentence);
        snprintf(last, sizeof last, "%s", sentence);
    }
    pthread_mutex_unlock(&guard);
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
        if (asks_for_help(count - 2, arguments + 2)) {
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
