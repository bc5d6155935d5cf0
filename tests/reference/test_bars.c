/* Bars must be numbered and counted as the compiler does it. Every source in bars/ has the compiler's answer
 * beside it, NAME.bars.tsv, made with bars.ily: a row for each of its time steps, with the number of the bar
 * and the position in it.
 *
 * With two arguments, a source and the compiler's answer, compares only these: see ask_compiler.py.
 *
 * Not compared: grace notes, which have no position of their own; the position inside a cadenza, where the
 * compiler stands still and a bar of ours goes on; the position at the moment of a \partial within the piece,
 * which holds for the compiler only when that moment is over; the position in a \partial that is longer than
 * a bar. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/score.h"
#include "sources.h"

static const char folder[] = "tests/reference/bars";

/* One row of the compiler. */
typedef struct step {
    size_t score; /* from 1 */
    sw_rational moment;
    sw_rational grace;
    int number;
    sw_rational position;
} step;

static bool read_step(char *line, step *s)
{
    char *cells[5];
    if (!split_row(line, cells, 5)) {
        return false;
    }
    s->score = strtoul(cells[0], NULL, 10);
    s->number = atoi(cells[3]);
    return read_fraction(cells[1], &s->moment) && read_fraction(cells[2], &s->grace) &&
           read_fraction(cells[4], &s->position);
}

/* A cadenza is in force, or a \partial stands there. */
static bool is_position_open(const sw_reading *reading, const sw_score *score, sw_rational moment)
{
    bool cadenza = false;
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *s = &score->settings[i];
        const sw_music *m = &reading->music[s->music];
        if (sw_rational_compare(s->onset, moment) > 0) {
            break;
        }
        cadenza = m->kind == SW_MUSIC_CADENZA ? m->num == 1 : cadenza;
        if (m->kind == SW_MUSIC_PARTIAL && sw_rational_equal(s->onset, moment) &&
            !sw_rational_is_zero(moment)) {
            return true;
        }
    }
    return cadenza;
}

static bool is_right(const sw_reading *reading, const step *s)
{
    const sw_score *score = &reading->scores[s->score - 1];
    uint32_t index = sw_score_bar_at(score, s->moment);
    if (index == SW_NO_INDEX) {
        return false;
    }
    const sw_bar *bar = &score->bars[index];
    /* A short bar that ends on its bar line: the compiler counts up to 0, we up to the length of the bar. */
    bool up_to_line = s->position.num < 0;
    int number = up_to_line && index == 0 ? s->number - 1 : s->number;
    sw_rational position = up_to_line ? sw_rational_add(s->position, bar->metre) : s->position;
    sw_rational ours = sw_rational_add(bar->first, sw_rational_sub(s->moment, bar->start));
    bool too_long = up_to_line && sw_rational_is_zero(bar->first);
    bool open = too_long || is_position_open(reading, score, s->moment);
    bool equal = bar->number == number && (open || sw_rational_equal(ours, position));
    if (!equal) {
        char moment[SW_RATIONAL_TEXT];
        char theirs[SW_RATIONAL_TEXT];
        char text[SW_RATIONAL_TEXT];
        printf("score %zu, moment %s: bar %d, position %s, but we count bar %d, position %s\n", s->score,
               sw_rational_print(s->moment, moment), number, sw_rational_print(position, theirs), bar->number,
               sw_rational_print(ours, text));
    }
    return equal;
}

typedef struct result {
    size_t compared;
    size_t wrong;
} result;

static result compare(const char *source, const char *answer)
{
    result r = {0};
    char *error = NULL;
    sw_reading *reading = sw_read(source, NULL, &error);
    FILE *file = reading == NULL ? NULL : fopen(answer, "r");
    if (file == NULL) {
        printf("%s, %s: %s\n", source, answer, error == NULL ? "can't be opened" : error);
        r.wrong = 1;
        sw_reading_free(reading);
        free(error);
        return r;
    }
    char *line = NULL;
    size_t size = 0;
    for (ssize_t length; (length = getline(&line, &size, file)) > 0;) {
        line[strcspn(line, "\n")] = '\0';
        step s;
        if (!read_step(line, &s) || s.score == 0 || s.score > reading->score_count) {
            printf("%s: can't use the row %s\n", answer, line);
            r.wrong++;
        } else if (sw_rational_is_zero(s.grace) &&
                   sw_rational_compare(s.moment, reading->scores[s.score - 1].length) < 0) {
            r.compared++;
            r.wrong += !is_right(reading, &s);
        }
    }
    free(line);
    fclose(file);
    sw_reading_free(reading);
    return r;
}

static void test_one(void **state)
{
    const char *path = *state;
    char answer[256];
    result r = compare(path, answer_of(path, "bars.tsv", answer));
    assert_true(r.compared > 4);
    assert_int_equal(r.wrong, 0);
}

int main(int argument_count, char **arguments)
{
    if (argument_count == 3) {
        result r = compare(arguments[1], arguments[2]);
        return r.compared == 0 || r.wrong > 0;
    }
    return run_for_sources("bars", folder, test_one, NULL, 0);
}
