/* The proof of an edit: what is heard before, with the draft's cells in place of the touched items, must be
 * what is heard when the result is read.
 *
 * Both sides become rows, one a chord or rest, staff by staff. Outside of the touched items rows must agree
 * in everything: onset, length, pitches, marks. Where the draft speaks, a stretch may be written as one value
 * or as several tied ones, a rest in any values: there, neighbours that sound as one are joined on both sides
 * first. Bars, staves, settings and errors must agree as well. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "write/bars.h"
#include "write/edit_rows.h"

/* ---- comparing ---- */

static void refuse(const sw_edit_proof *p, const sw_reading *reading, const sw_score *score, uint32_t staff,
                   const sw_row *r, const char *what)
{
    char label[32];
    char length[SW_RATIONAL_TEXT];
    char beat[SW_RATIONAL_TEXT];
    uint32_t bar = sw_score_bar_at(score, r->onset);
    sw_buffer text = {0};
    sw_buffer_format(&text,
                     "the edit is refused: in %s, bar %d, beat %s, \"%s\": ", p->before->files[0].text->path,
                     bar == SW_NO_INDEX ? 0 : score->bars[bar].number,
                     sw_rational_print(sw_score_beat(score, r->onset), beat),
                     sw_staff_label(reading, score, staff, label));
    sw_buffer_string(&text, r->kind == 'n' ? "a note" : r->kind == 'r' ? "a rest" : "a skip");
    for (size_t n = 0; n < r->note_count; n++) {
        char pitch[SW_PITCH_TEXT];
        sw_buffer_format(&text, " %s",
                         r->drums[n][0] != '\0' ? r->drums[n] : sw_pitch_print(r->pitches[n], pitch));
    }
    sw_buffer_format(&text, " of %s", sw_rational_print(r->length, length));
    for (size_t i = 0; i < r->mark_count; i++) {
        sw_buffer_format(&text, " %.*s", (int)r->marks[i].length, r->marks[i].data);
    }
    sw_buffer_format(&text, " %s; nothing is written", what);
    *p->error = text.data;
}

/* The item of the draft that decides about an event; NULL when none does. */
static const sw_draft_item *item_at(const sw_edit_proof *p, const sw_score *score, uint32_t event)
{
    uint32_t number = p->item[score->events[event].chord];
    const sw_draft_item *item = number == 0 ? NULL : p->draft->items[number - 1];
    return item != NULL && sw_draft_changes_at(p->draft, item, p->before, score, event) ? item : NULL;
}

/* Whether some music of the reading before stands in text that a change takes away. */
static bool is_dropped(const sw_edit_proof *p, uint32_t music)
{
    const sw_music *m = &p->before->music[music];
    for (size_t i = 0; i < p->draft->drop_count; i++) {
        const sw_draft_text *drop = &p->draft->drops[i];
        if (drop->start <= m->start && m->start < drop->end &&
            sw_text_same_file(drop->file, p->before->files[m->file].text)) {
            return true;
        }
    }
    return false;
}

static bool is_touched(const sw_edit_proof *p, const sw_score *score, sw_staff_events events)
{
    for (uint32_t e = events.first; e < events.end; e++) {
        if (item_at(p, score, e) != NULL) {
            return true;
        }
    }
    return false;
}

static void expect(const sw_edit_proof *p, const sw_score *score, sw_staff_events events, sw_rows *all)
{
    for (uint32_t e = events.first; e < events.end; e = sw_voice_chord_end(score, e)) {
        const sw_draft_item *item = item_at(p, score, e);
        if (is_dropped(p, score->events[e].chord)) {
            continue;
        }
        if (item == NULL) {
            sw_row r = sw_row_read(p, p->before, score, e);
            sw_rows_add(all, &r);
        } else {
            sw_rows_add_cells(p, score, e, item, all);
            for (size_t v = 0; v < p->draft->voice_count; v++) {
                if (p->draft->voices[v].item == item) {
                    sw_rows_add_voice(p, score, e, &p->draft->voices[v], all);
                }
            }
        }
    }
}

typedef struct span {
    sw_rational from;
    sw_rational to;
} span;

static int compare_spans(const void *a, const void *b)
{
    return sw_rational_compare(((const span *)a)->from, ((const span *)b)->from);
}

/* The stretches of a staff where the draft speaks, in order and joined. */
static size_t find_spans(const sw_edit_proof *p, const sw_rows *expected, span **spans)
{
    size_t count = 0;
    *spans = sw_arena_alloc(p->arena, (expected->count + 1) * sizeof **spans);
    for (size_t i = 0; i < expected->count; i++) {
        const sw_row *e = &expected->list[i];
        if (e->touched) {
            (*spans)[count++] = (span){e->onset, sw_rational_add(e->onset, e->length)};
        }
    }
    if (count > 1) {
        qsort(*spans, count, sizeof **spans, compare_spans);
    }
    size_t kept = 0;
    for (size_t i = 0; i < count; i++) {
        if (kept > 0 && sw_rational_compare((*spans)[i].from, (*spans)[kept - 1].to) <= 0) {
            (*spans)[kept - 1].to = sw_rational_max((*spans)[kept - 1].to, (*spans)[i].to);
        } else {
            (*spans)[kept++] = (*spans)[i];
        }
    }
    return kept;
}

/* On both sides all rows that begin in such a stretch may be joined, whichever voice they are in. */
static void mark_touched(sw_rows *all, const span *spans, size_t count)
{
    for (size_t i = 0; i < all->count; i++) {
        sw_row *r = &all->list[i];
        size_t low = 0;
        size_t high = count;
        while (low < high) { /* the last stretch that begins no later */
            size_t middle = low + (high - low) / 2;
            if (sw_rational_compare(spans[middle].from, r->onset) <= 0) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        r->touched = low > 0 && sw_rational_compare(r->onset, spans[low - 1].to) < 0;
    }
}

static bool compare_staff(const sw_edit_proof *p, const sw_score *before, const sw_score *after,
                          uint32_t staff, sw_staff_events old, sw_staff_events new)
{
    sw_rows expected = {0};
    sw_rows observed = {0};
    expect(p, before, old, &expected);
    for (uint32_t e = new.first; e < new.end; e = sw_voice_chord_end(after, e)) {
        sw_row r = sw_row_read(p, p->after, after, e);
        sw_rows_add(&observed, &r);
    }
    sw_rows_open(p, &expected, true);
    sw_rows_open(p, &observed, false);
    span *spans;
    size_t span_count = find_spans(p, &expected, &spans);
    mark_touched(&expected, spans, span_count);
    mark_touched(&observed, spans, span_count);
    sw_rows_join(p, &expected);
    sw_rows_join(p, &observed);
    size_t i = 0;
    while (i < expected.count && i < observed.count &&
           sw_row_compare(&expected.list[i], &observed.list[i]) == 0) {
        i++;
    }
    bool same = i == expected.count && i == observed.count;
    if (!same) {
        bool lost = i < expected.count &&
                    (i >= observed.count || sw_row_compare(&expected.list[i], &observed.list[i]) < 0);
        refuse(p, lost ? p->before : p->after, lost ? before : after, staff,
               lost ? &expected.list[i] : &observed.list[i],
               lost ? "is wanted, but would not be heard" : "would be heard, but nobody asked for it");
    }
    free(expected.list);
    free(observed.list);
    return same;
}

static bool same_marks(const sw_edit_proof *p, uint32_t old, uint32_t new)
{
    uint32_t a = p->before->music[old].first;
    uint32_t b = p->after->music[new].first;
    while (a != SW_NO_INDEX && b != SW_NO_INDEX) {
        bool mark = p->before->music[a].kind == SW_MUSIC_MARK;
        if (mark != (p->after->music[b].kind == SW_MUSIC_MARK) ||
            (mark && !sw_slice_equal(sw_music_slice(p->before, a), sw_music_slice(p->after, b)))) {
            return false;
        }
        a = p->before->music[a].next;
        b = p->after->music[b].next;
    }
    return a == b;
}

/* A staff that no change touches: event by event. */
static bool compare_untouched(const sw_edit_proof *p, const sw_score *before, const sw_score *after,
                              uint32_t staff, sw_staff_events old, sw_staff_events new)
{
    uint32_t count = old.end - old.first;
    bool same = count == new.end - new.first;
    for (uint32_t i = 0; i < count && same; i++) {
        const sw_event *a = &before->events[old.first + i];
        const sw_event *b = &after->events[new.first + i];
        same = a->kind == b->kind && sw_rational_equal(a->onset, b->onset) &&
               sw_rational_equal(a->duration, b->duration) && a->grace_num == b->grace_num &&
               a->grace_den == b->grace_den &&
               (a->kind != SW_EVENT_NOTE || sw_pitch_equal(a->pitch, b->pitch)) &&
               same_marks(p, a->chord, b->chord) &&
               (a->chord == a->music || same_marks(p, a->music, b->music));
    }
    return same || compare_staff(p, before, after, staff, old, new);
}

bool sw_prove_refuse(const sw_edit_proof *p, const char *what)
{
    sw_buffer text = {0};
    sw_buffer_format(&text, "the edit is refused: in %s, %s; nothing is written",
                     p->before->files[0].text->path, what);
    *p->error = text.data;
    return false;
}

bool sw_prove_same_name(const sw_edit_proof *p, uint32_t old, uint32_t new)
{
    return strcmp(sw_reading_name(p->before, old), sw_reading_name(p->after, new)) == 0;
}

static bool is_declared_staff(const sw_edit_proof *p, const sw_score *after, uint32_t staff)
{
    for (size_t i = 0; i < p->draft->staff_count; i++) {
        if (strcmp(sw_reading_name(p->after, after->staves[staff].id), p->draft->staves[i].name) == 0) {
            return true;
        }
    }
    return false;
}

/* The staff of the result for each staff before; NULL when they are not the same, declared ones aside. */
static uint32_t *match_staves(const sw_edit_proof *p, const sw_score *before, const sw_score *after)
{
    uint32_t *match = sw_arena_alloc(p->arena, (before->staff_count + 1) * sizeof *match);
    uint32_t count = 0;
    bool same = true;
    for (uint32_t s = 0; s < after->staff_count && same; s++) {
        if (is_declared_staff(p, after, s)) {
            continue;
        }
        same = count < before->staff_count;
        const sw_staff *a = same ? &before->staves[count] : NULL;
        const sw_staff *b = &after->staves[s];
        same = same && sw_prove_same_name(p, a->type, b->type) && sw_prove_same_name(p, a->id, b->id) &&
               sw_prove_same_name(p, a->instrument, b->instrument);
        match[count++] = s;
    }
    return same && count == before->staff_count ? match : NULL;
}

/* A declared staff holds rests and nothing else, to the end. */
static bool is_silent(const sw_edit_proof *p, const sw_score *score, uint32_t staff, sw_staff_events events)
{
    sw_rational at = sw_rational_zero();
    for (uint32_t e = events.first; e < events.end; e++) {
        const sw_event *event = &score->events[e];
        if (event->kind != SW_EVENT_FULL_REST || !sw_rational_equal(event->onset, at)) {
            sw_row r = sw_row_read(p, p->after, score, e);
            refuse(p, p->after, score, staff, &r, "stands in the new staff, which should be silent");
            return false;
        }
        at = sw_event_end(event);
    }
    return sw_rational_equal(at, score->length) ||
           sw_prove_refuse(p, "the new staff would not be as long as the others");
}

static bool is_breath_command(const sw_reading *reading, const sw_setting *setting)
{
    return reading->music[setting->music].kind == SW_MUSIC_SETTING &&
           sw_mark_is_breath(sw_music_slice(reading, setting->music));
}

/* Whether the draft puts a \breathe behind the chord of an event. */
static bool gets_breath(const sw_edit_proof *p, const sw_score *before, uint32_t event)
{
    const sw_draft_item *item = item_at(p, before, event);
    for (size_t c = 0; item != NULL && c < item->cell_count; c++) {
        for (size_t i = 0; i < item->cells[c].mark_count; i++) {
            if (sw_mark_is_breath(item->cells[c].marks[i].text)) {
                return true;
            }
        }
    }
    return false;
}

/* Whether a \breathe of the result stands behind a note that shall have one. */
static bool is_declared_breath(const sw_edit_proof *p, const sw_score *before, const sw_setting *setting,
                               const uint32_t *match)
{
    for (uint32_t e = 0; e < before->event_count; e++) {
        const sw_event *event = &before->events[e];
        if (setting->staff == match[before->voices[event->voice].staff] &&
            sw_rational_equal(sw_prove_moved(p, sw_event_end(event)), setting->onset) &&
            gets_breath(p, before, e)) {
            return true;
        }
    }
    return false;
}

/* Every \breathe that was wanted must be there. */
static bool compare_breaths(const sw_edit_proof *p, const sw_score *before, const sw_score *after,
                            const uint32_t *match)
{
    for (uint32_t e = 0; e < before->event_count && before == p->draft->score; e++) {
        if (p->draft->wanted[e] == 0 || !gets_breath(p, before, e)) {
            continue;
        }
        bool there = false;
        for (size_t i = 0; i < after->setting_count && !there; i++) {
            const sw_setting *setting = &after->settings[i];
            there = is_breath_command(p->after, setting) &&
                    setting->staff == match[before->voices[before->events[e].voice].staff] &&
                    sw_rational_equal(setting->onset, sw_prove_moved(p, sw_event_end(&before->events[e])));
        }
        if (!there) {
            return sw_prove_refuse(p, "a breath mark would not stand where it should");
        }
    }
    return true;
}

/* Whether a command of the result is one that a declared change brings along. */
static bool is_declared_setting(const sw_edit_proof *p, const sw_score *before, const sw_score *after,
                                const sw_setting *setting, const uint32_t *match)
{
    if (setting->staff != SW_NO_INDEX && is_declared_staff(p, after, setting->staff)) {
        return true;
    }
    if (p->after->music[setting->music].kind == SW_MUSIC_BAR_CHECK) {
        return sw_rational_is_zero(setting->position); /* between bars that are written anew */
    }
    if (is_breath_command(p->after, setting)) {
        return is_declared_breath(p, before, setting, match);
    }
    sw_slice text = sw_music_slice(p->after, setting->music);
    return p->draft->voice_count > 0 && (sw_slice_is(text, "\\voiceOne") || sw_slice_is(text, "\\voiceTwo") ||
                                         sw_slice_is(text, "\\oneVoice"));
}

static bool same_setting(const sw_edit_proof *p, const sw_setting *a, const sw_setting *b,
                         const uint32_t *match)
{
    sw_music_kind kind = (sw_music_kind)p->before->music[a->music].kind;
    uint32_t staff = a->staff == SW_NO_INDEX ? SW_NO_INDEX : match[a->staff];
    return staff == b->staff && kind == (sw_music_kind)p->after->music[b->music].kind &&
           (kind == SW_MUSIC_ALTERNATIVES || /* their text holds the notes */
            kind == SW_MUSIC_OCTAVE_CHECK || /* these follow their notes */
            sw_slice_equal(sw_music_slice(p->before, a->music), sw_music_slice(p->after, b->music)));
}

/* A command at the bar line where bars come in stays before them or moves behind them: finds it in the result
 * among those at that moment, and takes it. */
static bool take_at_bar_line(const sw_edit_proof *p, const sw_score *after, const sw_setting *a,
                             const uint32_t *match, sw_rational onset, uint8_t *taken)
{
    size_t low = 0;
    size_t high = after->setting_count;
    while (low < high) { /* the first at the moment */
        size_t middle = low + (high - low) / 2;
        if (sw_rational_compare(after->settings[middle].onset, onset) < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    for (; low < after->setting_count && sw_rational_equal(after->settings[low].onset, onset); low++) {
        if (taken[low] == 0 && same_setting(p, a, &after->settings[low], match)) {
            taken[low] = 1;
            return true;
        }
    }
    return false;
}

/* Whether a moment is a bar line where bars come in or go, or lies between them. */
static bool stands_at_bar_line(const sw_edit_proof *p, sw_rational onset)
{
    return p->bars != NULL && sw_rational_compare(onset, p->bars->moment) >= 0 &&
           sw_rational_compare(onset, p->bars->until) <= 0;
}

/* Whether a command stands in voices side by side that go as a whole, and meant only them. */
static bool stands_in_voices_that_go(const sw_edit_proof *p, uint32_t music)
{
    if (p->before != p->draft->reading || sw_draft_is_gone(p->draft, music)) {
        return false;
    }
    bool voices = false;
    for (uint32_t m = music; m != SW_NO_INDEX; m = p->draft->parent[m]) {
        voices = voices || p->before->music[m].kind == SW_MUSIC_SIMULTANEOUS;
        if (sw_draft_is_gone(p->draft, m)) {
            return voices;
        }
    }
    return false;
}

/* Whether a command may go with its bar: bar checks and bar lines, what another one behind it makes void, and
 * what only voices meant that go. */
static bool may_go(const sw_edit_proof *p, const sw_score *score, size_t setting)
{
    const sw_setting *a = &score->settings[setting];
    sw_music_kind kind = (sw_music_kind)p->before->music[a->music].kind;
    sw_slice text = sw_music_slice(p->before, a->music);
    if (kind == SW_MUSIC_BAR_CHECK || sw_slice_is(text, "--") || sw_slice_is(text, "__")) {
        return true;
    }
    if (!sw_prove_goes(p, a->onset)) {
        return false;
    }
    if (sw_bar_line_command(text) || sw_slice_starts(text, "\\once")) {
        return true;
    }
    bool lasting =
        kind == SW_MUSIC_CLEF || kind == SW_MUSIC_KEY || kind == SW_MUSIC_TIME || kind == SW_MUSIC_TEMPO;
    if (!lasting && stands_in_voices_that_go(p, a->music)) {
        return true;
    }
    for (size_t i = setting + 1; lasting && i < score->setting_count; i++) {
        const sw_setting *b = &score->settings[i];
        if (sw_rational_compare(b->onset, p->bars->until) > 0) {
            break;
        }
        if (b->staff == a->staff && (sw_music_kind)p->before->music[b->music].kind == kind) {
            return true;
        }
    }
    return false;
}

/* The first command that is lost, added or moved. */
static bool refuse_setting(const sw_edit_proof *p, const sw_reading *reading, const sw_setting *setting)
{
    sw_slice text = sw_music_slice(reading, setting->music);
    const sw_music *m = &reading->music[setting->music];
    sw_place place = sw_text_place(reading->files[m->file].text, m->start);
    const char *what = sw_arena_format(
        p->arena, "commands between the notes would be lost, added or moved: %.*s (%s, line %u)",
        text.length > 40 ? 40 : (int)text.length, text.data, reading->files[m->file].text->path, place.line);
    return sw_prove_refuse(p, what);
}

/* Commands around bars that come in or go: first those that stay with the music behind them, as one of the
 * same words among the bars must not be taken for one of them. */
static bool compare_at_bar_line(const sw_edit_proof *p, const sw_score *before, const sw_score *after,
                                const uint32_t *match, uint8_t *taken)
{
    for (int pass = 0; pass < 2; pass++) {
        for (size_t i = before->setting_count;
             i-- > 0;) { /* the last of several clefs is the one that stays */
            const sw_setting *a = &before->settings[i];
            if (stands_at_bar_line(p, a->onset) && sw_prove_goes(p, a->onset) == (pass == 1) &&
                !take_at_bar_line(p, after, a, match, p->bars->moment, taken) &&
                !take_at_bar_line(p, after, a, match, sw_prove_moved(p, a->onset), taken) &&
                !may_go(p, before, i)) {
                return refuse_setting(p, p->before, a);
            }
        }
    }
    return true;
}

static bool compare_settings(const sw_edit_proof *p, const sw_score *before, const sw_score *after,
                             const uint32_t *match)
{
    uint8_t *taken = sw_arena_alloc(p->arena, after->setting_count + 1);
    size_t k = 0;
    if (!compare_at_bar_line(p, before, after, match, taken)) {
        return false;
    }
    for (size_t i = 0; i < before->setting_count; i++) {
        const sw_setting *a = &before->settings[i];
        sw_rational onset = sw_prove_moved(p, a->onset);
        if (is_dropped(p, a->music)) {
            continue;
        }
        if (stands_at_bar_line(p, a->onset)) {
            continue;
        }
        while (k < after->setting_count &&
               (taken[k] != 0 || !sw_rational_equal(onset, after->settings[k].onset) ||
                !same_setting(p, a, &after->settings[k], match))) {
            if (taken[k] == 0 && !is_declared_setting(p, before, after, &after->settings[k], match)) {
                return refuse_setting(p, p->after, &after->settings[k]);
            }
            k++;
        }
        if (k == after->setting_count) {
            return refuse_setting(p, p->before, a);
        }
        k++;
    }
    for (; k < after->setting_count; k++) {
        if (taken[k] == 0 && !is_declared_setting(p, before, after, &after->settings[k], match)) {
            return refuse_setting(p, p->after, &after->settings[k]);
        }
    }
    return true;
}

static bool compare_score(const sw_edit_proof *p, const sw_score *before, const sw_score *after)
{
    const uint32_t *match = match_staves(p, before, after);
    if (match == NULL) {
        return sw_prove_refuse(p, "the staves would not be the same");
    }
    if (!sw_prove_bars(p, before, after)) {
        return false;
    }
    for (uint32_t s = 0; s < before->staff_count; s++) {
        sw_staff_events old = sw_score_staff_events(before, s);
        sw_staff_events new = sw_score_staff_events(after, match[s]);
        bool same = p->bars != NULL || is_touched(p, before, old)
                        ? compare_staff(p, before, after, s, old, new)
                        : compare_untouched(p, before, after, s, old, new);
        if (!same) {
            return false;
        }
    }
    for (uint32_t s = 0; s < after->staff_count; s++) {
        if (is_declared_staff(p, after, s) && !is_silent(p, after, s, sw_score_staff_events(after, s))) {
            return false;
        }
    }
    return compare_settings(p, before, after, match) && compare_breaths(p, before, after, match) &&
           sw_prove_words(p, before, after);
}

/* By score of a main file: whether bars come in there; NULL when none do. */
static const uint8_t *affected_scores(const sw_draft *draft, const sw_reading *reading)
{
    for (size_t i = 0; draft->bars.affected != NULL && i < draft->request->main_count; i++) {
        if (draft->request->mains[i] == reading) {
            return draft->bars.affected[i];
        }
    }
    return NULL;
}

/* What is proved, and where words are told that could not be carried along. */
typedef struct task {
    const sw_draft *draft;
    sw_word_mend *mend;
} task;

static bool prove_main(const void *what, const sw_reading *before, const sw_reading *after, char **error)
{
    const task *t = what;
    const sw_draft *draft = t->draft;
    for (size_t m = 0; m < draft->request->main_count; m++) {
        if (draft->companions != NULL && draft->companions[m] != NULL && draft->request->mains[m] == before) {
            draft = draft->companions[m]; /* it speaks for this file */
            break;
        }
    }
    sw_edit_proof p = {draft,          before,  after, sw_draft_found(draft, before),
                       sw_arena_new(), t->mend, error, NULL};
    const uint8_t *affected = affected_scores(draft, before);
    bool same = true;
    if (sw_findings_worse(&before->findings, &after->findings)) {
        same = sw_prove_refuse(&p, "the result would have an error, or something that is not known");
    } else if (after->score_count != before->score_count) {
        same = sw_prove_refuse(&p, "the number of scores would change");
    }
    for (size_t s = 0; s < before->score_count && same; s++) {
        p.bars = affected != NULL && affected[s] != 0 ? &draft->bars : NULL;
        same = compare_score(&p, &before->scores[s], &after->scores[s]);
    }
    sw_arena_free(p.arena);
    return same;
}

bool sw_draft_prove(const sw_draft *draft, const sw_patch *patch, sw_word_mend *mend, char **error)
{
    *mend = (sw_word_mend){0};
    const sw_edit_request *request = draft->request;
    task t = {draft, mend};
    return sw_patch_prove(patch, request->mains, request->main_count, request->options, prove_main, &t,
                          error);
}
