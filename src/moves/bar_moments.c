/* Where the bar lines of all scores fall in the text of one file. */
#include "moves/bar_layout.h"

static bool begins_bar(const sw_score *score, uint32_t bar, sw_rational onset)
{
    return bar != SW_NO_INDEX && sw_rational_equal(score->bars[bar].start, onset) &&
           sw_rational_is_zero(score->bars[bar].first);
}

static bool is_complete(const sw_bar *bar)
{
    return sw_rational_equal(sw_rational_add(bar->first, bar->length), bar->metre);
}

static void hear(sw_bar_layout *l, const sw_score *score, const sw_event *event, uint32_t start)
{
    uint32_t bar = sw_score_bar_at(score, event->onset);
    sw_rational end = sw_event_end(event);
    uint32_t behind = sw_score_bar_at(score, end);
    if (bar == SW_NO_INDEX) {
        return;
    }
    bool over = sw_rational_compare(end, score->length) >= 0;
    bool ends = over ? is_complete(&score->bars[behind]) : begins_bar(score, behind, end);
    uint32_t last = ends && !over && behind > bar ? behind - 1 : behind;
    sw_bar_moment m = {.heard = true,
                       .begins = bar > 0 && begins_bar(score, bar, event->onset),
                       .ends = ends,
                       .numbered = true,
                       .number = score->bars[bar].number,
                       .before = bar == 0 ? 0 : score->bars[bar - 1].number,
                       .last = score->bars[last].number};
    sw_bar_moment *known = &l->moments[start];
    if (!known->heard) {
        *known = m;
    }
    known->begins = known->begins && m.begins;
    known->ends = known->ends && m.ends;
    known->numbered =
        known->numbered && known->number == m.number && known->before == m.before && known->last == m.last;
    known->grace = known->grace || (event->flags & SW_EVENT_GRACE) != 0;
    known->uncertain = known->uncertain || (event->flags & SW_EVENT_UNCERTAIN) != 0;
}

static void hear_file(sw_bar_layout *l, const sw_reading *reading, uint32_t file)
{
    for (size_t s = 0; s < reading->score_count; s++) {
        const sw_score *score = &reading->scores[s];
        for (size_t i = 0; i < score->event_count; i++) {
            const sw_event *event = &score->events[i];
            const sw_music *node = &reading->music[event->chord];
            bool other = (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) != 0 ||
                         (reading->music[event->music].flags & SW_MUSIC_CHORD_MODE) != 0;
            if (node->file == file && !other && node->start < l->text->length) {
                hear(l, score, event, node->start);
            }
        }
    }
}

void sw_bar_layout_hear(sw_bar_layout *l)
{
    for (size_t i = 0; i < l->move->main_count; i++) {
        const sw_reading *reading = l->move->mains[i];
        for (uint32_t f = 0; f < reading->file_count; f++) {
            if (sw_text_same_file(reading->files[f].text, l->text)) {
                hear_file(l, reading, f);
            }
        }
    }
}
