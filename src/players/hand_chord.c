#include "players/hand_chord.h"

/* The spread of the keys first .. end-1. */
static int spread_of(const sw_chord_key *keys, size_t first, size_t end)
{
    if (end <= first) {
        return 0;
    }
    int low = keys[first].step;
    int high = low;
    bool rolled = false;
    for (size_t i = first; i < end; i++) {
        low = keys[i].step < low ? keys[i].step : low;
        high = keys[i].step > high ? keys[i].step : high;
        rolled = rolled || keys[i].rolled;
    }
    return rolled ? 0 : high - low;
}

static int beyond(size_t keys, int fingers)
{
    return (int)keys > fingers ? (int)keys - fingers : 0;
}

sw_chord_split sw_chord_share(const sw_chord_key *keys, size_t count, int fingers)
{
    sw_chord_split best = {0};
    for (size_t split = 0; split <= count; split++) {
        int left = spread_of(keys, 0, split);
        int right = spread_of(keys, split, count);
        sw_chord_split candidate = {
            .split = split,
            .excess = beyond(split, fingers) + beyond(count - split, fingers),
            .wider_hand = right > left,
            .spread = right > left ? right : left,
        };
        if (split == 0 || candidate.excess < best.excess ||
            (candidate.excess == best.excess && candidate.spread < best.spread)) {
            best = candidate;
        }
    }
    return best;
}
