/* Two slurred notes that alternate on an instrument that does it badly. */
#include <stdlib.h>
#include <string.h>

#include "checks/entry.h"
#include "checks/rules.h"
#include "checks/say.h"

/* The use of \repeat tremolo in which an event stands; SW_NO_INDEX: in none. */
static uint32_t tremolo_of(const sw_reading *reading, const sw_score *score, const sw_event *event)
{
    for (uint32_t f = event->frame; f != SW_NO_INDEX; f = score->frames[f].parent) {
        const sw_music *m = &reading->music[score->frames[f].music];
        if (m->kind == SW_MUSIC_REPEAT && strcmp(sw_reading_name(reading, m->name), "tremolo") == 0) {
            return f;
        }
    }
    return SW_NO_INDEX;
}

/* The tremolos of two different notes on one staff. */
typedef struct found {
    const sw_event *first;
    const sw_event *second;
    const sw_instrument *instrument;
    uint32_t *bars;
    size_t count;
    size_t capacity;
} found;

static void report(sw_check *check, const sw_score *score, uint32_t staff, const found *f)
{
    char words[3][SW_SAY];
    char label[32];
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s, %s: %s and %s alternate as a tremolo",
                     sw_say_place(score, f->first->onset, words[0]),
                     sw_staff_label(check->reading, score, staff, label),
                     sw_say_pitch(f->first->pitch, words[1]), sw_say_pitch(f->second->pitch, words[2]));
    if (f->count > 1) {
        sw_buffer_string(&text, " (");
        sw_say_bars(score, f->bars, f->count, &text);
        sw_buffer_char(&text, ')');
    }
    sw_buffer_format(&text, ", poor on the %s; give it to flutes, clarinets or strings, or repeat one note",
                     sw_say_instrument(f->instrument, words[0]));
    const sw_music *m = sw_event_written(check->reading, f->first);
    sw_findings_add(check->findings, SW_NOTE, "tremolo", m->file, m->start, m->end, "%s",
                    sw_buffer_text(&text));
    sw_buffer_free(&text);
}

/* The next event of the same tremolo with another pitch, or NULL. */
static const sw_event *other_note(const sw_check *check, const sw_score *score, uint32_t first, uint32_t end,
                                  uint32_t tremolo)
{
    for (uint32_t i = first + 1; i < end; i++) {
        const sw_event *event = &score->events[i];
        if (tremolo_of(check->reading, score, event) != tremolo) {
            return NULL;
        }
        if (event->kind == SW_EVENT_NOTE && !sw_pitch_equal(event->pitch, score->events[first].pitch) &&
            !sw_rational_equal(event->onset, score->events[first].onset)) {
            return event;
        }
    }
    return NULL;
}

static void find(const sw_check *check, const sw_score *score, uint32_t staff, const sw_entries *entries,
                 found *f)
{
    sw_staff_events events = sw_score_staff_events(score, staff);
    uint32_t last = SW_NO_INDEX; /* the tremolo that has been looked at */
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *event = &score->events[i];
        uint32_t tremolo = tremolo_of(check->reading, score, event);
        if (tremolo == SW_NO_INDEX || tremolo == last) {
            continue;
        }
        const sw_instrument *instrument =
            sw_entry_of_note(entries, sw_entries_at(entries, event->onset), i)->instrument;
        if (instrument == NULL || instrument->can.tremolo.slurred != SW_NO ||
            !sw_event_is_played(check->reading, score, event)) {
            continue;
        }
        last = tremolo;
        const sw_event *second = other_note(check, score, i, events.end, tremolo);
        if (second == NULL) {
            continue;
        }
        if (f->count == 0) {
            f->first = event;
            f->instrument = instrument;
            f->second = second;
        }
        f->bars = sw_grow(f->bars, f->count, &f->capacity, sizeof *f->bars);
        f->bars[f->count++] = sw_score_bar_at(score, event->onset);
    }
}

static void check_staff(sw_check *check, const sw_score *score, uint32_t staff)
{
    const sw_entries *entries = &sw_check_entries(check, score)[staff];
    found f = {0};
    if (score->bar_count > 0) {
        find(check, score, staff, entries, &f);
    }
    if (f.count > 0) {
        report(check, score, staff, &f);
    }
    free(f.bars);
}

static void run(sw_check *check)
{
    sw_check_each_staff(check, check_staff);
}

const sw_rule sw_rule_tremolo = {
    .name = "tremolo",
    .summary = "two notes that alternate on an instrument that does it badly",
    .severity = SW_NOTE,
    .explain =
        "A \\repeat tremolo of two notes is light and even on flute and clarinet; on oboe and bassoon\n"
        "slurred leaps speak late and heavily, and on brass they blur. The bars of each staff are\n"
        "told once.\n\n"
        "The figure: slurred arpeggios and tremolos are good on flute and clarinet, poor on oboe and\n"
        "bassoon (Rimsky-Korsakov, Principles of Orchestration); brass: common practice, no source.\n\n"
        "To mend: give it to flutes, clarinets or strings, let two players hold one note each, or\n"
        "repeat one note.\n",
    .run = run,
};
