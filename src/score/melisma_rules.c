#include <string.h>

#include "score/layouts.h"
#include "score/melisma_rules.h"

bool sw_melisma_rule_set(sw_melisma_rule *rule, sw_slice property, sw_slice value)
{
    int8_t on = value.length == 0 ? -1 : sw_slice_is(value, "##t") || sw_slice_is(value, "#t");
    if (sw_slice_is(property, "autoBeaming")) {
        rule->automatic_beams = on;
    } else if (sw_slice_is(property, "tieWaitForNote")) {
        rule->waiting_ties = on;
    } else if (sw_slice_is(property, "melismaBusyProperties")) {
        static const char *const names[] = {"melismaBusy", "slurMelismaBusy", "tieMelismaBusy",
                                            "beamMelismaBusy"};
        int counts = 0;
        for (size_t at = 0; at < value.length;) {
            size_t length = 0;
            while (at + length < value.length && strchr("'()# \t\n", value.data[at + length]) == NULL) {
                length++;
            }
            sw_slice word = {value.data + at, length};
            for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
                counts |= sw_slice_is(word, names[i]) ? 1 << i : 0;
            }
            at += length + 1;
        }
        rule->counts = value.length == 0 ? -1 : (int8_t)counts;
    } else {
        return false;
    }
    return true;
}

bool sw_melisma_rule_command(sw_melisma_rule *rule, sw_slice command)
{
    bool on = sw_slice_is(command, "\\autoBeamOn");
    if (!on && !sw_slice_is(command, "\\autoBeamOff")) {
        return false;
    }
    rule->automatic_beams = on;
    return true;
}

bool sw_melisma_automatic_beams(const sw_melisma_rules *rules)
{
    for (int level = SW_LEVEL_VOICE; level >= SW_LEVEL_SCORE; level--) {
        if (rules->levels[level].automatic_beams >= 0) {
            return rules->levels[level].automatic_beams == 1;
        }
    }
    return true;
}

bool sw_melisma_waiting_ties(const sw_melisma_rules *rules)
{
    for (int level = SW_LEVEL_VOICE; level >= SW_LEVEL_SCORE; level--) {
        if (rules->levels[level].waiting_ties >= 0) {
            return rules->levels[level].waiting_ties == 1;
        }
    }
    return false;
}

int sw_melisma_counts(const sw_melisma_rules *rules)
{
    for (int level = SW_LEVEL_VOICE; level >= SW_LEVEL_SCORE; level--) {
        if (rules->levels[level].counts >= 0) {
            return rules->levels[level].counts;
        }
    }
    return SW_COUNTS_ALL;
}

/* ---- settings ---- */

sw_slice sw_set_property(const sw_reading *reading, uint32_t music)
{
    const char *path = sw_reading_name(reading, reading->music[music].name);
    const char *dot = strrchr(path, '.');
    return sw_slice_of(dot == NULL ? path : dot + 1);
}

sw_slice sw_set_value(const sw_reading *reading, uint32_t music)
{
    sw_slice text = sw_music_slice(reading, music);
    const char *equals = memchr(text.data, '=', text.length);
    sw_slice value = {"", 0};
    if (equals != NULL && !sw_slice_starts(text, "\\unset")) {
        value = (sw_slice){equals + 1, (size_t)(text.data + text.length - equals - 1)};
        while (value.length > 0 && strchr(" \t\r\n", value.data[0]) != NULL) {
            value = (sw_slice){value.data + 1, value.length - 1};
        }
    }
    return value;
}

void sw_melisma_rule_read(sw_melisma_rule *rule, const sw_reading *reading, uint32_t music)
{
    if (reading->music[music].kind == SW_MUSIC_SETTING) {
        sw_melisma_rule_command(rule, sw_music_slice(reading, music));
    } else {
        sw_melisma_rule_set(rule, sw_set_property(reading, music), sw_set_value(reading, music));
    }
}

/* ---- blocks of settings ---- */

static void set_rule(void *data, sw_slice property, sw_slice value)
{
    if (property.length > 0 && property.data[0] == '\\') {
        sw_melisma_rule_command(data, property);
    } else {
        sw_melisma_rule_set(data, property, value);
    }
}

static void set_ignoring(void *data, sw_slice property, sw_slice value)
{
    if (sw_slice_is(property, "ignoreMelismata")) {
        *(bool *)data = sw_slice_is(value, "##t");
    }
}

/* The voices of old notation are defined with beams by hand. */
static bool has_beams_by_hand(const char *type)
{
    static const char *const types[] = {"GregorianTranscriptionVoice", "KievanVoice", "MensuralVoice",
                                        "PetrucciVoice", "VaticanaVoice"};
    for (size_t i = 0; i < sizeof types / sizeof types[0]; i++) {
        if (strcmp(type, types[i]) == 0) {
            return true;
        }
    }
    return false;
}

sw_melisma_rules sw_melisma_rules_of(sw_player *p, const sw_context *voice)
{
    sw_melisma_rules rules;
    for (int level = SW_LEVEL_SCORE; level <= SW_LEVEL_VOICE; level++) {
        rules.levels[level] = (sw_melisma_rule){-1, -1, -1};
    }
    for (const sw_context *c = voice; c != NULL; c = c->parent) {
        sw_melisma_rule *rule = &rules.levels[c->level];
        sw_melisma_rule outer = *rule; /* of groups the innermost holds */
        const char *type = sw_reading_name(p->reader->reading, c->type);
        rule->automatic_beams = has_beams_by_hand(type) ? 0 : rule->automatic_beams;
        sw_layouts_each(p, type, set_rule, rule);
        const sw_reading *reading = p->reader->reading;
        for (uint32_t s = c->with == SW_NO_INDEX ? SW_NO_INDEX : reading->music[c->with].first;
             s != SW_NO_INDEX; s = reading->music[s].next) {
            sw_melisma_rule_read(rule, reading, s);
        }
        rule->counts = outer.counts >= 0 ? outer.counts : rule->counts;
        rule->automatic_beams = outer.automatic_beams >= 0 ? outer.automatic_beams : rule->automatic_beams;
        rule->waiting_ties = outer.waiting_ties >= 0 ? outer.waiting_ties : rule->waiting_ties;
    }
    return rules;
}

bool sw_layout_ignores_melismata(sw_player *p)
{
    bool ignores = false;
    sw_layouts_each(p, "Lyrics", set_ignoring, &ignores);
    return ignores;
}
