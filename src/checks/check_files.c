/* Checks of several main files: what they find, gathered so that each trouble is told once. */
#include <stdlib.h>
#include <string.h>

#include "checks/fingerprint.h"
#include "checks/rules.h"
#include "checks/silencers.h"
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

/* The number of a file among those read, by its real path: the same for every path that leads to it. The
 * first of these is the one that is told. */
static uint32_t number_of(sw_check_result *result, const char *real_path, const char *path)
{
    if (result->real_paths == NULL) {
        result->real_paths = sw_names_new();
    }
    uint32_t number = sw_names_add(result->real_paths, sw_slice_of(real_path)) - 1; /* "" has number 0 */
    if (number == result->file_count) {
        result->files =
            sw_grow(result->files, result->file_count, &result->file_capacity, sizeof *result->files);
        sw_paths plain = {0};
        sw_paths_add(&plain, path);
        result->files[result->file_count++] = (sw_checked_file){
            .real_path = sw_arena_copy(result->arena, sw_slice_of(real_path)),
            .path = sw_arena_copy(result->arena, sw_slice_of(plain.items[0])),
        };
        sw_paths_free(&plain);
    }
    return number;
}

static uint32_t file_number(sw_check_result *result, const sw_text *text)
{
    char *real = text->real_path != NULL ? NULL : realpath(text->path, NULL);
    const char *known = text->real_path != NULL ? text->real_path : real;
    /* No real path: standard input, or gone meanwhile. */
    uint32_t number = number_of(result, known == NULL ? text->path : known, text->path);
    free(real);
    return number;
}

/* A comment that silences rules, over all main files that it is read with. */
struct sw_silencer_use {
    sw_checked idle; /* what is said when it silences nothing; its file is an index into result->files */
    bool used;
    bool judged; /* some main file has all that it speaks of, and its rules were run */
};

static void add(sw_check_result *result, sw_checked item)
{
    item.path = result->files[item.finding.file].path;
    item.number = result->count;
    result->items = sw_grow(result->items, result->count, &result->capacity, sizeof *result->items);
    result->items[result->count++] = item;
}

static sw_arena *arena_of(sw_check_result *result)
{
    if (result->arena == NULL) {
        result->arena = sw_arena_new();
    }
    return result->arena;
}

/* One main file, with what is found in it. */
typedef struct harvest {
    const sw_check_options *options;
    const sw_reading *reading;
    sw_check_result *result;
    sw_fixes *fixes;
    uint32_t *numbers; /* the file's number in the result for its index in the reading */
    sw_heard heard;
    sw_silencers silencers;
} harvest;

/* A finding of the reading as one that outlives it. */
static sw_checked outlive(const harvest *h, const sw_finding *finding)
{
    sw_arena *arena = h->result->arena;
    sw_checked item = {.finding = *finding};
    sw_fingerprint_finding(&h->heard, finding, arena, &item);
    item.finding.severity = severity_of(h->options, finding);
    item.finding.file = h->numbers[finding->file];
    item.finding.message = sw_arena_copy(arena, sw_slice_of(finding->message));
    return item;
}

static void keep(harvest *h, const sw_findings *findings)
{
    for (size_t i = 0; i < findings->count; i++) {
        sw_finding finding = findings->items[i];
        if (!sw_rule_is_wanted(h->options, finding.rule) ||
            sw_silencers_cover(&h->silencers, &h->heard, &finding)) {
            continue;
        }
        if (finding.fixable != SW_NOT_FIXABLE) {
            h->fixes->items[finding.fix].wanted = true;
        }
        add(h->result, outlive(h, &finding));
    }
}

/* Whether this reading can tell that a silencer is idle. */
static bool can_judge(const harvest *h, const sw_silencer *silencer)
{
    for (size_t i = 0; i < sw_rules_count(); i++) {
        if (silencer->rules[i] && !sw_rule_is_wanted(h->options, sw_rules_get(i)->name)) {
            return false;
        }
    }
    bool line = silencer->scope == SW_SILENCES_LINE;
    return sw_rule_is_wanted(h->options, "silencer") &&
           sw_heard_all(&h->heard, silencer->file, line ? silencer->line : 1,
                        line ? silencer->line : UINT32_MAX);
}

/* Notes the use of a silencer, which other main files may have used as well. */
static void note_use(sw_check_result *result, const struct sw_silencer_use *use)
{
    size_t known = 0;
    while (known < result->silencer_count &&
           (result->silencers[known].idle.finding.file != use->idle.finding.file ||
            result->silencers[known].idle.finding.start != use->idle.finding.start)) {
        known++;
    }
    if (known == result->silencer_count) {
        result->silencers = sw_grow(result->silencers, result->silencer_count, &result->silencer_capacity,
                                    sizeof *result->silencers);
        result->silencers[result->silencer_count++] = *use;
    } else {
        result->silencers[known].used |= use->used;
        result->silencers[known].judged |= use->judged;
    }
}

/* Notes which silencers have been used with this main file. */
static void note_uses(harvest *h)
{
    for (size_t i = 0; i < h->silencers.count; i++) {
        const sw_silencer *silencer = &h->silencers.items[i];
        sw_place place = sw_text_place(h->reading->files[silencer->file].text, silencer->start);
        char message[] = "this silences nothing: no such finding is left here; remove the comment";
        sw_finding finding = {.severity = SW_WARNING,
                              .rule = sw_rule_silencer.name,
                              .file = silencer->file,
                              .start = silencer->start,
                              .end = silencer->end,
                              .line = place.line,
                              .column = place.column + 1,
                              .message = message};
        struct sw_silencer_use use = {
            .idle = outlive(h, &finding), .used = silencer->used, .judged = can_judge(h, silencer)};
        note_use(h->result, &use);
    }
}

static void number_files(harvest *h)
{
    h->numbers = sw_alloc(h->reading->file_count * sizeof *h->numbers);
    for (size_t i = 0; i < h->reading->file_count; i++) {
        h->numbers[i] = file_number(h->result, h->reading->files[i].text);
    }
    for (size_t i = 0; i < h->reading->score_count; i++) {
        h->result->scores += !h->reading->scores[i].in_markup;
    }
}

void sw_check_add(const sw_reading *reading, const sw_check_options *options, sw_check_result *result,
                  sw_fixes *fixes)
{
    arena_of(result);
    sw_findings findings = {0};
    harvest h = {.options = options, .reading = reading, .result = result, .fixes = fixes};
    number_files(&h);
    h.silencers = sw_silencers_of(reading, &findings);
    sw_findings_place(reading, &findings, 0);
    sw_check_reading(reading, options, &findings, fixes);
    if (findings.count + reading->findings.count + h.silencers.count > 0) {
        h.heard = sw_heard_of(reading);
    }
    keep(&h, &reading->findings);
    keep(&h, &findings);
    note_uses(&h);
    free(h.numbers);
    sw_heard_free(&h.heard);
    sw_silencers_free(&h.silencers);
    sw_findings_free(&findings);
}

bool sw_check_file(const char *path, const sw_check_options *options, sw_check_result *result, char **error)
{
    sw_reading *reading = sw_read(path, &options->read, error);
    if (reading == NULL) {
        return false;
    }
    sw_fixes fixes = {0};
    sw_check_add(reading, options, result, &fixes);
    sw_fixes_free(&fixes);
    sw_reading_free(reading);
    return true;
}

/* The strings and the file of a finding of another result, in this one. */
static sw_checked adopt(sw_check_result *result, const sw_checked *item, const uint32_t *numbers)
{
    sw_checked own = *item;
    own.finding.file = numbers[item->finding.file];
    own.finding.message = sw_arena_copy(result->arena, sw_slice_of(item->finding.message));
    own.staff = item->staff == NULL ? NULL : sw_arena_copy(result->arena, sw_slice_of(item->staff));
    return own;
}

void sw_check_join(sw_check_result *result, sw_check_result *part)
{
    arena_of(result);
    uint32_t *numbers = sw_alloc((part->file_count + 1) * sizeof *numbers);
    for (size_t i = 0; i < part->file_count; i++) {
        numbers[i] = number_of(result, part->files[i].real_path, part->files[i].path);
    }
    for (size_t i = 0; i < part->count; i++) {
        add(result, adopt(result, &part->items[i], numbers));
    }
    for (size_t i = 0; i < part->silencer_count; i++) {
        struct sw_silencer_use use = part->silencers[i];
        use.idle = adopt(result, &use.idle, numbers);
        note_use(result, &use);
    }
    result->scores += part->scores;
    free(numbers);
    sw_check_result_free(part);
}

/* One place can break several house rules. */
static bool is_house(const sw_checked *a)
{
    return strcmp(a->finding.rule, "house") == 0;
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
    order = order != 0 || !is_house(x) ? order : strcmp(x->finding.message, y->finding.message);
    order = order != 0 ? order : (int)y->finding.severity - (int)x->finding.severity;
    if (order == 0 && x->number != y->number) {
        order = x->number < y->number ? -1 : 1;
    }
    return order;
}

static bool same_trouble(const sw_checked *a, const sw_checked *b)
{
    if (is_house(a) && strcmp(a->finding.message, b->finding.message) != 0) {
        return false;
    }
    return a->finding.file == b->finding.file && a->finding.start == b->finding.start &&
           strcmp(a->finding.rule, b->finding.rule) == 0;
}

/* What stands at one place is mended at one place, in however many scores and parts it is played and whatever
 * they call the player: of the findings of a rule there the first one stays. */
void sw_check_finish(sw_check_result *result)
{
    for (size_t i = 0; i < result->silencer_count; i++) {
        if (result->silencers[i].judged && !result->silencers[i].used) {
            add(result, result->silencers[i].idle);
        }
    }
    result->silencer_count = 0;
    if (result->count > 0) {
        qsort(result->items, result->count, sizeof *result->items, compare_places);
    }
    size_t kept = 0;
    for (size_t i = 0; i < result->count; i++) {
        const sw_checked *item = &result->items[i];
        if (kept == 0 || !same_trouble(&result->items[kept - 1], item)) {
            result->items[kept++] = *item;
            result->by_severity[item->finding.severity]++;
            result->fixable[item->finding.fixable]++;
        }
    }
    result->count = kept;
}

void sw_check_result_free(sw_check_result *result)
{
    free(result->items);
    free(result->files);
    free(result->silencers);
    sw_names_free(result->real_paths);
    sw_arena_free(result->arena);
    *result = (sw_check_result){0};
}
