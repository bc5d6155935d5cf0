/* The film: where its file is found, and what it says. */
#include "stavewright/film.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "players/film_reader.h"

static const char *const file_name = "stavewright.yaml";

/* ---- where it is found -----------------------------------------------------------------------------------
 */

/* The absolute path of the folder that holds a file; of the working folder when it does not exist. */
static char *folder_of(const char *file)
{
    char *copy = strdup(file);
    char *slash = copy == NULL ? NULL : strrchr(copy, '/');
    if (slash != NULL) {
        slash[slash == copy ? 1 : 0] = '\0';
    }
    char *real = slash == NULL ? NULL : realpath(copy, NULL);
    free(copy);
    return real != NULL ? real : realpath(".", NULL);
}

char *sw_film_path(const char *file)
{
    char *folder = folder_of(file);
    while (folder != NULL) {
        sw_buffer candidate = {0};
        sw_buffer_format(&candidate, "%s%s%s", folder, strcmp(folder, "/") == 0 ? "" : "/", file_name);
        if (sw_file_exists(sw_buffer_text(&candidate))) {
            free(folder);
            return sw_path_from_here(candidate.data);
        }
        sw_buffer_free(&candidate);
        char *slash = strrchr(folder, '/');
        if (slash == NULL || folder[1] == '\0') {
            break;
        }
        slash[slash == folder ? 1 : 0] = '\0';
    }
    free(folder);
    return NULL;
}

/* ---- what it says ----------------------------------------------------------------------------------------
 */

void sw_film_free(sw_film *film)
{
    if (film == NULL) {
        return;
    }
    for (size_t i = 0; i < film->chair_count; i++) {
        for (size_t p = 0; p < film->patterns[i].count; p++) {
            sw_pattern_free(film->patterns[i].items[p]);
        }
    }
    for (size_t i = 0; i < film->house_count; i++) {
        sw_pattern_free(film->house_patterns[i]);
    }
    sw_instruments_free(film->instruments);
    sw_techniques_free(film->techniques);
    sw_limits_free(film->limits);
    sw_arena_free(film->arena);
    free(film);
}

const char *sw_film_file(const sw_film *film)
{
    return film->path;
}

const char *sw_film_name(const sw_film *film)
{
    return film->name;
}

const sw_instruments *sw_film_instruments(const sw_film *film)
{
    return film->instruments;
}

const sw_techniques *sw_film_techniques(const sw_film *film)
{
    return film->techniques;
}

const sw_limits *sw_film_limits(const sw_film *film)
{
    return film->limits;
}

bool sw_film_has_roster(const sw_film *film)
{
    return film->has_roster;
}

size_t sw_film_chair_count(const sw_film *film)
{
    return film->chair_count;
}

const sw_chair *sw_film_chair(const sw_film *film, size_t i)
{
    return &film->chairs[i];
}

bool sw_film_chair_claims(const sw_film *film, size_t i, const char *staff_name)
{
    for (size_t p = 0; p < film->patterns[i].count; p++) {
        if (sw_pattern_find(film->patterns[i].items[p], sw_slice_of(staff_name), 0, NULL, NULL)) {
            return true;
        }
    }
    return false;
}

static const sw_film_rule_entry *find_rule(const sw_film *film, const char *rule)
{
    for (size_t i = 0; i < film->rule_count; i++) {
        if (strcmp(film->rules[i].rule.name, rule) == 0) {
            return &film->rules[i];
        }
    }
    return NULL;
}

sw_rule_wish sw_film_wish(const sw_film *film, const char *rule)
{
    const sw_film_rule_entry *entry = find_rule(film, rule);
    return entry == NULL ? SW_RULE_AS_IT_IS : entry->wish;
}

double sw_film_option(const sw_film *film, const char *rule, const char *option, double standard)
{
    const sw_film_rule_entry *entry = find_rule(film, rule);
    const sw_rule_option *options = entry == NULL ? NULL : entry->rule.options;
    for (size_t i = 0; options != NULL && options[i].name != NULL; i++) {
        if (strcmp(options[i].name, option) == 0) {
            return entry->given[i] ? entry->values[i] : standard;
        }
    }
    return standard;
}

size_t sw_film_house_count(const sw_film *film)
{
    return film->house_count;
}

const sw_house_rule *sw_film_house(const sw_film *film, size_t i)
{
    return &film->house[i];
}

bool sw_house_rule_find(const sw_film *film, const sw_house_rule *rule, sw_slice text, size_t start,
                        size_t *from, size_t *to)
{
    return sw_pattern_find(film->house_patterns[rule->number], text, start, from, to);
}

size_t sw_film_include_count(const sw_film *film)
{
    return film->include_count;
}

const char *const *sw_film_includes(const sw_film *film)
{
    return film->includes;
}

bool sw_film_is_output(const sw_film *film, const char *file)
{
    char *folder = film->output_count == 0 ? NULL : folder_of(file);
    bool inside = false;
    for (size_t i = 0; i < film->output_count && folder != NULL && !inside; i++) {
        size_t length = strlen(film->outputs[i]);
        inside = strncmp(folder, film->outputs[i], length) == 0 &&
                 (folder[length] == '\0' || folder[length] == '/');
    }
    free(folder);
    return inside;
}
