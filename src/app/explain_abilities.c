/* stavewright explain INSTRUMENT: what it can do, group by group, each with its source. */
#include <stdio.h>
#include <string.h>

#include "app/explain_abilities.h"

static void print_source(const char *source)
{
    printf("             (%s)\n", source);
}

static void print_register(const sw_register *r)
{
    char pitch[2][SW_PITCH_TEXT];
    printf("  %-10s %s, %s to %s:", "register", r->name, sw_pitch_print(r->low, pitch[0]),
           sw_pitch_print(r->high, pitch[1]));
    const char *comma = "";
    if (r->softest != SW_NO_DYNAMIC) {
        printf("%s no softer than %s", comma, sw_dynamic_name(r->softest));
        comma = ",";
    }
    if (r->loudest != SW_NO_DYNAMIC) {
        printf("%s no louder than %s", comma, sw_dynamic_name(r->loudest));
        comma = ",";
    }
    if (r->covered) {
        printf("%s easily covered", comma);
        comma = ",";
    }
    if (r->niente != SW_NOT_SAID) {
        printf("%s %s to nothing", comma, r->niente == SW_YES ? "fades" : "can't fade");
        comma = ",";
    }
    printf("%s\n", comma[0] == '\0' ? " usual" : "");
    print_source(r->source);
}

static void print_trills(const sw_trills *trills)
{
    char pitch[2][SW_PITCH_TEXT];
    if (trills->whole_tones) {
        printf("  %-10s whole tones only, from %s on\n", "trills", sw_pitch_print(trills->from, pitch[0]));
    }
    for (size_t i = 0; i < trills->count; i++) {
        const sw_trill_pair *pair = &trills->pairs[i];
        printf("  %-10s %s %s: %s\n", i == 0 ? "trills" : "", sw_pitch_print(pair->low, pitch[0]),
               sw_pitch_print(pair->high, pitch[1]), pair->impossible ? "impossible" : "awkward");
    }
    print_source(trills->source);
}

void sw_print_abilities(const sw_instrument *instrument)
{
    const sw_abilities *can = &instrument->can;
    char pitch[SW_PITCH_TEXT];
    for (size_t i = 0; i < can->register_count; i++) {
        print_register(&can->registers[i]);
    }
    if (can->lips.source != NULL) {
        printf("  %-10s %g s above %s, then %g s of rest\n", "lips", can->lips.seconds,
               sw_pitch_print(can->lips.above, pitch), can->lips.rest);
        print_source(can->lips.source);
    }
    if (can->weight.source != NULL) {
        printf("  %-10s %g at piano, %g at forte; a woodwind is 1\n", "weight", can->weight.soft,
               can->weight.loud);
        print_source(can->weight.source);
    }
    if (can->trills.source != NULL) {
        print_trills(&can->trills);
    }
    if (can->tremolo.source != NULL) {
        printf("  %-10s two slurred notes alternate %s\n", "tremolo",
               can->tremolo.slurred == SW_YES ? "well" : "badly");
        print_source(can->tremolo.source);
    }
    if (can->tuning.source != NULL) {
        printf("  %-10s", "strings");
        for (size_t i = 0; i < can->tuning.count; i++) {
            printf(" %s", sw_pitch_print(can->tuning.strings[i], pitch));
        }
        if (can->tuning.reach > 0) {
            printf("; the first position reaches %d semitones above them", can->tuning.reach);
        }
        printf("\n");
        print_source(can->tuning.source);
    }
    if (can->techniques.source != NULL) {
        printf("  %-10s", "can play");
        for (size_t i = 0; i < can->techniques.count; i++) {
            printf("%s %s", i == 0 ? "" : ",", can->techniques.words[i]);
        }
        printf("\n");
        print_source(can->techniques.source);
    }
}
