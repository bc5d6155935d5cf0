#include "checks/rules.h"
#include "checks/entry.h"
#include "checks/line.h"

#include <stdlib.h>
#include <string.h>

#include "base/nearest.h"
#include "players/playing.h"

#define SW_ROW(name) &sw_rule_##name,
static const sw_rule *const rules[] = {SW_RULES(SW_ROW)};
#undef SW_ROW

enum { RULES = sizeof rules / sizeof rules[0] };

size_t sw_rules_count(void)
{
    return RULES;
}

const sw_rule *sw_rules_get(size_t i)
{
    return rules[i];
}

const sw_rule *sw_rules_find(const char *name)
{
    for (size_t i = 0; i < RULES; i++) {
        if (strcmp(rules[i]->name, name) == 0) {
            return rules[i];
        }
    }
    return NULL;
}

const char *sw_rules_nearest(const char *name)
{
    const char *names[RULES];
    for (size_t i = 0; i < RULES; i++) {
        names[i] = rules[i]->name;
    }
    return sw_nearest_word(sw_slice_of(name), names, RULES);
}

bool sw_rule_is_wanted(const sw_check_options *options, const char *rule)
{
    bool off = !options->insist && sw_film_wish(options->film, rule) == SW_RULE_OFF;
    for (size_t i = 0; i < RULES && options->chosen != NULL; i++) {
        if (strcmp(rules[i]->name, rule) == 0) {
            return options->chosen[i] && !off;
        }
    }
    return !off;
}

const sw_playing *sw_check_playing(sw_check *check, size_t score)
{
    if (check->playing[score] == NULL) {
        sw_seated_notes who = {sw_check_seating(check, score), sw_check_seat_ranges(check, score)};
        check->playing[score] = sw_playing_of_players(check->techniques, check->instruments, check->reading,
                                                      &check->reading->scores[score], who);
    }
    return check->playing[score];
}

const sw_seating *sw_check_seating(sw_check *check, size_t score)
{
    if (check->seating[score] == NULL) {
        check->seating[score] = sw_seating_of(check->film, check->reading, &check->reading->scores[score]);
    }
    return check->seating[score];
}

const sw_seat_range *sw_check_seat_ranges(sw_check *check, size_t score)
{
    if (check->seat_ranges[score] == NULL) {
        check->seat_ranges[score] = sw_seating_of_notes(sw_check_seating(check, score), check->reading,
                                                        &check->reading->scores[score]);
    }
    return check->seat_ranges[score];
}

const sw_dynamics *sw_check_dynamics(sw_check *check, size_t score)
{
    if (check->dynamics[score] == NULL) {
        check->dynamics[score] = sw_dynamics_of(check->reading, &check->reading->scores[score]);
    }
    return check->dynamics[score];
}

void sw_check_each_staff(sw_check *check, sw_each_staff *each)
{
    for (size_t i = 0; i < check->reading->score_count; i++) {
        const sw_score *score = &check->reading->scores[i];
        for (uint32_t staff = 0; !score->in_markup && staff < score->staff_count; staff++) {
            each(check, score, staff);
        }
    }
}

sw_film *sw_check_film(const char *path_or_null, sw_slice yaml, char **error)
{
    sw_film_rule known[RULES];
    for (size_t i = 0; i < RULES; i++) {
        known[i] = (sw_film_rule){rules[i]->name, rules[i]->options};
    }
    return sw_film_load(path_or_null, yaml, known, RULES, error);
}

double sw_check_option(const sw_check *check, const sw_rule *rule, const char *option)
{
    const sw_rule_option *o = rule->options;
    while (strcmp(o->name, option) != 0) {
        o++;
    }
    return sw_film_option(check->film, rule->name, option, o->standard);
}

void sw_findings_place(const sw_reading *reading, sw_findings *findings, size_t first)
{
    for (size_t i = first; i < findings->count; i++) {
        sw_finding *finding = &findings->items[i];
        sw_place place = sw_text_place(reading->files[finding->file].text, finding->start);
        finding->line = place.line;
        finding->column = place.column + 1;
    }
}

sw_check sw_check_begin(const sw_reading *reading, const sw_film *film)
{
    return (sw_check){.film = film,
                      .reading = reading,
                      .instruments = sw_film_instruments(film),
                      .techniques = sw_film_techniques(film),
                      .limits = sw_film_limits(film),
                      .playing = sw_alloc_zero(reading->score_count + 1, sizeof(sw_playing *)),
                      .seating = sw_alloc_zero(reading->score_count + 1, sizeof(sw_seating *)),
                      .seat_ranges = sw_alloc_zero(reading->score_count + 1, sizeof(sw_seat_range *)),
                      .dynamics = sw_alloc_zero(reading->score_count + 1, sizeof(sw_dynamics *)),
                      .entries = sw_alloc_zero(reading->score_count + 1, sizeof(sw_entries *))};
}

void sw_check_end(sw_check *check)
{
    for (size_t i = 0; i < check->reading->score_count; i++) {
        sw_playing_free(check->playing[i]);
        sw_seating_free(check->seating[i]);
        free(check->seat_ranges[i]);
        sw_dynamics_free(check->dynamics[i]);
        sw_entries_free(check->entries[i], check->reading->scores[i].staff_count);
    }
    sw_check_lines_free(check);
    free(check->playing);
    free(check->seating);
    free(check->seat_ranges);
    free(check->dynamics);
    free(check->entries);
}

void sw_check_reading(const sw_reading *reading, const sw_check_options *options, sw_findings *findings,
                      sw_fixes *fixes)
{
    size_t first = findings->count;
    sw_check check = sw_check_begin(reading, options->film);
    check.chairs = sw_rule_is_wanted(options, sw_rule_chairs.name);
    check.findings = findings;
    check.fixes = fixes;
    for (size_t i = 0; i < RULES; i++) {
        if (rules[i]->run != NULL && sw_rule_is_wanted(options, rules[i]->name)) {
            rules[i]->run(&check);
        }
    }
    sw_drop_prerecorded(&check, first);
    sw_check_end(&check);
    sw_findings_place(reading, findings, first);
}
