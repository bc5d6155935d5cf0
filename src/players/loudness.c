#include "players/loudness.h"

#include <string.h>

int sw_loudness(sw_slice mark)
{
    static const struct {
        const char *name;
        int loudness;
    } names[] = {{"n", SW_LOUDNESS_NIENTE},
                 {"ppppp", -6},
                 {"pppp", -5},
                 {"ppp", -4},
                 {"pp", -3},
                 {"p", -2},
                 {"mp", -1},
                 {"mf", 0},
                 {"f", 1},
                 {"ff", 2},
                 {"fff", 3},
                 {"ffff", 4},
                 {"fffff", 5},
                 {"fp", -2},
                 {"sfp", -2},
                 {"sp", -2},
                 {"spp", -3}};
    const char *last = mark.length == 0 ? NULL : memrchr(mark.data, '\\', mark.length);
    if (last == NULL) {
        return SW_NO_LOUDNESS;
    }
    sw_slice name = {last + 1, (size_t)(mark.data + mark.length - last - 1)};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (sw_slice_is(name, names[i].name)) {
            return names[i].loudness;
        }
    }
    return SW_NO_LOUDNESS;
}
