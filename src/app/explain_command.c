/* stavewright explain: what a rule looks for, why, on which figures, and how to mend it; and the figures of
 * an instrument with their source. */
#include <stdio.h>
#include <stdlib.h>

#include "app/commands.h"
#include "app/explain_abilities.h"
#include "app/words.h"
#include "base/nearest.h"
#include "checks/say.h"
#include "stavewright/check.h"
#include "stavewright/players.h"
#include "stavewright/report.h"

static void list_rules(void)
{
    for (size_t i = 0; i < sw_rules_count(); i++) {
        const sw_rule *rule = sw_rules_get(i);
        printf("%-16s %-8s %s\n", rule->name, sw_severity_word(rule->severity), rule->summary);
    }
}

static void print_rule(const sw_rule *rule)
{
    printf("%s: %s (%s)\n\n%s", rule->name, rule->summary, sw_severity_word(rule->severity), rule->explain);
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
        const char *tool = i->family == SW_PERCUSSION && i->fingers <= 2 ? "mallets" : "fingers";
        char span[2][SW_SAY];
        printf("  %-10s %d %s; %s at sight, %s at the most\n", "each hand", i->fingers, tool,
               sw_say_span(i->span - 1, span[0]), sw_say_span(i->extreme_span - 1, span[1]));
        for (size_t r = 0; r < i->hand_register_count; r++) {
            const sw_hand_register *reg = &i->hand_registers[r];
            char from[SW_PITCH_TEXT];
            printf("  %-10s from %s: %s at sight, %s at the most\n", "", sw_pitch_print(reg->from, from),
                   sw_say_span(reg->span - 1, span[0]), sw_say_span(reg->extreme_span - 1, span[1]));
        }
    }
    printf("  %-10s %s\n", "source", i->source);
    sw_print_abilities(i);
    printf("  These are defaults for healthy professionals; the player decides.\n");
}

/* What a word asks for: one of the two. */
typedef struct subject {
    const sw_rule *rule;
    const sw_instrument *instrument; /* by its id or by any name that a staff may have */
} subject;

/* The rule or instrument that a mistyped word may have meant, or NULL. */
static const char *nearest_subject(const sw_instruments *instruments, const char *word)
{
    size_t rules = sw_rules_count();
    size_t count = rules + sw_instruments_count(instruments);
    const char **names = sw_alloc(count * sizeof *names);
    for (size_t i = 0; i < count; i++) {
        names[i] = i < rules ? sw_rules_get(i)->name : sw_instruments_get(instruments, i - rules)->id;
    }
    const char *nearest = sw_nearest_word(sw_slice_of(word), names, count);
    free(names);
    return nearest;
}

/* A misspelt name may begin with one that a staff may have ("hand_span" with "hand"): what comes near to a
 * rule is taken for a mistake. Returns the exit status. */
static int find_subject(const sw_instruments *instruments, const char *word, subject *found)
{
    *found = (subject){.rule = sw_rules_find(word)};
    if (found->rule == NULL) {
        found->instrument = sw_instruments_by_id(instruments, word);
    }
    if (found->rule == NULL && found->instrument == NULL && sw_rules_nearest(word) == NULL) {
        found->instrument = sw_instruments_find(instruments, word);
    }
    if (found->rule != NULL || found->instrument != NULL) {
        return SW_EXIT_CLEAN;
    }
    const char *nearest = nearest_subject(instruments, word);
    if (nearest != NULL) {
        return sw_say_bad("explain", "there is no rule or instrument \"%s\"; did you mean \"%s\"?", word,
                          nearest);
    }
    return sw_say_bad("explain",
                      "\"%s\" is neither a rule nor an instrument; stavewright rules lists the rules", word);
}

/* Prints nothing when one of the words means nothing. */
static int explain_all(const sw_instruments *instruments, int count, char **words)
{
    subject *subjects = sw_alloc((size_t)count * sizeof *subjects);
    int status = SW_EXIT_CLEAN;
    for (int i = 0; i < count && status == SW_EXIT_CLEAN; i++) {
        status = find_subject(instruments, words[i], &subjects[i]);
    }
    for (int i = 0; i < count && status == SW_EXIT_CLEAN; i++) {
        fputs(i == 0 ? "" : "\n", stdout);
        if (subjects[i].rule != NULL) {
            print_rule(subjects[i].rule);
        } else {
            print_instrument(subjects[i].instrument);
        }
    }
    free(subjects);
    return status;
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
    int status = explain_all(instruments, count, words);
    sw_instruments_free(instruments);
    return status;
}

int sw_command_rules(int count, char **words)
{
    if (count > 0) {
        return sw_say_bad("rules", "it takes no words; stavewright explain %s says more", words[0]);
    }
    list_rules();
    return SW_EXIT_CLEAN;
}
