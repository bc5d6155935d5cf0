#include <stdio.h>
#include <string.h>

#include "players/staff_keys.h"

typedef struct spelling {
    const char *word;
    const char *key;
} spelling;

/* Words that are a key by themselves. The letters and "si" can still be followed by "flat" or "sharp". */
static const spelling letters[] = {
    {"a", "a"}, {"b", "bb"}, {"c", "c"}, {"d", "d"},   {"e", "e"},
    {"f", "f"}, {"g", "g"},  {"h", "b"}, {NULL, NULL},
};
static const spelling syllables[] = {
    {"do", "c"},  {"ut", "c"}, {"re", "d"}, {"mi", "e"},  {"fa", "f"},
    {"sol", "g"}, {"la", "a"}, {"si", "b"}, {NULL, NULL},
};
static const spelling joined[] = {
    {"ab", "ab"},  {"bb", "bb"},  {"db", "db"},  {"eb", "eb"},  {"gb", "gb"},   {"as", "ab"},  {"bes", "bb"},
    {"des", "db"}, {"es", "eb"},  {"ees", "eb"}, {"ges", "gb"}, {"fis", "f#"},  {"cis", "c#"}, {"gis", "g#"},
    {"sib", "bb"}, {"mib", "eb"}, {"lab", "ab"}, {"reb", "db"}, {"solb", "gb"}, {NULL, NULL},
};

static const char *const flats[] = {"flat", "bemol", "bemolle", NULL};
static const char *const sharps[] = {"sharp", "diese", "diesis", NULL};
static const char *const high_octave[] = {"alto", "alt", "hoch", "acuto", "high", "haut", NULL};
static const char *const low_octave[] = {"basso", "tief", "grave", "low", "bas", "bass", NULL};

static const char *look_up(const spelling *table, const sw_staff_words *words, size_t at)
{
    for (; table->word != NULL; table++) {
        if (sw_staff_word_is(words, at, table->word)) {
            return table->key;
        }
    }
    return NULL;
}

/* A letter or a syllable with the accidental that may follow it. `signs` gets the number of words of that. */
static size_t read_letter(const char *base, const sw_staff_words *words, size_t at,
                          char key[SW_STAFF_KEY_TEXT], size_t *signs)
{
    bool flat = sw_staff_word_among(words, at + 1, flats);
    bool sharp = sw_staff_word_among(words, at + 1, sharps);
    bool natural = sw_staff_word_is(words, at + 1, "natural");
    *signs = flat || sharp || natural ? 1 : 0;
    snprintf(key, SW_STAFF_KEY_TEXT, "%c%s", base[0], flat ? "b" : sharp ? "#" : natural ? "" : base + 1);
    return 1 + *signs;
}

/* " alto" or " basso" when word `at` says which of two octaves a key means, otherwise NULL. */
static const char *octave_word(const sw_staff_words *words, size_t at)
{
    if (sw_staff_word_among(words, at, high_octave)) {
        return " alto";
    }
    return sw_staff_word_among(words, at, low_octave) ? " basso" : NULL;
}

size_t sw_staff_key_read(const sw_staff_words *words, size_t at, char key[SW_STAFF_KEY_TEXT])
{
    const char *octave = octave_word(words, at); /* "in tief B" */
    size_t start = at;
    at += octave != NULL ? 1 : 0;
    const char *whole = look_up(joined, words, at);
    const char *letter = look_up(letters, words, at);
    const char *base = letter != NULL ? letter : look_up(syllables, words, at);
    size_t count = 0;
    if (whole != NULL) {
        snprintf(key, SW_STAFF_KEY_TEXT, "%s", whole);
        count = 1;
    } else if (base != NULL) {
        size_t signs = 0;
        count = read_letter(base, words, at, key, &signs);
        if (signs == 0 && sw_staff_word_is(words, at + 1, "b")) { /* a flat sign typed as "b": "in E b" */
            snprintf(key, SW_STAFF_KEY_TEXT, "%cb", base[0]);
            count = 2;
        }
    } else {
        return 0;
    }
    at += count;
    if (octave == NULL && octave_word(words, at) != NULL) { /* "in B basso" */
        octave = octave_word(words, at);
        at++;
    }
    strcat(key, octave != NULL ? octave : "");
    return at - start;
}

size_t sw_staff_key_read_bare(const sw_staff_words *words, size_t at, char key[SW_STAFF_KEY_TEXT])
{
    const char *whole = look_up(joined, words, at);
    if (whole != NULL) {
        snprintf(key, SW_STAFF_KEY_TEXT, "%s", whole);
        return 1;
    }
    const char *letter = look_up(letters, words, at);
    const char *base = letter != NULL ? letter : look_up(syllables, words, at);
    if (base == NULL) {
        return 0;
    }
    size_t signs = 0;
    size_t count = read_letter(base, words, at, key, &signs);
    bool at_an_end = at == 0 || at + 1 == words->count;
    return signs > 0 || (letter != NULL && at_an_end) ? count : 0;
}
