#include "checks/say.h"

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const char *sw_say_place(const sw_score *score, sw_rational onset, char text[SW_SAY])
{
    uint32_t bar = sw_score_bar_at(score, onset);
    sw_rational beat = sw_score_beat(score, onset);
    int64_t whole = sw_rational_floor(beat);
    sw_rational part = sw_rational_sub(beat, sw_rational_make(whole, 1));
    int number = bar == SW_NO_INDEX ? 1 : score->bars[bar].number;
    if (sw_rational_is_zero(part)) {
        snprintf(text, SW_SAY, "bar %d, beat %lld", number, (long long)whole);
    } else {
        char fraction[SW_RATIONAL_TEXT];
        snprintf(text, SW_SAY, "bar %d, beat %lld %s", number, (long long)whole,
                 sw_rational_print(part, fraction));
    }
    return text;
}

const char *sw_say_pitch(sw_pitch pitch, char text[SW_SAY])
{
    static const char *const words[] = {
        "double flat ", "three-quarter flat ",  "flat ",        "quarter flat ", "", "quarter sharp ",
        "sharp ",       "three-quarter sharp ", "double sharp "};
    bool known = pitch.alter >= -4 && pitch.alter <= 4;
    const char *word = known ? words[pitch.alter + 4] : "";
    snprintf(text, SW_SAY, "%c%s%s%d", "CDEFGAB"[pitch.step], word[0] == '\0' ? "" : " ", word,
             pitch.octave + 4);
    return text;
}

const char *sw_say_interval(int semitones, char text[SW_SAY])
{
    static const char *const small[] = {
        "nothing",   "a semitone", "a whole tone",  "a minor third", "a major third",   "a fourth",
        "a tritone", "a fifth",    "a minor sixth", "a major sixth", "a minor seventh", "a major seventh"};
    int size = abs(semitones);
    int octaves = size / 12;
    if (octaves == 0) {
        snprintf(text, SW_SAY, "%s", small[size]);
        return text;
    }
    int length =
        octaves == 1 ? snprintf(text, SW_SAY, "an octave") : snprintf(text, SW_SAY, "%d octaves", octaves);
    if (size % 12 != 0) {
        snprintf(text + length, SW_SAY - (size_t)length, " and %s", small[size % 12]);
    }
    return text;
}

const char *sw_say_span(int steps, char text[SW_SAY])
{
    static const char *const names[] = {"a unison",  "a second",  "a third", "a fourth", "a fifth", "a sixth",
                                        "a seventh", "an octave", "a ninth", "a tenth",  "an 11th", "a 12th"};
    if (steps >= 0 && (size_t)steps < sizeof names / sizeof names[0]) {
        snprintf(text, SW_SAY, "%s", names[steps]);
    } else if (steps % 7 == 0) {
        snprintf(text, SW_SAY, "%d octaves", steps / 7);
    } else {
        int number = steps + 1;
        const char *ending = number % 10 == 1   ? "st"
                             : number % 10 == 2 ? "nd"
                             : number % 10 == 3 ? "rd"
                                                : "th";
        snprintf(text, SW_SAY, "%s %d%s", number == 18 ? "an" : "a", number,
                 number % 100 >= 11 && number % 100 <= 13 ? "th" : ending);
    }
    return text;
}

static int compare_bars(const void *a, const void *b)
{
    const uint32_t *x = a;
    const uint32_t *y = b;
    return (*x > *y) - (*x < *y);
}

void sw_say_bars(const sw_score *score, uint32_t *bars, size_t count, sw_buffer *text)
{
    enum { MOST = 6 };
    qsort(bars, count, sizeof *bars, compare_bars);
    size_t kept = 0;
    for (size_t i = 0; i < count; i++) { /* each once */
        if (kept == 0 || bars[kept - 1] != bars[i]) {
            bars[kept++] = bars[i];
        }
    }
    sw_buffer_string(text, kept == 1 ? "bar " : "bars ");
    size_t runs = 0;
    for (size_t i = 0, end; i < kept && runs <= MOST; i = end, runs++) {
        for (end = i + 1; end < kept && bars[end] == bars[end - 1] + 1; end++) {
        }
        if (runs == MOST) {
            sw_buffer_string(text, " ...");
            break;
        }
        sw_buffer_format(text, "%s%d", runs == 0 ? "" : ", ", score->bars[bars[i]].number);
        if (end - i > 1) {
            sw_buffer_format(text, "-%d", score->bars[bars[end - 1]].number);
        }
    }
}

const char *sw_say_seconds(double seconds, char text[SW_SAY])
{
    if (seconds < 0.05) {
        snprintf(text, SW_SAY, "no time");
    } else {
        snprintf(text, SW_SAY, "%.*f s", seconds < 9.95 ? 1 : 0, seconds);
    }
    return text;
}

const char *sw_say_instrument(const sw_instrument *instrument, char text[SW_SAY])
{
    static const char *const hyphened[] = {"tam-tam", "hi-hat", "tom-toms", "roto-toms"};
    bool keeps = false;
    snprintf(text, SW_SAY, "%s", instrument->id);
    for (size_t i = 0; i < sizeof hyphened / sizeof hyphened[0]; i++) {
        keeps = keeps || strcmp(text, hyphened[i]) == 0;
    }
    for (size_t i = 0; text[i] != '\0' && !keeps; i++) {
        text[i] = text[i] == '-' ? ' ' : text[i];
    }
    char *key = strstr(text, " in ");
    if (key != NULL) { /* "clarinet in eb": the key's letter is a capital */
        key[4] = (char)toupper((unsigned char)key[4]);
    }
    return text;
}

const char *sw_say_count(size_t count, const char *thing, char text[SW_SAY])
{
    snprintf(text, SW_SAY, "%zu %s%s", count, thing, count == 1 ? "" : "s");
    return text;
}

static bool any_mark(const sw_reading *reading, uint32_t music,
                     bool (*wanted)(const sw_reading *reading, uint32_t mark))
{
    for (uint32_t m = reading->music[music].first; m != SW_NO_INDEX; m = reading->music[m].next) {
        if (reading->music[m].kind == SW_MUSIC_MARK && wanted(reading, m)) {
            return true;
        }
    }
    return false;
}

bool sw_event_has_mark(const sw_reading *reading, const sw_event *event,
                       bool (*wanted)(const sw_reading *reading, uint32_t mark))
{
    /* A repeated chord has the marks inside of the chord again, but not those behind its single note. */
    uint8_t kind = reading->music[event->chord].kind;
    bool own = event->music == event->chord || kind == SW_MUSIC_CHORD || (event->flags & SW_EVENT_CHORD) != 0;
    return any_mark(reading, event->chord, wanted) || (own && any_mark(reading, event->music, wanted));
}

const sw_music *sw_event_written(const sw_reading *reading, const sw_event *event)
{
    const sw_music *chord = &reading->music[event->chord];
    bool repeated = chord->kind == SW_MUSIC_REPEAT_CHORD || chord->kind == SW_MUSIC_BARE;
    return repeated ? chord : &reading->music[event->music];
}

bool sw_tempo_is_told(const sw_reading *reading, const sw_score *score, sw_rational onset)
{
    bool told = false;
    for (size_t i = 0; i < score->tempo_count && !told; i++) {
        const sw_tempo *tempo = &score->tempos[i];
        told = tempo->music != SW_NO_INDEX && reading->music[tempo->music].name2 != 0 &&
               sw_rational_compare(tempo->onset, onset) <= 0;
    }
    return told;
}

bool sw_event_is_played(const sw_reading *reading, const sw_score *score, const sw_event *event)
{
    const unsigned not_his = SW_EVENT_CUE | SW_EVENT_HIDDEN | SW_EVENT_UNCERTAIN;
    return event->kind == SW_EVENT_NOTE && (event->flags & not_his) == 0 &&
           strcmp(sw_reading_name(reading, score->voices[event->voice].type), "CueVoice") != 0;
}

bool sw_mark_is_fermata(const sw_reading *reading, uint32_t mark)
{
    sw_slice text = sw_music_slice(reading, mark);
    return memmem(text.data, text.length, "fermata", 7) != NULL;
}

bool sw_mark_is_up_bow(const sw_reading *reading, uint32_t mark)
{
    return sw_slice_ends(sw_music_slice(reading, mark), "\\upbow");
}
