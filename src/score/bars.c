/* The bars of a score. The rules are those of the compiler's bar counter: a position in the bar runs from 0
 * to the length of the bar; \partial sets it, \time changes the length, a cadenza stops it, and each
 * alternative of a repeat after the first begins where the first one began.
 *
 * The compiler counts in steps: whenever something begins or ends, and on each bar line that it expects.
 * Where the length becomes less than the position (\time 2/4 in the middle of a bar), the bar ends only with
 * the next step, and what is over then belongs to the bar after it. */
#include <stdlib.h>
#include <string.h>

#include "score/reader.h"

typedef struct counter {
    sw_rational position; /* in the bar; negative in a short first bar */
    sw_rational length;
    int32_t number;
    int32_t beats;
    int32_t beat_value;
    bool running;   /* false in a cadenza */
    bool renumbers; /* alternativeNumberingStyle */
} counter;

/* What held when the first alternative of a repeat began. */
typedef struct first_ending {
    bool counted; /* false: it began in a cadenza, nothing is known to go back to */
    sw_rational position;
    sw_rational length;
} first_ending;

/* Bar lines that the compiler expects: more than the last one only after the count has jumped. */
enum { MAX_LINES = 16 };

typedef struct tally {
    const sw_reading *reading;
    sw_score *score;
    counter now;
    first_ending *endings;
    size_t ending_count;
    size_t ending_capacity;
    uint32_t *ending_of;  /* by frame: which ending, from 1; NULL as long as there is none */
    bool renumbers;       /* the outermost alternatives begin again with the number of the first ... */
    int32_t first_number; /* ... this one */
    sw_rational lines[MAX_LINES];
    size_t line_count;
    sw_rational *steps; /* when events begin and end, sorted; NULL as long as nobody asked */
    size_t step_count;
} tally;

/* ---- settings ---- */

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

static void apply_set(const sw_reading *reading, const sw_music *m, counter *c)
{
    const char *path = sw_reading_name(reading, m->name);
    bool begins_other_context = (m->flags & SW_MUSIC_NEW) != 0 && strncmp(path, "Score.", 6) != 0;
    if (begins_other_context) {
        return; /* the bars of the whole score do not go by what a staff begins with */
    }
    if (sw_slice_starts((sw_slice){reading->files[m->file].text->bytes + m->start, m->end - m->start},
                        "\\once")) {
        return; /* over before the bar ends */
    }
    sw_rational value;
    if (last_part_is(path, "measureLength") && set_value(reading, m, &value) && value.num > 0) {
        c->length = value;
    } else if (last_part_is(path, "measurePosition") && set_value(reading, m, &value)) {
        c->position = value;
    } else if (last_part_is(path, "currentBarNumber") && set_value(reading, m, &value)) {
        c->number = (int32_t)value.num;
    } else if (last_part_is(path, "alternativeNumberingStyle")) {
        const char *style = "numbers"; /* also as numbers-with-letters */
        const char *text = reading->files[m->file].text->bytes;
        c->renumbers = memmem(text + m->start, m->end - m->start, style, strlen(style)) != NULL;
    }
}

static bool is_outermost(const tally *t, uint32_t frame)
{
    const sw_frame *frames = t->score->frames;
    for (uint32_t f = frames[frame].parent; f != SW_NO_INDEX; f = frames[f].parent) {
        if (t->reading->music[frames[f].music].kind == SW_MUSIC_ALTERNATIVES) {
            return false;
        }
    }
    return true;
}

/* All alternatives of one use of a repeat have the same frame; the first that comes is the first one. */
static void apply_alternative(tally *t, uint32_t frame)
{
    counter *c = &t->now;
    if (t->ending_of == NULL) {
        t->ending_of = sw_alloc_zero(t->score->frame_count, sizeof *t->ending_of);
    }
    bool is_first = t->ending_of[frame] == 0;
    if (is_first) {
        t->endings = sw_grow(t->endings, t->ending_count, &t->ending_capacity, sizeof *t->endings);
        t->endings[t->ending_count++] = (first_ending){c->running, c->position, c->length};
        t->ending_of[frame] = (uint32_t)t->ending_count;
    }
    const first_ending *first = &t->endings[t->ending_of[frame] - 1];
    if (c->running && first->counted) {
        c->position = first->position;
        c->length = first->length;
    }
    if (is_outermost(t, frame)) {
        t->renumbers = is_first ? c->renumbers : t->renumbers;
        t->first_number = is_first ? c->number : t->first_number;
        c->number = t->renumbers ? t->first_number : c->number;
    }
}

static void apply(tally *t, const sw_setting *setting, bool at_start)
{
    counter *c = &t->now;
    const sw_music *m = &t->reading->music[setting->music];
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
        c->position = sw_rational_sub(at_start ? sw_rational_zero() : c->length, rest);
        break;
    }
    case SW_MUSIC_CADENZA:
        c->running = m->num == 0;
        break;
    case SW_MUSIC_ALTERNATIVES:
        apply_alternative(t, setting->frame);
        break;
    case SW_MUSIC_SET:
        apply_set(t->reading, m, c);
        break;
    default:
        break;
    }
}

/* Applies the settings up to a moment, in the order of the walk; returns the next one. A \partial within the
 * piece tells the counter only when the moment is over, so that a bar check beside it still stands on the bar
 * line; of several the first one holds. */
static size_t apply_until(tally *t, size_t next, sw_rational now)
{
    const sw_reading *reading = t->reading;
    sw_score *score = t->score;
    bool at_start = sw_rational_is_zero(now);
    size_t first = next;
    for (; next < score->setting_count && sw_rational_compare(score->settings[next].onset, now) <= 0;
         next++) {
        sw_setting *setting = &score->settings[next];
        setting->position = t->now.position;
        if (at_start || reading->music[setting->music].kind != SW_MUSIC_PARTIAL) {
            apply(t, setting, at_start);
        }
    }
    for (size_t i = next; i-- > first && !at_start;) {
        if (reading->music[score->settings[i].music].kind == SW_MUSIC_PARTIAL) {
            apply(t, &score->settings[i], at_start);
        }
    }
    return next;
}

/* ---- steps ---- */

static int compare_moments(const void *a, const void *b)
{
    return sw_rational_compare(*(const sw_rational *)a, *(const sw_rational *)b);
}

/* The first moment behind `now` at which an event begins or ends or a bar line is expected, but not behind
 * `limit`. */
static sw_rational next_step(tally *t, sw_rational now, sw_rational limit)
{
    const sw_score *score = t->score;
    if (t->steps == NULL) {
        t->steps = sw_alloc((2 * score->event_count + 1) * sizeof *t->steps);
        for (size_t i = 0; i < score->event_count; i++) {
            t->steps[t->step_count++] = score->events[i].onset;
            t->steps[t->step_count++] = sw_event_end(&score->events[i]);
        }
        qsort(t->steps, t->step_count, sizeof *t->steps, compare_moments);
    }
    size_t low = 0;
    size_t high = t->step_count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (sw_rational_compare(t->steps[middle], now) <= 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    sw_rational next = low < t->step_count ? sw_rational_min(t->steps[low], limit) : limit;
    for (size_t i = 0; i < t->line_count; i++) {
        next = sw_rational_compare(t->lines[i], now) > 0 ? sw_rational_min(t->lines[i], next) : next;
    }
    return next;
}

static void expect_line(tally *t, sw_rational now, sw_rational line)
{
    size_t kept = 0;
    for (size_t i = 0; i < t->line_count; i++) {
        if (sw_rational_compare(t->lines[i], now) > 0 && !sw_rational_equal(t->lines[i], line)) {
            t->lines[kept++] = t->lines[i];
        }
    }
    if (kept < MAX_LINES) {
        t->lines[kept++] = line;
    }
    t->line_count = kept;
}

/* ---- counting ---- */

static void add_bar(sw_score *score, sw_rational start, const counter *c)
{
    score->bars = sw_grow(score->bars, score->bar_count, &score->bar_capacity, sizeof(sw_bar));
    bool short_bar = c->position.num < 0; /* it ends with the bar line */
    bool pickup = score->bar_count == 0 && short_bar;
    sw_rational first = short_bar ? sw_rational_add(c->position, c->length) : c->position;
    score->bars[score->bar_count++] = (sw_bar){
        .start = start,
        .metre = c->length,
        .first = first.num < 0 ? sw_rational_zero() : first,
        .number = pickup ? c->number - 1 : c->number,
        .beats = c->beats,
        .beat_value = c->beat_value,
    };
}

/* Ends the bars that are full; false when none is. */
static bool end_bars(counter *c)
{
    if (sw_rational_compare(c->position, c->length) < 0) {
        return sw_rational_is_zero(c->position); /* the short first bar */
    }
    sw_rational full = sw_rational_make(sw_rational_floor(sw_rational_div(c->position, c->length)), 1);
    c->position = sw_rational_sub(c->position, sw_rational_mul(full, c->length));
    c->number += (int32_t)full.num;
    return true;
}

void sw_count_bars(const sw_reading *reading, sw_score *score)
{
    tally t = {
        .reading = reading, .score = score, .now = {{0, 1}, {1, 1}, score->first_number, 4, 4, true, false}};
    counter *c = &t.now;
    sw_rational now = sw_rational_zero();
    size_t next = 0;
    bool open = false;  /* a bar has begun at or before now */
    bool stood = false; /* the counter has stood still since the last bar began */
    while (sw_rational_compare(now, score->length) < 0) {
        counter before = *c;
        next = apply_until(&t, next, now);
        bool goes_on = sw_rational_equal(before.position, c->position) && before.number == c->number &&
                       !(stood && c->running);
        if (!open || !goes_on) {
            add_bar(score, now, c);
            open = true;
            stood = false;
        }
        sw_rational stop = score->length;
        if (next < score->setting_count) {
            stop = sw_rational_min(stop, score->settings[next].onset);
        }
        if (c->running) {
            sw_rational line = sw_rational_add(now, sw_rational_sub(c->length, c->position));
            if (sw_rational_compare(line, now) > 0) {
                stop = sw_rational_min(stop, line);
                expect_line(&t, now, line);
            } else {
                stop = next_step(&t, now, stop);
            }
            if (c->position.num < 0) { /* a short bar ends where the position comes to 0 */
                stop = sw_rational_min(stop, sw_rational_sub(now, c->position));
            }
            c->position = sw_rational_add(c->position, sw_rational_sub(stop, now));
            open = !end_bars(c);
        } else {
            stood = true;
        }
        if (sw_rational_compare(stop, now) <= 0 || score->bar_count > 1000000) {
            break; /* times that cannot be represented */
        }
        now = stop;
    }
    for (; next < score->setting_count; next++) { /* behind the last note: final bar checks */
        score->settings[next].position = c->position;
    }
    for (size_t i = 0; i < score->bar_count; i++) {
        sw_rational end = i + 1 < score->bar_count ? score->bars[i + 1].start : score->length;
        score->bars[i].length = sw_rational_sub(end, score->bars[i].start);
    }
    free(t.endings);
    free(t.ending_of);
    free(t.steps);
}
