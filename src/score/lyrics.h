/* Lyrics: which syllable is sung when. Private to score/.
 *
 * A syllable with a length of its own (\lyricmode in a Lyrics context) is heard where it stands. A text
 * behind \lyricsto or \addlyrics (an sw_verse here) takes its time from the notes of a voice, and that is
 * known only when the whole score has been played. So the walk through the music (lyrics.c) reads such a text
 * with a clock of its own and keeps what it comes to as items. Behind the walk (align.c) each verse goes
 * through the notes of the voice that it follows (sung_moments.c), as the compiler does it:
 *
 * - The text's own clock says only what comes together: everything at one moment of it (a syllable, what is
 *   set before it, the end of a \skip, a syllable of a second line) is one slot.
 * - A moment of the score at which the voice has a note takes the next slot, unless a melisma is on, which
 * the line can be told to ignore. Rests and what begins between the notes take none.
 * - A melisma is on when one of the voice's melismaBusyProperties is: a slur from behind its first note to
 * its last one, a tie up to the end of the tied note, a beam by hand like a slur (but only while there are no
 *   automatic ones), what \melisma and \melismaEnd set. A line that follows a staff waits only when all
 * voices there have one.
 * - Grace notes take none, but the note behind them takes one, whatever is on.
 * - The notes must come before the lyrics in the order of the music: a line written above its voice hears
 *   nothing. A voice that is written later than the lyrics begin is found when it begins; when it ends, the
 *   lyrics end. `associatedVoice` is looked at behind each slot, so it works from the next note on. */
#ifndef SW_SCORE_LYRICS_H
#define SW_SCORE_LYRICS_H

#include "score/player.h"
#include "score/sung_moments.h"

typedef enum sw_text_kind {
    SW_TEXT_SYLLABLE,
    SW_TEXT_SETTING, /* \set, \unset, --, __ */
    SW_TEXT_PAUSE    /* the begin or end of something that only takes a slot */
} sw_text_kind;

/* What the walk comes to in a text. */
typedef struct sw_text_item {
    sw_moment at; /* by the text's own clock */
    sw_text_kind kind;
    uint32_t music;
    uint32_t frame;
    uint32_t line;
    uint32_t flags;  /* of the syllable */
    uint32_t number; /* in the order of the walk */
} sw_text_item;

/* A text that follows a voice. */
typedef struct sw_verse {
    uint32_t line;
    size_t first_item; /* in order of the text */
    size_t end_item;
    uint32_t name;        /* of the voice; for \addlyrics: */
    sw_context *target;   /* the context that is followed, otherwise NULL */
    sw_event_range range; /* only these of its events are sung */
    sw_moment start;
    uint32_t behind;  /* hears only the events that the walk came to before this one ... */
    uint32_t reached; /* ... and at its start only those from this one on */
    uint32_t step;
    uint32_t after; /* the verse that must be over before, SW_NO_INDEX */
} sw_verse;

/* How a line stands, beside what the score says of it. */
typedef struct sw_line_state {
    bool ignores_melismata;
    bool takes_graces;
    uint32_t voice;     /* name: associatedVoice, 0: not set */
    uint32_t last_item; /* the syllable that a -- belongs to, SW_NO_INDEX */
    uint32_t last_syllable;
} sw_line_state;

typedef struct sw_lyrics {
    sw_text_item *items;
    size_t item_count;
    size_t item_capacity;
    sw_verse *verses;
    size_t verse_count;
    size_t verse_capacity;
    sw_line_state *states; /* by line */
    size_t state_capacity;
} sw_lyrics;

/* ---- lyrics.c ---- */

/* A syllable, in a text or with a length of its own. */
void sw_lyrics_syllable(sw_player *p, uint32_t music, sw_moment when, sw_moment end, const sw_spot *here);
/* In a text: something else with a length. */
void sw_lyrics_pause(sw_player *p, uint32_t music, sw_moment when, sw_moment end, const sw_spot *here);
/* A setting in a text or in a line of lyrics. */
void sw_lyrics_setting(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);
/* In a text: the line to which a CONTEXT node leads from line `here`. */
uint32_t sw_lyrics_enter(sw_player *p, uint32_t music, uint32_t here);
/* \lyricsto. */
void sw_lyrics_follow(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);
/* Plays a node, then reads each \addlyrics behind it. */
sw_moment sw_lyrics_add(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here);
/* Lets a \set or \unset of a line hold. */
void sw_lyrics_hold(const sw_player *p, sw_line_state *state, uint32_t music);

/* ---- align.c ---- */

/* Makes the syllables of all verses and puts the score's syllables in order; frees what was kept. The events
 * must still be in the order of the walk. */
void sw_lyrics_align(sw_player *p);

#endif
