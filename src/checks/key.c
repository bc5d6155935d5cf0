#include "checks/key.h"

#include "stavewright/meaning.h"

/* The last key of a staff up to a moment; NULL: none. */
static const sw_setting *key_at(const sw_check *check, const sw_score *score, uint32_t staff,
                                sw_rational onset)
{
    const sw_setting *key = NULL;
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        if (sw_rational_compare(setting->onset, onset) > 0) {
            break;
        }
        if (check->reading->music[setting->music].kind == SW_MUSIC_KEY &&
            (setting->staff == staff || setting->staff == SW_NO_INDEX)) {
            key = setting;
        }
    }
    return key;
}

sw_pitch sw_key_neighbour(const sw_check *check, const sw_score *score, uint32_t staff, sw_rational onset,
                          sw_pitch pitch, int steps)
{
    int place = pitch.step + steps + 7;
    sw_pitch next = {(int8_t)(place % 7), sw_pitch_octave(pitch.octave + place / 7 - 1), 0};
    const sw_setting *key = key_at(check, score, staff, onset);
    if (key != NULL) {
        int8_t alter[7];
        sw_key_signature(check->reading, key, alter);
        next.alter = alter[next.step];
    }
    return next;
}
