/* Divides the chords of a section among its players.
 *
 * moves/divisi_plan.c finds the passages and who takes which note. Here they are written: as chords with a
 * text where the division begins and ends, or as two voices on the staff. Texts are those of the house of
 * strings and voices ("div.", "div. a 3", "unis."); winds, who have one player a note, get "a 2" where they
 * come together again, and "1." where only one of them goes on. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "checks/say.h"
#include "moves/choices.h"
#include "moves/divisi_desks.h"
#include "moves/divisi_graces.h"
#include "moves/divisi_winds.h"
#include "moves/linked.h"
#include "moves/opening.h"
#include "players/chairs.h"
#include "write/draft.h"

enum { LOWER = 1, UPPER = 2 }; /* voices */

typedef struct work {
    sw_move *move;
    const sw_divisi_options *options;
    sw_divisi_plan plan;
    const sw_instruments *instruments;
    const sw_instrument *instrument;
    sw_divisi_fit fit;
    int players; /* of the staff; 0: not known */
    bool words;  /* its players say "div." */
    const sw_playing *playing;
    const sw_techniques *techniques;
    uint8_t divided;
    sw_choices choices;
    sw_arena *arena;
    uint32_t *tremolos; /* strokes that only one half gets: MARK nodes */
    size_t tremolo_count;
    const uint32_t *dropped; /* texts that staves of single players do without: MARK nodes */
    size_t dropped_count;
    int open;            /* in how many parts the last passage has left the staff; 0: together */
    int divided_players; /* of that passage */
    sw_rational since;   /* where it has said so; den 0: nowhere */
} work;

static sw_rational onset_of(const work *w, size_t chord)
{
    return w->plan.chords[chord].stroke->onset;
}

static void tell(const work *w, size_t chord, const char *text)
{
    sw_move_tell(w->move, "divisi", w->plan.reading,
                 &w->plan.score->events[w->plan.chords[chord].stroke->event], text);
}

/* ---- what the staff says --------------------------------------------------------------------------------
 */

static bool says_divided(const work *w, const sw_technique_word *word)
{
    return word != NULL && word->technique == w->divided;
}

/* "non div.", "nicht get.": chords are double stops. */
static bool says_double_stops(const work *w, const sw_technique_word *word)
{
    if (word == NULL || word->technique == w->divided) {
        return false;
    }
    const char *text = sw_music_mark_text(w->plan.reading, word->mark);
    return strncasecmp(text, "n", 1) == 0;
}

/* The last word about division on the staff that stands behind a moment (den 0: at any time) and not behind
 * another one; NULL: there is none. "tutti ord." beside "non div." takes nothing back of it. */
static const sw_technique_word *word_between(const work *w, sw_rational behind, sw_rational until)
{
    const sw_technique_word *found = NULL;
    uint8_t group = sw_techniques_get(w->techniques, w->divided)->group;
    for (size_t i = 0; i < w->playing->word_count; i++) {
        const sw_technique_word *word = &w->playing->words[i];
        bool stays = says_double_stops(w, found) && !says_divided(w, word) &&
                     sw_rational_compare(found->onset, word->onset) == 0;
        if (word->staff == w->plan.staff && !word->reminder && !stays &&
            sw_techniques_get(w->techniques, word->technique)->group == group &&
            (behind.den == 0 || sw_rational_compare(word->onset, behind) > 0) &&
            sw_rational_compare(word->onset, until) <= 0) {
            found = word;
        }
    }
    return found;
}

static bool is_dropped(const work *w, uint32_t mark)
{
    size_t i = 0;
    while (i < w->dropped_count && w->dropped[i] != mark) {
        i++;
    }
    return i < w->dropped_count;
}

/* Whether a text at a chord says who of the players plays, and stays on the staves. */
static bool says_who(const work *w, size_t chord)
{
    const sw_reading *reading = w->plan.reading;
    uint32_t written = w->plan.score->events[w->plan.chords[chord].stroke->event].chord;
    for (uint32_t m = reading->music[written].first; m != SW_NO_INDEX; m = reading->music[m].next) {
        if (reading->music[m].kind == SW_MUSIC_MARK &&
            sw_chair_text_read(w->instruments, w->instrument, sw_music_mark_text(reading, m)).kind !=
                SW_CHAIR_TEXT_NONE &&
            !is_dropped(w, m)) {
            return true;
        }
    }
    return false;
}

/* How many of the strings play an event: "solo", "1 desk", "half" leave fewer than the staff has. */
static int players_at(const work *w, uint32_t event)
{
    static const char *const fewer[] = {"one-player", "one-desk", "half-section"};
    const int players[] = {1, w->players == 1 ? 1 : 2, (w->players + 1) / 2};
    for (size_t i = 0; i < sizeof fewer / sizeof fewer[0] && w->words; i++) {
        uint8_t technique = sw_techniques_find(w->techniques, fewer[i]);
        uint8_t group = sw_techniques_get(w->techniques, technique)->group;
        if (sw_playing_now(w->playing, event, group) == technique) {
            return players[i];
        }
    }
    return w->players;
}

/* What the words of the staff say of each chord. */
static void read_words(work *w)
{
    for (size_t i = 0; i < w->plan.count; i++) {
        const sw_technique_word *word = word_between(w, (sw_rational){0, 0}, onset_of(w, i));
        w->plan.chords[i].left = w->plan.chords[i].left || says_double_stops(w, word);
        w->plan.chords[i].players = players_at(w, w->plan.chords[i].stroke->event);
    }
}

/* ---- the words ------------------------------------------------------------------------------------------
 */

static void add_text(work *w, size_t chord, const char *text)
{
    sw_choices_add(
        &w->choices,
        (sw_change){.kind = SW_CHANGE_ADD_MARK, .event = w->plan.chords[chord].stroke->event, .text = text});
}

/* From a chord on, after what the staff says there, it is known to be in so many parts (0: together). */
static void leave_open(work *w, size_t chord, int parts)
{
    w->open = parts;
    w->since = onset_of(w, chord);
}

static void say_parts(work *w, size_t chord, int parts)
{
    add_text(w, chord, parts == 2 ? "^\"div.\"" : sw_arena_format(w->arena, "^\"div. a %d\"", parts));
}

/* What players see is the notes: a passage in four parts that begins with chords of two says "div." there,
 * and "div. a 4" where four notes come. It is not taken back where there are fewer again. */
static void say_more_parts(work *w, const sw_divisi_passage *passage)
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

/* The text with which a passage begins. False where the staff has one itself: its end is no matter then. */
static bool say_division(work *w, const sw_divisi_passage *passage)
{
    const sw_technique_word *word = word_between(w, w->since, onset_of(w, passage->first));
    int players = w->plan.chords[passage->first].players;
    if (word != NULL || players != w->divided_players) { /* the staff has spoken since */
        w->open = 0;
        w->divided_players = players;
    }
    if (w->open == 0 && says_divided(w, word)) {
        return false;
    }
    if (w->words && w->open != passage->section.parts) {
        say_more_parts(w, passage);
    }
    leave_open(w, passage->first, passage->section.parts);
    return true;
}

/* Winds say who is left where not all of them hold on, and that all play again behind it. */
static void say_holders(work *w, const sw_divisi_passage *passage)
{
    unsigned said = 0;
    for (size_t i = passage->first; i <= passage->last; i++) {
        unsigned holders = sw_divisi_holders(&w->plan, passage, i);
        const char *who =
            holders == 0 || holders == said || says_who(w, i)
                ? NULL
                : sw_divisi_say_holders(&w->fit, &passage->section, holders, onset_of(w, i), w->arena);
        if (who != NULL) {
            add_text(w, i, sw_arena_format(w->arena, "^\"%s\"", who));
        }
        said = holders;
    }
}

/* Who of the winds plays behind a passage. */
static const char *who_is_next(const work *w, const sw_divisi_passage *passage)
{
    sw_divisi_single single = w->options->single;
    const char *chosen = single == SW_DIVISI_ALL ? NULL
                                                 : sw_divisi_say_chosen(&w->fit, onset_of(w, passage->first),
                                                                        single == SW_DIVISI_ONE, w->arena);
    return chosen != NULL
               ? chosen
               : sw_arena_format(w->arena, "a %d", w->players > 0 ? w->players : passage->section.parts);
}

/* The text behind a passage: at the next note that is not divided. */
static void say_end(work *w, const sw_divisi_passage *passage)
{
    size_t next = passage->last + 1;
    if (next == w->plan.count) {
        return;
    }
    const sw_divisi_chord *chord = &w->plan.chords[next];
    if (w->words && word_between(w, onset_of(w, passage->last), chord->stroke->onset) != NULL) {
        return; /* the staff speaks for itself */
    }
    if (!chord->stroke->alone || chord->tied || (chord->chosen && chord->count != 1)) {
        return;
    }
    leave_open(w, next, 0);
    if (w->words) {
        add_text(w, next, chord->count > 1 ? "^\"non div.\"" : "^\"unis.\"");
    } else if (chord->count == 1 && !says_who(w, next)) {
        add_text(w, next, sw_arena_format(w->arena, "^\"%s\"", who_is_next(w, passage)));
    }
}

/* ---- two voices -----------------------------------------------------------------------------------------
 */

/* Which voices have a note of a chord: bit 0 the lower one, bit 1 the upper one. The lower half of the parts
 * is the lower voice. */
static unsigned voices_of(const work *w, const sw_divisi_passage *passage, size_t chord, uint32_t event)
{
    const sw_divisi_plan *plan = &w->plan;
    int height = sw_pitch_quarter_tones(plan->score->events[event].pitch);
    unsigned voices = 0;
    for (int part = 0; part < passage->section.parts; part++) {
        uint32_t note = sw_divisi_note(plan, passage, chord, part);
        if (sw_pitch_quarter_tones(plan->score->events[note].pitch) == height) {
            voices |= part < passage->section.parts / 2 ? LOWER : UPPER;
        }
    }
    return voices != 0 && w->options->tremolo_half ? LOWER | UPPER : voices;
}

/* Whether a passage stands in a written-out tremolo, or has a tuplet within a tuplet: no second voice is
 * written there. */
static bool is_too_deep(const sw_divisi_plan *plan, const sw_divisi_passage *passage)
{
    const sw_score *score = plan->score;
    for (size_t i = passage->first; i <= passage->last; i++) {
        uint32_t levels;
        sw_divisi_tuplet(plan, plan->chords[i].stroke->event, &levels);
        if (levels > 1) {
            return true;
        }
    }
    for (uint32_t f = score->events[plan->chords[passage->first].stroke->event].frame; f != SW_NO_INDEX;
         f = score->frames[f].parent) {
        const sw_music *m = &plan->reading->music[score->frames[f].music];
        if (m->kind == SW_MUSIC_REPEAT && strcmp(sw_reading_name(plan->reading, m->name), "tremolo") == 0) {
            return true;
        }
    }
    return false;
}

/* Whether no tie leads from one voice into another, or out of both. */
static bool ties_hold(const work *w, const sw_divisi_passage *passage)
{
    const sw_divisi_plan *plan = &w->plan;
    bool hold = !plan->chords[passage->first].tied;
    for (size_t i = passage->first; i <= passage->last && hold; i++) {
        uint32_t end = sw_voice_chord_end(plan->score, plan->chords[i].stroke->event);
        for (uint32_t e = plan->chords[i].stroke->event; e < end && hold; e++) {
            hold = !sw_voice_is_tied(plan->reading, plan->score, e) ||
                   (i < passage->last && voices_of(w, passage, i, e) == voices_of(w, passage, i + 1, e));
        }
    }
    return hold;
}

/* The first or last event of the tuplet in which an event stands: rests at its edges belong to it. */
static uint32_t edge_of_tuplet(const sw_divisi_plan *plan, uint32_t event,
                               uint32_t (*step)(const sw_score *score, uint32_t event))
{
    uint32_t levels;
    uint32_t tuplet = sw_divisi_tuplet(plan, event, &levels);
    for (uint32_t e = event; tuplet != SW_NO_INDEX && e != SW_NO_INDEX; e = step(plan->score, e)) {
        bool inside = sw_divisi_tuplet(plan, e, &levels) == tuplet;
        if (!inside && sw_event_is_note(&plan->score->events[e])) {
            break; /* what is silent may be a spacer of another line in the same voice */
        }
        event = inside ? e : event;
    }
    return event;
}

/* The lower voice gets the notes of the lower parts, and the chords lose what only the lower parts have. */
static void write_voices(work *w, const sw_divisi_passage *passage)
{
    const sw_divisi_plan *plan = &w->plan;
    uint32_t first = edge_of_tuplet(plan, plan->chords[passage->first].stroke->event, sw_voice_previous);
    uint32_t last = edge_of_tuplet(plan, plan->chords[passage->last].stroke->event, sw_voice_next);
    uint32_t *lower = sw_arena_alloc(w->arena, plan->score->event_count * sizeof *lower);
    size_t lower_count = 0;
    uint32_t *only = sw_arena_alloc(w->arena, plan->score->event_count * sizeof *only);
    size_t only_count = 0;
    for (size_t i = passage->first; i <= passage->last; i++) {
        uint32_t end = sw_voice_chord_end(plan->score, plan->chords[i].stroke->event);
        for (uint32_t e = plan->chords[i].stroke->event; e < end; e++) {
            unsigned voices = voices_of(w, passage, i, e);
            if ((voices & LOWER) != 0) {
                lower[lower_count++] = e;
            }
            if (voices == LOWER) {
                only[only_count++] = e;
            }
        }
    }
    sw_choices_add(&w->choices, (sw_change){.kind = SW_CHANGE_NEW_VOICE,
                                            .event = first,
                                            .last = last,
                                            .notes = lower,
                                            .note_count = lower_count,
                                            .left = w->tremolos,
                                            .left_count = w->tremolo_count,
                                            .text = w->options->tremolo_half ? "_\"half ord.\"" : NULL});
    for (size_t i = 0; i < only_count; i++) {
        sw_choices_add(&w->choices, (sw_change){.kind = SW_CHANGE_REMOVE_NOTE, .event = only[i]});
    }
}

/* ---- half tremolo, half plain ---------------------------------------------------------------------------
 */

static uint32_t tremolo_at(const work *w, size_t chord)
{
    const sw_reading *reading = w->plan.reading;
    uint32_t written = w->plan.score->events[w->plan.chords[chord].stroke->event].chord;
    for (uint32_t m = reading->music[written].first; m != SW_NO_INDEX; m = reading->music[m].next) {
        if (reading->music[m].kind == SW_MUSIC_MARK && sw_music_mark_class(reading, m) == SW_MARK_TREMOLO) {
            return m;
        }
    }
    return SW_NO_INDEX;
}

static bool is_plucked(const work *w, size_t chord)
{
    uint8_t pizzicato = sw_techniques_find(w->techniques, "pizzicato");
    uint8_t group = sw_techniques_get(w->techniques, pizzicato)->group;
    return sw_playing_now(w->playing, w->plan.chords[chord].stroke->event, group) == pizzicato;
}

/* The upper voice gets strokes on all its notes, the lower one none. */
static void write_halves(work *w, const sw_divisi_passage *passage)
{
    size_t count = passage->last - passage->first + 1;
    w->tremolos = sw_arena_alloc(w->arena, count * sizeof *w->tremolos);
    w->tremolo_count = 0;
    for (size_t i = passage->first; i <= passage->last; i++) {
        uint32_t mark = tremolo_at(w, i);
        if (mark != SW_NO_INDEX) {
            w->tremolos[w->tremolo_count++] = mark;
        }
    }
    write_voices(w, passage);
    for (size_t i = passage->first; i <= passage->last; i++) {
        if (tremolo_at(w, i) == SW_NO_INDEX) {
            add_text(w, i, ":32");
        }
    }
    add_text(w, passage->first, "^\"half trem.\"");
    size_t next = passage->last + 1;
    if (next < w->plan.count && w->plan.chords[next].stroke->alone) {
        bool trembles = tremolo_at(w, next) != SW_NO_INDEX;
        add_text(w, next,
                 trembles              ? "^\"tutti trem.\""
                 : is_plucked(w, next) ? "^\"tutti\"" /* "ord." would be the bow */
                                       : "^\"tutti ord.\"");
    }
}

/* Whether the hand trills a note, which is no tremolo of the bow. */
static bool is_trilled(const work *w, size_t chord)
{
    const sw_reading *reading = w->plan.reading;
    uint32_t written = w->plan.score->events[w->plan.chords[chord].stroke->event].chord;
    for (uint32_t m = reading->music[written].first; m != SW_NO_INDEX; m = reading->music[m].next) {
        sw_slice text = sw_music_slice(reading, m);
        if (reading->music[m].kind == SW_MUSIC_MARK &&
            (sw_slice_ends(text, "\\trill") || sw_slice_ends(text, "\\startTrillSpan"))) {
            return true;
        }
    }
    return false;
}

/* Notes on which so many strokes can't be written, plucked and trilled ones. */
static void leave_short_notes(work *w)
{
    for (size_t i = 0; i < w->plan.count; i++) {
        const sw_stroke *stroke = w->plan.chords[i].stroke;
        sw_rational length = sw_rational_sub(stroke->end, stroke->onset);
        bool is_short = sw_rational_compare(length, sw_rational_make(1, 16)) < 0;
        bool plucked = is_plucked(w, i);
        if (w->plan.chords[i].chosen && (is_short || plucked || is_trilled(w, i))) {
            w->plan.chords[i].left = true;
            tell(w, i,
                 is_short  ? "too short for a tremolo: left alone"
                 : plucked ? "no tremolo is plucked: left alone"
                           : "a trill is no tremolo: left alone");
        }
    }
}

/* ---- why ------------------------------------------------------------------------------------------------
 */

/* What a part has to play: "1st C5 to F5". */
static void tell_part(const work *w, const sw_divisi_passage *passage, int part, sw_buffer *text)
{
    static const char *const numbers[SW_DIVISI_MOST] = {"1st", "2nd", "3rd", "4th", "5th", "6th"};
    const sw_event *events = w->plan.score->events;
    sw_pitch low = events[sw_divisi_note(&w->plan, passage, passage->first, part)].pitch;
    sw_pitch high = low;
    for (size_t i = passage->first; i <= passage->last; i++) {
        sw_pitch pitch = events[sw_divisi_note(&w->plan, passage, i, part)].pitch;
        low = sw_pitch_compare(pitch, low) < 0 ? pitch : low;
        high = sw_pitch_compare(pitch, high) > 0 ? pitch : high;
    }
    char from[SW_PITCH_TEXT];
    char to[SW_PITCH_TEXT];
    sw_buffer_format(text, ", %s %s", numbers[passage->section.parts - 1 - part], sw_pitch_print(high, to));
    if (!sw_pitch_equal(low, high)) {
        sw_buffer_format(text, " down to %s", sw_pitch_print(low, from));
    }
    if (w->plan.chords[passage->first].players > 0) {
        int players = passage->section.sizes[part];
        sw_buffer_format(text, " (%d %s", players, players == 1 ? "player" : "players");
        const sw_instrument *own = passage->groups.instruments[passage->section.groups[part]];
        if (own != NULL) { /* of several */
            sw_buffer_format(text, ", %s", own->id);
        }
        if (w->instrument->family == SW_STRINGS) {
            sw_divisi_say_desks(&passage->section, part, text);
        }
        sw_buffer_char(text, ')');
    }
}

static void begin_choice(work *w, const sw_divisi_passage *passage)
{
    const sw_score *score = w->plan.score;
    char place[SW_SAY];
    char end[SW_SAY];
    char label[32];
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s, %s: ", sw_say_place(score, onset_of(w, passage->first), place),
                     sw_staff_label(w->plan.reading, score, w->plan.staff, label));
    if (w->options->tremolo_half) {
        sw_buffer_string(&text, "half of them tremolo, half plain");
    } else {
        sw_buffer_format(&text, "divided in %d", passage->section.parts);
    }
    if (passage->last > passage->first) {
        sw_buffer_format(&text, " up to %s", sw_say_place(score, onset_of(w, passage->last), end));
    }
    for (int part = w->options->tremolo_half ? 0 : passage->section.parts; part-- > 0;) {
        tell_part(w, passage, part, &text);
    }
    sw_choices_begin(&w->choices, w->plan.chords[passage->first].stroke->event, "%s", sw_buffer_text(&text));
    sw_buffer_free(&text);
}

/* A line for what was chosen and is left as it is. */
static void tell_left(work *w, const sw_divisi_wish *wish)
{
    int most = wish->parts > 0 ? wish->parts : SW_DIVISI_MOST;
    for (size_t i = 0; i < w->plan.count; i++) {
        const sw_divisi_chord *chord = &w->plan.chords[i];
        bool asked = chord->chosen && chord->stroke->alone && (chord->count > 1 || wish->single_too);
        char text[SW_SAY];
        if (asked && chord->count > most) {
            snprintf(text, sizeof text, "%d notes for %d parts: left alone", chord->count, most);
            tell(w, i, text);
        } else if (asked && sw_divisi_lacks_players(wish, chord)) {
            bool notes = chord->count >= wish->parts && chord->count > 1;
            int wanted = notes ? chord->count : wish->parts > 2 ? wish->parts : 2;
            snprintf(text, sizeof text, "%d %s for %d player%s: left alone", wanted,
                     notes ? "notes" : "parts", chord->players, chord->players == 1 ? "" : "s");
            tell(w, i, text);
        }
    }
}

/* ---- a staff a part -------------------------------------------------------------------------------------
 */

/* The parts of the division with which a passage is played: bit 0 is the uppermost. */
static void share_passage(const work *w, const sw_divisi_passage *passage, uint8_t *event_parts)
{
    const sw_divisi_plan *plan = &w->plan;
    for (size_t i = passage->first; i <= passage->last; i++) {
        uint32_t end = sw_voice_chord_end(plan->score, plan->chords[i].stroke->event);
        for (uint32_t e = plan->chords[i].stroke->event; e < end; e++) {
            int height = sw_pitch_quarter_tones(plan->score->events[e].pitch);
            event_parts[e] = 0;
            for (int part = 0; part < passage->section.parts; part++) {
                uint32_t note = sw_divisi_note(plan, passage, i, part);
                bool own = sw_pitch_quarter_tones(plan->score->events[note].pitch) == height;
                event_parts[e] |= (uint8_t)(own ? 1u << (passage->section.parts - 1 - part) : 0);
            }
        }
    }
}

/* A second voice has no grace notes. */
static void tell_graces(const work *w, const sw_divisi_passage *passage)
{
    for (uint32_t e = 0; (e = sw_divisi_next_grace(&w->plan, passage, e)) != SW_NO_INDEX; e++) {
        sw_move_tell(w->move, "divisi", w->plan.reading, &w->plan.score->events[e],
                     "the grace notes stay together in the upper voice: divide them by hand");
    }
}

/* Nobody comes in on a note that others hold: what is tied has only those parts that have begun it. */
static void keep_ties(const sw_divisi_plan *plan, uint8_t *event_parts)
{
    for (size_t i = 0; i < plan->count; i++) {
        uint32_t end = sw_voice_chord_end(plan->score, plan->chords[i].stroke->event);
        for (uint32_t e = plan->chords[i].stroke->event; e < end; e++) {
            uint32_t next = sw_voice_is_tied(plan->reading, plan->score, e)
                                ? sw_voice_joined(plan->score, sw_voice_chord(plan->score, e))
                                : SW_NO_INDEX;
            next = sw_voice_pitch(plan->score, next, plan->score->events[e].pitch);
            if (next != SW_NO_INDEX && (event_parts[next] & event_parts[e]) != 0) {
                event_parts[next] &= event_parts[e];
            }
        }
    }
}

/* Whether the staff has said who plays since the last chord of several notes before a note. */
static bool says_who_since(const work *w, size_t chord)
{
    const sw_seats *seats = sw_seating_at(w->fit.seating, w->fit.staff, onset_of(w, chord));
    size_t before = chord;
    while (before > 0 && w->plan.chords[before].count < 2) {
        before--;
    }
    return w->plan.chords[before].count < 2 ||
           (seats != NULL && sw_rational_compare(seats->from, onset_of(w, before)) > 0);
}

/* The parts that play a single note of winds between divided chords: whom the staff named last, or as
 * --single says. Bit p for part p, counted from the lowest. */
static unsigned parts_of_single(const work *w, size_t chord, int parts)
{
    const unsigned all = (1u << parts) - 1;
    if (w->words) {
        return all;
    }
    if (w->options->single == SW_DIVISI_AS_BEFORE || says_who_since(w, chord)) {
        return sw_divisi_chosen_parts(&w->fit, onset_of(w, chord), parts);
    }
    return w->options->single == SW_DIVISI_ONE ? 1u << (parts - 1) : all;
}

/* Gives single notes of winds to those who play them, and strings' and voices' to all. */
static void share_singles(const work *w, int parts, uint8_t *event_parts)
{
    for (size_t i = 0; i < w->plan.count; i++) {
        const sw_divisi_chord *chord = &w->plan.chords[i];
        unsigned who = chord->count == 1 && !chord->tied ? parts_of_single(w, i, parts) : 0;
        for (int part = 0; part < parts && who != 0; part++) {
            uint8_t bit = (uint8_t)(1u << (parts - 1 - part));
            event_parts[chord->stroke->event] &= (uint8_t)((who >> part & 1) != 0 ? ~0u : ~(unsigned)bit);
        }
    }
}

/* As many as the largest chord that is to be divided has notes. */
static int parts_of_all(const work *w)
{
    int parts = 2;
    for (size_t i = 0; i < w->plan.count; i++) {
        const sw_divisi_chord *chord = &w->plan.chords[i];
        const sw_divisi_wish any = {0};
        bool counts = chord->chosen && !chord->left && chord->count <= SW_DIVISI_MOST &&
                      !sw_divisi_lacks_players(&any, chord);
        parts = counts && chord->count > parts ? chord->count : parts;
    }
    return w->options->parts > 0 ? w->options->parts : parts;
}

/* On staves of their own, named by their numbers, players need not be told which of them plays. */
static void name_staves(work *w, sw_division *division)
{
    const sw_reading *reading = w->plan.reading;
    const sw_score *score = w->plan.score;
    if (w->words || !sw_divisi_name_players(&w->fit, (int)division->parts, w->arena, division->names)) {
        return;
    }
    sw_staff_events events = sw_score_staff_events(score, w->plan.staff);
    uint32_t *dropped = NULL;
    for (int pass = 0; pass < 2; pass++) { /* count, then fill */
        w->dropped_count = 0;
        for (uint32_t e = events.first; e < events.end; e = sw_voice_chord_end(score, e)) {
            for (uint32_t m = reading->music[score->events[e].chord].first; m != SW_NO_INDEX;
                 m = reading->music[m].next) {
                if (reading->music[m].kind == SW_MUSIC_MARK &&
                    sw_divisi_only_says_who(w->instruments, w->instrument, sw_music_mark_text(reading, m))) {
                    if (pass == 1) {
                        dropped[w->dropped_count] = m;
                    }
                    w->dropped_count++;
                }
            }
        }
        dropped = pass == 0 ? sw_arena_alloc(w->arena, (w->dropped_count + 1) * sizeof *dropped) : dropped;
    }
    w->dropped = dropped;
    division->dropped = dropped;
    division->dropped_count = w->dropped_count;
}

/* Everybody plays what is not divided. */
static bool write_staves(work *w, const sw_read_options *options, char **error)
{
    const sw_divisi_wish wish = {.parts = parts_of_all(w)};
    sw_divisi_find(&w->plan, &wish, &w->fit);
    tell_left(w, &wish);
    if (w->plan.passage_count == 0) {
        return true;
    }
    const sw_score *score = w->plan.score;
    uint8_t *event_parts = sw_arena_alloc(w->arena, score->event_count);
    memset(event_parts, (1 << wish.parts) - 1, score->event_count);
    share_singles(w, wish.parts, event_parts);
    sw_division division = {
        .reading = w->plan.reading,
        .score = score,
        .staff = w->plan.staff,
        .parts = (uint32_t)wish.parts,
        .suffixes = {"DivOne", "DivTwo", "DivThree", "DivFour", "DivFive", "DivSix"},
        .group = "GrandStaff",
        .apart = true,
        .event_parts = event_parts,
    };
    name_staves(w, &division);
    for (size_t i = 0; i < w->plan.count && !w->words; i++) {
        if (says_who(w, i)) {
            tell(w, i, "this text is for the staff of all players; it stands on each staff now");
            break;
        }
    }
    for (size_t p = 0; p < w->plan.passage_count; p++) {
        share_passage(w, &w->plan.passages[p], event_parts);
        sw_divisi_share_graces(&w->plan, &w->plan.passages[p], wish.parts, event_parts);
        begin_choice(w, &w->plan.passages[p]);
        sw_buffer_format(&w->move->why, "%s\n", w->choices.items[w->choices.count - 1].why);
    }
    keep_ties(&w->plan, event_parts);
    sw_division_settle(w->plan.reading, score, w->plan.staff, event_parts);
    sw_move *move = w->move;
    return sw_divide(&division, move->mains, move->main_count, &move->patch, &move->notes, error) &&
           sw_patch_finish(&move->patch, error) &&
           sw_prove_division(&division, move->mains, move->main_count, &move->patch, options, error);
}

/* What one of the winds plays alone is no second voice. */
static void leave_single_players(work *w)
{
    for (size_t i = 0; i < w->plan.count; i++) {
        sw_divisi_chord *chord = &w->plan.chords[i];
        const sw_seats *seats = sw_seating_at(w->fit.seating, w->fit.staff, onset_of(w, i));
        bool known = seats != NULL && seats->all_count > 1 && seats->all_count <= SW_DIVISI_MOST;
        int parts = known ? (int)seats->all_count : 2;
        bool single = chord->count == 1 && !chord->tied;
        chord->left = chord->left || (single && parts_of_single(w, i, parts) != (1u << parts) - 1);
    }
}

/* ---- all ------------------------------------------------------------------------------------------------
 */

static void plan_passages(work *w)
{
    bool halves = w->options->tremolo_half;
    bool voices = halves || w->options->way == SW_DIVISI_VOICES;
    const sw_divisi_wish wish = {.parts = w->options->parts, .single_too = halves, .in_one_line = voices};
    if (halves) {
        leave_short_notes(w);
    } else if (voices) {
        leave_single_players(w);
    }
    sw_divisi_find(&w->plan, &wish, &w->fit);
    tell_left(w, &wish);
    for (size_t p = 0; p < w->plan.passage_count; p++) {
        const sw_divisi_passage *passage = &w->plan.passages[p];
        if (voices && is_too_deep(&w->plan, passage)) {
            tell(w, passage->first,
                 "no second voice is written within a tremolo or a tuplet in a tuplet: left alone");
            continue;
        }
        if (voices && !sw_divisi_is_whole(&w->plan, passage)) {
            tell(w, passage->first, "a second voice would begin or end within a tuplet: left alone");
            continue;
        }
        if (voices && !ties_hold(w, passage)) {
            tell(w, passage->first,
                 "a tie leads out of the passage, or from one voice into another: left alone");
            continue;
        }
        begin_choice(w, passage);
        if (halves) {
            write_halves(w, passage);
            continue;
        }
        if (voices) {
            write_voices(w, passage);
            tell_graces(w, passage);
        }
        if (say_division(w, passage)) {
            if (!w->words && !voices) {
                say_holders(w, passage);
            }
            say_end(w, passage);
        }
    }
}

/* Whether there are players to divide; otherwise *error says why not. */
static bool can_divide(work *w, char **error)
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

static bool divide(work *w, const sw_chosen *chosen, const sw_seating *seating,
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
        read_words(w);
    }
    if (done && w->options->way == SW_DIVISI_STAVES) {
        done = write_staves(w, options, error);
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
    work w = {.move = move,
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
