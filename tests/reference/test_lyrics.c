/* Each syllable must be sung when the compiler sets it. Every source in lyrics/ has the compiler's answer
 * beside it, NAME.lyrics.tsv, made with lyrics.ily: a row for each syllable with its moment, text, line,
 * voice, end and place. There must be as many syllables of ours, and the same ones.
 *
 * With two arguments, a source and the compiler's answer, compares only these.
 *
 * Not compared where the compiler gives no answer: the voice and end of a syllable in a second line of a
 * text, and the end of one that follows a whole staff. */
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

static const char folder[] = "tests/reference/lyrics";

typedef struct row {
    size_t score; /* from 1 */
    sw_rational moment;
    sw_rational grace;
    const char *text;
    const char *link; /* "--", "__" or "-" */
    const char *line_id;
    const char *voice_id; /* "-": none */
    sw_rational end;
    bool has_end;
    const char *file;
    uint32_t line;   /* from 1 */
    uint32_t column; /* from 0 */
} row;

static bool read_row(char *line, row *r)
{
    char *cells[11];
    if (!split_row(line, cells, 11)) {
        return false;
    }
    *r = (row){.score = strtoul(cells[0], NULL, 10),
               .text = cells[3],
               .link = cells[4],
               .line_id = cells[5],
               .voice_id = cells[6],
               .has_end = strcmp(cells[7], "-") != 0,
               .file = cells[8],
               .line = (uint32_t)strtoul(cells[9], NULL, 10),
               .column = (uint32_t)strtoul(cells[10], NULL, 10)};
    return read_fraction(cells[1], &r->moment) && read_fraction(cells[2], &r->grace) &&
           (!r->has_end || read_fraction(cells[7], &r->end));
}

static const char *base_name(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash == NULL ? path : slash + 1;
}

/* The compiler places a quoted syllable at its end, and one with a \tweak in front of it there. */
static bool stands_at(const sw_reading *reading, const sw_syllable *s, const row *r)
{
    const sw_music *m = &reading->music[s->music];
    const sw_file *file = &reading->files[m->file];
    const char *name = file->said_name != 0 ? sw_reading_name(reading, file->said_name) : file->text->path;
    sw_slice calls = sw_music_calls(reading, s->music);
    sw_place begin = sw_text_place(file->text, m->start - (uint32_t)calls.length);
    sw_place end = sw_text_place(file->text, m->end);
    int64_t line = (int64_t)r->line - file->line_shift;
    return strcmp(base_name(name), base_name(r->file)) == 0 &&
           (begin.line < line || (begin.line == line && begin.column <= r->column)) &&
           (end.line > line || (end.line == line && end.column > r->column));
}

/* The same letters; blanks don't count, because the compiler joins the words of a markup with them. */
static bool same_text(const char *a, const char *b)
{
    for (;; a++, b++) {
        a += strspn(a, " ");
        b += strspn(b, " ");
        if (*a != *b || *a == '\0') {
            return *a == *b;
        }
    }
}

/* Whether the voice is the one of this id: it, or its staff; what has no name of its own gets one by
 * \addlyrics. */
static bool is_voice(const sw_reading *reading, const sw_score *score, const sw_syllable *s, const char *id)
{
    if (s->voice == SW_NO_INDEX) {
        return false;
    }
    const sw_voice *voice = &score->voices[s->voice];
    return strcmp(sw_reading_name(reading, voice->id), id) == 0 ||
           strcmp(sw_reading_name(reading, score->staves[voice->staff].id), id) == 0 ||
           strncmp(id, "uniqueContext", strlen("uniqueContext")) == 0;
}

static bool has_link(const sw_syllable *s, const char *link)
{
    uint32_t want = strcmp(link, "--") == 0   ? SW_SYLLABLE_HYPHEN
                    : strcmp(link, "__") == 0 ? SW_SYLLABLE_EXTENDER
                                              : 0;
    return (s->flags & (SW_SYLLABLE_HYPHEN | SW_SYLLABLE_EXTENDER)) == want;
}

/* The note must be there when the syllable is. */
static bool is_on_its_note(const sw_score *score, const sw_syllable *s)
{
    if ((s->flags & SW_SYLLABLE_OWN_LENGTH) != 0) {
        return s->event == SW_NO_INDEX && s->voice == SW_NO_INDEX;
    }
    const sw_event *e = &score->events[s->event];
    return (e->kind == SW_EVENT_NOTE || e->kind == SW_EVENT_DRUM) && e->voice == s->voice &&
           sw_rational_equal(e->onset, s->onset) && e->grace_num == s->grace_num;
}

static bool is_same(const sw_reading *reading, const sw_score *score, const sw_syllable *s, const row *r)
{
    if (!sw_rational_equal(s->onset, r->moment) ||
        !sw_rational_equal((sw_rational){s->grace_num, s->grace_den}, r->grace) ||
        strcmp(sw_reading_name(reading, score->lines[s->line].id), r->line_id) != 0 ||
        !stands_at(reading, s, r) || !has_link(s, r->link) || !is_on_its_note(score, s) ||
        !same_text(sw_reading_name(reading, reading->music[s->music].name), r->text)) {
        return false;
    }
    if (strcmp(r->voice_id, "-") == 0 && s->voice != SW_NO_INDEX) {
        return true;
    }
    return (strcmp(r->voice_id, "-") == 0 || is_voice(reading, score, s, r->voice_id)) &&
           (!r->has_end || sw_rational_equal(sw_rational_add(s->onset, s->duration), r->end));
}

static void print_syllable(const sw_reading *reading, const sw_score *score, const sw_syllable *s)
{
    char onset[SW_RATIONAL_TEXT];
    char end[SW_RATIONAL_TEXT];
    sw_place place = sw_syllable_place(reading, s);
    printf("too many: %s at %s to %s, line '%s', voice '%s', place %u:%u\n",
           sw_reading_name(reading, reading->music[s->music].name), sw_rational_print(s->onset, onset),
           sw_rational_print(sw_rational_add(s->onset, s->duration), end),
           sw_reading_name(reading, score->lines[s->line].id),
           s->voice == SW_NO_INDEX ? "-" : sw_reading_name(reading, score->voices[s->voice].id), place.line,
           place.column);
}

typedef struct result {
    size_t equal;
    size_t missing;
    size_t extra;
} result;

static result compare(const char *path, const char *answer)
{
    char *error = NULL;
    sw_reading *reading = sw_read(path, NULL, &error);
    assert_non_null(reading);
    FILE *file = fopen(answer, "r");
    assert_non_null(file);
    bool **seen = sw_alloc_zero(reading->score_count + 1, sizeof *seen);
    for (size_t s = 0; s < reading->score_count; s++) {
        seen[s] = sw_alloc_zero(reading->scores[s].syllable_count + 1, sizeof **seen);
    }
    result found = {0};
    char *line = NULL;
    size_t size = 0;
    for (ssize_t length; (length = getline(&line, &size, file)) > 0;) {
        line[strcspn(line, "\n")] = '\0';
        row r;
        assert_true(read_row(line, &r) && r.score > 0 && r.score <= reading->score_count);
        const sw_score *score = &reading->scores[r.score - 1];
        bool same = false;
        for (size_t i = 0; i < score->syllable_count && !same; i++) {
            same = !seen[r.score - 1][i] && is_same(reading, score, &score->syllables[i], &r);
            seen[r.score - 1][i] = seen[r.score - 1][i] || same;
        }
        found.equal += same;
        found.missing += !same;
        if (!same) {
            char moment[SW_RATIONAL_TEXT];
            char end[SW_RATIONAL_TEXT];
            printf("missing: %s at %s to %s, line '%s', voice '%s', place %u:%u\n", r.text,
                   sw_rational_print(r.moment, moment), r.has_end ? sw_rational_print(r.end, end) : "-",
                   r.line_id, r.voice_id, r.line, r.column);
        }
    }
    for (size_t s = 0; s < reading->score_count; s++) {
        for (size_t i = 0; i < reading->scores[s].syllable_count; i++) {
            if (!seen[s][i]) {
                print_syllable(reading, &reading->scores[s], &reading->scores[s].syllables[i]);
                found.extra++;
            }
        }
        free(seen[s]);
    }
    free(seen);
    free(line);
    fclose(file);
    sw_reading_free(reading);
    return found;
}

static void test_one(void **state)
{
    const char *path = *state;
    char answer[256];
    result r = compare(path, answer_of(path, "lyrics.tsv", answer));
    assert_true(r.equal > 0);
    assert_int_equal(r.missing, 0);
    assert_int_equal(r.extra, 0);
}

int main(int argument_count, char **arguments)
{
    if (argument_count == 3) {
        result r = compare(arguments[1], arguments[2]);
        printf("%zu of %zu, %zu too many\n", r.equal, r.equal + r.missing, r.extra);
        return r.missing + r.extra > 0;
    }
    return run_for_sources("lyrics", folder, test_one, NULL, 0);
}
