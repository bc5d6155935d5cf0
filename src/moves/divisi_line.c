/* The cheapest way through all ways of each chord, by dynamic programming. */
#include "moves/divisi_line.h"

#include <stdlib.h>
#include <string.h>

#include "stavewright/base.h"

enum { MOST_WAYS = 1 << (SW_DIVISI_MOST - 1) };

int64_t sw_divisi_place_cost(const sw_divisi_slice *slice, int parts, const uint8_t *notes)
{
    int on[SW_DIVISI_MOST] = {0};
    for (int p = 0; p < parts; p++) {
        on[notes[p]]++;
    }
    int64_t cost = 0;
    for (int n = 0; n < slice->count; n++) {
        bool inner = n > 0 && n + 1 < slice->count;
        cost += SW_DIVISI_EVEN * on[n] * on[n] + (inner ? SW_DIVISI_INNER * (on[n] - 1) : 0);
    }
    return cost;
}

int64_t sw_divisi_joint_cost(const sw_divisi_slice *a, const sw_divisi_slice *b, int parts,
                             const uint8_t *notes_a, const uint8_t *notes_b)
{
    int64_t cost = 0;
    for (int p = 0; p < parts; p++) {
        int from = a->heights[notes_a[p]];
        cost += abs(b->heights[notes_b[p]] - from) * (b->apart ? SW_DIVISI_STEP / 2 : SW_DIVISI_STEP);
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

static void fill_stage(const sw_divisi_slice *slice, int parts, const stage *before, stage *now)
{
    uint8_t ways[MOST_WAYS][SW_DIVISI_MOST];
    now->count = list_ways(slice, parts, ways);
    for (size_t w = 0; w < now->count; w++) {
        step *s = &now->steps[w];
        memcpy(s->notes, ways[w], sizeof s->notes);
        s->cost = before == NULL ? 0 : INT64_MAX;
        for (size_t b = 0; before != NULL && b < before->count; b++) {
            int64_t cost = before->steps[b].cost +
                           sw_divisi_joint_cost(slice - 1, slice, parts, before->steps[b].notes, s->notes);
            if (cost < s->cost) {
                s->cost = cost;
                s->before = b;
            }
        }
        s->cost += sw_divisi_place_cost(slice, parts, s->notes);
    }
}

int64_t sw_divisi_solve(const sw_divisi_slice *slices, size_t count, int parts, uint8_t *notes)
{
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
        fill_stage(&slices[i], parts, i == 0 ? NULL : &stages[i - 1], &stages[i]);
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
