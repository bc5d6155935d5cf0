/* q repeats the last chord, a bare duration the last note or chord. Where a change puts something else before
 * them, they are written out, so that they sound as before. */
#include "write/print.h"

enum { MOST = 64 };

/* What would be repeated: pitches as heard, or the nodes of drums. */
typedef struct memory {
    bool known;
    size_t count;
    sw_pitch pitches[MOST];
    uint32_t drums[MOST];
} memory;

static memory of_events(const sw_draft *draft, uint32_t chord)
{
    const sw_score *score = draft->score;
    memory m = {.known = true};
    for (uint32_t e = chord; e < sw_voice_chord_end(score, chord) && m.count < MOST; e++) {
        bool drum = score->events[e].kind == SW_EVENT_DRUM;
        m.drums[m.count] = drum ? draft->reading->music[score->events[e].music].name : 0;
        m.pitches[m.count++] = drum ? (sw_pitch){0, 0, 0} : score->events[e].pitch;
    }
    return m;
}

static memory of_cell(const sw_draft *draft, uint32_t frame, const sw_cell *cell)
{
    memory m = {.known = true};
    for (size_t n = 0; n < cell->note_count && m.count < MOST; n++) {
        bool drum = sw_cell_note_is_drum(draft->reading, &cell->notes[n]);
        m.drums[m.count] = drum ? draft->reading->music[cell->notes[n].old].name : 0;
        m.pitches[m.count++] =
            drum ? (sw_pitch){0, 0, 0}
                 : sw_score_pitch(draft->reading, draft->score, frame, cell->notes[n].pitch);
    }
    return m;
}

static bool same(const memory *a, const memory *b)
{
    bool equal = a->known && b->known && a->count == b->count;
    for (size_t i = 0; i < a->count && equal; i++) {
        equal = sw_pitch_equal(a->pitches[i], b->pitches[i]) && a->drums[i] == b->drums[i];
    }
    return equal;
}

/* What q and bare durations refer to, before and after the changes. */
typedef struct memories {
    memory chord;
    memory note;
} memories;

/* An item that is written with its notes: what follows it may repeat them. A chord is one in brackets. */
static void remember(memories *m, const memory *notes, bool chord)
{
    m->note = *notes;
    if (chord) {
        m->chord = *notes;
    }
}

static bool is_repeat(const sw_music *m)
{
    return m->kind == SW_MUSIC_REPEAT_CHORD || m->kind == SW_MUSIC_BARE;
}

/* Whether some music goes with its bar. */
static bool is_gone(const sw_draft *draft, uint32_t music)
{
    while (draft->gone != NULL && music != SW_NO_INDEX && draft->gone[music] == 0) {
        music = draft->parent[music];
    }
    return draft->gone != NULL && music != SW_NO_INDEX;
}

static void look_at(sw_draft *draft, uint32_t event, memories *before, memories *after)
{
    const sw_event *e = &draft->score->events[event];
    const sw_music *m = &draft->reading->music[e->chord];
    sw_draft_item *item = sw_draft_item_of(draft, e->chord);
    memory own = of_events(draft, event);
    bool note = sw_event_is_note(e);
    if (is_gone(draft, e->chord)) { /* what follows would repeat what stands before */
        if (note) {
            remember(before, &own, m->kind == SW_MUSIC_CHORD);
        }
        return;
    }
    if (is_repeat(m) && note) {
        bool q = m->kind == SW_MUSIC_REPEAT_CHORD;
        memory wanted = own;
        bool changed = false;
        if (item != NULL) {
            wanted = of_cell(draft, e->frame, sw_item_first(item));
            changed = !sw_draft_has_old_notes(draft, item, sw_item_first(item));
        }
        const memory *said = q ? &before->chord : &before->note;
        const memory *now = q ? &after->chord : &after->note;
        bool lost = same(said, &own) && !same(now, &wanted);
        bool follows = said->known && same(said, &own) && same(now, &wanted);
        if ((lost || (changed && !follows)) && wanted.count > 0) {
            item = item == NULL ? sw_draft_touch(draft, event) : item;
            if (item != NULL) {
                item->is_explicit = true;
                remember(after, &wanted, wanted.count > 1);
            }
        }
        before->note = own;
        after->note = wanted.count > 0 ? wanted : after->note;
        return;
    }
    if (note) {
        remember(before, &own, m->kind == SW_MUSIC_CHORD);
    }
    if (item == NULL && note) {
        remember(after, &own, m->kind == SW_MUSIC_CHORD);
    }
    for (size_t c = 0; item != NULL && c < item->cell_count; c++) {
        if (item->cells[c].note_count > 0) {
            memory cell = of_cell(draft, e->frame, &item->cells[c]);
            bool kept = m->kind == SW_MUSIC_CHORD && cell.count == 1 && own.count == 1;
            remember(after, &cell, cell.count > 1 || kept);
        }
    }
}

void sw_draft_mend_repeats(sw_draft *draft)
{
    memories before = {0};
    memories after = {0};
    const sw_score *score = draft->score;
    for (uint32_t e = 0; e < score->event_count && draft->error == NULL; e = sw_voice_chord_end(score, e)) {
        if (e > 0 && score->events[e].voice != score->events[e - 1].voice) {
            before = after = (memories){0};
        }
        look_at(draft, e, &before, &after);
    }
}
