/* Two voices in one rhythm become one: the first gets what the second has, the second goes with the brackets
 * around both. */
#include <string.h>

#include "write/division.h"
#include "write/entry.h"
#include "write/print.h"

static const sw_music *at(const sw_draft *draft, uint32_t music)
{
    return &draft->reading->music[music];
}

static bool says(const sw_draft *draft, uint32_t music, const char *text)
{
    return music != SW_NO_INDEX && at(draft, music)->kind == SW_MUSIC_SETTING &&
           sw_slice_is(sw_music_slice(draft->reading, music), text);
}

/* ---- what stands in the text ----------------------------------------------------------------------------
 */

/* The block of a voice, also in a context of its own; SW_NO_INDEX when it is none. */
static uint32_t block_of(const sw_reading *reading, uint32_t music)
{
    const sw_music *m = &reading->music[music];
    const char *type = m->kind == SW_MUSIC_CONTEXT ? sw_reading_name(reading, m->name) : "";
    if (strcmp(type, "Voice") == 0 || strcmp(type, "Bottom") == 0) {
        music = m->first;
    }
    bool block = music != SW_NO_INDEX && reading->music[music].kind == SW_MUSIC_SEQUENCE;
    return block ? music : SW_NO_INDEX;
}

bool sw_voices_beside(const sw_reading *reading, uint32_t music, uint32_t blocks[2])
{
    const sw_music *m = &reading->music[music];
    uint32_t first = m->kind == SW_MUSIC_SIMULTANEOUS ? m->first : SW_NO_INDEX;
    uint32_t second = first == SW_NO_INDEX ? SW_NO_INDEX : reading->music[first].next;
    if (second == SW_NO_INDEX || reading->music[second].next != SW_NO_INDEX) {
        return false;
    }
    blocks[0] = block_of(reading, first);
    blocks[1] = block_of(reading, second);
    return blocks[0] != SW_NO_INDEX && blocks[1] != SW_NO_INDEX;
}

static uint32_t last_child(const sw_draft *draft, uint32_t music)
{
    uint32_t first = at(draft, music)->first;
    return first == SW_NO_INDEX ? SW_NO_INDEX : draft->before[first];
}

/* Whether the second voice holds nothing but notes and silence, also in tuplets. */
static bool is_plain(const sw_draft *draft, uint32_t block)
{
    for (uint32_t c = at(draft, block)->first; c != SW_NO_INDEX; c = at(draft, c)->next) {
        uint32_t inner = sw_tuplet_head(draft->reading, c).length > 0 ? at(draft, c)->first : SW_NO_INDEX;
        bool tuplet = inner != SW_NO_INDEX && at(draft, inner)->kind == SW_MUSIC_SEQUENCE &&
                      at(draft, inner)->next == SW_NO_INDEX && is_plain(draft, inner);
        bool plain = sw_is_item(at(draft, c)) || at(draft, c)->kind == SW_MUSIC_BAR_CHECK ||
                     says(draft, c, "\\voiceTwo");
        if (!plain && !tuplet) {
            return false;
        }
    }
    return true;
}

/* How many notes and rests are written in some music. */
static size_t count_items(const sw_draft *draft, uint32_t music)
{
    const sw_music *m = at(draft, music);
    size_t count = sw_is_item(m);
    for (uint32_t c = m->kind == SW_MUSIC_SEQUENCE || m->kind == SW_MUSIC_SCALE ? m->first : SW_NO_INDEX;
         c != SW_NO_INDEX; c = at(draft, c)->next) {
        count += count_items(draft, c);
    }
    return count;
}

static bool drop(sw_draft *draft, uint32_t file, uint32_t start, uint32_t end, uint32_t mark)
{
    const sw_text *text = draft->reading->files[file].text;
    if (memchr(text->bytes + start, '%', end - start) != NULL) {
        return sw_draft_fail_at(draft, mark, "a comment would go with the second voice; move it first");
    }
    draft->texts = sw_grow(draft->texts, draft->text_count, &draft->text_capacity, sizeof *draft->texts);
    draft->texts[draft->text_count++] = (sw_draft_text){text, start, end, sw_slice_of("")};
    draft->drops = sw_grow(draft->drops, draft->drop_count, &draft->drop_capacity, sizeof *draft->drops);
    draft->drops[draft->drop_count++] = draft->texts[draft->text_count - 1];
    return true;
}

/* The brackets and the second voice go; what follows must know it. */
static bool drop_second(sw_draft *draft, uint32_t mark, uint32_t upper, uint32_t lower)
{
    const sw_music *m = at(draft, mark);
    uint32_t first = at(draft, upper)->first;
    first = says(draft, first, "\\voiceOne") ? at(draft, first)->next : first;
    uint32_t last = last_child(draft, upper);
    if (first == SW_NO_INDEX || last == SW_NO_INDEX) {
        return sw_draft_fail_at(draft, mark, "the first voice is empty");
    }
    uint32_t end = says(draft, m->next, "\\oneVoice") ? at(draft, m->next)->end : m->end;
    if (draft->gone == NULL) {
        draft->gone = sw_alloc_zero(draft->reading->music_count + 1, 1);
    }
    uint32_t second = at(draft, at(draft, mark)->first)->next;
    draft->gone[second] = 1;
    for (uint32_t c = at(draft, lower)->first; c != SW_NO_INDEX; c = at(draft, c)->next) {
        draft->gone[c] = 1;
    }
    draft->last_gone = sw_grow(draft->last_gone, draft->last_gone_count, &draft->last_gone_capacity,
                               sizeof *draft->last_gone);
    draft->last_gone[draft->last_gone_count++] = second;
    return drop(draft, m->file, m->start, sw_run_begin(draft->reading, first), mark) &&
           drop(draft, m->file, sw_node_end(draft->reading, last), end, mark);
}

/* ---- what is heard --------------------------------------------------------------------------------------
 */

static bool is_below(const sw_draft *draft, uint32_t music, uint32_t around)
{
    while (music != SW_NO_INDEX && music != around) {
        music = draft->parent[music];
    }
    return music != SW_NO_INDEX;
}

/* What of the second voice begins at a moment beside a use of the first one, seen from an event of it. */
static uint32_t beside(const sw_draft *draft, uint32_t event, uint32_t lower)
{
    const sw_score *score = draft->score;
    const sw_event *e = &score->events[event];
    uint32_t staff = score->voices[e->voice].staff;
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *other = &score->events[i];
        if (score->voices[other->voice].staff == staff && sw_rational_equal(other->onset, e->onset) &&
            is_below(draft, other->chord, lower)) {
            return sw_voice_chord(score, i);
        }
    }
    return SW_NO_INDEX;
}

/* Whether `item` has a mark with the text of another one. */
static bool has_text(const sw_draft *draft, uint32_t item, sw_slice text)
{
    for (uint32_t c = at(draft, item)->first; c != SW_NO_INDEX; c = at(draft, c)->next) {
        if (at(draft, c)->kind == SW_MUSIC_MARK && sw_slice_equal(sw_music_slice(draft->reading, c), text)) {
            return true;
        }
    }
    return false;
}

/* Whether all marks of an item but ties (`each`: those that every voice must have) are marks of another one
 * as well. */
static bool has_marks_of(const sw_draft *draft, uint32_t item, uint32_t other, bool each)
{
    for (uint32_t c = at(draft, item)->first; c != SW_NO_INDEX; c = at(draft, c)->next) {
        bool asked = at(draft, c)->kind == SW_MUSIC_MARK &&
                     sw_music_mark_class(draft->reading, c) != SW_MARK_TIE &&
                     (!each || sw_mark_is_of_playing(sw_music_mark_class(draft->reading, c)));
        if (asked && !has_text(draft, other, sw_music_slice(draft->reading, c))) {
            return false;
        }
    }
    return true;
}

static bool has_inner_marks(const sw_draft *draft, uint32_t chord)
{
    for (uint32_t n = at(draft, chord)->first; n != SW_NO_INDEX; n = at(draft, n)->next) {
        if (at(draft, n)->kind == SW_MUSIC_NOTE && at(draft, n)->first != SW_NO_INDEX) {
            return true;
        }
    }
    return false;
}

static bool has_pitch(const sw_cell *cell, sw_pitch pitch)
{
    for (size_t n = 0; n < cell->note_count; n++) {
        if (sw_pitch_equal(cell->notes[n].pitch, pitch)) {
            return true;
        }
    }
    return false;
}

/* The number of the tie behind a chord among its marks; the number of all when there is none. */
static size_t tie_of(const sw_cell *cell)
{
    size_t i = 0;
    while (i < cell->mark_count && cell->marks[i].class != SW_MARK_TIE) {
        i++;
    }
    return i;
}

/* Adds the notes of the second voice to the chord of the first one. Where only one of them is tied, the tie
 * goes to its notes: <c e~>. False where both have a note that would be tied and not. */
static bool add_notes(sw_draft *draft, sw_cell *cell, uint32_t event, uint32_t other)
{
    const sw_score *score = draft->score;
    uint32_t frame = score->events[event].frame;
    size_t tie = tie_of(cell);
    bool tied = tie < cell->mark_count;
    bool binds = has_text(draft, score->events[other].chord, sw_slice_of("~"));
    size_t own = cell->note_count;
    if (tied && !binds) {
        sw_cell_remove_mark(cell, tie);
        for (size_t n = 0; n < own; n++) {
            cell->notes[n].binds = true;
        }
    }
    for (uint32_t n = other; n < sw_voice_chord_end(score, other); n++) {
        sw_pitch pitch = sw_score_written_pitch(draft->reading, score, frame, score->events[n].pitch);
        if (!has_pitch(cell, pitch)) {
            sw_cell_add_note(draft, cell,
                             (sw_cell_note){.pitch = pitch, .old = SW_NO_INDEX, .binds = binds && !tied});
        } else if (tied != binds) {
            return false;
        }
    }
    return true;
}

/* The chord at `event` gets the notes of the second voice's chord at the same time. */
static bool unite_chord(sw_draft *draft, uint32_t event, uint32_t other)
{
    const sw_score *score = draft->score;
    const sw_event *e = &score->events[event];
    const sw_event *o = other == SW_NO_INDEX ? NULL : &score->events[other];
    bool note = sw_event_is_note(e);
    if ((e->flags & SW_EVENT_GRACE) != 0 || o == NULL || note != sw_event_is_note(o) ||
        e->kind == SW_EVENT_DRUM || !sw_rational_equal(e->duration, o->duration) ||
        !sw_duration_equal(sw_music_duration(at(draft, e->chord)), sw_music_duration(at(draft, o->chord)))) {
        return sw_draft_fail(draft, event, "the two voices have different rhythms here");
    }
    if (!has_marks_of(draft, o->chord, e->chord, false) || !has_marks_of(draft, e->chord, o->chord, true) ||
        has_inner_marks(draft, o->chord)) {
        return sw_draft_fail(draft, event, "the two voices are not marked alike here");
    }
    sw_draft_item *item = note ? sw_draft_touch(draft, event) : NULL;
    if (!note || item == NULL) {
        return !note;
    }
    return add_notes(draft, sw_item_first(item), event, other) ||
           sw_draft_fail(draft, event, "only one of the two voices is tied here, and both have one note");
}

/* The next chord of the first voice; spacers of another line may stand beside it. */
static uint32_t next_in(const sw_draft *draft, uint32_t event, uint32_t upper)
{
    const sw_score *score = draft->score;
    sw_rational end = sw_event_end(&score->events[event]);
    for (uint32_t e = sw_voice_next(score, event);
         e != SW_NO_INDEX && sw_rational_compare(score->events[e].onset, end) <= 0;
         e = sw_voice_next(score, e)) {
        if (is_below(draft, score->events[e].chord, upper)) {
            return e;
        }
    }
    return SW_NO_INDEX;
}

bool sw_change_unite(sw_draft *draft, const sw_change *change)
{
    const sw_score *score = draft->score;
    uint32_t mark = change->mark;
    uint32_t blocks[2];
    if (!sw_voices_beside(draft->reading, mark, blocks) || !is_plain(draft, blocks[1])) {
        return sw_draft_fail_at(draft, mark, "these are not two voices of nothing but notes and rests");
    }
    uint32_t upper = blocks[0];
    uint32_t lower = blocks[1];
    size_t left = count_items(draft, lower);
    for (uint32_t e = sw_voice_chord(score, change->event); e != SW_NO_INDEX; e = next_in(draft, e, upper)) {
        if (!unite_chord(draft, e, beside(draft, e, lower))) {
            return false;
        }
        left--;
    }
    if (left != 0) {
        return sw_draft_fail_at(draft, mark, "the two voices are not equally long");
    }
    return drop_second(draft, mark, upper, lower);
}
