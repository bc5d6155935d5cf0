/* Fixes for findings, in passes. */
#include "stavewright/fix.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "moves/choices.h"
#include "moves/changed_files.h"
#include "moves/linked.h"
#include "moves/prove_texts.h"
#include "stavewright/cues.h"

struct sw_fixing {
    bool all;
    const sw_check_result *accepted;
    size_t count; /* fixes made */
    sw_changed_files files;
    sw_shelf *shelf; /* what has been read since the last change; NULL: nothing */
    sw_buffer told;
};

sw_fixing *sw_fixing_new(bool all, const sw_check_result *accepted)
{
    sw_fixing *fixing = sw_alloc_zero(1, sizeof *fixing);
    fixing->all = all;
    fixing->accepted = accepted;
    return fixing;
}

void sw_fixing_free(sw_fixing *fixing)
{
    if (fixing != NULL) {
        sw_shelf_free(fixing->shelf);
        sw_changed_files_free(&fixing->files);
        sw_buffer_free(&fixing->told);
        free(fixing);
    }
}

size_t sw_fixing_count(const sw_fixing *fixing)
{
    return fixing->count;
}

const sw_buffer *sw_fixing_told(const sw_fixing *fixing)
{
    return &fixing->told;
}

bool sw_fixing_patch(const sw_fixing *fixing, sw_patch *patch, char **error)
{
    return sw_changed_files_patch(&fixing->files, patch, error);
}

/* ---- one pass -------------------------------------------------------------------------------------------
 */

/* A main file in a pass. */
typedef struct pass {
    sw_fixing *fixing;
    const sw_check_options *options; /* with what has been changed so far */
    sw_move *move;                   /* mains[0] is the file's reading */
    const sw_fixes *fixes;
    sw_buffer refused; /* a line for each that could not be made */
    bool changed;
    char **error;
} pass;

static bool is_wanted(const pass *p, const sw_fix *fix, sw_fix_kind kind)
{
    return fix->wanted && fix->kind == kind && (fix->safe || p->fixing->all);
}

static const char not_done[] = ": not done: ";

/* "file:line:column: note: TEXT [fix]" */
static void tell(const sw_text *text, uint32_t start, const char *what, const char *reason, sw_buffer *lines)
{
    sw_place place = sw_text_place(text, start);
    sw_paths plain = {0}; /* the same whatever way has led to the file */
    sw_paths_add(&plain, text->path);
    sw_buffer_format(lines, "%s:%u:%u: note: %s%s%s [fix]\n", plain.items[0], place.line, place.column + 1,
                     what, reason == NULL ? "" : not_done, reason == NULL ? "" : reason);
    sw_paths_free(&plain);
}

static void tell_fix(const pass *p, const sw_fix *fix, const char *reason, sw_buffer *lines)
{
    tell(p->move->mains[0]->files[fix->file].text, fix->start, fix->says, reason, lines);
}

/* Keeps a proved patch with `count` fixes in it. */
static bool accept(pass *p, const sw_patch *patch, size_t count)
{
    p->fixing->count += count;
    p->changed = true;
    return sw_changed_files_keep(&p->fixing->files, patch, p->error);
}

/* ---- words and bar checks --- */

static bool overlaps(const sw_fix *a, const sw_fix *b)
{
    for (size_t i = 0; i < a->count; i++) {
        for (size_t k = 0; k < b->count; k++) {
            if (a->file == b->file && a->edits[i].start <= b->edits[k].end &&
                b->edits[k].start <= a->edits[i].end) {
                return true;
            }
        }
    }
    return false;
}

/* Those of `list` as one patch, proved. */
static bool make_texts(const pass *p, const sw_fix *const *list, size_t count, sw_patch *patch, char **error)
{
    *patch = (sw_patch){0};
    for (size_t i = 0; i < count; i++) {
        for (size_t k = 0; k < list[i]->count; k++) {
            const sw_fix_edit *edit = &list[i]->edits[k];
            sw_patch_add(patch, p->move->mains[0]->files[list[i]->file].text, edit->start, edit->end,
                         sw_slice_of(edit->text));
        }
    }
    bool good =
        sw_patch_finish(patch, error) && sw_prove_texts(p->options->film, p->move->mains, p->move->main_count,
                                                        patch, &p->options->read, error);
    if (!good) {
        sw_patch_free(patch);
    }
    return good;
}

/* The fixes that can be made each by itself; the others are told. */
static size_t sift_texts(pass *p, const sw_fix **list, size_t count)
{
    size_t kept = 0;
    for (size_t i = 0; i < count; i++) {
        char *reason = NULL;
        sw_patch patch;
        if (make_texts(p, &list[i], 1, &patch, &reason)) {
            sw_patch_free(&patch);
            list[kept++] = list[i];
        } else {
            tell_fix(p, list[i], reason, &p->refused);
            free(reason);
        }
    }
    return kept;
}

static bool fix_texts(pass *p)
{
    const sw_fix **list = sw_alloc((p->fixes->count + 1) * sizeof *list);
    size_t count = 0;
    for (size_t i = 0; i < p->fixes->count; i++) {
        bool wanted = is_wanted(p, &p->fixes->items[i], SW_FIX_TEXT);
        for (size_t k = 0; k < count && wanted; k++) {
            wanted = !overlaps(list[k], &p->fixes->items[i]); /* its turn comes in the next pass */
        }
        if (wanted) {
            list[count++] = &p->fixes->items[i];
        }
    }
    sw_patch patch = {0};
    char *reason = NULL;
    bool made = count > 0 && make_texts(p, list, count, &patch, &reason);
    if (!made && count > 0) {
        free(reason);
        count = sift_texts(p, list, count);
        made = count > 0 && make_texts(p, list, count, &patch, &reason);
        if (!made && count > 1) { /* each can be made, but not all: the rest in the next pass */
            free(reason);
            count = 1;
            made = make_texts(p, list, count, &patch, &reason);
        }
    }
    bool good = true;
    if (made) {
        for (size_t i = 0; i < count; i++) {
            tell_fix(p, list[i], NULL, &p->fixing->told);
        }
        good = accept(p, &patch, count);
        sw_patch_free(&patch);
    }
    free(list);
    return good;
}

/* ---- changes of scores --- */

/* Without the options that a transformation has in such a case and check has not. */
static void cut_advice(char *message)
{
    char *advice = strstr(message, "; say whether");
    if (advice != NULL) {
        *advice = '\0';
    }
}

/* What a move has made, and what it could not. */
static bool take(pass *p, const sw_move *move, size_t count)
{
    for (size_t i = 0; i < move->findings.count; i++) {
        const sw_finding *finding = &move->findings.items[i];
        cut_advice(finding->message);
        tell(move->mains[0]->files[finding->file].text, finding->start, finding->message, NULL, &p->refused);
    }
    sw_buffer_append(&p->refused, sw_buffer_slice(&move->notes));
    if (move->patch.count == 0) {
        return true;
    }
    sw_buffer_append(&p->fixing->told, sw_buffer_slice(&move->why));
    return accept(p, &move->patch, count);
}

static size_t count_lines(const sw_buffer *text)
{
    size_t lines = 0;
    for (size_t i = 0; i < text->length; i++) {
        lines += text->data[i] == '\n';
    }
    return lines;
}

/* The changes of one score; as many as prove out together. */
static bool fix_score(pass *p, uint32_t score)
{
    sw_choices choices = {.move = "fix"};
    for (size_t i = 0; i < p->fixes->count; i++) {
        const sw_fix *fix = &p->fixes->items[i];
        if (is_wanted(p, fix, SW_FIX_CHANGES) && fix->score == score) {
            sw_choices_begin(&choices, fix->changes[0].event, "%s", fix->says);
            for (size_t c = 0; c < fix->count; c++) {
                sw_choices_add(&choices, fix->changes[c]);
            }
        }
    }
    bool good = true;
    if (choices.count > 0) {
        sw_edit_request request = {.reading = p->move->mains[0],
                                   .score = &p->move->mains[0]->scores[score],
                                   .elsewhere = SW_ELSEWHERE_REFUSE,
                                   .mains = p->move->mains,
                                   .main_count = p->move->main_count,
                                   .options = &p->options->read};
        sw_choices_make(p->move, &choices, &request);
        good = take(p, p->move, count_lines(&p->move->why));
        sw_patch_free(&p->move->patch);
        sw_findings_free(&p->move->findings);
        sw_buffer_clear(&p->move->notes);
        sw_buffer_clear(&p->move->why);
    }
    sw_choices_free(&choices);
    return good;
}

/* Shorter notes before change-overs. */
static bool fix_courtesy(pass *p, const char *path)
{
    sw_written_note *notes = sw_alloc((p->fixes->count + 1) * sizeof *notes);
    size_t count = 0;
    for (size_t i = 0; i < p->fixes->count; i++) {
        const sw_fix *fix = &p->fixes->items[i];
        if (is_wanted(p, fix, SW_FIX_COURTESY)) {
            notes[count++] = (sw_written_note){p->move->mains[0]->files[fix->file].text->path, fix->start};
        }
    }
    bool good = true;
    if (count > 0) {
        sw_courtesy_options options = {.value = sw_rational_zero(), .at = notes, .at_count = count};
        sw_move *move = sw_move_courtesy(path, &options, &p->options->read, p->error);
        good = move != NULL && take(p, move, count_lines(&move->why));
        sw_move_free(move);
    }
    free(notes);
    return good;
}

static bool has_wanted(const pass *p)
{
    for (size_t i = 0; i < p->fixes->count; i++) {
        if (is_wanted(p, &p->fixes->items[i], p->fixes->items[i].kind)) {
            return true;
        }
    }
    return false;
}

/* Adds those of the checked main files that include a file which the fixes may change: it has music, or is
 * named. What else a whole film includes in all its cues stays as it is. */
static void add_checked(pass *p, const sw_paths *mains)
{
    const sw_reading *reading = p->move->mains[0];
    bool *concerned = sw_files_with_music(reading);
    for (size_t i = 0; i < p->fixes->count; i++) {
        const sw_fix *fix = &p->fixes->items[i];
        concerned[fix->file] = concerned[fix->file] || is_wanted(p, fix, fix->kind);
    }
    sw_paths files = {0};
    for (size_t i = 0; i < reading->file_count; i++) {
        if (i == 0 || concerned[i]) {
            sw_paths_add(&files, reading->files[i].text->path);
        }
    }
    sw_paths sharing = sw_main_files_among(mains, &p->options->read, &files);
    sw_move_add_sharing(p->move, &sharing, &p->options->read);
    sw_paths_free(&sharing);
    sw_paths_free(&files);
    free(concerned);
}

/* One kind after another; behind the first that has changed something the file is to be read anew. */
static bool run(pass *p, const char *path, const sw_paths *mains)
{
    if (!has_wanted(p)) {
        return true;
    }
    if (!sw_move_read_linked(p->move, path, &p->options->read, p->error)) {
        return false;
    }
    add_checked(p, mains);
    bool good = fix_texts(p);
    for (uint32_t s = 0; good && !p->changed && s < p->move->mains[0]->score_count; s++) {
        good = fix_score(p, s);
    }
    return good && (p->changed || fix_courtesy(p, path));
}

/* Adds the lines that are not there yet, whatever the reasons: what is in two scores is told once. */
static void add_new_lines(sw_buffer *told, const sw_buffer *lines)
{
    const char *end = lines->length == 0 ? NULL : lines->data + lines->length;
    for (const char *at = lines->data; end != NULL && at < end;) {
        size_t length = (size_t)((const char *)memchr(at, '\n', (size_t)(end - at)) + 1 - at);
        const char *reason = memmem(at, length, not_done, strlen(not_done));
        size_t key = reason == NULL ? length : (size_t)(reason - at);
        if (told->length == 0 || memmem(told->data, told->length, at, key) == NULL) {
            sw_buffer_append(told, (sw_slice){at, length});
        }
        at += length;
    }
}

/* Where a byte of a file stood before the passes; SW_NO_INDEX for what they have written. */
static uint32_t stood_at(const sw_fixing *fixing, const char *path, uint32_t start)
{
    for (size_t i = 0; i < fixing->files.count; i++) {
        const sw_changed_file *file = &fixing->files.items[i];
        if (sw_same_path(file->before->path, path)) {
            return file->from[start];
        }
    }
    return start;
}

static bool is_accepted(const sw_fixing *fixing, const sw_check_result *found, const sw_checked *item)
{
    const sw_check_result *accepted = fixing->accepted;
    const char *path = found->files[item->finding.file].real_path;
    uint32_t start = stood_at(fixing, path, item->finding.start);
    for (size_t i = accepted->count; i < accepted->count + accepted->accepted; i++) {
        const sw_finding *other = &accepted->items[i].finding;
        if (other->start == start && strcmp(other->rule, item->finding.rule) == 0 &&
            strcmp(accepted->files[other->file].real_path, path) == 0) {
            return true;
        }
    }
    return false;
}

/* What is accepted is not mended, from whichever score it is seen. */
static void leave_accepted(const sw_fixing *fixing, const sw_check_result *found, sw_fixes *fixes)
{
    for (size_t i = 0; fixing->accepted != NULL && i < found->count; i++) {
        const sw_checked *item = &found->items[i];
        if (item->finding.fixable != SW_NOT_FIXABLE && is_accepted(fixing, found, item)) {
            fixes->items[item->finding.fix].wanted = false;
        }
    }
}

bool sw_fixing_pass(sw_fixing *fixing, const char *path, const sw_check_options *options,
                    const sw_paths *mains, bool *changed, char **error)
{
    sw_check_options with = *options;
    const sw_text **overlays = sw_changed_files_overlays(&fixing->files);
    with.read.overlays = overlays;
    with.read.overlay_count = fixing->files.count;
    fixing->shelf = fixing->shelf == NULL ? sw_shelf_new() : fixing->shelf;
    with.read.shelf = fixing->shelf;
    *changed = false;
    char *unread = NULL;
    sw_reading *reading = sw_read(path, &with.read, &unread);
    bool good = true;
    if (reading == NULL) {
        sw_buffer line = {0};
        sw_buffer_format(&line, "%s\n", unread);
        add_new_lines(&fixing->told, &line);
        sw_buffer_free(&line);
        free(unread);
    } else {
        sw_check_result result = {0};
        sw_fixes fixes = {0};
        sw_check_add(reading, &with, &result, &fixes);
        leave_accepted(fixing, &result, &fixes);
        sw_check_result_free(&result);
        pass p = {.fixing = fixing,
                  .options = &with,
                  .move = sw_alloc_zero(1, sizeof *p.move),
                  .fixes = &fixes,
                  .error = error};
        sw_move_add_main(p.move, reading);
        good = run(&p, path, mains);
        *changed = p.changed;
        if (!p.changed) { /* what is refused now may go in the next pass */
            add_new_lines(&fixing->told, &p.refused);
        }
        sw_buffer_free(&p.refused);
        sw_move_free(p.move);
        sw_fixes_free(&fixes);
    }
    if (*changed) { /* before the texts that it holds */
        sw_shelf_free(fixing->shelf);
        fixing->shelf = NULL;
    }
    free(overlays);
    sw_changed_files_sweep(&fixing->files);
    return good;
}
