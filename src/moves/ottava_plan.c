/* Where a staff needs \ottava brackets. */
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "moves/ottava.h"

/* What begins on a staff at one moment, graces included, or within one after-grace or tremolo, where no
 * bracket can begin or end. Heights are steps above the middle line of the clef. */
typedef struct slice {
    sw_rational onset;
    sw_rational end;
    uint32_t top; /* event of its highest and its lowest chosen note, SW_NO_INDEX */
    uint32_t bottom;
    int high;
    int low;
    int chosen_high;
    int chosen_low;
    bool bass;          /* under a bass clef */
    bool covered;       /* by a bracket that is there */
    uint32_t edge_line; /* in which a bracket begins or ends at the onset, otherwise SW_NO_INDEX */
} slice;

typedef struct plan {
    sw_move *move;
    const sw_chosen *chosen;
    uint32_t staff;
    int ledgers;
    const sw_ottava_places *places;
    const bool *is_chosen; /* by event */
    uint32_t *events;      /* of the staff, in order of time */
    size_t event_count;
    slice *slices;
    size_t count;
    sw_brackets brackets;
} plan;

enum { TOP_LINE = 4, OCTAVE = 7, OTHER_SIDE = TOP_LINE + 3 /* one ledger line, and the space behind it */ };

/* ---- clefs ---- */

/* The step of a clef's middle line above middle C; treble for a name that is not known. */
static int middle_line(const char *clef, bool *bass)
{
    static const struct {
        const char *name;
        int line;
    } table[] = {{"french", 8},    {"treble", 6},       {"violin", 6}, {"G", 6},  {"G2", 6},
                 {"soprano", 4},   {"mezzosoprano", 2}, {"alto", 0},   {"C", 0},  {"tenor", -2},
                 {"baritone", -4}, {"varbaritone", -4}, {"bass", -6},  {"F", -6}, {"subbass", -8}};
    size_t length = strcspn(clef, "_^");
    int line = 6;
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        if (strlen(table[i].name) == length && strncmp(table[i].name, clef, length) == 0) {
            line = table[i].line;
        }
    }
    *bass = line <= -6;
    int octaves = strstr(clef + length, "15") != NULL ? 2 : strchr(clef + length, '8') != NULL ? 1 : 0;
    return line + (clef[length] == '_' ? -OCTAVE : OCTAVE) * octaves;
}

bool sw_is_ottava(const sw_reading *reading, const sw_setting *setting)
{
    return reading->music[setting->music].kind == SW_MUSIC_SETTING &&
           sw_slice_starts(sw_music_slice(reading, setting->music), "\\ottava");
}

int sw_ottava_number(const sw_reading *reading, const sw_setting *setting)
{
    sw_slice text = sw_music_slice(reading, setting->music);
    size_t i = strlen("\\ottava");
    while (i < text.length && strchr(" \t#", text.data[i]) != NULL) {
        i++;
    }
    bool down = i < text.length && text.data[i] == '-';
    i += down;
    int number = i < text.length && text.data[i] >= '0' && text.data[i] <= '9' ? text.data[i] - '0' : 0;
    return down ? -number : number;
}

/* What clef and bracket hold at each slice. */
static void set_lines(plan *p)
{
    const sw_score *score = p->chosen->score;
    const sw_reading *reading = p->chosen->reading;
    size_t next = 0;
    const char *clef = "treble";
    bool covered = false;
    for (size_t i = 0; i < p->count; i++) {
        for (; next < score->setting_count &&
               sw_rational_compare(score->settings[next].onset, p->slices[i].onset) <= 0;
             next++) {
            const sw_setting *setting = &score->settings[next];
            if (setting->staff != p->staff && (setting->staff != SW_NO_INDEX || score->staff_count > 1)) {
                continue;
            }
            if (reading->music[setting->music].kind == SW_MUSIC_CLEF) {
                clef = sw_reading_name(reading, reading->music[setting->music].name);
            } else if (sw_is_ottava(reading, setting)) {
                covered = sw_ottava_number(reading, setting) != 0;
                if (sw_rational_equal(setting->onset, p->slices[i].onset)) {
                    p->slices[i].edge_line = p->places->setting_line[next];
                }
            }
        }
        int line = middle_line(clef, &p->slices[i].bass);
        p->slices[i].covered = covered;
        p->slices[i].high -= line;
        p->slices[i].low -= line;
        p->slices[i].chosen_high -= line;
        p->slices[i].chosen_low -= line;
    }
}

/* ---- slices ---- */

static int compare_events(const void *a, const void *b, void *context)
{
    const sw_event *events = context;
    const sw_event *x = &events[*(const uint32_t *)a];
    const sw_event *y = &events[*(const uint32_t *)b];
    int order = sw_rational_compare(x->onset, y->onset);
    if (order == 0) {
        order = sw_rational_compare(sw_rational_make(x->grace_num, x->grace_den == 0 ? 1 : x->grace_den),
                                    sw_rational_make(y->grace_num, y->grace_den == 0 ? 1 : y->grace_den));
    }
    return order != 0 ? order : (x > y) - (x < y);
}

static void collect(plan *p)
{
    const sw_score *score = p->chosen->score;
    p->events = sw_alloc((score->event_count + 1) * sizeof *p->events);
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        if (score->voices[event->voice].staff == p->staff && event->kind == SW_EVENT_NOTE &&
            (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) == 0) {
            p->events[p->event_count++] = e;
        }
    }
    if (p->event_count > 0) {
        qsort_r(p->events, p->event_count, sizeof *p->events, compare_events, score->events);
    }
}

/* Graces take no time of their own. */
static sw_rational end_of(const sw_event *event)
{
    return (event->flags & SW_EVENT_GRACE) != 0 ? event->onset : sw_event_end(event);
}

static void add_to_slice(const plan *p, slice *s, uint32_t event)
{
    const sw_event *e = &p->chosen->score->events[event];
    int step = sw_pitch_staff_steps(e->pitch);
    s->end = sw_rational_max(s->end, end_of(e));
    s->high = step > s->high ? step : s->high;
    s->low = step < s->low ? step : s->low;
    if (p->is_chosen[event] && (s->top == SW_NO_INDEX || step > s->chosen_high)) {
        s->top = event;
        s->chosen_high = step;
    }
    if (p->is_chosen[event] && (s->bottom == SW_NO_INDEX || step < s->chosen_low)) {
        s->bottom = event;
        s->chosen_low = step;
    }
}

/* The frame in which an event's unit stands: it differs each time that the unit is played. */
static uint32_t unit_frame(const plan *p, uint32_t event)
{
    const sw_score *score = p->chosen->score;
    uint32_t found = score->events[event].frame;
    for (uint32_t f = found; f != SW_NO_INDEX; f = score->frames[f].parent) {
        found = score->frames[f].music == p->places->unit[event] ? score->frames[f].parent : found;
    }
    return found;
}

/* The number of the first event in the unit of event number i. */
static size_t unit_begin(const plan *p, size_t i)
{
    uint32_t event = p->events[i];
    size_t begin = i;
    if (p->places->unit[event] != p->chosen->score->events[event].chord) {
        uint32_t frame = unit_frame(p, event);
        for (size_t k = i; k-- > 0;) {
            uint32_t other = p->events[k];
            begin =
                p->places->unit[other] == p->places->unit[event] && unit_frame(p, other) == frame ? k : begin;
        }
    }
    return begin;
}

/* By event number: whether a slice begins there. */
static bool *find_cuts(const plan *p)
{
    const sw_event *events = p->chosen->score->events;
    bool *cut = sw_alloc((p->event_count + 1) * sizeof *cut);
    for (size_t i = 0; i < p->event_count; i++) {
        cut[i] = i == 0 || !sw_rational_equal(events[p->events[i - 1]].onset, events[p->events[i]].onset);
        for (size_t k = unit_begin(p, i) + 1; k <= i; k++) {
            cut[k] = false;
        }
    }
    return cut;
}

static void cut_slices(plan *p)
{
    const sw_event *events = p->chosen->score->events;
    bool *cut = find_cuts(p);
    p->slices = sw_alloc((p->event_count + 1) * sizeof *p->slices);
    for (size_t i = 0; i < p->event_count; i++) {
        const sw_event *e = &events[p->events[i]];
        if (cut[i]) {
            int step = sw_pitch_staff_steps(e->pitch);
            p->slices[p->count++] = (slice){.onset = e->onset,
                                            .end = e->onset,
                                            .top = SW_NO_INDEX,
                                            .bottom = SW_NO_INDEX,
                                            .edge_line = SW_NO_INDEX,
                                            .high = step,
                                            .low = step};
        }
        add_to_slice(p, &p->slices[p->count - 1], p->events[i]);
    }
    free(cut);
}

/* ---- brackets ---- */

/* Ledger lines on the side of a direction that the chosen notes of a slice need when they are shown `octaves`
 * nearer. */
static int ledger_lines(const slice *s, int direction, int octaves)
{
    int beyond = (direction > 0 ? s->chosen_high : -s->chosen_low) - TOP_LINE - OCTAVE * octaves;
    return beyond > 0 ? beyond / 2 : 0;
}

static bool needs(const plan *p, const slice *s, int direction)
{
    return s->top != SW_NO_INDEX && !s->covered && (direction > 0 || s->bass) &&
           ledger_lines(s, direction, 0) > p->ledgers;
}

/* Whether all notes of a slice can be read so many octaves nearer. */
static bool is_readable(const slice *s, int direction, int octaves)
{
    int other = (direction > 0 ? s->low : -s->high) - OCTAVE * octaves;
    return !s->covered && other >= -OTHER_SIDE;
}

/* The last slice of a bracket that begins at slice `first`. */
static size_t end_of_bracket(const plan *p, size_t first, int direction)
{
    size_t last = first;
    for (size_t i = first + 1;
         i < p->count && is_readable(&p->slices[i], direction, 1) && p->slices[i].top != SW_NO_INDEX; i++) {
        sw_rational gap = sw_rational_sub(p->slices[i].onset, p->slices[last].end);
        if (sw_rational_compare(gap, sw_rational_make(1, 1)) >= 0 ||
            p->places->home[p->slices[i].top] != p->places->home[p->slices[first].top]) {
            break;
        }
        last = needs(p, &p->slices[i], direction) ? i : last;
    }
    return last;
}

static int octaves_for(const plan *p, size_t first, size_t last, int direction)
{
    bool enough = true;
    bool two = true;
    for (size_t i = first; i <= last; i++) {
        enough = enough && ledger_lines(&p->slices[i], direction, 1) <= p->ledgers;
        two = two && is_readable(&p->slices[i], direction, 2);
    }
    return enough || !two ? 1 : 2;
}

static void say(const plan *p, sw_buffer *to, const slice *s, const char *what)
{
    char place[SW_SAY];
    char label[32];
    sw_buffer_format(to, "%s, %s: %s\n", sw_say_place(p->chosen->score, s->onset, place),
                     sw_staff_label(p->chosen->reading, p->chosen->score, p->staff, label), what);
}

/* The last event of the bracket in the voice in which it begins; SW_NO_INDEX when that voice is silent at the
 * end. */
static uint32_t last_event(const plan *p, uint32_t first, const slice *last)
{
    const sw_score *score = p->chosen->score;
    bool graces = sw_rational_equal(last->onset, last->end);
    for (size_t i = p->event_count; i-- > 0;) {
        const sw_event *e = &score->events[p->events[i]];
        if (e->voice == score->events[first].voice && sw_rational_compare(e->onset, last->onset) >= 0 &&
            sw_rational_equal(end_of(e), last->end) && (graces || (e->flags & SW_EVENT_GRACE) == 0)) {
            return p->events[i];
        }
    }
    return SW_NO_INDEX;
}

/* Whether the unit of an event begins with its slice. */
static bool begins_with(const plan *p, uint32_t event, const slice *s)
{
    size_t i = 0;
    while (p->events[i] != event) {
        i++;
    }
    const sw_event *first = &p->chosen->score->events[p->events[unit_begin(p, i)]];
    return sw_rational_equal(first->onset, s->onset);
}

static uint32_t first_event(const slice *first, int direction)
{
    return direction > 0 ? first->top : first->bottom;
}

/* The slice that begins where a slice ends; NULL when there is none. */
static slice *next_slice(const plan *p, size_t i)
{
    slice *next = i + 1 < p->count ? &p->slices[i + 1] : NULL;
    return next != NULL && sw_rational_equal(next->onset, p->slices[i].end) ? next : NULL;
}

/* Whether a bracket of another line begins or ends at a slice: which of the two commands would come last
 * there is a question of the order of voices. */
static bool is_edge_of_others(const plan *p, const slice *s, uint32_t event)
{
    return s != NULL && s->edge_line != SW_NO_INDEX && s->edge_line != p->places->line[event];
}

/* Why there can't be a bracket from one slice to another; NULL when there can be one. */
static const char *find_obstacle(const plan *p, size_t from_slice, size_t to_slice, int direction)
{
    const slice *from = &p->slices[from_slice];
    const slice *to = &p->slices[to_slice];
    uint32_t first = first_event(from, direction);
    uint32_t last = last_event(p, first, to);
    if (last == SW_NO_INDEX || !begins_with(p, first, from)) {
        return "note: no bracket here: it would begin in one voice and end in another";
    }
    if (is_edge_of_others(p, from, first) || is_edge_of_others(p, next_slice(p, to_slice), last)) {
        return "note: no bracket here: it would meet a bracket that is written elsewhere";
    }
    if (!is_readable(from, direction, 1)) {
        return "note: no bracket here: what sounds with it would get too many ledger lines";
    }
    if (sw_rational_equal(from->onset, to->end)) {
        return "note: no bracket here: there are only grace notes, without a note behind them";
    }
    return NULL;
}

/* Makes *last an earlier slice if that is what a bracket needs to be possible. The obstacle when none is. */
static const char *shorten(const plan *p, size_t first, size_t *last, int direction)
{
    const char *obstacle = find_obstacle(p, first, *last, direction);
    while (obstacle != NULL && *last > first) {
        do {
            (*last)--;
        } while (*last > first && !needs(p, &p->slices[*last], direction));
        obstacle = find_obstacle(p, first, *last, direction);
    }
    return obstacle;
}

static void add_bracket(plan *p, size_t first, size_t last, int direction)
{
    const slice *from = &p->slices[first];
    const slice *to = &p->slices[last];
    static const char *const names[2][2] = {{"8va", "15ma"}, {"8vb", "15mb"}};
    int octaves = octaves_for(p, first, last, direction);
    int most = 0;
    for (size_t i = first; i <= last; i++) {
        int lines = ledger_lines(&p->slices[i], direction, 0);
        most = lines > most ? lines : most;
    }
    sw_buffer what = {0};
    char place[SW_SAY];
    sw_buffer_format(&what, "%s up to %s, instead of up to %d ledger lines",
                     names[direction < 0][octaves - 1], sw_say_place(p->chosen->score, to->onset, place),
                     most);
    say(p, &p->move->why, from, sw_buffer_text(&what));
    sw_buffer_free(&what);
    sw_brackets *all = &p->brackets;
    all->items = sw_grow(all->items, all->count, &all->capacity, sizeof *all->items);
    all->items[all->count++] = (sw_bracket){.staff = p->staff,
                                            .from = from->onset,
                                            .to = to->end,
                                            .octaves = direction * octaves,
                                            .first = first_event(from, direction),
                                            .last = last_event(p, first_event(from, direction), to)};
    slice *next = next_slice(p, last);
    if (next != NULL) {
        next->edge_line = p->places->line[first_event(from, direction)];
    }
}

static void plan_staff(plan *p)
{
    collect(p);
    cut_slices(p);
    set_lines(p);
    for (size_t i = 0; i < p->count;) {
        int direction = needs(p, &p->slices[i], 1) ? 1 : needs(p, &p->slices[i], -1) ? -1 : 0;
        size_t last = i;
        if (direction != 0) {
            last = end_of_bracket(p, i, direction);
            const char *obstacle = shorten(p, i, &last, direction);
            if (obstacle == NULL) {
                add_bracket(p, i, last, direction);
            } else {
                say(p, &p->move->notes, &p->slices[i], obstacle);
            }
        }
        i = last + 1;
    }
    free(p->events);
    free(p->slices);
    p->events = NULL;
    p->slices = NULL;
    p->event_count = p->count = 0;
}

sw_brackets sw_ottava_plan(sw_move *move, const sw_chosen *chosen, const sw_ottava_places *places,
                           int ledgers)
{
    const sw_score *score = chosen->score;
    bool *is_chosen = sw_chosen_map(chosen);
    bool *staves = sw_alloc_zero(score->staff_count + 1, sizeof *staves);
    for (size_t i = 0; i < chosen->count; i++) {
        staves[score->voices[score->events[chosen->events[i]].voice].staff] = true;
    }
    plan p = {.move = move, .chosen = chosen, .ledgers = ledgers, .places = places, .is_chosen = is_chosen};
    for (uint32_t s = 0; s < score->staff_count; s++) {
        p.staff = s;
        if (staves[s]) {
            plan_staff(&p);
        }
    }
    free(is_chosen);
    free(staves);
    return p.brackets;
}
