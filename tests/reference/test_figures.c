/* What instruments can do, against figures.tsv. Its folder is the program's argument, tests/reference without
 * one. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/limits.h"
#include "stavewright/players.h"

static const char *folder = "tests/reference";

typedef struct tables {
    sw_instruments *instruments;
    sw_limits *limits;
} tables;

/* The rest of a text behind a beginning, or NULL. */
static const char *behind(const char *text, const char *beginning)
{
    size_t length = strlen(beginning);
    return strncmp(text, beginning, length) == 0 ? text + length : NULL;
}

static bool read_pitch(const char *text, sw_pitch *pitch)
{
    return sw_pitch_from_scientific(sw_slice_of(text), pitch);
}

static const char *yes_or_no(bool yes)
{
    return yes ? "yes" : "no";
}

static const char *answer(sw_answer given)
{
    return given == SW_NOT_SAID ? "?" : yes_or_no(given == SW_YES);
}

static const char *grade_of(const sw_instrument *instrument, const char *pair)
{
    static const char *const grades[] = {
        [SW_TRILL_GOOD] = "good", [SW_TRILL_AWKWARD] = "awkward", [SW_TRILL_IMPOSSIBLE] = "impossible"};
    char low[16];
    char high[16];
    sw_pitch pitches[2];
    if (sscanf(pair, "%15[^-]-%15s", low, high) != 2 || !read_pitch(low, &pitches[0]) ||
        !read_pitch(high, &pitches[1])) {
        return "?";
    }
    return grades[sw_instrument_trill(instrument, pitches[0], pitches[1])];
}

static bool is_number(double ours, const char *value)
{
    return ours == strtod(value, NULL);
}

/* Whether our figure is what the row says; *known becomes false for a figure that has no name here. */
static bool agrees(const tables *t, const sw_instrument *i, const char *figure, const char *value,
                   bool *known)
{
    const sw_limit *limit = sw_limits_of(t->limits, i);
    const char *rest = NULL;
    sw_pitch pitch;
    if (strcmp(figure, "transposes") == 0) {
        return sw_pitch_semitones(i->sounds) == atoi(value);
    }
    if ((rest = behind(figure, "string-")) != NULL) {
        size_t number = strtoul(rest, NULL, 10);
        return read_pitch(value, &pitch) && number <= i->can.tuning.count &&
               sw_pitch_equal(i->can.tuning.strings[number - 1], pitch);
    }
    if (strcmp(figure, "reach") == 0) {
        return i->can.tuning.reach == atoi(value);
    }
    if (strcmp(figure, "weight-loud") == 0) {
        return is_number(sw_instrument_weight(i, SW_F), value);
    }
    if (strcmp(figure, "weight-soft") == 0) {
        return is_number(sw_instrument_weight(i, SW_P), value);
    }
    if ((rest = behind(figure, "covered-at-")) != NULL) {
        const sw_register *r = read_pitch(rest, &pitch) ? sw_instrument_register(i, pitch) : NULL;
        return strcmp(yes_or_no(r != NULL && r->covered), value) == 0;
    }
    if ((rest = behind(figure, "fades-at-")) != NULL) {
        const sw_register *r = read_pitch(rest, &pitch) ? sw_instrument_register(i, pitch) : NULL;
        return r != NULL && strcmp(answer(r->niente), value) == 0;
    }
    if ((rest = behind(figure, "trill-")) != NULL) {
        return strcmp(grade_of(i, rest), value) == 0;
    }
    if ((rest = behind(figure, "has-")) != NULL) {
        return strcmp(answer(sw_instrument_has(i, rest)), value) == 0;
    }
    if (strcmp(figure, "slurred-tremolo") == 0) {
        return strcmp(answer(i->can.tremolo.slurred), value) == 0;
    }
    if (strcmp(figure, "double-tongue") == 0) {
        return limit != NULL && strcmp(yes_or_no(limit->double_tongue > 0), value) == 0;
    }
    if (strcmp(figure, "single-at-most") == 0) {
        return limit != NULL && limit->single > 0 && limit->single <= strtod(value, NULL);
    }
    if (strcmp(figure, "single-at-least") == 0) {
        return limit != NULL && limit->single >= strtod(value, NULL);
    }
    if (strcmp(figure, "double-at-most") == 0) {
        return limit != NULL && limit->double_tongue > 0 && limit->double_tongue <= strtod(value, NULL);
    }
    *known = false;
    return false;
}

static void every_figure_is_ours(void **state)
{
    enum { LINE = 512 };
    (void)state;
    char *error = NULL;
    tables t = {.instruments = sw_instruments_load(NULL, (sw_slice){0}, &error)};
    assert_non_null(t.instruments);
    t.limits = sw_limits_load(&error);
    assert_non_null(t.limits);
    char line[LINE];
    snprintf(line, sizeof line, "%s/figures.tsv", folder);
    FILE *file = fopen(line, "r");
    assert_non_null(file);
    size_t figures = 0;
    size_t wrong = 0;
    while (fgets(line, sizeof line, file) != NULL) {
        char id[64];
        char figure[64];
        char value[64];
        char source[256];
        if (line[0] == '#') {
            continue;
        }
        if (sscanf(line, "%63[^\t]\t%63[^\t]\t%63[^\t]\t%255[^\n]", id, figure, value, source) != 4) {
            fail_msg("this row has no four cells: %s", line);
        }
        const sw_instrument *instrument = sw_instruments_by_id(t.instruments, id);
        if (instrument == NULL) {
            fail_msg("%s is no instrument", id);
        }
        bool known = true;
        figures++;
        if (!agrees(&t, instrument, figure, value, &known)) {
            print_error("%s: %s is not %s as in: %s%s\n", id, figure, value, source,
                        known ? "" : " (what figure is that?)");
            wrong++;
        }
    }
    fclose(file);
    print_message("%zu figures, %zu wrong\n", figures, wrong);
    assert_int_equal(wrong, 0);
    assert_true(figures >= 100);
    sw_limits_free(t.limits);
    sw_instruments_free(t.instruments);
}

int main(int argc, char **argv)
{
    if (argc > 1) {
        folder = argv[1];
    }
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_figure_is_ours)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
