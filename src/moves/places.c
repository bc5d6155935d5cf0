#include "moves/places.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What the places mean in one score. */
typedef struct filter {
    const sw_places *places;
    const sw_reading *reading;
    const sw_score *score;
    uint32_t staff; /* SW_NO_INDEX: any */
    sw_rational from;
    sw_rational to;
    const bool *named; /* by file of the reading: it is the one whose lines are meant */
} filter;

static bool is_on_lines(const filter *f, const sw_event *event)
{
    if (f->places->first_line == 0) {
        return true;
    }
    const sw_music *m = &f->reading->music[event->chord];
    uint32_t line = sw_text_line(f->reading->files[m->file].text, m->start);
    return f->named[m->file] && line >= f->places->first_line && line <= f->places->last_line;
}

static bool is_chosen(const filter *f, const sw_event *event)
{
    bool note = event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM;
    return note && (event->flags & SW_EVENT_CUE) == 0 &&
           (f->staff == SW_NO_INDEX || f->score->voices[event->voice].staff == f->staff) &&
           sw_rational_compare(event->onset, f->from) >= 0 && sw_rational_compare(event->onset, f->to) < 0 &&
           is_on_lines(f, event);
}

static void choose(const filter *f, sw_chosen *chosen)
{
    size_t capacity = 0;
    for (uint32_t e = 0; e < f->score->event_count; e++) {
        if (is_chosen(f, &f->score->events[e])) {
            chosen->events = sw_grow(chosen->events, chosen->count, &capacity, sizeof *chosen->events);
            chosen->events[chosen->count++] = e;
        }
    }
    chosen->reading = f->reading;
    chosen->score = f->score;
}

bool sw_staff_is_combined(const sw_reading *reading, const sw_score *score, uint32_t staff)
{
    for (uint32_t voice = 0; voice < score->voice_count; voice++) {
        const char *id = sw_reading_name(reading, score->voices[voice].id);
        if (score->voices[voice].staff == staff && (strcmp(id, "shared") == 0 || strcmp(id, "solo") == 0)) {
            return true;
        }
    }
    return false;
}

char *sw_places_say_no_bars(const sw_score *score, const sw_bar_range *bars)
{
    sw_buffer text = {0};
    sw_buffer_format(&text, "the score has no bars %d to %d; its last bar is %d", bars->first_bar,
                     bars->last_bar, score->bar_count == 0 ? 0 : score->bars[score->bar_count - 1].number);
    return text.data;
}

/* The notes in one reading; none when it has none there. False when a name or bar is wrong. */
static bool choose_in(const sw_move *move, const sw_reading *reading, const sw_places *places,
                      sw_chosen *chosen, char **error)
{
    uint32_t first = 0;
    uint32_t staff = SW_NO_INDEX;
    size_t scores = reading->score_count;
    if (places->staff != NULL) {
        if (!sw_staff_find(reading, places->staff, &first, &staff, error)) {
            return false;
        }
        scores = first + 1;
    }
    bool *named = sw_alloc_zero(reading->file_count + 1, sizeof *named);
    for (size_t i = 0; i < reading->file_count; i++) {
        named[i] = sw_text_same_file(reading->files[i].text, move->mains[0]->files[0].text);
    }
    bool good = true;
    for (uint32_t s = first; s < scores && chosen->count == 0 && good; s++) {
        filter f = {.places = places,
                    .reading = reading,
                    .score = &reading->scores[s],
                    .staff = staff,
                    .named = named};
        if (sw_bar_range_moments(f.score, &places->bars, &f.from, &f.to)) {
            choose(&f, chosen);
        } else if (staff != SW_NO_INDEX) {
            *error = sw_places_say_no_bars(f.score, &places->bars);
            good = false;
        }
    }
    free(named);
    return good;
}

/* The file has no score of its own: names those that include it. */
static char *say_nothing(const sw_move *move, const sw_places *places)
{
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s has no notes", move->mains[0]->files[0].text->path);
    if (places->first_line > 0) {
        sw_buffer_format(&text, " on lines %u to %u", places->first_line, places->last_line);
    } else if (places->staff != NULL) {
        sw_buffer_format(&text, " of \"%s\"", places->staff);
    }
    if (places->bars.given) {
        sw_buffer_format(&text, " in bars %d to %d", places->bars.first_bar, places->bars.last_bar);
    }
    sw_buffer_string(&text, " that a score plays; nothing is changed");
    return text.data;
}

bool sw_places_choose(const sw_move *move, const sw_places *places, sw_chosen *chosen, char **error)
{
    *chosen = (sw_chosen){0};
    char *first_error = NULL;
    for (size_t i = 0; i < move->main_count && chosen->count == 0; i++) {
        char *wrong = NULL;
        if (move->mains[i]->score_count > 0 && !choose_in(move, move->mains[i], places, chosen, &wrong)) {
            if (first_error == NULL) {
                first_error = wrong;
            } else {
                free(wrong);
            }
        }
        if (i == 0 && move->mains[0]->score_count > 0) {
            break; /* a score was named: it is the one that is meant */
        }
    }
    if (chosen->count > 0) {
        free(first_error);
        return true;
    }
    *error = first_error != NULL ? first_error : say_nothing(move, places);
    return false;
}

bool *sw_chosen_map(const sw_chosen *chosen)
{
    bool *map = sw_alloc_zero(chosen->score->event_count + 1, sizeof *map);
    for (size_t i = 0; i < chosen->count; i++) {
        map[chosen->events[i]] = true;
    }
    return map;
}

sw_edit_request sw_chosen_request(const sw_move *move, const sw_chosen *chosen, sw_elsewhere elsewhere,
                                  const sw_read_options *options)
{
    return (sw_edit_request){.reading = chosen->reading,
                             .score = chosen->score,
                             .elsewhere = elsewhere,
                             .mains = move->mains,
                             .main_count = move->main_count,
                             .options = options};
}
