/* What rules offer to mend their findings. */
#include <stdlib.h>

#include "checks/rules.h"

static sw_fix *add(sw_check *check, sw_fix_kind kind, bool safe, const char *says)
{
    sw_fixes *fixes = check->fixes;
    if (fixes->arena == NULL) {
        fixes->arena = sw_arena_new();
    }
    sw_finding *finding = &check->findings->items[check->findings->count - 1];
    finding->fixable = safe ? SW_FIX_SAFE : SW_FIX_PLAYED;
    finding->fix = (uint32_t)fixes->count;
    fixes->items = sw_grow(fixes->items, fixes->count, &fixes->capacity, sizeof *fixes->items);
    fixes->items[fixes->count] = (sw_fix){.kind = kind,
                                          .safe = safe,
                                          .file = finding->file,
                                          .start = finding->start,
                                          .says = sw_arena_copy(fixes->arena, sw_slice_of(says))};
    return &fixes->items[fixes->count++];
}

void sw_fix_by_changes(sw_check *check, bool safe, uint32_t score, const sw_change *changes, size_t count,
                       const char *says)
{
    sw_fix *fix = add(check, SW_FIX_CHANGES, safe, says);
    sw_change *copies = sw_arena_alloc(check->fixes->arena, count * sizeof *copies);
    for (size_t i = 0; i < count; i++) {
        copies[i] = changes[i];
        copies[i].text =
            changes[i].text == NULL ? NULL : sw_arena_copy(check->fixes->arena, sw_slice_of(changes[i].text));
    }
    fix->score = score;
    fix->changes = copies;
    fix->count = count;
}

void sw_fix_by_text(sw_check *check, const sw_fix_edit *edits, size_t count, const char *says)
{
    sw_fix *fix = add(check, SW_FIX_TEXT, true, says);
    sw_fix_edit *copies = sw_arena_alloc(check->fixes->arena, count * sizeof *copies);
    for (size_t i = 0; i < count; i++) {
        copies[i] = edits[i];
        copies[i].text = sw_arena_copy(check->fixes->arena, sw_slice_of(edits[i].text));
    }
    fix->edits = copies;
    fix->count = count;
}

void sw_fix_by_courtesy(sw_check *check, uint32_t score)
{
    add(check, SW_FIX_COURTESY, false, "the note before ends earlier")->score = score;
}

void sw_fixes_free(sw_fixes *fixes)
{
    free(fixes->items);
    sw_arena_free(fixes->arena);
    *fixes = (sw_fixes){0};
}
