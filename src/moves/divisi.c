/* Divides the chords of a section among its players.
 *
 * divisi_plan.c finds the passages and who takes which note. They are written as chords with a text where the
 * division begins and ends (divisi_words.c), as two voices on the staff (divisi_voices.c), half of them
 * trembling (divisi_tremolo.c), or as a staff a part (divisi_staves.c). */
#include <stdlib.h>

#include "moves/divisi_work.h"
#include "moves/linked.h"
#include "moves/opening.h"

static void plan_passages(sw_divisi_work *w)
{
    bool halves = w->options->tremolo_half;
    bool voices = halves || w->options->way == SW_DIVISI_VOICES;
    const sw_divisi_wish wish = {.parts = w->options->parts, .single_too = halves, .in_one_line = voices};
    if (halves) {
        sw_divisi_leave_short_notes(w);
    } else if (voices) {
        sw_divisi_leave_single_players(w);
    }
    sw_divisi_find(&w->plan, &wish, &w->fit);
    sw_divisi_tell_left(w, &wish);
    for (size_t p = 0; p < w->plan.passage_count; p++) {
        const sw_divisi_passage *passage = &w->plan.passages[p];
        if (voices && sw_divisi_is_too_deep(&w->plan, passage)) {
            sw_divisi_tell(w, passage->first,
                           "no second voice is written within a tremolo or a tuplet in a tuplet: left alone");
            continue;
        }
        if (voices && !sw_divisi_is_whole(&w->plan, passage)) {
            sw_divisi_tell(w, passage->first,
                           "a second voice would begin or end within a tuplet: left alone");
            continue;
        }
        if (voices && !sw_divisi_ties_hold(w, passage)) {
            sw_divisi_tell(w, passage->first,
                           "a tie leads out of the passage, or from one voice into another: left alone");
            continue;
        }
        sw_divisi_begin_choice(w, passage);
        if (halves) {
            sw_divisi_write_halves(w, passage);
            continue;
        }
        if (voices) {
            sw_divisi_write_voices(w, passage);
            sw_divisi_tell_graces(w, passage);
        }
        if (sw_divisi_say_division(w, passage)) {
            if (!w->words && !voices) {
                sw_divisi_say_who_holds(w, passage);
            }
            sw_divisi_say_end(w, passage);
        }
    }
}

/* Whether there are players to divide; otherwise *error says why not. */
static bool can_divide(sw_divisi_work *w, char **error)
{
    const sw_score *score = w->plan.score;
    char label[32];
    const char *name = sw_staff_label(w->plan.reading, score, w->plan.staff, label);
    sw_buffer text = {0};
    w->instrument = w->playing->instruments[w->plan.staff];
    w->players = w->fit.seating->staves[w->plan.staff].players;
    sw_family family = w->instrument == NULL ? SW_PERCUSSION : w->instrument->family;
    w->words = family == SW_STRINGS || family == SW_VOICE;
    if (!w->words && family != SW_WOODWIND && family != SW_BRASS) {
        sw_buffer_format(&text,
                         "\"%s\" %s: only strings, voices and winds are divided; name the staff after its "
                         "instrument",
                         name,
                         w->instrument == NULL ? "is no instrument that is known"
                                               : sw_arena_format(w->arena, "plays %s", w->instrument->id));
    } else if (w->options->tremolo_half && family != SW_STRINGS) {
        sw_buffer_format(&text, "\"%s\" has no bows: half tremolo and half plain is for strings", name);
    } else if (w->options->single != SW_DIVISI_AS_BEFORE && w->words) {
        sw_buffer_format(&text, "\"%s\" comes together with \"unis.\": --single is for winds", name);
    } else if (w->players > 0 && w->players < (w->options->parts > 0 ? w->options->parts : 2)) {
        sw_buffer_format(&text, "\"%s\" has %d player%s: too few for that many parts", name, w->players,
                         w->players == 1 ? "" : "s");
    } else if (sw_staff_is_combined(w->plan.reading, score, w->plan.staff)) {
        sw_buffer_format(&text, "two parts are combined on \"%s\": each has its notes in a source of its own",
                         name);
    }
    *error = text.length > 0 ? text.data : NULL;
    return text.length == 0;
}

static bool divide(sw_divisi_work *w, const sw_chosen *chosen, const sw_seating *seating,
                   const sw_read_options *options, char **error)
{
    bool *is_chosen = sw_chosen_map(chosen);
    uint32_t staff = chosen->score->voices[chosen->score->events[chosen->events[0]].voice].staff;
    sw_divisi_read(&w->plan, chosen, staff, is_chosen);
    free(is_chosen);
    const sw_score *score = chosen->score;
    w->fit = (sw_divisi_fit){score, staff, seating,
                             sw_entries_of_score(w->instruments, chosen->reading, score, seating)};
    bool done = can_divide(w, error);
    if (done) {
        sw_divisi_read_words(w);
    }
    if (done && w->options->way == SW_DIVISI_STAVES) {
        done = sw_divisi_write_staves(w, options, error);
    } else if (done) {
        plan_passages(w);
        sw_edit_request request = sw_chosen_request(w->move, chosen, w->options->elsewhere, options);
        sw_choices_make(w->move, &w->choices, &request);
    }
    sw_choices_free(&w->choices);
    sw_divisi_plan_free(&w->plan);
    sw_entries_free(w->fit.entries, score->staff_count);
    return done;
}

static bool run(sw_move *move, const sw_divisi_options *options, const sw_read_options *reading_options,
                char **error)
{
    sw_opening o;
    if (!sw_opening_find(move, options->film, &options->places, &o, error)) {
        return false;
    }
    sw_divisi_work w = {.move = move,
                        .options = options,
                        .instruments = o.instruments,
                        .playing = o.playing,
                        .techniques = o.techniques,
                        .divided = sw_techniques_find(o.techniques, "divided"),
                        .choices = {.move = "divisi"},
                        .arena = sw_arena_new()};
    bool done = divide(&w, &o.chosen, o.who.seating, reading_options, error);
    sw_arena_free(w.arena);
    sw_opening_free(&o);
    return done;
}

sw_move *sw_move_divisi(const char *path, const sw_divisi_options *options,
                        const sw_read_options *reading_options, char **error)
{
    sw_move *move = sw_move_open(path, reading_options, error);
    return sw_move_close(move, move != NULL && run(move, options, reading_options, error));
}
