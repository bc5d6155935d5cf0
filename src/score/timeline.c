/* Bars and tempos of a score, from its settings. */
#include <stdlib.h>
#include <string.h>

#include "score/reader.h"

static int compare_settings(const void *a, const void *b, void *context)
{
    const sw_setting *settings = context;
    uint32_t x = *(const uint32_t *)a;
    uint32_t y = *(const uint32_t *)b;
    int order = sw_rational_compare(settings[x].onset, settings[y].onset);
    return order != 0 ? order : (x < y ? -1 : 1);
}

/* By time; among those of one moment the order of the walk stays. */
static void sort_settings(sw_score *score)
{
    size_t count = score->setting_count;
    uint32_t *order = sw_alloc((count + 1) * sizeof *order);
    for (uint32_t i = 0; i < count; i++) {
        order[i] = i;
    }
    sw_sort_with(order, count, sizeof *order, compare_settings, score->settings);
    sw_setting *sorted = sw_alloc((count + 1) * sizeof *sorted);
    for (size_t i = 0; i < count; i++) {
        sorted[i] = score->settings[order[i]];
    }
    free(order);
    free(score->settings);
    score->settings = sorted;
    score->setting_capacity = count + 1;
}

static void add_tempo(sw_score *score, sw_rational onset, double whole_note, uint32_t music)
{
    double seconds = 0;
    if (score->tempo_count > 0) {
        const sw_tempo *before = &score->tempos[score->tempo_count - 1];
        double length = sw_rational_to_double(sw_rational_sub(onset, before->onset));
        seconds = before->seconds + length * before->whole_note;
        if (sw_rational_equal(onset, before->onset)) {
            score->tempo_count--; /* replaced before it has sounded */
        }
    }
    score->tempos = sw_grow(score->tempos, score->tempo_count, &score->tempo_capacity, sizeof(sw_tempo));
    score->tempos[score->tempo_count++] = (sw_tempo){onset, seconds, whole_note, music};
}

static void count_seconds(const sw_reading *reading, sw_score *score)
{
    add_tempo(score, sw_rational_zero(), 4.0, SW_NO_INDEX); /* the language assumes 60 quarters a minute */
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        const sw_music *m = &reading->music[setting->music];
        if (m->kind != SW_MUSIC_TEMPO || m->name2 == 0) {
            continue; /* a tempo in words only carries the tempo before it */
        }
        double beat = sw_rational_to_double(sw_duration_length(sw_music_duration(m)));
        double rate = m->name2 / 1000.0;
        if (beat > 0 && rate > 0) {
            add_tempo(score, setting->onset, 60.0 / (rate * beat), setting->music);
        }
    }
}

void sw_timeline(const sw_reading *reading, sw_score *score)
{
    sort_settings(score);
    sw_count_bars(reading, score);
    count_seconds(reading, score);
}
