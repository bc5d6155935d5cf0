/* The vocabulary of techniques: what texts say, in the languages of scores, and what a change wants. The
 * words are those of the trade (common practice; many stand in every score); the seconds' sources stand in
 * techniques.yaml. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/techniques.h"

static const struct said_row {
    sw_family family;
    const char *text;
    const char *says; /* ids in order, "half" before what only one half does */
} rows[] = {
    {SW_STRINGS, "pizz.", "pizzicato"},
    {SW_STRINGS, "Pizzicato", "pizzicato"},
    {SW_STRINGS, "(pizz.)", "pizzicato"},
    {SW_STRINGS, "arco", "arco"},
    {SW_STRINGS, "coll'arco", "arco"},
    {SW_STRINGS, "gestrichen", "arco"},
    {SW_STRINGS, "avec l'archet", "arco"},
    {SW_STRINGS, "mit Bogen", "arco"},
    {SW_STRINGS, "Bog.", "arco"},
    {SW_STRINGS, "c.l.t.", "arco"},
    {SW_STRINGS, "getheilt", "divided"},
    {SW_STRINGS, "geth.", "divided"},
    {SW_STRINGS, "2fach geteilt", "divided"},
    {SW_STRINGS, "s.p.", "sul-ponticello"},
    {SW_STRINGS, "sur le chevalet", "sul-ponticello"},
    {SW_STRINGS, "S.T.", "sul-tasto"},
    {SW_STRINGS, "nat. harm.", "harmonics-on"},
    {SW_STRINGS, "D\xc3\xa4mpfer auf", "muted"},
    {SW_STRINGS, "sourd.", "muted"},
    {SW_STRINGS, "\xc3\xb4ter les sourdines", "open"},
    {SW_STRINGS, "sans sourd.", "open"},
    {SW_BRASS, "Dpf. weg", "open"},
    {SW_BRASS, "take out mute", "open"},
    {SW_BRASS, "cup mute off", "open"},
    {SW_BRASS, "harmon mute, stem out", "harmon-mute"},
    {SW_BRASS, "str. mute", "straight-mute"},
    {SW_PERCUSSION, "hard yarn", "hard-sticks"},
    {SW_PERCUSSION, "med. yarn mallets", "medium-sticks"},
    {SW_PERCUSSION, "mit Schwammschl\xc3\xa4geln", "soft-sticks"},
    {SW_PERCUSSION, "Holzschl.", "wood-sticks"},
    {SW_PERCUSSION, "timp. sticks", "soft-sticks"},
    {SW_PERCUSSION, "Schnarrsaiten ab", "snares-off"},
    {SW_PERCUSSION, "arco", "bow"},
    {SW_PERCUSSION, "mallets", "usual-sticks"},
    {SW_PERCUSSION, "with mallets", "usual-sticks"},
    {SW_PERCUSSION, "ord.", "usual-sticks"},
    {SW_PERCUSSION, "mit Schl\xc3\xa4geln", "usual-sticks"},
    {SW_PERCUSSION, "bacchette ordinarie", "usual-sticks"},
    {SW_PERCUSSION, "soft mallets", "soft-sticks"},
    {SW_PERCUSSION, "baguettes de bois", "wood-sticks"},
    {SW_PERCUSSION, "bois", "wood-sticks"},
    {SW_WOODWIND, "mallets", ""},
    {SW_STRINGS, "pizz., quasi chitarra", "pizzicato strummed"},
    {SW_STRINGS, "col legno", "col-legno-battuto"},
    {SW_STRINGS, "c. l. batt.", "col-legno-battuto"},
    {SW_STRINGS, "sul pont.", "sul-ponticello"},
    {SW_STRINGS, "sul ponticello", "sul-ponticello"},
    {SW_STRINGS, "am Steg", "sul-ponticello"},
    {SW_STRINGS, "au chevalet", "sul-ponticello"},
    {SW_STRINGS, "sul tasto", "sul-tasto"},
    {SW_STRINGS, "flautando", "sul-tasto"},
    {SW_STRINGS, "sur la touche", "sul-tasto"},
    {SW_STRINGS, "am Griffbrett", "sul-tasto"},
    {SW_PLUCKED, "pr\xc3\xa8s de la table", "near-the-table"},
    {SW_STRINGS, "ord.", "usual-place plain-notes usual-tongue open-bell usual-vibrato"},
    {SW_STRINGS, "arco ord.", "arco usual-place plain-notes usual-tongue open-bell usual-vibrato"},
    {SW_STRINGS, "con sord.", "muted"},
    {SW_STRINGS, "con sordino", "muted"},
    {SW_STRINGS, "CON SORDINI", "muted"},
    {SW_STRINGS, "mit D\xc3\xa4mpfer", "muted"},
    {SW_STRINGS, "avec sourdines", "muted"},
    {SW_STRINGS, "muted", "muted"},
    {SW_STRINGS, "senza sord.", "open"},
    {SW_STRINGS, "s. sord.", "open"},
    {SW_STRINGS, "via sord.", "open"},
    {SW_STRINGS, "ohne D\xc3\xa4mpfer", "open"},
    {SW_STRINGS, "\xc3\xb4tez les sourdines", "open"},
    {SW_STRINGS, "mutes off", "open"},
    {SW_STRINGS, "pizz. con sord.", "pizzicato muted"},
    {SW_STRINGS, "arco, senza sord.", "arco open"},
    {SW_BRASS, "cup mute", "cup-mute"},
    {SW_BRASS, "with straight mute", "straight-mute"},
    {SW_BRASS, "harmon (stem out)", "harmon-mute"},
    {SW_BRASS, "bucket", "bucket-mute"},
    {SW_BRASS, "open", "open open-bell"},
    {SW_BRASS, "gestopft", "stopped"},
    {SW_BRASS, "bouch\xc3\xa9", "stopped"},
    {SW_BRASS, "bouch\xc3\xa9s", "stopped"},
    {SW_BRASS, "offen", "open open-bell"},
    {SW_BRASS, "ouvert", "open open-bell"},
    {SW_WOODWIND, "flz.", "flutter-tongue"},
    {SW_WOODWIND, "Flatterzunge", "flutter-tongue"},
    {SW_WOODWIND, "frull.", "flutter-tongue"},
    {SW_STRINGS, "senza vib.", "no-vibrato"},
    {SW_STRINGS, "non vibrato", "no-vibrato"},
    {SW_STRINGS, "molto vib.", "usual-vibrato"},
    {SW_STRINGS, "div.", "divided"},
    {SW_STRINGS, "divisi a 3", "divided"},
    {SW_STRINGS, "div. in 4", "divided"},
    {SW_STRINGS, "unis.", "together"},
    {SW_STRINGS, "geteilt", "divided"},
    {SW_STRINGS, "zusammen", "together"},
    {SW_STRINGS, "non div.", "together"},
    {SW_STRINGS, "tutti", "all-players together"},
    {SW_STRINGS, "SOLO", "one-player"},
    {SW_WOODWIND, "solo", ""},
    {SW_WOODWIND, "a 2", ""},
    {SW_STRINGS, "half trem., half ord.",
     "half tremolo half usual-place half plain-notes half usual-tongue half open-bell half usual-vibrato"},
    {SW_STRINGS, "\xc2\xbd pizz.", "half pizzicato"},
    {SW_STRINGS, "1/2 pizz., 1/2 arco", "half pizzicato half arco"},
    {SW_STRINGS, "met\xc3\xa0 arco", "half arco"},
    {SW_STRINGS, "die H\xc3\xa4lfte mit D\xc3\xa4mpfer", "half muted"},
    {SW_STRINGS, "half", "half-section"},
    {SW_PLUCKED, "l.v.", "let-ring"},
    {SW_PLUCKED, "laissez vibrer", "let-ring"},
    {SW_PLUCKED, "let ring", "let-ring"},
    {SW_PLUCKED, "\xc3\xa9touffez", "damped"},
    {SW_PERCUSSION, "soft mallets", "soft-sticks"},
    {SW_PERCUSSION, "with brushes", "brushes"},
    {SW_PERCUSSION, "hard sticks", "hard-sticks"},
    {SW_PERCUSSION, "snares off", "snares-off"},
    /* words that say nothing of the kind */
    {SW_STRINGS, "dolce", ""},
    {SW_STRINGS, "Allegro con spirito", ""},
    {SW_STRINGS, "arcobaleno", ""},
    {SW_STRINGS, "sordidly", ""},
    {SW_STRINGS, "espr.", ""},
    {SW_WOODWIND, "open", ""},
    {SW_STRINGS, "cresc. molto", ""},
    {SW_STRINGS, "poco rit.", ""},
};

static void test_texts(void **state)
{
    (void)state;
    char *error = NULL;
    sw_techniques *techniques = sw_techniques_load(NULL, (sw_slice){0}, &error);
    if (techniques == NULL) {
        fail_msg("%s", error);
    }
    size_t wrong = 0;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        sw_technique_said said[16];
        bool in_brackets;
        size_t count = sw_techniques_read(techniques, &rows[i].family, sw_slice_of(rows[i].text), said, 16,
                                          &in_brackets);
        sw_buffer text = {0};
        for (size_t k = 0; k < count; k++) {
            sw_buffer_format(&text, "%s%s%s", k == 0 ? "" : " ", said[k].half ? "half " : "",
                             sw_techniques_get(techniques, said[k].technique)->id);
        }
        if (strcmp(sw_buffer_text(&text), rows[i].says) != 0) {
            print_message("\"%s\" says \"%s\", not \"%s\"\n", rows[i].text, sw_buffer_text(&text),
                          rows[i].says);
            wrong++;
        }
        assert_true(in_brackets == (rows[i].text[0] == '('));
        sw_buffer_free(&text);
    }
    assert_int_equal(wrong, 0);
    sw_techniques_free(techniques);
}

static double seconds(const sw_techniques *techniques, const sw_instruments *instruments, const char *id,
                      const char *from, const char *to)
{
    const sw_instrument *instrument = sw_instruments_by_id(instruments, id);
    assert_non_null(instrument);
    const sw_technique_change *change = sw_techniques_change(
        techniques, instrument, sw_techniques_find(techniques, from), sw_techniques_find(techniques, to));
    return change == NULL ? 0 : change->seconds;
}

static void test_changes(void **state)
{
    (void)state;
    char *error = NULL;
    sw_techniques *techniques = sw_techniques_load(NULL, (sw_slice){0}, &error);
    sw_instruments *instruments = sw_instruments_load(NULL, (sw_slice){0}, &error);
    /* Berlioz, Treatise on Instrumentation: two bars of 4/4 at crotchet = 100 for a violin's mute */
    assert_true(seconds(techniques, instruments, "violin", "open", "muted") == 4.8);
    assert_true(seconds(techniques, instruments, "violin", "muted", "open") < 4.8);
    /* arco to pizzicato is the easier way (university handout 4.14 Pizzicato) */
    assert_true(seconds(techniques, instruments, "cello", "arco", "pizzicato") <
                seconds(techniques, instruments, "cello", "pizzicato", "arco"));
    /* common practice, no source */
    assert_true(seconds(techniques, instruments, "horn", "open", "straight-mute") == 5.0);
    assert_true(seconds(techniques, instruments, "horn-in-eb", "open", "muted") == 5.0);
    assert_true(seconds(techniques, instruments, "trumpet", "open", "muted") == 4.0);
    assert_true(seconds(techniques, instruments, "trumpet", "open", "plunger") == 2.0);
    assert_true(seconds(techniques, instruments, "trumpet", "cup-mute", "straight-mute") == 6.0);
    assert_true(seconds(techniques, instruments, "violin", "usual-place", "sul-ponticello") == 0);
    assert_true(seconds(techniques, instruments, "flute", "arco", "pizzicato") == 0);
    sw_instruments_free(instruments);
    sw_techniques_free(techniques);
}

/* A text of the user's own: its words and figures come first, and a mistake is told with its place. */
static void test_override(void **state)
{
    (void)state;
    char *error = NULL;
    static const char own[] = "words:\n  - says: [sul-tasto]\n    names: [velvety]\n"
                              "changes:\n  - {from: arco, to: pizzicato, for: [cello], seconds: 0.25}\n";
    sw_techniques *techniques = sw_techniques_load("own.yaml", sw_slice_of(own), &error);
    assert_non_null(techniques);
    sw_instruments *instruments = sw_instruments_load(NULL, (sw_slice){0}, &error);
    assert_true(seconds(techniques, instruments, "cello", "arco", "pizzicato") == 0.25);
    assert_true(seconds(techniques, instruments, "violin", "arco", "pizzicato") == 0.5);
    sw_technique_said said[4];
    bool in_brackets;
    sw_family strings = SW_STRINGS;
    assert_int_equal(sw_techniques_read(techniques, &strings, sw_slice_of("Velvety"), said, 4, &in_brackets),
                     1);
    sw_instruments_free(instruments);
    sw_techniques_free(techniques);

    static const struct {
        const char *text;
        const char *error;
    } mistakes[] = {
        {"words:\n  - says: [pizicato]\n    names: [x]\n",
         "own.yaml:2:12: unknown technique 'pizicato'; did you mean 'pizzicato'?"},
        {"words:\n  - says: [arco, pizzicato]\n    names: [x]\n",
         "own.yaml:2:18: two techniques of one group"},
        {"words:\n  - says: [arco]\n    names: ['(']\n", "own.yaml:3:13: names: no pattern of PCRE2"},
        {"words:\n  - names: [x]\n", "own.yaml:2:5: a word needs says and names"},
        {"word:\n", "own.yaml:1:1: unknown key 'word'; did you mean 'words'?"},
        {"changes:\n  - {from: any, to: any, seconds: 1}\n", "own.yaml:2:5: from any to any"},
        {"changes:\n  - {from: arco, to: pizzicato, seconds: soon}\n",
         "own.yaml:2:42: seconds: 'soon' is no number of seconds"},
        {"groups:\n  - id: stroke\n    techniques: [arco]\n", "'arco' stands in a group already"},
        {"words: 3\n", "own.yaml:1:8: words must be a list"},
    };
    for (size_t i = 0; i < sizeof mistakes / sizeof mistakes[0]; i++) {
        assert_null(sw_techniques_load("own.yaml", sw_slice_of(mistakes[i].text), &error));
        if (strstr(error, mistakes[i].error) == NULL) {
            fail_msg("%s\n  instead of %s", error, mistakes[i].error);
        }
        free(error);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_texts),
        cmocka_unit_test(test_changes),
        cmocka_unit_test(test_override),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
