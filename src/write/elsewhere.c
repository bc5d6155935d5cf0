/* Items that are written once and heard in several places. */
#include <stdlib.h>
#include <string.h>

#include "write/division.h"
#include "write/print.h"

/* ---- where a touched item is written ---- */

static int compare_items(const void *a, const void *b, void *draft)
{
    const sw_music *music = ((const sw_draft *)draft)->reading->music;
    return sw_music_compare_places(&music[(*(sw_draft_item *const *)a)->music],
                                   &music[(*(sw_draft_item *const *)b)->music]);
}

/* The item among those of one file, [first, end), that is written at a node's place. */
static uint32_t item_at(const sw_draft *draft, uint32_t first, uint32_t end, const sw_music *node)
{
    uint32_t low = first;
    uint32_t high = end;
    while (low < high) {
        uint32_t middle = low + (high - low) / 2;
        if (draft->reading->music[draft->items[middle]->music].start < node->start) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    const sw_music *own = low < end ? &draft->reading->music[draft->items[low]->music] : NULL;
    return own != NULL && own->start == node->start && own->kind == node->kind ? low : SW_NO_INDEX;
}

static void find_in_file(const sw_draft *draft, uint32_t first, uint32_t end, const sw_reading *reading,
                         uint32_t file, uint32_t *found)
{
    for (uint32_t m = 0; m < reading->music_count; m++) {
        const sw_music *music = &reading->music[m];
        if (music->file == file && sw_is_item(music)) {
            uint32_t item = item_at(draft, first, end, music);
            found[m] = item != SW_NO_INDEX ? item + 1 : found[m];
        }
    }
}

static uint32_t *find_items(const sw_draft *draft, const sw_reading *reading)
{
    uint32_t *found = sw_alloc_zero(reading->music_count + 1, sizeof *found);
    uint32_t end = 0;
    for (uint32_t first = 0; first < draft->item_count; first = end) { /* the items of one file */
        uint32_t file = draft->reading->music[draft->items[first]->music].file;
        while (end < draft->item_count && draft->reading->music[draft->items[end]->music].file == file) {
            end++;
        }
        for (uint32_t f = 0; f < reading->file_count; f++) { /* a file can be included several times */
            if (sw_text_same_file(reading->files[f].text, draft->reading->files[file].text)) {
                find_in_file(draft, first, end, reading, f, found);
            }
        }
    }
    return found;
}

void sw_draft_locate(sw_draft *draft)
{
    if (draft->item_count > 0) {
        qsort_r(draft->items, draft->item_count, sizeof *draft->items, compare_items, draft);
    }
    for (size_t i = 0; i < draft->item_count; i++) {
        draft->number[draft->items[i]->music] = (uint32_t)i + 1;
    }
    const sw_edit_request *request = draft->request;
    draft->found = sw_alloc_zero(request->main_count + 1, sizeof *draft->found);
    for (size_t i = 0; i < request->main_count; i++) {
        draft->found[i] = find_items(draft, request->mains[i]);
    }
}

const uint32_t *sw_draft_found(const sw_draft *draft, const sw_reading *reading)
{
    size_t i = 0;
    while (i < draft->request->main_count && draft->request->mains[i] != reading) {
        i++;
    }
    return draft->found[i];
}

/* ---- where it is heard ---- */

static bool follows(const sw_event *event)
{
    return (event->flags & SW_EVENT_CUE) != 0;
}

/* Whether a bar of a staff has been said already; it has now. `said` has a byte for each. */
static bool is_said(const sw_score *score, uint32_t staff, uint32_t bar, uint8_t *said)
{
    while (bar != SW_NO_INDEX && bar > 0 && score->bars[bar - 1].number == score->bars[bar].number) {
        bar--;
    }
    size_t column = bar == SW_NO_INDEX ? score->bar_count : bar;
    uint8_t *place = &said[staff * (score->bar_count + 1) + column];
    bool before = *place != 0;
    *place = 1;
    return before;
}

/* One more place where an item is heard: false when the request does not want it to change along. */
static bool allow(sw_draft *draft, uint32_t event, const sw_draft_item *item, uint8_t *said, sw_buffer *notes)
{
    const sw_score *score = draft->score;
    const sw_event *e = &score->events[event];
    uint32_t bar = sw_score_bar_at(score, e->onset);
    int number = bar == SW_NO_INDEX ? 0 : score->bars[bar].number;
    char text[32];
    uint32_t staff = score->voices[e->voice].staff;
    const char *label = sw_staff_label(draft->reading, score, staff, text);
    if (draft->request->elsewhere == SW_ELSEWHERE_REFUSE) {
        return sw_draft_fail(
            draft, item->event,
            "this is written once and heard in several places (also in bar %d of \"%s\"); say "
            "whether all of them shall change (--everywhere) or this one, in a copy (--copy)",
            number, label);
    }
    if (!is_said(score, staff, bar, said)) {
        const sw_music *m = &draft->reading->music[item->music];
        sw_place at = sw_text_place(draft->reading->files[m->file].text, m->start);
        sw_buffer_format(notes, "%s:%u:%u: note: bar %d of \"%s\" changes along\n",
                         draft->reading->files[m->file].text->path, at.line, at.column + 1, number, label);
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
        for (size_t s = 0; s < reading->score_count; s++) {
            if (&reading->scores[s] != draft->score && plays_item(&reading->scores[s], draft->found[m])) {
                sw_buffer_format(notes, "%s: note: score %zu plays this too, and changes along\n",
                                 reading->files[0].text->path, s + 1);
            }
        }
    }
}

bool sw_draft_check_elsewhere(sw_draft *draft, sw_buffer *notes)
{
    const uint32_t *found = sw_draft_found(draft, draft->reading);
    bool allowed = true;
    const sw_score *score = draft->score;
    uint8_t *said = sw_alloc_zero(score->staff_count * (score->bar_count + 1) + 1, 1);
    for (uint32_t e = 0; e < score->event_count && allowed; e = sw_voice_chord_end(score, e)) {
        uint32_t number = found[score->events[e].chord];
        if (number == 0 || draft->wanted[e] != 0 || follows(&score->events[e])) {
            continue;
        }
        sw_draft_item *item = draft->items[number - 1];
        if (draft->request->elsewhere != SW_ELSEWHERE_COPY) {
            allowed = allow(draft, e, item, said, notes);
        } else if (item->through_count == 0) {
            allowed = sw_draft_plan_copy(draft, number);
        }
    }
    free(said);
    if (allowed && draft->request->elsewhere != SW_ELSEWHERE_COPY) {
        note_other_scores(draft, notes);
    }
    return allowed;
}
