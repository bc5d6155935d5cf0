#include "players/doublings.h"

#include <string.h>

#include "players/chairs.h"

static const char *const pimentel =
    "B. Pimentel, Time required for instrument switches: under 5 s risky, 8-10 s safe";
static const char *const usual = "common practice, no source";

/* The pairs that differ from the others of their family. */
static const struct {
    const char *one;
    const char *other;
    double seconds;
} pairs[] = {
    {"flute", "piccolo", 5},          {"oboe", "english-horn", 8},
    {"clarinet", "clarinet-in-a", 8}, {"clarinet", "bass-clarinet", 10},
    {"bassoon", "contrabassoon", 15}, {"clarinet", "contrabass-clarinet", 15},
};

static bool is_pair(const sw_instrument *a, const sw_instrument *b, const char *one, const char *other)
{
    return strcmp(a->id, one) == 0 && strcmp(b->id, other) == 0;
}

sw_doubling sw_doubling_between(const sw_instrument *from, const sw_instrument *to)
{
    for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++) {
        if (is_pair(from, to, pairs[i].one, pairs[i].other) ||
            is_pair(to, from, pairs[i].one, pairs[i].other)) {
            return (sw_doubling){pairs[i].seconds, usual};
        }
    }
    if (from == to || (from->family != SW_WOODWIND && sw_instruments_alike(from, to))) {
        return (sw_doubling){0, usual};
    }
    bool winds = from->family == SW_WOODWIND && to->family == SW_WOODWIND;
    bool percussion = from->family == SW_PERCUSSION && to->family == SW_PERCUSSION;
    return winds ? (sw_doubling){8, pimentel} : (sw_doubling){percussion ? 2 : 5, usual};
}
