/* What bars that come in or go would tear apart at their edges: ties, slurs, phrasing slurs, beams by hand,
 * hairpins, and the words that are sung in them. Each is closed where it is cut:
 *   - a tie into the first bar goes, unless the note goes on behind the bars;
 *   - what began before the bars and ended in them ends at the last note before them;
 *   - what began in the bars and ended behind them begins at the first note behind them;
 *   - one that would begin and end at one note goes;
 *   - a syllable goes with its note. */
#include <string.h>

#include "write/bars.h"

/* The notes of one voice around the bars. */
typedef struct seam {
    sw_draft *draft;
    sw_rational from;
    sw_rational to;
    uint32_t first; /* events of the voice */
    uint32_t end;
    uint32_t before; /* the last chord with notes before the bars ... */
    uint32_t behind; /* ... and the first behind them; SW_NO_INDEX: none */
} seam;

static bool is_inside(const seam *s, uint32_t event)
{
    const sw_event *e = &s->draft->score->events[event];
    return sw_rational_compare(e->onset, s->from) >= 0 && sw_rational_compare(e->onset, s->to) < 0;
}

static void find_notes(seam *s)
{
    const sw_score *score = s->draft->score;
    s->before = s->behind = SW_NO_INDEX;
    for (uint32_t e = s->first; e < s->end; e = sw_voice_chord_end(score, e)) {
        if (!sw_event_is_note(&score->events[e]) || is_inside(s, e)) {
            continue;
        }
        if (sw_rational_compare(score->events[e].onset, s->from) < 0) {
            s->before = e;
        } else if (s->behind == SW_NO_INDEX) {
            s->behind = e;
        }
    }
}

/* ---- ties ---- */

/* Whether a note of the chord before the bars is tied into the chord behind them, through all that goes. */
static bool goes_on_behind(const seam *s)
{
    const sw_score *score = s->draft->score;
    uint32_t last = s->behind == SW_NO_INDEX ? SW_NO_INDEX : sw_voice_joined_before(score, s->behind);
    if (last == SW_NO_INDEX || !is_inside(s, last) || sw_voice_joined(score, last) != s->behind) {
        return false;
    }
    for (uint32_t e = s->before; e < sw_voice_chord_end(score, s->before); e++) {
        uint32_t held = sw_voice_pitch(score, last, score->events[e].pitch);
        if (held == SW_NO_INDEX || !sw_voice_is_tied(s->draft->reading, score, held)) {
            return false;
        }
    }
    return true;
}

static bool cut_tie(const seam *s)
{
    const sw_score *score = s->draft->score;
    bool tied = false;
    for (uint32_t e = s->before; s->before != SW_NO_INDEX && e < sw_voice_chord_end(score, s->before); e++) {
        tied = tied || ((score->events[e].flags & SW_EVENT_GRACE) == 0 &&
                        sw_rational_equal(sw_event_end(&score->events[e]), s->from) &&
                        sw_voice_is_tied(s->draft->reading, score, e));
    }
    return !tied || goes_on_behind(s) || sw_draft_untie(s->draft, s->before);
}

/* ---- slurs, beams, hairpins ---- */

/* What a mark opens or closes: +1, -1, or 0. A hairpin also ends at the next dynamic. */
static int opens(sw_mark_class class, sw_mark_class which)
{
    switch (which) {
    case SW_MARK_SLUR_START:
        return (class == SW_MARK_SLUR_START) - (class == SW_MARK_SLUR_END);
    case SW_MARK_PHRASE_START:
        return (class == SW_MARK_PHRASE_START) - (class == SW_MARK_PHRASE_END);
    case SW_MARK_BEAM_START:
        return (class == SW_MARK_BEAM_START) - (class == SW_MARK_BEAM_END);
    case SW_MARK_SPAN_START:
        return (class == SW_MARK_SPAN_START) - (class == SW_MARK_SPAN_END);
    default:
        return (class == SW_MARK_HAIRPIN_START) - (class == SW_MARK_HAIRPIN_END || class == SW_MARK_DYNAMIC);
    }
}

/* The mark with which the chord of an event opens (way 1) or closes (-1) something of a class; SW_NO_INDEX:
 * it does not. */
static uint32_t mark_of(const seam *s, uint32_t event, sw_mark_class which, int way)
{
    const sw_reading *reading = s->draft->reading;
    uint32_t chord = s->draft->score->events[event].chord;
    for (uint32_t c = reading->music[chord].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind == SW_MUSIC_MARK && opens(sw_music_mark_class(reading, c), which) == way) {
            return c;
        }
    }
    return SW_NO_INDEX;
}

static bool take_off(const seam *s, uint32_t event, uint32_t mark)
{
    sw_mark_class class = sw_music_mark_class(s->draft->reading, mark);
    if (class == SW_MARK_DYNAMIC) { /* which only happens to end a hairpin */
        return true;
    }
    return sw_change_remove_mark(s->draft,
                                 &(sw_change){.kind = SW_CHANGE_REMOVE_MARK, .event = event, .mark = mark});
}

/* Another note gets a mark like this one. */
static bool put_on(const seam *s, uint32_t event, uint32_t mark)
{
    bool dynamic = sw_music_mark_class(s->draft->reading, mark) == SW_MARK_DYNAMIC;
    sw_slice text = dynamic ? sw_slice_of("\\!") : sw_music_slice(s->draft->reading, mark);
    return sw_change_add_mark(s->draft, &(sw_change){.kind = SW_CHANGE_ADD_MARK,
                                                     .event = event,
                                                     .text = sw_arena_copy(s->draft->arena, text)});
}

/* Something opens at one event and closes at another one, on different sides of an edge of the bars. */
static bool cut_span(const seam *s, uint32_t open, uint32_t opening, uint32_t close, uint32_t closing)
{
    if (is_inside(s, close)) {
        bool left = s->before != SW_NO_INDEX && s->before > open;
        return left ? put_on(s, s->before, closing) : take_off(s, open, opening);
    }
    bool left = s->behind != SW_NO_INDEX && s->behind < close;
    return left ? put_on(s, s->behind, opening) : take_off(s, close, closing);
}

/* Several marks of one chord: the closing ones come first, as a slur may end where the next begins. */
static bool cut_spans(const seam *s, sw_mark_class which)
{
    const sw_score *score = s->draft->score;
    uint32_t open = SW_NO_INDEX;
    uint32_t opening = SW_NO_INDEX;
    for (uint32_t e = s->first; e < s->end; e = sw_voice_chord_end(score, e)) {
        uint32_t closing = mark_of(s, e, which, -1);
        if (closing != SW_NO_INDEX && open != SW_NO_INDEX) {
            if (is_inside(s, e) != is_inside(s, open)) {
                if (which ==
                    SW_MARK_SPAN_START) { /* a trill, a text with a line: where it ends is its player's */
                    return sw_draft_fail(
                        s->draft, is_inside(s, e) ? open : e,
                        "a trill or another span reaches over the edge of the bars that go; end it "
                        "there first");
                }
                if (!cut_span(s, open, opening, e, closing)) {
                    return false;
                }
            }
            open = SW_NO_INDEX;
        }
        uint32_t mark = mark_of(s, e, which, 1);
        if (mark != SW_NO_INDEX) {
            open = e;
            opening = mark;
        }
    }
    return true;
}

bool sw_bars_cut_torn(sw_draft *draft)
{
    static const sw_mark_class spans[] = {SW_MARK_SLUR_START, SW_MARK_PHRASE_START, SW_MARK_BEAM_START,
                                          SW_MARK_SPAN_START, SW_MARK_HAIRPIN_START};
    const sw_score *score = draft->score;
    seam s = {.draft = draft, .from = draft->bars.moment, .to = draft->bars.until};
    for (s.first = 0; s.first < score->event_count; s.first = s.end) {
        s.end = s.first + 1;
        while (s.end < score->event_count && score->events[s.end].voice == score->events[s.first].voice) {
            s.end++;
        }
        find_notes(&s);
        bool done = cut_tie(&s);
        for (size_t i = 0; i < sizeof spans / sizeof spans[0] && done; i++) {
            done = cut_spans(&s, spans[i]);
        }
        if (!done) {
            return false;
        }
    }
    return true;
}

/* ---- words ---- */

/* Behind a syllable: the hyphen or line to the next one, and blanks. */
static uint32_t end_of_word(const sw_text *text, uint32_t end)
{
    uint32_t at = end;
    while (at < text->length && strchr(" \t", text->bytes[at]) != NULL) {
        at++;
    }
    bool joined = at + 2 <= text->length &&
                  (memcmp(text->bytes + at, "--", 2) == 0 || memcmp(text->bytes + at, "__", 2) == 0);
    at += joined ? 2 : 0;
    while (at < text->length && strchr(" \t", text->bytes[at]) != NULL) {
        at++;
    }
    return at;
}

void sw_bars_take_words(sw_bar_walk *walk)
{
    const sw_score *score = walk->score;
    for (size_t i = 0; i < score->syllable_count; i++) {
        const sw_syllable *syllable = &score->syllables[i];
        if ((syllable->flags & SW_SYLLABLE_OWN_LENGTH) == 0 &&
            sw_rational_compare(syllable->onset, walk->from) >= 0 &&
            sw_rational_compare(syllable->onset, walk->to) < 0) {
            const sw_music *m = &walk->reading->music[syllable->music];
            const sw_text *text = walk->reading->files[m->file].text;
            sw_bar_edit_add(walk, m->file, m->start, end_of_word(text, m->end), (sw_slice){NULL, 0});
        }
    }
}
