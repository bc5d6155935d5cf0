#include "stavewright/compare.h"

#include <stdlib.h>
#include <string.h>

#include "score/bar_contents.h"

typedef sw_bar_contents version;
typedef sw_content content;

const char *sw_difference_name(int kind)
{
    static const char *const names[SW_DIFFER_KINDS] = {
        "notes", "rhythm", "dynamics", "articulations", "texts", "lyrics", "key",
        "metre", "tempo",  "marks",    "repeats",       "new",   "gone",   "name"};
    return names[kind];
}

void sw_differences_free(sw_differences *differences)
{
    free(differences->items);
    sw_arena_free(differences->arena);
    *differences = (sw_differences){0};
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
    what |= a->parts[SW_PART_PITCHES] != b->parts[SW_PART_PITCHES] ? (unsigned)SW_DIFFER_NOTES : 0;
    what |= a->parts[SW_PART_RHYTHM] != b->parts[SW_PART_RHYTHM] ? (unsigned)SW_DIFFER_RHYTHM : 0;
    what |= a->parts[SW_PART_DYNAMICS] != b->parts[SW_PART_DYNAMICS] ? (unsigned)SW_DIFFER_DYNAMICS : 0;
    /* marks that have only gone along with their notes are no news */
    bool moved =
        (what & SW_DIFFER_RHYTHM) == 0 && a->parts[SW_PART_MARKS_PLACED] != b->parts[SW_PART_MARKS_PLACED];
    what |=
        a->parts[SW_PART_MARKS] != b->parts[SW_PART_MARKS] || moved ? (unsigned)SW_DIFFER_ARTICULATIONS : 0;
    what |= a->parts[SW_PART_TEXTS] != b->parts[SW_PART_TEXTS] ? (unsigned)SW_DIFFER_TEXTS : 0;
    what |= a->parts[SW_PART_LYRICS] != b->parts[SW_PART_LYRICS] ? (unsigned)SW_DIFFER_LYRICS : 0;
    what |= a->parts[SW_PART_KEY] != b->parts[SW_PART_KEY] ? (unsigned)SW_DIFFER_KEY : 0;
    return what;
}

static const content *bar_of(const version *v, uint32_t staff, size_t bar)
{
    return &v->staves[staff * v->score->bar_count + bar];
}

static unsigned what_differs_for_all(const pair *p, size_t old, size_t new)
{
    static const unsigned kinds[SW_ALL_PARTS] = {SW_DIFFER_METRE, SW_DIFFER_TEMPO, SW_DIFFER_MARKS,
                                                 SW_DIFFER_REPEATS};
    unsigned what = 0;
    for (int part = 0; part < SW_ALL_PARTS; part++) {
        what |= p->before.all[old].parts[part] != p->after.all[new].parts[part] ? kinds[part] : 0;
    }
    return what;
}

/* What it costs to take an old bar for a new one: a staff that differs is one; another metre, tempo, mark or
 * repeat as well. */
static uint32_t cost_of(const pair *p, size_t old, size_t new)
{
    uint32_t cost = (uint32_t)__builtin_popcount(what_differs_for_all(p, old, new));
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
        unsigned what = to[b] == SW_NO_INDEX ? 0 : what_differs_for_all(p, to[b], b);
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

/* Whether another name stands before the staff: spaces and line breaks in it are layout. */
static bool is_renamed(const pair *p, uint32_t staff)
{
    static const char space[] = " \t\r\n";
    const char *old = name_of(&p->before, p->match[staff], 1);
    const char *now = name_of(&p->after, staff, 1);
    if (*old == '\0' || *now == '\0') {
        return false;
    }
    for (;; old++, now++) {
        old += strspn(old, space);
        now += strspn(now, space);
        if (*old != *now || *old == '\0') {
            return *old != *now;
        }
    }
}

static void compare_scores(sw_differences *list, uint32_t number, const version *before, const version *after)
{
    pair p = {*before, *after, NULL, 0};
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
            if (is_renamed(&p, s)) {
                add_whole(list, number, &p.after, s, SW_DIFFER_NAME);
            }
            list_staff(list, number, &p, to, s);
        }
    }
    free(to);
    free(kept);
    free(match);
}

/* ---- which score is which -------------------------------------------------------------------------------
 */

/* The scores of one version. */
typedef struct movements {
    version *items;
    uint32_t *numbers; /* in the reading */
    uint64_t *
        *bars; /* of each: a number for what each bar of a staff has, sorted; for bars that are not empty */
    size_t *bar_counts;
    size_t count;
} movements;

static int compare_numbers(const void *a, const void *b)
{
    const uint64_t *x = a;
    const uint64_t *y = b;
    return (*x > *y) - (*x < *y);
}

static uint64_t *sort_bars(const version *v, size_t *count)
{
    size_t all = v->score->staff_count * v->score->bar_count;
    uint64_t *bars = sw_alloc((all + 1) * sizeof *bars);
    *count = 0;
    for (size_t i = 0; i < all; i++) {
        const uint64_t *parts = v->staves[i].parts;
        if (parts[SW_PART_RHYTHM] != 0) {
            bars[(*count)++] = parts[SW_PART_PITCHES] * 31 + parts[SW_PART_RHYTHM];
        }
    }
    if (*count > 1) {
        qsort(bars, *count, sizeof *bars, compare_numbers);
    }
    return bars;
}

static movements movements_of(const sw_reading *reading)
{
    size_t room = reading->score_count + 1;
    movements m = {sw_alloc(room * sizeof *m.items), sw_alloc(room * sizeof *m.numbers),
                   sw_alloc(room * sizeof *m.bars), sw_alloc(room * sizeof *m.bar_counts), 0};
    for (uint32_t s = 0; s < reading->score_count; s++) {
        if (!reading->scores[s].in_markup) {
            m.items[m.count] = sw_bar_contents_of(reading, &reading->scores[s]);
            m.bars[m.count] = sort_bars(&m.items[m.count], &m.bar_counts[m.count]);
            m.numbers[m.count++] = s;
        }
    }
    return m;
}

static void free_movements(movements *m)
{
    for (size_t i = 0; i < m->count; i++) {
        sw_bar_contents_free(&m->items[i]);
        free(m->bars[i]);
    }
    free(m->items);
    free(m->numbers);
    free(m->bars);
    free(m->bar_counts);
}

/* How unlike two scores are: 0 when one has all bars of the other, 1 for two that have no bar in common. */
static double unlikeness(const movements *a, size_t i, const movements *b, size_t k)
{
    size_t same = 0;
    size_t x = 0;
    size_t y = 0;
    while (x < a->bar_counts[i] && y < b->bar_counts[k]) {
        int order = compare_numbers(&a->bars[i][x], &b->bars[k][y]);
        same += order == 0;
        x += order <= 0;
        y += order >= 0;
    }
    size_t fewer = a->bar_counts[i] < b->bar_counts[k] ? a->bar_counts[i] : b->bar_counts[k];
    return fewer == 0 ? 1 : 1 - (double)same / (double)fewer;
}

/* By new score: the old one, SW_NO_INDEX for a new one: as many as can be are taken for changed ones, so that
 * they are least unlike, in order. */
static uint32_t *match_scores(const movements *before, const movements *after)
{
    size_t columns = after->count + 1;
    double *cost = sw_alloc((before->count + 1) * columns * sizeof *cost);
    uint32_t *match = sw_alloc(columns * sizeof *match);
    const double gap =
        0.5; /* a score that comes and one that goes cost as much as two that have nothing in common */
    for (size_t i = 0; i <= before->count; i++) {
        for (size_t k = 0; k <= after->count; k++) {
            double *here = &cost[i * columns + k];
            *here = gap * (double)(i + k);
            if (i > 0 && k > 0) {
                double both = here[-(ptrdiff_t)columns - 1] + unlikeness(before, i - 1, after, k - 1);
                double one =
                    (here[-1] < here[-(ptrdiff_t)columns] ? here[-1] : here[-(ptrdiff_t)columns]) + gap;
                *here = both <= one ? both : one;
            }
        }
    }
    memset(match, 0xff, columns * sizeof *match);
    for (size_t i = before->count, k = after->count; i > 0 && k > 0;) {
        double here = cost[i * columns + k];
        if (here == cost[(i - 1) * columns + k - 1] + unlikeness(before, i - 1, after, k - 1)) {
            match[--k] = (uint32_t)--i;
        } else if (here == cost[(i - 1) * columns + k] + gap) {
            i--;
        } else {
            k--;
        }
    }
    free(cost);
    return match;
}

static void add_score(sw_differences *list, uint32_t number, unsigned what)
{
    list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
    list->items[list->count++] = (sw_difference){.score = number, .whole = true, .what = what};
}

sw_differences sw_compare(const sw_reading *before, const sw_reading *after)
{
    sw_differences list = {.arena = sw_arena_new()};
    movements old = movements_of(before);
    movements new = movements_of(after);
    uint32_t *match = match_scores(&old, &new);
    bool *kept = sw_alloc_zero(old.count + 1, sizeof *kept);
    for (size_t s = 0; s < new.count; s++) {
        if (match[s] != SW_NO_INDEX) {
            kept[match[s]] = true;
        }
    }
    for (size_t s = 0; s < old.count; s++) {
        if (!kept[s]) {
            add_score(&list, old.numbers[s], SW_DIFFER_GONE);
        }
    }
    for (size_t s = 0; s < new.count; s++) {
        if (match[s] == SW_NO_INDEX) {
            add_score(&list, new.numbers[s], SW_DIFFER_NEW);
        } else {
            compare_scores(&list, new.numbers[s], &old.items[match[s]], &new.items[s]);
        }
    }
    free(kept);
    free(match);
    free_movements(&old);
    free_movements(&new);
    return list;
}
