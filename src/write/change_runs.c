/* Changes of runs: everything of a voice from one event up to another. */
#include <string.h>

#include "syntax/commands.h"
#include "write/division.h"
#include "write/entry.h"
#include "write/print.h"

/* ---- runs ---- */

static const sw_music *at(const sw_draft *draft, uint32_t music)
{
    return &draft->reading->music[music];
}

/* The first or last item in or below a node, in the order of the text. */
static uint32_t outermost(const sw_draft *draft, uint32_t music, bool last)
{
    const sw_music *m = at(draft, music);
    if (sw_is_item(m)) {
        return music;
    }
    uint32_t found = SW_NO_INDEX;
    for (uint32_t c = m->kind == SW_MUSIC_MARK ? SW_NO_INDEX : m->first; c != SW_NO_INDEX;
         c = at(draft, c)->next) {
        uint32_t inner = outermost(draft, c, last);
        if (inner != SW_NO_INDEX) {
            found = inner;
            if (!last) {
                break;
            }
        }
    }
    return found;
}

/* The children of one sequence that a run consists of. False when it begins or ends in the middle of a
 * block. */
static bool find_run(sw_draft *draft, const sw_change *change, uint32_t *first, uint32_t *last)
{
    uint32_t from = draft->score->events[change->event].chord;
    uint32_t to = draft->score->events[change->last].chord;
    for (uint32_t a = from; a != SW_NO_INDEX; a = draft->parent[a]) {
        uint32_t around = draft->parent[a];
        if (outermost(draft, a, false) != from || around == SW_NO_INDEX) {
            break;
        }
        for (uint32_t b = to; at(draft, around)->kind == SW_MUSIC_SEQUENCE && b != SW_NO_INDEX;
             b = draft->parent[b]) {
            if (outermost(draft, b, true) != to) {
                break;
            }
            if (draft->parent[b] == around && at(draft, a)->file == at(draft, b)->file &&
                at(draft, a)->start <= at(draft, b)->start) {
                *first = a;
                *last = b;
                return true;
            }
        }
    }
    return sw_draft_fail(
        draft, change->event,
        "the passage begins or ends in the middle of a block, or leads from one into another");
}

static void add_text(sw_draft *draft, uint32_t file, uint32_t offset, const char *text)
{
    draft->texts = sw_grow(draft->texts, draft->text_count, &draft->text_capacity, sizeof *draft->texts);
    draft->texts[draft->text_count++] =
        (sw_draft_text){draft->reading->files[file].text, offset, offset, sw_slice_of(text)};
}

bool sw_change_wrap(sw_draft *draft, const sw_change *change)
{
    uint32_t first = 0;
    uint32_t last = 0;
    if (!find_run(draft, change, &first, &last)) {
        return false;
    }
    uint32_t file = at(draft, first)->file;
    add_text(draft, file, sw_run_begin(draft->reading, first),
             sw_arena_format(draft->arena, "%s { ", change->text));
    add_text(draft, file, sw_node_end(draft->reading, last), " }");
    return true;
}

static void drop_text(sw_draft *draft, uint32_t file, uint32_t start, uint32_t end)
{
    draft->texts = sw_grow(draft->texts, draft->text_count, &draft->text_capacity, sizeof *draft->texts);
    draft->texts[draft->text_count++] =
        (sw_draft_text){draft->reading->files[file].text, start, end, sw_slice_of("")};
}

bool sw_change_unwrap(sw_draft *draft, const sw_change *change)
{
    const sw_music *m = at(draft, change->mark);
    sw_slice text = sw_music_slice(draft->reading, change->mark);
    const char *begin = sw_arena_format(draft->arena, "%s { ", change->text);
    size_t length = strlen(begin);
    if (text.length < length + 2 || memcmp(text.data, begin, length) != 0 || !sw_slice_ends(text, " }")) {
        return sw_draft_fail_at(draft, change->mark, "this is not written as \"%s}\"; take it out by hand",
                                begin);
    }
    drop_text(draft, m->file, m->start, m->start + (uint32_t)length);
    drop_text(draft, m->file, m->end - 2, m->end);
    return true;
}

/* ---- a variable of its own ---- */

static bool is_free_name(sw_draft *draft, const sw_change *change)
{
    const char *name = change->text;
    size_t length = strspn(name, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ");
    if (length == 0 || name[length] != '\0') {
        return sw_draft_fail(draft, change->event, "\"%s\" is no name for a variable: letters only", name);
    }
    uint32_t number = sw_names_find(draft->reading->names, sw_slice_of(name));
    for (size_t v = 0; number != UINT32_MAX && v < draft->reading->variable_count; v++) {
        if (draft->reading->variables[v].name == number) {
            return sw_draft_fail(draft, change->event, "there is a variable called %s already", name);
        }
    }
    return sw_command_find(sw_slice_of(name)) == NULL ||
           sw_draft_fail(draft, change->event, "\\%s is a command of the language", name);
}

/* Where the assignment or score that holds a place begins; SW_NO_INDEX when it is in neither. */
static uint32_t toplevel_begin(const sw_draft *draft, uint32_t file, uint32_t offset)
{
    const sw_reading *reading = draft->reading;
    for (size_t v = 0; v < reading->variable_count; v++) {
        const sw_variable *variable = &reading->variables[v];
        uint32_t end = variable->music == SW_NO_INDEX ? variable->end : sw_node_end(reading, variable->music);
        if (variable->file == file && variable->start <= offset && offset < end) {
            return variable->start;
        }
    }
    for (size_t s = 0; s < reading->score_count; s++) {
        const sw_score *score = &reading->scores[s];
        if (score->file == file && score->start <= offset && offset < score->end) {
            return score->start;
        }
    }
    return SW_NO_INDEX;
}

bool sw_change_new_variable(sw_draft *draft, const sw_change *change)
{
    uint32_t first = 0;
    uint32_t last = 0;
    if (!is_free_name(draft, change) || !find_run(draft, change, &first, &last)) {
        return false;
    }
    const sw_reading *reading = draft->reading;
    uint32_t file = at(draft, first)->file;
    uint32_t from = sw_run_begin(draft->reading, first);
    uint32_t to = sw_node_end(reading, last);
    uint32_t place = toplevel_begin(draft, file, from);
    if (place == SW_NO_INDEX) {
        return sw_draft_fail(draft, change->event,
                             "the passage stands in no variable and no score of this file");
    }
    draft->variables =
        sw_grow(draft->variables, draft->variable_count, &draft->variable_capacity, sizeof *draft->variables);
    draft->variables[draft->variable_count++] = (sw_draft_variable){
        .file = file,
        .place = place,
        .from = from,
        .to = to,
        .name = sw_arena_copy(draft->arena, sw_slice_of(change->text)),
        .first_item = outermost(draft, first, false),
        .drums = draft->score->events[change->event].kind == SW_EVENT_DRUM,
    };
    return true;
}

/* ---- copies in another voice ---- */

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
static bool goes_along(const sw_draft *draft, const sw_change *change, uint32_t event, sw_mark_class class)
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

/* ---- marks at the edges of a copied run ---- */

static bool ends_hairpin(const sw_draft *draft, uint32_t event)
{
    return item_has(draft, event, SW_MARK_HAIRPIN_END) || item_has(draft, event, SW_MARK_DYNAMIC);
}

/* Whether a hairpin that began before leads up to an event, looking back as far as `first` only
 * (SW_NO_INDEX: to the beginning of the voice). */
static bool hairpin_leads_to(const sw_draft *draft, uint32_t event, uint32_t first)
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
           hairpin_leads_to(draft, last, first);
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
static bool is_copied(const sw_draft *draft, const sw_change *change, uint32_t event, sw_mark_class class)
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
        return hairpin_leads_to(draft, event, first);
    default:
        return goes_along(draft, change, event, class);
    }
}

static void add_edge(sw_draft *draft, sw_cell *cell, const char *text, sw_mark_class class)
{
    sw_cell_add_mark(draft, cell, (sw_cell_mark){SW_NO_INDEX, sw_slice_of(text), class});
}

/* What was cut off begins at the first note of the copy, or ends at its last. */
static void close_edges(sw_draft *draft, const sw_change *change, uint32_t event, sw_cell *begin,
                        sw_cell *end)
{
    uint32_t first = sw_voice_chord(draft->score, change->event);
    uint32_t last = sw_voice_chord(draft->score, change->last);
    if (first == last) {
        return;
    }
    if (event == first && slur_leads_in(draft, first, SW_MARK_SLUR_START)) {
        add_edge(draft, begin, "(", SW_MARK_SLUR_START);
    }
    if (event == first && slur_leads_in(draft, first, SW_MARK_PHRASE_START)) {
        add_edge(draft, begin, "\\(", SW_MARK_PHRASE_START);
    }
    if (event == last && slur_leads_out(draft, last, SW_MARK_SLUR_START)) {
        add_edge(draft, end, ")", SW_MARK_SLUR_END);
    }
    if (event == last && slur_leads_out(draft, last, SW_MARK_PHRASE_START)) {
        add_edge(draft, end, "\\)", SW_MARK_PHRASE_END);
    }
    if (event == last && hairpin_leads_out(draft, first, last)) {
        add_edge(draft, end, "\\!", SW_MARK_HAIRPIN_END);
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
        add_edge(draft, sw_item_first(item), text, wanted);
    } else {
        add_edge(draft, sw_item_last(item), text, wanted);
    }
    return true;
}

static bool cut_slur(sw_draft *draft, uint32_t first, uint32_t last, sw_mark_class start, const char *begin,
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
static bool drop_hairpin_end(sw_draft *draft, uint32_t first, uint32_t last)
{
    bool through = hairpin_leads_to(draft, first, SW_NO_INDEX) &&
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

/* The cells of a voice that a filled stretch begins and ends with. */
static void filled_cells(sw_draft *draft, uint32_t target, sw_rational from, sw_rational until,
                         sw_cell **first, sw_cell **last)
{
    for (uint32_t e = target;
         e != SW_NO_INDEX && sw_rational_compare(draft->score->events[e].onset, until) < 0;
         e = sw_voice_joined(draft->score, e)) {
        sw_draft_item *item = sw_draft_touch(draft, e);
        if (item == NULL) {
            return;
        }
        sw_rational begin = sw_draft_local(draft, item, e, from);
        sw_rational end = sw_draft_local(draft, item, e, until);
        for (size_t c = 0; c < item->cell_count; c++) {
            sw_cell *cell = &item->cells[c];
            *first = sw_rational_equal(cell->start, begin) ? cell : *first;
            *last = sw_rational_compare(cell->start, end) < 0 ? cell : *last;
        }
    }
}

static bool is_left(const sw_change *change, uint32_t mark)
{
    for (size_t i = 0; i < change->left_count; i++) {
        if (change->left[i] == mark) {
            return true;
        }
    }
    return false;
}

/* Whether a note has a tie inside of its chord: <c~ e>. */
static bool has_own_tie(const sw_draft *draft, uint32_t chord, const sw_cell_note *note)
{
    bool own = note->tied && note->old != SW_NO_INDEX && draft->parent[note->old] == chord;
    uint32_t c = own ? at(draft, note->old)->first : SW_NO_INDEX;
    while (c != SW_NO_INDEX && sw_music_mark_class(draft->reading, c) != SW_MARK_TIE) {
        c = at(draft, c)->next;
    }
    return c != SW_NO_INDEX;
}

/* Ties of single notes of a chord, for its copy. */
static void copy_own_ties(sw_draft *draft, uint32_t chord, const sw_cell *source, sw_cell *copy)
{
    for (size_t n = 0; n < source->note_count; n++) {
        bool tied = has_own_tie(draft, chord, &source->notes[n]);
        if (tied && source->note_count == 1) {
            add_edge(draft, copy, "~", SW_MARK_TIE);
        } else {
            copy->notes[n].binds = tied;
        }
    }
}

/* The marks at a note inside of its chord, for its copy; its tie goes another way (copy_own_ties). */
static void copy_inner_marks(sw_draft *draft, const sw_change *change, uint32_t chord, uint32_t old,
                             sw_cell_note *copy)
{
    bool inside = old != SW_NO_INDEX && draft->parent[old] == chord;
    for (uint32_t c = inside ? at(draft, old)->first : SW_NO_INDEX; c != SW_NO_INDEX;
         c = at(draft, c)->next) {
        if (at(draft, c)->kind != SW_MUSIC_MARK || sw_music_mark_class(draft->reading, c) == SW_MARK_TIE ||
            is_left(change, c)) {
            continue;
        }
        sw_slice *texts = sw_arena_alloc(draft->arena, (copy->text_count + 1) * sizeof *texts);
        if (copy->text_count > 0) {
            memcpy(texts, copy->texts, copy->text_count * sizeof *texts);
        }
        texts[copy->text_count++] = sw_music_slice(draft->reading, c);
        copy->texts = texts;
    }
}

/* The notes of a chord as they shall be heard in the other voice. */
static const sw_cell_note *moved_notes(sw_draft *draft, const sw_change *change, uint32_t chord,
                                       uint32_t frame, const sw_cell *source)
{
    sw_cell_note *heard = sw_arena_alloc(draft->arena, (source->note_count + 1) * sizeof *heard);
    for (size_t n = 0; n < source->note_count; n++) {
        heard[n] = source->notes[n];
        heard[n].pitch = sw_score_pitch(draft->reading, draft->score, frame, source->notes[n].pitch);
        copy_inner_marks(draft, change, chord, source->notes[n].old, &heard[n]);
        heard[n].old = sw_cell_note_is_drum(draft->reading, &heard[n]) ? heard[n].old : SW_NO_INDEX;
        if (heard[n].old == SW_NO_INDEX) {
            heard[n].pitch = sw_pitch_transpose(heard[n].pitch, change->pitch);
        }
    }
    return heard;
}

/* The first chord of a run that takes time. */
static uint32_t first_main(const sw_score *score, const sw_change *change)
{
    uint32_t e = sw_voice_chord(score, change->event);
    uint32_t last = sw_voice_chord(score, change->last);
    while (e != last && (score->events[e].flags & SW_EVENT_GRACE) != 0) {
        e = sw_voice_next(score, e);
    }
    return e;
}

static bool copy_chord(sw_draft *draft, const sw_change *change, uint32_t event)
{
    const sw_score *score = draft->score;
    const sw_event *e = &score->events[event];
    bool grace = (e->flags & SW_EVENT_GRACE) != 0;
    uint32_t target = sw_voice_at(score, change->voice, e->onset);
    if (grace && is_left(change, e->chord)) {
        return true;
    }
    sw_draft_item *item = sw_draft_touch(draft, event);
    if (item == NULL) {
        return false;
    }
    if (target == SW_NO_INDEX) {
        return sw_draft_fail(draft, event, "the other voice has nothing at this moment");
    }
    const sw_cell source = *sw_item_first(item);
    const sw_cell_note *heard = moved_notes(draft, change, e->chord, e->frame, &source);
    sw_cell *first = NULL;
    sw_cell *last = NULL;
    if (grace) {
        first = last = sw_draft_add_grace(draft, event, change->voice, heard, source.note_count);
    } else if (sw_draft_fill(draft, target, e->onset, sw_event_end(e), heard, source.note_count)) {
        filled_cells(draft, target, e->onset, sw_event_end(e), &first, &last);
    }
    if (first == NULL || last == NULL) {
        return false;
    }
    copy_own_ties(draft, e->chord, &source, last);
    for (size_t i = 0; i < source.mark_count; i++) {
        sw_cell_mark mark = source.marks[i];
        if (is_copied(draft, change, event, mark.class) && !is_left(change, mark.old)) {
            mark.old = SW_NO_INDEX;
            sw_cell_add_mark(draft, sw_mark_is_at_end(mark.class, mark.text) ? last : first, mark);
        }
    }
    close_edges(draft, change, event, first, last);
    if (change->text != NULL && event == first_main(score, change)) {
        add_edge(draft, first, change->text, sw_mark_class_of(sw_slice_of(change->text)));
    }
    return true;
}

/* What is left of a chord that has moved away: a rest without marks. */
static bool leave(sw_draft *draft, const sw_change *change, uint32_t event)
{
    sw_draft_item *item = sw_draft_touch(draft, event);
    for (size_t c = 0; item != NULL && c < item->cell_count; c++) {
        sw_cell *cell = &item->cells[c];
        size_t kept = 0;
        for (size_t i = 0; i < cell->mark_count; i++) {
            sw_mark_class class = cell->marks[i].class;
            bool of_hairpin = class == SW_MARK_HAIRPIN_START || class == SW_MARK_HAIRPIN_END;
            if (!of_hairpin && !goes_along(draft, change, event, class)) {
                cell->marks[kept++] = cell->marks[i];
            }
        }
        cell->mark_count = kept;
        sw_draft_silence(draft, event, event, cell);
    }
    if (item != NULL) {
        item->calls = false;
    }
    return item != NULL;
}

bool sw_change_copy_run(sw_draft *draft, const sw_change *change)
{
    const sw_score *score = draft->score;
    uint32_t first = sw_voice_chord(score, change->event);
    uint32_t last = sw_voice_chord(score, change->last);
    if (score->events[first].voice == change->voice) {
        return sw_draft_fail(draft, first, "the passage is in that voice already");
    }
    if (!sw_draft_lay_tuplets(draft, first, last, change->voice)) {
        return false;
    }
    for (int pass = 0; pass < 2; pass++) { /* all copies first: their marks are looked up in the source */
        for (uint32_t e = first; e != SW_NO_INDEX; e = e == last ? SW_NO_INDEX : sw_voice_next(score, e)) {
            bool note = sw_event_is_note(&score->events[e]);
            if (note && !(pass == 0 ? copy_chord(draft, change, e) : leave(draft, change, e))) {
                return false;
            }
        }
        if (change->kind == SW_CHANGE_COPY_RUN) {
            return true;
        }
    }
    if (hairpin_leads_to(draft, first, SW_NO_INDEX)) { /* it ends where the rests begin */
        add_edge(draft, &sw_draft_item_of(draft, score->events[first].chord)->cells[0], "\\!",
                 SW_MARK_HAIRPIN_END);
    }
    return drop_hairpin_end(draft, first, last) &&
           cut_slur(draft, first, last, SW_MARK_SLUR_START, "(", ")") &&
           cut_slur(draft, first, last, SW_MARK_PHRASE_START, "\\(", "\\)");
}

/* ---- a second voice ---- */

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
    sw_voice_cell *cells = sw_arena_alloc(draft->arena, (voice->cell_count + 1) * sizeof *cells);
    if (voice->cell_count > 0) {
        memcpy(cells, voice->cells, voice->cell_count * sizeof *cells);
    }
    voice->cells = cells;
    cells[voice->cell_count] =
        (sw_voice_cell){.from = from, .to = to, .tuplet = SW_NO_INDEX, .cell = {.kind = kind}};
    return &cells[voice->cell_count++];
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

/* Whether a mark says how a note is played, and so is said to each voice; dynamics and texts stand once. */
static bool is_of_playing(sw_mark_class class)
{
    switch (class) {
    case SW_MARK_ARTICULATION:
    case SW_MARK_SLUR_START:
    case SW_MARK_SLUR_END:
    case SW_MARK_PHRASE_START:
    case SW_MARK_PHRASE_END:
    case SW_MARK_BEAM_START:
    case SW_MARK_BEAM_END:
    case SW_MARK_TREMOLO:
        return true;
    default:
        return false;
    }
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
        if (is_of_playing(mark.class) && goes_along(draft, change, chord, mark.class) &&
            !is_left(change, mark.old)) {
            mark.old = SW_NO_INDEX;
            sw_cell_add_mark(draft, cell, mark);
        }
    }
    if (tied > 0 && chord != sw_voice_chord(score, change->last)) {
        add_edge(draft, cell, "~", SW_MARK_TIE);
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
            add_edge(draft, &voice->cells[c].cell, change->text, sw_mark_class_of(sw_slice_of(change->text)));
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
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_event *other = &score->events[e];
        if (other->voice != from->voice && score->voices[other->voice].staff == staff &&
            sw_rational_compare(other->onset, sw_event_end(to)) < 0 &&
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
        outermost(draft, block, false) == outermost(draft, voice->first, false) &&
        outermost(draft, block, true) == outermost(draft, voice->last, true)) {
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
        !find_run(draft, change, &voice.first, &voice.last) || !has_room(draft, change, item)) {
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
