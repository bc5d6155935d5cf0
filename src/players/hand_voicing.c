/* Every choice for every note, the cheap ones first, given up where they are no better than the best so far.
 */
#include "players/hand_voicing.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

enum { OCTAVE_STEPS = 7, OCTAVE_KEYS = 12 };

typedef struct search {
    const sw_hand_limits *limits;
    size_t count;
    int low;
    int high;
    sw_voiced_note now[SW_VOICING_NOTES];
    sw_voiced_note best[SW_VOICING_NOTES];
    int least;
} search;

/* A key under a finger. */
typedef struct key {
    int step;
    int semitone;
} key;

static int compare_by_string(const void *a, const void *b)
{
    const key *x = a;
    const key *y = b;
    return x->step != y->step ? x->step - y->step : x->semitone - y->semitone;
}

static int compare_by_key(const void *a, const void *b)
{
    const key *x = a;
    const key *y = b;
    return x->semitone - y->semitone;
}

static bool fits(const key *keys, size_t first, size_t end, const sw_hand_limits *limits, sw_hand hand)
{
    int low = INT_MAX;
    int high = INT_MIN;
    for (size_t i = first; i < end; i++) {
        low = keys[i].step < low ? keys[i].step : low;
        high = keys[i].step > high ? keys[i].step : high;
    }
    if (first == end) {
        return true;
    }
    bool reaches = hand == SW_LEFT_HAND || low >= limits->right_lowest;
    return (int)(end - first) <= limits->fingers && high - low <= sw_hand_span_at(limits, low) && reaches;
}

int sw_hand_voicing_split(const sw_voiced_note *notes, size_t count, const sw_hand_limits *limits)
{
    key keys[SW_VOICING_NOTES];
    size_t kept = 0;
    for (size_t i = 0; i < count; i++) {
        if (!notes[i].left_out) {
            keys[kept++] = (key){notes[i].step + OCTAVE_STEPS * notes[i].octaves,
                                 notes[i].semitone + OCTAVE_KEYS * notes[i].octaves};
        }
    }
    qsort(keys, kept, sizeof *keys, limits->by_string ? compare_by_string : compare_by_key);
    for (size_t i = 1; i < kept; i++) {
        bool same = keys[i].semitone == keys[i - 1].semitone &&
                    (!limits->by_string || keys[i].step == keys[i - 1].step);
        if (same) {
            return -1;
        }
    }
    int best = -1;
    size_t uneven = kept + 1;
    for (size_t split = 0; split <= kept; split++) {
        size_t difference = split > kept - split ? 2 * split - kept : kept - 2 * split;
        if (difference < uneven && fits(keys, 0, split, limits, SW_LEFT_HAND) &&
            fits(keys, split, kept, limits, SW_RIGHT_HAND)) {
            best = (int)split;
            uneven = difference;
        }
    }
    return best;
}

static int pitch_class(const sw_voiced_note *note)
{
    return (note->semitone % OCTAVE_KEYS + OCTAVE_KEYS) % OCTAVE_KEYS;
}

/* Whether every note that is left out is there in another octave. */
static bool is_complete(const search *s)
{
    for (size_t i = 0; i < s->count; i++) {
        bool there = !s->now[i].left_out;
        for (size_t k = 0; k < s->count && !there; k++) {
            there = !s->now[k].left_out && pitch_class(&s->now[k]) == pitch_class(&s->now[i]);
        }
        if (!there) {
            return false;
        }
    }
    return true;
}

/* The choices of one note, the cheaper ones first. */
static const struct choice {
    int octaves;
    bool left_out;
    int change;
} choices[] = {{0, false, 0},
               {-1, false, SW_VOICING_OCTAVE},
               {1, false, SW_VOICING_OCTAVE},
               {0, true, SW_VOICING_LEFT_OUT},
               {-2, false, 2 * SW_VOICING_OCTAVE},
               {2, false, 2 * SW_VOICING_OCTAVE}};

static void choose(search *s, size_t i, int change)
{
    if (i == s->count) {
        if (is_complete(s) && sw_hand_voicing_split(s->now, s->count, s->limits) >= 0) {
            s->least = change;
            memcpy(s->best, s->now, sizeof s->best);
        }
        return;
    }
    bool outer = i == 0 || i + 1 == s->count;
    for (size_t c = 0; c < (s->now[i].fixed ? 1 : sizeof choices / sizeof choices[0]); c++) {
        int next = change + choices[c].change + (c > 0 && outer ? SW_VOICING_OUTER : 0);
        int semitone = s->now[i].semitone + OCTAVE_KEYS * choices[c].octaves;
        bool moves_out = choices[c].octaves != 0 && (semitone < s->low || semitone > s->high);
        if (next >= s->least || moves_out) {
            continue;
        }
        s->now[i].octaves = choices[c].octaves;
        s->now[i].left_out = choices[c].left_out;
        choose(s, i + 1, next);
    }
}

int sw_hand_voicing(sw_voiced_note *notes, size_t count, const sw_hand_limits *limits, int low, int high)
{
    if (count == 0 || count > SW_VOICING_NOTES) {
        return -1;
    }
    search s = {.limits = limits, .count = count, .low = low, .high = high, .least = SW_VOICING_MOST + 1};
    memcpy(s.now, notes, count * sizeof *notes);
    choose(&s, 0, 0);
    if (s.least > SW_VOICING_MOST) {
        return -1;
    }
    memcpy(notes, s.best, count * sizeof *notes);
    return s.least;
}
