/* Items that are written once and heard in several places. */
#include <stdlib.h>
#include <string.h>

#include "write/print.h"

/* ---- where a touched item is written ---- */

static int compare_places(const void *a, const void *b, void *context)
{
    const sw_draft *draft = context;
    const sw_music *x = &draft->reading->music[draft->items[*(const uint32_t *)a]->music];
    const sw_music *y = &draft->reading->music[draft->items[*(const uint32_t *)b]->music];
    return x->start < y->start ? -1 : x->start > y->start;
}

/* The item among some in order of place that is written at a node's place, in a file that is the same. */
static uint32_t item_at(const sw_draft *draft, const uint32_t *sorted, size_t count, const sw_music *node)
{
    size_t low = 0;
    size_t high = count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (draft->reading->music[draft->items[sorted[middle]]->music].start < node->start) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    const sw_music *own = low < count ? &draft->reading->music[draft->items[sorted[low]]->music] : NULL;
    return own != NULL && own->start == node->start && own->kind == node->kind ? sorted[low] : SW_NO_INDEX;
}

static void find_in_file(const sw_draft *draft, const uint32_t *sorted, size_t count,
                         const sw_reading *reading, uint32_t file, uint32_t *found)
{
    for (uint32_t m = 0; m < reading->music_count; m++) {
        const sw_music *music = &reading->music[m];
        if (music->file == file && music->kind >= SW_MUSIC_NOTE && music->kind <= SW_MUSIC_BARE) {
            uint32_t item = item_at(draft, sorted, count, music);
            found[m] = item != SW_NO_INDEX ? item + 1 : found[m];
        }
    }
}

uint32_t *sw_draft_find_items(const sw_draft *draft, const sw_reading *reading)
{
    uint32_t *found = sw_alloc_zero(reading->music_count + 1, sizeof *found);
    uint32_t *sorted = sw_alloc((draft->item_count + 1) * sizeof *sorted);
    for (uint32_t f = 0; f < draft->reading->file_count; f++) {
        size_t count = 0;
        for (uint32_t i = 0; i < draft->item_count; i++) {
            if (draft->reading->music[draft->items[i]->music].file == f) {
                sorted[count++] = i;
            }
        }
        if (count == 0) {
            continue;
        }
        qsort_r(sorted, count, sizeof *sorted, compare_places, (void *)(uintptr_t)draft);
        for (uint32_t g = 0; g < reading->file_count; g++) { /* a file can be included several times */
            if (sw_text_same_file(reading->files[g].text, draft->reading->files[f].text)) {
                find_in_file(draft, sorted, count, reading, g, found);
            }
        }
    }
    free(sorted);
    return found;
}

/* ---- where it is heard ---- */

static bool follows(const sw_event *event)
{
    return (event->flags & (SW_EVENT_CUE | SW_EVENT_PERCENT)) != 0;
}

/* One more place where an item is heard: false when the request does not want it to change along. */
static bool allow(sw_draft *draft, uint32_t event, const sw_draft_item *item, sw_buffer *notes)
{
    const sw_score *score = draft->score;
    const sw_event *e = &score->events[event];
    uint32_t bar = sw_score_bar_at(score, e->onset);
    int number = bar == SW_NO_INDEX ? 0 : score->bars[bar].number;
    char text[32];
    const char *label = sw_staff_label(draft->reading, score, score->voices[e->voice].staff, text);
    if (draft->request->elsewhere == SW_ELSEWHERE_REFUSE) {
        return sw_draft_fail(
            draft, item->event,
            "this is written once and heard in several places (also in bar %d of \"%s\"); say "
            "whether all of them shall change (--everywhere) or this one, in a copy (--copy)",
            number, label);
    }
    const sw_music *m = &draft->reading->music[item->music];
    sw_place at = sw_text_place(draft->reading->files[m->file].text, m->start);
    char *place = sw_arena_format(draft->arena, "note: bar %d of \"%s\" changes along\n", number, label);
    if (notes->length == 0 || strstr(notes->data, place) == NULL) { /* once a bar */
        sw_buffer_format(notes, "%s:%u:%u: %s", draft->reading->files[m->file].text->path, at.line,
                         at.column + 1, place);
    }
    return true;
}

static bool plays_item(const sw_score *score, const uint32_t *found)
{
    for (size_t e = 0; e < score->event_count; e++) {
        if (found[score->events[e].chord] != 0) {
            return true;
        }
    }
    return false;
}

/* Other scores that play a touched item, of this file and of the others, follow: a line each. */
static void note_other_scores(const sw_draft *draft, sw_buffer *notes)
{
    for (size_t m = 0; m < draft->request->main_count; m++) {
        const sw_reading *reading = draft->request->mains[m];
        if (reading == draft->reading && reading->score_count < 2) {
            continue;
        }
        uint32_t *found = sw_draft_find_items(draft, reading);
        for (size_t s = 0; s < reading->score_count; s++) {
            if (&reading->scores[s] != draft->score && plays_item(&reading->scores[s], found)) {
                sw_buffer_format(notes, "%s: note: score %zu plays this too, and changes along\n",
                                 reading->files[0].text->path, s + 1);
            }
        }
        free(found);
    }
}

bool sw_draft_check_elsewhere(sw_draft *draft, sw_buffer *notes)
{
    uint32_t *found = sw_draft_find_items(draft, draft->reading);
    bool allowed = true;
    const sw_score *score = draft->score;
    for (uint32_t e = 0; e < score->event_count && allowed; e = sw_voice_chord_end(score, e)) {
        uint32_t number = found[score->events[e].chord];
        if (number == 0 || draft->wanted[e] != 0 || follows(&score->events[e])) {
            continue;
        }
        sw_draft_item *item = draft->items[number - 1];
        if (draft->request->elsewhere != SW_ELSEWHERE_COPY) {
            allowed = allow(draft, e, item, notes);
        } else if (item->through == SW_NO_INDEX) {
            allowed = sw_draft_plan_copy(draft, found, number);
        }
    }
    free(found);
    if (allowed && draft->request->elsewhere != SW_ELSEWHERE_COPY) {
        note_other_scores(draft, notes);
    }
    return allowed;
}
