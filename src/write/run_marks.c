/* Slurs, hairpins and other marks where a run is cut out of its voice. */
#include "write/run.h"

static const sw_music *at(const sw_draft *draft, uint32_t music)
{
    return &draft->reading->music[music];
}

static bool is_start(sw_mark_class class)
{
    return class == SW_MARK_SLUR_START || class == SW_MARK_PHRASE_START || class == SW_MARK_BEAM_START ||
           class == SW_MARK_SPAN_START;
}

static sw_mark_class end_of(sw_mark_class class)
{
    switch (class) {
    case SW_MARK_SLUR_START:
        return SW_MARK_SLUR_END;
    case SW_MARK_PHRASE_START:
        return SW_MARK_PHRASE_END;
    case SW_MARK_BEAM_START:
        return SW_MARK_BEAM_END;
    default:
        return SW_MARK_SPAN_END;
    }
}

static bool item_has(const sw_draft *draft, uint32_t event, sw_mark_class class)
{
    uint32_t item = draft->score->events[event].chord;
    for (uint32_t c = at(draft, item)->first; c != SW_NO_INDEX; c = at(draft, c)->next) {
        if (at(draft, c)->kind == SW_MUSIC_MARK && sw_music_mark_class(draft->reading, c) == class) {
            return true;
        }
    }
    return false;
}

/* Whether a slur, beam or span has its other end inside of the run; other marks always go along. */
bool sw_run_keeps_mark(const sw_draft *draft, const sw_change *change, uint32_t event, sw_mark_class class)
{
    uint32_t first = sw_voice_chord(draft->score, change->event);
    uint32_t last = sw_voice_chord(draft->score, change->last);
    if (is_start(class)) {
        for (uint32_t e = event; e != last && (e = sw_voice_next(draft->score, e)) != SW_NO_INDEX;) {
            if (item_has(draft, e, end_of(class))) {
                return true;
            }
        }
        return false;
    }
    for (sw_mark_class start = SW_MARK_SLUR_START; start <= SW_MARK_SPAN_START; start++) {
        if (is_start(start) && end_of(start) == class) {
            for (uint32_t e = event; e != first && (e = sw_voice_previous(draft->score, e)) != SW_NO_INDEX;) {
                if (item_has(draft, e, start)) {
                    return true;
                }
            }
            return false;
        }
    }
    return class != SW_MARK_TIE || event != last;
}

bool sw_run_leaves(const sw_change *change, uint32_t mark)
{
    for (size_t i = 0; i < change->left_count; i++) {
        if (change->left[i] == mark) {
            return true;
        }
    }
    return false;
}

static bool ends_hairpin(const sw_draft *draft, uint32_t event)
{
    return item_has(draft, event, SW_MARK_HAIRPIN_END) || item_has(draft, event, SW_MARK_DYNAMIC);
}

/* Whether a hairpin that began before leads up to an event, looking back as far as `first` only
 * (SW_NO_INDEX: to the beginning of the voice). */
bool sw_hairpin_leads_to(const sw_draft *draft, uint32_t event, uint32_t first)
{
    for (uint32_t e = event; e != first && (e = sw_voice_previous(draft->score, e)) != SW_NO_INDEX;) {
        if (item_has(draft, e, SW_MARK_HAIRPIN_START) || ends_hairpin(draft, e)) {
            return item_has(draft, e, SW_MARK_HAIRPIN_START);
        }
    }
    return false;
}

/* Whether a hairpin of the run is open behind its last note. */
static bool hairpin_leads_out(const sw_draft *draft, uint32_t first, uint32_t last)
{
    return !item_has(draft, last, SW_MARK_HAIRPIN_START) && !ends_hairpin(draft, last) &&
           sw_hairpin_leads_to(draft, last, first);
}

/* Whether a slur or phrase leads over the edge of the run, into its first note or out of its last one. */
static bool slur_leads_in(const sw_draft *draft, uint32_t first, sw_mark_class start)
{
    for (uint32_t e = first;
         !item_has(draft, first, end_of(start)) && (e = sw_voice_previous(draft->score, e)) != SW_NO_INDEX;) {
        if (item_has(draft, e, start) || item_has(draft, e, end_of(start))) {
            return item_has(draft, e, start);
        }
    }
    return false;
}

static bool slur_leads_out(const sw_draft *draft, uint32_t last, sw_mark_class start)
{
    for (uint32_t e = last;
         !item_has(draft, last, start) && (e = sw_voice_next(draft->score, e)) != SW_NO_INDEX;) {
        if (item_has(draft, e, start) || item_has(draft, e, end_of(start))) {
            return item_has(draft, e, end_of(start));
        }
    }
    return false;
}

/* Whether the copy gets a mark. Slurs and hairpins are cut at the edges, other spans need both their ends. */
bool sw_run_copies_mark(const sw_draft *draft, const sw_change *change, uint32_t event, sw_mark_class class)
{
    uint32_t first = sw_voice_chord(draft->score, change->event);
    uint32_t last = sw_voice_chord(draft->score, change->last);
    switch (class) {
    case SW_MARK_SLUR_START:
    case SW_MARK_PHRASE_START:
    case SW_MARK_HAIRPIN_START:
        return event != last;
    case SW_MARK_SLUR_END:
    case SW_MARK_PHRASE_END:
        return event != first;
    case SW_MARK_HAIRPIN_END:
        return sw_hairpin_leads_to(draft, event, first);
    default:
        return sw_run_keeps_mark(draft, change, event, class);
    }
}

void sw_cell_add_text(sw_draft *draft, sw_cell *cell, const char *text, sw_mark_class class)
{
    sw_cell_add_mark(draft, cell, (sw_cell_mark){SW_NO_INDEX, sw_slice_of(text), class});
}

/* What was cut off begins at the first note of the copy, or ends at its last. */
void sw_run_close_edges(sw_draft *draft, const sw_change *change, uint32_t event, sw_cell *begin,
                        sw_cell *end)
{
    uint32_t first = sw_voice_chord(draft->score, change->event);
    uint32_t last = sw_voice_chord(draft->score, change->last);
    if (first == last) {
        return;
    }
    if (event == first && slur_leads_in(draft, first, SW_MARK_SLUR_START)) {
        sw_cell_add_text(draft, begin, "(", SW_MARK_SLUR_START);
    }
    if (event == first && slur_leads_in(draft, first, SW_MARK_PHRASE_START)) {
        sw_cell_add_text(draft, begin, "\\(", SW_MARK_PHRASE_START);
    }
    if (event == last && slur_leads_out(draft, last, SW_MARK_SLUR_START)) {
        sw_cell_add_text(draft, end, ")", SW_MARK_SLUR_END);
    }
    if (event == last && slur_leads_out(draft, last, SW_MARK_PHRASE_START)) {
        sw_cell_add_text(draft, end, "\\)", SW_MARK_PHRASE_END);
    }
    if (event == last && hairpin_leads_out(draft, first, last)) {
        sw_cell_add_text(draft, end, "\\!", SW_MARK_HAIRPIN_END);
    }
}

/* Whether no chord of the run has marks of two classes. */
static bool has_none(const sw_draft *draft, uint32_t first, uint32_t last, sw_mark_class a, sw_mark_class b)
{
    for (uint32_t e = first; e != SW_NO_INDEX; e = e == last ? SW_NO_INDEX : sw_voice_next(draft->score, e)) {
        if (item_has(draft, e, a) || item_has(draft, e, b)) {
            return false;
        }
    }
    return true;
}

static void drop_marks(sw_draft_item *item, sw_mark_class class)
{
    for (size_t c = 0; c < item->cell_count; c++) {
        for (size_t i = item->cells[c].mark_count; i > 0; i--) {
            if (item->cells[c].marks[i - 1].class == class) {
                sw_cell_remove_mark(&item->cells[c], i - 1);
            }
        }
    }
}

/* On one side of a run that goes away the nearest note ends (or begins) the slur that led through the run; a
 * slur that has only this note goes. */
static bool end_slur(sw_draft *draft, uint32_t note, sw_mark_class gone, sw_mark_class wanted,
                     const char *text)
{
    sw_draft_item *item = note == SW_NO_INDEX ? NULL : sw_draft_touch(draft, note);
    if (item == NULL) {
        return false;
    }
    if (item_has(draft, note, gone)) {
        drop_marks(item, gone);
    } else if (wanted == SW_MARK_SLUR_START || wanted == SW_MARK_PHRASE_START) {
        sw_cell_add_text(draft, sw_item_first(item), text, wanted);
    } else {
        sw_cell_add_text(draft, sw_item_last(item), text, wanted);
    }
    return true;
}

bool sw_slur_cut(sw_draft *draft, uint32_t first, uint32_t last, sw_mark_class start, const char *begin,
                 const char *end)
{
    const sw_score *score = draft->score;
    if (!slur_leads_in(draft, first, start) || !slur_leads_out(draft, last, start) ||
        !has_none(draft, first, last, start, end_of(start))) {
        return true;
    }
    uint32_t before = sw_voice_previous(score, first);
    while (before != SW_NO_INDEX && !sw_event_is_note(&score->events[before])) {
        before = sw_voice_previous(score, before);
    }
    uint32_t behind = sw_voice_next(score, last);
    while (behind != SW_NO_INDEX && !sw_event_is_note(&score->events[behind])) {
        behind = sw_voice_next(score, behind);
    }
    return end_slur(draft, before, start, end_of(start), end) &&
           end_slur(draft, behind, end_of(start), start, begin);
}

/* The end of a hairpin whose beginning has gone away with the run. */
bool sw_hairpin_drop_end(sw_draft *draft, uint32_t first, uint32_t last)
{
    bool through = sw_hairpin_leads_to(draft, first, SW_NO_INDEX) &&
                   has_none(draft, first, last, SW_MARK_HAIRPIN_START, SW_MARK_HAIRPIN_END) &&
                   has_none(draft, first, last, SW_MARK_DYNAMIC, SW_MARK_DYNAMIC);
    if (!through && !item_has(draft, last, SW_MARK_HAIRPIN_START) && !hairpin_leads_out(draft, first, last)) {
        return true;
    }
    uint32_t e = sw_voice_next(draft->score, last);
    while (e != SW_NO_INDEX && !item_has(draft, e, SW_MARK_HAIRPIN_START) && !ends_hairpin(draft, e)) {
        e = sw_voice_next(draft->score, e);
    }
    if (e == SW_NO_INDEX || !item_has(draft, e, SW_MARK_HAIRPIN_END)) {
        return true;
    }
    sw_draft_item *item = sw_draft_touch(draft, e);
    if (item != NULL) {
        drop_marks(item, SW_MARK_HAIRPIN_END);
    }
    return item != NULL;
}
