/* A passage becomes small optional notes, or full notes again.
 *
 * The notes stay where they are, in their own voice, behind \magnifyMusic, with the name of an instrument
 * over the first one. So slurs, ties, beams and lyrics go on across the edges, and a player who takes the
 * passage reads all that the line needs. A voice of their own (\new CueVoice) would cut those, and the
 * checks, which leave other people's notes alone, would not say whether these can be played. Rests are not
 * put beside the notes: a second voice would move every stem, and what is optional is counted along anyway.
 *
 * The way back takes out just these words, so that the file is as it was before. */
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "moves/choices.h"
#include "moves/linked.h"
#include "moves/places.h"

/* The size of small notes beside full ones: common practice, no source. */
static const char small_notes[] = "\\magnifyMusic 0.63";
static const char name_begin[] = "^\\markup \\small \\italic \"(";
static const char name_end[] = ")\"";

typedef struct cue {
    sw_move *move;
    const sw_cue_options *options;
    sw_chosen chosen;
    sw_choices choices;
    sw_buffer name;  /* the mark at the first note */
    uint32_t *calls; /* of small notes: MUSIC nodes */
    size_t call_count;
} cue;

static const sw_event *event_at(const cue *c, uint32_t event)
{
    return &c->chosen.score->events[event];
}

static const char *label_of(const cue *c, uint32_t event, char text[32])
{
    const sw_score *score = c->chosen.score;
    return sw_staff_label(c->chosen.reading, score, score->voices[event_at(c, event)->voice].staff, text);
}

/* ---- which passages are small already -------------------------------------------------------------------
 */

static void find_calls(cue *c)
{
    const sw_reading *reading = c->chosen.reading;
    const size_t length = sizeof small_notes - 1;
    size_t capacity = 0;
    for (uint32_t m = 0; m < reading->music_count; m++) {
        const sw_music *call = &reading->music[m];
        if (call->end <= call->start + length || call->file >= reading->file_count) {
            continue;
        }
        sw_slice text = sw_music_slice(reading, m);
        if (memcmp(text.data, small_notes, length) == 0) {
            c->calls = sw_grow(c->calls, c->call_count, &capacity, sizeof *c->calls);
            c->calls[c->call_count++] = m;
        }
    }
}

static bool is_inside(const sw_music *item, const sw_music *call)
{
    return item->file == call->file && call->start < item->start && item->end <= call->end;
}

/* The call of small notes around an event's text, SW_NO_INDEX for none. */
static uint32_t call_around(const cue *c, uint32_t event)
{
    const sw_music *music = c->chosen.reading->music;
    for (size_t i = 0; i < c->call_count; i++) {
        if (is_inside(&music[event_at(c, event)->chord], &music[c->calls[i]])) {
            return c->calls[i];
        }
    }
    return SW_NO_INDEX;
}

/* ---- there --------------------------------------------------------------------------------------------- */

static bool check_name(const char *name, char **error)
{
    if (name[0] == '\0' || strpbrk(name, "\"\\\n") != NULL) {
        *error = strdup("--name takes plain text, without quotation marks and backslashes");
        return false;
    }
    return true;
}

/* A stretch of chosen notes of one voice. */
static bool make_small(cue *c, size_t first, size_t last, char **error)
{
    char label[32];
    char place[SW_SAY];
    uint32_t event = c->chosen.events[first];
    const char *name = c->options->name != NULL ? c->options->name : label_of(c, event, label);
    if (!check_name(name, error)) {
        return false;
    }
    c->name.length = 0;
    sw_buffer_format(&c->name, "%s%s%s", name_begin, name, name_end);
    sw_choices_begin(&c->choices, event, "%s, %s: small notes from here on",
                     sw_say_place(c->chosen.score, event_at(c, event)->onset, place),
                     label_of(c, event, label));
    sw_choices_add(&c->choices, (sw_change){.kind = SW_CHANGE_WRAP,
                                            .event = event,
                                            .last = c->chosen.events[last],
                                            .text = small_notes});
    sw_choices_add(&c->choices,
                   (sw_change){.kind = SW_CHANGE_ADD_MARK, .event = event, .text = sw_buffer_text(&c->name)});
    return true;
}

static bool plan_small(cue *c, char **error)
{
    for (size_t i = 0; i < c->chosen.count; i++) {
        uint32_t event = c->chosen.events[i];
        char place[SW_SAY];
        char label[32];
        sw_buffer text = {0};
        const char *where = sw_say_place(c->chosen.score, event_at(c, event)->onset, place);
        if (event_at(c, event)->voice != event_at(c, c->chosen.events[0])->voice) {
            sw_buffer_format(&text, "%s: %s has two voices here; choose bars with one", where,
                             label_of(c, event, label));
        } else if (call_around(c, event) != SW_NO_INDEX) {
            sw_buffer_format(&text, "%s: %s has small notes here already; --undo makes them full notes",
                             where, label_of(c, event, label));
        }
        if (text.length > 0) {
            *error = text.data;
            return false;
        }
    }
    return make_small(c, 0, c->chosen.count - 1, error);
}

/* ---- and back ------------------------------------------------------------------------------------------ */

/* The mark with the name at the first note of small ones. */
static bool is_name(const sw_reading *reading, uint32_t mark)
{
    sw_slice text = sw_music_slice(reading, mark);
    return text.length > sizeof name_begin && memcmp(text.data, name_begin, sizeof name_begin - 1) == 0 &&
           sw_slice_ends(text, name_end);
}

static void make_full(cue *c, uint32_t event, uint32_t call)
{
    const sw_reading *reading = c->chosen.reading;
    const sw_score *score = c->chosen.score;
    char label[32];
    char place[SW_SAY];
    sw_choices_begin(&c->choices, event, "%s, %s: full notes again",
                     sw_say_place(score, event_at(c, event)->onset, place), label_of(c, event, label));
    sw_choices_add(&c->choices,
                   (sw_change){.kind = SW_CHANGE_UNWRAP, .event = event, .mark = call, .text = small_notes});
    uint32_t first = event; /* in the text, also where the passage begins before what was chosen */
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_music *item = &reading->music[score->events[e].chord];
        bool earlier = item->start < reading->music[score->events[first].chord].start;
        first = earlier && is_inside(item, &reading->music[call]) ? e : first;
    }
    for (uint32_t m = reading->music[score->events[first].chord].first; m != SW_NO_INDEX;
         m = reading->music[m].next) {
        if (reading->music[m].kind == SW_MUSIC_MARK && is_name(reading, m)) {
            sw_choices_add(&c->choices,
                           (sw_change){.kind = SW_CHANGE_REMOVE_MARK, .event = first, .mark = m});
        }
    }
}

static bool plan_full(cue *c, char **error)
{
    bool *seen = sw_alloc_zero(c->chosen.reading->music_count + 1, sizeof *seen);
    bool any = false;
    for (size_t i = 0; i < c->chosen.count; i++) {
        uint32_t call = call_around(c, c->chosen.events[i]);
        if (call != SW_NO_INDEX && !seen[call]) {
            make_full(c, c->chosen.events[i], call);
            seen[call] = true;
            any = true;
        }
    }
    free(seen);
    if (!any) {
        *error = strdup("there are no small notes here that this command has made; nothing is changed");
    }
    return any;
}

static bool run(cue *c, const sw_read_options *reading_options, char **error)
{
    if (!sw_places_choose(c->move, &c->options->places, &c->chosen, error)) {
        return false;
    }
    find_calls(c);
    if (!(c->options->undo ? plan_full(c, error) : plan_small(c, error))) {
        return false;
    }
    sw_edit_request request = sw_chosen_request(c->move, &c->chosen, c->options->elsewhere, reading_options);
    request.changes = c->choices.changes;
    request.count = c->choices.change_count;
    bool done = sw_edit_score(&request, &c->move->patch, &c->move->notes, error);
    for (size_t i = 0; done && i < c->choices.count; i++) {
        sw_buffer_format(&c->move->why, "%s\n", c->choices.items[i].why);
    }
    return done;
}

sw_move *sw_move_cue(const char *path, const sw_cue_options *options, const sw_read_options *reading_options,
                     char **error)
{
    cue c = {.move = sw_move_open(path, reading_options, error), .options = options};
    c.move = sw_move_close(c.move, c.move != NULL && run(&c, reading_options, error));
    sw_choices_free(&c.choices);
    sw_buffer_free(&c.name);
    free(c.calls);
    free(c.chosen.events);
    return c.move;
}
