/* A copy for some places: where an item is written in a variable that is used elsewhere too, and not all
 * places shall change, those that do get a variable of their own.
 *
 * The way from the score to the item leads through uses of variables, the innermost first. On the way to each
 * wanted place they are copied up to the first use that leads to wanted places only: that use gets the new
 * name. A variable has one copy, whichever uses lead to it: the item has one change. The edits inside of a
 * copied variable go to its copy, which stands behind the original. */
#include <stdlib.h>
#include <string.h>

#include "write/division.h"
#include "write/entry.h"
#include "write/print.h"

/* ---- planning ---- */

static const sw_music *at(const sw_draft *draft, uint32_t music)
{
    return &draft->reading->music[music];
}

/* Whether an event is reached through a use of a variable, which is a node of the draft's reading. */
static bool passes(const sw_draft *draft, const sw_reading *reading, const sw_score *score, uint32_t event,
                   uint32_t use)
{
    const sw_music *wanted = at(draft, use);
    for (uint32_t f = score->events[event].frame; f != SW_NO_INDEX; f = score->frames[f].parent) {
        const sw_music *m = &reading->music[score->frames[f].music];
        if (m->kind == SW_MUSIC_REFERENCE && m->start == wanted->start && m->end == wanted->end &&
            sw_text_same_file(reading->files[m->file].text, draft->reading->files[wanted->file].text)) {
            return true;
        }
    }
    return false;
}

bool sw_draft_changes_at(const sw_draft *draft, const sw_draft_item *item, const sw_reading *reading,
                         const sw_score *score, uint32_t event)
{
    bool own = reading == draft->reading && score == draft->score;
    bool changes = item->through_count == 0 || (own && draft->wanted[event] != 0);
    for (size_t i = 0; i < item->through_count && !changes; i++) {
        changes = passes(draft, reading, score, event, item->through[i]);
    }
    return changes;
}

/* The assignment whose text holds a place; NULL when none does. */
static const sw_variable *variable_around(const sw_draft *draft, uint32_t file, uint32_t offset)
{
    for (size_t v = 0; v < draft->reading->variable_count; v++) {
        const sw_variable *variable = &draft->reading->variables[v];
        if (variable->music != SW_NO_INDEX && variable->file == file && variable->start <= offset &&
            offset < sw_node_end(draft->reading, variable->music)) {
            return variable;
        }
    }
    return NULL;
}

static bool is_free(const sw_draft *draft, const char *name)
{
    uint32_t number = sw_names_find(draft->reading->names, sw_slice_of(name));
    for (size_t v = 0; number != UINT32_MAX && v < draft->reading->variable_count; v++) {
        if (draft->reading->variables[v].name == number) {
            return false;
        }
    }
    return true;
}

/* "motif" -> "motifCopy", "motifCopyB" ... */
static const char *new_name(const sw_draft *draft, uint32_t name)
{
    const char *old = sw_reading_name(draft->reading, name);
    const char *text = sw_arena_format(draft->arena, "%sCopy", old);
    for (char letter = 'B'; !is_free(draft, text) && letter <= 'Z'; letter++) {
        text = sw_arena_format(draft->arena, "%sCopy%c", old, letter);
    }
    return text;
}

static void add_use(sw_draft_copy *copy, uint32_t use)
{
    for (size_t i = 0; i < copy->use_count; i++) {
        if (copy->uses[i] == use) {
            return;
        }
    }
    copy->uses = sw_grow(copy->uses, copy->use_count, &copy->use_capacity, sizeof *copy->uses);
    copy->uses[copy->use_count++] = use;
}

static void add_copy(sw_draft *draft, const sw_variable *variable, uint32_t use)
{
    size_t i = 0;
    while (i < draft->copy_count && draft->copies[i].variable != variable) {
        i++;
    }
    if (i == draft->copy_count) {
        draft->copies =
            sw_grow(draft->copies, draft->copy_count, &draft->copy_capacity, sizeof *draft->copies);
        draft->copies[draft->copy_count++] =
            (sw_draft_copy){.variable = variable, .name = new_name(draft, variable->name)};
    }
    add_use(&draft->copies[i], use);
}

/* Whether a use of a variable leads to places that shall stay as they are. */
static bool leads_elsewhere(const sw_draft *draft, uint32_t number, uint32_t use)
{
    const uint32_t *found = sw_draft_found(draft, draft->reading);
    for (uint32_t e = 0; e < draft->score->event_count; e = sw_voice_chord_end(draft->score, e)) {
        if (found[draft->score->events[e].chord] == number && draft->wanted[e] == 0 &&
            passes(draft, draft->reading, draft->score, e, use)) {
            return true;
        }
    }
    return false;
}

/* Copies what stands on the way to one of the wanted places; false when no copy can tell it from others. */
static bool copy_on_the_way(sw_draft *draft, uint32_t number, uint32_t event)
{
    sw_draft_item *item = draft->items[number - 1];
    const sw_score *score = draft->score;
    uint32_t file = at(draft, item->music)->file;
    uint32_t place = at(draft, item->music)->start;
    for (uint32_t f = score->events[event].frame; f != SW_NO_INDEX; f = score->frames[f].parent) {
        uint32_t use = score->frames[f].music;
        if (at(draft, use)->kind != SW_MUSIC_REFERENCE) {
            continue;
        }
        const sw_variable *variable = variable_around(draft, file, place);
        if (variable == NULL || variable->name != at(draft, use)->name) {
            return false;
        }
        add_copy(draft, variable, use);
        if (!leads_elsewhere(draft, number, use)) {
            item->through =
                sw_grow(item->through, item->through_count, &item->through_capacity, sizeof *item->through);
            item->through[item->through_count++] = use;
            return true;
        }
        file = at(draft, use)->file;
        place = at(draft, use)->start;
    }
    return false;
}

bool sw_draft_plan_copy(sw_draft *draft, uint32_t number)
{
    const uint32_t *found = sw_draft_found(draft, draft->reading);
    const sw_score *score = draft->score;
    for (uint32_t e = 0; e < score->event_count; e = sw_voice_chord_end(score, e)) {
        bool wanted = found[score->events[e].chord] == number && draft->wanted[e] != 0;
        if (wanted && !copy_on_the_way(draft, number, e)) {
            return sw_draft_fail(
                draft, e,
                "this is written once and heard several times in a way that no copy of a variable can "
                "tell apart (a repeat, or some of it here and other notes there); write it out first");
        }
    }
    return true;
}

/* ---- writing ---- */

/* Takes the edits that lie inside of a variable's text out of the patch. */
static sw_edits take_edits(sw_patch *patch, const sw_text *text, uint32_t from, uint32_t to)
{
    sw_edits taken = {0};
    for (size_t i = 0; i < patch->count; i++) {
        sw_edits *edits = &patch->files[i].edits;
        if (!sw_text_same_file(patch->files[i].text, text)) {
            continue;
        }
        size_t kept = 0;
        for (size_t k = 0; k < edits->count; k++) {
            sw_edit *edit = &edits->items[k];
            if (edit->start >= from && edit->end <= to) {
                sw_edits_add(&taken, edit->start, edit->end, (sw_slice){edit->text, edit->length});
                free(edit->text);
            } else {
                edits->items[kept++] = *edit;
            }
        }
        edits->count = kept;
    }
    sw_edits_unite(&taken, 0);
    return taken;
}

/* The first item of a variable needs a value of its own: it stands behind the original now. */
static void give_value(const sw_draft *draft, const sw_item_order *order, const sw_variable *variable,
                       uint32_t end, sw_edits *edits)
{
    uint32_t first = sw_item_order_behind(order, draft->reading, variable->file, variable->value_start);
    if (first == SW_NO_INDEX || at(draft, first)->start >= end ||
        (at(draft, first)->flags & SW_MUSIC_WRITTEN_VALUE) != 0 || sw_draft_item_of(draft, first) != NULL) {
        return;
    }
    char value[SW_DURATION_TEXT];
    uint32_t body = sw_item_body_end(draft->reading, first);
    sw_edits_add(edits, body, body,
                 sw_slice_of(sw_duration_print(sw_music_duration(at(draft, first)), value)));
}

/* Where the text of a variable ends. */
static uint32_t end_of(const sw_draft *draft, const sw_variable *variable)
{
    uint32_t end = sw_node_end(draft->reading, variable->music);
    return end > variable->end ? end : variable->end;
}

/* Whether no copy that is still to be printed is used inside of a variable: its name has to get there first.
 */
static bool is_ready(const sw_draft *draft, const sw_draft_copy *copy)
{
    const sw_variable *variable = copy->variable;
    uint32_t end = end_of(draft, variable);
    for (size_t i = 0; i < draft->copy_count; i++) {
        const sw_draft_copy *other = &draft->copies[i];
        for (size_t k = 0; k < other->use_count && !other->printed && other != copy; k++) {
            const sw_music *use = at(draft, other->uses[k]);
            if (use->file == variable->file && use->start >= variable->start && use->start < end) {
                return false;
            }
        }
    }
    return true;
}

static void print_copy(sw_draft *draft, const sw_draft_copy *copy, const sw_item_order *order,
                       sw_patch *patch)
{
    const sw_variable *variable = copy->variable;
    const sw_text *text = draft->reading->files[variable->file].text;
    uint32_t end = end_of(draft, variable);
    sw_edits edits = take_edits(patch, text, variable->start, end);
    give_value(draft, order, variable, end, &edits);
    sw_slice head = sw_text_slice(text, variable->start, variable->value_start);
    const char *name = sw_reading_name(draft->reading, variable->name);
    const char *found = memmem(head.data, head.length, name, strlen(name));
    if (found == NULL) {
        sw_draft_fail_at(draft, copy->uses[0], "the variable is assigned in a way that can't be copied");
    } else {
        uint32_t name_start = variable->start + (uint32_t)(found - head.data);
        sw_edits_add(&edits, name_start, name_start + (uint32_t)strlen(name), sw_slice_of(copy->name));
    }
    uint32_t where = 0;
    sw_buffer whole = {0};
    if (sw_edits_finish(&edits, text, &where)) {
        sw_edits_apply(&edits, text, &whole);
        /* The copied text begins where the variable does, and is as much longer as all edits make it. */
        size_t length = end - variable->start + (whole.length - text->length);
        sw_buffer out = {0};
        sw_buffer_format(&out, "%s%s", sw_text_newline(text), sw_text_newline(text));
        sw_buffer_append(&out, (sw_slice){whole.data + variable->start, length});
        sw_patch_add(patch, text, end, end, sw_buffer_slice(&out));
        sw_buffer_free(&out);
    } else {
        sw_draft_fail_at(draft, copy->uses[0], "the copy would have to become two different things");
    }
    sw_buffer_free(&whole);
    sw_edits_free(&edits);
    const char *reference = sw_arena_format(draft->arena, "\\%s", copy->name);
    for (size_t i = 0; i < copy->use_count; i++) {
        const sw_music *use = at(draft, copy->uses[i]);
        sw_patch_add(patch, draft->reading->files[use->file].text, use->start, use->end,
                     sw_slice_of(reference));
    }
}

void sw_draft_print_copies(sw_draft *draft, const sw_item_order *order, sw_patch *patch)
{
    for (size_t printed = 0; printed < draft->copy_count && draft->error == NULL; printed++) {
        size_t i = 0;
        while (i < draft->copy_count && (draft->copies[i].printed || !is_ready(draft, &draft->copies[i]))) {
            i++;
        }
        if (i == draft->copy_count) {
            sw_draft_fail_at(draft, draft->copies[0].uses[0], "the variables use one another in a ring");
            return;
        }
        print_copy(draft, &draft->copies[i], order, patch);
        draft->copies[i].printed = true;
    }
}
