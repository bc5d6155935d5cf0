#include "write/entry.h"

#include <stdlib.h>
#include <string.h>

/* ---- text of an item ---- */

uint32_t sw_item_begin(const sw_reading *reading, uint32_t item)
{
    return reading->music[item].start - (uint32_t)sw_music_calls(reading, item).length;
}

uint32_t sw_run_begin(const sw_reading *reading, uint32_t music)
{
    const sw_music *m = &reading->music[music];
    return sw_is_item(m) ? sw_item_begin(reading, music) : m->start;
}

uint32_t sw_item_body_end(const sw_reading *reading, uint32_t item)
{
    const sw_music *m = &reading->music[item];
    sw_slice text = sw_music_slice(reading, item);
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_CHORD: {
        const char *close = memrchr(text.data, '>', text.length);
        return close == NULL ? m->end : m->start + (uint32_t)(close - text.data) + 1;
    }
    case SW_MUSIC_NOTE:
    case SW_MUSIC_DRUM: {
        size_t end = m->name_length;
        for (size_t at = end; at < text.length && strchr("',!?= \t\r\n", text.data[at]) != NULL; at++) {
            end = strchr("',!?=", text.data[at]) != NULL ? at + 1 : end;
        }
        return m->start + (uint32_t)end;
    }
    case SW_MUSIC_BARE:
        return m->start;
    default:
        return m->start + (text.length > 0 && text.data[0] == '\\' ? (uint32_t)text.length : 1);
    }
}

/* ---- octaves ---- */

static const sw_music *at(const sw_draft *draft, uint32_t music)
{
    return &draft->reading->music[music];
}

/* Music whose octaves are settled inside of itself, so that a \relative around it passes it over. */
static bool is_settled(const sw_music *m)
{
    return m->kind == SW_MUSIC_RELATIVE || m->kind == SW_MUSIC_FIXED || m->kind == SW_MUSIC_TRANSPOSE;
}

static bool is_item(const sw_music *m)
{
    return m->kind >= SW_MUSIC_NOTE && m->kind <= SW_MUSIC_LYRIC;
}

/* The pitch that what follows an item counts from; false when the item has none. */
static bool item_exit(const sw_draft *draft, uint32_t item, sw_pitch *pitch)
{
    const sw_draft_item *touched = sw_draft_item_of(draft, item);
    if (touched != NULL) {
        bool repeats =
            at(draft, item)->kind == SW_MUSIC_REPEAT_CHORD || at(draft, item)->kind == SW_MUSIC_BARE;
        size_t c = touched->cell_count;
        while (c > 0 && touched->cells[c - 1].note_count == 0) {
            c--;
        }
        if (c > 0 && (!repeats || touched->is_explicit)) {
            *pitch = touched->cells[c - 1].notes[0].pitch;
            return true;
        }
        /* b4\rest is a note in all but sound */
        bool high_rest = c == 0 && touched->cell_count == 1 &&
                         (at(draft, item)->flags & SW_MUSIC_AS_REST) != 0 &&
                         sw_draft_old_kind(draft, touched) == touched->cells[0].kind;
        *pitch = high_rest ? at(draft, item)->pitch : *pitch;
        return high_rest;
    }
    if (at(draft, item)->kind == SW_MUSIC_NOTE) {
        *pitch = at(draft, item)->pitch;
        return true;
    }
    for (uint32_t c = at(draft, item)->first; at(draft, item)->kind == SW_MUSIC_CHORD && c != SW_NO_INDEX;
         c = at(draft, c)->next) {
        if (at(draft, c)->kind == SW_MUSIC_NOTE) {
            *pitch = at(draft, c)->pitch;
            return true;
        }
    }
    return false;
}

static bool exit_before(const sw_draft *draft, uint32_t around, uint32_t inner, sw_pitch *pitch);

/* The pitch that what follows some music counts from. */
static bool music_exit(const sw_draft *draft, uint32_t music, sw_pitch *pitch)
{
    const sw_music *m = at(draft, music);
    if (sw_draft_is_gone(draft, music)) {
        return false;
    }
    for (size_t i = 0; i < draft->exit_count; i++) {
        if (draft->exits[i].node == music) {
            *pitch = draft->exits[i].pitch;
            return true;
        }
    }
    if (is_item(m)) {
        return item_exit(draft, music, pitch);
    }
    if (m->kind == SW_MUSIC_OCTAVE_CHECK && (m->flags & SW_MUSIC_CHECKED) == 0) {
        *pitch = m->pitch;
        return true;
    }
    if (is_settled(m) || m->kind == SW_MUSIC_MARK) {
        return false;
    }
    return exit_before(draft, music, SW_NO_INDEX, pitch);
}

/* The same for what stands in `around` before its child `inner` (SW_NO_INDEX: for all of it). */
static bool exit_before(const sw_draft *draft, uint32_t around, uint32_t inner, sw_pitch *pitch)
{
    uint32_t first = at(draft, around)->first;
    uint32_t stop = inner == SW_NO_INDEX ? first : inner;
    if (first == SW_NO_INDEX || inner == first) {
        return false;
    }
    for (uint32_t c = draft->before[stop];; c = draft->before[c]) { /* the last one counts */
        if (music_exit(draft, c, pitch)) {
            return true;
        }
        if (c == first) {
            return false;
        }
    }
}

/* The \relative by which octaves at a node count; SW_NO_INDEX when they don't count from other notes. */
static uint32_t relative_around(const sw_draft *draft, uint32_t music)
{
    uint32_t around = draft->parent[music];
    while (around != SW_NO_INDEX && !is_settled(at(draft, around))) {
        around = draft->parent[around];
    }
    return around != SW_NO_INDEX && at(draft, around)->kind == SW_MUSIC_RELATIVE ? around : SW_NO_INDEX;
}

bool sw_entry_reference(const sw_draft *draft, uint32_t item, sw_pitch *reference)
{
    uint32_t relative = relative_around(draft, item);
    if (relative == SW_NO_INDEX) {
        return false;
    }
    for (uint32_t inner = item; inner != relative; inner = draft->parent[inner]) {
        if (exit_before(draft, draft->parent[inner], inner, reference)) {
            return true;
        }
    }
    *reference = at(draft, relative)->pitch;
    return true;
}

bool sw_entry_exit(const sw_draft *draft, uint32_t music, sw_pitch *reference)
{
    bool relative = sw_entry_reference(draft, music, reference);
    music_exit(draft, music, reference);
    return relative;
}

/* The first note in or below some music whose octave counts from what stands before, or the \octaveCheck or
 * the touched item that comes before that note. */
static uint32_t first_note(const sw_draft *draft, uint32_t music)
{
    const sw_music *m = at(draft, music);
    if (sw_draft_is_gone(draft, music)) {
        return SW_NO_INDEX;
    }
    bool check = m->kind == SW_MUSIC_OCTAVE_CHECK && (m->flags & SW_MUSIC_CHECKED) != 0;
    if (check || sw_draft_item_of(draft, music) != NULL) {
        return music;
    }
    if (m->kind == SW_MUSIC_NOTE) {
        return (m->flags & SW_MUSIC_RELATIVE_ENTRY) != 0 ? music : SW_NO_INDEX;
    }
    if (is_settled(m) || m->kind == SW_MUSIC_MARK) {
        return SW_NO_INDEX;
    }
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = at(draft, c)->next) {
        uint32_t found = first_note(draft, c);
        if (found != SW_NO_INDEX) {
            return found;
        }
    }
    return SW_NO_INDEX;
}

uint32_t sw_entry_next_note(const sw_draft *draft, uint32_t item)
{
    uint32_t relative = relative_around(draft, item);
    for (uint32_t inner = item; relative != SW_NO_INDEX && inner != relative; inner = draft->parent[inner]) {
        for (uint32_t c = at(draft, inner)->next; c != SW_NO_INDEX; c = at(draft, c)->next) {
            uint32_t found = first_note(draft, c);
            if (found != SW_NO_INDEX) { /* a touched item sees to what follows it */
                return sw_draft_item_of(draft, found) == NULL ? found : SW_NO_INDEX;
            }
        }
    }
    return SW_NO_INDEX;
}

/* ---- names ---- */

static uint32_t language_at(const sw_reading *reading, uint32_t music)
{
    size_t i = reading->language_count;
    while (i > 1 && reading->languages[i - 1].music > music) {
        i--;
    }
    return reading->languages[i - 1].language;
}

sw_slice sw_entry_note_name(sw_draft *draft, uint32_t item, sw_pitch pitch)
{
    uint32_t language = language_at(draft->reading, item);
    for (size_t i = 0; i < draft->name_count; i++) {
        const sw_draft_name *name = &draft->names[i];
        if (name->language == language && name->pitch.step == pitch.step &&
            name->pitch.alter == pitch.alter) {
            return name->text;
        }
    }
    sw_slice text = sw_reading_note_name(draft->reading, item, pitch);
    draft->names = sw_grow(draft->names, draft->name_count, &draft->name_capacity, sizeof *draft->names);
    draft->names[draft->name_count++] = (sw_draft_name){language, pitch, text};
    return text;
}

/* ---- values ---- */

/* Whether an item has a value that the next one may inherit. `\skip 4` has one of its own that no other
 * inherits, `<>` has none, syllables mostly take theirs from notes. */
static bool takes_part(const sw_reading *reading, const uint32_t *parent, uint32_t music)
{
    const sw_music *m = &reading->music[music];
    if (!is_item(m) || (m->kind == SW_MUSIC_CHORD && m->num == 0)) {
        return false;
    }
    if (m->kind == SW_MUSIC_LYRIC) {
        return (m->flags & SW_MUSIC_WRITTEN_VALUE) != 0;
    }
    uint32_t around = parent[music];
    if (around != SW_NO_INDEX && reading->music[around].kind == SW_MUSIC_CHORD) {
        return false;
    }
    return m->kind != SW_MUSIC_SKIP || sw_music_slice(reading, music).data[0] != '\\';
}

static int compare_items(const void *a, const void *b, void *reading)
{
    const sw_music *music = ((const sw_reading *)reading)->music;
    return sw_music_compare_places(&music[*(const uint32_t *)a], &music[*(const uint32_t *)b]);
}

sw_item_order sw_item_order_new(const sw_reading *reading, const uint32_t *parent)
{
    const sw_music *music = reading->music;
    sw_item_order order = {0};
    bool sorted = true;
    for (uint32_t m = 0; m < reading->music_count; m++) {
        if (takes_part(reading, parent, m)) {
            order.items = sw_grow(order.items, order.count, &order.capacity, sizeof *order.items);
            order.items[order.count++] = m;
            sorted =
                sorted && (order.count == 1 ||
                           sw_music_compare_places(&music[order.items[order.count - 2]], &music[m]) <= 0);
        }
    }
    if (!sorted) {
        qsort_r(order.items, order.count, sizeof *order.items, compare_items, (void *)(uintptr_t)reading);
    }
    size_t kept = 0;
    for (size_t i = 0; i < order.count; i++) { /* copies of a variable's music stand where it stands */
        bool again =
            kept > 0 && sw_music_compare_places(&music[order.items[kept - 1]], &music[order.items[i]]) == 0;
        if (!again) {
            order.items[kept++] = order.items[i];
        }
    }
    order.count = kept;
    return order;
}

void sw_item_order_free(sw_item_order *order)
{
    free(order->items);
    *order = (sw_item_order){0};
}

/* How many items stand before a place. */
static size_t lower_bound(const sw_item_order *order, const sw_reading *reading, uint32_t file,
                          uint32_t offset)
{
    size_t low = 0;
    size_t high = order->count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        const sw_music *m = &reading->music[order->items[middle]];
        if (m->file < file || (m->file == file && m->start < offset)) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

uint32_t sw_item_order_before(const sw_item_order *order, const sw_reading *reading, uint32_t file,
                              uint32_t offset)
{
    size_t i = lower_bound(order, reading, file, offset);
    bool found = i > 0 && reading->music[order->items[i - 1]].file == file;
    return found ? order->items[i - 1] : SW_NO_INDEX;
}

uint32_t sw_item_order_behind(const sw_item_order *order, const sw_reading *reading, uint32_t file,
                              uint32_t offset)
{
    size_t i = lower_bound(order, reading, file, offset);
    bool found = i < order->count && reading->music[order->items[i]].file == file;
    return found ? order->items[i] : SW_NO_INDEX;
}

bool sw_item_order_repeats_values(const sw_item_order *order, const sw_reading *reading, uint32_t file)
{
    size_t same = 0;
    size_t written = 0;
    for (size_t i = 1; i < order->count; i++) {
        const sw_music *before = &reading->music[order->items[i - 1]];
        const sw_music *m = &reading->music[order->items[i]];
        if (m->file == file && before->file == file &&
            sw_duration_equal(sw_music_duration(before), sw_music_duration(m))) {
            same++;
            written += (m->flags & SW_MUSIC_WRITTEN_VALUE) != 0;
        }
    }
    return same > 0 && written * 2 > same;
}

bool sw_file_has_bar_checks(const sw_reading *reading, uint32_t file)
{
    for (uint32_t m = 0; m < reading->music_count; m++) {
        if (reading->music[m].kind == SW_MUSIC_BAR_CHECK && reading->music[m].file == file) {
            return true;
        }
    }
    return false;
}
