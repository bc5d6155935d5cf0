/* A second voice beside a run, and a staff below another one. */
#include <string.h>

#include "write/division.h"
#include "write/run.h"

static const sw_music *at(const sw_draft *draft, uint32_t music)
{
    return &draft->reading->music[music];
}

/* A staff that stands in the source: what is put beside its music would get a staff of its own otherwise. */
static bool is_written(sw_draft *draft, uint32_t event)
{
    uint32_t staff = draft->score->voices[draft->score->events[event].voice].staff;
    uint32_t node = draft->score->staves[staff].music;
    return (node != SW_NO_INDEX && at(draft, node)->first != SW_NO_INDEX) ||
           sw_draft_fail(draft, event,
                         "this staff is made implicitly; write \\new Staff { ... } around its music first");
}

/* Adds a stretch to a second voice; NULL when it has no length. */
static sw_voice_cell *add_voice_cell(sw_draft *draft, sw_draft_voice *voice, sw_cell_kind kind,
                                     sw_rational from, sw_rational to)
{
    if (sw_rational_compare(from, to) >= 0) {
        return NULL;
    }
    if (voice->cell_count == voice->cell_capacity) {
        voice->cell_capacity = 2 * voice->cell_capacity + 8;
        sw_voice_cell *cells = sw_arena_alloc(draft->arena, voice->cell_capacity * sizeof *cells);
        if (voice->cell_count > 0) {
            memcpy(cells, voice->cells, voice->cell_count * sizeof *cells);
        }
        voice->cells = cells;
    }
    voice->cells[voice->cell_count] =
        (sw_voice_cell){.from = from, .to = to, .tuplet = SW_NO_INDEX, .cell = {.kind = kind}};
    return &voice->cells[voice->cell_count++];
}

/* One chord between skips. */
static void add_one_chord(sw_draft *draft, const sw_change *change, sw_draft_voice *voice, sw_rational to)
{
    uint32_t frame = draft->score->events[change->event].frame;
    add_voice_cell(draft, voice, SW_CELL_SKIP, voice->from, change->moment);
    sw_cell *cell = &add_voice_cell(draft, voice, SW_CELL_NOTES, change->moment, change->until)->cell;
    for (size_t n = 0; n < change->pitch_count; n++) {
        sw_pitch written = sw_score_written_pitch(draft->reading, draft->score, frame, change->pitches[n]);
        sw_cell_add_note(draft, cell, (sw_cell_note){.pitch = written, .old = SW_NO_INDEX});
    }
    add_voice_cell(draft, voice, SW_CELL_SKIP, change->until, to);
}

/* Whether a second voice has a mark as well. */
static bool is_for_both(sw_mark_class class)
{
    return sw_mark_is_of_playing(class) || class == SW_MARK_BEAM_START || class == SW_MARK_BEAM_END;
}

static bool is_listed(const sw_change *change, uint32_t event)
{
    for (size_t i = 0; i < change->note_count; i++) {
        if (change->notes[i] == event) {
            return true;
        }
    }
    return false;
}

sw_slice sw_tuplet_head(const sw_reading *reading, uint32_t tuplet)
{
    const sw_music *m = &reading->music[tuplet];
    sw_slice text = sw_music_slice(reading, tuplet);
    const char *bracket = memchr(text.data, '{', text.length);
    sw_slice head = {text.data, bracket == NULL ? 0 : (size_t)(bracket - text.data)};
    bool plain = m->kind == SW_MUSIC_SCALE && head.length > 0 &&
                 memchr(head.data, '%', head.length) == NULL &&
                 memchr(head.data, '\n', head.length) == NULL &&
                 memchr(head.data + 1, '\\', head.length - 1) == NULL && /* \tuplet 3/2 \relative { */
                 (sw_slice_starts(head, "\\tuplet ") || sw_slice_starts(head, "\\times "));
    return plain ? head : (sw_slice){NULL, 0};
}

/* The tuplet of the run in which a chord stands; SW_NO_INDEX when it stands in none. */
static bool find_tuplet(sw_draft *draft, const sw_draft_voice *voice, uint32_t chord, uint32_t *tuplet)
{
    const sw_event *event = &draft->score->events[chord];
    sw_rational length = sw_duration_length(sw_music_duration(at(draft, event->chord)));
    uint32_t around = draft->parent[voice->first];
    *tuplet = SW_NO_INDEX;
    for (uint32_t m = event->chord; m != around && m != SW_NO_INDEX; m = draft->parent[m]) {
        if (at(draft, m)->kind == SW_MUSIC_SCALE) {
            if (*tuplet != SW_NO_INDEX || sw_tuplet_head(draft->reading, m).length == 0) {
                return sw_draft_fail(draft, chord, "no second voice is written beside a tuplet like this");
            }
            *tuplet = m;
            length = sw_rational_mul(length, sw_rational_make(at(draft, m)->num, at(draft, m)->den));
        }
    }
    return sw_rational_equal(length, event->duration) ||
           sw_draft_fail(draft, chord, "no second voice is written within a tuplet or tremolo");
}

/* The notes of a chord that the second voice has. Where one of them is tied to the next chord, all are. */
static bool add_listed(sw_draft *draft, const sw_change *change, uint32_t chord, sw_draft_voice *voice)
{
    const sw_score *score = draft->score;
    const sw_event *event = &score->events[chord];
    uint32_t end = sw_voice_chord_end(score, chord);
    uint32_t count = 0;
    uint32_t tied = 0;
    for (uint32_t e = chord; e < end; e++) {
        count += is_listed(change, e);
        tied += is_listed(change, e) && sw_voice_is_tied(draft->reading, score, e);
    }
    if ((event->flags & SW_EVENT_GRACE) != 0) {
        return count == 0 || sw_draft_fail(draft, chord, "grace notes can't be written in a second voice");
    }
    sw_duration value = sw_music_duration(at(draft, event->chord));
    uint32_t tuplet;
    if (!find_tuplet(draft, voice, chord, &tuplet)) {
        return false;
    }
    sw_voice_cell *stretch = add_voice_cell(draft, voice, count > 0 ? SW_CELL_NOTES : SW_CELL_SKIP,
                                            event->onset, sw_event_end(event));
    if (stretch == NULL) {
        return true;
    }
    stretch->has_value = true;
    stretch->value = value;
    stretch->tuplet = tuplet;
    sw_draft_item *item = count == 0 ? NULL : sw_draft_touch(draft, chord);
    if (item == NULL) {
        return count == 0;
    }
    sw_cell *cell = &stretch->cell;
    if (tied != 0 && tied != count) {
        return sw_draft_fail(draft, chord, "only some notes of the second voice are tied to the next ones");
    }
    for (uint32_t e = chord; e < end; e++) {
        if (is_listed(change, e)) {
            sw_pitch written =
                sw_score_written_pitch(draft->reading, score, event->frame, score->events[e].pitch);
            sw_cell_add_note(draft, cell, (sw_cell_note){.pitch = written, .old = SW_NO_INDEX});
        }
    }
    const sw_cell *source = sw_item_first(item);
    for (size_t i = 0; i < source->mark_count; i++) {
        sw_cell_mark mark = source->marks[i];
        if (is_for_both(mark.class) && sw_run_keeps_mark(draft, change, chord, mark.class) &&
            !sw_run_leaves(change, mark.old)) {
            mark.old = SW_NO_INDEX;
            sw_cell_add_mark(draft, cell, mark);
        }
    }
    if (tied > 0 && chord != sw_voice_chord(score, change->last)) {
        sw_cell_add_text(draft, cell, "~", SW_MARK_TIE);
    }
    return true;
}

/* Whether a chord is written in the run: spacers of another line in the same voice (<< \global \cello >>) are
 * not. */
static bool is_in_run(const sw_draft *draft, const sw_draft_voice *voice, uint32_t chord)
{
    uint32_t around = draft->parent[voice->first];
    uint32_t m = draft->score->events[chord].chord;
    while (m != SW_NO_INDEX && draft->parent[m] != around) {
        m = draft->parent[m];
    }
    return m != SW_NO_INDEX && at(draft, m)->start >= at(draft, voice->first)->start &&
           at(draft, m)->start <= at(draft, voice->last)->start;
}

static bool add_run(sw_draft *draft, const sw_change *change, sw_draft_voice *voice)
{
    const sw_score *score = draft->score;
    uint32_t last = sw_voice_chord(score, change->last);
    for (uint32_t e = sw_voice_chord(score, change->event); e != SW_NO_INDEX;
         e = e == last ? SW_NO_INDEX : sw_voice_next(score, e)) {
        if (is_in_run(draft, voice, e) && !add_listed(draft, change, e, voice)) {
            return false;
        }
    }
    for (size_t c = 0; change->text != NULL && c < voice->cell_count; c++) {
        if (voice->cells[c].cell.kind == SW_CELL_NOTES) {
            sw_cell_add_text(draft, &voice->cells[c].cell, change->text,
                             sw_mark_class_of(sw_slice_of(change->text)));
            break;
        }
    }
    return true;
}

/* Whether a second voice can stand beside a run: one chord is placed within the run and in the bar's own
 * time, and nothing else sounds there. */
static bool has_room(sw_draft *draft, const sw_change *change, const sw_draft_item *item)
{
    const sw_score *score = draft->score;
    const sw_event *from = &score->events[change->event];
    const sw_event *to = &score->events[change->last];
    bool placed = change->note_count > 0 ||
                  (change->pitch_count > 0 && sw_rational_compare(change->moment, from->onset) >= 0 &&
                   sw_rational_compare(change->until, sw_event_end(to)) <= 0 &&
                   sw_rational_compare(change->moment, change->until) < 0);
    bool in_time = change->note_count > 0 || sw_rational_equal(item->scale, (sw_rational){1, 1});
    if ((from->flags & SW_EVENT_GRACE) != 0 || !in_time || !placed) {
        return sw_draft_fail(draft, change->event, "a second voice can't begin and end here");
    }
    uint32_t staff = score->voices[from->voice].staff;
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t e = events.first; e < events.end; e++) {
        const sw_event *other = &score->events[e];
        if (other->voice != from->voice && sw_rational_compare(other->onset, sw_event_end(to)) < 0 &&
            sw_rational_compare(from->onset, sw_event_end(other)) < 0) {
            return sw_draft_fail(draft, change->event, "the staff has a second voice here already");
        }
    }
    return true;
}

/* A run that is all of a tuplet is the tuplet itself: both voices have its bracket. */
static void take_whole_tuplet(const sw_draft *draft, sw_draft_voice *voice)
{
    uint32_t block = draft->parent[voice->first];
    uint32_t tuplet = block == SW_NO_INDEX ? SW_NO_INDEX : draft->parent[block];
    uint32_t around = tuplet == SW_NO_INDEX ? SW_NO_INDEX : draft->parent[tuplet];
    if (around != SW_NO_INDEX && at(draft, tuplet)->kind == SW_MUSIC_SCALE &&
        at(draft, around)->kind == SW_MUSIC_SEQUENCE &&
        sw_run_item(draft, block, false) == sw_run_item(draft, voice->first, false) &&
        sw_run_item(draft, block, true) == sw_run_item(draft, voice->last, true)) {
        voice->first = voice->last = tuplet;
    }
}

bool sw_change_new_voice(sw_draft *draft, const sw_change *change)
{
    sw_draft_voice voice = {0};
    sw_draft_item *item = sw_draft_touch(draft, change->event);
    const sw_score *score = draft->score;
    if (score->events[change->event].kind == SW_EVENT_DRUM) {
        return sw_draft_fail(draft, change->event,
                             "a second voice of percussion can't be written from pitches");
    }
    if (item == NULL || !is_written(draft, change->event) ||
        !sw_run_find(draft, change, &voice.first, &voice.last) || !has_room(draft, change, item)) {
        return false;
    }
    take_whole_tuplet(draft, &voice);
    voice.item = item;
    voice.from = score->events[change->event].onset;
    if (change->note_count == 0) {
        add_one_chord(draft, change, &voice, sw_event_end(&score->events[change->last]));
    } else if (!add_run(draft, change, &voice)) {
        return false;
    }
    draft->voices = sw_grow(draft->voices, draft->voice_count, &draft->voice_capacity, sizeof *draft->voices);
    draft->voices[draft->voice_count++] = voice;
    return true;
}

/* ---- a new staff ---- */

bool sw_change_new_staff(sw_draft *draft, const sw_change *change)
{
    const sw_score *score = draft->score;
    uint32_t staff = score->voices[score->events[change->event].voice].staff;
    uint32_t node = score->staves[staff].music;
    if (!is_written(draft, change->event)) {
        return false;
    }
    for (size_t s = 0; s < score->staff_count; s++) {
        if (strcmp(sw_reading_name(draft->reading, score->staves[s].id), change->text) == 0) {
            return sw_draft_fail(draft, change->event, "there is a staff called \"%s\" already",
                                 change->text);
        }
    }
    if (strpbrk(change->text, "\"\\\n") != NULL || change->text[0] == '\0') {
        return sw_draft_fail(draft, change->event, "that is no name for a staff");
    }
    draft->staves = sw_grow(draft->staves, draft->staff_count, &draft->staff_capacity, sizeof *draft->staves);
    draft->staves[draft->staff_count++] =
        (sw_draft_staff){.node = node,
                         .staff = staff,
                         .event = change->event,
                         .name = sw_arena_copy(draft->arena, sw_slice_of(change->text))};
    return true;
}
