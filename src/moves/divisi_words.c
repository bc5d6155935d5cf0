/* The words with which a division begins and ends. They are those of the house of strings and voices ("div.",
 * "div. a 3", "unis."); winds, who have one player a note, get "a 2" where they come together again, and "1."
 * where only one of them goes on. */
#include "moves/divisi_winds.h"
#include "moves/divisi_work.h"

/* From a chord on, after what the staff says there, it is known to be in so many parts (0: together). */
static void leave_open(sw_divisi_work *w, size_t chord, int parts)
{
    w->open = parts;
    w->since = sw_divisi_onset(w, chord);
}

static void say_parts(sw_divisi_work *w, size_t chord, int parts)
{
    sw_divisi_add_text(w, chord,
                       parts == 2 ? "^\"div.\"" : sw_arena_format(w->arena, "^\"div. a %d\"", parts));
}

/* What players see is the notes: a passage in four parts that begins with chords of two says "div." there,
 * and "div. a 4" where four notes come. It is not taken back where there are fewer again. */
static void say_more_parts(sw_divisi_work *w, const sw_divisi_passage *passage)
{
    int parts = passage->section.parts;
    int said = w->open < parts ? w->open : 0;
    for (size_t i = passage->first; i <= passage->last && said < parts; i++) {
        int notes = w->options->parts > 0 ? parts : w->plan.chords[i].count;
        if (notes > said) {
            said = notes > 2 ? notes : 2;
            say_parts(w, i, said);
        }
    }
}

bool sw_divisi_say_division(sw_divisi_work *w, const sw_divisi_passage *passage)
{
    const sw_technique_word *word = sw_divisi_word_between(w, w->since, sw_divisi_onset(w, passage->first));
    int players = w->plan.chords[passage->first].players;
    if (word != NULL || players != w->divided_players) { /* the staff has spoken since */
        w->open = 0;
        w->divided_players = players;
    }
    if (w->open == 0 && sw_divisi_says_divided(w, word)) {
        return false;
    }
    if (w->words && w->open != passage->section.parts) {
        say_more_parts(w, passage);
    }
    leave_open(w, passage->first, passage->section.parts);
    return true;
}

void sw_divisi_say_who_holds(sw_divisi_work *w, const sw_divisi_passage *passage)
{
    unsigned said = 0;
    for (size_t i = passage->first; i <= passage->last; i++) {
        unsigned holders = sw_divisi_holders(&w->plan, passage, i);
        const char *who =
            holders == 0 || holders == said || sw_divisi_says_who(w, i)
                ? NULL
                : sw_divisi_say_holders(&w->fit, &passage->section, holders, sw_divisi_onset(w, i), w->arena);
        if (who != NULL) {
            sw_divisi_add_text(w, i, sw_arena_format(w->arena, "^\"%s\"", who));
        }
        said = holders;
    }
}

/* Who of the winds plays behind a passage. */
static const char *who_is_next(const sw_divisi_work *w, const sw_divisi_passage *passage)
{
    sw_divisi_single single = w->options->single;
    const char *chosen = single == SW_DIVISI_ALL
                             ? NULL
                             : sw_divisi_say_chosen(&w->fit, sw_divisi_onset(w, passage->first),
                                                    single == SW_DIVISI_ONE, w->arena);
    return chosen != NULL
               ? chosen
               : sw_arena_format(w->arena, "a %d", w->players > 0 ? w->players : passage->section.parts);
}

/* Whether a section stays divided up to the next passage: nothing but single notes, for less than a bar, lies
 * between them, so that "unis." and "div." would alternate note by note (common practice, no source). As two
 * voices such notes are in the passage itself, or their words go with the voices. */
static bool stays_divided(const sw_divisi_work *w, const sw_divisi_passage *passage)
{
    const sw_divisi_plan *plan = &w->plan;
    bool is_last = passage == &plan->passages[plan->passage_count - 1];
    if (!w->words || w->options->way != SW_DIVISI_CHORDS || is_last) {
        return false;
    }
    size_t until = passage[1].first;
    for (size_t i = passage->last + 1; i <= until; i++) {
        const sw_divisi_chord *chord = &plan->chords[i];
        bool single = chord->count == 1 && chord->stroke->alone;
        if ((i < until && !single) || chord->players != plan->chords[passage->last].players) {
            return false;
        }
    }
    return sw_divisi_is_near(plan, passage->last, until) &&
           sw_divisi_word_between(w, sw_divisi_onset(w, passage->last), sw_divisi_onset(w, until)) == NULL;
}

void sw_divisi_say_end(sw_divisi_work *w, const sw_divisi_passage *passage)
{
    size_t next = passage->last + 1;
    if (next == w->plan.count) {
        return;
    }
    const sw_divisi_chord *chord = &w->plan.chords[next];
    if (w->words &&
        sw_divisi_word_between(w, sw_divisi_onset(w, passage->last), chord->stroke->onset) != NULL) {
        return; /* the staff speaks for itself */
    }
    if (!chord->stroke->alone || chord->tied || (chord->chosen && chord->count != 1) ||
        stays_divided(w, passage)) {
        return;
    }
    leave_open(w, next, 0);
    if (w->words) {
        sw_divisi_add_text(w, next, chord->count > 1 ? "^\"non div.\"" : "^\"unis.\"");
    } else if (chord->count == 1 && !sw_divisi_says_who(w, next)) {
        sw_divisi_add_text(w, next, sw_arena_format(w->arena, "^\"%s\"", who_is_next(w, passage)));
    }
}
