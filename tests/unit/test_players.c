/* Instruments: figures, names, the user's own file and the mistakes in it. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "base/nearest.h"
#include "players/recogniser.h"
#include "players/staff_name.h"
#include "stavewright/players.h"
#include "pitches.h"

static sw_instruments *load_with(const char *yaml)
{
    char *error = NULL;
    sw_instruments *instruments =
        sw_instruments_load(yaml == NULL ? NULL : "own.yaml", sw_slice_of(yaml), &error);
    if (instruments == NULL) {
        fail_msg("%s", error);
    }
    assert_null(error);
    return instruments;
}

static int set_up(void **state)
{
    *state = load_with(NULL);
    return 0;
}

static int tear_down(void **state)
{
    sw_instruments_free(*state);
    return 0;
}

static const sw_instrument *get(const sw_instruments *instruments, const char *id)
{
    const sw_instrument *instrument = sw_instruments_by_id(instruments, id);
    if (instrument == NULL) {
        fail_msg("no instrument %s", id);
    }
    return instrument;
}

static const char *find(const sw_instruments *instruments, const char *name)
{
    const sw_instrument *instrument = sw_instruments_find(instruments, name);
    return instrument == NULL ? "-" : instrument->id;
}

/* ---- the built-in figures */

static void a_written_c5_sounds_where_it_should(void **state)
{
    static const char *const cases[][2] = {
        {"piccolo", "C6"},
        {"alto-flute", "G4"},
        {"english-horn", "F4"},
        {"clarinet-in-eb", "Eb5"},
        {"clarinet", "Bb4"},
        {"clarinet-in-a", "A4"},
        {"basset-horn", "F4"},
        {"bass-clarinet", "Bb3"},
        {"contrabassoon", "C4"},
        {"alto-saxophone", "Eb4"},
        {"tenor-saxophone", "Bb3"},
        {"baritone-saxophone", "Eb3"},
        {"horn", "F4"},
        {"double-bass", "C4"},
        {"glockenspiel", "C7"},
        {"xylophone", "C6"},
        {"violin", "C5"},
        {"horn-in-bb-basso", "Bb3"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        const sw_instrument *instrument = get(*state, cases[i][0]);
        sw_pitch sounding = sw_instrument_sounding(instrument, pitch("C5"));
        assert_pitch(sounding, cases[i][1]);
        assert_pitch(sw_instrument_written(instrument, sounding), "C5");
    }
}

static void every_instrument_is_complete(void **state)
{
    size_t count = sw_instruments_count(*state);
    assert_true(count >= 60);
    assert_null(sw_instruments_get(*state, count));
    for (size_t i = 0; i < count; i++) {
        const sw_instrument *instrument = sw_instruments_get(*state, i);
        assert_ptr_equal(sw_instruments_by_id(*state, instrument->id), instrument);
        assert_true(instrument->clef_count > 0);
        assert_true(strlen(instrument->source) > 5);
        assert_true(instrument->has_compass || strstr(instrument->source, "no ") != NULL);
        assert_true((instrument->fingers == 0) == (instrument->span == 0));
        assert_true(instrument->extreme_span >= instrument->span);
        assert_string_not_equal(sw_family_name(instrument->family), "");
    }
    assert_null(sw_instruments_by_id(*state, "kazoo"));
}

/* The highest of a horn's key, or what natural horns in high keys have above it. */
static int top_of_horn(const sw_instrument *in_key, sw_pitch of_horn, const char *partial)
{
    static const char *const high_keys[] = {"horn-in-a", "horn-in-bb-alto", "horn-in-c-alto"};
    int top = sw_pitch_semitones(of_horn);
    for (size_t i = 0; i < sizeof high_keys / sizeof high_keys[0]; i++) {
        sw_pitch written;
        assert_true(sw_pitch_from_scientific(sw_slice_of(partial), &written));
        int sounding = sw_pitch_semitones(sw_instrument_sounding(in_key, written));
        top = strcmp(in_key->id, high_keys[i]) == 0 && sounding > top ? sounding : top;
    }
    return top;
}

/* "computed" in their source: the same instrument, read in another key; but natural horns in high keys go to
 * their twelfth partial, some to the thirteenth. */
static void the_keys_of_a_horn_have_its_sounding_compass(void **state)
{
    const sw_instrument *horn = get(*state, "horn");
    size_t horns = 0;
    for (size_t i = 0; i < sw_instruments_count(*state); i++) {
        const sw_instrument *other = sw_instruments_get(*state, i);
        if (strncmp(other->id, "horn-in-", 8) == 0) {
            assert_int_equal(sw_pitch_semitones(sw_instrument_sounding(other, other->written_low)),
                             sw_pitch_semitones(sw_instrument_sounding(horn, horn->written_low)));
            assert_int_equal(sw_pitch_semitones(sw_instrument_sounding(other, other->written_high)),
                             top_of_horn(other, sw_instrument_sounding(horn, horn->written_high), "G5"));
            assert_int_equal(sw_pitch_semitones(sw_instrument_sounding(other, other->extreme_high)),
                             top_of_horn(other, sw_instrument_sounding(horn, horn->extreme_high), "A5"));
            horns++;
        }
    }
    assert_int_equal(horns, 10);
}

static void the_computed_trumpets_have_the_compass_of_the_one_in_c(void **state)
{
    static const char *const cases[] = {"trumpet-in-eb", "trumpet-in-e", "trumpet-in-f", "trumpet-in-a"};
    const sw_instrument *in_c = get(*state, "trumpet-in-c");
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        const sw_instrument *other = get(*state, cases[i]);
        assert_int_equal(sw_pitch_semitones(sw_instrument_sounding(other, other->written_low)),
                         sw_pitch_semitones(in_c->written_low));
        assert_int_equal(sw_pitch_semitones(sw_instrument_sounding(other, other->written_high)),
                         sw_pitch_semitones(in_c->written_high));
        assert_int_equal(sw_pitch_semitones(sw_instrument_sounding(other, other->extreme_high)),
                         sw_pitch_semitones(in_c->extreme_high));
    }
}

static void a_place_in_the_compass_is_told(void **state)
{
    const sw_instrument *flute = get(*state, "flute");
    assert_int_equal(sw_instrument_place_written(flute, pitch("Bb3")), SW_BELOW_EXTREME);
    assert_int_equal(sw_instrument_place_written(flute, pitch("B3")), SW_BELOW_SECTION);
    assert_int_equal(sw_instrument_place_written(flute, pitch("Cb4")), SW_BELOW_SECTION);
    assert_int_equal(sw_instrument_place_written(flute, pitch("B#3")), SW_IN_SECTION);
    assert_int_equal(sw_instrument_place_written(flute, pitch("C7")), SW_IN_SECTION);
    assert_int_equal(sw_instrument_place_written(flute, pitch("C#7")), SW_ABOVE_SECTION);
    assert_int_equal(sw_instrument_place_written(flute, pitch("Eb7")), SW_ABOVE_EXTREME);
    const sw_instrument *bass = get(*state, "double-bass");
    assert_int_equal(sw_instrument_place_sounding(bass, pitch("E1")), SW_IN_SECTION);
    assert_int_equal(sw_instrument_place_sounding(bass, pitch("Eb1")), SW_BELOW_SECTION);
    assert_int_equal(sw_instrument_place_sounding(bass, pitch("B0")), SW_BELOW_EXTREME);
    assert_int_equal(sw_instrument_place_written(get(*state, "tam-tam"), pitch("C0")), SW_IN_SECTION);
}

static void hands_are_told(void **state)
{
    const sw_instrument *harp = get(*state, "harp");
    assert_int_equal(harp->fingers, 4);
    assert_int_equal(harp->span, 10);
    assert_int_equal(harp->extreme_span, 10);
    const sw_instrument *piano = get(*state, "piano");
    assert_int_equal(piano->fingers, 5);
    assert_int_equal(piano->span, 9);
    assert_int_equal(piano->extreme_span, 10);
    assert_int_equal(get(*state, "marimba")->fingers, 2);
    assert_int_equal(get(*state, "violin")->fingers, 0);
}

/* ---- names -------------------------------------------------------------------------------------- */

static void assert_plain(const char *name, const char *text, const char *key, const char *bare,
                         const char *bare_key)
{
    sw_staff_names names;
    sw_staff_name_plain(sw_slice_of(name), &names);
    assert_string_equal(names.stated.text, text);
    assert_string_equal(names.stated.key, key);
    assert_string_equal(names.bare.text, bare);
    assert_string_equal(names.bare.key, bare_key);
}

static void names_get_a_plain_form(void **state)
{
    (void)state;
    assert_plain("Flöten 1. 2.", "floten", "", "", "");
    assert_plain("fluteOne", "flute", "", "", "");
    assert_plain("hornsIII", "horns", "", "", "");
    assert_plain("Corni I e II in F", "corni", "f", "", "");
    assert_plain("Cor. in E♭", "cor", "eb", "", "");
    assert_plain("Clarinetto in si bemolle", "clarinetto", "bb", "", "");
    assert_plain("Corni in C alto", "corni", "c alto", "", "");
    assert_plain("Hörner in tief B", "horner", "bb basso", "", "");
    assert_plain("Horn in B natural", "horn", "b", "", "");
    assert_plain("Clarinet (Bb) 1", "clarinet / bb", "", "clarinet", "bb");
    assert_plain("F Horn", "f horn", "", "horn", "f");
    assert_plain("Piano/Organ", "piano / organ", "", "", "");
    assert_plain("Flauto e Ottavino", "flauto / ottavino", "", "", "");
    assert_plain("Violini a 3", "violini", "", "", "");
    assert_plain("Violoncelli\n(con sordini)", "violoncelli", "", "", "");
    assert_plain("violin_two_a", "violin a", "", "violin", "a");
    assert_plain("", "", "", "", "");
    assert_plain("I", "", "", "", "");
    assert_plain("\xff\xc3", "", "", "", ""); /* no UTF-8 */
    assert_plain("Bb", "bb", "", "", "bb");
}

static void overlong_names_are_cut(void **state)
{
    char name[5000];
    for (size_t i = 0; i < sizeof name; i++) {
        name[i] = i % 7 == 6 ? ' ' : 'q';
    }
    name[sizeof name - 1] = '\0';
    assert_string_equal(find(*state, name), "-");
    memcpy(name, "Violin ", 7);
    assert_string_equal(find(*state, name), "violin");
    memset(name, 'm', sizeof name - 1);
    assert_string_equal(find(*state, name), "-");
}

static void the_special_wins_over_the_general(void **state)
{
    static const char *const cases[][2] = {
        {"Bass Clarinet", "bass-clarinet"},
        {"Cor anglais", "english-horn"},
        {"Cor.", "horn"},
        {"Tenor Sax", "tenor-saxophone"},
        {"Tenor", "tenor"},
        {"Tenor Drum", "tenor-drum"},
        {"Viola da gamba", "viola-da-gamba"},
        {"Piccolo Trumpet", "piccolo-trumpet"},
        {"Kl. Fl.", "piccolo"},
        {"Kl. Tr.", "snare-drum"},
        {"Kl.", "clarinet"},
        {"Contrabass Tuba", "tuba"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        assert_string_equal(find(*state, cases[i][0]), cases[i][1]);
    }
}

static void a_key_selects_the_instrument_of_that_key(void **state)
{
    static const char *const cases[][2] = {
        {"Clarinet in A", "clarinet-in-a"},
        {"Clarinet in Eb", "clarinet-in-eb"},
        {"Klarinette in Es", "clarinet-in-eb"},
        {"Clarinette en mi bémol", "clarinet-in-eb"},
        {"Clarinetti in B", "clarinet"},
        {"Clarinet", "clarinet"},
        {"Flute in G", "alto-flute"},
        {"Horn in D", "horn-in-d"},
        {"Timpani in C.G.", "timpani"}, /* comes in no key: the key says how it is tuned */
        {"Bass Clarinet in D", "-"},    /* there is none, and it is no other clarinet */
        {"Corni in B", "-"},            /* alto or basso */
        {"clarinetA", "-"},             /* the first player or the one in A */
        {"clarinetB", "clarinet"},      /* the second player or the one in B flat: the same */
        {"fluteA", "flute"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        assert_string_equal(find(*state, cases[i][0]), cases[i][1]);
    }
}

static void what_cant_be_told_selects_nothing(void **state)
{
    static const char *const cases[] = {"C.",  "T.",       "B.", "S.", "A.",     "Bass",
                                        "Tr.", "Baritone", "",   "IV", "Melody", "Es"};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        assert_string_equal(find(*state, cases[i]), "-");
    }
}

/* sw_instruments_load leaves the check of the built-in patterns to this test: they are compiled at each
 * start, and one that is wrong would match nothing. */
static void built_in_patterns_compile(void **state)
{
    (void)state;
    FILE *file = fopen("src/players/instruments.yaml", "r");
    if (file == NULL) {
        skip(); /* not run from the top of the repository */
    }
    char line[2048];
    size_t patterns = 0;
    while (fgets(line, sizeof line, file) != NULL) {
        if (strncmp(line, "      - ", 8) != 0 || line[8] == '*') {
            continue;
        }
        line[strcspn(line, "\n")] = '\0';
        char message[256];
        if (!sw_recogniser_check(sw_slice_of(line + 8), message, sizeof message)) {
            fail_msg("%s: %s", line + 8, message);
        }
        patterns++;
    }
    fclose(file);
    assert_true(patterns >= 150);
}

/* ---- the user's own file ------------------------------------------------------------------------ */

static void an_override_replaces_what_it_gives(void **state)
{
    (void)state;
    sw_instruments *own = load_with("instruments:\n"
                                    "  - id: oboe\n"
                                    "    high: F6\n"
                                    "  - id: bassoon\n"
                                    "    low: A1\n"
                                    "    source: our second bassoon\n"
                                    "  - id: piano\n"
                                    "    hands: {fingers: 5, span: 10}\n"
                                    "  - id: marimba\n"
                                    "    hands: {fingers: 2, span: 8, by-register: [{from: C2, span: 7}, "
                                    "{from: C4, span: 8, extreme-span: 12}]}\n"
                                    "  - id: vibraphone\n"
                                    "    hands: {fingers: 2, span: 8}\n");
    const sw_instrument *marimba = get(own, "marimba");
    assert_int_equal(marimba->hand_register_count, 2);
    assert_int_equal(marimba->hand_registers[0].extreme_span, 7);
    assert_pitch(marimba->hand_registers[1].from, "C4");
    assert_int_equal(marimba->hand_registers[1].extreme_span, 12);
    assert_int_equal(get(own, "vibraphone")->hand_register_count, 0);
    const sw_instrument *oboe = get(own, "oboe");
    assert_pitch(oboe->written_high, "F6");
    assert_pitch(oboe->written_low, "Bb3");
    assert_pitch(oboe->extreme_high, "A6");
    assert_string_equal(oboe->source, "own.yaml:2");
    const sw_instrument *bassoon = get(own, "bassoon");
    assert_pitch(bassoon->extreme_low, "A1"); /* follows low, as it did before */
    assert_string_equal(bassoon->source, "our second bassoon");
    assert_int_equal(get(own, "piano")->extreme_span, 10);
    assert_string_equal(find(own, "Oboe"), "oboe");
    sw_instruments_free(own);
}

static void an_override_adds_names_and_instruments(void **state)
{
    (void)state;
    sw_instruments *own = load_with("instruments:\n"
                                    "- {id: viola, names: [pomposa, 'tr']}\n"
                                    "- id: nyckelharpa\n"
                                    "  family: strings\n"
                                    "  sounds: C4\n"
                                    "  clefs: [treble]\n"
                                    "  names: [nyckelharpa|nyck, harp]\n"
                                    "- id: clarinet-in-g\n"
                                    "  family: woodwind\n"
                                    "  key: G\n"
                                    "  sounds: G3\n"
                                    "  names: [clarinets?]\n");
    assert_string_equal(find(own, "Pomposa 1"), "viola");
    assert_string_equal(find(own, "Viola"), "viola");
    assert_string_equal(find(own, "Tr."), "viola");
    assert_string_equal(find(own, "NYCK. II"), "nyckelharpa");
    assert_string_equal(find(own, "Harp"), "nyckelharpa"); /* the user's names come first */
    assert_string_equal(find(own, "Clarinet in G"), "clarinet-in-g");
    assert_string_equal(find(own, "Clarinet in A"), "clarinet-in-a");
    assert_false(get(own, "nyckelharpa")->has_compass);
    assert_string_equal(get(own, "nyckelharpa")->source, "own.yaml:3");
    sw_instruments_free(own);
}

static void a_new_key_holds_for_the_built_in_names(void **state)
{
    (void)state;
    sw_instruments *own = load_with("instruments: [{id: horn-in-bb-basso, key: B}]\n");
    assert_string_equal(find(own, "Corni in B"), "horn-in-bb-basso");
    assert_string_equal(find(own, "Corni in B basso"), "-");
    sw_instruments_free(own);
}

static void an_empty_override_changes_nothing(void **state)
{
    static const char *const cases[] = {"", "# nothing yet\n", "instruments: []\n"};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        sw_instruments *own = load_with(cases[i]);
        assert_int_equal(sw_instruments_count(own), sw_instruments_count(*state));
        sw_instruments_free(own);
    }
}

static void mistakes_name_place_and_remedy(void **state)
{
    (void)state;
    static const char *const cases[][2] = {
        {"instruments:\n- id: flute\n  hihg: C7\n", "own.yaml:3:3: unknown key 'hihg'; did you mean 'high'?"},
        {"instruments:\n- id: flute\n  transposition: C7\n",
         "own.yaml:3:3: unknown key 'transposition'; use one of: id, family, key, sounds, low, high, "
         "extreme-low, extreme-high, clefs, hands, source, names, like, sounds-like, can"},
        {"instrument: []\n", "own.yaml:1:1: unknown key 'instrument'; did you mean 'instruments'?"},
        {"instruments: []\nroster: []\n",
         "own.yaml:2:1: unknown key 'roster'; use one of: instruments, families"},
        {"- id: flute\n", "own.yaml:1:1: the file must begin with 'instruments:' and a list under it"},
        {"instruments: {id: flute}\n",
         "own.yaml:1:14: 'instruments' must hold a list, each entry beginning with '- id:'"},
        {"instruments: [flute]\n", "own.yaml:1:15: an instrument must be a mapping that begins with 'id:'"},
        {"instruments:\n- low: C4\n", "own.yaml:2:3: an instrument needs an id, as in 'id: english-horn'"},
        {"instruments:\n- id: Flute 1\n", "own.yaml:2:7: id 'Flute 1' may hold only a-z, 0-9 and '-'"},
        {"instruments:\n- id: flute\n- id: flute\n",
         "own.yaml:3:7: 'flute' stands twice in this file; put its figures into one entry"},
        {"instruments:\n- id: flute\n  high: C7\n  high: D7\n",
         "own.yaml:4:3: 'high' stands twice here; remove one"},
        {"instruments:\n- id: flute\n  high: 96\n", "own.yaml:3:9: high: '96' is no pitch; write a letter, # "
                                                    "or b, and the octave: Bb3, F#2, C4 (middle C)"},
        {"instruments:\n- id: flute\n  high: [C7]\n", "own.yaml:3:9: high must be a text"},
        {"instruments:\n- id: flute\n  high:\n", "own.yaml:3:8: high must be a text"},
        {"instruments:\n- id: flute\n  high: E7\n",
         "own.yaml:2:7: flute: high E7 lies above extreme-high D7; give both figures so that they fit"},
        {"instruments:\n- id: flute\n  high: Bb3\n",
         "own.yaml:2:7: flute: low C4 lies above high Bb3; give both figures so that they fit"},
        {"instruments:\n- id: flute\n  family: woodwinds\n",
         "own.yaml:3:11: unknown family 'woodwinds'; did you mean 'woodwind'?"},
        {"instruments:\n- id: flute\n  family: choir\n",
         "own.yaml:3:11: unknown family 'choir'; use one of: woodwind, brass, percussion, keyboard, plucked, "
         "strings, "
         "voice"},
        {"instruments:\n- id: flute\n  key: X\n",
         "own.yaml:3:8: key: 'X' is no key; write Bb, F#, C or C basso"},
        {"instruments:\n- id: flute\n  clefs: treble\n",
         "own.yaml:3:10: clefs must be a list, as in [treble, bass]"},
        {"instruments:\n- id: flute\n  names: fl\n", "own.yaml:3:10: names must be a list of patterns"},
        {"instruments:\n- id: flute\n  names: [fl, 'f(l']\n",
         "own.yaml:3:15: 'f(l' is no pattern of PCRE2: missing closing parenthesis, at character 4"},
        {"instruments:\n- id: flute\n  names: ['(?<a>f)\\k<a>']\n",
         "own.yaml:3:11: '(?<a>f)\\k<a>' is no pattern of PCRE2: back references are not supported here"},
        {"instruments:\n- id: flute\n  names: ['(?x)fl #']\n",
         "own.yaml:3:11: '(?x)fl #' is no pattern of PCRE2: it does not end by itself"},
        {"instruments:\n- id: flute\n  names: &a [*a]\n", "own.yaml:3:10: a name must be a text"},
        {"instruments:\n- id: flute\n  source: \"a\\nb\"\n",
         "own.yaml:3:11: source must be a text on one line"},
        {"instruments:\n- id: harp\n  hands: 4\n",
         "own.yaml:3:10: hands must be a mapping, as in {fingers: 5, span: 9}"},
        {"instruments:\n- id: harp\n  hands: {fingers: 4}\n",
         "own.yaml:3:10: hands need both fingers and span, as in {fingers: 5, span: 9}"},
        {"instruments:\n- id: harp\n  hands: {finger: 4}\n",
         "own.yaml:3:11: unknown key 'finger'; did you mean 'fingers'?"},
        {"instruments:\n- id: harp\n  hands: {fingers: none, span: 9}\n",
         "own.yaml:3:20: fingers: 'none' is no number from 1 to 99"},
        {"instruments:\n- id: harp\n  hands: {fingers: 4, span: 10, extreme-span: 9}\n",
         "own.yaml:3:10: extreme-span 9 is less than span 10; give at least as much"},
        {"instruments:\n- id: marimba\n  hands: {fingers: 2, span: 8, by-register: [{from: C2}]}\n",
         "own.yaml:3:46: a register needs from and span, as in {from: C5, span: 8}"},
        {"instruments:\n- id: marimba\n  hands:\n    fingers: 2\n    span: 8\n    by-register:\n"
         "    - {from: C3, span: 9}\n    - {from: C4, span: 8}\n",
         "own.yaml:8:7: list the registers from the bottom up, each above the last and not narrower"},
        {"instruments:\n- id: kazoo\n", "own.yaml:2:7: kazoo is a new instrument and needs a family"},
        {"instruments:\n- id: kazoo\n  family: woodwind\n",
         "own.yaml:2:7: kazoo is a new instrument and needs sounds (the sounding pitch of a written C4)"},
        {"instruments:\n- {id: kazoo, family: woodwind, sounds: C4, low: C4}\n",
         "own.yaml:2:8: kazoo: a compass needs both low and high; high is missing"},
        {"instruments:\n- {id: kazoo, family: woodwind, sounds: C4, extreme-low: C4}\n",
         "own.yaml:2:8: kazoo: an extreme needs low and high beside it"},
        {"instruments: []\n---\ninstruments: []\n",
         "own.yaml:3:1: a second document begins here; put everything into one, without '---' between"},
        {"instruments:\n- id: [flute\n", "own.yaml:3:1: this is no YAML: did not find expected ',' or ']' "
                                         "while parsing a flow sequence; mend the "
                                         "indentation or quote the text"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        char *error = NULL;
        sw_instruments *instruments = sw_instruments_load("own.yaml", sw_slice_of(cases[i][0]), &error);
        if (instruments != NULL) {
            fail_msg("no mistake was seen in:\n%s", cases[i][0]);
        }
        assert_string_equal(error, cases[i][1]);
        free(error);
    }
}

static void a_text_that_is_no_utf8_is_refused(void **state)
{
    (void)state;
    char *error = NULL;
    assert_null(sw_instruments_load("own.yaml", sw_slice_of("instruments:\n- id: \xff\n"), &error));
    assert_string_equal(error, "own.yaml:2:7: invalid leading UTF-8 octet; save the file as UTF-8 text");
    free(error);
}

static void a_mistyped_word_gets_a_suggestion(void **state)
{
    (void)state;
    static const char *const words[] = {"low", "high", "extreme-low"};
    assert_string_equal(sw_nearest_word(sw_slice_of("lwo"), words, 3), "low");
    assert_string_equal(sw_nearest_word(sw_slice_of("extremelow"), words, 3), "extreme-low");
    assert_string_equal(sw_nearest_word(sw_slice_of("hgih"), words, 3), "high");
    assert_null(sw_nearest_word(sw_slice_of("compass"), words, 3));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_written_c5_sounds_where_it_should),
        cmocka_unit_test(every_instrument_is_complete),
        cmocka_unit_test(the_keys_of_a_horn_have_its_sounding_compass),
        cmocka_unit_test(the_computed_trumpets_have_the_compass_of_the_one_in_c),
        cmocka_unit_test(a_place_in_the_compass_is_told),
        cmocka_unit_test(hands_are_told),
        cmocka_unit_test(names_get_a_plain_form),
        cmocka_unit_test(overlong_names_are_cut),
        cmocka_unit_test(the_special_wins_over_the_general),
        cmocka_unit_test(a_key_selects_the_instrument_of_that_key),
        cmocka_unit_test(what_cant_be_told_selects_nothing),
        cmocka_unit_test(built_in_patterns_compile),
        cmocka_unit_test(an_override_replaces_what_it_gives),
        cmocka_unit_test(an_override_adds_names_and_instruments),
        cmocka_unit_test(a_new_key_holds_for_the_built_in_names),
        cmocka_unit_test(an_empty_override_changes_nothing),
        cmocka_unit_test(mistakes_name_place_and_remedy),
        cmocka_unit_test(a_text_that_is_no_utf8_is_refused),
        cmocka_unit_test(a_mistyped_word_gets_a_suggestion),
    };
    return cmocka_run_group_tests(tests, set_up, tear_down);
}
