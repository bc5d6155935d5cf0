/* The walk through the music of one score: what its parts share. Private to score/.
 *
 * The walk has three ways of hearing. Usually it makes events. Muted, it only counts time. With a recording,
 * it writes down what is heard there instead of into the score, and makes no contexts. */
#ifndef SW_SCORE_PLAYER_H
#define SW_SCORE_PLAYER_H

#include "score/contexts.h"
#include "score/moment.h"
#include "score/reader.h"
#include "score/recording.h"
#include "score/tags.h"

/* What a later q or bare duration repeats, and where: its pitches are not moved once more by a \transpose
 * around the repetition alone. */
typedef struct sw_played {
    uint32_t music; /* SW_NO_INDEX: nothing yet */
    uint32_t frame;
} sw_played;

/* What holds for the notes at a place of the walk; copied on the way down. */
typedef struct sw_spot {
    sw_context *context;
    sw_rational scale; /* product of the tuplets around */
    uint32_t frame;
    const sw_tag_filter *filter;
    uint32_t flags; /* sw_event.flags */
    bool grace;
    bool among_graces;    /* inside \grace itself: one more \grace has no length there */
    uint8_t unfold;       /* inside \unfoldRepeats: which kinds, see sw_unfold_mask */
    bool no_cues;         /* inside \killCues */
    int8_t tremolo_shift; /* tremolo repeats: note values are doubled so often ... */
    uint8_t tremolo_dots; /* ... and get so many dots more */
    uint32_t pass;        /* of the unfolded repeat around, from 1 */
    uint32_t recorded;    /* number of the context in the recording, or of the line in a text that is sung */
    const sw_played *repeated; /* at a q or bare duration: what it repeats; otherwise NULL */
} sw_spot;

/* A setting at a place where no note has been yet. */
typedef struct sw_early_setting {
    uint32_t setting;
    uint32_t next; /* the one before it at the same place, from 1; 0: none */
    sw_context *line;
} sw_early_setting;

typedef struct sw_layout_block {
    uint32_t file;
    uint32_t node;
} sw_layout_block;

typedef struct sw_player {
    sw_reader *reader;
    sw_score *score;
    sw_contexts *contexts;
    size_t quote_count;   /* so many quotes are known to this score */
    sw_played last_chord; /* the chord that q repeats */
    sw_played last_note;  /* the note or chord that a bare duration repeats */
    uint32_t depth;
    size_t event_limit;
    size_t step_limit; /* of reader->steps */
    bool too_many;
    bool too_deep;
    bool muted;               /* only the time is wanted */
    sw_recording *recording;  /* usually NULL */
    struct sw_quotes *quotes; /* made by the first quote */
    struct sw_lyrics *lyrics; /* made by the first syllable or setting of a line of lyrics */
    bool in_text;             /* goes through a text that takes its time from notes, see lyrics.h */
    size_t reached;           /* events before the step of the innermost sequence around that is under way */
    uint32_t step;            /* its number */
    uint32_t sung;            /* CONTEXT node that an \addlyrics belongs to ... */
    sw_context *sung_context; /* ... and the context that it leads to */
    sw_early_setting *early;
    size_t early_count;
    size_t early_capacity;
    bool layouts_found; /* what the lyrics ask for: see melisma_rules.c */
    sw_layout_block *layouts;
    size_t layout_count;
    size_t layout_capacity;
} sw_player;

/* Plays one node from a moment on; returns where it ends. */
sw_moment sw_walk(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);
/* Makes an event at a place; NULL when none is wanted. The pointer is valid until the next one. */
sw_event *sw_player_event(sw_player *p, sw_event_kind kind, uint32_t music, uint32_t chord, sw_moment when,
                          sw_rational length, const sw_spot *here);
/* The pitch of a note at a place. */
sw_pitch sw_player_note_pitch(const sw_player *p, uint32_t note, const sw_spot *here);
/* The grace offset, 0 or negative, at which some music begins. */
sw_rational sw_player_start(sw_player *p, uint32_t music, const sw_spot *here);
/* Walks some music without playing it, from moment zero; returns its end. `in_text`: as the words that are
 * sung (lyrics.h). What q and bare durations repeat stays as it was. */
sw_moment sw_walk_muted(sw_player *p, uint32_t music, const sw_spot *here, bool in_text);
/* A new frame: one more step down. */
uint32_t sw_player_frame(sw_player *p, uint32_t parent, uint32_t music, uint32_t pass);
/* The end of something that begins at a moment and lasts so long. */
sw_moment sw_later(sw_moment when, sw_rational length, bool grace);
/* Whether a node is a mark or a setting, which no run of notes is interrupted by. */
bool sw_takes_no_time(const sw_music *m);
/* Plays nodes one after another: `first` and its siblings. */
sw_moment sw_walk_sequence(sw_player *p, uint32_t first, sw_moment when, const sw_spot *here);

/* ---- event_order.c ---- */

/* Puts the events in order: staves, voices, time. */
void sw_sort_events(sw_score *score);

/* Plays a node and what \addlyrics adds to it: its siblings. */
sw_moment sw_walk_sung(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);

/* ---- settings.c ---- */

/* Records a node without length, or the beginning of an alternative, at a place; nothing while the walk is
 * muted or listens. */
void sw_player_setting(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);
/* Records the settings of a WITH node: the context at this place begins with them. */
void sw_player_begin_with(sw_player *p, uint32_t with, sw_moment when, const sw_spot *here);
/* Gives the settings that wait for a note of this voice their voice. */
void sw_player_settle_voice(sw_player *p, sw_context *voice);
/* At the end of the walk: gives the others that came before the notes their staff and voice. */
void sw_player_settle_settings(sw_player *p);

/* ---- repeats.c ---- */

/* The kinds of repeats that a space-separated list names, a bit each; all for "". */
uint8_t sw_unfold_mask(const char *kinds);
/* Whether a VOLTA node is heard: always where the innermost repeat is not written out and otherwise in the
 * passes it names; \unfolded only where it is written out. */
bool sw_volta_is_heard(const sw_player *p, uint32_t music, const sw_spot *here);

sw_moment sw_walk_repeat(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);
/* Inside the body of a repeat: written out, only the alternative of this pass; otherwise all, one after
 * another. */
sw_moment sw_walk_alternatives(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);

/* ---- listen.c ---- */

/* Listens to some music by itself, from moment 0, as a voice with this id. The frames of what is heard begin
 * at the music. The caller frees the result. */
sw_recording *sw_listen(sw_player *p, uint32_t music, uint32_t id);
/* True while the walk records. */
bool sw_listens(const sw_player *p);
/* These two only while it does: a note or rest; a node without length. */
void sw_listen_event(sw_player *p, sw_event_kind kind, uint32_t music, uint32_t chord, sw_moment when,
                     sw_rational length, const sw_spot *here);
void sw_listen_setting(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);
/* These do nothing unless it does. What hangs on a note, chord or rest: */
void sw_listen_marks(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);
/* a moment in which something begins or ends that is no note: a repeat, a run of grace notes; */
void sw_listen_moment(sw_player *p, sw_moment when, const sw_spot *here);
/* the begin or end of grace notes: \appoggiatura and \acciaccatura slur theirs to the main note; */
void sw_listen_grace(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here, bool start);
/* a tuplet, but not \scaleDurations. */
void sw_listen_scale(sw_player *p, uint32_t music, sw_moment begin, sw_moment end, const sw_spot *here);

/* ---- routes.c and quotes.c ---- */

/* \partCombine: both parts, each note in the voice that the combiner gives it. */
sw_moment sw_walk_part_combine(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);
/* \autoChange: each note on the staff "up" or "down". */
sw_moment sw_walk_auto_change(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);
/* \quoteDuring, \cueDuring: the music itself, and what is quoted beside it. */
sw_moment sw_walk_quote(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);
/* Settles the quotes' transpositions, which depend on the whole score, and frees what they needed. */
void sw_quotes_end(sw_player *p);

#endif
