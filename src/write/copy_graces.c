/* Grace notes that come along when a run is copied.
 *
 * They take no time of their own, so they have no cell: the cell before which they are written keeps them
 * (sw_cell.graces), each with its value and its place before the note, and the command of the source where
 * their group begins. */
#include <string.h>

#include "write/division.h"
#include "write/draft.h"

/* Whether all of some music is notes and chords one after another. */
static bool is_plain(const sw_reading *reading, uint32_t music)
{
    switch ((sw_music_kind)reading->music[music].kind) {
    case SW_MUSIC_NOTE:
        return (reading->music[music].flags & SW_MUSIC_AS_REST) == 0;
    case SW_MUSIC_CHORD:
        return reading->music[music].num != 0; /* <> has no length */
    case SW_MUSIC_SEQUENCE:
        for (uint32_t c = reading->music[music].first; c != SW_NO_INDEX; c = reading->music[c].next) {
            if (!sw_is_item(&reading->music[c]) || !is_plain(reading, c)) {
                return false;
            }
        }
        return true;
    default:
        return false;
    }
}

sw_slice sw_grace_head(const sw_reading *reading, const uint32_t *parent, uint32_t item, uint32_t *group)
{
    static const char *const commands[] = {"\\grace", "\\slashedGrace", "\\acciaccatura", "\\appoggiatura"};
    uint32_t node = parent[item];
    if (node != SW_NO_INDEX && reading->music[node].kind == SW_MUSIC_SEQUENCE) {
        node = parent[node];
    }
    if (node == SW_NO_INDEX || reading->music[node].kind != SW_MUSIC_GRACE ||
        !is_plain(reading, reading->music[node].first)) {
        return (sw_slice){NULL, 0};
    }
    sw_slice text = sw_music_slice(reading, node);
    size_t before = reading->music[reading->music[node].first].start - reading->music[node].start;
    sw_slice command = sw_slice_trim((sw_slice){text.data, before < text.length ? before : 0});
    for (size_t i = 0; i < sizeof commands / sizeof *commands; i++) {
        if (sw_slice_is(command, commands[i])) {
            *group = node;
            return command;
        }
    }
    return (sw_slice){NULL, 0};
}

sw_cell *sw_draft_add_grace(sw_draft *draft, uint32_t event, uint32_t voice, const sw_cell_note *heard,
                            size_t count)
{
    const sw_reading *reading = draft->reading;
    const sw_event *e = &draft->score->events[event];
    uint32_t group = SW_NO_INDEX;
    sw_slice command = sw_grace_head(reading, draft->parent, e->chord, &group);
    if (command.length == 0) {
        sw_draft_fail(draft, event, "grace notes that are written like this can't be copied");
        return NULL;
    }
    uint32_t target = sw_voice_at(draft->score, voice, e->onset);
    sw_draft_item *item = sw_draft_touch(draft, target);
    if (item == NULL) {
        return NULL;
    }
    sw_cell *cell = &item->cells[sw_draft_cut(draft, item, sw_draft_local(draft, item, target, e->onset))];
    sw_grace *graces = sw_arena_alloc(draft->arena, (cell->grace_count + 1) * sizeof *graces);
    if (cell->grace_count > 0) {
        memcpy(graces, cell->graces, cell->grace_count * sizeof *graces);
    }
    cell->graces = graces;
    sw_grace *grace = &graces[cell->grace_count++];
    *grace = (sw_grace){.offset = {e->grace_num, e->grace_den},
                        .length = e->duration,
                        .value = sw_music_duration(&reading->music[e->chord]),
                        .cell = {.kind = SW_CELL_NOTES}};
    sw_cell_set_notes(draft, &grace->cell, heard, count);
    for (size_t n = 0; n < count; n++) {
        sw_cell_note *note = &grace->cell.notes[n];
        note->pitch =
            sw_score_written_pitch(reading, draft->score, draft->score->events[target].frame, heard[n].pitch);
        note->marked = note->tied = false;
    }
    bool braces = draft->parent[e->chord] != group;
    if (!braces || reading->music[draft->parent[e->chord]].first == e->chord) {
        grace->opens = sw_slice_of(
            sw_arena_format(draft->arena, "%.*s %s", (int)command.length, command.data, braces ? "{ " : ""));
    }
    if (braces && reading->music[e->chord].next == SW_NO_INDEX) {
        grace->closes = sw_slice_of(" }");
    }
    return &grace->cell;
}
