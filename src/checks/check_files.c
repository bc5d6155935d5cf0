/* Checks of several main files: what they find, gathered so that each trouble is told once. */
#include <stdlib.h>
#include <string.h>

#include "checks/rules.h"
#include "stavewright/main_files.h"

/* What the film says about a rule, instead of what the rule itself says. */
static sw_severity severity_of(const sw_check_options *options, const sw_finding *finding)
{
    sw_rule_wish wish = sw_film_wish(options->film, finding->rule);
    return wish == SW_RULE_NOTE      ? SW_NOTE
           : wish == SW_RULE_WARNING ? SW_WARNING
           : wish == SW_RULE_ERROR   ? SW_ERROR
                                     : finding->severity;
}

/* The number of a file among those read, by its real path: the same for every path that leads to it. */
static uint32_t file_number(sw_check_result *result, const char *path)
{
    char *real = realpath(path, NULL);
    sw_slice name = sw_slice_of(real == NULL ? path : real); /* standard input, or gone meanwhile */
    uint32_t number = 0;
    while (number < result->file_count && !sw_slice_is(name, result->files[number].real_path)) {
        number++;
    }
    if (number == result->file_count) {
        sw_paths plain = {0};
        sw_paths_add(&plain, path);
        result->files =
            sw_grow(result->files, result->file_count, &result->file_capacity, sizeof *result->files);
        result->files[result->file_count++] = (sw_checked_file){
            .real_path = sw_arena_copy(result->arena, name),
            .path = sw_arena_copy(result->arena, sw_slice_of(plain.items[0])),
        };
        sw_paths_free(&plain);
    }
    free(real);
    return number;
}

/* `numbers` gives the file's number for its index in the reading. */
static void keep(sw_check_result *result, const sw_check_options *options, const sw_findings *findings,
                 const uint32_t *numbers)
{
    for (size_t i = 0; i < findings->count; i++) {
        if (!sw_rule_is_wanted(options, findings->items[i].rule)) {
            continue;
        }
        sw_finding finding = findings->items[i];
        finding.severity = severity_of(options, &finding);
        finding.file = numbers[finding.file];
        finding.message = sw_arena_copy(result->arena, sw_slice_of(finding.message));
        result->items = sw_grow(result->items, result->count, &result->capacity, sizeof *result->items);
        result->items[result->count] = (sw_checked){result->files[finding.file].path, finding, result->count};
        result->count++;
    }
}

bool sw_check_file(const char *path, const sw_check_options *options, sw_check_result *result, char **error)
{
    sw_reading *reading = sw_read(path, &options->read, error);
    if (reading == NULL) {
        return false;
    }
    if (result->arena == NULL) {
        result->arena = sw_arena_new();
    }
    sw_findings findings = {0};
    sw_check_reading(reading, options, &findings);
    uint32_t *numbers = sw_alloc(reading->file_count * sizeof *numbers);
    for (size_t i = 0; i < reading->file_count; i++) {
        numbers[i] = file_number(result, reading->files[i].text->path);
    }
    keep(result, options, &reading->findings, numbers);
    keep(result, options, &findings, numbers);
    for (size_t i = 0; i < reading->score_count; i++) {
        result->scores += !reading->scores[i].in_markup;
    }
    free(numbers);
    sw_findings_free(&findings);
    sw_reading_free(reading);
    return true;
}

/* By place; of the findings of one rule at one place the gravest first, then that of the first main file. */
static int compare_places(const void *a, const void *b)
{
    const sw_checked *x = a;
    const sw_checked *y = b;
    int order = strcmp(x->path, y->path);
    if (order == 0 && x->finding.start != y->finding.start) {
        order = x->finding.start < y->finding.start ? -1 : 1;
    }
    order = order != 0 ? order : strcmp(x->finding.rule, y->finding.rule);
    order = order != 0 ? order : (int)y->finding.severity - (int)x->finding.severity;
    if (order == 0 && x->number != y->number) {
        order = x->number < y->number ? -1 : 1;
    }
    return order;
}

static bool same_trouble(const sw_checked *a, const sw_checked *b)
{
    return a->finding.file == b->finding.file && a->finding.start == b->finding.start &&
           strcmp(a->finding.rule, b->finding.rule) == 0;
}

/* What stands at one place is mended at one place, in however many scores and parts it is played and whatever
 * they call the player: of the findings of a rule there the first one stays. */
void sw_check_finish(sw_check_result *result)
{
    if (result->count > 0) {
        qsort(result->items, result->count, sizeof *result->items, compare_places);
    }
    size_t kept = 0;
    for (size_t i = 0; i < result->count; i++) {
        const sw_checked *item = &result->items[i];
        if (kept == 0 || !same_trouble(&result->items[kept - 1], item)) {
            result->items[kept++] = *item;
            result->by_severity[item->finding.severity]++;
        }
    }
    result->count = kept;
}

void sw_check_result_free(sw_check_result *result)
{
    free(result->items);
    free(result->files);
    sw_arena_free(result->arena);
    *result = (sw_check_result){0};
}
