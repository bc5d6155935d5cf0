#include "stavewright/meaning.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

/* ---- marks ----------------------------------------------------------------------------------------------
 */

static sw_slice without_direction(sw_slice text)
{
    bool directed = text.length > 1 && (text.data[0] == '-' || text.data[0] == '^' || text.data[0] == '_');
    return directed ? sw_slice_trim(sw_slice_from(text, 1)) : text;
}

/* `\tweak color #red \mf` is \mf: the mark stands last. */
static sw_slice without_tweaks(sw_slice text)
{
    if (!sw_slice_starts(text, "\\tweak")) {
        return text;
    }
    size_t at = text.length;
    while (at > 0 && !isspace((unsigned char)text.data[at - 1])) {
        at--;
    }
    return without_direction(sw_slice_from(text, at));
}

/* The long form of what has a short one. */
static const struct other_name {
    const char *written;
    const char *name;
} other_names[] = {{".", "\\staccato"},      {">", "\\accent"},  {"-", "\\tenuto"},    {"^", "\\marcato"},
                   {"!", "\\staccatissimo"}, {"_", "\\portato"}, {"+", "\\stopped"},   {"\\cr", "\\<"},
                   {"\\decr", "\\>"},        {"\\endcr", "\\!"}, {"\\enddecr", "\\!"}, {"\\endcresc", "\\!"},
                   {"\\enddecresc", "\\!"},  {"\\enddim", "\\!"}};

void sw_mark_meaning(const sw_reading *reading, uint32_t mark, sw_buffer *text)
{
    const char *words = sw_music_mark_text(reading, mark);
    if (words[0] != '\0') {
        sw_buffer_string(text, words);
        return;
    }
    const sw_music *m = &reading->music[mark];
    sw_slice written =
        m->name2 != 0 ? sw_slice_of(sw_reading_name(reading, m->name2)) : sw_music_slice(reading, mark);
    bool directed = written.length == 2 && without_direction(written).length == 1;
    sw_slice plain = without_tweaks(without_direction(written));
    for (size_t i = 0; i < sizeof other_names / sizeof other_names[0]; i++) {
        bool is_short = other_names[i].written[0] != '\\'; /* "-." is a staccato, "." is nothing */
        if (sw_slice_is(plain, other_names[i].written) && (!is_short || directed)) {
            plain = sw_slice_of(other_names[i].name);
            break;
        }
    }
    sw_buffer_append(text, plain);
}

/* ---- tempo and key --------------------------------------------------------------------------------------
 */

void sw_tempo_meaning(const sw_reading *reading, uint32_t tempo, sw_buffer *text)
{
    const sw_music *m = &reading->music[tempo];
    const char *words = sw_reading_name(reading, m->name);
    char value[SW_DURATION_TEXT];
    if (words[0] != '\0') {
        sw_buffer_format(text, "\"%s\"%s", words, m->name2 != 0 ? " " : "");
    }
    if (m->name2 != 0) {
        sw_buffer_format(text, "%s = %g", sw_duration_print(sw_music_duration(m), value), m->name2 / 1000.0);
    }
}

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

static const struct mode *mode_of(const sw_reading *reading, const sw_setting *key)
{
    const char *name = sw_reading_name(reading, reading->music[key->music].name);
    name += name[0] == '\\';
    for (size_t i = 0; i < sizeof modes / sizeof modes[0]; i++) {
        if (strcmp(modes[i].name, name) == 0) {
            return &modes[i];
        }
    }
    return &modes[0];
}

void sw_key_signature(const sw_reading *reading, const sw_setting *key, int8_t alter[7])
{
    const struct mode *mode = mode_of(reading, key);
    for (int step = 0; step < 7; step++) {
        int degree = (step - key->pitch.step + 7) % 7;
        sw_pitch interval = {(int8_t)degree, 0, mode->alter[degree]};
        alter[step] = sw_pitch_transpose(key->pitch, interval).alter;
    }
}

sw_key_changes sw_key_changes_of(const sw_reading *reading, const sw_score *score)
{
    sw_key_changes changes = {0};
    int8_t(*now)[7] = sw_alloc_zero(score->staff_count + 1, sizeof *now);
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        uint32_t bar = sw_score_bar_at(score, setting->onset);
        if (reading->music[setting->music].kind != SW_MUSIC_KEY || bar == SW_NO_INDEX ||
            setting->staff == SW_NO_INDEX) {
            continue;
        }
        sw_key_change change = {.staff = setting->staff, .bar = bar, .onset = setting->onset};
        sw_key_signature(reading, setting, change.alter);
        if (memcmp(now[setting->staff], change.alter, sizeof change.alter) != 0) {
            memcpy(now[setting->staff], change.alter, sizeof change.alter);
            changes.items = sw_grow(changes.items, changes.count, &changes.capacity, sizeof *changes.items);
            changes.items[changes.count++] = change;
        }
    }
    free(now);
    return changes;
}
