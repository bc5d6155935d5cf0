#include "players/staff_numbers.h"

#include <stdlib.h>
#include <string.h>

#include "players/staff_instrument.h"
#include "players/staff_words.h"

enum { LARGEST = 16 }; /* more players of a kind have no numbers of their own */

static void add(sw_staff_numbers *numbers, unsigned number)
{
    for (size_t i = 0; i < numbers->count; i++) {
        if (numbers->items[i] == number) {
            return;
        }
    }
    if (number >= 1 && number <= LARGEST && numbers->count < SW_STAFF_NUMBERS) {
        numbers->items[numbers->count++] = number;
    }
}

static void add_range(sw_staff_numbers *numbers, unsigned from, unsigned to)
{
    for (unsigned number = from; number <= to && number <= LARGEST; number++) {
        add(numbers, number);
    }
}

/* ---- what a word says ------------------------------------------------------------------------------------
 */

static unsigned figure(const char *text)
{
    size_t digits = strspn(text, "0123456789");
    return digits > 0 && text[digits] == '\0' ? (unsigned)strtoul(text, NULL, 10) : 0;
}

/* I to XVI. */
static unsigned roman(const char *text)
{
    static const char *const names[] = {"i",  "ii", "iii", "iv",  "v",    "vi",  "vii", "viii",
                                        "ix", "x",  "xi",  "xii", "xiii", "xiv", "xv",  "xvi"};
    for (unsigned i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (strcmp(text, names[i]) == 0) {
            return i + 1;
        }
    }
    return 0;
}

static unsigned spelled(const char *text)
{
    static const struct {
        const char *begins; /* also with endings: erste, ersten, premiers */
        unsigned number;
    } names[] = {
        {"one", 1},    {"two", 2},    {"three", 3}, {"four", 4},     {"five", 5},      {"six", 6},
        {"seven", 7},  {"eight", 8},  {"first", 1}, {"second", 2},   {"third", 3},     {"fourth", 4},
        {"primo", 1},  {"prima", 1},  {"terz", 3},  {"quart", 4},    {"erste", 1},     {"zweite", 2},
        {"dritte", 3}, {"vierte", 4}, {"premi", 1}, {"deuxieme", 2}, {"troisieme", 3}, {"quatrieme", 4},
    };
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        size_t length = strlen(names[i].begins);
        if (strncmp(text, names[i].begins, length) == 0 && strlen(text) <= length + 2) {
            return names[i].number;
        }
    }
    return 0;
}

/* A lone V or X in front is an abbreviation ("V. I"). A roman number in small letters ("hornii") is none. */
static unsigned number_of(const sw_staff_words *words, size_t i)
{
    const sw_staff_word *word = &words->items[i];
    unsigned number = figure(word->text);
    bool abbreviation = i == 0 && word->text[1] == '\0';
    if (number == 0 && word->capital && !abbreviation) {
        number = roman(word->text);
    }
    return number != 0 ? number : spelled(word->text);
}

/* ---- ranges ----------------------------------------------------------------------------------------------
 */

/* Whether only a dash and blanks stand between the words `first` and `first + 1`; those are figures or roman,
 * so the name holds them as they are but for their case. */
static bool is_range(const char *name, const sw_staff_words *words, size_t first)
{
    size_t before = strlen(words->items[first].text);
    size_t behind = strlen(words->items[first + 1].text);
    for (const char *at = strcasestr(name, words->items[first].text); at != NULL;
         at = strcasestr(at + 1, words->items[first].text)) {
        const char *between = at + before;
        between += strspn(between, " ");
        size_t dash = between[0] == '-' ? 1 : strncmp(between, "\xe2\x80\x93", 3) == 0 ? 3 : 0;
        const char *next = between + dash + strspn(between + dash, " ");
        if (dash > 0 && strncasecmp(next, words->items[first + 1].text, behind) == 0) {
            return true;
        }
    }
    return false;
}

/* "12", "34", "1234" in an id are several players in one word. */
static bool add_digits(sw_staff_numbers *numbers, const char *text)
{
    size_t length = strlen(text);
    if (length < 2 || figure(text) == 0) {
        return false;
    }
    for (size_t i = 0; i + 1 < length; i++) {
        if (text[i + 1] != text[i] + 1) {
            return false;
        }
    }
    for (size_t i = 0; i < length; i++) {
        add(numbers, (unsigned)(text[i] - '0'));
    }
    return true;
}

/* "4 Horns": a figure in front with neither a point nor an ending nor another number behind it. */
static bool is_how_many(const char *name, const sw_staff_words *words)
{
    const char *text = words->items[0].text;
    name += strspn(name, " ");
    return figure(text) > 0 && words->count > 1 && !words->items[1].glued && name[strlen(text)] == ' ' &&
           number_of(words, 1) == 0 && !sw_staff_word_is(words, 1, "/");
}

sw_staff_numbers sw_staff_numbers_of(const char *name)
{
    sw_staff_numbers numbers = {0};
    sw_staff_words words;
    sw_staff_words_cut(sw_slice_of(name), &words);
    if (words.count > 0 && is_how_many(name, &words)) {
        add_range(&numbers, 1, figure(words.items[0].text));
        return numbers;
    }
    for (size_t i = 0; i < words.count; i++) {
        unsigned number = number_of(&words, i);
        if (number == 0) {
            continue;
        }
        bool a_due = i > 0 && sw_staff_word_is(&words, i - 1, "a") && !words.items[i - 1].capital;
        unsigned next = i + 1 < words.count ? number_of(&words, i + 1) : 0;
        if (a_due && numbers.count == 0) {
            add_range(&numbers, 1, number);
        } else if (a_due) {
            continue;
        } else if (next > number && is_range(name, &words, i)) {
            add_range(&numbers, number, next);
            i++;
        } else if (!add_digits(&numbers, words.items[i].text)) {
            add(&numbers, number);
        }
    }
    return numbers;
}

sw_staff_numbers sw_staff_numbers_of_staff(const sw_instruments *instruments, const sw_reading *reading,
                                           const sw_score *score, uint32_t staff)
{
    const sw_staff *s = &score->staves[staff];
    bool named = s->instrument != 0; /* then ids and variables may count movements */
    const uint32_t others[] = {s->instrument, s->short_instrument, named ? 0 : s->id,
                               named ? 0 : s->variable};
    sw_staff_numbers numbers =
        sw_staff_numbers_of(sw_staff_instrument_name(instruments, reading, score, staff));
    for (size_t i = 0; i < sizeof others / sizeof others[0] && numbers.count == 0; i++) {
        const char *name = sw_reading_name(reading, others[i]);
        if (others[i] != 0 && sw_instruments_find(instruments, name) != NULL) {
            numbers = sw_staff_numbers_of(name);
        }
    }
    return numbers;
}
