/* The proof for what hangs on notes and rests: articulations, dynamics, texts, pedals ... */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "write/proof.h"

typedef struct mark {
    sw_proof_place at; /* without a staff for the divided one and its parts */
    sw_slice text;
} mark;

typedef struct marks {
    mark *list;
    size_t count;
    size_t capacity;
} marks;

static int compare_marks(const void *a, const void *b)
{
    const mark *x = a;
    const mark *y = b;
    int order = sw_proof_compare_places(&x->at, &y->at);
    return order != 0 ? order : sw_slice_compare(x->text, y->text);
}

/* Slurs, ties and beams follow the notes of a part. */
static bool follows_notes(sw_mark_class class)
{
    return class == SW_MARK_TIE || class == SW_MARK_SLUR_START || class == SW_MARK_SLUR_END ||
           class == SW_MARK_PHRASE_START || class == SW_MARK_PHRASE_END || class == SW_MARK_BEAM_START ||
           class == SW_MARK_BEAM_END;
}

/* Above or below depends on the staff. */
static sw_slice without_direction(sw_slice text)
{
    bool direction = text.length > 0 && strchr("-^_", text.data[0]) != NULL;
    return direction ? (sw_slice){text.data + 1, text.length - 1} : text;
}

static void add_marks(const sw_proof *proof, marks *all, const sw_reading *reading, const sw_score *score,
                      uint32_t number, const sw_event *event, uint32_t item, const char *staff)
{
    for (uint32_t c = reading->music[item].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind != SW_MUSIC_MARK ||
            (staff[0] == '\0' && reading == proof->before &&
             sw_division_drops(proof->division, reading, c)) ||
            (staff[0] == '\0' && follows_notes(sw_music_mark_class(reading, c)))) {
            continue;
        }
        sw_slice text = sw_music_slice(reading, c);
        all->list = sw_grow(all->list, all->count, &all->capacity, sizeof *all->list);
        all->list[all->count++] = (mark){
            .at = sw_proof_place_of(score, number, event, staff),
            .text = staff[0] == '\0' ? without_direction(text) : text,
        };
    }
}

/* Whether an event's chord is to be rolled by the division. Told by its place in the source: other scores and
 * main files play the same chord. */
static bool gets_roll(const sw_proof *proof, const sw_event *event)
{
    const sw_division *division = proof->division;
    const sw_music *here = &proof->before->music[event->chord];
    for (size_t i = 0; division->event_rolls != NULL && i < division->score->event_count; i++) {
        const sw_music *rolled = &division->reading->music[division->score->events[i].chord];
        if (division->event_rolls[i] && rolled->start == here->start &&
            sw_text_same_file(division->reading->files[rolled->file].text,
                              proof->before->files[here->file].text)) {
            return true;
        }
    }
    return false;
}

/* All marks of a reading in order; of the divided staff each once a moment. */
static marks collect(const sw_proof *proof, const sw_reading *reading)
{
    marks all = {0};
    for (uint32_t s = 0; s < reading->score_count; s++) {
        const sw_score *score = &reading->scores[s];
        for (size_t i = 0; i < score->event_count; i++) {
            const sw_event *event = &score->events[i];
            uint32_t staff = score->voices[event->voice].staff;
            bool divided = reading == proof->before ? sw_proof_is_divided(proof, score, staff)
                                                    : sw_proof_is_new(proof, score, staff);
            const char *key = divided ? "" : sw_proof_staff_key(proof, reading, score, staff);
            bool first = i == 0 || score->events[i - 1].chord != event->chord ||
                         score->events[i - 1].frame != event->frame;
            if (first) {
                add_marks(proof, &all, reading, score, s, event, event->chord, key);
            }
            if (divided && reading == proof->before && gets_roll(proof, event)) {
                all.list = sw_grow(all.list, all.count, &all.capacity, sizeof *all.list);
                all.list[all.count++] =
                    (mark){sw_proof_place_of(score, s, event, key), sw_slice_of("\\arpeggio")};
            }
            if (event->music != event->chord) {
                add_marks(proof, &all, reading, score, s, event, event->music, key);
            }
        }
    }
    if (all.count > 0) {
        qsort(all.list, all.count, sizeof *all.list, compare_marks);
    }
    size_t kept = 0;
    for (size_t i = 0; i < all.count; i++) {
        bool again = kept > 0 && all.list[i].at.staff[0] == '\0' &&
                     compare_marks(&all.list[kept - 1], &all.list[i]) == 0;
        if (!again) {
            all.list[kept++] = all.list[i];
        }
    }
    all.count = kept;
    return all;
}

static void say(const sw_proof *proof, const mark *m, bool lost, char **error)
{
    const sw_reading *reading = lost ? proof->before : proof->after;
    const sw_score *score = &reading->scores[m->at.score];
    char onset[SW_RATIONAL_TEXT];
    if (asprintf(
            error,
            "the change is refused: in %s, bar %d, %s whole notes from the beginning, staff \"%s\": %.*s %s; "
            "nothing is written",
            proof->before->files[0].text->path, m->at.bar == SW_NO_INDEX ? 0 : score->bars[m->at.bar].number,
            sw_rational_print(m->at.onset, onset), m->at.staff, (int)m->text.length, m->text.data,
            lost ? "would be lost" : "would be new") < 0) {
        abort();
    }
}

bool sw_prove_marks(const sw_proof *proof, char **error)
{
    marks before = collect(proof, proof->before);
    marks after = collect(proof, proof->after);
    size_t i = 0;
    while (i < before.count && i < after.count && compare_marks(&before.list[i], &after.list[i]) == 0) {
        i++;
    }
    bool same = i == before.count && i == after.count;
    if (!same) {
        bool lost =
            i < before.count && (i >= after.count || compare_marks(&before.list[i], &after.list[i]) < 0);
        say(proof, lost ? &before.list[i] : &after.list[i], lost, error);
    }
    free(before.list);
    free(after.list);
    return same;
}
