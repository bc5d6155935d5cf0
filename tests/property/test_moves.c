/* Transformations on real scores: into a score that was found, words are sown at random ("pizz.", "arco",
 * mutes), and the transformation has to deal with them.
 *
 * What must hold: the edit is proved; done twice it changes nothing more; what it left is told. SW_SEED sets
 * the seed, SW_MOVES how many uses are wanted, SW_MOVES_KEEP a folder that gets some of the results, for the
 * compiler to judge (tests/reference/test_moves_compiled.py); SW_VERBOSE shows the diffs, and SW_MOVE names
 * the only transformation to use.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>

#include "checks/changeovers.h"
#include "checks/say.h"
#include "players/playing.h"
#include "players/staff_instrument.h"
#include "stavewright/check.h"
#include "stavewright/move.h"
#include "write/draft.h"

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
                      (event->flags & (SW_EVENT_CUE | SW_EVENT_GRACE)) == 0;
        if (wanted && chance(step) == 0) {
            changes[count++] =
                (sw_change){.kind = SW_CHANGE_ADD_MARK, .event = e, .text = words[word++ % word_count]};
            e += step;
        }
    }
    return count;
}

/* Writes a tempo before the first note or rest of the staff, where the score tells none. */
static bool sow_tempo(field *f, const sw_reading *reading, const sw_score *score, char **error)
{
    sw_staff_events events = sw_score_staff_events(score, f->staff);
    const sw_event *first = &score->events[events.first];
    const sw_music *m = &reading->music[first->chord];
    if (sw_tempo_is_told(reading, score, sw_rational_zero()) || sw_music_is_called(m)) {
        return true;
    }
    sw_patch_add(&f->patch, reading->files[m->file].text, m->start, m->start, sw_slice_of("\\tempo 4 = 60 "));
    return sw_patch_finish(&f->patch, error);
}

static bool has_errors(const sw_reading *reading)
{
    return sw_findings_errors(&reading->findings) > 0;
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

/* Change-overs of the staff without time and without an up-bow. */
static size_t count_tight(const world *w, const sw_reading *reading, const sw_score *score, uint32_t staff)
{
    char *error = NULL;
    sw_film *film = sw_check_film(NULL, (sw_slice){0}, &error);
    sw_seating *seating = sw_seating_of(film, reading, score);
    sw_seat_range *ranges = sw_seating_of_notes(seating, reading, score);
    sw_seated_notes who = {seating, ranges};
    sw_playing *playing = sw_playing_of_players(w->techniques, w->instruments, reading, score, who);
    size_t tight = 0;
    sw_changeovers list = sw_changeovers_of_staff(w->techniques, reading, score, playing, staff, who);
    for (size_t i = 0; i < list.count; i++) {
        const sw_event *before = &score->events[list.strokes.items[list.items[i].before].event];
        tight += !sw_event_has_mark(reading, before, sw_mark_is_up_bow);
    }
    sw_changeovers_free(&list);
    sw_playing_free(playing);
    free(ranges);
    sw_seating_free(seating);
    sw_film_free(film);
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

/* ---- what holds for every move --------------------------------------------------------------------------
 */

/* A move with options of its own, on a path. */
typedef sw_move *make_move(const char *path, const void *options, const sw_read_options *reading_options,
                           char **error);

/* Makes a move on a field, looks at what must always hold, and returns whether it changed something. *after
 * is the score then, NULL when the move can't be done. */
/* Whether done twice a move changes nothing more: breaths that could not all be marked may come elsewhere. */
typedef enum settling { NEVER, WHEN_COMPLETE, ALWAYS } settling;

static bool use_move(const world *w, field *f, make_move *make, const void *options, settling settles,
                     void (*look)(const world *w, const field *f, const sw_move *move,
                                  const sw_reading *after))
{
    char *error = NULL;
    sw_move *move = make(f->path, options, &f->options, &error);
    if (move == NULL) {
        if (verbose) {
            printf("  %s: %s\n", f->path, error);
        }
        free(error);
        leave_field(f);
        return false;
    }
    show(move);
    bool used = move->patch.count > 0;
    const sw_text **texts;
    sw_read_options after_options;
    sw_reading *after = read_after(f, move, &texts, &after_options);
    look(w, f, move, after);
    bool twice = settles == ALWAYS || (settles == WHEN_COMPLETE && move->findings.count == 0);
    sw_move *again = twice ? make(f->path, options, &after_options, &error) : NULL;
    if (twice && (again == NULL || again->patch.count > 0)) {
        fail(f, "done twice, it changes something again");
        if (again != NULL) {
            show(again);
        }
    }
    free(error);
    sw_move_free(again);
    if (used) {
        keep(after);
    }
    sw_reading_free(after);
    free(texts);
    sw_move_free(move);
    leave_field(f);
    return used;
}

static void look_at_strokes(const world *w, const field *f, const sw_move *move, const sw_reading *after)
{
    (void)w, (void)move;
    if (count_strokes(after, &after->scores[f->score]) !=
        count_strokes(f->reading, &f->reading->scores[f->score])) {
        fail(f, "notes have come or gone");
    }
}

/* ---- ring -----------------------------------------------------------------------------------------------
 */

static sw_move *make_ring(const char *path, const void *options, const sw_read_options *reading_options,
                          char **error)
{
    return sw_move_ring(path, options, reading_options, error);
}

static bool use_ring(const world *w, const char *path)
{
    static const char *const bows[] = {"^\"pizz.\"", "^\"arco\""};
    field f;
    sw_ring_options options = {.elsewhere = SW_ELSEWHERE_FOLLOW};
    return open_field(w, path, SW_STRINGS, bows, 2, &f) &&
           use_move(w, &f, make_ring, &options, ALWAYS, look_at_strokes);
}

/* ---- divisi ---------------------------------------------------------------------------------------------
 */

static sw_move *make_divisi(const char *path, const void *options, const sw_read_options *reading_options,
                            char **error)
{
    return sw_move_divisi(path, options, reading_options, error);
}

/* A height that begins at a moment on a staff. */
typedef struct heard {
    sw_rational onset;
    int height;
} heard;

static int compare_heard(const void *a, const void *b)
{
    const heard *x = a;
    const heard *y = b;
    int order = sw_rational_compare(x->onset, y->onset);
    return order != 0 ? order : (x->height > y->height) - (x->height < y->height);
}

/* What begins on a staff (SW_NO_INDEX: on any) and when, each height once, in order; their number. */
static size_t list_heard(const sw_score *score, uint32_t staff, heard **list)
{
    size_t count = 0;
    *list = calloc(score->event_count + 1, sizeof **list);
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        bool wanted = staff == SW_NO_INDEX || score->voices[event->voice].staff == staff;
        if (wanted && event->kind == SW_EVENT_NOTE && (event->flags & SW_EVENT_GRACE) == 0) {
            (*list)[count++] = (heard){event->onset, sw_pitch_quarter_tones(event->pitch)};
        }
    }
    qsort(*list, count, sizeof **list, compare_heard);
    size_t kept_count = 0;
    for (size_t i = 0; i < count; i++) {
        if (kept_count == 0 || compare_heard(&(*list)[kept_count - 1], &(*list)[i]) != 0) {
            (*list)[kept_count++] = (*list)[i];
        }
    }
    return kept_count;
}

static void compare_heard_notes(const field *f, const sw_reading *after, uint32_t staff)
{
    heard *before_list;
    heard *after_list;
    size_t before_count = list_heard(&f->reading->scores[f->score], staff, &before_list);
    size_t after_count = list_heard(&after->scores[f->score], staff, &after_list);
    bool same = before_count == after_count;
    for (size_t i = 0; same && i < before_count; i++) {
        same = compare_heard(&before_list[i], &after_list[i]) == 0;
    }
    if (!same) {
        fail(f, "other notes begin than before");
    }
    free(before_list);
    free(after_list);
}

/* Whoever plays them, the same notes begin. */
static void look_at_heard(const world *w, const field *f, const sw_move *move, const sw_reading *after)
{
    (void)w, (void)move;
    compare_heard_notes(f, after, f->staff);
}

/* The same where staves have come in: in all staves together, of which one more has the notes of each part.
 */
static void look_at_staves(const world *w, const field *f, const sw_move *move, const sw_reading *after)
{
    (void)w;
    compare_heard_notes(f, after, SW_NO_INDEX);
    if (move->patch.count > 0 &&
        after->scores[f->score].staff_count <= f->reading->scores[f->score].staff_count) {
        fail(f, "no staff has come in");
    }
}

static bool use_staves(const world *w, const char *path)
{
    static const char *const words[] = {"^\"non div.\"", "^\"unis.\""};
    field f;
    if (!open_field(w, path, chance(4) == 0 ? SW_BRASS : SW_STRINGS, words, 2, &f)) {
        return false;
    }
    char label[32];
    sw_divisi_options options = {.way = SW_DIVISI_STAVES, .parts = chance(2) == 0 ? 2 : 0};
    options.places.staff = sw_staff_label(f.reading, &f.reading->scores[f.score], f.staff, label);
    return use_move(w, &f, make_divisi, &options, NEVER, look_at_staves);
}

/* A film that books some players for the instruments of the world, or, half of the times, the default. */
static sw_film *random_film(const world *w)
{
    sw_buffer yaml = {0};
    sw_buffer_string(&yaml, "film: Random\nchairs:\n");
    for (size_t i = 0; i < sw_instruments_count(w->instruments); i++) {
        const sw_instrument *instrument = sw_instruments_get(w->instruments, i);
        sw_buffer_format(&yaml, "  - {name: \"%s\", plays: [%s], players: %u}\n", instrument->id,
                         instrument->id, 2 + (unsigned)chance(14));
    }
    char *error = NULL;
    sw_film *film = sw_check_film(NULL, chance(2) == 0 ? (sw_slice){0} : sw_buffer_slice(&yaml), &error);
    sw_buffer_free(&yaml);
    if (film == NULL) {
        printf("FAILED: a film that books players: %s\n", error);
        failures++;
    }
    free(error);
    return film;
}

static bool use_divisi(const world *w, const char *path)
{
    static const char *const words[] = {"^\"div.\"",   "^\"unis.\"", "^\"non div.\"", "^\"unis.\"",
                                        "^\"1 desk\"", "^\"1.\"",    "^\"tutti\""};
    static const sw_family families[] = {SW_STRINGS, SW_STRINGS, SW_STRINGS, SW_WOODWIND, SW_BRASS};
    sw_family family = families[chance(5)];
    field f;
    if (!open_field(w, path, family, words, 7, &f)) {
        return false;
    }
    char label[32];
    uint32_t kind = chance(5);
    sw_film *film = random_film(w);
    sw_divisi_options options = {.film = film,
                                 .single =
                                     family == SW_STRINGS ? SW_DIVISI_AS_BEFORE : (sw_divisi_single)chance(3),
                                 .elsewhere = SW_ELSEWHERE_FOLLOW,
                                 .way = kind < 2 ? SW_DIVISI_CHORDS : SW_DIVISI_VOICES,
                                 .tremolo_half = family == SW_STRINGS && kind == 4,
                                 .parts = kind < 4 && chance(2) == 0 ? 2 + (int)chance(3) : 0};
    options.places.staff = sw_staff_label(f.reading, &f.reading->scores[f.score], f.staff, label);
    bool used = use_move(w, &f, make_divisi, &options, WHEN_COMPLETE, look_at_heard);
    sw_film_free(film);
    return used;
}

/* ---- unite ----------------------------------------------------------------------------------------------
 */

static size_t united;      /* uses */
static size_t united_back; /* that gave the same bytes again */

/* Whether a reading has the same texts as a field. */
static bool same_bytes(const field *f, const sw_reading *after)
{
    bool same = after->file_count == f->reading->file_count;
    for (size_t i = 0; same && i < after->file_count; i++) {
        const sw_text *a = f->reading->files[i].text;
        const sw_text *b = after->files[i].text;
        same = a->length == b->length && memcmp(a->bytes, b->bytes, a->length) == 0;
    }
    return same;
}

/* Two voices that divisi has written, into one again. */
static bool unite_again(const world *w, const field *f, const sw_move *division)
{
    const sw_text **texts;
    sw_read_options divided;
    sw_reading *between = read_after(f, division, &texts, &divided);
    sw_reading_free(between);
    char label[32];
    char *error = NULL;
    sw_unite_options options = {.elsewhere = SW_ELSEWHERE_FOLLOW};
    options.places.staff = sw_staff_label(f->reading, &f->reading->scores[f->score], f->staff, label);
    sw_move *move = sw_move_unite(f->path, &options, &divided, &error);
    bool used = move != NULL && move->patch.count > 0;
    if (used) {
        show(move);
        const sw_text **after_texts;
        sw_read_options options_after = sw_patch_options(&move->patch, &divided, &after_texts);
        sw_reading *after = sw_read(f->path, &options_after, &error);
        look_at_heard(w, f, move, after);
        united++;
        united_back += same_bytes(f, after);
        keep(after);
        sw_reading_free(after);
        free(after_texts);
    }
    free(error);
    sw_move_free(move);
    free(texts);
    return used;
}

static bool use_unite(const world *w, const char *path)
{
    static const char *const words[] = {"^\"dolce\"", "^\"espr.\""};
    field f;
    if (!open_field(w, path, chance(4) == 0 ? SW_WOODWIND : SW_STRINGS, words, 2, &f)) {
        return false;
    }
    char label[32];
    char *error = NULL;
    sw_divisi_options options = {.elsewhere = SW_ELSEWHERE_FOLLOW, .way = SW_DIVISI_VOICES};
    options.places.staff = sw_staff_label(f.reading, &f.reading->scores[f.score], f.staff, label);
    sw_move *division = sw_move_divisi(path, &options, &f.options, &error);
    bool used = division != NULL && division->patch.count > 0 && unite_again(w, &f, division);
    free(error);
    sw_move_free(division);
    leave_field(&f);
    return used;
}

/* ---- breaths --------------------------------------------------------------------------------------------
 */

static sw_move *make_breaths(const char *path, const void *options, const sw_read_options *reading_options,
                             char **error)
{
    return sw_move_breaths(path, options, reading_options, error);
}

/* How many spans the check `breath` finds too long. */
static size_t count_breathless(const sw_reading *reading)
{
    char *error = NULL;
    bool *chosen = calloc(sw_rules_count(), sizeof *chosen);
    for (size_t i = 0; i < sw_rules_count(); i++) {
        chosen[i] = strcmp(sw_rules_get(i)->name, "breath") == 0;
    }
    sw_film *film = sw_check_film(NULL, (sw_slice){0}, &error);
    sw_check_options options = {.film = film, .chosen = chosen};
    sw_findings findings = {0};
    sw_fixes fixes = {0};
    sw_check_reading(reading, &options, &findings, &fixes);
    sw_fixes_free(&fixes);
    size_t count = findings.count;
    sw_findings_free(&findings);
    sw_film_free(film);
    free(chosen);
    return count;
}

static void look_at_breaths(const world *w, const field *f, const sw_move *move, const sw_reading *after)
{
    bool skipped = false; /* whole staves are left alone */
    for (size_t i = 0; i < move->findings.count; i++) {
        skipped = skipped || strstr(move->findings.items[i].message, "combined") != NULL;
    }
    look_at_strokes(w, f, move, after);
    size_t left = count_breathless(after);
    if (left > count_breathless(f->reading) ||
        (after->score_count == 1 && !skipped && left > move->findings.count)) {
        fail(f, "more is too long for a breath than was told");
    }
}

/* The field with a tempo in it; false when it can't be read then. */
static bool add_tempo(field *f)
{
    char *error = NULL;
    bool good = sow_tempo(f, f->bare, &f->bare->scores[f->score], &error);
    sw_reading_free(f->reading);
    free(f->overlays);
    f->options = sw_patch_options(&f->patch, NULL, &f->overlays);
    f->reading = sw_read(f->path, &f->options, &error);
    free(error);
    if (!good || has_errors(f->reading)) {
        leave_field(f);
        return false;
    }
    return true;
}

static bool use_breaths(const world *w, const char *path)
{
    static const char *const dynamics[] = {"\\ff", "\\p", "\\f"};
    static const sw_family families[] = {SW_WOODWIND, SW_BRASS, SW_VOICE};
    field f;
    sw_breaths_options options = {.rest = chance(3) == 0 ? sw_rational_make(1, 8) : sw_rational_zero(),
                                  .elsewhere = SW_ELSEWHERE_FOLLOW};
    return open_field(w, path, families[chance(3)], dynamics, 3, &f) && add_tempo(&f) &&
           use_move(w, &f, make_breaths, &options, WHEN_COMPLETE, look_at_breaths);
}

/* What a move on a passage makes of the score; NULL when it does nothing. */
static sw_reading *read_result(const field *f, const sw_move *move, const char *error, const sw_text ***texts,
                               sw_read_options *options)
{
    if (verbose && error != NULL) {
        printf("  %s: %s\n", f->path, error);
    }
    if (move == NULL || move->patch.count == 0) {
        return NULL;
    }
    show(move);
    return read_after(f, move, texts, options);
}

/* ---- give and double ------------------------------------------------------------------------------------
 */

/* A passage of whole bars in which one staff plays with one voice and another one rests. */
typedef struct passage {
    uint32_t from;
    uint32_t to;
    sw_rational begin;
    sw_rational end;
    sw_bar_range bars;
} passage;

static bool is_in(const sw_event *event, const passage *p)
{
    return sw_rational_compare(event->onset, p->end) < 0 &&
           sw_rational_compare(p->begin, sw_event_end(event)) < 0;
}

/* How many notes a staff has in the passage; -1: what a line can't have (cues, percussion), or what
 * leads over its edges. */
static int count_notes(const sw_score *score, uint32_t staff, const passage *p)
{
    int count = 0;
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t e = events.first; e < events.end; e++) {
        const sw_event *event = &score->events[e];
        if (!is_in(event, p) || event->kind == SW_EVENT_SKIP) {
            continue;
        }
        bool note = event->kind == SW_EVENT_NOTE;
        bool odd = event->kind == SW_EVENT_DRUM ||
                   event->flags & ~(uint32_t)(SW_EVENT_CHORD | SW_EVENT_GRACE) ||
                   (note && (sw_rational_compare(event->onset, p->begin) < 0 ||
                             sw_rational_compare(p->end, sw_event_end(event)) < 0));
        if (odd) {
            return -1;
        }
        count += note;
    }
    return count;
}

/* Whether a staff has tuplets or grace notes in the passage. */
static bool has_brackets(const sw_score *score, uint32_t staff, const passage *p)
{
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t e = events.first; e < events.end; e++) {
        const sw_event *event = &score->events[e];
        bool bracket = (event->flags & SW_EVENT_GRACE) != 0 || !sw_rational_is_dyadic(event->duration);
        if (is_in(event, p) && event->kind == SW_EVENT_NOTE && bracket) {
            return true;
        }
    }
    return false;
}

/* Every second time one with tuplets or grace notes. */
static bool draw_passage(const sw_score *score, passage *p)
{
    bool brackets = chance(2) == 0;
    for (int i = 0; i < 300 && score->staff_count > 1 && score->bar_count > 0; i++) {
        const sw_bar *first = &score->bars[chance((uint32_t)score->bar_count)];
        int bars = 1 + (int)chance(3);
        *p = (passage){.from = chance((uint32_t)score->staff_count),
                       .to = chance((uint32_t)score->staff_count),
                       .bars = {.given = true,
                                .first_bar = first->number,
                                .first_beat = {1, 1},
                                .last_bar = first->number + bars - 1}};
        if (p->from != p->to && sw_bar_range_moments(score, &p->bars, &p->begin, &p->end) &&
            count_notes(score, p->from, p) > 0 && count_notes(score, p->to, p) == 0 &&
            (!brackets || has_brackets(score, p->from, p))) {
            return true;
        }
    }
    return false;
}

/* A note that is tied to one before it. */
static bool goes_on(const sw_reading *reading, const sw_score *score, uint32_t event)
{
    uint32_t before = sw_voice_previous(score, event);
    before = before == SW_NO_INDEX ? before : sw_voice_pitch(score, before, score->events[event].pitch);
    return before != SW_NO_INDEX && sw_voice_is_tied(reading, score, before);
}

/* Where a note and all that is tied to it ends. */
static sw_rational last_end(const sw_reading *reading, const sw_score *score, uint32_t event)
{
    while (sw_voice_is_tied(reading, score, event)) {
        uint32_t next = sw_voice_joined(score, sw_voice_chord(score, event));
        event = sw_voice_pitch(score, next, score->events[event].pitch);
    }
    return sw_event_end(&score->events[event]);
}

/* A grace note that stands behind its note (\afterGrace), where no other note begins: such ones are told. */
static bool stands_behind(const sw_score *score, uint32_t event)
{
    uint32_t next = sw_voice_chord(score, event);
    while (next != SW_NO_INDEX && (score->events[next].flags & SW_EVENT_GRACE) != 0) {
        next = sw_voice_next(score, next);
    }
    return (score->events[event].flags & SW_EVENT_GRACE) != 0 &&
           (next == SW_NO_INDEX || !sw_rational_equal(score->events[next].onset, score->events[event].onset));
}

/* The notes of a staff in the passage, each as a line "onset (grace) end step alteration", without octaves,
 * with the pitch moved up by an interval. Tied values are one note, which the edges of the passage cut. */
static void list_notes(const sw_reading *reading, const sw_score *score, uint32_t staff, const passage *p,
                       sw_pitch interval, sw_buffer *text)
{
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t e = events.first; e < events.end; e++) {
        const sw_event *event = &score->events[e];
        if (is_in(event, p) && event->kind == SW_EVENT_NOTE && !stands_behind(score, e) &&
            (sw_rational_equal(event->onset, p->begin) || !goes_on(reading, score, e))) {
            sw_pitch pitch = sw_pitch_transpose(event->pitch, interval);
            sw_rational end = last_end(reading, score, e);
            end = sw_rational_compare(end, p->end) > 0 ? p->end : end;
            sw_buffer_format(text, "%lld/%lld (%d/%d) %lld/%lld %d %d\n", (long long)event->onset.num,
                             (long long)event->onset.den, event->grace_num, event->grace_den,
                             (long long)end.num, (long long)end.den, pitch.step, pitch.alter);
        }
    }
}

/* The interval from one staff to the other, read from the first note that arrived. */
static sw_pitch interval_between(const sw_score *before, const sw_score *after, const passage *p)
{
    const sw_score *scores[2] = {before, after};
    const uint32_t staves[2] = {p->from, p->to};
    sw_pitch first[2] = {{0, 0, 0}, {0, 0, 0}};
    for (int i = 0; i < 2; i++) {
        sw_staff_events events = sw_score_staff_events(scores[i], staves[i]);
        for (uint32_t e = events.end; e > events.first; e--) {
            const sw_event *event = &scores[i]->events[e - 1];
            first[i] = is_in(event, p) && event->kind == SW_EVENT_NOTE ? event->pitch : first[i];
        }
    }
    return sw_pitch_interval(first[0], first[1]);
}

/* What arrived is what was there, moved by one interval; the source rests, or plays on. */
static void judge_given(const field *f, const sw_score *before, const sw_reading *now, const passage *p,
                        bool keep)
{
    const sw_score *after = &now->scores[0];
    sw_buffer wanted = {0};
    sw_buffer found = {0};
    sw_buffer rest = {0};
    list_notes(f->reading, before, p->from, p, interval_between(before, after, p), &wanted);
    list_notes(now, after, p->to, p, (sw_pitch){0, 0, 0}, &found);
    list_notes(now, after, p->from, p, (sw_pitch){0, 0, 0}, &rest);
    if (strcmp(sw_buffer_text(&wanted), sw_buffer_text(&found)) != 0) {
        if (verbose) {
            printf("wanted\n%sfound\n%s", sw_buffer_text(&wanted), sw_buffer_text(&found));
        }
        fail(f, "what arrived is not the line");
    }
    if ((rest.length > 0) != keep) {
        fail(f, keep ? "the source fell silent" : "the source plays on");
    }
    sw_buffer_free(&wanted);
    sw_buffer_free(&found);
    sw_buffer_free(&rest);
}

/* What was given comes back: the same notes but for their octave. */
static void give_back(const field *f, const sw_score *before, const sw_read_options *options,
                      const passage *p, const char *from, const char *to)
{
    char *error = NULL;
    sw_give_options back = {
        .places = {.staff = to, .bars = p->bars}, .to = from, .elsewhere = SW_ELSEWHERE_FOLLOW};
    sw_move *move = sw_move_give(f->path, &back, options, &error);
    if (move == NULL || move->patch.count == 0) {
        bool told = error != NULL &&
                    (strstr(error, "in no octave") != NULL || strstr(error, "in several places") != NULL ||
                     strstr(error, "not enough room") != NULL);
        if (!told) {
            printf("%s\n", error == NULL ? "no change" : error);
            fail(f, "what was given can't be given back");
        }
        free(error);
    } else {
        const sw_text **texts;
        sw_read_options after_options = sw_patch_options(&move->patch, options, &texts);
        sw_reading *after = sw_read(f->path, &after_options, &error);
        sw_buffer wanted = {0};
        sw_buffer found = {0};
        list_notes(f->reading, before, p->from, p, (sw_pitch){0, 0, 0}, &wanted);
        list_notes(after, &after->scores[f->score], p->from, p, (sw_pitch){0, 0, 0}, &found);
        if (strcmp(sw_buffer_text(&wanted), sw_buffer_text(&found)) != 0) {
            fail(f, "given back, it is another line");
        }
        sw_buffer_free(&wanted);
        sw_buffer_free(&found);
        sw_reading_free(after);
        free(texts);
    }
    sw_move_free(move);
}

static bool use_give_or_double(const char *path, bool keep_source)
{
    char *error = NULL;
    field f = {.path = path, .reading = sw_read(path, NULL, &error)};
    bool used = false;
    passage p;
    if (f.reading != NULL && f.reading->score_count > 0 && draw_passage(&f.reading->scores[0], &p)) {
        const sw_score *score = &f.reading->scores[0];
        char names[2][32];
        const char *from = sw_staff_label(f.reading, score, p.from, names[0]);
        const char *to = sw_staff_label(f.reading, score, p.to, names[1]);
        sw_give_options options = {.places = {.staff = from, .bars = p.bars},
                                   .to = to,
                                   .keep = keep_source,
                                   .elsewhere = SW_ELSEWHERE_FOLLOW};
        f.staff = p.from;
        sw_move *move = sw_move_give(path, &options, NULL, &error);
        const sw_text **texts;
        sw_read_options after_options;
        sw_reading *after = read_result(&f, move, error, &texts, &after_options);
        used = after != NULL;
        if (used) {
            judge_given(&f, score, after, &p, keep_source);
            if (!keep_source) {
                give_back(&f, score, &after_options, &p, from, to);
            }
            keep(after);
            sw_reading_free(after);
            free(texts);
        }
        sw_move_free(move);
    }
    free(error);
    sw_reading_free(f.reading);
    return used;
}

static bool use_give(const world *w, const char *path)
{
    (void)w;
    return use_give_or_double(path, false);
}

static bool use_double(const world *w, const char *path)
{
    (void)w;
    return use_give_or_double(path, true);
}

/* ---- give --share -------------------------------------------------------------------------------------
 */

/* The interval from the source to a target, read from the first note that arrived there; false: none has. */
static bool interval_to(const sw_score *before, const sw_score *after, const passage *p, uint32_t target,
                        sw_pitch *interval)
{
    sw_staff_events there = sw_score_staff_events(after, target);
    sw_staff_events here = sw_score_staff_events(before, p->from);
    for (uint32_t e = there.first; e < there.end; e++) {
        const sw_event *arrived = &after->events[e];
        for (uint32_t k = here.first; k < here.end && arrived->kind == SW_EVENT_NOTE && is_in(arrived, p);
             k++) {
            const sw_event *event = &before->events[k];
            if (event->kind == SW_EVENT_NOTE && sw_rational_equal(event->onset, arrived->onset)) {
                *interval = sw_pitch_interval(event->pitch, arrived->pitch);
                return true;
            }
        }
    }
    return false;
}

/* Every note of the line is with one of the players at least, and they have nothing else. */
static void judge_shared(const field *f, const sw_score *before, const sw_reading *now, const passage *p,
                         const uint32_t targets[2])
{
    sw_buffer wanted[2] = {{0}, {0}};
    sw_buffer found[2] = {{0}, {0}};
    const char *lines[2];
    size_t arrived = 0;
    size_t matched = 0;
    for (int t = 0; t < 2; t++) {
        sw_pitch interval = {0, 0, 0};
        interval_to(before, &now->scores[0], p, targets[t], &interval);
        list_notes(f->reading, before, p->from, p, interval, &wanted[t]);
        sw_buffer_string(&found[t], "\n");
        list_notes(now, &now->scores[0], targets[t], p, (sw_pitch){0, 0, 0}, &found[t]);
        lines[t] = sw_buffer_text(&wanted[t]);
        for (const char *at = sw_buffer_text(&found[t]) + 1; *at != '\0'; at = strchr(at, '\n') + 1) {
            arrived++;
        }
    }
    while (*lines[0] != '\0' && *lines[1] != '\0') {
        size_t players = 0;
        for (int t = 0; t < 2; t++) {
            char line[128];
            size_t length = (size_t)(strchr(lines[t], '\n') - lines[t]);
            snprintf(line, sizeof line, "\n%.*s\n", (int)length, lines[t]);
            players += strstr(sw_buffer_text(&found[t]), line) != NULL;
            lines[t] += length + 1;
        }
        matched += players;
        if (players == 0) {
            fail(f, "nobody has a note of the line");
        }
    }
    if (matched != arrived) {
        fail(f, "somebody has another note than the line");
    }
    for (int t = 0; t < 2; t++) {
        sw_buffer_free(&wanted[t]);
        sw_buffer_free(&found[t]);
    }
}

/* A passage and a second resting staff, both of instruments with a compass. */
static bool draw_share(const world *w, const sw_reading *reading, const sw_score *score, passage *p,
                       uint32_t targets[2])
{
    for (int i = 0; i < 100 && draw_passage(score, p); i++) {
        targets[0] = p->to;
        targets[1] = chance((uint32_t)score->staff_count);
        bool known = true;
        for (int t = 0; t < 2; t++) {
            const sw_instrument *player = sw_staff_instrument(w->instruments, reading, score, targets[t]);
            known = known && player != NULL && player->has_compass;
        }
        if (known && targets[0] != targets[1] && count_notes(score, targets[1], p) == 0) {
            return true;
        }
    }
    return false;
}

static bool use_share(const world *w, const char *path)
{
    char *error = NULL;
    field f = {.path = path, .reading = sw_read(path, NULL, &error)};
    bool used = false;
    passage p;
    uint32_t targets[2];
    if (f.reading != NULL && f.reading->score_count > 0 &&
        draw_share(w, f.reading, &f.reading->scores[0], &p, targets)) {
        const sw_score *score = &f.reading->scores[0];
        char labels[3][32];
        char both[256];
        snprintf(both, sizeof both, "%.100s, %.100s", sw_staff_label(f.reading, score, targets[0], labels[0]),
                 sw_staff_label(f.reading, score, targets[1], labels[1]));
        sw_give_options options = {
            .places = {.staff = sw_staff_label(f.reading, score, p.from, labels[2]), .bars = p.bars},
            .to = both,
            .share = true,
            .elsewhere = SW_ELSEWHERE_FOLLOW};
        f.staff = p.from;
        sw_move *move = sw_move_give(path, &options, NULL, &error);
        const sw_text **texts;
        sw_read_options after_options;
        sw_reading *after = read_result(&f, move, error, &texts, &after_options);
        used = after != NULL;
        if (used) {
            judge_shared(&f, score, after, &p, targets);
            if (count_notes(&after->scores[0], p.from, &p) != 0) {
                fail(&f, "the source plays on");
            }
            keep(after);
            sw_reading_free(after);
            free(texts);
        }
        sw_move_free(move);
    }
    free(error);
    sw_reading_free(f.reading);
    return used;
}

/* ---- cue ------------------------------------------------------------------------------------------------
 */

/* There and back: all that is heard stays, and the bytes come back. */
static bool use_cue(const world *w, const char *path)
{
    (void)w;
    char *error = NULL;
    field f = {.path = path, .reading = sw_read(path, NULL, &error)};
    passage p;
    bool used = false;
    if (f.reading != NULL && f.reading->score_count > 0 && draw_passage(&f.reading->scores[0], &p)) {
        const sw_score *score = &f.reading->scores[0];
        char label[32];
        sw_cue_options options = {
            .places = {.staff = sw_staff_label(f.reading, score, p.from, label), .bars = p.bars},
            .name = "Flute",
            .elsewhere = SW_ELSEWHERE_FOLLOW};
        f.staff = p.from;
        sw_move *move = sw_move_cue(path, &options, NULL, &error);
        const sw_text **texts;
        sw_read_options small_options;
        sw_reading *small = read_result(&f, move, error, &texts, &small_options);
        used = small != NULL;
        if (used) {
            keep(small);
            options.undo = true;
            sw_move *back = sw_move_cue(path, &options, &small_options, &error);
            if (back == NULL) {
                printf("%s\n", error);
                fail(&f, "there is no way back");
            }
            for (size_t i = 0; back != NULL && i < back->patch.count; i++) {
                const sw_text *now = back->patch.files[i].after;
                for (size_t k = 0; k < f.reading->file_count; k++) {
                    const sw_text *old = f.reading->files[k].text;
                    if (sw_text_same_file(now, old) &&
                        (now->length != old->length || memcmp(now->bytes, old->bytes, old->length) != 0)) {
                        fail(&f, "the bytes do not come back");
                    }
                }
            }
            sw_move_free(back);
            sw_reading_free(small);
            free(texts);
        }
        sw_move_free(move);
    }
    free(error);
    sw_reading_free(f.reading);
    return used;
}

/* ---- stagger --------------------------------------------------------------------------------------------
 */

static sw_move *make_stagger(const char *path, const void *options, const sw_read_options *reading_options,
                             char **error)
{
    return sw_move_stagger(path, options, reading_options, error);
}

static bool use_stagger(const world *w, const char *path)
{
    static const char *const marks[] = {"\\pp", "\\f"};
    static const sw_family families[] = {SW_STRINGS, SW_WOODWIND, SW_BRASS, SW_VOICE};
    field f;
    if (!open_field(w, path, families[chance(4)], marks, 2, &f)) {
        return false;
    }
    const sw_score *score = &f.reading->scores[f.score];
    uint32_t bar = score->bar_count == 0 ? 0 : chance((uint32_t)score->bar_count);
    bar = chance(3) == 0 && score->bar_count > 0 ? (uint32_t)score->bar_count - 1 : bar;
    int number = score->bar_count == 0 ? 1 : score->bars[bar].number;
    sw_stagger_options options = {.elsewhere = SW_ELSEWHERE_FOLLOW,
                                  .order = chance(2) == 0 ? "strings,oboe,brass" : NULL};
    options.places.bars = (sw_bar_range){.given = true,
                                         .first_bar = number > 2 ? number - 2 : number,
                                         .first_beat = {1, 1},
                                         .last_bar = number};
    options.places.bars.last_beat = sw_rational_zero();
    /* those who leave on one beat may be staggered further: done twice is another thing */
    return use_move(w, &f, make_stagger, &options, NEVER, look_at_strokes);
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
    } moves[] = {{"courtesy", use_courtesy}, {"ring", use_ring},    {"breaths", use_breaths},
                 {"stagger", use_stagger},   {"give", use_give},    {"double", use_double},
                 {"share", use_share},       {"cue", use_cue},      {"divisi", use_divisi},
                 {"unite", use_unite},       {"staves", use_staves}};
    const char *only = getenv("SW_MOVE");
    const char *seed = getenv("SW_SEED");
    const char *count = getenv("SW_MOVES");
    keep_folder = getenv("SW_MOVES_KEEP");
    verbose = getenv("SW_VERBOSE") != NULL;
    uint64_t first = seed != NULL ? strtoull(seed, NULL, 10) : (uint64_t)time(NULL);
    size_t wanted = count != NULL ? strtoull(count, NULL, 10) : 10;
    printf("# seed %llu\n", (unsigned long long)first);
    find_scores();
    char *error = NULL;
    world w = {sw_instruments_load(NULL, (sw_slice){0}, &error),
               sw_techniques_load(NULL, (sw_slice){0}, &error)};
    for (size_t m = 0; m < sizeof moves / sizeof moves[0]; m++) {
        size_t used = 0;
        size_t tries = 0;
        if (only != NULL && strcmp(only, moves[m].name) != 0) {
            continue;
        }
        random_state = (first + m) * 2654435761u + 88172645463325252u; /* the same for a move alone */
        size_t share =
            strcmp(moves[m].name, "share") == 0 ? (wanted + 3) / 4 : wanted; /* it is rarely possible */
        for (; used < share && tries < 120 * wanted; tries++) {
            used += moves[m].use(&w, paths[chance((uint32_t)path_count)]);
        }
        printf("# %s: %zu uses proved in %zu tries\n", moves[m].name, used, tries);
        failures += used < share;
        if (united > 0) {
            printf("# %zu of %zu united to the bytes from before the division\n", united_back, united);
            united = 0;
        }
    }
    sw_techniques_free(w.techniques);
    sw_instruments_free(w.instruments);
    return failures > 0;
}
