#include "stavewright/dynamics.h"

#include <stdlib.h>
#include <string.h>

#include "players/dynamic_words.h"
#include "players/staff_instrument.h"

/* A word in the score that says something about loudness. */
typedef struct point {
    sw_rational onset;
    uint32_t staff;
    uint32_t voice; /* SW_NO_INDEX: in none */
    uint32_t bar;
    uint32_t mark;
    sw_dynamic_word word;
} point;

/* From `onset` on: a level, or a way from one to another. */
typedef struct stretch {
    sw_rational onset;
    sw_rational end; /* of the way; after it, `to` */
    sw_dynamic from;
    sw_dynamic to;
    bool from_guessed; /* no mark says it */
    bool to_guessed;
    uint32_t mark;
} stretch;

typedef struct accent {
    sw_rational onset;
    sw_dynamic level;
    uint32_t mark;
} accent;

/* What one voice hears of all that. */
typedef struct line {
    stretch *stretches;
    size_t count;
    size_t capacity;
    accent *accents;
    size_t accent_count;
    size_t accent_capacity;
} line;

struct sw_dynamics {
    line *lines; /* for each voice */
    size_t voice_count;
};

typedef struct builder {
    const sw_reading *reading;
    const sw_score *score;
    point *points; /* in order of time */
    size_t count;
    size_t capacity;
} builder;

/* ---- the words ---------------------------------------------------------------------------------------- */

static void add_marks_of(builder *b, uint32_t music, sw_rational onset, uint32_t staff, uint32_t voice)
{
    for (uint32_t m = b->reading->music[music].first; m != SW_NO_INDEX; m = b->reading->music[m].next) {
        sw_dynamic_word word = {0};
        if (b->reading->music[m].kind == SW_MUSIC_MARK) {
            word = sw_dynamic_word_of(b->reading, m);
        }
        if (word.kind != SW_DYNAMIC_NOTHING) {
            b->points = sw_grow(b->points, b->count, &b->capacity, sizeof *b->points);
            b->points[b->count++] = (point){onset, staff, voice, sw_score_bar_at(b->score, onset), m, word};
        }
    }
}

static bool is_line_of_dynamics(const builder *b, uint32_t staff)
{
    return strcmp(sw_reading_name(b->reading, b->score->staves[staff].type), "Dynamics") == 0;
}

static void collect(builder *b)
{
    const sw_score *score = b->score;
    const sw_event *before = NULL;
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        uint32_t staff = score->voices[event->voice].staff;
        bool hidden = (event->flags & SW_EVENT_HIDDEN) != 0 && !is_line_of_dynamics(b, staff);
        if (hidden || (event->flags & SW_EVENT_CUE) != 0) {
            continue;
        }
        bool same_chord = before != NULL && before->chord == event->chord && before->voice == event->voice &&
                          sw_rational_equal(before->onset, event->onset);
        if (!same_chord) {
            add_marks_of(b, event->chord, event->onset, staff, event->voice);
        }
        before = event;
    }
    for (size_t i = 0; i < score->setting_count; i++) { /* <>\p */
        const sw_setting *setting = &score->settings[i];
        if (b->reading->music[setting->music].kind == SW_MUSIC_CHORD && setting->staff != SW_NO_INDEX) {
            add_marks_of(b, setting->music, setting->onset, setting->staff, setting->voice);
        }
    }
}

/* In order of time; what ends at a moment before what begins there. */
static int compare_points(const void *a, const void *b)
{
    const point *x = a;
    const point *y = b;
    int order = sw_rational_compare(x->onset, y->onset);
    order = order != 0 ? order : (int)x->word.kind - (int)y->word.kind;
    return order != 0 ? order : (x->mark > y->mark) - (x->mark < y->mark);
}

/* ---- one voice ---------------------------------------------------------------------------------------- */

static bool is_level(const point *p)
{
    return p->word.kind == SW_DYNAMIC_LEVEL && p->word.mark.stays != SW_NO_DYNAMIC;
}

/* Whether a voice has a level of its own in a bar. `first`: a point of that bar. */
static bool has_own(const builder *b, size_t first, uint32_t voice)
{
    uint32_t bar = b->points[first].bar;
    for (size_t i = first; i < b->count && b->points[i].bar == bar; i++) {
        if (b->points[i].voice == voice && is_level(&b->points[i])) {
            return true;
        }
    }
    for (size_t i = first; i > 0 && b->points[i - 1].bar == bar; i--) {
        if (b->points[i - 1].voice == voice && is_level(&b->points[i - 1])) {
            return true;
        }
    }
    return false;
}

static bool holds_for(const builder *b, size_t number, uint32_t voice)
{
    const point *p = &b->points[number];
    uint32_t staff = b->score->voices[voice].staff;
    if (p->voice == voice) {
        return true;
    }
    if (p->staff == staff) {
        return p->voice == SW_NO_INDEX || !has_own(b, number, voice);
    }
    if (b->score->staves[p->staff].group != b->score->staves[staff].group ||
        !is_line_of_dynamics(b, p->staff)) {
        return false; /* the usual case */
    }
    return sw_staff_brace(b->reading, b->score, staff) != SW_NO_INDEX;
}

static stretch *last_of(line *l)
{
    return l->count == 0 ? NULL : &l->stretches[l->count - 1];
}

static void begin(line *l, stretch s)
{
    l->stretches = sw_grow(l->stretches, l->count, &l->capacity, sizeof *l->stretches);
    l->stretches[l->count++] = s;
}

/* Lets a way that has begun end at a moment, at a level that a mark says. */
static void arrive(stretch *way, sw_rational end, sw_dynamic to)
{
    way->end = end;
    way->to = to;
    way->to_guessed = false;
}

/* A way that is under way, and what it does if nothing says where it leads to. */
typedef struct hairpin {
    bool open;    /* not ended yet */
    bool landing; /* ended, but the level that follows closely still counts as its goal */
    int direction;
    sw_rational ended;
    sw_dynamic said; /* the last level that a mark said: guesses stay near it */
} hairpin;

/* Lets a way end that leads to no mark. */
static void arrive_somewhere(stretch *way, sw_rational end, const hairpin *h)
{
    way->end = end;
    way->to = h->said == SW_NIENTE ? SW_PPP : sw_dynamic_moved(h->said, h->direction);
    way->to_guessed = true;
}

/* Whether a level can be the goal: on the right side of where the way began. */
static bool leads_to(const stretch *way, int direction, sw_dynamic level)
{
    return way->from == SW_NO_DYNAMIC ||
           (direction > 0 ? (int)level > (int)way->from : (int)level < (int)way->from);
}

static bool is_close(sw_rational ended, sw_rational onset)
{
    return sw_rational_compare(sw_rational_sub(onset, ended), sw_rational_make(1, 2)) <= 0;
}

static void take_level(line *l, hairpin *h, const point *p)
{
    sw_dynamic level = p->word.mark.stays;
    stretch *way = last_of(l);
    if (h->open || (h->landing && is_close(h->ended, p->onset))) {
        sw_rational end = h->open ? p->onset : h->ended;
        if (leads_to(way, h->direction, level)) {
            arrive(way, end, level);
        } else {
            arrive_somewhere(way, end, h);
        }
    }
    *h = (hairpin){.said = level};
    begin(l, (stretch){.onset = p->onset, .end = p->onset, .from = level, .to = level, .mark = p->mark});
}

static void take_way(line *l, hairpin *h, const point *p)
{
    stretch *before = last_of(l);
    if (h->open) {
        arrive_somewhere(before, p->onset, h);
    }
    stretch way = {.onset = p->onset, .end = p->onset, .from = SW_NO_DYNAMIC, .mark = p->mark};
    if (before != NULL) {
        way.from = before->to;
        way.from_guessed = before->to_guessed;
    }
    h->open = true;
    h->landing = false;
    h->direction = p->word.kind == SW_DYNAMIC_GROWS ? 1 : -1;
    arrive_somewhere(&way, p->onset, h);
    begin(l, way);
}

static void take_end(line *l, hairpin *h, const point *p)
{
    if (h->open) {
        arrive_somewhere(last_of(l), p->onset, h);
        h->open = false;
        h->landing = true;
        h->ended = p->onset;
    }
}

static void take_accent(line *l, const point *p)
{
    l->accents = sw_grow(l->accents, l->accent_count, &l->accent_capacity, sizeof *l->accents);
    l->accents[l->accent_count++] = (accent){p->onset, p->word.mark.attack, p->mark};
}

static void take(line *l, hairpin *h, const point *p)
{
    switch (p->word.kind) {
    case SW_DYNAMIC_LEVEL:
        if (p->word.mark.attack != p->word.mark.stays) {
            take_accent(l, p);
        }
        if (p->word.mark.stays != SW_NO_DYNAMIC) {
            take_level(l, h, p);
        }
        break;
    case SW_DYNAMIC_GROWS:
    case SW_DYNAMIC_FADES:
        take_way(l, h, p);
        break;
    case SW_DYNAMIC_END:
        take_end(l, h, p);
        break;
    case SW_DYNAMIC_NOTHING:
        break;
    }
}

static void fill(const builder *b, uint32_t voice, line *l)
{
    hairpin h = {.said = SW_NO_DYNAMIC};
    for (size_t i = 0; i < b->count; i++) {
        if (holds_for(b, i, voice)) {
            take(l, &h, &b->points[i]);
        }
    }
}

/* ---- the whole ---------------------------------------------------------------------------------------- */

sw_dynamics *sw_dynamics_of(const sw_reading *reading, const sw_score *score)
{
    builder b = {.reading = reading, .score = score};
    collect(&b);
    sw_sort(b.points, b.count, sizeof *b.points, compare_points);
    sw_dynamics *dynamics = sw_alloc(sizeof *dynamics);
    *dynamics = (sw_dynamics){.lines = sw_alloc_zero(score->voice_count + 1, sizeof(line)),
                              .voice_count = score->voice_count};
    for (uint32_t voice = 0; voice < score->voice_count; voice++) {
        fill(&b, voice, &dynamics->lines[voice]);
    }
    free(b.points);
    return dynamics;
}

void sw_dynamics_free(sw_dynamics *dynamics)
{
    if (dynamics == NULL) {
        return;
    }
    for (size_t voice = 0; voice < dynamics->voice_count; voice++) {
        free(dynamics->lines[voice].stretches);
        free(dynamics->lines[voice].accents);
    }
    free(dynamics->lines);
    free(dynamics);
}

/* The level on the way, the same time for each step. A way out of or into silence counts from ppp. */
static sw_dynamic on_the_way(const stretch *s, sw_rational onset)
{
    double whole = sw_rational_to_double(sw_rational_sub(s->end, s->onset));
    double part = whole <= 0 ? 1 : sw_rational_to_double(sw_rational_sub(onset, s->onset)) / whole;
    if (part >= 1) {
        return s->to;
    }
    if (part <= 0 || s->from == SW_NO_DYNAMIC || s->to == SW_NO_DYNAMIC) {
        return s->from;
    }
    int from = s->from == SW_NIENTE ? SW_PPP : (int)s->from;
    int to = s->to == SW_NIENTE ? SW_PPP : (int)s->to;
    double level = from + (to - from) * part + 0.5;
    return (sw_dynamic)(int)level;
}

sw_dynamic_now sw_dynamics_at(const sw_dynamics *dynamics, uint32_t voice, sw_rational onset)
{
    const line *l = &dynamics->lines[voice];
    sw_dynamic_now now = {.level = SW_NO_DYNAMIC, .mark = SW_NO_INDEX};
    size_t low = 0;
    size_t high = l->count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (sw_rational_compare(l->stretches[middle].onset, onset) <= 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    if (low > 0) {
        const stretch *s = &l->stretches[low - 1];
        bool on_way = sw_rational_compare(onset, s->end) < 0 && s->from != SW_NO_DYNAMIC;
        now = (sw_dynamic_now){.level = on_the_way(s, onset),
                               .direction = on_way ? (s->to > s->from) - (s->to < s->from) : 0,
                               .guessed = !on_way                              ? s->to_guessed
                                          : sw_rational_equal(onset, s->onset) ? s->from_guessed
                                                                               : true,
                               .mark = s->mark};
    }
    for (size_t i = 0; i < l->accent_count; i++) {
        if (sw_rational_equal(l->accents[i].onset, onset)) {
            now.level = l->accents[i].level;
            now.guessed = false;
            now.mark = l->accents[i].mark;
        }
    }
    return now;
}
