#include <string.h>

#include "stavewright/metre.h"
#include "write/part_notes.h"
#include "write/part_time.h"

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
    const sw_music *m = sw_part_music(p, music);
    if (sw_is_item(m)) {
        uint32_t event = plan->first_event[music];
        return event == SW_NO_INDEX ? NULL : &plan->division->score->events[event];
    }
    const sw_event *best = NULL;
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        const sw_event *event = sw_part_music(p, c)->kind == SW_MUSIC_MARK ? NULL : sw_part_first_event(p, c);
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
    const sw_music *m = sw_part_music(p, music);
    if (sw_is_item(m)) {
        bool empty = m->kind == SW_MUSIC_CHORD && m->num == 0; /* <> */
        return empty ? sw_rational_zero() : sw_duration_length(sw_music_duration(m));
    }
    if (m->kind == SW_MUSIC_GRACE || m->kind == SW_MUSIC_MARK || m->kind >= SW_MUSIC_BAR_CHECK ||
        (m->kind == SW_MUSIC_TAG && sw_part_first_event(p, music) == NULL)) {
        return sw_rational_zero();
    }
    sw_rational length = sw_rational_zero();
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
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
    bool plain =
        m->first == SW_NO_INDEX || sw_part_music(p, m->first)->next == SW_NO_INDEX; /* without alternatives */
    if (plain &&
        (strcmp(kind, "unfold") == 0 || strcmp(kind, "percent") == 0 || strcmp(kind, "tremolo") == 0)) {
        return sw_rational_mul(length, sw_rational_make(m->num, 1));
    }
    return length;
}

bool sw_part_end(const sw_part_printer *p, uint32_t music, sw_rational *end)
{
    const sw_event *first = sw_part_first_event(p, music);
    bool item = sw_is_item(sw_part_music(p, music));
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

/* ---- silences beside other voices ---- */

/* The first event of a voice that has not ended at a moment, as an index; the end of the voice if none. */
static uint32_t event_at(const sw_plan *plan, uint32_t voice, sw_rational moment)
{
    const sw_event *events = plan->division->score->events;
    uint32_t low = plan->voice_first[voice];
    uint32_t high = plan->voice_end[voice];
    while (low < high) {
        uint32_t middle = low + (high - low) / 2;
        if (sw_rational_compare(sw_event_end(&events[middle]), moment) <= 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

static bool is_own_note(const sw_part_printer *p, uint32_t event)
{
    const sw_event *e = &p->plan->division->score->events[event];
    return (e->kind == SW_EVENT_NOTE || e->kind == SW_EVENT_DRUM) &&
           sw_division_gives(p->plan->division, event, p->part);
}

/* Whether a voice has notes of this part in the bar that holds a moment. */
static bool plays_in_bar(const sw_part_printer *p, uint32_t voice, sw_rational moment)
{
    const sw_score *score = p->plan->division->score;
    uint32_t index = sw_score_bar_at(score, moment);
    if (index == SW_NO_INDEX) {
        return false;
    }
    const sw_bar *bar = &score->bars[index];
    sw_rational end = sw_rational_add(bar->start, bar->length);
    for (uint32_t i = event_at(p->plan, voice, bar->start); i < p->plan->voice_end[voice]; i++) {
        if (sw_rational_compare(score->events[i].onset, end) >= 0) {
            return false;
        }
        if (is_own_note(p, i)) {
            return true;
        }
    }
    return false;
}

/* Whether another voice of the staff shows something at a moment, so that a silence of `voice` need not be
 * shown: notes of this part, its own rests where it plays in the bar, and in an earlier voice any rest.
 * *until becomes the next moment at which this may be different, if that is earlier. */
static bool is_covered(const sw_part_printer *p, uint32_t voice, sw_rational moment, sw_rational *until)
{
    const sw_score *score = p->plan->division->score;
    if (p->plan->division->change_part != NULL && p->part > 0) {
        return true; /* the other staff's music comes here */
    }
    bool covered = false;
    for (uint32_t other = 0; other < score->voice_count; other++) {
        if (other == voice || score->voices[other].staff != p->plan->division->staff) {
            continue;
        }
        for (uint32_t i = event_at(p->plan, other, moment); i < p->plan->voice_end[other]; i++) {
            const sw_event *e = &score->events[i];
            if (sw_rational_compare(e->onset, moment) > 0) {
                *until = sw_rational_min(*until, e->onset);
                break;
            }
            sw_rational end = sw_event_end(e);
            if (sw_rational_compare(end, moment) <= 0 || e->kind == SW_EVENT_SKIP ||
                (p->plan->left_out[e->chord] & 1u << p->part) != 0) {
                continue;
            }
            bool rest = e->kind == SW_EVENT_REST || e->kind == SW_EVENT_FULL_REST;
            if (is_own_note(p, i) || other < voice || (rest && plays_in_bar(p, other, moment))) {
                covered = true;
                *until = sw_rational_min(*until, end);
            }
        }
    }
    return covered;
}

char sw_part_rest_letter(const sw_part_printer *p, const sw_event *event)
{
    if (p->among_graces || event == NULL || (event->flags & SW_EVENT_GRACE) != 0) {
        return p->among_graces ? 's' : 'r';
    }
    sw_rational until = sw_event_end(event);
    return is_covered(p, event->voice, event->onset, &until) ? 's' : 'r';
}

bool sw_part_hides_rest(const sw_part_printer *p, uint32_t music)
{
    const sw_event *event = sw_part_first_event(p, music);
    return event != NULL && !plays_in_bar(p, event->voice, event->onset) &&
           sw_part_rest_letter(p, event) == 's';
}

/* The marks of a silence stand at its first rest. */
static void put_marks_once(sw_part_printer *p, uint32_t *marks)
{
    if (*marks != SW_NO_INDEX) {
        sw_print_marks(p, *marks, false);
        *marks = SW_NO_INDEX;
    }
}

/* The rests within one bar that have one letter. */
static void put_rests(sw_part_printer *p, char letter, const sw_bar *bar, sw_rational onset, sw_rational end,
                      uint32_t *marks)
{
    sw_duration values[64];
    sw_rational position = sw_rational_add(bar->first, sw_rational_sub(onset, bar->start));
    size_t count = sw_metre_rests((sw_metre){bar->beats, bar->beat_value}, position,
                                  sw_rational_sub(end, onset), values, 64);
    p->has_duration = false; /* a silence begins with its value, so that a bar can be read on its own */
    for (size_t i = 0; i < count && i < 64; i++) {
        if (i > 0) {
            sw_buffer_char(p->out, ' ');
        }
        sw_put_rest(p, letter, values[i]);
        put_marks_once(p, marks);
    }
}

/* Full-bar rests from a bar on: R1, R1*3, or s1*3 where another voice is heard. Returns how many bars. */
static uint32_t put_full_bars(sw_part_printer *p, char letter, uint32_t voice, uint32_t index,
                              sw_rational end)
{
    const sw_score *score = p->plan->division->score;
    const sw_bar *first = &score->bars[index];
    uint32_t count = 1;
    for (uint32_t i = index + 1; i < score->bar_count; i++) {
        const sw_bar *bar = &score->bars[i];
        sw_rational bar_end = sw_rational_add(bar->start, bar->length);
        sw_rational until = bar_end;
        bool same = sw_rational_equal(bar->length, bar->metre) &&
                    sw_rational_equal(bar->metre, first->metre) && sw_rational_compare(bar_end, end) <= 0;
        if (!same || is_covered(p, voice, bar->start, &until) != (letter == 's') ||
            sw_rational_compare(until, bar_end) < 0) {
            break;
        }
        count++;
    }
    p->has_duration = false;
    sw_duration value = sw_duration_of(first->length);
    sw_put_rest(p, letter == 'r' ? 'R' : 's', value);
    if (count > 1) { /* what follows must not inherit the factor */
        sw_buffer_format(p->out, "*%u", count);
        p->has_duration = false;
    }
    return count;
}

void sw_put_silence(sw_part_printer *p, uint32_t voice, sw_rational onset, sw_rational end, uint32_t marks)
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
        sw_rational until = stop;
        bool covered = is_covered(p, voice, onset, &until);
        while (sw_rational_compare(until, stop) < 0) {
            sw_rational next = stop;
            if (is_covered(p, voice, until, &next) != covered) {
                break;
            }
            until = next;
        }
        stop = until;
        if (!first) {
            sw_buffer_char(p->out, ' ');
        }
        first = false;
        char letter = covered || p->among_graces ? 's' : 'r';
        if (sw_rational_equal(onset, bar->start) && sw_rational_equal(stop, bar_end) &&
            sw_rational_equal(bar->length, bar->metre)) {
            uint32_t bars = put_full_bars(p, letter, voice, index, end);
            put_marks_once(p, &marks);
            const sw_bar *last = &score->bars[index + bars - 1];
            stop = sw_rational_add(last->start, last->length);
        } else {
            put_rests(p, letter, bar, onset, stop, &marks);
        }
        onset = stop;
    }
}
