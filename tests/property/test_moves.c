/* Transformations on real scores: into a score that was found, words are sown at random ("pizz.", "arco",
 * mutes), and the transformation has to deal with them.
 *
 * What must hold: the edit is proved; done twice it changes nothing more; what it left is told. SW_SEED sets
 * the seed, SW_MOVES how many uses are wanted, SW_MOVES_KEEP a folder that gets some of the results, for the
 * compiler to judge (tests/reference/test_moves_compiled.py); SW_VERBOSE shows the diffs.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>

#include "checks/changeovers.h"
#include "checks/say.h"
#include "players/staff_instrument.h"
#include "stavewright/move.h"

static uint64_t random_state;
static bool verbose;
static const char *keep_folder;
static size_t kept;
static size_t failures;

static uint32_t chance(uint32_t below)
{
    random_state ^= random_state << 13; /* Marsaglia, Xorshift RNGs, 2003 */
    random_state ^= random_state >> 7;
    random_state ^= random_state << 17;
    return below == 0 ? 0 : (uint32_t)((random_state >> 11) % below);
}

/* ---- scores with sown words -----------------------------------------------------------------------------
 */

/* A score of a main file, with the words in it, held in memory. */
typedef struct field {
    const char *path;
    sw_reading *bare;    /* without the words: the patch borrows its texts */
    sw_reading *reading; /* with them */
    size_t score;
    uint32_t staff;
    sw_patch patch; /* the words */
    sw_read_options options;
    const sw_text **overlays;
} field;

typedef struct world {
    sw_instruments *instruments;
    sw_techniques *techniques;
} world;

/* A random staff of a family; SW_NO_INDEX: none. */
static uint32_t draw_staff(const world *w, const sw_reading *reading, const sw_score *score, sw_family family)
{
    for (int i = 0; i < 20 && score->staff_count > 0; i++) {
        uint32_t staff = chance((uint32_t)score->staff_count);
        const sw_instrument *instrument = sw_staff_instrument(w->instruments, reading, score, staff);
        if (instrument != NULL && instrument->family == family) {
            return staff;
        }
    }
    return SW_NO_INDEX;
}

/* Adds words at random notes of a staff, one after another. */
static size_t sow(const sw_score *score, uint32_t staff, const char *const *words, size_t word_count,
                  sw_change *changes, size_t most)
{
    size_t count = 0;
    size_t word = 0;
    uint32_t step = 2 + chance(12);
    for (uint32_t e = 0; e < score->event_count && count < most; e++) {
        const sw_event *event = &score->events[e];
        bool wanted = score->voices[event->voice].staff == staff && event->kind == SW_EVENT_NOTE &&
                      (event->flags & (SW_EVENT_CUE | SW_EVENT_PERCENT | SW_EVENT_GRACE)) == 0;
        if (wanted && chance(step) == 0) {
            changes[count++] =
                (sw_change){.kind = SW_CHANGE_ADD_MARK, .event = e, .text = words[word++ % word_count]};
            e += step;
        }
    }
    return count;
}

static void leave_field(field *f)
{
    sw_reading_free(f->reading);
    free(f->overlays);
    sw_patch_free(&f->patch);
    sw_reading_free(f->bare);
}

/* Opens a main file and sows; false when nothing could be sown. */
static bool open_field(const world *w, const char *path, sw_family family, const char *const *words,
                       size_t word_count, field *f)
{
    enum { MOST = 8 };
    sw_change changes[MOST];
    char *error = NULL;
    *f = (field){.path = path};
    sw_reading *reading = sw_read(path, NULL, &error);
    bool good = reading != NULL && reading->score_count > 0;
    for (size_t i = 0; good && i < reading->findings.count; i++) {
        good = reading->findings.items[i].severity != SW_ERROR;
    }
    if (good) {
        f->score = 0; /* the one that a file without further words means */
        const sw_score *score = &reading->scores[f->score];
        f->staff = draw_staff(w, reading, score, family);
        size_t count = f->staff == SW_NO_INDEX ? 0 : sow(score, f->staff, words, word_count, changes, MOST);
        sw_reading *mains[] = {reading};
        sw_edit_request request = {.reading = reading,
                                   .score = score,
                                   .changes = changes,
                                   .count = count,
                                   .elsewhere = SW_ELSEWHERE_FOLLOW,
                                   .mains = mains,
                                   .main_count = 1};
        sw_buffer notes = {0};
        good = count > 0 && sw_edit_score(&request, &f->patch, &notes, &error);
        sw_buffer_free(&notes);
    }
    if (good) {
        f->options = sw_patch_options(&f->patch, NULL, &f->overlays);
        f->reading = sw_read(path, &f->options, &error);
    }
    free(error);
    if (!good) {
        sw_patch_free(&f->patch);
    }
    if (!good && reading != NULL) {
        sw_reading_free(reading);
    }
    f->bare = reading;
    return good;
}

/* The score as it is after a move. */
static sw_reading *read_after(const field *f, const sw_move *move, const sw_text ***texts,
                              sw_read_options *options)
{
    char *error = NULL;
    const sw_text **sown;
    sw_read_options before = sw_patch_options(&f->patch, NULL, &sown);
    *options = sw_patch_options(&move->patch, &before, texts);
    sw_reading *after = sw_read(f->path, options, &error);
    free(sown);
    free(error);
    return after;
}

static void write_below(const char *folder, const sw_text *text)
{
    char path[1024];
    snprintf(path, sizeof path, "%s/%s", folder, text->path);
    for (char *slash = strchr(path + 1, '/'); slash != NULL; slash = strchr(slash + 1, '/')) {
        *slash = '\0';
        mkdir(path, 0777);
        *slash = '/';
    }
    FILE *file = fopen(path, "wb");
    if (file != NULL) {
        fwrite(text->bytes, 1, text->length, file);
        fclose(file);
    }
}

/* A copy of all files of the result, in a folder of its own; the main files are listed. */
static void keep(const sw_reading *after)
{
    if (keep_folder == NULL) {
        return;
    }
    char folder[512];
    snprintf(folder, sizeof folder, "%s/%05zu", keep_folder, kept++);
    for (size_t i = 0; i < after->file_count; i++) {
        write_below(folder, after->files[i].text);
    }
    char path[600];
    snprintf(path, sizeof path, "%s/LIST", keep_folder);
    FILE *list = fopen(path, "a");
    if (list != NULL) {
        fprintf(list, "%s/%s\n", folder, after->files[0].text->path);
        fclose(list);
    }
}

static void fail(const field *f, const char *what)
{
    printf("FAILED: %s, score %zu, staff %u: %s\n", f->path, f->score + 1, f->staff + 1, what);
    failures++;
}

static void show(const sw_move *move)
{
    if (verbose) {
        sw_buffer diff = {0};
        sw_patch_diff(&move->patch, &diff);
        fputs(sw_buffer_text(&diff), stdout);
        fputs(sw_buffer_text(&move->why), stdout);
        for (size_t i = 0; i < move->findings.count; i++) {
            printf("  %s\n", move->findings.items[i].message);
        }
        sw_buffer_free(&diff);
    }
}

/* ---- courtesy -------------------------------------------------------------------------------------------
 */

static bool is_up_bow(const sw_reading *reading, uint32_t mark)
{
    return sw_slice_ends(sw_music_slice(reading, mark), "\\upbow");
}

/* Change-overs of the staff without time and without an up-bow. */
static size_t count_tight(const world *w, const sw_reading *reading, const sw_score *score, uint32_t staff)
{
    sw_playing *playing = sw_playing_of(w->techniques, w->instruments, reading, score);
    size_t tight = 0;
    sw_changeovers list = sw_changeovers_of_staff(w->techniques, reading, score, playing, staff);
    for (size_t i = 0; i < list.count; i++) {
        const sw_event *before = &score->events[list.strokes.items[list.items[i].before].event];
        tight += !sw_event_has_mark(reading, before, is_up_bow);
    }
    sw_changeovers_free(&list);
    sw_playing_free(playing);
    return tight;
}

/* How many notes begin: no move of this file takes one away or adds one. */
static size_t count_strokes(const sw_reading *reading, const sw_score *score)
{
    size_t count = 0;
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        sw_strokes strokes = sw_strokes_of_staff(reading, score, staff);
        for (size_t i = 0; i < strokes.count; i++) {
            count += !strokes.items[i].tied;
        }
        free(strokes.items);
    }
    return count;
}

static bool use_courtesy(const world *w, const char *path)
{
    static const char *const bows[] = {"^\"pizz.\"", "^\"arco\""};
    static const char *const mutes[] = {"^\"con sord.\"", "^\"senza sord.\""};
    field f;
    sw_family family = chance(4) == 0 ? SW_BRASS : SW_STRINGS;
    if (!open_field(w, path, family, family == SW_STRINGS && chance(3) > 0 ? bows : mutes, 2, &f)) {
        return false;
    }
    char *error = NULL;
    const sw_score *score = &f.reading->scores[f.score];
    sw_courtesy_options options = {
        .places = {.first_line = 0}, .value = sw_rational_zero(), .elsewhere = SW_ELSEWHERE_FOLLOW};
    size_t tight = count_tight(w, f.reading, score, f.staff);
    sw_move *move = sw_move_courtesy(path, &options, &f.options, &error);
    bool used = false;
    if (move == NULL) {
        if (verbose) {
            printf("  %s: %s\n", path, error);
        }
        free(error);
    } else {
        show(move);
        used = move->patch.count > 0;
        const sw_text **texts;
        sw_read_options after_options;
        sw_reading *after = read_after(&f, move, &texts, &after_options);
        const sw_score *result = &after->scores[f.score];
        size_t left = count_tight(w, after, result, f.staff);
        if (left > move->findings.count) {
            fail(&f, "more is left than told");
        }
        if (left > tight) {
            fail(&f, "there is less time than before");
        }
        if (count_strokes(after, result) != count_strokes(f.reading, score)) {
            fail(&f, "notes have come or gone");
        }
        sw_move *again = sw_move_courtesy(path, &options, &after_options, &error);
        if (again == NULL || again->patch.count > 0) {
            fail(&f, "done twice, it changes something again");
            if (again != NULL) {
                show(again);
            }
        }
        sw_move_free(again);
        if (used) {
            keep(after);
        }
        sw_reading_free(after);
        free(texts);
        sw_move_free(move);
    }
    leave_field(&f);
    return used;
}

/* ---- ring -----------------------------------------------------------------------------------------------
 */

static bool use_ring(const world *w, const char *path)
{
    static const char *const bows[] = {"^\"pizz.\"", "^\"arco\""};
    field f;
    if (!open_field(w, path, SW_STRINGS, bows, 2, &f)) {
        return false;
    }
    char *error = NULL;
    const sw_score *score = &f.reading->scores[f.score];
    sw_ring_options options = {.elsewhere = SW_ELSEWHERE_FOLLOW};
    sw_move *move = sw_move_ring(path, &options, &f.options, &error);
    bool used = false;
    if (move == NULL) {
        free(error);
    } else {
        show(move);
        used = move->patch.count > 0;
        const sw_text **texts;
        sw_read_options after_options;
        sw_reading *after = read_after(&f, move, &texts, &after_options);
        if (count_strokes(after, &after->scores[f.score]) != count_strokes(f.reading, score)) {
            fail(&f, "notes have come or gone");
        }
        sw_move *again = sw_move_ring(path, &options, &after_options, &error);
        if (again == NULL || again->patch.count > 0) {
            fail(&f, "done twice, it changes something again");
        }
        sw_move_free(again);
        if (used) {
            keep(after);
        }
        sw_reading_free(after);
        free(texts);
        sw_move_free(move);
    }
    leave_field(&f);
    return used;
}

/* ---- the scores -----------------------------------------------------------------------------------------
 */

static char paths[2000][512];
static size_t path_count;

static void find_scores(void)
{
    const char *folder = getenv("SW_SCORES");
    char line[1024];
    snprintf(line, sizeof line, "%s/LIST.tsv", folder == NULL ? "" : folder);
    FILE *file = fopen(line, "r");
    bool head = true;
    while (file != NULL && path_count < 1990 && fgets(line, sizeof line, file) != NULL) {
        line[strcspn(line, "\t\n")] = '\0';
        if (!head) {
            snprintf(paths[path_count++], sizeof paths[0], "%.200s/%.300s", folder, line);
        }
        head = false;
    }
    if (file != NULL) {
        fclose(file);
    }
    static const char *const cues[] = {"1m1-first-light", "1m2-across-the-flats", "1m3-the-crossing"};
    for (size_t i = 0; i < sizeof cues / sizeof cues[0]; i++) {
        snprintf(paths[path_count++], sizeof paths[0], "corpus/%s/score.ly", cues[i]);
    }
}

int main(void)
{
    static const struct {
        const char *name;
        bool (*use)(const world *w, const char *path);
    } moves[] = {{"courtesy", use_courtesy}, {"ring", use_ring}};
    const char *seed = getenv("SW_SEED");
    const char *count = getenv("SW_MOVES");
    keep_folder = getenv("SW_MOVES_KEEP");
    verbose = getenv("SW_VERBOSE") != NULL;
    random_state = seed != NULL ? strtoull(seed, NULL, 10) : (uint64_t)time(NULL);
    size_t wanted = count != NULL ? strtoull(count, NULL, 10) : 10;
    printf("# seed %llu\n", (unsigned long long)random_state);
    random_state = random_state * 2654435761u + 88172645463325252u;
    find_scores();
    char *error = NULL;
    world w = {sw_instruments_load(NULL, (sw_slice){0}, &error),
               sw_techniques_load(NULL, (sw_slice){0}, &error)};
    for (size_t m = 0; m < sizeof moves / sizeof moves[0]; m++) {
        size_t used = 0;
        size_t tries = 0;
        for (; used < wanted && tries < 40 * wanted; tries++) {
            used += moves[m].use(&w, paths[chance((uint32_t)path_count)]);
        }
        printf("# %s: %zu uses proved in %zu tries\n", moves[m].name, used, tries);
        failures += used < wanted;
    }
    sw_techniques_free(w.techniques);
    sw_instruments_free(w.instruments);
    return failures > 0;
}
