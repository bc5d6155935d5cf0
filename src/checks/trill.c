/* Trills that the fingers, the slide or the lips don't have. */
#include <stdlib.h>
#include <string.h>

#include "checks/entry.h"
#include "checks/key.h"
#include "checks/rules.h"
#include "checks/say.h"

/* One kind of trill on a staff. */
typedef struct trill {
    const sw_event *event; /* the first */
    const sw_instrument *instrument;
    sw_pitch low; /* written */
    sw_pitch high;
    sw_trill_grade grade;
    uint32_t *bars;
    size_t count;
    size_t capacity;
} trill;

typedef struct trills {
    trill *items;
    size_t count;
    size_t capacity;
} trills;

static bool is_trill(const sw_reading *reading, uint32_t mark)
{
    sw_slice text = sw_music_slice(reading, mark);
    return sw_slice_ends(text, "\\trill") || sw_slice_ends(text, "\\startTrillSpan");
}

/* A sign above the trill says another note than the key. */
static bool is_sign(const sw_reading *reading, uint32_t mark)
{
    sw_slice text = sw_music_slice(reading, mark);
    static const char *const signs[] = {"\\sharp", "\\flat", "\\natural", "accidental"};
    for (size_t i = 0; i < sizeof signs / sizeof signs[0]; i++) {
        if (memmem(text.data, text.length, signs[i], strlen(signs[i])) != NULL) {
            return true;
        }
    }
    return false;
}

/* The mildest grade of all readings of a note; `t` gets the notes of the first one. */
static sw_trill_grade grade_of(const sw_entry *entry, sw_pitch note, sw_pitch upper, trill *t)
{
    sw_pitch low[SW_ENTRY_READINGS];
    sw_pitch high[SW_ENTRY_READINGS];
    size_t count = sw_entry_written(entry, note, low);
    sw_trill_grade mildest = count == 0 ? SW_TRILL_GOOD : SW_TRILL_IMPOSSIBLE;
    sw_entry_written(entry, upper, high);
    for (size_t i = 0; i < count; i++) {
        sw_trill_grade grade = sw_instrument_trill(entry->instrument, low[i], high[i]);
        mildest = grade < mildest ? grade : mildest;
    }
    if (count > 0) {
        t->low = low[0];
        t->high = high[0];
    }
    return mildest;
}

static void add(trills *list, const trill *t, uint32_t bar)
{
    trill *found = NULL;
    for (size_t i = 0; i < list->count; i++) {
        trill *other = &list->items[i];
        if (other->instrument == t->instrument && sw_pitch_equal(other->low, t->low) &&
            sw_pitch_equal(other->high, t->high)) {
            found = other;
        }
    }
    if (found == NULL) {
        list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
        found = &list->items[list->count++];
        *found = *t;
    }
    found->bars = sw_grow(found->bars, found->count, &found->capacity, sizeof *found->bars);
    found->bars[found->count++] = bar;
}

static void report(sw_check *check, const sw_score *score, uint32_t staff, trill *t)
{
    char words[3][SW_SAY];
    char label[32];
    const sw_trills *known = &t->instrument->can.trills;
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s, %s: ", sw_say_place(score, t->event->onset, words[0]),
                     sw_staff_label(check->reading, score, staff, label));
    if (known->whole_tones) {
        sw_buffer_format(&text, "a trill of written %s and %s", sw_say_pitch(t->low, words[1]),
                         sw_say_pitch(t->high, words[2]));
        sw_buffer_format(&text, ": a slide has only lip trills, whole tones from %s on",
                         sw_say_pitch(known->from, words[1]));
    } else {
        sw_buffer_format(&text, "a trill of written %s and %s is %s here", sw_say_pitch(t->low, words[1]),
                         sw_say_pitch(t->high, words[2]),
                         t->grade == SW_TRILL_IMPOSSIBLE ? "impossible" : "awkward");
    }
    if (t->count > 1) {
        sw_buffer_string(&text, " (");
        sw_say_bars(score, t->bars, t->count, &text);
        sw_buffer_char(&text, ')');
    }
    sw_buffer_string(&text, "; take another note, or give it to another instrument");
    const sw_music *m = sw_event_written(check->reading, t->event);
    sw_findings_add(check->findings, t->grade == SW_TRILL_IMPOSSIBLE ? SW_ERROR : SW_WARNING, "trill",
                    m->file, m->start, m->end, "%s", sw_buffer_text(&text));
    sw_buffer_free(&text);
}

static bool has_trills(const sw_instrument *instrument)
{
    return instrument->can.trills.source != NULL;
}

static void check_staff(sw_check *check, const sw_score *score, uint32_t staff)
{
    const sw_entries *entries = &sw_check_entries(check, score)[staff];
    trills list = {0};
    bool known = sw_entries_any(entries, has_trills) && score->bar_count > 0;
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t i = events.first; known && i < events.end; i++) {
        const sw_event *event = &score->events[i];
        if (!sw_event_is_played(check->reading, score, event) ||
            !sw_event_has_mark(check->reading, event, is_trill) ||
            sw_event_has_mark(check->reading, event, is_sign)) {
            continue;
        }
        const sw_entry *entry = sw_entry_of_note(entries, sw_entries_at(entries, event->onset), i);
        sw_pitch upper = sw_key_neighbour(check, score, staff, event->onset, event->pitch, 1);
        trill t = {.event = event, .instrument = entry->instrument};
        t.grade = grade_of(entry, event->pitch, upper, &t);
        if (t.grade != SW_TRILL_GOOD) {
            add(&list, &t, sw_score_bar_at(score, event->onset));
        }
    }
    for (size_t i = 0; i < list.count; i++) {
        report(check, score, staff, &list.items[i]);
        free(list.items[i].bars);
    }
    free(list.items);
}

static void run(sw_check *check)
{
    sw_check_each_staff(check, check_staff);
}

const sw_rule sw_rule_trill = {
    .name = "trill",
    .summary = "a trill that the instrument does not have",
    .severity = SW_ERROR,
    .explain =
        "Some pairs of notes can't alternate: both ask for one little finger, or a slide would have\n"
        "to jump. The player will trill with another note, or fake it. This rule looks at \\trill and\n"
        "\\startTrillSpan; the upper note is that of the key, and where a sign stands with the trill\n"
        "nothing is said.\n\n"
        "The figures: pairs that handbooks call impossible or awkward, as far as remembered (bottom\n"
        "of flute, oboe, bassoon and saxophone); trombones have lip trills only, whole tones from F4\n"
        "on. stavewright explain oboe shows those of the oboe, with their source. What is listed as\n"
        "impossible is an error, what is awkward a warning. Instruments of which no pairs are listed\n"
        "stay silent.\n\n"
        "To mend: trill with the other neighbour, a tone higher, or on another instrument.\n",
    .run = run,
};
