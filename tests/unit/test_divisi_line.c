/* The parts of a divided section: the optimum against all choices, and what players expect. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "moves/divisi_desks.h"

enum { SLICES = 3, PARTS = 4, CASES = 2000 };

static unsigned draw(unsigned below)
{
    return (unsigned)rand() % below;
}

/* So many players in so many parts. */
static sw_divisi_section booked(int players, int parts)
{
    return sw_divisi_section_of(&players, 1, parts);
}

static sw_divisi_slice random_slice(int parts)
{
    sw_divisi_slice slice = {.count = (uint8_t)(1 + draw((unsigned)parts)), .apart = draw(4) == 0};
    int height = 50 + (int)draw(20);
    for (int n = 0; n < slice.count; n++) {
        slice.heights[n] = height;
        height += 1 + (int)draw(9);
    }
    slice.tied = (uint8_t)draw(1u << slice.count);
    bool lies_well = draw(3) == 0;
    for (int p = 0; p < parts && !lies_well; p++) {
        for (int n = 0; n < slice.count; n++) {
            slice.beyond[p][n] = draw(4) == 0 ? (uint8_t)draw(12) : 0;
            slice.position[p][n] = draw(2) == 0 ? (uint8_t)draw(20) : 0;
        }
    }
    return slice;
}

/* Mostly as booked, sometimes as nobody would divide. */
static sw_divisi_section random_section(int parts)
{
    sw_divisi_section section = booked(draw(3) == 0 ? 0 : (int)draw(20), parts);
    for (int p = 0; p < parts && draw(4) == 0; p++) {
        section.sizes[p] = 1 + (int)draw(5);
    }
    return section;
}

/* ---- the costs once more, from what divisi_line.h says of them -------------------------------------------
 */

/* What a part pays where it is. */
static int64_t own_cost_of_part(const sw_divisi_slice *slice, int part, int note)
{
    return 100 * slice->beyond[part][note] + slice->position[part][note];
}

/* What a note pays for those who have it. */
static int64_t own_cost_of_note(const sw_divisi_slice *slice, const sw_divisi_section *section,
                                const uint8_t *notes, int note)
{
    int64_t have = 0;
    int64_t all = 0;
    int parts = 0;
    for (int p = section->parts; p-- > 0;) {
        have += notes[p] == note ? section->sizes[p] : 0;
        parts += notes[p] == note ? 1 : 0;
        all += section->sizes[p];
    }
    int64_t equal_parts = have * section->parts; /* over `all`: as many parts as these players would be */
    int64_t cost = 40 * equal_parts * equal_parts / (all * all);
    bool is_outer = note == 0 || note == slice->count - 1;
    return is_outer ? cost : cost + 6 * (parts - 1);
}

/* What a part pays for its way; in halves, so that a rest needs no rounding. */
static int64_t own_cost_of_way(const sw_divisi_slice *a, const sw_divisi_slice *b, int part, int from, int to)
{
    int64_t semitones = labs((long)a->heights[from] - b->heights[to]);
    int64_t shift = labs((long)a->position[part][from] - b->position[part][to]);
    int64_t cost = (semitones + shift) * (b->apart ? 1 : 2);
    bool holds_on = a->heights[from] == b->heights[to];
    for (int n = 0; n < b->count && !holds_on; n++) {
        cost += (b->tied & 1 << n) != 0 && a->heights[from] == b->heights[n] ? 400 : 0;
    }
    return cost;
}

/* ---- the optimum -----------------------------------------------------------------------------------------
 */

/* Whether no parts cross and no note is left out. */
static bool is_allowed(const sw_divisi_slice *slice, int parts, const uint8_t *notes)
{
    bool taken[PARTS] = {0};
    for (int p = 0; p < parts; p++) {
        if (p > 0 && slice->heights[notes[p]] < slice->heights[notes[p - 1]]) {
            return false;
        }
        taken[notes[p]] = true;
    }
    for (int n = 0; n < slice->count; n++) {
        if (!taken[n]) {
            return false;
        }
    }
    return true;
}

/* The cost of a whole way; -1 when it is not allowed. */
static int64_t cost_of(const sw_divisi_slice *slices, size_t count, const sw_divisi_section *section,
                       const uint8_t *notes)
{
    int64_t cost = 0;
    for (size_t i = 0; i < count; i++) {
        const uint8_t *own = notes + i * (size_t)section->parts;
        if (!is_allowed(&slices[i], section->parts, own)) {
            return -1;
        }
        for (int n = 0; n < slices[i].count; n++) {
            cost += own_cost_of_note(&slices[i], section, own, n);
        }
        for (int p = 0; p < section->parts; p++) {
            cost += own_cost_of_part(&slices[i], p, own[p]);
            cost +=
                i == 0 ? 0 : own_cost_of_way(&slices[i - 1], &slices[i], p, own[p - section->parts], own[p]);
        }
    }
    return cost;
}

/* The least cost over all notes for all parts in all slices, one digit after another. */
static int64_t try_all(const sw_divisi_slice *slices, size_t count, const sw_divisi_section *section)
{
    uint8_t notes[SLICES * PARTS] = {0};
    size_t parts = (size_t)section->parts;
    size_t digits = count * parts;
    int64_t best = -1;
    for (size_t d = 0; d < digits;) {
        int64_t cost = cost_of(slices, count, section, notes);
        best = cost >= 0 && (best < 0 || cost < best) ? cost : best;
        for (d = 0; d < digits && ++notes[d] == slices[d / parts].count; d++) {
            notes[d] = 0;
        }
    }
    return best;
}

static void test_optimum(void **state)
{
    (void)state;
    srand(20);
    for (int i = 0; i < CASES; i++) {
        int parts = 1 + (int)draw(i % 50 == 0 ? PARTS : PARTS - 1); /* four parts are slow to try */
        size_t count = 1 + draw(parts == PARTS ? 2 : SLICES);
        sw_divisi_section section = random_section(parts);
        sw_divisi_slice slices[SLICES];
        for (size_t s = 0; s < count; s++) {
            slices[s] = random_slice(parts);
        }
        uint8_t notes[SLICES * PARTS];
        int64_t cost = sw_divisi_solve(slices, count, &section, notes);
        assert_int_equal(cost, try_all(slices, count, &section));
        assert_int_equal(cost, cost_of(slices, count, &section, notes));
    }
}

static void test_expected(void **state)
{
    (void)state;
    uint8_t notes[3 * 4];
    const sw_divisi_section two_parts = booked(0, 2);
    const sw_divisi_section three_parts = booked(0, 3);
    const sw_divisi_section four_parts = booked(0, 4);
    /* Three parts, two notes: the pair stays where moving would be more. */
    const sw_divisi_slice pair[] = {{.heights = {60, 64, 67}, .count = 3}, {.heights = {60, 66}, .count = 2}};
    sw_divisi_solve(pair, 2, &three_parts, notes);
    assert_memory_equal(notes, ((uint8_t[]){0, 1, 2, 0, 1, 1}), 6);
    /* Four parts, three notes: an outer note is doubled. */
    const sw_divisi_slice three = {.heights = {60, 64, 67}, .count = 3};
    sw_divisi_solve(&three, 1, &four_parts, notes);
    assert_int_not_equal(notes[1] + notes[2], 2);
    /* Four parts, two notes: two each. */
    const sw_divisi_slice two = {.heights = {60, 64}, .count = 2};
    sw_divisi_solve(&two, 1, &four_parts, notes);
    assert_memory_equal(notes, ((uint8_t[]){0, 0, 1, 1}), 4);
    /* Who holds a tied note keeps it, whoever doubles. */
    const sw_divisi_slice tied[] = {{.heights = {60, 72}, .count = 2},
                                    {.heights = {60, 62, 72}, .count = 3, .tied = 4}};
    sw_divisi_solve(tied, 2, &three_parts, notes);
    assert_int_equal(notes[5], 2);
    assert_int_equal(sw_divisi_solve(&three, 1, &two_parts, notes), -1);
}

/* What players as booked, compasses and positions change. */
static void test_players_expect(void **state)
{
    (void)state;
    uint8_t notes[2 * 4];
    /* Six players in four parts (2 1 1 2) on three notes: two each, though an inner note is doubled. */
    const sw_divisi_section six = booked(6, 4);
    const sw_divisi_slice three = {.heights = {60, 64, 67}, .count = 3};
    sw_divisi_solve(&three, 1, &six, notes);
    assert_memory_equal(notes, ((uint8_t[]){0, 1, 1, 2}), 4);
    /* A note high beyond the compass gets one part of four: someone has to. */
    const sw_divisi_section four_parts = booked(0, 4);
    sw_divisi_slice two = {.heights = {76, 102}, .count = 2};
    for (int p = 0; p < 4; p++) {
        two.beyond[p][1] = 2;
    }
    sw_divisi_solve(&two, 1, &four_parts, notes);
    assert_memory_equal(notes, ((uint8_t[]){0, 0, 0, 1}), 4);
    /* Of two outer notes the lower one on the string is doubled. */
    const sw_divisi_section three_parts = booked(0, 3);
    sw_divisi_slice high = {.heights = {76, 90}, .count = 2};
    for (int p = 0; p < 3; p++) {
        high.position[p][1] = 7;
    }
    sw_divisi_solve(&high, 1, &three_parts, notes);
    assert_memory_equal(notes, ((uint8_t[]){0, 0, 1}), 3);
    /* The lower part's instrument goes no higher: the other part doubles. */
    sw_divisi_slice cello_and_bass = {.heights = {36, 62}, .count = 2};
    cello_and_bass.beyond[0][1] = cello_and_bass.beyond[1][1] = 9;
    sw_divisi_solve(&cello_and_bass, 1, &three_parts, notes);
    assert_memory_equal(notes, ((uint8_t[]){0, 0, 1}), 3);
}

static void test_players(void **state)
{
    (void)state;
    /* from the lowest part up; what is left over goes to the outer parts, from the top */
    static const int wanted[][5] = {{14, 7, 7}, {7, 3, 4}, {14, 5, 4, 5}, {13, 4, 4, 5}, {6, 2, 1, 1, 2}};
    for (size_t i = 0; i < sizeof wanted / sizeof wanted[0]; i++) {
        int parts = i < 2 ? 2 : i < 4 ? 3 : 4;
        for (int part = 0; part < parts; part++) {
            assert_int_equal(sw_divisi_players(wanted[i][0], parts, part), wanted[i][1 + part]);
        }
    }
}

/* The most equal way to give parts to groups, all tried: the sum of the squares of the sizes. */
static int try_shares(const int *groups, int count, int parts)
{
    int best = -1;
    for (int own = 1; own <= parts - (count - 1); own++) {
        int sum = 0;
        for (int p = 0; p < own; p++) {
            int size = (groups[0] + p) / own; /* as equal as may be */
            sum += size * size;
        }
        int rest = count == 1 ? 0 : try_shares(groups + 1, count - 1, parts - own);
        bool whole = count > 1 || own == parts;
        best = whole && (best < 0 || sum + rest < best) ? sum + rest : best;
    }
    return best;
}

static void test_groups(void **state)
{
    (void)state;
    srand(21);
    for (int i = 0; i < CASES; i++) {
        int parts = 1 + (int)draw(SW_DIVISI_MOST);
        int count = 1 + (int)draw((unsigned)parts);
        int groups[SW_DIVISI_MOST];
        for (int g = 0; g < count; g++) {
            groups[g] = parts + (int)draw(12);
        }
        sw_divisi_section section = sw_divisi_section_of(groups, count, parts);
        int seated[SW_DIVISI_MOST] = {0};
        int sum = 0;
        for (int p = 0; p < parts; p++) {
            seated[section.groups[p]] += section.sizes[p];
            sum += section.sizes[p] * section.sizes[p];
            assert_true(p == 0 || section.groups[p] <= section.groups[p - 1]);
        }
        assert_memory_equal(seated, groups, (size_t)count * sizeof *groups);
        assert_int_equal(sum, try_shares(groups, count, parts));
    }
    /* five cellos and four basses in three parts: the cellos are divided, and the lower ones are fewer */
    const sw_divisi_section low = sw_divisi_section_of((const int[]){5, 4}, 2, 3);
    assert_memory_equal(low.sizes, ((const int[]){4, 2, 3}), 3 * sizeof(int));
    assert_memory_equal(low.groups, ((const int[]){1, 0, 0}), 3 * sizeof(int));
}

static const char *desks_of(int players, int parts, int part, sw_buffer *text)
{
    sw_divisi_section section = booked(players, parts);
    sw_buffer_clear(text);
    sw_divisi_say_desks(&section, part, text);
    return sw_buffer_text(text);
}

static void test_desks(void **state)
{
    (void)state;
    srand(22);
    for (int i = 0; i < CASES; i++) {
        int parts = 1 + (int)draw(SW_DIVISI_MOST);
        int players = parts + (int)draw(20);
        sw_divisi_section section = booked(players, parts);
        uint8_t part_of[SW_DIVISI_MOST + 20];
        sw_divisi_seat(&section, 0, part_of);
        int seated[SW_DIVISI_MOST] = {0};
        int shared = 0;
        for (int p = 0; p < players; p++) {
            seated[part_of[p]]++;
            shared += p % 2 == 1 && part_of[p] != part_of[p - 1];
            assert_true(p % 2 == 0 ||
                        part_of[p] <= part_of[p - 1]); /* the outside player has the upper part */
        }
        assert_memory_equal(seated, section.sizes, (size_t)parts * sizeof(int));
        int odd = 0;
        for (int p = 0; p < parts; p++) {
            odd += section.sizes[p] % 2;
        }
        /* who is left over from whole desks shares one; one of them may sit alone */
        assert_int_equal(shared, parts == 2 ? players / 2 : odd / 2);
    }
    sw_buffer text = {0};
    assert_string_equal(desks_of(14, 2, 1, &text), ": outside");
    assert_string_equal(desks_of(14, 3, 2, &text), ": desks 1, 4, outside of desk 7");
    assert_string_equal(desks_of(14, 3, 1, &text), ": desks 2, 5");
    assert_string_equal(desks_of(14, 3, 0, &text), ": desks 3, 6, inside of desk 7");
    assert_string_equal(desks_of(5, 3, 2, &text), ": desk 1");
    assert_string_equal(desks_of(5, 3, 1, &text), ": desk 3");
    assert_string_equal(desks_of(5, 3, 0, &text), ": desk 2");
    assert_string_equal(desks_of(6, 4, 2, &text), ": outside of desk 3");
    sw_buffer_free(&text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_optimum),        cmocka_unit_test(test_expected),
                                       cmocka_unit_test(test_players_expect), cmocka_unit_test(test_players),
                                       cmocka_unit_test(test_groups),         cmocka_unit_test(test_desks)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
