#include "moves/choices.h"

#include <stdlib.h>
#include <string.h>

void sw_choices_begin(sw_choices *choices, uint32_t event, const char *why, ...)
{
    va_list arguments;
    va_start(arguments, why);
    sw_buffer text = {0};
    sw_buffer_vformat(&text, why, arguments);
    va_end(arguments);
    choices->items = sw_grow(choices->items, choices->count, &choices->capacity, sizeof *choices->items);
    choices->items[choices->count++] =
        (sw_choice){.first = choices->change_count, .event = event, .why = strdup(sw_buffer_text(&text))};
    sw_buffer_free(&text);
}

void sw_choices_add(sw_choices *choices, sw_change change)
{
    choices->changes =
        sw_grow(choices->changes, choices->change_count, &choices->change_capacity, sizeof *choices->changes);
    choices->changes[choices->change_count++] = change;
    choices->items[choices->count - 1].count++;
}

void sw_choices_free(sw_choices *choices)
{
    for (size_t i = 0; i < choices->count; i++) {
        free(choices->items[i].why);
    }
    free(choices->items);
    free(choices->changes);
}

/* ---- telling ------------------------------------------------------------------------------------------ */

void sw_move_tell(sw_move *move, const char *name, const sw_reading *reading, const sw_event *event,
                  const char *message)
{
    const sw_music *m = &reading->music[event->chord];
    const sw_reading *first = move->mains[0];
    for (uint32_t file = 0; file < first->file_count; file++) {
        if (sw_text_same_file(first->files[file].text, reading->files[m->file].text)) {
            sw_findings_add(&move->findings, SW_NOTE, name, file, m->start, m->end, "%s", message);
            sw_finding *finding = &move->findings.items[move->findings.count - 1];
            sw_place place = sw_text_place(first->files[file].text, m->start);
            finding->line = place.line;
            finding->column = place.column + 1;
            return;
        }
    }
    sw_buffer_format(&move->notes, "%s\n", message); /* in a file that the named one does not include */
}

/* ---- making ------------------------------------------------------------------------------------------- */

typedef struct attempt {
    sw_move *move;
    const sw_choices *choices;
    sw_edit_request request;
    bool *good; /* by choice */
    sw_change *changes;
} attempt;

/* Tries the good choices of [from, to) together; the patch and the notes are kept when it can be done. */
static bool try_range(attempt *a, size_t from, size_t to, sw_patch *patch, sw_buffer *notes, char **error)
{
    size_t count = 0;
    for (size_t i = from; i < to; i++) {
        const sw_choice *choice = &a->choices->items[i];
        for (size_t k = 0; a->good[i] && k < choice->count; k++) {
            a->changes[count++] = a->choices->changes[choice->first + k];
        }
    }
    a->request.changes = a->changes;
    a->request.count = count;
    return count == 0 || sw_edit_score(&a->request, patch, notes, error);
}

static bool is_possible(attempt *a, size_t from, size_t to, char **error)
{
    sw_patch patch = {0};
    sw_buffer notes = {0};
    bool possible = try_range(a, from, to, &patch, &notes, error);
    sw_patch_free(&patch);
    sw_buffer_free(&notes);
    return possible;
}

static void refuse(attempt *a, size_t choice, const char *reason)
{
    a->good[choice] = false;
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s: not done: %s", a->choices->items[choice].why, reason);
    sw_move_tell(a->move, a->choices->move, a->request.reading,
                 &a->request.score->events[a->choices->items[choice].event], sw_buffer_text(&text));
    sw_buffer_free(&text);
}

/* Leaves out of [from, to) what can't be done. Few choices are refused as a rule, so halving finds them. */
static void sift(attempt *a, size_t from, size_t to)
{
    char *error = NULL;
    if (is_possible(a, from, to, &error)) {
        return;
    }
    if (to - from == 1) {
        refuse(a, from, error);
        free(error);
        return;
    }
    free(error);
    size_t middle = from + (to - from) / 2;
    sift(a, from, middle);
    sift(a, middle, to);
    if (!is_possible(a, from, to, &error)) { /* each half is possible, but not both */
        for (size_t i = middle; i < to; i++) {
            if (a->good[i]) {
                refuse(a, i, error);
            }
        }
        free(error);
    }
}

void sw_choices_make(sw_move *move, const sw_choices *choices, const sw_edit_request *request)
{
    attempt a = {move, choices, *request, sw_alloc((choices->count + 1) * sizeof(bool)),
                 sw_alloc_zero(choices->change_count + 1, sizeof(sw_change))};
    memset(a.good, true, choices->count);
    char *error = NULL;
    if (!try_range(&a, 0, choices->count, &move->patch, &move->notes, &error)) {
        free(error);
        error = NULL;
        sift(&a, 0, choices->count);
        if (!try_range(&a, 0, choices->count, &move->patch, &move->notes, &error)) {
            sw_buffer_format(&move->notes, "%s\n", error); /* what was possible a moment ago is so still */
            free(error);
        }
    }
    for (size_t i = 0; i < choices->count; i++) {
        if (a.good[i]) {
            sw_buffer_format(&move->why, "%s\n", choices->items[i].why);
        }
    }
    free(a.good);
    free(a.changes);
}
