#include <string.h>

#include "players/staff_words.h"

/* ---- characters --------------------------------------------------------------------------------- */

/* The next character of a text of UTF-8; a byte that is no UTF-8 counts as a character by itself. */
static unsigned next_character(sw_slice text, size_t *at)
{
    unsigned first = (unsigned char)text.data[(*at)++];
    size_t more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : first >= 0xC0 ? 1 : 0;
    unsigned c = more == 3 ? first & 7u : more == 2 ? first & 15u : more == 1 ? first & 31u : first;
    for (; more > 0 && *at < text.length && ((unsigned char)text.data[*at] & 0xC0u) == 0x80; more--) {
        c = c << 6 | ((unsigned char)text.data[(*at)++] & 0x3Fu);
    }
    return c;
}

static bool is_lower(unsigned c)
{
    return c >= 'a' && c <= 'z';
}

static bool is_upper(unsigned c)
{
    return c >= 'A' && c <= 'Z';
}

static bool is_digit(unsigned c)
{
    return c >= '0' && c <= '9';
}

/* Writes what a character beyond ASCII is without its accent, 8 bytes at most: letters, nothing for an accent
 * that stands by itself, a blank for what parts words. Returns the number of bytes. */
static size_t put_without_accent(unsigned c, char *to)
{
    static const struct {
        unsigned c;
        const char *text;
    } special[] = {
        {0xBD, " 1/2 "}, {0xC6, "Ae"},  {0xDF, "ss"},       {0xE6, "ae"},
        {0x152, "Oe"},   {0x153, "oe"}, {0x266D, " flat "}, {0x266F, " sharp "},
    };
    static const char latin[] = "AAAAAA CEEEEIIIIDNOOOOO OUUUUY  aaaaaa ceeeeiiiidnooooo ouuuuy y";
    for (size_t i = 0; i < sizeof special / sizeof special[0]; i++) {
        if (special[i].c == c) {
            memcpy(to, special[i].text, strlen(special[i].text));
            return strlen(special[i].text);
        }
    }
    if (c >= 0x300 && c <= 0x36F) {
        return 0;
    }
    *to = c >= 0xC0 && c <= 0xFF ? latin[c - 0xC0] : ' ';
    return 1;
}

/* The name in ASCII, as much of it as fits. */
static size_t to_ascii(sw_slice name, char *ascii, size_t room)
{
    size_t length = 0;
    for (size_t at = 0; at < name.length && length + 8 < room;) {
        unsigned c = next_character(name, &at);
        if (c < 0x80 && c != '#') {
            ascii[length++] = (char)c;
        } else {
            length += put_without_accent(c == '#' ? 0x266F : c, ascii + length);
        }
    }
    ascii[length] = '\0';
    return length;
}

/* ---- words -------------------------------------------------------------------------------------- */

/* True when a word that holds the character before `at` ends there. */
static bool parts(const char *ascii, size_t at)
{
    unsigned before = (unsigned char)ascii[at - 1];
    unsigned c = (unsigned char)ascii[at];
    if (is_digit(before) != is_digit(c)) {
        return true;
    }
    return is_upper(c) && (is_lower(before) || (is_upper(before) && is_lower((unsigned char)ascii[at + 1])));
}

static bool in_word(unsigned c)
{
    return is_lower(c) || is_upper(c) || is_digit(c);
}

static void add_word(sw_staff_words *words, const char *text, size_t length, bool glued)
{
    if (words->count == SW_STAFF_WORDS) {
        return;
    }
    sw_staff_word *word = &words->items[words->count++];
    length = length < SW_STAFF_WORD_TEXT ? length : SW_STAFF_WORD_TEXT - 1;
    for (size_t i = 0; i < length; i++) {
        unsigned c = (unsigned char)text[i];
        word->text[i] = (char)(is_upper(c) ? c - 'A' + 'a' : c);
    }
    word->text[length] = '\0';
    word->glued = glued;
    word->capital = is_upper((unsigned char)text[0]);
}

void sw_staff_words_cut(sw_slice name, sw_staff_words *words)
{
    char ascii[512];
    size_t length = to_ascii(name, ascii, sizeof ascii);
    words->count = 0;
    for (size_t at = 0; at < length;) {
        size_t start = at;
        if (!in_word((unsigned char)ascii[at])) {
            if (ascii[at] != '\0' && strchr("/(),;:&+[]", ascii[at]) != NULL) {
                add_word(words, "/", 1, false);
            }
            at++;
            continue;
        }
        do {
            at++;
        } while (in_word((unsigned char)ascii[at]) && !parts(ascii, at));
        add_word(words, ascii + start, at - start, start > 0 && in_word((unsigned char)ascii[start - 1]));
    }
}

void sw_staff_words_remove(sw_staff_words *words, size_t first, size_t count)
{
    memmove(&words->items[first], &words->items[first + count],
            (words->count - first - count) * sizeof words->items[0]);
    words->count -= count;
}

bool sw_staff_word_is(const sw_staff_words *words, size_t i, const char *text)
{
    return i < words->count && strcmp(words->items[i].text, text) == 0;
}

bool sw_staff_word_among(const sw_staff_words *words, size_t i, const char *const *list)
{
    for (; *list != NULL; list++) {
        if (sw_staff_word_is(words, i, *list)) {
            return true;
        }
    }
    return false;
}

bool sw_staff_name_says(const char *name, const char *const *list)
{
    sw_staff_words words;
    sw_staff_words_cut(sw_slice_of(name), &words);
    bool says = false;
    for (size_t i = 0; i < words.count && !says; i++) {
        says = sw_staff_word_among(&words, i, list);
    }
    return says;
}
