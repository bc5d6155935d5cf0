#include "checks/key.h"

#include <string.h>

/* Alterations of the seven steps above the tonic, from those of the major scale on C, in quarter tones. */
static const struct mode {
    const char *name;
    int8_t alter[7];
} modes[] = {
    {"major", {0}},
    {"ionian", {0}},
    {"minor", {0, 0, -2, 0, 0, -2, -2}},
    {"aeolian", {0, 0, -2, 0, 0, -2, -2}},
    {"dorian", {0, 0, -2, 0, 0, 0, -2}},
    {"phrygian", {0, -2, -2, 0, 0, -2, -2}},
    {"lydian", {0, 0, 0, 2, 0, 0, 0}},
    {"mixolydian", {0, 0, 0, 0, 0, 0, -2}},
    {"locrian", {0, -2, -2, 0, -2, -2, -2}},
};

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

static const struct mode *mode_of(const sw_check *check, const sw_setting *key)
{
    const char *name = sw_reading_name(check->reading, check->reading->music[key->music].name);
    name += name[0] == '\\';
    for (size_t i = 0; i < sizeof modes / sizeof modes[0]; i++) {
        if (strcmp(modes[i].name, name) == 0) {
            return &modes[i];
        }
    }
    return &modes[0];
}

sw_pitch sw_key_neighbour(const sw_check *check, const sw_score *score, uint32_t staff, sw_rational onset,
                          sw_pitch pitch, int steps)
{
    int place = pitch.step + steps + 7;
    sw_pitch next = {(int8_t)(place % 7), sw_pitch_octave(pitch.octave + place / 7 - 1), 0};
    const sw_setting *key = key_at(check, score, staff, onset);
    if (key != NULL) {
        int degree = (next.step - key->pitch.step + 7) % 7;
        sw_pitch interval = {(int8_t)degree, 0, mode_of(check, key)->alter[degree]};
        next.alter = sw_pitch_transpose(key->pitch, interval).alter;
    }
    return next;
}
