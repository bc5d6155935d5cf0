/* From changes to a proved patch. */
#include <stdlib.h>
#include <string.h>

#include "write/division.h"
#include "write/print.h"

static sw_draft_change *const appliers[] = {
    [SW_CHANGE_PITCH] = sw_change_pitch,
    [SW_CHANGE_END] = sw_change_end,
    [SW_CHANGE_SPLIT] = sw_change_split,
    [SW_CHANGE_TIE] = sw_change_split,
    [SW_CHANGE_ADD_NOTE] = sw_change_add_note,
    [SW_CHANGE_REMOVE_NOTE] = sw_change_remove_note,
    [SW_CHANGE_SILENCE] = sw_change_silence,
    [SW_CHANGE_FILL] = sw_change_fill,
    [SW_CHANGE_ADD_MARK] = sw_change_add_mark,
    [SW_CHANGE_REMOVE_MARK] = sw_change_remove_mark,
    [SW_CHANGE_REPLACE_MARK] = sw_change_remove_mark,
    [SW_CHANGE_MOVE_MARK] = sw_change_move_mark,
    [SW_CHANGE_WRAP] = sw_change_wrap,
    [SW_CHANGE_UNWRAP] = sw_change_unwrap,
    [SW_CHANGE_COPY_RUN] = sw_change_copy_run,
    [SW_CHANGE_MOVE_RUN] = sw_change_copy_run,
    [SW_CHANGE_NEW_VOICE] = sw_change_new_voice,
    [SW_CHANGE_NEW_VARIABLE] = sw_change_new_variable,
    [SW_CHANGE_NEW_STAFF] = sw_change_new_staff,
    [SW_CHANGE_UNITE] = sw_change_unite,
    [SW_CHANGE_INSERT_BARS] = sw_change_insert_bars,
    [SW_CHANGE_DELETE_BARS] = sw_change_delete_bars,
};

/* Whether a note of the draft has the pitch that a change wants of it. */
static bool has_pitch(const sw_draft *draft, const sw_change *change)
{
    const sw_event *event = &draft->score->events[change->event];
    const sw_draft_item *item = sw_draft_item_of(draft, event->chord);
    sw_pitch wanted = sw_score_written_pitch(draft->reading, draft->score, event->frame, change->pitch);
    bool there = item == NULL; /* gone by another change */
    bool right = false;
    for (size_t c = 0; item != NULL && c < item->cell_count; c++) {
        for (size_t n = 0; n < item->cells[c].note_count; n++) {
            bool own = item->cells[c].notes[n].old == event->music;
            there = there || own;
            right = right || (own && sw_pitch_equal(item->cells[c].notes[n].pitch, wanted));
        }
    }
    return right || !there;
}

/* What is written once can't get two pitches, when several changes reach it in different places. */
static bool agree(sw_draft *draft)
{
    const sw_edit_request *request = draft->request;
    for (size_t i = 0; i < request->count && request->count > 1; i++) {
        const sw_change *change = &request->changes[i];
        if (change->kind == SW_CHANGE_PITCH && !has_pitch(draft, change)) {
            return sw_draft_fail(draft, change->event,
                                 "two changes want different pitches of one written note");
        }
    }
    return true;
}

static bool apply(sw_draft *draft)
{
    const sw_edit_request *request = draft->request;
    for (size_t i = 0; i < request->count; i++) {
        const sw_change *change = &request->changes[i];
        if (!appliers[change->kind](draft, change) || draft->error != NULL) {
            return false;
        }
    }
    if (!agree(draft)) {
        return false;
    }
    sw_draft_mend_ties(draft);
    sw_draft_mend_repeats(draft);
    sw_draft_dissolve(draft);
    sw_draft_locate(draft);
    return draft->error == NULL;
}

/* Where bars come in or go and another main file has lines of its own, it needs a draft of its own: what it
 * alone holds has its own octaves, values and slurs. */
static bool apply_companions(sw_draft *draft)
{
    const sw_edit_request *request = draft->request;
    draft->companions = sw_alloc_zero(request->main_count + 1, sizeof *draft->companions);
    for (size_t m = 0; m < request->main_count && draft->bars.own_lines != NULL; m++) {
        if (draft->bars.own_lines[m] == 0) {
            continue;
        }
        sw_edit_request *own = sw_arena_alloc(draft->arena, sizeof *own);
        *own = *request;
        own->reading = request->mains[m];
        own->score = &own->reading->scores[draft->bars.own_lines[m] - 1];
        own->mains = &request->mains[m];
        own->main_count = 1;
        own->count = 1;
        while (own->changes->kind != SW_CHANGE_INSERT_BARS && own->changes->kind != SW_CHANGE_DELETE_BARS) {
            own->changes++; /* the other changes are for the draft itself */
        }
        draft->companions[m] = sw_draft_new(own);
        if (!apply(draft->companions[m])) {
            draft->error = draft->companions[m]->error;
            draft->companions[m]->error = NULL;
            return false;
        }
    }
    return true;
}

static bool print(sw_draft *draft, sw_patch *patch)
{
    bool done = sw_draft_print(draft, patch);
    for (size_t m = 0; m < draft->request->main_count && done; m++) {
        done = draft->companions[m] == NULL || sw_draft_print(draft->companions[m], patch);
    }
    return done;
}

/* Whether the patch changes a byte. */
static bool is_empty(const sw_patch *patch)
{
    for (size_t i = 0; i < patch->count; i++) {
        if (patch->files[i].edits.count > 0) {
            return false;
        }
    }
    return true;
}

/* Proves the patch. Where notes have come in (or gone) on which the words that follow would be sung,
 * underscores in the lyrics take them (or go), and the proof begins anew. */
static bool prove(const sw_draft *draft, sw_patch *patch, sw_buffer *notes, char **error)
{
    enum { MOST_MENDS = 32 };
    for (int i = 0;; i++) {
        sw_word_mend mend;
        if (sw_draft_prove(draft, patch, &mend, error)) {
            return true;
        }
        if (mend.text == NULL || i == MOST_MENDS) {
            return false;
        }
        free(*error);
        *error = NULL;
        sw_place place = sw_text_place(mend.text, mend.start);
        sw_buffer_format(notes, "%s:%u:%u: note: _ is %s here, so that the words stay on their notes\n",
                         mend.text->path, place.line, place.column + 1,
                         mend.put[0] == '\0' ? "taken out" : "put in");
        sw_patch_add(patch, mend.text, mend.start, mend.end, sw_slice_of(mend.put));
        if (!sw_patch_finish(patch, error)) {
            return false;
        }
    }
}

bool sw_edit_score(const sw_edit_request *request, sw_patch *patch, sw_buffer *notes, char **error)
{
    *error = NULL;
    size_t noted = notes->length;
    sw_draft *draft = sw_draft_new(request);
    bool done = apply(draft) && apply_companions(draft) && sw_draft_check_elsewhere(draft, notes) &&
                print(draft, patch);
    if (draft->error != NULL) {
        *error = draft->error;
        draft->error = NULL;
        done = false;
    }
    done = done && sw_patch_finish(patch, error) &&
           (is_empty(patch) || (sw_sources_are_known(request->mains, request->main_count, patch, error) &&
                                prove(draft, patch, notes, error)));
    if (!done || is_empty(patch)) {
        sw_patch_free(patch);
        if (notes->length > noted) { /* nothing changes along with nothing */
            notes->data[noted] = '\0';
            notes->length = noted;
        }
    }
    sw_draft_free(draft);
    return done;
}
