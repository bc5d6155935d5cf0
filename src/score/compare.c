#include "stavewright/compare.h"

#include <stdlib.h>
#include <string.h>

/* What a staff has in a bar, as one number a kind, so that bars can be compared quickly. */
enum { PITCHES, RHYTHM, DYNAMICS, MARKS, MARKS_PLACED, TEXTS, LYRICS, KEY, PARTS };

typedef struct content {
    uint64_t parts[PARTS];
} content;

/* One version of a score. */
typedef struct version {
    const sw_reading *reading;
    const sw_score *score;
    content *staves; /* [staff * bars + bar] */
    uint64_t *metre; /* by bar */
    uint64_t *tempo;
} version;

const char *sw_difference_name(int kind)
{
    static const char *const names[SW_DIFFER_KINDS] = {"notes", "rhythm", "dynamics", "articulations",
                                                       "texts", "lyrics", "key",      "metre",
                                                       "tempo", "new",    "gone"};
    return names[kind];
}

void sw_differences_free(sw_differences *differences)
{
    free(differences->items);
    sw_arena_free(differences->arena);
    *differences = (sw_differences){0};
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

/* A mark without its direction, a short form as the long one: how it looks is the layout's affair. */
static sw_slice plain_mark(sw_slice text)
{
    static const struct {
        char sign;
        const char *name;
    } signs[] = {{'.', "\\staccato"},      {'>', "\\accent"},  {'-', "\\tenuto"}, {'^', "\\marcato"},
                 {'!', "\\staccatissimo"}, {'_', "\\portato"}, {'+', "\\stopped"}};
    if (text.length > 1 && (text.data[0] == '-' || text.data[0] == '^' || text.data[0] == '_')) {
        for (size_t i = 0; i < sizeof signs / sizeof signs[0] && text.length == 2; i++) {
            if (text.data[1] == signs[i].sign) {
                return sw_slice_of(signs[i].name);
            }
        }
        return (sw_slice){text.data + 1, text.length - 1};
    }
    return text;
}

/* Sums stand for sets: the order in which marks are written does not matter. */
static void add_mark(content *c, sw_mark_class class, sw_slice text, sw_rational place)
{
    uint64_t hash = add_text(FNV_START, plain_mark(text));
    uint64_t placed = add_fraction(hash, place);
    switch (class) {
    case SW_MARK_BEAM_START:
    case SW_MARK_BEAM_END:
        break; /* layout */
    case SW_MARK_TIE:
        c->parts[RHYTHM] += placed;
        break;
    case SW_MARK_DYNAMIC:
    case SW_MARK_HAIRPIN_START:
    case SW_MARK_HAIRPIN_END:
        c->parts[DYNAMICS] += placed;
        break;
    case SW_MARK_TEXT:
        c->parts[TEXTS] += placed;
        break;
    default:
        c->parts[MARKS] += hash;
        c->parts[MARKS_PLACED] += placed;
    }
}

static void add_marks(const version *v, content *c, uint32_t music, sw_rational place)
{
    const sw_reading *r = v->reading;
    for (uint32_t m = r->music[music].first; m != SW_NO_INDEX; m = r->music[m].next) {
        if (r->music[m].kind == SW_MUSIC_MARK) {
            add_mark(c, sw_music_mark_class(r, m), sw_music_slice(r, m), place);
        }
    }
}

/* Pitches in the order in which they sound, so that another rhythm alone is no other pitch. */
typedef struct heard {
    sw_rational onset;
    int64_t height; /* unlike for two notes of unlike name */
} heard;

static int compare_heard(const void *a, const void *b)
{
    const heard *x = a;
    const heard *y = b;
    int order = sw_rational_compare(x->onset, y->onset);
    return order != 0 ? order : (x->height > y->height) - (x->height < y->height);
}

static int64_t height_of(const sw_event *event)
{
    return ((int64_t)event->pitch.octave * 7 + event->pitch.step) * 64 + event->pitch.alter;
}

static void add_pitches(const version *v, uint32_t staff, heard *list)
{
    const sw_score *score = v->score;
    sw_staff_events events = sw_score_staff_events(score, staff);
    size_t count = 0;
    for (uint32_t e = events.first; e < events.end; e++) {
        const sw_event *event = &score->events[e];
        if (event->kind == SW_EVENT_NOTE) {
            list[count++] = (heard){event->onset, height_of(event)};
        }
    }
    if (count > 1) {
        qsort(list, count, sizeof *list, compare_heard);
    }
    for (size_t i = 0; i < count; i++) {
        uint32_t bar = sw_score_bar_at(score, list[i].onset);
        if (bar != SW_NO_INDEX) {
            uint64_t *part = &v->staves[staff * score->bar_count + bar].parts[PITCHES];
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
        content *c = &v->staves[staff * score->bar_count + bar];
        sw_rational place = place_of(v, bar, event->onset);
        if (event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM) { /* silence is what is left */
            uint64_t hash = add_fraction(add_fraction(FNV_START, place), event->duration);
            hash = add_number(add_number(hash, event->grace_num), event->grace_den);
            if (event->kind == SW_EVENT_DRUM) {
                hash = add_text(hash, sw_music_slice(v->reading, event->music));
            }
            c->parts[RHYTHM] += hash;
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

static void add_settings(const version *v)
{
    const sw_score *score = v->score;
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        uint32_t bar = sw_score_bar_at(score, setting->onset);
        if (bar == SW_NO_INDEX) {
            continue;
        }
        uint64_t hash = add_fraction(add_text(FNV_START, sw_music_slice(v->reading, setting->music)),
                                     place_of(v, bar, setting->onset));
        content *c =
            setting->staff == SW_NO_INDEX ? NULL : &v->staves[setting->staff * score->bar_count + bar];
        switch ((sw_music_kind)v->reading->music[setting->music].kind) {
        case SW_MUSIC_KEY:
            if (c != NULL) {
                c->parts[KEY] += hash;
            }
            break;
        case SW_MUSIC_TEMPO:
            v->tempo[bar] |= hash; /* the same in however many staves it stands */
            break;
        case SW_MUSIC_CHORD: /* marks on <> */
            if (c != NULL) {
                add_marks(v, c, setting->music, place_of(v, bar, setting->onset));
            }
            break;
        default:
            break;
        }
    }
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
            v->staves[staff * score->bar_count + bar].parts[LYRICS] +=
                add_number(add_fraction(hash, place_of(v, bar, s->onset)), s->line);
        }
    }
}

static version look_at(const sw_reading *reading, const sw_score *score)
{
    version v = {reading, score, sw_alloc_zero(score->staff_count * score->bar_count + 1, sizeof(content)),
                 sw_alloc_zero(score->bar_count + 1, sizeof(uint64_t)),
                 sw_alloc_zero(score->bar_count + 1, sizeof(uint64_t))};
    for (size_t b = 0; b < score->bar_count; b++) {
        const sw_bar *bar = &score->bars[b];
        v.metre[b] =
            add_fraction(add_number(add_number(FNV_START, bar->beats), bar->beat_value), bar->length);
    }
    heard *list = sw_alloc((score->event_count + 1) * sizeof *list);
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        add_pitches(&v, staff, list);
        add_events(&v, staff);
    }
    free(list);
    add_settings(&v);
    add_lyrics(&v);
    return v;
}

static void forget(version *v)
{
    free(v->staves);
    free(v->metre);
    free(v->tempo);
}

/* ---- which staff is which -------------------------------------------------------------------------------
 */

static const char *name_of(const version *v, uint32_t staff, int which)
{
    const sw_staff *s = &v->score->staves[staff];
    const uint32_t names[] = {s->id, s->instrument, s->variable};
    return sw_reading_name(v->reading, names[which]);
}

/* By staff of the new version: that of the old one, SW_NO_INDEX for a new one. Names first, then the order of
 * what has no name. */
static uint32_t *match_staves(const version *before, const version *after)
{
    uint32_t count = (uint32_t)after->score->staff_count;
    uint32_t *match = sw_alloc((count + 1) * sizeof *match);
    bool *taken = sw_alloc_zero(before->score->staff_count + 1, sizeof *taken);
    memset(match, 0xff, (count + 1) * sizeof *match);
    for (int which = 0; which <= 3; which++) {
        for (uint32_t a = 0; a < count; a++) {
            for (uint32_t b = 0; b < before->score->staff_count && match[a] == SW_NO_INDEX; b++) {
                bool same = which < 3 ? *name_of(after, a, which) != '\0' &&
                                            strcmp(name_of(after, a, which), name_of(before, b, which)) == 0
                                      : *name_of(after, a, 0) == '\0' && *name_of(before, b, 0) == '\0';
                if (same && !taken[b]) {
                    match[a] = b;
                    taken[b] = true;
                }
            }
        }
    }
    free(taken);
    return match;
}

/* ---- which bar is which ---------------------------------------------------------------------------------
 */

/* Two versions side by side. */
typedef struct pair {
    version before;
    version after;
    const uint32_t *match; /* by staff of the new version */
    uint32_t matched;      /* how many of them have one */
} pair;

static unsigned what_differs(const content *a, const content *b)
{
    unsigned what = 0;
    what |= a->parts[PITCHES] != b->parts[PITCHES] ? (unsigned)SW_DIFFER_NOTES : 0;
    what |= a->parts[RHYTHM] != b->parts[RHYTHM] ? (unsigned)SW_DIFFER_RHYTHM : 0;
    what |= a->parts[DYNAMICS] != b->parts[DYNAMICS] ? (unsigned)SW_DIFFER_DYNAMICS : 0;
    /* marks that have only gone along with their notes are no news */
    bool moved = (what & SW_DIFFER_RHYTHM) == 0 && a->parts[MARKS_PLACED] != b->parts[MARKS_PLACED];
    what |= a->parts[MARKS] != b->parts[MARKS] || moved ? (unsigned)SW_DIFFER_ARTICULATIONS : 0;
    what |= a->parts[TEXTS] != b->parts[TEXTS] ? (unsigned)SW_DIFFER_TEXTS : 0;
    what |= a->parts[LYRICS] != b->parts[LYRICS] ? (unsigned)SW_DIFFER_LYRICS : 0;
    what |= a->parts[KEY] != b->parts[KEY] ? (unsigned)SW_DIFFER_KEY : 0;
    return what;
}

static const content *bar_of(const version *v, uint32_t staff, size_t bar)
{
    return &v->staves[staff * v->score->bar_count + bar];
}

/* What it costs to take an old bar for a new one: a staff that differs is one, another metre or tempo as
 * well. */
static uint32_t cost_of(const pair *p, size_t old, size_t new)
{
    uint32_t cost = p->before.metre[old] != p->after.metre[new] ? 1 : 0;
    cost += p->before.tempo[old] != p->after.tempo[new] ? 1 : 0;
    for (uint32_t s = 0; s < p->after.score->staff_count; s++) {
        cost += p->match[s] != SW_NO_INDEX &&
                what_differs(bar_of(&p->before, p->match[s], old), bar_of(&p->after, s, new)) != 0;
    }
    return cost;
}

/* By new bar: the old one, SW_NO_INDEX for one that has come in. The alignment of the least cost, by dynamic
 * programming over both (Needleman and Wunsch 1970), where a bar that comes in or goes costs as much as a bar
 * in which half of the staves differ, and one more: a change in few staves is a change, and not a new bar. */
static uint32_t *align(const pair *p)
{
    size_t old = p->before.score->bar_count;
    size_t new = p->after.score->bar_count;
    uint32_t *to = sw_alloc((new + 1) * sizeof *to);
    memset(to, 0xff, (new + 1) * sizeof *to);
    size_t head = 0;
    while (head < old && head < new &&cost_of(p, head, head) == 0) {
        to[head] = (uint32_t)head;
        head++;
    }
    size_t tail = 0;
    while (tail < old - head && tail < new - head &&cost_of(p, old - 1 - tail, new - 1 - tail) == 0) {
        tail++;
        to[new - tail] = (uint32_t)(old - tail);
    }
    size_t rows = old - head - tail;
    size_t columns = new - head - tail;
    uint32_t gap = p->matched / 2 + 1;
    uint32_t *cost = sw_alloc((rows + 1) * (columns + 1) * sizeof *cost);
    for (size_t i = 0; i <= rows; i++) {
        for (size_t k = 0; k <= columns; k++) {
            uint32_t *here = &cost[i * (columns + 1) + k];
            *here = i == 0 ? (uint32_t)k * gap : (uint32_t)i * gap;
            if (i > 0 && k > 0) {
                uint32_t both = here[-(ptrdiff_t)columns - 2] + cost_of(p, head + i - 1, head + k - 1);
                uint32_t gone = here[-(ptrdiff_t)columns - 1] + gap;
                uint32_t come = here[-1] + gap;
                *here = both <= gone && both <= come ? both : gone <= come ? gone : come;
            }
        }
    }
    for (size_t i = rows, k = columns; i > 0 && k > 0;) {
        uint32_t here = cost[i * (columns + 1) + k];
        if (here == cost[(i - 1) * (columns + 1) + k - 1] + cost_of(p, head + i - 1, head + k - 1)) {
            to[head + --k] = (uint32_t)(head + --i);
        } else if (here == cost[(i - 1) * (columns + 1) + k] + gap) {
            i--;
        } else {
            k--;
        }
    }
    free(cost);
    return to;
}

/* ---- the list -------------------------------------------------------------------------------------------
 */

/* Adds a bar, to the stretch before it where that goes on. */
static void add(sw_differences *list, uint32_t score, const char *staff, const sw_score *numbers, size_t bar,
                unsigned what, bool goes_on)
{
    int32_t number = numbers->bars[bar].number;
    sw_difference *last = goes_on && list->count > 0 ? &list->items[list->count - 1] : NULL;
    if (last != NULL && last->score == score && last->what == what && last->staff == staff) {
        last->last_bar = number;
        return;
    }
    list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
    list->items[list->count++] = (sw_difference){
        .score = score, .staff = staff, .first_bar = number, .last_bar = number, .what = what};
}

static void add_whole(sw_differences *list, uint32_t score, const version *v, uint32_t staff, unsigned what)
{
    char label[32];
    const char *name =
        sw_arena_copy(list->arena, sw_slice_of(sw_staff_label(v->reading, v->score, staff, label)));
    list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
    list->items[list->count++] = (sw_difference){.score = score, .staff = name, .whole = true, .what = what};
}

static void list_bars(sw_differences *list, uint32_t score, const pair *p, const uint32_t *to)
{
    size_t old = p->before.score->bar_count;
    size_t new = p->after.score->bar_count;
    bool *kept = sw_alloc_zero(old + 1, sizeof *kept);
    for (size_t b = 0; b < new; b++) {
        if (to[b] != SW_NO_INDEX) {
            kept[to[b]] = true;
        }
    }
    for (size_t b = 0; b < old; b++) {
        if (!kept[b]) {
            add(list, score, NULL, p->before.score, b, SW_DIFFER_GONE, b > 0 && !kept[b - 1]);
        }
    }
    for (size_t b = 0; b < new; b++) {
        if (to[b] == SW_NO_INDEX) {
            add(list, score, NULL, p->after.score, b, SW_DIFFER_NEW, b > 0 && to[b - 1] == SW_NO_INDEX);
        }
    }
    unsigned before = 0;
    for (size_t b = 0; b < new; b++) {
        unsigned what =
            to[b] == SW_NO_INDEX
                ? 0
                : (p->before.metre[to[b]] != p->after.metre[b] ? (unsigned)SW_DIFFER_METRE : 0) |
                      (p->before.tempo[to[b]] != p->after.tempo[b] ? (unsigned)SW_DIFFER_TEMPO : 0);
        if (what != 0) {
            add(list, score, NULL, p->after.score, b, what, before == what);
        }
        before = what;
    }
    free(kept);
}

static void list_staff(sw_differences *list, uint32_t score, const pair *p, const uint32_t *to,
                       uint32_t staff)
{
    char label[32];
    const char *name = NULL;
    unsigned before = 0;
    for (size_t b = 0; b < p->after.score->bar_count; b++) {
        unsigned what = to[b] == SW_NO_INDEX ? 0
                                             : what_differs(bar_of(&p->before, p->match[staff], to[b]),
                                                            bar_of(&p->after, staff, b));
        if (what != 0) {
            if (name == NULL) {
                const char *known = sw_staff_label(p->after.reading, p->after.score, staff, label);
                name = sw_arena_copy(list->arena, sw_slice_of(known));
            }
            add(list, score, name, p->after.score, b, what, before == what);
        }
        before = what;
    }
}

static void compare_scores(sw_differences *list, uint32_t number, const sw_reading *before,
                           const sw_reading *after)
{
    pair p = {look_at(before, &before->scores[number]), look_at(after, &after->scores[number]), NULL, 0};
    uint32_t *match = match_staves(&p.before, &p.after);
    p.match = match;
    bool *kept = sw_alloc_zero(p.before.score->staff_count + 1, sizeof *kept);
    for (uint32_t s = 0; s < p.after.score->staff_count; s++) {
        if (match[s] != SW_NO_INDEX) {
            kept[match[s]] = true;
            p.matched++;
        }
    }
    uint32_t *to = align(&p);
    list_bars(list, number, &p, to);
    for (uint32_t s = 0; s < p.before.score->staff_count; s++) {
        if (!kept[s]) {
            add_whole(list, number, &p.before, s, SW_DIFFER_GONE);
        }
    }
    for (uint32_t s = 0; s < p.after.score->staff_count; s++) {
        if (match[s] == SW_NO_INDEX) {
            add_whole(list, number, &p.after, s, SW_DIFFER_NEW);
        } else {
            list_staff(list, number, &p, to, s);
        }
    }
    free(to);
    free(kept);
    free(match);
    forget(&p.before);
    forget(&p.after);
}

sw_differences sw_compare(const sw_reading *before, const sw_reading *after)
{
    sw_differences list = {.arena = sw_arena_new()};
    size_t both = before->score_count < after->score_count ? before->score_count : after->score_count;
    for (uint32_t s = 0; s < both; s++) {
        if (!before->scores[s].in_markup && !after->scores[s].in_markup) {
            compare_scores(&list, s, before, after);
        }
    }
    return list;
}
