/* Where in each line of a score a bar line stands. */
#include <stdlib.h>
#include <string.h>

#include "write/bars.h"
#include "write/division.h"

static const sw_music *at(const sw_bar_walk *w, uint32_t music)
{
    return &w->reading->music[music];
}

bool sw_bar_fail(sw_bar_walk *w, uint32_t music, const char *what)
{
    if (w->error == NULL) {
        const sw_music *m = at(w, music);
        const sw_text *text = w->reading->files[m->file].text;
        sw_place place = sw_text_place(text, m->start);
        w->error =
            sw_arena_format(w->draft->arena, "%s:%u:%u: %s", text->path, place.line, place.column + 1, what);
    }
    return false;
}

void sw_bar_edit_add(sw_bar_walk *w, uint32_t file, uint32_t start, uint32_t end, sw_slice put)
{
    w->edits = sw_grow(w->edits, w->edit_count, &w->edit_capacity, sizeof *w->edits);
    sw_slice own = sw_slice_of(sw_arena_copy(w->draft->arena, put));
    w->edits[w->edit_count++] = (sw_bar_edit){w->reading->files[file].text, start, end, own};
}

void sw_bar_walk_free(sw_bar_walk *w)
{
    free(w->heard);
    free(w->lengths);
    free(w->edits);
    free(w->anchors);
    free(w->gaps);
    free(w->values);
}

/* ---- what the score plays ---- */

/* A node and all around it, up to the use of the variable that holds it. */
static void mark_heard(sw_bar_walk *w, uint32_t music)
{
    while (music != SW_NO_INDEX && w->heard[music] == 0) {
        w->heard[music] = 1;
        music = w->parent[music];
        if (music != SW_NO_INDEX && at(w, music)->kind == SW_MUSIC_REFERENCE) {
            break; /* perhaps another use of it: the frames say which */
        }
    }
}

static void find_heard(sw_bar_walk *w)
{
    const sw_score *score = w->score;
    for (size_t f = 0; f < score->frame_count; f++) {
        mark_heard(w, score->frames[f].music);
    }
    for (size_t e = 0; e < score->event_count; e++) {
        mark_heard(w, score->events[e].chord);
    }
    for (size_t s = 0; s < score->setting_count; s++) {
        mark_heard(w, score->settings[s].music);
    }
    for (size_t s = 0; s < score->syllable_count; s++) {
        mark_heard(w, score->syllables[s].music);
    }
}

/* The music of the whole score; SW_NO_INDEX when it plays nothing. */
static uint32_t find_root(const sw_bar_walk *w)
{
    const sw_score *score = w->score;
    if (score->event_count == 0) {
        return SW_NO_INDEX;
    }
    uint32_t music = score->events[0].chord;
    for (uint32_t f = score->events[0].frame; f != SW_NO_INDEX; f = score->frames[f].parent) {
        music = score->frames[f].music;
    }
    while (w->parent[music] != SW_NO_INDEX) {
        music = w->parent[music];
    }
    return music;
}

/* ---- what holds music ---- */

/* Its children follow one another. */
static bool is_sequence(const sw_music *m)
{
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_SEQUENCE:
    case SW_MUSIC_CALL:
    case SW_MUSIC_ALTERNATIVES:
    case SW_MUSIC_KILL_CUES:
    case SW_MUSIC_UNFOLD:
    case SW_MUSIC_KEEP:
    case SW_MUSIC_DROP:
    case SW_MUSIC_TAG:
    case SW_MUSIC_VOLTA:
    case SW_MUSIC_AUTO_CHANGE:
        return true;
    default:
        return false;
    }
}

/* It holds one piece of music, as long as itself. */
static bool is_wrapper(const sw_music *m)
{
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_CONTEXT:
    case SW_MUSIC_TRANSPOSE:
    case SW_MUSIC_FIXED:
    case SW_MUSIC_REFERENCE:
    case SW_MUSIC_RELATIVE:
    case SW_MUSIC_CUE:
    case SW_MUSIC_QUOTE:
        return true;
    default:
        return false;
    }
}

/* ---- lengths ---- */

static const sw_rational unknown = {1, 0};

static sw_rational length_of(sw_bar_walk *w, uint32_t music);

static sw_rational sum_from(sw_bar_walk *w, uint32_t first)
{
    sw_rational sum = sw_rational_zero();
    for (uint32_t c = first; c != SW_NO_INDEX; c = at(w, c)->next) {
        sum = sw_rational_add(sum, length_of(w, c));
    }
    return sum;
}

static sw_rational longest(sw_bar_walk *w, uint32_t first)
{
    sw_rational most = sw_rational_zero();
    for (uint32_t c = first; c != SW_NO_INDEX; c = at(w, c)->next) {
        sw_rational own = length_of(w, c);
        most = sw_rational_valid(own) ? sw_rational_max(most, own) : own;
        if (!sw_rational_valid(own)) {
            break;
        }
    }
    return most;
}

static sw_rational first_length(sw_bar_walk *w, const sw_music *m)
{
    return m->first == SW_NO_INDEX ? sw_rational_zero() : length_of(w, m->first);
}

static sw_rational repeat_length(sw_bar_walk *w, const sw_music *m)
{
    const char *kind = sw_reading_name(w->reading, m->name);
    bool alternatives = m->first != SW_NO_INDEX && at(w, m->first)->next != SW_NO_INDEX;
    if (strcmp(kind, "volta") == 0 || strcmp(kind, "segno") == 0) {
        return sum_from(w, m->first);
    }
    return alternatives ? unknown : sw_rational_mul(sum_from(w, m->first), sw_rational_make(m->num, 1));
}

static sw_rational measure(sw_bar_walk *w, uint32_t music)
{
    const sw_music *m = at(w, music);
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_NOTE:
    case SW_MUSIC_DRUM:
    case SW_MUSIC_REST:
    case SW_MUSIC_FULL_REST:
    case SW_MUSIC_SKIP:
    case SW_MUSIC_CHORD:
    case SW_MUSIC_REPEAT_CHORD:
    case SW_MUSIC_BARE:
    case SW_MUSIC_LYRIC:
        return m->den == 0 || (m->kind == SW_MUSIC_CHORD && m->num == 0)
                   ? sw_rational_zero()
                   : sw_duration_length(sw_music_duration(m));
    case SW_MUSIC_SPAN:
        return m->reference == SW_NO_INDEX ? unknown : length_of(w, m->reference);
    case SW_MUSIC_SIMULTANEOUS:
    case SW_MUSIC_PART_COMBINE:
        return longest(w, m->first);
    case SW_MUSIC_SCALE:
        return sw_rational_mul(sum_from(w, m->first), sw_rational_make(m->num, m->den));
    case SW_MUSIC_AFTER_GRACE: /* its graces take no time */
        return first_length(w, m);
    case SW_MUSIC_REPEAT:
        return repeat_length(w, m);
    case SW_MUSIC_TAG:
    case SW_MUSIC_VOLTA:
        return w->heard[music] != 0 ? sum_from(w, m->first) : sw_rational_zero();
    case SW_MUSIC_UNCERTAIN:
        return sum_from(w, m->first);
    default:
        if (is_wrapper(m)) {
            return first_length(w, m);
        }
        return is_sequence(m)
                   ? sum_from(w, m->first)
                   : sw_rational_zero(); /* graces, words that follow a voice, and what has no length */
    }
}

/* How long some music is where the score plays it; not valid when that is not known. */
static sw_rational length_of(sw_bar_walk *w, uint32_t music)
{
    if (w->lengths[music].num == 0 && w->lengths[music].den == 0) {
        sw_rational length = measure(w, music);
        w->lengths[music] = sw_rational_valid(length) ? length : unknown;
    }
    return w->lengths[music];
}

/* ---- the way to the bar line ---- */

/* Whether something makes a staff or voice of its own, perhaps behind a name: what is written behind it would
 * be in another one. */
static bool is_context(const sw_bar_walk *w, uint32_t music)
{
    while (at(w, music)->kind != SW_MUSIC_CONTEXT && is_wrapper(at(w, music)) &&
           at(w, music)->first != SW_NO_INDEX) {
        music = at(w, music)->first;
    }
    return at(w, music)->kind == SW_MUSIC_CONTEXT;
}

static void add_anchor(sw_bar_walk *w, uint32_t item, sw_rational end)
{
    if (sw_is_item(at(w, item))) {
        w->anchors = sw_grow(w->anchors, w->anchor_count, &w->anchor_capacity, sizeof *w->anchors);
        w->anchors[w->anchor_count++] = (sw_bar_anchor){item, end};
    }
}

static bool open(sw_bar_walk *w, uint32_t music, sw_rational start);

/* A child that ends at the bar line, in a sequence that goes on there or ends there, too. */
static bool open_behind(sw_bar_walk *w, uint32_t sequence, uint32_t child, sw_rational start)
{
    if (is_context(w, child) || at(w, sequence)->kind != SW_MUSIC_SEQUENCE) {
        return open(w, child, start);
    }
    add_anchor(w, child, w->from);
    sw_bar_put_behind(w, sequence, child);
    return true;
}

static bool open_sequence(sw_bar_walk *w, uint32_t music, sw_rational start)
{
    sw_rational now = start;
    for (uint32_t c = at(w, music)->first; c != SW_NO_INDEX; c = at(w, c)->next) {
        sw_rational length = length_of(w, c);
        if (!sw_rational_valid(length)) {
            return sw_bar_fail(w, c,
                               "the length of this is not known, so no bar line can be found behind it");
        }
        sw_rational end = sw_rational_add(now, length);
        int order = sw_rational_compare(end, w->from);
        if (order == 0 && length.num > 0) {
            return open_behind(w, music, c, now);
        }
        if (order > 0) {
            return open(w, c, now);
        }
        now = end;
    }
    return true; /* it ends before */
}

/* Lines side by side: those that go on at the bar line; where all end there, those that reach it. */
static bool open_lines(sw_bar_walk *w, uint32_t music, sw_rational start)
{
    sw_rational local = sw_rational_sub(w->from, start);
    bool ends = sw_rational_equal(length_of(w, music), local);
    bool done = true;
    for (uint32_t c = at(w, music)->first; c != SW_NO_INDEX && done; c = at(w, c)->next) {
        int order = sw_rational_compare(length_of(w, c), local);
        done = order < 0 || (order == 0 && !ends) || open(w, c, start);
    }
    return done;
}

/* A volta repeat: the bar line stands in its music, or in the endings. */
static bool open_repeat(sw_bar_walk *w, uint32_t music, sw_rational start)
{
    const sw_music *m = at(w, music);
    const char *kind = sw_reading_name(w->reading, m->name);
    if (m->first == SW_NO_INDEX || (strcmp(kind, "volta") != 0 && strcmp(kind, "segno") != 0)) {
        return sw_bar_fail(w, music,
                           "the bar line stands inside of a repeat that is written once; write it out first");
    }
    sw_rational body = sw_rational_add(start, length_of(w, m->first));
    uint32_t endings = at(w, m->first)->next;
    bool in_body = sw_rational_compare(w->from, body) <= 0 || endings == SW_NO_INDEX;
    return in_body ? open(w, m->first, start) : open(w, endings, body);
}

/* Music that the bar line stands in, or at the end of. */
static bool open(sw_bar_walk *w, uint32_t music, sw_rational start)
{
    const sw_music *m = at(w, music);
    if (is_sequence(m)) {
        return open_sequence(w, music, start);
    }
    if (is_wrapper(m)) {
        return m->first == SW_NO_INDEX || open(w, m->first, start);
    }
    if (sw_is_item(m)) {
        add_anchor(w, music, sw_rational_add(start, length_of(w, music)));
        return sw_bar_grow(w, music, sw_rational_mul(w->bar, sw_rational_make(w->count, 1))) ||
               sw_bar_fail(w, music, "this goes on over the bar line; divide it there first");
    }
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_SIMULTANEOUS:
    case SW_MUSIC_PART_COMBINE:
        return open_lines(w, music, start);
    case SW_MUSIC_REPEAT:
        return open_repeat(w, music, start);
    case SW_MUSIC_SPAN:
        return true; /* as long as the music that it names, which the walk finds elsewhere */
    default:
        return sw_bar_fail(w, music, "the bar line stands inside of this, where no bars can be written");
    }
}

/* ---- what goes ---- */

static bool cut(sw_bar_walk *w, uint32_t music, sw_rational start);

/* A passage of a sequence that goes; SW_NO_INDEX: none so far. */
typedef struct passage {
    uint32_t first;
    uint32_t last;
} passage;

static void extend(passage *p, uint32_t child)
{
    p->first = p->first == SW_NO_INDEX ? child : p->first;
    p->last = child;
}

static void take_out(sw_bar_walk *w, passage *p)
{
    if (p->first != SW_NO_INDEX) {
        sw_bar_take_out(w, p->first, p->last);
    }
    *p = (passage){SW_NO_INDEX, SW_NO_INDEX};
}

/* Whether a command among bars that go says nothing to what follows: bar lines and line breaks; a clef, key,
 * time or tempo with another one behind it before the music goes on. */
static bool is_spent(sw_bar_walk *w, uint32_t command, sw_rational now)
{
    uint8_t kind = at(w, command)->kind;
    if (sw_bar_line_command(sw_music_slice(w->reading, command))) {
        return true;
    }
    bool lasting =
        kind == SW_MUSIC_CLEF || kind == SW_MUSIC_KEY || kind == SW_MUSIC_TIME || kind == SW_MUSIC_TEMPO;
    for (uint32_t c = at(w, command)->next; lasting && c != SW_NO_INDEX; c = at(w, c)->next) {
        if (at(w, c)->kind == kind) {
            return true;
        }
        sw_rational length = length_of(w, c);
        now = sw_rational_add(now, length);
        if (!sw_rational_valid(length) || (length.num > 0 && sw_rational_compare(now, w->to) > 0)) {
            break;
        }
    }
    return false;
}

/* Something without length goes when it stands among the bars that go: graces, bar checks, spent commands. */
static bool goes_along(sw_bar_walk *w, uint32_t child, sw_rational now)
{
    bool behind_first = sw_rational_compare(now, w->from) > 0;
    bool before_end = sw_rational_compare(now, w->to) < 0;
    sw_slice text = sw_music_slice(w->reading, child);
    if (sw_slice_is(text, "--") || sw_slice_is(text, "__")) { /* to or from a syllable that goes */
        return sw_rational_compare(now, w->from) >= 0 && sw_rational_compare(now, w->to) <= 0;
    }
    uint32_t command = child;
    while (at(w, command)->kind == SW_MUSIC_REFERENCE && at(w, command)->first != SW_NO_INDEX) {
        command = at(w, command)->first;
    }
    if (sw_slice_starts(sw_music_slice(w->reading, command), "\\once")) { /* it meant what goes */
        return sw_rational_compare(now, w->from) >= 0 && before_end;
    }
    switch ((sw_music_kind)at(w, child)->kind) {
    case SW_MUSIC_GRACE:
        return sw_rational_compare(now, w->from) >= 0 && before_end;
    case SW_MUSIC_BAR_CHECK:
        return behind_first && sw_rational_compare(now, w->to) <= 0;
    default:
        return sw_rational_compare(now, w->from) >= 0 && before_end && is_spent(w, child, now) &&
               (behind_first || !sw_bar_line_command(text));
    }
}

static bool cut_sequence(sw_bar_walk *w, uint32_t music, sw_rational start)
{
    sw_rational now = start;
    passage p = {SW_NO_INDEX, SW_NO_INDEX};
    for (uint32_t c = at(w, music)->first; c != SW_NO_INDEX; c = at(w, c)->next) {
        sw_rational length = length_of(w, c);
        if (!sw_rational_valid(length)) {
            return sw_bar_fail(w, c,
                               "the length of this is not known, so no bar line can be found behind it");
        }
        sw_rational end = sw_rational_add(now, length);
        bool inside = sw_rational_compare(w->from, now) <= 0 && sw_rational_compare(end, w->to) <= 0;
        bool touches = sw_rational_compare(now, w->to) < 0 && sw_rational_compare(end, w->from) > 0;
        if (length.num == 0 ? goes_along(w, c, now) : inside) {
            extend(&p, c);
            add_anchor(w, c, end);
        } else {
            take_out(w, &p);
            if (length.num > 0 && touches && !cut(w, c, now)) {
                return false;
            }
        }
        now = end;
    }
    take_out(w, &p);
    return true;
}

static bool cut_repeat(sw_bar_walk *w, uint32_t music, sw_rational start)
{
    const sw_music *m = at(w, music);
    const char *kind = sw_reading_name(w->reading, m->name);
    bool volta = strcmp(kind, "volta") == 0 || strcmp(kind, "segno") == 0;
    uint32_t endings = m->first == SW_NO_INDEX ? SW_NO_INDEX : at(w, m->first)->next;
    sw_rational body =
        volta && m->first != SW_NO_INDEX ? sw_rational_add(start, length_of(w, m->first)) : start;
    bool in_body = volta && (endings == SW_NO_INDEX || sw_rational_compare(w->to, body) < 0);
    bool in_endings = volta && endings != SW_NO_INDEX && sw_rational_compare(w->from, body) >= 0;
    if (!in_body && !in_endings) {
        return sw_bar_fail(w, music,
                           "a repeat begins or ends among the bars, or is written once; write it out first");
    }
    return in_body ? cut(w, m->first, start) : cut(w, endings, body);
}

/* Music that has a part among the bars that go. */
static bool cut(sw_bar_walk *w, uint32_t music, sw_rational start)
{
    const sw_music *m = at(w, music);
    if (m->kind == SW_MUSIC_SEQUENCE) {
        return cut_sequence(w, music, start);
    }
    sw_rational end = sw_rational_add(start, length_of(w, music));
    if (sw_is_item(m)) {
        sw_rational part = sw_rational_sub(sw_rational_max(start, w->from), sw_rational_min(end, w->to));
        add_anchor(w, music, end);
        return sw_bar_grow(w, music, part) ||
               sw_bar_fail(w, music, "this goes on over the bar line; divide it there first");
    }
    if (is_wrapper(m)) {
        return m->first == SW_NO_INDEX || cut(w, m->first, start);
    }
    if (m->kind == SW_MUSIC_REPEAT) {
        return cut_repeat(w, music, start);
    }
    bool lines = m->kind == SW_MUSIC_SIMULTANEOUS || m->kind == SW_MUSIC_PART_COMBINE;
    if (!lines && !is_sequence(m)) {
        return m->kind == SW_MUSIC_SPAN ||
               sw_bar_fail(w, music, "the bar line stands inside of this, where no bars can go");
    }
    bool done = true;
    sw_rational now = start;
    for (uint32_t c = m->first; c != SW_NO_INDEX && done; c = at(w, c)->next) {
        sw_rational behind = sw_rational_add(now, length_of(w, c));
        done = !sw_rational_valid(behind) || sw_rational_compare(behind, w->from) <= 0 ||
               sw_rational_compare(now, w->to) >= 0 || cut(w, c, now);
        now = lines ? start : behind;
    }
    return done;
}

/* ---- elsewhere ---- */

static int compare_anchors(const void *a, const void *b, void *reading)
{
    const sw_music *music = ((const sw_reading *)reading)->music;
    return sw_music_compare_places(&music[((const sw_bar_anchor *)a)->music],
                                   &music[((const sw_bar_anchor *)b)->music]);
}

/* The anchor at the place of a node; NULL when there is none. */
static const sw_bar_anchor *anchor_at(const sw_bar_walk *w, uint32_t music)
{
    size_t low = 0;
    size_t high = w->anchor_count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (sw_music_compare_places(at(w, w->anchors[middle].music), at(w, music)) < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    bool found =
        low < w->anchor_count && sw_music_compare_places(at(w, w->anchors[low].music), at(w, music)) == 0;
    return found ? &w->anchors[low] : NULL;
}

/* Whether each place is heard at the bar line only. */
static bool are_single(sw_bar_walk *w)
{
    const sw_reading *reading = w->reading;
    if (w->anchor_count > 1) {
        qsort_r(w->anchors, w->anchor_count, sizeof *w->anchors, compare_anchors, (void *)(uintptr_t)reading);
    }
    for (uint32_t e = 0; e < w->score->event_count; e++) {
        const sw_event *event = &w->score->events[e];
        bool follows = (event->flags & SW_EVENT_CUE) != 0;
        const sw_bar_anchor *anchor = follows ? NULL : anchor_at(w, event->chord);
        if (anchor != NULL && !sw_rational_equal(anchor->end, sw_event_end(event))) {
            return sw_bar_fail(w, anchor->music,
                               "this is written once and heard in several places, and bars written here "
                               "would come in all of them; give the place music of its own first");
        }
    }
    return true;
}

/* Numbers in comments that are counted on although another passage takes their line out. */
static void drop_covered_edits(sw_bar_walk *w)
{
    size_t kept = 0;
    for (size_t i = 0; i < w->edit_count; i++) {
        const sw_bar_edit *edit = &w->edits[i];
        bool covered = false;
        for (size_t k = 0; k < w->edit_count && !covered; k++) {
            const sw_bar_edit *other = &w->edits[k];
            covered = other->put.length == 0 && other->start < edit->start && edit->end <= other->end &&
                      edit->start < edit->end && sw_text_same_file(other->text, edit->text);
        }
        if (!covered) {
            w->edits[kept++] = *edit;
        }
    }
    w->edit_count = kept;
}

bool sw_bar_walk_score(sw_bar_walk *w)
{
    w->heard = sw_alloc_zero(w->reading->music_count + 1, 1);
    w->lengths = sw_alloc_zero(w->reading->music_count + 1, sizeof *w->lengths);
    find_heard(w);
    uint32_t root = find_root(w);
    if (root == SW_NO_INDEX) {
        return true;
    }
    if (!sw_rational_equal(length_of(w, root), w->score->length)) {
        return sw_bar_fail(w, root, "how long this music is can't be told from its text");
    }
    bool opens = sw_rational_equal(w->from, w->to);
    bool done = opens ? open(w, root, sw_rational_zero()) : cut(w, root, sw_rational_zero());
    sw_bar_mend_values(w);
    drop_covered_edits(w);
    return done && are_single(w);
}
