/* Reads the result of a division back and compares it with what was there before. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "write/division.h"
#include "write/proof.h"

/* A note (or, outside of the divided staff, a rest) as it is heard, with the staff that it must be on. */
typedef struct row {
    sw_proof_place at;
    sw_rational duration;
    sw_pitch pitch;
    uint32_t kind;
    const char *drum;
} row;

typedef struct rows {
    row *list;
    size_t count;
    size_t capacity;
} rows;

sw_proof_place sw_proof_place_of(const sw_score *score, uint32_t number, const sw_event *event,
                                 const char *staff)
{
    return (sw_proof_place){.score = number,
                            .onset = event->onset,
                            .grace = {event->grace_num, event->grace_den},
                            .staff = staff,
                            .bar = sw_score_bar_at(score, event->onset)};
}

int sw_proof_compare_places(const sw_proof_place *x, const sw_proof_place *y)
{
    if (x->score != y->score) {
        return x->score < y->score ? -1 : 1;
    }
    int order = sw_rational_compare(x->onset, y->onset);
    order = order != 0 ? order : sw_rational_compare(x->grace, y->grace);
    return order != 0 ? order : strcmp(x->staff, y->staff);
}

static int compare_rows(const void *a, const void *b)
{
    const row *x = a;
    const row *y = b;
    int order = sw_proof_compare_places(&x->at, &y->at);
    if (order == 0) {
        order = (int)x->kind - (int)y->kind;
    }
    if (order == 0) {
        order = sw_pitch_compare(x->pitch, y->pitch);
    }
    if (order == 0) {
        order = strcmp(x->drum, y->drum);
    }
    if (order == 0) {
        order = sw_rational_compare(x->duration, y->duration);
    }
    return order;
}

const char *sw_proof_staff_key(const sw_proof *proof, const sw_reading *reading, const sw_score *score,
                               uint32_t staff)
{
    const sw_staff *s = &score->staves[staff];
    if (s->id != 0) {
        return sw_reading_name(reading, s->id);
    }
    return sw_arena_format(proof->arena, "(%s)", sw_reading_name(reading, s->instrument));
}

static void add_row(rows *all, const sw_reading *reading, const sw_score *score, uint32_t number,
                    const sw_event *event, const char *staff)
{
    all->list = sw_grow(all->list, all->count, &all->capacity, sizeof *all->list);
    all->list[all->count++] = (row){
        .at = sw_proof_place_of(score, number, event, staff),
        .duration = event->duration,
        .pitch = event->kind == SW_EVENT_NOTE ? event->pitch : (sw_pitch){0, 0, 0},
        .kind = event->kind,
        .drum =
            event->kind == SW_EVENT_DRUM ? sw_reading_name(reading, reading->music[event->music].name) : "",
    };
}

static bool is_note(const sw_event *event)
{
    return event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM;
}

/* What the ids of the parts' staves begin with. */
static const char *own_id(const sw_division *division)
{
    return division->change_id != NULL
               ? division->change_id
               : sw_reading_name(division->reading, division->score->staves[division->staff].id);
}

/* Whether it is the staff that was chosen, and not another one that plays the same. */
static bool is_own(const sw_division *division, const sw_score *score, uint32_t staff)
{
    return score == division->score && staff == division->staff;
}

/* Whether the staff is divided: it was chosen, or its notes come through the divided variable. */
bool sw_proof_is_divided(const sw_proof *proof, const sw_score *score, uint32_t staff)
{
    const sw_division *division = proof->division;
    const sw_reading *reading = proof->before;
    if (!proof->affected) {
        return false;
    }
    if (is_own(division, score, staff)) {
        return true;
    }
    uint32_t own = division->score->staves[division->staff].variable;
    return own != 0 && sw_shares_variable(division->reading, own, reading) &&
           strcmp(sw_reading_name(reading, score->staves[staff].variable),
                  sw_reading_name(division->reading, own)) == 0;
}

/* All that must be heard after the change. On divided staves only notes count, without a staff unless their
 * part is known. */
static void expect(const sw_proof *proof, rows *all)
{
    const sw_reading *reading = proof->before;
    const sw_division *division = proof->division;
    for (uint32_t s = 0; s < reading->score_count; s++) {
        const sw_score *score = &reading->scores[s];
        for (size_t i = 0; i < score->event_count; i++) {
            const sw_event *event = &score->events[i];
            uint32_t staff = score->voices[event->voice].staff;
            if (!sw_proof_is_divided(proof, score, staff)) {
                if (event->kind != SW_EVENT_SKIP) {
                    add_row(all, reading, score, s, event, sw_proof_staff_key(proof, reading, score, staff));
                }
            } else if (is_note(event)) {
                const char *id = own_id(division);
                bool known = is_own(division, score, staff) && id[0] != '\0';
                for (uint32_t part = 0; known && part < division->parts; part++) {
                    bool own = division->change_part != NULL ? division->change_part[i] == part
                                                             : sw_division_gives(division, i, part);
                    if (own) {
                        add_row(all, reading, score, s, event,
                                sw_arena_format(proof->arena, "%s%s", id, division->suffixes[part]));
                    }
                }
                if (!known) {
                    add_row(all, reading, score, s, event, "");
                }
            }
        }
    }
}

/* Whether a score has the staff of another part. */
static bool has_part(const sw_reading *reading, const sw_score *score, const char *id, const char *suffix)
{
    size_t length = strlen(id);
    for (uint32_t i = 0; i < score->staff_count; i++) {
        const char *other = sw_reading_name(reading, score->staves[i].id);
        if (strncmp(other, id, length) == 0 && strcmp(other + length, suffix) == 0) {
            return true;
        }
    }
    return false;
}

/* Whether an id is that of a part of the chosen staff. */
static bool is_own_part(const sw_division *division, const char *id)
{
    const char *own = own_id(division);
    size_t length = strlen(own);
    bool found = false;
    for (uint32_t part = 0; part < division->parts && length > 0 && !found; part++) {
        found = strncmp(id, own, length) == 0 && strcmp(id + length, division->suffixes[part]) == 0;
    }
    return found;
}

/* Its variable has a part's suffix. */
bool sw_proof_is_new(const sw_proof *proof, const sw_score *score, uint32_t staff)
{
    const sw_division *division = proof->division;
    const sw_reading *after = proof->after;
    if (!proof->affected) {
        return false;
    }
    const char *id = sw_reading_name(after, score->staves[staff].id);
    const char *variable = sw_reading_name(after, score->staves[staff].variable);
    const char *own = sw_reading_name(division->reading, division->score->staves[division->staff].variable);
    const char *chosen = own_id(division);
    for (uint32_t part = 0; part < division->parts; part++) {
        if (division->suffixes[part][0] ==
            '\0') { /* it is called as before, and so may be others elsewhere */
            if (strcmp(id, chosen) == 0 && has_part(after, score, chosen, division->suffixes[1])) {
                return true;
            }
            continue;
        }
        size_t length = strlen(own);
        if (length > 0 && strncmp(variable, own, length) == 0 &&
            strcmp(variable + length, division->suffixes[part]) == 0) {
            return true;
        }
    }
    if (strcmp(id, chosen) != 0 && is_own_part(division, id)) {
        return true;
    }
    /* Without a variable and an id: the staves of the new group. */
    uint32_t group = score->staves[staff].group;
    return own[0] == '\0' && chosen[0] == '\0' && group != SW_NO_INDEX && division->group != NULL &&
           strcmp(sw_reading_name(after, score->groups[group].type), division->group) == 0;
}

static void observe(const sw_proof *proof, rows *all)
{
    const sw_reading *after = proof->after;
    for (uint32_t s = 0; s < after->score_count; s++) {
        const sw_score *score = &after->scores[s];
        const sw_score *old = s < proof->before->score_count ? &proof->before->scores[s] : NULL;
        for (size_t i = 0; i < score->event_count; i++) {
            const sw_event *event = &score->events[i];
            uint32_t staff = score->voices[event->voice].staff;
            if (!sw_proof_is_new(proof, score, staff)) {
                if (event->kind != SW_EVENT_SKIP) {
                    add_row(all, after, score, s, event, sw_proof_staff_key(proof, after, score, staff));
                }
            } else if (is_note(event)) {
                bool known = old == proof->division->score &&
                             is_own_part(proof->division, sw_reading_name(after, score->staves[staff].id));
                add_row(all, after, score, s, event,
                        known ? sw_proof_staff_key(proof, after, score, staff) : "");
            }
        }
    }
}

static char *describe(const row *r, const sw_reading *reading)
{
    char onset[SW_RATIONAL_TEXT];
    char duration[SW_RATIONAL_TEXT];
    char pitch[SW_PITCH_TEXT];
    const sw_score *score = &reading->scores[r->at.score];
    char *text = NULL;
    int number = r->at.bar == SW_NO_INDEX ? 0 : score->bars[r->at.bar].number;
    if (asprintf(&text, "bar %d, %s whole notes from the beginning, staff \"%s\": %s of length %s", number,
                 sw_rational_print(r->at.onset, onset), r->at.staff,
                 r->kind == SW_EVENT_NOTE ? sw_pitch_print(r->pitch, pitch) : "a rest or drum note",
                 sw_rational_print(r->duration, duration)) < 0) {
        abort();
    }
    return text;
}

static void sort(const rows *all)
{
    if (all->count > 0) {
        qsort(all->list, all->count, sizeof *all->list, compare_rows);
    }
}

/* Notes whose staff is not known count once where several parts may share them. */
static void count_once(rows *all)
{
    size_t kept = 0;
    for (size_t i = 0; i < all->count; i++) {
        bool again = kept > 0 && all->list[i].at.staff[0] == '\0' &&
                     compare_rows(&all->list[kept - 1], &all->list[i]) == 0;
        if (!again) {
            all->list[kept++] = all->list[i];
        }
    }
    all->count = kept;
}

static bool compare(rows *before, rows *after, bool shared, const sw_reading *old, const sw_reading *new,
                    char **error)
{
    sort(before);
    sort(after);
    if (shared) {
        count_once(before);
        count_once(after);
    }
    size_t count = before->count < after->count ? before->count : after->count;
    size_t i = 0;
    while (i < count && compare_rows(&before->list[i], &after->list[i]) == 0) {
        i++;
    }
    if (i == before->count && i == after->count) {
        return true;
    }
    bool lost =
        i < before->count && (i >= after->count || compare_rows(&before->list[i], &after->list[i]) < 0);
    const row *r = lost ? &before->list[i] : &after->list[i];
    char *what = describe(r, lost ? old : new);
    if (asprintf(error, "the change is refused: in %s, %s %s; nothing is written", old->files[0].text->path,
                 what, lost ? "would be lost" : "would be new") < 0) {
        abort();
    }
    free(what);
    return false;
}

static bool prove_main(const void *what, const sw_reading *before, const sw_reading *after, char **error)
{
    const sw_division *division = what;
    uint32_t variable = division->score->staves[division->staff].variable;
    bool affected = before == division->reading ||
                    (variable != 0 && sw_shares_variable(division->reading, variable, before));
    sw_proof proof = {division, before, after, affected, sw_arena_new()};
    rows expected = {0};
    rows observed = {0};
    bool same = true;
    if (sw_findings_errors(&after->findings) > sw_findings_errors(&before->findings)) {
        const sw_finding *f = &after->findings.items[after->findings.count - 1];
        if (asprintf(error, "the change is refused: the result would have an error: %s. Nothing is written",
                     f->message) < 0) {
            abort();
        }
        same = false;
    }
    if (same && after->score_count != before->score_count) {
        *error = strdup("the change is refused: the number of scores would change. Nothing is written");
        same = false;
    }
    if (same) {
        expect(&proof, &expected);
        observe(&proof, &observed);
        same = compare(&expected, &observed, division->event_parts != NULL, before, after, error) &&
               sw_prove_marks(&proof, error);
    }
    free(expected.list);
    free(observed.list);
    sw_arena_free(proof.arena);
    return same;
}

bool sw_prove_division(const sw_division *division, sw_reading *const *mains, size_t main_count,
                       const sw_patch *patch, const sw_read_options *options, char **error)
{
    return sw_patch_prove(patch, mains, main_count, options, prove_main, division, error);
}
