#include <stdlib.h>
#include <string.h>

#include "score/melisma.h"
#include "score/sung_moments.h"

/* A setting or empty chord that can matter for a melisma. */
typedef struct heard_setting {
    sw_moment when;
    uint32_t setting;
} heard_setting;

typedef struct known_strokes {
    const sw_context *target;
    sw_event_range range;
    sw_sung_moments strokes;
} known_strokes;

/* The events of a voice context: [first, end) of the order; by time, then in the order of the walk, once a
 * verse has asked for them. Most voices of a large score are not sung. */
typedef struct heard_context {
    const sw_context *context;
    size_t first;
    size_t end;
    bool in_order;
} heard_context;

struct sw_hearing {
    sw_player *p;
    heard_context *contexts; /* by address */
    size_t context_count;
    uint32_t *order;         /* events context by context */
    heard_setting *settings; /* by time */
    size_t setting_count;
    size_t setting_capacity;
    sw_sung_marks *marks;
    known_strokes **known;
    size_t known_count;
    size_t known_capacity;
};

static const sw_music *at(const sw_hearing *h, uint32_t music)
{
    return &h->p->reader->reading->music[music];
}

static sw_moment moment_of(const sw_event *event)
{
    return (sw_moment){event->onset, {event->grace_num, event->grace_den}};
}

/* ---- what is heard, in order ---- */

static int compare_events(const void *a, const void *b, void *context)
{
    const sw_hearing *h = context;
    uint32_t x = *(const uint32_t *)a;
    uint32_t y = *(const uint32_t *)b;
    int order = sw_moment_compare(moment_of(&h->p->score->events[x]), moment_of(&h->p->score->events[y]));
    return order != 0 ? order : x < y ? -1 : x > y;
}

static int compare_contexts(const void *a, const void *b)
{
    uintptr_t x = (uintptr_t)((const heard_context *)a)->context;
    uintptr_t y = (uintptr_t)((const heard_context *)b)->context;
    return (x > y) - (x < y);
}

/* The context with this address; NULL when it has no events. */
static heard_context *find_context(const sw_hearing *h, const sw_context *context)
{
    heard_context wanted = {.context = context};
    return h->context_count == 0
               ? NULL
               : bsearch(&wanted, h->contexts, h->context_count, sizeof *h->contexts, compare_contexts);
}

/* Which contexts own the score's voices, each once. */
static void find_contexts(sw_hearing *h)
{
    size_t voices = h->p->score->voice_count;
    h->contexts = sw_alloc_zero(voices + 1, sizeof *h->contexts);
    for (uint32_t v = 0; v < voices; v++) {
        h->contexts[v].context = sw_contexts_owner(h->p->contexts, v);
    }
    qsort(h->contexts, voices, sizeof *h->contexts, compare_contexts);
    for (size_t v = 0; v < voices; v++) {
        if (v == 0 || h->contexts[v].context != h->contexts[h->context_count - 1].context) {
            h->contexts[h->context_count++] = h->contexts[v];
        }
    }
}

/* Puts the events together by context, each in the order of the walk. */
static void group_events(sw_hearing *h)
{
    const sw_score *score = h->p->score;
    heard_context **of_voice = sw_alloc((score->voice_count + 1) * sizeof *of_voice);
    for (uint32_t v = 0; v < score->voice_count; v++) {
        of_voice[v] = find_context(h, sw_contexts_owner(h->p->contexts, v));
    }
    for (size_t i = 0; i < score->event_count; i++) {
        of_voice[score->events[i].voice]->end++; /* so far, how many */
    }
    size_t place = 0;
    for (size_t c = 0; c < h->context_count; c++) {
        size_t count = h->contexts[c].end;
        h->contexts[c].first = h->contexts[c].end = place;
        place += count;
    }
    h->order = sw_alloc((score->event_count + 1) * sizeof *h->order);
    for (uint32_t i = 0; i < score->event_count; i++) {
        h->order[of_voice[score->events[i].voice]->end++] = i;
    }
    free(of_voice);
}

/* The events of a context in order of time; NULL when it has none. */
static const heard_context *events_of(const sw_hearing *h, const sw_context *context)
{
    heard_context *found = find_context(h, context);
    if (found != NULL && !found->in_order) {
        qsort_r(h->order + found->first, found->end - found->first, sizeof *h->order, compare_events,
                (void *)h);
        found->in_order = true;
    }
    return found;
}

static int compare_heard(const void *a, const void *b)
{
    const heard_setting *x = a;
    const heard_setting *y = b;
    int order = sw_moment_compare(x->when, y->when);
    return order != 0 ? order : x->setting < y->setting ? -1 : x->setting > y->setting;
}

static sw_slice last_part(const char *path)
{
    const char *dot = strrchr(path, '.');
    return sw_slice_of(dot == NULL ? path : dot + 1);
}

static bool matters(const sw_hearing *h, const sw_music *m, uint32_t music)
{
    if (m->kind != SW_MUSIC_CHORD && (m->flags & SW_MUSIC_NEW) != 0) {
        return false; /* what a context begins with: see sw_melisma_rules_of */
    }
    sw_melisma_rule rule = {-1, -1, -1};
    if (m->kind == SW_MUSIC_SET) {
        sw_slice property = last_part(sw_reading_name(h->p->reader->reading, m->name));
        return sw_slice_is(property, "melismaBusy") ||
               sw_melisma_rule_set(&rule, property, (sw_slice){"", 0});
    }
    if (m->kind == SW_MUSIC_SETTING) {
        sw_slice text = sw_music_slice(h->p->reader->reading, music);
        return sw_slice_starts(text, "\\melisma") || sw_melisma_rule_command(&rule, text);
    }
    return m->kind == SW_MUSIC_CHORD;
}

static void find_settings(sw_hearing *h)
{
    const sw_score *score = h->p->score;
    for (uint32_t i = 0; i < score->setting_count; i++) {
        const sw_setting *s = &score->settings[i];
        if (matters(h, at(h, s->music), s->music)) {
            h->settings = sw_grow(h->settings, h->setting_count, &h->setting_capacity, sizeof *h->settings);
            sw_rational grace = s->grace ? (sw_rational){-1, 64} : sw_rational_zero();
            h->settings[h->setting_count++] = (heard_setting){{s->onset, grace}, i};
        }
    }
    if (h->setting_count > 1) {
        qsort(h->settings, h->setting_count, sizeof *h->settings, compare_heard);
    }
}

sw_hearing *sw_hearing_new(sw_player *p, bool graces)
{
    sw_hearing *h = sw_alloc_zero(1, sizeof *h);
    h->p = p;
    find_contexts(h);
    group_events(h);
    find_settings(h);
    h->marks = sw_sung_marks_new(p->reader, graces);
    return h;
}

void sw_hearing_free(sw_hearing *h)
{
    for (size_t i = 0; i < h->known_count; i++) {
        free(h->known[i]->strokes.items);
        free(h->known[i]);
    }
    free(h->known);
    free(h->contexts);
    free(h->order);
    free(h->settings);
    sw_sung_marks_free(h->marks);
    free(h);
}

/* The context of a setting `Staff.x`, `x`, `Score.x` when it holds for this voice; otherwise NULL. */
static const sw_context *set_context(const sw_hearing *h, const sw_context *voice, const sw_setting *setting,
                                     sw_slice path)
{
    const char *dot = memrchr(path.data, '.', path.length);
    bool inner = setting->voice != SW_NO_INDEX && sw_contexts_owner(h->p->contexts, setting->voice) == voice;
    if (dot == NULL) {
        return inner ? voice : NULL;
    }
    char type[64] = {0};
    size_t length = (size_t)(dot - path.data);
    memcpy(type, path.data, length < sizeof type ? length : 0);
    if (strcmp(type, "Bottom") == 0 || sw_contexts_is(h->p->contexts, voice, type)) {
        return inner ? voice : NULL;
    }
    for (const sw_context *c = voice->parent; c != NULL; c = c->parent) {
        if (sw_contexts_is(h->p->contexts, c, type)) {
            bool around =
                c->level == SW_LEVEL_SCORE ||
                (c->level == SW_LEVEL_STAFF ? setting->staff == c->staff
                                            : setting->staff == SW_NO_INDEX ||
                                                  h->p->score->staves[setting->staff].group == c->group);
            return around ? c : NULL;
        }
    }
    return NULL;
}

/* An event at the moment of a stroke; only notes count. */
static void add_note(sw_sung_moment *stroke, uint32_t number, const sw_event *event)
{
    if (sw_is_note(event)) {
        sw_rational over = event->grace_num != 0 ? event->onset : sw_event_end(event);
        stroke->end = stroke->sung ? sw_rational_max(stroke->end, over) : over;
        stroke->event = stroke->sung && stroke->event < number ? stroke->event : number;
        stroke->sung = true;
    }
}

static void add_stroke(sw_sung_moments *strokes, const sw_sung_moment *stroke)
{
    strokes->items = sw_grow(strokes->items, strokes->count, &strokes->capacity, sizeof *strokes->items);
    strokes->items[strokes->count++] = *stroke;
}

/* A setting of the score, as far as it holds for a voice. */
static void apply_setting(sw_hearing *h, const sw_context *voice, const sw_setting *setting,
                          sw_melisma *state, sw_melisma_turn *turn)
{
    const sw_reading *reading = h->p->reader->reading;
    const sw_music *m = at(h, setting->music);
    const char *path = m->kind == SW_MUSIC_SET ? sw_reading_name(reading, m->name) : "";
    const sw_context *context = set_context(h, voice, setting, sw_slice_of(path));
    if (context != NULL && m->kind == SW_MUSIC_CHORD) {
        sw_sung_marks_read(h->marks, setting->music, &turn->marks);
        turn->all_tied = turn->all_tied || turn->marks.tie;
    } else if (context != NULL) {
        sw_melisma_set(state, reading, setting->music, context->level);
    }
}

static bool is_in(sw_event_range range, uint32_t event)
{
    return event >= range.from && event < range.end;
}

static sw_sung_moments strokes_of_voice(sw_hearing *h, const sw_context *voice, sw_event_range range)
{
    const sw_score *score = h->p->score;
    sw_sung_moments strokes = {0};
    sw_melisma state = {.rules = sw_melisma_rules_of(h->p, voice)};
    bool deaf = sw_contexts_is(h->p->contexts, voice, "Devnull"); /* no engravers */
    const heard_context *heard_here = events_of(h, voice);
    size_t event = heard_here == NULL ? 0 : heard_here->first;
    size_t end = heard_here == NULL ? 0 : heard_here->end;
    for (size_t setting = 0; event < end || setting < h->setting_count;) {
        sw_moment when = event < end ? moment_of(&score->events[h->order[event]]) : h->settings[setting].when;
        if (setting < h->setting_count && sw_moment_compare(h->settings[setting].when, when) < 0) {
            when = h->settings[setting].when;
        }
        sw_melisma_turn turn = sw_melisma_begin(&state, when);
        for (; setting < h->setting_count && sw_moment_compare(h->settings[setting].when, when) <= 0;
             setting++) {
            apply_setting(h, voice, &score->settings[h->settings[setting].setting], &state, &turn);
        }
        sw_sung_moment stroke = {
            .when = when, .event = SW_NO_INDEX, .busy = !deaf && sw_melisma_is_on(&state, true)};
        for (; event < end && sw_moment_compare(moment_of(&score->events[h->order[event]]), when) == 0;
             event++) {
            if (is_in(range, h->order[event])) {
                const sw_event *heard = &score->events[h->order[event]];
                add_note(&stroke, h->order[event], heard);
                sw_melisma_hear(&state, &turn, h->p->reader->reading, h->marks, heard);
            }
        }
        sw_melisma_end(&state, &turn);
        stroke.stays = !deaf && sw_melisma_is_on(&state, false);
        stroke.tied = !deaf && sw_melisma_is_on(&state, true);
        stroke.tied_until = state.tie_count > 0 ? state.ties[0].end : when;
        add_stroke(&strokes, &stroke);
    }
    return strokes;
}

/* ---- several voices ---- */

typedef struct part {
    const sw_context *voice;
    const sw_sung_moments *strokes;
    size_t at;
} part;

/* A voice that is over, or not there yet, doesn't count. */
static bool is_alive(const sw_hearing *h, const sw_context *voice, sw_moment when)
{
    size_t count;
    const sw_life *lives = sw_contexts_lives(h->p->contexts, &count);
    bool has_any = false;
    for (size_t i = 0; i < count; i++) {
        if (lives[i].context == voice) {
            has_any = true;
            if (sw_moment_compare(lives[i].begin, when) <= 0 && sw_moment_compare(when, lives[i].end) <= 0) {
                return true;
            }
        }
    }
    return !has_any; /* made by its notes */
}

/* Whether a melisma is on in a part at a moment; its next stroke is not before it. */
static bool part_is_busy(const part *voice, sw_moment when)
{
    const sw_sung_moments *s = voice->strokes;
    if (voice->at < s->count && sw_moment_compare(s->items[voice->at].when, when) == 0) {
        return s->items[voice->at].busy;
    }
    if (voice->at == 0) {
        return true; /* not there yet, so it does not ask for a syllable */
    }
    const sw_sung_moment *before = &s->items[voice->at - 1];
    return before->stays || (before->tied && sw_moment_compare(when, before->tied_until) <= 0);
}

/* Notes of all parts; a melisma is on while it is on in each of them. */
static sw_sung_moments merge(const sw_hearing *h, part *parts, size_t count)
{
    sw_sung_moments merged = {0};
    for (;;) {
        const sw_sung_moment *next = NULL;
        for (size_t i = 0; i < count; i++) {
            const sw_sung_moments *s = parts[i].strokes;
            if (parts[i].at < s->count &&
                (next == NULL || sw_moment_compare(s->items[parts[i].at].when, next->when) < 0)) {
                next = &s->items[parts[i].at];
            }
        }
        if (next == NULL) {
            return merged;
        }
        sw_sung_moment stroke = {.when = next->when, .event = SW_NO_INDEX, .busy = true};
        for (size_t i = 0; i < count; i++) {
            stroke.busy = stroke.busy &&
                          (part_is_busy(&parts[i], stroke.when) || !is_alive(h, parts[i].voice, stroke.when));
            const sw_sung_moments *s = parts[i].strokes;
            if (parts[i].at < s->count && sw_moment_compare(s->items[parts[i].at].when, stroke.when) == 0) {
                const sw_sung_moment *own = &s->items[parts[i].at++];
                if (own->sung) {
                    stroke.event = stroke.sung && stroke.event < own->event ? stroke.event : own->event;
                    stroke.end = stroke.sung ? sw_rational_max(stroke.end, own->end) : own->end;
                    stroke.sung = true;
                }
            }
        }
        add_stroke(&merged, &stroke);
    }
}

static bool stands_in(const sw_context *context, const sw_context *target)
{
    while (context != NULL && context != target) {
        context = context->parent;
    }
    return context != NULL;
}

static known_strokes *find_known(const sw_hearing *h, const sw_context *target, sw_event_range range)
{
    for (size_t i = 0; i < h->known_count; i++) {
        const known_strokes *known = h->known[i];
        if (known->target == target && known->range.from == range.from && known->range.end == range.end) {
            return h->known[i];
        }
    }
    return NULL;
}

static const sw_sung_moments *keep(sw_hearing *h, const sw_context *target, sw_event_range range,
                                   sw_sung_moments strokes)
{
    known_strokes *known = sw_alloc(sizeof *known);
    *known = (known_strokes){target, range, strokes};
    h->known = sw_grow(h->known, h->known_count, &h->known_capacity, sizeof *h->known);
    h->known[h->known_count++] = known;
    return &known->strokes;
}

static const sw_sung_moments *voice_strokes(sw_hearing *h, const sw_context *voice, sw_event_range range)
{
    known_strokes *known = find_known(h, voice, range);
    return known != NULL ? &known->strokes : keep(h, voice, range, strokes_of_voice(h, voice, range));
}

const sw_sung_moments *sw_hearing_strokes(sw_hearing *h, const sw_context *target, sw_event_range range)
{
    if (target->level == SW_LEVEL_VOICE) {
        return voice_strokes(h, target, range);
    }
    known_strokes *known = find_known(h, target, range);
    if (known != NULL) {
        return &known->strokes;
    }
    part *parts = NULL;
    size_t count = 0;
    size_t capacity = 0;
    for (uint32_t v = 0; v < h->p->score->voice_count; v++) {
        const sw_context *voice = sw_contexts_owner(h->p->contexts, v);
        bool twice = false; /* a voice that went to another staff and back */
        const sw_sung_moments *strokes = stands_in(voice, target) ? voice_strokes(h, voice, range) : NULL;
        for (size_t i = 0; i < count; i++) {
            twice = twice || parts[i].strokes == strokes;
        }
        if (strokes != NULL && !twice) {
            parts = sw_grow(parts, count, &capacity, sizeof *parts);
            parts[count++] = (part){voice, strokes, 0};
        }
    }
    const sw_sung_moments *merged = keep(h, target, range, merge(h, parts, count));
    free(parts);
    return merged;
}
