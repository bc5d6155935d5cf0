#include "app/options.h"

#include <string.h>

#define MOVES "breaths courtesy cue divisi double give octave ring stagger unite"
#define WHOLE_BARS "cut insert"

static const sw_option options[] = {
    /* what only one command has */
    {"--rules", "RULES", NULL, "check", "only these rules, with commas between"},
    {"--not-rules", "RULES", NULL, "check", "all rules but these"},
    {"--staged", NULL, NULL, "check",
     "what is staged in git, as it is staged, with its includes: the scores that\nstaged changes touch; "
     "PATHs narrow it down"},
    {"--since", "REV", NULL, "check",
     "the scores that changes since this revision touch, as the files are now; with\n--staged as they are "
     "staged"},
    {"--fix", "[=all]", NULL, "check",
     "mend what can be mended with sound and meaning as they are: house spellings, a\nmissing arco, a bar "
     "check at the wrong note. Each change is proved, then the\nfindings left are printed. --fix=all: also "
     "what changes the playing: shorter\nnotes before a change (prep-time)"},
    {"--diff", NULL, NULL, "check", "with --fix: print the changes as a unified diff, and write nothing"},
    {"--format", "FORM", "text gcc json sarif github", "check",
     "text for people; gcc, json, sarif (2.1.0) and github (annotations) for\nprograms"},
    {"--baseline", "FILE", NULL, "check", "leave out what this file lists as accepted"},
    {"--baseline-write", NULL, NULL, "check",
     "write what is found into that file: from now on it is accepted. Entries of\nfiles and rules that were "
     "not "
     "checked stay"},
    {"--lyrics", NULL, NULL, "events",
     "instead of notes the sung syllables, verse by verse. Columns: score onset grace\nduration bar beat "
     "syllable "
     "staff voice verse line-id file line column. The\nduration holds the whole melisma; staff and voice are "
     "- for "
     "syllables with a\nlength of their own"},
    {"--by", "N", NULL, "octave", "so many octaves up, or down with -N"},
    {"--into", "INSTRUMENT", NULL, "octave",
     "into its compass (explain INSTRUMENT shows it), as it sounds, best into the\nmiddle"},
    {"--between", "\"LOW HIGH\"", NULL, "octave",
     "between two written pitches: \"c' g'''\" in the source's note language, or\n\"C4 G6\""},
    {"--ottava", "WHAT", "add remove", "octave",
     "add writes 8va brackets (15ma, 8vb ...) over what lies too high, remove takes\nthem out"},
    {"--fold", NULL, NULL, "octave",
     "with --into and --between: only what lies outside, and what a smooth line needs"},
    {"--ledgers", "N", NULL, "octave",
     "with --ottava add: too high is what has more ledger lines than N (4)"},
    {"--only", "KIND", "pizzicato mutes hand sticks snares", "courtesy",
     "only pizzicato, mutes, hand, sticks or snares"},
    {"--value", "V", NULL, "courtesy",
     "take off just so much, as a score writes it: 8 is an eighth, 4. a dotted quarter"},
    {"--melody", NULL, NULL, "courtesy", "shorten the notes that end the melody, too"},
    {"--check", NULL, NULL, "bars",
     "change nothing: name the files that are not laid out so, with exit status 1"},
    {"--format", "FORM", "text tsv json", "changed players", "text (the usual one), tsv or json"},
    {"--from", "NAME", NULL, "double give",
     "instrument name, short name, context id or variable; /.../ is a pattern"},
    {"--to", "NAME", NULL, "double give", "the same, of the staff that gets the line"},
    {"--share", "\"NAME, NAME\"", NULL, "double give",
     "several of them: the run is handed from one to the next, each in its best\nregister, with one note in "
     "common"},
    {"--name", "NAME", NULL, "cue", "whose line it is; without it the staff's own name"},
    {"--undo", NULL, NULL, "cue", "full notes again"},
    {"--over", NULL, NULL, "double give",
     "the target's own notes in the passage go; without it they are a finding"},
    {"--order", "A,B,...", NULL, "stagger", "instruments or families, first to last: oboe,brass,strings"},
    {"--rest", "1/8", NULL, "breaths",
     "end the note before by an eighth earlier (1/4, 1/16 ...) instead of a breath mark;\nnot in slurs"},
    {"--parts", "N", NULL, "divisi", "in so many parts; without it as many as the largest chord has notes"},
    {"--single", "WHO", "all one", "divisi",
     "who of the winds plays single notes behind a chord: \"a 2\" or \"1.\"; without\nit whom the staff "
     "named last, otherwise all"},
    {"--tremolo-half", NULL, NULL, "divisi",
     "instead, all notes in two voices: half of the section tremolo, half plain"},
    {"--way", "WAY", "chords voices staves", "divisi",
     "chords with \"div.\" and \"unis.\" (the usual one), two voices on the staff,\nor a staff a part"},
    {"--instrument", "NAME", "harp piano celesta organ marimba vibraphone xylophone", "hands",
     "harp, piano, marimba ..., where the staff's name does not say it"},
    {"--span", "N", NULL, "hands", "widest interval of one hand (10 = a tenth)"},
    {"--fingers", "N", NULL, "hands", "fingers of one hand"},
    {"--mallets", "N", "2 4", "hands",
     "2 or 4 mallets in both hands together (marimba, vibraphone, xylophone)"},
    {"--roll", NULL, NULL, "hands",
     "roll chords that are too wide for the hands: they get \\arpeggio. What is marked\nso may be wide "
     "anyhow"},
    {"--change-staff", NULL, NULL, "hands",
     "leave the music in one piece: \\change Staff takes it from staff to staff, where\nwithout it each hand "
     "gets "
     "music of its own"},
    {"--crossing", NULL, NULL, "hands",
     "the left hand may lie over the right at one moment, too; without it only one\nafter the other"},
    {"--pedal", NULL, NULL, "hands",
     "the pedal holds what still sounds (piano, celesta): a hand may leave its bass and leap to the chord; "
     "without\nit a finger stays on every key"},
    {"--keep-going", NULL, NULL, "run",
     "leave a cue in which a step is refused as it is, and do the others; without it\nnothing is changed "
     "then"},
    {"--to", "FOLDER", NULL, "roster", "with --write: into this folder instead of the working folder"},
    /* where */
    {"--staff", "NAME", NULL, "breaths courtesy cue divisi hands octave ring stagger unite",
     "instrument name, short name, context id or variable; /.../ is a pattern"},
    {"--bars", "A-B", NULL, MOVES " hands", "only these bars (8-12, or 8:3-9:1 with beats)"},
    {"--bars", "A-B", NULL, "cut", "these bars go"},
    {"--bars", "N", NULL, "insert", "before this bar"},
    {"--count", "N", NULL, "insert", "so many bars (1)"},
    {"--lines", "A-B", NULL, MOVES, "only what is written on these lines of FILE"},
    {"--lines", "A-B", NULL, "bars", "only the bars that end on these lines of FILE"},
    {"--everywhere", NULL, NULL, MOVES,
     "where a note is written once and heard in several places, change all of them"},
    {"--copy", NULL, NULL, MOVES, "there, give the chosen place a copy of the variable of its own"},
    /* from where */
    {"--include", "FOLDER", NULL, MOVES " " WHOLE_BARS " bars changed check events hands outline players run",
     "look for included files here, too; may be given several times"},
    {"--file-name", "NAME", NULL, MOVES " " WHOLE_BARS " bars hands",
     "with -: the name of what standard input holds, for its includes"},
    {"--file-name", "NAME", NULL, "check",
     "with -: the name of what standard input holds, for its includes and the output"},
    /* what is told and done */
    {"--why", NULL, NULL, "breaths", "say where, after how many seconds, and why there"},
    {"--why", NULL, NULL, "courtesy cue cut double give insert ring run stagger unite", "say what was done"},
    {"--why", NULL, NULL, "divisi", "say who takes what"},
    {"--why", NULL, NULL, "hands", "say what was chosen and why"},
    {"--why", NULL, NULL, "octave", "say what was done, and why each line changes its octave where it does"},
    {"--write", NULL, NULL, MOVES " " WHOLE_BARS " bars hands run",
     "change the files; otherwise a unified diff is printed"},
    {"--write", NULL, NULL, "roster", "write the file stavewright.yaml; an existing one is never changed"},
    {"--diff", NULL, NULL, MOVES " " WHOLE_BARS " bars hands run",
     "print a unified diff, as it is without --write"},
    {"--quiet", NULL, NULL, "check", "no line of progress on a terminal, and no summary"},
    {"--quiet", NULL, NULL, "bars outline players run", "no line of progress on a terminal"},
};

enum { OPTIONS = sizeof options / sizeof options[0], INDENT = 22 /* of the texts behind the names */ };

static bool is_among(const char *word, const char *words)
{
    size_t length = strlen(word);
    for (const char *at = words; *at != '\0';) {
        size_t next = strcspn(at, " ");
        if (next == length && strncmp(at, word, length) == 0) {
            return true;
        }
        at += next + (at[next] == ' ');
    }
    return false;
}

bool sw_option_is_flag(const sw_option *option)
{
    return option->value == NULL || option->value[0] == '[';
}

const sw_option *sw_option_next(const char *command, const sw_option *before)
{
    for (size_t i = before == NULL ? 0 : (size_t)(before - options) + 1; i < OPTIONS; i++) {
        if (is_among(command, options[i].commands)) {
            return &options[i];
        }
    }
    return NULL;
}

const sw_option *sw_option_find(const char *command, sw_slice name)
{
    const sw_option *option = sw_option_next(command, NULL);
    while (option != NULL && !sw_slice_is(name, option->name)) {
        option = sw_option_next(command, option);
    }
    return option;
}

void sw_options_print(const char *command, sw_buffer *result)
{
    for (const sw_option *o = sw_option_next(command, NULL); o != NULL; o = sw_option_next(command, o)) {
        size_t start = result->length;
        sw_buffer_format(result, "  %s%s%s", o->name, o->value == NULL || sw_option_is_flag(o) ? "" : " ",
                         o->value == NULL ? "" : o->value);
        for (const char *line = o->help; line != NULL;) {
            size_t length = strcspn(line, "\n");
            size_t used = result->length - start;
            sw_buffer_format(result, "%*s%.*s\n", used < INDENT - 1 ? (int)(INDENT - used) : 1, "",
                             (int)length, line);
            start = result->length;
            line = line[length] == '\n' ? line + length + 1 : NULL;
        }
    }
}
