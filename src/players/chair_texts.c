/* Texts over a staff that change who plays, or on what. */
#include <stdio.h>
#include <string.h>

#include "players/chairs.h"
#include "players/staff_numbers.h"
#include "players/staff_keys.h"
#include "players/staff_words.h"

/* Words in front of the new instrument: English, Italian, German, French. */
static const char *const changes[][4] = {
    {"muta", "in", NULL},     {"mutare", "in", NULL},  {"mutano", "in", NULL},   {"cambia", "in", NULL},
    {"change", "to", NULL},   {"changes", "to", NULL}, {"switch", "to", NULL},   {"to", NULL},
    {"take", NULL},           {"takes", NULL},         {"nimmt", NULL},          {"nehmen", NULL},
    {"wechselt", "zu", NULL}, {"wechsel", "zu", NULL}, {"wechseln", "zu", NULL}, {"prend", NULL},
    {"prenez", NULL},         {"prendre", NULL},       {"changez", "en", NULL},  {"prende", NULL},
};

/* The number of a word: a figure, or a roman number that is written with capitals. */
static unsigned number_of(const sw_staff_words *words, size_t i)
{
    const char *text = words->items[i].text;
    if (text[0] >= '1' && text[0] <= '9' && text[1] == '\0') {
        return (unsigned)(text[0] - '0');
    }
    static const char *const roman[] = {"i", "ii", "iii", "iv", "v", "vi", "vii", "viii"};
    for (unsigned n = 0; n < sizeof roman / sizeof roman[0] && words->items[i].capital; n++) {
        if (strcmp(text, roman[n]) == 0) {
            return n + 1;
        }
    }
    return 0;
}

static bool is_break(const sw_staff_words *words, size_t i)
{
    return sw_staff_word_is(words, i, "/") || sw_staff_word_is(words, i, "o") ||
           sw_staff_word_is(words, i, "st") || sw_staff_word_is(words, i, "nd") ||
           sw_staff_word_is(words, i, "rd") || sw_staff_word_is(words, i, "e");
}

/* Reads numbers from word *i on. */
static void take_numbers(const sw_staff_words *words, size_t *i, sw_chair_text *said)
{
    for (; *i < words->count; (*i)++) {
        unsigned number = number_of(words, *i);
        if (number == 0 && !is_break(words, *i)) {
            return;
        }
        if (number != 0 && said->number_count < sizeof said->numbers / sizeof said->numbers[0]) {
            said->numbers[said->number_count++] = number;
        }
    }
}

/* How many words of a change stand at word i. */
static size_t change_at(const sw_staff_words *words, size_t i)
{
    for (size_t c = 0; c < sizeof changes / sizeof changes[0]; c++) {
        size_t n = 0;
        while (changes[c][n] != NULL && sw_staff_word_is(words, i + n, changes[c][n])) {
            n++;
        }
        if (changes[c][n] == NULL) {
            return n;
        }
    }
    return 0;
}

/* The words from i on as a name; capitals are kept, for "in A" is no "a". */
static void join_from(const sw_staff_words *words, size_t i, char *name, size_t room)
{
    size_t length = 0;
    name[0] = '\0';
    for (; i < words->count && length < room; i++) {
        char first = words->items[i].text[0];
        bool upper = words->items[i].capital && first >= 'a' && first <= 'z';
        length += (size_t)snprintf(name + length, room - length, "%s%c%s", length == 0 ? "" : " ",
                                   upper ? first - 'a' + 'A' : first, words->items[i].text + 1);
    }
}

/* The instrument that the words from i on name for a player of `present`: one of the same family, or the
 * present one in another key ("muta in A"). */
static const sw_instrument *taken(const sw_instruments *instruments, const sw_instrument *present,
                                  const sw_staff_words *words, size_t i)
{
    char name[256];
    char key[SW_STAFF_KEY_TEXT];
    join_from(words, i, name, sizeof name);
    const sw_instrument *found = sw_instruments_find(instruments, name);
    bool is_key = i < words->count && sw_staff_key_read(words, i, key) == words->count - i;
    if (found == NULL && present != NULL && is_key) {
        sw_buffer in_key = {0};
        sw_buffer_format(&in_key, "%.*s in %s", (int)strcspn(present->id, "-"), present->id, name);
        found = sw_instruments_find(instruments, sw_buffer_text(&in_key));
        sw_buffer_free(&in_key);
    }
    return found == NULL || (present != NULL && found->family != present->family) ? NULL : found;
}

static bool all_play(const sw_staff_words *words)
{
    bool counted = words->count == 2 && number_of(words, 1) != 0 &&
                   (sw_staff_word_is(words, 0, "a") || sw_staff_word_is(words, 0, "zu"));
    bool tutti = words->count == 1 && sw_staff_word_is(words, 0, "tutti");
    return counted || tutti;
}

sw_chair_text sw_chair_text_read(const sw_instruments *instruments, const sw_instrument *present,
                                 const char *text)
{
    sw_chair_text said = {0};
    sw_staff_words words;
    sw_staff_words_cut(sw_slice_of(text), &words);
    while (words.count > 0 && sw_staff_word_is(&words, 0, "/")) { /* a bracket in front */
        sw_staff_words_remove(&words, 0, 1);
    }
    while (words.count > 0 && sw_staff_word_is(&words, words.count - 1, "/")) {
        words.count--;
    }
    if (words.count == 0 || words.count > 8) {
        return said;
    }
    if (all_play(&words)) {
        said.kind = SW_CHAIR_TEXT_ALL;
        return said;
    }
    size_t at = 0;
    take_numbers(&words, &at, &said);
    if (at < words.count && sw_staff_word_is(&words, at, "solo")) {
        at++;
        if (said.number_count == 0) {
            said.numbers[said.number_count++] = 1; /* the first one, where nobody is named */
        }
    }
    if (at == words.count && said.number_count > 0) {
        said.kind = SW_CHAIR_TEXT_ONLY;
        return said;
    }
    size_t length = change_at(&words, at);
    if (length > 0) {
        said.instrument = taken(instruments, present, &words, at + length);
        said.kind = said.instrument == NULL ? SW_CHAIR_TEXT_NONE : SW_CHAIR_TEXT_CHANGE;
    }
    return said;
}
