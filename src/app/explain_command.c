/* stavewright explain: what a rule looks for, why, on which figures, and how to mend it. */
#include <stdio.h>

#include "app/commands.h"
#include "stavewright/check.h"

static void list_rules(void)
{
    for (size_t i = 0; i < sw_rules_count(); i++) {
        printf("%-14s %s\n", sw_rules_get(i)->name, sw_rules_get(i)->summary);
    }
}

int sw_command_explain(int count, char **words)
{
    static const char *const severities[] = {
        [SW_NOTE] = "note", [SW_WARNING] = "warning", [SW_ERROR] = "error"};
    if (count == 0) {
        list_rules();
        return SW_EXIT_CLEAN;
    }
    for (int i = 0; i < count; i++) {
        const sw_rule *rule = sw_rules_find(words[i]);
        if (rule == NULL) {
            const char *nearest = sw_rules_nearest(words[i]);
            fprintf(stderr, "stavewright explain: there is no rule \"%s\"; %s%s%s\n", words[i],
                    nearest == NULL ? "stavewright explain lists them" : "did you mean \"",
                    nearest == NULL ? "" : nearest, nearest == NULL ? "" : "\"?");
            return SW_EXIT_BAD;
        }
        printf("%s%s: %s (%s)\n\n%s", i == 0 ? "" : "\n", rule->name, rule->summary,
               severities[rule->severity], rule->explain);
    }
    return SW_EXIT_CLEAN;
}
