/* The nearest playable voicing: chords with the answer that a player would give, and random chords in which
 * trying everything must find no smaller change. */
#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <cmocka.h>

#include "players/hand_voicing.h"
#include "stavewright/pitch.h"

enum { CASES = 2000, MOST = 6 };

static size_t chord(const char *pitches, sw_voiced_note *notes)
{
    size_t count = 0;
    while (*pitches != '\0') {
        size_t width = strcspn(pitches, " ");
        sw_pitch p;
        assert_true(sw_pitch_from_scientific((sw_slice){pitches, width}, &p));
        notes[count++] = (sw_voiced_note){.step = sw_pitch_staff_steps(p), .semitone = sw_pitch_midi(p)};
        pitches += width + strspn(pitches + width, " ");
    }
    return count;
}

/* Expects choices written "0 -1 x 0": octaves, x for left out. */
static void expect(sw_hand_limits limits, const char *pitches, const char *wanted, int change, int split)
{
    sw_voiced_note notes[SW_VOICING_NOTES];
    size_t count = chord(pitches, notes);
    int least = sw_hand_voicing(notes, count, &limits, 24, 103);
    char got[128] = "";
    for (size_t i = 0; i < count && least >= 0; i++) {
        char one[16];
        snprintf(one, sizeof one, i > 0 ? " %d" : "%d", notes[i].octaves);
        strcat(got, notes[i].left_out ? (i > 0 ? " x" : "x") : one);
    }
    assert_string_equal(got, wanted);
    assert_int_equal(least, change);
    if (least >= 0) {
        assert_int_equal(sw_hand_voicing_split(notes, count, &limits), split);
    }
}

static void test_chords(void **state)
{
    (void)state;
    /* the lonely middle note comes to one of the outer ones */
    expect(sw_hand_limits_piano(), "C2 C4 C6", "0 -1 0", 12, 2);
    /* nine strings for eight fingers: an inner doubling goes, the highest of them */
    expect(sw_hand_limits_harp(), "C2 G2 C3 D3 E3 G3 C4 E4 G4", "0 0 0 0 0 0 0 x 0", 13, 4);
    /* nine different notes: nothing can be left out */
    expect(sw_hand_limits_harp(), "C2 E2 G2 B2 D3 F#3 A3 C#4 D#4", "", -1, 0);
    /* what is playable stays */
    expect(sw_hand_limits_piano(), "C3 G3 E4 C5", "0 0 0 0", 0, 2);
}

static void test_what_sounds_stays(void **state)
{
    (void)state;
    sw_voiced_note notes[3];
    sw_hand_limits piano = sw_hand_limits_piano();
    assert_int_equal(chord("C2 E4 C6", notes), 3);
    notes[1].fixed = true;
    assert_int_equal(sw_hand_voicing(notes, 3, &piano, 24, 103), SW_VOICING_LEFT_OUT + SW_VOICING_OUTER - 1);
    assert_int_equal(notes[1].octaves, 0);
    assert_false(notes[1].left_out);
    assert_int_equal(notes[2].octaves, -1); /* C6 comes down to E4 */
}

/* ---- everything tried ---------------------------------------------------------------------------------- */

static uint64_t random_state;

static int pick(int below)
{
    random_state ^= random_state << 13;
    random_state ^= random_state >> 7;
    random_state ^= random_state << 17;
    return (int)((random_state >> 16) % (uint64_t)below);
}

/* Whether some way to give each note a hand, lower ones left, lets both hands play. */
static bool can_play(const int *steps, const int *semitones, int count, const sw_hand_limits *l)
{
    for (int code = 0; code < 1 << count; code++) {
        int keys[2] = {0, 0};
        int low[2] = {1000, 1000};
        int high[2] = {-1000, -1000};
        bool ordered = true;
        for (int i = 0; i < count; i++) {
            int h = code >> i & 1;
            keys[h]++;
            low[h] = steps[i] < low[h] ? steps[i] : low[h];
            high[h] = steps[i] > high[h] ? steps[i] : high[h];
            for (int k = 0; k < count; k++) {
                bool below =
                    l->by_string && steps[i] != steps[k] ? steps[i] < steps[k] : semitones[i] < semitones[k];
                ordered = ordered && !(below && h == 1 && (code >> k & 1) == 0);
            }
        }
        bool good = ordered && (keys[1] == 0 || low[1] >= l->right_lowest);
        for (int h = 0; h < 2; h++) {
            int span = l->reach_count > 0 && low[h] >= l->reaches[0].from ? l->reaches[0].span : l->span;
            good = good && keys[h] <= l->fingers && (keys[h] == 0 || high[h] - low[h] <= span);
        }
        if (good) {
            return true;
        }
    }
    return false;
}

static bool is_allowed(const sw_voiced_note *notes, int count, const int *choice, const sw_hand_limits *l)
{
    int steps[MOST];
    int semitones[MOST];
    int kept = 0;
    for (int i = 0; i < count; i++) {
        if (choice[i] == 5) { /* left out */
            bool doubled = false;
            for (int k = 0; k < count; k++) {
                doubled = doubled || (choice[k] != 5 && (notes[k].semitone - notes[i].semitone) % 12 == 0);
            }
            if (!doubled) {
                return false;
            }
            continue;
        }
        steps[kept] = notes[i].step + 7 * (choice[i] - 2);
        semitones[kept] = notes[i].semitone + 12 * (choice[i] - 2);
        if (choice[i] != 2 && (semitones[kept] < 30 || semitones[kept] > 90)) {
            return false;
        }
        for (int k = 0; k < kept; k++) {
            if (semitones[k] == semitones[kept] && (!l->by_string || steps[k] == steps[kept])) {
                return false;
            }
        }
        kept++;
    }
    return can_play(steps, semitones, kept, l);
}

/* The least change over all 6^count choices, or -1. */
static int least_change(const sw_voiced_note *notes, int count, const sw_hand_limits *l)
{
    int total = 1;
    for (int i = 0; i < count; i++) {
        total *= 6;
    }
    int best = -1;
    for (int code = 0; code < total; code++) {
        int choice[MOST];
        int change = 0;
        bool fixed_stay = true;
        for (int i = 0, rest = code; i < count; i++, rest /= 6) {
            choice[i] = rest % 6;
            fixed_stay = fixed_stay && (!notes[i].fixed || choice[i] == 2);
            change += choice[i] == 5 ? 13 : 12 * abs(choice[i] - 2);
            change += choice[i] != 2 && (i == 0 || i == count - 1) ? 7 : 0;
        }
        bool better = change <= 72 && (best < 0 || change < best);
        if (better && fixed_stay && is_allowed(notes, count, choice, l)) {
            best = change;
        }
    }
    return best;
}

static void test_no_change_is_smaller(void **state)
{
    (void)state;
    const char *given = getenv("TEST_SEED");
    uint64_t seed = given != NULL ? strtoull(given, NULL, 10) : (uint64_t)time(NULL);
    random_state = seed * 0x9E3779B97F4A7C15U + 1;
    printf("TEST_SEED=%llu\n", (unsigned long long)seed);
    int changed = 0;
    int hopeless = 0;
    for (int n = 0; n < CASES; n++) {
        static const int semitones[] = {0, 2, 4, 5, 7, 9, 11};
        sw_hand_limits l = pick(2) ? sw_hand_limits_harp() : sw_hand_limits_piano();
        l.fingers = 1 + pick(4);
        l.span = 3 + pick(7);
        l.reach_count = (size_t)pick(2);
        l.reaches[0] = (sw_hand_reach){-5, l.span + 2, l.span};
        sw_voiced_note notes[MOST];
        int count = 1 + pick(n % 20 == 0 ? MOST : MOST - 1);
        int step = -14 + pick(8);
        for (int i = 0; i < count; i++) {
            step += 1 + pick(pick(2) ? 4 : 12);
            int octave = step >= 0 ? step / 7 : -((6 - step) / 7);
            notes[i] = (sw_voiced_note){.step = step,
                                        .semitone = 60 + 12 * octave + semitones[step - 7 * octave],
                                        .fixed = pick(8) == 0};
        }
        int wanted = least_change(notes, count, &l);
        sw_voiced_note result[MOST];
        memcpy(result, notes, sizeof notes);
        int got = sw_hand_voicing(result, (size_t)count, &l, 30, 90);
        if (got != wanted) {
            fail_msg("case %d: change %d, but the least is %d", n, got, wanted);
        }
        changed += got > 0;
        hopeless += got < 0;
        if (got >= 0) {
            int choice[MOST];
            for (int i = 0; i < count; i++) {
                choice[i] = result[i].left_out ? 5 : result[i].octaves + 2;
            }
            assert_true(is_allowed(notes, count, choice, &l));
            assert_true(sw_hand_voicing_split(result, (size_t)count, &l) >= 0);
        }
    }
    printf("%d chords: %d changed, %d without a way\n", CASES, changed, hopeless);
    assert_true(changed > CASES / 20);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_chords),
                                       cmocka_unit_test(test_what_sounds_stays),
                                       cmocka_unit_test(test_no_change_is_smaller)};
    return cmocka_run_group_tests_name("voicing", tests, NULL, NULL);
}
