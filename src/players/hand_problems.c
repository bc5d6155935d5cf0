#include "players/hand_problems.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

typedef struct finder {
    sw_arena *arena;
    const sw_hand_note *notes;
    const sw_hand_way *way;
    sw_hand_problem *problems;
    size_t count;
    size_t capacity;
} finder;

static sw_hand_problem *add(finder *f, const sw_hand_slice *slice, const sw_hand_task tasks[2],
                            sw_hand_reason reason, sw_hand hand)
{
    uint32_t *ids = sw_arena_alloc(f->arena, slice->note_count * sizeof *ids);
    for (uint32_t i = 0; i < slice->note_count; i++) {
        ids[i] = f->notes[f->way->slices->notes[slice->first_note + i]].id;
    }
    f->problems = sw_grow(f->problems, f->count, &f->capacity, sizeof *f->problems);
    sw_hand_problem *problem = &f->problems[f->count++];
    *problem = (sw_hand_problem){.reason = reason,
                                 .onset = slice->onset,
                                 .grace = slice->grace,
                                 .hand = hand,
                                 .keys = {tasks[0].keys, tasks[1].keys},
                                 .steps = {sw_hand_spread(&tasks[0]), sw_hand_spread(&tasks[1])},
                                 .lowest = tasks[hand].lowest_struck,
                                 .ids = ids,
                                 .id_count = slice->note_count};
    problem->least_steps = INT_MAX;
    for (uint32_t split = 0; split <= slice->key_count; split++) {
        sw_hand_task other[2];
        sw_hand_tasks(f->way->slices, slice, (sw_hand_sharing){.split = split}, f->way->limits, other);
        int left = sw_hand_spread(&other[0]);
        int right = sw_hand_spread(&other[1]);
        int wider = left > right ? left : right;
        problem->least_steps = wider < problem->least_steps ? wider : problem->least_steps;
    }
    return problem;
}

/* Why no hand position serves: looks at the slice alone, whatever the hands held before. */
static sw_hand_reason reason_of(const finder *f, const sw_hand_slice *slice)
{
    const sw_hand_limits *limits = f->way->limits;
    bool within_span = false;
    bool playable = false;
    bool many = false;
    for (uint32_t split = 0; split <= slice->key_count; split++) {
        sw_hand_task tasks[2];
        sw_hand_tasks(f->way->slices, slice, (sw_hand_sharing){.split = split}, limits, tasks);
        many = tasks[0].keys + tasks[1].keys > 2 * limits->fingers;
        sw_hand_limits endless = *limits;
        endless.fingers = INT_MAX;
        within_span = within_span ||
                      (sw_hand_excess(&tasks[0], &endless) == 0 && sw_hand_excess(&tasks[1], &endless) == 0);
        playable =
            playable || (sw_hand_excess(&tasks[0], limits) == 0 && sw_hand_excess(&tasks[1], limits) == 0);
    }
    if (playable) {
        return SW_HANDS_HELD;
    }
    if (many) {
        return within_span ? SW_HANDS_MANY : SW_HANDS_MANY_AND_WIDE;
    }
    return within_span ? SW_HANDS_MANY_OR_WIDE : SW_HANDS_WIDE;
}

static void find_limits(finder *f, const sw_hand_slice *slice, const sw_hand_task tasks[2])
{
    int left = sw_hand_excess(&tasks[0], f->way->limits);
    int right = sw_hand_excess(&tasks[1], f->way->limits);
    if (left + right > 0) {
        add(f, slice, tasks, reason_of(f, slice), left >= right ? SW_LEFT_HAND : SW_RIGHT_HAND);
    }
    if (tasks[1].struck > 0 && tasks[1].lowest_struck < f->way->limits->right_lowest) {
        add(f, slice, tasks, SW_HANDS_LOW, SW_RIGHT_HAND);
    }
}

static void find_late_hands(finder *f, const sw_hand_moment *moment, const sw_hand_choice *choice,
                            sw_hand_placement places[2])
{
    for (int hand = 0; hand < 2; hand++) {
        sw_hand_travel travel =
            sw_hand_move(f->way, moment, (sw_hand)hand, choice->anew[hand], &places[hand]);
        if (travel.available < travel.needed) {
            const sw_hand_slice *slice = &f->way->slices->slices[moment->number];
            sw_hand_problem *problem = add(f, slice, moment->tasks, SW_HANDS_QUICK, (sw_hand)hand);
            problem->travel_steps = travel.steps;
            problem->needed = travel.needed;
            problem->available = travel.available;
        }
    }
}

const sw_hand_problem *sw_hand_problems(sw_arena *arena, const sw_hand_note *notes, const sw_hand_way *way,
                                        const sw_hand_choice *choices, size_t *count)
{
    finder f = {.arena = arena, .notes = notes, .way = way};
    sw_hand_placement places[2] = {sw_hand_nowhere(), sw_hand_nowhere()};
    for (size_t i = 0; i < way->slices->count; i++) {
        const sw_hand_slice *slice = &way->slices->slices[i];
        sw_hand_moment moment = {.number = i};
        sw_hand_tasks(way->slices, slice, choices[i].sharing, way->limits, moment.tasks);
        find_limits(&f, slice, moment.tasks);
        if (i > 0) {
            sw_hand_come_from(way, choices[i - 1].sharing, choices[i].sharing, &moment);
        }
        find_late_hands(&f, &moment, &choices[i], places);
    }
    sw_hand_problem *problems = NULL;
    if (f.count > 0) {
        problems = sw_arena_alloc(arena, f.count * sizeof *problems);
        memcpy(problems, f.problems, f.count * sizeof *problems);
    }
    free(f.problems);
    *count = f.count;
    return problems;
}
