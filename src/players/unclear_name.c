#include "players/unclear_name.h"

#include <stdio.h>
#include <string.h>

#include "players/staff_name.h"

/* What a name without its numbers means beside a family. */
static const struct {
    const char *name;
    sw_family beside;
    const char *meaning; /* a name that is clear */
} meanings[] = {
    {"bass", SW_VOICE, "bass voice"},   {"bass", SW_STRINGS, "double bass"},
    {"basses", SW_VOICE, "bass voice"}, {"basses", SW_STRINGS, "double bass"}, /* French: cellos come first */
    {"basso", SW_VOICE, "bass voice"},  {"basso", SW_STRINGS, "double bass"},
    {"bassi", SW_VOICE, "bass voice"},  {"altos", SW_VOICE, "alto"},
    {"altos", SW_STRINGS, "viola"},     {"tr", SW_BRASS, "trumpet"},
    {"trp", SW_BRASS, "trumpet"},       {"v", SW_STRINGS, "violin"},
};

/* The name that stands in the table, and its key. */
static bool plain_name(const char *name, sw_staff_name *plain)
{
    sw_staff_names names;
    sw_staff_name_plain(sw_slice_of(name), &names);
    const sw_staff_name *readings[] = {&names.stated, &names.bare};
    for (size_t r = 0; r < 2; r++) {
        for (size_t i = 0; i < sizeof meanings / sizeof meanings[0]; i++) {
            if (strcmp(readings[r]->text, meanings[i].name) == 0) {
                *plain = *readings[r];
                return true;
            }
        }
    }
    return false;
}

bool sw_name_is_unclear(const char *name)
{
    sw_staff_name plain;
    return plain_name(name, &plain);
}

const sw_instrument *sw_unclear_name_find(const sw_instruments *instruments, const char *name,
                                          const sw_family *beside)
{
    sw_staff_name plain;
    if (!plain_name(name, &plain)) {
        return NULL;
    }
    bool keyed = plain.key[0] != '\0'; /* only brass has keys among these */
    for (size_t i = 0; i < sizeof meanings / sizeof meanings[0]; i++) {
        bool fits = keyed ? meanings[i].beside == SW_BRASS : beside != NULL && meanings[i].beside == *beside;
        if (fits && strcmp(plain.text, meanings[i].name) == 0) {
            char clear[SW_STAFF_NAME_TEXT];
            snprintf(clear, sizeof clear, "%s%s%s", meanings[i].meaning, keyed ? " in " : "", plain.key);
            return sw_instruments_find(instruments, clear);
        }
    }
    return NULL;
}
