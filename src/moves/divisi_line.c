/* The cheapest way through all ways of each chord, by dynamic programming. */
#include "moves/divisi_line.h"

#include <stdlib.h>
#include <string.h>

#include "stavewright/base.h"

enum { MOST_WAYS = 1 << (SW_DIVISI_MOST - 1) };

int64_t sw_divisi_place_cost(const sw_divisi_slice *slice, const sw_divisi_section *section,
                             const uint8_t *notes)
{
    int64_t on[SW_DIVISI_MOST] = {0};
    int parts[SW_DIVISI_MOST] = {0};
    int64_t all = 0;
    int64_t cost = 0;
    for (int p = 0; p < section->parts; p++) {
        on[notes[p]] += section->sizes[p];
        parts[notes[p]]++;
        all += section->sizes[p];
        cost += SW_DIVISI_RANGE * slice->beyond[p][notes[p]] + SW_DIVISI_HIGH * slice->position[p][notes[p]];
    }
    for (int n = 0; n < slice->count; n++) {
        bool inner = n > 0 && n + 1 < slice->count;
        /* counted as if all parts were equally large */
        cost += SW_DIVISI_EVEN * on[n] * on[n] * section->parts * section->parts / (all * all);
        cost += inner ? SW_DIVISI_INNER * (parts[n] - 1) : 0;
    }
    return cost;
}

int64_t sw_divisi_joint_cost(const sw_divisi_slice *a, const sw_divisi_slice *b,
                             const sw_divisi_section *section, const uint8_t *notes_a, const uint8_t *notes_b)
{
    int64_t cost = 0;
    for (int p = 0; p < section->parts; p++) {
        int from = a->heights[notes_a[p]];
        int shift = abs(b->position[p][notes_b[p]] - a->position[p][notes_a[p]]);
        int way = abs(b->heights[notes_b[p]] - from) * SW_DIVISI_STEP + shift * SW_DIVISI_SHIFT;
        cost += b->apart ? way / 2 : way;
        for (int n = 0; n < b->count; n++) {
            bool tied = (b->tied >> n & 1) != 0 && b->heights[n] == from;
            cost += tied && notes_b[p] != n ? SW_DIVISI_TIE : 0;
        }
    }
    return cost;
}

/* A way is the set of parts that begin a new note, from the lowest part up: as many as the notes. */
static size_t list_ways(const sw_divisi_slice *slice, int parts, uint8_t ways[][SW_DIVISI_MOST])
{
    size_t count = 0;
    for (unsigned set = 0; set < 1u << (parts - 1); set++) {
        uint8_t note = 0;
        ways[count][0] = 0;
        for (int p = 1; p < parts; p++) {
            note = (uint8_t)(note + (set >> (p - 1) & 1));
            ways[count][p] = note;
        }
        count += note + 1 == slice->count;
    }
    return count;
}

/* The best way up to one way of a chord. */
typedef struct step {
    int64_t cost;
    size_t before; /* way of the chord before */
    uint8_t notes[SW_DIVISI_MOST];
} step;

typedef struct stage {
    size_t count;
    step steps[MOST_WAYS];
} stage;

static void fill_stage(const sw_divisi_slice *slice, const sw_divisi_section *section, const stage *before,
                       stage *now)
{
    uint8_t ways[MOST_WAYS][SW_DIVISI_MOST];
    now->count = list_ways(slice, section->parts, ways);
    for (size_t w = 0; w < now->count; w++) {
        step *s = &now->steps[w];
        memcpy(s->notes, ways[w], sizeof s->notes);
        s->cost = before == NULL ? 0 : INT64_MAX;
        for (size_t b = 0; before != NULL && b < before->count; b++) {
            int64_t cost = before->steps[b].cost +
                           sw_divisi_joint_cost(slice - 1, slice, section, before->steps[b].notes, s->notes);
            if (cost < s->cost) {
                s->cost = cost;
                s->before = b;
            }
        }
        s->cost += sw_divisi_place_cost(slice, section, s->notes);
    }
}

int64_t sw_divisi_solve(const sw_divisi_slice *slices, size_t count, const sw_divisi_section *section,
                        uint8_t *notes)
{
    int parts = section->parts;
    for (size_t i = 0; i < count; i++) {
        if (slices[i].count == 0 || slices[i].count > parts || parts > SW_DIVISI_MOST) {
            return -1;
        }
    }
    if (count == 0) {
        return 0;
    }
    stage *stages = sw_alloc_zero(count, sizeof *stages);
    for (size_t i = 0; i < count; i++) {
        fill_stage(&slices[i], section, i == 0 ? NULL : &stages[i - 1], &stages[i]);
    }
    const stage *last = &stages[count - 1];
    size_t best = 0;
    for (size_t w = 1; w < last->count; w++) {
        best = last->steps[w].cost < last->steps[best].cost ? w : best;
    }
    int64_t cost = last->steps[best].cost;
    for (size_t i = count; i-- > 0;) {
        const step *s = &stages[i].steps[best];
        memcpy(notes + i * (size_t)parts, s->notes, (size_t)parts);
        best = s->before;
    }
    free(stages);
    return cost;
}

int sw_divisi_players(int players, int parts, int part)
{
    int from_edge = part < parts - 1 - part ? part : parts - 1 - part;
    bool lower = part < parts - 1 - part;
    return players / parts + (2 * from_edge + lower < players % parts ? 1 : 0);
}

/* The squares of the sizes of a group's parts: what makes them equal. */
static int squares(int players, int parts)
{
    int sum = 0;
    for (int part = 0; part < parts; part++) {
        int size = sw_divisi_players(players, parts, part);
        sum += size * size;
    }
    return sum;
}

/* Each group has one part; each further part goes where it helps most. */
static void share_parts(const int *groups, int count, int parts, int *shares)
{
    for (int g = 0; g < count; g++) {
        shares[g] = 1;
    }
    for (int left = parts - count; left > 0; left--) {
        int best = 0;
        int most = -1;
        for (int g = 0; g < count; g++) {
            int gain = squares(groups[g], shares[g]) - squares(groups[g], shares[g] + 1);
            if (gain > most) {
                most = gain;
                best = g;
            }
        }
        shares[best]++;
    }
}

sw_divisi_section sw_divisi_section_of(const int *groups, int count, int parts)
{
    sw_divisi_section section = {.parts = parts};
    int shares[SW_DIVISI_MOST];
    int players = 0;
    for (int g = 0; g < count; g++) {
        players += groups[g];
    }
    if (count == 0 || count > parts) {
        groups = &players;
        count = 1;
    }
    share_parts(groups, count, parts, shares);
    for (int g = 0, part = parts; g < count; g++) {
        part -= shares[g];
        for (int own = 0; own < shares[g]; own++) {
            section.groups[part + own] = g;
            section.sizes[part + own] = players < parts ? 1 : sw_divisi_players(groups[g], shares[g], own);
        }
    }
    return section;
}
