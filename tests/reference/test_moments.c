/* Everything without length must be in the tree at its moment: commands, settings, what hangs on notes. Every
 * source in moments/ has the compiler's answer beside it, NAME.moments.tsv, made with moments.ily: a row for
 * each such thing that the compiler comes to, with the moment and the place in the source. Each must be in a
 * setting or in a mark on an event of ours at that moment.
 *
 * With two arguments, a source and the compiler's answer, compares only these.
 *
 * What a context begins with (\with) comes as a row for each operation, with the context's type and id and
 * the property, grob or engraver; our settings of that kind and these rows must be one to one.
 *
 * Not compared: the begin and end of tuplets and repeats, which are music with a length. */
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

static const char folder[] = "tests/reference/moments";

typedef struct row {
    size_t score; /* from 1 */
    sw_rational moment;
    sw_rational grace;
    const char *kind;
    uint32_t line;    /* from 1 */
    uint32_t column;  /* from 0 */
    const char *type; /* what a context begins with; otherwise NULL */
    const char *id;
    const char *property;
} row;

static bool read_row(char *line, row *r)
{
    char *cells[7];
    if (!split_row(line, cells, 7)) {
        return false;
    }
    *r = (row){.score = strtoul(cells[0], NULL, 10),
               .kind = cells[3],
               .line = (uint32_t)strtoul(cells[5], NULL, 10),
               .column = (uint32_t)strtoul(cells[6], NULL, 10)};
    if (strcmp(r->kind, "with") == 0) {
        r->type = cells[4];
        /* The compiler invents ids for contexts that others are aligned to. */
        r->id = strncmp(cells[5], "uniqueContext", 13) == 0 ? "" : cells[5];
        r->property = cells[6];
    }
    return read_fraction(cells[1], &r->moment) && read_fraction(cells[2], &r->grace);
}

static bool is_at(const row *r, sw_rational onset, int32_t grace_num, int32_t grace_den)
{
    return sw_rational_equal(r->moment, onset) &&
           sw_rational_equal(r->grace, sw_rational_make(grace_num, grace_den));
}

static bool setting_is_at(const row *r, const sw_setting *s)
{
    return is_at(r, s->onset, s->grace_num, s->grace_den);
}

static bool has_length(const char *kind)
{
    return strcmp(kind, "tuplet-span-event") == 0 || strcmp(kind, "percent-event") == 0 ||
           strncmp(kind, "volta-repeat", 12) == 0;
}

static bool stands_at(const sw_reading *reading, uint32_t music, const row *r)
{
    const sw_music *m = &reading->music[music];
    if (m->file != 0) {
        return false;
    }
    sw_place begin = sw_text_place(reading->files[0].text, m->start);
    sw_place end = sw_text_place(reading->files[0].text, m->end);
    return begin.line == r->line && begin.column <= r->column &&
           (end.line > r->line || end.column > r->column);
}

static bool has_mark(const sw_reading *reading, uint32_t music, const row *r)
{
    for (uint32_t c = reading->music[music].first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].kind == SW_MUSIC_MARK && stands_at(reading, c, r)) {
            return true;
        }
    }
    return false;
}

static bool is_in_tree(const sw_reading *reading, const row *r)
{
    const sw_score *score = &reading->scores[r->score - 1];
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *s = &score->settings[i];
        bool marks = reading->music[s->music].kind == SW_MUSIC_CHORD;
        if (setting_is_at(r, s) &&
            (marks ? has_mark(reading, s->music, r) : stands_at(reading, s->music, r))) {
            return true;
        }
    }
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *e = &score->events[i];
        if (is_at(r, e->onset, e->grace_num, e->grace_den) &&
            (has_mark(reading, e->music, r) || has_mark(reading, e->chord, r))) {
            return true;
        }
    }
    return false;
}

static bool begins_a_context(const sw_reading *reading, const sw_setting *s)
{
    const sw_music *m = &reading->music[s->music];
    return (m->kind == SW_MUSIC_SET || m->kind == SW_MUSIC_SETTING) && (m->flags & SW_MUSIC_NEW) != 0;
}

/* The \with block that holds a setting. */
static const sw_music *block_of(const sw_reading *reading, uint32_t setting)
{
    for (uint32_t i = 0; i < reading->music_count; i++) {
        uint32_t c = reading->music[i].kind == SW_MUSIC_WITH ? reading->music[i].first : SW_NO_INDEX;
        while (c != SW_NO_INDEX && c != setting) {
            c = reading->music[c].next;
        }
        if (c == setting) {
            return &reading->music[i];
        }
    }
    return NULL;
}

/* Takes a setting that says what the row says. */
static bool take_setting(const sw_reading *reading, const row *r, bool *taken)
{
    const sw_score *score = &reading->scores[r->score - 1];
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *s = &score->settings[i];
        if (taken[i] || !begins_a_context(reading, s) || !setting_is_at(r, s)) {
            continue;
        }
        const sw_music *block = block_of(reading, s->music);
        assert_non_null(block);
        sw_slice text = sw_music_slice(reading, s->music);
        if (strcmp(sw_reading_name(reading, block->name), r->type) == 0 &&
            strcmp(sw_reading_name(reading, block->name2), r->id) == 0 &&
            memmem(text.data, text.length, r->property, strlen(r->property)) != NULL) {
            taken[i] = true;
            return true;
        }
    }
    return false;
}

static size_t count_left(const sw_reading *reading, size_t score, const bool *taken)
{
    size_t left = 0;
    for (size_t i = 0; i < reading->scores[score].setting_count; i++) {
        const sw_setting *s = &reading->scores[score].settings[i];
        if (begins_a_context(reading, s) && !taken[i]) {
            sw_slice text = sw_music_slice(reading, s->music);
            printf("not said by the compiler: %.*s\n", (int)text.length, text.data);
            left++;
        }
    }
    return left;
}

static sw_reading *read_source(const char *path)
{
    char *error = NULL;
    sw_reading *reading = sw_read(path, NULL, &error);
    assert_non_null(reading);
    return reading;
}

typedef struct result {
    size_t compared;
    size_t missing;
} result;

static result compare(const char *path, const char *answer)
{
    sw_reading *reading = read_source(path);
    FILE *file = fopen(answer, "r");
    assert_non_null(file);
    result found = {0};
    bool **taken = calloc(reading->score_count, sizeof *taken);
    assert_non_null(taken);
    for (size_t i = 0; i < reading->score_count; i++) {
        taken[i] = calloc(reading->scores[i].setting_count + 1, sizeof **taken);
        assert_non_null(taken[i]);
    }
    char *line = NULL;
    size_t size = 0;
    for (ssize_t length; (length = getline(&line, &size, file)) > 0;) {
        line[strcspn(line, "\n")] = '\0';
        row r;
        assert_true(read_row(line, &r) && r.score > 0 && r.score <= reading->score_count);
        if (has_length(r.kind)) {
            continue;
        }
        found.compared++;
        char moment[SW_RATIONAL_TEXT];
        if (r.type != NULL && !take_setting(reading, &r, taken[r.score - 1])) {
            printf("missing at %s: %s %s begins with %s\n", sw_rational_print(r.moment, moment), r.type, r.id,
                   r.property);
            found.missing++;
        } else if (r.type == NULL && !is_in_tree(reading, &r)) {
            printf("missing at %s: %s, line %u, column %u\n", sw_rational_print(r.moment, moment), r.kind,
                   r.line, r.column);
            found.missing++;
        }
    }
    for (size_t i = 0; i < reading->score_count; i++) {
        found.missing += count_left(reading, i, taken[i]);
        free(taken[i]);
    }
    free(taken);
    free(line);
    fclose(file);
    sw_reading_free(reading);
    return found;
}

static void test_one(void **state)
{
    const char *path = *state;
    char answer[256];
    result r = compare(path, answer_of(path, "moments.tsv", answer));
    assert_true(r.compared > 5);
    assert_int_equal(r.missing, 0);
}

/* The event that is written next after a setting, at the same moment; NULL when there is none. */
static const sw_event *next_event(const sw_reading *reading, const sw_score *score, const sw_setting *s)
{
    const sw_event *next = NULL;
    uint32_t after = reading->music[s->music].start;
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *e = &score->events[i];
        uint32_t start = reading->music[e->chord].start;
        if (start > after && (next == NULL || start < reading->music[next->chord].start)) {
            next = e;
        }
    }
    return next != NULL && sw_rational_equal(next->onset, s->onset) ? next : NULL;
}

/* \stemUp stands directly before its note, so it must have that note's voice and staff. */
static void test_lines(void **state)
{
    (void)state;
    sw_reading *reading = read_source("tests/reference/moments/lines.ly");
    const sw_score *score = &reading->scores[0];
    size_t compared = 0;
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *s = &score->settings[i];
        sw_slice text = sw_music_slice(reading, s->music);
        const sw_event *e = sw_slice_starts(text, "\\stem") ? next_event(reading, score, s) : NULL;
        if (e != NULL) {
            assert_int_equal(s->voice, e->voice);
            assert_int_equal(s->staff, score->voices[e->voice].staff);
            assert_true(!s->grace || (e->flags & SW_EVENT_GRACE) != 0);
            compared++;
        }
    }
    assert_int_equal(compared, 14);
    sw_reading_free(reading);
}

static void test_calls(void **state)
{
    (void)state;
    sw_text *text = sw_text_from_bytes(
        "calls.ly", sw_slice_of("{ c'4-\\tweak color #red -. \\tweak color #red \\parenthesize d'4 "
                                "<e' \\tweak font-size #2 g'>4 \\parenthesize <c' e'>4 }"));
    const sw_text *overlay = text;
    sw_read_options options = {.overlays = &overlay, .overlay_count = 1};
    char *error = NULL;
    sw_reading *reading = sw_read("calls.ly", &options, &error);
    assert_non_null(reading);
    static const char *const want[] = {
        "", "\\tweak color #red \\parenthesize ", "", "\\tweak font-size #2 ", "", ""};
    const sw_score *score = &reading->scores[0];
    assert_int_equal(score->event_count, sizeof want / sizeof want[0]);
    for (size_t i = 0; i < score->event_count; i++) {
        assert_true(sw_slice_is(sw_music_calls(reading, score->events[i].music), want[i]));
    }
    assert_true(sw_slice_is(sw_music_calls(reading, score->events[4].chord), "\\parenthesize "));
    sw_reading_free(reading);
    sw_text_free(text);
}

int main(int argument_count, char **arguments)
{
    if (argument_count == 3) {
        result r = compare(arguments[1], arguments[2]);
        printf("%zu of %zu\n", r.compared - r.missing, r.compared);
        return r.missing > 0;
    }
    const struct CMUnitTest others[] = {cmocka_unit_test(test_lines), cmocka_unit_test(test_calls)};
    return run_for_sources("moments", folder, test_one, others, 2);
}
