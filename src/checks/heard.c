#include "checks/heard.h"

#include <stdlib.h>

#include "checks/say.h"

static int compare_items(const void *a, const void *b)
{
    const sw_heard_item *x = a;
    const sw_heard_item *y = b;
    if (x->file != y->file) {
        return x->file < y->file ? -1 : 1;
    }
    if (x->start != y->start) {
        return x->start < y->start ? -1 : 1;
    }
    if (x->score != y->score) {
        return x->score < y->score ? -1 : 1;
    }
    return (x->event > y->event) - (x->event < y->event);
}

sw_heard sw_heard_of(const sw_reading *reading)
{
    sw_heard heard = {.reading = reading};
    size_t count = 0;
    for (size_t s = 0; s < reading->score_count; s++) {
        count += reading->scores[s].event_count;
    }
    heard.items = sw_alloc((count + 1) * sizeof *heard.items);
    for (uint32_t s = 0; s < reading->score_count; s++) {
        const sw_score *score = &reading->scores[s];
        for (uint32_t i = 0; i < score->event_count; i++) {
            if (score->events[i].kind != SW_EVENT_SKIP) {
                const sw_music *m = sw_event_written(reading, &score->events[i]);
                heard.items[heard.count++] = (sw_heard_item){m->file, m->start, s, i};
            }
        }
    }
    sw_sort(heard.items, heard.count, sizeof *heard.items, compare_items);
    return heard;
}

void sw_heard_free(sw_heard *heard)
{
    free(heard->items);
    *heard = (sw_heard){0};
}

/* The number of the first item at a place or behind it. */
static size_t first_at(const sw_heard *heard, uint32_t file, uint32_t start)
{
    size_t low = 0;
    size_t high = heard->count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        const sw_heard_item *item = &heard->items[middle];
        if (item->file < file || (item->file == file && item->start < start)) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

static const sw_heard_item *all_at(const sw_heard *heard, size_t first, size_t *count)
{
    size_t end = first;
    while (end < heard->count && heard->items[end].file == heard->items[first].file &&
           heard->items[end].start == heard->items[first].start) {
        end++;
    }
    *count = end - first;
    return &heard->items[first];
}

const sw_heard_item *sw_heard_near(const sw_heard *heard, uint32_t file, uint32_t start, size_t *count)
{
    size_t next = first_at(heard, file, start);
    bool has_next = next < heard->count && heard->items[next].file == file;
    if (has_next && heard->items[next].start == start) {
        return all_at(heard, next, count);
    }
    const sw_text *text = heard->reading->files[file].text;
    uint32_t line = sw_text_line(text, start);
    if (next > 0 && heard->items[next - 1].file == file &&
        sw_text_line(text, heard->items[next - 1].start) == line) {
        return all_at(heard, first_at(heard, file, heard->items[next - 1].start), count);
    }
    if (has_next) {
        return all_at(heard, next, count);
    }
    *count = 0;
    return NULL;
}

const sw_heard_item *sw_heard_within(const sw_heard *heard, uint32_t file, uint32_t start, uint32_t end,
                                     size_t *count)
{
    size_t first = first_at(heard, file, start);
    size_t behind = first_at(heard, file, end > start ? end : start + 1);
    *count = behind - first;
    return *count > 0 ? &heard->items[first] : NULL;
}

bool sw_heard_all(const sw_heard *heard, uint32_t file, uint32_t first_line, uint32_t last_line)
{
    const sw_reading *reading = heard->reading;
    const sw_text *text = reading->files[file].text;
    for (size_t i = 0; i < reading->music_count; i++) {
        const sw_music *m = &reading->music[i];
        if (m->file != file || (m->kind != SW_MUSIC_NOTE && m->kind != SW_MUSIC_DRUM)) {
            continue;
        }
        uint32_t line = sw_text_line(text, m->start);
        size_t at = first_at(heard, file, m->start);
        bool is_heard =
            at < heard->count && heard->items[at].file == file && heard->items[at].start == m->start;
        if (line >= first_line && line <= last_line && !is_heard) {
            return false;
        }
    }
    return true;
}
