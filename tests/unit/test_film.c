/* stavewright.yaml: what is read out of it, and what is said about mistakes in it. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "players/staff_numbers.h"
#include "stavewright/film.h"

static const sw_rule_option margins[] = {{"margin", 0.5, 0, 1, "how much"}, {0}};
static const sw_film_rule rules[] = {{"range", NULL}, {"prep-time", margins}, {"house", NULL}};
enum { RULES = sizeof rules / sizeof rules[0] };

static sw_film *load(const char *yaml, char **error)
{
    return sw_film_load("film/stavewright.yaml", sw_slice_of(yaml), rules, RULES, error);
}

static sw_film *load_good(const char *yaml)
{
    char *error = NULL;
    sw_film *film = load(yaml, &error);
    if (film == NULL) {
        fail_msg("%s", error);
    }
    return film;
}

static const struct bad_row {
    const char *yaml;
    const char *says; /* behind the path */
} bad[] = {
    {"chairz: []\n", "1:1: unknown key 'chairz'; did you mean 'chairs'?"},
    {"chairs:\n  - {name: Flute 1, plays: [flute]}\nchairs: []\n", "3:1: 'chairs' stands twice here"},
    {"chairs: flute\n", "1:9: chairs must be a list"},
    {"chairs:\n  - flute\n", "2:5: a chair must be a mapping"},
    {"chairs:\n  - plays: [flute]\n", "2:5: a chair needs a name"},
    {"chairs:\n  - name: Flute 1\n", "2:5: chair 'Flute 1' needs 'plays'"},
    {"chairs:\n  - name: Flute 1\n    plays: []\n", "3:12: chair 'Flute 1' plays nothing"},
    {"chairs:\n  - name: Flute 1\n    plays: [flute, picolo]\n",
     "3:20: unknown instrument 'picolo'; did you mean 'piccolo'?"},
    {"chairs:\n  - name: A\n    plays: [Cor anglais]\n",
     "3:13: unknown instrument 'Cor anglais'; did you mean 'english-horn'?"},
    {"chairs:\n  - name: A\n    plays: [hubcap]\n", "3:13: unknown instrument 'hubcap'; write a plain name"},
    {"chairs:\n  - name: A\n    plays: [flute, flute]\n", "3:20: 'flute' stands twice here"},
    {"chairs:\n  - {name: A, plays: [flute]}\n  - {name: A, plays: [oboe]}\n",
     "3:12: chair 'A' stands twice, first on line 2"},
    {"chairs:\n  - name: A\n    plays: [violin]\n    players: 0\n", "4:14: players: '0' is no number"},
    {"chairs:\n  - name: A\n    plays: [violin]\n    players: many\n", "4:14: players: 'many' is no number"},
    {"chairs:\n  - name: A\n    plays: [flute]\n    instrument: x\n", "4:5: unknown key 'instrument'"},
    {"chairs:\n  - name: A\n    plays: [percussion]\n    percussion: [violin]\n",
     "4:18: percussion: 'violin' is no percussion"},
    {"chairs:\n  - name: A\n    plays: [trumpet]\n    mutes: [cup-mutes]\n",
     "4:13: unknown mute 'cup-mutes'; did you mean 'cup-mute'?"},
    {"chairs:\n  - name: A\n    plays: [trumpet]\n    mutes: [pizzicato]\n",
     "4:13: unknown mute 'pizzicato'; use one of: "},
    {"chairs:\n  - name: A\n    plays: [flute]\n    prerecorded: perhaps\n",
     "4:18: prerecorded must be true or false"},
    {"chairs:\n  - name: A\n    plays: [flute]\n    staves: ['Fl(']\n",
     "4:14: staves: 'Fl(' is no pattern of PCRE2: missing closing parenthesis"},
    {"chairs:\n  - {name: Viola, plays: [viola], playres: 10}\n",
     "2:35: unknown key 'playres'; did you mean 'players'?"},
    {"rules:\n  rnage: off\n", "2:3: unknown key 'rnage'; did you mean 'range'?"},
    {"rules:\n  range: of\n", "2:10: unknown severity 'of'; did you mean 'off'?"},
    {"rules:\n  range: yes\n", "2:10: unknown severity 'yes'; use one of: off, note, warning, error"},
    {"rules:\n  range: {margin: 0.2}\n", "2:11: unknown key 'margin'; use one of: severity"},
    {"rules:\n  prep-time: {margn: 0.2}\n", "2:15: unknown key 'margn'; did you mean 'margin'?"},
    {"rules:\n  prep-time: {margin: 2}\n", "2:23: margin: '2' is no number from 0 to 1 (how much)"},
    {"rules:\n  prep-time: {margin: 0.2s}\n", "2:23: margin: '0.2s' is no number from 0 to 1"},
    {"rules:\n  prep-time: {margin: nan}\n", "2:23: margin: 'nan' is no number"},
    {"rules: [range]\n", "1:8: rules must be a mapping"},
    {"house:\n  - {forbidden: x}\n", "2:5: a house rule needs a 'message'"},
    {"house:\n  - {message: x}\n", "2:5: a house rule needs either 'forbidden' or 'required'"},
    {"house:\n  - {message: x, forbidden: a, required: b}\n", "2:5: a house rule needs either"},
    {"house:\n  - {message: x, forbidden: '[a'}\n", "2:29: forbidden: '[a' is no pattern of PCRE2"},
    {"house:\n  - {message: x, forbidden: a, in: text}\n",
     "2:36: unknown place 'text'; did you mean 'texts'?"},
    {"house:\n  - {message: x, forbidden: a, field: title}\n", "2:39: 'field' needs 'in: header'"},
    {"house:\n  - {message: x, required: a, replacement: b}\n",
     "2:44: 'replacement' is for what 'forbidden'"},
    {"instruments:\n  - {id: oboe, low: H3}\n", "2:21: low: 'H3' is no pitch"},
    {"rules: {range: off}\ninstruments:\n  - {id: oboe, lowest: B3}\n", "3:16: unknown key 'lowest'"},
    {"limits:\n  - {for: [flute], breathe: 12}\n", "2:20: unknown key 'breathe'; did you mean 'breath'?"},
    {"limits:\n  - {for: [flut], breath: 12}\n", "2:12: unknown instrument 'flut'; did you mean 'flute'?"},
    {"limits:\n  - {breath: 12}\n", "2:5: a limit needs 'for'"},
    {"limits:\n  - {for: flute, breath: 12}\n", "2:11: for must be a list"},
    {"limits:\n  - {for: [flute], breath: long}\n", "2:28: breath: 'long' is no number of seconds"},
    {"limits:\n  - {for: [flute], double: -1}\n", "2:28: double: '-1' is no number"},
    {"limits:\n  - {for: [flute], fades: well}\n", "2:27: fades must be true or false"},
    {"limits: {for: [flute]}\n", "1:9: limits must be a list"},
    {"breath-factors: {sofd: 2}\n", "1:18: unknown key 'sofd'; did you mean 'soft'?"},
    {"breath-factors: {loud: 0}\n", "1:24: loud must be more than 0"},
    {"breath-factors: 2\n", "1:17: breath-factors must be a mapping"},
    {"paths: {includes: []}\n", "1:9: unknown key 'includes'; did you mean 'include'?"},
    {"paths: {include: lib}\n", "1:18: include must be a list"},
    {"chairs: [\n", "2:1: this is no YAML"},
    {"film: a\n---\nfilm: b\n", "3:1: a second document begins here"},
    {"- film\n", "1:1: the file must be a mapping"},
};

static void test_mistakes(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        char *error = NULL;
        sw_film *film = load(bad[i].yaml, &error);
        if (film != NULL) {
            fail_msg("taken: %s", bad[i].yaml);
        }
        sw_buffer wanted = {0};
        sw_buffer_format(&wanted, "film/stavewright.yaml:%s", bad[i].says);
        if (strncmp(error, wanted.data, wanted.length) != 0) {
            fail_msg("wanted %s\n       got %s", wanted.data, error);
        }
        assert_null(strchr(error, '\n'));
        sw_buffer_free(&wanted);
        free(error);
    }
}

static void test_default(void **state)
{
    (void)state;
    char *error = NULL;
    sw_film *film = sw_film_load(NULL, (sw_slice){0}, rules, RULES, &error);
    assert_non_null(film);
    assert_false(sw_film_has_roster(film));
    assert_null(sw_film_file(film));
    assert_int_equal(sw_film_wish(film, "range"), SW_RULE_AS_IT_IS);
    assert_true(sw_film_option(film, "prep-time", "margin", 0.5) == 0.5);
    assert_non_null(sw_instruments_by_id(sw_film_instruments(film), "flute"));
    sw_film_free(film);
    film = load_good("# nothing yet\n");
    assert_false(sw_film_has_roster(film));
    sw_film_free(film);
}

static void test_all_sections(void **state)
{
    (void)state;
    sw_film *film = load_good("film: \xc3\x89tude\n"
                              "chairs:\n"
                              "  - name: Flute 2\n"
                              "    plays: [flute, piccolo, saw-flute]\n"
                              "  - name: Violins\n"
                              "    plays: [violin]\n"
                              "    players: 14\n"
                              "    staves: ['^Vl\\b', '(?i)violon']\n"
                              "    mutes: []\n"
                              "  - name: Percussion 1\n"
                              "    plays: [percussion, glockenspiel]\n"
                              "    percussion: [triangle, bass-drum]\n"
                              "  - name: Choir\n"
                              "    plays: [choir]\n"
                              "    prerecorded: true\n"
                              "rules:\n"
                              "  range: off\n"
                              "  prep-time: {severity: error, margin: 0.2}\n"
                              "instruments: # a new one, and another figure\n"
                              "  - {id: saw-flute, family: woodwind, sounds: C4}\n"
                              "  - {id: oboe, low: A3}\n"
                              "house:\n"
                              "  - forbidden: '\\bpizzicato\\b'\n"
                              "    message: write pizz.\n"
                              "    replacement: pizz.\n"
                              "    severity: note\n"
                              "  - in: [header]\n"
                              "    field: title\n"
                              "    required: '^\\d+m\\d+'\n"
                              "    message: the cue number comes first\n"
                              "paths: {include: [lib, /usr/share/lib], output: [out]}\n");
    assert_string_equal(sw_film_name(film), "\xc3\x89tude");
    assert_int_equal(sw_film_chair_count(film), 4);
    const sw_chair *flute = sw_film_chair(film, 0);
    assert_int_equal(flute->play_count, 3);
    assert_string_equal(flute->plays[1]->id, "piccolo");
    assert_ptr_equal(flute->plays[2], sw_instruments_by_id(sw_film_instruments(film), "saw-flute"));
    assert_int_equal(flute->players, 1);
    assert_false(flute->mutes_given || flute->percussion_given || flute->prerecorded);
    assert_int_equal(flute->line, 3);
    const sw_chair *violins = sw_film_chair(film, 1);
    assert_int_equal(violins->players, 14);
    assert_true(violins->mutes_given && violins->mute_count == 0);
    assert_true(sw_film_chair_claims(film, 1, "Vl 1") && sw_film_chair_claims(film, 1, "Premiers VIOLONS"));
    assert_false(sw_film_chair_claims(film, 1, "Viola") || sw_film_chair_claims(film, 0, "Flute 2"));
    assert_int_equal(sw_film_chair(film, 2)->percussion_count, 2);
    assert_true(sw_film_chair(film, 3)->prerecorded);
    assert_int_equal(sw_film_wish(film, "range"), SW_RULE_OFF);
    assert_int_equal(sw_film_wish(film, "prep-time"), SW_RULE_ERROR);
    assert_true(sw_film_option(film, "prep-time", "margin", 0.5) == 0.2);
    sw_pitch low = sw_instruments_by_id(sw_film_instruments(film), "oboe")->written_low;
    assert_int_equal(low.step, 5); /* A */
    assert_string_equal(sw_instruments_by_id(sw_film_instruments(film), "oboe")->source,
                        "film/stavewright.yaml:21");
    assert_int_equal(sw_film_house_count(film), 2);
    const sw_house_rule *rule = sw_film_house(film, 0);
    size_t from = 0;
    size_t to = 0;
    assert_true(sw_house_rule_find(film, rule, sw_slice_of("poco pizzicato"), 0, &from, &to));
    assert_int_equal(from, 5);
    assert_int_equal(to, 14);
    assert_false(sw_house_rule_find(film, rule, sw_slice_of("pizz."), 0, NULL, NULL));
    assert_int_equal(rule->where, SW_HOUSE_TEXTS | SW_HOUSE_MARKUPS);
    assert_int_equal(rule->severity, SW_NOTE);
    assert_string_equal(rule->replacement, "pizz.");
    assert_true(sw_film_house(film, 1)->required);
    assert_string_equal(sw_film_house(film, 1)->field, "title");
    assert_int_equal(sw_film_include_count(film), 2);
    assert_string_equal(sw_film_includes(film)[0], "film/lib");
    assert_string_equal(sw_film_includes(film)[1], "/usr/share/lib");
    sw_film_free(film);
}

/* Seconds of breath of an instrument by its id, and how fast it tongues twice. */
static void assert_limits(const sw_film *film, const char *id, double breath, double double_tongue)
{
    const sw_limit *limit =
        sw_limits_of(sw_film_limits(film), sw_instruments_by_id(sw_film_instruments(film), id));
    assert_non_null(limit);
    if (limit->breath != breath || limit->double_tongue != double_tongue) {
        fail_msg("%s: breath %g, double %g", id, limit->breath, limit->double_tongue);
    }
}

static void test_limits(void **state)
{
    (void)state;
    sw_film *plain = load_good("film: x\n");
    sw_film *film = load_good("breath-factors: {catch: 0.5}\n"
                              "limits:\n"
                              "  - {for: [horn-in-d, saw-flute], breath: 3}\n"
                              "  - for: [horn, flute]\n"
                              "    breath: 21\n"
                              "    source: asked\n"
                              "  - {for: [flute], double: 0}\n"
                              "  - {for: [oboe], fades: true}\n"
                              "instruments:\n"
                              "  - {id: saw-flute, family: woodwind, sounds: C4}\n");
    double horn =
        sw_limits_of(sw_film_limits(plain), sw_instruments_by_id(sw_film_instruments(plain), "horn"))
            ->double_tongue;
    double flute =
        sw_limits_of(sw_film_limits(plain), sw_instruments_by_id(sw_film_instruments(plain), "flute"))
            ->double_tongue;
    assert_true(horn > 0 && flute > 0);
    assert_limits(film, "horn", 21, horn);      /* what the film does not say stays */
    assert_limits(film, "horn-in-g", 21, horn); /* a horn in any key */
    assert_limits(film, "horn-in-d", 3, horn);  /* the first row that names it */
    assert_limits(film, "saw-flute", 3, 0);
    assert_limits(film, "flute", 21, flute);
    const sw_limits *limits = sw_film_limits(film);
    const sw_limit *oboe = sw_limits_of(limits, sw_instruments_by_id(sw_film_instruments(film), "oboe"));
    assert_true(oboe->fades && oboe->breath > 0);
    assert_string_equal(oboe->source, "film/stavewright.yaml:8");
    assert_true(sw_limits_breath(limits)->catch_seconds == 0.5);
    assert_true(sw_limits_breath(limits)->soft == sw_limits_breath(sw_film_limits(plain))->soft);
    sw_film_free(film);
    sw_film_free(plain);
}

static const struct number_row {
    const char *name;
    const char *numbers;
} names[] = {
    {"Flute", ""},
    {"Flute 1", "1"},
    {"Flutes 1, 2", "1 2"},
    {"Flute 1.2", "1 2"},
    {"Flauto I & II", "1 2"},
    {"Horn III", "3"},
    {"Horns 1-4", "1 2 3 4"},
    {"Corni I\xe2\x80\x93IV", "1 2 3 4"},
    {"hornThree", "3"},
    {"horns34", "3 4"},
    {"fluteTwo", "2"},
    {"violinII", "2"},
    {"2 Fl\xc3\xb6ten", "1 2"},
    {"2. Fl\xc3\xb6te", "2"},
    {"2nd Flute", "2"},
    {"Erste Violine", "1"},
    {"Clarinet 2 in Bb", "2"},
    {"Violin I", "1"},
    {"V. I", "1"},
    {"Fagotti a 2", "1 2"},
    {"Viola", ""},
    {"Vc.", ""},
    {"4 Horns in F", "1 2 3 4"},
    {"Seconda tromba", "2"},
    {"Oboe secondo", "2"},
    {"Trumpet 12", "1 2"},
    {"", ""},
    {"Clarinet in A", ""},
};

static void test_numbers(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        sw_staff_numbers numbers = sw_staff_numbers_of(names[i].name);
        sw_buffer text = {0};
        for (size_t n = 0; n < numbers.count; n++) {
            sw_buffer_format(&text, "%s%u", n == 0 ? "" : " ", numbers.items[n]);
        }
        if (strcmp(sw_buffer_text(&text), names[i].numbers) != 0) {
            fail_msg("%s: wanted '%s', got '%s'", names[i].name, names[i].numbers, sw_buffer_text(&text));
        }
        sw_buffer_free(&text);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_mistakes), cmocka_unit_test(test_default), cmocka_unit_test(test_all_sections),
        cmocka_unit_test(test_limits),   cmocka_unit_test(test_numbers),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
