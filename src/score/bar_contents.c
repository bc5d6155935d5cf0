#include "score/bar_contents.h"

#include <stdlib.h>
#include <string.h>

#include "stavewright/meaning.h"

typedef sw_bar_contents version;
typedef sw_content content;

static content *bar_of(const version *v, uint32_t staff, uint32_t bar)
{
    return &v->staves[staff * v->score->bar_count + bar];
}

/* ---- numbers for music ----------------------------------------------------------------------------------
 */

static const uint64_t FNV_START = 14695981039346656037u; /* Fowler, Noll, Vo: FNV-1a, 64 bits */

static uint64_t add_byte(uint64_t hash, uint8_t byte)
{
    return (hash ^ byte) * 1099511628211u;
}

static uint64_t add_number(uint64_t hash, int64_t number)
{
    for (int i = 0; i < 8; i++) {
        hash = add_byte(hash, (uint8_t)((uint64_t)number >> (8 * i)));
    }
    return hash;
}

static uint64_t add_text(uint64_t hash, sw_slice text)
{
    for (size_t i = 0; i < text.length; i++) {
        hash = add_byte(hash, (uint8_t)text.data[i]);
    }
    return hash;
}

static uint64_t add_fraction(uint64_t hash, sw_rational value)
{
    return add_number(add_number(hash, value.num), value.den);
}

/* ---- what is written ------------------------------------------------------------------------------------
 */

/* The place in the bar. */
static sw_rational place_of(const version *v, uint32_t bar, sw_rational onset)
{
    return sw_rational_sub(onset, v->score->bars[bar].start);
}

/* Sums stand for sets: the order in which marks are written does not matter. */
static void add_mark(content *c, sw_mark_class class, sw_slice meaning, sw_rational place)
{
    uint64_t hash = add_text(FNV_START, meaning);
    uint64_t placed = add_fraction(hash, place);
    switch (class) {
    case SW_MARK_BEAM_START:
    case SW_MARK_BEAM_END:
        break; /* layout */
    case SW_MARK_TIE:
        c->parts[SW_PART_RHYTHM] += placed;
        break;
    case SW_MARK_DYNAMIC:
    case SW_MARK_HAIRPIN_START:
    case SW_MARK_HAIRPIN_END:
        c->parts[SW_PART_DYNAMICS] += placed;
        break;
    case SW_MARK_TEXT:
        c->parts[SW_PART_TEXTS] += placed;
        break;
    default:
        c->parts[SW_PART_MARKS] += hash;
        c->parts[SW_PART_MARKS_PLACED] += placed;
    }
}

static void add_marks(const version *v, content *c, uint32_t music, sw_rational place)
{
    const sw_reading *r = v->reading;
    sw_buffer meaning = {0};
    for (uint32_t m = r->music[music].first; m != SW_NO_INDEX; m = r->music[m].next) {
        if (r->music[m].kind == SW_MUSIC_MARK) {
            sw_buffer_clear(&meaning);
            sw_mark_meaning(r, m, &meaning);
            add_mark(c, sw_music_mark_class(r, m), sw_buffer_slice(&meaning), place);
        }
    }
    sw_buffer_free(&meaning);
}

/* Pitches in the order in which they sound, so that another rhythm alone is no other pitch. */
typedef struct heard {
    sw_rational onset;
    int64_t height; /* unlike for two notes of unlike name, or two drums */
} heard;

static int compare_heard(const void *a, const void *b)
{
    const heard *x = a;
    const heard *y = b;
    int order = sw_rational_compare(x->onset, y->onset);
    return order != 0 ? order : (x->height > y->height) - (x->height < y->height);
}

static int64_t height_of(const version *v, const sw_event *event)
{
    if (event->kind == SW_EVENT_DRUM) {
        const char *drum = sw_reading_name(v->reading, v->reading->music[event->music].name);
        return (int64_t)add_text(FNV_START, sw_slice_of(drum));
    }
    return ((int64_t)event->pitch.octave * 7 + event->pitch.step) * 64 + event->pitch.alter;
}

static void add_pitches(const version *v, uint32_t staff, heard *list)
{
    const sw_score *score = v->score;
    sw_staff_events events = sw_score_staff_events(score, staff);
    size_t count = 0;
    for (uint32_t e = events.first; e < events.end; e++) {
        const sw_event *event = &score->events[e];
        if (event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM) {
            list[count++] = (heard){event->onset, height_of(v, event)};
        }
    }
    if (count > 1) {
        qsort(list, count, sizeof *list, compare_heard);
    }
    for (size_t i = 0; i < count; i++) {
        uint32_t bar = sw_score_bar_at(score, list[i].onset);
        if (bar != SW_NO_INDEX) {
            uint64_t *part = &bar_of(v, staff, bar)->parts[SW_PART_PITCHES];
            *part = add_number(*part == 0 ? FNV_START : *part, list[i].height);
        }
    }
}

static void add_events(const version *v, uint32_t staff)
{
    const sw_score *score = v->score;
    sw_staff_events events = sw_score_staff_events(score, staff);
    uint32_t chord = SW_NO_INDEX;
    sw_rational chord_onset = sw_rational_zero();
    for (uint32_t e = events.first; e < events.end; e++) {
        const sw_event *event = &score->events[e];
        uint32_t bar = sw_score_bar_at(score, event->onset);
        if (bar == SW_NO_INDEX) {
            continue;
        }
        content *c = bar_of(v, staff, bar);
        sw_rational place = place_of(v, bar, event->onset);
        if (event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM) { /* silence is what is left */
            uint64_t hash = add_fraction(add_fraction(FNV_START, place), event->duration);
            hash = add_number(add_number(hash, event->grace_num), event->grace_den);
            c->parts[SW_PART_RHYTHM] += hash;
        }
        if (event->chord != chord || !sw_rational_equal(event->onset, chord_onset)) {
            add_marks(v, c, event->chord, place);
        }
        if (event->music != event->chord) {
            add_marks(v, c, event->music, place);
        }
        chord = event->chord;
        chord_onset = event->onset;
    }
}

static void add_keys(const version *v)
{
    sw_key_changes keys = sw_key_changes_of(v->reading, v->score);
    for (size_t i = 0; i < keys.count; i++) {
        const sw_key_change *key = &keys.items[i];
        uint64_t hash = add_text(FNV_START, (sw_slice){(const char *)key->alter, sizeof key->alter});
        bar_of(v, key->staff, key->bar)->parts[SW_PART_KEY] +=
            add_fraction(hash, place_of(v, key->bar, key->onset));
    }
    free(keys.items);
}

/* Marks on <>. */
static void add_bare_marks(const version *v)
{
    for (size_t i = 0; i < v->score->setting_count; i++) {
        const sw_setting *setting = &v->score->settings[i];
        uint32_t bar = sw_score_bar_at(v->score, setting->onset);
        if (bar != SW_NO_INDEX && setting->staff != SW_NO_INDEX &&
            v->reading->music[setting->music].kind == SW_MUSIC_CHORD) {
            add_marks(v, bar_of(v, setting->staff, bar), setting->music, place_of(v, bar, setting->onset));
        }
    }
}

static void add_signs(const version *v)
{
    sw_signs signs = sw_signs_of(v->reading, v->score);
    for (size_t i = 0; i < signs.count; i++) {
        const sw_sign *sign = &signs.items[i];
        v->all[sign->bar].parts[SW_ALL_TEMPO + sign->kind] +=
            add_fraction(add_text(FNV_START, sw_slice_of(sign->text)), sign->place);
    }
    sw_signs_free(&signs);
}

static void add_lyrics(const version *v)
{
    const sw_score *score = v->score;
    for (size_t i = 0; i < score->syllable_count; i++) {
        const sw_syllable *s = &score->syllables[i];
        uint32_t bar = sw_score_bar_at(score, s->onset);
        if (bar != SW_NO_INDEX && s->voice != SW_NO_INDEX) {
            uint32_t staff = score->voices[s->voice].staff;
            uint64_t hash = add_text(
                FNV_START, sw_slice_of(sw_reading_name(v->reading, v->reading->music[s->music].name)));
            bar_of(v, staff, bar)->parts[SW_PART_LYRICS] +=
                add_number(add_fraction(hash, place_of(v, bar, s->onset)), s->line);
        }
    }
}

sw_bar_contents sw_bar_contents_of(const sw_reading *reading, const sw_score *score)
{
    version v = {reading, score, sw_alloc_zero(score->staff_count * score->bar_count + 1, sizeof(content)),
                 sw_alloc_zero(score->bar_count + 1, sizeof(sw_content_of_all))};
    for (size_t b = 0; b < score->bar_count; b++) {
        const sw_bar *bar = &score->bars[b];
        v.all[b].parts[SW_ALL_METRE] =
            add_fraction(add_number(add_number(FNV_START, bar->beats), bar->beat_value), bar->length);
    }
    heard *list = sw_alloc((score->event_count + 1) * sizeof *list);
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        add_pitches(&v, staff, list);
        add_events(&v, staff);
    }
    free(list);
    add_keys(&v);
    add_bare_marks(&v);
    add_signs(&v);
    add_lyrics(&v);
    return v;
}

void sw_bar_contents_free(sw_bar_contents *contents)
{
    free(contents->staves);
    free(contents->all);
    *contents = (sw_bar_contents){0};
}
