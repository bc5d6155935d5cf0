/* The proof that nothing but \ottava has changed. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "moves/ottava.h"

static bool same_marks(const sw_reading *x, uint32_t old, const sw_reading *y, uint32_t new)
{
    uint32_t a = x->music[old].first;
    uint32_t b = y->music[new].first;
    while (a != SW_NO_INDEX && b != SW_NO_INDEX) {
        bool mark = x->music[a].kind == SW_MUSIC_MARK;
        if (x->music[a].kind != y->music[b].kind ||
            (mark && !sw_slice_equal(sw_music_slice(x, a), sw_music_slice(y, b)))) {
            return false;
        }
        a = x->music[a].next;
        b = y->music[b].next;
    }
    return a == b;
}

static bool same_events(const sw_reading *x, const sw_score *before, const sw_reading *y,
                        const sw_score *after)
{
    bool same = before->event_count == after->event_count && before->bar_count == after->bar_count &&
                before->staff_count == after->staff_count && before->syllable_count == after->syllable_count;
    for (size_t i = 0; i < before->event_count && same; i++) {
        const sw_event *a = &before->events[i];
        const sw_event *b = &after->events[i];
        same = a->kind == b->kind && a->flags == b->flags && a->voice == b->voice &&
               sw_rational_equal(a->onset, b->onset) && sw_rational_equal(a->duration, b->duration) &&
               a->grace_num == b->grace_num && a->grace_den == b->grace_den &&
               sw_pitch_equal(a->pitch, b->pitch) && same_marks(x, a->chord, y, b->chord) &&
               (a->chord == a->music || same_marks(x, a->music, y, b->music));
    }
    return same;
}

/* The next setting from an index on that is no \ottava. */
static size_t next_other(const sw_reading *reading, const sw_score *score, size_t i)
{
    while (i < score->setting_count && sw_is_ottava(reading, &score->settings[i])) {
        i++;
    }
    return i;
}

static bool same_settings(const sw_reading *x, const sw_score *before, const sw_reading *y,
                          const sw_score *after)
{
    size_t i = next_other(x, before, 0);
    size_t k = next_other(y, after, 0);
    while (i < before->setting_count && k < after->setting_count) {
        const sw_setting *a = &before->settings[i];
        const sw_setting *b = &after->settings[k];
        bool holds_notes = x->music[a->music].kind == SW_MUSIC_ALTERNATIVES;
        if (!sw_rational_equal(a->onset, b->onset) || a->staff != b->staff ||
            x->music[a->music].kind != y->music[b->music].kind ||
            (!holds_notes && !sw_slice_equal(sw_music_slice(x, a->music), sw_music_slice(y, b->music)))) {
            return false;
        }
        i = next_other(x, before, i + 1);
        k = next_other(y, after, k + 1);
    }
    return i == before->setting_count && k == after->setting_count;
}

static bool has_ottava(const sw_reading *reading, const sw_score *score, uint32_t staff, sw_rational onset,
                       int number)
{
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *s = &score->settings[i];
        if (s->staff == staff && sw_rational_equal(s->onset, onset) && sw_is_ottava(reading, s) &&
            sw_ottava_number(reading, s) == number) {
            return true;
        }
    }
    return false;
}

/* The number that holds from a moment on, by the last command there; 0 when there is none. */
static int ottava_from(const sw_reading *reading, const sw_score *score, uint32_t staff, sw_rational onset)
{
    int number = 0;
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *s = &score->settings[i];
        if (s->staff == staff && sw_rational_equal(s->onset, onset) && sw_is_ottava(reading, s)) {
            number = sw_ottava_number(reading, s);
        }
    }
    return number;
}

static bool has_brackets(const sw_reading *reading, const sw_score *score, const sw_brackets *brackets,
                         bool add)
{
    for (size_t i = 0; i < brackets->count; i++) {
        const sw_bracket *b = &brackets->items[i];
        bool there = add ? ottava_from(reading, score, b->staff, b->from) == b->octaves &&
                               has_ottava(reading, score, b->staff, b->to, 0)
                         : has_ottava(reading, score, b->staff, b->from, b->octaves);
        if (there != add) {
            return false;
        }
    }
    return true;
}

static bool refuse(const sw_reading *reading, const char *what, char **error)
{
    if (asprintf(error, "the change is refused: in %s, %s; nothing is written", reading->files[0].text->path,
                 what) < 0) {
        abort();
    }
    return false;
}

/* What must be so afterwards. */
typedef struct goal {
    const sw_chosen *chosen;
    const sw_brackets *brackets;
    bool add; /* the brackets are there, else none of them is */
} goal;

static bool prove_main(const void *what, const sw_reading *before, const sw_reading *after, char **error)
{
    const goal *g = what;
    if (sw_findings_worse(&before->findings, &after->findings) || before->score_count != after->score_count) {
        return refuse(before, "the result could not be read", error);
    }
    for (size_t s = 0; s < before->score_count; s++) {
        if (!same_events(before, &before->scores[s], after, &after->scores[s])) {
            return refuse(before, "notes or what hangs on them would change", error);
        }
        bool chosen_one = before == g->chosen->reading && &before->scores[s] == g->chosen->score;
        bool there = !chosen_one || has_brackets(after, &after->scores[s], g->brackets, g->add);
        if (g->add && !there) { /* what was written is no bracket here */
            return refuse(before,
                          "\\ottava does not write the brackets that were asked for; does the score "
                          "give it a meaning of its own?",
                          error);
        }
        if (!same_settings(before, &before->scores[s], after, &after->scores[s])) {
            return refuse(before, "commands between the notes would change", error);
        }
        if (!there) {
            return refuse(before, "the brackets would not stand where they should", error);
        }
    }
    return true;
}

bool sw_ottava_prove(const sw_move *move, const sw_chosen *chosen, const sw_brackets *brackets, bool add,
                     const sw_read_options *options, char **error)
{
    goal g = {chosen, brackets, add};
    return sw_patch_prove(&move->patch, move->mains, move->main_count, options, prove_main, &g, error);
}
