/* Commands around a run, and a variable of its own for one. */
#include <string.h>

#include "syntax/commands.h"
#include "write/division.h"
#include "write/entry.h"
#include "write/run.h"

static const sw_music *at(const sw_draft *draft, uint32_t music)
{
    return &draft->reading->music[music];
}

/* The first or last item in or below a node, in the order of the text. */
uint32_t sw_run_item(const sw_draft *draft, uint32_t music, bool last)
{
    const sw_music *m = at(draft, music);
    if (sw_is_item(m)) {
        return music;
    }
    uint32_t found = SW_NO_INDEX;
    for (uint32_t c = m->kind == SW_MUSIC_MARK ? SW_NO_INDEX : m->first; c != SW_NO_INDEX;
         c = at(draft, c)->next) {
        uint32_t inner = sw_run_item(draft, c, last);
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
bool sw_run_find(sw_draft *draft, const sw_change *change, uint32_t *first, uint32_t *last)
{
    uint32_t from = draft->score->events[change->event].chord;
    uint32_t to = draft->score->events[change->last].chord;
    for (uint32_t a = from; a != SW_NO_INDEX; a = draft->parent[a]) {
        uint32_t around = draft->parent[a];
        if (sw_run_item(draft, a, false) != from || around == SW_NO_INDEX) {
            break;
        }
        for (uint32_t b = to; at(draft, around)->kind == SW_MUSIC_SEQUENCE && b != SW_NO_INDEX;
             b = draft->parent[b]) {
            if (sw_run_item(draft, b, true) != to) {
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
    if (!sw_run_find(draft, change, &first, &last)) {
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
    if (!is_free_name(draft, change) || !sw_run_find(draft, change, &first, &last)) {
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
        .first_item = sw_run_item(draft, first, false),
        .drums = draft->score->events[change->event].kind == SW_EVENT_DRUM,
    };
    return true;
}
