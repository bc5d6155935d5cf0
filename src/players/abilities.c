/* Questions about what an instrument can do. */
#include <string.h>

#include "stavewright/players.h"

sw_answer sw_instrument_has(const sw_instrument *instrument, const char *technique)
{
    const sw_technique_set *set = &instrument->can.techniques;
    for (size_t i = 0; i < set->count; i++) {
        if (strcmp(set->words[i], technique) == 0) {
            return SW_YES;
        }
    }
    return set->source == NULL ? SW_NOT_SAID : SW_NO;
}

const sw_register *sw_instrument_register(const sw_instrument *instrument, sw_pitch written)
{
    int height = sw_pitch_quarter_tones(written);
    for (size_t i = 0; i < instrument->can.register_count; i++) {
        const sw_register *r = &instrument->can.registers[i];
        if (height >= sw_pitch_quarter_tones(r->low) && height <= sw_pitch_quarter_tones(r->high)) {
            return r;
        }
    }
    return NULL;
}

double sw_instrument_weight(const sw_instrument *instrument, sw_dynamic dynamic)
{
    const sw_weight *weight = &instrument->can.weight;
    if (weight->source == NULL || dynamic == SW_NO_DYNAMIC) {
        return 0;
    }
    int step = (int)dynamic < SW_P ? SW_P : (int)dynamic > SW_F ? SW_F : (int)dynamic;
    return weight->soft + (weight->loud - weight->soft) * (step - SW_P) / (SW_F - SW_P);
}

sw_trill_grade sw_instrument_trill(const sw_instrument *instrument, sw_pitch low, sw_pitch high)
{
    const sw_trills *trills = &instrument->can.trills;
    int bottom = sw_pitch_quarter_tones(low);
    int top = sw_pitch_quarter_tones(high);
    if (trills->whole_tones && (top - bottom != 4 || bottom < sw_pitch_quarter_tones(trills->from))) {
        return SW_TRILL_AWKWARD; /* valves may help with some */
    }
    for (size_t i = 0; i < trills->count; i++) {
        const sw_trill_pair *pair = &trills->pairs[i];
        if (bottom == sw_pitch_quarter_tones(pair->low) && top == sw_pitch_quarter_tones(pair->high)) {
            return pair->impossible ? SW_TRILL_IMPOSSIBLE : SW_TRILL_AWKWARD;
        }
    }
    return SW_TRILL_GOOD;
}
