/* From syntax to music: the part of the reader that goes through the sources in reading order. Private to
 * score/.
 *
 * Reading order is what the language is made of: the inherited duration, the input language and the variables
 * known so far run on from one item to the next, across blocks, variables and included files. So the reader
 * goes once through the items, keeps that state, and builds music nodes. Nothing is played yet; player.c does
 * that. */
#ifndef SW_SCORE_READER_H
#define SW_SCORE_READER_H

#include "score/words.h"
#include "stavewright/score.h"
#include "syntax/commands.h"

/* Blocks nested deeper than this are not read: real scores stay below 50, and the reader recurses. */
enum { SW_MAX_DEPTH = 1000, SW_MAX_INCLUDE_DEPTH = 100 };

/* A few lines can stand for more music than any memory holds: variables made of twice the one before,
 * templates that use templates, files that include files. These bounds are far above real scores, and going
 * beyond them is a finding. What is written out in the sources comes on top: see sw_reader_bound. */
enum {
    SW_MAX_FILES = 10000,
    SW_MAX_MUSIC = 1000000, /* nodes; music is copied and templates are read up to here */
    SW_MAX_EVENTS = 500000, /* in all scores of a reading */
    SW_MAX_STEPS = 5000000  /* of all walks through music */
};

typedef enum sw_mode {
    SW_MODE_NOTES,
    SW_MODE_DRUMS,
    SW_MODE_CHORDS,
    SW_MODE_LYRICS,
    SW_MODE_FIGURES
} sw_mode;

typedef enum sw_value_kind {
    SW_VALUE_NONE,   /* nothing: a definition, an output block */
    SW_VALUE_MUSIC,  /* music = node */
    SW_VALUE_POST,   /* music = MARK node */
    SW_VALUE_PITCH,  /* pitch */
    SW_VALUE_NUMBER, /* number, and duration when it can be one */
    SW_VALUE_DURATION,
    SW_VALUE_TEXT,         /* text = name number of the plain text */
    SW_VALUE_SYMBOL,       /* text = a word, a property path, or a space-separated list of them */
    SW_VALUE_SCHEME,       /* anything else that only Scheme can know */
    SW_VALUE_FUNCTION,     /* function */
    SW_VALUE_ABBREVIATION, /* items: those before \\etc */
    SW_VALUE_SCORE,        /* score */
    SW_VALUE_OUTPUT        /* \layout, \midi, \paper, \header, \with */
} sw_value_kind;

/* A function that the sources define, or another name of one of the language. */
typedef struct sw_function {
    const sw_command
        *command; /* of the language, of which this is another name; NULL: it has a body of its own */
    const char *signature; /* as in sw_command */
    sw_command_kind kind;
    const uint32_t *parameters; /* names, as many as the signature has letters */
    const sw_slice *defaults; /* as many: the expression for an argument left out, empty when there is none */
    uint32_t file;            /* where it is defined ... */
    uint32_t node;            /* ... and the Scheme node there that does it */
    uint32_t body;            /* the template #{ ... #}: items [body, body_end) of that file's syntax, or
                                 SW_NO_INDEX when the body is real Scheme, which is not run */
    uint32_t body_end;
    size_t given_back;   /* a body in Scheme that is only this parameter; SIZE_MAX: it is not */
    sw_slice expression; /* a body that is one other expression; otherwise empty */
} sw_function;

typedef struct sw_value {
    sw_value_kind kind;
    uint32_t music;
    uint32_t text;
    sw_pitch pitch;
    sw_word number;       /* NUMBER, DURATION: decoded */
    sw_rational rational; /* NUMBER: its value, fractions included */
    const sw_function *function;
    const struct sw_cursor *items;
    const struct sw_pending *score;
    uint32_t inner_first; /* scores in the markups of a variable's value: in the reader's `inner` */
    uint32_t inner_count;
    uint32_t file; /* where it is written */
    uint32_t start;
    uint32_t end;
} sw_value;

/* The items of one level, from `at` up to `end` (indices of syntax nodes). */
typedef struct sw_cursor {
    const sw_syntax *syntax;
    uint32_t file;
    uint32_t at;
    uint32_t end;
    const struct sw_abbreviated *abbreviated; /* these items stand for a name in other ones; otherwise NULL */
} sw_cursor;

/* The use of an abbreviation: its place, and the items behind it, which complete what it stands for. */
typedef struct sw_abbreviated {
    sw_cursor rest;
    uint32_t file;
    uint32_t start;
    uint32_t end;
} sw_abbreviated;

/* Music that other music may quote. */
typedef struct sw_quote {
    uint32_t name;
    uint32_t music;
} sw_quote;

/* A score that is not played yet. */
typedef struct sw_pending {
    uint32_t music;
    uint32_t file;
    uint32_t start;
    uint32_t end;
    bool heard;           /* false when it has only a MIDI output */
    bool late;            /* stands in a markup between the scores */
    size_t quote_count;   /* so many quotes were known when it was read */
    uint32_t inner_first; /* scores in its own markups, played after it: in the reader's `inner` */
    uint32_t inner_count;
} sw_pending;

typedef struct sw_pending_list {
    sw_pending *items;
    size_t count;
    size_t capacity;
} sw_pending_list;

/* A drum name of the user's own: drumPitchNames.word = #'drum. */
typedef struct sw_drum {
    uint32_t word;
    uint32_t drum;
} sw_drum;

typedef struct sw_reader {
    sw_reading *reading;
    const sw_read_options *options;
    sw_arena *arena;            /* functions and their signatures; lives as long as the reader */
    struct sw_prelude *prelude; /* that was taken over and holds more of them; NULL: none */
    sw_note_table notes;
    sw_mode mode;
    sw_duration duration; /* the inherited one */
    sw_value **values;    /* by name: the variables known so far, NULL when undefined */
    size_t value_count;
    sw_quote *quotes; /* \addQuote, in order: a later one of the same name holds for later scores */
    size_t quote_count;
    size_t quote_capacity;
    sw_pending_list scores;  /* ready to be played, in order */
    sw_pending_list inner;   /* scores in markups, in the order of their use */
    sw_pending_list waiting; /* of the implicit book: played when the main file has ended */
    sw_drum *drums;
    size_t drum_count;
    size_t drum_capacity;
    uint32_t *tag_groups; /* \tagGroup: each a space-separated list of tags in the names */
    size_t tag_group_count;
    size_t tag_group_capacity;
    uint32_t no_pitch; /* the name of a drum that is none: a bare duration with no note before it */
    uint32_t include_depth;
    unsigned open_abbreviations;   /* abbreviations in which the reader is just now ... */
    unsigned nested_abbreviations; /* ... and how many were used in there so far */
    uint32_t depth;
    bool too_deep;                    /* blocks are nested too deep somewhere: said once */
    const struct sw_open_call *calls; /* the templates that are being read, from the innermost outwards */
    size_t source_bytes;              /* of all files read so far */
    size_t events;                    /* of all scores played so far */
    size_t steps;                     /* nodes that were walked through so far */
    bool full;                        /* sw_reader_is_full was reported */
    uint32_t origin; /* the place of the outermost call whose template is read, SW_NO_INDEX outside ... */
    uint32_t origin_file; /* ... and its file */
    uint32_t *reported;   /* names that were already reported as unresolved */
    size_t reported_count;
    size_t reported_capacity;
} sw_reader;

/* ---- cursors ---- */

/* The items inside a node. */
sw_cursor sw_cursor_inside(const sw_reader *reader, uint32_t file, uint32_t node);
/* Passes over comments and what the parser could not read, and on from the end of an abbreviation to what
 * follows its use; false at the end. */
bool sw_cursor_more(sw_cursor *cursor);
sw_node_kind sw_cursor_kind(const sw_cursor *cursor);
const sw_node *sw_cursor_node(const sw_cursor *cursor);
sw_slice sw_cursor_text(const sw_cursor *cursor);
void sw_cursor_next(sw_cursor *cursor);
/* The item after the present one is punctuation that begins with this character. */
bool sw_cursor_is_mark(sw_cursor *cursor, char mark);

/* ---- building music ---- */

/* A new node; the pointer is valid until the next node is made. */
uint32_t sw_music_add(sw_reader *reader, sw_music_kind kind, uint32_t file, uint32_t start, uint32_t end);
sw_music *sw_music_at(const sw_reader *reader, uint32_t music);
/* From here on note names are those of a language (in languages.c). */
void sw_use_language(sw_reader *reader, const sw_language *language);
/* Says where the compiler sees a note that is written at this place: see `origin`. */
void sw_set_origin(const sw_reader *reader, sw_music *music, uint32_t file, uint32_t start);
/* A growing list of children. */
typedef struct sw_children {
    uint32_t first;
    uint32_t last;
    uint32_t count;
} sw_children;
void sw_children_add(sw_reader *reader, sw_children *children, uint32_t music);
/* Gives a MARK node the class of another one, which it stands for; SW_NO_INDEX: none. */
void sw_mark_stands_for(sw_reader *reader, uint32_t mark, uint32_t other);
/* A node of this kind with one child and the extent given; the child's pitches stay open to an outer
 * \relative when `free`. */
uint32_t sw_music_wrap(sw_reader *reader, sw_music_kind kind, const sw_value *where, uint32_t child,
                       bool is_free);
/* Puts what an \addlyrics has made behind the music that it belongs to. */
void sw_music_add_lyrics(sw_reader *reader, uint32_t music, uint32_t lyrics);
void sw_music_set_duration(sw_music *music, sw_duration duration);
/* One of the bounds above for these sources: large ones may stand for as much more as they are long. */
size_t sw_reader_bound(const sw_reader *reader, size_t bound);
/* A copy of a node and all below it, up to the variables used there: their music stays shared. Empty when the
 * reader is full. */
uint32_t sw_music_copy(sw_reader *reader, uint32_t music);

/* ---- reading items ---- */

/* Reads one item with its arguments, without what follows it. */
sw_value sw_read_item(sw_reader *reader, sw_cursor *cursor);
/* Reads one item as music, with the articulations behind it; SW_NO_INDEX when it is no music. */
uint32_t sw_read_music(sw_reader *reader, sw_cursor *cursor);
/* Reads all items as a sequence into `children`. */
void sw_read_sequence(sw_reader *reader, sw_cursor *cursor, sw_children *children);
/* Attaches the post-events at the cursor to a node (SW_NO_INDEX: reads and drops them). */
void sw_read_post_events(sw_reader *reader, sw_cursor *cursor, uint32_t music);
/* A word: a note, drum, rest or just a word. */
sw_value sw_read_word(sw_reader *reader, sw_cursor *cursor, bool in_chord);
sw_value sw_read_chord(sw_reader *reader, sw_cursor *cursor);
/* A note without length of a pitch that Scheme gives: $pitch. */
uint32_t sw_note_of_pitch(sw_reader *reader, const sw_value *value);
/* The same with the octave marks and the duration that stand behind it: \pitch'4. */
uint32_t sw_read_note_of_pitch(sw_reader *reader, sw_cursor *cursor, const sw_value *value);
/* A duration that stands for a note: 4 alone. */
uint32_t sw_read_bare_duration(sw_reader *reader, sw_cursor *cursor, sw_value *value);
/* Takes the duration that a word holds or that stands behind it after white space, and makes it the inherited
 * one. */
void sw_read_duration(sw_reader *reader, sw_cursor *cursor, sw_word *word, uint32_t music);
/* Makes the chord that a root in chord mode stands for, together with the `:m7/g` at the cursor. */
uint32_t sw_read_chord_mode(sw_reader *reader, sw_cursor *cursor, uint32_t root);
/* Reads a command and its arguments. */
sw_value sw_read_command(sw_reader *reader, sw_cursor *cursor);
/* `\tweak color #red \etc`, up to the \etc: true when the items at the cursor are an abbreviation. */
bool sw_read_abbreviation(sw_reader *reader, sw_cursor *cursor, sw_value *value);
/* Reads what the items before an \etc make of the items at the cursor, for the call that is given. */
sw_value sw_use_abbreviation(sw_reader *reader, sw_cursor *cursor, const sw_cursor *items,
                             const sw_value *call);
/* Reads # or $ and its expression. */
sw_value sw_read_scheme(sw_reader *reader, sw_cursor *cursor);
/* What a Scheme expression without LilyPond inside is: a number, text, symbol, pitch, note value. What it
 * can't be told of leaves *value as it is. */
void sw_read_constant(sw_reader *reader, sw_value *value, sw_slice text);
/* The drum (a name in the reading's names) that a word means in drum mode, 0 when it means none. */
uint32_t sw_drum_find(const sw_reader *reader, sw_slice word);
/* Reads the scores in a markup: they are added to `inner`. */
void sw_read_markup_scores(sw_reader *reader, uint32_t file, uint32_t node);
/* Adds scores in `inner` once more: their markup is used again. */
void sw_repeat_inner_scores(sw_reader *reader, uint32_t first, uint32_t count);
/* Opens a file, as it stands or as an overlay, and parses it; SW_NO_INDEX when it cannot be read. */
uint32_t sw_open_file(sw_reader *reader, const char *path, uint32_t includer, char **error);
/* The items between #{ and #} as one value. */
sw_value sw_read_embedded(sw_reader *reader, uint32_t file, uint32_t first, uint32_t end,
                          const sw_value *where);
/* The same for the #{ ... #} at this datum inside a Scheme node. */
sw_value sw_read_template_at(sw_reader *reader, uint32_t file, uint32_t node, sw_slice datum,
                             const sw_value *where);
/* The plain text of a markup, string, word or Scheme string. */
uint32_t sw_read_plain_text(sw_reader *reader, uint32_t file, uint32_t node);

/* ---- arguments ---- */

enum { SW_MAX_ARGUMENTS = 10 }; /* of the language's own commands */
/* Reads arguments by a signature into `arguments`, which has room for one a letter; returns how many.
 * Arguments left out have kind NONE. */
size_t sw_read_arguments(sw_reader *reader, sw_cursor *cursor, const char *signature, sw_value *arguments);
/* What a function of the language makes of its arguments. */
sw_value sw_apply(sw_reader *reader, const sw_command *command, sw_value *arguments, size_t count,
                  const sw_value *where);
/* The words of the grammar (\new, \repeat, \set ...): true when the name is one, and *result is what it
 * gives. The cursor stands behind the command itself. */
bool sw_read_keyword(sw_reader *reader, sw_cursor *cursor, sw_slice name, const sw_value *where,
                     sw_value *result);
/* The `= value` of a \set, \override or assignment as plain text, 0 when it has none; *end is moved behind
 * it. */
uint32_t sw_read_set_value(sw_reader *reader, sw_cursor *cursor, uint32_t *end);
/* Reads the function that a Scheme definition makes; NULL when it makes none. `node` is the scheme or
 * embedded node. */
sw_function *sw_read_function(sw_reader *reader, uint32_t file, uint32_t node);
/* A function that is a command of the language. */
const sw_function *sw_function_of(sw_reader *reader, const sw_command *command);
/* The language's function of this name as a value, for `RH = #rightHandFinger`; NULL when it has none. */
const sw_function *sw_function_named(sw_reader *reader, sw_slice name);
/* A call of a function that the sources define. */
sw_value sw_call(sw_reader *reader, sw_cursor *cursor, const sw_function *function, uint32_t name,
                 const sw_value *where);

/* ---- variables, files, scores ---- */

sw_value *sw_lookup(const sw_reader *reader, uint32_t name);
void sw_define(sw_reader *reader, uint32_t name, const sw_value *value);
/* Reads all items of a level outside of music: assignments, scores, includes. `in_book`: scores are ready
 * when the book ends. */
void sw_read_toplevel(sw_reader *reader, sw_cursor *cursor, sw_pending_list *scores);
/* Reads an included file. With `children` the \include stands among music and the file's items are added
 * there; otherwise its scores go to `scores`. */
void sw_read_include(sw_reader *reader, sw_cursor *from, sw_slice path, const sw_node *where,
                     sw_pending_list *scores, sw_children *children);
void sw_pending_add(sw_pending_list *list, const sw_pending *pending);
/* Reads the block of a \score; SW_NO_INDEX for its music when there is none. */
sw_pending sw_read_score_block(sw_reader *reader, uint32_t file, uint32_t node);
/* Whether there is so much music already that no more should be made of it; says so once, with the place
 * given. */
bool sw_reader_is_full(sw_reader *reader, uint32_t file, uint32_t start, uint32_t end);
/* Says once for each name that something could not be resolved. */
void sw_unresolved(sw_reader *reader, const sw_value *where, uint32_t name, const char *what);

/* Frees what a reader holds, but not its reading. */
void sw_reader_clear(sw_reader *reader);
/* Frees what a reading holds, but not itself. */
void sw_reading_clear(sw_reading *reading);

/* ---- other passes ---- */

/* Resolves the octaves of all pitches below a node that are still open, as \relative does; returns the pitch
 * that the next note refers to. */
sw_pitch sw_relative(sw_reader *reader, uint32_t music, sw_pitch start);
/* How long some music is, by itself; not valid when it has no end. */
sw_rational sw_music_length(sw_reader *reader, uint32_t music);
/* Plays one score. */
void sw_play(sw_reader *reader, const sw_pending *pending, sw_score *score);
/* Adds a score to the reading, with those in its markups behind it. */
void sw_play_pending(sw_reader *reader, const sw_pending *pending, bool in_markup);
/* Adds the music of variables that no score plays, each as a score: see sw_read_alone. */
void sw_play_variables(sw_reader *reader);
/* Bars, tempos and length, once all events and settings are known. */
void sw_timeline(const sw_reading *reading, sw_score *score);
/* The bars alone, from settings in order of time. */
void sw_count_bars(const sw_reading *reading, sw_score *score);

#endif
