#include "moves/foreign_marks.h"

#include <string.h>

/* Marks of the bow and the left hand; common practice, no source. */
static const char *const of_strings[] = {"\\upbow", "\\downbow", "\\snappizzicato", "\\thumb"};
/* Marks that mean something else in each family: an open string, an open bell, a damper that is up; the left
 * hand's pizzicato, a stopped bell, a damped plate. */
static const char *const of_each_family[] = {"\\open", "\\stopped", "\\halfopen", "-+"};

static bool ends_with_one(sw_slice written, const char *const *marks, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (sw_slice_ends(written, marks[i])) {
            return true;
        }
    }
    return false;
}

/* "sul G", "sul D e A", "IV corda", "4. corda": on which string; "una corda" is a pedal. */
static bool names_a_string(sw_slice text)
{
    static const char *const words[] = {"sul ", "sulla "};
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        size_t length = strlen(words[i]);
        if (sw_slice_starts(text, words[i]) && text.length > length &&
            strchr("GDAEC", text.data[length]) != NULL &&
            (text.length == length + 1 || strchr(" .,", text.data[length + 1]) != NULL)) {
            return true;
        }
    }
    return text.length > 0 && strchr("IV1234", text.data[0]) != NULL && sw_slice_ends(text, " corda");
}

/* Whether a text tells of the strokes of strings, or says to the source's player what it does not say to the
 * target's. */
static bool is_foreign_text(const sw_techniques *techniques, const sw_instrument *from,
                            const sw_instrument *to, sw_slice text)
{
    enum { ROOM = 8 };
    sw_technique_said said[ROOM];
    bool in_brackets;
    const sw_family *family = &to->family;
    size_t count = sw_techniques_read(techniques, family, text, said, ROOM, &in_brackets);
    for (size_t i = 0; i < count && *family != SW_STRINGS && *family != SW_PLUCKED; i++) {
        const sw_technique *technique = sw_techniques_get(techniques, said[i].technique);
        if (strcmp(sw_techniques_group(techniques, technique->group)->id, "stroke") == 0) {
            return true;
        }
    }
    return count == 0 && from != NULL && from->family != *family &&
           sw_techniques_read(techniques, &from->family, text, said, ROOM, &in_brackets) > 0;
}

bool sw_mark_is_foreign(const sw_reading *reading, uint32_t mark, const sw_techniques *techniques,
                        const sw_instrument *from_or_null, const sw_instrument *to)
{
    sw_slice written = sw_music_slice(reading, mark);
    sw_slice text = sw_slice_of(sw_music_mark_text(reading, mark));
    if (to->family != SW_STRINGS &&
        (ends_with_one(written, of_strings, sizeof of_strings / sizeof of_strings[0]) ||
         (to->family != SW_PLUCKED && names_a_string(text)))) {
        return true;
    }
    if (from_or_null != NULL && from_or_null->family != to->family &&
        ends_with_one(written, of_each_family, sizeof of_each_family / sizeof of_each_family[0])) {
        return true;
    }
    return text.length > 0 && is_foreign_text(techniques, from_or_null, to, text);
}
