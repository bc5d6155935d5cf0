#include "app/recipe_run.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "stavewright/report.h"

/* A use of a step: on one staff, in some bars. */
typedef struct target {
    const char *staff; /* a name that means this staff only; NULL: the step names none */
    const char *bars;  /* NULL: all */
} target;

typedef struct targets {
    target *items;
    size_t count;
    size_t capacity;
} targets;

/* A step in a cue. */
typedef struct kitchen {
    sw_recipe_run *run;
    const sw_film *film;
    const char *path;
    const sw_recipe_step *step;
    sw_recipe_row *row;
    targets targets;
} kitchen;

void sw_recipe_run_free(sw_recipe_run *run)
{
    sw_changed_files_free(&run->files);
    sw_arena_free(run->arena);
    free(run->rows);
    sw_buffer_free(&run->told);
    sw_buffer_free(&run->why);
}

static bool refuse(kitchen *k, const char *staff, char *error)
{
    sw_buffer_format(&k->run->told, "%s: step %zu, %s%s%s: refused: %s\n", k->path, k->row->step,
                     k->row->move, staff == NULL ? "" : " on ", staff == NULL ? "" : staff, error);
    free(error);
    k->row->refused = true;
    return false;
}

/* ---- where a step is used -------------------------------------------------------------------------------
 */

static void add_target(kitchen *k, const char *staff, const char *bars)
{
    k->targets.items =
        sw_grow(k->targets.items, k->targets.count, &k->targets.capacity, sizeof *k->targets.items);
    k->targets.items[k->targets.count++] = (target){staff, bars};
}

/* A name that means one staff and no other; NULL when there is none. */
static const char *name_of(kitchen *k, const sw_reading *reading, uint32_t score, uint32_t staff)
{
    const sw_staff *s = &reading->scores[score].staves[staff];
    const uint32_t names[] = {s->id, s->instrument, s->variable, s->short_instrument};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        const char *name = sw_reading_name(reading, names[i]);
        uint32_t found_score;
        uint32_t found;
        char *error = NULL;
        if (*name != '\0' && sw_staff_find(reading, name, &found_score, &found, &error) &&
            found_score == score && found == staff) {
            return sw_arena_copy(k->run->arena, sw_slice_of(name));
        }
        free(error);
    }
    return NULL;
}

/* The staves that the step means, by a flag each. False when it has been refused. */
static bool choose_staves(kitchen *k, sw_check *check, uint32_t score, bool *chosen)
{
    const sw_score *s = &check->reading->scores[score];
    char *error = NULL;
    for (uint32_t i = 0; i < s->staff_count; i++) {
        chosen[i] = true;
    }
    if (k->step->staff != NULL && !sw_staves_find(check->reading, score, k->step->staff, chosen, &error)) {
        return refuse(k, NULL, error);
    }
    const sw_playing *playing = k->step->instrument.word == NULL ? NULL : sw_check_playing(check, score);
    for (uint32_t i = 0; i < s->staff_count && playing != NULL; i++) {
        const sw_instrument *instrument = playing->instruments[i];
        chosen[i] =
            chosen[i] && instrument != NULL && sw_wanted_is(&k->step->instrument, instrument->id, false);
    }
    return true;
}

/* The bar in which a finding of the rule stands on each staff: marks [staff * bars + bar]. */
static void mark_findings(const sw_reading *reading, const sw_score *score, const sw_findings *findings,
                          bool *marked)
{
    for (size_t f = 0; f < findings->count; f++) {
        const sw_finding *finding = &findings->items[f];
        for (size_t e = 0; e < score->event_count; e++) {
            const sw_event *event = &score->events[e];
            const sw_music *m = sw_event_written(reading, event);
            const sw_music *chord = &reading->music[event->chord];
            if ((m->file == finding->file && m->start == finding->start) ||
                (chord->file == finding->file && chord->start == finding->start)) {
                uint32_t bar = sw_score_bar_at(score, event->onset);
                uint32_t staff = score->voices[event->voice].staff;
                if (bar != SW_NO_INDEX) {
                    marked[staff * score->bar_count + bar] = true;
                }
            }
        }
    }
}

/* Stretches of neighbouring bars that are marked. */
static void add_stretches(kitchen *k, const sw_score *score, const char *name, const bool *marked)
{
    const sw_bar_range *only = &k->step->bars;
    for (size_t b = 0; b < score->bar_count; b++) {
        size_t first = b;
        while (b < score->bar_count && marked[b] &&
               (!only->given ||
                (score->bars[b].number >= only->first_bar && score->bars[b].number <= only->last_bar))) {
            b++;
        }
        if (b > first) {
            add_target(k, name,
                       sw_arena_format(k->run->arena, "%d-%d", score->bars[first].number,
                                       score->bars[b - 1].number));
        }
    }
}

static void add_where(kitchen *k, sw_check *check, uint32_t score, const bool *chosen)
{
    const sw_reading *reading = check->reading;
    const sw_score *s = &reading->scores[score];
    bool *rules = sw_alloc_zero(sw_rules_count() + 1, sizeof *rules);
    bool *marked = sw_alloc_zero(s->staff_count * s->bar_count + 1, sizeof *marked);
    for (size_t i = 0; i < sw_rules_count(); i++) {
        rules[i] = sw_rules_get(i) == k->step->where;
    }
    sw_check_options options = {.film = k->film, .chosen = rules, .insist = true};
    sw_findings findings = {0};
    sw_fixes fixes = {0};
    sw_check_reading(reading, &options, &findings, &fixes);
    mark_findings(reading, s, &findings, marked);
    for (uint32_t i = 0; i < s->staff_count; i++) {
        const char *name = chosen[i] ? name_of(k, reading, score, i) : NULL;
        if (name != NULL) {
            add_stretches(k, s, name, &marked[i * s->bar_count]);
        }
    }
    sw_fixes_free(&fixes);
    sw_findings_free(&findings);
    free(marked);
    free(rules);
}

static bool find_in_score(kitchen *k, sw_check *check, uint32_t score)
{
    const sw_score *s = &check->reading->scores[score];
    bool *chosen = sw_alloc_zero(s->staff_count + 1, sizeof *chosen);
    bool good = choose_staves(k, check, score, chosen);
    if (good && k->step->where != NULL) {
        add_where(k, check, score, chosen);
    }
    for (uint32_t i = 0; good && k->step->where == NULL && i < s->staff_count; i++) {
        const char *name = chosen[i] ? name_of(k, check->reading, score, i) : NULL;
        if (name != NULL) {
            add_target(k, name, k->step->bars_word);
        } else if (chosen[i]) {
            char label[32];
            sw_buffer_format(&k->run->told,
                             "%s: step %zu, %s: %s has no name that means it alone: left as it is\n", k->path,
                             k->row->step, k->row->move, sw_staff_label(check->reading, s, i, label));
        }
    }
    free(chosen);
    return good;
}

static bool find_targets(kitchen *k, const sw_read_options *options)
{
    char *error = NULL;
    k->row->everywhere = k->step->staff == NULL && k->step->instrument.word == NULL && k->step->where == NULL;
    if (k->row->everywhere) {
        add_target(k, NULL, k->step->bars_word);
        return true;
    }
    sw_reading *reading = sw_read(k->path, options, &error);
    if (reading == NULL) {
        return refuse(k, NULL, error);
    }
    sw_check check = sw_check_begin(reading, k->film);
    bool good = true;
    for (uint32_t s = 0; s < reading->score_count && good; s++) {
        good = reading->scores[s].in_markup || find_in_score(k, &check, s);
    }
    sw_check_end(&check);
    sw_reading_free(reading);
    return good;
}

/* ---- one use --------------------------------------------------------------------------------------------
 */

static size_t count_edits(const sw_patch *patch)
{
    size_t count = 0;
    for (size_t i = 0; i < patch->count; i++) {
        count += patch->files[i].edits.count;
    }
    return count;
}

static bool take(kitchen *k, const sw_move *move, const char *staff)
{
    char *error = NULL;
    sw_report_findings(move->mains[0], &move->findings, &k->run->told);
    sw_buffer_append(&k->run->why,
                     sw_buffer_slice(&move->notes)); /* the cue's own parts change along: no news */
    sw_buffer_append(&k->run->why, sw_buffer_slice(&move->why));
    k->row->left += move->findings.count;
    k->row->places += count_edits(&move->patch);
    return sw_changed_files_keep(&k->run->files, &move->patch, &error) || refuse(k, staff, error);
}

/* What has been read is not what the files hold by now. No reading has it any more. */
static void forget(sw_recipe_run *run)
{
    sw_shelf_free(run->shelf);
    run->shelf = NULL;
}

static bool use(kitchen *k, const target *t, const sw_read_options *options)
{
    const sw_recipe_step *step = k->step;
    char **words = sw_alloc((step->word_count + 6) * sizeof *words);
    size_t count = step->word_count;
    if (count > 0) {
        memcpy(words, step->words, count * sizeof *words);
    }
    const char *const more[] = {t->staff == NULL ? NULL : "--staff",
                                t->staff,
                                t->bars == NULL ? NULL : "--bars",
                                t->bars,
                                "--",
                                k->path};
    for (size_t i = 0; i < sizeof more / sizeof more[0]; i++) {
        if (more[i] != NULL) {
            words[count++] = (char *)more[i]; /* as those of main(): nobody writes into them */
        }
    }
    sw_move_words m = {0};
    void *own = sw_move_command_read(step->move, &m, (int)count, words);
    char *error = NULL;
    sw_move *move = NULL;
    if (own != NULL) {
        m.reading = *options;
        m.film = k->film;
        move = step->move->make(k->path, &m, own, &error);
    } else if (asprintf(&error, "it can't be used so") < 0) {
        abort();
    }
    bool good = move != NULL ? take(k, move, t->staff) : refuse(k, t->staff, error);
    bool changed = move != NULL && move->patch.count > 0;
    sw_move_free(move);
    if (changed) {
        forget(k->run);
    }
    free(own);
    free(words);
    return good;
}

static sw_read_options options_now(sw_recipe_run *run, const sw_text ***overlays)
{
    sw_read_options options = run->reading;
    *overlays = sw_changed_files_overlays(&run->files);
    options.overlays = *overlays;
    options.overlay_count = run->files.count;
    run->shelf = run->shelf == NULL ? sw_shelf_new() : run->shelf;
    options.shelf = run->shelf;
    return options;
}

static bool run_step(kitchen *k)
{
    const sw_text **overlays;
    sw_read_options options = options_now(k->run, &overlays);
    bool good = find_targets(k, &options);
    free(overlays);
    for (size_t i = 0; i < k->targets.count && good; i++) {
        options = options_now(k->run, &overlays);
        good = use(k, &k->targets.items[i], &options);
        free(overlays);
    }
    k->row->uses = k->row->everywhere ? 0 : k->targets.count;
    free(k->targets.items);
    return good;
}

static bool is_for(const sw_recipe_step *step, const char *path)
{
    bool wanted = step->cue_count == 0;
    for (size_t i = 0; i < step->cue_count; i++) {
        wanted = wanted || sw_wanted_is(&step->cues[i], path, true);
    }
    return wanted;
}

bool sw_recipe_run_cue(sw_recipe_run *run, const sw_film *film, const char *path)
{
    bool good = true;
    for (size_t i = 0; i < run->recipe->count && good; i++) {
        const sw_recipe_step *step = &run->recipe->steps[i];
        if (!is_for(step, path)) {
            continue;
        }
        sw_recipe_row row = {
            .cue = sw_arena_copy(run->arena, sw_slice_of(path)), .step = i + 1, .move = step->move->name};
        kitchen k = {.run = run, .film = film, .path = path, .step = step, .row = &row};
        good = run_step(&k);
        run->rows = sw_grow(run->rows, run->row_count, &run->row_capacity, sizeof *run->rows);
        run->rows[run->row_count++] = row;
    }
    forget(run); /* before the texts that it holds */
    if (good) {
        sw_changed_files_sweep(&run->files);
    } else {
        sw_changed_files_take_back(&run->files);
        run->refused++;
    }
    return good;
}
