/* stavewright explain: what a rule looks for, why, on which figures, and how to mend it; and the figures of
 * an instrument with their source. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/words.h"
#include "stavewright/check.h"
#include "stavewright/players.h"

static void list_rules(void)
{
    for (size_t i = 0; i < sw_rules_count(); i++) {
        printf("%-14s %s\n", sw_rules_get(i)->name, sw_rules_get(i)->summary);
    }
}

static void print_rule(const sw_rule *rule)
{
    static const char *const severities[] = {
        [SW_NOTE] = "note", [SW_WARNING] = "warning", [SW_ERROR] = "error"};
    printf("%s: %s (%s)\n\n%s", rule->name, rule->summary, severities[rule->severity], rule->explain);
}

static void print_compass(const char *what, sw_pitch low, sw_pitch high, sw_pitch lowest, sw_pitch highest)
{
    char text[4][SW_PITCH_TEXT];
    printf("  %-10s %s to %s (some reach %s to %s)\n", what, sw_pitch_print(low, text[0]),
           sw_pitch_print(high, text[1]), sw_pitch_print(lowest, text[2]), sw_pitch_print(highest, text[3]));
}

static void print_instrument(const sw_instrument *i)
{
    printf("%s\n", i->id);
    if (i->has_compass) {
        print_compass("written", i->written_low, i->written_high, i->extreme_low, i->extreme_high);
        print_compass("sounding", sw_instrument_sounding(i, i->written_low),
                      sw_instrument_sounding(i, i->written_high), sw_instrument_sounding(i, i->extreme_low),
                      sw_instrument_sounding(i, i->extreme_high));
    }
    if (i->fingers > 0) {
        printf("  %-10s %d fingers or mallets; interval number %d at sight, %d at the most\n", "each hand",
               i->fingers, i->span, i->extreme_span);
    }
    printf("  %-10s %s\n  These are defaults for healthy professionals; the player decides.\n", "source",
           i->source);
}

/* A rule, or an instrument by any name that a staff may have. */
static int explain(const sw_instruments *instruments, const char *word)
{
    const sw_rule *rule = sw_rules_find(word);
    const sw_instrument *instrument = rule == NULL ? sw_instruments_by_id(instruments, word) : NULL;
    const char *nearest = sw_rules_nearest(word);
    if (rule == NULL && instrument == NULL && nearest == NULL) {
        instrument = sw_instruments_find(instruments, word);
    }
    if (rule != NULL) {
        print_rule(rule);
    } else if (instrument != NULL) {
        print_instrument(instrument);
    } else if (nearest != NULL) {
        return sw_say_bad("explain", "there is no rule \"%s\"; did you mean \"%s\"?", word, nearest);
    } else {
        return sw_say_bad("explain",
                          "\"%s\" is neither a rule nor an instrument; stavewright explain lists the rules",
                          word);
    }
    return SW_EXIT_CLEAN;
}

int sw_command_explain(int count, char **words)
{
    if (count == 0) {
        list_rules();
        return SW_EXIT_CLEAN;
    }
    char *error = NULL;
    sw_instruments *instruments = sw_instruments_load(NULL, (sw_slice){NULL, 0}, &error);
    if (instruments == NULL) {
        int status = sw_say_bad("explain", "%s", error);
        free(error);
        return status;
    }
    int status = SW_EXIT_CLEAN;
    for (int i = 0; i < count && status == SW_EXIT_CLEAN; i++) {
        if (i > 0) {
            putchar('\n');
        }
        status = explain(instruments, words[i]);
    }
    sw_instruments_free(instruments);
    return status;
}
