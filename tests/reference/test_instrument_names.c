/* The names and figures of src/players/instruments.yaml against lists made outside it: instrument-names.tsv
 * (staff names with hand-checked answers) and compasses.tsv (published figures). Both lie beside this file;
 * their folder is the program's argument, tests/reference without one. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/players.h"

static const char *folder = "tests/reference";

/* ---- tables ------------------------------------------------------------------------------------- */

enum { COLUMNS = 4, LINE = 512, PARTS = 4 };

typedef struct table {
    FILE *file;
    char line[LINE];
    const char *cells[COLUMNS]; /* "" where a line has fewer */
    size_t number;
    size_t part; /* counts the comments that begin with "# Part" */
} table;

static table open_table(const char *name)
{
    char path[LINE];
    snprintf(path, sizeof path, "%s/%s", folder, name);
    table t = {.file = fopen(path, "r")};
    if (t.file == NULL) {
        fail_msg("%s can't be opened", path);
    }
    return t;
}

/* The next line that is no comment, cut into cells; false at the end, where the file is closed. */
static bool next_row(table *t)
{
    do {
        if (fgets(t->line, sizeof t->line, t->file) == NULL) {
            fclose(t->file);
            return false;
        }
        t->number++;
        t->part += strncmp(t->line, "# Part", 6) == 0 ? 1 : 0;
    } while (t->line[0] == '#');
    t->line[strcspn(t->line, "\n")] = '\0';
    char *rest = t->line;
    for (size_t i = 0; i < COLUMNS; i++) {
        t->cells[i] = rest;
        rest += strcspn(rest, "\t");
        if (*rest == '\t') {
            *rest++ = '\0';
        }
    }
    return true;
}

static sw_instruments *load(void)
{
    char *error = NULL;
    sw_instruments *instruments = sw_instruments_load(NULL, (sw_slice){NULL, 0}, &error);
    if (instruments == NULL) {
        fail_msg("%s", error);
    }
    return instruments;
}

/* ---- names -------------------------------------------------------------------------------------- */

/* How many names were asked, mean an instrument or a voice (if only to a reader of the whole score), and were
 * told as what they mean. */
typedef struct share {
    size_t names;
    size_t meaning;
    size_t told;
} share;

static void count(share *s, const char *id, const char *meant)
{
    bool meaning = strcmp(meant, "-") != 0;
    s->names++;
    s->meaning += meaning ? 1 : 0;
    s->told += meaning && strcmp(id, meant) == 0 ? 1 : 0;
}

static void print_share(const char *what, size_t number, const share *s)
{
    print_message("%s %zu: %zu names, %zu mean an instrument or a voice, %zu of these are told: %.1f %%\n",
                  what, number, s->names, s->meaning, s->told, 100.0 * (double)s->told / (double)s->meaning);
}

static void every_name_selects_its_instrument(void **state)
{
    (void)state;
    sw_instruments *instruments = load();
    table t = open_table("instrument-names.tsv");
    size_t wrong = 0;
    share all = {0};
    share parts[PARTS] = {0};
    while (next_row(&t)) {
        const char *answer = t.cells[1];
        const char *meant = t.cells[2][0] != '\0' ? t.cells[2] : answer;
        const sw_instrument *found = sw_instruments_find(instruments, t.cells[0]);
        const char *id = found == NULL ? "-" : found->id;
        if (strcmp(id, answer) != 0) {
            print_error("line %zu: '%s' selects %s, not %s\n", t.number, t.cells[0], id, answer);
            wrong++;
        }
        if (strcmp(answer, "-") != 0 && sw_instruments_by_id(instruments, answer) == NULL) {
            fail_msg("line %zu: %s is no instrument", t.number, answer);
        }
        assert_true(t.part < PARTS);
        count(&all, id, meant);
        count(&parts[t.part], id, meant);
    }
    for (size_t i = 1; i < PARTS; i++) {
        print_share("part", i, &parts[i]);
    }
    print_share("all parts, of", PARTS - 1, &all);
    assert_int_equal(wrong, 0);
    assert_true(all.told * 100 >= all.meaning * 95);
    sw_instruments_free(instruments);
}

/* ---- figures ------------------------------------------------------------------------------------ */

/* The written pitch of a figure's name, or NULL. */
static const sw_pitch *written_figure(const sw_instrument *instrument, const char *figure)
{
    const struct {
        const char *name;
        const sw_pitch *pitch;
    } figures[] = {
        {"low", &instrument->written_low},
        {"high", &instrument->written_high},
        {"extreme-low", &instrument->extreme_low},
        {"extreme-high", &instrument->extreme_high},
    };
    for (size_t i = 0; i < sizeof figures / sizeof figures[0]; i++) {
        if (strcmp(figure, figures[i].name) == 0) {
            return figures[i].pitch;
        }
    }
    return NULL;
}

/* A figure as the table writes it. */
static void print_figure(const sw_instrument *instrument, const char *figure, char text[SW_PITCH_TEXT])
{
    static const char sounding[] = "sounding-";
    bool sounds = strncmp(figure, sounding, strlen(sounding)) == 0;
    const sw_pitch *written = written_figure(instrument, sounds ? figure + strlen(sounding) : figure);
    if (written != NULL) {
        assert_true(instrument->has_compass);
        sw_pitch_print(sounds ? sw_instrument_sounding(instrument, *written) : *written, text);
    } else if (strcmp(figure, "c5-sounds") == 0) {
        sw_pitch_print(sw_instrument_sounding(instrument, (sw_pitch){0, 1, 0}), text);
    } else if (strcmp(figure, "fingers") == 0) {
        snprintf(text, SW_PITCH_TEXT, "%d", instrument->fingers);
    } else if (strcmp(figure, "span") == 0) {
        snprintf(text, SW_PITCH_TEXT, "%d", instrument->span);
    } else if (strcmp(figure, "extreme-span") == 0) {
        snprintf(text, SW_PITCH_TEXT, "%d", instrument->extreme_span);
    } else {
        fail_msg("%s is no figure", figure);
    }
}

/* Spelling does not matter: C#3 and Db3 are the same tone to a compass. */
static bool same_figure(const char *a, const char *b)
{
    sw_pitch p = {0};
    sw_pitch q = {0};
    return sw_pitch_from_scientific(sw_slice_of(a), &p) && sw_pitch_from_scientific(sw_slice_of(b), &q)
               ? sw_pitch_quarter_tones(p) == sw_pitch_quarter_tones(q)
               : strcmp(a, b) == 0;
}

static void every_published_figure_is_ours(void **state)
{
    (void)state;
    sw_instruments *instruments = load();
    table t = open_table("compasses.tsv");
    size_t figures = 0;
    size_t wrong = 0;
    while (next_row(&t)) {
        const sw_instrument *instrument = sw_instruments_by_id(instruments, t.cells[0]);
        if (instrument == NULL) {
            fail_msg("line %zu: %s is no instrument", t.number, t.cells[0]);
        }
        char text[SW_PITCH_TEXT];
        print_figure(instrument, t.cells[1], text);
        figures++;
        if (!same_figure(text, t.cells[2])) {
            print_error("line %zu: %s %s is %s here and %s in: %s\n", t.number, t.cells[0], t.cells[1], text,
                        t.cells[2], t.cells[3]);
            wrong++;
        }
    }
    print_message("%zu figures, %zu wrong\n", figures, wrong);
    assert_int_equal(wrong, 0);
    assert_true(figures >= 60);
    sw_instruments_free(instruments);
}

int main(int argc, char **argv)
{
    if (argc > 1) {
        folder = argv[1];
    }
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_name_selects_its_instrument),
        cmocka_unit_test(every_published_figure_is_ours),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
