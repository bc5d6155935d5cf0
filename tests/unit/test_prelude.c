/* Main files that begin with the same includes: what one of them has read is taken over by the next, and its
 * reading must be what it would have been alone, in every field. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "score/prelude.h"
#include "score/shelf.h"
#include "stavewright/main_files.h"

/* ---- two readings of one file ---------------------------------------------------------------------------
 */

static void assert_same_music(const sw_reading *a, const sw_reading *b)
{
    assert_int_equal(a->music_count, b->music_count);
    for (size_t i = 0; i < a->music_count; i++) {
        const sw_music *x = &a->music[i];
        const sw_music *y = &b->music[i];
        bool same = x->kind == y->kind && x->flags == y->flags && x->file == y->file &&
                    x->start == y->start && x->end == y->end && x->first == y->first && x->next == y->next &&
                    sw_pitch_equal(x->pitch, y->pitch) && x->octave_marks == y->octave_marks &&
                    x->log == y->log && x->dots == y->dots && x->check == y->check &&
                    x->name_length == y->name_length && x->num == y->num && x->den == y->den &&
                    x->name == y->name && x->name2 == y->name2 && x->origin_file == y->origin_file;
        if (!same) {
            fail_msg("%s: music %zu is another one", a->files[0].text->path, i);
        }
    }
}

static void assert_same_tables(const sw_reading *a, const sw_reading *b)
{
    assert_int_equal(a->file_count, b->file_count);
    for (size_t i = 0; i < a->file_count; i++) {
        assert_string_equal(a->files[i].text->path, b->files[i].text->path);
        assert_int_equal(a->files[i].includer, b->files[i].includer);
        assert_int_equal(a->files[i].line_shift, b->files[i].line_shift);
    }
    assert_int_equal(sw_names_count(a->names), sw_names_count(b->names));
    for (uint32_t i = 0; i < sw_names_count(a->names); i++) {
        assert_string_equal(sw_reading_name(a, i), sw_reading_name(b, i));
    }
    assert_int_equal(a->variable_count, b->variable_count);
    if (a->variable_count > 0) {
        assert_memory_equal(a->variables, b->variables, a->variable_count * sizeof *a->variables);
    }
    assert_int_equal(a->prefix_count, b->prefix_count);
    assert_int_equal(a->language_count, b->language_count);
    assert_memory_equal(a->languages, b->languages, a->language_count * sizeof *a->languages);
    assert_int_equal(a->findings.count, b->findings.count);
    for (size_t i = 0; i < a->findings.count; i++) {
        const sw_finding *x = &a->findings.items[i];
        const sw_finding *y = &b->findings.items[i];
        assert_string_equal(x->message, y->message);
        assert_string_equal(x->rule, y->rule);
        assert_int_equal(x->file, y->file);
        assert_int_equal(x->line, y->line);
        assert_int_equal(x->column, y->column);
    }
}

static void assert_same_scores(const sw_reading *a, const sw_reading *b)
{
    assert_int_equal(a->score_count, b->score_count);
    for (size_t s = 0; s < a->score_count; s++) {
        const sw_score *x = &a->scores[s];
        const sw_score *y = &b->scores[s];
        assert_int_equal(x->event_count, y->event_count);
        assert_int_equal(x->setting_count, y->setting_count);
        assert_int_equal(x->bar_count, y->bar_count);
        for (size_t i = 0; i < x->event_count; i++) {
            const sw_event *e = &x->events[i];
            const sw_event *f = &y->events[i];
            assert_true(sw_rational_equal(e->onset, f->onset) && sw_rational_equal(e->duration, f->duration));
            assert_true(e->music == f->music && e->voice == f->voice && e->kind == f->kind);
            assert_true(sw_pitch_equal(e->pitch, f->pitch));
        }
    }
}

static void assert_same(const sw_reading *a, const sw_reading *b)
{
    assert_same_tables(a, b);
    assert_same_music(a, b);
    assert_same_scores(a, b);
}

static sw_reading *read_one(const char *path, const sw_read_options *options)
{
    char *error = NULL;
    sw_reading *reading = sw_read(path, options, &error);
    if (reading == NULL) {
        fail_msg("%s", error);
    }
    return reading;
}

/* Reads files by themselves and one after another with a shelf; all readings are kept until the end.
 * `overlay` may be NULL. */
static void compare_all(const char *const *paths, size_t count, const sw_text *overlay)
{
    sw_shelf *shelf = sw_shelf_new();
    const sw_read_options plain = {.overlays = &overlay, .overlay_count = overlay == NULL ? 0 : 1};
    sw_read_options shelved = plain;
    shelved.shelf = shelf;
    sw_reading **readings = sw_alloc_zero(count, sizeof *readings);
    for (size_t i = 0; i < count; i++) {
        readings[i] = read_one(paths[i], &shelved);
    }
    for (size_t i = 0; i < count; i++) {
        sw_reading *alone = read_one(paths[i], &plain);
        assert_same(readings[i], alone);
        sw_reading_free(alone);
        sw_reading_free(readings[i]);
    }
    free(readings);
    sw_shelf_free(shelf);
}

/* ---- sources --------------------------------------------------------------------------------------------
 */

static void write_file(const char *folder, const char *name, const char *text)
{
    char path[512];
    snprintf(path, sizeof path, "%s/%s", folder, name);
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fputs(text, file);
    fclose(file);
}

/* All that a reader can know behind its includes. */
static const char family[] =
    "\\language \"deutsch\"\n"
    "hoch = #(define-music-function (m) (ly:music?) #{ \\transpose c c' $m #})\n"
    "rot = \\tweak color #red \\etc\n"
    "\\tagGroup #'(part score)\n"
    "drumPitchNames.dong = #'cowbell\n"
    "zitat = { h'4 h' h' h' }\n"
    "\\addQuote \"andere\" \\zitat\n"
    "wort = \\markup { \\score { \\new Staff { c'1 } } }\n"
    "flute = \\relative c'' { \\hoch { c4 d e f } \\unbekannt g2 h | \\rot c1^\\wort }\n"
    "oboe = \\relative c'' { \\quoteDuring \"andere\" { s1 } a2 h \\rot c } \n"
    "schlag = \\drummode { dong4 dong bd sn }\n"
    "\\score { \\new Staff \\zitat }\n"
    "fehler = { c4 ";

static void test_parts_of_a_family(void **state)
{
    (void)state;
    const char *folder = getenv("SW_TEMP") != NULL ? getenv("SW_TEMP") : "/tmp";
    write_file(folder, "family.ily", family);
    write_file(folder, "nested.ily",
               "\\include \"family.ily\"\n\\include \"english.ly\"\n\\include \"none.ily\"\n");
    const char *const parts[][2] = {
        {"a.ly", "\\version \"2.24.0\"\n\\include \"family.ily\"\n{ \\flute h'1 }\n"
                 "\\keepWithTag part { \\tag part c'4 \\tag score d'4 \\tag other e'4 }\n"},
        {"aa.ly", "\\version \"2.24.0\"\n\\include \"family.ily\"\n"
                  "\\keepWithTag part { \\tag part c'4 \\tag score d'4 \\tag other e'4 }\n"},
        {"b.ly",
         "% the same files\n\\version \"2.24.0\"\n\\include \"family.ily\" \\new Staff \\oboe { his'1"},
        {"c.ly", "\\include \"family.ily\"\n\\new DrumStaff \\schlag \\zitat = { d1 } { \\hoch \\zitat }\n"},
        {"d.ly", "\\include \"nested.ily\"\n{ bf'4 \\rot c'4 }\n"},
        {"e.ly", "\\include \"nested.ily\"\n\\include \"family.ily\"\n{ \\oboe }\n"},
        {"f.ly", "\\include \"nested.ily\"\n{ \\flute } \\include \"family.ily\"\n"},
        {"g.ly", "\\include \"gone.ily\"\n{ c'4 }\n"},
        {"h.ly", "\\include \"gone.ily\"\n{ d'4 }\n"},
        {"i.ly", "{ c'4 } \\include \"family.ily\"\n"},
    };
    enum { PARTS = sizeof parts / sizeof parts[0] };
    static char paths[2 * PARTS][600];
    const char *all[2 * PARTS];
    for (size_t i = 0; i < PARTS; i++) {
        write_file(folder, parts[i][0], parts[i][1]);
        snprintf(paths[i], sizeof paths[i], "%s/%s", folder, parts[i][0]);
        snprintf(paths[PARTS + i], sizeof paths[i], "%s/./%s", folder, parts[i][0]);
        all[i] = paths[i];
        all[PARTS + i] = paths[PARTS + i];
    }
    compare_all(all, 2 * PARTS, NULL);
    char path[600]; /* what an editor holds of the family */
    snprintf(path, sizeof path, "%s/family.ily", folder);
    sw_text *overlay =
        sw_text_from_bytes(path, sw_slice_of("flute = \\relative { c'4 d e f }\noboe = { r1 \\flute }\n"));
    compare_all(all, 2 * PARTS, overlay);
    sw_text_free(overlay);
}

/* Whether something was kept at all for the parts of a family. */
static void test_something_is_taken_over(void **state)
{
    (void)state;
    sw_shelf *shelf = sw_shelf_new();
    const sw_read_options options = {.shelf = shelf};
    sw_reading *flute = read_one("corpus/1m1-first-light/parts/flute-1.ly", &options);
    sw_reading_free(flute);
    static const char key[] = "\"../../common.ily\"\n\"../global.ily\"\n\"../woodwinds.ily\"\n"
                              "corpus/1m1-first-light/parts/";
    sw_prelude *kept = sw_shelf_find_prelude(shelf, sw_slice_of(key));
    assert_non_null(kept);
    sw_prelude_release(kept);
    sw_shelf_free(shelf);
}

static void test_main_files_of_folders(void **state)
{
    (void)state;
    const char *scores = getenv("SW_SCORES");
    char mozart[512];
    snprintf(mozart, sizeof mozart, "%s/MozartWA", scores == NULL ? "" : scores);
    sw_paths files = {0};
    char *error = NULL;
    assert_true(sw_paths_collect(&files, "corpus", &error));
    if (!sw_paths_collect(&files, mozart, &error)) {
        free(error); /* the real scores are not there */
    }
    sw_paths mains = sw_main_files(&files, NULL);
    assert_true(mains.count > 40);
    compare_all((const char *const *)mains.items, mains.count, NULL);
    sw_paths_free(&mains);
    sw_paths_free(&files);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_parts_of_a_family),
        cmocka_unit_test(test_something_is_taken_over),
        cmocka_unit_test(test_main_files_of_folders),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
