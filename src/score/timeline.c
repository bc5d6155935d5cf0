/* Bars and tempos of a score, from its settings. The rules are those of the compiler's bar counter: a
 * position in the bar runs from 0 to the length of the bar; \partial sets it, \time changes the length, a
 * cadenza stops it. */
#include <stdlib.h>
#include <string.h>

#include "score/reader.h"

typedef struct counter {
    sw_rational position; /* in the bar; negative in a short first bar */
    sw_rational length;
    int32_t number;
    int32_t beats;
    int32_t beat_value;
    bool running; /* false in a cadenza */
} counter;

static int compare_settings(const void *a, const void *b, void *context)
{
    const sw_setting *settings = context;
    uint32_t x = *(const uint32_t *)a;
    uint32_t y = *(const uint32_t *)b;
    int order = sw_rational_compare(settings[x].onset, settings[y].onset);
    return order != 0 ? order : (x < y ? -1 : 1);
}

/* By time; among those of one moment the order of the walk stays. */
static void sort_settings(sw_score *score)
{
    size_t count = score->setting_count;
    uint32_t *order = sw_alloc((count + 1) * sizeof *order);
    for (uint32_t i = 0; i < count; i++) {
        order[i] = i;
    }
    qsort_r(order, count, sizeof *order, compare_settings, score->settings);
    sw_setting *sorted = sw_alloc((count + 1) * sizeof *sorted);
    for (size_t i = 0; i < count; i++) {
        sorted[i] = score->settings[order[i]];
    }
    free(order);
    free(score->settings);
    score->settings = sorted;
    score->setting_capacity = count + 1;
}

static bool last_part_is(const char *path, const char *property)
{
    const char *dot = strrchr(path, '.');
    return strcmp(dot == NULL ? path : dot + 1, property) == 0;
}

/* The number or moment that a \set gives, from its source text: #5, 3/4, #(ly:make-moment 3/4),
 * #(ly:make-moment 3 4). */
static bool set_value(const sw_reading *reading, const sw_music *m, sw_rational *value)
{
    const sw_text *text = reading->files[m->file].text;
    const char *equals = memchr(text->bytes + m->start, '=', m->end - m->start);
    if (equals == NULL) {
        return false;
    }
    int64_t numbers[2] = {0, 1};
    size_t found = 0;
    for (const char *c = equals; c < text->bytes + m->end && found < 2; c++) {
        if (*c >= '0' && *c <= '9') {
            bool negative = c[-1] == '-';
            int64_t number = 0;
            for (; c < text->bytes + m->end && *c >= '0' && *c <= '9' && number < 1000000000; c++) {
                number = number * 10 + (*c - '0');
            }
            numbers[found++] = negative ? -number : number;
        }
    }
    *value = sw_rational_make(numbers[0], numbers[1]);
    return found > 0 && numbers[1] != 0;
}

static void apply(const sw_reading *reading, const sw_setting *setting, counter *c, bool at_start)
{
    const sw_music *m = &reading->music[setting->music];
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_TIME:
        if (m->num > 0 && m->den > 0) {
            c->beats = m->num;
            c->beat_value = m->den;
            c->length = sw_rational_make(m->num, m->den);
        }
        break;
    case SW_MUSIC_PARTIAL: {
        sw_rational rest = sw_duration_length(sw_music_duration(m));
        if (at_start) {
            c->position = sw_rational_sub(sw_rational_zero(), rest);
        } else {
            c->position = sw_rational_sub(c->length, rest);
        }
        break;
    }
    case SW_MUSIC_CADENZA:
        c->running = m->num == 0;
        break;
    case SW_MUSIC_SET: {
        const char *path = sw_reading_name(reading, m->name);
        sw_rational value;
        if (last_part_is(path, "measureLength") && set_value(reading, m, &value) && value.num > 0) {
            c->length = value;
        } else if (last_part_is(path, "measurePosition") && set_value(reading, m, &value)) {
            c->position = value;
        } else if (last_part_is(path, "currentBarNumber") && set_value(reading, m, &value)) {
            c->number = (int32_t)value.num;
        }
        break;
    }
    default:
        break;
    }
}

static void add_bar(sw_score *score, sw_rational start, const counter *c)
{
    score->bars = sw_grow(score->bars, score->bar_count, &score->bar_capacity, sizeof(sw_bar));
    bool pickup = score->bar_count == 0 && c->position.num < 0;
    score->bars[score->bar_count++] = (sw_bar){
        .start = start,
        .metre = c->length,
        .number = pickup ? c->number - 1 : c->number,
        .beats = c->beats,
        .beat_value = c->beat_value,
    };
}

/* Applies the settings up to a moment, in the order of the walk; returns the next one. A \partial within the
 * piece tells the counter only when the moment is over, so that a bar check beside it still stands on the bar
 * line. */
static size_t apply_until(const sw_reading *reading, sw_score *score, size_t next, sw_rational now,
                          counter *c)
{
    bool at_start = sw_rational_is_zero(now);
    size_t first = next;
    for (; next < score->setting_count && sw_rational_compare(score->settings[next].onset, now) <= 0;
         next++) {
        sw_setting *setting = &score->settings[next];
        setting->position = c->position;
        if (at_start || reading->music[setting->music].kind != SW_MUSIC_PARTIAL) {
            apply(reading, setting, c, at_start);
        }
    }
    for (size_t i = first; i < next && !at_start; i++) {
        if (reading->music[score->settings[i].music].kind == SW_MUSIC_PARTIAL) {
            apply(reading, &score->settings[i], c, at_start);
        }
    }
    return next;
}

static void count_bars(const sw_reading *reading, sw_score *score)
{
    counter c = {sw_rational_zero(), {1, 1}, 1, 4, 4, true};
    sw_rational now = sw_rational_zero();
    size_t next = 0;
    bool open = false; /* a bar has begun at or before now */
    while (sw_rational_compare(now, score->length) < 0) {
        size_t before = next;
        next = apply_until(reading, score, next, now, &c);
        bool changed = next > before;
        if (sw_rational_compare(c.position, c.length) >= 0) { /* a shorter metre has begun inside the bar */
            c.position = sw_rational_zero();
            c.number++;
            open = false;
        }
        if (!open) {
            add_bar(score, now, &c);
            open = true;
        } else if (changed && sw_rational_equal(score->bars[score->bar_count - 1].start, now)) {
            score->bars[score->bar_count - 1].metre = c.length;
        }
        sw_rational stop = score->length;
        if (next < score->setting_count) {
            stop = sw_rational_min(stop, score->settings[next].onset);
        }
        if (c.running) {
            sw_rational left = c.position.num < 0 ? sw_rational_sub(sw_rational_zero(), c.position)
                                                  : sw_rational_sub(c.length, c.position);
            stop = sw_rational_min(stop, sw_rational_add(now, left));
            c.position = sw_rational_add(c.position, sw_rational_sub(stop, now));
            if (sw_rational_is_zero(c.position)) { /* the short first bar is full */
                open = false;
            } else if (sw_rational_compare(c.position, c.length) >= 0) {
                c.position = sw_rational_zero();
                c.number++;
                open = false;
            }
        }
        if (sw_rational_compare(stop, now) <= 0 || score->bar_count > 1000000) {
            break; /* times that cannot be represented */
        }
        now = stop;
    }
    for (; next < score->setting_count; next++) { /* behind the last note: final bar checks */
        score->settings[next].position = c.position;
    }
    for (size_t i = 0; i < score->bar_count; i++) {
        sw_rational end = i + 1 < score->bar_count ? score->bars[i + 1].start : score->length;
        score->bars[i].length = sw_rational_sub(end, score->bars[i].start);
    }
}

static void add_tempo(sw_score *score, sw_rational onset, double whole_note, uint32_t music)
{
    double seconds = 0;
    if (score->tempo_count > 0) {
        const sw_tempo *before = &score->tempos[score->tempo_count - 1];
        double length = sw_rational_to_double(sw_rational_sub(onset, before->onset));
        seconds = before->seconds + length * before->whole_note;
        if (sw_rational_equal(onset, before->onset)) {
            score->tempo_count--; /* replaced before it has sounded */
        }
    }
    score->tempos = sw_grow(score->tempos, score->tempo_count, &score->tempo_capacity, sizeof(sw_tempo));
    score->tempos[score->tempo_count++] = (sw_tempo){onset, seconds, whole_note, music};
}

static void count_seconds(const sw_reading *reading, sw_score *score)
{
    add_tempo(score, sw_rational_zero(), 4.0, SW_NO_INDEX); /* the language assumes 60 quarters a minute */
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        const sw_music *m = &reading->music[setting->music];
        if (m->kind != SW_MUSIC_TEMPO || m->name2 == 0) {
            continue; /* a tempo in words only carries the tempo before it */
        }
        double beat = sw_rational_to_double(sw_duration_length(sw_music_duration(m)));
        double rate = m->name2 / 1000.0;
        if (beat > 0 && rate > 0) {
            add_tempo(score, setting->onset, 60.0 / (rate * beat), setting->music);
        }
    }
}

void sw_timeline(const sw_reading *reading, sw_score *score)
{
    sort_settings(score);
    count_bars(reading, score);
    count_seconds(reading, score);
}
