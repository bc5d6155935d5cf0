/* What kind of mark a post-event is. */
#include <string.h>

#include "stavewright/score.h"

static const struct row {
    const char *name;
    sw_mark_class class;
} names[] = {
    {"arpeggio", SW_MARK_ARPEGGIO},
    {"cr", SW_MARK_HAIRPIN_START},
    {"cresc", SW_MARK_HAIRPIN_START},
    {"decr", SW_MARK_HAIRPIN_START},
    {"decresc", SW_MARK_HAIRPIN_START},
    {"dim", SW_MARK_HAIRPIN_START},
    {"endcr", SW_MARK_HAIRPIN_END},
    {"endcresc", SW_MARK_HAIRPIN_END},
    {"enddecr", SW_MARK_HAIRPIN_END},
    {"enddecresc", SW_MARK_HAIRPIN_END},
    {"enddim", SW_MARK_HAIRPIN_END},
    {"f", SW_MARK_DYNAMIC},
    {"ff", SW_MARK_DYNAMIC},
    {"fff", SW_MARK_DYNAMIC},
    {"ffff", SW_MARK_DYNAMIC},
    {"fffff", SW_MARK_DYNAMIC},
    {"fp", SW_MARK_DYNAMIC},
    {"fz", SW_MARK_DYNAMIC},
    {"glissando", SW_MARK_GLISSANDO},
    {"mf", SW_MARK_DYNAMIC},
    {"mp", SW_MARK_DYNAMIC},
    {"n", SW_MARK_DYNAMIC},
    {"p", SW_MARK_DYNAMIC},
    {"pp", SW_MARK_DYNAMIC},
    {"ppp", SW_MARK_DYNAMIC},
    {"pppp", SW_MARK_DYNAMIC},
    {"ppppp", SW_MARK_DYNAMIC},
    {"rfz", SW_MARK_DYNAMIC},
    {"sf", SW_MARK_DYNAMIC},
    {"sff", SW_MARK_DYNAMIC},
    {"sfp", SW_MARK_DYNAMIC},
    {"sfz", SW_MARK_DYNAMIC},
    {"sostenutoOff", SW_MARK_PEDAL},
    {"sostenutoOn", SW_MARK_PEDAL},
    {"sp", SW_MARK_DYNAMIC},
    {"spp", SW_MARK_DYNAMIC},
    {"startTextSpan", SW_MARK_SPAN_START},
    {"startTrillSpan", SW_MARK_SPAN_START},
    {"stopTextSpan", SW_MARK_SPAN_END},
    {"stopTrillSpan", SW_MARK_SPAN_END},
    {"sustainOff", SW_MARK_PEDAL},
    {"sustainOn", SW_MARK_PEDAL},
    {"treCorde", SW_MARK_PEDAL},
    {"unaCorda", SW_MARK_PEDAL},
};

static sw_mark_class named(sw_slice name)
{
    char first = name.length > 0 ? name.data[0] : '\0';
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (names[i].name[0] == first && sw_slice_is(name, names[i].name)) {
            return names[i].class;
        }
    }
    return SW_MARK_ARTICULATION;
}

static sw_slice without_direction(sw_slice text)
{
    while (text.length > 1 &&
           (text.data[0] == '-' || text.data[0] == '^' || text.data[0] == '_' || text.data[0] == ' ')) {
        text = (sw_slice){text.data + 1, text.length - 1};
    }
    return text;
}

char sw_music_mark_direction(const sw_reading *reading, uint32_t mark)
{
    sw_slice text = sw_music_slice(reading, mark);
    return text.length > 1 && (text.data[0] == '^' || text.data[0] == '_') ? text.data[0] : '-';
}

sw_mark_class sw_mark_class_of(sw_slice whole)
{
    sw_slice text = without_direction(whole);
    if (text.length == 0) {
        return SW_MARK_ARTICULATION;
    }
    if (text.data[0] == '\\') {
        sw_slice name = {text.data + 1, text.length - 1};
        if (sw_slice_is(name, "(")) {
            return SW_MARK_PHRASE_START;
        }
        if (sw_slice_is(name, ")")) {
            return SW_MARK_PHRASE_END;
        }
        if (sw_slice_is(name, "<") || sw_slice_is(name, ">")) {
            return SW_MARK_HAIRPIN_START;
        }
        if (sw_slice_is(name, "!")) {
            return SW_MARK_HAIRPIN_END;
        }
        if (name.length > 0 && name.data[0] >= '0' && name.data[0] <= '9') {
            return SW_MARK_FINGERING;
        }
        if (sw_slice_starts(name, "markup")) {
            return SW_MARK_TEXT;
        }
        if (sw_slice_starts(name, "tweak")) { /* the mark is what stands last */
            static const struct row ends[] = {{"\\<", SW_MARK_HAIRPIN_START}, {"\\>", SW_MARK_HAIRPIN_START},
                                              {"\\!", SW_MARK_HAIRPIN_END},   {"~", SW_MARK_TIE},
                                              {"\\(", SW_MARK_PHRASE_START},  {"\\)", SW_MARK_PHRASE_END},
                                              {"(", SW_MARK_SLUR_START},      {")", SW_MARK_SLUR_END}};
            for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
                if (sw_slice_ends(text, ends[i].name)) {
                    return ends[i].class;
                }
            }
            const char *last = memrchr(text.data, '\\', text.length);
            return named((sw_slice){last + 1, (size_t)(text.data + text.length - last - 1)});
        }
        return named(name);
    }
    switch (text.data[0]) {
    case '~':
        return SW_MARK_TIE;
    case '(':
        return SW_MARK_SLUR_START;
    case ')':
        return SW_MARK_SLUR_END;
    case '[':
        return SW_MARK_BEAM_START;
    case ']':
        return SW_MARK_BEAM_END;
    case ':':
        return SW_MARK_TREMOLO;
    case '"':
        return SW_MARK_TEXT;
    default:
        return whole.length > 1 && text.data[0] >= '0' && text.data[0] <= '9' ? SW_MARK_FINGERING
                                                                              : SW_MARK_ARTICULATION;
    }
}

sw_mark_class sw_music_mark_class(const sw_reading *reading, uint32_t mark)
{
    const sw_music *m = &reading->music[mark];
    if (m->name != 0) {
        return SW_MARK_TEXT;
    }
    return m->check != 0 ? (sw_mark_class)(m->check - 1) : sw_mark_class_of(sw_music_slice(reading, mark));
}

const char *sw_music_mark_text(const sw_reading *reading, uint32_t mark)
{
    return sw_reading_name(reading, reading->music[mark].name);
}
