/* Dynamics as levels; what instruments can do, from whom they have it, and the mistakes in a file of one's
 * own. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/dynamic.h"
#include "stavewright/players.h"
#include "stavewright/techniques.h"
#include "pitches.h"

static sw_instruments *load_with(const char *yaml)
{
    char *error = NULL;
    sw_instruments *instruments =
        sw_instruments_load(yaml == NULL ? NULL : "own.yaml", sw_slice_of(yaml), &error);
    if (instruments == NULL) {
        fail_msg("%s", error);
    }
    return instruments;
}

static void refuse(const char *yaml, const char *wanted)
{
    char *error = NULL;
    sw_instruments *instruments = sw_instruments_load("own.yaml", sw_slice_of(yaml), &error);
    assert_null(instruments);
    assert_string_equal(error, wanted);
    free(error);
}

static const sw_instrument *get(const sw_instruments *instruments, const char *id)
{
    const sw_instrument *instrument = sw_instruments_by_id(instruments, id);
    if (instrument == NULL) {
        fail_msg("no instrument %s", id);
    }
    return instrument;
}

/* ---- dynamics */

static void dynamics_are_in_order(void **state)
{
    (void)state;
    static const char *const order[] = {"n",  "ppppp", "pppp", "ppp", "pp",   "p",    "mp",
                                        "mf", "f",     "ff",   "fff", "ffff", "fffff"};
    sw_dynamic before = SW_NIENTE;
    for (size_t i = 0; i < sizeof order / sizeof order[0]; i++) {
        sw_dynamic level;
        assert_true(sw_dynamic_from_name(sw_slice_of(order[i]), &level));
        assert_string_equal(sw_dynamic_name(level), order[i]);
        assert_true(i == 0 || level > before);
        before = level;
    }
    sw_dynamic none;
    assert_false(sw_dynamic_from_name(sw_slice_of("sfz"), &none));
    assert_string_equal(sw_dynamic_name(SW_NO_DYNAMIC), "");
    assert_int_equal(sw_dynamic_moved(SW_P, 1), SW_MP);
    assert_int_equal(sw_dynamic_moved(SW_FFFF, 5), SW_FFFFF);
    assert_int_equal(sw_dynamic_moved(SW_PPP, -9), SW_PPPPP);
    assert_int_equal(sw_dynamic_moved(SW_NIENTE, 3), SW_NIENTE);
    assert_int_equal(sw_dynamic_moved(SW_NO_DYNAMIC, 3), SW_NO_DYNAMIC);
}

static void marks_attack_and_stay(void **state)
{
    (void)state;
    static const struct {
        const char *name;
        sw_dynamic attack;
        sw_dynamic stays;
    } cases[] = {{"p", SW_P, SW_P},    {"fp", SW_F, SW_P},          {"sfz", SW_F, SW_NO_DYNAMIC},
                 {"sfp", SW_F, SW_P},  {"n", SW_NIENTE, SW_NIENTE}, {"sff", SW_FF, SW_NO_DYNAMIC},
                 {"spp", SW_PP, SW_PP}};
    sw_dynamic_mark mark;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        assert_true(sw_dynamic_mark_read(sw_slice_of(cases[i].name), &mark));
        assert_int_equal(mark.attack, cases[i].attack);
        assert_int_equal(mark.stays, cases[i].stays);
    }
    assert_false(sw_dynamic_mark_read(sw_slice_of("cresc"), &mark));
    assert_false(sw_dynamic_mark_read(sw_slice_of(""), &mark));
}

/* ---- the built-in table */

static void registers_stand_in_the_compass(void **state)
{
    (void)state;
    sw_instruments *all = load_with(NULL);
    size_t registers = 0;
    for (size_t i = 0; i < sw_instruments_count(all); i++) {
        const sw_instrument *instrument = sw_instruments_get(all, i);
        size_t inside = 0; /* what is taken from a larger relative may reach further */
        for (size_t k = 0; k < instrument->can.register_count; k++) {
            const sw_register *r = &instrument->can.registers[k];
            inside += sw_instrument_place_written(instrument, r->low) != SW_ABOVE_EXTREME &&
                      sw_instrument_place_written(instrument, r->high) != SW_BELOW_EXTREME;
            assert_ptr_equal(sw_instrument_register(instrument, r->low), r);
            assert_ptr_equal(sw_instrument_register(instrument, r->high), r);
        }
        if (inside + 1 < instrument->can.register_count) {
            fail_msg("%s: registers outside of the compass", instrument->id);
        }
        registers += instrument->can.register_count;
    }
    assert_true(registers > 60);
    sw_instruments_free(all);
}

/* No group of the built-in text leaves its source to the line number. */
static void every_group_names_its_source(void **state)
{
    (void)state;
    sw_instruments *all = load_with(NULL);
    for (size_t i = 0; i < sw_instruments_count(all); i++) {
        const sw_instrument *instrument = sw_instruments_get(all, i);
        const sw_abilities *can = &instrument->can;
        const char *sources[] = {can->lips.source,    can->weight.source,     can->trills.source,
                                 can->tremolo.source, can->techniques.source, can->tuning.source};
        for (size_t k = 0; k < sizeof sources / sizeof sources[0]; k++) {
            assert_true(sources[k] == NULL || strstr(sources[k], ".yaml") == NULL);
        }
        for (size_t k = 0; k < can->register_count; k++) {
            assert_null(strstr(can->registers[k].source, ".yaml"));
        }
    }
    sw_instruments_free(all);
}

static void techniques_are_those_of_the_vocabulary(void **state)
{
    (void)state;
    static const char *const others[] = {"glissando", "bisbigliando"};
    char *error = NULL;
    sw_techniques *vocabulary = sw_techniques_load(NULL, (sw_slice){0}, &error);
    sw_instruments *all = load_with(NULL);
    for (size_t i = 0; i < sw_instruments_count(all); i++) {
        const sw_technique_set *set = &sw_instruments_get(all, i)->can.techniques;
        for (size_t k = 0; k < set->count; k++) {
            bool known = sw_techniques_find(vocabulary, set->words[k]) != SW_NO_TECHNIQUE;
            for (size_t o = 0; o < sizeof others / sizeof others[0]; o++) {
                known = known || strcmp(set->words[k], others[o]) == 0;
            }
            if (!known) {
                fail_msg("%s: no technique '%s'", sw_instruments_get(all, i)->id, set->words[k]);
            }
        }
    }
    assert_int_equal(sw_instrument_has(get(all, "violin"), "pizzicato"), SW_YES);
    assert_int_equal(sw_instrument_has(get(all, "violin"), "flutter-tongue"), SW_NO);
    assert_int_equal(sw_instrument_has(get(all, "horn-in-d"), "stopped"), SW_YES);
    assert_int_equal(sw_instrument_has(get(all, "trumpet"), "harmon-mute"), SW_YES);
    assert_int_equal(sw_instrument_has(get(all, "soprano"), "pizzicato"), SW_NOT_SAID);
    sw_instruments_free(all);
    sw_techniques_free(vocabulary);
}

/* ---- from whom */

static void horns_in_other_keys_have_registers_that_sound_the_same(void **state)
{
    (void)state;
    sw_instruments *all = load_with(NULL);
    const sw_instrument *horn = get(all, "horn");
    const sw_instrument *other = get(all, "horn-in-bb-basso");
    assert_int_equal(horn->can.register_count, other->can.register_count);
    for (size_t i = 0; i < horn->can.register_count; i++) {
        sw_pitch a = sw_instrument_sounding(horn, horn->can.registers[i].low);
        sw_pitch b = sw_instrument_sounding(other, other->can.registers[i].low);
        assert_int_equal(sw_pitch_semitones(a), sw_pitch_semitones(b));
    }
    assert_string_equal(sw_instrument_register(get(all, "clarinet-in-eb"), pitch("F#4"))->name, "chalumeau");
    assert_null(sw_instrument_register(get(all, "english-horn"), pitch("B3")));
    assert_string_equal(sw_instrument_register(get(all, "bass-clarinet-bass-clef"), pitch("F#3"))->name,
                        "low"); /* an octave lower in that notation */
    sw_instruments_free(all);
}

static void a_change_holds_for_all_that_are_like_it(void **state)
{
    (void)state;
    sw_instruments *all = load_with("instruments:\n"
                                    "  - id: clarinet\n"
                                    "    can:\n"
                                    "      registers:\n"
                                    "        - {name: all, from: E3, to: C6, loudest: mf}\n"
                                    "  - id: my-horn\n"
                                    "    family: brass\n"
                                    "    sounds: Eb3\n"
                                    "    sounds-like: horn\n"
                                    "    clefs: [treble]\n"
                                    "families:\n"
                                    "  - id: voice\n"
                                    "    can: {weight: {soft: 1, loud: 1.5}}\n");
    const sw_register *r = sw_instrument_register(get(all, "clarinet-in-a"), pitch("C5"));
    assert_string_equal(r->name, "all");
    assert_int_equal(r->loudest, SW_MF);
    assert_int_equal(r->softest, SW_NO_DYNAMIC);
    assert_string_equal(r->source, "own.yaml:5");
    assert_int_equal(get(all, "clarinet-in-a")->can.tremolo.slurred, SW_YES); /* stays */
    /* In E flat the same sound is written a whole tone higher than in F: its bottom of F#2 is G#2 there. */
    assert_string_equal(sw_instrument_register(get(all, "my-horn"), pitch("G#2"))->name, "low");
    assert_null(sw_instrument_register(get(all, "my-horn"), pitch("F#2")));
    assert_true(get(all, "soprano")->can.weight.loud > 1.4);
    assert_string_equal(get(all, "soprano")->can.weight.source, "own.yaml:13");
    sw_instruments_free(all);
}

static void weights_lie_between_piano_and_forte(void **state)
{
    (void)state;
    sw_instruments *all = load_with(NULL);
    const sw_instrument *trumpet = get(all, "trumpet");
    assert_true(sw_instrument_weight(trumpet, SW_PP) == 1);
    assert_true(sw_instrument_weight(trumpet, SW_MP) == 2);
    assert_true(sw_instrument_weight(trumpet, SW_FFF) == 4);
    assert_true(sw_instrument_weight(trumpet, SW_NO_DYNAMIC) == 0);
    assert_true(sw_instrument_weight(get(all, "piano"), SW_F) == 0);
    sw_instruments_free(all);
}

static void trills_are_graded(void **state)
{
    (void)state;
    sw_instruments *all = load_with(NULL);
    assert_int_equal(sw_instrument_trill(get(all, "oboe"), pitch("Bb3"), pitch("B3")), SW_TRILL_IMPOSSIBLE);
    assert_int_equal(sw_instrument_trill(get(all, "oboe"), pitch("A#3"), pitch("B3")), SW_TRILL_IMPOSSIBLE);
    assert_int_equal(sw_instrument_trill(get(all, "oboe"), pitch("A4"), pitch("B4")), SW_TRILL_GOOD);
    assert_int_equal(sw_instrument_trill(get(all, "flute"), pitch("C4"), pitch("D4")), SW_TRILL_AWKWARD);
    assert_int_equal(sw_instrument_trill(get(all, "trombone"), pitch("G4"), pitch("A4")), SW_TRILL_GOOD);
    assert_int_equal(sw_instrument_trill(get(all, "trombone"), pitch("A4"), pitch("Bb4")), SW_TRILL_AWKWARD);
    assert_int_equal(sw_instrument_trill(get(all, "trombone"), pitch("C4"), pitch("D4")), SW_TRILL_AWKWARD);
    assert_int_equal(sw_instrument_trill(get(all, "violin"), pitch("G3"), pitch("A3")), SW_TRILL_GOOD);
    sw_instruments_free(all);
}

/* ---- mistakes */

static void mistakes_are_told_with_their_place(void **state)
{
    (void)state;
    refuse("instruments:\n  - id: flute\n    can: {registres: []}\n",
           "own.yaml:3:11: unknown key 'registres'; did you mean 'registers'?");
    refuse("instruments:\n  - id: flute\n    can:\n      registers:\n        - {name: low, from: C4}\n",
           "own.yaml:5:11: registers need 'to'");
    refuse("instruments:\n  - id: flute\n    can:\n      registers:\n"
           "        - {name: low, from: C4, to: B4, softest: pq}\n",
           "own.yaml:5:50: unknown dynamic 'pq'; did you mean 'pp'?");
    refuse("instruments:\n  - id: flute\n    can:\n      registers:\n"
           "        - {name: low, from: C5, to: B4}\n",
           "own.yaml:5:29: the register low goes down; exchange from and to");
    refuse("instruments:\n  - id: flute\n    can:\n      registers:\n"
           "        - {name: low, from: C4, to: B4, softest: f, loudest: p}\n",
           "own.yaml:5:50: the softest of the register low is above its loudest");
    refuse("instruments:\n  - id: flute\n    can:\n      registers:\n"
           "        - {name: low, from: C4, to: B4}\n        - {name: high, from: B4, to: C6}\n",
           "own.yaml:6:11: the register high begins inside of the one before; list them from the bottom up, "
           "each above the last");
    refuse("instruments:\n  - id: flute\n    can: {weight: {soft: 1, loud: much}}\n",
           "own.yaml:3:35: loud: 'much' is no number; write 2 or 0.5");
    refuse("instruments:\n  - id: oboe\n    can: {trills: {awkward: [Bb3]}}\n",
           "own.yaml:3:30: a trill is written as its two notes: Bb3 B3");
    refuse("instruments:\n  - id: oboe\n    can: {trills: {awkward: [B3 Bb3]}}\n",
           "own.yaml:3:30: a trill goes up from its first note; exchange the two");
    refuse("instruments:\n  - id: oboe\n    like: flut\n",
           "own.yaml:3:11: like: there is no 'flut' above; did you mean 'flute'?");
    refuse("instruments:\n  - id: clarinet\n    like: clarinet-in-a\n",
           "own.yaml:3:11: like: clarinet and clarinet-in-a would be like one another; remove one");
    refuse("instruments:\n  - id: clarinet\n    sounds-like: clarinet\n",
           "own.yaml:3:18: sounds-like: clarinet and clarinet would be like one another; remove one");
    refuse("families:\n  - id: brass\n", "own.yaml:2:5: a family needs id and can, as in '- id: brass' and "
                                         "'can: ...'");
    refuse("families:\n  - id: bras\n    can: {}\n",
           "own.yaml:2:9: unknown family 'bras'; did you mean 'brass'?");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(dynamics_are_in_order),
        cmocka_unit_test(marks_attack_and_stay),
        cmocka_unit_test(registers_stand_in_the_compass),
        cmocka_unit_test(every_group_names_its_source),
        cmocka_unit_test(techniques_are_those_of_the_vocabulary),
        cmocka_unit_test(horns_in_other_keys_have_registers_that_sound_the_same),
        cmocka_unit_test(a_change_holds_for_all_that_are_like_it),
        cmocka_unit_test(weights_lie_between_piano_and_forte),
        cmocka_unit_test(trills_are_graded),
        cmocka_unit_test(mistakes_are_told_with_their_place),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
