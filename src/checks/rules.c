#include "checks/rules.h"

#include <string.h>

#include "base/nearest.h"

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

void sw_check_reading(const sw_reading *reading, const sw_instruments *instruments, const bool *chosen,
                      sw_findings *findings)
{
    size_t first = findings->count;
    sw_check check = {reading, instruments, findings};
    for (size_t i = 0; i < RULES; i++) {
        if (rules[i]->run != NULL && (chosen == NULL || chosen[i])) {
            rules[i]->run(&check);
        }
    }
    for (size_t i = first; i < findings->count; i++) {
        sw_finding *finding = &findings->items[i];
        sw_place place = sw_text_place(reading->files[finding->file].text, finding->start);
        finding->line = place.line;
        finding->column = place.column + 1;
    }
}
