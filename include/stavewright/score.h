/* The abstract tree of a score: what is written, and what is heard when it is played.
 *
 * Two levels. The *music* is what the sources say: one node (sw_music) for each note, rest, block or command,
 * in the order of the text, with pitches and durations as they are in force there (relative octaves and
 * inherited durations resolved). A *score* is what that music sounds like: staves, voices and events
 * (sw_event) in time, each with its origin: the written node and the chain of frames through which it was
 * read (this use of that variable, transposed, in that tuplet, in the second pass of that repeat). One
 * written note can be the origin of several events. */
#ifndef STAVEWRIGHT_SCORE_H
#define STAVEWRIGHT_SCORE_H

#include <stdbool.h>
#include <stdint.h>

#include "stavewright/base.h"
#include "stavewright/duration.h"
#include "stavewright/finding.h"
#include "stavewright/pitch.h"
#include "stavewright/rational.h"
#include "stavewright/source.h"
#include "stavewright/syntax.h"

enum { SW_NONE = -1 };
#define SW_NO_INDEX UINT32_MAX /* 'there is none', in every field that holds an index */

/* ---- music: what is written ---- */

typedef enum sw_music_kind {
    SW_MUSIC_EMPTY,
    /* with a length of their own */
    SW_MUSIC_NOTE,
    SW_MUSIC_DRUM,
    SW_MUSIC_REST,
    SW_MUSIC_FULL_REST,    /* R */
    SW_MUSIC_SKIP,         /* s, \skip */
    SW_MUSIC_CHORD,        /* children: NOTE or DRUM */
    SW_MUSIC_REPEAT_CHORD, /* q */
    SW_MUSIC_BARE,         /* a duration alone: the note or chord before it again; without one a stroke of no
                              pitch, the drum "()" */
    SW_MUSIC_LYRIC,        /* a syllable: name = its plain text; also a group of figures, without one */
    /* compounds */
    SW_MUSIC_SEQUENCE,
    SW_MUSIC_SIMULTANEOUS,
    SW_MUSIC_CONTEXT, /* \new, \context: name = type, name2 = id; its \with blocks: see sw_music_with */
    SW_MUSIC_CHANGE,  /* \change: name = type, name2 = id */
    SW_MUSIC_SCALE,   /* tuplets, \scaleDurations: num/den = factor */
    SW_MUSIC_GRACE,
    SW_MUSIC_AFTER_GRACE, /* children: main, graces; num/den = fraction of the main note */
    SW_MUSIC_REPEAT,      /* name = kind, num = times; children: body, then ALTERNATIVES */
    SW_MUSIC_ALTERNATIVES,
    SW_MUSIC_VOLTA,        /* \volta: list = passes; child. \unfolded: flag SW_MUSIC_NEW, all passes */
    SW_MUSIC_UNFOLD,       /* \unfoldRepeats: list = kinds of repeats, 0: all */
    SW_MUSIC_TRANSPOSE,    /* pitch = interval */
    SW_MUSIC_RELATIVE,     /* \relative: the pitches below are resolved */
    SW_MUSIC_FIXED,        /* \fixed, \absolute */
    SW_MUSIC_REFERENCE,    /* use of a variable: name; child is the variable's own music, shared */
    SW_MUSIC_TAG,          /* list = tags; child */
    SW_MUSIC_KEEP,         /* \keepWithTag: list = tags; child */
    SW_MUSIC_DROP,         /* \removeWithTag */
    SW_MUSIC_PART_COMBINE, /* children: two parts */
    SW_MUSIC_QUOTE,        /* \quoteDuring: name = quoted music; child gives the length */
    SW_MUSIC_CUE,          /* \cueDuring: the same in a voice of its own */
    SW_MUSIC_KILL_CUES,    /* \killCues: no cues below */
    SW_MUSIC_AUTO_CHANGE,  /* staves "up" and "down" by pitch */
    SW_MUSIC_ADD_LYRICS, /* \lyricsto: name = voice, child; with flag SW_MUSIC_NEW \addlyrics: belongs to the
                            music before it */
    SW_MUSIC_SPAN,       /* \skip { ... }: silence as long as the music `reference` */
    SW_MUSIC_CALL,       /* a call that leaves the notes in its argument as they are: \crossStaff { ... };
                            flag SW_MUSIC_AS_REST: they are not heard (clusters) */
    SW_MUSIC_UNCERTAIN,  /* children: the music inside a call whose effect is not known; flag SW_MUSIC_NEW: it
                            is known, and the notes below are its result: not as the text has them */
    /* without length */
    SW_MUSIC_BAR_CHECK,
    SW_MUSIC_MARK,    /* belongs to a note: articulation, dynamic, slur end, text ... */
    SW_MUSIC_KEY,     /* pitch = tonic; name = mode */
    SW_MUSIC_CLEF,    /* name */
    SW_MUSIC_TIME,    /* num/den */
    SW_MUSIC_PARTIAL, /* duration */
    SW_MUSIC_TEMPO,   /* duration = beat, name = text (0: none), name2 = beats a minute * 1000 (0: none) */
    SW_MUSIC_CADENZA, /* num = 1 on, 0 off */
    SW_MUSIC_TRANSPOSITION, /* pitch */
    SW_MUSIC_SET, /* \set, \override and the like: name = property path, name2 = the value as plain text */
    SW_MUSIC_OCTAVE_CHECK, /* \resetRelativeOctave, with flag SW_MUSIC_CHECKED \octaveCheck: pitch */
    SW_MUSIC_SETTING,      /* every other command without length: see sw_label */
    SW_MUSIC_WITH /* the \with blocks of a context, no child of any music: name = its type, name2 = its id;
                     children: SET and SETTING with the flag SW_MUSIC_NEW, in the order of the text */
} sw_music_kind;

enum {                                   /* sw_music.flags */
       SW_MUSIC_PITCHED = 1 << 0,        /* has a pitch */
       SW_MUSIC_WRITTEN_VALUE = 1 << 1,  /* the duration stands in the text; otherwise it is inherited */
       SW_MUSIC_AS_REST = 1 << 2,        /* a note made a rest by \rest */
       SW_MUSIC_NEW = 1 << 3,            /* CONTEXT: \new, not \context; SET, SETTING: of a \with block */
       SW_MUSIC_CHECKED = 1 << 4,        /* NOTE: octave check (= mark) in `reference` sense: see `check` */
       SW_MUSIC_RELATIVE_ENTRY = 1 << 5, /* NOTE: the octave is written relative to the note `reference` */
       SW_MUSIC_FREE = 1 << 6,           /* holds pitches that an outer \relative would resolve */
       SW_MUSIC_CHORD_MODE = 1 << 7      /* NOTE read in chord mode */
};

/* What a SETTING is that all staves can read: name = its words, num = its number, 0: the next one, -1: none.
 */
typedef enum sw_label {
    SW_LABEL_NONE,
    SW_LABEL_MARK, /* \mark */
    SW_LABEL_TEXT, /* \textMark, \sectionLabel, \jump ... */
    SW_LABEL_SEGNO,
    SW_LABEL_CODA,
    SW_LABEL_FINE,
    SW_LABEL_BAR_LINE /* \bar */
} sw_label;

typedef struct sw_music {
    uint8_t kind; /* sw_music_kind */
    uint8_t flags;
    uint16_t file;  /* index into the reading's files */
    uint32_t start; /* bytes: the item itself; what is attached to a note is in its children */
    uint32_t end;
    uint32_t first;      /* first child, or SW_NO_INDEX */
    uint32_t next;       /* next sibling, or SW_NO_INDEX */
    sw_pitch pitch;      /* of NOTE, KEY, TRANSPOSE, ... */
    int8_t octave_marks; /* NOTE: octave marks as written (0: none, 2: '', -1: ,) */
    int8_t log;          /* duration: see sw_duration */
    uint8_t dots;
    int8_t check;        /* NOTE with SW_MUSIC_CHECKED: the octave that must result; MARK: 0, or 1 and its
                            class (sw_mark_class) when that does not stand in its text; SETTING: sw_label */
    uint8_t name_length; /* NOTE: bytes of the note name at `start` */
    int32_t num;         /* duration factor, or the number that the kind names */
    int32_t den;
    union {
        uint32_t name;      /* number in the reading's names; MARK: the plain text that it says, 0: none */
        uint32_t reference; /* NOTE in \relative: the music whose pitch the octave refers to */
    };
    union {
        uint32_t name2;  /* also MARK that is a variable: the text of the mark that it stands for, 0: none */
        uint32_t list;   /* TAG, KEEP, DROP, VOLTA: number of a space-separated list in the reading's names */
        uint32_t origin; /* what has a length of its own, but no CHORD: where the compiler says it stands;
                            `\\tweak color #red c4` stands at the \\tweak */
    };
    uint16_t origin_file; /* the file of that place: a template may be written in another one than its call */
} sw_music;

/* ---- scores: what is heard ---- */

typedef enum sw_event_kind {
    SW_EVENT_NOTE,
    SW_EVENT_DRUM,
    SW_EVENT_REST,
    SW_EVENT_FULL_REST,
    SW_EVENT_SKIP /* nothing is heard, but marks can hang on it */
} sw_event_kind;

enum {                              /* sw_event.flags */
       SW_EVENT_CHORD = 1 << 0,     /* one of the notes of a chord */
       SW_EVENT_UNCERTAIN = 1 << 1, /* inside a call whose effect is not known */
       SW_EVENT_CUE = 1 << 2,       /* quoted from another part */
       SW_EVENT_GRACE = 1 << 3,
       SW_EVENT_HIDDEN = 1 << 4 /* in a context that plays no notes (chord names, null voices) */
};

typedef struct sw_event {
    sw_rational onset;    /* whole notes since the beginning of the score */
    sw_rational duration; /* as it sounds: factors and tuplets included */
    int32_t grace_num;    /* grace offset, 0/1 or negative */
    int32_t grace_den;
    uint32_t music; /* the written note or rest: index into the reading's music */
    uint32_t chord; /* the written chord (or q, bare duration) it belongs to, otherwise the same as `music` */
    uint32_t frame; /* how it was reached: index into the score's frames */
    uint32_t voice;
    sw_pitch pitch; /* after \transpose and the like; not changed by \transposition */
    uint8_t kind;   /* sw_event_kind */
    uint32_t flags;
} sw_event;

/* One step of the way from the score down to a written note. */
typedef struct sw_frame {
    uint32_t parent; /* SW_NO_INDEX at the top */
    uint32_t music;  /* REFERENCE, TRANSPOSE, SCALE, REPEAT, CUE ... */
    uint32_t pass;   /* REPEAT: which pass, from 0 */
} sw_frame;

typedef struct sw_staff {
    uint32_t type;  /* name: Staff, DrumStaff, TabStaff ... */
    uint32_t id;    /* name, 0 when there is none */
    uint32_t group; /* the closest group around it (PianoStaff, StaffGroup ...) as index into `groups`, or
                       SW_NO_INDEX */
    uint32_t instrument; /* name: instrumentName as plain text, 0 when there is none */
    uint32_t short_instrument;
    uint32_t variable; /* name of the first variable with notes used on the staff, 0 when there is none */
    uint32_t music;    /* the CONTEXT node that made it, or SW_NO_INDEX */
    uint32_t frame;    /* how that node was reached */
} sw_staff;

typedef struct sw_group {
    uint32_t type;
    uint32_t id;
    uint32_t parent; /* outer group, or SW_NO_INDEX */
    uint32_t instrument;
    uint32_t music;
} sw_group;

typedef struct sw_voice {
    uint32_t staff;
    uint32_t type; /* name of the context: Voice, DrumVoice, CueVoice ... */
    uint32_t id;   /* name, 0 when there is none */
} sw_voice;

/* Everything without length that is not attached to a note: key, clef, time, tempo, \set, \override, mark,
 * ottava, \stemUp, \break, bar check ... in the order of the music; what is not resolved further is a SETTING
 * node, whose text says what it is. What a \with block says stands at the moment when its context begins,
 * with the context's staff, and without voice unless the context is one. Marks on an empty chord `<>` too:
 * `music` is its CHORD node. Also the beginning of each alternative of a repeat that is not written out:
 * `music` is the ALTERNATIVES node then, and `frame` is the same for all alternatives of one use of the
 * repeat. */
typedef struct sw_setting {
    sw_rational onset;
    uint32_t music; /* kind and values */
    uint32_t staff; /* in whose line it is written; SW_NO_INDEX when it is outside of every staff */
    uint32_t voice; /* SW_NO_INDEX when it is outside of every voice that has notes */
    uint32_t frame;
    bool grace;        /* stands inside grace notes ... */
    int32_t grace_num; /* ... at this offset, as that of an event; 0/1 outside of them */
    int32_t grace_den;
    sw_pitch pitch;       /* of KEY, after \transpose, and of TRANSPOSITION, as it is said */
    sw_rational position; /* in the bar, as the compiler counts when it comes to this setting: 0 on a bar
                             line, negative in a short first bar; it stands still in a cadenza */
} sw_setting;

/* A bar, or what is left of it where the count jumps inside of it: where another alternative begins, at the
 * end of a cadenza, at a \partial or a \set of the position or number. So bars in sequence can have the same
 * number, and not each one begins with a bar line. */
typedef struct sw_bar {
    sw_rational start;
    sw_rational length; /* as it is; the last bar may be short */
    sw_rational metre;  /* as the time signature wants it: 3/4 -> 3/4 */
    sw_rational first;  /* position in the bar with which it begins: 0, or 3/4 for the last quarter of 4/4 */
    int32_t number;     /* as the compiler counts; a short first bar (\partial) is bar 0 */
    int32_t beats;      /* the time signature */
    int32_t beat_value;
} sw_bar;

/* A line of lyrics below or above a staff: one verse, as a rule. */
typedef struct sw_lyric_line {
    uint32_t id;    /* name of the Lyrics context, 0 when there is none */
    uint32_t music; /* the node that made it: CONTEXT or ADD_LYRICS */
} sw_lyric_line;

enum {                                /* sw_syllable.flags */
       SW_SYLLABLE_HYPHEN = 1 << 0,   /* a -- follows: the word goes on */
       SW_SYLLABLE_EXTENDER = 1 << 1, /* a __ follows */
       SW_SYLLABLE_EMPTY = 1 << 2, /* _: takes a note but sets nothing, so the syllable before it goes on */
       SW_SYLLABLE_OWN_LENGTH = 1 << 3 /* follows no voice: onset and duration are written in the lyrics */
};

/* A syllable at the moment when it is sung. */
typedef struct sw_syllable {
    sw_rational onset;
    sw_rational duration; /* up to the end of the last note of its melisma, or its own */
    int32_t grace_num;    /* grace offset, as in sw_event */
    int32_t grace_den;
    uint32_t music; /* LYRIC node: its text is what is written, its name what is printed */
    uint32_t frame;
    uint32_t line;  /* index into the score's lines of lyrics */
    uint32_t event; /* the first note that is sung on it, SW_NO_INDEX when it follows no voice */
    uint32_t voice; /* of that note, SW_NO_INDEX */
    uint32_t flags;
} sw_syllable;

/* Tempo in force from a moment on. */
typedef struct sw_tempo {
    sw_rational onset;
    double seconds;    /* since the beginning */
    double whole_note; /* seconds that a whole note lasts */
    uint32_t music;    /* the TEMPO node; SW_NO_INDEX for the assumed first tempo */
} sw_tempo;

typedef struct sw_score {
    sw_event *events; /* staff by staff, in there voice by voice, each voice in order of time */
    size_t event_count;
    size_t event_capacity;
    sw_staff *staves; /* in order of appearance */
    size_t staff_count;
    size_t staff_capacity;
    sw_voice *voices;
    size_t voice_count;
    size_t voice_capacity;
    sw_group *groups;
    size_t group_count;
    size_t group_capacity;
    sw_frame *frames;
    size_t frame_count;
    size_t frame_capacity;
    sw_setting *settings; /* in order of time */
    size_t setting_count;
    size_t setting_capacity;
    sw_bar *bars;
    size_t bar_count;
    size_t bar_capacity;
    sw_tempo *tempos; /* at least one */
    size_t tempo_count;
    size_t tempo_capacity;
    sw_lyric_line *lines; /* in order of appearance */
    size_t line_count;
    size_t line_capacity;
    sw_syllable *syllables; /* line by line, each in order of time */
    size_t syllable_count;
    size_t syllable_capacity;
    sw_rational length;
    uint32_t file; /* where its \score (or its music) stands */
    uint32_t start;
    uint32_t end;
    bool in_markup;       /* an example in a text, or an \incipit: no score of the piece */
    uint32_t variable;    /* name of the variable that is played by itself (see sw_read_alone); 0: a score */
    int32_t first_number; /* of its bars, before any setting: 1, or what a \layout block gives the Score */
} sw_score;

/* ---- reading ---- */

typedef struct sw_file {
    sw_text *text;
    sw_syntax *syntax;
    uint32_t includer;  /* the file that includes it, SW_NO_INDEX for the main file */
    bool owned;         /* the text belongs to the reading */
    uint32_t said_name; /* \sourcefilename: the name that the compiler gives for its places, 0: its own */
    int32_t line_shift; /* \sourcefileline: what the compiler adds to its line numbers */
} sw_file;

/* A variable at the end of the reading. */
typedef struct sw_variable {
    uint32_t name;
    uint32_t file;
    uint32_t start; /* bytes of the whole assignment */
    uint32_t end;
    uint32_t value_start; /* bytes of its value */
    uint32_t music;       /* SW_NO_INDEX when the value is no music */
} sw_variable;

/* Calls in front of a note that leave it as it is: see sw_music_calls. */
typedef struct sw_prefix {
    uint32_t music;
    uint32_t start; /* bytes; the calls end where the music begins */
} sw_prefix;

/* The input language of note names, in force for the music nodes from `music` on up to the next one's. */
typedef struct sw_language_use {
    uint32_t music;
    uint32_t language; /* number in the table of languages: see sw_reading_note_name */
} sw_language_use;

/* One main file with all that it includes. */
typedef struct sw_reading {
    sw_file *files; /* files[0] is the main file */
    size_t file_count;
    size_t file_capacity;
    sw_music *music;
    size_t music_count;
    size_t music_capacity;
    sw_names *names;
    sw_variable *variables; /* every assignment of music, in reading order */
    size_t variable_count;
    size_t variable_capacity;
    sw_prefix *prefixes; /* sorted by music */
    size_t prefix_count;
    size_t prefix_capacity;
    sw_language_use *languages; /* in reading order; at least one */
    size_t language_count;
    size_t language_capacity;
    sw_score *scores; /* in the order in which the compiler interprets those that have a layout */
    size_t score_count;
    size_t score_capacity;
    sw_findings findings; /* syntax errors, missing includes, unresolved commands */
} sw_reading;

/* Keeps what files of a film hold while several scores are read that include them: each is read and parsed
 * once. A file that changes meanwhile is not read again. All readings with one shelf have the same overlays.
 */
typedef struct sw_shelf sw_shelf;
sw_shelf *sw_shelf_new(void);
/* When all readings that used it are freed. NULL is allowed. */
void sw_shelf_free(sw_shelf *shelf);

typedef struct sw_known_includes sw_known_includes;

typedef struct sw_read_options {
    const char *const *include_path; /* folders to look for includes in, after that of the including file */
    size_t include_path_count;
    /* Texts that stand in for files with the same path (what an editor holds, or a change before it is
     * written). Borrowed; they must outlive the reading. */
    const sw_text *const *overlays;
    size_t overlay_count;
    bool alone;           /* see sw_read_alone */
    const char *language; /* of note names, until the source says another one; NULL: the usual one */
    sw_shelf *shelf;      /* borrowed; NULL: every file is read for this reading */
    /* Who includes whom, for transformations: see main_files.h. Borrowed; NULL: found out each time. */
    sw_known_includes *includes;
} sw_read_options;

/* Reads a main file, the files that it includes, and plays the scores. NULL only when the main file itself
 * cannot be read: then *error is a sentence with the path and the reason (free() it). Everything else is in
 * the findings. `options` may be NULL. The caller frees the result. */
sw_reading *sw_read(const char *path, const sw_read_options *options, char **error);
/* Reads one file without what it includes. Music of variables that no score of the file plays is played by
 * itself, each as a score; note names are taken in the language in which the file makes most sense, as part
 * files leave that to others. The text is borrowed and must outlive the reading. NULL when it is no source at
 * all: *error says why. */
sw_reading *sw_read_alone(const sw_text *text, char **error);
void sw_reading_free(sw_reading *reading);
/* Bytes of memory that the music, the scores and the names hold (texts and syntax not counted). */
size_t sw_reading_memory(const sw_reading *reading);

/* Order in the text: by file, then by the first byte. */
int sw_music_compare_places(const sw_music *a, const sw_music *b);
/* The WITH node of a CONTEXT or ADD_LYRICS node, SW_NO_INDEX when it has no \with block. */
uint32_t sw_music_with(const sw_reading *reading, uint32_t music);
/* The text of a music node. */
sw_slice sw_music_slice(const sw_reading *reading, uint32_t music);
/* The calls in front of a note, rest, chord or syllable that say how it looks, as they are written:
 * `\tweak color #red \parenthesize `; empty when there are none. What hangs on it stands in its MARK
 * children. */
sw_slice sw_music_calls(const sw_reading *reading, uint32_t music);
/* Whether a node has a place of its own, origin_file and origin. */
bool sw_music_has_origin(const sw_music *music);
/* Whether that place is a call in front of it in the same text. */
bool sw_music_is_called(const sw_music *music);
/* The written duration of a node that has one. */
sw_duration sw_music_duration(const sw_music *music);
/* A name of the reading: "" for 0. */
const char *sw_reading_name(const sw_reading *reading, uint32_t name);
/* The name of a pitch's step and alteration in the input language that is in force at a music node (which
 * must have been read from a file, not copied). Of several names of one pitch ("es", "ees") the one that the
 * reading's notes use, otherwise the first of the manual's table. Empty when the language has none. The slice
 * lives as long as the reading. */
sw_slice sw_reading_note_name(const sw_reading *reading, uint32_t music, sw_pitch pitch);
/* What a pitch written at the end of a chain of frames sounds like: moved by each \transpose and \fixed on
 * the way. */
sw_pitch sw_score_pitch(const sw_reading *reading, const sw_score *score, uint32_t frame, sw_pitch written);
/* The way back: what must be written there to sound like `heard`. */
sw_pitch sw_score_written_pitch(const sw_reading *reading, const sw_score *score, uint32_t frame,
                                sw_pitch heard);
/* File, line and column of an event's written note, as in the compiler's messages. */
sw_place sw_event_place(const sw_reading *reading, const sw_event *event, uint32_t *file);
/* The events of a staff: numbers [first, end) of the score's, voice by voice. */
typedef struct sw_staff_events {
    uint32_t first;
    uint32_t end;
} sw_staff_events;
sw_staff_events sw_score_staff_events(const sw_score *score, uint32_t staff);
/* Onset + duration. */
sw_rational sw_event_end(const sw_event *event);
/* Line and column of a written syllable. */
sw_place sw_syllable_place(const sw_reading *reading, const sw_syllable *syllable);

/* ---- marks ---- */

/* What a mark is, for those who have to move it. */
typedef enum sw_mark_class {
    SW_MARK_ARTICULATION, /* staccato, accent, fermata ..., and every mark that is not known: stays with its
                             note */
    SW_MARK_TIE,
    SW_MARK_SLUR_START,
    SW_MARK_SLUR_END,
    SW_MARK_PHRASE_START,
    SW_MARK_PHRASE_END,
    SW_MARK_BEAM_START,
    SW_MARK_BEAM_END,
    SW_MARK_DYNAMIC,
    SW_MARK_HAIRPIN_START,
    SW_MARK_HAIRPIN_END,
    SW_MARK_ARPEGGIO,
    SW_MARK_GLISSANDO,
    SW_MARK_PEDAL,      /* sustain, sostenuto, una corda, on and off */
    SW_MARK_SPAN_START, /* trill and text spans */
    SW_MARK_SPAN_END,
    SW_MARK_FINGERING, /* and string numbers */
    SW_MARK_TREMOLO,
    SW_MARK_TEXT
} sw_mark_class;

/* The class of a mark by what is written: "-.", "\\p", "^\"dolce\"". */
sw_mark_class sw_mark_class_of(sw_slice text);
/* The class of a MARK node. */
sw_mark_class sw_music_mark_class(const sw_reading *reading, uint32_t mark);
/* The plain text that a MARK node says, also through a variable (`pizz = ^\\markup ...`); "" for none. */
const char *sw_music_mark_text(const sw_reading *reading, uint32_t mark);
/* '^' or '_' when the mark is written with that direction, otherwise '-'. */
char sw_music_mark_direction(const sw_reading *reading, uint32_t mark);

/* ---- time ---- */

/* The bar that holds a moment: index into score->bars (the last bar for moments behind the end). SW_NO_INDEX
 * when the score has no bars. */
uint32_t sw_score_bar_at(const sw_score *score, sw_rational onset);
/* The bar with a number as printed, the first if several; SW_NO_INDEX when there is none. */
uint32_t sw_score_bar_numbered(const sw_score *score, int number);
/* Beat in the bar, from 1, as musicians count: quarters in 4/4, dotted quarters in 12/8: 1, 2, 5/2, 4/3 ...
 */
sw_rational sw_score_beat(const sw_score *score, sw_rational onset);
/* Seconds since the beginning of the score. */
double sw_score_seconds(const sw_score *score, sw_rational onset);
/* The name by which a person knows the staff: instrument name, short name, id, variable or "staff 3". Valid
 * as long as the reading; `text` is filled only in the last case. */
const char *sw_staff_label(const sw_reading *reading, const sw_score *score, uint32_t staff, char text[32]);

#endif
