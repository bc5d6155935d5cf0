#include "players/endings.h"

#include <stdlib.h>

static bool is_of_first_line(const sw_endings *endings, const sw_setting *setting)
{
    for (size_t i = 0; i < endings->count; i++) {
        if (endings->items[i]->staff == setting->staff) {
            return endings->items[i]->voice == setting->voice;
        }
    }
    return true;
}

bool sw_endings_of_one_repeat(const sw_setting *a, const sw_setting *b)
{
    return a->staff == b->staff && a->music == b->music && a->frame == b->frame;
}

/* Those of one moment stay as the score has them. */
static int compare(const void *a, const void *b)
{
    const sw_setting *x = *(const sw_setting *const *)a;
    const sw_setting *y = *(const sw_setting *const *)b;
    if (x->staff != y->staff) {
        return x->staff < y->staff ? -1 : 1;
    }
    int order = sw_rational_compare(x->onset, y->onset);
    return order != 0 ? order : (x > y) - (x < y);
}

sw_endings sw_endings_of_score(const sw_reading *reading, const sw_score *score)
{
    sw_endings endings = {0};
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        if (reading->music[setting->music].kind == SW_MUSIC_ALTERNATIVES && setting->staff != SW_NO_INDEX &&
            is_of_first_line(&endings, setting)) {
            endings.items = sw_grow(endings.items, endings.count, &endings.capacity, sizeof *endings.items);
            endings.items[endings.count++] = setting;
        }
    }
    sw_sort(endings.items, endings.count, sizeof *endings.items, compare);
    return endings;
}
