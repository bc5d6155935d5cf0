/* What is said to all staves: tempo, rehearsal marks, repeats. */
#include <stdlib.h>
#include <string.h>

#include "stavewright/meaning.h"

typedef struct listing {
    const sw_reading *reading;
    const sw_score *score;
    sw_signs *signs;
    int32_t next_mark;   /* what \mark \default comes to */
    sw_rational counted; /* where it was counted last */
} listing;

static void add(listing *l, uint32_t bar, sw_rational onset, sw_sign_kind kind, const char *text)
{
    sw_signs *signs = l->signs;
    signs->items = sw_grow(signs->items, signs->count, &signs->capacity, sizeof *signs->items);
    signs->items[signs->count++] =
        (sw_sign){bar, sw_rational_sub(onset, l->score->bars[bar].start), (uint8_t)kind, text};
}

static void add_here(listing *l, sw_rational onset, sw_sign_kind kind, const char *text)
{
    uint32_t bar = sw_score_bar_at(l->score, onset);
    if (bar != SW_NO_INDEX && text[0] != '\0') {
        add(l, bar, onset, kind, text);
    }
}

/* ---- settings -------------------------------------------------------------------------------------------
 */

/* A to Z without I, then AA, BB, as the language counts. */
static const char *mark_letters(sw_arena *arena, int32_t number)
{
    static const char letters[] = "ABCDEFGHJKLMNOPQRSTUVWXYZ";
    enum { LETTERS = sizeof letters - 1 };
    if (number < 1 || number > 8 * LETTERS) {
        return sw_arena_format(arena, "%d", (int)number);
    }
    char text[9] = "";
    memset(text, letters[(number - 1) % LETTERS], (size_t)((number - 1) / LETTERS) + 1);
    return sw_arena_copy(arena, sw_slice_of(text));
}

/* A mark that counts: the same one in several staves counts once. */
static const char *counted_mark(listing *l, const sw_setting *setting)
{
    const sw_music *m = &l->reading->music[setting->music];
    bool again = l->next_mark > 1 && sw_rational_equal(l->counted, setting->onset);
    int32_t number = m->num > 0 ? m->num : again ? l->next_mark - 1 : l->next_mark;
    l->next_mark = number < INT32_MAX ? number + 1 : number;
    l->counted = setting->onset;
    return mark_letters(l->signs->arena, number);
}

/* A mark without words, such as a sign from the music font: what is written, in one line. */
static const char *written_mark(listing *l, const sw_setting *setting)
{
    char *text = sw_arena_copy(l->signs->arena, sw_music_slice(l->reading, setting->music));
    size_t length = 0;
    for (const char *c = text; *c != '\0'; c++) {
        bool blank = strchr(" \t\r\n", *c) != NULL;
        if (!blank || (length > 0 && text[length - 1] != ' ')) {
            text[length++] = blank ? ' ' : *c;
        }
    }
    text[length] = '\0';
    return text;
}

static void add_label(listing *l, const sw_setting *setting)
{
    const sw_music *m = &l->reading->music[setting->music];
    const char *words = sw_reading_name(l->reading, m->name);
    const char *text = words;
    sw_sign_kind kind = SW_SIGN_MARK;
    switch ((sw_label)m->check) {
    case SW_LABEL_MARK:
        text = words[0] != '\0' ? words : m->num < 0 ? written_mark(l, setting) : counted_mark(l, setting);
        break;
    case SW_LABEL_SEGNO:
        text = "segno";
        break;
    case SW_LABEL_CODA:
        text = "coda";
        break;
    case SW_LABEL_FINE:
        text = "fine";
        break;
    case SW_LABEL_BAR_LINE: /* others only look otherwise */
        kind = SW_SIGN_REPEAT;
        text = strchr(words, ':') == NULL ? "" : sw_arena_format(l->signs->arena, "bar line %s", words);
        break;
    case SW_LABEL_TEXT:
    case SW_LABEL_NONE:
        break;
    }
    add_here(l, setting->onset, kind, text);
}

static void add_settings(listing *l)
{
    for (size_t i = 0; i < l->score->setting_count; i++) {
        const sw_setting *setting = &l->score->settings[i];
        const sw_music *m = &l->reading->music[setting->music];
        if (m->kind == SW_MUSIC_SETTING && m->check != SW_LABEL_NONE) {
            add_label(l, setting);
        } else if (m->kind == SW_MUSIC_TEMPO) {
            sw_buffer text = {0};
            sw_tempo_meaning(l->reading, setting->music, &text);
            add_here(l, setting->onset, SW_SIGN_TEMPO,
                     sw_arena_copy(l->signs->arena, sw_buffer_slice(&text)));
            sw_buffer_free(&text);
        } else if (m->kind == SW_MUSIC_ALTERNATIVES) {
            add_here(l, setting->onset, SW_SIGN_REPEAT, "alternative");
        }
    }
}

/* ---- repeats --------------------------------------------------------------------------------------------
 */

/* From where to where a repeat reaches. */
typedef struct stretch {
    sw_rational begin;
    sw_rational end;
    bool found;
} stretch;

static bool is_kind(const sw_reading *reading, uint32_t music, const char *kind)
{
    return strcmp(sw_reading_name(reading, reading->music[music].name), kind) == 0;
}

/* By frame: the innermost repeat with signs that it lies in, itself included; SW_NO_INDEX: none. Repeats that
 * are written out have several passes, and no signs. */
static uint32_t *repeats_by_frame(const listing *l)
{
    const sw_score *score = l->score;
    uint32_t *around = sw_alloc((score->frame_count + 1) * sizeof *around);
    bool *written_out = sw_alloc_zero(l->reading->music_count + 1, sizeof *written_out);
    for (size_t f = 0; f < score->frame_count; f++) {
        written_out[score->frames[f].music] =
            written_out[score->frames[f].music] || score->frames[f].pass > 0;
    }
    for (size_t f = 0; f < score->frame_count; f++) {
        uint32_t music = score->frames[f].music;
        bool folded = l->reading->music[music].kind == SW_MUSIC_REPEAT && !written_out[music] &&
                      (is_kind(l->reading, music, "volta") || is_kind(l->reading, music, "segno"));
        uint32_t parent = score->frames[f].parent;
        around[f] = folded ? (uint32_t)f : parent == SW_NO_INDEX ? SW_NO_INDEX : around[parent];
    }
    free(written_out);
    return around;
}

static void add_repeat(listing *l, uint32_t frame, const stretch *s)
{
    const sw_score *score = l->score;
    const sw_music *m = &l->reading->music[score->frames[frame].music];
    uint32_t last = sw_score_bar_at(score, s->end);
    if (last == SW_NO_INDEX) {
        return;
    }
    add_here(l, s->begin, SW_SIGN_REPEAT, sw_arena_format(l->signs->arena, "repeat %d times", (int)m->num));
    bool before = last > 0 && sw_rational_equal(score->bars[last].start, s->end);
    add(l, before ? last - 1 : last, s->end, SW_SIGN_REPEAT, "end of repeat");
}

static void add_repeats(listing *l)
{
    const sw_score *score = l->score;
    uint32_t *around = repeats_by_frame(l);
    stretch *stretches = sw_alloc_zero(score->frame_count + 1, sizeof *stretches);
    for (size_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        uint32_t f = event->frame == SW_NO_INDEX ? SW_NO_INDEX : around[event->frame];
        while (f != SW_NO_INDEX) {
            stretch *s = &stretches[f];
            sw_rational end = sw_event_end(event);
            s->begin = s->found ? sw_rational_min(s->begin, event->onset) : event->onset;
            s->end = s->found ? sw_rational_max(s->end, end) : end;
            s->found = true;
            uint32_t parent = score->frames[f].parent;
            f = parent == SW_NO_INDEX ? SW_NO_INDEX : around[parent];
        }
    }
    for (uint32_t f = 0; f < score->frame_count; f++) {
        if (stretches[f].found) {
            add_repeat(l, f, &stretches[f]);
        }
    }
    free(stretches);
    free(around);
}

/* ---- the list -------------------------------------------------------------------------------------------
 */

static int compare_signs(const void *a, const void *b)
{
    const sw_sign *x = a;
    const sw_sign *y = b;
    if (x->bar != y->bar) {
        return x->bar < y->bar ? -1 : 1;
    }
    int order = sw_rational_compare(x->place, y->place);
    order = order != 0 ? order : (x->kind > y->kind) - (x->kind < y->kind);
    return order != 0 ? order : strcmp(x->text, y->text);
}

static void drop_same(sw_signs *signs)
{
    size_t kept = 0;
    for (size_t i = 0; i < signs->count; i++) {
        if (kept == 0 || compare_signs(&signs->items[kept - 1], &signs->items[i]) != 0) {
            signs->items[kept++] = signs->items[i];
        }
    }
    signs->count = kept;
}

sw_signs sw_signs_of(const sw_reading *reading, const sw_score *score)
{
    sw_signs signs = {.arena = sw_arena_new()};
    listing l = {.reading = reading, .score = score, .signs = &signs, .next_mark = 1};
    add_settings(&l);
    add_repeats(&l);
    if (signs.count > 1) {
        qsort(signs.items, signs.count, sizeof *signs.items, compare_signs);
    }
    drop_same(&signs);
    return signs;
}

void sw_signs_free(sw_signs *signs)
{
    free(signs->items);
    sw_arena_free(signs->arena);
    *signs = (sw_signs){0};
}
