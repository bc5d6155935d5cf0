/* What the source says of its players: who plays, divided or together. */
#include <strings.h>

#include "moves/divisi_work.h"
#include "players/chairs.h"

bool sw_divisi_says_divided(const sw_divisi_work *w, const sw_technique_word *word)
{
    return word != NULL && word->technique == w->divided;
}

/* "non div.", "nicht get.": chords are double stops. */
static bool says_double_stops(const sw_divisi_work *w, const sw_technique_word *word)
{
    if (word == NULL || word->technique == w->divided) {
        return false;
    }
    const char *text = sw_music_mark_text(w->plan.reading, word->mark);
    return strncasecmp(text, "n", 1) == 0;
}

const sw_technique_word *sw_divisi_word_between(const sw_divisi_work *w, sw_rational behind,
                                                sw_rational until)
{
    const sw_technique_word *found = NULL;
    uint8_t group = sw_techniques_get(w->techniques, w->divided)->group;
    for (size_t i = 0; i < w->playing->word_count; i++) {
        const sw_technique_word *word = &w->playing->words[i];
        bool stays = says_double_stops(w, found) && !sw_divisi_says_divided(w, word) &&
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

static bool is_dropped(const sw_divisi_work *w, uint32_t mark)
{
    size_t i = 0;
    while (i < w->dropped_count && w->dropped[i] != mark) {
        i++;
    }
    return i < w->dropped_count;
}

bool sw_divisi_says_who(const sw_divisi_work *w, size_t chord)
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
static int players_at(const sw_divisi_work *w, uint32_t event)
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

void sw_divisi_read_words(sw_divisi_work *w)
{
    for (size_t i = 0; i < w->plan.count; i++) {
        const sw_technique_word *word = sw_divisi_word_between(w, (sw_rational){0, 0}, sw_divisi_onset(w, i));
        w->plan.chords[i].left = w->plan.chords[i].left || says_double_stops(w, word);
        w->plan.chords[i].players = players_at(w, w->plan.chords[i].stroke->event);
    }
}
