#include "moves/prove_texts.h"

#include <stdlib.h>
#include <string.h>

static bool refuse(const char *path, const char *what, char **error)
{
    sw_buffer text = {0};
    sw_buffer_format(&text, "refused: in %s %s; nothing is changed", path, what);
    *error = text.data;
    return false;
}

/* ---- the sources ----------------------------------------------------------------------------------------
 */

static bool is_edited(const sw_file_patch *file, const sw_node *node)
{
    for (size_t i = 0; i < file->edits.count; i++) {
        if (file->edits.items[i].start <= node->end && file->edits.items[i].end >= node->start) {
            return true;
        }
    }
    return false;
}

static bool is_word(uint32_t kind)
{
    return kind == SW_NODE_STRING || kind == SW_NODE_MARKUP_WORD;
}

static bool same_node(const sw_file_patch *file, const sw_syntax *a, uint32_t i, const sw_syntax *b,
                      uint32_t k)
{
    const sw_node *x = &a->nodes[i];
    const sw_node *y = &b->nodes[k];
    bool leaf = x->next == i + 1 && y->next == k + 1;
    if ((x->next == i + 1) != (y->next == k + 1)) {
        return false;
    }
    if (!leaf || sw_slice_equal(sw_syntax_slice(a, i), sw_syntax_slice(b, k))) {
        return x->kind == y->kind;
    }
    sw_slice text = sw_syntax_slice(a, i);
    bool post = x->kind == SW_NODE_POST_EVENT && y->kind == x->kind &&
                memchr(text.data, '"', text.length) != NULL && text.data[0] == sw_syntax_slice(b, k).data[0];
    return is_edited(file, x) && (post || (is_word(x->kind) && is_word(y->kind)));
}

static uint32_t next_kept(const sw_syntax *syntax, uint32_t node)
{
    while (node < syntax->count && syntax->nodes[node].kind == SW_NODE_BAR_CHECK) {
        node++;
    }
    return node;
}

static bool same_source(const sw_file_patch *file)
{
    sw_syntax *a = sw_syntax_parse(file->text);
    sw_syntax *b = sw_syntax_parse(file->after);
    uint32_t i = next_kept(a, 0);
    uint32_t k = next_kept(b, 0);
    while (i < a->count && k < b->count && same_node(file, a, i, b, k)) {
        i = next_kept(a, i + 1);
        k = next_kept(b, k + 1);
    }
    bool same = i == a->count && k == b->count;
    sw_syntax_free(a);
    sw_syntax_free(b);
    return same;
}

/* ---- what is heard --------------------------------------------------------------------------------------
 */

static bool same_event(const sw_event *a, const sw_event *b)
{
    return a->kind == b->kind && a->flags == b->flags && a->voice == b->voice &&
           sw_rational_equal(a->onset, b->onset) && sw_rational_equal(a->duration, b->duration) &&
           a->grace_num == b->grace_num && a->grace_den == b->grace_den &&
           (a->kind != SW_EVENT_NOTE || sw_pitch_equal(a->pitch, b->pitch));
}

static bool same_events(const sw_score *a, const sw_score *b)
{
    bool same = a->event_count == b->event_count && a->staff_count == b->staff_count &&
                a->voice_count == b->voice_count && a->bar_count == b->bar_count &&
                sw_rational_equal(a->length, b->length);
    for (size_t i = 0; same && i < a->event_count; i++) {
        same = same_event(&a->events[i], &b->events[i]);
    }
    for (size_t i = 0; same && i < a->bar_count; i++) {
        same = a->bars[i].number == b->bars[i].number &&
               sw_rational_equal(a->bars[i].start, b->bars[i].start) &&
               sw_rational_equal(a->bars[i].length, b->bars[i].length);
    }
    return same;
}

/* The next setting that is no bar check; *off counts the bar checks passed over that are off their line. */
static size_t next_setting(const sw_reading *reading, const sw_score *score, size_t i, size_t *off)
{
    while (i < score->setting_count && reading->music[score->settings[i].music].kind == SW_MUSIC_BAR_CHECK) {
        *off += !sw_rational_is_zero(score->settings[i].position);
        i++;
    }
    return i;
}

static bool same_settings(const sw_reading *before, const sw_score *a, const sw_reading *after,
                          const sw_score *b)
{
    size_t off[2] = {0, 0};
    size_t i = next_setting(before, a, 0, &off[0]);
    size_t k = next_setting(after, b, 0, &off[1]);
    while (i < a->setting_count && k < b->setting_count) {
        const sw_setting *x = &a->settings[i];
        const sw_setting *y = &b->settings[k];
        if (!sw_rational_equal(x->onset, y->onset) || x->staff != y->staff || x->voice != y->voice ||
            before->music[x->music].kind != after->music[y->music].kind) {
            return false;
        }
        i = next_setting(before, a, i + 1, &off[0]);
        k = next_setting(after, b, k + 1, &off[1]);
    }
    return i == a->setting_count && k == b->setting_count && off[1] <= off[0];
}

/* ---- what is meant --------------------------------------------------------------------------------------
 */

static bool same_meaning(const sw_film *film, const sw_reading *before, const sw_score *a,
                         const sw_reading *after, const sw_score *b)
{
    const sw_techniques *techniques = sw_film_techniques(film);
    sw_playing *x = sw_playing_of(techniques, sw_film_instruments(film), before, a);
    sw_playing *y = sw_playing_of(techniques, sw_film_instruments(film), after, b);
    size_t groups = sw_techniques_group_count(techniques);
    bool same = true;
    for (size_t s = 0; same && s < a->staff_count; s++) {
        same = x->instruments[s] == y->instruments[s];
    }
    for (size_t e = 0; same && e < a->event_count; e++) {
        const sw_technique_state *p = &x->states[x->state_of[e]];
        const sw_technique_state *q = &y->states[y->state_of[e]];
        same = memcmp(p->now, q->now, groups) == 0 && memcmp(p->half, q->half, groups) == 0;
    }
    sw_playing_free(x);
    sw_playing_free(y);
    return same;
}

static bool prove_main(const void *what, const sw_reading *before, const sw_reading *after, char **error)
{
    const sw_film *film = what;
    const char *path = before->files[0].text->path;
    bool same = true;
    if (after->findings.count > before->findings.count || after->score_count != before->score_count) {
        same = refuse(path, "something would not be understood any more", error);
    }
    for (size_t i = 0; same && i < before->score_count; i++) {
        const sw_score *a = &before->scores[i];
        const sw_score *b = &after->scores[i];
        if (!same_events(a, b) || !same_settings(before, a, after, b)) {
            same = refuse(path, "something else would be heard, or a bar check come off its line", error);
        } else if (!same_meaning(film, before, a, after, b)) {
            same = refuse(path, "players would be told to play something in another way", error);
        }
    }
    return same;
}

bool sw_prove_texts(const sw_film *film, sw_reading *const *mains, size_t main_count, const sw_patch *patch,
                    const sw_read_options *options, char **error)
{
    for (size_t i = 0; i < patch->count; i++) {
        if (!same_source(&patch->files[i])) {
            return refuse(patch->files[i].text->path, "more than words of texts would change", error);
        }
    }
    return sw_patch_prove(patch, mains, main_count, options, prove_main, film, error);
}
