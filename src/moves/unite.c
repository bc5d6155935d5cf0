/* Makes one of two voices in one rhythm: what `divisi` has written in two voices is taken back.
 *
 * Two voices that stand side by side in the source become one where they have the same values and are marked
 * alike (write/change_unite.c). The words with which the division begins and ends go along, where they stand
 * right at its edges and say nothing else; a "div." whose "unis." stands further on stays. */
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "checks/strokes.h"
#include "moves/choices.h"
#include "moves/linked.h"
#include "moves/opening.h"
#include "write/draft.h"

typedef struct work {
    const sw_reading *reading;
    const sw_score *score;
    const sw_playing *playing;
    uint32_t *parent;
    bool *seen; /* by music node: voices that are united, or can't be */
    sw_choices choices;
    bool open; /* the word that began the division is gone, the one that ends it not yet */
} work;

/* The voices side by side whose first one holds an event; SW_NO_INDEX: none. */
static uint32_t voices_around(const work *w, uint32_t event)
{
    uint32_t inner = w->score->events[event].chord;
    for (uint32_t around = w->parent[inner]; around != SW_NO_INDEX; around = w->parent[around]) {
        uint32_t blocks[2];
        if (sw_voices_beside(w->reading, around, blocks)) {
            return w->reading->music[around].first == inner ? around : SW_NO_INDEX;
        }
        inner = around;
    }
    return SW_NO_INDEX;
}

/* The word about division at a chord that says just this: "div.", "div. a 3", or one that ends it. */
static uint32_t word_at(const work *w, uint32_t event, bool begins)
{
    static const char *const ends[] = {"unis.", "non div."};
    uint32_t chord = w->score->events[event].chord;
    for (size_t i = 0; i < w->playing->word_count; i++) {
        uint32_t mark = w->playing->words[i].mark;
        const char *text = w->parent[mark] == chord ? sw_music_mark_text(w->reading, mark) : "";
        bool div = strcmp(text, "div.") == 0 ||
                   (strncmp(text, "div. a ", 7) == 0 && strspn(text + 7, "23456") == 1 && text[8] == '\0');
        if (begins ? div : strcmp(text, ends[0]) == 0 || strcmp(text, ends[1]) == 0) {
            return mark;
        }
    }
    return SW_NO_INDEX;
}

static bool remove_word(work *w, uint32_t event, bool begins)
{
    uint32_t mark = event == SW_NO_INDEX ? SW_NO_INDEX : word_at(w, event, begins);
    if (mark == SW_NO_INDEX) {
        return false;
    }
    sw_choices_add(&w->choices, (sw_change){.kind = SW_CHANGE_REMOVE_MARK, .event = event, .mark = mark});
    return true;
}

/* The next note behind an event in its voice, as a chord; SW_NO_INDEX when there is none. */
static uint32_t next_note(const work *w, uint32_t event)
{
    do {
        event = sw_voice_next(w->score, event);
    } while (event != SW_NO_INDEX && !sw_event_is_note(&w->score->events[event]));
    return event;
}

/* The chord before or behind one in its block of the voices; spacers of another line in the same voice
 * (<< \global \cello >>) may stand beside it. */
static uint32_t neighbour(const work *w, uint32_t event, uint32_t voices,
                          uint32_t (*step)(const sw_score *score, uint32_t event))
{
    const sw_event *a = &w->score->events[event];
    for (uint32_t e = step(w->score, event); e != SW_NO_INDEX; e = step(w->score, e)) {
        const sw_event *b = &w->score->events[e];
        bool touch = sw_rational_compare(b->onset, sw_event_end(a)) <= 0 &&
                     sw_rational_compare(a->onset, sw_event_end(b)) <= 0;
        if (touch && voices_around(w, e) == voices) {
            return e;
        }
        if (sw_event_is_note(b)) {
            break;
        }
    }
    return SW_NO_INDEX;
}

static void unite(work *w, uint32_t voices, uint32_t event)
{
    const sw_score *score = w->score;
    uint32_t first = sw_voice_chord(score, event);
    uint32_t last = first;
    for (uint32_t e = first; (e = neighbour(w, e, voices, sw_voice_previous)) != SW_NO_INDEX;) {
        first = e;
    }
    for (uint32_t e = first; (e = neighbour(w, e, voices, sw_voice_next)) != SW_NO_INDEX;) {
        last = e;
    }
    uint32_t begin = sw_event_is_note(&score->events[first]) ? first : next_note(w, first);
    char place[SW_SAY];
    char end[SW_SAY];
    char label[32];
    sw_choices_begin(
        &w->choices, first, "%s, %s: two voices into one up to %s",
        sw_say_place(score, score->events[first].onset, place),
        sw_staff_label(w->reading, score, score->voices[score->events[first].voice].staff, label),
        sw_say_place(score, score->events[last].onset, end));
    sw_choices_add(&w->choices, (sw_change){.kind = SW_CHANGE_UNITE, .event = first, .mark = voices});
    uint32_t behind = next_note(w, last);
    bool ends = behind == SW_NO_INDEX || voices_around(w, behind) != SW_NO_INDEX ||
                word_at(w, behind, false) != SW_NO_INDEX;
    for (uint32_t e = begin; ends && e != SW_NO_INDEX; e = neighbour(w, e, voices, sw_voice_next)) {
        w->open = remove_word(w, e, true) || w->open; /* "div.", and "div. a 3" where more notes come */
    }
    w->open = w->open && !remove_word(w, behind, false);
}

static bool run(sw_move *move, const sw_unite_options *options, const sw_read_options *reading_options,
                char **error)
{
    sw_opening o;
    if (!sw_opening_find(move, options->film, &options->places, &o, error)) {
        return false;
    }
    work w = {.reading = o.chosen.reading,
              .score = o.chosen.score,
              .playing = o.playing,
              .parent = sw_parents_of(o.chosen.reading),
              .seen = sw_alloc_zero(o.chosen.reading->music_count + 1, sizeof(bool)),
              .choices = {.move = "unite"}};
    for (size_t i = 0; i < o.chosen.count; i++) {
        uint32_t voices = voices_around(&w, o.chosen.events[i]);
        if (voices != SW_NO_INDEX && !w.seen[voices]) {
            w.seen[voices] = true;
            unite(&w, voices, o.chosen.events[i]);
        }
    }
    sw_edit_request request = sw_chosen_request(move, &o.chosen, options->elsewhere, reading_options);
    sw_choices_make(move, &w.choices, &request);
    sw_choices_free(&w.choices);
    free(w.seen);
    free(w.parent);
    sw_opening_free(&o);
    return true;
}

sw_move *sw_move_unite(const char *path, const sw_unite_options *options,
                       const sw_read_options *reading_options, char **error)
{
    sw_move *move = sw_move_open(path, reading_options, error);
    return sw_move_close(move, move != NULL && run(move, options, reading_options, error));
}
