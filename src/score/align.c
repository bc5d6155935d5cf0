/* Each verse on the notes of the voice that it follows: see lyrics.h. */
#include <stdlib.h>
#include <string.h>

#include "score/lyrics.h"
#include "score/melisma_rules.h"
#include "score/sung_moments.h"

/* A slot that a note has taken. */
typedef struct taken_slot {
    const sw_sung_moments *strokes;
    size_t stroke;
    size_t first_syllable; /* of those that it sets, in the score */
    size_t end_syllable;
    bool ignores; /* as the line stands behind it */
} taken_slot;

/* A verse on its way through the notes. */
typedef struct singer {
    sw_player *p;
    sw_hearing *hearing;
    const sw_verse *verse;
    size_t item;               /* the first of the next slot */
    const sw_context *context; /* the voice that is followed, NULL: none yet */
    sw_moment death;           /* when it ends ... */
    bool dies;                 /* ... if it does */
    const sw_sung_moments *strokes;
    size_t stroke;
    bool grace_waits;  /* a grace note has asked for a syllable ... */
    sw_moment waiting; /* ... for the main note here */
    sw_moment now;
    taken_slot *slots;
    size_t slot_count;
    size_t slot_capacity;
} singer;

static sw_line_state *state_of(const singer *s)
{
    return &s->p->lyrics->states[s->verse->line];
}

/* ---- voices ---- */

static bool bears(const sw_context *context, uint32_t name)
{
    return context->id == name && name != 0;
}

/* The voice of this name (any voice for 0) that lives at a moment; when there is none, *begins is where the
 * next one begins. */
static const sw_context *voice_at(const singer *s, uint32_t name, sw_moment now, sw_moment *begins,
                                  bool *will)
{
    size_t count;
    const sw_life *lives = sw_contexts_lives(s->p->contexts, &count);
    bool known = false;
    *will = false;
    for (size_t i = 0; i < count; i++) {
        if (!bears(lives[i].context, name)) {
            continue;
        }
        known = true;
        if (sw_moment_compare(lives[i].begin, now) > 0) {
            if (!*will || sw_moment_compare(lives[i].begin, *begins) < 0) {
                *begins = lives[i].begin;
                *will = true;
            }
        } else if (sw_moment_compare(now, lives[i].end) <= 0) {
            return lives[i].context;
        }
    }
    for (uint32_t v = 0; !known && v < s->p->score->voice_count; v++) {
        const sw_context *owner = sw_contexts_owner(s->p->contexts, v);
        bool any = name == 0 && sw_contexts_is(s->p->contexts, owner, "Voice");
        if (any || bears(owner, name)) { /* made by itself, as those of \partCombine and of cues */
            return owner;
        }
    }
    return NULL;
}

/* The end of the life that a context has at a moment; lives that touch are one. */
static bool death_of(const singer *s, const sw_context *context, sw_moment now, sw_moment *death)
{
    size_t count;
    const sw_life *lives = sw_contexts_lives(s->p->contexts, &count);
    bool found = false;
    *death = now;
    for (bool longer = true; longer;) {
        longer = false;
        for (size_t i = 0; i < count; i++) {
            if (lives[i].context == context) {
                found = true;
                if (sw_moment_compare(lives[i].begin, *death) <= 0 &&
                    sw_moment_compare(lives[i].end, *death) > 0) {
                    *death = lives[i].end;
                    longer = true;
                }
            }
        }
    }
    return found;
}

/* From now on the verse hears a voice: its notes from a moment on, with the grace notes in front of it, or
 * only those behind it. */
static void listen_to(singer *s, const sw_context *context, sw_moment now, bool behind)
{
    s->context = context;
    s->dies = death_of(s, context, now, &s->death);
    s->strokes = sw_hearing_strokes(s->hearing, context, s->verse->range);
    size_t low = 0;
    size_t high = s->strokes->count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        sw_moment when = s->strokes->items[middle].when;
        int order = behind ? sw_moment_compare(when, now) : sw_rational_compare(when.main, now.main);
        if (order < 0 || (order == 0 && behind)) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    s->stroke = low;
}

/* The next moment at which the voice that is followed has notes that this verse can hear. */
static const sw_sung_moment *next_stroke(singer *s)
{
    const sw_verse *v = s->verse;
    for (; s->strokes != NULL && s->stroke < s->strokes->count; s->stroke++) {
        const sw_sung_moment *stroke = &s->strokes->items[s->stroke];
        bool first = sw_rational_equal(stroke->when.main, v->start.main);
        if (stroke->sung && stroke->event < v->behind && (!first || stroke->event >= v->reached)) {
            return stroke;
        }
    }
    return NULL;
}

/* ---- slots ---- */

static void add_syllable(singer *s, const sw_text_item *item, const sw_sung_moment *stroke)
{
    sw_score *score = s->p->score;
    score->syllables =
        sw_grow(score->syllables, score->syllable_count, &score->syllable_capacity, sizeof(sw_syllable));
    score->syllables[score->syllable_count++] = (sw_syllable){
        .onset = stroke->when.main,
        .duration = sw_rational_sub(stroke->end, stroke->when.main),
        .grace_num = (int32_t)stroke->when.grace.num,
        .grace_den = stroke->when.grace.den == 0 ? 1 : (int32_t)stroke->when.grace.den,
        .music = item->music,
        .frame = item->frame,
        .line = item->line,
        .event = stroke->event,
        .voice = score->events[stroke->event].voice,
        .flags = item->flags,
    };
}

/* Sets what comes next in the text on a note. */
static void take_slot(singer *s, const sw_sung_moment *stroke)
{
    const sw_lyrics *lyrics = s->p->lyrics;
    sw_moment at = lyrics->items[s->item].at;
    taken_slot slot = {s->strokes, s->stroke, s->p->score->syllable_count, 0, false};
    for (; s->item < s->verse->end_item && sw_moment_compare(lyrics->items[s->item].at, at) == 0; s->item++) {
        const sw_text_item *item = &lyrics->items[s->item];
        if (item->kind == SW_TEXT_SYLLABLE) {
            add_syllable(s, item, stroke);
        } else if (item->kind == SW_TEXT_SETTING) {
            sw_lyrics_hold(s->p, &lyrics->states[item->line], item->music);
        }
    }
    slot.end_syllable = s->p->score->syllable_count;
    slot.ignores = state_of(s)->ignores_melismata;
    s->slots = sw_grow(s->slots, s->slot_count, &s->slot_capacity, sizeof *s->slots);
    s->slots[s->slot_count++] = slot;
}

/* A note begins: it takes a slot or not. */
static void hear(singer *s, const sw_sung_moment *stroke)
{
    const sw_line_state *state = state_of(s);
    bool free_note = !stroke->busy || state->ignores_melismata;
    if (!free_note && !(s->grace_waits && sw_moment_compare(stroke->when, s->waiting) >= 0)) {
        return;
    }
    s->grace_waits = !sw_rational_is_zero(stroke->when.grace) && !state->takes_graces;
    if (s->grace_waits) {
        s->waiting = (sw_moment){stroke->when.main, sw_rational_zero()};
    } else {
        take_slot(s, stroke);
    }
}

/* Each syllable lasts as long as the notes behind it have none of their own because a melisma is on. */
static void hold_syllables(singer *s)
{
    sw_score *score = s->p->score;
    for (size_t i = 0; i < s->slot_count; i++) {
        const taken_slot *slot = &s->slots[i];
        const taken_slot *next = i + 1 < s->slot_count ? &s->slots[i + 1] : NULL;
        sw_rational end = slot->strokes->items[slot->stroke].end;
        for (size_t n = slot->stroke + 1; n < slot->strokes->count && !slot->ignores; n++) {
            const sw_sung_moment *stroke = &slot->strokes->items[n];
            if (next != NULL &&
                sw_moment_compare(stroke->when, next->strokes->items[next->stroke].when) >= 0) {
                break;
            }
            if (!stroke->sung) {
                continue;
            }
            if (!stroke->busy) {
                break;
            }
            end = sw_rational_max(end, stroke->end);
        }
        for (size_t y = slot->first_syllable; y < slot->end_syllable; y++) {
            score->syllables[y].duration = sw_rational_sub(end, score->syllables[y].onset);
        }
    }
}

/* ---- a verse ---- */

/* The name of the voice that the verse should follow; 0 when it goes by a context. */
static uint32_t wanted_name(const singer *s)
{
    uint32_t voice = state_of(s)->voice;
    return voice != 0 ? voice : s->verse->name;
}

/* Looks for the voice, as long as it isn't the one that is followed; false when it has to be waited for and
 * there is nothing to hear until then. */
static bool find_voice(singer *s, bool behind)
{
    uint32_t name = wanted_name(s);
    if (s->context != NULL && (name == 0 || s->context->id == name)) {
        return true;
    }
    sw_moment begins = s->now;
    bool will;
    const sw_context *found = voice_at(s, name, s->now, &begins, &will);
    if (found != NULL) {
        listen_to(s, found, s->now, behind);
        return true;
    }
    const sw_sung_moment *next = s->context == NULL ? NULL : next_stroke(s);
    if (!will || (next != NULL && sw_moment_compare(next->when, begins) < 0)) {
        return s->context != NULL;
    }
    s->now = begins;
    found = voice_at(s, name, begins, &begins, &will);
    if (found != NULL) {
        listen_to(s, found, s->now, false);
    }
    return found != NULL;
}

static void sing(singer *s, bool behind)
{
    if (s->verse->target != NULL && state_of(s)->voice == 0) {
        listen_to(s, s->verse->target, s->now, behind);
    }
    while (s->item < s->verse->end_item && !s->p->too_many) {
        s->p->too_many = ++s->p->reader->steps > s->p->step_limit;
        if (!find_voice(s, behind)) {
            return;
        }
        const sw_sung_moment *stroke = next_stroke(s);
        if (stroke == NULL || (s->dies && sw_moment_compare(stroke->when, s->death) > 0)) {
            return;
        }
        s->now = stroke->when;
        hear(s, stroke);
        s->stroke++;
        behind = true;
    }
}

/* ---- order ---- */

/* By the text's clock; what is at the same moment stays in the order of the text. */
static int compare_items(const void *a, const void *b)
{
    const sw_text_item *x = a;
    const sw_text_item *y = b;
    int order = sw_moment_compare(x->at, y->at);
    return order != 0 ? order : x->number < y->number ? -1 : x->number > y->number;
}

typedef struct ordered {
    sw_syllable syllable;
    size_t number;
} ordered;

static int compare_syllables(const void *a, const void *b)
{
    const ordered *x = a;
    const ordered *y = b;
    if (x->syllable.line != y->syllable.line) {
        return x->syllable.line < y->syllable.line ? -1 : 1;
    }
    int order = sw_rational_compare(x->syllable.onset, y->syllable.onset);
    if (order == 0) {
        order = sw_rational_compare((sw_rational){x->syllable.grace_num, x->syllable.grace_den},
                                    (sw_rational){y->syllable.grace_num, y->syllable.grace_den});
    }
    return order != 0 ? order : x->number < y->number ? -1 : x->number > y->number;
}

static void sort_syllables(sw_score *score)
{
    ordered *all = sw_alloc((score->syllable_count + 1) * sizeof *all);
    for (size_t i = 0; i < score->syllable_count; i++) {
        all[i] = (ordered){score->syllables[i], i};
    }
    qsort(all, score->syllable_count, sizeof *all, compare_syllables);
    for (size_t i = 0; i < score->syllable_count; i++) {
        score->syllables[i] = all[i].syllable;
    }
    free(all);
}

void sw_lyrics_align(sw_player *p)
{
    sw_lyrics *lyrics = p->lyrics;
    bool graces = false;
    bool ignores = sw_layout_ignores_melismata(p);
    for (size_t i = 0; i < p->score->line_count; i++) {
        graces = graces || lyrics->states[i].takes_graces;
        lyrics->states[i].ignores_melismata = lyrics->states[i].ignores_melismata || ignores;
    }
    for (size_t i = 0; i < lyrics->item_count && !graces; i++) {
        if (lyrics->items[i].kind == SW_TEXT_SETTING) {
            sw_line_state state = {0};
            sw_lyrics_hold(p, &state, lyrics->items[i].music);
            graces = state.takes_graces;
        }
    }
    sw_hearing *hearing = lyrics->verse_count > 0 ? sw_hearing_new(p, graces) : NULL;
    sw_moment *ends = sw_alloc((lyrics->verse_count + 1) * sizeof *ends);
    bool *over = sw_alloc_zero(lyrics->verse_count + 1, sizeof *over);
    for (size_t i = 0; i < lyrics->verse_count; i++) {
        sw_verse *verse = &lyrics->verses[i];
        bool waits = verse->after != SW_NO_INDEX;
        if (waits && !over[verse->after]) {
            continue;
        }
        if (verse->end_item > verse->first_item) {
            qsort(lyrics->items + verse->first_item, verse->end_item - verse->first_item,
                  sizeof *lyrics->items, compare_items);
        }
        singer s = {.p = p, .hearing = hearing, .verse = verse, .item = verse->first_item};
        s.now = waits ? ends[verse->after] : verse->start;
        sing(&s, waits);
        hold_syllables(&s);
        ends[i] = s.now;
        over[i] = s.item == verse->end_item;
        free(s.slots);
    }
    if (hearing != NULL) {
        sw_hearing_free(hearing);
    }
    free(ends);
    free(over);
    sort_syllables(p->score);
    free(lyrics->items);
    free(lyrics->verses);
    free(lyrics->states);
    free(lyrics);
    p->lyrics = NULL;
}
