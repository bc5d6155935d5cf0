/* Hands and clefs: musical cases with the hands that a player would expect, and random small cases in which
 * trying every assignment must find no cheaper one. The cost of an assignment is computed here a second time,
 * straight from the description in hand_split.h, note by note and without states. */
#include <limits.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <cmocka.h>

#include "players/hand_clefs.h"
#include "players/hand_split.h"
#include "stavewright/pitch.h"

enum { RANDOM_CASES = 6000, RANDOM_CLEF_CASES = 6000 };

/* ---- random numbers ------------------------------------------------------------------------------------ */

static uint64_t random_state;

static uint64_t start_random(const char *what)
{
    const char *given = getenv("TEST_SEED");
    uint64_t seed = given != NULL ? strtoull(given, NULL, 10) : (uint64_t)time(NULL);
    random_state = seed * 0x9E3779B97F4A7C15U + 1;
    printf("%s: TEST_SEED=%llu\n", what, (unsigned long long)seed);
    return seed;
}

/* 0 .. below-1 */
static int pick(int below)
{
    random_state ^= random_state << 13;
    random_state ^= random_state >> 7;
    random_state ^= random_state << 17;
    return (int)((random_state >> 16) % (uint64_t)below);
}

static int between(int low, int high)
{
    return low + pick(high - low + 1);
}

/* ---- music for the tests ------------------------------------------------------------------------------- */

enum { MOST_NOTES = 64 };

typedef struct music {
    sw_hand_note notes[MOST_NOTES];
    size_t count;
    double seconds_per_whole;
} music;

static const double moderate = 2.0; /* crotchet = 120 */

/* Adds notes written "C4 E4 ..." as one chord; times in sixteenths. */
static void chord(music *m, uint32_t voice, int onset, int length, const char *pitches)
{
    const char *at = pitches;
    while (*at != '\0') {
        size_t width = strcspn(at, " ");
        sw_pitch p;
        assert_true(sw_pitch_from_scientific((sw_slice){at, width}, &p));
        assert_true(m->count < MOST_NOTES);
        m->notes[m->count] = (sw_hand_note){.id = 100 + (uint32_t)m->count,
                                            .onset = sw_rational_make(onset, 16),
                                            .end = sw_rational_make(onset + length, 16),
                                            .seconds = onset * m->seconds_per_whole / 16,
                                            .semitone = sw_pitch_midi(p),
                                            .step = sw_pitch_staff_steps(p),
                                            .voice = voice};
        m->count++;
        at += width + strspn(at + width, " ");
    }
}

/* Adds notes one after the other. */
static void line(music *m, uint32_t voice, int onset, int length, const char *pitches)
{
    while (*pitches != '\0') {
        char one[8] = {0};
        size_t width = strcspn(pitches, " ");
        assert_true(width < sizeof one);
        memcpy(one, pitches, width);
        chord(m, voice, onset, length, one);
        onset += length;
        pitches += width + strspn(pitches + width, " ");
    }
}

static sw_hand_split split(sw_arena *arena, const music *m, sw_hand_limits limits)
{
    return sw_hands_split(arena, m->notes, m->count, &limits);
}

/* Expects hands written "LLRR", in the order in which the notes were added, and no problem. */
static void expect(const music *m, sw_hand_limits limits, const char *hands)
{
    sw_arena *arena = sw_arena_new();
    sw_hand_split result = split(arena, m, limits);
    char got[MOST_NOTES + 1] = {0};
    for (size_t i = 0; i < m->count; i++) {
        got[i] = result.hands[i] == SW_LEFT_HAND ? 'L' : 'R';
    }
    assert_string_equal(got, hands);
    assert_int_equal(result.problem_count, 0);
    assert_true(result.exact);
    sw_arena_free(arena);
}

static void test_arpeggio_passes_between_hands(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    line(&m, 1, 0, 1, "C2 G2 C3 E3 G3 C4 E4 G4 C5 E5 G5 C6");
    expect(&m, sw_hand_limits_harp(), "LLLLRRRRLLLL");
    music down = {.seconds_per_whole = moderate};
    line(&down, 1, 0, 1, "C6 G5 E5 C5 G4 E4 C4 G3 E3 C3 G2 C2");
    sw_arena *arena = sw_arena_new();
    sw_hand_split result = split(arena, &down, sw_hand_limits_harp());
    assert_int_equal(result.hands[11], SW_LEFT_HAND);
    int passes = 0;
    for (size_t i = 1; i < down.count; i++) {
        passes += result.hands[i] != result.hands[i - 1];
    }
    assert_in_range(passes, 1, 3); /* groups, not note by note */
    sw_arena_free(arena);
}

/* The same figure with every note tied over into the last chord: on the harp the strings ring. */
static void test_ringing_arpeggio(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    const char *pitches[] = {"C2", "G2", "C3", "E3", "G3", "C4", "E4", "G4"};
    for (int i = 0; i < 8; i++) {
        chord(&m, 1, i, 16 - i, pitches[i]);
    }
    expect(&m, sw_hand_limits_harp(), "LLLLRRRR");
}

static void test_scale_stays_in_one_hand(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    line(&m, 1, 0, 1, "C4 D4 E4 F4 G4 A4 B4 C5 D5 E5 F5 G5 A5 B5 C6");
    expect(&m, sw_hand_limits_piano(), "RRRRRRRRRRRRRRR");
    music low = {.seconds_per_whole = moderate};
    line(&low, 1, 0, 1, "C2 D2 E2 F2 G2 A2 B2 C3 D3 E3");
    expect(&low, sw_hand_limits_piano(), "LLLLLLLLLL");
}

static void test_held_bass_with_figuration(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    chord(&m, 1, 0, 16, "C2");
    line(&m, 2, 0, 1, "E3 G3 C4 E4 G4 E4 C4 G3 E3 G3 C4 E4 G4 E4 C4 G3");
    expect(&m, sw_hand_limits_piano(), "LRRRRRRRRRRRRRRRR");
}

static void test_alberti_bass_with_melody(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    line(&m, 1, 0, 4, "C5 E5 G5 B4");
    line(&m, 2, 0, 2, "C4 G4 E4 G4 C4 G4 E4 G4");
    expect(&m, sw_hand_limits_piano(), "RRRRLLLLLLLL");
}

static void test_eight_note_chord(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    chord(&m, 1, 0, 8, "C2 G2 C3 E3 G3 C4 E4 G4");
    expect(&m, sw_hand_limits_harp(), "LLLLRRRR");
    expect(&m, sw_hand_limits_piano(), "LLLLRRRR");
}

static void test_stride_under_melody(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    chord(&m, 1, 0, 2, "C2");
    chord(&m, 1, 2, 2, "E3 G3 C4");
    chord(&m, 1, 4, 2, "G2");
    chord(&m, 1, 6, 2, "F3 G3 B3");
    line(&m, 2, 0, 4, "E5 D5");
    expect(&m, sw_hand_limits_piano(), "LLLLLLLLRR");
}

static void test_open_chords_are_shared(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    chord(&m, 1, 0, 4, "C3 G3 E4 C5");
    chord(&m, 1, 4, 4, "D3 A3 F4 D5");
    chord(&m, 1, 8, 4, "G2 G3 D4 B4");
    expect(&m, sw_hand_limits_harp(), "LLRRLLRRLLRR");
    expect(&m, sw_hand_limits_piano(), "LLRRLLRRLLRR");
}

static void test_low_note_goes_left_high_note_right(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    chord(&m, 1, 0, 4, "C2");
    chord(&m, 1, 8, 4, "C6");
    expect(&m, sw_hand_limits_piano(), "LR");
}

/* The right hand of the harp ends at G2: a low chord of two notes is the left hand's. */
static void test_right_hand_of_harp_stays_up(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    chord(&m, 1, 0, 4, "C2 E2 G2");
    expect(&m, sw_hand_limits_harp(), "LLL");
}

static void test_nine_notes_are_too_many_for_the_harp(void **state)
{
    (void)state;
    sw_arena *arena = sw_arena_new();
    music m = {.seconds_per_whole = moderate};
    chord(&m, 1, 0, 4, "C3");
    chord(&m, 1, 4, 4, "C2 G2 C3 D3 E3 G3 C4 E4 G4");
    chord(&m, 1, 8, 4, "C5");
    sw_hand_split result = split(arena, &m, sw_hand_limits_harp());
    assert_int_equal(result.problem_count, 1);
    const sw_hand_problem *p = &result.problems[0];
    assert_int_equal(p->reason, SW_HANDS_MANY);
    assert_true(sw_rational_equal(p->onset, sw_rational_make(1, 4)));
    assert_int_equal(p->keys[0] + p->keys[1], 9);
    assert_int_equal(p->id_count, 9);
    assert_int_equal(p->ids[0], 101);
    assert_int_equal(p->ids[8], 109);
    assert_int_equal(result.hands[10], SW_RIGHT_HAND); /* the music goes on */
    sw_arena_free(arena);
}

static void expect_reason(sw_hand_limits limits, const music *m, sw_hand_reason reason, int least_steps)
{
    sw_arena *arena = sw_arena_new();
    sw_hand_split result = split(arena, m, limits);
    assert_int_equal(result.problem_count, 1);
    assert_int_equal(result.problems[0].reason, reason);
    assert_int_equal(result.problems[0].least_steps, least_steps);
    sw_arena_free(arena);
}

static void test_reasons(void **state)
{
    (void)state;
    music wide = {.seconds_per_whole = moderate};
    chord(&wide, 1, 0, 4, "C2 C4 C6");
    expect_reason(sw_hand_limits_piano(), &wide, SW_HANDS_WIDE, 14);
    music both = {.seconds_per_whole = moderate};
    chord(&both, 1, 0, 4, "C2 D2 E2 C4 D4 E4 C6 D6 E6");
    expect_reason(sw_hand_limits_harp(), &both, SW_HANDS_MANY_AND_WIDE, 15);
    music clash = {.seconds_per_whole = moderate};
    chord(&clash, 1, 0, 4, "C2 D2 E2 F2 G2 C5 D5 E5");
    expect_reason(sw_hand_limits_harp(), &clash, SW_HANDS_MANY_OR_WIDE, 4);
}

/* Under G5 the held C4 has to be the left hand's, over C2 the right hand's. */
static void test_held_notes_make_a_slice_impossible(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    chord(&m, 1, 0, 16, "C4");
    chord(&m, 2, 4, 4, "G5");
    chord(&m, 2, 8, 4, "C2");
    expect_reason(sw_hand_limits_piano(), &m, SW_HANDS_HELD, 0);
    sw_arena *arena = sw_arena_new();
    sw_hand_split rings = split(arena, &m, sw_hand_limits_harp());
    assert_int_equal(rings.problem_count, 0); /* strings need no finger once they sound */
    sw_arena_free(arena);
}

static void test_late_hand_is_named(void **state)
{
    (void)state;
    sw_arena *arena = sw_arena_new();
    music m = {.seconds_per_whole = 1.0};
    chord(&m, 1, 0, 1, "C2 E2");
    chord(&m, 2, 0, 1, "C6 E6");
    chord(&m, 1, 1, 1, "C3 E3 C4 E4");
    chord(&m, 1, 2, 1, "C2 E2 C6 E6");
    sw_hand_split result = split(arena, &m, sw_hand_limits_piano());
    assert_true(result.problem_count > 0);
    for (size_t i = 0; i < result.problem_count; i++) {
        assert_int_equal(result.problems[i].reason, SW_HANDS_QUICK);
        assert_true(result.problems[i].available < result.problems[i].needed);
        assert_true(result.problems[i].travel_steps > 0);
    }
    sw_arena_free(arena);
}

static void test_tied_notes_stay(void **state)
{
    (void)state;
    sw_arena *arena = sw_arena_new();
    music m = {.seconds_per_whole = moderate};
    line(&m, 1, 0, 4, "C4 C4 C4");
    m.notes[1].tied = true;
    m.notes[2].tied = true;
    chord(&m, 2, 0, 4, "C3 E3 G3");
    chord(&m, 2, 4, 4, "E4 G4 C5");
    chord(&m, 2, 8, 4, "F2 A2 C3");
    sw_hand_split result = split(arena, &m, sw_hand_limits_piano());
    assert_int_equal(result.problem_count, 0);
    assert_int_equal(result.hands[0], result.hands[1]);
    assert_int_equal(result.hands[1], result.hands[2]);
    sw_arena_free(arena);
}

/* ---- placements ---- */

static const double slow = 60.0 / 56 * 4; /* crotchet = 56 */

/* Sixteenths over three octaves and back: four strings a hand, hand over hand, the left one over the top. */
static void test_arpeggio_in_groups_of_four(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = slow};
    line(&m, 1, 0, 1, "Db2 F2 Ab2 Db3 F3 Ab3 Db4 F4 Ab4 Db5 Ab4 F4 Db4 Ab3 F3 Db3");
    expect(&m, sw_hand_limits_harp(), "LLLLRRRRLLRRRRLL");
}

/* After a chord of both hands the low note is the left hand's: the right hand does not go under it. */
static void test_right_hand_stays_out_of_the_bass(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = slow};
    chord(&m, 1, 0, 8, "F#2 C#3 A3 C#4 F#4 A4");
    line(&m, 1, 8, 1, "B2 F#3 B3 D#4 F#4 B4 D#5 F#5 B5 F#5 D#5 B4 F#4 D#4 B3 F#3");
    expect(&m, sw_hand_limits_harp(), "LLLRRRLLLRRRRLLLRRRRLL");
}

/* Four strings a hand, up and down over four octaves: each group lies on four strings at most. */
static void test_four_and_four_over_four_octaves(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    line(&m, 1, 0, 1, "C2 E2 G2 C3 E3 G3 C4 E4 G4 C5 E5 G5 C6 G5 E5 C5 G4 E4 C4 G3 E3 C3 G2 E2 C2");
    expect(&m, sw_hand_limits_harp(), "LLLLRRRRLLLLRLLLLRRRRLLLL");
}

/* The same way up on both instruments: four strings of the harp, four or five keys of the piano. */
static void test_cross_hand_arpeggio(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    line(&m, 1, 0, 1, "C2 E2 G2 C3 E3 G3 C4 E4 G4 C5 E5 G5 C6");
    expect(&m, sw_hand_limits_harp(), "LLLLRRRRLLLLR");
    expect(&m, sw_hand_limits_piano(), "LLLLLRRRRLLLL");
}

/* Fingers that lie on their keys need no time: a shake of thirds is no late hand. */
static void test_placed_fingers_are_never_late(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = 0.8};
    line(&m, 1, 0, 1, "C3 E3 C3 E3 C3 E3 C3 E3");
    line(&m, 2, 0, 1, "C5 E5 C5 E5 C5 E5 C5 E5");
    expect(&m, sw_hand_limits_harp(), "LLLLLLLLRRRRRRRR");
}

/* A tenth at the bottom of a marimba is too wide for two mallets of one hand, at the top it is not. */
static void test_mallets_reach_further_at_the_top(void **state)
{
    (void)state;
    sw_hand_limits marimba = sw_hand_limits_mallets();
    marimba.reaches[0] = (sw_hand_reach){7, 10, 8};
    marimba.reach_count = 1;
    music low = {.seconds_per_whole = moderate};
    chord(&low, 1, 0, 4, "C2 E3 F3 A4");
    expect_reason(marimba, &low, SW_HANDS_WIDE, 9);
    music top = {.seconds_per_whole = moderate};
    chord(&top, 1, 0, 4, "C5 E6 F6 A7");
    expect(&top, marimba, "LLRR");
    marimba.fingers = 1;
    expect_reason(marimba, &top, SW_HANDS_MANY, 9);
}

/* Quick notes of one line are struck by both hands in turn: no hand is late, and the line stays on its staff.
 */
static void test_mallets_strike_in_turn(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = 0.6};
    line(&m, 1, 0, 1, "C5 E5 G5 C6 E6 G6 E6 C6 G5 E5 C5 G4");
    expect(&m, sw_hand_limits_mallets(), "RRRRRRRRRRRR");
}

static void test_rolled_chords(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    chord(&m, 1, 0, 8, "C2 G3 E4 C5");
    chord(&m, 1, 8, 8, "C3 G3 E4 C5");
    sw_hand_limits narrow = sw_hand_limits_piano();
    narrow.span = narrow.comfort = 7;
    expect_reason(narrow, &m, SW_HANDS_WIDE, 10);
    narrow.may_roll = true;
    sw_arena *arena = sw_arena_new();
    sw_hand_split result = split(arena, &m, narrow);
    assert_int_equal(result.problem_count, 0);
    for (size_t i = 0; i < m.count; i++) {
        assert_true(result.rolls[i] == (i < 4));
    }
    for (size_t i = 0; i < 4; i++) {
        m.notes[i].rolled = true;
    }
    narrow.may_roll = false;
    sw_hand_split marked = split(arena, &m, narrow);
    assert_int_equal(marked.problem_count, 0);
    assert_false(marked.rolls[0]);
    assert_true(marked.cost + SW_HANDS_ROLL == result.cost);
    sw_arena_free(arena);
}

/* A melody over and under a held chord in the middle: the left hand goes over the right only if it may. */
static void test_hands_cross_at_one_moment(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    chord(&m, 1, 0, 16, "C4 E4 G4");
    chord(&m, 2, 0, 4, "C2");
    chord(&m, 2, 8, 4, "C6");
    sw_hand_limits piano = sw_hand_limits_piano();
    expect_reason(piano, &m, SW_HANDS_HELD, 4);
    piano.may_cross = true;
    expect(&m, piano, "RRRLL");
}

/* Three notes a beat go hand over hand by beats, not by fingers. */
static void test_runs_pass_in_groups(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = 3};
    line(&m, 1, 0, 1, "C3 E3 G3 C4 E4 G4 C5 E5 G5");
    expect(&m, sw_hand_limits_harp(), "LLLLRRRRL");
    for (size_t i = 0; i < m.count; i++) {
        m.notes[i].group = (uint32_t)(i / 3 + 1);
    }
    expect(&m, sw_hand_limits_harp(), "LLLRRRLLL");
}

/* Middle C alone may be anyone's: the split moves as little as it can. */
static void test_ties_go_to_the_nearest_split(void **state)
{
    (void)state;
    music down = {.seconds_per_whole = moderate};
    chord(&down, 1, 0, 1, "C4");
    chord(&down, 1, 48, 1, "C3");
    expect(&down, sw_hand_limits_piano(), "RL");
    music up = {.seconds_per_whole = moderate};
    chord(&up, 1, 0, 1, "C4");
    chord(&up, 1, 48, 1, "C5");
    expect(&up, sw_hand_limits_piano(), "LR");
}

/* Three octaves of a scale over held chords: the thumb passes under, the hands do not change. */
static void test_scale_of_three_octaves(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    line(&m, 1, 0, 1, "C4 D4 E4 F4 G4 A4 B4 C5 D5 E5 F5 G5 A5 B5 C6 D6 E6 F6 G6 A6 B6 C7");
    chord(&m, 2, 0, 8, "C3 E3 G3");
    chord(&m, 2, 8, 8, "F2 A2 C3");
    chord(&m, 2, 16, 8, "C3 E3 G3");
    expect(&m, sw_hand_limits_piano(), "RRRRRRRRRRRRRRRRRRRRRRLLLLLLLLL");
    expect(&m, sw_hand_limits_harp(), "RRRRRRRRRRRRRRRRRRRRRRLLLLLLLLL");
}

static void test_alberti_bass_alone(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    line(&m, 1, 0, 1, "C3 G3 E3 G3 C3 G3 E3 G3 D3 G3 F3 G3 B2 G3 D3 G3");
    line(&m, 2, 0, 4, "C5 E5 F5 D5");
    expect(&m, sw_hand_limits_piano(), "LLLLLLLLLLLLLLLLRRRR");
}

static void test_broken_octaves(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    line(&m, 1, 0, 1, "C3 C4 D3 D4 E3 E4 F3 F4");
    line(&m, 2, 0, 4, "G5 C6");
    expect(&m, sw_hand_limits_piano(), "LLLLLLLLRR");
    expect(&m, sw_hand_limits_harp(), "LLLLLLLLRR");
}

static void test_waltz(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    for (int bar = 0; bar < 2; bar++) {
        chord(&m, 1, 12 * bar, 4, bar == 0 ? "C2" : "G2");
        chord(&m, 1, 12 * bar + 4, 4, bar == 0 ? "E3 G3 C4" : "F3 G3 B3");
        chord(&m, 1, 12 * bar + 8, 4, bar == 0 ? "E3 G3 C4" : "F3 G3 B3");
    }
    line(&m, 2, 0, 2, "E5 F5 G5 C6 B5 A5 G5 F5 E5 D5 C5 B4");
    expect(&m, sw_hand_limits_piano(), "LLLLLLLLLLLLLLRRRRRRRRRRRR");
}

/* Enharmonic notes are two strings of a harp, but one key: five names for four keys fit one hand of ... four.
 */
static void test_strings_and_keys(void **state)
{
    (void)state;
    music m = {.seconds_per_whole = moderate};
    chord(&m, 1, 0, 4, "C#4 Db4");
    sw_hand_limits piano = sw_hand_limits_piano();
    piano.fingers = 1;
    sw_arena *arena = sw_arena_new();
    sw_hand_split one_key = split(arena, &m, piano);
    assert_int_equal(one_key.problem_count, 0);
    assert_int_equal(one_key.hands[0], one_key.hands[1]);
    sw_hand_limits harp = sw_hand_limits_harp();
    harp.fingers = 1;
    sw_hand_split two_strings = split(arena, &m, harp);
    assert_int_equal(two_strings.problem_count, 0);
    assert_int_equal(two_strings.hands[0], SW_LEFT_HAND);
    assert_int_equal(two_strings.hands[1], SW_RIGHT_HAND);
    sw_arena_free(arena);
}

static void test_nothing(void **state)
{
    (void)state;
    sw_arena *arena = sw_arena_new();
    sw_hand_limits limits = sw_hand_limits_harp();
    sw_hand_split result = sw_hands_split(arena, NULL, 0, &limits);
    assert_int_equal(result.cost, 0);
    assert_int_equal(result.problem_count, 0);
    assert_true(result.exact);
    sw_arena_free(arena);
}

/* ---- the cost of an assignment, a second time ---------------------------------------------------------- */

enum { SOUNDS = 14, SLICES = 14, FEW = 8 };

/* A note with all that is tied to it. */
typedef struct sound {
    sw_rational onset;
    sw_rational end;
    double seconds;
    int slice;
    int semitone;
    int step;
    uint32_t voice;
    uint32_t group;
    bool rolled;
    bool bound;
} sound;

typedef struct small_case {
    sound sounds[SOUNDS]; /* in order of time */
    int count;
    sw_rational onsets[SLICES];
    int graces[SLICES];
    double seconds[SLICES];
    int slices;
    sw_hand_limits limits;
    bool present[SLICES][SOUNDS];
} small_case;

static void find_present(small_case *c)
{
    for (int s = 0; s < c->slices; s++) {
        for (int i = 0; i < c->count; i++) {
            const sound *n = &c->sounds[i];
            bool sounds_on = s > 0 && c->present[s - 1][i] && sw_rational_compare(n->end, c->onsets[s]) > 0 &&
                             n->seconds + c->limits.hold_seconds > c->seconds[s];
            c->present[s][i] = n->slice == s || sounds_on;
        }
    }
}

static int height_order(const small_case *c, int i, int j)
{
    int steps = c->sounds[i].step - c->sounds[j].step;
    int semitones = c->sounds[i].semitone - c->sounds[j].semitone;
    return c->limits.by_string && steps != 0 ? steps : semitones;
}

/* Whether hands lie as they must not. */
static bool hands_cross(const small_case *c, const int *hand)
{
    for (int s = 0; s < c->slices; s++) {
        bool right_below = false;
        bool left_below = false;
        for (int i = 0; i < c->count; i++) {
            for (int j = 0; j < c->count; j++) {
                if (!c->present[s][i] || !c->present[s][j]) {
                    continue;
                }
                int order = height_order(c, i, j);
                if (order == 0 && hand[i] != hand[j]) {
                    return true;
                }
                right_below = right_below || (order < 0 && hand[i] == 1 && hand[j] == 0);
                left_below = left_below || (order < 0 && hand[i] == 0 && hand[j] == 1);
            }
        }
        if (right_below && (left_below || !c->limits.may_cross)) {
            return true;
        }
    }
    return false;
}

/* What a hand has in a slice: keys, lowest and highest step; of all, of struck keys. */
typedef struct grip {
    int keys;
    int low;
    int high;
    int struck; /* how many of the keys are struck in this slice */
    int rolled; /* and are marked as rolled */
} grip;

static grip grip_of(const small_case *c, const int *hand, int s, int which, bool struck_only)
{
    grip g = {0, 1000, -1000, 0, 0};
    for (int i = 0; i < c->count; i++) {
        if (!c->present[s][i] || hand[i] != which) {
            continue;
        }
        bool first = true; /* of the notes on this key the first one names it */
        bool struck = false;
        bool rolled = false;
        for (int j = 0; j < c->count; j++) {
            if (c->present[s][j] && height_order(c, i, j) == 0) {
                first = first && j >= i;
                struck = struck || c->sounds[j].slice == s;
                rolled = rolled || (c->sounds[j].slice == s && c->sounds[j].rolled);
            }
        }
        if (first && (struck || !struck_only)) {
            int step = c->sounds[i].step;
            g.keys++;
            g.struck += struck;
            g.rolled += rolled;
            g.low = step < g.low ? step : g.low;
            g.high = step > g.high ? step : g.high;
        }
    }
    return g;
}

static int width(grip g)
{
    return g.keys == 0 ? 0 : g.high - g.low;
}

static int positive(int value)
{
    return value > 0 ? value : 0;
}

static int span_from(const small_case *c, int low)
{
    for (size_t i = c->limits.reach_count; i-- > 0;) {
        if (low >= c->limits.reaches[i].from) {
            return c->limits.reaches[i].span;
        }
    }
    return c->limits.span;
}

static int comfort_from(const small_case *c, int low)
{
    for (size_t i = c->limits.reach_count; i-- > 0;) {
        if (low >= c->limits.reaches[i].from) {
            return c->limits.reaches[i].comfort;
        }
    }
    return c->limits.comfort;
}

/* How wide a hand lies at once; `by_choice`: what is struck is rolled without a mark, too. */
static int width_at_once(grip g, bool by_choice)
{
    bool moves = g.struck == g.keys && (by_choice || g.rolled == g.keys);
    return moves ? 0 : width(g);
}

static int too_wide(const small_case *c, grip g, bool by_choice)
{
    return positive(width_at_once(g, by_choice) - span_from(c, g.low));
}

/* Whether a slice is rolled that is not marked so: only where that makes both hands fit. */
static bool is_rolled_by_choice(const small_case *c, const int *hand, int s)
{
    bool soft = c->limits.holds == SW_HOLD_SOFT;
    grip left = grip_of(c, hand, s, 0, soft);
    grip right = grip_of(c, hand, s, 1, soft);
    bool wide = too_wide(c, left, false) > 0 || too_wide(c, right, false) > 0;
    return c->limits.may_roll && wide && too_wide(c, left, true) == 0 && too_wide(c, right, true) == 0;
}

/* Whether a note is the first of those on its key, and one of them is struck in this slice. */
static bool names_struck_key(const small_case *c, int s, int i)
{
    bool struck = false;
    for (int j = 0; j < c->count; j++) {
        if (c->present[s][j] && height_order(c, i, j) == 0) {
            if (j < i) {
                return false;
            }
            struck = struck || c->sounds[j].slice == s;
        }
    }
    return struck;
}

static int64_t slice_cost(const small_case *c, const int *hand, int s)
{
    const sw_hand_limits *l = &c->limits;
    bool soft = l->holds == SW_HOLD_SOFT;
    bool roll = is_rolled_by_choice(c, hand, s);
    int64_t cost = roll ? SW_HANDS_ROLL : 0;
    int64_t excess = 0;
    for (int h = 0; h < 2; h++) {
        grip mine = grip_of(c, hand, s, h, soft);
        grip others = grip_of(c, hand, s, 1 - h, soft);
        grip all = grip_of(c, hand, s, h, false);
        excess += positive(mine.keys - l->fingers) + too_wide(c, mine, roll);
        cost += SW_HANDS_STRETCH * positive(width_at_once(mine, roll) - comfort_from(c, mine.low));
        cost += SW_HANDS_UNEVEN * positive(mine.keys - others.keys - 4);
        if (width(mine) > 7 && grip_of(c, hand, s, 1 - h, false).keys == 0) {
            cost += SW_HANDS_IDLE;
        }
        if (soft && grip_of(c, hand, s, h, true).keys > 0) {
            cost += SW_HANDS_RING_KEY * positive(all.keys - l->fingers);
            cost += SW_HANDS_RING_STEP * positive(width(all) - span_from(c, all.low));
        }
        for (int i = 0; i < c->count; i++) {
            if (hand[i] == h && c->present[s][i] && names_struck_key(c, s, i)) {
                int step = c->sounds[i].step;
                int high = step > l->left_high ? l->left_high : positive(step);
                cost += h == 0 ? SW_HANDS_LEFT_HIGH * high : SW_HANDS_RIGHT_DEEP * positive(-step);
                cost += h == 1 && step < l->right_low ? SW_HANDS_RIGHT_LOW * (l->right_low - step) : 0;
                cost += h == 1 && step < l->right_lowest ? SW_HANDS_RIGHT_LOWEST : 0;
            }
        }
    }
    bool several_voices = false;
    int in_hand[2] = {0, 0};
    for (int i = 0; i < c->count; i++) {
        for (int j = 0; j < c->count && c->present[s][i]; j++) {
            several_voices = several_voices || (c->present[s][j] && c->sounds[i].voice != c->sounds[j].voice);
        }
        in_hand[hand[i]] += c->present[s][i];
    }
    cost += several_voices && (in_hand[0] == 0 || in_hand[1] == 0) ? SW_HANDS_TWO_VOICES : 0;
    return excess == 0 ? cost : cost + SW_HANDS_IMPOSSIBLE + excess * SW_HANDS_EXCESS;
}

enum { NO_SHIFT = 1000 };

/* How the lines come to a hand in a slice. */
typedef struct arrival {
    int shift;       /* what leaving its placement costs, or NO_SHIFT */
    bool takes_over; /* a single line comes from the other hand, */
    bool in_midst;   /* one of them not where a group ends */
    bool bound;      /* it comes along a glissando, or in a line that both hands strike in turn */
} arrival;

/* Fills in the arrivals of both hands, returns what lines cost that change hands. */
static int64_t line_cost(const small_case *c, const int *hand, int s, arrival arrivals[2])
{
    int64_t cost = 0;
    arrivals[0] = arrivals[1] = (arrival){.shift = NO_SHIFT};
    for (uint32_t voice = 0; s > 0 && voice < 4; voice++) {
        int from[SOUNDS];
        int to[SOUNDS];
        int f = 0;
        int t = 0;
        for (int i = 0; i < c->count; i++) {
            const sound *n = &c->sounds[i];
            bool comes = n->voice == voice && n->slice == s;
            bool ends = n->voice == voice && c->present[s - 1][i] && sw_rational_equal(n->end, c->onsets[s]);
            int *list = comes ? to : from;
            int *count = comes ? &t : &f;
            if (comes || ends) {
                int place = (*count)++;
                for (; place > 0 && height_order(c, list[place - 1], i) > 0; place--) {
                    list[place] = list[place - 1];
                }
                list[place] = i;
            }
        }
        int pairs = f < t ? f : t;
        for (int p = 0; p < pairs; p++) { /* top, bottom, second from top ... */
            int inward = p / 2;
            int a = p % 2 == 0 ? from[f - 1 - inward] : from[inward];
            int b = p % 2 == 0 ? to[t - 1 - inward] : to[inward];
            int steps = abs(c->sounds[a].step - c->sounds[b].step);
            if (steps > c->limits.span && !c->sounds[a].bound) {
                continue;
            }
            bool single = f == 1 && t == 1;
            int shift = steps <= 1   ? SW_HANDS_SHIFT_STEP
                        : steps <= 4 ? SW_HANDS_SHIFT_SKIP
                                     : SW_HANDS_SHIFT_LEAP;
            arrival *at = &arrivals[hand[b]];
            if (hand[a] != hand[b]) {
                cost += c->sounds[a].bound ? SW_HANDS_BOUND
                        : steps <= 1       ? SW_HANDS_LINE_STEP
                                           : SW_HANDS_LINE_LEAP;
                uint32_t group = c->sounds[b].group;
                cost += group != 0 && c->sounds[a].group == group ? SW_HANDS_WITHIN_GROUP : 0;
                at->takes_over = at->takes_over || single;
                bool new_group = group != 0 && c->sounds[a].group != 0 && c->sounds[a].group != group;
                at->in_midst = at->in_midst || (single && !new_group);
                continue;
            }
            bool other_strikes = grip_of(c, hand, s, 1 - hand[b], true).keys > 0;
            bool in_turn = c->limits.in_turn && single && !other_strikes;
            at->bound = at->bound || c->sounds[a].bound || in_turn;
            if (single && shift < at->shift) {
                at->shift = shift;
            }
        }
    }
    return cost;
}

/* The last slice before s in which a hand strikes something, or -1. */
static int last_stroke(const small_case *c, const int *hand, int s, int which)
{
    for (int t = s - 1; t >= 0; t--) {
        if (grip_of(c, hand, t, which, true).keys > 0) {
            return t;
        }
    }
    return -1;
}

static bool has_keys(const small_case *c, const int *hand, int s, int which)
{
    return s >= 0 && grip_of(c, hand, s, which, false).keys > 0;
}

static grip fingers_of(const small_case *c, const int *hand, int s, int which)
{
    return grip_of(c, hand, s, which, c->limits.holds == SW_HOLD_SOFT);
}

/* Whether a key of the left hand lies above one of the right at this moment. */
static bool left_above_right(const small_case *c, const int *hand, int s)
{
    for (int i = 0; i < c->count; i++) {
        for (int j = 0; j < c->count; j++) {
            if (c->present[s][i] && c->present[s][j] && hand[i] == 0 && hand[j] == 1 &&
                height_order(c, i, j) > 0) {
                return true;
            }
        }
    }
    return false;
}

/* What crossing hands cost in all. */
static int64_t crossing_cost(const small_case *c, const int *hand)
{
    int64_t cost = 0;
    bool over = false; /* the left hand lies over the right, */
    int place = 0;     /* which struck this step last */
    for (int s = 0; s < c->slices; s++) {
        int h = grip_of(c, hand, s, 0, true).keys > 0 ? 0 : 1;
        if (left_above_right(c, hand, s)) {
            cost += SW_HANDS_CROSSED_ON + (over ? 0 : SW_HANDS_CROSSED);
            over = true;
            bool now = grip_of(c, hand, s, 1, true).keys > 0;
            place = fingers_of(c, hand, now ? s : last_stroke(c, hand, s, 1), 1).low;
            continue;
        }
        if (has_keys(c, hand, s, 1 - h)) {
            over = false;
            continue;
        }
        int last = last_stroke(c, hand, s, 1 - h);
        bool goes_on = has_keys(c, hand, s - 1, h);
        grip now = fingers_of(c, hand, s, h);
        bool in_place = last >= 0 && (has_keys(c, hand, s - 1, 1 - h) ||
                                      c->seconds[s] - c->seconds[last] < c->limits.settle_seconds);
        if (!in_place) {
            over = over && goes_on && now.low >= place && now.low <= place + c->limits.span;
            continue;
        }
        grip other = fingers_of(c, hand, last, 1 - h);
        int left_over_right = now.low + now.high - other.low - other.high;
        if (h == 1) {
            left_over_right = -left_over_right;
        }
        if (left_over_right <= 0) {
            over = false;
        } else if (h == 0) {
            int dear = SW_HANDS_OVER + SW_HANDS_OVER_LOW * positive(-other.low);
            dear = dear > SW_HANDS_UNDER ? SW_HANDS_UNDER : dear;
            cost += over ? 0 : dear;
            over = true;
            place = other.low;
        } else {
            cost += over && (goes_on || now.low >= place) ? 0 : SW_HANDS_UNDER;
            over = true;
            place = now.low;
        }
    }
    return cost;
}

/* What one hand does in a slice, whatever its fingers do. */
typedef struct stroke {
    bool strikes;
    bool engaged;
    int64_t anew; /* cost of placing its fingers anew */
    int low;
    int high;
    int count;
    int keys[SOUNDS]; /* strings or keys */
} stroke;

static int64_t anew_cost(const small_case *c, const int *hand, int s, int h, arrival at)
{
    const sw_hand_limits *l = &c->limits;
    bool engaged = has_keys(c, hand, s - 1, h);
    int last = last_stroke(c, hand, s, h);
    if (last < 0) {
        return 0;
    }
    if (at.bound) {
        return 0;
    }
    grip now = fingers_of(c, hand, s, h);
    grip before = fingers_of(c, hand, last, h);
    int low = before.low < now.low ? before.low : now.low;
    int high = before.high > now.high ? before.high : now.high;
    int steps = positive(high - low - span_from(c, low));
    steps = engaged && steps == 0 ? 1 : steps;
    double available = c->seconds[s] - c->seconds[last];
    double hurry = available < l->settle_seconds ? (l->settle_seconds - available) / l->settle_seconds : 0;
    int64_t cost = 0;
    if (engaged && at.shift < NO_SHIFT) {
        cost = llround(at.shift * hurry);
    } else if (!engaged && at.takes_over && (before.low != now.low || before.high != now.high)) {
        cost = llround(SW_HANDS_HASTE * hurry);
    }
    bool thumb_passes = engaged && at.shift == SW_HANDS_SHIFT_STEP;
    double needed = steps == 0 || thumb_passes ? 0 : l->travel_seconds + l->seconds_per_step * steps;
    return available < needed ? cost + llround(SW_HANDS_TOO_QUICK * ((needed - available) / needed)) : cost;
}

static stroke stroke_of(const small_case *c, const int *hand, int s, int h, arrival at)
{
    grip now = fingers_of(c, hand, s, h);
    stroke result = {.strikes = grip_of(c, hand, s, h, true).keys > 0,
                     .engaged = has_keys(c, hand, s - 1, h),
                     .low = now.low,
                     .high = now.high};
    if (!result.strikes) {
        return result;
    }
    result.anew = anew_cost(c, hand, s, h, at);
    for (int i = 0; i < c->count; i++) {
        bool needs_finger = c->limits.holds == SW_HOLD_FIRM || names_struck_key(c, s, i);
        if (hand[i] == h && c->present[s][i] && needs_finger) {
            result.keys[result.count++] = c->limits.by_string ? c->sounds[i].step : c->sounds[i].semitone;
        }
    }
    return result;
}

/* The keys under the fingers of a hand, each once. */
typedef struct fingers {
    int low;
    int high;
    int count;
    int keys[SLICES * SOUNDS];
} fingers;

static void put_fingers(fingers *f, const stroke *s)
{
    for (int i = 0; i < s->count; i++) {
        bool known = false;
        for (int j = 0; j < f->count; j++) {
            known = known || f->keys[j] == s->keys[i];
        }
        if (!known) {
            f->keys[f->count++] = s->keys[i];
        }
    }
    f->low = s->low < f->low ? s->low : f->low;
    f->high = s->high > f->high ? s->high : f->high;
}

/* The least cost of the strokes of one hand, whenever its fingers are placed anew. */
static int64_t least_way(const small_case *c, const stroke *strokes, int count, const fingers *before)
{
    while (count > 0 && !strokes->strikes) {
        strokes++;
        count--;
    }
    if (count == 0) {
        return 0;
    }
    fingers anew = {1000, -1000, 0, {0}};
    put_fingers(&anew, strokes);
    int64_t best = strokes->anew + least_way(c, strokes + 1, count - 1, &anew);
    if (strokes->engaged) {
        fingers stay = *before;
        put_fingers(&stay, strokes);
        if (stay.count <= c->limits.fingers && stay.high - stay.low <= span_from(c, stay.low)) {
            int64_t cost = least_way(c, strokes + 1, count - 1, &stay);
            best = cost < best ? cost : best;
        }
    }
    return best;
}

/* The cost of an assignment; some number not below `enough` if it is not below that. */
static int64_t cost_of(const small_case *c, const int *hand, int64_t enough)
{
    int64_t cost = crossing_cost(c, hand);
    arrival arrivals[SLICES][2];
    for (int s = 0; s < c->slices; s++) {
        cost += slice_cost(c, hand, s) + line_cost(c, hand, s, arrivals[s]);
    }
    for (int h = 0; h < 2 && cost < enough; h++) {
        stroke strokes[SLICES];
        int run = 0; /* notes since it came in or took the line over */
        for (int s = 0; s < c->slices; s++) {
            if (arrivals[s][1 - h].takes_over) {
                cost += SW_HANDS_SHORT_RUN * positive((arrivals[s][1 - h].in_midst ? 4 : 3) - run);
            }
            bool goes_on = has_keys(c, hand, s - 1, h) && !arrivals[s][h].takes_over;
            if (grip_of(c, hand, s, h, true).keys > 0) {
                run = goes_on ? run + 1 : 1;
            }
            strokes[s] = stroke_of(c, hand, s, h, arrivals[s][h]);
        }
        fingers none = {1000, -1000, 0, {0}};
        cost += least_way(c, strokes, c->slices, &none);
    }
    return cost;
}

/* The least cost of all assignments of the notes from `assigned` on (those before are in `hand`), or `best`
 * if none is below that. No cost is negative, so a beginning that is not below it already can be given up. */
static int64_t cheapest(const small_case *c, int *hand, int assigned, int64_t best)
{
    bool slice_is_full =
        assigned > 0 && (assigned == c->count || c->sounds[assigned].slice != c->sounds[assigned - 1].slice);
    if (slice_is_full) {
        small_case beginning = *c;
        beginning.count = assigned;
        beginning.slices = c->sounds[assigned - 1].slice + 1;
        int64_t cost = hands_cross(&beginning, hand) ? best : cost_of(&beginning, hand, best);
        if (cost >= best || assigned == c->count) {
            return cost < best ? cost : best;
        }
    }
    for (int h = 0; h < 2; h++) {
        hand[assigned] = h;
        best = cheapest(c, hand, assigned + 1, best);
    }
    return best;
}

/* ---- random small cases -------------------------------------------------------------------------------- */

static sw_hand_limits random_limits(void)
{
    sw_hand_limits l = pick(2) ? sw_hand_limits_harp() : sw_hand_limits_piano();
    if (pick(2)) {
        l.fingers = between(1, 5);
        l.span = between(3, 10);
        l.comfort = l.span - pick(3);
    }
    l.reach_count = pick(3) == 0 ? (size_t)between(1, 3) : 0;
    for (size_t i = 0; i < l.reach_count; i++) {
        int span = (i == 0 ? l.span : l.reaches[i - 1].span) + pick(4);
        l.reaches[i] = (sw_hand_reach){(int)i * 5 - between(4, 8), span, span - pick(2)};
    }
    l.may_roll = pick(3) == 0;
    l.may_cross = pick(3) == 0;
    l.in_turn = pick(3) == 0;
    l.holds = pick(2) ? SW_HOLD_FIRM : SW_HOLD_SOFT;
    l.hold_seconds = pick(3) ? INFINITY : pick(2) ? 0 : 0.2;
    l.travel_seconds = pick(4) * 0.05;
    l.seconds_per_step = pick(4) * 0.01;
    l.settle_seconds = pick(4) * 0.2;
    return l;
}

static void random_slices(small_case *c)
{
    double seconds_per_whole = between(4, 40) / 10.0;
    int at = 0;
    c->slices = between(1, FEW);
    for (int s = 0; s < c->slices; s++) {
        bool after_grace = s > 0 && c->graces[s - 1] < 0;
        if (s > 0 && !after_grace) {
            at += between(1, 4);
        }
        c->graces[s] = after_grace ? c->graces[s - 1] + 1 : pick(5) == 0 ? -between(1, 2) : 0;
        c->onsets[s] = sw_rational_make(at, 16);
        c->seconds[s] = at * seconds_per_whole / 16 + c->graces[s] * 0.001;
    }
}

static void random_sounds(small_case *c)
{
    int low = between(-14, 0);
    int compass = between(3, pick(2) ? 30 : 12);
    int voices = between(1, 3);
    bool few_pitches = pick(3) == 0; /* the same placements come back after different times */
    c->count = between(c->slices, FEW);
    int order[SOUNDS];
    for (int i = 0; i < c->count; i++) { /* at least one for each slice, then sorted */
        order[i] = i < c->slices ? i : pick(c->slices);
    }
    for (int i = 1; i < c->count; i++) {
        for (int j = i; j > 0 && order[j - 1] > order[j]; j--) {
            int swap = order[j];
            order[j] = order[j - 1];
            order[j - 1] = swap;
        }
    }
    for (int i = 0; i < c->count; i++) {
        static const int semitones[] = {0, 2, 4, 5, 7, 9, 11};
        int s = order[i];
        int step = few_pitches ? low + pick(3) * 12 : low + pick(compass);
        int octave = step >= 0 ? step / 7 : -((6 - step) / 7);
        sound *n = &c->sounds[i];
        *n = (sound){.onset = c->onsets[s], .seconds = c->seconds[s], .slice = s, .step = step};
        n->semitone = 60 + 12 * octave + semitones[step - 7 * octave] + between(-1, 1) * (pick(3) == 0);
        n->voice = (uint32_t)pick(voices);
        n->group = (uint32_t)pick(3);
        n->rolled = i > 0 && c->sounds[i - 1].slice == s ? c->sounds[i - 1].rolled : pick(4) == 0;
        n->rolled = pick(8) == 0 ? !n->rolled : n->rolled;
        n->bound = pick(12) == 0;
        int until = between(s + 1, c->slices);
        sw_rational length = sw_rational_make(between(1, 12), 16);
        n->end = c->graces[s] < 0                   ? n->onset
                 : pick(3) > 0 && until < c->slices ? c->onsets[until]
                                                    : sw_rational_add(n->onset, length);
    }
}

/* An arpeggio in one line without rests, now and then with a second note: runs, placements, crossing hands.
 */
static void random_arpeggio(small_case *c)
{
    static const int semitones[] = {0, 2, 4, 5, 7, 9, 11};
    double seconds = between(4, 30) / 100.0;
    int step = between(-12, 4);
    int direction = pick(2) ? 1 : -1;
    bool few_pitches = pick(3) == 0;
    c->slices = between(6, SLICES);
    c->count = 0;
    for (int s = 0; s < c->slices; s++) {
        c->onsets[s] = sw_rational_make(s, 16);
        c->graces[s] = 0;
        c->seconds[s] = s * seconds;
        bool room = c->count + c->slices - s < SOUNDS;
        int notes = room && pick(few_pitches ? 2 : 8) == 0 ? 2 : 1;
        for (int i = 0; i < notes; i++) {
            int at = step + (few_pitches ? 5 : 2) * i;
            int octave = at >= 0 ? at / 7 : -((6 - at) / 7);
            c->sounds[c->count++] = (sound){.onset = c->onsets[s],
                                            .end = sw_rational_make(s + 1, 16),
                                            .seconds = c->seconds[s],
                                            .slice = s,
                                            .group = (uint32_t)(s / 4 + 1),
                                            .semitone = 60 + 12 * octave + semitones[at - 7 * octave],
                                            .step = at};
        }
        if (few_pitches) {
            step = -10 + 5 * pick(4);
            continue;
        }
        direction = pick(5) == 0 ? -direction : direction;
        step += direction * (pick(6) == 0 ? between(4, 9) : between(1, 3));
    }
}

static bool pitch_is_alone(const small_case *c, int i)
{
    for (int j = 0; j < c->count; j++) {
        if (j != i && c->sounds[j].semitone == c->sounds[i].semitone) {
            return false;
        }
    }
    return true;
}

/* The notes of the case; some sounds become two tied notes, the second of which is added at the end of the
 * list. The first may end early: a tie may wait. */
static music notes_of(const small_case *c)
{
    music m = {0};
    for (int i = 0; i < c->count; i++) {
        const sound *n = &c->sounds[i];
        m.notes[m.count++] = (sw_hand_note){.id = (uint32_t)i,
                                            .onset = n->onset,
                                            .end = n->end,
                                            .seconds = n->seconds,
                                            .semitone = n->semitone,
                                            .step = n->step,
                                            .voice = n->voice,
                                            .group = n->group,
                                            .rolled = n->rolled,
                                            .bound = n->bound,
                                            .grace = c->graces[n->slice]};
    }
    for (int i = 0; i < c->count; i++) {
        sw_hand_note *first = &m.notes[i];
        if (pick(3) == 0 && first->grace == 0 && pitch_is_alone(c, i)) {
            sw_hand_note *second = &m.notes[m.count++];
            *second = *first;
            second->tied = true;
            sw_rational part = sw_rational_make(between(1, 3), 4);
            sw_rational length = sw_rational_mul(sw_rational_sub(first->end, first->onset), part);
            second->onset = sw_rational_add(first->onset, length);
            first->end = pick(2)
                             ? second->onset
                             : sw_rational_add(first->onset, sw_rational_mul(length, sw_rational_make(1, 2)));
        }
    }
    return m;
}

static void test_no_assignment_is_cheaper(void **state)
{
    (void)state;
    start_random("hands against all assignments");
    int impossible = 0;
    int both_hands = 0;
    int ties = 0;
    int rolled = 0;
    int crossed = 0;
    int by_register = 0;
    int in_turn = 0;
    for (int i = 0; i < RANDOM_CASES; i++) {
        small_case c = {.limits = random_limits()};
        if (i % 4 == 0) {
            random_arpeggio(&c);
        } else {
            random_slices(&c);
            random_sounds(&c);
        }
        find_present(&c);
        music m = notes_of(&c);
        sw_arena *arena = sw_arena_new();
        sw_hand_split result = split(arena, &m, c.limits);
        int hand[SOUNDS];
        int64_t best = cheapest(&c, hand, 0, result.cost + 1);
        if (result.cost != best) {
            fail_msg("case %d: cost %lld, but the least is %lld (or more, if it is just above)", i,
                     (long long)result.cost, (long long)best);
        }
        bool used[2] = {false, false};
        for (int n = 0; n < c.count; n++) {
            hand[n] = (int)result.hands[n];
            used[hand[n]] = true;
        }
        for (size_t n = (size_t)c.count; n < m.count; n++) {
            assert_int_equal(result.hands[n], hand[m.notes[n].id]);
            ties++;
        }
        assert_false(hands_cross(&c, hand));
        assert_int_equal(cost_of(&c, hand, INT64_MAX), best);
        bool named = false;
        for (size_t p = 0; p < result.problem_count; p++) {
            named = named || result.problems[p].reason <= SW_HANDS_HELD;
        }
        assert_int_equal(named, best >= SW_HANDS_IMPOSSIBLE);
        bool rolls = false;
        for (int s = 0; s < c.slices; s++) {
            bool roll = is_rolled_by_choice(&c, hand, s);
            rolls = rolls || roll;
            for (int n = 0; n < c.count; n++) {
                assert_true(c.sounds[n].slice != s || result.rolls[n] == roll);
            }
        }
        rolled += rolls;
        c.limits.may_cross = false;
        crossed += hands_cross(&c, hand);
        by_register += c.limits.reach_count > 0;
        in_turn += c.limits.in_turn;
        impossible += named;
        both_hands += used[0] && used[1];
        sw_arena_free(arena);
    }
    printf("%d cases: %d impossible, %d with both hands, %d tied notes, %d rolled by choice, %d crossed, %d "
           "with spans by register, %d in turn\n",
           RANDOM_CASES, impossible, both_hands, ties, rolled, crossed, by_register, in_turn);
}

/* ---- clefs --------------------------------------------------------------------------------------------- */

/* Counts the lines between staff and note one by one. Lines of the treble staff are steps 2 4 6 8 10. */
static int ledger_lines(int clef, int lowest, int highest)
{
    int first = clef == SW_TREBLE_CLEF ? 2 : -10;
    int lines = 0;
    for (int step = -80; step <= 80; step += 2) {
        lines += (step < first && step >= lowest) || (step > first + 8 && step <= highest);
    }
    return lines;
}

static int64_t clefs_cost(const sw_clef_moment *moments, int count, const sw_hand_clef *clefs)
{
    int64_t cost = 0;
    for (int i = 0; i < count; i++) {
        /* below and above apart: each side is counted by the player on its own */
        static const int price[] = {0,  1,  2,  4,  7,  11,  16,  22,  29, 37,
                                    46, 56, 67, 79, 92, 106, 121, 137, 154};
        cost += price[ledger_lines((int)clefs[i], moments[i].lowest, 4 - 12 * (int)clefs[i])];
        cost += price[ledger_lines((int)clefs[i], 4 - 12 * (int)clefs[i], moments[i].highest)];
        if (i > 0 && clefs[i] != clefs[i - 1]) {
            cost += moments[i].bar != moments[i - 1].bar || moments[i].after_rest ? 8 : 12;
        }
    }
    return cost;
}

static int clef_changes(const sw_hand_clef *clefs, int count)
{
    int changes = 0;
    for (int i = 1; i < count; i++) {
        changes += clefs[i] != clefs[i - 1];
    }
    return changes;
}

static void test_ledger_lines(void **state)
{
    (void)state;
    assert_int_equal(sw_clef_ledger_lines(SW_TREBLE_CLEF, 0, 0), 1);   /* C4 */
    assert_int_equal(sw_clef_ledger_lines(SW_TREBLE_CLEF, 1, 11), 0);  /* D4 to G5 */
    assert_int_equal(sw_clef_ledger_lines(SW_TREBLE_CLEF, -2, 12), 3); /* A3 and A5 */
    assert_int_equal(sw_clef_ledger_lines(SW_BASS_CLEF, 0, 0), 1);     /* C4 */
    assert_int_equal(sw_clef_ledger_lines(SW_BASS_CLEF, -14, -14), 2); /* C2 */
    assert_int_equal(sw_clef_ledger_lines(SW_BASS_CLEF, -11, -1), 0);  /* F2 to B3 */
}

static void test_no_clefs_are_cheaper(void **state)
{
    (void)state;
    start_random("clefs against all choices");
    int64_t changes = 0;
    for (int i = 0; i < RANDOM_CLEF_CASES; i++) {
        sw_clef_moment moments[10];
        int count = between(0, 10);
        uint32_t bar = 1;
        int centre = between(-14, 14);
        for (int m = 0; m < count; m++) {
            bar += pick(3) == 0;
            centre = pick(4) == 0 ? between(-21, 21) : centre;
            int lowest = centre + between(-3, 3);
            moments[m] =
                (sw_clef_moment){sw_rational_make(m, 4), bar, lowest, lowest + pick(9), pick(3) == 0};
        }
        sw_hand_clef usual = pick(2) ? SW_TREBLE_CLEF : SW_BASS_CLEF;
        sw_hand_clef clefs[10];
        int64_t cost = sw_clefs_choose(moments, (size_t)count, usual, clefs);
        int64_t best = INT64_MAX;
        int fewest = INT_MAX;
        bool usual_first = false; /* can the best way begin with the usual clef? */
        for (int code = 0; code < 1 << count; code++) {
            sw_hand_clef other[10] = {SW_TREBLE_CLEF};
            for (int m = 0; m < count; m++) {
                other[m] = code >> m & 1 ? SW_BASS_CLEF : SW_TREBLE_CLEF;
            }
            int64_t c = clefs_cost(moments, count, other);
            int changed = clef_changes(other, count);
            if (c < best || (c == best && changed < fewest)) {
                best = c;
                fewest = changed;
                usual_first = false;
            }
            usual_first = usual_first || (c == best && changed == fewest && other[0] == usual);
        }
        assert_int_equal(cost, best);
        assert_int_equal(clefs_cost(moments, count, clefs), best);
        assert_int_equal(clef_changes(clefs, count), fewest);
        assert_true(count == 0 || !usual_first || clefs[0] == usual);
        changes += fewest;
    }
    printf("%d cases, %lld changes of clef\n", RANDOM_CLEF_CASES, (long long)changes);
}

static void test_clef_of_a_high_passage(void **state)
{
    (void)state;
    sw_clef_moment moments[24];
    sw_hand_clef clefs[24];
    for (int i = 0; i < 24; i++) { /* a bar around C3, a bar around C5, a bar around C3 */
        int step = i / 8 == 1 ? 7 : -7;
        moments[i] = (sw_clef_moment){sw_rational_make(i, 8), (uint32_t)(i / 8), step, step, false};
    }
    sw_clefs_choose(moments, 24, SW_BASS_CLEF, clefs);
    for (int i = 0; i < 24; i++) {
        assert_int_equal(clefs[i], i / 8 == 1 ? SW_TREBLE_CLEF : SW_BASS_CLEF);
    }
    moments[8].lowest = moments[8].highest = 2; /* one E4 in a low bar is no reason */
    for (int i = 9; i < 16; i++) {
        moments[i].lowest = moments[i].highest = -5;
    }
    sw_clefs_choose(moments, 24, SW_BASS_CLEF, clefs);
    for (int i = 0; i < 24; i++) {
        assert_int_equal(clefs[i], SW_BASS_CLEF);
    }
}

/* ---- speed --------------------------------------------------------------------------------------------- */

enum { MANY = 10000 };

static sw_hand_note *long_music(int texture)
{
    sw_hand_note *notes = calloc(MANY, sizeof *notes);
    assert_non_null(notes);
    static const int semitones[] = {0, 2, 4, 5, 7, 9, 11};
    static const int arpeggio[] = {-14, -10, -7, -5, -3, 0, 2, 4,  7,  9,  11,
                                   14,  11,  9,  7,  4,  2, 0, -3, -5, -7, -10};
    int walk = 0;
    for (int i = 0; i < MANY; i++) {
        int onset = i; /* in sixteenths */
        int length = 1;
        int step = arpeggio[i % 22];
        uint32_t voice = 1;
        if (texture == 1) { /* quaver accompaniment and crotchet melody */
            onset = i / 3 * 4 + (i % 3 == 2 ? 2 : 0);
            voice = i % 3 == 1 ? 2 : 1;
            length = i % 3 == 1 ? 4 : 2;
            walk = pick(2) ? walk + 1 : walk - 1;
            walk = walk < 4 ? 4 : walk > 12 ? 12 : walk;
            step = i % 3 == 1 ? walk : -7 + (i % 3) * 2 + pick(3);
        } else if (texture == 2) { /* chords of eight */
            onset = i / 8 * 4;
            length = 4;
            step = -16 + i % 8 * 3 + i / 8 % 5 + pick(2);
        } else if (texture == 3) { /* four voices, any rhythm */
            onset = i / 2 + pick(2);
            length = between(1, 8);
            voice = (uint32_t)pick(4);
            step = (int)voice * 5 - 12 + pick(7);
        }
        int octave = step >= 0 ? step / 7 : -((6 - step) / 7);
        notes[i] = (sw_hand_note){.id = (uint32_t)i,
                                  .onset = sw_rational_make(onset, 16),
                                  .end = sw_rational_make(onset + length, 16),
                                  .seconds = onset * 0.125,
                                  .semitone = 60 + 12 * octave + semitones[step - 7 * octave],
                                  .step = step,
                                  .voice = voice};
    }
    return notes;
}

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return (double)t.tv_sec + (double)t.tv_nsec / 1e9;
}

static void test_speed(void **state)
{
    (void)state;
    start_random("speed");
    static const char *names[] = {"arpeggio", "melody and accompaniment", "chords of eight", "four voices"};
    for (int texture = 0; texture < 4; texture++) {
        sw_hand_note *notes = long_music(texture);
        for (int instrument = 0; instrument < 2; instrument++) {
            sw_hand_limits limits = instrument == 0 ? sw_hand_limits_harp() : sw_hand_limits_piano();
            sw_arena *arena = sw_arena_new();
            double before = now();
            sw_hand_split result = sw_hands_split(arena, notes, MANY, &limits);
            double seconds = now() - before;
            printf("%-25s %-5s %8.0f notes/s, %6.1f ms, %zu problems, cost %lld\n", names[texture],
                   instrument == 0 ? "harp" : "piano", MANY / seconds, seconds * 1000, result.problem_count,
                   (long long)result.cost);
            assert_true(result.exact);
            assert_true(seconds < 5); /* even with sanitizers on a slow machine */
            sw_arena_free(arena);
        }
        free(notes);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_arpeggio_passes_between_hands),
        cmocka_unit_test(test_ringing_arpeggio),
        cmocka_unit_test(test_scale_stays_in_one_hand),
        cmocka_unit_test(test_held_bass_with_figuration),
        cmocka_unit_test(test_alberti_bass_with_melody),
        cmocka_unit_test(test_eight_note_chord),
        cmocka_unit_test(test_stride_under_melody),
        cmocka_unit_test(test_open_chords_are_shared),
        cmocka_unit_test(test_low_note_goes_left_high_note_right),
        cmocka_unit_test(test_right_hand_of_harp_stays_up),
        cmocka_unit_test(test_nine_notes_are_too_many_for_the_harp),
        cmocka_unit_test(test_reasons),
        cmocka_unit_test(test_held_notes_make_a_slice_impossible),
        cmocka_unit_test(test_late_hand_is_named),
        cmocka_unit_test(test_tied_notes_stay),
        cmocka_unit_test(test_arpeggio_in_groups_of_four),
        cmocka_unit_test(test_right_hand_stays_out_of_the_bass),
        cmocka_unit_test(test_four_and_four_over_four_octaves),
        cmocka_unit_test(test_cross_hand_arpeggio),
        cmocka_unit_test(test_placed_fingers_are_never_late),
        cmocka_unit_test(test_mallets_reach_further_at_the_top),
        cmocka_unit_test(test_mallets_strike_in_turn),
        cmocka_unit_test(test_rolled_chords),
        cmocka_unit_test(test_hands_cross_at_one_moment),
        cmocka_unit_test(test_runs_pass_in_groups),
        cmocka_unit_test(test_ties_go_to_the_nearest_split),
        cmocka_unit_test(test_scale_of_three_octaves),
        cmocka_unit_test(test_alberti_bass_alone),
        cmocka_unit_test(test_broken_octaves),
        cmocka_unit_test(test_waltz),
        cmocka_unit_test(test_strings_and_keys),
        cmocka_unit_test(test_nothing),
        cmocka_unit_test(test_no_assignment_is_cheaper),
        cmocka_unit_test(test_ledger_lines),
        cmocka_unit_test(test_no_clefs_are_cheaper),
        cmocka_unit_test(test_clef_of_a_high_passage),
        cmocka_unit_test(test_speed),
    };
    return cmocka_run_group_tests_name("hands and clefs", tests, NULL, NULL);
}
