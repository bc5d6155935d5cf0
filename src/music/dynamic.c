#include "stavewright/dynamic.h"

static const char *const names[SW_DYNAMICS] = {"n",  "ppppp", "pppp", "ppp", "pp",   "p",    "mp",
                                               "mf", "f",     "ff",   "fff", "ffff", "fffff"};

const char *sw_dynamic_name(sw_dynamic level)
{
    return level < SW_NO_DYNAMIC ? names[level] : "";
}

bool sw_dynamic_from_name(sw_slice name, sw_dynamic *level)
{
    for (int i = 0; i < SW_DYNAMICS; i++) {
        if (sw_slice_is(name, names[i])) {
            *level = (sw_dynamic)i;
            return true;
        }
    }
    return false;
}

const char *const *sw_dynamic_names(void)
{
    return names;
}

sw_dynamic sw_dynamic_moved(sw_dynamic level, int steps)
{
    if (level == SW_NIENTE || level >= SW_NO_DYNAMIC) {
        return level;
    }
    int moved = (int)level + steps;
    return moved < SW_PPPPP ? SW_PPPPP : moved > SW_FFFFF ? SW_FFFFF : (sw_dynamic)moved;
}

bool sw_dynamic_mark_read(sw_slice name, sw_dynamic_mark *mark)
{
    static const struct row {
        const char *name;
        sw_dynamic_mark mark;
    } rows[] = {
        {"fp", {SW_F, SW_P}},
        {"sfp", {SW_F, SW_P}},
        {"sf", {SW_F, SW_NO_DYNAMIC}},
        {"sfz", {SW_F, SW_NO_DYNAMIC}},
        {"fz", {SW_F, SW_NO_DYNAMIC}},
        {"rfz", {SW_F, SW_NO_DYNAMIC}},
        {"sff", {SW_FF, SW_NO_DYNAMIC}},
        {"sp", {SW_P, SW_P}},
        {"spp", {SW_PP, SW_PP}},
    };
    sw_dynamic level;
    if (sw_dynamic_from_name(name, &level)) {
        *mark = (sw_dynamic_mark){level, level};
        return true;
    }
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        if (sw_slice_is(name, rows[i].name)) {
            *mark = rows[i].mark;
            return true;
        }
    }
    return false;
}
