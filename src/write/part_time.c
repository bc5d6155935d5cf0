#include <string.h>

#include "stavewright/metre.h"
#include "write/part_time.h"

static const sw_music *at(const sw_part_printer *p, uint32_t music)
{
    return &p->plan->reading->music[music];
}

static bool is_item(uint8_t kind)
{
    return kind >= SW_MUSIC_NOTE && kind <= SW_MUSIC_BARE;
}

bool sw_part_plays(const sw_part_printer *p, uint32_t music)
{
    return p->plan->parts != NULL && (p->plan->parts[music] & 1u << p->part) != 0;
}

bool sw_part_has_notes(const sw_part_printer *p, uint32_t music)
{
    return p->plan->has_notes != NULL && (p->plan->has_notes[music] & 1) != 0;
}

/* ---- time ---- */

/* The first event in or below a node. */
const sw_event *sw_part_first_event(const sw_part_printer *p, uint32_t music)
{
    const sw_plan *plan = p->plan;
    if (plan->first_event == NULL) {
        return NULL;
    }
    const sw_music *m = at(p, music);
    if (is_item(m->kind)) {
        uint32_t event = plan->first_event[music];
        return event == SW_NO_INDEX ? NULL : &plan->division->score->events[event];
    }
    const sw_event *best = NULL;
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = at(p, c)->next) {
        const sw_event *event = at(p, c)->kind == SW_MUSIC_MARK ? NULL : sw_part_first_event(p, c);
        if (event != NULL && (best == NULL || sw_rational_compare(event->onset, best->onset) < 0)) {
            best = event;
        }
        if (best != NULL && m->kind != SW_MUSIC_SIMULTANEOUS) {
            break;
        }
    }
    return best;
}

/* How long a node lasts as it is written, repeats included; what a tag leaves out of this score does not
 * count. */
static sw_rational length_of(const sw_part_printer *p, uint32_t music)
{
    const sw_music *m = at(p, music);
    if (is_item(m->kind)) {
        bool empty = m->kind == SW_MUSIC_CHORD && m->num == 0; /* <> */
        return empty ? sw_rational_zero() : sw_duration_length(sw_music_duration(m));
    }
    if (m->kind == SW_MUSIC_GRACE || m->kind == SW_MUSIC_MARK || m->kind >= SW_MUSIC_BAR_CHECK ||
        (m->kind == SW_MUSIC_TAG && sw_part_first_event(p, music) == NULL)) {
        return sw_rational_zero();
    }
    sw_rational length = sw_rational_zero();
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = at(p, c)->next) {
        sw_rational child = length_of(p, c);
        length = m->kind == SW_MUSIC_SIMULTANEOUS ? sw_rational_max(length, child)
                                                  : sw_rational_add(length, child);
        if (m->kind == SW_MUSIC_AFTER_GRACE) {
            break;
        }
    }
    if (m->kind == SW_MUSIC_SCALE) {
        return sw_rational_mul(length, sw_rational_make(m->num, m->den));
    }
    const char *kind = m->kind == SW_MUSIC_REPEAT ? sw_reading_name(p->plan->reading, m->name) : "";
    bool plain = m->first == SW_NO_INDEX || at(p, m->first)->next == SW_NO_INDEX; /* without alternatives */
    if (plain &&
        (strcmp(kind, "unfold") == 0 || strcmp(kind, "percent") == 0 || strcmp(kind, "tremolo") == 0)) {
        return sw_rational_mul(length, sw_rational_make(m->num, 1));
    }
    return length;
}

bool sw_part_end(const sw_part_printer *p, uint32_t music, sw_rational *end)
{
    const sw_event *first = sw_part_first_event(p, music);
    bool item = is_item(at(p, music)->kind);
    if (first == NULL || (item && (first->flags & SW_EVENT_GRACE) != 0)) {
        return false; /* a block may begin with grace notes: they share the onset of its first note */
    }
    *end = sw_rational_add(first->onset, item ? first->duration : length_of(p, music));
    return true;
}

/* ---- rests ---- */

void sw_put_rest(sw_part_printer *p, char letter, sw_duration value)
{
    char text[SW_DURATION_TEXT];
    sw_buffer_char(p->out, letter);
    if (!p->has_duration || !sw_duration_equal(p->duration, value)) {
        sw_buffer_string(p->out, sw_duration_print(value, text));
    }
    p->duration = value;
    p->has_duration = true;
}

/* The note value that fills a bar: 1, 2., or 1*5/8 where there is none. */
static sw_duration bar_value(const sw_bar *bar)
{
    sw_duration value;
    if (sw_duration_from_length(bar->length, 1, &value)) {
        return value;
    }
    return (sw_duration){0, 0, (int32_t)bar->length.num, (int32_t)bar->length.den};
}

/* A silence from onset to end: full-bar rests for whole bars, otherwise values that suit the metre. */
void sw_put_silence(sw_part_printer *p, sw_rational onset, sw_rational end)
{
    const sw_score *score = p->plan->division->score;
    bool first = true;
    while (sw_rational_compare(onset, end) < 0) {
        uint32_t index = sw_score_bar_at(score, onset);
        if (index == SW_NO_INDEX) {
            return;
        }
        const sw_bar *bar = &score->bars[index];
        sw_rational bar_end = sw_rational_add(bar->start, bar->length);
        sw_rational stop = sw_rational_min(end, bar_end);
        if (sw_rational_compare(stop, onset) <= 0) {
            stop = end; /* behind the last bar */
        }
        if (!first) {
            sw_buffer_char(p->out, ' ');
        }
        first = false;
        bool whole = sw_rational_equal(onset, bar->start) && sw_rational_equal(stop, bar_end) &&
                     sw_rational_equal(bar->length, bar->metre);
        if (whole) {
            p->has_duration =
                false; /* a silence begins with its value, so that a bar can be read on its own */
            sw_put_rest(p, p->rest_letter == 'r' ? 'R' : 's', bar_value(bar));
        } else {
            sw_duration values[64];
            /* A short first bar ends with its bar line: count from where a full bar would have begun. */
            sw_rational position = sw_rational_sub(onset, bar->start);
            if (bar->number == 0 && index == 0) {
                position = sw_rational_add(position, sw_rational_sub(bar->metre, bar->length));
            }
            size_t count = sw_metre_rests((sw_metre){bar->beats, bar->beat_value}, position,
                                          sw_rational_sub(stop, onset), values, 64);
            p->has_duration = false;
            for (size_t i = 0; i < count && i < 64; i++) {
                if (i > 0) {
                    sw_buffer_char(p->out, ' ');
                }
                sw_put_rest(p, p->rest_letter, values[i]);
            }
        }
        onset = stop;
    }
}
