/* Ways of playing that are begun and not ended, or ended and not begun.
 *
 * Three traces: a note that can only be bowed where the players still pluck; a word that takes back what
 * nobody has said; a mute, a stopped bell or divisi that stays on to the end though it began in the middle.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "checks/rules.h"
#include "checks/say.h"
#include "players/staff_instrument.h"

enum { LONG_STAY = 12 }; /* bars with notes behind a word that nobody takes back */

/* One staff of the score that is looked at; its words are [first, end) of the score's. */
typedef struct scene {
    sw_check *check;
    const sw_score *score;
    uint32_t number; /* of the score */
    const sw_playing *playing;
    uint32_t staff;
    sw_staff_events events;
    size_t first;
    size_t end;
} scene;

static const sw_technique *technique_of(const scene *s, uint8_t number)
{
    return sw_techniques_get(s->check->techniques, number);
}

static const sw_technique_group *group_of(const scene *s, uint8_t technique)
{
    return sw_techniques_group(s->check->techniques, technique_of(s, technique)->group);
}

static void add(const scene *s, sw_severity severity, const sw_music *at, sw_rational onset, const char *what)
{
    char place[SW_SAY];
    char label[32];
    sw_findings_add(s->check->findings, severity, "technique-open", at->file, at->start, at->end,
                    "%s, %s: %s", sw_say_place(s->score, onset, place),
                    sw_staff_label(s->check->reading, s->score, s->staff, label), what);
}

/* The text of a word, as it is written. */
static const char *text_of(const scene *s, const sw_technique_word *word)
{
    return sw_music_mark_text(s->check->reading, word->mark);
}

static int bar_number(const scene *s, sw_rational onset)
{
    uint32_t bar = sw_score_bar_at(s->score, onset);
    return bar == SW_NO_INDEX ? 1 : s->score->bars[bar].number;
}

/* ---- bowed though plucked -------------------------------------------------------------------------------
 */

/* What shows that a note is bowed: "" for nothing. */
static const char *bowed_by(const sw_reading *reading, uint32_t mark)
{
    sw_slice text = sw_music_slice(reading, mark);
    if (sw_slice_ends(text, "\\upbow") || sw_slice_ends(text, "\\downbow")) {
        return "a bow mark";
    }
    switch (sw_music_mark_class(reading, mark)) {
    case SW_MARK_SLUR_START:
        return "a slur";
    case SW_MARK_TREMOLO:
        return "a tremolo";
    default:
        return sw_slice_ends(text, "\\trill") ? "a trill" : "";
    }
}

static const char *event_bowed_by(const sw_reading *reading, const sw_event *event)
{
    for (uint32_t m = reading->music[event->chord].first; m != SW_NO_INDEX; m = reading->music[m].next) {
        if (reading->music[m].kind == SW_MUSIC_MARK && *bowed_by(reading, m) != '\0') {
            return bowed_by(reading, m);
        }
    }
    return "";
}

/* The last word before a moment that plucks; NULL: a mark on the note itself. */
static const sw_technique_word *plucking_word(const scene *s, sw_rational onset)
{
    const sw_technique_word *found = NULL;
    for (size_t i = s->first; i < s->end; i++) {
        const sw_technique_word *word = &s->playing->words[i];
        if (technique_of(s, word->technique)->plucked && sw_rational_compare(word->onset, onset) <= 0) {
            found = word;
        }
    }
    return found;
}

/* How the file of a note writes "arco", on its own staff if possible; plainly where it does not: a variable
 * of another file need not be there when a part is printed. */
static sw_slice written_arco(const scene *s, uint32_t file, uint8_t arco)
{
    sw_slice found = sw_slice_of("^\"arco\"");
    for (size_t i = s->playing->word_count; i-- > 0;) {
        const sw_technique_word *word = &s->playing->words[i];
        bool here = s->check->reading->music[word->mark].file == file;
        if (here && word->technique == arco && strcasecmp(text_of(s, word), "arco") == 0) {
            found = sw_music_slice(s->check->reading, word->mark);
            if (word->staff == s->staff) {
                break;
            }
        }
    }
    return found;
}

/* The missing word, at the first bowed note. */
static void offer_arco(const scene *s, uint32_t event, uint8_t arco)
{
    char place[SW_SAY];
    char label[32];
    sw_buffer text = {0};
    sw_buffer says = {0};
    sw_buffer_append(&text,
                     written_arco(s, s->check->reading->music[s->score->events[event].chord].file, arco));
    sw_buffer_format(&says, "%s, %s: arco is written at the bowed note",
                     sw_say_place(s->score, s->score->events[event].onset, place),
                     sw_staff_label(s->check->reading, s->score, s->staff, label));
    sw_change change = {.kind = SW_CHANGE_ADD_MARK, .event = event, .text = sw_buffer_text(&text)};
    sw_fix_by_changes(s->check, true, s->number, &change, 1, sw_buffer_text(&says));
    sw_buffer_free(&text);
    sw_buffer_free(&says);
}

/* The first bowed note after each word that plucks. */
static void find_bowed(const scene *s, uint8_t stroke)
{
    const sw_technique_word *told = NULL;
    for (uint32_t i = s->events.first; i < s->events.end; i++) {
        const sw_technique_state *state = &s->playing->states[s->playing->state_of[i]];
        const sw_event *event = &s->score->events[i];
        bool all_pluck =
            technique_of(s, state->now[stroke])->plucked && technique_of(s, state->half[stroke])->plucked;
        if (!all_pluck || !sw_event_is_played(s->check->reading, s->score, event)) {
            continue;
        }
        const char *how = event_bowed_by(s->check->reading, event);
        const sw_technique_word *word = *how == '\0' ? NULL : plucking_word(s, event->onset);
        if (word == NULL || word == told) {
            continue;
        }
        char what[192];
        snprintf(what, sizeof what,
                 "%s since bar %d, but this note is bowed (%s); write arco where the bow comes back",
                 technique_of(s, word->technique)->id, bar_number(s, word->onset), how);
        add(s, SW_WARNING, sw_event_written(s->check->reading, event), event->onset, what);
        offer_arco(s, i, sw_techniques_group(s->check->techniques, stroke)->plain);
        told = word;
    }
}

/* ---- ended and not begun --------------------------------------------------------------------------------
 */

/* Whether a mark on a note has said something else since the last word of the group ("-+" before "open"). */
static bool is_marked_before(const scene *s, const sw_technique_word *word)
{
    uint8_t group = technique_of(s, word->technique)->group;
    sw_rational since = sw_rational_zero();
    for (const sw_technique_word *w = &s->playing->words[s->first]; w < word; w++) {
        since = technique_of(s, w->technique)->group == group ? w->onset : since;
    }
    for (uint32_t i = s->events.first; i < s->events.end; i++) {
        sw_rational onset = s->score->events[i].onset;
        if (sw_rational_compare(onset, since) >= 0 && sw_rational_compare(onset, word->onset) < 0 &&
            s->playing->states[s->playing->state_of[i]].now[group] != word->technique) {
            return true;
        }
    }
    return false;
}

/* Whether the text of a word changes anything at all. */
static bool changes_something(const scene *s, const sw_technique_word *word)
{
    for (size_t i = s->first; i < s->end; i++) {
        const sw_technique_word *other = &s->playing->words[i];
        if (other->mark == word->mark && sw_rational_equal(other->onset, word->onset) &&
            (other->before != other->technique || is_marked_before(s, other))) {
            return true;
        }
    }
    return false;
}

/* The onset of the first note that is played on the staff. */
static sw_rational first_note(const scene *s)
{
    sw_rational first = s->score->length;
    for (uint32_t i = s->events.first; i < s->events.end; i++) {
        const sw_event *event = &s->score->events[i];
        if (sw_event_is_played(s->check->reading, s->score, event) || event->kind == SW_EVENT_DRUM) {
            first = sw_rational_min(event->onset, first);
        }
    }
    return first;
}

static void find_unbegun(const scene *s, sw_rational first)
{
    for (size_t i = s->first; i < s->end; i++) {
        const sw_technique_word *word = &s->playing->words[i];
        if (!technique_of(s, word->technique)->plain || !group_of(s, word->technique)->must_begin ||
            word->reminder || word->before != word->technique ||
            sw_rational_compare(word->onset, first) <= 0 || changes_something(s, word)) {
            continue;
        }
        char what[192];
        snprintf(what, sizeof what, "\"%.40s\" takes back what was not said; is a word missing before it?",
                 text_of(s, word));
        add(s, SW_NOTE, &s->check->reading->music[word->mark], word->onset, what);
    }
}

/* ---- begun and not ended --------------------------------------------------------------------------------
 */

/* How many bars behind a word have notes of the staff; `single`: only those without chords. */
static size_t bars_behind(const scene *s, sw_rational onset, bool single)
{
    bool *played = sw_alloc_zero(s->score->bar_count + 1, sizeof *played);
    bool *chords = sw_alloc_zero(s->score->bar_count + 1, sizeof *chords);
    uint32_t *voice_of = sw_alloc_zero(s->score->bar_count + 1, sizeof *voice_of);
    for (uint32_t i = s->events.first; i < s->events.end; i++) {
        const sw_event *event = &s->score->events[i];
        uint32_t bar = sw_score_bar_at(s->score, event->onset);
        if (bar == SW_NO_INDEX || sw_rational_compare(event->onset, onset) < 0 ||
            !sw_event_is_played(s->check->reading, s->score, event)) {
            continue;
        }
        chords[bar] = chords[bar] || (event->flags & SW_EVENT_CHORD) != 0 ||
                      (played[bar] && voice_of[bar] != event->voice);
        played[bar] = true;
        voice_of[bar] = event->voice;
    }
    size_t count = 0;
    for (size_t bar = 0; bar < s->score->bar_count; bar++) {
        count += played[bar] && !(single && chords[bar]);
    }
    free(played);
    free(chords);
    free(voice_of);
    return count;
}

/* The last word of a group that holds for one player of the staff, NULL when it says nothing that has to be
 * taken back. */
static const sw_technique_word *open_word(const scene *s, size_t group, unsigned player)
{
    const sw_technique_word *last = NULL;
    for (size_t i = s->first; i < s->end; i++) {
        const sw_technique_word *word = &s->playing->words[i];
        bool his = word->players == 0 || (word->players >> player & 1) != 0;
        last = his && technique_of(s, word->technique)->group == group ? word : last;
    }
    return last == NULL || technique_of(s, last->technique)->plain ? NULL : last;
}

/* Tells of a word that is never taken back, where enough follows. */
static void report_unended(const scene *s, const sw_technique_word *word)
{
    bool divided = strcmp(technique_of(s, word->technique)->id, "divided") == 0;
    if (strcmp(technique_of(s, word->technique)->id, "one-player") == 0 &&
        sw_staff_is_soloist(s->check->instruments, s->check->reading, s->score, s->staff)) {
        return; /* there is nobody else */
    }
    size_t bars = bars_behind(s, word->onset, divided);
    if (bars < LONG_STAY) {
        return;
    }
    char what[192];
    snprintf(what, sizeof what, "\"%.40s\" is never taken back, and %zu bars%s follow; write where it ends",
             text_of(s, word), bars, divided ? " of one line" : " with notes");
    add(s, SW_NOTE, &s->check->reading->music[word->mark], word->onset, what);
}

static void find_unended(const scene *s, sw_rational first)
{
    for (size_t g = 0; g < sw_techniques_group_count(s->check->techniques); g++) {
        const sw_technique_word *told = NULL;
        bool must_end = sw_techniques_group(s->check->techniques, g)->must_end;
        for (unsigned player = 0; must_end && player < s->playing->players[s->staff]; player++) {
            const sw_technique_word *word = open_word(s, g, player);
            if (word != NULL && word != told && sw_rational_compare(word->onset, first) > 0) {
                report_unended(s, word);
                told = word;
            }
        }
    }
}

/* ---- the rule -------------------------------------------------------------------------------------------
 */

static void check_score(sw_check *check, size_t number)
{
    const sw_playing *playing = sw_check_playing(check, number);
    uint8_t bowed = sw_techniques_find(check->techniques, "arco");
    scene s = {.check = check,
               .score = &check->reading->scores[number],
               .number = (uint32_t)number,
               .playing = playing};
    for (s.first = 0; s.first < playing->word_count; s.first = s.end) {
        s.staff = playing->words[s.first].staff;
        for (s.end = s.first; s.end < playing->word_count && playing->words[s.end].staff == s.staff;
             s.end++) {
        }
        const sw_instrument *instrument = playing->instruments[s.staff];
        if (instrument == NULL) {
            continue;
        }
        s.events = sw_score_staff_events(s.score, s.staff);
        sw_rational first = first_note(&s);
        if (instrument->family == SW_STRINGS && bowed != SW_NO_TECHNIQUE) {
            find_bowed(&s, sw_techniques_get(check->techniques, bowed)->group);
        }
        find_unbegun(&s, first);
        find_unended(&s, first);
    }
}

static void run(sw_check *check)
{
    for (size_t i = 0; i < check->reading->score_count; i++) {
        if (!check->reading->scores[i].in_markup) {
            check_score(check, i);
        }
    }
}

const sw_rule sw_rule_technique_open = {
    .name = "technique-open",
    .summary = "a way of playing that is begun and not ended, or ended and not begun",
    .severity = SW_WARNING,
    .explain =
        "The texts of each staff are followed through time: pizz. and arco, mutes, stopped and open, "
        "sul ponticello\n"
        "and ord., div. and unis. (in English, Italian, German and French). Reported are: the first "
        "note with a slur,\n"
        "a bow mark, a tremolo or a trill while the section still plucks; a word that takes back what "
        "nobody has\n"
        "said (arco while they bow); a word in the middle of a cue that is never taken back, when 12 "
        "or more bars\n"
        "with notes follow. A player who meets one of these stops and asks, and the session waits.\n\n"
        "A word in brackets, \"(arco)\", is a reminder and is never strange; so is a word at the "
        "first note. The 12\n"
        "bars are a figure of this program: a piece may well end muted.\n\n"
        "To mend: write the missing word, or take away the one too many. check --fix writes arco at the "
        "first bowed note.\n",
    .run = run,
};
